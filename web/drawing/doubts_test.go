package drawing_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/web/drawing"
)

// A reading in doubt is drawn with a sign at its place, on the wrap and on its wall alone, and said in the notes;
// on paper, and where nothing is doubted, there is none.
func TestAReadingInDoubtIsMarked(t *testing.T) {
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	plan := func() layout.Plan {
		p, err := layout.Quick(t.Context(), job)
		require.NoError(t, err)
		return p
	}
	assert.Empty(t, doubts(drawing.Wrap(plan(), drawing.Options{})))
	job.Walls[1].Base[0].Readings[0].Drop, job.Walls[0].Base[1].Readings[1].Drop = "83 3/4", "83 3/4" // digits swapped
	p := plan()
	require.NotEmpty(t, p.Doubts)
	at := p.Doubts[0].Wall
	r := p.Walls[at].Found.Base[len(p.Walls[at].Found.Base)-1].Readings
	for _, wide := range []drawing.Micron{366, 736, 1006} {
		o := drawing.Options{Handles: true, Wide: wide * drawing.Pixel}
		assert.NotEmpty(t, doubts(drawing.Wrap(p, o)), "%d", wide)
		s := drawing.Elevation(p, at, o)
		found := doubts(s)
		require.NotEmpty(t, found, "%d", wide)
		part := s.Parts[0]
		places := []drawing.Point{}
		for _, x := range r {
			places = append(places, drawing.Point{X: part.Origin.X + s.Scale.On(x.At), Y: part.Origin.Y - s.Scale.On(x.Value)})
		}
		assert.Contains(t, places, found[0], "at the reading, %d", wide)
		assert.True(t, says(s, "in doubt"), "%d", wide)
	}
	assert.Empty(t, doubts(drawing.Elevation(p, at, drawing.Options{Sheet: true, Scale: drawing.Scale{Paper: 1, Real: 10}})))
}

// doubts are the places that are marked as in doubt.
func doubts(s drawing.Scene) []drawing.Point {
	var out []drawing.Point
	for _, e := range s.Elements {
		if d, is := e.(drawing.Disc); is && d.Kind == drawing.Doubt {
			out = append(out, d.Centre)
		}
	}
	return out
}

// says tells whether some text of a drawing holds words.
func says(s drawing.Scene, words string) bool {
	var all []string
	for _, e := range s.Elements {
		if l, is := e.(drawing.Label); is {
			all = append(all, l.Text)
		}
	}
	return strings.Contains(strings.Join(all, " "), words)
}
