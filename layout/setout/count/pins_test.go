package count

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// What is pinned no longer moves; a pinned far edge of an opening leaves its near edge what
// its size allows.
func TestPinnedMarksAreFixed(t *testing.T) {
	const line = "1000x600 300x100+2 left=0..80 right=900..1000 head=500..600 niche=200..300,100..150,100..200,150"
	at := func(x length.Length) survey.Span { return survey.Span{From: x * mm, To: x * mm} }
	between := func(a, b length.Length) survey.Span { return survey.Span{From: a * mm, To: b * mm} }
	_, unpinned := sketch(line)
	niche := unpinned.Openings[0]
	for name, c := range map[string]struct {
		mark survey.MarkName
		at   length.Length
		want func(*survey.WallFound)
	}{
		"the left end":  {survey.EndLeft, 33, func(w *survey.WallFound) { w.Left.Stops = at(33) }},
		"the right end": {survey.EndRight, 950, func(w *survey.WallFound) { w.Right.Stops = at(950) }},
		"the head":      {survey.HeadMark, 555, func(w *survey.WallFound) { w.Head.Stops = at(555) }},
		"a near edge":   {niche.Mark(survey.LeftEdge), 222, func(w *survey.WallFound) { w.Openings[0].Left = at(222) }},
		"a bottom":      {niche.Mark(survey.BottomEdge), 111, func(w *survey.WallFound) { w.Openings[0].Bottom = at(111) }},
		"a far edge": {niche.Mark(survey.RightEdge), 370, func(w *survey.WallFound) {
			w.Openings[0].Left, w.Openings[0].Width = between(220, 270), between(100, 150)
		}},
		"a far edge, near": {niche.Mark(survey.RightEdge), 320, func(w *survey.WallFound) {
			w.Openings[0].Left, w.Openings[0].Width = between(200, 220), between(100, 120)
		}},
		"a top": {niche.Mark(survey.TopEdge), 300, func(w *survey.WallFound) { w.Openings[0].Bottom, w.Openings[0].Height = at(150), at(150) }},
	} {
		_, found := sketch(line)
		found.MarkPins = map[survey.MarkName]length.Length{c.mark: c.at * mm}
		_, want := sketch(line)
		want.MarkPins = found.MarkPins
		c.want(&want)
		require.Equal(t, want, WithPins(found), name)
		require.Equal(t, niche, found.Openings[0], "%s: the survey's own wall is left alone", name)
	}
	require.Equal(t, unpinned, WithPins(unpinned))
}

// A place listed for an opening has its pinned edge where it is pinned.
func TestPlacesKeepToPins(t *testing.T) {
	room, found := sketch("1000x600 300x100+2 niche=200..300,100..150,100..200,150")
	niche := found.Openings[0]
	for edge, at := range map[survey.EdgeName]length.Length{survey.LeftEdge: 222 * mm, survey.RightEdge: 370 * mm} {
		found.MarkPins = map[survey.MarkName]length.Length{niche.Mark(edge): at}
		w := NewWall(&room, found, survey.Left)
		pairs := w.Places.LevelPairs(0, 17*mm)
		require.NotEmpty(t, pairs)
		for _, p := range pairs {
			stands := p.Low
			if edge == survey.RightEdge {
				stands = p.High
			}
			require.Equal(t, at, stands, string(edge))
		}
	}
}
