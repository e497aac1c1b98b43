package setout

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// However closely a start is looked at, it is never said to be worse than it is,
// in any term: else the search could pass over the best.
func TestNoBoundClaimsMoreThanTheCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := rapid.SampledFrom([]func(*rapid.T) survey.Room{randomRoom, freeRoom}).Draw(t, "room")(t)
		s := newSolver(&room, survey.Left)
		for range 20 {
			line := rapid.SampledFrom(s.lines(true)).Draw(t, "line")
			bounds, _ := s.lineBounds(line, true)
			edge := rapid.SampledFrom(s.edges(0, line, true)).Draw(t, "edge")
			f := s.fields[0]
			across, _ := f.frame(line, edge)
			heads := s.compiled(0, across, line)
			exact := f.weigh(line, edge, heads).merit
			bound := f.guess(edge).least(bounds[0])
			for _, skim := range []bool{true, false} {
				noWorse(t, bound, exact)
				bound = bound.least(f.count(edge, line, heads, skim))
			}
			noWorse(t, bound, exact)
		}
	})
}

func noWorse(t *rapid.T, bound, exact Merit) {
	require.LessOrEqual(t, bound.Bare, exact.Bare, "bare")
	require.LessOrEqual(t, bound.Slivers, exact.Slivers, "slivers")
	require.LessOrEqual(t, bound.OffLine, exact.OffLine, "off line")
	require.False(t, bound.Smallest.Less(exact.Smallest.Min(piece.Half)), "smallest %v %v", bound.Smallest, exact.Smallest)
	require.LessOrEqual(t, bound.Imbalance, exact.Imbalance, "balance")
	require.LessOrEqual(t, bound.CutPieces, exact.CutPieces, "cut")
	require.LessOrEqual(t, bound.Find, exact.Find, "find")
}

// Found by solving a wall with 32 free niches, which took gigabytes: every free
// opening doubled the parts of every edge, most of them empty.
func TestWhatIsTakenOutOfAnEdgeLeavesNoEmptyParts(t *testing.T) {
	parts := [][2]length.Length{{0, 1000}}
	for range 12 {
		parts = without(parts, 400, 600)
	}
	require.Equal(t, [][2]length.Length{{0, 400}, {600, 1000}}, parts)
}
