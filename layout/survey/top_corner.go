package survey

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// Backs of a top in the words of the job file: what stands behind it.
const (
	behindWall   = "wall"
	behindCorner = "corner"
)

// TopBacks lists what may stand behind a seat or a ledge: a wall, or the corner of two
// walls, so that the top is a triangle.
func TopBacks() []string { return []string{behindWall, behindCorner} }

// CornerTop is a top in the corner of two walls: a triangle with its front for one side.
// Where on a corner seat its courses begin follows the wall under it. Points run along
// the front from its left end, and square to it to the corner.
type CornerTop struct {
	Along [2]length.Length // the boards of the left and of the right wall, from the front's boards to the corner
	Apex  plane.Point      // the corner of the boards, from the left end of the front's boards
	Takes [2]length.Length // what the tile on the walls takes of the front, at its left and its right end
	Wide  length.Length    // the finished front
	Peak  plane.Point      // the finished corner, from the left end of the finished front
}

// CornerTopOf works out the triangle from the lengths of its three sides, and what tile
// and bed so deep take of it: the front comes that much further out, the walls in. With
// half the angle at an end of the front, tan α/2 = (1 − cos α) / sin α, the tile of the
// wall takes deep · tan α/2 of the front, and what is left has the same angles. It is
// nil where three such sides make no triangle with its foot on the front. To the unit.
func CornerTopOf(front, left, right, deep length.Length) *CornerTop {
	twice := left.Times(left) - right.Times(right)
	if left+right <= front || max(twice, -twice) >= front.Times(front) {
		return nil
	}
	x := length.Length((twice + front.Times(front)) / length.Area(2*front))
	y := plane.Root(left.Times(left) - x.Times(x))
	if y == 0 {
		return nil
	}
	c := &CornerTop{Along: [2]length.Length{left, right}, Apex: plane.Point{X: x, Y: y}}
	c.Takes = [2]length.Length{part(deep, left-x, y), part(deep, right-(front-x), y)}
	c.Wide = front - c.Takes[0] - c.Takes[1]
	c.Peak = plane.Point{X: part(c.Wide, x, front), Y: part(c.Wide, y, front)}
	return c
}

// part is l · n / d to the nearest unit; l and n are not under zero.
func part(l, n, d length.Length) length.Length {
	return length.Length((2*l.Times(n) + length.Area(d)) / length.Area(2*d))
}

// Inset is the triangle less so much along its front and along both walls: from the left
// end of its front to the right, and round over the corner. Nil where nothing is left.
func (c *CornerTop) Inset(front, gap length.Length) plane.Ring {
	p := c.Peak
	before, after := plane.Distance(plane.Point{}, p), plane.Distance(plane.Point{X: c.Wide}, p)
	left := part(front, p.X, p.Y) + part(gap, before, p.Y)
	right := c.Wide - part(front, c.Wide-p.X, p.Y) - part(gap, after, p.Y)
	if left >= right {
		return nil
	}
	peak := plane.Point{X: left + part(right-left, p.X, c.Wide), Y: front + part(right-left, p.Y, c.Wide)}
	if peak.Y <= front {
		return nil
	}
	return plane.Ring{{Point: plane.Point{X: left, Y: front}, On: SideBase}, {Point: plane.Point{X: right, Y: front}, On: SideRight},
		{Point: peak, On: SideLeft}}
}

// topBehind reads what stands behind a top.
func (r *resolver) topBehind(p path, t *Top, found *TopFound) {
	if r.word(value{p.dot("behind"), t.Behind}, TopBacks()) != behindCorner {
		return
	}
	if found.Open() {
		r.faults.add(p.dot("behind"), "a corner behind a "+t.Kind, "a seat or a ledge: what has a far edge has no corner behind it")
		return
	}
	found.Corner = &CornerTop{Along: [2]length.Length{found.Left, found.Right}}
}

// topInCorner finds the triangle of a top in a corner. Its depths are those along the
// two walls, and the width of the wall under it is its front, all three on the boards.
func (r *resolver) topInCorner(p path, w *WallFound) {
	t := w.Head.Top
	if t == nil || t.Corner == nil {
		return
	}
	switch {
	case !w.Left.Against || !w.Right.Against:
		r.faults.add(p.dot("top.behind"), "a corner behind a wall that does not meet a wall at both ends",
			`"meets": "wall" at both ends, as the front of a corner bench has it`)
		return
	case len(w.Left.Lean)+len(w.Right.Lean) > 0:
		r.faults.add(p.dot("top.behind"), "a corner behind a wall whose ends lean", "ends without a lean: the front of a corner bench is measured at its edge")
		return
	}
	a, b := t.Corner.Along[0], t.Corner.Along[1]
	if w.Width == 0 || a == 0 || b == 0 {
		return
	}
	say := func(l length.Length) string { return l.Plain(r.units, r.units.FineStep()) }
	found := CornerTopOf(w.Width, a, b, r.around.Bed+r.around.Tile.Thickness)
	if found == nil {
		square := plane.Root(a.Times(a) + b.Times(b)).RoundTo(r.units.FineStep())
		r.faults.add(p.dot("top.depth"), say(a)+" and "+say(b)+" along the walls behind a front of "+say(w.Width),
			"three sides of a triangle that is sharp at both ends of its front: in a square corner the front is "+say(square))
		return
	}
	t.Corner = found
	gap := r.around.Joint
	if t.Gap != nil {
		gap = *t.Gap
	}
	if found.Wide <= 0 || found.Inset(t.Behind(*r.around), gap) == nil {
		r.faults.add(p.dot("top.depth"), say(a)+" and "+say(b)+" along the walls", "lengths of which tile, edge and soft joints leave something")
	}
}
