package remedy

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"coursewright/layout/length"
)

// move is what stands where somebody wished it, and could as well stand elsewhere: a band, a
// strip, a niche that is not built, a flush dish, a head. It is let go over a range, and then said
// to stand where that puts it.
type move struct {
	say   string // the change, with %s for what is told of its marks
	marks []mark
	also  []Use // what has to be let go for it
}

// mark is one measured place of a move.
type mark struct {
	typed    length.Length
	down, up length.Length              // how far it may be moved
	at       func(Solved) length.Length // where it stands
	told     func(by length.Length) string

	path, near string // the fields of the mark, and of the place that is wished
	middle     length.Length
	plain      bool   // the field holds a length, where it is measured
	along      string // the field of the range, where that is another
}

// moved works out a move: first with its marks free, then where that puts them.
func (a *asker) moved(ctx context.Context, t try) (try, Solved, bool, error) {
	var free Solved
	there := false
	for part := length.Length(1); part <= 4 && !there; part *= 2 { // refused where it would come in the way of something
		var err error
		if free, there, err = a.solve(ctx, t.move.loose(a, part)); err != nil {
			return t, free, false, err
		}
	}
	if !there || !a.helps(&free.Setout.Merit) {
		return t, free, false, nil
	}
	t.use = nil
	var said []string
	for _, m := range t.move.marks {
		if by := m.at(free) - m.at(a.now); by != 0 {
			t.use = append(t.use, Use{m.measured(), a.typed(m.typed + by)})
			said = append(said, m.told(by))
		}
	}
	if t.use == nil {
		return t, free, false, nil
	}
	t.use = append(t.use, t.move.also...)
	said = slices.Compact(said)
	and := " and "
	if strings.Contains(said[0], ",") {
		and = ", and "
	}
	t.text = fmt.Sprintf(t.move.say, strings.Join(said, and))
	s, there, err := a.solve(ctx, t.use)
	return t, s, there, err
}

// loose are the fields with every mark free over a part of its range.
func (m *move) loose(a *asker, part length.Length) (use []Use) {
	use = slices.Clone(m.also)
	for _, k := range m.marks {
		rangeAt := k.path
		if k.along != "" {
			rangeAt = k.along
		}
		if k.along != "" || !k.plain {
			use = append(use, Use{k.measured(), ""})
		}
		use = append(use, Use{rangeAt + ".from", a.typed(k.typed - k.down/part)}, Use{rangeAt + ".to", a.typed(k.typed + k.up/part)})
		if k.near != "" {
			use = append(use, Use{k.near, a.typed(k.middle)})
		}
	}
	return use
}

// measured is the field of the place itself.
func (m *mark) measured() string {
	if m.plain {
		return m.path
	}
	return m.path + ".at"
}

// read is what was typed of a place; false where it cannot be read.
func (a *asker) read(text string) (length.Length, bool) {
	l, err := length.ParsePrinted(text, a.now.Room.Units)
	return l, err == nil
}

// way says how far something is moved, by the words for down or left and for up or right.
func (a *asker) way(by length.Length, down, up string) string {
	if by < 0 {
		return a.about(-by) + " " + down
	}
	return a.about(by) + " " + up
}

// over says a height.
func (a *asker) over(y length.Length) string {
	switch {
	case y < 0:
		return a.about(-y) + " under the level line"
	case y == 0:
		return "on the level line"
	}
	return a.about(y) + " over the level line"
}

// about is a length as the cut schedule writes it.
func (a *asker) about(l length.Length) string { return l.Fine(a.now.Room.Units) }
