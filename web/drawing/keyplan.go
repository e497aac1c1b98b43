package drawing

import "coursewright/layout"

// Size of a key plan that stands alone.
const (
	keyAloneWide = 44 * Millimetre
	keyAloneHigh = 30 * Millimetre
	keyEdge      = 2 * Millimetre
)

// KeyPlan draws the walls from above as a small diagram with one of them
// filled. Walls that meet at a corner turn to or away from the room; it is not a measured plan.
func KeyPlan(plan layout.Plan, wall int) Scene {
	b := newBoard(plan, wrapTexts)
	b.Width, b.Height = keyAloneWide, keyAloneHigh
	b.keyPlan(Point{keyEdge, keyEdge}, Point{keyAloneWide - 2*keyEdge, keyAloneHigh - 2*keyEdge}, wall)
	b.Title = "Key plan"
	if wall >= 0 && wall < len(plan.Walls) {
		b.Title += ": wall " + plan.Walls[wall].Found.Letter + ", " + plan.Walls[wall].Found.Name
	}
	return b.Scene
}

// run is one wall in the key plan, from its left end to its right.
type run struct{ from, to Point }

// runs walks along the walls: the first goes up the page, and each inside corner
// turns to the right, as the eye does inside the room, each outside one to the left. A wall
// that meets the runs of others, as the front of a bench or a curb does, stands apart
// beside them: nobody has said along which of them.
func runs(plan layout.Plan) []run {
	ways := []Point{{0, -1}, {1, 0}, {0, 1}, {-1, 0}}
	way, at := 0, Point{}
	if len(plan.Walls) == 1 {
		way = 1
	}
	var out []run
	var apart []int
	for i, w := range plan.Walls {
		if w.Found.Left.Against {
			apart = append(apart, i)
			out = append(out, run{at, at})
			continue
		}
		if i > 0 && w.Found.Left.Meets {
			way = (way + 1) % len(ways)
		} else if i > 0 && w.Found.Left.Outside != nil {
			way = (way + len(ways) - 1) % len(ways)
		} else if i > 0 {
			at.X += ways[way].X * 300000
			at.Y += ways[way].Y * 300000
		}
		l := Scale{1, 1}.On(w.Found.Width)
		to := Point{at.X + ways[way].X*l, at.Y + ways[way].Y*l}
		out = append(out, run{at, to})
		at = to
	}
	standApart(plan, out, apart)
	return out
}

const apartBy = 300000 // what walls that stand apart keep from the rest, and have for their letters

// standApart lays walls one under the other to the right of the rest, from right to left as
// a wall is seen that faces the back one, half as long as they are: a key plan has little room.
func standApart(plan layout.Plan, rs []run, apart []int) {
	if len(apart) == 0 {
		return
	}
	var pts []Point
	for _, r := range rs {
		pts = append(pts, r.from, r.to)
	}
	lo, hi := extent([][]Point{pts})
	left, step := hi.X+apartBy, (hi.Y-lo.Y)/Micron(len(apart))
	for n, i := range apart {
		l, y := Scale{1, 2}.On(plan.Walls[i].Found.Width), hi.Y-step*Micron(len(apart)-1-n)
		rs[i] = run{Point{left + l, y}, Point{left, y}}
	}
}

// keyPlan draws the plan into a box of the given size.
func (b *board) keyPlan(p, size Point, wall int) {
	rs := runs(b.plan)
	if len(rs) == 0 {
		return
	}
	var pts []Point
	for i, r := range rs {
		if pts = append(pts, r.from, r.to); b.plan.Walls[i].Found.Left.Against {
			pts = append(pts, Point{r.from.X + apartBy, r.from.Y}) // for its letter
		}
	}
	lo, hi := extent([][]Point{pts})
	w, h := max(hi.X-lo.X, 1), max(hi.Y-lo.Y, 1)
	room := Point{size.X - 2*keyThick, size.Y - 2*keyThick}
	num, den := room.X, w
	if room.Y*w < room.X*h {
		num, den = room.Y, h
	}
	place := func(q Point) Point {
		return Point{p.X + size.X/2 + (2*q.X-lo.X-hi.X)*num/den/2, p.Y + size.Y/2 + (2*q.Y-lo.Y-hi.Y)*num/den/2}
	}
	for i, r := range rs {
		b.keyWall(i, place(r.from), place(r.to), i == wall)
	}
	for i, r := range rs {
		b.keyLetter(i, place(r.from), place(r.to), i == wall)
	}
}

// Parts of a key plan.
const (
	keyThick  = 1600 // a wall's bar
	keyGap    = 300  // between a bar and the corner it runs into
	keyLetter = 3000
)

// keyWall draws one wall as a bar on the outer side of its line.
func (b *board) keyWall(i int, from, to Point, here bool) {
	tag, ink := Tag{Kind: KeyWall, Wall: i}, Ink{Fill: White, Line: Black, Width: 350}
	if here {
		tag.Kind, ink.Fill = KeyHere, Black
	}
	dx, dy := sign(to.X-from.X), sign(to.Y-from.Y)
	a := Point{from.X + dx*keyGap, from.Y + dy*keyGap}
	z := Point{to.X - dx*keyGap + dy*keyThick, to.Y - dy*keyGap - dx*keyThick}
	b.path(tag, ink, corners(a, z))
}

// keyLetter writes a wall's letter on the inner side, where it has room, or behind one that
// stands apart.
func (b *board) keyLetter(i int, from, to Point, here bool) {
	dx, dy := sign(to.X-from.X), sign(to.Y-from.Y)
	const in = keyLetter * 4 / 5
	mid := Point{(from.X+to.X)/2 - dy*in, (from.Y+to.Y)/2 + dx*in}
	if b.plan.Walls[i].Found.Left.Against {
		mid = Point{from.X + in, from.Y + keyThick/2}
	}
	b.offer(centred(Label{Tag: Tag{Kind: KeyWall, Wall: i}, Text: b.plan.Walls[i].Found.Letter, Size: keyLetter, Bold: here, Colour: Black}, mid))
}

func sign(m Micron) Micron {
	switch {
	case m > 0:
		return 1
	case m < 0:
		return -1
	}
	return 0
}
