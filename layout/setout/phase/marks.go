package phase

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// freeMark is a mark of a wall that the solver places: where it may be, and how it
// is read and moved.
type freeMark struct {
	from, to length.Length
	on       plane.Side // the side that it moves
	fromTop  bool       // its wall is largest with the mark at to
	move     func(*survey.Placed, length.Length)
}

// marksOf places every measured mark, free ends and heads where they leave most
// wall, free openings in the middle of their ranges, or where they are wished; and
// lists the marks that are free.
func marksOf(w survey.WallFound) (survey.Placed, []freeMark) {
	p := survey.Placed{Left: w.Left.Stops.From, Right: w.Right.Stops.To, Head: w.Head.Stops.To, Openings: make([]survey.Edges, len(w.Openings))}
	var free []freeMark
	if s := w.Left.Stops; !w.Left.Meets && s.Free() {
		free = append(free, freeMark{s.From, s.To, survey.SideLeft, false, func(p *survey.Placed, x length.Length) { p.Left = x }})
	}
	if s := w.Right.Stops; !w.Right.Meets && s.Free() {
		free = append(free, freeMark{s.From, s.To, survey.SideRight, true, func(p *survey.Placed, x length.Length) { p.Right = x }})
	}
	if s := w.Head.Stops; !w.Head.Meets && s.Free() {
		free = append(free, freeMark{s.From, s.To, survey.SideHead, true, func(p *survey.Placed, x length.Length) { p.Head = x }})
	}
	for i, o := range w.Openings {
		if o.Kind == survey.Pipe {
			continue
		}
		e := &p.Openings[i]
		e.Left, e.Right = begin(o.Left, o.Width, o.Near.X)
		e.Bottom, e.Top = begin(o.Bottom, o.Height, o.Near.Y)
		*e = o.Within(*e)
		free = append(free, openingMarks(i, survey.SideBase+plane.Side(len(w.Base)+i), o)...)
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
func openingMarks(i int, on plane.Side, o survey.OpeningFound) (free []freeMark) {
	if o.Left.Free() {
		free = append(free, freeMark{o.Left.From, o.Left.To, on, false,
			func(p *survey.Placed, x length.Length) {
				e := &p.Openings[i]
				e.Left, e.Right = x, x+e.Right-e.Left
			}})
	}
	if o.Width.Free() {
		free = append(free, freeMark{o.Width.From, o.Width.To, on, false,
			func(p *survey.Placed, x length.Length) { p.Openings[i].Right = p.Openings[i].Left + x }})
	}
	if o.Bottom.Free() {
		free = append(free, freeMark{o.Bottom.From, o.Bottom.To, on, false,
			func(p *survey.Placed, x length.Length) {
				e := &p.Openings[i]
				e.Bottom, e.Top = x, x+e.Top-e.Bottom
			}})
	}
	if o.Height.Free() {
		free = append(free, freeMark{o.Height.From, o.Height.To, on, false,
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

// placed sets a wall out with each free mark where the tiles that the edges it moves
// cut alone are best; of equal places the first. A mark is placed with those before it
// where they stand now.
func (w *Wall) placed(line, start length.Length) Setting {
	s := Setting{Line: line, Edge: start, Placed: w.outer}
	if len(w.free) == 0 {
		return s
	}
	s.Placed.Openings = slices.Clone(s.Placed.Openings)
	for i := range w.free {
		var best *place
		w.eachPlace(&w.free[i], s, fewPlaces, func(one place) {
			if best == nil || w.order.Better(&one.merit, &best.merit) {
				best = &one
			}
		})
		if best != nil {
			w.free[i].move(&s.Placed, best.at)
		}
	}
	w.Work += len(w.free)
	return s
}

// place is where a mark may stand, and what the edges that it moves give there.
type place struct {
	at    length.Length
	merit merit.Merit
}

// eachPlace tells up to so many places of a mark, beginning where most wall is left.
func (w *Wall) eachPlace(m *freeMark, s Setting, most length.Length, each func(place)) {
	step := max(w.room.Tape, ((m.to - m.from) / most).CeilTo(w.room.Tape))
	origin := w.Pattern.Origin(s.Line, s.Edge)
	places := w.lines.under(m, origin)
	for by := length.Length(0); by < m.to-m.from+step; by += step {
		if at := m.from + min(by, m.to-m.from); m.fromTop {
			places = append(places, m.to-(at-m.from))
		} else {
			places = append(places, at)
		}
	}
	p, t := s.Placed, tally{w: w}
	p.Openings = slices.Clone(p.Openings)
	for _, at := range places {
		m.move(&p, at)
		if apart(p.Openings) {
			t = tally{w: w, runs: t.runs[:0]}
			for i := range w.loose {
				if w.loose[i].on == m.on {
					w.loose[i].bounds(&t, origin, &p)
				}
			}
			one := place{at, t.merit()}
			w.lines.add(&one.merit, Setting{s.Line, s.Edge, p}, w.ground(w.outer).box)
			each(one)
		}
		copy(p.Openings, s.Placed.Openings)
	}
}

// mostPlaces is at how many places one free mark is tried, fewPlaces for a phase that
// is one of many, and looked is how many of the best are counted in the end.
const (
	mostPlaces = 64
	fewPlaces  = 24
	looked     = 6
)

// placeMarks moves one free mark of a wall after another to where it serves the
// phase best, until none is better or each was moved twice. What stands afterwards is
// no worse than what stood before.
func (s *solver) placeMarks(w *Wall, c Counted) Counted {
	for range 2 {
		moved := false
		for i := range w.free {
			m := &w.free[i]
			var places []place
			w.eachPlace(m, c.Setting, mostPlaces, func(one place) { places = append(places, one) })
			slices.SortStableFunc(places, func(a, b place) int { order, _ := w.order.Compare(&a.merit, &b.merit); return order })
			for _, one := range places[:min(looked, len(places))] {
				if s.ended = s.ended || s.ctx.Err() != nil; s.ended {
					return c
				}
				p := c.Placed
				p.Openings = slices.Clone(p.Openings)
				m.move(&p, one.at)
				if n := w.Count(Setting{c.Line, c.Edge, p}); s.order.Better(&n.Merit, &c.Merit) {
					c, moved = n, true
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
