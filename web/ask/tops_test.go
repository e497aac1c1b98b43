package ask_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
	"coursewright/web/ask"
	"coursewright/web/form"
	"coursewright/web/shapes"
)

// newRoom is a new job of a shape, with what some buttons add to it.
func newRoom(t *testing.T, shape string, buttons ...string) survey.Job {
	t.Helper()
	job, err := shapes.New(shape, "in", "A room")
	require.NoError(t, err)
	job.Guess = ask.Paths(job)
	for _, do := range buttons {
		require.NoError(t, form.Apply(&job, do))
	}
	return job
}

func question(t *testing.T, job survey.Job, path string) ask.Question {
	t.Helper()
	for _, q := range ask.All(job) {
		if q.Path == path {
			return q
		}
	}
	require.Fail(t, "not asked", path)
	return ask.Question{}
}

// Where a seat or a floor meets the rim of a shower base there are two figures at one place: their
// boxes have names that tell them apart, in every room that is offered, whatever is added to it.
func TestEveryQuestionHasANameOfItsOwn(t *testing.T) {
	for _, s := range shapes.All() {
		for _, add := range [][]string{nil, {"add walls curb"}, {"add walls bench"}, {"add walls corner bench"}, {"add walls round"}, {"add walls curb", "add walls corner bench"}} {
			job := newRoom(t, s.Key, add...)
			named := map[string]string{}
			for _, q := range ask.All(job) {
				assert.Empty(t, named[q.Label], "%s, %v: %q asks for %s too", s.Key, add, q.Label, q.Path)
				named[q.Label] = q.Path
			}
		}
	}
}

// A bench ends under the level line, and nobody writes a minus: its front edge is so far below.
func TestABenchIsAskedWithoutAMinus(t *testing.T) {
	const front = "walls[3].head.stops.at"
	job := newRoom(t, "corner bench")
	q := question(t, job, front)
	assert.True(t, q.Updown)
	assert.True(t, q.Below(job), "as guessed")
	assert.Equal(t, "Seat of bench, from the line", q.Label)
	job = answered(t, job, ask.UpDown+front, "19 1/4")
	assert.Equal(t, "-19 1/4", job.Walls[3].Head.Stops.At)
	again := answered(t, job)
	assert.Equal(t, form.Fields(job), form.Fields(again))

	job = answered(t, newRoom(t, "half wall"), ask.UpDown+"walls[2].head.stops.at", "3")
	assert.Equal(t, []string{"3", "3"}, []string{job.Walls[2].Head.Stops.At, job.Walls[3].Head.Stops.At}, "over the line, round the corner")
	tub := newTub(t)
	assert.False(t, question(t, tub, "walls[0].head.stops.at").Updown, "the tile over a tub stops over the line")
}

// How deep a seat, a curb or a cap is counts among what is to be measured.
func TestTheDepthOfATopIsAskedFor(t *testing.T) {
	job := newRoom(t, "corner bench")
	assert.Subset(t, job.Guess, []string{"walls[3].top.depth", "walls[3].top.right"})
	job = answered(t, job, "walls[3].top.depth", "20")
	assert.Equal(t, "20", job.Walls[3].Top.Depth)
	assert.NotContains(t, job.Guess, "walls[3].top.depth")

	job = newRoom(t, "bench")
	assert.Equal(t, "Seat of bench, depth", question(t, job, "walls[3].top.depth").Label)
	assert.Equal(t, "Top of curb, depth", question(t, job, "walls[4].top.depth").Label)
	assert.Contains(t, question(t, job, "walls[4].top.depth").Help, "to the far edge")
	job.Walls[3].Top.Right = "15"
	assert.Equal(t, "15", question(t, job, "walls[3].top.right").Shown(job))
}

// The face of a bench makes no corner of the room, and stands where its seat begins on the walls.
func TestABenchIsMeasuredInItsOwnWords(t *testing.T) {
	job := newRoom(t, "corner bench")
	assert.Equal(t, "Seat, corner of left and back, below the line", question(t, job, "walls[0].base[1].readings[1].drop").Label)
	assert.Equal(t, "Seat, front of the seat on wall left, below the line", question(t, job, "walls[0].base[1].readings[0].drop").Label)
	left := question(t, job, "walls[0].base[0].readings[1].drop")
	assert.Equal(t, "Shower base, front of the seat on wall left, below the line", left.Label)
	assert.Equal(t, []string{"walls[3].base[0].readings[0].drop"}, left.Same, "the front of the bench meets the wall there")
	assert.Equal(t, []string{"walls[3].base[0].readings[1].drop"}, question(t, job, "walls[1].base[1].readings[0].drop").Same)
	job.Walls[3].Base[0].Readings[0].Drop = "39"
	assert.Equal(t, "Shower base, left end of bench, below the line", question(t, job, "walls[3].base[0].readings[0].drop").Label, "where it was read otherwise")
	front := question(t, job, "walls[0].base[0].readings[1].at")
	assert.Equal(t, "Front of the seat on wall left, from the corner", front.Label)
	assert.NotContains(t, front.Help, "leg")
	assert.Contains(t, question(t, job, "walls[0].base[1].readings[1].drop").Help, "take off its bed and its tile")
}

// In a closed room the corner of the last wall and the first is measured once too.
func TestTheLastCornerOfAClosedRoomIsAskedOnce(t *testing.T) {
	job := newRoom(t, "three", "add walls", "close")
	job.Walls[3].Head = job.Walls[2].Head
	low := question(t, job, "walls[0].base[0].readings[0].drop")
	assert.Equal(t, "Corner of side and left, below the line", low.Label)
	assert.Contains(t, low.Same, "walls[3].base[0].readings[1].drop")
	assert.Contains(t, question(t, job, "walls[0].head.readings[0].rise").Same, "walls[3].head.readings[1].rise")
	named := map[string]bool{}
	for _, q := range ask.All(job) {
		assert.False(t, named[q.Label], q.Label)
		named[q.Label] = true
	}
	job = answered(t, job, low.Name(), "39 3/4")
	assert.Equal(t, "39 3/4", job.Walls[3].Base[0].Readings[1].Drop)
}

// A seat that is put before the base of a wall leaves measured what was measured there. Where the base ends
// at the seat by now, nobody has measured it.
func TestABenchLeavesMeasuredWhatWas(t *testing.T) {
	for _, what := range []string{"bench", "corner bench"} {
		job, err := shapes.New("three", "in", "bath")
		require.NoError(t, err)
		require.Empty(t, form.Apply(&job, "add walls[2].openings pipe"))
		job.Guess = nil
		before := job.Clone()
		require.NoError(t, form.Apply(&job, "add walls "+what))
		ask.Added(before, &job)
		end := map[string]string{"bench": "walls[2].base[1].readings", "corner bench": "walls[1].base[1].readings"}[what]
		assert.Contains(t, job.Guess, end+"[0].drop", what)
		assert.NotContains(t, job.Guess, end+"[1].drop", what)
		assert.Contains(t, job.Guess, "walls[0].base[0].readings[1].drop", what)
		assert.NotContains(t, job.Guess, "walls[0].base[0].readings[0].drop", what)
		assert.NotContains(t, job.Guess, "walls[2].openings[0].height", what)
	}
}

// A wall that is put in before a bench is a guess, and the bench stays measured.
func TestAWallBeforeABenchIsTheGuess(t *testing.T) {
	job := newRoom(t, "three", "add walls bench")
	job.Guess = nil
	before := job.Clone()
	require.NoError(t, form.Apply(&job, "add walls"))
	require.Equal(t, "bench", job.Walls[4].Name)
	ask.Added(before, &job)
	assert.Contains(t, job.Guess, "walls[3].width")
	assert.NotContains(t, job.Guess, "walls[4].width")
	assert.NotContains(t, job.Guess, "walls[4].top.depth")
}

// A corner is called by its walls as they stand beside each other, one that no other wall of the list meets by its own wall. Found
// in rooms of one and of two walls: all their corners were called corner, or corner 1.
func TestCornersAreCalledByTheirWalls(t *testing.T) {
	meets := survey.End{Meets: "corner"}
	named := func(walls ...survey.Wall) (names []string) {
		for _, c := range ask.Corners(survey.Job{Walls: walls}) {
			names = append(names, c.Label)
		}
		return names
	}
	assert.Equal(t, []string{"Left corner of wall back, along wall back", "Right corner of wall back, along wall back"},
		named(survey.Wall{Name: "back", Left: meets, Right: meets}))
	assert.Equal(t, []string{"Left corner of wall long, along wall long", "Corner of long and short, along wall long", "Corner of long and short, along wall short"},
		named(survey.Wall{Name: "long", Left: meets, Right: meets}, survey.Wall{Name: "short", Left: meets}))
}
