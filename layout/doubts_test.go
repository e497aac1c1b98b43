package layout_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"coursewright/layout"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A room in doubt is drawn all the same, and its plan file asks.
func TestARoomInDoubtIsSolvedAndAsked(t *testing.T) {
	names, err := filepath.Glob("../testdata/doubts/*/*.json")
	require.NoError(t, err)
	require.NotEmpty(t, names)
	for _, name := range names {
		t.Run(filepath.Base(name), func(t *testing.T) {
			data, err := os.ReadFile(name)
			require.NoError(t, err)
			job, err := survey.Read(data)
			require.NoError(t, err)
			plan, err := layout.Now(job)
			require.NoError(t, err)
			written, err := plan.File()
			require.NoError(t, err)
			var file struct {
				Doubts []struct {
					Rule, Path, Wall, Read, Fits, Text string
					Use                                map[string]string
				}
				Guess []string
			}
			require.NoError(t, json.Unmarshal(written, &file))
			assert.Len(t, file.Doubts, len(plan.Doubts))
			assert.Equal(t, filepath.Base(filepath.Dir(name)) == "asked", len(file.Doubts) == 1)
			assert.Equal(t, job.Guess, file.Guess)
			for i, d := range file.Doubts {
				assert.Equal(t, plan.Doubts[i].Path, d.Path)
				assert.Len(t, d.Use, len(plan.Doubts[i].Use))
				assert.NotEmpty(t, d.Text)
			}
		})
	}
}
