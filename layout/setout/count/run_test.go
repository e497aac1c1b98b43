package count

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

var (
	atLeft  = piece.EdgeOf(survey.SideLeft, piece.OnLeft)
	atRight = piece.EdgeOf(survey.SideRight, piece.OnRight)
	atHead  = piece.EdgeOf(survey.SideHead, piece.Over)
	atBase  = piece.EdgeOf(survey.SideBase, piece.Under)
)

// Runs are told apart by their edges and their class, and numbered as they are met.
func TestRunsAreNumberedAsTheyAreMet(t *testing.T) {
	w := drawWall("1000x600 300x100+2").facts
	r := &registry{w: w, numbers: map[runKey]int{}}
	for i, k := range []runKey{keyOf([]piece.Edge{atLeft}, 0), keyOf([]piece.Edge{atLeft}, 1), keyOf([]piece.Edge{atLeft, atRight}, 0), keyOf([]piece.Edge{atRight}, 0)} {
		require.Equal(t, i, r.number(k))
	}
	require.Equal(t, 1, r.number(keyOf([]piece.Edge{atLeft}, 1)), "met before")
	require.Equal(t, keyOf([]piece.Edge{1, 2, 3, 4, 5}, 0), keyOf([]piece.Edge{1, 2, 3, 4, 6}, 0), "by the first four edges")

	for _, edges := range [][]piece.Edge{{atLeft}, {atLeft, atRight}, {atHead}} {
		got := r.runOf(keyOf(edges, 1))
		require.Equal(t, Run{Edges: edges, Class: 1}, got)
	}
}

// Merit.md, terms 4, 7 and 9: shares are of whole marks of the tape; a fifth, a third and
// a half are not under themselves; the base and the head count up to a whole tile.
func TestWhatRunsGive(t *testing.T) {
	w := drawWall("1000x600 300x100+2 leg=150").facts
	rim, floor := piece.EdgeOf(survey.SideBase+1, piece.Under), atBase
	one := func(least length.Length, edges ...piece.Edge) Run {
		r := Run{Edges: edges, Least: least}
		for _, e := range edges {
			r.Low = r.Low || e.Low(w.rule.Sides)
		}
		return r
	}
	for name, c := range map[string]struct {
		run                                               Run
		fifths, thirds, runs, hidden, rim, head, hidFifth int
	}{
		"149 of 300":                         {run: one(149*mm, atLeft), runs: 1},
		"150 of 300":                         {run: one(150*mm, atLeft)},
		"100 of 300":                         {run: one(100*mm, atLeft), runs: 1},
		"a unit under 100 is 99 marks":       {run: one(100*mm-1, atLeft), runs: 1, thirds: 1},
		"60 of 300":                          {run: one(60*mm, atLeft), runs: 1, thirds: 1},
		"59 of 300":                          {run: one(59*mm, atLeft), runs: 1, thirds: 1, fifths: 1},
		"half a course at the rim":           {run: one(50*mm, rim), rim: 1},
		"less than half of one":              {run: one(49*mm, rim), rim: 1, runs: 1},
		"a whole course at the rim":          {run: one(100*mm, rim)},
		"at the head":                        {run: one(80*mm, atHead), head: 1},
		"between rim and head":               {run: one(80*mm, rim, atHead)},
		"over the floor, out of sight":       {run: one(40*mm, floor), hidden: 1},
		"in the corner of a leg, and narrow": {run: one(59*mm, atLeft, floor), hidden: 1, hidFifth: 1},
	} {
		var m merit.Merit
		w.addRuns(&m, []Run{c.run})
		require.True(t, m.Part, name)
		require.Equal(t, []int{c.fifths, c.thirds, c.runs, c.hidden, c.rim, c.head, c.hidFifth},
			[]int{m.Fifths, m.Thirds, len(m.Runs), len(m.OutOfSight.Runs), len(m.Rim), len(m.Head), m.OutOfSight.Fifths}, name)
	}
	var m merit.Merit
	w.addRuns(&m, []Run{one(130*mm, atRight), one(40*mm, rim), one(100*mm, atLeft)})
	require.Equal(t, []piece.Share{{Num: int64(100 * mm), Den: int64(300 * mm)}, {Num: int64(40 * mm), Den: int64(100 * mm)}, {Num: int64(130 * mm), Den: int64(300 * mm)}},
		m.Runs[:3:3], "ascending, by share: a third, 40 % of a course")
}

// The cuts at an end: the least of each class, whole where nothing cuts it there alone.
func TestCutsAtAnEnd(t *testing.T) {
	w := drawWall("1000x600 300x100+2 1/3").facts
	runs := []Run{
		{Edges: []piece.Edge{atLeft}, Class: 0, Least: 120 * mm},
		{Edges: []piece.Edge{atLeft}, Class: 2, Least: 40 * mm},
		{Edges: []piece.Edge{atLeft, atRight}, Class: 1, Least: 10 * mm}, // from end to end: no cut of the left alone
		{Edges: []piece.Edge{atRight}, Class: 1, Least: 20 * mm},
	}
	require.Equal(t, millimetres([]length.Length{40, 120, 300}), w.cuts(runs, survey.SideLeft))
	require.Equal(t, millimetres([]length.Length{20, 300, 300}), w.cuts(runs, survey.SideRight))
	columns := drawWall("1000x600 300x100+2 1/3 columns").facts
	require.Len(t, columns.cuts(nil, survey.SideLeft), 1, "columns have one class at an end")
	require.Equal(t, millimetres([]length.Length{40}), columns.cuts(runs, survey.SideLeft), "though a lean may cross several")
	require.Equal(t, 80*mm+20*mm, differences(millimetres([]length.Length{40, 120, 300}), millimetres([]length.Length{20, 200, 300})))
}
