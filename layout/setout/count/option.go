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
		return p.optionsOf(p.LevelPairs(i, edge), func(at Pair) merit.Merit { return p.level(i, edge, at) })
	})
}

// Upright are the places of the level edges of a free opening.
func (p *Places) Upright(i int, line length.Length) []Option {
	return p.remember(optionKey{i, line, true}, func() []Option {
		return p.optionsOf(p.UprightPairs(i, line), func(at Pair) merit.Merit { return p.upright(i, line, at) })
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
	slices.SortStableFunc(out, func(a, b Option) int {
		order, _ := p.w.order.Compare(&a.Merit, &b.Merit)
		return order
	})
	return out
}
