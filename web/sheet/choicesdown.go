package sheet

import (
	"slices"

	"coursewright/layout/finding"
	"coursewright/web/drawing"
)

// Room of choices that stand under each other.
const (
	leastFacts = 62 * mmPaper // what is written beside a drawing is no narrower
	factsGap   = 5 * mmPaper
	labelWide  = 27 * mmPaper // of what a fact is called
	rowGap     = 4 * mmPaper
	underLooks = 14 * mmPaper // what stands under the last
)

// underEachOther draws the choices under each other, what a client asks for beside each: the
// facts at the same places, and what there is to talk over in words, as far as there is room.
func (b *book) underEachOther(some []Choice) filling {
	return func(f *flow) (drawing.Scale, bool) {
		facts := b.compared(some)
		f.words(plain, aboutLooks+facts.takeAlike(some))
		for _, scale := range looksScales() {
			if f.laidDown(some, facts, scale) {
				f.words(plain, finding.LocalCode)
				return scale, true
			}
		}
		return drawing.Scale{}, false
	}
}

// laidDown draws the choices at a scale, if that fits.
func (f *flow) laidDown(some []Choice, facts table, scale drawing.Scale) bool {
	scenes := make([]drawing.Scene, len(some))
	wide := drawing.Micron(0)
	for i, c := range some {
		if c.Amiss == "" {
			scenes[i] = looked(c, scale)
			wide = max(wide, scenes[i].Width)
		}
	}
	x, high := f.lo.X+wide+factsGap, make([]drawing.Micron, len(some))
	if f.hi.X-x < leastFacts {
		return false
	}
	sum := rowGap * drawing.Micron(len(some))
	for i, c := range some {
		high[i] = max(scenes[i].Height, f.told(c, facts, i, x, false)+f.firstTalk(c, x))
		sum += high[i]
	}
	spare := f.left() - underLooks - sum
	if spare < 0 {
		return false
	}
	for i, c := range some {
		room := high[i] + spare/drawing.Micron(len(some))
		if f.line(ink(drawing.Black, 180), drawing.Point{X: f.lo.X, Y: f.y}, drawing.Point{X: f.hi.X, Y: f.y}); c.Amiss == "" {
			f.lay(drawing.Point{X: f.lo.X, Y: f.y + rowGap/2}, scenes[i])
		}
		f.y += rowGap / 2
		f.talk(c, x, f.told(c, facts, i, x, true), room)
		f.y += room + rowGap/2
	}
	return true
}

// told writes the name of a choice and its column of facts, one under the other, and gives
// how high that is.
func (f *flow) told(c Choice, facts table, n int, x drawing.Micron, write bool) drawing.Micron {
	y := drawing.Micron(0)
	label, value := f.of(plain), f.of(plain)
	label.colour, value.bold = drawing.Grey, true
	put := func(s style, at, wide drawing.Micron, text string) drawing.Micron {
		lines := s.wrap(text, wide)
		if write {
			f.column(s, lines, drawing.Point{X: x + at, Y: f.y + y})
		}
		return drawing.Micron(len(lines)) * s.leading()
	}
	y += put(f.of(large), 0, f.hi.X-x, facts.columns[n+1].name) + 1000
	if c.Amiss != "" {
		y += put(value, 0, f.hi.X-x, facts.rows[0].cells[n+1])
		return y + put(f.of(plain), 0, f.hi.X-x, c.Amiss)
	}
	for _, r := range facts.rows {
		if said := r.cells[n+1]; said != "" {
			y += max(put(label, 0, labelWide-padding, r.cells[0]), put(value, labelWide, f.hi.X-x-labelWide, said)) + padding
		}
	}
	return y
}

// talkIn is how far what there is to talk over stands in.
const talkIn = 3 * mmPaper

// talks are what there is to talk over of a choice, each thing once.
func (c Choice) talks() (said []string) {
	for _, v := range c.Plan.Findings {
		if (v.Grade == finding.Fault || v.Grade == finding.Warning) && !slices.Contains(said, v.Text) {
			said = append(said, v.Text)
		}
	}
	return said
}

// firstTalk is the room that the first of these takes, with a line for how many more there are.
func (f *flow) firstTalk(c Choice, x drawing.Micron) drawing.Micron {
	said := c.talks()
	if len(said) == 0 {
		return 0
	}
	s := f.of(plain)
	return drawing.Micron(len(s.wrap(said[0], f.hi.X-x-talkIn))+min(len(said)-1, 1)) * s.leading()
}

// talk writes what there is to talk over of a choice, from a height down, each thing once, as
// far as the room goes, and how much more there is.
func (f *flow) talk(c Choice, x, y, room drawing.Micron) {
	said := c.talks()
	s, in := f.of(plain), talkIn
	for i, text := range said {
		lines, more := s.wrap(text, f.hi.X-x-in), drawing.Micron(min(len(said)-1-i, 1))*s.leading()
		if y+drawing.Micron(len(lines))*s.leading()+more > room {
			lines, said = []string{"and " + number(len(said)-i) + " more"}, said[:i+1]
		}
		f.text(drawing.Point{X: x, Y: f.y + y + s.size}, s, "–")
		y += f.column(s, lines, drawing.Point{X: x + in, Y: f.y + y})
		if i == len(said)-1 {
			return
		}
	}
}
