package sheet

import (
	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
)

// panelOf is the wall that goes on the leaf of another: the narrow end of a half wall, round the outside
// corner from it, with nothing of its own on it or in it. It is -1 where there is none.
func (b *book) panelOf(wall int) int {
	for _, next := range []int{wall + 1, wall - 1} {
		if next >= 0 && next < len(b.plan.Walls) && narrow(b.plan.Room, b.plan.Walls[next]) && b.turns(min(wall, next)) {
			return next
		}
	}
	return -1
}

// turns tells whether a wall turns an outside corner at its right.
func (b *book) turns(wall int) bool { return b.plan.Walls[wall].Found.Right.Outside != nil }

// narrow tells whether a wall is no wider than a tile and has its own tile alone.
func narrow(room survey.Room, w layout.Wall) bool {
	return w.Found.Width <= room.Tile.Width && w.Top == nil && len(w.Insides)+len(w.Strips)+len(w.Found.Openings) == 0
}

// withPanel lays a wall and the narrow one round its corner on one leaf, one drawing under the other and both
// lists beside them, and tells whether there is a scale at which both go on it in text of the usual size.
func (b *book) withPanel(wall, panel int) bool {
	if len(b.unfolded(wall)) > 0 {
		return false
	}
	before, later := b.mark(), b.later
	scales := ladder(b.plan.Room.Units)[:named]
	for i, scale := range scales {
		f := b.wallLeaf(wall, lie{scale: scale, beside: true})
		t := b.wallCuts(b.plan.Walls[wall], true)
		if f == nil || !f.holds(t, 0, 0, wall) || f.percent < 100 {
			continue
		}
		b.leaves = append(b.leaves, f.leaf)
		f.table(t)
		f.findings(wall)
		if f.panel(panel, scales[i:]) && len(b.leaves) == before.leaves+1 && len(b.later) == len(later) {
			f.wall += "; " + wallText(b.plan.Walls[panel].Found)
			b.walls = append(b.walls, f)
			return true
		}
		b.back(before)
		b.later = later
	}
	return false
}

// panel draws a narrow wall under the drawing at the left of a list, at the largest of the scales at which
// it goes there, and its list under that.
func (f *flow) panel(wall int, scales []drawing.Scale) bool {
	b := f.book
	corner, _ := f.leaf.area()
	t, low := b.wallCuts(b.plan.Walls[wall], true), f.foot+listsApart
	title := "Wall " + wallText(b.plan.Walls[wall].Found)
	for _, scale := range scales {
		s := drawing.Elevation(b.plan, wall, drawing.Options{Sheet: true, Scale: scale, Lines: b.cuts.Lines()})
		head := 3*mmPaper + f.of(large).leading()
		if s.Width > f.lo.X-listGap-corner.X || low+s.Height > f.hi.Y || head+f.high(t) > f.left() {
			continue
		}
		f.lay(drawing.Point{X: corner.X, Y: low}, s)
		f.foot = low + s.Height + 1000
		if said := f.ownScale(scale); said != "" {
			title += ", " + said
		}
		f.sub(title)
		f.table(t)
		f.findings(wall)
		return true
	}
	return false
}
