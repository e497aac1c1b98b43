package setout

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// Solve finds the best set-out of a room by the order of merit with marks that
// can be found on the room's tape, and asks whether a course line within one
// step of the tape would be better in the terms that spoil a wall: that is what
// the rounding costs. It never fails on a room that survey accepted.
func Solve(room survey.Room) Setout {
	tape := result{}
	for i, hand := range hands(room) {
		if t := newSolver(&room, hand).best(); i == 0 || t.merit.Better(tape.merit) {
			tape = t
		}
	}
	s := tape.solver
	return s.describe(tape, s.finer(tape, s.near(tape.line)))
}

func hands(room survey.Room) []survey.Hand {
	if room.Bond.Hand != survey.Free {
		return []survey.Hand{room.Bond.Hand}
	}
	if room.Bond.Num == 0 || 2*room.Bond.Num == room.Bond.Den {
		return []survey.Hand{survey.Left}
	}
	return []survey.Hand{survey.Left, survey.Right}
}

type solver struct {
	room   *survey.Room
	hand   survey.Hand
	fields []*field
	memo   map[memoKey][]headed
	tried  int  // starts weighed so far
	short  bool // not every line that might be better was tried
}

// mostTried is how many starts are weighed before the lines left, the least
// promising, are given up: it bounds the time that a room may take in which
// nearly everything is free.
const mostTried = 12_000

type memoKey struct {
	wall   int
	across length.Length
}

// result is the best set-out found.
type result struct {
	solver  *solver
	line    length.Length
	choices []choice
	merit   Merit
}

func newSolver(room *survey.Room, hand survey.Hand) *solver {
	s := &solver{room: room, hand: hand, memo: map[memoKey][]headed{}}
	for _, w := range room.Walls {
		s.fields = append(s.fields, newField(room, w, hand))
	}
	s.ceilings()
	return s
}

// ceilings bounds each wall's smallest cut and slivers by what its plumb edges
// allow at the best start.
func (s *solver) ceilings() {
	for w, f := range s.fields {
		f.ceiling = half
		if f.plumb || f.found.Pin != nil {
			continue
		}
		for i, e := range s.plainEdges(w) {
			b := f.startAxis.bound(e)
			if i == 0 {
				f.ceiling, f.slivers = b.Smallest, b.Slivers
			}
			if f.ceiling.Less(b.Smallest) {
				f.ceiling = b.Smallest
			}
			f.slivers = min(f.slivers, b.Slivers)
		}
	}
}

// best tries every line on the tape that can be best, the most promising
// first, and on it every start that can be best on each wall.
func (s *solver) best() result { return s.over(s.lines(true), true, nil, whole) }

// finer looks on the lines, at every turning point, for a set-out that is
// better than known in the first four terms; it gives known when there is none.
func (s *solver) finer(known result, lines []length.Length) result {
	return s.over(lines, false, &known, firstFour)
}

// whole and firstFour are what of a merit is compared.
func whole(m Merit) Merit { return m }

func firstFour(m Merit) Merit {
	return Merit{Bare: m.Bare, Slivers: m.Slivers, OffLine: m.OffLine, Smallest: m.Smallest}
}

// over tries lines. Those whose bound the best so far beats are passed over, so
// the answer is the best of all of them.
func (s *solver) over(lines []length.Length, onTape bool, known *result, of func(Merit) Merit) result {
	bounds := make([][]Merit, len(lines))
	sums := make([]Merit, len(lines))
	order := make([]int, len(lines))
	for i, line := range lines {
		order[i] = i
		bounds[i], sums[i] = s.lineBounds(line)
	}
	slices.SortStableFunc(order, func(a, b int) int { o, _ := sums[a].Compare(sums[b]); return o })
	best := result{}
	if known != nil {
		best = *known
	}
	for _, i := range order {
		var beat *Merit
		if best.choices != nil {
			if !of(sums[i]).Better(of(best.merit)) {
				continue
			}
			if s.tried > mostTried {
				s.short = true
				break
			}
			m := of(best.merit)
			beat = &m
		}
		if r, found := s.on(lines[i], bounds[i], onTape, beat, of); found && (beat == nil || of(r.merit).Better(*beat)) {
			best = r
		}
	}
	return best
}

// lineBounds are what no set-out on a course line can beat, by wall and in all.
func (s *solver) lineBounds(line length.Length) ([]Merit, Merit) {
	sum := Merit{Smallest: half}
	out := make([]Merit, len(s.fields))
	for w, f := range s.fields {
		m := f.lineAxis.bound(line)
		m.OffLine = f.levelOff(line)
		m.Smallest = m.Smallest.Min(f.ceiling)
		m.Slivers = max(m.Slivers, f.slivers)
		out[w] = m
		sum = sum.plus(m)
	}
	return out, sum
}

// on finds the best starts for one course line, or finds that none can beat a
// merit already found. Walls share only the smallest cut: a wall need not do
// better than the room's, and is weighed by its balance next. The room's is
// first taken as high as it may be and lowered until a wall's best gives it.
func (s *solver) on(line length.Length, bounds []Merit, onTape bool, beat *Merit, of func(Merit) Merit) (result, bool) {
	most := half
	for _, b := range bounds {
		most = most.Min(b.Smallest)
	}

	searches := make([]*search, len(s.fields))
	for w := range s.fields {
		searches[w] = s.search(w, line, bounds[w], onTape)
		searches[w].of, searches[w].tried = of, &s.tried
	}
	for {
		r := result{solver: s, line: line}
		reached := half
		for w := range s.fields {
			c := searches[w].best(most)
			r.choices = append(r.choices, c)
			reached = reached.Min(c.merit.Smallest)
			if beat != nil && !s.hopeful(r.choices, bounds[w+1:], *beat) {
				return result{}, false
			}
		}
		r.merit = total(r.choices)
		if !reached.Less(most) {
			return r, true
		}
		most = reached
	}
}

// hopeful tells whether the walls chosen so far, and the rest at their bounds,
// may still beat a merit. The walls' later terms are not final yet.
func (s *solver) hopeful(chosen []choice, rest []Merit, beat Merit) bool {
	m := Merit{Smallest: half}
	for _, c := range chosen {
		m = m.plus(Merit{Bare: c.merit.Bare, Slivers: c.merit.Slivers, OffLine: c.merit.OffLine, Smallest: half})
	}
	for _, b := range rest {
		m = m.plus(b)
	}
	return m.Better(beat)
}

func total(choices []choice) Merit {
	m := Merit{Smallest: half}
	for _, c := range choices {
		m = m.plus(c.merit)
	}
	return m
}

// compiled gives a wall cut into rows, for each place its head may stand.
func (s *solver) compiled(w int, across, line length.Length) []headed {
	key := memoKey{w, across}
	f := s.fields[w]
	if h, there := s.memo[key]; there && !(f.plumb && !f.found.Head.Meets && f.found.Head.Stops.Free()) {
		return h
	}
	var out []headed
	var shared *compiled
	for _, head := range f.heads(line) {
		h := headed{head: head, shape: f.shape, open: f.plumb || f.found.Head.Meets}
		switch onLine := !f.plumb && length.Mod(head-line-s.room.Tile.Height, s.room.Tile.Height+s.room.Joint) == 0; {
		case f.found.Head.Meets || head == f.placed.Head && !onLine || onLine:
			// On a joint line the head only leaves out the courses over it.
			if shared == nil {
				shared = f.compile(across, f.shape)
			}
			h.compiled = shared
		default:
			p := f.placed
			p.Head = head
			h.shape = f.shapeWith(p)
			h.compiled = f.compile(across, h.shape)
		}
		out = append(out, h)
	}
	s.memo[key] = out
	return out
}
