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
// other sheet, and then that local code comes first.
func (f *flow) cautions(rules ...finding.Name) {
	var text []finding.Finding
	for _, x := range f.book.plan.Findings {
		elsewhere := slices.Contains(atTheSaw, x.Rule) || slices.Contains(atTheBase, x.Rule)
		if x.Grade == finding.Caution && (slices.Contains(rules, x.Rule) || len(rules) == 0 && !elsewhere) {
			text = append(text, x)
		}
	}
	f.sub("Cautions")
	for _, x := range text {
		f.bullet("!", x.Text+" "+x.Do)
	}
	f.words(plain, finding.LocalCode)
}

// bullet writes a paragraph behind a sign.
func (f *flow) bullet(sign, text string) {
	lines := drawing.Micron(len(plain.wrap(text, f.breadth()-8000)))
	f.need(lines * plain.leading())
	lo, _ := f.area()
	f.text(drawing.Point{X: lo.X + 1500, Y: f.y + plain.size}, strong, sign)
	f.indented(plain, 8000, text)
}

// findings lists what stands on a drawing of a wall, by the number at its place.
func (f *flow) findings(wall int) {
	first := true
	for i, x := range f.book.plan.Findings {
		if x.Wall != wall || x.Grade == finding.Caution && x.At == nil {
			continue
		}
		if first {
			f.sub("Findings on this wall")
			first = false
		}
		text := x.Text
		if x.Do != "" {
			text += " " + x.Do
		}
		f.bullet(number(i+1), text)
	}
}
