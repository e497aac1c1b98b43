package bench_test

import (
	"html"
	"math/rand"
	"net/http"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
	"coursewright/web/form"
	"coursewright/web/shapes"
	"coursewright/web/trial"
)

// offered are the buttons of the survey that add something, let a band round a wall or close the room.
var offered = regexp.MustCompile(`<button[^>]*name="do"[^>]*value="((?:add|round|close) ?[^"]*)"([^>]*)>`)

// Whatever parts a person adds to a new room, in whatever order, with the buttons that the page offers:
// none is refused, because what a button brings finds room beside what is there, nor where a band is let round
// another wall or the room closed. (Rooms are read, not set out. PRESSES gives other seeds, from there on.)
func TestNoPartThatIsAddedIsRefused(t *testing.T) {
	first, _ := strconv.Atoi(os.Getenv("PRESSES"))
	for seed := first; seed < first+15; seed++ {
		r := rand.New(rand.NewSource(int64(seed)))
		all := shapes.All()
		key, units := all[r.Intn(len(all))].Key, []string{"in", "mm"}[r.Intn(2)]
		job, err := shapes.New(key, units, "a room")
		require.NoError(t, err)
		file, err := survey.Write(job)
		require.NoError(t, err)
		s := trial.Solving(t, file, trial.Resolved)
		done := []string{key, units}
		for range 7 {
			_, page := s.Get("/jobs/1")
			buttons := slices.DeleteFunc(offered.FindAllStringSubmatch(page, -1), func(m []string) bool { return strings.Contains(m[2], " disabled") })
			require.NotEmpty(t, buttons)
			do := html.UnescapeString(buttons[r.Intn(len(buttons))][1])
			posted := s.Bench()
			posted.Set(form.Do, do)
			answer, _ := s.Post("/jobs/1", posted)
			_, now := s.Stored()
			assert.Equal(t, http.StatusSeeOther, answer.StatusCode, "seed %d: %q, then %q: %v", seed, done, do, faultsAfter(now, do))
			done = append(done, do)
		}
	}
}

// faultsAfter says what is refused once a button is pressed.
func faultsAfter(job survey.Job, do string) any {
	if err := form.Apply(&job, do); err != nil {
		return err
	}
	form.Tidy(&job)
	_, faults := job.Resolve()
	return faults
}
