package count

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Places lists where the free marks of a wall may stand.
type Places struct {
	w        *facts
	marks    *Marks
	boundary *boundary
	options  table[optionKey, *optionList]
	meter    *meter
}

// mostOptions bounds how many lists of options are kept.
const mostOptions = 4000

func newPlaces(w *facts, marks *Marks, b *boundary, m *meter) *Places {
	return &Places{w: w, marks: marks, boundary: b, options: newTable[optionKey, *optionList](mostOptions, m), meter: m}
}

// Ends lists where a free end may stand: on the edges of tiles, on either side of a
// joint, and at the limits of its range and in front of the steps of the base, where a
// run turns. Between two of these all that an end cuts grows towards one of them. Where the ends are alike it may
// also stand where it leaves of a tile what the other end leaves, or half.
func (p *Places) Ends(edge length.Length, right bool) []length.Length {
	e := p.w.found.Left
	if right {
		e = p.w.found.Right
	}
	switch {
	case e.Meets:
		return []length.Length{0}
	case !e.Stops.Free():
		return []length.Length{e.Stops.From}
	}
	out := append(p.w.level(edge).edges(e.Stops), p.likeOther(edge, right, e.Stops)...)
	for _, ring := range p.w.field.Solid {
		for i, c := range ring {
			if d := ring[(i+1)%len(ring)]; c.On >= survey.SideBase && c.X == d.X {
				out = append(out, p.atStep(c.X, right, e.Stops)...)
			}
		}
	}
	out = append(out, e.Stops.From, e.Stops.To)
	slices.Sort(out)
	return slices.Compact(out)
}

// atStep lists where in a span an end may stand beside a step of the base at x: in front of it and, where the ends are
// alike, half a tile behind it.
func (p *Places) atStep(x length.Length, right bool, span survey.Span) (out []length.Length) {
	marks := []length.Length{x}
	if half := p.half(); p.w.likeEnds() && right {
		marks = append(marks, x+half)
	} else if p.w.likeEnds() {
		marks = append(marks, x-half)
	}
	for _, x := range marks {
		if span.From <= x && x <= span.To {
			out = append(out, x)
		}
	}
	return out
}

// half is how much of a tile, in whole marks, an end must leave so that its run is as good as any.
func (p *Places) half() length.Length {
	tile := p.w.room.Tile.Width
	return min(tile, (tile + 1).Half().CeilTo(p.w.room.Tape))
}

// likeOther lists where in a span an end leaves of the tiles of some class what makes the ends as alike as can be.
func (p *Places) likeOther(edge length.Length, right bool, span survey.Span) (out []length.Length) {
	if !p.w.likeEnds() {
		return nil
	}
	g, other := p.w.level(edge), p.w.found.Right
	if right {
		other = p.w.found.Left
	}
	for class := range g.shifts {
		for _, x := range limits(other) {
			left := g.before(x, class)
			if right {
				left = g.after(x, class)
			}
			for _, wide := range p.alike(left) {
				if right {
					out = append(out, g.within(span, wide)...)
				} else {
					out = append(out, g.within(span, g.tile-wide)...)
				}
			}
		}
	}
	return out
}

// alike lists how wide an end may leave a tile of which the other end leaves so much: as much, or as much in whole marks
// and less than a mark more; where that is under half a tile also the half.
func (p *Places) alike(other length.Length) []length.Length {
	tile, tape := p.w.room.Tile.Width, p.w.room.Tape
	out := []length.Length{other, min(tile, other.CeilTo(tape))}
	if 2*other < tile {
		out = append(out, p.half())
	}
	return out
}

// Heads lists where a free head may stand: on the top edges of tiles, with columns also at the limits of its range and, where
// they step, on the far side of joints, where what it cuts of other columns is widest; at the limits of its range where no tile
// ends in it; and on the level edges of measured openings, where a run turns. Where the first and the last course are
// to be alike it may also leave of a tile what the base leaves.
func (p *Places) Heads(line length.Length) []length.Length {
	h := p.w.found.Head
	switch {
	case h.Meets:
		return []length.Length{0}
	case !h.Stops.Free():
		return []length.Length{h.Stops.From}
	}
	tiles := p.w.upright(line)
	out := tiles.within(h.Stops, tiles.tile)
	if len(tiles.shifts) > 1 {
		out = tiles.edges(h.Stops)
	}
	if len(out) == 0 || p.w.frame.plumb {
		out = append(out, h.Stops.From, h.Stops.To)
	}
	out = append(out, p.openingsIn(h.Stops)...)
	if p.w.room.Prefer.Shared {
		out = append(out, p.likeBase(tiles, h.Stops)...)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// openingsIn lists the level edges of measured openings in a span.
func (p *Places) openingsIn(span survey.Span) (out []length.Length) {
	for _, o := range p.w.found.Openings {
		if o.Kind == survey.Pipe || o.Bottom.Free() || o.Height.Free() {
			continue
		}
		for _, y := range [...]length.Length{o.Bottom.From, o.Bottom.From + o.Height.From} {
			if span.From <= y && y <= span.To {
				out = append(out, y)
			}
		}
	}
	return out
}

// likeBase lists where in a span a head leaves of the tiles of some class what the base leaves of those of some class
// at one of its corners.
func (p *Places) likeBase(tiles grid, span survey.Span) (out []length.Length) {
	for _, ring := range p.w.field.Solid {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if plane.Steep(a, b) || !piece.EdgeOf(a.On, facingOf(a, b)).IsBase(p.w.rule.Sides) {
				continue
			}
			for _, y := range [...]length.Length{a.Y, b.Y} {
				for class := range tiles.shifts {
					out = append(out, tiles.within(span, tiles.after(y, class))...)
				}
			}
		}
	}
	return out
}

// LevelPairs lists where the plumb edges of a free opening may stand, for a start,
// and UprightPairs where its level edges may, for a course line.
func (p *Places) LevelPairs(i int, edge length.Length) []Pair {
	o := p.w.found.Openings[i]
	s := sought{tiles: p.w.level(edge), low: o.Left, size: o.Width, high: p.w.pinned(o, survey.RightEdge), far: o.Right, tape: p.w.room.Tape}
	if wish, is := p.marks.wishX(o, p.w.box()); is {
		s.wish = &wish
	}
	return s.pairs()
}

// UprightPairs lists where the level edges of a free opening may stand.
func (p *Places) UprightPairs(i int, line length.Length) []Pair {
	o := p.w.found.Openings[i]
	s := sought{tiles: p.w.upright(line), low: o.Bottom, size: o.Height, high: p.w.pinned(o, survey.TopEdge), far: o.Top, tape: p.w.room.Tape}
	if o.Near.Y != nil {
		wish := 2 * *o.Near.Y
		s.wish = &wish
	}
	return s.pairs()
}

// Overlap tells whether an opening runs into another, or into a pipe's hole. One that is
// away runs into nothing.
func (p *Places) Overlap(placed survey.Placed) bool {
	boxes := make([]plane.Rect, 0, len(placed.Openings))
	for i, o := range p.w.found.Openings {
		boxes = append(boxes, p.w.boxOf(i, o, placed))
	}
	for _, i := range p.w.free {
		if placed.Openings[i] == Away {
			continue
		}
		for k := range boxes {
			if k != i && boxes[k].Overlaps(boxes[i]) {
				return true
			}
		}
	}
	return false
}

// onLine are the obstacles for one course line: a free head stands on the top of a course.
func (b *boundary) onLine(p *Places, line length.Length) []obstacle {
	if b.w.frame.plumb || !b.w.moves(survey.SideHead) {
		return b.obstacles
	}
	heads := p.Heads(line)
	out := slices.Clone(b.obstacles)
	for i := range out {
		if o := &out[i]; o.edge == piece.EdgeOf(survey.SideHead, piece.Over) {
			o.Bottom, o.Top = slices.Min(heads), max(o.Top, slices.Max(heads))
		}
	}
	return out
}
