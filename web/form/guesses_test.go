package form

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"coursewright/layout/survey"
)

const (
	backWidth = "walls[1].width"
	leftWidth = "walls[0].width"
)

// guessing is the demo with fields set and others guessed.
func guessing(t require.TestingT, guesses []string, fields ...string) survey.Job {
	job := edited(t, fields...)
	job.Guess = guesses
	return job
}

func TestWhoMeasuresWhatIsGuessedHasChangedIt(t *testing.T) {
	both, none := []string{leftWidth, backWidth}, []string(nil)
	base := guessing(t, both, leftWidth, "32", backWidth, "60")
	for _, c := range []struct {
		name         string
		saved, later survey.Job
		clashes      []Clash
		back         string
		guesses      []string
	}{
		{
			"each measures another figure",
			guessing(t, []string{backWidth}, leftWidth, "33", backWidth, "60"), guessing(t, []string{leftWidth}, leftWidth, "32", backWidth, "59"),
			nil, "59", none,
		},
		{
			"the saved one measures another value, the later one that which is guessed",
			guessing(t, []string{leftWidth}, leftWidth, "32", backWidth, "59"), guessing(t, []string{leftWidth}, leftWidth, "32", backWidth, "60"),
			[]Clash{{backWidth, "60", "59", "60", true}}, "59", []string{leftWidth},
		},
		{
			"the saved one measures what is guessed, the later one another value",
			guessing(t, []string{leftWidth}, leftWidth, "32", backWidth, "60"), guessing(t, []string{leftWidth}, leftWidth, "32", backWidth, "59"),
			[]Clash{{backWidth, "60", "60", "59", true}}, "60", []string{leftWidth},
		},
		{
			"both measure what is guessed",
			guessing(t, []string{leftWidth}, leftWidth, "32", backWidth, "60"), guessing(t, []string{leftWidth}, leftWidth, "32", backWidth, "60"),
			nil, "60", []string{leftWidth},
		},
		{
			"one measures what is guessed, the other nothing",
			guessing(t, []string{leftWidth}, leftWidth, "32", backWidth, "60"), base,
			nil, "60", []string{leftWidth},
		},
		{
			"one measures, in the other the guess is made anew",
			guessing(t, []string{leftWidth}, leftWidth, "32", backWidth, "59"), guessing(t, both, leftWidth, "32", backWidth, "61"),
			nil, "59", []string{leftWidth},
		},
		{
			"one measures, the other takes the joint",
			guessing(t, both, leftWidth, "32", backWidth, "60", "joint", "3/16"), guessing(t, []string{leftWidth}, leftWidth, "32", backWidth, "60"),
			nil, "60", []string{leftWidth},
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := merged(t, base, c.saved, c.later)
			assert.Equal(t, c.clashes, m.Clashes)
			assert.Equal(t, c.back, Get(m.Job, backWidth))
			assert.Equal(t, c.guesses, m.Job.Guess)
		})
	}
}

func TestWhatIsTakenOfAClashSaysWhetherItIsMeasured(t *testing.T) {
	base := guessing(t, []string{backWidth}, backWidth, "60")
	saved, later := guessing(t, nil, backWidth, "59"), guessing(t, nil, backWidth, "60")
	for _, yours := range [][]string{nil, {backWidth}} {
		m := merged(t, base, saved, later, yours...)
		require.Len(t, m.Clashes, 1)
		assert.Empty(t, m.Job.Guess)
	}
}

// What is measured in either of two edits is measured in what is made of them, and what neither
// has measured is a guess still.
func TestNoMeasuredFigureIsAGuessAgain(t *testing.T) {
	paths := []string{leftWidth, backWidth, "walls[2].width", "tile.width", "joint"}
	rapid.Check(t, func(t *rapid.T) {
		base := guessing(t, rapid.SliceOfDistinct(rapid.SampledFrom(paths), rapid.ID).Draw(t, "guessed"))
		edit := func(label string) survey.Job {
			job := base.Clone()
			job.Guess = nil
			for _, path := range base.Guess {
				if rapid.Bool().Draw(t, label+" leaves "+path) {
					job.Guess = append(job.Guess, path)
				} else if rapid.Bool().Draw(t, "another value") {
					require.NoError(t, Set(&job, path, rapid.SampledFrom([]string{"3", "7"}).Draw(t, "value")))
				}
			}
			return job
		}
		saved, later := edit("saved"), edit("later")
		m := merged(t, base, saved, later)
		for _, path := range base.Guess {
			s, l := measuredIn(saved, path), measuredIn(later, path)
			assert.Equal(t, s || l, measuredIn(m.Job, path), path)
			clash := false
			for _, one := range m.Clashes {
				clash = clash || one.Path == path
			}
			assert.Equal(t, s && l && Get(saved, path) != Get(later, path), clash, path)
		}
	})
}

func measuredIn(job survey.Job, path string) bool {
	for _, one := range job.Guess {
		if one == path {
			return false
		}
	}
	return true
}
