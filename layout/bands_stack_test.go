package layout_test

import (
	"testing"

	"coursewright/layout"
	"coursewright/layout/keep"
	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// stackOfBands is a liner, a course of mosaic upon it and another liner upon that.
func stackOfBands(bottom survey.Mark) []survey.Band {
	liner := survey.Band{Name: "liner", Tile: survey.Tile{Width: "8", Height: "1/2"}, Bottom: bottom}
	deco := survey.Band{Name: "deco", Tile: survey.Tile{Width: "1 7/8", Height: "1 7/8"}, Upon: "liner"}
	cap := survey.Band{Name: "cap", Tile: survey.Tile{Width: "8", Height: "1/2"}, Upon: "deco"}
	return []survey.Band{liner, deco, cap}
}

// Bands that stand upon one another keep a joint between them wherever they go, and take their
// place together: by hand 1/2 + 1/8 + 1 7/8 + 1/8 + 1/2 = 3 1/8 in from the lowest edge to the highest.
func TestBandsStandUponEachOther(t *testing.T) {
	for name, change := range map[string]func(*survey.Job){
		"measured": func(j *survey.Job) { j.Bands = stackOfBands(survey.Mark{At: "20"}) },
		"free":     func(j *survey.Job) { j.Bands = stackOfBands(survey.Mark{From: "16", To: "22"}) },
		"beside a corner that leans": func(j *survey.Job) {
			j.Bands = stackOfBands(survey.Mark{At: "20"})
			j.Walls[1].Left.Lean = []survey.Lean{{Height: "-38", Off: "0"}, {Height: "45", Off: "1/4"}}
		},
		"in a pattern": func(j *survey.Job) {
			j.Bond, j.Bands = survey.Bond{Kind: "herringbone"}, stackOfBands(survey.Mark{At: "-20"})
		},
		"beside a strip": func(j *survey.Job) {
			j.Bands, j.Walls[0].Strips = stackOfBands(survey.Mark{At: "20"}), []survey.Strip{slate(survey.Mark{At: "19 3/4"})}
		},
		"the last up to the head": func(j *survey.Job) {
			j.Bands = stackOfBands(survey.Mark{From: "16", To: "22"})
			j.Bands[2].ToHead = true
		},
	} {
		job := demo(t)
		change(&job)
		p, err := layout.Now(job)
		require.NoError(t, err, name)
		bands, joint := p.Setout.Bands, p.Setout.Joint
		require.Len(t, bands, 3)
		assert.Equal(t, joint, bands[1].Bottom-bands[0].Top, name)
		assert.Equal(t, joint, bands[2].Bottom-bands[1].Top, name)
		if !job.Bands[2].ToHead {
			assert.Equal(t, 25*length.Inch/8, bands[2].Top-bands[0].Bottom, name)
		}
		wallsMadeUp(t, p)
		again, err := layout.Now(keep.Hold(job, keep.Of("", job, p.Setout, p.Walls)))
		require.NoError(t, err, name)
		assert.True(t, keep.Same(p.Walls, again.Walls), name)
	}
}

// With a range of joints the bands stay upon each other with the joint that is chosen.
func TestBandsUponEachOtherFollowTheJoint(t *testing.T) {
	job := demo(t)
	job.Bands = stackOfBands(survey.Mark{From: "16", To: "22"})
	job.Joint = survey.Measure{Mark: &survey.Mark{From: "1/16", To: "3/16"}}
	p, err := layout.Now(job)
	require.NoError(t, err)
	assert.Equal(t, p.Setout.Joint, p.Setout.Bands[1].Bottom-p.Setout.Bands[0].Top)
	assert.Equal(t, p.Setout.Joint, p.Setout.Bands[2].Bottom-p.Setout.Bands[1].Top)
}
