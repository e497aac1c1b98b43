package drawing

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
)

// jobPlan solves a job of testdata.
func jobPlan(t *testing.T, name string) layout.Plan {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "jobs", name+".json"))
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	plan, err := layout.Now(job)
	require.NoError(t, err)
	return plan
}

// The strip on the phone names the tile and both of its heights, whatever the tile's
// width; of a pattern without courses it has no heights, which would not be those of a cut.
func TestTheStripHasBothHeights(t *testing.T) {
	for name, heights := range map[string]bool{"alcove": true, "old-house": true, "corner-shower": true, "herringbone": false} {
		plan := jobPlan(t, name)
		in := stages.Input{Room: plan.Room, Walls: plan.Walls}
		for i, w := range plan.Walls {
			for _, p := range w.Pieces {
				if !in.FirstCourse(w, p) {
					continue
				}
				s := Footing(plan, i, []string{p.ID})
				figures, names := labels(s, Size), labels(s, Name)
				require.Len(t, names, 1, "%s, %s", name, p.ID)
				assert.Equal(t, p.ID, names[0].Text)
				if !heights {
					assert.Empty(t, figures, "%s, %s", name, p.ID)
					continue
				}
				require.Len(t, figures, 2, "%s, %s", name, p.ID)
				l, r := FootEnds(w, p)
				step, top := plan.Room.Units.FineStep(), p.Face.Bounds().Top
				for k, y := range []string{(top - l.Y).FloorTo(step).Fine(plan.Room.Units), (top - r.Y).FloorTo(step).Fine(plan.Room.Units)} {
					assert.Equal(t, y, figures[k].Text, "%s, %s", name, p.ID)
				}
				for _, f := range append(figures, names...) {
					from, to := f.Room()
					assert.True(t, from.X >= 0 && to.X <= s.Width && to.Y <= s.Height, "%s, %s: %s", name, p.ID, strings.TrimSpace(f.Text))
				}
			}
		}
	}
}
