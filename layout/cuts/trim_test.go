package cuts

import (
	"strings"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
	"coursewright/layout/trim"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Of a leg of 84 in of pieces 6 in long the last is cut to 4 3/8 in; whole pieces stand
// in no line. The table has one row for it, as wide as its columns.
func TestTrimIsInTheTableOfCuts(t *testing.T) {
	const in = length.Inch
	edge := survey.TrimFound{Name: "edge", Kind: survey.Bullnose, Width: 2 * in, Length: 6 * in}
	piece := func(id string, long length.Length) trim.Piece {
		return trim.Piece{ID: id, Edge: survey.RightEnd, Trim: edge, Long: long, Wide: 2 * in, Inner: long, Outer: long, Whole: long == 6*in,
			Face: plane.Region{plane.Rect{Right: 2 * in, Top: long}.Ring(0)}}
	}
	s := Of(Input{Room: survey.Room{Bond: survey.BondRule{Den: 1}}, Walls: []plan.Wall{{Trim: []trim.Piece{piece("T-A-01", 35*in/8), piece("T-A-02", 6*in)}}}}, Usual(length.Imperial))
	require.Equal(t, []TrimCut{{"T-A-01", "T1", "edge", `4 3/8"`, 2 * in, 35 * in / 8}}, s.Trim)
	var out strings.Builder
	require.NoError(t, s.CSV(&out, length.Imperial))
	lines := strings.Split(strings.TrimSpace(out.String()), "\n")
	require.Len(t, lines, 2)
	assert.Contains(t, lines[1], "T-A-01,T1,")
	assert.Equal(t, strings.Count(lines[0], ","), strings.Count(lines[1], ",")-1, "and one comma in the words")
}
