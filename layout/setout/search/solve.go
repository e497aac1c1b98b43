package search

import (
	"context"
	"slices"

	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
	"coursewright/layout/setout/effort"
	"coursewright/layout/survey"
)

// Room is the best set-out of a room with the joint it has. The error is the
// context's.
func Room(ctx context.Context, room *survey.Room) (Result, error) { return Within(ctx, room, Work) }

// Within is Room for whoever has less than Work for it.
func Within(ctx context.Context, room *survey.Room, work int) (Result, error) {
	return With(ctx, room, work, nil)
}

// With is Within for whoever keeps walls. The walls of the result go back with Result.Keep.
func With(ctx context.Context, room *survey.Room, work int, kept *count.Kept) (Result, error) {
	best, err := with(ctx, room, work, kept, nil)
	if err != nil {
		return Result{}, err
	}
	return *best, nil
}

// Against is With for whoever has a rival already: nil where all starts are pinned and every set-out of the room is sure
// to be worse than that. Otherwise it is what With gives.
func Against(ctx context.Context, room *survey.Room, work int, kept *count.Kept, rival *merit.Merit) (*Result, error) {
	if slices.ContainsFunc(room.Walls, func(w survey.WallFound) bool { return w.Pin == nil }) {
		rival = nil // classic starts may beat what is sure of all others
	}
	return with(ctx, room, work, kept, rival)
}

func with(ctx context.Context, room *survey.Room, work int, kept *count.Kept, rival *merit.Merit) (*Result, error) {
	order := merit.OrderFor(room.Prefer)
	var best *Result
	hands := hands(room)
	for _, hand := range hands {
		s := newSolver(ctx, room, hand, work, len(hands), kept)
		s.rival = rival
		r := s.solve(best)
		if worn(s) {
			s = newSolver(ctx, room, hand, work, len(hands), nil)
			s.rival = rival
			r = s.solve(best)
		}
		effort.Add(ctx, s.work()-s.before)
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		left := s // of which the result is not taken
		switch {
		case best == nil && r == nil: // no match for the rival
		case best == nil:
			best, left = r, nil
		case r == nil || !order.Better(&r.Merit, &best.Merit):
			best.Proven = best.Proven && (r == nil || r.Proven)
			if r != nil && !r.Proven && order.Better(&r.Bound, &best.Bound) {
				best.Bound = r.Bound
			}
		default:
			if !best.Proven && order.Better(&best.Bound, &r.Bound) {
				r.Bound = best.Bound
			}
			r.Proven = r.Proven && best.Proven
			best, left = r, best.solver
		}
		if left != nil {
			giveBack(left, kept)
		}
	}
	return best, nil
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

func (s *solver) solve(known *Result) *Result {
	q := trials(s)
	if s.ended {
		return nil
	}
	var best *trial
	if known != nil {
		s.known = &known.Merit
	}
	for looked, whole, settled := false, false, false; ; { // early, at the whole of a line, and at what settling looks at
		if !looked && best == nil && !q.empty() && s.work() > s.share/8 {
			looked, best = true, s.early(&q)
			s.hold(best)
		}
		if best != nil && (q.empty() || s.order.Better(&best.merit, &q.first().merit)) {
			return s.result(best, best.merit)
		}
		if q.empty() {
			return nil
		}
		t := q.first()
		if known != nil && !s.order.Better(&t.merit, &known.Merit) {
			return nil
		}
		if t.depth == exact {
			return s.result(t, t.merit)
		}
		if s.rival != nil && s.order.Better(s.rival, &t.merit) {
			return nil
		}
		spent := settled || s.stopped()
		switch {
		case s.ended, settled && s.stopped(), spent && whole && asGood(s.order, best, t):
			return s.result(best, t.merit)
		case spent && !settled:
			if best, settled = s.settle(q, best), true; best == nil {
				return nil
			}
			s.hold(best)
			continue
		}
		s.closer(t)
		if t.dead {
			q.take()
			continue
		}
		whole = whole || t.depth == exact
		if t.depth == exact && (best == nil || s.order.Better(&t.merit, &best.merit)) {
			best = t
			s.hold(best)
		}
		q.settle()
	}
}

// trials are all lines, the most promising first, as far as whoever asks waits for them.
func trials(s *solver) queue[*trial] {
	q := queue[*trial]{before: func(a, b *trial) bool {
		if order, _ := s.order.Compare(&a.merit, &b.merit); order != 0 {
			return order < 0
		}
		return a.line < b.line
	}}
	for _, line := range s.lines() {
		if s.stopped() && s.ended {
			break
		}
		q.items = append(q.items, s.trial(line))
	}
	q.sort()
	return q
}

// hold holds all that is looked at from now on to what a trial gives.
func (s *solver) hold(t *trial) {
	if s.known == nil || s.order.Better(&t.merit, s.known) {
		s.known = &t.merit
	}
}

// asGood tells whether nothing that is left can beat the best in a term before the
// terms out of sight: what is left can only be better there, or quicker to cut.
func asGood(by merit.Order, best, next *trial) bool {
	order, _ := by.Until(&next.merit, &best.merit, merit.HiddenBare)
	return order >= 0
}
