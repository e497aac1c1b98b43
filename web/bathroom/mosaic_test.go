package bathroom_test

import (
	"testing"

	"coursewright/web/trial"

	"github.com/stretchr/testify/assert"
)

// Mosaic is set sheet by sheet, by courses of sheets from the start outwards: one tap sets
// one and leads to the next.
func TestMosaicIsSetByTheSheet(t *testing.T) {
	s := trial.OfFile(t, "sheets")
	_, page := s.Get("/jobs/1/bathroom?piece=L-01-01")
	assert.Contains(t, page, "Sheet whole, 6 × 6 tiles")
	assert.Contains(t, page, "sheets, course 1, one of 4, from the start outwards")
	follow(s, trial.Form(t, page, "Sheet set"))
	set := ticked(s)
	assert.Len(t, set, 36)
	assert.Contains(t, set, "L-01-01")
	assert.Contains(t, set, "L-06-06")
	assert.NotContains(t, set, "L-07-01")

	_, page = s.Get("/jobs/1/bathroom?piece=S-01-01")
	assert.Contains(t, page, "Sheet cut along its joints to 3 × 6 tiles, 6 of them cut")
	assert.Regexp(t, "Cut of its tiles: 6 as C[0-9]+ of the cut schedule", page)
}
