package survey

import (
	"cmp"
	"maps"
	"slices"

	"coursewright/layout/length"
)

// Strip is tile of another kind in columns up a wall, between two plumb joints of
// the room's own tile: mosaic behind a valve. Without heights it goes from the base
// to the head, and parts the field in two.
type Strip struct {
	Name        string `json:"name"`
	Tile        Tile   `json:"tile"`
	Joint       string `json:"joint,omitempty"`       // between its own tiles; the room's where left out
	Bond        Bond   `json:"bond,omitzero"`         // stack bond where left out
	Columns     int    `json:"columns,omitempty"`     // of its tile, side by side; one where left out
	MostColumns int    `json:"mostColumns,omitempty"` // where it may have more than columns: as many as suit best, up to so many
	Middle      Mark   `json:"middle"`                // from the wall's left end
	Near        string `json:"near,omitempty"`        // where a free middle is wished
	Bottom      *Mark  `json:"bottom,omitempty"`      // its lower edge over the level line; from the base up where left out
	Top         *Mark  `json:"top,omitempty"`         // its upper edge; up to the head where left out
	Beside      string `json:"beside,omitempty"`      // of one from base to head: "whole" where the tile next to it is never cut
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
	Columns int  // as many as it has, or at least
	Most    int  // it may have up to so many; 0 where it has Columns
	Middle  Span // of its tile
	Low     bool // it goes down to the base
	High    bool // it goes up to the head
	Whole   bool // the tile beside it is never cut, whatever that leaves elsewhere
}

// Inner is the joint between the strip's own tiles, in a room with that joint.
func (s *StripFound) Inner(joint length.Length) length.Length { return cmp.Or(s.Joint, joint) }

// wide is how wide so many columns of the strip's tile stand, in a room with that joint.
func (s *StripFound) wide(columns int, joint length.Length) length.Length {
	n := length.Length(columns)
	return n*s.Tile.Width + (n-1)*s.Inner(joint)
}

// across says where the field is open for a strip: a joint beyond its tile on either side.
func (o *OpeningFound) across(joint length.Length) {
	s := o.Strip
	least, most := s.wide(s.Columns, joint)+2*joint, s.wide(max(s.Columns, s.Most), joint)+2*joint
	o.Left, o.Width = Span{s.Middle.From - most.Half(), s.Middle.To - least.Half()}, Span{least, most}
}

// FreeColumns is the first strip of the room whose number of columns is free, with the
// numbers it may have: those that it can have where its edges are pinned.
func (r Room) FreeColumns() (wall, opening int, columns []int) {
	for i, w := range r.Walls {
		for k, o := range w.Openings {
			if o.Strip != nil && o.Strip.Most > 0 {
				return i, k, w.columnsOf(o, r.Joint)
			}
		}
	}
	return -1, -1, nil
}

// columnsOf are the numbers of columns that a strip may have with its edges as they are pinned.
func (w WallFound) columnsOf(o OpeningFound, joint length.Length) (out []int) {
	left, pinned := w.MarkPins[o.Mark(LeftEdge)]
	right, both := w.MarkPins[o.Mark(RightEdge)]
	least := length.Length(0)
	for n := o.Strip.Columns; n <= o.Strip.Most; n++ {
		with := o.withColumns(n, joint)
		at := with.Left.From
		if pinned && with.Left.Free() {
			if at = left; at < with.Left.From || at > with.Left.To {
				continue
			}
		}
		off := (at + with.Width.From - right).Abs()
		switch {
		case !both || out == nil:
			out, least = append(out, n), off
		case off < least:
			out, least = []int{n}, off
		}
	}
	if out == nil {
		return []int{o.Strip.Columns}
	}
	return out
}

// withColumns is the opening of a strip with so many columns, in the middle of where it stands.
func (o OpeningFound) withColumns(columns int, joint length.Length) OpeningFound {
	s := *o.Strip
	s.Columns, s.Most = columns, 0
	o.Strip = &s
	o.across(joint)
	return o
}

// ChooseColumns is the room with as many columns in a strip. Pins of its edges that say how wide
// it is say no more.
func (r Room) ChooseColumns(wall, opening, columns int) Room {
	r.Walls = slices.Clone(r.Walls)
	w := &r.Walls[wall]
	w.Openings, w.MarkPins = slices.Clone(w.Openings), maps.Clone(w.MarkPins)
	o := &w.Openings[opening]
	*o = o.withColumns(columns, r.Joint)
	delete(w.MarkPins, o.Mark(RightEdge))
	if x, pinned := w.MarkPins[o.Mark(LeftEdge)]; pinned && (x < o.Left.From || x > o.Left.To) {
		delete(w.MarkPins, o.Mark(LeftEdge))
	}
	return r
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
	o.across(to)
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
