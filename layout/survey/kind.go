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

	Niche   Kind = "niche"
	Window  Kind = "window"
	Doorway Kind = "doorway" // in the job file; found as a window that goes down to what stands below
	Pipe    Kind = "pipe"
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
func (o OpeningFound) Key() string {
	if o.Down {
		return string(Doorway) + " " + o.Name
	}
	return string(o.Kind) + " " + o.Name
}

// Called is how people call the opening: by its kind and name, or by the name alone
// where that begins with the kind, as a new one's does: "niche", "niche 2".
func (o OpeningFound) Called() string {
	if o.Doorway {
		return o.asDoorway()
	}
	if kind := string(o.Kind); o.Name == kind || strings.HasPrefix(o.Name, kind+" ") {
		return o.Name
	}
	return o.Key()
}

// asDoorway is how people call a window that is a doorway: "doorway", "doorway 2", "back door".
func (o OpeningFound) asDoorway() string {
	name, usual := strings.CutPrefix(o.Name, string(Window))
	switch {
	case usual && (name == "" || name[0] == ' '):
		return "doorway" + name
	case strings.Contains(strings.ToLower(o.Name), "door"):
		return o.Name
	}
	return "doorway " + o.Name
}

// doorways tells of the windows that go down to the floor, or to a base that one steps onto, that they are doorways,
// as those are that the job calls so.
func (w *WallFound) doorways() {
	for i := range w.Openings {
		o := &w.Openings[i]
		if o.Kind != Window || o.Down || o.Inside != nil || o.Bottom.Free() || o.Left.Free() || o.Width.Free() {
			continue
		}
		left, right := o.Left.From, o.Left.From+o.Width.From
		walked := true
		for _, s := range w.Base {
			first, last := s.Readings[0].At, s.Readings[len(s.Readings)-1].At
			walked = walked && (s.Meets == Floor || s.Meets == ShowerBase || last <= left || first >= right)
		}
		bottom, _ := w.upright(left, right)
		o.Doorway = walked && len(w.Base) > 0 && o.Bottom.From <= bottom
	}
}
