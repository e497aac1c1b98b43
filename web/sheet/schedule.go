package sheet

import (
	"fmt"
	"strings"

	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/web/drawing"
)

// schedule lists what to cut, batches first, with a sketch of each, and then
// which two pieces come out of one tile.
func (b *book) schedule() {
	f := b.flow(subject{title: "Cut schedule"}, false)
	if len(b.cuts.Groups) == 0 {
		f.words(body, "Nothing is cut: every tile is set whole.")
		return
	}
	f.words(body, "Batches first. Every sketch is seen from the face, the arrow points up; heavy edges are cut, thin ones are as made. "+
		"Sizes are rounded down, so that no piece is larger than its place.")
	t := table{columns: []column{{name: "cut", share: 14, bold: true}, {name: "sketch" + b.inMillimetres(), share: 54}, {name: "what to cut", share: 62}, {name: "pieces", share: 44}}}
	for _, g := range b.cuts.Groups {
		t.rows = append(t.rows, row{cells: []string{g.ID, "", b.toCut(g), pieceList(g.Pieces)}, at: 1,
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

// toCut says in words what the sketch shows.
func (b *book) toCut(g cuts.Group) string {
	s := g.Size
	text := fmt.Sprintf("%d like this: %s\n", g.Count, g.Kind)
	if g.Count == 1 {
		text = "1 of this: " + g.Kind + "\n"
	}
	text += "wide " + b.widths(s) + ", high " + b.heights(s.Left, s.Right, s.Height)
	for _, n := range s.Notches {
		text += "\nnotch leaves " + b.notch(n)
	}
	for _, h := range s.Holes {
		text += "\nhole " + h.Name + ": ⌀ " + b.fine(h.Diameter) + ", centre " + b.away(h.FromLeft, "the left edge") + ", " + b.away(h.Up, "the bottom edge")
	}
	if len(g.Cut) > 0 {
		text += "\ncut: " + strings.Join(g.Cut, ", ")
	}
	if len(g.Factory) > 0 {
		text += "\nfactory: " + strings.Join(g.Factory, ", ")
	}
	return text
}

// widths writes one width, or those of both ends where they differ.
func (b *book) widths(s cuts.Size) string {
	if s.Bottom == s.Top || s.Bottom == 0 || s.Top == 0 {
		return b.fine(s.Width)
	}
	return b.fine(s.Bottom) + " below, " + b.fine(s.Top) + " above"
}

// away words how far inside an edge of the piece a place is, or outside it.
func (b *book) away(l length.Length, edge string) string {
	if l < 0 {
		return b.fine(-l) + " outside " + edge
	}
	return b.fine(l) + " from " + edge
}

// notch words what a notch leaves on its sides.
func (b *book) notch(n cuts.Notch) string {
	var arms []string
	if n.Left > 0 {
		arms = append(arms, held(b.fine(n.Left)+" left"))
	}
	if n.Right > 0 {
		arms = append(arms, held(b.fine(n.Right)+" right"))
	}
	if n.Below > 0 {
		arms = append(arms, held(b.fine(n.Below)+" below"))
	}
	if n.Above > 0 {
		arms = append(arms, held(b.fine(n.Above)+" above"))
	}
	return strings.Join(arms, ", ")
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
