package setout

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// open places one free opening where the rows it crosses come out best, marks
// those rows as counted and adds them to the total.
func (f *field) open(i int, line, edge, along length.Length, h headed, whole part, tallies []piece.Tally, inside []int, p *survey.Placed, total *piece.Tally) {
	o := f.found.Openings[i]
	levels, _ := f.level(o, line)
	plumbs, _ := f.upright(o, edge)
	acrosses, alongs := levels, plumbs
	if f.plumb {
		acrosses, alongs = plumbs, levels
	}
	low, high := outerSpan(acrosses)
	var reach []int
	for k, c := range h.courses {
		if inside[k] == 0 && h.has(c) && c.high > low && c.low < high {
			reach = append(reach, k)
		}
	}
	var best piece.Tally
	first := true
	apart := f.anyApart(i, acrosses, alongs, *p)
	for _, al := range alongs {
		split := map[int]piece.Tally{}
		for _, ac := range acrosses {
			if apart && f.runsInto(i, f.edges(ac, al), *p) {
				continue
			}
			t := piece.NewTally()
			for _, k := range reach {
				c := h.courses[k]
				if c.low >= ac[1] || c.high <= ac[0] {
					t.Plus(tallies[c.class])
					continue
				}
				if c.low < ac[0] || c.high > ac[1] {
					t.Plus(f.carved(&h.classes[c.class], c, along, whole, f.edges(ac, al), i))
					continue
				}
				s, there := split[c.class]
				if !there {
					s = f.splitTally(&h.classes[c.class], along, whole, al)
					split[c.class] = s
				}
				t.Plus(s)
			}
			if first || meritOf(t, 0, 0, f.room.Tile.Width).Better(meritOf(best, 0, 0, f.room.Tile.Width)) {
				best, first = t, false
				p.Openings[i] = f.edges(ac, al)
			}
		}
	}
	for _, k := range reach {
		inside[k] = i + 1
	}
	if len(reach) > 0 {
		total.Plus(best)
	}
}

// anyApart tells whether a free opening can stand clear of the others at all.
func (f *field) anyApart(i int, acrosses, alongs spans, p survey.Placed) bool {
	for _, al := range alongs {
		for _, ac := range acrosses {
			if !f.runsInto(i, f.edges(ac, al), p) {
				return true
			}
		}
	}
	return false
}

// runsInto tells whether an opening there overlaps another one that has its
// place: a measured one, or a free one placed before it.
func (f *field) runsInto(i int, e survey.Edges, p survey.Placed) bool {
	for j, o := range f.found.Openings {
		if j == i || j > i && slices.Contains(f.free, j) {
			continue
		}
		b := box(p.Openings[j])
		if o.Kind == "pipe" {
			reach := o.Diameter.Half() + survey.PipeClear(f.room.Units)
			b = plane.Rect{Left: o.At - reach, Bottom: o.Up - reach, Right: o.At + reach, Top: o.Up + reach}
		}
		if box(e).Overlaps(b) {
			return true
		}
	}
	return false
}

func box(e survey.Edges) plane.Rect {
	return plane.Rect{Left: e.Left, Bottom: e.Bottom, Right: e.Right, Top: e.Top}
}

// splitTally counts a row on both sides of an opening.
func (f *field) splitTally(k *class, along length.Length, whole part, hole [2]length.Length) piece.Tally {
	t := f.tally(k, along, part{whole.from, hole[0], whole.left, 0})
	t.Plus(f.tally(k, along, part{hole[1], whole.to, 0, whole.right}))
	return t
}

// carved counts a row that an opening takes a part of the height of.
func (f *field) carved(k *class, c course, along length.Length, whole part, e survey.Edges, opening int) piece.Tally {
	hole := box(e)
	if f.plumb {
		hole = hole.Transposed()
	}
	// Rows of one class stand alike: the hole goes where the class was read.
	hole.Bottom, hole.Top = hole.Bottom-c.low+k.row.Low, hole.Top-c.low+k.row.Low
	side := survey.SideBase + plane.Side(len(f.found.Base)+opening)
	*f.work += rowCut
	band := k.band.Trim(whole.from, whole.to, whole.left, whole.right).Less(hole, side)
	return band.Tally(k.at(along), f.rule)
}

func (f *field) edges(across, along [2]length.Length) survey.Edges {
	if f.plumb {
		return survey.Edges{Left: across[0], Bottom: along[0], Right: across[1], Top: along[1]}
	}
	return survey.Edges{Left: along[0], Bottom: across[0], Right: along[1], Top: across[1]}
}

func outerSpan(s spans) (low, high length.Length) {
	for i, x := range s {
		if i == 0 {
			low, high = x[0], x[1]
		}
		low, high = min(low, x[0]), max(high, x[1])
	}
	return low, high
}
