package piece

import (
	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Tally counts pieces without keeping them. The zero value is not ready; use
// NewTally.
type Tally struct {
	Bare, Slivers, Cut int
	Smallest           Share         // of the cut pieces, at most one half
	Left, Right        length.Length // least width of the pieces cut by the wall's ends, or Uncut
}

// Uncut stands for an end of a wall where no piece is cut.
const Uncut length.Length = -1

// NewTally is the tally of nothing.
func NewTally() Tally { return Tally{Smallest: Half, Left: Uncut, Right: Uncut} }

// Add counts a piece n times.
func (t *Tally) Add(share Share, cut, sliver bool, n int) {
	if sliver {
		t.Slivers += n
	}
	if cut {
		t.Cut += n
		t.Smallest = t.Smallest.Min(share)
	}
}

// EndCut notes the width of a piece that an end of the wall cuts.
func (t *Tally) EndCut(side plane.Side, wide length.Length) {
	end := &t.Left
	switch side {
	case survey.SideLeft:
	case survey.SideRight:
		end = &t.Right
	default:
		return
	}
	if *end == Uncut || wide < *end {
		*end = wide
	}
}

// Plus adds another tally.
func (t *Tally) Plus(o Tally) {
	t.Bare += o.Bare
	t.Slivers += o.Slivers
	t.Cut += o.Cut
	t.Smallest = t.Smallest.Min(o.Smallest)
	if o.Left != Uncut {
		t.EndCut(survey.SideLeft, o.Left)
	}
	if o.Right != Uncut {
		t.EndCut(survey.SideRight, o.Right)
	}
}

// Pieces counts finished pieces, in the frame of the wall.
func (t *Tally) Pieces(pieces []Piece) {
	for i := range pieces {
		p := &pieces[i]
		t.Add(p.Share, !p.Whole, p.Sliver, 1)
		for _, side := range p.Cuts {
			t.EndCut(side, p.Wide)
		}
	}
}

// Tally counts the pieces of one band, in the frame of the rows.
func (b Band) Tally(row bond.Row, rule Rule) Tally {
	t := NewTally()
	c := cutter{rule: rule, whole: func(bond.Row, plane.Rect) {}}
	c.row(&b, row)
	for i := range c.pieces {
		p := &c.pieces[i]
		t.Add(p.Share, !p.Whole, p.Sliver, 1)
		wide := p.Wide
		if rule.Plumb {
			wide = p.High
		}
		for _, side := range p.Cuts {
			t.EndCut(side, wide)
		}
	}
	t.Bare += len(c.bare)
	return t
}

// Trim is the band less what lies outside from–to along the row; the new edges
// lie on left and right.
func (b Band) Trim(from, to length.Length, left, right plane.Side) Band {
	t := Band{Low: b.Low, High: b.High}
	cut := func(r plane.Region) plane.Region {
		return r.KeepAll(plane.RightOf(from), plane.LeftOf(to)).Mark(from, left).Mark(to, right)
	}
	t.Solid = cut(b.Solid)
	t.Visible, t.Region = t.Solid, t.Solid
	if !same(b.Visible, b.Solid) {
		t.Visible = cut(b.Visible)
	}
	if !same(b.Region, b.Solid) {
		t.Region = cut(b.Region)
	}
	return t
}

// Less is the band without an opening, whose edges lie on side.
func (b Band) Less(hole plane.Rect, side plane.Side) Band {
	t := Band{Low: b.Low, High: b.High, Solid: b.Solid.Less(hole.Ring(0), side)}
	t.Visible, t.Region = t.Solid, t.Solid
	if !same(b.Visible, b.Solid) {
		t.Visible = b.Visible.Less(hole.Ring(0), side)
	}
	if !same(b.Region, b.Solid) {
		t.Region = b.Region.Less(hole.Ring(0), side)
	}
	return t
}

// Beds counts the bare places between rows, in the frame of the rows.
func Beds(framed survey.Shape, rows []bond.Row, rule Rule) int {
	c := cutter{rule: rule}
	c.beds(framed.Solid, rows)
	return len(c.bare)
}
