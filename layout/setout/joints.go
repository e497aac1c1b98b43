package setout

import (
	"context"

	"coursewright/layout/plan"
	"coursewright/layout/setout/count"
	"coursewright/layout/setout/search"
	"coursewright/layout/setout/tell"
	"coursewright/layout/survey"
)

// sized is a room with one of the sizes that its joint may have, and the best that was found with it.
type sized struct {
	room   survey.Room
	result search.Result
	again  bool // it was searched a second time
}

// joint solves the room with each joint that it may have, and takes the best.
func joint(ctx context.Context, room survey.Room, kept *count.Kept) (*search.Result, survey.Room, []plan.Joint, error) {
	if len(room.Joints) < 2 {
		if len(room.Joints) == 1 {
			room = room.Jointed(room.Joints[0])
		}
		r, err := search.With(ctx, &room, search.Work, kept)
		return &r, room, nil, err
	}
	all, err := eachSize(ctx, room, kept)
	if err != nil {
		return nil, room, nil, err
	}
	best := &all[bestOf(all)]
	var told []plan.Joint
	for i := range all {
		told = append(told, tell.Joint(&best.room, room.Joints[i], &all[i].result, &best.result))
		if &all[i] != best {
			all[i].result.Keep(kept)
		}
	}
	return &best.result, best.room, told, nil
}

// eachSize searches the room with every size of its joint, which together count about as much as one room may: twice its work,
// as a search counts up to twice what it is given. Half of that goes round them all, and what one leaves is the next ones'; four
// fifths of the rest are for those that may yet be better than the best, the one that promises most first.
func eachSize(ctx context.Context, room survey.Room, kept *count.Kept) ([]sized, error) {
	all := make([]sized, len(room.Joints))
	left, least := 2*search.Work, search.Work/len(all)/4
	for i, j := range room.Joints {
		share := max(least, (left-search.Work)/(len(all)-i))
		all[i].room = room.Jointed(j)
		r, err := search.With(ctx, &all[i].room, share/2, kept)
		if err != nil {
			return nil, err
		}
		all[i].result = r
		left -= r.Spent
	}
	for left > search.Work/2 {
		next := hopeful(all)
		if next < 0 {
			break
		}
		r, err := search.With(ctx, &all[next].room, left*2/5, kept)
		if err != nil {
			return nil, err
		}
		left -= r.Spent
		all[next].take(r)
	}
	return all, nil
}

// take takes what a second search gave, unless the first was luckier.
func (s *sized) take(r search.Result) {
	s.again = true
	if !r.Order().Better(&s.result.Merit, &r.Merit) {
		s.result = r
	}
}

// bestOf is the first of the best.
func bestOf(all []sized) int {
	best := 0
	for i := range all {
		if r := &all[i].result; r.Order().Better(&r.Merit, &all[best].result.Merit) {
			best = i
		}
	}
	return best
}

// hopeful is the size that promises most of those that may yet be better than the best and were searched once, or -1.
func hopeful(all []sized) int {
	best, next := &all[bestOf(all)].result, -1
	for i := range all {
		r := &all[i].result
		if all[i].again || r.Proven || !r.Order().Better(&r.Bound, &best.Merit) {
			continue
		}
		if next < 0 || promises(r, &all[next].result) {
			next = i
		}
	}
	return next
}

// promises tells whether a result promises more than another: by what it cannot beat, and where that is alike by what it has.
func promises(r, than *search.Result) bool {
	c, _ := r.Order().Compare(&r.Bound, &than.Bound)
	return c < 0 || c == 0 && r.Order().Better(&r.Merit, &than.Merit)
}
