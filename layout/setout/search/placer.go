package search

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"
)

// tries bounds how many placings of the free marks are looked at for one start, and mostTries how many are as long as
// there is work.
const (
	tries     = 240
	mostTries = 20000
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

func (s *solver) placer(w *count.Wall, line, edge length.Length, cut *cutoff) *placer {
	p := &placer{solver: s, wall: w, line: line, edge: edge, cutoff: cut, mirrors: map[[ends]int]length.Length{}}
	p.addEnds()
	p.addOpenings()
	return p
}

// ends is how many axes the ends and the head take.
const ends = 3

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

// ground is what cannot be beaten with the ends and the head at some of their options: the worse of what they promise
// with the edges that stand, and of what stands in the rows that no free opening touches.
func (p *placer) ground(at []int, promise merit.Merit) merit.Merit {
	p.wall.Spend(18)
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
		p.wall.Spend(18)
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
