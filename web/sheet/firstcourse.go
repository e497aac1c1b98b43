package sheet

import (
	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/stages"
)

// firstCourse lists the tiles over the base one by one.
func (b *book) firstCourse() {
	f := b.flow(subject{title: "First course"}, false)
	f.words(body, "Each tile over the uneven base, from left to right; of many alike the first and the last. Cut its lower edge to the two heights, both measured down from its top edge, seen from the face. "+
		"The drop is how far the tile's lower corner stands under the level line."+b.said())
	for _, w := range b.plan.Walls {
		f.sub("Wall " + wallText(w.Found))
		t := b.overBase(w)
		if len(t.rows) == 0 && w.Found.Set != nil {
			f.words(body, "The first course of this wall is set already.")
			continue
		}
		t.rows = alike(t.rows)
		f.table(t)
	}
	f.cautions(atTheBase...)
}

func (b *book) overBase(w layout.Wall) table {
	t := table{columns: []column{{name: "piece", share: 29, bold: true}, {name: "left edge at", share: 26, right: true}, {name: "width", share: 22, right: true},
		{name: "height left", share: 23, bold: true, right: true}, {name: "height right", share: 23, bold: true, right: true},
		{name: "drop left", share: 25, right: true}, {name: "drop right", share: 25, right: true}, {name: "cut", share: 24}}, text: style{size: 4000}}
	in := stages.Input{Room: b.plan.Room, Walls: b.plan.Walls}
	for _, p := range w.Pieces {
		if !in.FirstCourse(w, p) || w.Found.Stands(p.Row) {
			continue
		}
		box := p.Face.Bounds()
		t.rows = append(t.rows, row{cells: []string{held(p.ID), b.bareTape(box.Left), b.down(box.Width()),
			b.down(upright(p.Face, box.Left)), b.down(upright(p.Face, box.Right)),
			b.bareTape(-lowest(p.Face, box.Left)), b.bareTape(-lowest(p.Face, box.Right)), p.Kind.String()}})
	}
	return t
}

// alike joins more than a few rows after each other that have the same width,
// heights and cut into one, from the first piece to the last.
func alike(rows []row) []row {
	same := func(a, b row) bool {
		return a.cells[2] == b.cells[2] && a.cells[3] == b.cells[3] && a.cells[4] == b.cells[4] && a.cells[7] == b.cells[7]
	}
	var out []row
	for from := 0; from < len(rows); {
		to := from
		for to+1 < len(rows) && same(rows[from], rows[to+1]) {
			to++
		}
		if to-from < few {
			out = append(out, rows[from:to+1]...)
		} else {
			r := rows[from]
			r.cells[0] = upTo(r.cells[0], rows[to].cells[0])
			r.cells[6] = rows[to].cells[6]
			out = append(out, r)
		}
		from = to + 1
	}
	return out
}

// down writes a size as the cut schedule shows it, rounded down so that the
// piece is never larger than its place.
func (b *book) down(l length.Length) string { return b.bare(l.FloorTo(b.plan.Room.Units.FineStep())) }

// upright is how high a face stands at x, one of its ends; where only one
// corner reaches it, as at a corner that leans, the height of the whole face.
func upright(face plane.Region, x length.Length) length.Length {
	low, top, found := length.Length(0), length.Length(0), false
	for _, ring := range face {
		for _, c := range ring {
			if c.X == x && !found {
				low, top, found = c.Y, c.Y, true
			}
			if c.X == x {
				low, top = min(low, c.Y), max(top, c.Y)
			}
		}
	}
	if low == top {
		return face.Bounds().Height()
	}
	return top - low
}

// bareTape writes a length as the tape shows it, millimetres without their unit.
func (b *book) bareTape(l length.Length) string {
	if u := b.plan.Room.Units; u == length.Metric {
		return l.Plain(u, u.Step())
	}
	return b.tape(l)
}

// said is what is said once where millimetres stand without their unit.
func (b *book) said() string {
	if b.plan.Room.Units == length.Metric {
		return " All figures are in mm."
	}
	return ""
}

// lowest is the height of a face's lowest corner at x, or of its lowest corner
// where none stands there.
func lowest(face plane.Region, x length.Length) length.Length {
	low, found := face.Bounds().Bottom, false
	for _, ring := range face {
		for _, c := range ring {
			if c.X == x && (!found || c.Y < low) {
				low, found = c.Y, true
			}
		}
	}
	return low
}
