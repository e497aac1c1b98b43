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

// coarse is a random room whose tape shows so few marks that all of them can be tried.
func coarse(t *rapid.T, walls int) survey.Room {
	room := chance.House(t, walls)
	most := max(room.Tile.Width, room.Tile.Height) + room.Joint
	room.Tape = max(room.Tape, (most / 6).FloorTo(room.Tape))
	if rapid.Bool().Draw(t, "either hand") {
		room.Bond.Hand = survey.Free
	}
	return room
}

// everything gives the merit of every line with every hand and with every start of every wall, free marks at their
// best, to each.
func (t *task) everything(each func(line length.Length, edges []length.Length, m merit.Merit)) {
	for _, s := range t.hands {
		for _, line := range s.lines() {
			choices := make([][]count.Counted, len(s.walls))
			for i, w := range s.walls {
				for _, edge := range w.Starts.Tried() {
					s.limit = s.work() + Work
					choices[i] = append(choices[i], *s.place(w, line, edge, nil, nil, tries))
				}
			}
			walls, edges := make([]count.Counted, len(s.walls)), make([]length.Length, len(s.walls))
			var pick func(i int)
			pick = func(i int) {
				if i == len(walls) {
					each(line, edges, s.whole(walls))
					return
				}
				for _, c := range choices[i] {
					walls[i], edges[i] = c, c.Edge
					pick(i + 1)
				}
			}
			pick(0)
		}
	}
}

// among tells whether the starts found are among those that are tried.
func (r *Result) among() bool {
	for i, w := range r.walls {
		if !w.Starts.Has(r.Walls[i].Edge) {
			return false
		}
	}
	return true
}

// Law 1, by brute force: of all lines and starts none is better than what is proven best, and
// one is as good. Law 2: none is better than the bound.
func TestBruteForceFindsNothingBetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := coarse(t, 2)
		s := solverIn(&room)
		s.limit = Work / 8 // the laws hold with however much is counted
		r := s.solve()
		best := &r.Merit
		if !r.Proven {
			best = &r.Bound
		}
		found := !r.Proven || !r.among() // or it begins at a classic start between the ends that were found
		s.everything(func(line length.Length, edges []length.Length, m merit.Merit) {
			order, term := r.order.Until(&m, best, merit.Slack)
			require.GreaterOrEqual(t, order, 0, "line %v, edges %v are better in %s (proven: %v)", line, edges, term, r.Proven)
			found = found || order == 0
		})
		require.True(t, found, "what is found is one of them")
	})
}
