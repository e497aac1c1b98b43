package sheet

import (
	"strings"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// mitreTable lists the edges that are mitred at outside corners: whole tiles too.
func (f *flow) mitreTable() {
	all := f.book.cuts.Mitres
	if len(all) == 0 {
		return
	}
	t := table{text: plain, columns: []column{{name: "mitred edge", share: 95, bold: true}, {name: "count", share: 12, right: true}, {name: "pieces", share: 70}}}
	for _, m := range all {
		t.rows = append(t.rows, row{cells: []string{strings.Join(m.Words(f.book.plan.Room.Units), "; "), number(len(m.Pieces)) + " ×", namesText(m.Pieces)}})
	}
	f.table(t)
}

// turnMarks adds the outside corners of a wall to its marks: what is made there,
// and where the finished edge stands.
func (b *book) turnMarks(w layout.Wall, add func(mark, x, y string)) {
	turn := func(o *survey.OutsideFound, at length.Length) {
		if o == nil {
			return
		}
		how := string(o.How)
		if o.How == survey.Mitre {
			how += " " + survey.HalfDegrees(o.Bevel())
		} else if o.How != survey.Profile && !o.Laps {
			how += " on " + b.letter(o.Next)
		}
		add("outside corner with "+b.letter(o.Next), held("edge at "+b.bareTape(at)), how)
	}
	if o := w.Found.Left.Outside; o != nil {
		turn(o, -o.Past)
	}
	if o := w.Found.Right.Outside; o != nil {
		turn(o, w.Found.Width+o.Past)
	}
}
