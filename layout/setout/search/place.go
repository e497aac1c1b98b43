package search

import (
	"container/heap"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"
)

// axis is one mark, or two facing ones, that may stand in several places: what
// each gives at best, the best first.
type axis struct {
	options []count.Option
	put     func(*survey.Placed, count.Pair)
}

// placing is one way to place every free mark of a wall. Its merit is exact once
// it was cut, before that what it cannot beat.
type placing struct {
	at      []int // by axis, the option taken
	merit   merit.Merit
	depth   depth
	counted *count.Counted

	asked, clear bool // whether its free openings stand clear was asked, and the answer
}

// depth is how closely a merit is known.
type depth uint8

const (
	guessed depth = iota // what its parts cannot beat
	edged                // with the edges where rows stand
	refined              // with those rows themselves
	based                // with the rows cut that no free opening touches
	exact
)

// placer places the free marks of a wall for one start on one line.
type placer struct {
	*solver
	wall       *count.Wall
	line, edge length.Length
	guess      merit.Merit               // what is sure of the edges that stand and of measured marks
	beyond     map[[ends]int]merit.Merit // by the places of the ends and the head
	mirrors    map[[ends]int]length.Length
	cutoff     *cutoff
	axes       []axis
	from, to   int // the axes whose options are tried
	queue      queue[*placing]
}

// place gives the wall's exact merit with the best placing; nil where none is
// better than limit in the terms before those that walls share, or equal. A nil
// limit stands for no limit. After so many tries it settles for the best so far.
//
// Where every free opening stays clear of all else, what it gives does not depend
// on the ends, the head and the other openings: then each is placed by itself.
func (s *solver) place(w *count.Wall, line, edge length.Length, limit *merit.Merit, cut *cutoff, tries int) *count.Counted {
	p := s.placer(w, line, edge, cut)
	at := make([]int, len(p.axes))
	if !w.Places.Apart() || p.worse(at, limit) {
		got, _ := p.best(at, 0, len(at), limit, tries)
		return got
	}
	var got *count.Counted
	for from, to := 0, ends; from < len(at); from, to = to, to+2 {
		var best []int
		if got, best = p.best(at, from, to, nil, tries); best == nil {
			return got
		}
		at = best
	}
	return got
}

func (s *solver) placer(w *count.Wall, line, edge length.Length, cut *cutoff) *placer {
	p := &placer{solver: s, wall: w, line: line, edge: edge, cutoff: cut, beyond: map[[ends]int]merit.Merit{}, mirrors: map[[ends]int]length.Length{}}
	fixed := w.Marks.Fixed(line, edge)
	edges := w.Bounds.Standing(line, edge)
	p.guess = edges.Plus(&fixed)
	p.addEnds()
	p.addOpenings()
	return p
}

// base is what a start on a line cannot beat wherever the free marks go: the best
// that the places of the ends and the head allow in the rows that no free opening
// touches.
func (s *solver) base(w *count.Wall, line, edge length.Length) merit.Merit {
	p := s.placer(w, line, edge, nil)
	at := make([]int, len(p.axes))
	best := p.sum(at)
	for at[0] = range p.axes[0].options {
		for at[1] = range p.axes[1].options {
			for at[2] = range p.axes[2].options {
				if m := p.sum(at); p.order.Better(&m, &best) {
					best = m
				}
			}
		}
	}
	return best
}

// worse tells whether a placing cannot be as good as limit.
func (p *placer) worse(at []int, limit *merit.Merit) bool {
	if limit == nil {
		return false
	}
	m := p.sum(at)
	order, _ := p.order.Until(&m, limit, p.order.Shared())
	return order > 0
}

// best tries the options of the axes from one to another, the others as they are
// at, and gives the best with where it is.
func (p *placer) best(at []int, from, to int, limit *merit.Merit, tries int) (*count.Counted, []int) {
	p.from, p.to = from, to
	p.queue = queue[*placing]{before: p.before}
	p.push(at)
	return p.run(limit, tries)
}

func (p *placer) before(a, b *placing) bool {
	if order, _ := p.order.Compare(&a.merit, &b.merit); order != 0 {
		return order < 0
	}
	return slices.Compare(a.at, b.at) < 0
}

func (p *placer) run(limit *merit.Merit, tries int) (*count.Counted, []int) {
	// A look costs one, a count two, and far more where it can only be better out of
	// sight or quicker to cut; of openings that stand clear a small part of that.
	left := 3 * clearForOne * tries
	var found *placing
	settled := func() (*count.Counted, []int) {
		if found == nil {
			return nil, nil
		}
		return found.counted, found.at
	}
	for !p.queue.empty() {
		first := p.queue.first()
		if limit != nil {
			if order, _ := p.order.Until(&first.merit, limit, p.order.Shared()); order > 0 {
				return settled()
			}
		}
		if first.depth == exact {
			return first.counted, first.at
		}
		if p.cutoff.passed(p.order, &first.merit) || found == nil && p.cutoff.spares() && p.stopped() {
			return nil, nil
		}
		cost := clearForOne
		if p.standsClear(first) {
			cost = 1
		}
		if left -= cost; found != nil && p.late(first, found) {
			left -= cost * tries / lateTries
		}
		if left >= 0 && first.depth == guessed && !p.standsClear(first) {
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
	if found == nil {
		return p.oneByOne(), nil
	}
	if tries == 1 { // a first look: what gives most is looked at again
		return found.counted, found.at
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
func (p *placer) nudge(found *placing) (*count.Counted, []int) {
	tries := 0
	for i := p.from; i < p.to; i++ {
		for k := range p.axes[i].options {
			at := slices.Clone(found.at)
			at[i] = k
			set := p.setting(at)
			if m := p.sum(at); k == found.at[i] || !p.order.Better(&m, &found.merit) || p.wall.Places.Overlap(set.Placed) {
				continue
			}
			if tries++; tries > mostNudges || p.stopped() {
				return found.counted, found.at
			}
			if c := p.wall.Count(set); p.order.Better(&c.Merit, &found.merit) {
				found = &placing{at: at, merit: c.Merit, depth: exact, counted: &c}
			}
		}
	}
	return found.counted, found.at
}

// mostNudges bounds how many places are tried one mark at a time.
const mostNudges = 160

// refine adds the placings that differ from the first by one option, and looks at
// it with the rows that no free opening touches. No placing that is not in the queue
// yet promises more than one that is: along an axis they promise ever less.
func (p *placer) refine(first *placing) {
	p.widen(first.at)
	m := p.sum(first.at)
	if set := p.setting(first.at); p.wall.Places.ClearOfEnds(set.Placed) {
		m.Mirror = max(m.Mirror, p.mirror(first.at))
	}
	if p.order.Better(&first.merit, &m) {
		first.merit = m
	}
	first.depth = refined
	heap.Fix(&p.queue, slices.Index(p.queue.items, first))
}

// closer counts the first placing, and adds those that differ from it by one option
// where a look did not.
func (p *placer) closer(first *placing) bool {
	p.queue.take()
	if first.depth == guessed {
		p.widen(first.at)
	}
	set := p.setting(first.at)
	if p.wall.Places.Overlap(set.Placed) {
		return false
	}
	c := p.wall.Count(set)
	first.counted, first.merit, first.depth = &c, c.Merit, exact
	p.queue.add(first)
	return true
}

// standsClear tells whether every free opening of a placing stands clear of all else,
// so that little needs to be cut to count it.
func (p *placer) standsClear(a *placing) bool {
	if !a.asked {
		a.asked, a.clear = true, p.wall.Places.Clear(p.setting(a.at).Placed)
	}
	return a.clear
}

// mirror is how far the ends are from alike with the ends and the head of a placing,
// where no free opening comes near them.
func (p *placer) mirror(at []int) length.Length {
	key := [ends]int{at[0], at[1], at[2]}
	m, there := p.mirrors[key]
	if !there {
		m = p.wall.Bounds.Mirror(p.setting(at))
		p.mirrors[key] = m
	}
	return m
}

// widen adds the placings that differ from at by the next option of one axis: each
// is reached once, from the one whose last axis that is not at its first option
// comes no later.
func (p *placer) widen(at []int) {
	last := p.from
	for i := p.from; i < p.to; i++ {
		if at[i] > 0 {
			last = i
		}
	}
	for i := last; i < p.to; i++ {
		if at[i]+1 < len(p.axes[i].options) {
			next := slices.Clone(at)
			next[i]++
			p.push(next)
		}
	}
}

func (p *placer) push(at []int) {
	p.wall.Spend(len(at))
	p.queue.add(&placing{at: at, merit: p.promise(at)})
}

// promise is what a placing cannot beat, from what is sure of each mark alone.
func (p *placer) promise(at []int) merit.Merit {
	m := p.guess
	for i, k := range at {
		m = m.Plus(&p.axes[i].options[k].Merit)
	}
	return m
}

// sum is what a placing cannot beat: the worse of what it promises and of what
// stands, with its ends and head, in the rows that no free opening touches.
func (p *placer) sum(at []int) merit.Merit {
	m := p.ground([3]int{at[0], at[1], at[2]})
	for i := ends; i < len(at); i++ {
		m = m.Plus(&p.axes[i].options[at[i]].Merit)
	}
	if promise := p.promise(at); p.order.Better(&m, &promise) {
		return promise
	}
	return m
}

// ends is how many axes the ends and the head take; those of the openings follow.
const ends = 3

// ground is what stands in the rows that no free opening touches.
func (p *placer) ground(at [ends]int) merit.Merit {
	if m, there := p.beyond[at]; there {
		return m
	}
	all := make([]int, len(p.axes))
	copy(all, at[:])
	m := p.wall.Bounds.Beyond(p.setting(all))
	for i, right := range [...]bool{false, true} {
		m.Exposed += p.wall.Marks.ExposedAt(p.edge, p.axes[i].options[at[i]].Low, right)
	}
	p.beyond[at] = m
	return m
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

func (p *placer) setting(at []int) count.Setting {
	placed := p.wall.Outer()
	placed.Openings = slices.Clone(placed.Openings)
	for i, k := range at {
		p.axes[i].put(&placed, p.axes[i].options[k].Pair)
	}
	return count.Setting{Line: p.line, Edge: p.edge, Placed: placed}
}

// add adds an axis with its options, the best first.
func (p *placer) add(options []count.Option, put func(*survey.Placed, count.Pair)) {
	count.Sort(p.order, options)
	p.axes = append(p.axes, axis{options, put})
}

func (p *placer) addEnds() {
	w := p.wall
	p.add(p.endOptions(false), func(to *survey.Placed, o count.Pair) {
		if !w.Found.Left.Meets {
			to.Left = o.Low
		}
	})
	p.add(p.endOptions(true), func(to *survey.Placed, o count.Pair) {
		if !w.Found.Right.Meets {
			to.Right = o.Low
		}
	})
	var heads []count.Option
	for _, y := range w.Places.Heads(p.line) {
		heads = append(heads, count.Option{Pair: count.Pair{Low: y}, Merit: w.Bounds.AtHead(y, p.line, p.edge)})
	}
	p.add(heads, func(to *survey.Placed, o count.Pair) {
		if !w.Found.Head.Meets {
			to.Head = o.Low
		}
	})
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
		p.axes = append(p.axes,
			axis{w.Places.Level(i, p.edge), func(to *survey.Placed, o count.Pair) { to.Openings[i].Left, to.Openings[i].Right = o.Low, o.High }},
			axis{w.Places.Upright(i, p.line), func(to *survey.Placed, o count.Pair) { to.Openings[i].Bottom, to.Openings[i].Top = o.Low, o.High }})
	}
}

// oneByOne places the free openings one after the other, each clear of those
// before it where it can be: for walls with so many that they cannot all be tried
// together.
func (p *placer) oneByOne() *count.Counted {
	at := make([]int, len(p.axes))
	first := len(p.axes) - 2*len(p.wall.Free())
	for i := first; i < len(at); i += 2 {
		p.clear(at, first, i)
	}
	c := p.wall.Count(p.setting(at))
	return &c
}

// clear finds the first options of the axes i and i+1 with which their opening is
// clear of what stands and of the openings before it.
func (p *placer) clear(at []int, first, i int) {
	set := p.setting(at)
	for k := i + 2; k < len(at); k += 2 {
		set.Placed.Openings[p.wall.Free()[(k-first)/2]] = count.Away
	}
	for sum := 0; sum < len(p.axes[i].options)+len(p.axes[i+1].options); sum++ {
		for x := max(0, sum-len(p.axes[i+1].options)+1); x <= min(sum, len(p.axes[i].options)-1); x++ {
			p.axes[i].put(&set.Placed, p.axes[i].options[x].Pair)
			p.axes[i+1].put(&set.Placed, p.axes[i+1].options[sum-x].Pair)
			if !p.wall.Places.Overlap(set.Placed) {
				at[i], at[i+1] = x, sum-x
				return
			}
		}
	}
}
