package count

import (
	"fmt"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// turning is a wall drawn twice: with level courses, and turned about the diagonal with columns,
// so that its left end is the base and its head the right end.
type turning struct{ courses, columns string }

func (w *turning) add(courses, columns string) {
	w.courses, w.columns = w.courses+" "+courses, w.columns+" "+columns
}

// turnings draws walls with a gap, a rim that falls or a ceiling that rises, corners that lean,
// a window and a pipe.
var turnings = rapid.Custom(func(t *rapid.T) turning {
	n := func(name string, low, high int) int { return rapid.IntRange(low, high).Draw(t, name) }
	wide, high := n("wide", 700, 1400), n("high", 500, 900)
	tile, course, joint := n("tile", 40, 320), n("course", 40, 320), n("joint", 0, 6)
	w := turning{fmt.Sprintf("%dx%d %dx%d+%d", wide, high, tile, course, joint), fmt.Sprintf("%dx%d %dx%d+%d", high, wide, course, tile, joint)}
	if den := n("den", 1, 3); den > 1 {
		w.add(fmt.Sprintf("1/%d", den), fmt.Sprintf("1/%d", den))
	}
	w.add("", "columns")
	if gap := n("gap", 0, 5); gap > 0 {
		w.add(fmt.Sprintf("gap=%d", gap), fmt.Sprintf("gap=%d", gap))
	}
	if n("rim", 0, 2) == 0 { // a rim that falls is a left corner that leans out of the room
		a, b := n("rim left", -6, 6), n("rim right", -6, 6)
		w.add(fmt.Sprintf("base=%d,%d", a, b), fmt.Sprintf("leanleft=%d,%d", a, b))
	}
	if n("ceiling", 0, 2) == 0 {
		a, b := n("ceiling left", -6, 6), n("ceiling right", -6, 6)
		w.add(fmt.Sprintf("ceiling=%d,%d", high+a, high+b), fmt.Sprintf("leanright=%d,%d", a, b))
	}
	if n("window", 0, 1) == 1 {
		x, y, a, b := n("x", 100, 300), n("y", 100, 200), n("a", 30, 250), n("b", 30, 250)
		w.add(fmt.Sprintf("window=%d,%d,%d,%d", x, a, y, b), fmt.Sprintf("window=%d,%d,%d,%d", y, b, x, a))
	}
	if n("pipe", 0, 1) == 1 {
		x, y, d := n("px", 100, wide-100), n("py", 380, high-60), n("d", 20, 60)
		w.add(fmt.Sprintf("pipe=%d,%d,%d", x, y, d), fmt.Sprintf("pipe=%d,%d,%d", y, x, d))
	}
	return w
})

// Columns are courses turned: a wall with level courses and the same wall turned, in columns,
// have the same pieces too small and the same runs, but that what was cut across is cut up; and
// the bounds that look at the rows claim the same of both.
func TestAWallInColumnsIsAWallInCoursesTurned(t *testing.T) {
	small := 0
	rapid.Check(t, func(t *rapid.T) {
		drawn := turnings.Draw(t, "wall")
		level, plumb := drawWall(drawn.courses), drawWall(drawn.columns)
		if level.Places.Overlap(level.Outer()) {
			return
		}
		line := length.Length(rapid.IntRange(-200, 200).Draw(t, "line")) * mm
		edge := length.Length(rapid.IntRange(-200, 200).Draw(t, "edge")) * mm
		s, turned := Setting{Line: line, Edge: edge, Placed: level.Outer()}, Setting{Line: edge, Edge: line, Placed: plumb.Outer()}
		a, b := level.Count(s), plumb.Count(turned)
		small += a.Merit.Slivers + a.Merit.Unworkable
		require.Equal(t, a.Merit.Sight, b.Merit.Sight, "%s\n%s", drawn.courses, drawn.columns)
		require.Equal(t, a.Merit.Work, b.Merit.Work, "%s\n%s", drawn.courses, drawn.columns)
		require.Equal(t, sizes(a.Runs, true), sizes(b.Runs, false))
		require.Equal(t, sizes(a.Runs, false), sizes(b.Runs, true))
		for name, bound := range map[string]func(*Wall, Setting) merit.Merit{
			"Plainly": func(w *Wall, s Setting) merit.Merit { return w.Bounds.Plainly(s.Line, s.Edge) },
			"Beyond":  func(w *Wall, s Setting) merit.Merit { return w.Bounds.Beyond(s) },
		} {
			require.Equal(t, bound(level, s).Sight, bound(plumb, turned).Sight, "%s\n%s\n%s", name, drawn.courses, drawn.columns)
		}
	})
	require.Positive(t, small, "no wall had small pieces")
}

// sizes counts how often each least size comes among the runs across, or up.
func sizes(runs []Run, across bool) map[length.Length]int {
	out := map[length.Length]int{}
	for _, r := range runs {
		if r.Across() == across {
			out[r.Least]++
		}
	}
	return out
}

// The sides of a wall that is turned: its left end becomes the base, its head the right end.
func TestTheEdgesOfATurnedWall(t *testing.T) {
	level, plumb := drawWall("1000x600 300x100+2"), drawWall("600x1000 100x300+2 columns")
	find := func(w *Wall, s Setting, edge piece.Edge) (least length.Length) {
		for _, r := range w.Count(s).Runs {
			if len(r.Edges) == 1 && r.Edges[0] == edge {
				return r.Least
			}
		}
		return 0
	}
	s, turned := Setting{Edge: -50 * mm, Line: -30 * mm, Placed: level.Outer()}, Setting{Line: -50 * mm, Edge: -30 * mm, Placed: plumb.Outer()}
	require.Equal(t, 250*mm, find(level, s, piece.EdgeOf(survey.SideLeft, piece.OnLeft)))
	require.Equal(t, 250*mm, find(plumb, turned, piece.EdgeOf(survey.SideBase, piece.Under)))
	require.Equal(t, 70*mm, find(level, s, piece.EdgeOf(survey.SideBase, piece.Under)))
	require.Equal(t, 70*mm, find(plumb, turned, piece.EdgeOf(survey.SideLeft, piece.OnLeft)))
}
