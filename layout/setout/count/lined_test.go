package count

import (
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Which rows a free mark may cut or leave out.
func TestWhichRowsMayEnd(t *testing.T) {
	row := bond.Row{Low: 500 * mm, High: 600 * mm}
	for name, c := range map[string]struct {
		sketch string
		may    bool
	}{
		"a head that meets a ceiling":        {"1000x600 300x100+2", false},
		"a free head that may come under it": {"1000x700 300x100+2 head=590..700", true},
		"a free head over it":                {"1000x700 300x100+2 head=600..700", false},
		"columns, a free left end beside it": {"1000x600 300x100+2 columns left=0..501", true},
		"columns, one before it":             {"1000x600 300x100+2 columns left=0..500", false},
		"columns, a free right end":          {"1000x600 300x100+2 columns right=599..1000", true},
		"columns, one behind it":             {"1000x600 300x100+2 columns right=600..1000", false},
		"level courses beside a free end":    {"1000x600 300x100+2 left=0..501", false},
		"columns under a free head":          {"1000x700 300x100+2 columns head=590..700", false},
	} {
		w := drawWall(c.sketch)
		heads := w.Places.Heads(0)
		head := heads[0]
		if name == "a free head that may come under it" || name == "a free head over it" {
			head = w.Found.Head.Stops.From
		}
		require.Equal(t, c.may, w.facts.mayEnd(row, head), name)
	}
}

// By hand: tile of 300 by 100 with joints of 2 on a plumb wall of 1000 by 600: of the courses from 2
// on five are plain, those of one class of a half bond alike; the one that the ceiling cuts is not.
// A niche that may stand between 250 and 450 touches three.
func TestTheRowsOfALine(t *testing.T) {
	lined := func(sketch string) *lined { return drawWall(sketch).Bounds.rowsOn(2*mm, 2*mm) }
	l := lined("1000x600 300x100+2 1/2")
	var alike []int
	for _, a := range l.plain {
		alike = append(alike, a.n)
		require.Len(t, a.in, 2, "an end on either side")
		require.Nil(t, a.uneven, "the ends are plumb")
	}
	require.Equal(t, []int{3, 2}, alike)
	require.Equal(t, 8, l.count)
	require.Len(t, l.uneven, 3, "the one that the ceiling cuts, and those over it and under the floor")

	l = lined("1000x600 300x100+2 leanleft=0,9")
	require.Len(t, l.plain, 5, "no two between edges that lean are alike")
	require.NotNil(t, l.plain[0].uneven)

	l = lined("1000x600 300x100+2 niche=100..800,100,250..350,100")
	require.Len(t, l.touched, 3, "from 206 to 510")
	require.Equal(t, 2, l.plain[0].n)

	l = lined("1000x700 300x100+2 head=590..700")
	require.Equal(t, []length.Length{612 * mm}, l.heads, "on a course")
	require.Len(t, l.above, 2)
}

// What a wall says of a start is the same whichever lines and starts it was asked before.
func TestWhatIsAskedBeforeChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, first := drawn(t)
		w.Bounds.Plainly(first.Line, first.Edge)
		s := setting(t, w)
		for _, line := range []length.Length{first.Line, s.Line} {
			for _, edge := range []length.Length{s.Edge, first.Edge} {
				fresh := NewWall(w.facts.room, w.facts.typed, w.facts.bond.Hand)
				require.Equal(t, fresh.Bounds.Plainly(line, edge), w.Bounds.Plainly(line, edge))
			}
		}
	})
}
