package bench_test

import (
	"testing"

	"coursewright/web/trial"

	"github.com/stretchr/testify/assert"
)

// Keys reach the survey past the head and the drawing. Found by a walk: the first box was 34 stops away.
func TestALinkLeadsPastTheHeadToTheSurvey(t *testing.T) {
	s := trial.New(t)
	_, page := s.Get("/jobs/1")
	assert.Contains(t, page, `<a class="skip" href="#survey">To the survey</a>`)
	assert.Contains(t, page, `<form id="survey"`)
	_, page = s.Get("/jobs/1/work")
	assert.NotContains(t, page, `href="#survey">To the survey`)
}
