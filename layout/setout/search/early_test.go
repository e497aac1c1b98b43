package search

import (
	"context"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// Where the only line cannot be as good as what another hand of the bond gave, and much of the work is
// spent by then, no line is left to look at early, and nothing is found. With a free end that shows
// only once its one start is placed.
func TestNothingIsLeftToLookAtEarly(t *testing.T) {
	line := length.Length(0)
	solver := func(share int) *solver {
		room := chance.Sketch("1000x600 130x70+3 1/3 left=0..80 base=0,9 pipe=500,300,60")
		room.Line, room.Walls[0].Pin = &line, &survey.StartPin{Is: survey.OnEdge, X: 37 * mm}
		s := solverIn(&room)
		s.share = share
		return s
	}
	known := solver(Work).solve(nil)
	require.NotNil(t, known)
	known.Merit.Sight.Slivers--
	s := solver(8 * Work)
	require.Nil(t, s.solve(known))
	spent := s.work()
	require.Nil(t, solver(8*(spent-1)).solve(known), "an eighth of the work is spent by the last look at the line alone")
}

// A search that nobody waits for any more begins no further line; and with a tape so fine that its starts could not all
// be looked at, those that promise most are taken as they come.
func TestFineTapesAreBounded(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	room := chance.Sketch("1000x600 300x100+2")
	s := newSolver(ctx, &room, hands(&room)[0], Work, 1, nil)
	require.Nil(t, s.solve(nil))
	require.LessOrEqual(t, s.asked, 16)

	room.Tape = length.Millimetre / 40
	s = solverIn(&room)
	h := s.hunt(s.walls[0], s.Lowest())
	require.Greater(t, len(h.queue.items)+len(h.groups[0].Starts), mostLooks)
	before := s.asked
	require.NotEmpty(t, h.few(promise, s.fresh, exact))
	require.Less(t, s.asked-before, mostLooks+2*promise)
}
