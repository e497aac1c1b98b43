package trial

import (
	"testing"

	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/keep"
	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/static"
)

// Earlier is a site with the demo, whose set-out an earlier engine gave: the course line an inch lower
// and the tile edge of the second wall half an inch further than the engine would have it by now. It
// gives the plan of that set-out, the one the engine would give, and the job with that set-out held.
func Earlier(t *testing.T) (s Site, was, anew layout.Plan, held survey.Job) {
	t.Helper()
	s = Solving(t, static.Demo, Once())
	kept, job := s.Stored()
	anew, err := layout.Now(job)
	require.NoError(t, err)
	old := keep.Of("1", job, anew.Setout, anew.Walls)
	old.Course.Line = Printed(anew.Setout.Line - length.Inch)
	name := job.Walls[1].Name
	pin := old.Walls[name]
	pin.Edge = Printed(anew.Setout.Walls[1].Edge + length.Inch/2)
	old.Walls[name] = pin
	held = keep.Hold(job, old)
	was, err = layout.Now(held)
	require.NoError(t, err)
	s.Keep(old)
	require.False(t, keep.Same(was.Walls, anew.Walls))
	require.Equal(t, kept.Revision, First(s.Stored()).Revision)
	return s, was, anew, held
}

// Keep lets the shown revision of job 1 keep a set-out, as an earlier version would have left it.
func (s Site) Keep(old survey.Held) {
	s.T.Helper()
	setout, err := keep.Write(old)
	require.NoError(s.T, err)
	kept, _ := s.Stored()
	require.NoError(s.T, s.Store.KeepSetout(s.T.Context(), 1, kept.Revision, setout))
}

// Printed is a length as a plan prints it.
func Printed(l length.Length) string { return l.MillimetreText() + " mm" }

// First is the first of two.
func First[A, B any](a A, _ B) A { return a }
