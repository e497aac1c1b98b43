package setout

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
)

// depth is how closely the merit of a line or a start is known.
type depth uint8

const (
	guessed depth = iota // no better than its level or plumb edges allow
	skimmed              // no better than the tiles that arithmetic counts allow
	counted              // no better than the rows that arithmetic counts, with single tiles cut
	weighed              // exact
)

// start is one way to begin the bond on a wall: at the left edge of a tile of
// course 0. Its merit is exact, or one that it cannot beat.
type start struct {
	edge   length.Length
	merit  Merit
	rank   Merit // what of the merit counts
	depth  depth
	choice *choice // when weighed
}

// search is the search for the best start on one wall and one course line. The
// most promising start is looked at more closely until the first in the queue
// is known as closely as is asked: no other can then be better.
type search struct {
	*field
	line  length.Length
	most  piece.Share // a smallest cut over this counts no more
	of    func(Merit) Merit
	heads func(edge length.Length) []headed
	spent func() bool // it is time to settle for the best so far
	queue queue[*start]
}

func (s *solver) search(w int, line length.Length, fromLine Merit, onTape bool, of func(Merit) Merit) *search {
	f := s.fields[w]
	q := &search{field: f, line: line, most: half, of: of, spent: s.spent}
	q.heads = func(edge length.Length) []headed {
		across, _ := f.frame(line, edge)
		return s.compiled(w, across, line)
	}
	q.queue.before = q.before
	edges := s.edges(w, line, onTape)
	starts := make([]start, len(edges))
	q.queue.items = make([]*start, len(edges))
	for i, e := range edges {
		m := f.guess(e).least(fromLine)
		starts[i] = start{edge: e, merit: m, rank: q.capped(m)}
		q.queue.items[i] = &starts[i]
	}
	q.queue.sort()
	return q
}

// guess is what no set-out with a start at edge can beat on any course line.
func (f *field) guess(edge length.Length) Merit {
	m, there := f.guesses[edge]
	if !there {
		m = f.startAxis.bound(edge)
		m.OffLine = f.plumbOff(edge)
		if f.found.Left.Meets && f.found.Right.Meets {
			m.Find = f.find(edge, f.placed)
		}
		f.guesses[edge] = m
	}
	return m
}

// before puts the better merit first, and of equal ones the lower edge.
func (q *search) before(a, b *start) bool {
	if order, _ := a.rank.Compare(b.rank); order != 0 {
		return order < 0
	}
	return a.edge < b.edge
}

func (q *search) capped(m Merit) Merit {
	m.Smallest = m.Smallest.Min(q.most)
	return q.of(m)
}

// best is the best start, known as closely as to, when a smallest cut over most
// counts no more.
func (q *search) best(most piece.Share, to depth) *start {
	if most != q.most {
		q.most = most
		for _, s := range q.queue.items {
			s.rank = q.capped(s.merit)
		}
		q.queue.sort()
	}
	for {
		s := q.queue.first()
		if q.spent() {
			s = q.queue.firstOf(func(s *start) bool { return s.depth >= to }, s)
			for s.depth < to {
				q.closer(s)
			}
		}
		if s.depth >= to {
			return s
		}
		q.closer(s)
		q.queue.settle()
	}
}

// closer looks at a start one step more closely.
func (q *search) closer(s *start) {
	s.depth++
	switch s.depth {
	case skimmed, counted:
		s.merit = s.merit.least(q.count(s.edge, q.line, q.heads(s.edge), s.depth == skimmed))
	case weighed:
		c := q.weigh(q.line, s.edge, q.heads(s.edge))
		s.choice = &c
		s.merit = s.choice.merit
	}
	s.rank = q.capped(s.merit)
}
