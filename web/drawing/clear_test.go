package drawing

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
)

// alcove solves the alcove of testdata with its walls renamed.
func alcove(t *testing.T, rename func(string) string) layout.Plan {
	t.Helper()
	file, err := os.ReadFile("../../testdata/jobs/alcove.json")
	require.NoError(t, err)
	job, err := survey.Read(file)
	require.NoError(t, err)
	job.SetOrder, job.Pins = nil, survey.Pins{}
	for i := range job.Walls {
		job.Walls[i].Name = rename(job.Walls[i].Name)
	}
	plan, err := layout.Solve(job)
	require.NoError(t, err)
	return plan
}

func TestFlagsCoverNoText(t *testing.T) {
	p := alcove(t, strings.Clone)
	flags := 0
	for i := range p.Walls {
		s := Elevation(p, i, Options{})
		b := board{Scene: s}
		for _, e := range s.Elements {
			d, ok := e.(Disc)
			if !ok || d.Kind != Finding || d.Radius != flagRadius {
				continue
			}
			flags++
			for _, e := range b.Elements {
				if l, ok := e.(Label); ok && l.Kind != Finding {
					assert.True(t, clearOf(d.Centre, []box{l.box()}), "flag %d covers %q", d.Finding, l.Text)
				}
			}
		}
	}
	assert.NotZero(t, flags)
}

func TestALongWallNameStaysOnItsWall(t *testing.T) {
	p := alcove(t, func(name string) string { return name + strings.Repeat(" of the wide upstairs bathroom", 2) })
	var names []Label
	s := Wrap(p, Options{})
	for _, e := range s.Elements {
		if l, ok := e.(Label); ok && l.Kind == Name {
			names = append(names, l)
		}
	}
	require.Len(t, names, 2*len(p.Walls))
	for i, l := range names {
		assert.LessOrEqual(t, l.box().to.X, s.Width, l.Text)
		if i > 0 {
			assert.LessOrEqual(t, names[i-1].box().to.X, l.box().from.X, "%q runs into %q", names[i-1].Text, l.Text)
		}
	}
	assert.Contains(t, names[1].Text, "…")
	for i := range p.Walls {
		s := Elevation(p, i, Options{})
		for _, e := range s.Elements {
			if l, ok := e.(Label); ok && l.Kind == Name && strings.Contains(l.Text, "…") {
				assert.LessOrEqual(t, l.box().to.X, s.Width-keyPlanRoom, "the heading keeps clear of the key plan")
			}
		}
	}
}
