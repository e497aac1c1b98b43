package sheet

import (
	"slices"

	"coursewright/layout/finding"
	"coursewright/web/drawing"
)

// Which cautions stand on which sheets, by the name of their rule. Those that
// stand nowhere else are on the set-out sheet, the first in the hand.
var (
	atTheSaw  = []finding.Name{finding.CuttingDust, finding.WetSawAndPower}
	atTheBase = []finding.Name{finding.TubDeflects, finding.FirstCourseMustHarden}
)

// cautions writes those of some rules, or with none named all that stand on no
// other sheet. On the first of the sheets with cautions it is said that local
// code comes first.
func (f *flow) cautions(rules ...finding.Name) {
	var text []finding.Finding
	for _, x := range f.book.plan.Findings {
		elsewhere := slices.Contains(atTheSaw, x.Rule) || slices.Contains(atTheBase, x.Rule)
		if x.Grade == finding.Caution && (slices.Contains(rules, x.Rule) || len(rules) == 0 && !elsewhere) {
			text = append(text, x)
		}
	}
	if f.warned == 0 || f.y != f.warned { // else more of them stand under one heading
		f.sub("Cautions")
	}
	for len(text) > 0 {
		said := text[0].Text
		n := 1
		for ; n < len(text) && text[n].Do == text[0].Do; n++ { // alike, and what to do is said once
			said += " " + text[n].Text
		}
		f.bullet("!", said+" "+text[0].Do)
		text = text[n:]
	}
	f.warned = f.y
	if f.book.first(SetOut, FirstCourse, CutSchedule, Stages) == f.kind {
		f.words(plain, finding.LocalCode)
	}
}

// cautionsLeft writes the cautions that found no room on the set-out sheet on the first
// list with room for them, else on that of a wall, else on the last that has room in smaller text, or on a sheet of their own.
func (b *book) cautionsLeft() {
	if !b.warnLater {
		return
	}
	write := func(f *flow) {
		f.cautions()
		f.words(plain, finding.LocalCode)
	}
	lists := slices.DeleteFunc(slices.Clone(b.flows), func(f *flow) bool { return f.kind == Elevations || f.kind == Measuring })
	for _, f := range slices.Concat(lists, b.walls) {
		if b.roomFor(f, write) {
			f.add(write)
			return
		}
	}
	for _, f := range slices.Backward(lists) {
		if b.refill(f, write) {
			return
		}
	}
	b.fitted(subject{title: "Cautions"}, false, write)
}

// first is the first of some kinds that is printed, or empty.
func (b *book) first(kinds ...Kind) Kind {
	for _, k := range kinds {
		if slices.Contains(b.opts.Kinds, k) {
			return k
		}
	}
	return ""
}

// bullet writes a paragraph behind a sign.
func (f *flow) bullet(sign, text string) {
	p, in := f.of(plain), max(6000, f.of(strong).width(sign)+2500)
	lines := drawing.Micron(len(p.wrap(text, f.breadth()-in)))
	f.need(lines * p.leading())
	lo, _ := f.area()
	f.text(drawing.Point{X: lo.X + 1000, Y: f.y + p.size}, f.of(strong), sign)
	f.indented(plain, in, text)
}
