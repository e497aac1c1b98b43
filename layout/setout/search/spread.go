package search

import (
	"math/bits"
	"slices"

	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
)

// spreadAlike lets starts that promise alike in all that is judged in sight come spread evenly over the wall, and not one
// beside the other.
func spreadAlike(by merit.Order, groups []count.Group) []count.Group {
	out := slices.Clone(groups)
	for i, g := range groups {
		starts := make([]*count.Start, 0, len(g.Starts))
		for from := 0; from < len(g.Starts); from = len(starts) {
			to := from + 1
			for to < len(g.Starts) && promiseAlike(by, &g.Starts[from].Merit, &g.Starts[to].Merit) {
				to++
			}
			starts = append(starts, spread(g.Starts[from:to])...)
		}
		out[i].Starts = starts
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
