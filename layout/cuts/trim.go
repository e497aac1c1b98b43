package cuts

import (
	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/trim"
)

// TrimCut is one piece of trim that is cut.
type TrimCut struct {
	Piece         string // its id
	Group         string // the line it stands in: "T1", "T2", …
	Name          string // of the trim
	Size          string // what to cut to, in words
	Width, Height length.Length
}

// trimCuts lists the trim of all walls that is cut, in the order of its numbers.
func trimCuts(walls []plan.Wall, units length.System) []TrimCut {
	var pieces []trim.Piece
	for _, w := range plan.WithTops(walls) {
		pieces = append(pieces, w.Trim...)
	}
	line := map[string]string{}
	for _, g := range trim.Cuts(pieces, units) {
		for _, id := range g.Pieces {
			line[id] = g.ID
		}
	}
	var all []TrimCut
	for _, p := range pieces {
		if p.Cut() {
			box := p.Face.Bounds()
			all = append(all, TrimCut{p.ID, line[p.ID], p.Trim.Name, p.Size(units), box.Width(), box.Height()})
		}
	}
	return all
}

// row is the piece in the table of cuts: its box, and what to cut to as its kind.
func (c TrimCut) row(u length.System) []string {
	row := make([]string, len(columns))
	fine := func(l length.Length) string { return l.FloorTo(u.FineStep()).Fine(u) }
	copy(row, []string{c.Piece, c.Group, "trim " + c.Name + ", " + c.Size, fine(c.Width), fine(c.Height)})
	return row
}
