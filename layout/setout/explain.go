package setout

import (
	"fmt"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Explain fills in what can be said only once the pieces are cut: where the
// smallest cut is, why this set-out was chosen, and how sure it is.
func (s *Setout) Explain(room survey.Room, walls []Wall) {
	s.Least = least(walls)
	for i, w := range walls {
		s.Doubts = append(s.Doubts, doubts(room, i, w)...)
	}
	s.Reasons = s.reasons(room, walls)
}

// least is the first piece with the smallest share among the cut ones.
func least(walls []Wall) Least {
	best := Least{Share: piece.Share{Num: 1, Den: 1}}
	for i, w := range walls {
		for _, p := range w.Pieces {
			if !p.Whole && p.Share.Less(best.Share) {
				best = Least{i, p.ID, p.Least, p.Share}
			}
		}
	}
	return best
}

func (s *Setout) reasons(room survey.Room, walls []Wall) []string {
	var out []string
	if s.Least.Piece == "" {
		out = append(out, "No tile needs a cut under its full size.")
	} else {
		out = append(out, fmt.Sprintf("The smallest cut is %s: %s, %d %% of a tile, on wall %s.",
			s.Least.Piece, s.Least.Size.Fine(room.Units), s.Least.Share.Num*100/s.Least.Share.Den, walls[s.Least.Wall].Found.Name))
	}
	for _, w := range walls {
		out = append(out, because(room, w))
	}
	for _, l := range s.Lines {
		out = append(out, fmt.Sprintf("With a %s (line at %s) the smallest cut would be %s, with %s.",
			l.Name, l.Line.Tape(room.Units), percent(l.Share), slivers(l.Slivers)))
	}
	if s.Loss != "" {
		out = append(out, s.Loss)
	}
	return out
}

// because tells what decided between the chosen start and the best of the
// classic ones on a wall.
func because(room survey.Room, w Wall) string {
	x := w.Start.X.Tape(room.Units)
	where := "a joint"
	if w.Start.OnTile {
		where = "the middle of a tile"
	}
	said := fmt.Sprintf("Wall %s starts with %s at %s", w.Found.Name, where, x)
	if w.Start.Pinned {
		return said + ", as pinned."
	}
	best := w.Start.Classic[len(w.Start.Classic)-1]
	for _, c := range w.Start.Classic[:len(w.Start.Classic)-1] {
		said += fmt.Sprintf("; %s would give %s", c.Name, c.against(best))
	}
	return said + "."
}

// against says how a start compares with the chosen one.
func (c Classic) against(best Classic) string {
	switch {
	case c.Bare > best.Bare:
		return "bare wall"
	case c.Slivers > best.Slivers:
		return slivers(c.Slivers)
	}
	return "a smallest cut of " + percent(c.Share)
}

func percent(s piece.Share) string {
	if !s.Less(piece.Half) {
		return "half a tile or more"
	}
	return fmt.Sprintf("%d %% of a tile", s.Num*100/s.Den)
}

func slivers(n int) string {
	switch n {
	case 0:
		return "no slivers"
	case 1:
		return "1 sliver"
	}
	return fmt.Sprintf("%d slivers", n)
}

// doubts tell how far the width of a wall may be wrong, at its right end, with
// the set-out as it is, before a sliver appears there. From the pieces that the
// right end cuts: a piece may shrink to the sliver limit, or the wall may grow
// until the next tile's strip is more than sealant fills.
func doubts(room survey.Room, wall int, w Wall) []Doubt {
	limit := piece.SliverLimit(room, room.Tile.Width)
	seal := length.Length(0)
	if w.Found.Right.Meets {
		seal = room.Sealant - w.Found.Right.Gap
	}
	shrink, grow, found := length.Length(0), length.Length(0), false
	for _, p := range w.Pieces {
		if !cutBy(p, survey.SideRight) {
			continue
		}
		s, g := max(0, p.Wide-limit), room.Tile.Width-p.Wide+room.Joint+seal
		if !found {
			shrink, grow, found = s, g, true
		}
		shrink, grow = min(shrink, s), min(grow, g)
	}
	if !found {
		return nil
	}
	return []Doubt{{"width of " + w.Found.Name, wall, w.Found.Width, w.Found.Width - shrink, w.Found.Width + grow}}
}

func cutBy(p piece.Piece, side plane.Side) bool { return slices.Contains(p.Cuts, side) }
