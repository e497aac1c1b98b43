package count

import (
	"testing"

	"coursewright/layout/length"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Law 1, of the widths at the ends: they are those of the pieces that the cutter makes.
func TestWidthsAtTheEndsAreThoseOfThePieces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s := drawn(t)
		if w.facts.frame.plumb || w.Places.Overlap(s.Placed) {
			t.Skip("columns, or openings that overlap")
		}
		want := map[int]*widths{}
		shape, pieces, _ := w.Cut(s)
		for i := range pieces {
			p := &pieces[i]
			if want[p.Row] == nil {
				n := noWidths
				want[p.Row] = &n
			}
			bothEnds{w.facts, shape.Solid.Bounds()}.addPiece(want[p.Row], p)
		}
		wantLeft, wantRight := map[int]length.Length{}, map[int]length.Length{}
		for course, at := range want {
			put(wantLeft, course, at[0])
			put(wantRight, course, at[1])
		}
		left, right := w.EndWidths(s)
		sameWidths(t, wantLeft, left)
		sameWidths(t, wantRight, right)
	})
}

// sameWidths wants the same courses with the same widths, to a unit: steep edges are rounded otherwise.
func sameWidths(t require.TestingT, want, got map[int]length.Length) {
	require.Len(t, got, len(want))
	for course, wide := range want {
		require.InDelta(t, float64(wide), float64(got[course]), 1, "course %d", course)
	}
}
