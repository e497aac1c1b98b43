package setout

import (
	"fmt"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Explain fills in what can be said only once the pieces are cut: where the
// smallest cut is, why this set-out was chosen, and how sure it is.
func Explain(s *plan.Setout, room survey.Room, walls []plan.Wall) {
	s.Least = least(walls)
	for i, w := range walls {
		s.Holds = append(s.Holds, holds(room, i, w)...)
	}
	s.Reasons = reasons(s, room, walls)
}

// least is the first piece with the smallest share among the cut ones.
func least(walls []plan.Wall) plan.Least {
	best := plan.Least{Share: piece.Share{Num: 1, Den: 1}}
	for i, w := range walls {
		for _, p := range w.Pieces {
			if !p.Whole && p.Share.Less(best.Share) {
				best = plan.Least{Wall: i, Piece: p.ID, Size: p.Least, Share: p.Share}
			}
		}
	}
	return best
}

func reasons(s *plan.Setout, room survey.Room, walls []plan.Wall) []string {
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
	if s.Short {
		out = append(out, "So much is free in this room that only the most promising course lines were tried. Pin a mark or measure one, and the rest is searched.")
	}
	if s.Loss != "" {
		out = append(out, s.Loss)
	}
	return out
}

// because tells what decided between the chosen start and the best of the
// classic ones on a wall.
func because(room survey.Room, w plan.Wall) string {
	x := w.Start.X.Tape(room.Units)
	where := "a joint"
	if w.Start.OnTile {
		where = "the middle of a tile"
	}
	said := fmt.Sprintf("plan.Wall %s starts with %s at %s", w.Found.Name, where, x)
	if w.Start.Pinned {
		if w.Found.Set != nil {
			return said + ", as it is set."
		}
		return said + ", as pinned."
	}
	best := w.Start.Classic[len(w.Start.Classic)-1]
	for _, c := range w.Start.Classic[:len(w.Start.Classic)-1] {
		said += fmt.Sprintf("; %s would give %s", c.Name, against(c, best))
	}
	return said + "."
}

// against says how a start compares with the chosen one.
func against(c, best plan.Classic) string {
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

// doubts tell how far each measured length may be wrong, with the set-out as it
// is, before a sliver appears along its boundary: the wall's width at its right
// end, the drop to each base, the rise to a ceiling. From the pieces that the
// boundary cuts: a piece may shrink to the sliver limit, or grow until what
// comes after the next joint is more than sealant fills.
func holds(room survey.Room, wall int, w plan.Wall) []plan.Hold {
	var out []plan.Hold
	add := func(what string, measured length.Length, side plane.Side, level bool) {
		if shrink, grow, found := slack(room, w, side, level); found {
			out = append(out, plan.Hold{What: what, Wall: wall, Measured: measured, From: measured - shrink, To: measured + grow})
		}
	}
	f := w.Found
	add("width of "+f.Name, f.Width, survey.SideRight, false)
	for i, b := range f.Base {
		add("drop to the "+string(b.Meets)+" under "+f.Name, -highest(b.Readings), survey.SideBase+plane.Side(i), true)
	}
	if f.Head.Meets {
		add("rise to the ceiling over "+f.Name, -highest(negated(f.Head.Readings)), survey.SideHead, true)
	}
	return out
}

func highest(readings []survey.Reading) length.Length {
	top := readings[0].Value
	for _, r := range readings {
		top = max(top, r.Value)
	}
	return top
}

func negated(readings []survey.Reading) []survey.Reading {
	out := make([]survey.Reading, len(readings))
	for i, r := range readings {
		out[i] = survey.Reading{At: r.At, Value: -r.Value}
	}
	return out
}

// slack is how far a boundary may move in and out before one of the pieces it
// cuts becomes a sliver, or another follows it.
func slack(room survey.Room, w plan.Wall, side plane.Side, level bool) (shrink, grow length.Length, found bool) {
	tile := room.Tile.Width
	if level {
		tile = room.Tile.Height
	}
	seal := length.Length(0)
	if b := w.Shape.Sides[side]; b.Meets {
		seal = room.Sealant - b.Gap
	}
	for _, p := range w.Pieces {
		if !slices.Contains(p.Cuts, side) {
			continue
		}
		size := p.Wide
		if level {
			size = p.High
		}
		in, out := max(0, size-piece.SliverLimit(room, tile)), tile-size+room.Joint+seal
		if !found {
			shrink, grow, found = in, out, true
		}
		shrink, grow = min(shrink, in), min(grow, out)
	}
	return shrink, grow, found
}
