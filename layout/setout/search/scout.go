package search

import "coursewright/layout/length"

// farStarts is how many starts of a wall are looked at on one line, far apart.
const farStarts = 32

// scout looks at starts far apart on lines far apart: so no part of what a room allows goes unseen where bounds
// do not tell its parts from each other.
type scout struct {
	*solver
	until int // so much may be counted
}

// lines gives what comes of each line, as far as the work for that goes.
func (s *scout) lines() []*trial {
	var out []*trial
	for _, line := range spread(s.solver.lines()) {
		if s.ended || s.work() > s.until {
			break
		}
		if t := s.on(line); t != nil {
			out = append(out, t)
		}
	}
	return out
}

// on is the best of a few starts of every wall on a line, with their marks where they promise most; nil
// where the work for that ends before.
func (s *scout) on(line length.Length) *trial {
	t := &trial{solver: s.solver, line: line, depth: exact}
	s.limit = min(s.until, s.end)
	for _, w := range s.walls {
		h := &hunt{solver: s.solver, wall: w, line: line}
		for _, edge := range apart(w.Starts.Tried(), farStarts) {
			if s.stopped() {
				return nil
			}
			if h.beaten(edge) {
				continue
			}
			if got := s.place(w, line, edge, h.limit(), nil, 1); got != nil {
				h.keep(*got)
			}
		}
		t.hunts = append(t.hunts, h)
	}
	t.walls, t.merit = s.together(t.hunts)
	return t
}

// apart are so many of some starts, as far from each other as can be.
func apart(all []length.Length, most int) []length.Length {
	var out []length.Length
	for k := 0; k < len(all); k += (len(all) + most - 1) / most {
		out = append(out, all[k])
	}
	return out
}
