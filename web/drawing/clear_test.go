package drawing

import (
	"cmp"
	"os"
	"slices"
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
	plan, err := layout.Now(job)
	require.NoError(t, err)
	return plan
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
	slices.SortStableFunc(names, func(a, b Label) int { return cmp.Compare(a.At.X, b.At.X) })
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
				assert.LessOrEqual(t, l.box().to.X, s.Width-keyWide, "the heading keeps clear of the key plan")
			}
		}
	}
}

// labels gives the texts of one kind.
func labels(s Scene, k Kind) []Label {
	var out []Label
	for _, e := range s.Elements {
		if l, ok := e.(Label); ok && l.Kind == k {
			out = append(out, l)
		}
	}
	return out
}

// A flag's leader keeps off the texts where there is a place from which it can.
func TestALeaderStrikesNoText(t *testing.T) {
	b := &board{Scene: Scene{Width: 100000, Height: 100000}}
	at := Point{50000, 50000}
	above := box{Point{40000, 44000}, Point{60000, 47000}}
	b.keep(above)
	c, found := b.free(at)
	require.True(t, found)
	assert.False(t, b.strikes(at, c), "%v", c)
	for _, t := range []box{{Point{40000, 53000}, Point{60000, 56000}}, {Point{53000, 40000}, Point{56000, 60000}}, {Point{44000, 40000}, Point{47000, 60000}}} {
		b.keep(t)
	}
	c, found = b.free(at)
	require.True(t, found)
	assert.True(t, b.vacant(flagBox(c)), "walled in, it covers no text all the same")
}

func TestTheSlideCurveShowsHowFarTheStartMaySlip(t *testing.T) {
	p := alcove(t, strings.Clone)
	start := &p.Walls[1].Start
	bars := func() int {
		n := 0
		for _, e := range Slide(p, 1, 0).Elements {
			if l, ok := e.(Path); ok && l.Kind == Start && l.Width == 900 {
				assert.Less(t, l.Rings[0][0].X, l.Rings[0][1].X)
				n++
			}
		}
		return n
	}
	require.Less(t, start.From, start.To)
	assert.Equal(t, 1, bars())
	start.From, start.To = start.Edge, start.Edge
	assert.Zero(t, bars())
}
