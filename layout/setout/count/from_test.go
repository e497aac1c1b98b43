package count

import (
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

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

// Columns on a line that is a rise higher, begun in the column that stands where another did, are the same set-out.
func TestColumnsAreTheSameARiseHigher(t *testing.T) {
	rises := 0
	rapid.Check(t, func(t *rapid.T) {
		w, s := drawn(t)
		rise, up := w.Rise(), w.facts.room.Tile.Height+w.facts.room.Joint
		if rise == up {
			return
		}
		rises++
		column := slices.IndexFunc(w.facts.shifts, func(shift length.Length) bool { return length.Mod(shift-rise, up) == 0 })
		there := s
		there.Line, there.Edge = s.Line+rise, s.Edge+length.Length(column)*(w.facts.room.Tile.Width+w.facts.room.Joint)
		require.True(t, !w.Starts.Has(s.Edge) || w.Starts.Has(there.Edge), "both are tried")
		a, b := w.Count(s), w.Count(there)
		order, term := w.facts.order.Compare(&a.Merit, &b.Merit)
		require.Zero(t, order, "%v higher it differs in %s", rise, term)
		require.Equal(t, a.LeftCuts, b.LeftCuts)
		require.Equal(t, a.RightCuts, b.RightCuts)
		require.Len(t, b.Runs, len(a.Runs))
	})
	require.Greater(t, rises, 5, "columns that step were drawn")
}

// By hand, columns of 100 with joints of 2: of half a pitch, a third, and of a third to either side. Where a start is pinned,
// where the next column is on no mark of the tape, and where a third is rounded, a line gives the same a pitch higher.
func TestHowFarColumnsRise(t *testing.T) {
	for sketch, rise := range map[string]length.Length{
		"1000x600 300x100+2": 102, "1000x600 300x100+2 1/2": 102, "1000x600 300x100+2 columns": 102,
		"1000x600 300x100+2 1/2 columns": 51, "1000x600 300x100+2 1/3 columns": 34, "1000x600 300x100+2 2/3 columns": 34,
	} {
		require.Equal(t, rise*mm, drawWall(sketch).Rise(), sketch)
	}
	room, found := sketch("1000x600 300x100+2 1/3 columns")
	whole := func(change func()) {
		change()
		require.Equal(t, room.Tile.Height+room.Joint, NewWall(&room, found, survey.Left).Rise())
	}
	whole(func() { found.Pin = &survey.StartPin{Is: survey.OnEdge} })
	whole(func() { found.Pin, room.Tape = nil, 4*mm })
	whole(func() { room.Tape = mm; room.Tile.Height++ })
}
