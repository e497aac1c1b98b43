package drawing_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
)

// Where the seat of a bench ends on a wall its place is written under the wall, as that of a tub's front is.
func TestThePlaceOfASeatsFrontIsWritten(t *testing.T) {
	for name, figures := range map[string][2]string{"corner-bench": {"301", "664"}, "bench": {"39 1/2\"", ""}} {
		data, err := os.ReadFile("../../testdata/jobs/" + name + ".json")
		require.NoError(t, err)
		job, err := survey.Read(data)
		require.NoError(t, err)
		plan, err := layout.Now(job)
		require.NoError(t, err)
		for wall, figure := range figures {
			var front, placed bool
			for _, e := range drawing.Elevation(plan, wall, drawing.Options{Sheet: true, Scale: drawing.Scale{Paper: 1, Real: 10}}).Elements {
				if l, ok := e.(drawing.Label); ok {
					front, placed = front || l.Text == "seat's front", placed || l.Text == figure
				}
			}
			assert.Equal(t, figure != "", front, "%s, wall %d", name, wall)
			assert.Equal(t, figure != "", placed, "%s, wall %d: %s", name, wall, figure)
		}
	}
}
