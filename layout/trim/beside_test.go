package trim_test

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/layout/trim"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A metal profile holds by its flange under tile: it ends over the rim where the tile runs no further
// than the front of the tub, and goes down to the floor beside a leg of tile. Bullnose goes down by
// itself. By hand: a tub of 15 in from 10 in on, its gap 1/8 in, tile from 9 7/8 or from 8 in on.
func TestAProfileNeedsTileBesideIt(t *testing.T) {
	w := wall(&survey.TrimFound{Name: "p", Kind: survey.Profile, Width: in / 2, Length: 96 * in}, nil, nil)
	w.Base = []survey.SegmentFound{{Meets: survey.Floor, Gap: in / 8, Readings: []survey.Reading{{At: 0}, {At: 10 * in}}},
		{Meets: survey.Tub, Gap: in / 8, Readings: []survey.Reading{{At: 10 * in, Value: 15 * in}, {At: 60 * in, Value: 15 * in}}}}
	for _, c := range []struct {
		name string
		end  int // where tile ends, in eighths
		kind survey.Kind
		foot int // where the trim begins, in eighths
	}{{"no leg", 79, survey.Profile, 15*8 + 1}, {"a leg", 64, survey.Profile, 1}, {"bullnose", 79, survey.Bullnose, 1}} {
		w.Left.Stops = survey.Span{From: in / 8 * length.Length(c.end), To: in / 8 * length.Length(c.end)}
		w.Left.Trim.Kind = c.kind
		pieces := trim.Of(w, placed(w), running)
		require.NotEmpty(t, pieces, c.name)
		assert.Equal(t, in/8*length.Length(c.foot), pieces[0].Face.Bounds().Bottom, c.name)
	}
}
