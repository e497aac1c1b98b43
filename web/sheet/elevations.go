package sheet

import (
	"slices"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/web/drawing"
)

// elevations makes one drawing of each wall at the largest scale of the ladder
// that fits, with its findings, and then its cut list in setting order.
func (b *book) elevations() {
	order := make([]int, len(b.plan.Walls))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int { return b.plan.Walls[i].Found.Order - b.plan.Walls[j].Found.Order })
	groups := b.groups()
	for _, i := range order {
		b.elevation(i)
		w := b.plan.Walls[i]
		f := b.flow(subject{title: "Cut list", wall: wallText(w.Found)}, false)
		f.words(plain, "In setting order: course by course from the bottom, each from left to right. Sizes are the width and the height of the piece; "+
			"the number in brackets is its row in the cut schedule.")
		f.table(b.courses(w, groups))
	}
}

// elevation lays one wall on a sheet of its own, upright or wide.
func (b *book) elevation(i int) {
	for _, scale := range ladder(b.plan.Room.Units) {
		s := drawing.Elevation(b.plan, i, drawing.Options{Sheet: true, Scale: scale})
		for _, wide := range []bool{false, true} {
			l := &leaf{subject: subject{title: "Elevation", wall: wallText(b.plan.Walls[i].Found), scale: scale}, size: b.opts.Paper.lie(wide)}
			lo, hi := l.area()
			if s.Width <= hi.X-lo.X && s.Height <= hi.Y-lo.Y {
				l.lay(lo, s)
				b.leaves = append(b.leaves, l)
				f := &flow{leaf: l, book: b, wide: wide, y: lo.Y + s.Height + 2000}
				f.findings(i)
				return
			}
		}
	}
	f := b.flow(subject{title: "Elevation", wall: wallText(b.plan.Walls[i].Found)}, false)
	f.words(body, "This wall is too large to be drawn on "+b.opts.Paper.Name+". Take A3 or Tabloid, or look at it on the screen.")
	f.findings(i)
}

// groups finds the row of the cut schedule of every cut piece.
func (b *book) groups() map[string]cuts.Group {
	of := map[string]cuts.Group{}
	for _, g := range b.cuts.Groups {
		for _, id := range g.Pieces {
			of[id] = g
		}
	}
	return of
}

// courses lists a wall course by course: how many tiles are whole, and every
// piece still to be cut. Courses after each other that need no cut share a row.
func (b *book) courses(w layout.Wall, groups map[string]cuts.Group) table {
	name := "course"
	if b.plan.Room.Bond.Plumb {
		name = "column"
	}
	t := table{columns: []column{{name: name, share: 20, bold: true}, {name: "whole", share: 16}, {name: "cut pieces from left to right", share: 120}}, text: plain}
	var last entry
	for _, e := range b.entries(w, groups) {
		if e.text == last.text && (e.text == "" || e.text == standing) && e.whole == last.whole {
			last.to = e.to
			t.rows[len(t.rows)-1] = last.row()
			continue
		}
		last = e
		t.rows = append(t.rows, e.row())
	}
	return t
}

// standing is what a cut list says of a course that is set already.
const standing = "set already"

// entry is a row of the cut list: one course, or several without cuts.
type entry struct {
	from, to, whole int
	text            string
}

func (e entry) row() row {
	courses, whole := number(e.from), number(e.whole)
	if e.to > e.from {
		courses, whole = held(courses+" to "+number(e.to)), held(whole+" each")
	}
	return row{cells: []string{courses, whole, e.text}}
}

// entries makes one entry for each course of a wall.
func (b *book) entries(w layout.Wall, groups map[string]cuts.Group) []entry {
	var out []entry
	for first := 0; first < len(w.Pieces); {
		e := entry{from: w.Pieces[first].Course, to: w.Pieces[first].Course}
		var all runs
		set, end := w.Found.Stands(w.Pieces[first].Row), first
		for ; end < len(w.Pieces) && w.Pieces[end].Course == e.from; end++ {
			if p := w.Pieces[end]; p.Whole {
				e.whole++
				all = all.gap()
			} else {
				all = all.add(p.ID, b.cutText(p, groups[p.ID]))
			}
		}
		if e.text = all.text(); set {
			e.text = standing
		}
		out = append(out, e)
		first = end
	}
	return out
}

// cutText is a cut piece's size and group.
func (b *book) cutText(p piece.Piece, g cuts.Group) string {
	s := g.Size
	text := b.fine(s.Width) + " × " + b.heights(s.Left, s.Right, s.Height)
	if p.Kind&(piece.Notch|piece.Hole) != 0 {
		text += " " + g.Kind
	}
	return text + " (" + g.ID + ")"
}

// heights writes one height, or both of a taper. A side without a height of
// its own, as at a point, leaves the whole.
func (b *book) heights(left, right, whole length.Length) string {
	if left == right || left == 0 || right == 0 {
		return b.fine(whole)
	}
	return b.fine(left) + " left, " + b.fine(right) + " right"
}
