package phase

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// tally adds up the pieces of a wall.
type tally struct {
	w      *Wall
	surely bool // pieces that are there, or cut, by the rounding of slanted boundaries alone are left out
	sights [2]merit.Sight
	work   int
	runs   []run
}

// copy is the tally as it is now.
func (t *tally) copy() *tally {
	c := *t
	c.runs = slices.Clone(t.runs)
	return &c
}

// copyTo is the tally as it is now, in the room of one that nobody needs any more.
func (t *tally) copyTo(room *tally) *tally {
	runs := room.runs[:0]
	*room = *t
	room.runs = append(runs, t.runs...)
	return room
}

// afresh is a tally of nothing, in the room of the last one: what is taken of it is its merit.
func afresh(w *Wall) tally { return tally{w: w, runs: w.runs[:0]} }

func (t *tally) piece(p *piece.Piece, tile int) {
	if p.Whole {
		return
	}
	limits, least := &t.w.least[tile], p.Least
	if t.surely && least < limits.full {
		// A boundary that slants may leave so much more where its ends are rounded otherwise.
		least = min(least+rounded, limits.full)
	}
	if t.surely {
		switch none, whole := barely(p); {
		case whole && atOneEnd(p.Across):
			t.run(p.Across, least, limits.full) // which says how wide the end leaves its tiles, and nothing of small runs
			return
		case none || whole:
			return
		}
	}
	for low := range t.sights {
		switch g := p.Grade(low == 1); {
		case g == piece.Hopeless && (!t.surely || least < limits.unworkable):
			t.sights[low].Unworkable++
		case (g == piece.Small || g == piece.Hopeless) && (!t.surely || least < limits.sliver):
			t.sights[low].Slivers++
		}
	}
	if t.surely {
		t.work += p.LeastEffort()
	} else {
		t.work += p.Effort()
	}
	t.run(p.Across, least, limits.full)
	t.run(p.Up, least, limits.full)
}

// barely tells whether a piece is so nearly nothing, or so nearly whole, that where a boundary
// slants it may be so where another of its ends is moved.
func barely(p *piece.Piece) (none, whole bool) {
	if p.Kind&piece.Hole != 0 {
		return false, false
	}
	face, off := p.Face.Area2(), 2*length.Area(rounded)*length.Area(p.Tile.Width()+p.Tile.Height())
	return face <= off, face+off >= p.Outline.Area2()
}

// atOneEnd tells whether an end of the wall alone cuts a piece across.
func atOneEnd(across []piece.Edge) bool { return len(across) == 1 && isEnd(across[0].Side()) }

func isEnd(side plane.Side) bool { return side == survey.SideLeft || side == survey.SideRight }

// add adds what another tally has added up.
func (t *tally) add(more *tally) {
	for low := range t.sights {
		t.sights[low].Bare += more.sights[low].Bare
		t.sights[low].Unworkable += more.sights[low].Unworkable
		t.sights[low].Slivers += more.sights[low].Slivers
	}
	t.work += more.work
	for i := range more.runs {
		t.addRun(&more.runs[i])
	}
}

// run notes a width of a run.
func (t *tally) run(edges []piece.Edge, least, full length.Length) {
	if len(edges) == 0 {
		return
	}
	r := run{least: least, full: full, narrowest: least, n: min(len(edges), 4)}
	copy(r.edges[:], edges)
	if have := t.find(&r); have != nil {
		have.note(least, full, t.w.room.Tape)
		return
	}
	for _, e := range edges {
		r.low = r.low || e.Low(t.w.rule.Sides)
	}
	t.runs = append(t.runs, r)
}

// addRun notes what another tally has of a run.
func (t *tally) addRun(r *run) {
	have := t.find(r)
	if have == nil {
		t.runs = append(t.runs, *r)
		return
	}
	have.note(r.least, r.full, t.w.room.Tape)
	have.narrowest = min(have.narrowest, r.narrowest)
}

// find is the run that the same edges cut, or nil.
func (t *tally) find(r *run) *run {
	for i := range t.runs {
		if have := &t.runs[i]; have.n == r.n && have.edges == r.edges {
			return have
		}
	}
	return nil
}

var full = piece.Share{Num: 1, Den: 1}

// merit is what was added up, without what only a whole set-out shows.
func (t *tally) merit() (m merit.Merit) {
	m.Part = true
	m.Sight, m.OutOfSight, m.Work = t.sights[0], t.sights[1], t.work
	sides := t.w.rule.Sides
	lists := [...]*[]piece.Share{&m.Sight.Runs, &m.OutOfSight.Runs, &m.Rim, &m.Head}
	for i, list := range lists {
		*list = t.w.shares[i][:0]
	}
	for i := range t.runs {
		r := &t.runs[i]
		share, sight := piece.Part(r.least.FloorTo(t.w.room.Tape), r.full), &m.Sight
		if r.low {
			sight = &m.OutOfSight
		}
		sight.AddRun(share)
		base, head := true, true
		for _, e := range r.edges[:r.n] {
			base, head = base && e.IsBase(sides), head && e.Side() == survey.SideHead
		}
		switch {
		case r.low || r.edges[0].Across() || !share.Less(full):
		case base:
			m.Rim = append(m.Rim, share)
		case head:
			m.Head = append(m.Head, share)
		}
	}
	all := make([]piece.Share, 0, len(m.Sight.Runs)+len(m.OutOfSight.Runs)+len(m.Rim)+len(m.Head))
	for i, list := range lists {
		t.w.shares[i] = *list
		if *list = nil; len(t.w.shares[i]) > 0 {
			from := len(all)
			all = append(all, t.w.shares[i]...)
			*list = all[from:len(all):len(all)]
			slices.SortFunc(*list, piece.Share.Compare)
		}
	}
	return m
}

// ends are what the ends of the wall alone leave of tiles.
func (t *tally) ends() (left, right atEnd) {
	left = atEnd{t.w.least[0].full, full}
	right = left
	for i := range t.runs {
		switch r := &t.runs[i]; {
		case r.n > 1:
		case r.edges[0].Side() == survey.SideLeft:
			left = left.with(r)
		case r.edges[0].Side() == survey.SideRight:
			right = right.with(r)
		}
	}
	return left, right
}
