package setout

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/plan"
	"coursewright/layout/setout/search"
	"coursewright/layout/setout/tell"
	"coursewright/layout/survey"
)

// Whole tile beside a strip is what a setter begins with (common practice, no source), until
// that leaves a sliver, or bare wall, in the corner, or a cut at an exposed end. So a part of a wall
// in which it does is set out once more with its start free, and what is better
// by the terms of the order of merit down to the exposed ends is taken. By the terms after
// these alone no tile is cut beside a strip.

// orCut is a set-out with whole tile beside all strips, or the one that cuts some of it
// where that is better.
func (b *beside) orCut(s solved) (*beside, solved, error) {
	with := b.freed(s)
	if with == nil {
		return b, s, nil
	}
	on, room, err := with.level()
	if err != nil {
		return b, s, err
	}
	proven := on.proven()
	if c, _ := s.setout.Order.Until(&on.merit, &s.setout.Merit, merit.Openings); c >= 0 {
		if !proven && s.setout.Proven {
			s.setout.Proven, s.setout.Bound = false, "Cut tile beside a strip was tried, but not in every place."
		}
		return b, s, nil
	}
	cut := with.asFound(room, &on)
	if m := &cut.setout.Merit; s.setout.Proven && proven && m.Mirror+m.Facing > 0 {
		cut.setout.Proven, cut.setout.Bound = false, "Tile is cut beside a strip. Starts were judged by that cut; how each goes with the other end of the wall, or with the facing wall, was not worked out for all of them."
	}
	cut.setout.Proven = cut.setout.Proven && s.setout.Proven
	with.whole = &s.setout.Merit
	return with, cut, nil
}

// level sets the room of parts out with one head for all parts of a wall: on any line where they have one by
// themselves, else on the line found.
func (b *beside) level() (found, survey.Room, error) {
	on, err := b.first()
	if err != nil {
		return on, survey.Room{}, err
	}
	room, _ := b.parts()
	if !on.level {
		b.free, room.Line, room.Bond.Hand = true, &on.line, on.hand
		on, err = b.search(&room)
	}
	return on, room, err
}

// proven tells whether nothing on the tape is better than what was found.
func (f *found) proven() bool {
	if f.bands != nil {
		return f.bands.Proven
	}
	return f.result.Proven
}

// freed is the room with the parts free to cut tile beside their strips in which whole tile leaves something that the
// terms down to the exposed ends count; nil where there is none.
func (b *beside) freed(s solved) *beside {
	with, any := *b, false
	with.cut, with.chosen = slices.Clone(b.cut), make([]*search.Result, len(b.room.Walls))
	with.head = make([]*length.Length, len(b.room.Walls))
	if b.free {
		with.work = search.Work / 8 // of what is not proven a look is enough
	}
	_, sides := b.parts()
	for i, side := range sides {
		if !b.mayCut(side) {
			continue
		}
		if c, _ := s.setout.Order.Until(&merit.Merit{}, &s.own[i], merit.Openings); c == 0 {
			continue
		}
		with.cut[side.wall] = slices.Clone(with.cut[side.wall])
		with.cut[side.wall][side.n], any = true, true
	}
	if !any {
		return nil
	}
	return &with
}

// mayCut tells whether nothing says how the tile of a part starts: no pin, and none of its strips.
func (b *beside) mayCut(s side) bool {
	w := &b.room.Walls[s.wall]
	if s.of == 1 || w.Pin != nil || w.Set != nil || w.Beyond != nil {
		return false
	}
	by := w.PartedBy()
	for _, k := range by[max(0, s.n-1):min(s.n+1, len(by))] {
		if w.Openings[k].Strip.Whole {
			return false
		}
	}
	return true
}

// cuts tells whether some part of a wall may cut tile beside its strips.
func (b *beside) cuts(wall int) bool { return slices.Contains(b.cut[wall], true) }

// cutTold says of a wall that cuts tile beside strips what whole tile there would give; nil where it cuts none.
// Starts are those of its parts.
func (b *beside) cutTold(wall int, s *plan.Setout, starts []length.Length) *plan.Cut {
	if b.whole == nil || !b.cuts(wall) {
		return nil
	}
	w := &b.room.Walls[wall]
	var out plan.Cut
	for n, k := range w.PartedBy() {
		left, right := b.left[wall][k]+b.room.Joint, b.left[wall][k]+w.Openings[k].Width.From
		if !b.joins(left-starts[n]) || !b.joins(right-starts[n+1]) {
			out.Beside = append(out.Beside, w.Openings[k].Name)
		}
	}
	if out.Beside == nil {
		return nil
	}
	tell.Against(&out.Figures, b.room.Units, s.Order, b.whole, &s.Merit)
	return &out
}

// joins tells whether some class of the bond has the left edge of a tile so far from where it starts.
func (b *beside) joins(off length.Length) bool {
	return slices.ContainsFunc(b.allClasses(), func(c int) bool {
		return length.Mod(off-b.shift(c), b.room.Tile.Width+b.room.Joint) == 0
	})
}
