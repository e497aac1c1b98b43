package sheet

import (
	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/plan"
)

// stripOn is the strip that stands in an opening of a wall, or nil.
func stripOn(w layout.Wall, opening int) *plan.Strip {
	for i := range w.Strips {
		if w.Strips[i].Opening == opening {
			return &w.Strips[i]
		}
	}
	return nil
}

// stripMarks says where a strip stands: its own tile, the field beside it, and a joint
// line of its rows to begin with.
func (b *book) stripMarks(w layout.Wall, opening int, add func(mark, x, y string)) {
	s := stripOn(w, opening)
	if s == nil {
		return
	}
	o, e := w.Found.Openings[opening], w.Start.Placed.Openings[opening]
	y := "from the base"
	if !o.Strip.Low {
		y = held(b.signed(s.Box.Bottom))
	}
	if o.Strip.High {
		y += " to the head"
	} else {
		y += " to " + held(b.signed(s.Box.Top))
	}
	add("strip "+o.Name, held(b.bareTape(s.Box.Left)+" to ")+b.bareTape(s.Box.Right), y)
	add("field beside it", "ends "+held(b.bareTape(e.Left))+", begins "+held(b.bareTape(e.Right)), "")
	if row, found := firstRow(s); found {
		add("first full row of it", "", "bottom "+held(b.signed(row)))
	}
}

// firstRow is the bottom edge of the lowest row in which a whole tile of a strip stands.
func firstRow(s *plan.Strip) (y length.Length, found bool) {
	for _, p := range s.Pieces {
		if p.Whole && (!found || p.Tile.Bottom < y) {
			y, found = p.Tile.Bottom, true
		}
	}
	return y, found
}

// stripNotches marks on the pole where a strip begins and ends, where that is not at
// base or head.
func stripNotches(w layout.Wall, opening int, add func(length.Length, string)) {
	s, o := stripOn(w, opening), w.Found.Openings[opening]
	if s == nil {
		return
	}
	if !o.Strip.Low {
		add(s.Box.Bottom, o.Name+" bottom")
	}
	if row, found := firstRow(s); found && row != s.Box.Bottom {
		add(row, o.Name+" first row")
	}
	if !o.Strip.High {
		add(s.Box.Top, o.Name+" top")
	}
}

// stripEntries are the rows of a wall's cut list for its strips.
func (b *book) stripEntries(w layout.Wall) []entry {
	var all []entry
	for k := range w.Strips {
		s := &w.Strips[k]
		for i, g := range b.cuts.Groups {
			for _, p := range g.Places {
				if p.Wall != s.Found.Letter {
					continue
				}
				e := entry{where: "strip " + w.Found.Openings[s.Opening].Name + ", " + placeText(p.Side), lines: []int{i + 1}, pieces: len(p.Pieces), alone: b.alone(g), marked: b.marked(g)}
				e.big, e.small = b.fence(g)
				all = append(all, e)
			}
		}
	}
	return drawnTogether(all)
}
