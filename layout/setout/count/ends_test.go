package count

import (
	"fmt"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// modulo works a wall of plumb ends without gaps out by the remainders of its width alone: of a row that begins at edge,
// what stands at the left and at the right end; a strip that sealant fills is no piece.
func modulo(width, tile, joint, sealant, edge length.Length) (left, right length.Length) {
	pitch := tile + joint
	wide := func(rest length.Length) (piece length.Length, is bool) {
		switch {
		case rest >= tile: // the tile's whole, or a joint stands at the end
			return tile, true
		case rest > sealant:
			return rest, true
		}
		return 0, false
	}
	at := func(rest length.Length) length.Length { // what is left of the tile at an end, or the whole one before it
		if rest > joint {
			if p, is := wide(rest - joint); is {
				return p
			}
		}
		return tile
	}
	fromRight := length.Mod(width-edge, pitch)
	if p, is := wide(fromRight); is {
		right = p
	} else {
		right = tile
	}
	return at(length.Mod(edge, pitch)), right
}

// The widths at both ends of a plumb wall are those that the remainders of its width give, in every course of the bond.
func TestWidthsAtPlumbEndsAreRemainders(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string, low, high int) int { return rapid.IntRange(low, high).Draw(t, name) }
		wide, tile, joint := n("width", 700, 2400), n("tile", 60, 320), n("joint", 0, 6)
		bond := rapid.SampledFrom([]string{"", "1/2", "1/3", "1/4"}).Draw(t, "bond")
		w := drawWall(fmt.Sprintf("%dx900 %dx100+%d %s", wide, tile, joint, bond))
		edge := length.Length(n("edge", 0, tile+joint-1)) * mm
		s := Setting{Line: length.Length(n("line", -90, 0)) * mm, Edge: edge, Placed: w.Outer()}
		left, right := w.EndWidths(s)
		require.NotEmpty(t, left)
		for course, got := range left {
			shift := w.facts.shifts[length.Mod(length.Length(course), length.Length(len(w.facts.shifts)))]
			l, r := modulo(w.Found.Width, w.facts.room.Tile.Width, w.facts.room.Joint, w.facts.room.Sealant, edge+shift)
			require.Equal(t, l, got, "left, course %d", course)
			require.Equal(t, r, right[course], "right, course %d", course)
		}
		c := w.Count(s)
		again, _ := w.Widths(&c)
		require.Equal(t, left, again)
	})
}

// By hand: a wall of 1000 in tile of 300 with joints of 2, a tile edge at the left end: three tiles and 94; from 100 on
// 98 and 298, since 100 + 302 + 302 leaves 296.
func TestWidthsAtPlumbEndsByHand(t *testing.T) {
	for _, c := range []struct{ edge, left, right length.Length }{{0, 300, 94}, {100, 98, 296}, {2, 300, 92}, {8, 300, 86}, {9, 7, 85}, {98, 96, 298}, {96, 94, 300}, {94, 92, 300}, {93, 91, 300}} {
		left, right := modulo(1000*mm, 300*mm, 2*mm, 6*mm, c.edge*mm)
		require.Equal(t, [2]length.Length{c.left, c.right}, [2]length.Length{left / mm, right / mm}, "from %d", c.edge)
	}
}

// A bond whose courses step by whole units comes back to itself course by course; a third of a pitch that three does not
// divide does not, nor do columns, which step upwards.
func TestWhichBondsStepExactly(t *testing.T) {
	for sketch, exactly := range map[string]bool{
		"1000x600 300x100+2": true, "1000x600 300x100+2 1/2": true, "1000x600 298x100+2 1/3": true, "1000x600 300x100+3 1/3": true, "1000x600 300x100+2 columns": false,
	} {
		require.Equal(t, exactly, drawWall(sketch).ShiftsExactly(), sketch)
	}
	room, found := sketch("1000x600 300x100+2 1/3")
	room.Tile.Width++ // a pitch of one unit more than three divide
	require.False(t, NewWall(&room, found, survey.Left).ShiftsExactly())
}
