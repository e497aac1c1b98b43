package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
)

// Tile that stands is in no list of what to cut.
func TestSheetsListOnlyWhatIsStillToBeSet(t *testing.T) {
	plan := solved(t, "alcove")
	back := &plan.Walls[1]
	first := back.Pieces[0]
	back.Found.Set = &survey.Standing{Course: first.Course, Row: first.Row}
	b := newBook(plan, Options{Kinds: []Kind{FirstCourse, Elevations}})
	assert.Empty(t, b.overBase(*back).rows)
	assert.NotEmpty(t, b.overBase(plan.Walls[0]).rows)
	entries := b.entries(*back, b.groups())
	require.Equal(t, first.Course, entries[0].from)
	assert.Equal(t, standing, entries[0].text)
	for _, e := range entries {
		assert.NotContains(t, e.text, "()", "course %d: every cut has its row in the schedule", e.from)
	}
	assert.NotEqual(t, standing, entries[1].text)
}
