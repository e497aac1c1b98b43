package sheet

import (
	"slices"

	"coursewright/layout/finding"
	"coursewright/web/drawing"
)

// elevations makes one sheet of each wall, in setting order: its drawing at the
// largest scale of the ladder that leaves room for its cut list.
func (b *book) elevations() {
	for _, i := range b.inOrder() {
		b.elevation(i)
	}
}

// inOrder lists the walls in setting order.
func (b *book) inOrder() []int {
	order := make([]int, len(b.plan.Walls))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int { return b.plan.Walls[i].Found.Order - b.plan.Walls[j].Found.Order })
	return order
}

// lie is how a drawing and its list lie on a sheet.
type lie struct {
	scale        drawing.Scale
	wide, beside bool // the paper on its long side; the list at the right of the drawing
}

const (
	leastList = 52 * mmPaper // how narrow a cut list may be beside a drawing
	listGap   = 4 * mmPaper
	named     = 5 // scales of the ladder with names of their own; smaller ones are for halls
)

// elevation lays one wall on a sheet: upright or wide, its list below or beside.
func (b *book) elevation(wall int) {
	below, beside := b.wallCuts(b.plan.Walls[wall], false), b.wallCuts(b.plan.Walls[wall], true)
	scales := ladder(b.plan.Room.Units)
	if b.plan.Walls[wall].Top != nil && b.withTop(wall, below, beside) {
		return
	}
	for i, scale := range scales {
		for _, l := range []lie{{scale, false, false}, {scale, true, true}, {scale, false, true}, {scale, true, false}} {
			f, t := b.wallLeaf(wall, l), below
			if l.beside {
				t = beside
			}
			if f != nil && (f.holds(t) || i > named) {
				b.leaves = append(b.leaves, f.leaf)
				f.table(t)
				f.findings(wall)
				f.insides(wall)
				return
			}
		}
		if i == named {
			b.apart(wall, below)
			return
		}
	}
	f := b.flow(subject{title: "Wall", wall: wallText(b.plan.Walls[wall].Found)}, false)
	f.words(body, "This wall is too large to be drawn on "+b.opts.Paper.Name+". Take A3 or Tabloid, or look at it on the screen.")
	f.findings(wall)
	f.insides(wall)
}

// withTop lays a wall and its top on one leaf, and tells whether there is a scale at
// which that can be read.
func (b *book) withTop(wall int, below, beside table) bool {
	before, later := b.mark(), b.later
	for _, scale := range ladder(b.plan.Room.Units)[:nearScales+2] {
		for _, l := range []lie{{scale, false, false}, {scale, true, true}, {scale, false, true}} {
			t := below
			if l.beside {
				t = beside
			}
			f := b.wallLeaf(wall, l)
			if f == nil || !f.holds(t) {
				continue
			}
			b.leaves = append(b.leaves, f.leaf)
			f.table(t)
			f.findings(wall)
			if f.insides(wall); len(b.leaves) == before.leaves+1 && len(b.later) == len(later) {
				return true
			}
			b.back(before)
			b.later = later
		}
	}
	return false
}

// holds finds a size of text at which a table fits on what is left of the leaf.
func (f *flow) holds(t table) bool {
	for _, f.percent = range percents {
		if f.high(t) <= f.left() {
			return true
		}
	}
	return false
}

// wallLeaf lays a drawing on a leaf of its own that is not yet in the book, and
// gives what is left of it to write on; nil where the drawing does not fit.
func (b *book) wallLeaf(wall int, l lie) *flow {
	sheet := &leaf{subject: subject{kind: b.now, title: "Wall", wall: wallText(b.plan.Walls[wall].Found), scale: l.scale}, size: b.opts.Paper.lie(l.wide)}
	lo, hi := sheet.area()
	o := drawing.Options{Sheet: true, Scale: l.scale}
	if !l.beside {
		o.Wide = hi.X - lo.X
	}
	s := drawing.Elevation(b.plan, wall, o)
	f := &flow{leaf: sheet, book: b, wide: l.wide, percent: 100, y: lo.Y, lo: lo, hi: hi}
	if s.Width > hi.X-lo.X || s.Height > hi.Y-lo.Y || l.beside && hi.X-lo.X-s.Width < leastList+listGap {
		return nil
	}
	sheet.lay(lo, s)
	if l.beside {
		f.lo.X += s.Width + listGap
		f.y += 12 * mmPaper
	} else {
		f.y += s.Height + 1000
	}
	return f
}

// apart gives a wall whose list finds no room beside its drawing two sheets.
func (b *book) apart(wall int, t table) {
	for _, scale := range ladder(b.plan.Room.Units) {
		for _, wide := range []bool{false, true} {
			if f := b.wallLeaf(wall, lie{scale, wide, false}); f != nil {
				b.leaves = append(b.leaves, f.leaf)
				sheet := *f.leaf
				sheet.title, f.leaf = "Cut list", &sheet
				f.turn()
				f.table(t)
				f.findings(wall)
				f.insides(wall)
				return
			}
		}
	}
}

// findings lists what stands on a drawing of a wall, by the number at its place,
// as far as there is room; the rest goes on to the sheet of findings.
func (f *flow) findings(wall int) {
	for i, x := range f.book.plan.Findings {
		if x.Wall != wall || x.Grade == finding.Caution {
			continue
		}
		text := x.Text
		if x.Do != "" {
			text += " " + x.Do
		}
		p := f.of(plain)
		if f.left() < drawing.Micron(len(p.wrap(text, f.breadth()-9000)))*p.leading()+p.size/3 {
			f.book.later = append(f.book.later, later{number(i + 1), wallText(f.book.plan.Walls[wall].Found) + ": " + text})
			continue
		}
		f.bullet(number(i+1), text)
	}
}

// later is a finding for which its own sheet had no room.
type later struct{ sign, text string }

// findingsLeft writes the findings that found no room on their own sheets on
// the first list with room for them, or on a sheet of their own.
func (b *book) findingsLeft() {
	if len(b.later) == 0 {
		return
	}
	write := func(f *flow) {
		f.sub("Findings, by their numbers on the walls")
		for _, l := range b.later {
			f.bullet(l.sign, l.text)
		}
	}
	for _, f := range b.flows {
		if b.roomFor(f, write) {
			write(f)
			return
		}
	}
	b.fitted(subject{title: "Findings"}, false, write)
}
