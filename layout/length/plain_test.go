package length

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// texts are plain lengths, and what is near them.
func texts() *rapid.Generator[string] {
	pieces := []string{"", "-", "+", " ", "  ", "0", "1", "7", "59", "100", "128", "999999", "1000000", "3937", "00", "/", ".", ",", "1/2", "3/4", "5/3", "/0", " mm", "mm", " in", "in", `"`, "'", " ft", "½", "-1/2"}
	return rapid.Custom(func(t *rapid.T) string {
		return strings.Join(rapid.SliceOfN(rapid.SampledFrom(pieces), 0, 6).Draw(t, "pieces"), "")
	})
}

// The law of plain: it reads as the reader does, or leaves it to him.
func TestPlainLengthsReadAsAnyDo(t *testing.T) {
	read := 0
	rapid.Check(t, func(t *rapid.T) {
		text, s := texts().Draw(t, "text"), rapid.SampledFrom([]System{Imperial, Metric}).Draw(t, "system")
		l, ok := plain(text, s)
		if !ok {
			return
		}
		read++
		other, err := parse(text, s)
		require.NoError(t, err, text)
		require.Equal(t, other, l, text)
	})
	require.NotZero(t, read)
}

func TestWhatPeopleWriteMostIsPlain(t *testing.T) {
	for _, text := range []string{"0", "59", "59 1/2", "-3/8", "59.5", "1511 mm", "7 7/8", "60 in", `1/64"`} {
		_, ok := plain(text, Imperial)
		assert.True(t, ok, text)
	}
	for _, text := range []string{"", "-", "1/0", "59 3/2", "1/7 mm", "59,5", "5'", "9999999", "100.1 mm in", "100000.1 in", "1 / 2"} {
		_, ok := plain(text, Imperial)
		assert.False(t, ok, text)
	}
}

func BenchmarkParse(b *testing.B) {
	for _, text := range []string{"59 1/2", "1511 mm", `4' 11-1/2"`} {
		b.Run(text, func(b *testing.B) {
			for b.Loop() {
				if _, err := Parse(text, Imperial); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
