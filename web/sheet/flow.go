package sheet

import (
	"coursewright/layout/length"
	"coursewright/web/drawing"
)

// flow fills leaves on one subject from the top down and begins another leaf
// when one is full.
type flow struct {
	*leaf
	book *book
	wide bool
	y    drawing.Micron
}

// flow begins a leaf.
func (b *book) flow(s subject, wide bool) *flow {
	f := &flow{book: b, wide: wide, leaf: &leaf{subject: s}}
	f.turn()
	return f
}

// turn begins the next leaf.
func (f *flow) turn() {
	again := len(f.leaf.own.Elements)+len(f.leaf.parts) > 0
	f.leaf = &leaf{subject: f.subject, size: f.book.opts.Paper.lie(f.wide)}
	f.book.leaves = append(f.book.leaves, f.leaf)
	lo, _ := f.area()
	f.y = lo.Y
	title := f.title
	if f.wall != "" {
		title += ": " + f.wall
	}
	if again {
		title += ", continued"
	}
	f.words(heading, title)
	f.y += 2000
}

// left is how much of the leaf is left.
func (f *flow) left() drawing.Micron {
	_, hi := f.area()
	return hi.Y - f.y
}

// need begins another leaf unless so much is left.
func (f *flow) need(h drawing.Micron) {
	if f.left() < h {
		f.turn()
	}
}

// breadth is how wide the content may be.
func (f *flow) breadth() drawing.Micron {
	lo, hi := f.area()
	return hi.X - lo.X
}

// words writes a paragraph.
func (f *flow) words(s style, text string) { f.indented(s, 0, text) }

// indented writes a paragraph that begins further right.
func (f *flow) indented(s style, in drawing.Micron, text string) {
	lo, _ := f.area()
	for _, line := range s.wrap(text, f.breadth()-in) {
		f.need(s.leading())
		f.text(drawing.Point{X: lo.X + in, Y: f.y + s.size}, s, line)
		f.y += s.leading()
	}
	f.y += s.size / 3
}

// step writes a numbered instruction: what to do, then how.
func (f *flow) step(n, do, how string) {
	lo, _ := f.area()
	lines := len(body.wrap(how, f.breadth()-10000))
	f.need(strong.leading() + body.leading()*drawing.Micron(min(lines, 8)) + 2000)
	f.text(drawing.Point{X: lo.X, Y: f.y + large.size}, large, n)
	f.indented(strong, 10000, do)
	if how != "" {
		f.y -= 800
		f.indented(body, 10000, how)
	}
	f.y += 1500
}

// sub writes a heading inside a sheet, with room for something under it.
func (f *flow) sub(text string) {
	f.need(25 * mmPaper)
	f.y += 2000
	f.words(large, text)
}

// tape writes a length as the person's tape shows it.
func (b *book) tape(l length.Length) string { return held(l.Tape(b.plan.Room.Units)) }

// fine writes a length as the cut schedule shows it.
func (b *book) fine(l length.Length) string { return held(l.Fine(b.plan.Room.Units)) }

// signed writes a height over the level line: up +, down −.
func (b *book) signed(l length.Length) string {
	switch {
	case l > 0:
		return "+" + b.tape(l)
	case l < 0:
		return "−" + b.tape(-l)
	}
	return "±0"
}
