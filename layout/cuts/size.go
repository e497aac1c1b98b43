package cuts

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Size is what to measure on the tile, seen from the face. Every length of the
// piece is rounded down to the fine step, every hole up, so that the piece
// never exceeds its place; places of holes are rounded to the nearest.
type Size struct {
	Width, Height length.Length // of the smallest upright box round the piece
	Left, Right   length.Length // height at its two sides; they differ where it tapers
	Bottom, Top   length.Length // width at its two ends; the same
	Notches       []Notch
	Holes         []Hole
}

// Tapers tells whether the heights, or the widths, at the two sides differ.
func (s Size) Tapers() (heights, widths bool) { return s.Left != s.Right, s.Bottom != s.Top }

// Notch is a bite out of the piece, told by what is left beside it. Zero means
// that the notch is open to that side.
type Notch struct{ Left, Right, Below, Above length.Length }

// Hole is a round hole: its centre from the lower left corner of the piece's
// box, and its diameter, the clearance round the pipe included.
type Hole struct {
	Name         string
	FromLeft, Up length.Length
	Diameter     length.Length
}

// size measures the piece.
func (w work) size(step length.Length) Size {
	left, right, bottom, top := w.sides()
	return Size{
		Width: w.box.Width().FloorTo(step), Height: w.box.Height().FloorTo(step),
		Left: left.FloorTo(step), Right: right.FloorTo(step),
		Bottom: bottom.FloorTo(step), Top: top.FloorTo(step),
		Notches: w.notches(step), Holes: w.holes(step),
	}
}

// sides measures, for each side, how far the edges that face it reach: the
// height at left and right, the width at bottom and top. Rims of holes do not
// count, nor do edges of a piece of a pattern that slant more than a taper: they face no side of the
// saw's fence, and their marks say where they run. A side that no edge faces has nothing.
func (w work) sides() (left, right, bottom, top length.Length) {
	var reach [len(sideNames)]struct {
		any      bool
		from, to length.Length
	}
	ring := w.face[0]
	for i, c := range ring {
		next := ring[(i+1)%len(ring)]
		if w.pipe(c.On) || w.own != nil && slants(c.Point, next.Point) {
			continue
		}
		side := facing(c.Point, next.Point)
		from, to := min(c.Y, next.Y), max(c.Y, next.Y) // left and right: how high
		if side%2 == 1 {
			from, to = min(c.X, next.X), max(c.X, next.X) // bottom and top: how wide
		}
		r := &reach[side]
		if r.any {
			from, to = min(r.from, from), max(r.to, to)
		}
		r.any, r.from, r.to = true, from, to
	}
	of := func(side int) length.Length { return reach[side].to - reach[side].from }
	return of(0), of(2), of(1), of(3)
}

// slants tells whether an edge runs neither along the fence nor square to it, but for a taper of 1 in 8.
func slants(a, b plane.Point) bool {
	wide, high := (b.X - a.X).Abs(), (b.Y - a.Y).Abs()
	return 8*min(wide, high) > max(wide, high)
}

// notches finds the bites: runs of corners where the outline turns inwards,
// each with the edges before and after it, as far as these go on towards the
// same side: the rim of a tub may bend within the bite; and openings wholly within
// the piece. Rims of pipes are holes instead.
func (w work) notches(step length.Length) []Notch {
	ring := w.face[0]
	var all []Notch
	for i := range ring {
		if !w.inward(i) || w.inward((i+len(ring)-1)%len(ring)) {
			continue // not the first corner of a run
		}
		if before := ring[(i+len(ring)-1)%len(ring)]; w.own != nil && slants(before.Point, ring[i].Point) {
			continue // it faces no side of the fence: its marks say where it is
		}
		last := i
		for w.inward(last % len(ring)) {
			last++
		}
		all = append(all, w.notch(w.bite(i, last), step))
	}
	for _, ring := range w.face[1:] {
		if ring.Area2() < 0 && !w.pipe(ring[0].On) {
			all = append(all, w.notch(ring, step))
		}
	}
	return all
}

// notch is what a bite with these corners leaves on its sides.
func (w work) notch(corners plane.Ring, step length.Length) Notch {
	b := plane.Region{corners}.Bounds()
	return Notch{
		Left: b.Left.FloorTo(step), Right: (w.box.Width() - b.Right).FloorTo(step),
		Below: b.Bottom.FloorTo(step), Above: (w.box.Height() - b.Top).FloorTo(step),
	}
}

// bite lists the corners of a notch that turns inwards from corner first to the
// one before last, counted on past the end of the ring.
func (w work) bite(first, last int) plane.Ring {
	ring := w.face[0]
	corner := func(i int) plane.Corner { return ring[(i+len(ring))%len(ring)] }
	side := func(i int) int { return facing(corner(i).Point, corner(i+1).Point) }
	for side(first-2) == side(first-1) {
		first--
	}
	for side(last-1) == side(last) {
		last++
	}
	var run plane.Ring
	for i := first - 1; i <= last; i++ {
		run = append(run, corner(i))
	}
	return run
}

// inward tells whether the outline turns right at corner i, towards another
// side and not at the rim of a pipe. A rake that bends inwards is no notch.
func (w work) inward(i int) bool {
	ring := w.face[0]
	a, b, c := ring[(i+len(ring)-1)%len(ring)], ring[i], ring[(i+1)%len(ring)]
	turn := (b.X - a.X).Times(c.Y-b.Y) - (b.Y - a.Y).Times(c.X-b.X)
	return turn < 0 && facing(a.Point, b.Point) != facing(b.Point, c.Point) && !w.pipe(a.On) && !w.pipe(b.On)
}

// holes lists the pipes to which the piece is cut.
func (w work) holes(step length.Length) []Hole {
	var all []Hole
	for _, side := range w.piece.Cuts {
		if !w.pipe(side) {
			continue
		}
		o := w.wall.Found.Openings[w.wall.Shape.Sides[side].Part.N]
		at := plane.Point{X: o.At, Y: o.Up}
		if w.own != nil {
			at = w.own.in(at)
		}
		all = append(all, Hole{
			Name: o.Name, Diameter: (o.Diameter + 2*w.clear).CeilTo(step),
			FromLeft: (at.X - w.box.Left).RoundTo(step), Up: (at.Y - w.box.Bottom).RoundTo(step),
		})
	}
	return all
}

// pipe tells whether an edge on that side is the rim of a pipe's hole.
func (w work) pipe(side plane.Side) bool {
	return side >= 0 && int(side) < len(w.wall.Shape.Sides) && w.wall.Shape.Sides[side].Kind == survey.Pipe
}

// sideNames are the edges of a piece as one turns round it.
var sideNames = [...]string{"left", "bottom", "right", "top"}

// edges names the edges that are as made, on a side of the tile, and those
// that are cut. The rim of a hole is neither.
func (w work) edges() (factory, cut []string) {
	var made, sawn [len(sideNames)]bool
	for _, ring := range w.face {
		for i, c := range ring {
			next := ring[(i+1)%len(ring)].Point
			side := facing(c.Point, next)
			made[side] = made[side] || w.made(c, next)
			sawn[side] = sawn[side] || !w.made(c, next) && !w.pipe(c.On)
		}
	}
	return named(made), named(sawn)
}

// made tells whether an edge lies on a side of the tile.
func (w work) made(a plane.Corner, b plane.Point) bool {
	if w.own != nil {
		return a.On == 0
	}
	t := w.piece.Tile
	x, y := a.X+w.box.Left, a.Y+w.box.Bottom
	return a.X == b.X && (x == t.Left || x == t.Right) || a.Y == b.Y && (y == t.Bottom || y == t.Top)
}

func named(sides [len(sideNames)]bool) []string {
	var names []string
	for i, has := range sides {
		if has {
			names = append(names, sideNames[i])
		}
	}
	return names
}

// facing tells to which side, as an index of sideNames, the edge a→b of a ring
// faces out.
func facing(a, b plane.Point) int {
	run, rise := b.X-a.X, b.Y-a.Y
	switch {
	case rise.Abs() >= run.Abs() && rise < 0:
		return 0
	case rise.Abs() >= run.Abs():
		return 2
	case run > 0:
		return 1
	}
	return 3
}
