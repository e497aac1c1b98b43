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

// turnEdges says where the finished edges of a wall's outside corners stand, where
// neither its tile nor its trim ends there: " (corner 32")".
func (b *book) turnEdges(w layout.Wall) (left, right string) {
	edge := func(e survey.EndFound, at, tile length.Length) string {
		if e.Outside == nil || e.Trim != nil || at == tile {
			return ""
		}
		return " (corner " + b.fromEnd(at) + ")"
	}
	if o := w.Found.Left.Outside; o != nil {
		left = edge(w.Found.Left, -o.Past, w.Start.Placed.Left)
	}
	if o := w.Found.Right.Outside; o != nil {
		right = edge(w.Found.Right, w.Found.Width+o.Past, w.Start.Placed.Right)
	}
	return left, right
}
