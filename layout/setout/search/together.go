package search

import (
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
)

// together settles which of the equal starts of each wall go best together: by
// the corners between neighbours, by facing walls, and by what each gives alone.
// Walls are taken in a row; for each choice on the first, the best way to each
// choice on the next is kept, so every combination is weighed.
func (s *solver) together(hunts []*hunt) ([]count.Counted, merit.Merit) {
	var best *chain
	for i := range hunts[0].ties {
		ways := []*chain{{pick: i, merit: hunts[0].ties[i].Merit}}
		for n := 1; n < len(hunts); n++ {
			ways = s.extend(hunts, n, ways)
		}
		for _, way := range ways {
			whole := s.close(hunts, i, way)
			whole.merit.Part = false
			if best == nil || s.order.Better(&whole.merit, &best.merit) {
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
func (s *solver) extend(hunts []*hunt, n int, ways []*chain) []*chain {
	out := make([]*chain, len(hunts[n].ties))
	for k := range hunts[n].ties {
		c := &hunts[n].ties[k]
		for _, way := range ways {
			m := way.merit.Plus(&c.Merit)
			shared := s.corner(hunts, n-1, way.pick, n, k)
			m = m.Plus(&shared)
			if out[k] == nil || s.order.Better(&m, &out[k].merit) {
				out[k] = &chain{pick: k, merit: m, before: way}
			}
		}
	}
	return out
}

// close adds what the last wall and the first share: they face each other, or the
// room is closed and they meet.
func (s *solver) close(hunts []*hunt, first int, last *chain) chain {
	whole := *last
	n := len(hunts) - 1
	if n == 2 && hunts[0].wall.Found.Right.Meets && hunts[2].wall.Found.Left.Meets {
		var m merit.Merit
		m.Facing = count.Differ(s.room, hunts[0].ties[first].RightCuts, hunts[2].ties[last.pick].LeftCuts)
		whole.merit = whole.merit.Plus(&m)
	}
	if r, l := hunts[n].wall.Found.Right, hunts[0].wall.Found.Left; n > 1 && r.Meets && r.Beyond == 0 && l.Meets && l.Beyond == n {
		shared := s.corner(hunts, n, last.pick, 0, first)
		whole.merit = whole.merit.Plus(&shared)
	}
	return whole
}

// corner is what two neighbouring walls give at the corner between them.
func (s *solver) corner(hunts []*hunt, a, i, b, k int) (m merit.Merit) {
	wa, wb := hunts[a].wall, hunts[b].wall
	if !wa.Found.Right.Meets || !wb.Found.Left.Meets {
		return m
	}
	if hunts[a].ties[i].SmallRight && hunts[b].ties[k].SmallLeft {
		m.Corners++
	}
	if s.room.Bond.Num != 0 && !s.room.Bond.Plumb {
		_, right := wa.Widths(&hunts[a].ties[i])
		left, _ := wb.Widths(&hunts[b].ties[k])
		m.Alike = alike(right, left, s.room.Tile.Width+s.room.Joint)
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
