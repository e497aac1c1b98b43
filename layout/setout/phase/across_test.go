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

// Law 2 where a free niche may stand across the ceiling, level or slanted: a piece beside where it may stand covers ceiling
// there that it leaves free, which was once sure to be bare.
func TestNoSetOutBeatsItsCornersAcrossARoof(t *testing.T) {
	across := 0
	rapid.Check(t, func(t *rapid.T) {
		r := randomRoom(t, 1)
		draw := func(name string, lo, hi int) length.Length {
			return length.Length(rapid.IntRange(lo, hi).Draw(t, name)) * mm
		}
		wall := &r.Walls[0]
		low, high := draw("low", 60, 320), draw("falls", 0, 300)
		wall.Head = survey.HeadFound{Meets: true, Gap: 3 * mm, Readings: []survey.Reading{{At: 0, Value: low}, {At: wall.Width, Value: low + high}}}
		if rapid.Bool().Draw(t, "the other way") {
			wall.Head.Readings[0].Value, wall.Head.Readings[1].Value = low+high, low
		}
		span := func(name string, lo, hi, more int) survey.Span {
			from := draw(name, lo, hi)
			return survey.Span{From: from, To: from + draw(name+" range", 0, more)}
		}
		wall.Openings = []survey.OpeningFound{{Kind: survey.Niche, Name: "n", Left: span("left", 30, 160, 60), Width: span("width", 60, 160, 30),
			Bottom: span("bottom", -60, 200, 60), Height: span("height", 50, 200, 40)}}
		if o := &wall.Openings[0]; o.Bottom.To+o.Height.To < low {
			t.Skip("it stands clear")
		}
		w := NewWall(&r, r.Walls[0], bond.For(r, r.Bond.Hand))
		for range 4 {
			line := length.Length(rapid.IntRange(-400_000, 400_000).Draw(t, "line"))
			edge := length.Length(rapid.IntRange(-200_000, 900_000).Draw(t, "edge"))
			sharper := func() int { return rapid.IntRange(0, 4).Draw(t, "sharper") }
			option := func(most int) int { return rapid.IntRange(0, min(20, most)).Draw(t, "option") }
			other := merit.Merit{Sight: merit.Sight{Slivers: rapid.IntRange(0, 3).Draw(t, "slivers")}}
			s, bounds, ok := everyBound(w, line, edge, sharper, option, &other)
			if ok {
				across++
				nothingBeats(t, w, s, bounds)
			}
		}
	})
	require.Positive(t, across)
}
