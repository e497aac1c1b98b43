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
			"the number after C is its row in the cut schedule.")
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
// cut piece.
func (b *book) courses(w layout.Wall, groups map[string]cuts.Group) table {
	name := "course"
	if b.plan.Room.Bond.Plumb {
		name = "column"
	}
	t := table{columns: []column{{name: name, share: 14, bold: true}, {name: "whole", share: 13}, {name: "cut pieces from left to right", share: 120}}, text: plain}
	for first := 0; first < len(w.Pieces); {
		whole, text, end := 0, "", first
		for ; end < len(w.Pieces) && w.Pieces[end].Course == w.Pieces[first].Course; end++ {
			p := w.Pieces[end]
			if p.Whole {
				whole++
				continue
			}
			if text != "" {
				text += ";  "
			}
			text += b.cutText(p, groups[p.ID])
		}
		t.rows = append(t.rows, row{cells: []string{number(w.Pieces[first].Course), number(whole), text}})
		first = end
	}
	return t
}

// cutText is a cut piece in one unbroken word: its id, its group and its size.
func (b *book) cutText(p piece.Piece, g cuts.Group) string {
	s := g.Size
	text := p.ID + " " + g.ID + " " + b.fine(s.Width) + " × " + b.heights(s.Left, s.Right, s.Height)
	if p.Kind&(piece.Notch|piece.Hole) != 0 {
		text += " " + g.Kind
	}
	return held(text)
}

// heights writes one height, or both of a taper. A side without a height of
// its own, as at a point, leaves the whole.
func (b *book) heights(left, right, whole length.Length) string {
	if left == right || left == 0 || right == 0 {
		return b.fine(whole)
	}
	return b.fine(left) + " left, " + b.fine(right) + " right"
}
