// Package sample is a small plan for tests of drawings: three walls over a
// tub with a niche, a window, pipes, a leaning corner and slivers. The room is
// cut by the real core; the set-out is chosen by hand and is not a good one, so
// that every kind of piece appears.
package sample

import (
	_ "embed"

	"coursewright/layout"
	"coursewright/layout/bond"
	"coursewright/layout/finding"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

//go:embed job.json
var job []byte

const (
	in   = length.Inch
	line = -37*in - 7*in/8 // the course line
	back = 1               // the wall with the niche
)

// Plan is the sample. It panics where the core no longer reads its job.
func Plan() layout.Plan {
	typed, err := survey.Read(job)
	if err != nil {
		panic(err)
	}
	room, faults := typed.Resolve()
	if len(faults) > 0 {
		panic(faults)
	}
	p := layout.Plan{Room: room, Setout: plan.Setout{Line: line, Hand: survey.Left}}
	starts := starts(room)
	for i, w := range room.Walls {
		p.Walls = append(p.Walls, Cut(room, w, starts[i], line))
	}
	Number(&p)
	p.Findings = findings()
	return p
}

// starts are the set-out: the left wall from its right end, the back wall with
// a sliver in the left corner, the right wall with a tile on the centre.
func starts(room survey.Room) []plan.Start {
	pitch := room.Tile.Height + room.Joint
	niche := survey.Edges{Left: 36 * in, Right: 49 * in, Bottom: line + 7*pitch - room.Joint, Top: line + 10*pitch}
	window := survey.Edges{Left: 11 * in, Right: 25 * in, Bottom: 8 * in, Top: 30 * in}
	half := room.Tile.Width / 2
	s := []plan.Start{
		{X: 24 * in, OnTile: true, Edge: 24*in - half, Placed: survey.Placed{Head: 41 * in, Openings: make([]survey.Edges, 2)}},
		{X: 14*in - room.Joint/2, Edge: 14 * in, Placed: survey.Placed{Openings: []survey.Edges{niche}}},
		{X: 17*in + in/8, OnTile: true, Edge: 17*in + in/8 - half, Placed: survey.Placed{Right: 34*in + in/4, Head: 41 * in, Openings: []survey.Edges{window}}},
	}
	s[back].Slide, s[back].Classic = slide(room.Tile.Width+room.Joint), classic(room)
	return s
}

// Cut lays a bond on a wall: its left tile edge and its marks as the start says, the
// bottom edge of course 0 at a height.
func Cut(room survey.Room, found survey.WallFound, s plan.Start, line length.Length) layout.Wall {
	shape := found.Shape(room.Units, s.Placed)
	b := shape.Region.Bounds()
	rows := bond.Of(room, survey.Left).Rows(line, s.Edge, b.Bottom, b.Top)
	pieces, _ := piece.Cut(shape, rows, piece.RuleFor(room, found, shape.Sides))
	return layout.Wall{Found: found, Shape: shape, Start: s, Pieces: pieces}
}

// Number gives the pieces of a plan their ids.
func Number(p *layout.Plan) {
	var pieces [][]piece.Piece
	var letters []string
	for _, w := range p.Walls {
		pieces, letters = append(pieces, w.Pieces), append(letters, w.Found.Letter)
	}
	piece.Number(pieces, letters, false)
}

func findings() []finding.Finding {
	return []finding.Finding{
		{Rule: "sliver", Grade: finding.Warning, Wall: back, At: &plane.Point{X: in, Y: -22 * in}, Text: "a sliver in the left corner"},
		{Rule: "power near water", Grade: finding.Caution, Wall: -1, Text: "turn off the supply first"},
		{Rule: "hole near an edge", Grade: finding.Advice, Wall: 0, At: &plane.Point{X: 20 * in, Y: -9 * in}, Text: "the valve is near a joint"},
	}
}

// slide is a curve with a level stretch and a jump.
func slide(period length.Length) []plan.SlidePoint {
	low := piece.Share{Num: 1, Den: 24}
	return []plan.SlidePoint{
		{Edge: 0, Share: low, Slivers: 8}, {Edge: 5 * in, Share: piece.Half}, {Edge: 6 * in, Share: piece.Half},
		{Edge: 6 * in, Share: piece.Share{Num: 1, Den: 5}}, {Edge: 9 * in, Share: piece.Share{Num: 2, Den: 5}},
		{Edge: period, Share: low, Slivers: 8},
	}
}

func classic(room survey.Room) []plan.Classic {
	centre := room.Walls[back].Width / 2
	return []plan.Classic{
		{Name: "joint on centre", X: centre, Figures: plan.Figures{Share: piece.Share{Num: 7, Den: 30}}},
		{Name: "tile on centre", X: centre, OnTile: true, Figures: plan.Figures{Share: piece.Share{Num: 1, Den: 8}}},
		{Name: "full tile at left", X: in / 8, Figures: plan.Figures{Share: piece.Share{Num: 1, Den: 20}, Slivers: 8}},
		{Name: "full tile at right", X: 56 * in, Figures: plan.Figures{Share: piece.Share{Num: 1, Den: 3}}},
		{Name: "best", X: 5*in - room.Joint/2, Figures: plan.Figures{Share: piece.Half}},
	}
}
