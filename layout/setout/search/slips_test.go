package search

import (
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// A line that slips by a whole pitch is the same set-out with another course on the line:
// one of the slips of the line it comes back to gives the same room.
func TestALineThatSlipsBeyondItsPitchComesBack(t *testing.T) {
	for _, line := range []string{
		"1000x600 300x100+2",
		"1000x600 300x100+2 1/2 leg=150",
		"1130x640 300x100+2 1/3 gap=3 base=0,-8",
		"1000x600 300x100+2 1/4 columns window=300,200,250,150",
	} {
		s := solverOf(line)
		w, at, edge := s.walls[0], s.lines()[3], 40*mm
		pitch := s.room.Tile.Height + s.room.Joint
		over := w.Count(count.Setting{Line: at + pitch, Edge: edge, Placed: w.Outer()})
		var alike []length.Length
		for _, p := range (&slipper{s, []count.Counted{{Setting: count.Setting{Line: at, Edge: edge}}}, turnsOf(s.room, s.hand)}).slips() {
			if p.line != at {
				continue
			}
			here := w.Count(count.Setting{Line: p.line, Edge: p.edge(w, edge), Placed: w.Outer()})
			if order, _ := s.order.Compare(&here.Merit, &over.Merit); order == 0 {
				alike = append(alike, p.moved)
			}
		}
		require.NotEmpty(t, alike, line)
	}
}

// Slips come by what they cannot beat, and a start that is pinned stays where it is.
func TestSlipsComeByWhatTheyPromise(t *testing.T) {
	s := solverOf("1000x600 300x100+2 1/3")
	slipper := &slipper{s, []count.Counted{{Setting: count.Setting{Edge: 40 * mm}}}, turnsOf(s.room, s.hand)}
	q := queue[*slip]{slipper.slips(), slipper.before}
	require.Len(t, q.items, 3*len(s.lines()))
	q.sort()
	for before := q.take().merit; !q.empty(); {
		next := q.take()
		require.False(t, s.order.Better(&next.merit, &before))
		before = next.merit
		slipper.closer(next)
		require.False(t, s.order.Better(&next.merit, &before), "looked at more closely it promises no more")
	}
	pinned := solverOf("1000x600 300x100+2 1/3")
	pinned.walls[0].Found.Pin = &survey.StartPin{}
	p := slip{moved: 100 * mm}
	require.Equal(t, 40*mm, p.edge(pinned.walls[0], 40*mm))
	require.Equal(t, 140*mm, p.edge(s.walls[0], 40*mm))
}

// With work enough a trial whose starts have a better line comes to it, however far that is, and slid to it where
// every line on the way is better than the one before.
func TestSlipsLeadToTheBestLine(t *testing.T) {
	for _, line := range []string{"1000x600 300x100+2", "1000x600 300x100+2 1/2 window=300,200,250,150", "1130x640 300x100+2 1/3 base=0,-8"} {
		s := solverOf(line)
		on := func(y length.Length) *trial {
			return trialOf(s, y, []count.Counted{*s.place(s.walls[0], y, 40*mm, nil, nil, tries)})
		}
		best := on(s.lines()[0])
		for _, y := range s.lines() {
			if next := on(y); s.order.Better(&next.merit, &best.merit) {
				best = next
			}
		}
		within := []length.Length{0}
		for _, y := range s.lines() {
			from := on(y)
			got := (&slipper{s, from.walls, within}).best(from)
			order, term := s.order.Compare(&best.merit, &got.merit)
			require.Zero(t, order, "%s: from %v it stops short in %s", line, y, term)
			slid := from.slid()
			require.False(t, s.order.Better(&from.merit, &slid.merit))
			at := slices.Index(s.lines(), slid.line)
			for _, n := range []int{at - 1, at + 1} {
				if n >= 0 && n < len(s.lines()) {
					next := on(s.lines()[n])
					require.False(t, s.order.Better(&next.merit, &slid.merit), "%s: from %v the line next to it is better", line, y)
				}
			}
		}
	}
}

// Law 1 holds where a search has to look early for something to hold the others to: what is
// proven then, nothing beats.
func TestNothingBeatsWhatIsProvenAfterAnEarlyLook(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := coarse(t, 1)
		s := solverIn(&room)
		s.most, s.share = 0, 0
		r := s.solve()
		if !r.Proven {
			return
		}
		s.everything(func(line length.Length, edges []length.Length, m merit.Merit) {
			order, term := r.order.Until(&m, &r.Merit, merit.Slack)
			require.GreaterOrEqual(t, order, 0, "line %v, edges %v beat it in %s", line, edges, term)
		})
	})
}
