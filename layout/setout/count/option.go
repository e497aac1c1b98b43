package count

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
)

// Option is one place of two facing edges of a free opening with what it gives at
// best.
type Option struct {
	Pair
	Merit merit.Merit
}

// Level are the places of the plumb edges of a free opening for a start, the best
// first, and Upright those of its level edges for a course line. They are worked
// out once.
func (p *Places) Level(i int, edge length.Length) []Option {
	return p.level(i, edge).inOrder(p.w.order)
}

// Upright are the places of the level edges of a free opening.
func (p *Places) Upright(i int, line length.Length) []Option {
	return p.upright(i, line).inOrder(p.w.order)
}

// bestLevel is what the best of the places along the wall gives, nil where there is none,
// and bestUpright the same of those up the wall.
func (p *Places) bestLevel(i int, edge length.Length) *merit.Merit {
	return p.level(i, edge).best(p.w.order)
}

func (p *Places) bestUpright(i int, line length.Length) *merit.Merit {
	return p.upright(i, line).best(p.w.order)
}

func (p *Places) level(i int, edge length.Length) *optionList {
	return p.options.of(optionKey{i, length.Mod(edge, p.w.room.Tile.Width+p.w.room.Joint), false}, func() *optionList {
		return p.optionsOf(p.LevelPairs(i, edge), p.openedLevel(i, edge))
	})
}

func (p *Places) upright(i int, line length.Length) *optionList {
	return p.options.of(optionKey{i, length.Mod(line, p.w.room.Tile.Height+p.w.room.Joint), true}, func() *optionList {
		return p.optionsOf(p.UprightPairs(i, line), p.openedUpright(i, line))
	})
}

// optionList is a list of options of which as much is worked out as is asked for: what the best of them gives, or
// all of them in order.
type optionList struct {
	opened  opened
	pairs   []Pair
	least   *merit.Merit // of the best, once it was asked for
	options []Option     // all of them, once they were
}

func (l *optionList) inOrder(by merit.Order) []Option {
	if l.options == nil {
		l.options = make([]Option, len(l.pairs))
		for k, at := range l.pairs {
			l.options[k] = Option{at, l.opened.given(at)}
		}
		Sort(by, l.options)
	}
	return l.options
}

// best looks at the places in the order of what their marks give, which the pieces beside them only make worse: no
// farther than to the first whose marks alone are no better than the best.
func (l *optionList) best(by merit.Order) *merit.Merit {
	if l.least != nil || len(l.pairs) == 0 {
		return l.least
	}
	type place struct {
		Pair
		marked
	}
	left := make([]place, len(l.pairs))
	for k, at := range l.pairs {
		left[k] = place{at, l.opened.marks(at)}
	}
	for len(left) > 0 {
		next := 0
		for i := range left {
			if left[i].better(left[next].marked) {
				next = i
			}
		}
		at := left[next]
		left = slices.Delete(left, next, next+1)
		if marks := (merit.Merit{Openings: at.off, Near: at.near}); l.least != nil && !by.Better(&marks, l.least) {
			break
		}
		if m := l.opened.given(at.Pair); l.least == nil || by.Better(&m, l.least) {
			l.least = &m
		}
	}
	return l.least
}

// optionKey is an opening with the phase of the tiles that its edges seek: tiles of every class of the
// bond stand alike one pitch further.
type optionKey struct {
	opening int
	at      length.Length
	upright bool
}

func (p *Places) optionsOf(pairs []Pair, o opened) *optionList {
	p.meter.add(2 * len(pairs))
	return &optionList{opened: o, pairs: pairs}
}

// Sort puts options in the order of merit; equal ones stay as they are.
func Sort(by merit.Order, options []Option) {
	if len(options) < 2 {
		return
	}
	at := make([]int, len(options)) // an option is large: only where it goes is sorted
	for i := range at {
		at[i] = i
	}
	slices.SortStableFunc(at, func(a, b int) int {
		order, _ := by.Compare(&options[a].Merit, &options[b].Merit)
		return order
	})
	for i, k := range at {
		for k < i { // it was moved to make place
			k = at[k]
		}
		options[i], options[k] = options[k], options[i]
	}
}
