package survey

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
)

// Strip is tile of another kind in columns up a wall, between two plumb joints of
// the room's own tile: mosaic behind a valve. Without heights it goes from the base
// to the head, and parts the field in two.
type Strip struct {
	Name    string `json:"name"`
	Tile    Tile   `json:"tile"`
	Joint   string `json:"joint,omitempty"`   // between its own tiles; the room's where left out
	Bond    Bond   `json:"bond,omitzero"`     // stack bond where left out
	Columns int    `json:"columns,omitempty"` // of its tile, side by side; one where left out
	Middle  Mark   `json:"middle"`            // from the wall's left end
	Near    string `json:"near,omitempty"`    // where a free middle is wished
	Bottom  *Mark  `json:"bottom,omitempty"`  // its lower edge over the level line; from the base up where left out
	Top     *Mark  `json:"top,omitempty"`     // its upper edge; up to the head where left out
}

// PlumbStrip is the kind of the opening that a strip takes from the field. It ends
// a joint before the strip's own tile on every side where the field goes on.
const PlumbStrip Kind = "strip"

// StripFound is a strip read and checked. Where it stands is said by the opening
// that it takes from the field.
type StripFound struct {
	Tile    TileSize
	Joint   length.Length // between its own tiles; 0 is the room's
	Bond    BondRule
	Columns int
	Low     bool // it goes down to the base
	High    bool // it goes up to the head
}

// Inner is the joint between the strip's own tiles, in a room with that joint.
func (s *StripFound) Inner(joint length.Length) length.Length { return cmp.Or(s.Joint, joint) }

// Wide is how wide the strip's tile stands, in a room with that joint.
func (s *StripFound) Wide(joint length.Length) length.Length {
	n := length.Length(s.Columns)
	return n*s.Tile.Width + (n-1)*s.Inner(joint)
}

// Parts tells whether the opening parts the field of its wall in two: a strip from
// the base to the head. On each side the field is set out by itself.
func (o OpeningFound) Parts() bool { return o.Strip != nil && o.Strip.Low && o.Strip.High }

// PartedBy lists the openings of the wall that part its field, from left to right.
func (w WallFound) PartedBy() []int {
	var out []int
	for i, o := range w.Openings {
		if o.Parts() {
			out = append(out, i)
		}
	}
	slices.SortFunc(out, func(a, b int) int { return cmp.Compare(w.Openings[a].Left.From, w.Openings[b].Left.From) })
	return out
}

// Parted tells whether a strip parts the field of some wall. A bond without courses
// goes on behind it.
func (r Room) Parted() bool {
	return r.Bond.Coursed() && slices.ContainsFunc(r.Walls, func(w WallFound) bool { return len(w.PartedBy()) > 0 })
}

// rejoint moves the edges of the field beside a strip or a flush dish when the joint
// becomes another one: the middle stays, and so do the strip's lower and upper edges.
func (o *OpeningFound) rejoint(from, to length.Length) {
	s, by := o.Strip, to-from
	if o.Kind == SoapDish {
		o.Left, o.Width = o.Left.Moved(-by), o.Width.Moved(2*by)
		o.Bottom, o.Height = o.Bottom.Moved(-by), o.Height.Moved(2*by)
		return
	}
	if s == nil {
		return
	}
	wide := s.Wide(to) + 2*to
	o.Left = o.Left.Moved((s.Wide(from) + 2*from).Half() - wide.Half())
	o.Width = Span{wide, wide}
	if !s.Low {
		o.Bottom, o.Height = o.Bottom.Moved(-by), o.Height.Moved(by)
	}
	if !s.High {
		o.Height = o.Height.Moved(by)
		if o.Top != (Span{}) {
			o.Top = o.Top.Moved(by)
		}
	}
}
