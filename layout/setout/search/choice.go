package search

import (
	"container/heap"
	"slices"

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

// choice is what of a wall is placed together, the ends with the head or one opening: its places one after the other, in
// the order of what they cannot beat. Each is looked at closely before the next is known, no more of them than are
// asked for; after so many looks, or when it is time to settle, they come as they promise.
type choice struct {
	fixed  merit.Merit // what is sure of it at each of its places
	axes   []axis
	order  merit.Order
	closer func(at []int, promise merit.Merit) merit.Merit // what a place cannot beat that promises so much
	looks  int                                             // that are left
	spent  func() bool                                     // whether it is time to settle
	spots  []*spot                                         // the best first
	queue  queue[*spot]
}

// spot is one place of a choice: of each of its axes the option taken.
type spot struct {
	at     []int
	merit  merit.Merit // what it cannot beat
	closer bool        // it was looked at closely
}

func (c *choice) begin(looks int) {
	c.looks = looks
	c.queue.before = func(a, b *spot) bool {
		if order, _ := c.order.Compare(&a.merit, &b.merit); order != 0 {
			return order < 0
		}
		return slices.Compare(a.at, b.at) < 0
	}
	c.push(make([]int, len(c.axes)))
}

func (c *choice) push(at []int) { c.queue.add(&spot{at: at, merit: c.promise(at)}) }

// promise is what a place cannot beat, from what is sure of each mark alone.
func (c *choice) promise(at []int) merit.Merit {
	m := c.fixed
	for i, k := range at {
		m = m.Plus(&c.axes[i].options[k].Merit)
	}
	return m
}

// at is any place of a choice, looked at closely.
func (c *choice) at(at []int) *spot {
	return &spot{at: at, merit: c.closer(at, c.promise(at)), closer: true}
}

// has tells whether there are so many places.
func (c *choice) has(n int) bool { return n <= len(c.spots) || !c.queue.empty() }

// known tells whether the place k in the order is.
func (c *choice) known(k int) bool { return k < len(c.spots) }

// least is what the place k cannot beat, as far as it is known which it is.
func (c *choice) least(k int) *merit.Merit {
	if c.known(k) {
		return &c.spots[k].merit
	}
	return &c.queue.first().merit
}

// spot is the place k in the order. No place that is not in the queue yet promises more than one that is: along an axis
// they promise ever less.
func (c *choice) spot(k int) *spot {
	for !c.known(k) {
		first := c.queue.first()
		if first.closer {
			c.spots = append(c.spots, c.queue.take())
			continue
		}
		widened(first.at, func(i, n int) bool { return n < len(c.axes[i].options) }, c.push)
		if first.closer = true; c.looks <= 0 || c.spent() {
			continue
		}
		c.looks--
		first.merit = c.closer(first.at, first.merit)
		heap.Fix(&c.queue, slices.Index(c.queue.items, first))
	}
	return c.spots[k]
}

// widened hands over what differs from at by the next of one of its entries, where there is such: each is reached
// once, from the one whose last entry that is not the first comes no later.
func widened(at []int, has func(i, n int) bool, each func([]int)) {
	last := 0
	for i := range at {
		if at[i] > 0 {
			last = i
		}
	}
	for i := last; i < len(at); i++ {
		if has(i, at[i]+1) {
			next := slices.Clone(at)
			next[i]++
			each(next)
		}
	}
}

// leave leaves an axis one option alone, where it has that.
func (c *choice) leave(axis int, at count.Pair) {
	options := c.axes[axis].options
	if k := slices.IndexFunc(options, func(o count.Option) bool { return o.Pair == at }); k >= 0 {
		c.axes[axis].options = options[k : k+1]
	}
}
