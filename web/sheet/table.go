package sheet

import "coursewright/web/drawing"

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
}

// row is one line of cells, and a picture in one of its columns if it has one.
type row struct {
	cells   []string
	picture func(l *leaf, lo, hi drawing.Point) // draws between two corners
	at      int                                 // the picture's column
}

const (
	pictureHigh = 25 * mmPaper
	padding     = 1200
	mostLines   = 24 // of one row; what is longer goes on in the next
)

// table writes a table.
func (f *flow) table(t table) {
	if t.text.size == 0 {
		t.text = body
	}
	xs := f.columns(t.columns)
	f.need(40 * mmPaper)
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
	f.y += 3000
}

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
	s := style{size: 3000, bold: true, colour: drawing.Grey}
	most := 1
	for i, c := range t.columns {
		lines := s.wrap(c.name, xs[i+1]-xs[i]-2*padding)
		most = max(most, len(lines))
		f.cell(c, s, lines, xs[i], xs[i+1])
	}
	f.y += drawing.Micron(most)*s.leading() + 1000
	f.line(ink(drawing.Black, 500), drawing.Point{X: xs[0], Y: f.y}, drawing.Point{X: xs[len(xs)-1], Y: f.y})
}

// lines breaks the cells of a row into lines, and gives the cells that go on
// in another row, or nil.
func (t table) lines(r row, xs []drawing.Micron) (lines [][]string, rest []string) {
	for i, text := range r.cells {
		all := t.style(i).wrap(text, xs[i+1]-xs[i]-2*padding)
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
	return lines, rest
}

func (t table) style(i int) style {
	s := t.text
	s.bold = t.columns[i].bold
	return s
}

func (t table) high(r row, lines [][]string) drawing.Micron {
	most := drawing.Micron(0)
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
		f.cell(t.columns[i], t.style(i), l, xs[i], xs[i+1])
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
		at.X, s.anchor = to-padding, drawing.Right
	}
	for _, line := range lines {
		f.text(at, s, line)
		at.Y += s.leading()
	}
}
