package search

import (
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"
)

// together settles which of the equal starts of each wall go best together.
func (s *solver) together(hunts []*hunt) ([]count.Counted, merit.Merit) {
	return row{s.room, s.order, hunts, wallsOf(hunts)}.best()
}

// row is the walls of a room one beside the other, with the starts to choose from.
type row struct {
	room  *survey.Room
	order merit.Order
	hunts []*hunt
	walls []parts
}

// parts are the hunts for one wall: one, or those for what strips part it into.
type parts struct{ first, last int }

func wallsOf(hunts []*hunt) (out []parts) {
	for i, h := range hunts {
		if n := len(out) - 1; n >= 0 && h.wall.Found.Left.Goes != survey.Nowhere {
			out[n].last = i
		} else {
			out = append(out, parts{i, i})
		}
	}
	return out
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

// close adds how far the two ends of parted walls are from alike, and what the last wall and
// the first share: they face each other, or the room is closed and they meet. (A part has one
// start, so the way to it is the only one.)
func (r row) close(first int, last *chain) chain {
	whole := *last
	n := len(r.hunts) - 1
	cuts := func(i int) *count.Counted { return &r.hunts[i].ties[last.at(n-i)] }
	var m merit.Merit
	for _, w := range r.walls {
		if left, right := r.hunts[w.first].wall.Found.Left, r.hunts[w.last].wall.Found.Right; w.first < w.last && left.Like(right) {
			m.Mirror += count.Differ(r.room, cuts(w.first).LeftCuts, cuts(w.last).RightCuts)
		}
	}
	if len(r.walls) == 3 {
		if a, b := r.walls[0].last, r.walls[2].first; r.hunts[a].wall.Found.Right.Meets && r.hunts[b].wall.Found.Left.Meets {
			m.Facing = count.Differ(r.room, cuts(a).RightCuts, cuts(b).LeftCuts)
		}
	}
	if m.Mirror+m.Facing > 0 {
		whole.merit = whole.merit.Plus(&m)
	}
	if end, begin := r.hunts[n].wall.Found.Right, r.hunts[0].wall.Found.Left; n > 1 && end.Meets && end.Beyond == 0 && begin.Meets && begin.Beyond == n {
		shared := r.corner(n, last.pick, 0, first)
		whole.merit = whole.merit.Plus(&shared)
	}
	return whole
}

// at is the choice so many walls before.
func (c *chain) at(before int) int {
	for range before {
		c = c.before
	}
	return c.pick
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
	if r.room.Bond.Num != 0 && !r.room.Bond.Plumb && !wa.Found.Single && !wb.Found.Single {
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
