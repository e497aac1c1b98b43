package survey

import "strings"

// Kind is what tile comes to at a boundary, in the words of the job file. The
// empty kind is a plain cut where tile stops without a finish.
type Kind string

// What a boundary may be: a wall's end meets a corner and a head a ceiling, or
// they stop with a finish; a base meets what stands below; an opening is a hole.
const (
	Corner  Kind = "corner"
	Ceiling Kind = "ceiling"

	Trim     Kind = "trim"
	Bullnose Kind = "bullnose"
	Casing   Kind = "casing"

	Tub        Kind = "tub"
	ShowerBase Kind = "shower base"
	Curb       Kind = "curb"
	Seat       Kind = "seat" // of a bench, or a ledge: dry behind its front, so no rim
	Floor      Kind = "floor"

	Niche  Kind = "niche"
	Window Kind = "window"
	Pipe   Kind = "pipe"
)

// Rim tells whether a base of this kind holds water: tub, shower base, curb.
func (k Kind) Rim() bool { return k == Tub || k == ShowerBase || k == Curb }

// kind reads one of a few kinds.
func (r *resolver) kind(v value, kinds ...Kind) Kind {
	words := make([]string, len(kinds))
	for i, k := range kinds {
		words[i] = string(k)
	}
	return Kind(r.choice(v, words...))
}

// Part says which boundary of a wall is meant. N counts segments of base and
// openings in the order of the job file; it is 0 for the others.
type Part struct {
	Is PartIs
	N  int
}

// PartIs is a boundary of a wall, or the factory edge of a tile, which is none.
type PartIs uint8

// The parts of a wall that cut tile.
const (
	Factory PartIs = iota
	LeftEnd
	RightEnd
	HeadEdge
	BaseSegment
	OpeningEdge
	BandEdge
)

// Key is how a mark of the opening is called in a job's pins and in a plan:
// “niche NAME”.
func (o OpeningFound) Key() string { return string(o.Kind) + " " + o.Name }

// Called is how people call the opening: by its kind and name, or by the name alone
// where that begins with the kind, as a new one's does: "niche", "niche 2".
func (o OpeningFound) Called() string {
	if kind := string(o.Kind); o.Name == kind || strings.HasPrefix(o.Name, kind+" ") {
		return o.Name
	}
	return o.Key()
}
