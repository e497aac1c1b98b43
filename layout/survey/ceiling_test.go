package survey_test

import (
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
)

// under is a wall of 60 in under a roof that rises from 20 in at its left to 60 in at its
// right, with a niche 12 in wide and 10 in high whose sill is at a height.
func under(left, bottom *survey.Mark, inside *survey.Inside) survey.Job {
	job := sketch("in", "a")
	job.Walls[0].Head = survey.Head{Meets: "ceiling", Readings: []survey.Rise{{At: "0", Rise: "20"}, {At: "60", Rise: "60"}}}
	job.Walls[0].Openings = []survey.Opening{{Kind: "niche", Name: "shelf", Left: left, Width: mark("12"), Bottom: bottom,
		Height: &survey.Measure{Mark: mark("10")}, Inside: inside}}
	return job
}

// At 15 in from the left the roof is 30 in high: a niche there whose top is at 30 1/4 in, twice the
// doubt of 1/8 in over that, is asked about; one at 30 5/16 in is refused, if it is to be tiled inside.
func TestAnOpeningThroughTheCeilingIsRefused(t *testing.T) {
	boxed := &survey.Inside{Depth: "3 1/2"}
	free := &survey.Mark{From: "15", To: "30"}
	for _, c := range []struct {
		what string
		job  survey.Job
		want string
	}{
		{"under the ceiling", under(mark("15"), mark("20"), boxed), ""},
		{"through it by what may be wrong", under(mark("15"), mark("20 1/4"), boxed), ""},
		{"through it", under(mark("15"), mark("20 5/16"), boxed), "walls[0].openings[0].bottom: found niche shelf with its top at 30 5/16; write a top no higher than the ceiling over it, which is at 30 where it stands best, from 15"},
		{"through it, but with nothing inside", under(mark("15"), mark("40"), nil), ""},
		{"free, and under it further right", under(free, mark("29 1/2"), boxed), ""},
		{"free, and through it everywhere", under(free, mark("31"), boxed), "walls[0].openings[0].bottom: found niche shelf with its top at 41; write a top no higher than the ceiling over it, which is at 40 where it stands best, from 30"},
	} {
		_, faults := c.job.Resolve()
		if c.want == "" {
			assert.Empty(t, faults, c.what)
		} else if assert.Len(t, faults, 1, c.what) {
			assert.Equal(t, c.want, faults[0].String(), c.what)
		}
	}
}

// Under a ridge at 30 in, 60 in high over 20 in at both ends, a niche 12 in wide is as high as can
// be where its middle is under the ridge: 6 in beside it the roof is 60 - 6 × 40/30 = 52 in high.
func TestANicheUnderARidge(t *testing.T) {
	for bottom, fits := range map[string]bool{"42 1/4": true, "42 5/16": false} {
		job := under(&survey.Mark{From: "5", To: "40"}, mark(bottom), &survey.Inside{Depth: "3 1/2"})
		job.Walls[0].Head.Readings = []survey.Rise{{At: "0", Rise: "20"}, {At: "30", Rise: "60"}, {At: "60", Rise: "20"}}
		_, faults := job.Resolve()
		assert.Equal(t, fits, len(faults) == 0, "%s: %v", bottom, faults)
	}
}
