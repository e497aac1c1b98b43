package sheet

import (
	"iter"
	"slices"

	"coursewright/web/drawing"
)

// measures is what the lists of a book take, from which it can be told on how few leaves they go.
type measures struct {
	room     drawing.Micron // the height of a leaf
	lists    map[Kind]taken
	schedule scheduled
}

// taken is what a list takes.
type taken struct {
	leaves int                               // that it takes alone
	high   drawing.Micron                    // of what stands on the last of them then
	under  map[drawing.Micron]drawing.Micron // of all of it under another list, by the size of its text; none where it takes more than a leaf
}

// scheduled is the schedule before its lines are shared out.
type scheduled struct {
	f      *flow
	lines  []cutLine
	end    drawing.Micron // what stands under the last line
	leaves int
}

// holds tells whether the schedule takes no more leaves with so much under it.
func (s scheduled) holds(high drawing.Micron) bool {
	return s.end+high <= s.f.left() && (len(s.lines) == 0 || len(s.f.parted(s.lines, s.end+high, joinedLine)) == s.leaves)
}

// measured measures the lists that are asked for.
func (b *book) measured() measures {
	m := measures{lists: map[Kind]taken{}}
	for _, k := range b.listsAsked() {
		try := b.attempt(0)
		try.kind(k)
		last := try.flows[len(try.flows)-1]
		m.room = last.hi.Y - last.lo.Y
		t := taken{leaves: len(try.leaves), high: last.y - last.lo.Y, under: map[drawing.Micron]drawing.Micron{}}
		switch k {
		case FirstCourse:
		case CutSchedule:
			m.schedule = b.attempt(0).scheduled()
		default:
			for _, percent := range joinedPercents {
				if high, whole := b.highOf(k, percent); whole {
					t.under[percent] = high
				}
			}
		}
		m.lists[k] = t
	}
	return m
}

// listsAsked are the lists for the room that are asked for, in the usual order.
func (b *book) listsAsked() []Kind {
	return slices.DeleteFunc(slices.Clone(roomLists), func(k Kind) bool { return !slices.Contains(b.opts.Kinds, k) })
}

// attempt is a book of which nothing is printed, with text of one size if one is given.
func (b *book) attempt(percent drawing.Micron) *book {
	return &book{plan: b.plan, opts: b.opts, cuts: b.cuts, buy: b.buy, days: b.days, single: true, trying: true, size: percent}
}

// highOf is how high a list is with its heading under another, in text of a size, and whether it stands on one leaf so.
func (b *book) highOf(k Kind, percent drawing.Micron) (high drawing.Micron, whole bool) {
	try := b.attempt(percent)
	try.kind(k)
	if len(try.leaves) != 1 || len(try.flows) != 1 {
		return 0, false
	}
	f := try.flows[0]
	return f.y - f.lo.Y + listsApart, true
}

// leaves is how many leaves the lists take in an order, where each follows the one before it if it can.
func (m measures) leaves(order []Kind) int {
	n, at, under := 0, m.room, false // leaves, how far the last is filled, and whether that is by the schedule
	var extra drawing.Micron         // under the schedule
	for _, k := range order {
		l := m.lists[k]
		high, whole := l.under[joinedPercents[len(joinedPercents)-1]]
		all := drawing.Micron(l.leaves-1)*m.room + l.high - (m.room - at - listsApart) // beyond this leaf
		more := int((all + m.room - 1) / m.room)
		switch {
		case whole && under && m.schedule.holds(extra+high):
			extra += high
		case whole && !under && at+high <= m.room:
			at += high
		case l.leaves > 1 && k != CutSchedule && !under && m.room-at >= leastRoom && more < l.leaves:
			n, at = n+more, all-drawing.Micron(more-1)*m.room
		default:
			n, at, under, extra = n+l.leaves, l.high, k == CutSchedule, 0
		}
	}
	return n
}

// arranged is the order of the lists in which they take the fewest leaves, the first of them first, and whether that is
// fewer than they take apart.
func (m measures) arranged(lists []Kind) (order []Kind, fewer bool) {
	apart := 0
	for _, k := range lists {
		apart += m.lists[k].leaves
	}
	order, fewest := lists, m.leaves(lists)
	first := min(len(lists), 1)
	for rest := range orders(lists[first:]) {
		if other := slices.Concat(lists[:first], rest); m.leaves(other) < fewest {
			order, fewest = other, m.leaves(other)
		}
	}
	return order, fewest < apart
}

// orders are all orders of some kinds, the one they are in first.
func orders(of []Kind) iter.Seq[[]Kind] {
	return func(yield func([]Kind) bool) {
		if len(of) == 0 {
			yield(nil)
			return
		}
		for i, first := range of {
			for rest := range orders(slices.Delete(slices.Clone(of), i, i+1)) {
				if !yield(append([]Kind{first}, rest...)) {
					return
				}
			}
		}
	}
}

// inPrint are the kinds that are asked for in the order in which they are printed: the lists as they are arranged, where they are.
func (b *book) inPrint() []Kind {
	all := slices.DeleteFunc(Kinds(), func(k Kind) bool { return !slices.Contains(b.opts.Kinds, k) })
	if b.order == nil {
		return all
	}
	isList := func(k Kind) bool { return slices.Contains(roomLists, k) }
	from := slices.IndexFunc(all, isList)
	return slices.Concat(all[:from], b.order, slices.DeleteFunc(slices.Clone(all[from:]), isList))
}

// underSchedule is how much room is left under the schedule for the lists that follow it: as many as stand there with its lines a
// little lower, in text as large as may be.
func (b *book) underSchedule(s scheduled) (room drawing.Micron) {
	at := slices.Index(b.order, CutSchedule)
	for _, k := range b.order[at+1:] {
		before := room
		for _, percent := range joinedPercents {
			if high, whole := b.highOf(k, percent); room == before && whole && s.holds(room+high) {
				room += high
			}
		}
		if room == before {
			break
		}
	}
	return room
}
