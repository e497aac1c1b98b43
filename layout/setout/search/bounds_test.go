package search

import (
	"reflect"
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

func slivers(n int) merit.Merit {
	return merit.Merit{Part: true, Sight: merit.Sight{Slivers: n}}
}

func tied(n int) []count.Counted { return []count.Counted{{Merit: slivers(n)}} }

// What was not looked at is summed up over the walls of a line: of each wall the better of what
// it missed and of what it found; of several lines the best is remembered.
func TestWhatALineMissed(t *testing.T) {
	s := solverOf("1000x600 300x100+2")
	missed := func(n int) *merit.Merit { m := slivers(n); return &m }
	hunts := func(found1, missed1, found2, missed2 int) []*hunt {
		out := []*hunt{{solver: s, ties: tied(found1)}, {solver: s, ties: tied(found2)}}
		for i, n := range []int{missed1, missed2} {
			if n >= 0 {
				out[i].missed = missed(n)
			}
		}
		return out
	}
	s.miss(hunts(5, -1, 7, -1))
	require.Nil(t, s.missed, "nothing was missed")
	s.miss(hunts(5, 9, 7, -1))
	require.Equal(t, 12, s.missed.Slivers, "what was missed is worse than what was found")
	s.miss(hunts(5, -1, 7, 4))
	require.Equal(t, 9, s.missed.Slivers)
	s.miss(hunts(9, 8, 9, 8))
	require.Equal(t, 9, s.missed.Slivers, "another line missed nothing better")
	s.miss(hunts(5, 2, 7, 4))
	require.Equal(t, 6, s.missed.Slivers)
}

// A hunt remembers the best of what it did not look at.
func TestWhatAHuntMissed(t *testing.T) {
	h := &hunt{solver: solverOf("1000x600 300x100+2")}
	for _, c := range []struct{ missed, best int }{{5, 5}, {7, 5}, {3, 3}, {4, 3}} {
		h.miss(slivers(c.missed))
		require.Equal(t, c.best, h.missed.Slivers)
	}
}

// A hunt has looked at enough after so many starts, or after so much work where those left can
// only be better out of sight or quicker to cut; never before it has found one.
func TestWhenAHuntHasLookedAtEnough(t *testing.T) {
	hidden := merit.Merit{Part: true, Sight: merit.Sight{Slivers: 3}, OutOfSight: merit.Sight{Slivers: -1}}
	for name, c := range map[string]struct {
		found      bool
		steps, own int
		next       merit.Merit
		spent      bool
	}{
		"nothing found":                      {false, mostSteps + 9, Work, slivers(3), false},
		"few steps, little work":             {true, 5, 100, slivers(3), false},
		"so many steps":                      {true, mostSteps, 100, slivers(1), true},
		"one step less":                      {true, mostSteps - 1, 100, slivers(3), false},
		"much work, and better may follow":   {true, 5, Work / lateShare, slivers(2), false},
		"much work, as good may follow":      {true, 5, Work / lateShare, slivers(3), true},
		"much work, better out of sight may": {true, 5, Work / lateShare, hidden, true},
		"a little less work":                 {true, 5, Work/lateShare - 1, hidden, false},
	} {
		s := solverOf("1000x600 300x100+2")
		h := &hunt{solver: s, steps: c.steps, own: c.own}
		h.queue.before = h.before
		h.queue.add(&candidate{merit: c.next})
		if c.found {
			h.ties = tied(3)
		}
		require.Equal(t, c.spent, h.spent(), name)
	}
}

// What is known of the room cuts a wall off: together with what the others cannot beat on the
// line it must be no worse before the terms that walls share.
func TestWhatTheOtherWallsLeaveToOne(t *testing.T) {
	s := solverOf("1000x600 300x100+2 | 800x600")
	tr := &trial{hunts: []*hunt{{solver: s, ties: tied(2), done: true}, {solver: s, ties: tied(4), done: true}}}
	require.Nil(t, s.cutoff(tr, 0), "nothing is known yet")
	known := slivers(10)
	s.known = &known
	for i, left := range []int{6, 8} { // 10 less what the other has
		c := s.cutoff(tr, i)
		as, worse := slivers(left), slivers(left+1)
		require.False(t, c.passed(s.order, &as))
		require.True(t, c.passed(s.order, &worse))
	}
}

// Terms out of sight do not keep a search going: what is left is as good as the best, or it
// may be better where it is seen.
func TestWhatIsLeftMayStillBeBetter(t *testing.T) {
	s := solverOf("1000x600 300x100+2")
	best := &trial{merit: merit.Merit{Sight: merit.Sight{Slivers: 3}, OutOfSight: merit.Sight{Slivers: 5}, Work: 9}}
	for name, c := range map[string]struct {
		next merit.Merit
		good bool
	}{
		"better in sight":                        {merit.Merit{Sight: merit.Sight{Slivers: 2}, OutOfSight: merit.Sight{Slivers: 9}}, false},
		"better out of sight alone":              {merit.Merit{Sight: merit.Sight{Slivers: 3}}, true},
		"quicker to cut alone":                   {merit.Merit{Sight: merit.Sight{Slivers: 3}, OutOfSight: merit.Sight{Slivers: 5}}, true},
		"worse in sight, better where it is not": {merit.Merit{Sight: merit.Sight{Slivers: 4}}, true},
	} {
		require.Equal(t, c.good, asGood(s.order, best, &trial{merit: c.next}), name)
	}
}

// Of placings that are late only those are that can be better in nothing that is seen.
func TestPlacingsThatAreLate(t *testing.T) {
	p := &placer{solver: solverOf("1000x600 300x100+2")}
	found := &placing{merit: slivers(3)}
	for n, late := range map[int]bool{2: false, 3: true, 4: true} {
		require.Equal(t, late, p.late(&placing{merit: slivers(n)}, found))
	}
}

// A start is never said to be worse than a look at it more closely shows: each depth of a look
// claims no less than the one before, and none more than the start gives.
func TestALookMoreCloselyTakesNothingBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for range 6 {
			room := alone(t)
			s := solverIn(&room)
			h := s.hunt(s.walls[0], rapid.SampledFrom(s.lines()).Draw(t, "line"))
			c := h.queue.first()
			got := h.wall.Count(count.Setting{Line: h.line, Edge: c.edge, Placed: h.wall.Outer()}).Merit
			for range 4 {
				before := c.merit
				if c.depth == based {
					break
				}
				h.closer(c)
				order, term := s.order.Compare(&before, &c.merit)
				require.LessOrEqual(t, order, 0, "it takes back what it said of %s", term)
				order, term = s.order.Compare(&c.merit, &got)
				require.LessOrEqual(t, order, 0, "it claims more than the start gives in %s", term)
				if both := h.wall.Bounds.OfBoth(h.line, c.edge); c.depth >= edged {
					require.False(t, s.order.Better(&c.merit, &both), "it knows where edges and rows stand")
				}
				if plainly := h.wall.Bounds.Plainly(h.line, c.edge); c.depth >= refined {
					require.False(t, s.order.Better(&c.merit, &plainly), "it knows the rows")
				}
			}
			require.Equal(t, based, c.depth)
		}
	})
}

// The base of a start, what it cannot beat wherever its free marks go, is no more than what the
// best of its placings gives.
func TestTheBaseOfAStart(t *testing.T) {
	for _, line := range []string{
		"1000x600 300x100+2 head=540..640", "1000x600 300x100+2 left=0..80 head=540..640", "1000x900 200x100+2 gap=3 niche=380..420,250,300..340,204",
	} {
		room := chance.Sketch(line)
		s := solverIn(&room)
		w := s.walls[0]
		for k, edge := range w.Starts.Tried() {
			if k%29 != 0 {
				continue
			}
			s.limit = s.work() + Work
			base, best := s.base(w, 20*mm, edge), s.place(w, 20*mm, edge, nil, nil, 10*tries)
			order, term := s.order.Compare(&base, &best.Merit)
			require.LessOrEqual(t, order, 0, "%s from %v: it claims more in %s", line, edge/mm, term)
			plain := w.Bounds.Standing(20*mm, edge)
			order, term = s.order.Until(&plain, &base, merit.Exposed)
			require.LessOrEqual(t, order, 0, "%s from %v: it claims less than the edges that stand in %s", line, edge/mm, term)
		}
	}
}

// The queue of a search is by what lines promise, the lower line first among those that promise
// the same: the same room is searched in the same order.
func TestLinesWaitInOrder(t *testing.T) {
	s := solverOf("1000x600 300x100+2")
	var last *trial
	var all []*trial
	for _, line := range s.lines() {
		all = append(all, s.trial(line))
	}
	q := queue[*trial]{items: all, before: func(a, b *trial) bool {
		if order, _ := s.order.Compare(&a.merit, &b.merit); order != 0 {
			return order < 0
		}
		return a.line < b.line
	}}
	q.sort()
	seen := map[length.Length]bool{}
	for !q.empty() {
		tr := q.take()
		if last != nil {
			order, _ := s.order.Compare(&last.merit, &tr.merit)
			require.True(t, order < 0 || order == 0 && last.line < tr.line)
		}
		seen[tr.line], last = true, tr
	}
	require.Len(t, seen, len(s.lines()))
	require.Equal(t, survey.Left, s.hand)
}

// From a placing one mark is moved at a time, and only where that is better: nothing is lost, and
// the first mark stands at its best.
func TestNudgingOnlyMakesBetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		moved := false
		for range 12 {
			p := placed(t)
			p.limit = p.work() + Work
			at := p.last()
			set := p.setting(at)
			if p.wall.Places.Overlap(set.Placed) {
				continue
			}
			c := p.wall.Count(set)
			got := p.nudge(&placing{spots: at, merit: c.Merit, depth: exact, counted: &c})
			order, term := p.order.Compare(&got.Merit, &c.Merit)
			require.LessOrEqual(t, order, 0, "it is worse in %s", term)
			require.Equal(t, order < 0, !reflect.DeepEqual(got.Placed, c.Placed), "it moves for what is better alone")
			moved = moved || order < 0
			require.False(t, p.wall.Places.Overlap(got.Placed))
			for k := range p.choices[0].axes[0].options {
				one := slices.Clone(at)
				one[0] = p.choices[0].at(append([]int{k}, at[0].at[1:]...))
				if set := p.setting(one); !p.wall.Places.Overlap(set.Placed) {
					m := p.wall.Count(set).Merit
					order, term := p.order.Compare(&got.Merit, &m)
					require.LessOrEqual(t, order, 0, "one mark moved is better in %s", term)
				}
			}
		}
		require.True(t, moved)
	})
}

// last are the places that take of every axis the option that promises least.
func (p *placer) last() []*spot {
	var out []*spot
	for _, c := range p.choices {
		at := make([]int, len(c.axes))
		for i, a := range c.axes {
			at[i] = len(a.options) - 1
		}
		out = append(out, c.at(at))
	}
	return out
}
