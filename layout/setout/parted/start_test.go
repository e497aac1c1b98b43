package parted

import (
	"context"
	"testing"

	"coursewright/layout/setout/chance"
	"coursewright/layout/setout/search"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// A room set out once more with the starts that were found comes out the same as it would
// if it were searched, and its free marks are still free for whoever asks for another start.
func TestWhatWasFoundStandsForWhatWouldBe(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := chance.Banded(t, 3)
		p := parter{ctx: context.Background(), room: room}
		strips := p.strips(nil)
		folded, _ := p.fold(strips, firsts(ways(room.Walls, strips, nil)))
		r, err := search.Room(p.ctx, &folded)
		require.NoError(t, err)
		at := &found{line: r.Line, hand: r.Hand}
		again, err := p.field(at, folded, startsOf(&r, &folded), nil)
		require.NoError(t, err)
		require.Equal(t, r.Merit, again.Merit)
		pinned := make([]*start, len(r.Walls))
		for i, c := range r.Walls {
			pinned[i] = &start{edge: c.Edge, of: &r}
		}
		anew, err := p.field(at, folded, pinned, nil)
		require.NoError(t, err)
		order, term := r.Order().Compare(&anew.Merit, &again.Merit)
		require.Zero(t, order, "sought again it is another in %s", term)
		for i := range r.Walls {
			require.Equal(t, r.Walls[i].Placed, again.Walls[i].Placed)
			require.Equal(t, r.Wall(i).FixedEnds(), again.Wall(i).FixedEnds())
			require.Equal(t, r.Wall(i).Free(), again.Wall(i).Free())
		}
	})
}
