package search

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/chance"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// hunted is a room with a few starts for every wall, on one line, as if they were equal.
func hunted(t *rapid.T) (*solver, []*hunt) {
	room := chance.House(t, 4)
	if n := len(room.Walls); n == 4 && rapid.Bool().Draw(t, "closed") {
		room.Walls[0].Left = survey.EndFound{Meets: true, Gap: 3 * mm, Beyond: n - 1}
		room.Walls[n-1].Right = survey.EndFound{Meets: true, Gap: 3 * mm, Beyond: 0}
	}
	s := solverIn(&room)
	line := rapid.SampledFrom(s.lines()).Draw(t, "line")
	var hunts []*hunt
	for _, w := range s.walls {
		h := &hunt{solver: s, wall: w, line: line}
		for range rapid.IntRange(1, 3).Draw(t, "starts") {
			s.limit = s.work() + Work
			edge := rapid.SampledFrom(w.Starts.Tried()).Draw(t, "edge")
			h.ties = append(h.ties, *s.place(w, line, edge, nil, nil, fewTries))
		}
		hunts = append(hunts, h)
	}
	return s, hunts
}

// Of equal starts those are taken that go best together: none of all the ways to combine
// them is better.
func TestStartsGoBestTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for range 4 {
			s, hunts := hunted(t)
			walls, got := s.together(hunts)
			require.Len(t, walls, len(hunts))
			again := s.whole(walls)
			order, term := s.order.Compare(&again, &got)
			require.Zero(t, order, "the walls it gives have another merit in %s", term)
			require.False(t, got.Part, "it is a whole room's")
			pick := make([]count.Counted, len(hunts))
			var try func(i int)
			try = func(i int) {
				if i == len(hunts) {
					m := s.whole(pick)
					order, term := s.order.Compare(&m, &got)
					require.GreaterOrEqual(t, order, 0, "another way is better in %s", term)
					return
				}
				for _, c := range hunts[i].ties {
					pick[i] = c
					try(i + 1)
				}
			}
			try(0)
		}
	})
}

// Merit.md, term 13: courses whose two widths at a corner are both under, or both over, half
// a pitch do not seem to run on.
func TestCoursesThatDoNotRunOn(t *testing.T) {
	at := func(widths ...length.Length) map[int]length.Length {
		m := map[int]length.Length{}
		for course, w := range widths {
			if w > 0 {
				m[course] = w * mm
			}
		}
		return m
	}
	for name, c := range map[string]struct {
		a, b map[int]length.Length
		n    int
	}{
		"one over and one under":       {at(200), at(100), 0},
		"both under":                   {at(100), at(100), 1},
		"both over":                    {at(200), at(160), 1},
		"just a half":                  {at(151), at(151), 0},
		"over and just a half":         {at(200), at(151), 0},
		"under and just a half":        {at(100), at(151), 0},
		"two of three":                 {at(100, 200, 100), at(100, 200, 200), 2},
		"a course that one wall lacks": {at(100, 0), at(100, 100), 1},
	} {
		require.Equal(t, c.n, alike(c.a, c.b, 302*mm), name)
		require.Equal(t, c.n, alike(c.b, c.a, 302*mm), "%s, the other way round", name)
	}
}

// The corner between two walls by hand: 94 at the right end of the first, 46 at both of
// the second, of 300.
func TestSmallCutsOnBothSidesOfACorner(t *testing.T) {
	for name, c := range map[string]struct {
		sketch string
		edges  [2]length.Length
		small  int
	}{
		"94 beside 46":           {"1000x598 300x98+2 | 1000x598", [2]length.Length{0, 350}, 1},
		"94 beside a whole tile": {"1000x598 300x98+2 | 1000x598", [2]length.Length{0, 0}, 0},
		"an end that stops":      {"1000x598 300x98+2 right=994 | 1000x598", [2]length.Length{0, 350}, 0},
	} {
		s := solverOf(c.sketch)
		walls := make([]count.Counted, 2)
		for i, w := range s.walls {
			walls[i] = w.Count(count.Setting{Edge: c.edges[i] * mm, Placed: w.Outer()})
		}
		require.Equal(t, c.small, s.whole(walls).Corners, name)
	}
}

// Term 14: of three walls the first and the last face each other, at the corners of the
// middle one.
func TestFacingWalls(t *testing.T) {
	s := solverOf("1000x598 300x98+2 | 1500x598 | 1000x598")
	count3 := func(first, last length.Length) merit.Merit {
		walls := make([]count.Counted, 3)
		for i, edge := range []length.Length{first, 0, last} {
			walls[i] = s.walls[i].Count(count.Setting{Edge: edge * mm, Placed: s.walls[i].Outer()})
		}
		return s.whole(walls)
	}
	// From 0 the last tile of 1000 is cut to 94; a full tile at the right leaves 94 at the left.
	require.Equal(t, 0*mm, count3(0, 700).Facing, "94 at the back corner on both")
	require.Equal(t, 206*mm, count3(0, 0).Facing, "94 on one, a whole tile on the other")
	require.Equal(t, 0*mm, solverOf("1000x598 300x98+2 | 1000x598").facing(), "two walls do not face each other")
}

func (s *solver) facing() length.Length {
	var walls []count.Counted
	for i, w := range s.walls {
		walls = append(walls, w.Count(count.Setting{Edge: length.Length(i) * 77 * mm, Placed: w.Outer()}))
	}
	return s.whole(walls).Facing
}
