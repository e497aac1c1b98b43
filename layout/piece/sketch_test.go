package piece_test

import (
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// wall is a sketched wall with a set-out, ready to be cut.
type wall struct {
	room  survey.Room
	found survey.WallFound
	shape survey.Shape
	rows  []bond.Row
	rule  piece.Rule
}

// sketch draws a wall as chance.Sketch has it, with its marks where they are measured and
// tile from a line and an edge, in millimetres.
func sketch(line string, at, edge length.Length) wall {
	w := wall{room: chance.Sketch(line)}
	w.found = w.room.Walls[0]
	w.shape = w.found.Shape(w.room.Units, measured(w.found))
	b := bond.Of(w.room, survey.Left)
	box, from, along := w.shape.Solid.Bounds(), at*mm, edge*mm
	if w.room.Bond.Plumb {
		box, from, along = box.Transposed(), along, from
	}
	w.rows = b.Rows(from, along, box.Bottom-b.Across(), box.Top+b.Across())
	w.rule = piece.RuleFor(w.room, w.found, w.shape.Sides)
	return w
}

// measured is where the marks of a wall stand that were measured.
func measured(w survey.WallFound) survey.Placed {
	p := survey.Placed{Left: w.Left.Stops.From, Right: w.Right.Stops.To, Head: w.Head.Stops.To}
	for _, o := range w.Openings {
		p.Openings = append(p.Openings, survey.Edges{Left: o.Left.From, Bottom: o.Bottom.From, Right: o.Left.From + o.Width.From, Top: o.Bottom.From + o.Height.From})
	}
	return p
}

func (w wall) cut() (pieces []piece.Piece, bare []piece.Gap) {
	return piece.Cut(w.shape, w.rows, w.rule)
}

// at is the one piece of the tile that holds a point, in millimetres.
func (w wall) at(t *testing.T, x, y length.Length) piece.Piece {
	pieces, _ := w.cut()
	var found []piece.Piece
	for _, p := range pieces {
		if p.Tile.Overlaps(plane.Rect{Left: x*mm - 1, Right: x*mm + 1, Bottom: y*mm - 1, Top: y*mm + 1}) {
			found = append(found, p)
		}
	}
	require.Len(t, found, 1, "at %d, %d", x, y)
	return found[0]
}

func (w wall) names(edges []piece.Edge) (out []string) {
	for _, e := range edges {
		out = append(out, e.Name(w.shape.Sides))
	}
	return out
}
