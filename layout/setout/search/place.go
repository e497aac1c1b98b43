package search

import (
	"container/heap"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"
)

// placing is one way to place every free mark of a wall. Its merit is exact once
// it was cut, before that what it cannot beat.
type placing struct {
	at      []int   // by choice, the place taken
	spots   []*spot // those places, once they are known
	merit   merit.Merit
	depth   depth
	counted *count.Counted

	asked, clear bool // whether its free openings stand clear was asked, and the answer
}

// depth is how closely a merit is known.
type depth uint8

const (
	guessed depth = iota // what its parts cannot beat
	edged                // with the edges where rows stand, or with the places of its choices known
	refined              // with those rows themselves
	based                // with the rows cut that no free opening touches
	exact
)

// placer places the free marks of a wall for one start on one line.
type placer struct {
	*solver
	wall       *count.Wall
	line, edge length.Length
	mirrors    map[[ends]int]length.Length
	cutoff     *cutoff
	choices    []*choice // the ends with the head, then the free openings
	queue      queue[*placing]
}

// place gives the wall's exact merit with the best placing; nil where none is
// better than limit in the terms before those that walls share, or equal. A nil
// limit stands for no limit. After so many tries it settles for the best so far.
func (s *solver) place(w *count.Wall, line, edge length.Length, limit *merit.Merit, cut *cutoff, tries int) *count.Counted {
	return s.placer(w, line, edge, cut).best(limit, tries)
}

func (s *solver) placer(w *count.Wall, line, edge length.Length, cut *cutoff) *placer {
	p := &placer{solver: s, wall: w, line: line, edge: edge, cutoff: cut, mirrors: map[[ends]int]length.Length{}}
	p.addEnds()
	p.addOpenings()
	return p
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
func (p *placer) best(limit *merit.Merit, tries int) *count.Counted {
	p.first(tries)
	p.queue = queue[*placing]{before: p.before}
	p.push(make([]int, len(p.choices)))
	return p.run(limit, tries)
}

func (p *placer) before(a, b *placing) bool {
	if order, _ := p.order.Compare(&a.merit, &b.merit); order != 0 {
		return order < 0
	}
	return slices.Compare(a.at, b.at) < 0
}

func (p *placer) run(limit *merit.Merit, tries int) *count.Counted {
	// A look costs one, a count two, and far more where it can only be better out of
	// sight or quicker to cut; of openings that stand clear a small part of that.
	left := 3 * clearForOne * tries
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
			left -= cost * tries / lateTries
		}
		if left >= 0 && first.depth == edged && !p.standsClear(first) {
			p.refine(first)
			continue
		}
		if left -= cost; left < 0 || found != nil && p.stopped() {
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
	case tries == 1: // a first look: what gives most is looked at again
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
	p.wall.Spend(4 + 2*len(at))
	m := *p.choices[0].least(at[0])
	for i := 1; i < len(at); i++ {
		m = m.Plus(p.choices[i].least(at[i]))
	}
	p.queue.add(&placing{at: at, merit: m})
}

// ends is how many axes the ends and the head take.
const ends = 3

// ground is what cannot be beaten with the ends and the head at some of their options: the worse of what they promise
// with the edges that stand, and of what stands in the rows that no free opening touches.
func (p *placer) ground(at []int, promise merit.Merit) merit.Merit {
	p.wall.Spend(3)
	placed := p.wall.Outer()
	for i, k := range at {
		p.choices[0].axes[i].put(&placed, p.choices[0].axes[i].options[k].Pair)
	}
	m := p.wall.Bounds.Beyond(count.Setting{Line: p.line, Edge: p.edge, Placed: placed})
	for i, right := range [...]bool{false, true} {
		m.Exposed += p.wall.Marks.ExposedAt(p.edge, p.choices[0].axes[i].options[at[i]].Low, right)
	}
	if p.order.Better(&m, &promise) {
		return promise
	}
	return m
}

// opened is what cannot be beaten with a free opening at some of its options: the worse of what they promise, and of what
// it makes of the tiles round it where it is sure to stand clear.
func (p *placer) opened(opening int, c *choice) func(at []int, promise merit.Merit) merit.Merit {
	return func(at []int, promise merit.Merit) merit.Merit {
		p.wall.Spend(3)
		level, upright := &c.axes[0].options[at[0]], &c.axes[1].options[at[1]]
		m, is := p.wall.Alone(opening, level.Pair, upright.Pair, p.line, p.edge)
		if !is {
			return promise
		}
		m.Openings, m.Near = promise.Openings, promise.Near
		if p.order.Better(&m, &promise) {
			return promise
		}
		return m
	}
}

// cutoff is what a wall's merit must not be worse than, together with what the
// other walls of the room cannot beat on the line.
type cutoff struct {
	rest, known *merit.Merit
	optional    bool // nothing need be found once the work is spent
}

// spares tells whether nothing need be found once the work is spent.
func (c *cutoff) spares() bool { return c != nil && c.optional }

// passed tells whether a wall's merit is worse than the cutoff.
func (c *cutoff) passed(o merit.Order, m *merit.Merit) bool {
	if c == nil {
		return false
	}
	sum := m.Plus(c.rest)
	order, _ := o.Until(&sum, c.known, o.Shared())
	return order > 0
}

func (p *placer) setting(at []*spot) count.Setting {
	placed := p.wall.Outer()
	placed.Openings = slices.Clone(placed.Openings)
	for i, c := range p.choices {
		for axis, k := range at[i].at {
			c.axes[axis].put(&placed, c.axes[axis].options[k].Pair)
		}
	}
	return count.Setting{Line: p.line, Edge: p.edge, Placed: placed}
}

func (p *placer) addEnds() {
	w := p.wall
	var axes []axis
	add := func(options []count.Option, put func(*survey.Placed, count.Pair)) {
		count.Sort(p.order, options)
		axes = append(axes, axis{options, put})
	}
	add(p.endOptions(false), func(to *survey.Placed, o count.Pair) {
		if !w.Found.Left.Meets {
			to.Left = o.Low
		}
	})
	add(p.endOptions(true), func(to *survey.Placed, o count.Pair) {
		if !w.Found.Right.Meets {
			to.Right = o.Low
		}
	})
	var heads []count.Option
	for _, y := range w.Places.Heads(p.line) {
		heads = append(heads, count.Option{Pair: count.Pair{Low: y}, Merit: w.Bounds.AtHead(y, p.line, p.edge)})
	}
	add(heads, func(to *survey.Placed, o count.Pair) {
		if !w.Found.Head.Meets {
			to.Head = o.Low
		}
	})
	marks, edges := w.Marks.Fixed(p.line, p.edge), w.Bounds.Standing(p.line, p.edge)
	p.choices = append(p.choices, &choice{fixed: edges.Plus(&marks), axes: axes, order: p.order, closer: p.ground, spent: p.stopped})
}

func (p *placer) endOptions(right bool) []count.Option {
	var out []count.Option
	for _, x := range p.wall.Places.Ends(p.edge, right) {
		out = append(out, count.Option{Pair: count.Pair{Low: x}, Merit: p.wall.Bounds.AtEnd(right, x, p.line, p.edge)})
	}
	return out
}

func (p *placer) addOpenings() {
	w := p.wall
	for _, i := range w.Free() {
		c := &choice{order: p.order, spent: p.stopped, axes: []axis{
			{w.Places.Level(i, p.edge), func(to *survey.Placed, o count.Pair) { to.Openings[i].Left, to.Openings[i].Right = o.Low, o.High }},
			{w.Places.Upright(i, p.line), func(to *survey.Placed, o count.Pair) { to.Openings[i].Bottom, to.Openings[i].Top = o.Low, o.High }}}}
		c.closer = p.opened(i, c)
		p.choices = append(p.choices, c)
	}
}

// oneByOne places the free openings one after the other, each clear of those
// before it where it can be: for walls with so many that they cannot all be tried
// together.
func (p *placer) oneByOne() *count.Counted {
	at := make([]*spot, len(p.choices))
	for i, c := range p.choices {
		at[i] = &spot{at: make([]int, len(c.axes))}
	}
	for i := 1; i < len(at); i++ {
		p.clear(at, i)
	}
	c := p.wall.Count(p.setting(at))
	return &c
}

// clear finds the first options of an opening with which it is
// clear of what stands and of the openings before it.
func (p *placer) clear(at []*spot, opening int) {
	set, c := p.setting(at), p.choices[opening]
	for k := opening; k < len(at)-1; k++ {
		set.Placed.Openings[p.wall.Free()[k]] = count.Away
	}
	along, up := c.axes[0], c.axes[1]
	for sum := 0; sum < len(along.options)+len(up.options); sum++ {
		for x := max(0, sum-len(up.options)+1); x <= min(sum, len(along.options)-1); x++ {
			along.put(&set.Placed, along.options[x].Pair)
			up.put(&set.Placed, up.options[sum-x].Pair)
			if !p.wall.Places.Overlap(set.Placed) {
				at[opening] = &spot{at: []int{x, sum - x}}
				return
			}
		}
	}
}
