package phase

import (
	"bytes"
	"encoding/json"
	"os"
	"strconv"
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// Law 2 in rooms in which a bound once claimed too much: what was wrong is said in each name. Random
// rooms found them.
func TestNothingBeatsWhatWasClaimedTooMuch(t *testing.T) {
	file, err := os.ReadFile("testdata/bounds.json")
	require.NoError(t, err)
	var cases []struct {
		Name       string
		Room       survey.Room
		Line, Edge length.Length
		Sharper    int
		Options    []int
	}
	in := json.NewDecoder(bytes.NewReader(file))
	in.DisallowUnknownFields()
	require.NoError(t, in.Decode(&cases))
	for i, c := range cases {
		t.Run(strconv.Itoa(i)+" "+c.Name, func(t *testing.T) {
			w := NewWall(&c.Room, c.Room.Walls[0], bond.For(c.Room, c.Room.Bond.Hand))
			sharper := func() int { return c.Sharper }
			option := func(most int) (n int) {
				n, c.Options = min(most, c.Options[0]), c.Options[1:]
				return n
			}
			s, bounds, ok := everyBound(w, c.Line, c.Edge, sharper, option, &merit.Merit{})
			require.True(t, ok)
			nothingBeats(t, w, s, bounds)
		})
	}
}
