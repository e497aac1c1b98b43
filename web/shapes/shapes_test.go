package shapes

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/doubt"
	"coursewright/layout/finding"
)

// A plain room is a fair start: nothing in it is at fault before anything has
// been measured.
func TestNoPlainRoomBeginsWithAWarning(t *testing.T) {
	for _, s := range All() {
		for _, units := range []string{"in", "mm"} {
			job, err := New(s.Key, units, s.Name)
			require.NoError(t, err)
			plan, err := layout.Now(job)
			require.NoError(t, err)
			for _, f := range plan.Findings {
				assert.NotContains(t, []finding.Grade{finding.Fault, finding.Warning}, f.Grade, "%s, %s: %s", s.Name, units, f.Text)
			}
		}
	}
}

// Whoever measures just what was guessed is not asked whether that can be true.
func TestNoGuessIsInDoubtOnceItIsMeasured(t *testing.T) {
	for _, s := range All() {
		for _, units := range []string{"in", "mm"} {
			job, err := New(s.Key, units, s.Name)
			require.NoError(t, err)
			job.Guess = nil
			room, faults := job.Resolve()
			require.Empty(t, faults)
			assert.Empty(t, doubt.Raise(room, job), "%s, %s", s.Name, units)
		}
	}
}

func TestAnUnknownShapeOrUnitIsRefused(t *testing.T) {
	_, err := New("round", "in", "")
	assert.ErrorContains(t, err, "round")
	_, err = New("tub", "yd", "")
	assert.ErrorContains(t, err, "yd")
}
