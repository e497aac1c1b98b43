package search

import (
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

// best is the best of the slips, as far as the work for that goes, or what was best before.
func (s *slipper) best(best *trial) *trial {
	s.limit = s.work() + 2*s.fresh
	q := queue[*slip]{before: s.before}
	q.items = s.slips()
	q.sort()
	for !q.empty() && !s.stopped() && s.order.Better(&q.first().merit, &best.merit) {
		if p := q.first(); p.depth < refined {
			s.closer(p)
			q.settle()
			continue
		}
		if t := s.slipped(q.take(), best); t != nil && s.order.Better(&t.merit, &best.merit) {
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
}

func (s *slipper) before(a, b *slip) bool {
	if order, _ := s.order.Compare(&a.merit, &b.merit); order != 0 {
		return order < 0
	}
	return a.line < b.line || a.line == b.line && a.moved < b.moved
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

// slips are all lines, as far as the work for that goes, with the starts moved by each turn.
func (s *slipper) slips() []*slip {
	var out []*slip
	for _, line := range s.lines() {
		if s.stopped() {
			break
		}
		for _, moved := range s.turns {
			p := &slip{line: line, moved: moved}
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

// slipped is what the line of a slip gives with its starts; nil where that is not as
// good as the best.
func (s *slipper) slipped(p *slip, best *trial) *trial {
	var walls []count.Counted
	for i, w := range s.solver.walls {
		var others merit.Merit
		for k, m := range p.walls {
			if k != i {
				others = others.Plus(&m)
			}
		}
		c := s.place(w, p.line, p.edge(w, s.walls[i].Edge), nil, &cutoff{&others, &best.merit, true}, fewTries)
		if c == nil {
			return nil
		}
		p.walls[i] = c.Merit
		walls = append(walls, *c)
	}
	return trialOf(s.solver, p.line, walls)
}
