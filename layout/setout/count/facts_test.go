package count

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// What is known of a wall before anything is decided.
func TestWhichMarksOfAWallMove(t *testing.T) {
	type moves struct{ left, right, head, end, like, fixed bool }
	for line, want := range map[string]moves{
		"1000x600 300x100+2":                                 {like: true, fixed: true},
		"1000x600 300x100+2 left=0..80":                      {left: true, end: true},
		"1000x600 300x100+2 right=920..1000":                 {right: true, end: true},
		"1000x600 300x100+2 left=0..80 right=920..1000":      {left: true, right: true, like: true},
		"1000x600 300x100+2 left=0..80 right=1000":           {left: true, like: true},
		"1000x600 300x100+2 left=0 right=920..1000":          {right: true, like: true},
		"1000x600 300x100+2 left=40":                         {fixed: true},
		"1000x600 300x100+2 left=40 right=960":               {like: true, fixed: true},
		"1000x600 300x100+2 head=500..600":                   {head: true, like: true, fixed: true},
		"1000x600 300x100+2 head=500":                        {like: true, fixed: true},
		"1000x600 300x100+2 columns head=500..600 left=0..9": {left: true, head: true, end: true},
	} {
		w := drawWall(line).facts
		got := moves{w.moves(survey.SideLeft), w.moves(survey.SideRight), w.moves(survey.SideHead), w.movesEnd(), w.likeEnds(), w.fixedEnds()}
		require.Equal(t, want, got, line)
		require.False(t, w.moves(survey.SideBase), "a base never moves")
	}
}

// Where free marks leave most wall, and which openings have one.
func TestTheOutermostPlacesOfMarks(t *testing.T) {
	w := drawWall("1000x600 300x100+2 left=10..80 right=920..990 head=500..600 window=200,100,50,60 niche=300..320,100,200..240,60 pipe=800,300,40")
	p := w.Outer()
	require.Equal(t, []length.Length{10 * mm, 990 * mm, 600 * mm}, []length.Length{p.Left, p.Right, p.Head})
	require.Equal(t, survey.Edges{Left: 200 * mm, Right: 300 * mm, Bottom: 50 * mm, Top: 110 * mm}, p.Openings[0])
	require.Equal(t, survey.Edges{Left: 300 * mm, Right: 400 * mm, Bottom: 200 * mm, Top: 260 * mm}, p.Openings[1])
	require.Equal(t, []int{1}, w.Free())
	require.Equal(t, plane.Rect{Left: 10 * mm, Right: 990 * mm, Top: 600 * mm}, w.Box())
	for _, line := range []string{"niche=300..301,100,200,60", "niche=300,100..101,200,60", "niche=300,100,200..201,60", "niche=300,100,200,60..61"} {
		require.Equal(t, []int{0}, drawWall("1000x600 300x100+2 "+line).Free(), line)
	}
}

// Classes, periods and margins by hand.
func TestClassesPeriodsAndMargins(t *testing.T) {
	for line, want := range map[string]struct {
		classes, ends int
		period        length.Length // across the rows
	}{
		"1000x600 300x100+2":             {1, 1, 102},
		"1000x600 300x100+2 1/2":         {2, 2, 204},
		"1000x600 300x100+2 1/3":         {3, 3, 306},
		"1000x600 300x100+2 1/3 columns": {3, 1, 906},
	} {
		w := drawWall(line).facts
		require.Equal(t, want.classes, len(w.shifts), line)
		require.Equal(t, want.ends, w.classes(), line)
		require.Equal(t, want.period*mm, w.period(), line)
		for course := -7; course < 7; course++ {
			require.Equal(t, w.class(course), w.class(course+want.classes), "%s: course %d", line, course)
		}
		require.Zero(t, w.class(0))
		require.Equal(t, want.classes-1, w.class(-1), "counted on downwards")
	}
	plain, covered := drawWall("1000x600 300x100+2").facts, drawWall("1000x600 300x100+2 cover=13").facts
	require.Equal(t, 8*mm+4, plain.margin(), "sealant of 6, a joint of 2, and a few units")
	require.Equal(t, 21*mm+4, covered.margin())
	require.Equal(t, []bool{false, true}, []bool{plain.covered(), covered.covered()})
	require.Equal(t, 7*mm, plain.mark(8*mm-1), "whole marks, rounded down")
	require.Equal(t, 6*mm, plain.fills())
	require.Equal(t, 3*mm, drawWall("1000x600 300x100+2 gap=3").facts.fills())
}

// A pipe takes its diameter and 3 mm all round (ANSI A108.02 4.3), and the box that rows keep
// clear of holds all corners of the hole's ring.
func TestWhatAPipeTakes(t *testing.T) {
	w := drawWall("1000x600 300x100+2 pipe=500,300,40").facts
	require.Equal(t, plane.Rect{Left: 477 * mm, Right: 523 * mm, Bottom: 277 * mm, Top: 323 * mm}, w.boxOf(0, w.found.Openings[0], w.outer))
	hole := w.holes[0]
	for _, ring := range w.field.Region {
		for _, c := range ring {
			if c.On == survey.SideBase+1 {
				require.True(t, hole.Left < c.X && c.X < hole.Right && hole.Bottom < c.Y && c.Y < hole.Top, "%v", c.Point)
			}
		}
	}
	columns := drawWall("1000x600 300x100+2 columns pipe=500,300,40").facts
	require.Equal(t, hole.Transposed(), columns.holes[0])
}

// Rows reach over the box of the tile, and one beyond it each way, at the places that the bond
// gives them.
func TestRowsOfASetOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s := drawn(t)
		f, box := w.facts, w.facts.frame.rect(w.Box())
		rows := f.rows(s, w.Box())
		along, across := f.frame.phases(s.Line, s.Edge)
		pitch := f.rule.Across + f.room.Joint
		require.LessOrEqual(t, rows[0].Low, box.Bottom)
		require.GreaterOrEqual(t, rows[len(rows)-1].High, box.Top)
		for i, row := range rows {
			require.Equal(t, across+length.Length(row.Course)*pitch, row.Low)
			require.Equal(t, f.rule.Across, row.High-row.Low)
			require.Zero(t, length.Mod(row.First-along-f.shifts[f.class(row.Course)], row.Pitch))
			if i > 0 {
				require.Equal(t, rows[i-1].Course+1, row.Course)
			}
		}
	})
}

// Keys of placings are equal where the placings are, and only there.
func TestKeysOfPlacings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string) length.Length { return length.Length(rapid.Int64Range(-3, 3).Draw(t, name)) << 30 }
		draw := func() survey.Placed {
			return survey.Placed{Left: n("left"), Right: n("right"), Head: n("head"), Openings: []survey.Edges{{Left: n("l"), Bottom: n("b"), Right: n("r"), Top: n("t")}}}
		}
		a, b := draw(), draw()
		require.Equal(t, a.Left == b.Left && a.Right == b.Right && a.Head == b.Head && a.Openings[0] == b.Openings[0], placedKey(a) == placedKey(b))
	})
}
