package ask_test

import (
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"

	"coursewright/layout/survey"
	"coursewright/web/ask"
)

// A refusal speaks of what was typed, not of what the job makes of it.
func TestARefusalSpeaksOfWhatWasTyped(t *testing.T) {
	posted := url.Values{ask.FromRight + "walls[0].openings[0].at": {"60"}, "walls[0].width": {"34 1/2"}}
	typed := ask.TypedIn(posted)
	faults := survey.Faults{{Path: "walls[0].openings[0].at", Found: "“-25 1/2”", Want: "a length"}, {Path: "walls[0].width", Found: "“x”"}}
	told := ask.AsTyped(faults, typed)
	assert.Equal(t, "“60”, which is past the left end", told[0].Found)
	assert.Equal(t, "“x”", told[1].Found)
	same := ask.AsTyped(survey.Faults{{Path: "walls[0].openings[0].at", Found: "“60”"}}, typed)
	assert.Equal(t, "“60”", same[0].Found, "what does not read is as it was typed")
	unread := survey.Fault{Path: "walls[0].openings[0].at", Found: "“60”, which has no unit “o”", Meant: "6"}
	assert.Equal(t, survey.Faults{unread}, ask.AsTyped(survey.Faults{unread}, typed), "and why it does not read is said of it")
	meant := ask.AsTyped(survey.Faults{{Path: "walls[0].openings[0].at", Found: "“-2512”", Meant: "-25 1/2"}}, typed)
	assert.Empty(t, meant[0].Meant, "nothing is offered for a figure that nobody has typed")
}

// Nor of a sign, which is a choice beside the box.
func TestARefusalSpeaksOfNoSignThatNobodyTyped(t *testing.T) {
	posted := url.Values{ask.LeanGap + "walls[1].left": {"200"}, ask.UpDown + "walls[0].openings[0].height": {" x "}}
	told := ask.AsTyped(survey.Faults{{Path: "walls[1].left.lean[1].off", Found: "“-200”", Want: "a length from -15\" to 15\""},
		{Path: "walls[0].openings[0].height", Found: "“-x”, which has “x” where a number is needed", Want: "a length such as 7"}}, ask.TypedIn(posted))
	assert.Equal(t, survey.Faults{{Path: "walls[1].left.lean[1].off", Found: "“200”", Want: "a gap of at most 15\""},
		{Path: "walls[0].openings[0].height", Found: "“x”, which has “x” where a number is needed", Want: "a length such as 7"}}, told)
}

// A width on which a guess has no room is refused at the width: nobody has typed the guess.
func TestAWidthIsRefusedForAGuess(t *testing.T) {
	job := survey.Job{Guess: []string{"walls[0].base[0].readings[1].at"}, Walls: []survey.Wall{{Name: "left", Width: "3"}}}
	fault := survey.Fault{Path: "walls[0].base[0].readings[1].at", Found: "“5”", Want: "a length from 0\" to 3\""}
	once := ask.Once(job, survey.Faults{fault, fault})
	assert.Equal(t, survey.Faults{{Path: "walls[0].width", Found: "“3”", Want: "a width on which what is not measured yet has room, or measure that too"}}, once)
	job.Guess = append(job.Guess, "walls[0].width")
	assert.Equal(t, survey.Faults{fault}, ask.Once(job, survey.Faults{fault}), "neither was typed")
}

// A width that is refused spoils the end of the tub too, which nobody typed: one fault.
func TestAWidthThatIsRefusedIsOneFault(t *testing.T) {
	job := survey.Job{Walls: []survey.Wall{{Name: "left", Width: "0"}}}
	once := ask.Once(job, survey.Faults{{Path: "walls[0].width", Found: "“0”", Want: "a length over 0"},
		{Path: "walls[0].base[1].readings[1].at", Found: "0", Want: "more than the 5 of the reading before it"}})
	assert.Equal(t, survey.Faults{{Path: "walls[0].width", Found: "“0”", Want: "a length over 0"}}, once)
}
