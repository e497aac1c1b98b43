package phase

import (
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// freeMark is a mark of a wall that the solver places: where it may be, and how it
// is read and moved.
type freeMark struct {
	from, to length.Length
	at       func(*survey.Placed) length.Length
	move     func(*survey.Placed, length.Length)
}

// marksOf places every measured mark, free ends and heads where they leave most
// wall, free openings in the middle of their ranges, or where they are wished; and
// lists the marks that are free.
func marksOf(w survey.WallFound) (survey.Placed, []freeMark) {
	p := survey.Placed{Left: w.Left.Stops.From, Right: w.Right.Stops.To, Head: w.Head.Stops.To, Openings: make([]survey.Edges, len(w.Openings))}
	var free []freeMark
	if s := w.Left.Stops; !w.Left.Meets && s.Free() {
		free = append(free, freeMark{s.From, s.To, func(p *survey.Placed) length.Length { return p.Left }, func(p *survey.Placed, x length.Length) { p.Left = x }})
	}
	if s := w.Right.Stops; !w.Right.Meets && s.Free() {
		free = append(free, freeMark{s.From, s.To, func(p *survey.Placed) length.Length { return p.Right }, func(p *survey.Placed, x length.Length) { p.Right = x }})
	}
	if s := w.Head.Stops; !w.Head.Meets && s.Free() {
		free = append(free, freeMark{s.From, s.To, func(p *survey.Placed) length.Length { return p.Head }, func(p *survey.Placed, x length.Length) { p.Head = x }})
	}
	for i, o := range w.Openings {
		if o.Kind == survey.Pipe {
			continue
		}
		e := &p.Openings[i]
		e.Left, e.Right = begin(o.Left, o.Width, o.Near.X)
		e.Bottom, e.Top = begin(o.Bottom, o.Height, o.Near.Y)
		*e = o.Within(*e)
		free = append(free, openingMarks(i, o)...)
	}
	return p, free
}

// begin is where an opening stands first in one direction.
func begin(low, size survey.Span, near *length.Length) (from, to length.Length) {
	wide := (size.From + size.To).Half()
	from = (low.From + low.To).Half()
	if near != nil {
		from = min(max(*near-wide.Half(), low.From), low.To)
	}
	return from, from + wide
}

// openingMarks are the free marks of an opening. Moving its low edge takes the high
// one along; moving the high one changes its size.
func openingMarks(i int, o survey.OpeningFound) (free []freeMark) {
	if o.Left.Free() {
		free = append(free, freeMark{o.Left.From, o.Left.To, func(p *survey.Placed) length.Length { return p.Openings[i].Left },
			func(p *survey.Placed, x length.Length) {
				e := &p.Openings[i]
				e.Left, e.Right = x, x+e.Right-e.Left
			}})
	}
	if o.Width.Free() {
		free = append(free, freeMark{o.Width.From, o.Width.To, func(p *survey.Placed) length.Length { return p.Openings[i].Right - p.Openings[i].Left },
			func(p *survey.Placed, x length.Length) { p.Openings[i].Right = p.Openings[i].Left + x }})
	}
	if o.Bottom.Free() {
		free = append(free, freeMark{o.Bottom.From, o.Bottom.To, func(p *survey.Placed) length.Length { return p.Openings[i].Bottom },
			func(p *survey.Placed, x length.Length) {
				e := &p.Openings[i]
				e.Bottom, e.Top = x, x+e.Top-e.Bottom
			}})
	}
	if o.Height.Free() {
		free = append(free, freeMark{o.Height.From, o.Height.To, func(p *survey.Placed) length.Length { return p.Openings[i].Top - p.Openings[i].Bottom },
			func(p *survey.Placed, x length.Length) { p.Openings[i].Top = p.Openings[i].Bottom + x }})
	}
	for k, m := range free {
		free[k].move = func(p *survey.Placed, x length.Length) {
			m.move(p, x)
			p.Openings[i] = o.Within(p.Openings[i])
		}
	}
	return free
}

// placed sets a wall out with its free ends and its free head each where the tiles
// that it alone cuts are best; of equal places the one that leaves most wall.
func (w *Wall) placed(line, start length.Length) Setting {
	s := Setting{Line: line, Edge: start, Placed: w.outer}
	for side, edges := range w.loose {
		if len(edges) == 0 {
			continue
		}
		var span survey.Span
		var put func(length.Length)
		switch plane.Side(side) {
		case survey.SideLeft:
			span, put = w.Found.Left.Stops, func(x length.Length) { s.Placed.Left = x }
		case survey.SideRight:
			span, put = w.Found.Right.Stops, func(x length.Length) { s.Placed.Right = x }
		default:
			span, put = w.Found.Head.Stops, func(x length.Length) { s.Placed.Head = x }
		}
		put(w.bestPlace(edges, plane.Side(side), span, line, start))
	}
	return s
}

// bestPlace is the place of one free end or head in its range.
func (w *Wall) bestPlace(edges []edge, side plane.Side, span survey.Span, line, start length.Length) length.Length {
	outer := span.To
	if side == survey.SideLeft {
		outer = span.From
	}
	best, known := outer, merit.Merit{}
	step := max(w.room.Tape, ((span.To - span.From) / mostPlaces).CeilTo(w.room.Tape))
	for by := length.Length(0); by <= span.To-span.From; by += step {
		at := outer - by
		if side == survey.SideLeft {
			at = outer + by
		}
		// The edges stand at outer; the wall moves towards them instead.
		back := plane.Point{X: outer - at}
		if side == survey.SideHead {
			back = plane.Point{Y: outer - at}
		}
		origin := w.Pattern.Origin(line, start)
		move := w.Pattern.Phase(plane.Point{X: origin.X + back.X, Y: origin.Y + back.Y})
		t := tally{w: w}
		for i := range edges {
			for k := range edges[i].near {
				edges[i].bound(&t, &edges[i].near[k], move, 2, 0)
			}
		}
		if m := t.merit(); by == 0 || w.order.Better(&m, &known) {
			best, known = at, m
		}
	}
	w.Work++
	return best
}

// mostPlaces is at how many places one free mark is tried.
const mostPlaces = 64

// placeMarks moves one free mark of a wall after another to where it serves the
// phase best, until none is better or each was moved twice. What stands afterwards is
// no worse than what stood before.
func (s *solver) placeMarks(w *Wall, c Counted) Counted {
	for range 2 {
		moved := false
		for _, m := range w.free {
			step := max(s.room.Tape, ((m.to - m.from) / mostPlaces).CeilTo(s.room.Tape))
			for x := m.from; ; x = min(x+step, m.to) {
				if s.ended = s.ended || s.ctx.Err() != nil; s.ended {
					return c
				}
				p := c.Placed
				p.Openings = append([]survey.Edges(nil), p.Openings...)
				m.move(&p, x)
				if x != m.at(&c.Placed) && apart(p.Openings) {
					if n := w.Count(Setting{c.Line, c.Edge, p}); s.order.Better(&n.Merit, &c.Merit) {
						c, moved = n, true
					}
				}
				if x == m.to {
					break
				}
			}
		}
		if !moved {
			break
		}
	}
	return c
}

// apart tells whether no opening stands in another.
func apart(all []survey.Edges) bool {
	for i, a := range all {
		for _, b := range all[:i] {
			if a.Left < b.Right && b.Left < a.Right && a.Bottom < b.Top && b.Bottom < a.Top {
				return false
			}
		}
	}
	return true
}
