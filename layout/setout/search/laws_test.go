package search

import (
	"context"
	"fmt"
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

// alone is a random room of one wall of which the search is short: nothing is free but the start
// and the line.
func alone(t *rapid.T) survey.Room {
	room := coarse(t, 1)
	w := &room.Walls[0]
	stop := func(s *survey.Span) { s.To = s.From }
	stop(&w.Left.Stops)
	stop(&w.Right.Stops)
	stop(&w.Head.Stops)
	for i := range w.Openings {
		o := &w.Openings[i]
		stop(&o.Left)
		stop(&o.Width)
		stop(&o.Bottom)
		stop(&o.Height)
	}
	return room
}

// The best that a hunt finds is the best of all starts on its line, by brute force; while it
// hunts what it says it cannot beat only ever gets worse, and every start comes into its queue
// once.
func TestAHuntFindsTheBestStartOfItsLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for range 4 {
			room := alone(t)
			s := solverIn(&room)
			w, line := s.walls[0], rapid.SampledFrom(s.lines()).Draw(t, "line")
			h := s.hunt(w, line)
			last := h.bound()
			for !h.done {
				h.step(nil)
				now := h.bound()
				order, term := s.order.Until(&last, &now, s.order.Shared())
				require.LessOrEqual(t, order, 0, "it takes back what it said of %s", term)
				last = now
			}
			fed := 0
			for _, n := range h.next {
				fed += n
			}
			require.LessOrEqual(t, fed, len(w.Starts.Tried()))
			require.Nil(t, h.missed, "all that could be as good were looked at")
			var best *count.Counted
			for _, edge := range w.Starts.Tried() {
				c := w.Count(count.Setting{Line: line, Edge: edge, Placed: w.Outer()})
				if best == nil || s.order.Better(&c.Merit, &best.Merit) {
					best = &c
				}
			}
			order, term := s.order.Compare(&h.ties[0].Merit, &best.Merit)
			require.Zero(t, order, "another start differs in %s", term)
			for _, c := range h.ties {
				order, _ := s.order.Until(&c.Merit, &best.Merit, s.order.Shared())
				require.Zero(t, order, "what is kept is as good before the terms that walls share")
			}
		}
	})
}

// A hunt that goes on with its work spent from the first still takes every start, or says what those give that it passed over.
func TestAHuntWhoseWorkIsSpentLosesNoStart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := alone(t)
		s := solverIn(&room)
		s.limit = 0
		w, line := s.walls[0], rapid.SampledFrom(s.lines()).Draw(t, "line")
		h := s.hunt(w, line)
		for !h.done {
			h.step(nil)
		}
		best := &h.ties[0].Merit
		if h.missed != nil && s.order.Better(h.missed, best) {
			best = h.missed
		}
		for _, edge := range w.Starts.Tried() {
			c := w.Count(count.Setting{Line: line, Edge: edge, Placed: w.Outer()})
			order, term := s.order.Until(&c.Merit, best, s.order.Shared())
			require.GreaterOrEqual(t, order, 0, "the start at %v is better in %s", edge, term)
		}
	})
}

// While a line is looked at more closely what it cannot beat only ever gets worse, until it is
// known exactly.
func TestALineOnTrialOnlyGetsWorse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for range 2 {
			room := coarse(t, 2)
			s := solverIn(&room)
			tr := s.trial(rapid.SampledFrom(s.lines()).Draw(t, "line"))
			for tr.depth != exact && !tr.dead && !s.stopped() {
				last := tr.merit
				s.closer(tr)
				order, term := s.order.Until(&last, &tr.merit, s.order.Shared())
				require.LessOrEqual(t, order, 0, "it takes back what it said of %s", term)
			}
			if tr.depth == exact {
				m := s.whole(tr.walls)
				order, term := s.order.Compare(&m, &tr.merit)
				require.Zero(t, order, "its walls give another merit in %s", term)
			}
		}
	})
}

// A line is named by the lowest course, whichever classic line it was found by and however little may be counted: a setter
// strikes it there. Found under a sloped ceiling, by a full course at its top.
func TestALineIsNamedByTheLowestCourse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := coarse(t, 2)
		r, err := Within(context.Background(), &room, Work/64)
		require.NoError(t, err)
		pitch := room.Tile.Height + room.Joint
		require.Less(t, (r.Line - r.Lowest()).Abs(), 2*pitch)
	})
}

// What a search gives is what its walls give, its bound is no worse than it, and where the
// bound is as good it is proven.
func TestAResultIsWhatItsWallsGive(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := coarse(t, 3)
		r, err := Room(context.Background(), &room)
		require.NoError(t, err)
		for i, c := range r.Walls {
			require.Equal(t, r.Line, c.Line)
			fresh := count.NewWall(&room, room.Walls[i], r.Hand)
			m := fresh.Count(c.Setting).Merit
			order, term := r.order.Compare(&m, &c.Merit)
			require.Zero(t, order, "wall %d gives another merit in %s", i, term)
			require.False(t, fresh.Places.Overlap(c.Placed) && len(fresh.Free()) > 0 && r.Proven, "what is proven overlaps nowhere")
		}
		m := r.whole(r.Walls)
		order, term := r.order.Compare(&m, &r.Merit)
		require.Zero(t, order, "the room has another merit in %s", term)
		require.False(t, r.order.Better(&r.Merit, &r.Bound), "a bound is no worse than what was found")
		require.Equal(t, r.Proven, !r.order.Better(&r.Bound, &r.Merit) && r.Proven)
	})
}

// A set-out that was found can be pinned: its line and starts are found again, with the same merit.
func TestWhatIsFoundCanBePinned(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := coarse(t, 2)
		free, err := Room(context.Background(), &room)
		require.NoError(t, err)
		room.Line, room.Bond.Hand = &free.Line, free.Hand
		for i, c := range free.Walls {
			room.Walls[i].Pin = &survey.StartPin{X: c.Edge, Is: survey.OnEdge}
		}
		pinned, err := Room(context.Background(), &room)
		require.NoError(t, err)
		require.Equal(t, free.Line, pinned.Line)
		order, term := free.order.Compare(&pinned.Merit, &free.Merit)
		if free.Proven {
			require.Zero(t, order, "pinned it differs in %s", term)
		} else {
			require.LessOrEqual(t, order, 0, "pinned it is worse in %s: all its work goes into the marks that are free", term)
		}
	})
}

// Lines are held to the best that is known, with whichever hand: held to what is as good, or worse, the search finds the same.
func TestASearchIsHeldToWhatIsKnown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := coarse(t, 2)
		first := solverIn(&room).solve()
		if !first.Proven {
			t.Skip("not proven")
		}
		for _, more := range []int{0, 5} {
			s := solverIn(&room)
			known := first.Merit
			known.Unworkable += more
			s.hold(&trial{merit: known})
			found := s.solve()
			order, term := s.order.Compare(&found.Merit, &first.Merit)
			require.Zero(t, order, "held to what is worse by %d pieces it differs in %s", more, term)
		}
	})
}

// Walls that share no corner share nothing but the line: on a pinned line each has what it would
// have by itself.
func TestWallsThatShareNothingAreSearchedApart(t *testing.T) {
	for _, c := range [][2]string{
		{"900x500 300x100+2 left=0 right=900", "700x500 300x100+2 left=0 right=700"},
		{"900x500 120x100+2 1/2 left=0..50 right=900", "700x500 120x100+2 1/2 left=0 right=640..700"},
		{"900x500 300x100+2 columns left=0 right=900", "700x500 300x100+2 columns left=0 right=700"},
	} {
		first, second := chance.Sketch(c[0]), chance.Sketch(c[1])
		both := first
		both.Walls = []survey.WallFound{first.Walls[0], second.Walls[0]}
		y := 30 * mm
		first.Line, second.Line, both.Line = &y, &y, &y
		var sum merit.Merit
		for i, room := range []*survey.Room{&first, &second, &both} {
			r, err := Room(context.Background(), room)
			require.NoError(t, err)
			require.True(t, r.Proven)
			if i < 2 {
				m := r.Merit
				m.Part = true
				sum = sum.Plus(&m)
				continue
			}
			sum.Part = false
			order, term := r.order.Until(&sum, &r.Merit, merit.Slack)
			require.Zero(t, order, "%s: together they differ in %s", c, term)
		}
	}
}

// A room in the mirror has as good a set-out: lengths and marks are whole millimetres, so that
// the same starts are tried from the right.
func TestARoomInTheMirrorIsAsGood(t *testing.T) {
	for _, c := range [][2]string{
		{"1000x600 300x100+2", "1000x600 300x100+2"},
		{"1000x600 300x100+2 left=0..80 | 800x600", "800x600 300x100+2 | 1000x600 right=920..1000"},
		{"940x600 200x100+3 gap=3 window=200,150,200,150 | 700x600 gap=3", "700x600 200x101+3 gap=3 | 940x600 gap=3 window=590,150,200,150"},
		{"1000x600 150x150+2 columns gap=3 left=40", "1000x600 150x150+2 columns gap=3 right=960"},
		{"1000x600 300x100+2 niche=200,200,150,150 | 900x600 | 800x600", "800x600 300x100+2 | 900x600 | 1000x600 niche=600,200,150,150"},
	} {
		a, b := chance.Sketch(c[0]), chance.Sketch(c[1])
		b.Tile, b.Joint = a.Tile, a.Joint
		x, err := Room(context.Background(), &a)
		require.NoError(t, err)
		y, err := Room(context.Background(), &b)
		require.NoError(t, err)
		require.Equal(t, x.Proven, y.Proven, c[0])
		order, term := x.order.Until(&x.Merit, &y.Merit, merit.Slack)
		require.Zero(t, order, "%s differs from its image in %s", c[0], term)
	}
}

// Fewer marks on the tape never make a proven room better.
func TestAFinerTapeIsNoWorse(t *testing.T) {
	for _, line := range []string{"1000x600 300x100+2", "1000x600 300x100+2 1/2 gap=3", "1000x600 300x100+2 columns right=1000", "700x600 150x150+3 window=200,150,180,200"} {
		coarse, fine := chance.Sketch(line), chance.Sketch(line)
		y := -20 * mm
		coarse.Line, fine.Line = &y, &y
		coarse.Tape = 12 * mm
		a, err := Room(context.Background(), &coarse)
		require.NoError(t, err)
		b, err := Room(context.Background(), &fine)
		require.NoError(t, err)
		require.True(t, a.Proven && b.Proven, line)
		m := fine.Walls[0]
		w := count.NewWall(&fine, m, b.Hand)
		// Whole marks differ with the tape: what the coarse one found, judged by the fine one.
		got := w.Count(a.Walls[0].Setting).Merit
		order, term := b.order.Until(&got, &b.Walls[0].Merit, b.order.Shared())
		require.GreaterOrEqual(t, order, 0, "%s: the coarse tape is better in %s", line, term)
	}
}

// What another start or another line would give is what it gives: none is better than a proven
// result, and its own start and line give it back.
func TestOtherStartsAndLines(t *testing.T) {
	for _, line := range []string{"1000x600 300x100+2", "1000x600 300x100+2 1/2 | 800x600", "1000x600 300x100+2 left=0..80 | 800x600"} {
		r := solved(t, line)
		require.True(t, r.Proven, line)
		for i, c := range r.Walls {
			got, m := r.Start(i, c.Edge)
			require.Equal(t, c.Edge, got.Edge)
			order, term := r.order.Compare(&m, &r.Merit)
			require.Zero(t, order, "%s: its own start differs in %s", line, term)
			for _, k := range r.walls[i].Starts.Classics(c.Placed) {
				got, m := r.Start(i, k.Edge)
				require.Equal(t, k.Edge, got.Edge)
				walls := slices.Clone(r.Walls)
				walls[i] = got
				with := r.whole(walls)
				order, term := r.order.Compare(&with, &m)
				require.Zero(t, order, "%s: the room with %s has another merit in %s", line, k.Name, term)
				order, term = r.order.Compare(&m, &r.Merit)
				require.GreaterOrEqual(t, order, 0, "%s: %s is better in %s", line, k.Name, term)
			}
		}
		for _, k := range r.Classic() {
			walls, m := r.OnLine(k.Line)
			require.Equal(t, k.Line, walls[0].Line)
			order, term := r.order.Compare(&m, &r.Merit)
			require.GreaterOrEqual(t, order, 0, "%s: %s is better in %s", line, k.Name, term)
			whole := r.whole(walls)
			order, term = r.order.Compare(&whole, &m)
			require.Zero(t, order, "%s: its walls give another merit in %s", line, term)
		}
	}
}

// The first of the groups' starts is the one that promises most, whatever each group adds.
func TestTheFirstOfAllGroups(t *testing.T) {
	o := merit.OrderFor(survey.Prefer{})
	slivers := func(n int) merit.Merit { return merit.Merit{Part: true, Sight: merit.Sight{Slivers: n}} }
	group := func(offset int, starts ...int) count.Group {
		g := count.Group{Offset: slivers(offset)}
		for _, n := range starts {
			g.Starts = append(g.Starts, &count.Start{Merit: slivers(n)})
		}
		return g
	}
	for _, c := range []struct {
		groups []count.Group
		want   int
	}{
		{[]count.Group{group(2, 3, 4)}, 5},
		{[]count.Group{group(2, 3, 4), group(0, 4, 9)}, 4},
		{[]count.Group{group(0, 4, 9), group(2, 3, 4)}, 4},
		{[]count.Group{group(1, 1), group(2, 0), group(0, 2)}, 2},
	} {
		got := first(o, c.groups)
		require.Equal(t, c.want, got.Slivers, fmt.Sprint(c.groups))
	}
}

// A hunt takes the starts of its groups as they promise, each once, the better group first.
func TestAHuntTakesStartsAsTheyPromise(t *testing.T) {
	s := solverOf("1000x600 300x100+2 columns 1/2 window=250,350,150,200")
	h := s.hunt(s.walls[0], 0)
	require.Greater(t, len(h.groups), 1)
	require.Equal(t, len(h.groups), len(h.queue.items), "the first of each")
	var taken []length.Length
	var last *merit.Merit
	for !h.queue.empty() {
		c := h.queue.take()
		if last != nil {
			order, _ := s.order.Compare(last, &c.merit)
			require.LessOrEqual(t, order, 0, "what promises more comes first")
		}
		m := c.merit
		last = &m
		taken = append(taken, c.edge)
		h.feed(c.group)
	}
	slices.Sort(taken)
	require.Equal(t, s.walls[0].Starts.Tried(), taken)
}
