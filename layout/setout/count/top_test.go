package count

import (
	"fmt"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// crowned draws a wall with a top on which its bond goes on, and a set-out of it.
func crowned(t *rapid.T) (*Wall, Setting) {
	room := chance.House(t, 2)
	found := room.Walls[0]
	n := func(name string, low, high int) length.Length {
		return length.Length(rapid.IntRange(low, high).Draw(t, name)) * mm
	}
	top := &survey.TopFound{Kind: rapid.SampledFrom([]survey.Kind{survey.SeatTop, survey.CapTop}).Draw(t, "kind"), Left: n("deep", 60, 400),
		How: rapid.SampledFrom([]survey.Kind{survey.Lap, survey.Mitre}).Draw(t, "how"), Face: survey.FaceFound{Tiled: true, Cover: room.Bed + room.Tile.Thickness}}
	top.Right, top.Laps = top.Left, top.How == survey.Lap && rapid.Bool().Draw(t, "laps")
	at := found.Head.Stops
	if found.Head.Meets {
		at = survey.Span{From: n("head", 200, 300)}
		at.To = at.From + n("free by", 0, 1)*40
	}
	found.Head = survey.HeadFound{Stops: at, Top: top}
	w := NewWall(&room, found, survey.Left)
	return w, setting(t, w)
}

// Law 2 holds of walls with tops, and the top adds what a flat wall of its own would give.
func TestBoundsClaimNoMoreThanAWallWithItsTop(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s := crowned(t)
		if w.Places.Overlap(s.Placed) {
			t.Skip("openings overlap")
		}
		got := w.Count(s).Merit
		claims(t, w, w.Bounds.OfBoth(s.Line, s.Edge), got)
		claims(t, w, w.Bounds.Plainly(s.Line, s.Edge), got)
		claims(t, w, w.Bounds.Beyond(s), got)
		on := w.facts.top.At(s)
		best := w.facts.top.Best(s)
		require.False(t, w.facts.order.Better(&on.Merit, &best), "no class is better than the best")
		w.facts.top = nil
		bare := w.Count(s).Merit
		require.Equal(t, got, bare.Plus(&on.Merit))
		require.Equal(t, got.Rim, bare.Rim, "a top has no rim")
	})
}

// A start of a wall by itself is the best of those that are tried.
func TestTheBestStartIsBest(t *testing.T) {
	// 1000 of 100 by 50 with joints of 2: a tile or a joint on the middle. By hand: nine
	// tiles and two cuts of 33, or with a joint on the middle eight and two of 84.
	w := drawWall("1000x300 100x50+2")
	edge, cut := BestOnTop(w.facts.room, w.Found, nil, survey.Left)
	require.Zero(t, cut)
	got := w.Count(Setting{Line: w.Box().Bottom, Edge: edge, Placed: w.Outer()})
	for _, other := range w.Starts.Tried() {
		c := w.Count(Setting{Line: w.Box().Bottom, Edge: other, Placed: w.Outer()})
		require.False(t, w.facts.order.Better(&c.Merit, &got.Merit), "%v is better than %v", other, edge)
	}
}

// The rows of a top by hand (common practice, no source): tile 100 by 50 with joints of 2. So deep that four rows
// leave 8 at the back, as much is cut at the front: 29 each. So deep that they leave 20, two fifths of a tile, or where the front
// edge shows that it is cut, the front row stays whole.
func TestAFrontRowIsCutWhereAWholeOneLeavesASliverAtTheBack(t *testing.T) {
	for _, c := range []struct {
		deep  length.Length
		how   survey.Kind
		laps  bool
		front length.Length
	}{{216, survey.Mitre, false, 21}, {228, survey.Mitre, false, 0}, {216, survey.Lap, true, 0}, {216, survey.Lap, false, 21}, {208, survey.Profile, false, 0}, {45, survey.Mitre, false, 0}} {
		top := &survey.TopFound{Kind: survey.SeatTop, How: c.how, Laps: c.laps, Left: c.deep * mm, Right: c.deep * mm}
		w := drawWall(fmt.Sprintf("1000x%d 100x50+2", int(c.deep)))
		_, front := BestOnTop(w.facts.room, w.Found, top, survey.Left)
		require.Equal(t, c.front*mm, front, "%v", c)
	}
}
