package count

import (
	"testing"

	"coursewright/layout/length"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// A set-out seen from a course line some courses higher or lower is the same set-out: it gives the
// same merit, the same runs but for the names of their classes, and the same from there and back.
func TestASetOutIsTheSameFromAnotherCourse(t *testing.T) {
	exact := 0
	rapid.Check(t, func(t *rapid.T) {
		w, s := drawn(t)
		if !w.ShiftsExactly() || w.Found.Pin != nil {
			return
		}
		exact++
		courses := length.Length(rapid.IntRange(-5, 5).Draw(t, "courses"))
		line := s.Line + courses*(w.facts.rule.Across+w.facts.room.Joint)
		here, there := w.Count(s), w.From(s, line)
		require.Equal(t, line, there.Line)
		order, term := w.facts.order.Compare(&here.Merit, &there.Merit)
		require.Zero(t, order, "%d courses off it differs in %s", courses, term)
		require.Equal(t, here.Merit.Work, there.Merit.Work)
		require.Equal(t, here.LeftCuts, there.LeftCuts)
		require.Equal(t, here.RightCuts, there.RightCuts)
		require.Len(t, there.Runs, len(here.Runs))
		back := w.From(there.Setting, s.Line)
		pitch := w.facts.rule.Along + w.facts.room.Joint
		require.Zero(t, length.Mod(back.Edge-s.Edge, pitch), "and back")
	})
	require.Greater(t, exact, 20, "bonds whose shifts are exact were drawn")
}
