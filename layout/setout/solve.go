package setout

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// Solve finds the best set-out of a room by the order of merit with marks that
// can be found on the room's tape, and asks whether one off the tape would be
// better: that is what the rounding costs. It never fails on a room that survey
// accepted.
func Solve(room survey.Room) plan.Setout {
	var tape *result
	left, short := mostWork, false
	for _, hand := range hands(room) {
		s := newSolver(&room, hand)
		t := s.best(tape, max(left, mostWork/4))
		left, short = left-s.work, short || s.short
		tape = &t
	}
	s := tape.solver
	s.short = short
	return s.describe(*tape, s.finer(*tape))
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
	work   int  // rows counted so far; one that is cut counts as rowCut of them
	limit  int  // how many may be
	short  bool // not every line that might be better was tried
}

// mostWork is how many rows are counted in one search before it settles for the
// best found so far: it bounds the time that a room may take in which nearly
// everything is free. Cutting a row takes as long as counting rowCut of them,
// and making a wall's shape as long as cutting shapeCuts rows.
const (
	mostWork  = 3_500_000
	rowCut    = 25
	shapeCuts = 20
)

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
		s.fields = append(s.fields, newField(room, w, hand, &s.work))
	}
	return s
}

// atBest is what no start on a wall can beat, on the tape or off it, whatever the
// course line: the best of each term over all of them.
func (s *solver) atBest(w int, onTape bool) Merit {
	f := s.fields[w]
	if m, there := f.atBest[onTape]; there {
		return m
	}
	starts := s.marks
	if !onTape {
		starts = s.plainEdges
	}
	least := Merit{}
	for i, e := range starts(w) {
		m := f.guess(e)
		if i == 0 {
			least = m
		}
		least = least.either(m)
	}
	f.atBest[onTape] = least
	return least
}

// best is the best set-out with marks on the tape. A result known before it is
// given back unless it can be beaten.
func (s *solver) best(known *result, budget int) result {
	r := s.over(s.lines(true), true, known, whole, budget)
	s.short = s.spent()
	return r
}

// spent tells whether so many rows were counted that it is time to settle.
func (s *solver) spent() bool { return s.work > s.limit }

// finer looks at every turning point off the tape for a set-out that is better
// than known in the first three terms, or better by a mark of the tape or more
// in the fourth; it gives known when there is none, or none was found in a
// sixteenth of the time that the tape may take.
func (s *solver) finer(known result) result {
	within := known
	t := s.room.Tile
	within.merit.Smallest = plusMark(known.merit.Smallest, s.room.Tape, min(t.Width, t.Height))
	if found := s.over(s.lines(false), false, &within, firstFour, mostWork/16); found.choices != nil && firstFour(found.merit).Better(firstFour(within.merit)) {
		return found
	}
	return known
}

// plusMark is a share of a tile with one mark of the tape more.
func plusMark(s piece.Share, mark, tile length.Length) piece.Share {
	n := (s.Num*int64(tile)+s.Den-1)/s.Den + int64(mark)
	return piece.Part(length.Length(n), tile)
}

// whole and firstFour are what of a merit is compared.
func whole(m Merit) Merit { return m }

func firstFour(m Merit) Merit {
	return Merit{Bare: m.Bare, Slivers: m.Slivers, OffLine: m.OffLine, Smallest: m.Smallest}
}

// trial is one course line on trial, with the search on every wall. Its merit
// is exact, or one that it cannot beat.
type trial struct {
	line     length.Length
	merit    Merit
	depth    depth
	bounds   []Merit // by wall
	searches []*search
	choices  []choice
}

// over tries lines, the most promising first, ever more closely, until the first
// is exact: no other can then be better. Of equal ones the lowest is taken. Once
// as many rows are counted as the budget has, it settles for the best so far.
func (s *solver) over(lines []length.Length, onTape bool, known *result, of func(Merit) Merit, budget int) result {
	q := queue[*trial]{before: func(a, b *trial) bool {
		if order, _ := of(a.merit).Compare(of(b.merit)); order != 0 {
			return order < 0
		}
		return a.line < b.line
	}}
	for _, line := range lines {
		t := &trial{line: line}
		t.bounds, t.merit = s.lineBounds(line, onTape)
		q.items = append(q.items, t)
	}
	q.sort()
	s.limit = s.work + budget
	for {
		t := q.first()
		if s.spent() {
			t = q.firstOf(func(t *trial) bool { return t.depth == weighed }, t)
			if t.depth != weighed && known != nil {
				return *known
			}
			s.deepest(t, onTape, of)
		}
		if known != nil && !of(t.merit).Better(of(known.merit)) {
			return *known
		}
		if t.depth == weighed {
			return result{s, t.line, t.choices, t.merit}
		}
		s.closer(t, onTape, of)
		q.settle()
	}
}

// deepest looks at a line as closely as there is.
func (s *solver) deepest(t *trial, onTape bool, of func(Merit) Merit) {
	for t.depth != weighed {
		s.closer(t, onTape, of)
	}
}

// closer looks at a line one step more closely.
func (s *solver) closer(t *trial, onTape bool, of func(Merit) Merit) {
	t.depth++
	if t.searches == nil {
		for w := range s.fields {
			t.searches = append(t.searches, s.search(w, t.line, t.bounds[w], onTape, of))
		}
	}
	t.merit, t.choices = t.on(t.depth)
}

// on is the merit of a line with the best starts, known as closely as to. Walls
// share only the smallest cut: a wall need not do better than the room's, and is
// weighed by its balance next. The room's is first taken as high as it may be
// and lowered until a wall's best gives it.
func (t *trial) on(to depth) (Merit, []choice) {
	most := t.merit.Smallest
	for {
		sum := Merit{Smallest: half}
		choices := make([]choice, len(t.searches))
		for w, q := range t.searches {
			s := q.best(most, to)
			sum = sum.plus(s.merit)
			if s.choice != nil {
				choices[w] = *s.choice
			}
		}
		if !sum.Smallest.Less(most) {
			return sum, choices
		}
		most = sum.Smallest
	}
}

// lineBounds are what no set-out on a course line can beat: by wall, from its
// level edges alone, and in all, with the best start on every wall.
func (s *solver) lineBounds(line length.Length, onTape bool) (walls []Merit, all Merit) {
	all = Merit{Smallest: half}
	for w, f := range s.fields {
		m := f.lineAxis.bound(line)
		m.OffLine = f.levelOff(line)
		walls = append(walls, m)
		all = all.plus(m.least(s.atBest(w, onTape)))
	}
	return walls, all
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
		onLine := !f.plumb && length.Mod(head-line-s.room.Tile.Height, s.room.Tile.Height+s.room.Joint) == 0
		rows, shape := shared, f.shape
		switch {
		case f.found.Head.Meets || head == f.placed.Head || onLine:
			// On a joint line the head only leaves out the courses over it.
			if shared == nil {
				shared = f.compile(across, f.shape)
			}
			rows = shared
		default:
			p := f.placed
			p.Head = head
			shape = f.shapeWith(p)
			rows = f.compile(across, shape)
		}
		out = append(out, f.headAt(head, rows, shape, f.plumb || f.found.Head.Meets))
	}
	s.memo[key] = out
	return out
}
