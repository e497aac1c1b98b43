package ask_test

import (
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/web/ask"
	"coursewright/web/form"
	"coursewright/web/shapes"
)

func demo(t *testing.T) survey.Job {
	t.Helper()
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	return job
}

func newTub(t *testing.T) survey.Job {
	t.Helper()
	job, err := shapes.New("tub", "in", "A bath")
	require.NoError(t, err)
	job.Guess = ask.Paths(job)
	return job
}

// answered fills a job as a form of the questions would, with some boxes typed in.
func answered(t *testing.T, job survey.Job, typed ...string) survey.Job {
	t.Helper()
	posted := url.Values{}
	for _, q := range ask.All(job) {
		posted.Set(q.Name(), q.Shown(job))
		if q.Updown {
			posted.Set(ask.Side+q.Path, map[bool]string{true: "below", false: "above"}[q.Below(job)])
		}
	}
	for i := 0; i < len(typed); i += 2 {
		posted.Set(typed[i], typed[i+1])
	}
	measured := ask.Read(job, posted)
	require.NoError(t, form.Decode(&job, posted))
	ask.Settle(&job, measured)
	return job
}

func TestACornerIsAskedOnceForBothWalls(t *testing.T) { // law 1
	job := answered(t, newTub(t), "walls[0].base[1].readings[1].drop", "38 3/4")
	assert.Equal(t, "38 3/4", job.Walls[0].Base[1].Readings[1].Drop)
	assert.Equal(t, "38 3/4", job.Walls[1].Base[0].Readings[0].Drop)
	seen := map[string]bool{}
	for _, q := range ask.All(job) {
		for _, path := range append([]string{q.Path}, q.Same...) {
			assert.False(t, seen[path], "%s is asked for twice", path)
			seen[path] = true
		}
	}
}

func TestTheFrontIsOneFigureAskedFromTheCorner(t *testing.T) { // law 1
	job := answered(t, newTub(t), "walls[0].width", "35 1/4", "right walls[0].base[0].readings[1].at", "30 7/8")
	assert.Equal(t, "4 3/8", job.Walls[0].Base[0].Readings[1].At)
	assert.Equal(t, "4 3/8", job.Walls[0].Base[1].Readings[0].At)
}

// What is not measured stays as far from the corner as guessed, whatever the wall's width is.
func TestAGuessKeepsItsPlaceFromTheCorner(t *testing.T) {
	const front = "walls[0].base[0].readings[1].at"
	guess := func(job survey.Job) string {
		for _, q := range ask.All(job) {
			if q.Path == front {
				return q.Guess(job)
			}
		}
		return ""
	}
	for _, width := range []string{"35 1/4", "36", "33"} {
		job := answered(t, newTub(t), "walls[0].width", width)
		assert.Equal(t, "30", guess(job), width)
		assert.Equal(t, job.Walls[0].Base[0].Readings[1].At, job.Walls[0].Base[1].Readings[0].At)
		assert.Contains(t, job.Guess, front)
		assert.Equal(t, "30", guess(answered(t, job, "walls[0].width", "34")), "typed anew")
	}
	job := answered(t, newTub(t), "walls[0].width", "28")
	assert.Equal(t, "5", job.Walls[0].Base[0].Readings[1].At, "a wall that is shorter than the tub keeps a leg")
	job = answered(t, newTub(t), "walls[0].width", "none")
	assert.Equal(t, "5", job.Walls[0].Base[0].Readings[1].At)
}

// The front of the tub is typed from the corner or from the front, on either end wall.
func TestAnEndWallIsMeasuredFromEitherEnd(t *testing.T) {
	for _, wall := range []struct{ path, corner, front string }{
		{"walls[0].base[0].readings[1].at", "30 7/8", "4 3/8"},
		{"walls[2].base[0].readings[1].at", "30 5/8", "4 1/8"},
	} {
		shown := map[bool]string{}
		for _, fromFront := range []bool{false, true} {
			for _, q := range ask.AllFrom(demo(t), fromFront) {
				if q.Path == wall.path {
					assert.True(t, q.HasEnds())
					assert.Contains(t, q.Ask, map[bool]string{false: "from the corner", true: "from the front of wall"}[fromFront])
					assert.NotContains(t, q.Ask+q.Label+q.Help, "{")
					shown[fromFront] = q.Shown(demo(t))
					posted := url.Values{q.Name(): {"10"}}
					ask.Read(demo(t), posted)
					job := demo(t)
					require.NoError(t, form.Decode(&job, posted))
					again := ask.AllFrom(job, fromFront)
					for _, a := range again {
						if a.Path == wall.path {
							assert.Equal(t, "10", a.Shown(job), "typed from the %v and shown from there", fromFront)
						}
					}
				}
			}
		}
		assert.Equal(t, map[bool]string{false: wall.corner, true: wall.front}, shown, wall.path)
	}
}

func TestWhatIsNotMeasuredStaysAGuess(t *testing.T) { // law 2
	job := newTub(t)
	measured, all := ask.Count(job)
	assert.Zero(t, measured)
	assert.Greater(t, all, 10)
	job = answered(t, job, "walls[1].width", "59 7/8")
	measured, _ = ask.Count(job)
	assert.Equal(t, 1, measured)
	assert.Equal(t, "59 7/8", job.Walls[1].Width)
	assert.Equal(t, "59 7/8", job.Walls[1].Base[0].Readings[1].At, "the reading at the end came along")
	assert.NotContains(t, job.Guess, "walls[1].width")
	assert.Contains(t, job.Guess, "walls[0].width")
	assert.Equal(t, "40", job.Walls[1].Base[0].Readings[0].Drop, "the guess stands")
}

func TestAskedAgainAJobStaysAsItIs(t *testing.T) { // law 3
	for name, job := range map[string]survey.Job{"demo": demo(t), "new": newTub(t)} {
		again := answered(t, job)
		assert.Equal(t, form.Fields(job), form.Fields(again), name)
	}
}

func TestAHeightIsAskedWithoutAMinus(t *testing.T) {
	job := demo(t)
	var pipe ask.Question
	for _, q := range ask.Of(job, ask.Openings, false) {
		if q.Updown && q.Below(job) {
			pipe = q
		}
	}
	require.NotEmpty(t, pipe.Path)
	assert.NotContains(t, pipe.Shown(job), "-")
	assert.Equal(t, "-9", form.Get(answered(t, job, pipe.Name(), "9"), pipe.Path))
	assert.Equal(t, "9", form.Get(answered(t, job, pipe.Name(), "9", ask.Side+pipe.Path, "above"), pipe.Path))
	assert.Equal(t, "-9", form.Get(answered(t, job, pipe.Name(), "-9", ask.Side+pipe.Path, "above"), pipe.Path), "a minus turns the switch")
}

// One gap says how steep a corner is and no more: over a tub 40 in under the line it stands 5/24 in to the other side where
// it leans by 1/4 in over 4 ft, by hand. A file that has nothing under the line is left as it is.
func TestACornerLeansOnUnderTheLevelLine(t *testing.T) {
	job := demo(t)
	posted := url.Values{ask.LeanGap + "walls[1].left": {"1/4"}, ask.LeanOver + "walls[1].left": {"48"}, ask.LeanWay + "walls[1].left": {"away"}}
	ask.Read(job, posted)
	require.NoError(t, form.Decode(&job, posted))
	room, faults := job.Resolve()
	require.Empty(t, faults)
	left := room.Walls[1].Left
	assert.Equal(t, []length.Length{5 * length.Inch / 24, 0, -length.Inch / 4}, []length.Length{left.Off(-40 * length.Inch), left.Off(0), left.Off(48 * length.Inch)})

	job.Walls[1].Left.Lean[0] = survey.Lean{Height: "0", Off: "0"}
	posted = url.Values{ask.LeanGap + "walls[1].left": {"1/4"}, ask.LeanOver + "walls[1].left": {"48"}, ask.LeanWay + "walls[1].left": {"away"}}
	ask.Read(job, posted)
	require.NoError(t, form.Decode(&job, posted))
	assert.Equal(t, survey.Lean{Height: "0", Off: "0"}, job.Walls[1].Left.Lean[0], "nobody has typed anything")
	room, faults = job.Resolve()
	require.Empty(t, faults)
	assert.Zero(t, room.Walls[1].Left.Off(-40*length.Inch))
}

// A corner that leans is told by one gap and its side; the signs are the program's matter.
func TestACornerLeansIntoTheRoomOrAway(t *testing.T) {
	lean := func(job survey.Job, end string) []survey.Lean {
		switch end {
		case "walls[1].left":
			return job.Walls[1].Left.Lean
		default:
			return job.Walls[1].Right.Lean
		}
	}
	for _, c := range []struct{ end, gap, over, way, off string }{
		{"walls[1].left", "1/4", "48", "into", "1/4"},
		{"walls[1].left", "1/4", "", "away", "-1/4"},
		{"walls[1].right", "3/16", "72", "into", "-3/16"},
		{"walls[1].right", "-3/16", "72", "away", "3/16"},
		{"walls[1].right", "0", "72", "into", "0"}, // plumb has no side
	} {
		posted := url.Values{ask.LeanGap + c.end: {c.gap}, ask.LeanOver + c.end: {c.over}, ask.LeanWay + c.end: {c.way}}
		job := demo(t)
		ask.Read(job, posted)
		require.NoError(t, form.Decode(&job, posted))
		got := lean(job, c.end)
		require.Len(t, got, 2, c.end)
		assert.Equal(t, form.Below(got[1]), got[0])
		assert.Equal(t, c.off, got[1].Off)
		for _, k := range ask.Corners(job) {
			if k.End == c.end {
				if c.off != "0" {
					assert.Equal(t, c.way, k.Way(), "shown as it was typed")
				}
				assert.NotContains(t, k.Gap, "-")
			}
		}
		again := url.Values{ask.LeanGap + c.end: {""}, ask.LeanWay + c.end: {c.way}}
		ask.Read(job, again)
		require.NoError(t, form.Decode(&job, again))
		assert.Equal(t, "0", lean(job, c.end)[1].Off, "emptied, it is plumb")
		_, faults := job.Resolve()
		assert.Empty(t, faults)
	}
	refused := demo(t)
	posted := url.Values{ask.LeanGap + "walls[1].left": {"20"}}
	ask.Read(refused, posted)
	require.NoError(t, form.Decode(&refused, posted))
	_, faults := refused.Resolve()
	require.Len(t, faults, 2, "over the line and under it")
	once := ask.Once(refused, faults)
	require.Len(t, once, 1)
	assert.Equal(t, "walls[1].left.lean[1].off", once[0].Path)
	var ends []string
	for _, c := range ask.Corners(demo(t)) {
		ends = append(ends, c.End)
	}
	assert.Equal(t, []string{"walls[0].right", "walls[1].left", "walls[1].right", "walls[2].left"}, ends)
}

func TestWhatOneAnswerSpoilsIsSaidOnce(t *testing.T) {
	job := answered(t, newTub(t), "walls[2].width", "-32", "walls[0].base[1].readings[1].drop", "5o")
	_, faults := job.Resolve()
	require.Greater(t, len(faults), 2)
	once := ask.Once(job, faults)
	require.Len(t, once, 2)
	assert.Equal(t, "walls[0].base[1].readings[1].drop", once[0].Path)
	assert.Equal(t, "walls[2].width: found “-32”; write a length over 0; perhaps “32” was meant", once[1].String())
}

func TestARefusedAnswerThatIsEmptiedIsAGuessAgain(t *testing.T) {
	saved := newTub(t)
	shown := answered(t, newTub(t), "walls[2].width", "-32")
	posted := url.Values{"walls[2].width": {" "}}
	guesses := ask.Emptied(shown, saved, posted)
	assert.Equal(t, []string{"walls[2].width"}, guesses)
	assert.Equal(t, saved.Walls[2].Width, posted.Get("walls[2].width"))
	measured := answered(t, newTub(t), "walls[2].width", "32")
	assert.Empty(t, ask.Emptied(measured, measured, url.Values{"walls[2].width": {""}}), "what was measured is not emptied by chance")
}

func TestARangeOfSeveralTopsIsOne(t *testing.T) { // law 1
	job := newTub(t)
	groups := ask.Together(job)
	require.Len(t, groups, 1)
	require.Len(t, groups[0], 3)
	require.NoError(t, form.Apply(&job, "free "+groups[0][0]+" "+groups[0][1]+" "+groups[0][2]))
	posted := url.Values{"walls[0].head.stops.from": {"30"}, "walls[0].head.stops.to": {"36"}}
	ask.Read(job, posted)
	require.NoError(t, form.Decode(&job, posted))
	for _, w := range job.Walls {
		assert.Equal(t, survey.Mark{From: "30", To: "36"}, *w.Head.Stops, w.Name)
	}
	job.Walls[1].Head.Stops.To = "35"
	assert.Equal(t, [][]string{{"walls[0].head.stops", "walls[2].head.stops"}, {"walls[1].head.stops"}}, ask.Together(job))
}

// Where tile may stop in a range nothing is measured, so nothing is left to guess.
func TestAFigureThatIsGoneIsNoGuess(t *testing.T) {
	job := newTub(t)
	_, all := ask.Count(job)
	require.NoError(t, form.Apply(&job, "free walls[0].head.stops walls[1].head.stops walls[2].head.stops"))
	assert.NotContains(t, strings.Join(job.Guess, " "), "head")
	for _, path := range job.Guess {
		assert.NotEmpty(t, form.Get(job, path), path)
	}
	job = answered(t, job)
	measured, now := ask.Count(job)
	assert.Equal(t, 0, measured)
	assert.Equal(t, all-1, now)
	job = newTub(t)
	job.Guess = []string{"walls[0].head.stops.at"}
	require.NoError(t, form.Apply(&job, "free walls[0].head.stops"))
	assert.Nil(t, job.Guess, "and the plan is a guess no more")
}

func TestWhatIsAddedIsAGuess(t *testing.T) { // law 2
	job := newTub(t)
	job.Guess = nil
	before := job.Clone()
	require.NoError(t, form.Apply(&job, "add walls[1].openings window"))
	ask.Added(before, &job)
	assert.Equal(t, []string{"walls[1].openings[0].left.at", "walls[1].openings[0].width.at",
		"walls[1].openings[0].bottom.at", "walls[1].openings[0].height.at"}, job.Guess)
}

// A wall that is added stands, in the corner it is added at, where somebody has measured already: its own
// ceiling and base are guesses at its other end alone.
func TestWhatIsAddedIsNoGuessWhereItMeetsWhatIsMeasured(t *testing.T) { // laws 1 and 2
	job, err := shapes.New("three", "mm", "")
	require.NoError(t, err)
	before := job.Clone()
	require.NoError(t, form.Apply(&job, "add walls"))
	ask.Added(before, &job)
	assert.ElementsMatch(t, []string{"walls[3].width", "walls[3].base[0].readings[1].drop", "walls[3].head.readings[1].rise"}, job.Guess)
}

func TestAReadingInTheMiddleIsAskedForAndAGuess(t *testing.T) { // law 2
	job := newTub(t)
	job.Guess = []string{"walls[1].base[0].readings[1].drop", "walls[2].base[0].readings[0].drop"}
	_, all := ask.Count(job)
	require.NoError(t, form.Apply(&job, "add walls[1].base[0].readings"))
	ask.Between(&job, "walls[1].base[0].readings")
	_, now := ask.Count(job)
	assert.Equal(t, all+1, now)
	assert.ElementsMatch(t, []string{"walls[1].base[0].readings[1].drop", "walls[1].base[0].readings[2].drop", "walls[2].base[0].readings[0].drop"}, job.Guess)
	for _, q := range ask.Of(job, ask.Down, false) {
		if q.Path == "walls[1].base[0].readings[1].drop" {
			assert.Equal(t, "Middle of wall back, below the line", q.Label)
		}
	}
}

func TestTheSideOfAGuessIsKeptBeforeItsFigure(t *testing.T) {
	job := newTub(t)
	before := job.Clone()
	require.NoError(t, form.Apply(&job, "add walls[0].openings pipe"))
	ask.Added(before, &job)
	height := "walls[0].openings[0].height"
	require.Equal(t, "-7", form.Get(job, height))
	job = answered(t, job, ask.Side+height, "above")
	assert.Equal(t, "7", form.Get(job, height))
	assert.Contains(t, job.Guess, height, "nobody has measured it")
	job = answered(t, job, ask.UpDown+height, "42")
	assert.Equal(t, "42", form.Get(job, height), "the side chosen first is kept")
	assert.NotContains(t, job.Guess, height)
}

// A wall that is called one is not called one twice.
func TestAWallIsNotCalledOneTwice(t *testing.T) {
	job, err := shapes.New("tub", "in", "bath")
	require.NoError(t, err)
	job.Walls[0].Name = "Window wall"
	for _, q := range ask.All(job) {
		assert.NotContains(t, strings.ToLower(q.Label+q.Ask), "wall window wall")
	}
	assert.Equal(t, "Window wall, from the corner", ask.All(job)[0].Label)
	assert.Equal(t, "Width of wall back", ask.All(job)[1].Label)
}
