package count

import (
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Counted is what a set-out of one wall gives.
type Counted struct {
	Setting
	Merit merit.Merit // all but the terms that two walls share
	Runs  []Run

	SmallLeft, SmallRight bool            // a run at that end is under a third
	LeftCuts, RightCuts   []length.Length // least widths at the ends by class, ascending

	widths *[2]map[int]length.Length
}

// counted turns what was added up into a merit.
func (t *tally) counted(s Setting, box plane.Rect) Counted {
	c := Counted{Setting: s}
	c.Merit, c.Runs = t.merit()
	m := &c.Merit
	c.LeftCuts, c.RightCuts = t.w.cuts(c.Runs, survey.SideLeft), t.w.cuts(c.Runs, survey.SideRight)
	if t.w.likeEnds() {
		m.Mirror = t.w.mark(differences(c.LeftCuts, c.RightCuts))
	}
	for _, r := range c.Runs {
		if !r.Across() || !piece.Part(r.Least, t.w.room.Tile.Width).Less(merit.Third) {
			continue
		}
		for _, e := range r.Edges {
			c.SmallLeft = c.SmallLeft || e.Side() == survey.SideLeft
			c.SmallRight = c.SmallRight || e.Side() == survey.SideRight
		}
	}
	t.marks.add(m, s, box)
	t.addLegs(m, s)
	if t.w.top != nil {
		on := t.w.top.At(s)
		c.Merit = m.Plus(&on.Merit)
	}
	return c
}

// differences is the sum of the differences of two lists, entry by entry.
func differences(a, b []length.Length) length.Length {
	var sum length.Length
	for i := range min(len(a), len(b)) {
		sum += (a[i] - b[i]).Abs()
	}
	return sum
}

// Differ is how far the corner cuts of two facing walls differ, in whole marks.
func Differ(room *survey.Room, a, b []length.Length) length.Length {
	return differences(a, b).FloorTo(room.Tape)
}
