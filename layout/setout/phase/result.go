package phase

import (
	"coursewright/layout/length"
	"coursewright/layout/merit"
)

// Result is the best set-out found of a room laid in a pattern.
type Result struct {
	Line   length.Length
	Walls  []Counted // in the job's order
	Merit  merit.Merit
	Proven bool        // no marks of the tape are better, before the terms of corners
	Free   bool        // marks were free, and were placed among their options
	Bound  merit.Merit // what no set-out can beat, where it is not proven

	*solver
}

// Wall is the wall that was counted.
func (r *Result) Wall(i int) *Wall { return r.walls[i] }

// Order is the order in which the terms were compared.
func (r *Result) Order() merit.Order { return r.order }

func (s *solver) result(t *trial, bound *merit.Merit) Result {
	r := Result{Line: t.line, Proven: bound == nil, solver: s}
	if bound != nil {
		r.Bound = *bound
	}
	for i, h := range t.hunts {
		r.Walls = append(r.Walls, *h.best)
		r.Free = r.Free || len(s.walls[i].axes) > 0
	}
	for i := range r.Walls {
		if !r.Proven {
			s.placeAnew(r.Walls, i)
		}
	}
	for i := range r.Walls {
		s.slacken(r.Walls, i)
	}
	r.Merit = s.whole(r.Walls)
	return r
}
