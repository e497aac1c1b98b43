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
	t := newTask(ctx, room, hands(room), work, kept)
	t.rival = rival
	r := t.solve()
	if worn(t) {
		t = newTask(ctx, room, hands(room), work, nil)
		t.rival = rival
		r = t.solve()
	}
	effort.Add(ctx, t.work()-t.before)
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	for _, s := range t.hands {
		if r == nil || s.hand != r.Hand {
			giveBack(s, kept)
		}
	}
	if r != nil {
		r.Spent, r.solver = t.work(), r.alone()
	}
	return r, nil
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

// solve searches all lines with every hand of the bond in one queue; nil where all are worse than the rival.
func (t *task) solve() *Result {
	q := trials(t)
	if t.ended {
		return nil
	}
	var best *trial
	for looked, whole, settled := false, false, false; ; { // early, at the whole of a line, and at what settling looks at
		if !looked && best == nil && t.work() > t.most/8 {
			looked, best = true, t.early(&q)
			t.hold(best)
		}
		if best != nil && (q.empty() || t.order.Better(&best.merit, &q.first().merit)) {
			return t.result(best, best.merit)
		}
		first := q.first()
		if first.depth == exact {
			return t.result(first, first.merit)
		}
		if t.rival != nil && t.order.Better(t.rival, &first.merit) {
			return nil
		}
		if t.stopped() {
			if t.ended || settled || whole && asGood(t.order, best, first) {
				return t.result(best, first.merit)
			}
			if best, settled = t.settle(&q, best), true; best == nil {
				return nil
			}
			t.hold(best)
			continue
		}
		first.solver.closer(first)
		if first.dead {
			q.take()
			continue
		}
		whole = whole || first.depth == exact
		if first.depth == exact && (best == nil || t.order.Better(&first.merit, &best.merit)) {
			best = first
			t.hold(best)
		}
		q.settle()
	}
}

// trials are all lines with every hand of the bond, the most promising first, as far as whoever asks waits for them.
func trials(t *task) queue[*trial] {
	q := queue[*trial]{before: func(a, b *trial) bool {
		if order, _ := t.order.Compare(&a.merit, &b.merit); order != 0 {
			return order < 0
		}
		if a.solver != b.solver {
			return a.solver.hand < b.solver.hand
		}
		return a.line < b.line
	}}
	for _, s := range t.hands {
		for _, line := range s.distinct() {
			if t.stopped() && t.ended {
				break
			}
			q.items = append(q.items, s.trial(line))
		}
	}
	q.sort()
	return q
}

// hold holds all that is looked at from now on to what a trial gives.
func (t *task) hold(best *trial) {
	if t.known == nil || t.order.Better(&best.merit, t.known) {
		t.known = &best.merit
	}
}

// asGood tells whether nothing that is left can beat the best in a term before the
// terms out of sight: what is left can only be better there, or quicker to cut.
func asGood(by merit.Order, best, next *trial) bool {
	order, _ := by.Until(&next.merit, &best.merit, merit.HiddenBare)
	return order >= 0
}
