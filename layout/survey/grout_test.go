package survey_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
)

// groutOf is the colour of grout that a choice is drawn with.
func groutOf(t *testing.T, job survey.Job, name string) string {
	t.Helper()
	one, there := job.As(name)
	require.True(t, there)
	return one.Grout
}

func TestEachChoiceKeepsItsGrout(t *testing.T) {
	job := survey.Job{Grout: "#333333", Chosen: "a", Choices: []survey.Choice{{Name: "a"}, {Name: "b"}, {Name: "c"}}}
	for _, name := range []string{"a", "b", "c"} {
		assert.Equal(t, "#333333", groutOf(t, job, name), "where none is named, that of the job goes for all")
	}
	job, err := job.Colour("b", "#eeeeee", "#111111")
	require.NoError(t, err)
	job, err = job.Choose("b")
	require.NoError(t, err)
	job, err = job.Colour("b", "#eeeeee", "#222222")
	require.NoError(t, err)
	want := map[string]string{"a": "#333333", "b": "#222222", "c": "#333333"}
	for range 2 {
		for _, chosen := range []string{"a", "b", "c"} {
			job, err = job.Choose(chosen)
			require.NoError(t, err)
			assert.Equal(t, want[chosen], job.Grout, "at the top")
			for name, grout := range want {
				assert.Equal(t, grout, groutOf(t, job, name), "%s while %s is chosen", name, chosen)
			}
		}
	}
	_, err = job.Colour("d", "", "")
	assert.Error(t, err)
}

func TestAGroutThatIsNoColourIsRefused(t *testing.T) {
	job := survey.Job{Chosen: "a", Choices: []survey.Choice{{Name: "a", Grout: "#123456"}, {Name: "b", Grout: "grey"}}}
	_, faults := job.Resolve()
	said := map[string]bool{}
	for _, f := range faults {
		said[f.Path] = true
	}
	assert.True(t, said["choices[1].grout"], "a colour is # and six digits")
	assert.True(t, said["choices[0]"], "the chosen one has its grout at the top")
}
