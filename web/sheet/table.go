package sheet

import (
	"slices"

	"coursewright/web/drawing"
)

// table is rows under named columns. A row that does not fit is moved to the
// next leaf, where the names are repeated.
type table struct {
	columns []column
	rows    []row
	text    style // of the cells; body if it has no size
}

type column struct {
	name  string
	share drawing.Micron // of the width
	bold  bool
	right bool // figures stand at the right
	box   bool // a box to tick
	blank bool // a box to write in
}

// row is one line of cells, and a picture in one of its columns if it has one.
type row struct {
	cells   []string
	strong  string                              // stands over the first cell, in bold; that cell then goes on to the last column
	note    bool                                // the first cell goes over all columns, and nothing is to tick
	picture func(l *leaf, lo, hi drawing.Point) // draws between two corners
	at      int                                 // the picture's column
}

const (
	pictureHigh = 25 * mmPaper
	blankHigh   = 7000
	padding     = 900
	figureGap   = 2600         // from figures at the right of a column to the next
	mostLines   = 24           // of one row; what is longer goes on in the next
	tableGap    = 2000         // under a table
	leastTable  = 20 * mmPaper // of a leaf on which a table is begun
)

// room is how wide the text of a column may be, from its left to its right edge.
func (c column) room(from, to drawing.Micron) drawing.Micron { return to - from - padding - c.after() }

// after is what a column leaves bare at its right.
func (c column) after() drawing.Micron {
	if c.right {
		return figureGap
	}
	return padding
}

// table writes a table.
func (f *flow) table(t table) {
	if t.text.size == 0 {
		t.text = body
	}
	t.text = f.of(t.text)
	xs := f.columns(t.columns)
	f.need(min(leastTable, f.high(t)))
	f.names(t, xs)
	for _, r := range t.rows {
		for {
			lines, rest := t.lines(r, xs)
			high := t.high(r, lines)
			if f.left() < high {
				f.turn()
				f.names(t, xs)
			}
			f.row(t, r, lines, xs, high)
			if rest == nil {
				break
			}
			r = row{cells: rest}
		}
	}
	f.y += tableGap
}

// abreast writes tables under each other beside a first one, which is so many hundredths of the breadth wide; all under
// each other where these or that are longer than the leaf.
func (f *flow) abreast(share drawing.Micron, first table, others ...table) {
	if !f.fitAbreast(share, first, others...) {
		for _, t := range append([]table{first}, others...) {
			f.table(t)
		}
		return
	}
	left, right := f.halves(share)
	left.table(first)
	for _, t := range others {
		right.table(t)
	}
	f.y = max(left.y, right.y)
}

// fitAbreast tells whether tables beside a first one, and that, are no longer than the leaf.
func (f *flow) fitAbreast(share drawing.Micron, first table, others ...table) bool {
	left, right := f.halves(share)
	var high drawing.Micron
	for _, t := range others {
		high += right.high(t)
	}
	return max(left.high(first), leastTable) <= f.left() && high <= f.left()
}

// halves are two flows beside each other, the first so many hundredths of the breadth wide.
func (f *flow) halves(share drawing.Micron) (left, right *flow) {
	const gap = 8 * mmPaper
	l, r, middle := *f, *f, f.lo.X+(f.hi.X-f.lo.X)*share/100
	l.hi.X, r.lo.X = middle-gap/2, middle+gap/2
	return &l, &r
}

// high is how much room a table takes without a break.
func (f *flow) high(t table) drawing.Micron {
	if t.text.size == 0 {
		t.text = body
	}
	t.text = f.of(t.text)
	xs := f.columns(t.columns)
	sum := f.namesHigh(t, xs) + tableGap
	for _, r := range t.rows {
		lines, _ := t.lines(r, xs)
		sum += t.high(r, lines)
	}
	return sum
}

// namesHigh is how much room the names of the columns take.
func (f *flow) namesHigh(t table, xs []drawing.Micron) drawing.Micron {
	s, most := f.of(columnName), 1
	for i, c := range t.columns {
		most = max(most, len(s.wrap(c.name, c.room(xs[i], xs[i+1]))))
	}
	return drawing.Micron(most)*s.leading() + 1000
}

var columnName = style{size: 3000, colour: drawing.Grey}

// columns gives where each column begins, and where the last ends.
func (f *flow) columns(cs []column) []drawing.Micron {
	var sum drawing.Micron
	for _, c := range cs {
		sum += c.share
	}
	lo, _ := f.area()
	xs, at := []drawing.Micron{lo.X}, drawing.Micron(0)
	for _, c := range cs {
		at += c.share
		xs = append(xs, lo.X+f.breadth()*at/sum)
	}
	return xs
}

// names writes the names of the columns over a line.
func (f *flow) names(t table, xs []drawing.Micron) {
	s := f.of(columnName)
	for i, c := range t.columns {
		f.cell(c, s, s.wrap(c.name, c.room(xs[i], xs[i+1])), xs[i], xs[i+1])
	}
	f.y += f.namesHigh(t, xs)
	f.line(ink(drawing.Black, 500), drawing.Point{X: xs[0], Y: f.y}, drawing.Point{X: xs[len(xs)-1], Y: f.y})
}

// lines breaks the cells of a row into lines, and gives the cells that go on
// in another row, or nil.
func (t table) lines(r row, xs []drawing.Micron) (lines [][]string, rest []string) {
	if r.note {
		return [][]string{t.text.wrap(r.cells[0], xs[len(xs)-1]-xs[0]-2*padding)}, nil
	}
	for i, text := range r.cells {
		wide := t.columns[i].room(xs[i], xs[i+1])
		if i == 0 && r.strong != "" {
			lines = append(lines, t.bold().wrap(r.strong, t.strongRoom(r, xs)))
			continue
		}
		all := t.style(i).wrap(text, wide)
		if len(all) > mostLines {
			if rest == nil {
				rest = make([]string, len(r.cells))
			}
			for _, line := range all[mostLines:] {
				rest[i] += line + " "
			}
			rest[i] = rest[i][:len(rest[i])-1]
			all = all[:mostLines]
		}
		lines = append(lines, all)
	}
	if r.strong != "" {
		lines[0] = append(lines[0], t.under(r, lines, xs)...)
	}
	return lines, rest
}

// strongRoom is how wide a strong text may be: up to the next column of its row in which something stands.
func (t table) strongRoom(r row, xs []drawing.Micron) drawing.Micron {
	end := 1
	for end < len(r.cells)-1 && r.cells[end] == "" {
		end++
	}
	return t.columns[0].room(xs[0], xs[end])
}

// under is the text under a strong one: over all columns but the last, and so below
// what stands in them.
func (t table) under(r row, beside [][]string, xs []drawing.Micron) []string {
	most := 0
	for _, l := range beside {
		most = max(most, len(l))
	}
	return append(make([]string, most-len(beside[0])), t.style(0).wrap(r.cells[0], xs[len(xs)-2]-xs[0]-2*padding)...)
}

func (t table) style(i int) style {
	s := t.text
	s.bold = t.columns[i].bold
	return s
}

func (t table) bold() style {
	s := t.text
	s.bold = true
	return s
}

func (t table) high(r row, lines [][]string) drawing.Micron {
	most := drawing.Micron(0)
	if slices.ContainsFunc(t.columns, func(c column) bool { return c.blank }) {
		most = blankHigh * t.text.size / plain.size
	}
	for _, l := range lines {
		most = max(most, drawing.Micron(len(l))*t.text.leading())
	}
	if r.picture != nil {
		most = max(most, pictureHigh)
	}
	return most + 2*padding
}

func (f *flow) row(t table, r row, lines [][]string, xs []drawing.Micron, high drawing.Micron) {
	f.y += padding
	for i, l := range lines {
		strong := 0
		if i == 0 && r.strong != "" {
			strong = len(t.bold().wrap(r.strong, t.strongRoom(r, xs)))
			f.cell(t.columns[i], t.bold(), l[:strong], xs[i], xs[i+1])
		}
		down := drawing.Micron(strong) * t.text.leading()
		f.y += down
		f.cell(t.columns[i], t.style(i), l[strong:], xs[i], xs[i+1])
		f.y -= down
		if t.columns[i].blank {
			f.box(ink(drawing.Black, 350), drawing.Point{X: xs[i] + padding, Y: f.y}, drawing.Point{X: xs[i+1] - padding, Y: f.y + high - 2*padding})
		}
		if side := t.text.size; t.columns[i].box && !r.note {
			at := drawing.Point{X: xs[i+1] - padding - side, Y: f.y + (high-2*padding-side)/2}
			f.box(ink(drawing.Black, 350), at, drawing.Point{X: at.X + side, Y: at.Y + side})
		}
	}
	if r.picture != nil {
		r.picture(f.leaf, drawing.Point{X: xs[r.at], Y: f.y}, drawing.Point{X: xs[r.at+1], Y: f.y + high - 2*padding})
	}
	f.y += high - padding
	f.line(ink(drawing.Grey, 180), drawing.Point{X: xs[0], Y: f.y}, drawing.Point{X: xs[len(xs)-1], Y: f.y})
}

func (f *flow) cell(c column, s style, lines []string, from, to drawing.Micron) {
	at := drawing.Point{X: from + padding, Y: f.y + s.size}
	if c.right {
		at.X, s.anchor = to-c.after(), drawing.Right
	}
	for _, line := range lines {
		f.text(at, s, line)
		at.Y += s.leading()
	}
}
