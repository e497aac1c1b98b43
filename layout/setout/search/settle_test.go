package search

import (
	"context"
	"math"
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/chance"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// A search whose work is spent at once, or in the midst of it, settles all the same and goes on from there with what it is
// given: for a set-out that is what it says it is, with a bound that none of the others beats, and no claim of proof that
// is not true.
func TestASearchWithLittleWorkSettles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := coarse(t, 1)
		s := solverIn(&room)
		s.limit = rapid.SampledFrom([]int{0, 300, 1000, 3000, 10_000}).Draw(t, "work")
		s.share = s.limit
		r := s.solve()
		require.NotNil(t, r)
		for i, c := range r.Walls {
			m := r.walls[i].Count(c.Setting).Merit
			order, term := r.order.Compare(&m, &c.Merit)
			require.Zero(t, order, "the set-out has another merit in %s", term)
		}
		m := r.whole(r.Walls)
		order, term := s.order.Compare(&m, &r.Merit)
		require.Zero(t, order, "the room has another merit in %s", term)
		s.everything(func(line length.Length, edges []length.Length, m merit.Merit) {
			order, term := r.order.Until(&m, &r.Bound, merit.Slack)
			require.GreaterOrEqual(t, order, 0, "line %v, edges %v beat the bound in %s", line, edges, term)
			if r.Proven {
				order, term = r.order.Until(&m, &r.Merit, merit.Slack)
				require.GreaterOrEqual(t, order, 0, "line %v, edges %v beat what is proven in %s", line, edges, term)
			}
		})
	})
}

// A start whose places were not all tried when the work was spent waits to be tried again; one that was tried as often as
// any is passed over, and what it might give is noted.
func TestAStartThatIsInterruptedIsTakenUpAgain(t *testing.T) {
	s := solverOf("2000x1200 300x100+2 niche=500..1200,304,410,202 niche=500..1200,304,410,202")
	h := s.hunt(s.walls[0], 0)
	h.depth = based
	h.bound()
	first, all := h.queue.first().edge, len(h.queue.items)
	s.limit = s.work()
	s.walls[0].Spend(1)
	h.step(nil)
	require.Len(t, h.ties, 1, "what was found of it is kept")
	require.Nil(t, h.missed, "nothing is passed over yet")
	require.Len(t, h.queue.items, all)
	require.True(t, slices.ContainsFunc(h.queue.items, func(c *candidate) bool { return c.edge == first }))
	require.False(t, h.done)
}

// What settles looks at the classic lines and at the classic starts beside those that promise
// most.
func TestSettlingLooksAtClassicLinesAndStarts(t *testing.T) {
	s := solverOf("1000x600 300x100+2 window=300,200,250,150")
	q := &queue[*trial]{before: func(a, b *trial) bool { return a.line < b.line }}
	for _, line := range []length.Length{91, 92, 93, 94, 95} {
		q.add(&trial{line: line * mm})
	}
	got := s.promising(q, &trial{line: 33 * mm}, -1) // as they are
	require.Equal(t, []length.Length{33 * mm, 91 * mm, 92 * mm, 93 * mm, 94 * mm}, got[:5], "the best, and the first four of the queue")
	for _, c := range s.Lines() {
		lowest := s.Lowest() // as the lowest course has it
		require.Contains(t, got, lowest+length.Mod(c.Line-lowest, 102*mm), c.Name)
	}
	w := s.walls[0]
	few := s.hunt(w, 0).few(2, s.fresh, refined)
	require.Len(t, few, 2+len(w.Starts.Classics(w.Outer())))
	for i, c := range w.Starts.Classics(w.Outer()) {
		require.Equal(t, c.Edge, few[2+i], c.Name)
	}
}

// Starts kept for a line are equal before the terms that walls share, the best first, and no
// more than can be settled together; what is dropped for want of room is not forgotten.
func TestStartsThatAreKept(t *testing.T) {
	s := solverOf("1000x600 300x100+2")
	with := func(slivers, find int) count.Counted {
		return count.Counted{Merit: merit.Merit{Sight: merit.Sight{Slivers: slivers}, Find: find}}
	}
	h := &hunt{solver: s}
	h.keep(with(2, 1))
	h.keep(with(3, 0))
	require.Len(t, h.ties, 1, "worse is not kept")
	h.keep(with(2, 0))
	require.Equal(t, []int{0, 1}, []int{h.ties[0].Merit.Find, h.ties[1].Merit.Find}, "as good before shared terms: both, the better first")
	h.keep(with(1, 9))
	require.Len(t, h.ties, 1, "better drops all others")
	require.Nil(t, h.missed)
	for n := range mostTies + 3 {
		h.keep(with(1, n))
	}
	require.Len(t, h.ties, mostTies)
	require.NotNil(t, h.missed)
	require.Equal(t, 1, h.missed.Slivers)
}

// Of a bond of either hand the better is taken.
func TestTheBetterHandIsTaken(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := coarse(t, 1)
		room.Walls[0].Openings = nil
		room.Bond = survey.BondRule{Kind: survey.Running, Num: 1, Den: 3, Plumb: room.Bond.Plumb}
		free, err := Room(context.Background(), &room)
		require.NoError(t, err)
		for _, hand := range []survey.Hand{survey.Left, survey.Right} {
			room.Bond.Hand = hand
			one, err := Room(context.Background(), &room)
			require.NoError(t, err)
			if free.Proven {
				order, term := free.order.Compare(&one.Merit, &free.Merit)
				require.GreaterOrEqual(t, order, 0, "the other hand is better in %s", term)
			}
		}
	})
}

// A search ends with its context at whatever work it is, and gives its error.
func TestASearchEndsInTheMiddle(t *testing.T) {
	room := chance.Sketch("3000x2400 100x100+2 left=0..80 niche=500..1200,304,410..900,202 | 2000x2400 niche=500..1200,304,410..900,202")
	all := &counted{Context: context.Background(), left: 1 << 30}
	_, err := Room(all, &room)
	require.NoError(t, err)
	asked := 1<<30 - all.left
	require.Greater(t, asked, 3)
	for _, after := range []int{0, asked / 3, asked - 1} {
		ctx := &counted{Context: context.Background(), left: after}
		_, err := Room(ctx, &room)
		require.ErrorIs(t, err, context.Canceled)
		require.Less(t, ctx.over, 2000, "it goes on after its end")
	}
}

// counted is a context that ends when it was asked so often.
type counted struct {
	context.Context
	left, over int
}

func (c *counted) Err() error {
	if c.left--; c.left >= 0 {
		return nil
	}
	c.over++
	return context.Canceled
}

// Wall by wall, each begins where it is best beside the others as they are: no start of one wall
// alone is better on the line.
func TestWallByWallNoOtherStartIsBetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := coarse(t, 2)
		s := solverIn(&room)
		s.fresh = math.MaxInt32 // for a line, which is not what this is about
		line := rapid.SampledFrom(s.lines()).Draw(t, "line")
		var walls []count.Counted
		for _, w := range s.walls {
			walls = append(walls, *s.place(w, line, rapid.SampledFrom(w.Starts.Tried()).Draw(t, "start"), nil, nil, fewTries))
		}
		before := trialOf(s, line, walls)
		after := s.wallByWall(before, 2*s.fresh)
		require.False(t, s.order.Better(&before.merit, &after.merit))
		last := len(s.walls) - 1 // the others were looked at beside walls that were moved since
		for _, edge := range s.walls[last].Starts.Tried() {
			others := slices.Clone(after.walls)
			others[last] = *s.place(s.walls[last], line, edge, nil, nil, fewTries)
			m := s.whole(others)
			order, term := s.order.Until(&m, &after.merit, s.order.Shared())
			require.GreaterOrEqual(t, order, 0, "wall %d begun at %v is better in %s", last, edge, term)
		}
	})
}

// With the starts as they are, the free marks of each wall are placed as well as they are where all
// placings of its start are looked at.
func TestPlacedAnewNoPlaceIsBetter(t *testing.T) {
	moved := 0
	rapid.Check(t, func(t *rapid.T) {
		room := coarse(t, 2)
		s := solverIn(&room)
		s.fresh = math.MaxInt32 // for a line, which is not what this is about
		line := rapid.SampledFrom(s.lines()).Draw(t, "line")
		var walls []count.Counted
		for _, w := range s.walls {
			walls = append(walls, w.Count(anywhere(t, s.placer(w, line, rapid.SampledFrom(w.Starts.Tried()).Draw(t, "start"), nil))))
		}
		before := trialOf(s, line, walls)
		after := before.placedAnew()
		require.False(t, s.order.Better(&before.merit, &after.merit))
		if s.order.Better(&after.merit, &before.merit) {
			moved++
		}
		for i, w := range s.walls {
			got := s.place(w, line, walls[i].Edge, nil, nil, tries)
			order, term := s.order.Until(&got.Merit, &after.walls[i].Merit, s.order.Shared())
			require.GreaterOrEqual(t, order, 0, "wall %d is better in %s", i, term)
		}
	})
	require.Positive(t, moved, "no room had a place that was better")
}

// What a line next to that of the best gives, one wall after the other, is not worse than what was
// there, and stands on a line within two of it.
func TestNearbyLines(t *testing.T) {
	moved := 0
	rapid.Check(t, func(t *rapid.T) {
		room := coarse(t, 2)
		s := solverIn(&room)
		s.fresh, s.share = math.MaxInt32, math.MaxInt32
		lines := s.lines()
		n := rapid.IntRange(0, len(lines)-1).Draw(t, "line")
		var walls []count.Counted
		for _, w := range s.walls {
			walls = append(walls, *s.place(w, lines[n], rapid.SampledFrom(w.Starts.Tried()).Draw(t, "start"), nil, nil, fewTries))
		}
		before := s.wallByWall(trialOf(s, lines[n], walls), s.fresh)
		after := before.nearby()
		require.False(t, s.order.Better(&before.merit, &after.merit))
		at := slices.Index(lines, after.line)
		require.InDelta(t, n, at, 2)
		m := s.whole(after.walls)
		order, term := s.order.Compare(&m, &after.merit)
		require.Zero(t, order, "another merit in %s", term)
		if at != n {
			moved++
			require.True(t, s.order.Better(&after.merit, &before.merit), "moved for nothing")
		}
	})
	require.Positive(t, moved, "no line nearby was better")
}

// anywhere places the free marks of a wall, none in another where that can be.
func anywhere(t *rapid.T, p *placer) count.Setting {
	var set count.Setting
	for range 20 {
		var at []*spot
		for _, c := range p.choices {
			its := make([]int, len(c.axes))
			for i, a := range c.axes {
				its[i] = rapid.IntRange(0, len(a.options)-1).Draw(t, "place")
			}
			at = append(at, c.at(its))
		}
		if set = p.setting(at); !p.wall.Places.Overlap(set.Placed) {
			break
		}
	}
	return set
}
