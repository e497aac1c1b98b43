package sheet

import (
	"slices"

	"coursewright/layout/cuts"
)

// sawn is what stands in one row of the printed schedule: a line, or several that are the same cut for the saw. Joined
// they are on paper only: everywhere else each keeps its number.
type sawn struct {
	cuts.Group          // the first line, with the pieces and places of all
	ids        []string // of the lines
	mirrored   int      // how many of the pieces are mirrored, cut at the same settings from the other end of the tile
}

// rows are the lines of the schedule in their order, each with those that are the same cut.
func (b *book) rows() (all []sawn) {
	for _, g := range b.cuts.Groups {
		i := slices.IndexFunc(all, func(s sawn) bool { return b.sameCut(s.Group, g) })
		if i < 0 {
			i, all = len(all), append(all, sawn{Group: g})
			all[i].Count, all[i].Pieces, all[i].Places = 0, nil, nil
		}
		all[i].add(g)
	}
	return all
}

func (s *sawn) add(g cuts.Group) {
	if len(s.ids) > 0 && mirrored(s.Group, g) {
		s.mirrored += g.Count
	}
	s.ids, s.Count, s.Pieces, s.Spread = append(s.ids, g.ID), s.Count+g.Count, slices.Concat(s.Pieces, g.Pieces), max(s.Spread, g.Spread)
	for _, p := range g.Places {
		i := slices.IndexFunc(s.Places, func(q cuts.Place) bool { return q.Wall == p.Wall && q.Side == p.Side })
		if i < 0 {
			i, s.Places = len(s.Places), append(s.Places, cuts.Place{Wall: p.Wall, Side: p.Side})
		}
		s.Places[i].Pieces = slices.Concat(s.Places[i].Pieces, p.Pieces)
	}
}

// sameCut tells whether two lines are one cut for the saw: of one tile that may be turned, at the same settings, and the
// same piece or its mirror image, however much larger the places of some are. What is marked, notched or bored is not.
func (b *book) sameCut(a, c cuts.Group) bool {
	switch {
	case !b.opts.Saw.Turn || b.plan.Room.Grained(a.Of) || a.How != cuts.Fence || c.How != cuts.Fence,
		a.Tile != c.Tile || a.Of != c.Of || a.Kind != c.Kind,
		b.marked(a) || b.marked(c) || len(a.Size.Notches)+len(a.Size.Holes)+len(c.Size.Notches)+len(c.Size.Holes) > 0:
		return false
	}
	return rectangular(a) && rectangular(c) && equal(a.Size, c.Size) || a.Outline == nil && equal(flipped(a.Size), c.Size) && slices.Equal(flippedSides(a.Cut), sides(c.Cut))
}

// mirrored tells which of two lines that are the same cut are mirror images.
func mirrored(a, c cuts.Group) bool {
	return !rectangular(a) || a.Kind == "rip, cross cut" && !slices.Equal(sides(a.Cut), sides(c.Cut))
}

// rectangular tells whether a piece is a rectangle out of one.
func rectangular(g cuts.Group) bool {
	return (g.Kind == "cross cut" || g.Kind == "rip" || g.Kind == "rip, cross cut") && !g.Slanted() && !g.Pointed()
}

// equal compares sizes without notches and holes.
func equal(a, c cuts.Size) bool {
	return a.Width == c.Width && a.Height == c.Height && a.Left == c.Left && a.Right == c.Right && a.Bottom == c.Bottom && a.Top == c.Top
}

func flipped(s cuts.Size) cuts.Size {
	s.Left, s.Right = s.Right, s.Left
	return s
}

func sides(cut []string) []string { return slices.Sorted(slices.Values(cut)) }

// flippedSides are the sides of the mirror image.
func flippedSides(cut []string) []string {
	out := slices.Clone(cut)
	for i, s := range cut {
		switch s {
		case "left":
			out[i] = "right"
		case "right":
			out[i] = "left"
		}
	}
	return sides(out)
}
