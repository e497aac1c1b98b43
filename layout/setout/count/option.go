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
	return p.remember(optionKey{i, edge, false}, func() []Option {
		return p.optionsOf(p.LevelPairs(i, edge), p.level(i, edge))
	})
}

// Upright are the places of the level edges of a free opening.
func (p *Places) Upright(i int, line length.Length) []Option {
	return p.remember(optionKey{i, line, true}, func() []Option {
		return p.optionsOf(p.UprightPairs(i, line), p.upright(i, line))
	})
}

// optionKey is an opening with the phase of the tiles that its edges seek.
type optionKey struct {
	opening int
	at      length.Length
	upright bool
}

// mostOptions bounds how many lists of options are kept.
const mostOptions = 4000

func (p *Places) remember(key optionKey, make func() []Option) []Option {
	out, there := p.options[key]
	if !there {
		if len(p.options) >= mostOptions {
			clear(p.options)
		}
		out = make()
		p.options[key] = out
	}
	return out
}

func (p *Places) optionsOf(pairs []Pair, of func(Pair) merit.Merit) []Option {
	out := make([]Option, len(pairs))
	for k, at := range pairs {
		out[k] = Option{at, of(at)}
	}
	p.meter.add(4 * len(pairs))
	Sort(p.w.order, out)
	return out
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
