package drawing_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/piece"
	"coursewright/layout/survey"
	. "coursewright/web/drawing"
)

// A piece whose tile leans says which line of the cut schedule it is cut by, level or along its tile, and no size: how wide
// it stands on the wall, which was written over its column, is set at no saw.
func TestPiecesOfTilesThatLeanSayTheirLine(t *testing.T) {
	data, err := os.ReadFile("../../testdata/jobs/herringbone.json")
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	job.Bond.Turn = "45"
	plan, err := layout.Now(job)
	require.NoError(t, err)
	turned := map[Turn]int{}
	for i, w := range plan.Walls {
		lines := map[string]string{}
		for _, p := range w.Pieces {
			if !p.Whole && p.Kind&piece.Angle != 0 {
				lines[p.ID] = "C1"
			}
		}
		s := Elevation(plan, i, Options{Sheet: true, Scale: Scale{Paper: 1, Real: 5}, Lines: lines})
		for _, e := range s.Elements {
			l, is := e.(Label)
			if is && lines[l.Piece] != "" {
				assert.Equal(t, "C1", l.Text, l.Piece)
				turned[l.Turn]++
			}
			assert.False(t, is && l.Kind == Column, "over a column: %s", l.Text)
		}
		for _, e := range Elevation(plan, i, Options{}).Elements {
			if l, is := e.(Label); is {
				assert.Empty(t, lines[l.Piece], "%s without a schedule: %s", l.Piece, l.Text)
			}
		}
	}
	assert.Greater(t, turned[Rising]+turned[Falling]+turned[0], 20)
	small := map[Turn]int{}
	for _, e := range Elevation(plan, 0, Options{Sheet: true, Scale: Scale{Paper: 1, Real: 16}, Lines: linesOf(plan.Walls[0])}).Elements {
		if l, is := e.(Label); is && l.Text == "C10" {
			small[l.Turn]++
		}
	}
	assert.Positive(t, small[Rising]+small[Falling], "%v", small)
}

func linesOf(w layout.Wall) map[string]string {
	lines := map[string]string{}
	for _, p := range w.Pieces {
		lines[p.ID] = "C10"
	}
	return lines
}
