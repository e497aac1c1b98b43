// Package search finds the best set-out of a room by the order of merit.
//
// Laws, each with a test:
//  1. No set-out whose line and starts are among Starts and lines (the marks of the
//     tape in one pitch, under every course of the bond, and the classic ones) is better
//     than the one found, where the result says it is proven.
//  2. Where it is not proven, no such set-out is better than the bound that it gives.
//     The classic lines and starts are looked at before it settles, as far as the
//     work for that goes; it does not promise to beat each of them.
//  3. The same room gives the same result: what bounds the search is counted work.
//  4. The search ends soon after its context does.
//
// Walls share the course line and, in three late terms, their corners. So lines
// wait in a queue in the order of what they cannot beat, and on each line the
// starts of each wall; what is first in a queue is looked at more closely until it
// is known exactly, and nothing after it can then be better. Starts that are equal
// before the terms of the corners are kept, and settled together.
package search

import (
	"context"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
	"coursewright/layout/setout/effort"
	"coursewright/layout/survey"
)

// Work is how much one search counts before it settles for the best found: it
// bounds the time that a room may take in which nearly everything is free.
const Work = 2_400_000

type solver struct {
	missed *merit.Merit // what no set-out can beat that was not looked at; nil where all were
	short  bool         // of the start that was placed last not every placing was looked at
	room   *survey.Room
	order  merit.Order
	hand   survey.Hand
	walls  []*count.Wall
	known  *merit.Merit // the best of the room so far
	share  int          // of Work, for this hand of the bond
	limit  int
	worst  int // the wall that turned out worse than was known when it was last looked at more closely
	late   int // beyond so much work it settles where only what is out of sight or quicker to cut is left to decide
	ctx    context.Context
	asked  int
	ended  bool
}

// Room is the best set-out of a room with the joint it has. The error is the
// context's.
func Room(ctx context.Context, room *survey.Room) (Result, error) {
	order := merit.OrderFor(room.Prefer)
	var best *Result
	hands := hands(room)
	for _, hand := range hands {
		s := newSolver(ctx, room, hand, order)
		s.share = Work / len(hands)
		s.limit, s.late = s.share, s.share/3
		r := s.solve(best)
		effort.Add(ctx, s.work())
		if err := ctx.Err(); err != nil {
			return Result{}, err
		}
		switch {
		case best == nil:
			best = r
		case r == nil || !order.Better(&r.Merit, &best.Merit):
			best.Proven = best.Proven && (r == nil || r.Proven)
			if r != nil && !r.Proven && order.Better(&r.Bound, &best.Bound) {
				best.Bound = r.Bound
			}
		default:
			r.Proven = r.Proven && best.Proven
			best = r
		}
	}
	return *best, nil
}

// hands are the hands of the bond to try. A half bond has only one.
func hands(room *survey.Room) []survey.Hand {
	if room.Bond.Hand != survey.Free {
		return []survey.Hand{room.Bond.Hand}
	}
	if room.Bond.Num == 0 || 2*room.Bond.Num == room.Bond.Den {
		return []survey.Hand{survey.Left}
	}
	return []survey.Hand{survey.Left, survey.Right}
}

func newSolver(ctx context.Context, room *survey.Room, hand survey.Hand, order merit.Order) *solver {
	s := &solver{room: room, order: order, hand: hand, ctx: ctx}
	for _, found := range room.Walls {
		s.walls = append(s.walls, count.NewWall(room, found, hand))
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
	return s.ended || s.work() > s.limit
}

// lines lists the course lines that are tried, ascending over one period: every
// mark of the tape, with the classic lines between marks; the pinned one where
// there is one.
func (s *solver) lines() []length.Length {
	if s.room.Line != nil {
		return []length.Length{*s.room.Line}
	}
	pitch := s.room.Tile.Height + s.room.Joint
	from, period := s.lowest(), pitch*s.periods()
	out := []length.Length{}
	for y := from.CeilTo(s.room.Tape); y < from+pitch; y += s.room.Tape {
		for _, shift := range s.shifts() {
			for n := range s.periods() { // what a start that is pinned gives on a line a course higher, others give on this one
				out = append(out, from+length.Mod(y-shift+n*pitch-from, period))
			}
		}
	}
	for _, c := range s.Lines() {
		for y := from + length.Mod(c.Line-from, pitch); y < from+period; y += pitch {
			out = append(out, y)
		}
	}
	return s.within(unique(out))
}

// shifts are how far the columns of the bond stand over the course line, where it has
// columns: a mark of the tape may lie under any of them.
func (s *solver) shifts() []length.Length {
	if !s.room.Bond.Plumb {
		return []length.Length{0}
	}
	return bond.Of(*s.room, s.hand).Shifts()
}

// periods is over how many pitches the line must be tried: one, unless a pinned
// start ties the courses to the line.
func (s *solver) periods() length.Length {
	for _, w := range s.room.Walls {
		if w.Pin != nil && !s.room.Bond.Plumb {
			return length.Length(max(1, s.room.Bond.Den))
		}
	}
	return 1
}

// lowest is where the course line is looked for first: the lowest tile of the
// widest wall.
func (s *solver) lowest() length.Length {
	widest := s.walls[0]
	for _, w := range s.walls {
		if w.Found.Width > widest.Found.Width {
			widest = w
		}
	}
	return widest.Box().Bottom
}
