package bench_test

import (
	"context"
	"fmt"
	"net/http"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/web/trial"
)

// opened opens folds and waits until they have told what they are there for.
func opened(t *testing.T, ctx context.Context, ids ...string) {
	t.Helper()
	for _, id := range ids {
		trial.See[bool](t, ctx, fmt.Sprintf(`document.getElementById(%q).open = true`, id))
		trial.Await(t, ctx, fmt.Sprintf(`document.querySelector("#%s > [data-load]") === null`, id))
	}
}

// Why a set-out is as it is, is worked out for those who have opened it, and for nobody else.
func TestWhyIsToldWhenAsked(t *testing.T) {
	s := trial.New(t)
	_, page := s.Get("/jobs/1")
	assert.Contains(t, page, `data-load="/jobs/1/told"`)
	assert.NotContains(t, page, `id="curve-0"`)
	assert.NotContains(t, page, "The smallest cut in sight")
	answer, told := s.Get("/jobs/1/told")
	require.Equal(t, http.StatusOK, answer.StatusCode)
	for _, said := range []string{`id="starts-told"`, `id="curve-0"`, "joint on centre", `id="lines-told"`, "Pin the course line: ", `id="reasons-told"`, "The smallest cut in sight"} {
		assert.Contains(t, told, said)
	}
	assert.NotContains(t, told, "data-load")
	posted := s.Bench()
	posted.Set("joint", "3/16")
	_, closed := s.Post("/jobs/1", posted, "X-Bench", "live")
	assert.NotContains(t, closed, "The smallest cut in sight")
	posted = s.Bench()
	posted.Set("joint", "1/8")
	_, open := s.Post("/jobs/1", posted, "X-Bench", "live", "X-Told", "open")
	assert.Contains(t, open, "The smallest cut in sight")
	posted = trial.Fields(t, told) // without a script the buttons of that page do what they say
	posted.Set("revision", s.Bench().Get("revision"))
	posted.Set("do", trial.Button(t, told, "pin left "))
	answer, _ = s.Post("/jobs/1", posted)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, job := s.Stored()
	assert.NotEmpty(t, job.Pins.Walls["left"])
}

// A plan file says all there is, whoever has looked at what.
func TestAPlanFileIsAlwaysTold(t *testing.T) {
	s := trial.New(t)
	s.Get("/jobs/1")
	_, file := s.Get("/jobs/1/plan.json")
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	plan, err := layout.Now(job)
	require.NoError(t, err)
	want, err := plan.File()
	require.NoError(t, err)
	assert.Equal(t, string(want), file)
}

// An open fold is told anew with the edit itself, so that what has the focus in it keeps it.
func TestAnOpenFoldFollowsAnEdit(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	openAt(t, ctx, s, "/jobs/1")
	opened(t, ctx, "compare-lines")
	said := `document.getElementById("lines-told").textContent`
	before := trial.See[string](t, ctx, said)
	assert.Contains(t, before, "full course")
	trial.See[bool](t, ctx, `(() => { window.asked = 0; const real = fetch; window.fetch = (...all) => { window.asked += all[0].toString().includes("/told"); return real(...all) }; return true })()`)
	trial.Type(t, ctx, "joint", "1/4")
	trial.Await(t, ctx, status+` === "Saved" && `+said+` !== `+trial.Quote(before))
	assert.True(t, trial.See[bool](t, ctx, `document.getElementById("compare-lines").open`))
	assert.Zero(t, trial.See[float64](t, ctx, `window.asked`))
	assert.True(t, trial.See[bool](t, ctx, `document.querySelector("#compare-starts [data-load]") === null`), "what is told at once is told of all")
}

// What is typed is looked at, saved, and shown: of all three it is solved once.
func TestOneEditIsSolvedOnce(t *testing.T) {
	solved := 0
	s := trial.Solving(t, static.Demo, func(ctx context.Context, job survey.Job) (layout.Plan, error) {
		solved++
		return layout.Quick(ctx, job)
	})
	posted := s.Bench()
	solved = 0
	posted.Set("joint", "3/16")
	s.Post("/jobs/1/look", posted)
	answer, _ := s.Post("/jobs/1", posted, "X-Bench", "live")
	require.Equal(t, http.StatusOK, answer.StatusCode)
	s.Get("/jobs/1")
	s.Get("/jobs/1/work")
	assert.Equal(t, 1, solved)
}
