package sheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
)

const (
	barsHeight  = 9500
	rowHeight   = 8600
	blockHeight = barsHeight + rowHeight
)

// cell is one field of the title block: its share of the row's width.
type cell struct {
	share      drawing.Micron
	name, text string
}

// block draws the title block with its bars at the foot of a leaf.
func (b *book) block(l *leaf, n int) {
	top := l.size.Y - edge - blockHeight
	b.bars(l, top)
	l.fields(top+barsHeight, b.fields(l, n))
}

// fields are the cells of the title block.
func (b *book) fields(l *leaf, n int) []cell {
	room := b.plan.Room
	if l.kind == Measuring { // to be filled in by hand
		return []cell{{70, "job", ""}, {44, "measured by", ""}, {30, "on", ""}, {40, "tile, true size", ""}, {16, "sheet", fmt.Sprintf("%d of %d", n, len(b.leaves))}}
	}
	cells := []cell{{42, "job", room.Title}, {46, "level line, 0", b.levelLine()}, {38, "tile · joint", b.tile() + " · " + room.Joint.Fine(room.Units)},
		{20, "scale", scaleText(l.scale, room.Units)}, {32, "job " + b.opts.Hash + " · " + b.opts.Paper.Name, b.opts.Date.Format("2006-01-02")},
		{16, "sheet", fmt.Sprintf("%d of %d", n, len(b.leaves))}}
	if room.Guess() {
		cells = append(cells, cell{24, "GUESS", cmp.Or(b.opts.Measured, "not all measured")})
	}
	return cells
}

func (b *book) tile() string {
	t := b.plan.Room.Tile
	return b.bare(t.Width) + " × " + b.bare(t.Height)
}

// levelLine says where the level line is found again: over the first station
// of the wall set first.
func (b *book) levelLine() string {
	for i, w := range b.plan.Walls {
		if w.Found.Order == 0 {
			all := b.stations()
			s := all[slices.IndexFunc(all, func(s stages.Station) bool { return slices.Contains(s.Walls, i) })]
			return b.over(-s.Height) + " the " + string(s.Meets) + ", " + s.Name
		}
	}
	return "the line of the laser"
}

// over words a height: "38 1/2" over", "3" under", "at the height of".
func (b *book) over(up length.Length) string {
	switch {
	case up > 0:
		return b.tape(up) + " over"
	case up < 0:
		return b.tape(-up) + " under"
	}
	return "at the height of"
}

// wallText names a wall by letter and name.
func wallText(w survey.WallFound) string { return w.Letter + ", " + w.Name }

// fields draws one row of cells, as wide as their texts need and with what is left
// shared out. Where there is not room for all, the texts are made smaller; then
// the first, which is a title, gives way.
func (l *leaf) fields(y drawing.Micron, row []cell) {
	s := style{size: 3600, bold: true}
	wide, x := l.size.X-2*edge, drawing.Micron(edge)
	for s.size > leastText && needed(row, s) > wide {
		s.size -= 100
	}
	need := needs(row, s)
	left, shares := wide-needed(row, s), drawing.Micron(0)
	if more := min(max(left, 0), s.width(row[0].text)+2000-need[0]); more > 0 {
		need[0], left = need[0]+more, left-more
	}
	for _, c := range row {
		shares += c.share
	}
	for i, c := range row {
		w := need[i] + max(left, 0)*c.share/shares
		if i == 0 {
			w += min(left, 0)
		}
		l.box(ink(drawing.Black, 250), drawing.Point{X: x, Y: y}, drawing.Point{X: x + w, Y: y + rowHeight})
		l.cell(drawing.Point{X: x + 1000, Y: y}, w-1500, c, s)
		x += w
	}
}

// cell writes a field: its name over its text. A text that is too long is made smaller, then set on
// two lines without its name, then cut short.
func (l *leaf) cell(at drawing.Point, wide drawing.Micron, c cell, s style) {
	under, over := drawing.Point{X: at.X, Y: at.Y + 7000}, drawing.Point{X: at.X, Y: at.Y + 3500}
	least := style{size: leastText, bold: s.bold}
	for s.width(c.text) > wide && s.size > leastText {
		s.size -= 100
	}
	if lines := least.wrap(c.text, wide); s.width(c.text) > wide && len(lines) > 1 {
		l.text(over, least, lines[0])
		l.text(under, least, least.short(strings.Join(lines[1:], " "), wide))
		return
	}
	l.text(drawing.Point{X: at.X, Y: at.Y + 2900}, small, small.short(c.name, wide))
	l.text(under, s, s.short(c.text, wide))
}

// mostTitle is how much of the title block a title takes where others need room.
const mostTitle = 46 * mmPaper

// needs is how wide each cell of a row must be, the title no wider than it may.
func needs(row []cell, s style) []drawing.Micron {
	out := make([]drawing.Micron, len(row))
	for i, c := range row {
		out[i] = max(s.width(c.text), small.width(c.name)) + 2000
	}
	if len(out) > 0 {
		out[0] = min(out[0], mostTitle)
	}
	return out
}

func needed(row []cell, s style) (sum drawing.Micron) {
	for _, n := range needs(row, s) {
		sum += n
	}
	return sum
}

// short cuts a text to a width, with three dots where something is missing.
func (s style) short(text string, wide drawing.Micron) string {
	if s.width(text) <= wide {
		return text
	}
	head, _ := s.split(text, wide-s.width("…"))
	return head + "…"
}
