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
	options  map[optionKey]*optionList
	meter    *meter
}

func newPlaces(w *facts, marks *Marks, b *boundary, m *meter) *Places {
	return &Places{w: w, marks: marks, boundary: b, options: map[optionKey]*optionList{}, meter: m}
}

// Ends lists where a free end may stand: on the edges of tiles, on either side of a
// joint, and at the limits of its range and in front of the steps of the base, where a
// run turns. Between two of these all that an end cuts grows towards one of them. Where the ends are alike it may
// also stand where it leaves of a tile what the other end leaves.
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
			if d := ring[(i+1)%len(ring)]; c.On >= survey.SideBase && c.X == d.X && e.Stops.From <= c.X && c.X <= e.Stops.To {
				out = append(out, c.X)
			}
		}
	}
	out = append(out, e.Stops.From, e.Stops.To)
	slices.Sort(out)
	return slices.Compact(out)
}

// likeOther lists where in a span an end leaves of the tiles of some class what the other end leaves of those of some
// class where it is measured, or at the limits of its range.
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
			if right {
				out = append(out, g.within(span, g.after(x, class))...)
			} else {
				out = append(out, g.within(span, g.tile-g.before(x, class))...)
			}
		}
	}
	return out
}

// Heads lists where a free head may stand: on the top edges of courses, with columns
// on the edges of tiles on either side of a joint, or at the limits of its range where
// there is none. Where the first and the last course are to be alike it may also leave of a
// tile what the base leaves.
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
	if len(out) == 0 || p.w.frame.plumb {
		out = append(tiles.edges(h.Stops), h.Stops.From, h.Stops.To)
	}
	if p.w.room.Prefer.Shared {
		out = append(out, p.likeBase(tiles, h.Stops)...)
	}
	slices.Sort(out)
	return slices.Compact(out)
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
