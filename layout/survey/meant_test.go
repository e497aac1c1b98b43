package survey_test

import (
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is typed as a width of a wall, at most 40 m, and what was meant by it.
func TestAMistypedLengthOffersWhatWasMeant(t *testing.T) {
	for typed, meant := range map[string]string{
		"5o": "50", "S9 1/2": "59 1/2", "6l": "61", "59..5": "59.5", "59 1 2": "59 1/2", "59-1-2": "59 1/2", `59 1\2`: "59 1/2", "59 9/6": "59 9/16",
		"59 3/61": "59 3/16", "59 1//2": "59 1/2", "-60": "60", "60 inn": "60 in", "1500 nm": "1500 mm", "5 feets": "5 ft", "383400": "", "wide": "", "": "", "59 1/7": "",
		"59;5": "59.5",
	} {
		job := sketch("in", "a")
		job.Walls[0].Width = typed
		job.Walls[0].Base[0].Readings = drops("0")
		_, faults := job.Resolve()
		require.Len(t, faults, 1, typed)
		assert.Equal(t, meant, faults[0].Meant, typed)
		if meant != "" {
			assert.Contains(t, faults[0].String(), "; perhaps “"+meant+"” was meant")
			job.Walls[0].Width = meant
			_, faults = job.Resolve()
			require.Empty(t, faults, typed)
		}
	}
	job := sketch("in", "a")
	job.Walls[0].Openings = []survey.Opening{pipe("p", "2912", "0", "4")}
	_, faults := job.Resolve()
	require.Len(t, faults, 1)
	assert.Equal(t, "29 1/2", faults[0].Meant, "a space and a slash left out, where the whole is out of bounds")
}
