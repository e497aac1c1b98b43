package survey

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// byTokens finds doubled keys by the tokens of the standard library.
func byTokens(d *json.Decoder, p path, faults *Faults) {
	token, err := d.Token()
	switch {
	case err != nil:
	case token == json.Delim('{'):
		seen := map[string]bool{}
		for d.More() {
			key, _ := d.Token()
			name := key.(string)
			if seen[name] {
				faults.add(p.dot(name), "the field a second time", "each field once")
			}
			seen[name] = true
			byTokens(d, p.dot(name), faults)
		}
		_, _ = d.Token()
	case token == json.Delim('['):
		for i := 0; d.More(); i++ {
			byTokens(d, p.at(i), faults)
		}
		_, _ = d.Token()
	}
}

// anyJSON draws a document in which names repeat and texts hold whatever could lead astray.
func anyJSON(t *rapid.T, deep int) string {
	space := rapid.SampledFrom([]string{"", "", " ", "\n\t"}).Draw(t, "space")
	texts := []string{`"a"`, `"b"`, `"\u0061"`, `"a\""`, `"\\\\"`, `"{[,:]}"`, `""`, `"é"`, `"\ud83d\ude00"`}
	kinds := 3
	if deep > 0 {
		kinds = 5
	}
	var out []string
	switch rapid.IntRange(1, kinds).Draw(t, "kind") {
	case 1:
		return space + rapid.SampledFrom(texts).Draw(t, "text") + space
	case 2:
		return space + rapid.SampledFrom([]string{"0", "-1.5e+3", "12"}).Draw(t, "number") + space
	case 3:
		return space + rapid.SampledFrom([]string{"true", "false", "null"}).Draw(t, "word") + space
	case 4:
		for range rapid.IntRange(0, 3).Draw(t, "items") {
			out = append(out, anyJSON(t, deep-1))
		}
		return space + "[" + space + strings.Join(out, ",") + "]" + space
	}
	for range rapid.IntRange(0, 4).Draw(t, "fields") {
		out = append(out, fmt.Sprint(space, rapid.SampledFrom(texts).Draw(t, "name"), space, ":", anyJSON(t, deep-1)))
	}
	return space + "{" + space + strings.Join(out, ",") + "}" + space
}

func TestDoubledKeysAreThoseOfTheTokens(t *testing.T) {
	found := 0
	rapid.Check(t, func(t *rapid.T) {
		data := []byte(anyJSON(t, 3))
		if rapid.Bool().Draw(t, "one key twice") {
			data = []byte(`{"k":` + anyJSON(t, 2) + `,"k":` + string(data) + `}`)
		}
		require.True(t, json.Valid(data), "%s", data)
		var want Faults
		byTokens(json.NewDecoder(bytes.NewReader(data)), "", &want)
		require.Equal(t, want, doubled(data), "%s", data)
		found += len(want)
	})
	require.NotZero(t, found)
}
