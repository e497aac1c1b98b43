package survey_test

import (
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The marks that are held are on the wall for one choice: its copy, made to be another, is set out anew, and choosing the
// first again brings them back. Found by a walk: another tile in the copy stood at the starts of the first.
func TestACopyOfAChoiceHoldsNoMarks(t *testing.T) {
	held := &survey.Held{Hand: "left"}
	job := survey.Job{Tile: survey.Tile{Width: "8", Height: "4"}, Held: held}
	job, err := job.Duplicate("first", "second")
	require.NoError(t, err)
	assert.Equal(t, held, job.Held)
	job, err = job.Choose("second")
	require.NoError(t, err)
	assert.Nil(t, job.Held)
	third, err := job.Duplicate("first", "third")
	require.NoError(t, err)
	assert.Nil(t, third.Choices[1].Held)
	job, err = job.Choose("first")
	require.NoError(t, err)
	assert.Equal(t, held, job.Held)
}

// What an earlier version gave is nobody's hold: the copy keeps it too, until somebody answers.
func TestACopyOfAChoiceKeepsWhatAnEarlierVersionGave(t *testing.T) {
	job := survey.Job{Tile: survey.Tile{Width: "8", Height: "4"}, Held: &survey.Held{Hand: "left", Engine: "1"}}
	job, err := job.Duplicate("first", "second")
	require.NoError(t, err)
	job, err = job.Choose("second")
	require.NoError(t, err)
	assert.Equal(t, "1", job.Held.Engine)
}
