package search

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"
)

// mostClosely is how many of the starts that gave most at the first look are looked at closely.
const mostClosely = 6

// restarted is the best of a trial and of what other starts of one wall after the other give on its line, as far
// as the work given for that goes. Every start is tried with its marks where they promise most, and those that give
// most so with all their placings: where bounds do not tell the starts apart that gets past those that promise too much.
func (t *trial) restarted(effort int) *trial {
	s := t.solver
	for i, w := range s.walls {
		for _, c := range t.started(i, effort/len(s.walls)) {
			t = t.with(i, &c)
			s.allow(effort / len(s.walls) / mostClosely)
			if placed := s.place(w, t.line, c.Edge, nil, t.beside(i), tries); placed != nil {
				t = t.with(i, placed)
			}
		}
	}
	return t
}

// started are the starts of one wall that give most on the line, its head and the heights of its openings as they are.
func (t *trial) started(wall, effort int) []count.Counted {
	s := t.solver
	s.allow(effort)
	w, cut := s.walls[wall], t.beside(wall)
	var out []count.Counted
	h := s.hunt(w, t.line)
	for edge, left := h.take(cut); left; edge, left = h.take(cut) {
		if got := s.placer(w, t.line, edge, cut).along(t.walls[wall].Placed); got != nil {
			out = append(out, *got)
		}
	}
	slices.SortStableFunc(out, func(a, b count.Counted) int {
		order, _ := s.order.Compare(&a.Merit, &b.Merit)
		return order
	})
	return scattered(out, func(c count.Counted) length.Length { return c.Edge }, (s.room.Tile.Width+s.room.Joint)/32)
}

// scattered are the first few of some that stand at least so far from each other.
func scattered[T any](all []T, at func(T) length.Length, far length.Length) (out []T) {
	for _, c := range all {
		near := func(o T) bool { return max(at(c)-at(o), at(o)-at(c)) < far }
		if len(out) < mostClosely && !slices.ContainsFunc(out, near) {
			out = append(out, c)
		}
	}
	return out
}

// along places the marks along the courses where they promise most; the head and the level edges of openings stay
// where they stand.
func (p *placer) along(at survey.Placed) *count.Counted {
	p.choices[0].leave(ends-1, count.Pair{Low: at.Head}) // the last of them
	for n, i := range p.wall.Free() {
		p.choices[n+1].leave(1, count.Pair{Low: at.Openings[i].Bottom, High: at.Openings[i].Top})
	}
	return p.best(nil, 1)
}
