package search

import (
	"testing"

	"coursewright/layout/length"

	"github.com/stretchr/testify/require"
)

// Where the only line cannot be as good as what another hand of the bond gave, and much of the work is
// spent by then, no line is left to look at early, and nothing is found.
func TestNothingIsLeftToLookAtEarly(t *testing.T) {
	line := length.Length(0)
	solver := func() *solver {
		s := solverOf("1000x600 300x100+2 1/3 head=500..590 niche=200..260,300,100,150")
		s.room.Line = &line
		return s
	}
	known := solver().solve(nil)
	require.NotNil(t, known)
	known.Merit.Work--
	s := solver()
	s.share = 8
	require.Nil(t, s.solve(known))
}
