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
		s.limit = s.work() + effort/len(s.walls)
		for h := s.hunt(w, best.line); !h.queue.empty() && !s.stopped(); {
			c, cut := h.queue.first(), best.beside(i)
			if cut.passed(s.order, &c.merit) {
				break
			}
			if c.depth < refined {
				h.closer(c)
				continue
			}
			if got := s.place(w, best.line, h.queue.take().edge, nil, cut, fewTries); got != nil {
				walls := slices.Clone(best.walls)
				walls[i] = *got
				if m := s.whole(walls); s.order.Better(&m, &best.merit) {
					best = trialOf(s, best.line, walls)
				}
			}
		}
	}
	return best
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
	t := &trial{line: line, depth: exact}
	for i, w := range s.walls {
		t.hunts = append(t.hunts, &hunt{solver: s, wall: w, line: line, ties: walls[i : i+1]})
	}
	t.walls, t.merit = s.together(t.hunts)
	return t
}
