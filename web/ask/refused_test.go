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
	typed := ask.FromEnd(posted)
	faults := survey.Faults{{Path: "walls[0].openings[0].at", Found: "“-25 1/2”", Want: "a length"}, {Path: "walls[0].width", Found: "“x”"}}
	told := ask.AsTyped(faults, typed)
	assert.Equal(t, "“60”, which is -25 1/2 from the left end", told[0].Found)
	assert.Equal(t, "“x”", told[1].Found)
	same := ask.AsTyped(survey.Faults{{Path: "walls[0].openings[0].at", Found: "“60”"}}, typed)
	assert.Equal(t, "“60”", same[0].Found, "what does not read is as it was typed")
}
