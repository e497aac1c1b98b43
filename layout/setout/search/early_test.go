package search

import (
	"context"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/setout/chance"

	"github.com/stretchr/testify/require"
)

// A search that nobody waits for any more begins no further line; and with a tape so fine that its starts could not all
// be looked at, those that promise most are taken as they come.
func TestFineTapesAreBounded(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	room := chance.Sketch("1000x600 300x100+2")
	s := newTask(ctx, &room, hands(&room)[:1], Work, nil).hands[0]
	require.Nil(t, s.solve())
	require.LessOrEqual(t, s.asked, 16)

	room.Tape = length.Millimetre / 40
	s = solverIn(&room)
	h := s.hunt(s.walls[0], s.Lowest())
	require.Greater(t, len(h.queue.items)+len(h.groups[0].Starts), mostLooks)
	before := s.asked
	require.NotEmpty(t, h.few(promise, s.fresh, exact))
	require.Less(t, s.asked-before, mostLooks+2*promise)
}
