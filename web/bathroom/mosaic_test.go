package bathroom_test

import (
	"testing"

	"coursewright/web/trial"

	"github.com/stretchr/testify/assert"
)

// A sheet of mosaic is set in one go: one tap ticks all its tiles.
func TestASheetIsTickedInOneGo(t *testing.T) {
	s := trial.OfFile(t, "sheets")
	_, page := s.Get("/jobs/1/bathroom?piece=L-01-01")
	assert.Contains(t, page, "whole, 6 × 6 tiles")
	page = follow(s, trial.Form(t, page, "Set L-S1-1"))
	set := ticked(s)
	assert.Len(t, set, 36)
	assert.Contains(t, set, "L-01-01")
	assert.Contains(t, set, "L-06-06")
	assert.NotContains(t, set, "L-07-01")
	assert.NotContains(t, page, "Set L-S1-1")

	_, page = s.Get("/jobs/1/bathroom?piece=S-01-01")
	assert.Contains(t, page, "cut along its joints to 3 × 6 tiles, 6 of them cut")
}
