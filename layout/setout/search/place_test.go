package search

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// placed draws a placer of a wall of a random room whose free marks can all be tried.
func placed(t *rapid.T) *placer {
	room := chance.House(t, 2)
	s := solverIn(&room)
	w := s.walls[rapid.IntRange(0, len(s.walls)-1).Draw(t, "wall")]
	starts, lines := w.Starts.Tried(), s.lines()
	p := s.placer(w, lines[rapid.IntRange(0, len(lines)-1).Draw(t, "line")], starts[rapid.IntRange(0, len(starts)-1).Draw(t, "start")], nil)
	all := 1
	for _, c := range p.choices { // so many at each that a few hundred ways are left
		for i := range c.axes {
			keep := len(c.axes[i].options)
			if all*keep > 300 {
				keep = 1
			}
			c.axes[i].options = c.axes[i].options[:keep]
			all *= keep
		}
	}
	return p
}

// ways calls each with every way to take one option of each axis.
func (c *choice) ways(each func(at []int)) {
	at := make([]int, len(c.axes))
	var pick func(i int)
	pick = func(i int) {
		if i == len(at) {
			each(slices.Clone(at))
			return
		}
		for at[i] = range c.axes[i].options {
			pick(i + 1)
		}
	}
	pick(0)
}

// ways calls each with every way to place every choice.
func (p *placer) ways(each func(at []*spot)) {
	at := make([]*spot, len(p.choices))
	var pick func(i int)
	pick = func(i int) {
		if i == len(at) {
			each(at)
			return
		}
		p.choices[i].ways(func(its []int) {
			at[i] = p.choices[i].at(its)
			pick(i + 1)
		})
	}
	pick(0)
}

// The best placing is that of all placings, by brute force, if any keeps openings apart.
func TestTheBestPlacingIsTheBestOfAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for range 10 {
			p := placed(t)
			var best *merit.Merit
			p.ways(func(at []*spot) {
				set := p.setting(at)
				if p.wall.Places.Overlap(set.Placed) {
					return
				}
				if m := p.wall.Count(set).Merit; best == nil || p.order.Better(&m, best) {
					best = &m
				}
			})
			got := p.best(nil, 1000)
			require.False(t, p.short, "all were looked at")
			if best == nil {
				return // all of them run into one another: it gives one that does
			}
			order, term := p.order.Compare(best, &got.Merit)
			require.Zero(t, order, "another placing differs in %s:\n%+v\n%+v", term, *best, got.Merit)
		}
	})
}

// What a placing promises and what it cannot beat once its ground is counted are no more
// than what it gives.
func TestAPlacingGivesNoLessThanItPromised(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for range 4 {
			p := placed(t)
			p.ways(func(at []*spot) {
				set := p.setting(at)
				if p.wall.Places.Overlap(set.Placed) {
					return
				}
				got, closely, promise := p.wall.Count(set).Merit, sum(at), merit.Merit{}
				for i, c := range p.choices {
					its := c.promise(at[i].at)
					promise = promise.Plus(&its)
				}
				for name, m := range map[string]merit.Merit{"promise": promise, "look": closely} {
					order, term := p.order.Compare(&got, &m)
					require.GreaterOrEqual(t, order, 0, "%s of %v claims more in %s", name, at, term)
				}
				order, _ := p.order.Compare(&closely, &promise)
				require.GreaterOrEqual(t, order, 0, "a closer look takes nothing back")
			})
		}
	})
}

// From the first placing every other one is reached, and none twice, each after what promises more.
func TestEveryPlacingIsReachedOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for range 20 {
			p := placed(t)
			all := map[string]bool{}
			p.ways(func(at []*spot) { all[p.named(at)] = true })
			p.first(tries)
			p.queue = queue[*placing]{before: p.before}
			p.push(make([]int, len(p.choices)))
			seen := map[string]bool{}
			var last *placing
			for !p.queue.empty() {
				if p.queue.first().depth == guessed {
					p.realize(p.queue.first())
					continue
				}
				first := p.queue.take()
				require.False(t, seen[p.named(first.spots)], "%v twice", first.at)
				require.False(t, last != nil && p.order.Better(&first.merit, &last.merit), "%v promises more than what came before", first.at)
				seen[p.named(first.spots)], last = true, first
				p.widen(first)
			}
			require.Equal(t, all, seen)
		}
	})
}

// named names the options that places take.
func (p *placer) named(at []*spot) string {
	var out []string
	for _, s := range at {
		out = append(out, fmt.Sprint(s.at))
	}
	return strings.Join(out, " ")
}

// The places of a choice come one after the other by what they cannot beat, each once.
func TestPlacesOfAChoiceComeInOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for range 10 {
			p := placed(t)
			p.first(tries)
			for _, c := range p.choices {
				var all []merit.Merit
				c.ways(func(at []int) { all = append(all, c.at(at).merit) })
				slices.SortStableFunc(all, func(a, b merit.Merit) int {
					order, _ := p.order.Compare(&a, &b)
					return order
				})
				seen := map[string]bool{}
				for k := range all {
					require.True(t, c.has(k+1))
					its := c.spot(k)
					order, term := p.order.Compare(&its.merit, &all[k])
					require.Zero(t, order, "place %d differs in %s", k, term)
					seen[fmt.Sprint(its.at)] = true
				}
				require.Len(t, seen, len(all))
				require.False(t, c.has(len(all)+1))
			}
		}
	})
}

// Along every axis options promise ever less, so that what is not in the queue yet promises
// no more than what is.
func TestOptionsOfAnAxisPromiseEverLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for range 20 {
			p := placed(t)
			for _, c := range p.choices {
				for _, a := range c.axes {
					require.NotEmpty(t, a.options)
					for k := 1; k < len(a.options); k++ {
						order, _ := p.order.Compare(&a.options[k-1].Merit, &a.options[k].Merit)
						require.LessOrEqual(t, order, 0)
					}
				}
			}
		}
	})
}

// A limit never hides what is as good or better, nor changes what is found.
func TestALimitHidesNothingThatIsAsGood(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for range 10 {
			p, q := placed(t), placed(t)
			free := p.place(p.wall, p.line, p.edge, nil, nil, tries)
			limit := q.place(q.wall, q.line, q.edge, nil, nil, tries).Merit
			got := p.place(p.wall, p.line, p.edge, &limit, nil, tries)
			order, _ := p.order.Until(&free.Merit, &limit, p.order.Shared())
			if p.wall.Places.Overlap(free.Placed) {
				continue // none is clear, and one is given all the same
			}
			if order > 0 { // what is found by then may be given, but is no better than it is
				if got != nil {
					order, _ = p.order.Compare(&got.Merit, &free.Merit)
					require.GreaterOrEqual(t, order, 0)
				}
				continue
			}
			require.NotNil(t, got)
			same, term := p.order.Compare(&got.Merit, &free.Merit)
			require.Zero(t, same, "differs in %s", term)
		}
	})
}

// Two niches that would both like the middle are placed side by side.
func TestNichesAreNotPlacedIntoOneAnother(t *testing.T) {
	s := solverOf("2000x1200 300x100+2 niche=500..1200,304,410,202 niche=500..1200,304,410,202")
	w := s.walls[0]
	for _, edge := range w.Starts.Tried()[:40] {
		got := s.place(w, 0, edge, nil, nil, tries)
		require.False(t, w.Places.Overlap(got.Placed), "%+v", got.Placed.Openings)
	}
}

// So many niches that they cannot all be tried together are placed one after the other.
func TestManyNichesArePlacedOneByOne(t *testing.T) {
	line := "4000x1200 300x100+2"
	for range 5 {
		line += " niche=100..3500,304,410,202"
	}
	s := solverOf(line)
	got := s.placer(s.walls[0], 0, 0, nil).oneByOne()
	require.False(t, s.walls[0].Places.Overlap(got.Placed), "%+v", got.Placed.Openings)
}

// A wall whose merit with that of the others cannot be as good as what is known is passed.
func TestWhatIsPassedByTheCutoff(t *testing.T) {
	o := merit.OrderFor(survey.Prefer{})
	slivers := func(n int) *merit.Merit { return &merit.Merit{Sight: merit.Sight{Slivers: n}} }
	c := &cutoff{rest: slivers(2), known: slivers(5)}
	require.False(t, c.passed(o, slivers(2)))
	require.False(t, c.passed(o, slivers(3)), "as good")
	require.True(t, c.passed(o, slivers(4)))
	require.False(t, (*cutoff)(nil).passed(o, slivers(100)), "nothing is known yet")
	late := &merit.Merit{Sight: merit.Sight{Slivers: 3}, Find: 9}
	require.False(t, c.passed(o, late), "terms that walls share do not pass a wall")
}

// Where free marks stay clear of all else each has its best place, and the first placing that is tried is the best.
func TestOpeningsThatStandClearAreBestEachByItself(t *testing.T) {
	s := solverOf("4000x2400 300x100+2 niche=900..1100,304,1000..1060,202 niche=2600..2800,204,1000..1040,304")
	for _, edge := range []length.Length{0, 37 * mm, 151 * mm, 290 * mm} {
		p := s.placer(s.walls[0], 20*mm, edge, nil)
		first := p.first(tries)
		got, own := p.best(nil, tries), p.wall.Count(p.setting(first)).Merit
		order, term := s.order.Until(&own, &got.Merit, s.order.Shared())
		require.Zero(t, order, "differ in %s", term)
	}
}
