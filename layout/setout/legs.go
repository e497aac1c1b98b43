package setout

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/survey"
)

// withoutSeams drops from the bare places of a wall what lies between a leg in single
// tiles and the courses over the rim: there the two are cut apart and no boundary is.
// Between them stands a joint at most.
func withoutSeams(w survey.WallFound, joint length.Length, gaps []piece.Gap) []piece.Gap {
	for _, leg := range w.LegsBeside() {
		if _, how := w.LegOf(leg); how != survey.SingleTiles {
			continue
		}
		gaps = slices.DeleteFunc(gaps, func(g piece.Gap) bool {
			return g.From.X == g.To.X && (g.From.X-leg.Front).Abs() <= joint && min(g.From.Y, g.To.Y) >= leg.Rim
		})
	}
	return gaps
}
