package bathroom

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/cuts"
	"coursewright/layout/survey"
	"coursewright/web/page"
)

// A cut across the tile shows its width alone, and one along it its heights: what stays
// as large as the tile is said, and no figure to set a fence to.
func TestACutShowsWhatIsCut(t *testing.T) {
	plan := planOf(t, "alcove", func(*survey.Job) {})
	o := orderOf(plan, page.Schedule(plan))
	seen := map[string]int{}
	for _, s := range o.steps {
		if s.cut == nil || s.Trim != nil {
			continue
		}
		b := Bathroom{Step: &Step{Pieces: []Placed{{Piece: s.Pieces[0]}}, Cut: s.cut}}
		b.Plan = plan
		var names []string
		for _, l := range b.sizes() {
			names = append(names, l.Name)
		}
		text := strings.Join(names, " ")
		tile, size, step := s.Pieces[0].Tile, s.cut.Size, plan.Room.Units.FineStep()
		narrow, low := size.Width < tile.Width().FloorTo(step) || size.Bottom != size.Top, size.Height < tile.Height().FloorTo(step) || size.Left != size.Right
		switch {
		case narrow && !low:
			assert.NotContains(t, text, "high", s.cut.Piece)
			assert.Contains(t, b.more(), fullHeight, s.cut.Piece)
		case low && !narrow:
			assert.NotContains(t, text, "wide", s.cut.Piece)
			assert.Contains(t, b.more(), fullWidth, s.cut.Piece)
		default:
			assert.Contains(t, text, "wide", s.cut.Piece)
			assert.Contains(t, text, "high", s.cut.Piece)
		}
		seen[b.full()]++
	}
	require.Len(t, seen, 3, "all three are in the alcove: %v", seen)
}

func TestAFigureIsNotPartedFromItsFraction(t *testing.T) {
	assert.Equal(t, "L at 4\u00a03/8\"", together(`L at 4 3/8"`))
	assert.Equal(t, "R at 700\u00a0mm", together("R at 700 mm"))
}

// A piece of a pattern is told by the marks where the saw enters and leaves it, as on the sheet.
func TestACutOfAPatternIsToldByItsMarks(t *testing.T) {
	plan := planOf(t, "herringbone", func(j *survey.Job) { j.Bond = survey.Bond{Kind: "chevron"} })
	o := orderOf(plan, page.Schedule(plan))
	told := 0
	for _, s := range o.steps {
		if s.cut == nil || len(s.cut.Saws) == 0 {
			continue
		}
		b := Bathroom{Step: &Step{Cut: s.cut, Batch: s.batch, Pieces: []Placed{{Piece: s.Pieces[0]}}}}
		b.Plan = plan
		lines := b.more()
		assert.Contains(t, strings.Join(lines, "\n"), "saw from ")
		assert.Equal(t, cuts.Corners, lines[len(lines)-1])
		told++
	}
	assert.Positive(t, told)
}
