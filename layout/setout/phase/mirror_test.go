package phase

import (
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// alikeEnds is a wall between two corners with a free head and a free niche that may stand so near an end that it cuts
// tiles there.
func alikeEnds(t *rapid.T) *Wall {
	r := randomRoom(t, 1)
	draw := func(name string, lo, hi int) length.Length {
		return length.Length(rapid.IntRange(lo, hi).Draw(t, name)) * mm
	}
	wall := &r.Walls[0]
	wall.Width = draw("wide", 700, 1200)
	wall.Left, wall.Right = survey.EndFound{Meets: true, Gap: 3 * mm, Beyond: -1}, survey.EndFound{Meets: true, Gap: 3 * mm, Beyond: -1}
	wall.Base = wall.Base[:1]
	wall.Base[0].Readings = []survey.Reading{{At: 0, Value: -600 * mm}, {At: wall.Width, Value: -596 * mm}}
	high := draw("head", 0, 200)
	wall.Head = survey.HeadFound{Stops: survey.Span{From: high, To: high + draw("head range", 5, 60)}}
	span := func(name string, lo, hi, more int) survey.Span {
		from := draw(name, lo, hi)
		return survey.Span{From: from, To: from + draw(name+" range", 1, more)}
	}
	niche := survey.OpeningFound{Kind: survey.Niche, Name: "n", Left: span("left", 30, 400, 120), Width: survey.Span{From: 120 * mm, To: 120 * mm},
		Bottom: span("bottom", -400, -250, 60), Height: survey.Span{From: 100 * mm, To: 100 * mm}}
	wall.Openings = []survey.OpeningFound{niche}
	return NewWall(&r, r.Walls[0], bond.For(r, r.Bond.Hand))
}

// Law 2 for how alike the ends are.
func TestNoSetOutBeatsHowItsEndsDiffer(t *testing.T) {
	differ := 0
	rapid.Check(t, func(t *rapid.T) {
		w := alikeEnds(t)
		for range 4 {
			line := length.Length(rapid.IntRange(-400_000, 400_000).Draw(t, "line"))
			edge := length.Length(rapid.IntRange(-200_000, 900_000).Draw(t, "edge"))
			sharper := func() int { return rapid.IntRange(0, 8).Draw(t, "sharper") }
			option := func(most int) int { return rapid.IntRange(0, min(20, most)).Draw(t, "option") }
			s, bounds, ok := everyBound(w, line, edge, sharper, option, &merit.Merit{})
			if !ok {
				continue
			}
			for name, m := range bounds {
				if name != "options" && name != "corners of the marks" && m.Mirror > 0 {
					differ++
				}
			}
			nothingBeats(t, w, s, bounds)
		}
	})
	require.Positive(t, differ)
}

// What is said of the ends with the head placed holds by itself, wherever the niche goes, where every piece can be cut:
// elsewhere it counts only where all is alike before it.
func TestNoNicheMakesUpForHowEndsDiffer(t *testing.T) {
	differ := 0
	rapid.Check(t, func(t *rapid.T) {
		w := alikeEnds(t)
		for range 4 {
			h := &hunt{wall: w, line: length.Length(rapid.IntRange(-400_000, 400_000).Draw(t, "line"))}
			x := &stretch{edge: length.Length(rapid.IntRange(-200_000, 900_000).Draw(t, "edge")), marks: 1}
			x.merit = w.AtBest(h.line, x.edge, 0, 0)
			c, pick := w.choose(x, h), make([]int, len(w.axes))
			for len(c.axes) < len(w.axes) {
				c.closer(nil)
				c.list()
			}
			for axis := range pick {
				pick[axis] = rapid.IntRange(0, 9).Draw(t, "option")
				for c.option(axis, pick[axis]) == nil && pick[axis] > 0 {
					pick[axis]--
				}
			}
			placed, ok := c.placed(pick)
			if !ok {
				continue
			}
			got := w.Count(Setting{Line: h.line, Edge: x.edge, Placed: placed}).Merit
			if got.Sight.Unworkable+got.OutOfSight.Unworkable > 0 {
				continue // of a piece that is hardly there it is not said that it is
			}
			for axis, n := range pick {
				if o := c.option(axis, n); w.axes[axis].opening < 0 && o.alone.Mirror > 0 {
					differ++
					require.LessOrEqual(t, o.alone.Mirror, got.Mirror, "%v at %v and %v", placed, h.line, x.edge)
				}
			}
		}
	})
	require.Positive(t, differ)
}
