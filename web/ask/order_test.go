package ask_test

import (
	"net/url"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"coursewright/layout/length"
	"coursewright/layout/steady"
	"coursewright/web/ask"
	"coursewright/web/form"
	"coursewright/web/shapes"
)

// TestMain keeps the random rooms the same from run to run.
func TestMain(m *testing.M) { os.Exit(steady.Run(m, "200")) }

// A true room may be typed in in any order: half of it measured and half still guessed, it is
// never refused. True figures lie within a twelfth of the guesses, in steps of the tape.
func TestNoOrderOfAnswersIsRefused(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shape := rapid.SampledFrom(shapes.All()).Draw(t, "shape")
		units := rapid.SampledFrom([]string{"in", "mm"}).Draw(t, "units")
		job, err := shapes.New(shape.Key, units, "A room")
		require.NoError(t, err)
		job.Guess = ask.Paths(job)
		system, _ := form.System(units)
		questions := rapid.Permutation(ask.AllFrom(job, rapid.Bool().Draw(t, "from the front"))).Draw(t, "order")
		for _, q := range questions {
			guess, err := length.Parse(q.Guess(job), system)
			require.NoError(t, err)
			twelfth := guess.Abs() / 12 / system.Step()
			off := length.Length(rapid.IntRange(-int(twelfth), int(twelfth)).Draw(t, "off")) * system.Step()
			if strings.HasPrefix(q.Path, "tile.") {
				off = 0 // what is on the box is what it is
			}
			if strings.HasSuffix(q.Path, ".head.stops.at") && guess < 0 {
				off = 0 // a curb is built to its height over the base: drawn by itself it would end under it
			}
			posted := url.Values{q.Name(): {(guess + off).Plain(system, 0)}}
			measured := ask.Read(job, posted)
			require.NoError(t, form.Decode(&job, posted))
			ask.Settle(&job, measured)
			_, faults := job.Resolve()
			require.Empty(t, faults, "%s typed into %s of a %s", (guess+off).Plain(system, 0), q.Label, shape.Name)
			require.False(t, slices.Contains(job.Guess, q.Path))
		}
	})
}
