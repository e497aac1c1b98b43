package count

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Run is all pieces of the wall that the same boundary edges cut in the same
// direction, in one class of the bond.
type Run struct {
	Edges []piece.Edge
	Class int
	Least length.Length
	Low   bool
}

// Across tells whether the run is measured by the width of its pieces.
func (r Run) Across() bool { return r.Edges[0].Across() }

// runKey names a run. More than four boundary edges that cut one piece in one
// direction are told apart by the first four.
type runKey struct {
	edges [4]piece.Edge
	class int
}

// none stands for no edge in a key.
const none piece.Edge = -1

func keyOf(edges []piece.Edge, class int) runKey {
	k := runKey{[4]piece.Edge{none, none, none, none}, class}
	copy(k.edges[:], edges)
	return k
}

// registry numbers the runs of a wall in the order in which they were met.
type registry struct {
	w       *facts
	numbers map[runKey]int
	runs    []Run // without how much is left
}

func (r *registry) number(k runKey) int {
	n, there := r.numbers[k]
	if !there {
		n = len(r.runs)
		r.numbers[k] = n
		r.runs = append(r.runs, r.runOf(k))
	}
	return n
}

func (r *registry) runOf(k runKey) Run {
	run := Run{Class: k.class}
	for _, e := range k.edges {
		if e == none {
			break
		}
		run.Edges = append(run.Edges, e)
		run.Low = run.Low || e.Low(r.w.rule.Sides)
	}
	return run
}

var full = piece.Share{Num: 1, Den: 1}

// share of a run in whole marks of the tape.
func (w *facts) share(r Run) piece.Share {
	tile := w.room.Tile.Height
	if r.Across() {
		tile = w.room.Tile.Width
	}
	return piece.Part(w.mark(r.Least), tile)
}

// addRuns adds the terms that are read from runs alone.
func (w *facts) addRuns(m *merit.Merit, runs []Run) {
	m.Part = true
	for _, r := range runs {
		share, sight := w.share(r), &m.Sight
		if r.Low {
			sight = &m.OutOfSight
		}
		sight.AddRun(share)
		switch {
		case r.Low || r.Across() || !share.Less(full):
		case all(r.Edges, func(e piece.Edge) bool { return e.IsBase(w.rule.Sides) }):
			m.Rim = append(m.Rim, share)
		case all(r.Edges, func(e piece.Edge) bool { return e.Side() == survey.SideHead }):
			m.Head = append(m.Head, share)
		}
	}
	for _, list := range [...][]piece.Share{m.Sight.Runs, m.OutOfSight.Runs, m.Rim, m.Head} {
		slices.SortFunc(list, piece.Share.Compare)
	}
}

func all(edges []piece.Edge, is func(piece.Edge) bool) bool {
	return !slices.ContainsFunc(edges, func(e piece.Edge) bool { return !is(e) })
}

// cuts are the least widths at one end by class, ascending: the full width where
// a class ends in a whole tile.
func (w *facts) cuts(runs []Run, side plane.Side) []length.Length {
	out := make([]length.Length, w.classes())
	for i := range out {
		out[i] = w.room.Tile.Width
	}
	for _, r := range runs {
		if len(r.Edges) == 1 && r.Edges[0].Side() == side {
			class := min(r.Class, len(out)-1) // columns have one class at an end, though a lean may cross several
			out[class] = min(out[class], r.Least)
		}
	}
	slices.Sort(out)
	return out
}
