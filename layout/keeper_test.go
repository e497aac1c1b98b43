package layout_test

import (
	"encoding/json"
	"maps"
	"slices"
	"testing"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Whatever was solved before, a keeper gives of every room what is given without one: after edits of one length or another, and
// of rooms that are edited in turns.
func TestAKeeperGivesWhatIsGivenWithout(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		if !rare(t, 20) {
			return
		}
		any := rapid.OneOf(showers, houses, rooms).Filter(accepted)
		jobs := [][]byte{any.Draw(t, "job"), any.Draw(t, "other job")}
		var keeper layout.Keeper
		for range 4 {
			k := rapid.IntRange(0, 1).Draw(t, "which job")
			job, err := survey.Read(jobs[k])
			require.NoError(t, err)
			got, err := keeper.Quick(t.Context(), job)
			require.NoError(t, err)
			want, err := layout.Quick(t.Context(), job)
			require.NoError(t, err)
			require.Equal(t, fileOf(t, want), fileOf(t, got), string(jobs[k]))
			if next := edited(t, jobs[k]); accepted(next) {
				jobs[k] = next
			}
		}
	})
}

func fileOf(t *rapid.T, p layout.Plan) string {
	data, err := p.File()
	require.NoError(t, err)
	return string(data)
}

// edited is a job with one of its lengths a little longer or shorter.
func edited(t *rapid.T, job []byte) []byte {
	var doc object
	require.NoError(t, json.Unmarshal(job, &doc))
	units := length.Imperial
	if doc["units"] == "mm" {
		units = length.Metric
	}
	var lengths []func(by length.Length)
	var find func(v any, put func(any))
	find = func(v any, put func(any)) {
		switch v := v.(type) {
		case map[string]any:
			for _, key := range slices.Sorted(maps.Keys(v)) {
				find(v[key], func(to any) { v[key] = to })
			}
		case []any:
			for i := range v {
				find(v[i], func(to any) { v[i] = to })
			}
		case string:
			if l, err := length.Parse(v, units); err == nil {
				lengths = append(lengths, func(by length.Length) { put((l + by).Plain(units, units.FineStep())) })
			}
		}
	}
	find(doc, nil)
	rapid.SampledFrom(lengths).Draw(t, "length")(rapid.SampledFrom([]length.Length{-units.Step(), units.Step(), 8 * units.Step()}).Draw(t, "by"))
	return jobFile(doc)
}
