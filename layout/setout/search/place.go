package search

import (
	"container/heap"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
)

// place gives the wall's exact merit with the best placing; nil where none is
// better than limit in the terms before those that walls share, or equal. A nil
// limit stands for no limit. After so many tries it settles for the best so far.
func (s *solver) place(w *count.Wall, line, edge length.Length, limit *merit.Merit, cut *cutoff, tries int) *count.Counted {
	return s.placer(w, line, edge, cut).best(limit, tries)
}

// first are the places of all choices that promise most, where so many placings are to be tried.
func (p *placer) first(tries int) []*spot {
	out := make([]*spot, len(p.choices))
	for i, c := range p.choices {
		c.begin(10 * tries)
		if i > 0 { // a look at an opening takes little
			c.looks *= clearForOne
		}
		out[i] = c.spot(0)
	}
	return out
}

// sum is what several places cannot beat together.
func sum(spots []*spot) merit.Merit {
	m := spots[0].merit
	for _, s := range spots[1:] {
		m = m.Plus(&s.merit)
	}
	return m
}

// best gives the best placing.
func (p *placer) best(limit *merit.Merit, most int) *count.Counted {
	p.first(most)
	p.queue = queue[*placing]{before: p.before}
	p.push(make([]int, len(p.choices)))
	return p.run(limit, most)
}

func (p *placer) before(a, b *placing) bool {
	if order, _ := p.order.Compare(&a.merit, &b.merit); order != 0 {
		return order < 0
	}
	return slices.Compare(a.at, b.at) < 0
}

func (p *placer) run(limit *merit.Merit, most int) *count.Counted {
	// A look costs one, a count two, and far more where it can only be better out of
	// sight or quicker to cut; of openings that stand clear a small part of that.
	left := 3 * clearForOne * most
	enough := left - 3*clearForOne*min(most, tries) // once the work is spent
	var found *placing
	for !p.queue.empty() {
		first := p.queue.first()
		if limit != nil {
			if order, _ := p.order.Until(&first.merit, limit, p.order.Shared()); order > 0 {
				if found == nil {
					return nil
				}
				return found.counted
			}
		}
		if first.depth == exact {
			return first.counted
		}
		if p.cutoff.passed(p.order, &first.merit) || found == nil && p.cutoff.spares() && p.stopped() {
			return nil
		}
		if first.depth == guessed {
			p.realize(first)
			continue
		}
		cost := clearForOne
		if p.standsClear(first) {
			cost = 1
		}
		if left -= cost; found != nil && p.late(first, found) {
			left -= cost * min(most, tries) / lateTries
		}
		if left >= 0 && first.depth == edged && !p.standsClear(first) {
			p.refine(first)
			continue
		}
		if left -= cost; left < 0 || (found != nil || left < enough) && p.stopped() {
			p.short = true
			break
		}
		if p.closer(first) && (found == nil || p.order.Better(&first.merit, &found.merit)) {
			found = first
		}
	}
	switch {
	case found == nil:
		return p.oneByOne()
	case most == 1: // a first look: what gives most is looked at again
		return found.counted
	}
	return p.nudge(found)
}

// clearForOne is how many placings with openings that stand clear are counted for one
// of the others, which has to be cut.
const clearForOne = 8

// lateTries is how many of the placings that are tried may be such as can only be
// better out of sight or quicker to cut than the best found.
const lateTries = 48

// late tells whether a placing can beat the best found in nothing that comes before
// the terms out of sight.
func (p *placer) late(next, found *placing) bool {
	order, _ := p.order.Until(&next.merit, &found.merit, merit.HiddenBare)
	return order >= 0
}

// nudge moves one mark at a time from a placing, as long as that is better: for
// walls with so many places that they cannot all be tried.
func (p *placer) nudge(found *placing) *count.Counted {
	counted, spots, tries := found.counted, found.spots, 0
	for i, c := range p.choices {
		for axis := range c.axes {
			for k := range c.axes[axis].options {
				at := slices.Clone(spots[i].at)
				if at[axis] == k {
					continue
				}
				at[axis] = k
				next := slices.Clone(spots)
				next[i] = c.at(at)
				set := p.setting(next)
				if m := sum(next); !p.order.Better(&m, &counted.Merit) || p.wall.Places.Overlap(set.Placed) {
					continue
				}
				if tries++; tries > mostNudges || p.stopped() {
					return counted
				}
				if got := p.wall.Count(set); p.order.Better(&got.Merit, &counted.Merit) {
					counted, spots = &got, next
				}
			}
		}
	}
	return counted
}

// mostNudges bounds how many places are tried one mark at a time.
const mostNudges = 160

// realize finds the places that the first placing takes of its choices.
func (p *placer) realize(first *placing) {
	first.spots = make([]*spot, len(first.at))
	for i, k := range first.at {
		first.spots[i] = p.choices[i].spot(k)
	}
	first.depth, first.merit = edged, sum(first.spots)
	p.queue.settle()
}

// refine adds the placings that differ from the first by the next place of one choice, and looks at
// how far its ends are from alike. No placing that is not in the queue
// yet promises more than one that is: the places of a choice promise ever less.
func (p *placer) refine(first *placing) {
	p.widen(first)
	if set := p.setting(first.spots); p.wall.Places.ClearOfEnds(set.Placed) {
		first.merit.Mirror = max(first.merit.Mirror, p.mirror(first.spots))
	}
	first.depth = refined
	heap.Fix(&p.queue, slices.Index(p.queue.items, first))
}

// closer counts the first placing, and adds those that differ from it by one place
// where a look did not.
func (p *placer) closer(first *placing) bool {
	p.queue.take()
	if first.depth == edged {
		p.widen(first)
	}
	set := p.setting(first.spots)
	if p.wall.Places.Overlap(set.Placed) {
		return false
	}
	p.wall.Spend(38)
	c := p.wall.Count(set)
	first.counted, first.merit, first.depth = &c, c.Merit, exact
	first.merit.Part = false // how alike rim and head are is judged here, though they are a wall's alone
	p.queue.add(first)
	return true
}

// standsClear tells whether every free opening of a placing stands clear of all else,
// so that little needs to be cut to count it.
func (p *placer) standsClear(a *placing) bool {
	if !a.asked {
		a.asked, a.clear = true, p.wall.Places.Clear(p.setting(a.spots).Placed)
	}
	return a.clear
}

// mirror is how far the ends are from alike with the ends and the head of a placing,
// where no free opening comes near them.
func (p *placer) mirror(at []*spot) length.Length {
	key := [ends]int(at[0].at)
	m, there := p.mirrors[key]
	if !there {
		m = p.wall.Bounds.Mirror(p.setting(at))
		p.mirrors[key] = m
	}
	return m
}

// widen adds the placings that differ from one by the next place of one choice.
func (p *placer) widen(a *placing) {
	widened(a.at, func(i, n int) bool { return p.choices[i].has(n + 1) }, p.push)
}

// push adds a placing with what its places cannot beat, as far as they are known.
func (p *placer) push(at []int) {
	p.wall.Spend(14)
	m := *p.choices[0].least(at[0])
	for i := 1; i < len(at); i++ {
		m = m.Plus(p.choices[i].least(at[i]))
	}
	p.queue.add(&placing{at: at, merit: m})
}
