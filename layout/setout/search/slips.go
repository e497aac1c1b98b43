package search

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"
)

// slipper slips the line under the starts that the walls of a room have.
type slipper struct {
	*solver
	walls []count.Counted
	turns []length.Length // how far all starts are moved, one or the other
}

// best is the best of the slips, as far as the work for that goes, or what was best before: of those that promise
// most or, where none of these is better, of those spread evenly over all that give most at the first try. Where
// bounds do not tell the slips apart the second are what leads far.
func (s *slipper) best(best *trial) *trial {
	s.allow(2 * s.fresh)
	all := s.slips()
	if better := s.promising(slices.Clone(all), best); better != best {
		return better
	}
	for _, p := range s.tried(all, best) {
		s.allow(s.fresh / 2 / mostClosely)
		best = s.closely(p, best)
	}
	return best
}

// promising is the best of those of some slips that promise most, and of what was best before.
func (s *slipper) promising(slips []*slip, best *trial) *trial {
	q := queue[*slip]{slips, s.before}
	q.sort()
	for !q.empty() && !s.stopped() && s.order.Better(&q.first().merit, &best.merit) {
		if p := q.first(); p.depth < refined {
			s.closer(p)
			q.settle()
			continue
		}
		best = s.closely(q.take(), best)
	}
	return best
}

// tried are those of some slips that give most with their marks where they promise most, on lines apart, as far as the
// work for that goes.
func (s *slipper) tried(slips []*slip, best *trial) []*slip {
	s.allow(s.fresh / 2)
	var out []*slip
	for _, p := range slips {
		if s.stopped() {
			break
		}
		if s.order.Better(&p.merit, &best.merit) {
			if p.trial = s.slipped(p, best, 1); p.trial != nil {
				out = append(out, p)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b *slip) int {
		order, _ := s.order.Compare(&a.trial.merit, &b.trial.merit)
		return order
	})
	return scattered(out, func(p *slip) length.Length { return p.line }, (s.room.Tile.Height+s.room.Joint)/32)
}

// closely is the best of a slip, with more of its placings, and of what was best before.
func (s *slipper) closely(p *slip, best *trial) *trial {
	for _, t := range [...]*trial{p.trial, s.slipped(p, best, fewTries)} {
		if t != nil && s.order.Better(&t.merit, &best.merit) {
			best = t
		}
	}
	return best
}

// slip is a course line with the starts of another, all moved alike, and what that cannot beat.
type slip struct {
	line, moved length.Length
	walls       []merit.Merit
	merit       merit.Merit
	depth       depth
	place       int    // among all slips, so that those of which nothing is known come evenly spread
	trial       *trial // what comes of it at the first try
}

func (s *slipper) before(a, b *slip) bool {
	if order, _ := s.order.Compare(&a.merit, &b.merit); order != 0 {
		return order < 0
	}
	return a.place < b.place
}

// closer looks at a slip more closely: with the rows themselves.
func (s *slipper) closer(p *slip) {
	p.depth, p.merit = refined, merit.Merit{}
	for i, w := range s.solver.walls {
		if m := w.Bounds.Plainly(p.line, p.edge(w, s.walls[i].Edge)); s.order.Better(&p.walls[i], &m) {
			p.walls[i] = m
		}
		p.merit = p.merit.Plus(&p.walls[i])
	}
}

// slips are all lines, as far as the work for that goes and spread evenly, with the starts moved by each turn.
func (s *slipper) slips() []*slip {
	var out []*slip
	for _, line := range spread(s.lines()) {
		if s.stopped() {
			break
		}
		for _, moved := range s.turns {
			p := &slip{line: line, moved: moved, place: len(out)}
			for i, w := range s.solver.walls {
				m := w.Bounds.OfBoth(line, p.edge(w, s.walls[i].Edge))
				p.walls, p.merit = append(p.walls, m), p.merit.Plus(&m)
			}
			out = append(out, p)
		}
	}
	return out
}

// turnsOf are how far every start is moved so that another course of the bond, or another
// of its columns, comes to lie on the line: a line that slips beyond its pitch comes back
// with one of them.
func turnsOf(room *survey.Room, hand survey.Hand) []length.Length {
	out := bond.Of(*room, hand).Shifts()
	if room.Bond.Plumb {
		for k := range out {
			out[k] = length.Length(k) * (room.Tile.Width + room.Joint)
		}
	}
	return out
}

// edge is where a start comes to stand, unless it is pinned.
func (p *slip) edge(w *count.Wall, from length.Length) length.Length {
	if w.Found.Pin != nil {
		return from
	}
	return from + p.moved
}

// slipped is what the line of a slip gives with its starts, with so many placings tried; nil where it cannot be as
// good as the best.
func (s *slipper) slipped(p *slip, best *trial, tries int) *trial {
	var walls []count.Counted
	sure := slices.Clone(p.walls)
	for i, w := range s.solver.walls {
		var others merit.Merit
		for k, m := range sure {
			if k != i {
				others = others.Plus(&m)
			}
		}
		c := s.place(w, p.line, p.edge(w, s.walls[i].Edge), nil, &cutoff{&others, &best.merit, true}, tries)
		if c == nil {
			return nil
		}
		sure[i] = c.Merit
		walls = append(walls, *c)
	}
	return trialOf(s.solver, p.line, walls)
}
