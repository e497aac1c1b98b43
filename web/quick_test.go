package web_test

import (
	"log/slog"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/store"
	"coursewright/web"
)

// emptySite is a server over a data file without jobs, which solves them as told.
func emptySite(t *testing.T, solve func(survey.Job) (layout.Plan, error)) site {
	t.Helper()
	return siteAt(t, filepath.Join(t.TempDir(), "jobs.db"), solve)
}

// siteAt is a server over the data file of a name.
func siteAt(t *testing.T, data string, solve func(survey.Job) (layout.Plan, error)) site {
	t.Helper()
	kept, err := store.Open(t.Context(), data)
	require.NoError(t, err)
	t.Cleanup(func() { assert.NoError(t, kept.Close()) })
	w := &web.Server{Store: kept, Static: static.Files, Solve: solve, Log: slog.New(slog.NewTextHandler(t.Output(), nil))}
	s := httptest.NewServer(w.Handler())
	t.Cleanup(s.Close)
	jar, _ := cookiejar.New(nil)
	client := &http.Client{Jar: jar, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	return site{s, t, kept, client}
}

// resolved reads a job as Solve does, with every refusal, and sets nothing out: for tests of what
// becomes of a job before and after it is solved.
func resolved(job survey.Job) (layout.Plan, error) {
	room, faults := job.Resolve()
	if len(faults) > 0 {
		return layout.Plan{}, faults
	}
	return layout.Plan{Room: room}, nil
}

// swift is a site with the demo, whose jobs are read and not set out.
func swift(t *testing.T) site {
	t.Helper()
	s := emptySite(t, resolved)
	answer, page := s.upload(static.Demo)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	return s
}
