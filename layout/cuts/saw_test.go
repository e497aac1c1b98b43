package cuts

import (
	"strings"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sawn is the work on a tile of 12 by 3 in of which a face is left; sides over 0 are cut.
func sawn(face plane.Ring) work {
	const in = length.Inch
	tile := plane.Ring{{}, {Point: plane.Point{X: 12 * in}}, {Point: plane.Point{X: 12 * in, Y: 3 * in}}, {Point: plane.Point{Y: 3 * in}}}
	r := plane.Region{face}
	return work{wall: &plan.Wall{}, own: &frame{}, piece: piece.Piece{Outline: tile, Tile: plane.Region{tile}.Bounds(), Face: r, Kind: piece.Angle}, face: r, box: r.Bounds()}
}

func at(x, y length.Length, on plane.Side) plane.Corner {
	return plane.Corner{Point: plane.Point{X: x * length.Inch / 8, Y: y * length.Inch / 8}, On: on}
}

// Two cuts that meet inside the tile, as in the corner of a wall, are each marked where their line leaves the tile.
// They once had no marks, but "cut: right; factory: left, bottom, top".
func TestCutsThatMeetInsideATileAreMarkedAtItsEdges(t *testing.T) {
	// Up the tile at 45° from 3 in on its lower edge, and back to 3 in on its upper one; they meet at 4 1/2 in.
	w := sawn(plane.Ring{at(0, 0, 0), at(24, 0, 1), at(36, 12, 2), at(24, 24, 0), at(0, 24, 0)})
	all := w.saws(length.Inch / 32)
	assert.Equal(t, []string{
		"saw from 3\" on the way A to B to 6\" on the way C to D",
		"saw from 6\" on the way A to B to 3\" on the way D to C",
		"mark all lines before the first cut",
	}, spaced(words{length.Imperial}.saws(all)))
	for _, s := range all {
		assert.False(t, s.Stops)
	}
}

// A cut from corner to corner names them; it once said 0" on the way from one to the next.
func TestACutThroughACornerNamesIt(t *testing.T) {
	w := sawn(plane.Ring{at(0, 0, 0), at(96, 0, 1), at(72, 24, 0), at(0, 24, 0)})
	assert.Equal(t, []string{"saw from corner B to 3\" on the way C to D"}, spaced(words{length.Imperial}.saws(w.saws(length.Inch/32))))
}

// A bite, as at the corner of a niche, is marked by the same two lines, which are sawn only to where they cross. Of
// one that slants nothing is said of what it leaves beside, below or above.
func TestABiteIsMarkedByLinesThatStop(t *testing.T) {
	w := sawn(plane.Ring{at(0, 0, 0), at(96, 0, 0), at(96, 24, 0), at(60, 24, 1), at(48, 12, 2), at(36, 24, 0), at(0, 24, 0)})
	all := w.saws(length.Inch / 32)
	require.Len(t, all, 2)
	assert.Equal(t, []string{
		"saw from 4 1/2\" on the way C to D to 4 1/2\" on the way A to B" + Crossing,
		"saw from 4 1/2\" on the way B to A to 4 1/2\" on the way D to C" + Crossing,
		"mark all lines before the first cut, and saw no further than that",
	}, spaced(words{length.Imperial}.saws(all)))
	assert.Empty(t, w.size(length.Inch/32).Notches)
	square := sawn(plane.Ring{at(0, 0, 0), at(96, 0, 0), at(96, 24, 0), at(60, 24, 1), at(60, 12, 2), at(0, 12, 0)})
	assert.Len(t, square.size(length.Inch/32).Notches, 1, "one that is square to the tile")
}

// Where a boundary bends, each stretch is a cut of its own: the line between its ends left as much as a quarter inch too much.
func TestACutThatBendsIsSawnStretchByStretch(t *testing.T) {
	w := sawn(plane.Ring{at(0, 0, 0), at(24, 0, 1), at(30, 12, 1), at(24, 24, 0), at(0, 24, 0)})
	assert.Len(t, w.saws(length.Inch/32), 2)
	w = sawn(plane.Ring{at(0, 0, 0), at(24, 0, 1), {Point: plane.Point{X: 3*length.Inch + length.Inch/40, Y: 3 * length.Inch / 2}, On: 1}, at(24, 24, 0), at(0, 24, 0)})
	assert.Len(t, w.saws(length.Inch/32), 1, "bent by less than is sawn to")
}

// Of all jobs that ship with tile in patterns: beyond the lines of its cuts, each as its marks say, there is nothing of a piece
// but where it is said that a line stops, and what all lines leave of the tile is the piece.
func TestMarksGiveThePieceBack(t *testing.T) {
	cornered := 0
	for _, name := range []string{"hexagon", "herringbone", "dotted"} {
		in := inPattern(t, name)
		cut, _ := inSettingOrder(in, For(in.Room).Turn)
		for _, w := range cut {
			all := w.saws(1)
			if w.piece.Outline == nil || len(all) == 0 || w.piece.Kind&piece.Hole != 0 {
				continue
			}
			left := plane.Region{w.piece.Outline}
			stops := false
			for _, s := range all {
				stops = stops || s.Stops
				left = left.Keep(plane.Through(w.place(s.Enters), w.place(s.Leaves)))
			}
			if stops {
				continue
			}
			if len(all) > 1 {
				cornered++
			}
			require.InDelta(t, float64(w.piece.Face.Area2()), float64(left.Area2()), float64(w.piece.Tile.Width()+w.piece.Tile.Height())*40, "%s of %s", w.piece.ID, name)
		}
	}
	assert.Greater(t, cornered, 10)
}

// place is where a mark stands in the tile's own frame.
func (w work) place(m Mark) plane.Point {
	out := w.piece.Outline
	other := m.Edge
	if m.Corner == m.Edge {
		other = (m.Edge + 1) % len(out)
	}
	a, b := out[m.Corner].Point, out[other].Point
	long := plane.Distance(a, b)
	along := func(from, to length.Length) length.Length {
		return from + length.Length(int64(to-from)*int64(m.From)/int64(long))
	}
	return plane.Point{X: along(a.X, b.X), Y: along(a.Y, b.Y)}
}

func spaced(lines []string) (out []string) {
	for _, l := range lines {
		out = append(out, strings.ReplaceAll(l, "\u00a0", " "))
	}
	return out
}
