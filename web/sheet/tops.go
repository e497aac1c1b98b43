package sheet

import (
	"coursewright/web/drawing"
)

// withTop lays a wall and its top on one leaf, and tells whether there is a scale at which
// that can be read: with the wall's list as large as it fits there, else with all lists
// in smaller text.
func (b *book) withTop(wall int, below, beside table) bool {
	large := func(f *flow, t table) bool { return f.holds(t, 0, 0, wall) }
	if b.withTopAt(wall, below, beside, large) {
		return true
	}
	for _, percent := range percents[1:] {
		smaller := func(f *flow, t table) bool {
			f.percent = percent
			return f.high(t) <= f.left()
		}
		if b.withTopAt(wall, below, beside, smaller) {
			return true
		}
	}
	return false
}

// withTopAt does so in the text that sized gives to the wall's list, where it fits.
func (b *book) withTopAt(wall int, below, beside table, sized func(*flow, table) bool) bool {
	before, later := b.mark(), b.later
	for _, scale := range ladder(b.plan.Room.Units)[:nearScales+2] {
		for _, l := range lies(scale)[:3] {
			t := below
			if l.beside {
				t = beside
			}
			f := b.wallLeaf(wall, l)
			if f == nil || !sized(f, t) {
				continue
			}
			b.leaves = append(b.leaves, f.leaf)
			f.table(t)
			f.findings(wall)
			if !l.wide {
				f.under()
			}
			if f.insides(wall); len(b.leaves) == before.leaves+1 && len(b.later) == len(later) {
				return true
			}
			b.back(before)
			b.later = later
		}
	}
	return false
}

// under goes on under a drawing and the list beside it, as broad as the leaf.
func (f *flow) under() {
	if f.foot > 0 {
		lo, _ := f.leaf.area()
		f.y, f.lo.X, f.foot = max(f.y, f.foot), lo.X, 0
	}
}

// underDrawing is what is left of a leaf under the drawing at the left of a list.
func (f *flow) underDrawing() *flow {
	out := *f
	corner, _ := f.leaf.area()
	out.lo, out.hi, out.y, out.foot = corner, drawing.Point{X: f.lo.X - listGap, Y: f.hi.Y}, f.foot, 0
	return &out
}

// listBeside puts what is folded out on what is left of the leaf with its list beside it, at
// the largest scale that leaves room for it, and tells whether there is one.
func (f *flow) listBeside(u unfolded, scales []drawing.Scale) bool {
	t := f.book.besideCuts(u)
	for _, scale := range scales {
		s := u.draw(drawing.Options{Sheet: true, Scale: scale})
		list := *f
		list.lo.X += s.Width + listGap
		if s.Height+small.leading() > f.left() || list.hi.X-list.lo.X < leastList || list.high(t) > f.left() {
			continue
		}
		f.lay(drawing.Point{X: f.lo.X, Y: f.y}, s)
		f.text(drawing.Point{X: f.lo.X + s.Width/2, Y: f.y + s.Height + small.size}, small.to(drawing.Middle), f.ownScale(scale))
		list.table(t)
		f.y = max(f.y+s.Height+small.leading()+1000, list.y)
		return true
	}
	return false
}

// ownScale says at what scale something is drawn, where the leaf's block does not.
func (f *flow) ownScale(scale drawing.Scale) string {
	if scale == f.scale {
		return ""
	}
	return "drawn at " + scaleText(scale, f.book.plan.Room.Units)
}

// besideCuts is the cut list of what is folded out, narrow: the size over its numbers.
func (b *book) besideCuts(u unfolded) table {
	t := narrowCuts(nil, "", b.inMillimetres())
	t.rows = nil
	for _, r := range b.insideCuts(u).rows {
		face, numbers, size, note := r.cells[0], r.cells[1], r.cells[2], r.cells[3]
		if numbers != "" {
			face += " " + numbers
		}
		if note != "" {
			face = note + "\n" + face
		}
		t.rows = append(t.rows, row{strong: size, cells: append([]string{face}, r.cells[4:]...)})
	}
	t.shareOutNarrow()
	return t
}
