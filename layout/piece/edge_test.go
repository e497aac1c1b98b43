package piece_test

import (
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// An edge is its side and how it faces, and turning x and y twice gives it back.
func TestEdgesAreSideAndFacing(t *testing.T) {
	turned := map[piece.Facing]piece.Facing{piece.OnLeft: piece.Under, piece.Under: piece.OnLeft, piece.OnRight: piece.Over, piece.Over: piece.OnRight}
	for side := plane.Side(1); side < 40; side++ {
		for f, g := range turned {
			e := piece.EdgeOf(side, f)
			require.Equal(t, side, e.Side())
			require.Equal(t, f, e.Facing())
			require.Equal(t, f == piece.OnLeft || f == piece.OnRight, e.Across())
			require.Equal(t, piece.EdgeOf(side, g), e.Transposed(), "left is under and right is over")
			require.Equal(t, e, e.Transposed().Transposed())
		}
	}
}

// Which boundary edges a wall has, as the plan file names them (formats.md), and which are
// out of sight: the foot of a leg, but never the side of the step beside it (merit.md).
func TestNamesOfBoundaryEdges(t *testing.T) {
	w := sketch("1000x900 300x100+2 leg=150 window=400,200,150,200", 0, 0)
	got, low := map[string]bool{}, map[string]bool{}
	for _, ring := range w.shape.Solid {
		for i, c := range ring {
			if c.On != 0 {
				e := piece.EdgeBetween(c, ring[(i+1)%len(ring)])
				got[e.Name(w.shape.Sides)] = true
				if e.Low(w.shape.Sides) {
					low[e.Name(w.shape.Sides)] = true
				}
				require.Equal(t, e.Side() == survey.SideBase && !e.Across() || e.Side() == survey.SideBase+1 && !e.Across(), e.IsBase(w.shape.Sides))
				require.Equal(t, e.Across() && e.Side() >= survey.SideBase && e.Side() <= survey.SideBase+1, e.IsStep(w.shape.Sides))
			}
		}
	}
	all := map[string]bool{}
	for _, name := range []string{"left", "right", "head", "base 0", "step 0", "base 1", "window n left", "window n right", "window n bottom", "window n top"} {
		all[name] = true
	}
	require.Equal(t, all, got)
	require.Equal(t, map[string]bool{"base 0": true}, low)
}

// The left edge of an opening stands on the right of the tile beside it; of a band's own tile
// it is the other way round.
func TestEdgesOfOpeningsAreNamedFromTheOpening(t *testing.T) {
	sides := []survey.Boundary{{}, {Name: "left"}, {Name: "right"}, {Name: "head"}, {Name: "window w"}, {Name: "band b", Within: true}}
	for f, names := range map[piece.Facing][2]string{
		piece.OnLeft:  {"window w right", "band b left"},
		piece.OnRight: {"window w left", "band b right"},
		piece.Under:   {"window w top", "band b bottom"},
		piece.Over:    {"window w bottom", "band b top"},
	} {
		require.Equal(t, names[0], piece.EdgeOf(4, f).Name(sides))
		require.Equal(t, names[1], piece.EdgeOf(5, f).Name(sides))
	}
	require.Equal(t, "left", piece.EdgeOf(survey.SideLeft, piece.OnLeft).Name(sides))
}

// Steps of a base with several segments are named by the lower number beside them, whichever
// side rises.
func TestStepsAreNamedByTheSegmentBeforeThem(t *testing.T) {
	base := survey.Boundary{Name: "base"}
	sides := []survey.Boundary{{}, {Name: "left"}, {Name: "right"}, {Name: "head"}, base, base, base}
	at := func(segment int, f piece.Facing) string {
		return piece.EdgeOf(survey.SideBase+plane.Side(segment), f).Name(sides)
	}
	require.Equal(t, "base 1", at(1, piece.Under))
	require.Equal(t, "step 0", at(1, piece.OnRight), "it rises from segment 0 to 1")
	require.Equal(t, "step 1", at(1, piece.OnLeft), "and falls from segment 1 to 2")
}

// Cuts as a person reads them.
func TestKindsInWords(t *testing.T) {
	for kind, words := range map[piece.Kind]string{0: "whole", piece.Rip: "rip", piece.Cross: "cross cut", piece.Taper: "taper", piece.Notch: "notch", piece.Hole: "hole",
		piece.Angle: "angle cut", piece.Rip | piece.Hole: "rip, hole", piece.Rip | piece.Cross | piece.Taper | piece.Notch | piece.Hole | piece.Angle: "rip, cross cut, taper, notch, hole, angle cut"} {
		require.Equal(t, words, kind.String())
	}
	for kind, cost := range map[piece.Kind]int{0: 0, piece.Cross: 1, piece.Rip: 2, piece.Taper: 2, piece.Angle: 2, piece.Hole: 4, piece.Notch: 5, piece.Cross | piece.Notch | piece.Hole: 10} {
		require.Equal(t, cost, (&piece.Piece{Kind: kind}).Effort(), kind.String())
	}
	require.Equal(t, 10, (&piece.Piece{Kind: piece.Hole, Awkward: true}).Effort(), "6 more for a hole near an edge")
}

// Of a tub whose front stands at 350 and is 200 higher than the floor before it: a piece of the
// leg is at its front, the one that is notched round its corner and those over its rim are not.
func TestPiecesAtTheFrontOfATub(t *testing.T) {
	w := sketch("1000x900 150x100+2 leg=350", 50, 0)
	pieces, _ := w.cut()
	at := map[string]bool{}
	for i := range pieces {
		p := &pieces[i]
		if slices.Contains(p.Cuts, survey.SideBase+1) {
			switch step := p.AtStep(survey.SideBase+1, w.shape.Sides); {
			case step:
				require.LessOrEqual(t, p.Face.Bounds().Top, length.Length(0), p.Tile)
				at["beside"] = true
			default:
				require.Greater(t, p.Face.Bounds().Top, length.Length(0), p.Tile)
				at["over"] = true
			}
		}
		require.False(t, p.AtStep(survey.SideBase, w.shape.Sides), "the floor has no step of its own")
	}
	require.Len(t, at, 2)
}
