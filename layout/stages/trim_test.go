package stages

import (
	"testing"

	"coursewright/layout/plan"
	"coursewright/layout/survey"
	"coursewright/layout/trim"

	"github.com/stretchr/testify/assert"
)

// Profiles are bedded before the tile, pieces are set after it; a room without
// trim has neither stage.
func TestStagesOfTrim(t *testing.T) {
	names := func(pieces ...trim.Piece) (out []string) {
		for _, s := range Of(Input{Walls: []plan.Wall{{Trim: pieces}}}, Settings{}) {
			out = append(out, s.Name)
		}
		return out
	}
	assert.Equal(t, []string{"Dry lay and marks", "Grout", "Soft joints"}, names())
	bar := trim.Piece{Trim: survey.TrimFound{Kind: survey.Profile}}
	bull := trim.Piece{Trim: survey.TrimFound{Kind: survey.Bullnose}, Whole: true}
	assert.Equal(t, []string{"Dry lay and marks", "Profiles", "Trim", "Grout", "Soft joints"}, names(bar, bull))
	in := Input{Walls: []plan.Wall{{Trim: []trim.Piece{bull, bull, {Trim: bull.Trim}}}}}
	assert.Contains(t, in.trim()[0].Do, "3 pieces, 1 of them cut")
}
