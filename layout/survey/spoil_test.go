package survey_test

import (
	"encoding/json"
	"sort"
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// spoil walks a JSON tree and puts what draw gives in the place of some texts.
func spoil(v any, draw func(was string) string) any {
	switch v := v.(type) {
	case string:
		return draw(v)
	case []any:
		for i := range v {
			v[i] = spoil(v[i], draw)
		}
	case map[string]any:
		names := make([]string, 0, len(v))
		for name := range v {
			names = append(names, name)
		}
		sort.Strings(names)
		for _, name := range names {
			if name != "format" && name != "units" {
				v[name] = spoil(v[name], draw)
			}
		}
	}
	return v
}

// Whatever stands in the fields, Resolve answers with a room or with faults,
// and a room's walls have shapes.
func TestSpoiledJobsGiveFaultsOrARoom(t *testing.T) {
	files := jobFiles(t)
	odd := []string{"", "0", "-1", "1/7", "3", "40 m", "-40 m", "100 m", "12 1/2", "30", "1/960 mm", "corner", "tub", "pipe",
		"running", "back", "x\x01", "59 7/8", "35 1/4", "-38", "1/3"}
	rapid.Check(t, func(t *rapid.T) {
		file := rapid.SampledFrom([]string{"alcove.json", "bath.json", "corner-shower.json", "toy.json"}).Draw(t, "file")
		var tree any
		require.NoError(t, json.Unmarshal(files[file], &tree))
		left := rapid.IntRange(0, 120).Draw(t, "skip")
		times := rapid.IntRange(1, 3).Draw(t, "times")
		spoil(tree, func(was string) string {
			if left--; left >= 0 || times == 0 {
				return was
			}
			times--
			left = rapid.IntRange(0, 20).Draw(t, "skip")
			return rapid.SampledFrom(odd).Draw(t, "odd")
		})
		data, err := json.Marshal(tree)
		require.NoError(t, err)
		job, err := survey.Read(data)
		require.NoError(t, err)
		room, faults := job.Resolve()
		for _, w := range room.Walls {
			require.Empty(t, faults)
			require.NotEmpty(t, w.Shape(room.Units, low(w)).Region)
		}
	})
}
