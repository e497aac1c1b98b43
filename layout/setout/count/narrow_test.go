package count

import (
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// claimed lists the runs that are sure in the narrow parts of a wall with a setting.
func (w *Wall) claimed(s Setting) (runs []Run) {
	z := w.Bounds.zones.narrow
	along, across := w.facts.frame.phases(s.Line, s.Edge)
	classes := len(w.facts.shifts)
	for i := range z.parts {
		n := &z.parts[i]
		for class := range classes {
			how := z.comesIn(n, class, across)
			if !n.free {
				if found, sure := z.cutIn(n, n.in, class, along); sure&how != 0 {
					runs = append(runs, found...)
				}
				continue
			}
			for _, row := range z.beside(stand{n.right, w.freeEnd(s, n.right), along}) {
				if row.pattern == (len(z.outline.heights)-1+i)*classes+class && row.sure&how != 0 {
					runs = append(runs, row.runs...)
				}
			}
		}
	}
	return runs
}

// What is sure of a narrow part are runs of the wall, none of them smaller than claimed.
func TestNarrowPartsClaimRunsThatAreThere(t *testing.T) {
	claimed := 0
	rapid.Check(t, func(t *rapid.T) {
		w, s, _ := countedRoom(t)
		found := w.claimed(s)
		claimed += len(found)
		holdsRuns(t, w.Count(s).Runs, found, w.facts.frame.plumb)
	})
	require.NotZero(t, claimed, "the rooms have narrow parts")
}

// By hand: beside a tub a leg of 100, 200 deep, in tile of 600 by 300. No course lies in it, so until its rows are
// looked at nothing else says that each of them ends there in less than a fifth of a tile.
func TestALegLowerThanACourse(t *testing.T) {
	for name, room := range map[string]string{
		"a corner":              "1500x900 600x300+2 leg=100",
		"a corner, third bond":  "1500x900 600x300+2 1/3 leg=100",
		"a free end":            "1500x900 600x300+2 left=0..40 leg=100",
		"a free end, with pipe": "1500x900 600x300+2 1/3 left=0..40 leg=100 pipe=300,60,30",
	} {
		w := drawWall(room)
		for line := length.Length(0); line < 302; line += 23 {
			for edge := length.Length(0); edge < 602; edge += 41 {
				low := -200 * mm
				rows := w.facts.rowsFrom(0, line*mm, w.Box())
				within := 0 // rows of which more than sealant fills stands in the leg
				for _, row := range rows {
					if min(row.High, 0)-max(row.Low, low) > 6*mm {
						within++
					}
				}
				fifths := w.Bounds.OfBoth(line*mm, edge*mm).Fifths
				require.GreaterOrEqual(t, fifths, min(1, within), "%s, line %d, edge %d", name, line, edge)
				got := merit.Merit{}
				for _, x := range []length.Length{0, 20, 40} {
					s := Setting{Line: line * mm, Edge: edge * mm, Placed: w.Outer()}
					if s.Placed.Left = x * mm; w.facts.found.Left.Meets {
						s.Placed = w.Outer()
					}
					if c := w.Count(s).Merit; x == 0 || c.Fifths < got.Fifths {
						got = c
					}
				}
				require.LessOrEqual(t, fifths, got.Fifths, "%s, line %d, edge %d", name, line, edge)
			}
		}
	}
}

// Nothing is claimed where something else may come into the tile.
func TestWhatComesIntoANarrowPart(t *testing.T) {
	for name, c := range map[string]struct {
		beside string
		sure   uint16
	}{
		"nothing":                        {"", inside | fromBelow | fromAbove | through},
		"a pipe in the leg":              {" pipe=50,-100,20", 0},
		"a pipe over the rim":            {" pipe=150,100,60", inside | fromBelow | fromAbove | through},
		"a window in the tile over it":   {" window=150,200,100,200", inside | fromBelow},
		"a window two tiles off":         {" window=1250,200,100,200", inside | fromBelow | fromAbove | through},
		"a niche that may move over it":  {" niche=900..950,200,100,200", inside | fromBelow},
		"a free end in the tile over it": {" right=300..1500", 0}, // the piece is then cut by three edges
		"a head that may end it":         {" head=250..900", inside | fromBelow},
		"a free end a tile off":          {" right=900..1500", inside | fromBelow | fromAbove | through},
	} {
		w := drawWall("1500x900 600x300+2 leg=100" + c.beside)
		z := w.Bounds.zones.narrow
		leg := &z.parts[slices.IndexFunc(z.parts, func(n narrow) bool { return n.to == 0 })]
		_, sure := z.cutIn(leg, leg.in, 0, 0)
		require.Equal(t, c.sure, sure, name)
	}
}

// Beside a free end nothing is claimed of a tile into which the other may come.
func TestTheOtherFreeEndNearANarrowPart(t *testing.T) {
	claims := func(right string) int {
		w := drawWall("1500x900 600x300+2 left=0..40 leg=100 right=" + right)
		return len(w.Bounds.zones.narrow.beside(stand{x: 20 * mm}))
	}
	require.Equal(t, 1, claims("900..1500"))
	require.Zero(t, claims("300..1500"))
}

// How courses come into a leg from -200 to 0, with sealant that fills 6.
func TestHowRowsComeIn(t *testing.T) {
	for _, c := range []struct {
		sketch string
		across length.Length
		how    uint16
	}{
		{"1500x900 600x300+2 leg=100", -100, fromBelow | fromAbove}, // to -102 and from -100
		{"1500x900 600x300+2 leg=100", -5, fromBelow},               // of the one above 5 are in it
		{"1500x900 600x300+2 leg=100", -195, fromAbove},             // of the one below 3
		{"1500x900 600x300+2 leg=100", -250, through},
		{"1500x900 600x150+2 leg=100", -180, fromBelow | inside | fromAbove},
		{"1500x900 600x150+2 leg=100", -200, inside | fromAbove},
		{"1500x900 600x90+2 leg=100", -40, inside}, // as on every line
	} {
		n := drawWall(c.sketch).Bounds.zones.narrow
		require.Len(t, n.parts, 1, c.sketch)
		require.Equal(t, c.how, n.comesIn(&n.parts[0], 0, c.across*mm), "%s, %d", c.sketch, c.across)
	}
}

// Of many narrow parts the highest are looked at, and none of those that are as high as one that is not.
func TestTheHighestNarrowPartsAreLookedAt(t *testing.T) {
	heights := func(windows string) (out []length.Length) {
		for _, n := range drawWall("4000x900 300x100+2" + windows).Bounds.zones.narrow.parts {
			out = append(out, n.height()/mm)
		}
		return out
	}
	two := " window=100,300,100,500 window=600,300,100,400" // 100 beside the corner, 200 between them
	require.Equal(t, []length.Length{400, 400, 100}, heights(two))
	require.Equal(t, []length.Length{400, 400, 400}, heights(two+" window=1100,300,100,400"))
	require.Empty(t, heights(two+" window=1100,300,100,400 window=1600,300,100,400"))
}
