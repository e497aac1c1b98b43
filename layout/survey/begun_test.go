package survey_test

import (
	"encoding/json"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// A page that is just begun, or in which a box was emptied: of a tile or a joint that is not known
// nothing may be worked out, whatever else the job has. Every text of every job of the tests is emptied
// once, beside a tile and a joint that are empty too. FuzzJobFile found a niche between studs divide by them.
func TestNoBoxThatIsEmptyBringsAJobDown(t *testing.T) {
	var files []string
	require.NoError(t, filepath.WalkDir("../../testdata", func(name string, d fs.DirEntry, err error) error {
		if strings.HasSuffix(name, ".json") && !d.IsDir() {
			files = append(files, name)
		}
		return err
	}))
	read := 0
	for _, file := range files {
		document, err := os.ReadFile(file)
		require.NoError(t, err)
		if _, err := survey.Read(document); err != nil {
			continue
		}
		read++
		for at, done := 0, false; !done; at++ {
			var tree map[string]any
			require.NoError(t, json.Unmarshal(document, &tree))
			delete(tree, "joint")
			if tile, is := tree["tile"].(map[string]any); is {
				delete(tile, "width")
				delete(tile, "height")
			}
			left := at
			spoil(tree, func(was string) string {
				if left--; left == -1 {
					return ""
				}
				return was
			})
			done = left >= 0 // there was none left to empty
			data, err := json.Marshal(tree)
			require.NoError(t, err)
			if job, err := survey.Read(data); err == nil {
				require.NotPanics(t, func() { job.Resolve() }, "%s", data)
			}
		}
	}
	require.Greater(t, read, 80)
}
