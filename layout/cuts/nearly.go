package cuts

import (
	"cmp"
	"fmt"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
)

// laidKey is equal for pieces of a pattern that may share a line: those whose cuts enter and leave the tile by the
// same edges. Which of them do, nearlyAlike says.
func (b batcher) laidKey(w work, saws []Saw) string {
	_, sawn := w.edges()
	key := fmt.Sprint("laid ", w.piece.Of, " ", len(w.piece.Outline), sawn, len(w.face[0]))
	if len(saws) == 0 || w.piece.Kind&(piece.Notch|piece.Hole) != 0 {
		return fmt.Sprint(key, w.kind(b.step), w.outline(b.near))
	}
	for _, s := range saws {
		key += fmt.Sprint(" ", s.Enters, s.Enters.At(), s.Leaves, s.Leaves.At(), s.Stops)
	}
	return key
}

// hidden tells whether all that a piece is cut to is a corner, a base or a head that it meets, where sealant or a
// lap hides a small difference.
func (w work) hidden() bool {
	for _, side := range w.boundaries() {
		if !side.Meets {
			return false
		}
	}
	return true
}

// nearlyAlike parts a lot of pieces of a pattern into such as are cut alike: those that are seen to differ at one
// setting each, and with them, or in lots of their own, the others within near of each other.
func (b batcher) nearlyAlike(all lot) (out []lot) {
	if all.group.How != Fence || len(all.group.Saws) == 0 || all.pieces[0].piece.Kind&(piece.Notch|piece.Hole) != 0 {
		return []lot{all}
	}
	var found []alike
	for _, w := range b.seenFirst(all.pieces) {
		i := slices.IndexFunc(found, func(a alike) bool { return a.takes(w, b.near) })
		if i < 0 {
			i, found = len(found), append(found, alike{low: slices.Clone(w.figures), high: slices.Clone(w.figures), fixed: !w.hidden()})
		}
		found[i].add(w)
	}
	for _, a := range found {
		l := lot{group: all.group, pieces: a.pieces}
		l.group.Size, l.group.Spread = a.pieces[0].size(b.step), 0
		for _, w := range a.pieces {
			l.group.Size.shrinkTo(w.size(b.step))
		}
		out = append(out, l)
	}
	return out
}

// figured is a piece of a pattern with all by which it is cut, each the larger the more of the tile is kept.
type figured struct {
	work
	figures []length.Length
}

// seenFirst lists pieces of which a difference is seen before those of which it is hidden, smaller ones first.
func (b batcher) seenFirst(pieces []work) []figured {
	all := make([]figured, len(pieces))
	for i, w := range pieces {
		all[i] = figured{w, w.figures(b.step)}
	}
	rank := func(f figured) int {
		if f.hidden() {
			return 1
		}
		return 0
	}
	slices.SortStableFunc(all, func(a, c figured) int {
		return cmp.Or(cmp.Compare(rank(a), rank(c)), slices.Compare(a.figures, c.figures))
	})
	return all
}

// alike is pieces of a pattern that are cut at one setting.
type alike struct {
	pieces    []work
	low, high []length.Length // between which each of their figures is
	fixed     bool            // one of them is seen to differ, so that none may be smaller
}

// takes tells whether a piece may be cut with the others.
func (a alike) takes(w figured, near length.Length) bool {
	if !w.hidden() {
		near = 0
	}
	for k, f := range w.figures {
		if max(f, a.high[k])-min(f, a.low[k]) > near || a.fixed && f < a.low[k] {
			return false
		}
	}
	return true
}

func (a *alike) add(w figured) {
	for k, f := range w.figures {
		a.low[k], a.high[k] = min(a.low[k], f), max(a.high[k], f)
	}
	a.pieces = append(a.pieces, w.work)
}

// figures are where the cuts of a piece of a pattern enter and leave its tile, and its size, each the larger the more of
// the tile is kept.
func (w work) figures(step length.Length) (all []length.Length) {
	for _, s := range w.saws(step) {
		for _, m := range []Mark{s.Enters, s.Leaves} {
			if !w.keeps(m.Corner) {
				m.From = -m.From
			}
			all = append(all, m.From)
		}
	}
	s := w.size(step)
	return append(all, s.Width, s.Height, s.Left, s.Right, s.Bottom, s.Top)
}

// byLeast gives a line of pieces of a pattern that are nearly alike what none of them exceeds, and says how much
// larger the places of others are.
func (g *Group) byLeast(pieces []work, step length.Length) {
	least := slices.MinFunc(pieces, func(a, b work) int { return cmp.Compare(a.piece.Face.Area2(), b.piece.Face.Area2()) })
	g.Saws, g.Kind = least.saws(step), least.kind(step)
	for _, w := range pieces {
		size := w.size(step)
		g.Spread = max(g.Spread, size.Width-g.Size.Width, size.Height-g.Size.Height)
		if saws := w.saws(step); len(saws) == len(g.Saws) {
			for i, s := range saws {
				g.Spread = max(g.Spread, w.keepTo(&g.Saws[i].Enters, s.Enters), w.keepTo(&g.Saws[i].Leaves, s.Leaves))
			}
		}
	}
}

// keepTo moves a mark to that of another piece where that is cut smaller there, and tells how far they are apart.
func (w work) keepTo(m *Mark, other Mark) length.Length {
	if m.Edge != other.Edge || m.Corner != other.Corner {
		return 0
	}
	apart := (m.From - other.From).Abs()
	if w.keeps(m.Corner) {
		m.From = min(m.From, other.From)
	} else {
		m.From = max(m.From, other.From)
	}
	return apart
}

// keeps tells whether a piece keeps a corner of its tile.
func (w work) keeps(corner int) bool {
	c := w.piece.Outline[corner].Point
	return slices.ContainsFunc(w.piece.Face[0], func(k plane.Corner) bool { return plane.Distance(k.Point, c) <= 4 })
}
