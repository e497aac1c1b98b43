package plane

// room is how many corners a ring may have to be clipped in place.
const room = 24

// Room is room for the part of a region that is clipped and not kept.
type Room struct {
	ring Ring
	all  [1]Ring
}

// keepAll is the part of a ring to the left of as many of the lines as leave one ring at most,
// as Keep has it line by line, and how many these are: for most tiles all.
func (r Ring) keepAll(lines []Line, into *Room) (Region, int) {
	var space [2][room + 2]Corner
	var sides [room]int64
	at, turn := r, 0
	for n, l := range lines {
		if len(at) > room {
			return at.kept(r, into), n
		}
		switch at.sides(l, &sides) {
		case right:
			return nil, len(lines)
		case left:
			continue
		}
		next, one := at.chain(sides[:len(at)], space[turn][:0])
		if !one {
			return at.kept(r, into), n
		}
		if next = next.tidied(); len(next) < 3 || next.Area2() == 0 {
			return nil, len(lines)
		}
		at, turn = next, 1-turn
	}
	return at.kept(r, into), len(lines)
}

// kept is a ring that was clipped in place, or the ring itself where nothing was clipped.
func (r Ring) kept(was Ring, into *Room) Region {
	if &r[0] != &was[0] {
		into.ring = append(into.ring[:0], r...)
		was = into.ring
	}
	into.all[0] = was
	return into.all[:]
}

// sides tells where a ring is, as lies has it, with the side of every corner.
func (r Ring) sides(l Line, sides *[room]int64) position {
	seen := corners{last: 1}
	for i, c := range r {
		sides[i] = l.Side(c.Point)
		seen.add(sides[i])
	}
	seen.edge = seen.edge || seen.last == 0 && sides[0] == 0 // from the last corner to the first
	return seen.position()
}

// chain is what of a ring astride a line, on these sides of it, lies to its left, in out, where that is one
// chain of corners: as gather has it.
func (r Ring) chain(sides []int64, out Ring) (Ring, bool) {
	n := len(r)
	first := 0
	for sides[first] > 0 {
		first++
	}
	done := false
	a, sa := r[first], sides[first]
	for i := first + 1; i <= first+n; i++ {
		k := i
		if k >= n {
			k -= n
		}
		b, sb := r[k], sides[k]
		if sa <= 0 && sb > 0 {
			if done {
				return nil, false
			}
			out = append(out, Corner{meet(a.Point, b.Point, sa, sb), a.On})
		}
		if sb > 0 {
			out = append(out, b)
		}
		if sa > 0 && sb <= 0 {
			out, done = append(out, Corner{meet(a.Point, b.Point, sa, sb), 0}), true
		}
		a, sa = b, sb
	}
	return out, true
}

// tidied is tidy in place.
func (r Ring) tidied() Ring {
	if len(r) == 0 {
		return r
	}
	out, first := r[:0], r[0].Point
	for i, c := range r {
		next := first
		if i+1 < len(r) {
			next = r[i+1].Point
		}
		if c.Point != next {
			out = append(out, c)
		}
	}
	return out
}
