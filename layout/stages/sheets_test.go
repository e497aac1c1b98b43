package stages_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/stages"
	"coursewright/layout/survey"
)

// Laws 1 to 3 of Order for mosaic: every piece is in one step, a sheet is one step, courses
// of sheets go upwards from the batten, then down under it, each from the start to the right
// and then to the left.
func TestMosaicIsSetByCoursesOfSheets(t *testing.T) {
	for name, change := range map[string]func(*survey.Job){
		"stack":       func(*survey.Job) {},
		"running":     func(j *survey.Job) { j.Bond.Kind = "running" },
		"chevron":     func(j *survey.Job) { j.Bond.Kind, j.Tile.Height = "chevron", "1" },
		"herringbone": func(j *survey.Job) { j.Bond.Kind, j.Tile.Height = "herringbone", "1" },
		"on a batten": func(j *survey.Job) { j.Pins.Course.Line = "-38" },
	} {
		in, steps := ordered(t, "sheets", "", change)
		times, sheets := map[string]int{}, map[string]int{}
		for i, s := range steps {
			if i > 0 {
				assert.GreaterOrEqual(t, s.Part, steps[i-1].Part, name)
			}
			for _, p := range s.Pieces {
				times[p.ID]++
			}
			if s.Sheet != nil {
				sheets[s.Sheet.ID]++
				assert.Len(t, s.Pieces, len(s.Sheet.Pieces), name)
			}
		}
		for _, w := range in.Walls {
			for _, p := range w.Pieces {
				require.Equal(t, 1, times[p.ID], "%s: %s", name, p.ID)
			}
		}
		listed := map[string]int{}
		rows := map[int]int{}
		for _, c := range stages.Sheets(in) {
			w := in.Walls[c.Field.Wall]
			for i, s := range c.Sheets {
				listed[s.ID]++
				if !c.Field.Level || c.Field.Face != nil {
					continue
				}
				require.Equal(t, c.Sheets[0].Row, s.Row, name)
				if i > 0 && c.Sheets[i-1].Box.Left+c.Sheets[i-1].Box.Right < 2*w.Start.Edge {
					assert.Less(t, s.Box.Left, c.Sheets[i-1].Box.Left, "%s: it turns back once", name)
				}
			}
			if c.Field.Face == nil && c.Field.Level && c.Part != stages.Under {
				assert.Greater(t, c.Sheets[0].Row, rows[c.Field.Wall], "%s: upwards", name)
				rows[c.Field.Wall] = c.Sheets[0].Row
			}
		}
		assert.Equal(t, sheets, listed, name)
		assert.NotEmpty(t, listed, name)
	}
}
