package sheet

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/web/drawing"
)

// flow fills leaves on one subject from the top down and begins another leaf
// when one is full.
type flow struct {
	*leaf
	book    *book
	wide    bool
	percent drawing.Micron // of the usual size of text
	y       drawing.Micron
	beside  drawing.Micron // how wide a picture stands at the right
	until   drawing.Micron // and down to where
	lo, hi  drawing.Point  // what of the leaf it fills
	foot    drawing.Micron // of a drawing at its left, or 0
	warned  drawing.Micron // where the last caution ends, or 0
	leans   bool           // room is kept for a word on the leaning corner of its wall
	goesOn  subject        // of a list that stands under another, for the leaves on which it goes on
	fill    func(*flow)    // writes a list anew, in text of another size
}

// area is what the flow fills.
func (f *flow) area() (lo, hi drawing.Point) { return f.lo, f.hi }

// flow begins a leaf.
func (b *book) flow(s subject, wide bool) *flow { return b.sized(s, wide, 100) }

func (b *book) sized(s subject, wide bool, percent drawing.Micron) *flow {
	s.kind = b.now
	f := &flow{book: b, wide: wide, percent: percent, leaf: &leaf{subject: s}}
	f.turn()
	b.flows = append(b.flows, f)
	f.doubtsFirst()
	return f
}

// fitted fills what is left of the leaf of the list before it, where all of it stands there, or else one
// leaf: where the usual text takes more, with text down to three
// quarters of its size. What does not fit even so goes on to another leaf, at four fifths.
func (b *book) fitted(s subject, wide bool, fill func(*flow)) {
	if !wide && b.follow(s.title, fill) {
		return
	}
	before := b.mark()
	sizes := append(slices.Clone(percents), smallest, percents[len(percents)-1])
	if b.size > 0 {
		sizes = []drawing.Micron{b.size}
	}
	for _, percent := range sizes {
		b.back(before)
		f := b.sized(s, wide, percent)
		if fill(f); len(b.leaves) == before.leaves+1 {
			f.fill = fill
			return
		}
	}
}

// refill writes a list that stands alone on its leaf anew with what goes under it, in text down to four fifths of
// the usual size, and tells whether all of it stands there.
func (b *book) refill(f *flow, more func(*flow)) bool {
	n := slices.Index(b.leaves, f.leaf)
	if f.fill == nil || n < 0 || len(f.also) > 0 {
		return false
	}
	for _, percent := range percents {
		try := &book{plan: b.plan, opts: b.opts, cuts: b.cuts, buy: b.buy, days: b.days, now: f.kind, trying: n > 0}
		again := try.sized(f.subject, f.wide, percent)
		f.fill(again)
		if more(again); len(try.leaves) == 1 {
			*f.leaf, again.leaf, again.book, again.fill = *again.leaf, f.leaf, b, with(f.fill, more)
			*f = *again
			return true
		}
	}
	return false
}

// add writes what is to stand under a list, then and whenever the list is written anew.
func (f *flow) add(more func(*flow)) {
	if more(f); f.fill != nil {
		f.fill = with(f.fill, more)
	}
}

// with writes one thing after the other.
func with(first, then func(*flow)) func(*flow) {
	return func(f *flow) {
		first(f)
		then(f)
	}
}

// smallest is the size of text that is tried before a list goes on to another page.
const smallest drawing.Micron = 75

// percents are the sizes of text that are tried, of the usual one.
var percents = []drawing.Micron{100, 95, 90, 85, 80}

// made is how far a book has come.
type made struct{ leaves, flows int }

func (b *book) mark() made { return made{len(b.leaves), len(b.flows)} }

// back takes out what was made since.
func (b *book) back(m made) { b.leaves, b.flows = b.leaves[:m.leaves], b.flows[:m.flows] }

// leastText is the least height of a text on paper: 2.5 mm and a little.
const leastText = 2600

// of is a style in the size of the flow.
func (f *flow) of(s style) style {
	s.size = max(s.size*f.percent/100, min(s.size, leastText))
	return s
}

// turn begins the next leaf.
func (f *flow) turn() {
	again, s := len(f.leaf.own.Elements)+len(f.leaf.parts) > 0, f.subject
	if f.goesOn.title != "" {
		s = f.goesOn
	}
	f.leaf = &leaf{subject: s, size: f.book.opts.Paper.lie(f.wide)}
	f.book.leaves = append(f.book.leaves, f.leaf)
	f.lo, f.hi = f.leaf.area()
	f.y, f.beside, f.until, f.foot = f.lo.Y, 0, 0, 0
	title := f.title
	if f.wall != "" {
		title += ": " + f.wall
	}
	if again {
		title += ", continued"
	}
	f.heading(title)
}

// heading writes what a list is over it, with a line under it.
func (f *flow) heading(title string) {
	y := f.y + heading.size*3/4
	f.text(drawing.Point{X: f.lo.X, Y: y}, heading, heading.short(title, f.breadth()))
	f.y = y + 2600
	f.line(ink(drawing.Black, 700), drawing.Point{X: f.lo.X, Y: f.y}, drawing.Point{X: f.lo.X + f.breadth(), Y: f.y})
	f.y += 2200
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
	if f.y < f.until {
		return hi.X - lo.X - f.beside - 4000
	}
	return hi.X - lo.X
}

// words writes a paragraph.
func (f *flow) words(s style, text string) { f.indented(s, 0, text) }

// indented writes a paragraph that begins further right.
func (f *flow) indented(s style, in drawing.Micron, text string) {
	s = f.of(s)
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
	b := f.of(body)
	lines := len(b.wrap(how, f.breadth()-9000))
	f.need(f.of(doing).leading() + b.leading()*drawing.Micron(min(lines, 8)) + 2000)
	f.text(drawing.Point{X: lo.X, Y: f.y + f.of(large).size}, f.of(large), n)
	f.indented(doing, 9000, do)
	if how != "" {
		f.y -= 800
		f.indented(body, 9000, how)
	}
	f.y += 1000
}

// sub writes a heading inside a sheet, with room for something under it.
func (f *flow) sub(text string) {
	f.need(1500 + f.of(large).leading() + 2*f.of(plain).leading())
	f.y += 1500
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
		return "+" + b.bareTape(l)
	case l < 0:
		return "−" + b.bareTape(-l)
	}
	return "0"
}
