package search

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
)

// wallByWall looks at the starts of one wall after the other on the line of the best, the others as
// they are, as far as the work given for that goes, and gives what is best then.
func (s *solver) wallByWall(best *trial, effort int) *trial {
	for i, w := range s.walls {
		s.allow(effort / len(s.walls))
		for h := s.hunt(w, best.line); ; {
			cut := best.beside(i)
			edge, left := h.take(cut)
			if !left {
				break
			}
			if got := s.place(w, best.line, edge, nil, cut, fewTries); got != nil {
				best = best.with(i, got)
			}
		}
	}
	return best
}

// take takes the start that promises most with its rows as they stand; none is left where no other can pass the cutoff,
// or the work is spent.
func (h *hunt) take(cut *cutoff) (edge length.Length, left bool) {
	for !h.queue.empty() && !h.stopped() {
		c := h.queue.first()
		if cut.passed(h.order, &c.merit) {
			break
		}
		if c.depth >= refined {
			return h.queue.take().edge, true
		}
		h.closer(c)
	}
	return 0, false
}

// with is a trial with one wall set out otherwise, where that is better.
func (t *trial) with(wall int, c *count.Counted) *trial {
	s := t.solver
	walls := slices.Clone(t.walls)
	walls[wall] = *c
	if m := s.whole(walls); s.order.Better(&m, &t.merit) {
		return trialOf(s, t.line, walls)
	}
	return t
}

// beside is what a wall must reach beside the others of a trial to be better.
func (t *trial) beside(wall int) *cutoff {
	var rest merit.Merit
	for i, c := range t.walls {
		if i != wall {
			rest = rest.Plus(&c.Merit)
		}
	}
	return &cutoff{&rest, &t.merit, true}
}

// trialOf is a line on which every wall is set out.
func trialOf(s *solver, line length.Length, walls []count.Counted) *trial {
	t := &trial{solver: s, line: line, depth: exact}
	for i, w := range s.walls {
		t.hunts = append(t.hunts, &hunt{solver: s, wall: w, line: line, ties: walls[i : i+1]})
	}
	t.walls, t.merit = s.together(t.hunts)
	return t
}
