package cuts

import (
	"encoding/csv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

const inch = length.Inch

// The sides of the wall all tests cut on: 1 left, 2 right, 3 head, 4 base,
// 5 niche shelf, 6 pipe valve.
func wall(name string, order int, pieces ...piece.Piece) plan.Wall {
	w := plan.Wall{Found: survey.WallFound{Name: name, Order: order}, Pieces: pieces}
	w.Found.Base = make([]survey.SegmentFound, 1)
	w.Found.Openings = []survey.OpeningFound{{Kind: "niche", Name: "shelf"}, {Kind: "pipe", Name: "valve", At: 4 * inch, Up: 2 * inch, Diameter: inch}}
	w.Shape.Sides = w.Found.Sides()
	return w
}

// corner is a corner in inches.
func corner(x, y length.Length, on plane.Side) plane.Corner {
	return plane.Corner{Point: plane.Point{X: x * inch, Y: y * inch}, On: on}
}

// cut is a piece of an 8 by 4 in tile at 0, 0 with the given face.
func cut(id string, kind piece.Kind, cuts []plane.Side, face ...plane.Ring) piece.Piece {
	return piece.Piece{ID: id, Tile: plane.Rect{Right: 8 * inch, Top: 4 * inch}, Face: face, Visible: face, Kind: kind, Cuts: cuts}
}

// end is a piece cut straight at the left that far from its factory end.
func end(id string, wide length.Length) piece.Piece {
	x := 8*inch - wide
	return cut(id, piece.Cross, []plane.Side{1}, plane.Ring{
		{Point: plane.Point{X: x}}, corner(8, 0, 0), corner(8, 4, 0), {Point: plane.Point{X: x, Y: 4 * inch}, On: 1}})
}

func scheduled(pieces ...piece.Piece) Schedule {
	return Of(Input{Walls: []plan.Wall{wall("back", 0, pieces...)}}, Usual(length.Imperial))
}

func TestSizes(t *testing.T) {
	cases := []struct {
		name  string
		piece piece.Piece
		want  Cut
	}{
		{"a straight cut, rounded down to 1/32 in", end("B-01-01", 3*inch+inch/64), Cut{
			Kind: "cross cut", Factory: []string{"bottom", "right", "top"}, Cut: []string{"left"},
			Size: Size{Width: 3 * inch, Height: 4 * inch, Left: 4 * inch, Right: 4 * inch, Bottom: 3 * inch, Top: 3 * inch}}},
		{"a taper over a raked rim", cut("B-01-02", piece.Taper, []plane.Side{4},
			plane.Ring{corner(0, 1, 4), corner(8, 2, 0), corner(8, 4, 0), corner(0, 4, 0)}), Cut{
			Kind: "taper", Factory: []string{"left", "right", "top"}, Cut: []string{"bottom"},
			Size: Size{Width: 8 * inch, Height: 3 * inch, Left: 3 * inch, Right: 2 * inch, Bottom: 8 * inch, Top: 8 * inch}}},
		{"a taper into a leaning corner", cut("B-01-03", piece.Taper, []plane.Side{1},
			plane.Ring{corner(2, 0, 0), corner(8, 0, 0), corner(8, 4, 0), corner(3, 4, 1)}), Cut{
			Kind: "taper", Factory: []string{"bottom", "right", "top"}, Cut: []string{"left"},
			Size: Size{Width: 6 * inch, Height: 4 * inch, Left: 4 * inch, Right: 4 * inch, Bottom: 6 * inch, Top: 5 * inch}}},
		{"a rake that bends inwards is no notch", cut("B-01-08", piece.Taper, []plane.Side{4},
			plane.Ring{corner(0, 0, 4), corner(4, 2, 4), corner(8, 3, 0), corner(8, 4, 0), corner(0, 4, 0)}), Cut{
			Kind: "taper", Factory: []string{"left", "right", "top"}, Cut: []string{"bottom"},
			Size: Size{Width: 8 * inch, Height: 4 * inch, Left: 4 * inch, Right: inch, Bottom: 8 * inch, Top: 8 * inch}}},
		{"a leaning corner over a raked rim", cut("B-01-09", piece.Cross|piece.Taper, []plane.Side{1, 4},
			plane.Ring{corner(1, 2, 4), corner(8, 1, 0), corner(8, 4, 0), corner(2, 4, 1)}), Cut{
			Kind: "cross cut, taper", Factory: []string{"right", "top"}, Cut: []string{"left", "bottom"},
			Size: Size{Width: 7 * inch, Height: 3 * inch, Left: 2 * inch, Right: 3 * inch, Bottom: 7 * inch, Top: 6 * inch}}},
		{"a hole told before its tile", cut("B-01-10", piece.Hole, []plane.Side{6},
			plane.Ring{corner(3, 2, 6), corner(4, 3, 6), corner(5, 2, 6), corner(4, 1, 6)}, plane.Rect{Right: 8 * inch, Top: 4 * inch}.Ring(0)), Cut{
			Kind: "hole", Factory: []string{"left", "bottom", "right", "top"},
			Size: Size{Width: 8 * inch, Height: 4 * inch, Left: 4 * inch, Right: 4 * inch, Bottom: 8 * inch, Top: 8 * inch,
				Holes: []Hole{{Name: "valve", FromLeft: 4 * inch, Up: 2 * inch, Diameter: inch + inch/4}}}}},
		{"an L beside a niche", cut("B-01-04", piece.Notch, []plane.Side{5},
			plane.Ring{corner(0, 0, 0), corner(8, 0, 0), corner(8, 1, 5), corner(3, 1, 5), corner(3, 4, 0), corner(0, 4, 0)}), Cut{
			Kind: "notch", Factory: []string{"left", "bottom", "right", "top"}, Cut: []string{"right", "top"},
			Size: Size{Width: 8 * inch, Height: 4 * inch, Left: 4 * inch, Right: 4 * inch, Bottom: 8 * inch, Top: 8 * inch,
				Notches: []Notch{{Left: 3 * inch, Below: inch}}}}},
		{"a U under a niche", cut("B-01-05", piece.Notch, []plane.Side{5},
			plane.Ring{corner(0, 0, 0), corner(8, 0, 0), corner(8, 4, 0), corner(6, 4, 5), corner(6, 1, 5), corner(3, 1, 5), corner(3, 4, 0), corner(0, 4, 0)}), Cut{
			Kind: "notch", Factory: []string{"left", "bottom", "right", "top"}, Cut: []string{"left", "right", "top"},
			Size: Size{Width: 8 * inch, Height: 4 * inch, Left: 4 * inch, Right: 4 * inch, Bottom: 8 * inch, Top: 8 * inch,
				Notches: []Notch{{Left: 3 * inch, Right: 2 * inch, Below: inch}}}}},
		// Found by hand: a window within one tile was a cut of no kind, and no size said where it is.
		{"a niche within the tile", cut("B-01-11", piece.Notch, []plane.Side{5}, plane.Rect{Right: 8 * inch, Top: 4 * inch}.Ring(0),
			plane.Ring{corner(3, 1, 5), corner(3, 3, 5), corner(6, 3, 5), corner(6, 1, 5)}), Cut{
			Kind: "notch", Factory: []string{"left", "bottom", "right", "top"}, Cut: []string{"left", "bottom", "right", "top"},
			Size: Size{Width: 8 * inch, Height: 4 * inch, Left: 4 * inch, Right: 4 * inch, Bottom: 8 * inch, Top: 8 * inch,
				Notches: []Notch{{Left: 3 * inch, Right: 2 * inch, Below: inch, Above: inch}}}}},
		{"a foot before a tub whose rim bends within the tile", cut("B-01-12", piece.Taper|piece.Notch, []plane.Side{4},
			plane.Ring{corner(0, 0, 0), corner(3, 0, 4), corner(3, 1, 4), corner(5, 1, 4), corner(8, 2, 0), corner(8, 4, 0), corner(0, 4, 0)}), Cut{
			Kind: "taper, notch", Factory: []string{"left", "bottom", "right", "top"}, Cut: []string{"bottom", "right"},
			Size: Size{Width: 8 * inch, Height: 4 * inch, Left: 4 * inch, Right: 4 * inch, Bottom: 8 * inch, Top: 8 * inch,
				Notches: []Notch{{Left: 3 * inch, Above: 2 * inch}}}}},
		{"the same across the first corner of its outline", cut("B-01-13", piece.Taper|piece.Notch, []plane.Side{4},
			plane.Ring{corner(5, 1, 4), corner(5, 0, 0), corner(8, 0, 0), corner(8, 4, 0), corner(0, 4, 0), corner(0, 2, 4), corner(3, 1, 4)}), Cut{
			Kind: "taper, notch", Factory: []string{"left", "bottom", "right", "top"}, Cut: []string{"left", "bottom"},
			Size: Size{Width: 8 * inch, Height: 4 * inch, Left: 4 * inch, Right: 4 * inch, Bottom: 8 * inch, Top: 8 * inch,
				Notches: []Notch{{Right: 3 * inch, Above: 2 * inch}}}}},
		{"a hole", cut("B-01-06", piece.Hole, []plane.Side{6}, plane.Rect{Right: 8 * inch, Top: 4 * inch}.Ring(0),
			plane.Ring{corner(3, 2, 6), corner(4, 3, 6), corner(5, 2, 6), corner(4, 1, 6)}), Cut{
			Kind: "hole", Factory: []string{"left", "bottom", "right", "top"},
			Size: Size{Width: 8 * inch, Height: 4 * inch, Left: 4 * inch, Right: 4 * inch, Bottom: 8 * inch, Top: 8 * inch,
				Holes: []Hole{{Name: "valve", FromLeft: 4 * inch, Up: 2 * inch, Diameter: inch + inch/4}}}}},
		{"a hole over the top edge is no notch", cut("B-01-07", piece.Hole, []plane.Side{6},
			plane.Ring{corner(0, 0, 0), corner(8, 0, 0), corner(8, 4, 0), corner(5, 4, 6), corner(4, 3, 6), corner(3, 4, 0), corner(0, 4, 0)}), Cut{
			Kind: "hole", Factory: []string{"left", "bottom", "right", "top"},
			Size: Size{Width: 8 * inch, Height: 4 * inch, Left: 4 * inch, Right: 4 * inch, Bottom: 8 * inch, Top: 8 * inch,
				Holes: []Hole{{Name: "valve", FromLeft: 4 * inch, Up: 2 * inch, Diameter: inch + inch/4}}}}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			s := scheduled(c.piece)
			require.Len(t, s.Groups, 1)
			require.Len(t, s.Cuts, 1)
			got := s.Cuts[0]
			assert.Equal(t, plane.Point{}, plane.Point{X: got.Sketch.Bounds().Left, Y: got.Sketch.Bounds().Bottom})
			c.want.Group, c.want.Piece, c.want.Sketch = "C1", c.piece.ID, got.Sketch
			assert.Equal(t, c.want, got)
		})
	}
}

func TestEqualPiecesAreBatchedAndComeFirst(t *testing.T) {
	back := wall("back", 1, end("B-01-01", 5*inch), end("B-02-01", 3*inch), end("B-03-01", 3*inch+inch/64))
	left := wall("left", 0, end("L-01-01", 6*inch))
	whole := end("L-02-01", 8*inch)
	whole.Whole = true
	left.Pieces = append(left.Pieces, whole)
	var lines []string
	for _, g := range Of(Input{Walls: []plan.Wall{back, left}}, Usual(length.Imperial)).Groups {
		lines = append(lines, g.ID+" "+g.Size.Width.Fine(length.Imperial)+" "+strings.Join(g.Pieces, " "))
	}
	assert.Equal(t, []string{`C1 3" B-02-01 B-03-01`, `C2 6" L-01-01`, `C3 5" B-01-01`}, lines)
}

// Law 2 of Of, for straight cuts and rakes in both systems.
func TestNoPieceExceedsItsPlace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		units := rapid.SampledFrom([]length.System{length.Imperial, length.Metric}).Draw(t, "units")
		at := rapid.Int64Range(1, int64(4*inch)-1)
		left, right := length.Length(at.Draw(t, "left")), length.Length(at.Draw(t, "right"))
		p := cut("B-01-01", piece.Taper, []plane.Side{4}, plane.Ring{
			{Point: plane.Point{Y: 4*inch - left}, On: 4}, {Point: plane.Point{X: 8 * inch, Y: 4*inch - right}},
			corner(8, 4, 0), corner(0, 4, 0)})
		s := Of(Input{Room: survey.Room{Units: units}, Walls: []plan.Wall{wall("back", 0, p)}}, Usual(units))
		step := units.FineStep()
		for _, pair := range [][2]length.Length{{s.Cuts[0].Size.Left, left}, {s.Cuts[0].Size.Right, right}, {s.Cuts[0].Size.Height, max(left, right)}} {
			if pair[0] > pair[1] || pair[1]-pair[0] >= step {
				t.Fatalf("cut to %d where %d is open, step %d", pair[0], pair[1], step)
			}
		}
		if g := s.Groups[0]; g.How != Uncut && (g.Size.Left > left || g.Size.Right > right) {
			t.Fatalf("the line says %v for %d and %d", g.Size, left, right)
		}
	})
}

func TestCSV(t *testing.T) {
	in := Input{Walls: []plan.Wall{wall("back", 0, end("-B-01-01", 3*inch), end("B-02-01", 3*inch))}}
	var b strings.Builder
	require.NoError(t, Of(in, Usual(length.Imperial)).CSV(&b, length.Imperial))
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(b.String(), "\ufeff"))).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, [][]string{columns,
		{"'-B-01-01", "C1", "cross cut", `3"`, `4"`, `4"`, `4"`, `3"`, `3"`, "", "", "bottom right top", "left", "B-02-01"},
		{"B-02-01", "C1", "cross cut", `3"`, `4"`, `4"`, `4"`, `3"`, `3"`, "", "", "bottom right top", "left", "'-B-01-01"}}, rows)
}
