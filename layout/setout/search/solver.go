// Package search finds the best set-out of a room by the order of merit.
//
// Laws, each with a test:
//  1. No set-out whose line and starts are among Starts and lines (the marks of the
//     tape in one pitch, under every course of the bond, and the classic ones), with its free
//     marks where count.Places lists them, is better than the one found, where the result says
//     it is proven.
//  2. Where it is not proven, no such set-out is better than the bound that it gives.
//     The classic lines and starts, and starts far apart on lines far apart, are
//     looked at before it settles, as far as the work for that goes; it does not
//     promise to beat each of them.
//  3. The same room gives the same result: what bounds the search is counted work.
//  4. The search ends soon after its context does.
//  5. Walls that are kept change nothing but the time it takes.
//  6. Against a rival a room whose starts are pinned gives what it gives without, or nothing where that is worse.
//
// Walls share the course line and, in three late terms, their corners. So lines
// wait in a queue in the order of what they cannot beat, and on each line the
// starts of each wall; what is first in a queue is looked at more closely until it
// is known exactly, and nothing after it can then be better. Starts that are equal
// before the terms of the corners are kept, and settled together.
package search

import (
	"context"
	"math"

	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"
)

// Work is how much a room is given: where half of it was counted and nothing is proven, the search settles for the best
// found, and holds what it goes on with to that; at twice it ends. It bounds the time that a room may take in which nearly
// everything is free.
const Work = 2_800_000

// task is a room to search, with each hand that its bond may have: what is known of it, and how much may be counted.
type task struct {
	room   *survey.Room
	order  merit.Order
	hands  []*solver
	missed *merit.Merit // what no set-out can beat that was not looked at; nil where all were
	known  *merit.Merit // the best of the room so far
	rival  *merit.Merit // what is worse need not be found; nil where whatever is best must
	most   int          // that the room is given
	share  int          // of that, for either hand when it settles
	fresh  int          // of that share, for one line
	limit  int          // for what is looked at now
	end    int          // for what is looked at before the search has settled
	spread bool         // starts that promise alike are taken from all over the wall, as for a few of them alone there is work
	ctx    context.Context
	asked  int
	ended  bool
	before int // what was counted of its walls before
}

// solver searches with one hand of the bond.
type solver struct {
	*task
	hand    survey.Hand
	walls   []*count.Wall
	shared  map[huntOf]*hunt                // walls whose start is free, searched once for all lines whole courses apart
	spreads map[*count.Start][]*count.Start // lists of starts by their first, with those that promise alike spread
	worst   int                             // the wall that turned out worse than was known when it was last looked at more closely
	short   bool                            // of the start that was placed last not every placing was looked at
}

// newTask prepares the search, on walls that were kept.
func newTask(ctx context.Context, room *survey.Room, hands []survey.Hand, work int, kept *count.Kept) *task {
	t := &task{room: room, order: merit.OrderFor(room.Prefer), ctx: ctx}
	for _, hand := range hands {
		s := &solver{task: t, hand: hand, shared: map[huntOf]*hunt{}, spreads: map[*count.Start][]*count.Start{}}
		for _, found := range room.Walls {
			s.walls = append(s.walls, kept.Wall(room, found, hand))
		}
		t.hands = append(t.hands, s)
	}
	t.before = t.work()
	t.most, t.limit, t.end = work, work/2, math.MaxInt
	t.share, t.fresh = work/len(hands), work/len(hands)/16
	return t
}

// work is how much was counted so far.
func (t *task) work() int {
	sum := 0
	for _, s := range t.hands {
		for _, w := range s.walls {
			sum += w.Work()
		}
	}
	return sum
}

// allow sets how much may be counted for what is looked at next, as far as there is so much.
func (t *task) allow(effort int) { t.limit = min(t.work()+effort, t.end) }

// stopped tells whether it is time to settle. It asks the context now and then.
func (t *task) stopped() bool {
	if t.asked++; !t.ended && t.asked%16 == 0 {
		t.ended = t.ctx.Err() != nil
	}
	t.ended = t.ended || worn(t)
	return t.ended || t.work() > t.limit
}

// worn tells whether the search has to begin afresh with new walls. With these it counts no less than with new ones, and as
// long as that is less than what it looks early after, twice this, its work decides nothing.
func worn(t *task) bool { return t.before > 0 && t.work() > t.most/16 }

// giveBack gives walls back to where they are kept, unless so much was counted with them that the next search would hardly
// end before it is worn: its work would come on top.
func giveBack(s *solver, kept *count.Kept) {
	if s.work() <= s.most/16*3/4 {
		kept.Keep(s.walls)
	}
}

// alone is the solver as that of a room with its hand alone.
func (s *solver) alone() *solver {
	room, out := *s.task, *s
	out.task, room.hands = &room, []*solver{&out}
	return &out
}
