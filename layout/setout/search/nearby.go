package search

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
)

// nearby is the best of a trial and of what comes of its starts on the lines next to its own, with columns each of them on
// the line, where one wall after the other is looked at, as far as the work for that goes.
func (t *trial) nearby() *trial {
	s := t.solver
	best, lines, turns := t, s.lines(), []length.Length{0}
	if s.room.Bond.Plumb { // another column comes to lie on a mark
		turns = turnsOf(s.room, s.hand)
	}
	at := slices.Index(lines, t.line)
	part := s.share / 16
	limit := s.work() + 6*part
	for _, by := range [...]int{-1, 1, -2, 2} {
		n := at + by
		if at < 0 || n < 0 || n >= len(lines) {
			continue
		}
		for _, along := range turns {
			if s.work() > limit {
				break
			}
			if next := t.moved(slip{line: lines[n], moved: along}, part/4); next != nil {
				if next = s.wallByWall(next, part/2).placedAnew(); s.order.Better(&next.merit, &best.merit) {
					best = next
				}
			}
		}
	}
	return best
}

// slid is the best of a trial and of what comes of sliding its line under its starts, by ever smaller steps and each as
// long as that betters it, as far as the work for that goes.
func (t *trial) slid() *trial {
	s := t.solver
	lines, until := s.lines(), s.work()+s.fresh
	for by := 16; by > 0; by /= 2 {
		for _, way := range [...]int{-by, by} {
			for at := slices.Index(lines, t.line) + way; 0 <= at && at < len(lines) && s.work() < until; at += way {
				next := t.moved(slip{line: lines[at]}, s.fresh/8)
				if next == nil || !s.order.Better(&next.merit, &t.merit) {
					break
				}
				t = next
			}
		}
	}
	return t
}

// moved is what the starts of a trial give with a slip; nil where the work given for that does not go so
// far, or one wall alone gives less than the trial.
func (t *trial) moved(to slip, effort int) *trial {
	s := t.solver
	var walls []count.Counted
	s.allow(effort)
	for i, w := range s.walls {
		c := s.place(w, to.line, to.edge(w, t.walls[i].Edge), nil, &cutoff{&merit.Merit{}, &t.merit, true}, fewTries)
		if c == nil {
			return nil
		}
		walls = append(walls, *c)
	}
	return trialOf(s, to.line, walls)
}
