package phase

import (
	"cmp"
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/survey"
)

// Closely is what a set-out cannot beat as AtBest has it, with its free marks where
// they are placed, and with the tiles in the corners and at the pipes really cut,
// which is a tenth of what Count cuts. It stops cutting, and is not done, once that comes
// after another merit.
func (w *Wall) Closely(s Setting, other *merit.Merit) (m merit.Merit, done bool) {
	t := tally{w: w, surely: true}
	w.ofTables(&t, s)
	g, origin := w.ground(s.Placed), w.Pattern.Origin(s.Line, s.Edge)
	g.layer.Cover.Clear()
	done = true
	w.eachIn(g, &g.turns, origin, func(set bond.Set) {
		if done && !w.alone(set, &s.Placed) {
			g.layer.Cut(set, func(p *piece.Piece) { t.piece(p, set.Tile) })
			w.Work++
			done = other == nil || !t.after(other)
		}
	})
	m = t.merit()
	w.lines.add(&m, s, g.box)
	return m, done
}

// after tells whether what was added up has more small pieces in sight than another
// merit, so that it comes after it.
func (t *tally) after(m *merit.Merit) bool {
	return smallAfter(t.sights[0], m)
}

// afterWith is after for what two tallies have added up.
func (t *tally) afterWith(more *tally, m *merit.Merit) bool {
	s, o := t.sights[0], &more.sights[0]
	s.Bare, s.Unworkable, s.Slivers = s.Bare+o.Bare, s.Unworkable+o.Unworkable, s.Slivers+o.Slivers
	return smallAfter(s, m)
}

func smallAfter(s merit.Sight, m *merit.Merit) bool {
	return cmp.Or(cmp.Compare(s.Bare, m.Bare), cmp.Compare(s.Unworkable, m.Unworkable), cmp.Compare(s.Slivers, m.Slivers)) > 0
}

// ofTables adds up what the edges are sure to cut with the marks where they are placed.
func (w *Wall) ofTables(t *tally, s Setting) {
	w.atBest(t, s.Line, s.Edge, 0, 0, w.within(&s.Placed))
	w.ofAxes(t, s)
}

// besideTables adds up what the edges are sure to cut of the tiles that free marks may touch, but
// for those along which all of them are cut: those that meet something.
func (w *Wall) besideTables(t *tally, s Setting) {
	w.byMarks = true
	w.atBest(t, s.Line, s.Edge, 0, 0, w.within(&s.Placed))
	w.byMarks = false
	w.ofAxes(t, s)
}

// taken tells whether besideTables may count a tile.
func (w *Wall) taken(set *bond.Set, p *survey.Placed) bool {
	for i := range w.edges {
		if e := &w.edges[i]; !e.meets && e.takes(set.Tile, set.At) {
			return true
		}
	}
	return w.takenByMarks(set, p)
}

// ofAxes adds up what the edges that move are sure to cut.
func (w *Wall) ofAxes(t *tally, s Setting) {
	origin := w.Pattern.Origin(s.Line, s.Edge)
	for _, a := range w.axes {
		a.bounds(t, origin, &s.Placed)
	}
}

// alone tells whether a tile may be one that an edge is taken to cut alone.
func (w *Wall) alone(set bond.Set, p *survey.Placed) bool {
	return w.standsAlone(&set) || w.takenByMarks(&set, p)
}

// takenByMarks tells whether it may be one that an edge is that free marks move.
func (w *Wall) takenByMarks(set *bond.Set, p *survey.Placed) bool {
	return slices.ContainsFunc(w.axes, func(a *axis) bool { return a.takes(w, set, p) })
}

// standsAlone tells whether it may be one that an edge that stands is taken to cut alone.
func (w *Wall) standsAlone(set *bond.Set) bool {
	for i := range w.edges {
		if w.edges[i].takes(set.Tile, set.At) {
			return true
		}
	}
	return false
}
