package drawing

import (
	"slices"

	"coursewright/layout"
)

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
	var bars []box
	for i, r := range rs {
		rs[i] = run{place(r.from), place(r.to)}
		bar := rs[i].bar()
		lo, hi := extent([][]Point{{bar.from, bar.to}})
		bars = append(bars, box{lo, hi})
		b.keyWall(i, bar, i == wall)
	}
	for i, r := range rs {
		b.keyLetter(i, r, bars, i == wall)
	}
}

// Parts of a key plan.
const (
	keyThick  = 1600 // a wall's bar
	keyGap    = 300  // between a bar and the corner it runs into
	keyLetter = 3000
	keySmall  = 2500 // where there is room for no larger one
)

// bar is the bar of a wall, on the outer side of its line.
func (r run) bar() box {
	dx, dy := r.way()
	a := Point{r.from.X + dx*keyGap, r.from.Y + dy*keyGap}
	z := Point{r.to.X - dx*keyGap + dy*keyThick, r.to.Y - dy*keyGap - dx*keyThick}
	return box{a, z}
}

// way is where a wall goes from its left end.
func (r run) way() (dx, dy Micron) { return sign(r.to.X - r.from.X), sign(r.to.Y - r.from.Y) }

// keyWall draws one wall.
func (b *board) keyWall(i int, bar box, here bool) {
	tag, ink := Tag{Kind: KeyWall, Wall: i}, Ink{Fill: White, Line: Black, Width: 350}
	if here {
		tag.Kind, ink.Fill = KeyHere, Black
	}
	b.path(tag, ink, corners(bar.from, bar.to))
}

// keyLetter writes a wall's letter on the inner side, where it has room, or behind one that stands apart. Where a short
// wall has none before its middle, the letter goes before an end of it or on its outer side, over no other wall's bar if
// that can be: by the letters the corners are named.
func (b *board) keyLetter(i int, r run, bars []box, here bool) {
	l := Label{Tag: Tag{Kind: KeyWall, Wall: i}, Text: b.plan.Walls[i].Found.Letter, Size: keyLetter, Bold: here, Colour: Black}
	if b.plan.Walls[i].Found.Left.Against {
		b.offer(centred(l, Point{r.from.X + keyLetter*4/5, r.from.Y + keyThick/2}))
		return
	}
	var clear, all []Label
	for _, l.Size = range []Micron{keyLetter, keySmall} {
		for _, at := range r.letters() {
			at := centred(l, at)
			if all = append(all, at); !slices.ContainsFunc(bars, at.box().grown(keyGap).meets) {
				clear = append(clear, at)
			}
		}
	}
	b.offer(append(clear, all...)...)
}

// letters are the places for the letter of a wall, the best first.
func (r run) letters() (all []Point) {
	const in = keyLetter * 4 / 5
	dx, dy := r.way()
	for _, off := range []Micron{in, -in - keyThick} {
		for _, quarter := range []Micron{2, 3, 1, 4, 0} {
			all = append(all, Point{r.from.X + (r.to.X-r.from.X)*quarter/4 - dy*off, r.from.Y + (r.to.Y-r.from.Y)*quarter/4 + dx*off})
		}
	}
	for _, off := range []Micron{in, -in - keyThick} {
		for _, on := range []Micron{in, in + keyThick} {
			all = append(all, Point{r.to.X + dx*on - dy*off, r.to.Y + dy*on + dx*off}, Point{r.from.X - dx*on - dy*off, r.from.Y - dy*on + dx*off})
		}
	}
	return all
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
