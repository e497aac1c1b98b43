package sheet

import (
	"strings"

	"coursewright/layout"
	"coursewright/layout/trim"
)

// trimWords say what the trim is and how its list is read.
const trimWords = "Trim along the edges of the tile. What has a T number is cut to its size from a whole piece or bar, as often as the count says; the rest is set as it is bought. " +
	"The last column names the pieces by wall, in the order in which they are set."

// trimTable lists the trim of the room: what is cut, and what is set as bought.
func (f *flow) trimTable() {
	pieces := f.book.plan.Trim()
	if len(pieces) == 0 {
		return
	}
	t := table{text: plain, columns: []column{{name: "trim", share: 10, bold: true}, {share: 30}, {name: "count", share: 12, right: true},
		{name: "cut to", share: 55, bold: true}, {name: "pieces", share: 70}}}
	for _, g := range f.book.trimGroups(pieces) {
		t.rows = append(t.rows, row{cells: []string{orDash(g.ID), g.Name, number(len(g.Pieces)) + " ×", g.Size, namesText(g.Pieces)}})
	}
	f.need(f.of(plain).leading()*2 + min(leastTable, f.high(t)))
	f.words(plain, trimWords)
	f.table(t)
}

func (b *book) trimGroups(pieces []trim.Piece) []trim.Group {
	return append(trim.Cuts(pieces, b.plan.Room.Units), trim.Uncut(pieces)...)
}

// trimEntries are the rows of a wall's trim in its cut list. Cuts keep the number
// that they have in the schedule of the room.
func (b *book) trimEntries(w layout.Wall) []entry {
	here := map[string]bool{}
	for _, p := range w.Trim {
		here[p.ID] = true
	}
	var all []entry
	for _, g := range b.trimGroups(b.plan.Trim()) {
		n := 0
		for _, id := range g.Pieces {
			if here[id] {
				n++
			}
		}
		if n == 0 {
			continue
		}
		e := entry{where: g.Name, big: g.Size, line: orDash(g.ID), pieces: n}
		for _, after := range []string{" to the ", " beside ", " long, "} {
			if figure, _, more := strings.Cut(g.Size, after); more {
				e.big, e.small = figure, strings.TrimSpace(strings.TrimPrefix(g.Size, figure))
				break
			}
		}
		all = append(all, e)
	}
	return all
}

// namesText lists pieces: a few by name, of more the first and the last.
func namesText(ids []string) string {
	if len(ids) <= 4 {
		return strings.Join(ids, " ")
	}
	return ids[0] + " … " + ids[len(ids)-1]
}

func orDash(text string) string {
	if text == "" {
		return "–"
	}
	return text
}

// trimEnds are where the trim of a wall ends, behind where its tile does: empty where
// it has none.
func (b *book) trimEnds(w layout.Wall) (left, right, head string) {
	if len(w.Trim) == 0 {
		return
	}
	r := trim.Outline(w.Found, w.Start.Placed, b.plan.Room.Units, b.plan.Room.Joint).Bounds()
	if w.Found.Left.Trim != nil {
		left = " (trim " + b.fromEnd(r.Left) + ")"
	}
	if w.Found.Right.Trim != nil {
		right = " (trim " + b.bareTape(r.Right) + ")"
	}
	if w.Found.Head.Trim != nil {
		head = " (trim " + b.signed(r.Top) + ")"
	}
	return left, right, head
}
