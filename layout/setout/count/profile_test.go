package count

import (
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// crossed lists where a row between two heights is crossed, in whole millimetres; nothing
// where it is not plain.
func crossed(w *Wall, low, high length.Length) (out []length.Length) {
	f := w.Bounds.zones.outline
	if f.band(low*mm, high*mm) < 0 {
		return nil
	}
	in, even := f.row(low*mm, high*mm, nil)
	if !even {
		return nil
	}
	for _, c := range in {
		out = append(out, c.x0/mm)
	}
	return out
}

// By hand: a wall of 1000 by 600 with a leg 150 wide at its left, 100 deep, and a window from
// 400 to 500 between 200 and 300. What a row sees depends on where it lies.
func TestWhatCrossesARow(t *testing.T) {
	w := drawWall("1000x600 300x100+2 leg=150 window=400,100,200,100")
	for name, c := range map[string]struct {
		low, high length.Length
		want      []length.Length
	}{
		"under the tub's rim there is the leg alone": {-80, -10, []length.Length{0, 150}},
		"over the rim, under the window":             {10, 110, []length.Length{0, 1000}},
		"beside the window, on both sides":           {205, 295, []length.Length{0, 400, 500, 1000}},
		"to the unit from sill to head":              {200, 300, []length.Length{0, 400, 500, 1000}},
		"over the window":                            {310, 410, []length.Length{0, 1000}},
		"with the rim in it":                         {-50, 50, nil},
		"with the sill in it":                        {150, 250, nil},
		"with the whole window in it":                {150, 350, nil},
		"above the head":                             {610, 700, nil},
	} {
		require.Equal(t, c.want, crossed(w, c.low, c.high), name)
	}
}

// A pipe in a row makes it one that has to be cut, wherever in it the hole is; over and under
// it rows are plain.
func TestAPipeMakesARowOneToCut(t *testing.T) {
	w := drawWall("1000x600 300x100+2 pipe=500,250,40")
	require.Nil(t, crossed(w, 200, 300))
	require.Nil(t, crossed(w, 260, 360), "the hole reaches into it")
	require.NotNil(t, crossed(w, 300, 400))
	require.NotNil(t, crossed(w, 100, 200))
}

// A slanting rim blocks the rows that it lies in, from its lowest point to its highest.
func TestASlantingRimBlocksItsRows(t *testing.T) {
	w := drawWall("1000x600 300x100+2 base=0,-8")
	f := w.Bounds.zones.outline
	low := w.Box().Bottom
	for i := 0; i+1 < len(f.heights); i++ {
		slants := f.heights[i] >= low && f.heights[i+1] <= low+8*mm
		require.Equal(t, slants, f.blocked[i], "band from %v to %v", f.heights[i], f.heights[i+1])
	}
}

// A free opening that is put on a profile crosses rows as a window of its size would.
func TestAnOpeningOnAProfileIsLikeAWindow(t *testing.T) {
	with := drawWall("1000x600 300x100+2 niche=350..450,100,150..250,100")
	p := placedAt(with, 400, 200, 500, 300)
	window := drawWall("1000x600 300x100+2 window=400,100,200,100").Bounds.zones.outline
	niche := with.cutter.fit(p).outline()
	require.Equal(t, window.heights, niche.heights)
	for low := -20 * mm; low < 600*mm; low += 10 * mm {
		require.Equal(t, window.band(low, low+90*mm) < 0, niche.band(low, low+90*mm) < 0, "from %v", low)
		a, b := []length.Length{}, []length.Length{}
		in, _ := window.row(low, low+90*mm, nil)
		for _, c := range in {
			a = append(a, c.x0)
		}
		in, _ = niche.row(low, low+90*mm, nil)
		for _, c := range in {
			b = append(b, c.x0)
		}
		require.Equal(t, a, b, "from %v", low)
	}
}

// Law 3, of any wall: between what crosses a plain row its middle is wall, and before and
// behind it is none.
func TestBetweenWhatCrossesARowIsWall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s := drawn(t)
		f := w.cutter.fit(s.Placed)
		outline, region := f.outline(), w.facts.frame.region(f.whole().Solid)
		for _, row := range w.facts.rows(s, f.box) {
			if outline.band(row.Low, row.High) < 0 {
				continue
			}
			in, even := outline.row(row.Low, row.High, nil)
			if !even {
				continue
			}
			for i := 0; i+1 < len(in); i++ {
				if in[i+1].x0-in[i].x0 < 4 || in[i+1].x1-in[i].x1 < 4 {
					continue
				}
				middle := plane.Point{X: (in[i].x0 + in[i].x1 + in[i+1].x0 + in[i+1].x1) / 4, Y: (row.Low + row.High).Half()}
				require.Equal(t, i%2 == 0, region.Contains(middle), "at %v between %v and %v", middle, in[i].x0, in[i+1].x0)
			}
		}
	})
}

// The frame of the rows is that of the wall with level courses; with columns it is turned
// about the diagonal, and turned twice it is as it was.
func TestTheFrameOfTheRows(t *testing.T) {
	r, p := plane.Rect{Left: 1, Right: 3, Bottom: 5, Top: 11}, plane.Point{X: 2, Y: 7}
	level, plumb := frame{}, frame{plumb: true}
	require.Equal(t, r, level.rect(r))
	require.Equal(t, plane.Rect{Left: 5, Right: 11, Bottom: 1, Top: 3}, plumb.rect(r))
	require.Equal(t, r, plumb.rect(plumb.rect(r)))
	require.Equal(t, p, level.point(p))
	require.Equal(t, plane.Point{X: 7, Y: 2}, plumb.point(p))
	for _, facing := range []piece.Facing{piece.OnLeft, piece.OnRight, piece.Under, piece.Over} {
		e := piece.EdgeOf(survey.SideHead, facing)
		require.Equal(t, e, level.edge(e))
		require.Equal(t, e, plumb.edge(plumb.edge(e)))
		require.Equal(t, piece.EdgeOf(survey.SideHead, plumb.facing(facing)), plumb.edge(e))
		require.NotEqual(t, e.Across(), plumb.edge(e).Across(), "what is plumb crosses columns no more")
	}
	along, across := level.phases(10, 20)
	require.Equal(t, [2]length.Length{20, 10}, [2]length.Length{along, across})
	along, across = plumb.phases(10, 20)
	require.Equal(t, [2]length.Length{10, 20}, [2]length.Length{along, across})
}

// Columns are courses turned: the rows of a wall in columns, in their own frame, are those of
// the turned wall with level courses.
func TestColumnsAreCoursesTurned(t *testing.T) {
	columns := drawWall("600x1000 100x300+2 1/2 columns")
	courses := drawWall("1000x600 300x100+2 1/2")
	line, edge := -30*mm, 70*mm
	rows := func(w *Wall, s Setting) (out []bond.Row) {
		box := plane.Rect{Right: 1000 * mm, Top: 600 * mm}
		return w.facts.rows(s, w.facts.frame.rect(box))
	}
	require.Equal(t, rows(courses, Setting{Line: line, Edge: edge}), rows(columns, Setting{Line: edge, Edge: line}))
}
