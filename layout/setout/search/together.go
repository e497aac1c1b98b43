package search

import (
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"
)

// together settles which of the equal starts of each wall go best together.
func (s *solver) together(hunts []*hunt) ([]count.Counted, merit.Merit) {
	return row{s.room, s.order, hunts}.best()
}

// row is the walls of a room one beside the other, with the starts to choose from.
type row struct {
	room  *survey.Room
	order merit.Order
	hunts []*hunt
}

// best weighs the corners between neighbours, facing walls, and what each start gives
// alone. Walls are taken in a row; for each choice on the first, the best way to each
// choice on the next is kept, so every combination is weighed.
func (r row) best() ([]count.Counted, merit.Merit) {
	hunts := r.hunts
	var best *chain
	for i := range hunts[0].ties {
		ways := []*chain{{pick: i, merit: hunts[0].ties[i].Merit}}
		for n := 1; n < len(hunts); n++ {
			ways = r.extend(n, ways)
		}
		for _, way := range ways {
			whole := r.close(i, way)
			whole.merit.Part = false
			if best == nil || r.order.Better(&whole.merit, &best.merit) {
				best = &whole
			}
		}
	}
	out := make([]count.Counted, len(hunts))
	for c, n := best, len(hunts)-1; n >= 0; c, n = c.before, n-1 {
		out[n] = hunts[n].ties[c.pick]
	}
	return out, best.merit
}

// chain is a choice on a wall and on all before it.
type chain struct {
	pick   int
	merit  merit.Merit
	before *chain
}

// extend finds the best way to every choice on wall n.
func (r row) extend(n int, ways []*chain) []*chain {
	out := make([]*chain, len(r.hunts[n].ties))
	for k := range r.hunts[n].ties {
		c := &r.hunts[n].ties[k]
		for _, way := range ways {
			m := way.merit.Plus(&c.Merit)
			shared := r.corner(n-1, way.pick, n, k)
			m = m.Plus(&shared)
			if out[k] == nil || r.order.Better(&m, &out[k].merit) {
				out[k] = &chain{pick: k, merit: m, before: way}
			}
		}
	}
	return out
}

// close adds what the last wall and the first share: they face each other, or the
// room is closed and they meet.
func (r row) close(first int, last *chain) chain {
	whole := *last
	n := len(r.hunts) - 1
	if n == 2 && r.hunts[0].wall.Found.Right.Meets && r.hunts[2].wall.Found.Left.Meets {
		var m merit.Merit
		m.Facing = count.Differ(r.room, r.hunts[0].ties[first].RightCuts, r.hunts[2].ties[last.pick].LeftCuts)
		whole.merit = whole.merit.Plus(&m)
	}
	if end, begin := r.hunts[n].wall.Found.Right, r.hunts[0].wall.Found.Left; n > 1 && end.Meets && end.Beyond == 0 && begin.Meets && begin.Beyond == n {
		shared := r.corner(n, last.pick, 0, first)
		whole.merit = whole.merit.Plus(&shared)
	}
	return whole
}

// corner is what two neighbouring walls give at the corner between them.
func (r row) corner(a, i, b, k int) (m merit.Merit) {
	wa, wb := r.hunts[a].wall, r.hunts[b].wall
	if !wa.Found.Right.Meets || !wb.Found.Left.Meets {
		return m
	}
	if r.hunts[a].ties[i].SmallRight && r.hunts[b].ties[k].SmallLeft {
		m.Corners++
	}
	if r.room.Bond.Num != 0 && !r.room.Bond.Plumb {
		_, right := wa.Widths(&r.hunts[a].ties[i])
		left, _ := wb.Widths(&r.hunts[b].ties[k])
		m.Alike = alike(right, left, r.room.Tile.Width+r.room.Joint)
	}
	return m
}

// alike counts the courses whose two widths at a corner are both under or both
// over half a pitch: there the bond does not seem to run on.
func alike(a, b map[int]length.Length, pitch length.Length) int {
	n := 0
	for course, x := range a {
		if y, there := b[course]; there && (2*x < pitch && 2*y < pitch || 2*x > pitch && 2*y > pitch) {
			n++
		}
	}
	return n
}
