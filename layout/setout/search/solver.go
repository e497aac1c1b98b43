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

	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"
)

// Work is how much is counted for one room before its search settles for the best found, and at most as much again: it
// bounds the time that a room may take in which nearly everything is free.
const Work = 3_000_000

type solver struct {
	missed *merit.Merit // what no set-out can beat that was not looked at; nil where all were
	short  bool         // of the start that was placed last not every placing was looked at
	room   *survey.Room
	order  merit.Order
	hand   survey.Hand
	walls  []*count.Wall
	known  *merit.Merit // the best of the room so far
	rival  *merit.Merit // what is worse need not be found; nil where whatever is best must
	most   int          // that is counted for the room, before it settles
	share  int          // of that, for this hand of the bond
	fresh  int          // for one line when the search settles
	limit  int
	shared map[huntOf]*hunt // walls whose start is free, searched once for all lines whole courses apart
	worst  int              // the wall that turned out worse than was known when it was last looked at more closely
	ctx    context.Context
	spread bool // starts that promise alike are taken from all over the wall, as for a few of them alone there is work
	asked  int
	ended  bool
	before int // what was counted of its walls before
}

// newSolver prepares the search with one of so many hands of the bond, on walls that were kept.
func newSolver(ctx context.Context, room *survey.Room, hand survey.Hand, work, hands int, kept *count.Kept) *solver {
	s := &solver{room: room, order: merit.OrderFor(room.Prefer), hand: hand, ctx: ctx, shared: map[huntOf]*hunt{}}
	for _, found := range room.Walls {
		s.walls = append(s.walls, kept.Wall(room, found, hand))
	}
	s.before = s.work()
	s.most, s.share, s.fresh = work, work/hands, work/hands/16
	s.limit = s.share
	if hands > 1 {
		s.limit = s.share * 2 / 3 // each of them settles, which takes as much again
	}
	return s
}

// work is how much was counted so far.
func (s *solver) work() int {
	sum := 0
	for _, w := range s.walls {
		sum += w.Work()
	}
	return sum
}

// stopped tells whether it is time to settle. It asks the context now and then.
func (s *solver) stopped() bool {
	if s.asked++; !s.ended && s.asked%16 == 0 {
		s.ended = s.ctx.Err() != nil
	}
	s.ended = s.ended || worn(s)
	return s.ended || s.work() > s.limit
}

// worn tells whether the search has to begin afresh with new walls. With these it counts no less than with new ones, and as
// long as that is less than what any of its parts is given, of which fresh is the least, its work decides nothing.
func worn(s *solver) bool { return s.before > 0 && s.work() > s.fresh }

// giveBack gives walls back to where they are kept, unless so much was counted with them that the next search would hardly
// end before it is worn: its work would come on top.
func giveBack(s *solver, kept *count.Kept) {
	if s.work() <= s.fresh*3/4 {
		kept.Keep(s.walls)
	}
}
