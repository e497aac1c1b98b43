package layout_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"coursewright/layout"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// printed is what a plan file says of a set-out.
type printed struct {
	Course struct{ Line json.Number }
	Walls  []struct {
		Name  string
		Laid  string
		Start struct {
			X  json.Number
			Is string
		}
		Marks map[string]any
	}
}

func printOf(t require.TestingT, job survey.Job) (layout.Plan, printed) {
	plan, err := layout.Now(job)
	require.NoError(t, err)
	written, err := plan.File()
	require.NoError(t, err)
	var p printed
	require.NoError(t, json.Unmarshal(written, &p))
	return plan, p
}

// pins are those of a job that pin all that was printed.
func (p printed) pins(t require.TestingT) survey.Pins {
	pins := survey.Pins{Course: survey.CoursePin{Line: p.Course.Line.String() + " mm"}, Walls: map[string]survey.WallPin{}}
	for _, w := range p.Walls {
		x := w.Start.X.String() + " mm"
		pin := map[string]survey.WallPin{"edge": {Edge: x}, "joint": {Joint: x}, "tile": {Tile: x}}[w.Start.Is]
		require.NotEmpty(t, pin, "a word that pins a start: %s", w.Start.Is)
		if w.Laid == "single" { // there is no start to pin
			pin = survey.WallPin{}
		}
		pin.Marks = map[string]string{}
		for mark, value := range w.Marks {
			mm := func(v any) string { return strconv.FormatFloat(v.(float64), 'f', -1, 64) + " mm" }
			if edges, ok := value.(map[string]any); ok {
				for edge, v := range edges {
					pin.Marks[mark+" "+edge] = mm(v)
				}
				continue
			}
			pin.Marks[mark] = mm(value)
		}
		pins.Walls[w.Name] = pin
	}
	return pins
}

// Whatever a plan prints can be pinned as it is printed, to 0.001 mm, and gives
// the same set-out to the unit.
func TestAPlanCanBePinnedAsItIsPrinted(t *testing.T) {
	names, err := filepath.Glob("../testdata/jobs/*.json")
	require.NoError(t, err)
	for _, name := range names {
		t.Run(filepath.Base(name), func(t *testing.T) {
			data, err := os.ReadFile(name)
			require.NoError(t, err)
			job, err := survey.Read(data)
			require.NoError(t, err)
			plan, p := printOf(t, job)
			job.Pins = p.pins(t)
			again, _ := printOf(t, job)
			assert.Equal(t, plan.Setout.Line, again.Setout.Line)
			for i, w := range plan.Walls {
				assert.Equal(t, w.Start.Edge, again.Walls[i].Start.Edge, w.Found.Name)
				assert.Equal(t, w.Start.Placed, again.Walls[i].Start.Placed, w.Found.Name)
			}
		})
	}
}
