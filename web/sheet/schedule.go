package sheet

import (
	"fmt"
	"strings"

	"coursewright/layout/length"
	"coursewright/web/drawing"
)

// schedule lists what to cut, batches first, with a sketch of each, and then
// which two pieces come out of one tile.
func (b *book) schedule() {
	f := b.flow(subject{title: "Cut schedule"}, false)
	if b.plan.Room.Stands() {
		f.words(body, "What is set already is not in this list.")
	}
	if len(b.cuts.Groups) == 0 {
		f.words(body, "No piece is to be cut.")
		return
	}
	f.words(body, "Batches first. Every sketch is seen from the face, the arrow points up; heavy edges are cut, thin ones are as made. "+
		"Sizes are rounded down, so that no piece is larger than its place.")
	t := table{columns: []column{{name: "cut", share: 14, bold: true}, {name: "sketch" + b.inMillimetres(), share: 54}, {name: "what to cut", share: 62}, {name: "pieces", share: 44}}}
	for _, g := range b.cuts.Groups {
		t.rows = append(t.rows, row{cells: []string{g.ID, "", strings.Join(g.Words(b.plan.Room.Units), "\n"), pieceList(g.Pieces)}, at: 1,
			picture: func(l *leaf, lo, hi drawing.Point) { b.sketch(l, g, lo, hi) }})
	}
	f.table(t)
	f.pairs()
	f.cautions(atTheSaw...)
}

// inMillimetres says what the bare figures of the sketches are in.
func (b *book) inMillimetres() string {
	if b.plan.Room.Units == length.Metric {
		return ", mm"
	}
	return ""
}

// pieceList writes ids; of very many the first ones.
func pieceList(ids []string) string {
	const shown = 120
	more := ""
	if len(ids) > shown {
		more = fmt.Sprintf(" and %d more, see the elevations", len(ids)-shown)
		ids = ids[:shown]
	}
	return strings.Join(ids, " ") + more
}

// pairs lists which two pieces come out of one tile.
func (f *flow) pairs() {
	o, saw := f.book.cuts.Offcuts, f.book.opts.Saw
	f.sub("Two out of one tile")
	f.words(body, fmt.Sprintf("%d tiles are cut into; %d of them give two pieces. Without pairs it would take %d; by area and number no way of cutting two from a tile takes fewer than %d. Kerf %s.",
		o.TilesCut, o.TilesSaved, o.TilesCut+o.TilesSaved, o.LowerBound, f.book.fine(saw.Kerf)))
	if len(o.Pairs) == 0 {
		return
	}
	const across = 3
	t := table{text: plain}
	for range across {
		t.columns = append(t.columns, column{name: "cut first", share: 22, bold: true}, column{name: "from its off-cut", share: 28})
	}
	deep := (len(o.Pairs) + across - 1) / across
	for i := range deep {
		var cells []string
		for k := i; k < len(o.Pairs); k += deep {
			cells = append(cells, held(o.Pairs[k][0]), held(o.Pairs[k][1]))
		}
		t.rows = append(t.rows, row{cells: cells})
	}
	f.table(t)
}
