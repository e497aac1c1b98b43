package search

import "coursewright/layout/setout/count"

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
