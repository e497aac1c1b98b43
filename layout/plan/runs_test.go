package plan_test

import (
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
)

const mm = length.Millimetre

// Sides of the wall of TestFindRuns after those that every wall has.
const (
	floor = survey.SideBase + iota
	tub
	shelf
)

var sides = []survey.Boundary{{}, {Name: "left"}, {Name: "right"}, {Name: "head"},
	{Name: "base", Low: true}, {Name: "base"}, {Name: "niche shelf"}}

// cutPiece is a piece of a row that edges cut to a size.
func cutPiece(id string, row int, wide, high length.Length, across, up []piece.Edge) piece.Piece {
	return piece.Piece{ID: id, Row: row, Wide: wide, High: high, Across: across, Up: up}
}

func edges(list ...piece.Edge) []piece.Edge { return list }

var (
	left   = piece.EdgeOf(survey.SideLeft, piece.OnLeft)
	right  = piece.EdgeOf(survey.SideRight, piece.OnRight)
	head   = piece.EdgeOf(survey.SideHead, piece.Over)
	foot   = piece.EdgeOf(floor, piece.Under)
	rim    = piece.EdgeOf(tub, piece.Under)
	step   = piece.EdgeOf(tub, piece.OnRight) // the tub's front rises out of the floor
	beside = piece.EdgeOf(shelf, piece.OnRight)
	sill   = piece.EdgeOf(shelf, piece.Over)
)

// A run is what the same edges cut in the same direction in one class.
func TestFindRuns(t *testing.T) {
	tile := survey.TileSize{Width: 200 * mm, Height: 100 * mm}
	across := func(class int, least length.Length, id string, low bool, names ...string) plan.Run {
		return plan.Run{Edges: names, Across: true, Class: class, Least: least, Share: piece.Part(least, tile.Width), Piece: id, Low: low}
	}
	up := func(class int, least length.Length, id string, low bool, names ...string) plan.Run {
		return plan.Run{Edges: names, Class: class, Least: least, Share: piece.Part(least, tile.Height), Piece: id, Low: low}
	}
	for name, c := range map[string]struct {
		bond   survey.BondRule
		pieces []piece.Piece
		want   []plan.Run
	}{
		"nothing cut": {survey.BondRule{Den: 1}, []piece.Piece{cutPiece("A-01-01", 0, 200*mm, 100*mm, nil, nil)}, []plan.Run{}},
		"the least piece gives the size, the first of several that are alike": {survey.BondRule{Den: 1}, []piece.Piece{
			cutPiece("A-01-01", 0, 90*mm, 100*mm, edges(left), nil), cutPiece("A-02-01", 1, 80*mm, 100*mm, edges(left), nil),
			cutPiece("A-03-01", 2, 80*mm, 100*mm, edges(left), nil)},
			[]plan.Run{across(0, 80*mm, "A-02-01", false, "left")}},
		"a class of the bond has its own, also below the line": {survey.BondRule{Num: 1, Den: 2}, []piece.Piece{
			cutPiece("A-01-01", -1, 90*mm, 100*mm, edges(left), nil), cutPiece("A-02-01", 0, 190*mm, 100*mm, edges(left), nil),
			cutPiece("A-03-01", 1, 89*mm, 100*mm, edges(left), nil)},
			[]plan.Run{across(0, 190*mm, "A-02-01", false, "left"), across(1, 89*mm, "A-03-01", false, "left")}},
		"a course is one class upwards": {survey.BondRule{Num: 1, Den: 2}, []piece.Piece{
			cutPiece("A-01-01", 0, 200*mm, 60*mm, nil, edges(rim)), cutPiece("A-02-01", 1, 200*mm, 50*mm, nil, edges(rim))},
			[]plan.Run{up(0, 50*mm, "A-02-01", false, "base 1")}},
		"with columns the classes are upwards": {survey.BondRule{Num: 1, Den: 2, Plumb: true}, []piece.Piece{
			cutPiece("A-01-01", 0, 90*mm, 60*mm, edges(left), edges(rim)), cutPiece("A-02-01", 1, 80*mm, 50*mm, edges(left), edges(rim))},
			[]plan.Run{up(0, 60*mm, "A-01-01", false, "base 1"), up(1, 50*mm, "A-02-01", false, "base 1"), across(0, 80*mm, "A-02-01", false, "left")}},
		"a corner belongs to a run in each direction": {survey.BondRule{Den: 1}, []piece.Piece{
			cutPiece("A-01-01", 0, 80*mm, 60*mm, edges(right), edges(head))},
			[]plan.Run{up(0, 60*mm, "A-01-01", false, "head"), across(0, 80*mm, "A-01-01", false, "right")}},
		"a leg between two edges does not stand for the end over it": {survey.BondRule{Den: 1}, []piece.Piece{
			cutPiece("A-01-01", 0, 40*mm, 100*mm, edges(left, step), nil), cutPiece("A-02-01", 1, 150*mm, 100*mm, edges(left), nil)},
			[]plan.Run{across(0, 150*mm, "A-02-01", false, "left"), across(0, 40*mm, "A-01-01", false, "left", "step 0")}},
		"the foot of a leg is out of sight, its width is not": {survey.BondRule{Den: 1}, []piece.Piece{
			cutPiece("A-01-01", 0, 40*mm, 30*mm, edges(left, step), edges(foot))},
			[]plan.Run{up(0, 30*mm, "A-01-01", true, "base 0"), across(0, 40*mm, "A-01-01", false, "left", "step 0")}},
		"one edge out of sight takes the run with it": {survey.BondRule{Den: 1}, []piece.Piece{
			cutPiece("A-01-01", 0, 200*mm, 30*mm, nil, edges(head, foot))},
			[]plan.Run{up(0, 30*mm, "A-01-01", true, "head", "base 0")}},
		"edges of an opening are named as seen from it": {survey.BondRule{Den: 1}, []piece.Piece{
			cutPiece("A-01-01", 0, 120*mm, 70*mm, edges(beside), edges(sill))},
			[]plan.Run{up(0, 70*mm, "A-01-01", false, "niche shelf bottom"), across(0, 120*mm, "A-01-01", false, "niche shelf left")}},
	} {
		t.Run(name, func(t *testing.T) {
			room := survey.Room{Tile: tile, Bond: c.bond}
			w := plan.Wall{Shape: survey.Shape{Sides: sides}, Pieces: c.pieces}
			assert.Equal(t, c.want, plan.FindRuns(room, w))
			slices.Reverse(w.Pieces)
			for i, r := range plan.FindRuns(room, w) {
				assert.Equal(t, c.want[i].Least, r.Least, "whatever the order of the pieces")
				assert.Equal(t, c.want[i].Edges, r.Edges)
			}
		})
	}
}
