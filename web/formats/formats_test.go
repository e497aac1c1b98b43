package formats_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"maps"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/web/formats"
	"coursewright/web/trial"
)

// compiled compiles the schemas by the last word of their path; closed refuses every field that is
// not described, so that a field the schema does not know cannot hide in a plan.
func compiled(t *testing.T, name string, closed bool) *jsonschema.Schema {
	t.Helper()
	for _, s := range formats.All() {
		if !strings.HasPrefix(filepath.Base(s.Path), name) {
			continue
		}
		schema, err := jsonschema.UnmarshalJSON(bytes.NewReader(s.Text))
		require.NoError(t, err)
		if closed {
			for _, def := range schema.(map[string]any)["$defs"].(map[string]any) {
				def.(map[string]any)["additionalProperties"] = false
			}
		}
		c := jsonschema.NewCompiler()
		require.NoError(t, c.AddResource(s.Path, schema))
		out, err := c.Compile(s.Path)
		require.NoError(t, err)
		return out
	}
	t.Fatal("no schema ", name)
	return nil
}

// examples are all job files that the project ships.
func examples(t *testing.T) map[string][]byte {
	t.Helper()
	out := map[string][]byte{"demo": static.Demo}
	names, err := filepath.Glob("../../testdata/[ji]*s/*.json") // jobs, and insides
	require.NoError(t, err)
	for _, name := range names {
		body, err := os.ReadFile(name)
		require.NoError(t, err)
		out[filepath.Base(name)] = body
	}
	require.Greater(t, len(out), 4)
	return out
}

func value(t require.TestingT, document []byte) any {
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(document))
	require.NoError(t, err)
	return v
}

func TestEveryExampleIsWhatItsSchemaSays(t *testing.T) {
	jobs, plans := compiled(t, "job", false), compiled(t, "plan", true)
	cuts, buys := compiled(t, "cuts", false), compiled(t, "take-off", false)
	for name, document := range examples(t) {
		assert.NoError(t, jobs.Validate(value(t, document)), name)
		s := trial.Solving(t, document, layout.Solve)
		exported := trial.Second(s.Get("/jobs/1/job.json"))
		assert.NoError(t, jobs.Validate(value(t, []byte(exported))), name)
		plan := trial.Second(s.Get("/jobs/1/plan.json"))
		assert.NoError(t, plans.Validate(value(t, []byte(plan))), name)
		assert.NoError(t, cuts.Validate(table(t, trial.Second(s.Get("/jobs/1/cuts.csv")))), name)
		assert.NoError(t, buys.Validate(table(t, trial.Second(s.Get("/jobs/1/takeoff.csv")))), name)
	}
}

// table reads a CSV file as its schema says.
func table(t *testing.T, text string) any {
	t.Helper()
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(text, "\ufeff"))).ReadAll()
	require.NoError(t, err)
	require.NotEmpty(t, rows)
	out := []any{}
	for _, row := range rows[1:] {
		one := map[string]any{}
		for i, cell := range row {
			one[rows[0][i]] = cell
		}
		out = append(out, one)
	}
	return out
}

// TestTheSchemaOfAJobRefusesWhatTheProgramDoes spoils examples at random: the schema takes what
// survey.Read takes, and nothing else.
func TestTheSchemaOfAJobRefusesWhatTheProgramDoes(t *testing.T) {
	schema := compiled(t, "job", false)
	var all [][]byte
	for _, document := range examples(t) {
		all = append(all, document)
	}
	taken, refused := 0, 0
	rapid.Check(t, func(r *rapid.T) {
		var job any
		require.NoError(r, json.Unmarshal(rapid.SampledFrom(all).Draw(r, "job"), &job))
		for range rapid.IntRange(1, 3).Draw(r, "times") {
			job = spoiled(r, job, 0)
		}
		document, err := json.Marshal(job)
		require.NoError(r, err)
		_, read := survey.Read(document)
		valid := schema.Validate(value(r, document))
		require.Equal(r, read == nil, valid == nil, "the program: %v; the schema: %v; of %s", read, valid, document)
		if read == nil {
			taken++
		} else {
			refused++
		}
	})
	t.Logf("%d taken, %d refused", taken, refused)
	assert.Greater(t, taken, 0)
	assert.Greater(t, refused, 0)
}

// spoiled changes something at or below a value.
func spoiled(r *rapid.T, v any, depth int) any {
	if depth > 0 && rapid.IntRange(0, 3).Draw(r, "here") == 0 {
		return rapid.SampledFrom([]any{"text", "", true, nil, 7, 1.5, []any{}, map[string]any{}, []any{"a"}, map[string]any{"at": "1"}, map[string]any{"from": "1", "to": "2"}}).Draw(r, "value")
	}
	switch v := v.(type) {
	case map[string]any:
		names := rapid.Permutation(keys(v)).Draw(r, "names")
		switch rapid.IntRange(0, 8).Draw(r, "what") {
		case 0:
			v[rapid.SampledFrom([]string{"colour", "x", "walls", "name", "at"}).Draw(r, "field")] = "1"
		case 1:
			if len(names) > 0 {
				delete(v, names[0])
			}
		default:
			if len(names) > 0 {
				v[names[0]] = spoiled(r, v[names[0]], depth+1)
			}
		}
	case []any:
		if len(v) > 0 {
			i := rapid.IntRange(0, len(v)-1).Draw(r, "element")
			v[i] = spoiled(r, v[i], depth+1)
		}
	}
	return v
}

func keys(m map[string]any) []string { return slices.Sorted(maps.Keys(m)) }

func TestTheSchemasStandAtAddressesThatStay(t *testing.T) {
	s := trial.Swift(t)
	for _, path := range []string{"/formats/job-1.schema.json", "/formats/plan-1.schema.json", "/formats/cuts-1.schema.json", "/formats/take-off-1.schema.json"} {
		answer, body := s.Get(path)
		assert.Equal(t, http.StatusOK, answer.StatusCode, path)
		assert.Equal(t, "application/schema+json", answer.Header.Get("Content-Type"))
		var schema map[string]any
		require.NoError(t, json.Unmarshal([]byte(body), &schema))
		assert.Equal(t, "https://json-schema.org/draft/2020-12/schema", schema["$schema"])
	}
}
