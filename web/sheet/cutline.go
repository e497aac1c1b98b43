package sheet

import (
	"slices"

	"coursewright/web/drawing"
)

// cutLine is one row of the schedule in the making.
type cutLine struct {
	sawn
	big, small  string // the figure to set the fence to, and what is said with it
	partner     string // what else comes out of its tile
	least, high drawing.Micron
}

// wording is lines of text, strong ones first.
type wording struct {
	lines []string
	bold  int // how many of them are strong
	size  drawing.Micron
}

func (w wording) strong() style { return style{size: w.size * 34 / 30, bold: true} }
func (w wording) plain() style  { return style{size: w.size} }

func (w wording) high() drawing.Micron {
	n := drawing.Micron(w.bold)
	return n*w.strong().leading() + (drawing.Micron(len(w.lines))-n)*w.plain().leading()
}

// lined breaks texts into lines in the largest of the sizes at which they go into a
// line of the schedule, or else the least.
func lined(strong, plain string, wide, high drawing.Micron) wording {
	var w wording
	for _, w.size = range []drawing.Micron{3000, 2800, leastText} {
		w.lines = nil
		if strong != "" {
			w.lines = w.strong().wrap(strong, wide)
		}
		if w.bold = len(w.lines); plain != "" {
			w.lines = append(w.lines, w.plain().wrap(plain, wide)...)
		}
		if w.high()+lineGap <= high {
			break
		}
	}
	return w
}

// Parts of a line.
const (
	lineGap     = 800  // between the text of a line and its rules, together
	figureMost  = 8200 // 6 mm high
	figureLow   = 5000 // of a figure with words under it
	figureLeast = 3800 // of one with several lines under it
)

// cutLine measures one line.
func (f *flow) cutLine(s sawn, partner string) cutLine {
	l := cutLine{sawn: s, partner: partner}
	l.big, l.small = f.book.fence(s.Group)
	l.least = max(f.where(l, leastLine).high(), f.partner(l, leastLine).high(), f.noted(l), f.sketchLine(s.Group), l.namesHigh()) + lineGap
	return l
}

// nameStyle is how the numbers of a row are written, smaller where several stand over each other.
func (l cutLine) nameStyle() style {
	if len(l.ids) > 1 {
		return style{size: 3500, bold: true}
	}
	return style{size: 4600, bold: true}
}

func (l cutLine) namesHigh() drawing.Micron {
	return drawing.Micron(len(l.ids)) * l.nameStyle().leading()
}

// where is what is cut and where it goes.
func (f *flow) where(l cutLine, high drawing.Micron) wording {
	return lined(l.kinds(), placesText(l.Group), f.cutAt(5)-f.cutAt(4)-1500, high)
}

func (f *flow) partner(l cutLine, high drawing.Micron) wording {
	return lined("", l.partner, f.cutAt(6)-f.cutAt(5)-1000, high)
}

// figure is the style of the figure of a line, no larger than it may be.
func (f *flow) figure(big string, most drawing.Micron) style {
	s := style{size: most, bold: true}
	for s.size > 3400 && s.width(big) > f.fenceRoom() {
		s.size -= 100
	}
	return s
}

func (f *flow) fenceRoom() drawing.Micron { return f.cutAt(3) - f.cutAt(2) - 2000 }

// noted is how high a figure with its words under it is at the least.
func (f *flow) noted(l cutLine) drawing.Micron {
	note := style{size: leastText}
	if l.small == "" {
		return f.figure(l.big, figureLow).size
	}
	lines := drawing.Micron(len(note.wrap(l.small, f.fenceRoom())))
	return f.figure(l.big, lowFigure(lines)).size + lines*note.leading()
}

// lowFigure is how high a figure is at the least that has so many lines under it: of several cuts, whose
// marks stand there too, it is the first alone.
func lowFigure(lines drawing.Micron) drawing.Micron {
	if lines > 1 {
		return figureLeast
	}
	return figureLow
}

// write writes one line.
func (f *flow) write(l cutLine) {
	high, mid := l.high, f.y+l.high/2
	name := l.nameStyle()
	for i, id := range l.ids {
		down := drawing.Micron(2*i+1-len(l.ids)) * name.leading() / 2
		f.text(drawing.Point{X: f.cutAt(0), Y: mid + down + name.size*36/100}, name, id)
	}
	count := style{size: 5200, anchor: drawing.Right}
	f.text(drawing.Point{X: f.cutAt(2) - 2500, Y: mid + count.size*36/100}, count, number(l.Count)+" ×")
	f.fence(l, mid)
	f.cutSketch(l.Group, drawing.Point{X: f.cutAt(3), Y: f.y + 1500}, drawing.Point{X: f.cutAt(4) - 3000, Y: f.y + high - 1500})
	f.wordsAt(4, mid, f.where(l, high))
	f.wordsAt(5, mid, f.partner(l, high))
	const side = 7 * mmPaper
	_, hi := f.area()
	f.box(ink(drawing.Black, 350), drawing.Point{X: hi.X - side, Y: mid - side/2}, drawing.Point{X: hi.X, Y: mid + side/2})
	f.y += high
	f.rule(180)
}

// fence writes the figure to set, 6 mm high where it is one size, and what is to
// be said with it: beside the figure where there is room, or under it.
func (f *flow) fence(l cutLine, mid drawing.Micron) {
	x, s, note := f.cutAt(2), f.figure(l.big, figureMost), style{size: 3200}
	if l.small == "" {
		f.text(drawing.Point{X: x, Y: mid + s.size*36/100}, s, l.big)
		return
	}
	beside := f.fenceRoom() - s.width(l.big) - 1500
	if lines := note.wrap(l.small, max(beside, 1)); beside > 12*mmPaper && drawing.Micron(len(lines))*note.leading() < l.high && fits(note, lines, beside) {
		f.text(drawing.Point{X: x, Y: mid + s.size*36/100}, s, l.big)
		f.centred(note, lines, x+s.width(l.big)+1500, mid)
		return
	}
	note.size = leastText
	lines := note.wrap(l.small, f.fenceRoom())
	under := drawing.Micron(len(lines)) * note.leading()
	s = f.figure(l.big, min(figureMost, max(lowFigure(drawing.Micron(len(lines))), l.high-2*lineGap-under)))
	top := mid - (s.size+under)/2
	f.text(drawing.Point{X: x, Y: top + s.size*76/100}, s, l.big)
	f.centred(note, lines, x, top+s.size+under/2)
}

// centred writes lines of text from x on, their middle at mid.
func (f *flow) centred(s style, lines []string, x, mid drawing.Micron) {
	y := mid - drawing.Micron(len(lines))*s.leading()/2
	for _, line := range lines {
		f.text(drawing.Point{X: x, Y: y + s.size*86/100}, s, line)
		y += s.leading()
	}
}

func fits(s style, lines []string, wide drawing.Micron) bool {
	return !slices.ContainsFunc(lines, func(line string) bool { return s.width(line) > wide })
}

// wordsAt writes words in a column of the schedule, centred in their line.
func (f *flow) wordsAt(column int, mid drawing.Micron, w wording) {
	y := mid - w.high()/2
	for i, line := range w.lines {
		s := w.plain()
		if i < w.bold {
			s = w.strong()
		}
		f.text(drawing.Point{X: f.cutAt(column), Y: y + s.size*86/100}, s, line)
		y += s.leading()
	}
}
