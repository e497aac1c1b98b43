package search

import (
	"math/bits"
	"slices"

	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
)

// spreadAlike lets starts that promise alike in all that is judged in sight come spread evenly over the wall, and not one
// beside the other. Lines have most of their lists of starts in common, so each is spread once.
func (s *solver) spreadAlike(groups []count.Group) []count.Group {
	out := slices.Clone(groups)
	for i, g := range groups {
		its, there := s.spreads[g.Starts[0]]
		if !there {
			its = spreadStarts(s.order, g.Starts)
			s.spreads[g.Starts[0]] = its
		}
		out[i].Starts = its
	}
	return out
}

func spreadStarts(by merit.Order, all []*count.Start) []*count.Start {
	out := make([]*count.Start, 0, len(all))
	for from := 0; from < len(all); from = len(out) {
		to := from + 1
		for to < len(all) && promiseAlike(by, &all[from].Merit, &all[to].Merit) {
			to++
		}
		out = append(out, spread(all[from:to])...)
	}
	return out
}

func promiseAlike(by merit.Order, a, b *merit.Merit) bool {
	order, _ := by.Until(a, b, merit.HiddenBare)
	return order == 0
}

// spread puts some things into an order of which every beginning is spread evenly over them.
func spread[T any](all []T) []T {
	width := bits.Len(uint(len(all)))
	var out []T
	for k := range 1 << width {
		if at := int(bits.Reverse64(uint64(k)) >> (64 - width)); at < len(all) {
			out = append(out, all[at])
		}
	}
	return out
}
