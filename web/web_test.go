package web_test

import (
	"coursewright/web/trial"

	"io"
	"net"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestPagesCarryTheSafeHeadersAndNothingInline(t *testing.T) {
	s := trial.New(t)
	for _, path := range []string{"/", "/jobs/1", "/jobs/1?wall=2", "/jobs/99", "/nowhere", "/jobs/1/job.json"} {
		answer, page := s.Get(path)
		h := answer.Header
		assert.Contains(t, h.Get("Content-Security-Policy"), "default-src 'none'", path)
		assert.NotContains(t, h.Get("Content-Security-Policy"), "unsafe", path)
		assert.Contains(t, h.Get("Content-Security-Policy"), "frame-ancestors 'none'", path)
		assert.Equal(t, "nosniff", h.Get("X-Content-Type-Options"), path)
		assert.Equal(t, "no-referrer", h.Get("Referrer-Policy"), path)
		assert.Equal(t, "no-store", h.Get("Cache-Control"), path)
		assert.NotContains(t, page, " style=", path)
		assert.NotContains(t, page, "<style", path)
		assert.NotRegexp(t, `\son[a-z]+="`, page, path)
	}
}

func TestAForeignHostIsRefusedOnEveryRoute(t *testing.T) {
	s := trial.New(t)
	address := strings.TrimPrefix(s.URL, "http://")
	for _, line := range []string{"GET /", "GET /static/bench.js", "POST /jobs/1", "OPTIONS /jobs", "GET /nowhere"} {
		for host, want := range map[string]string{
			"rebound.example": "421", "127.0.0.1.rebound.example": "421", "rebound.example:7310": "421",
		} {
			assert.Equal(t, want, raw(t, address, line, host), "%s at %s", line, host)
		}
	}
	for _, host := range []string{"localhost:80", "127.0.0.1", "[::1]:7310", "bench.example", "BENCH.example:443"} {
		assert.Equal(t, "200", raw(t, address, "GET /", host), host)
	}
}

// raw sends a request no client library has tidied and gives the status.
func raw(t *testing.T, address, line, host string) string {
	t.Helper()
	conn, err := net.Dial("tcp", address)
	require.NoError(t, err)
	defer conn.Close()
	_, err = io.WriteString(conn, line+" HTTP/1.1\r\nHost: "+host+"\r\nContent-Length: 0\r\nConnection: close\r\n\r\n")
	require.NoError(t, err)
	answer := make([]byte, 12)
	_, err = io.ReadFull(conn, answer)
	require.NoError(t, err)
	return string(answer[9:])
}

func TestAnotherSitesWritesAreRefused(t *testing.T) {
	s := trial.New(t)
	answer, _ := s.Post("/jobs/1/delete", nil, "Sec-Fetch-Site", "cross-site")
	assert.Equal(t, http.StatusForbidden, answer.StatusCode)
	answer, _ = s.Post("/jobs/1/delete", nil, "Origin", "https://elsewhere.example")
	assert.Equal(t, http.StatusForbidden, answer.StatusCode)
	answer, _ = s.Get("/jobs/1")
	assert.Equal(t, http.StatusOK, answer.StatusCode, "the job is still there")
}

func TestNoGetChangesAnything(t *testing.T) {
	s := trial.New(t)
	before, _ := s.Stored()
	for _, path := range []string{"/jobs", "/jobs/import", "/jobs/1/undo", "/jobs/1/redo", "/jobs/1/delete", "/jobs/1/restore", "/jobs/1/keep"} {
		answer, _ := s.Get(path)
		assert.Contains(t, []int{http.StatusMethodNotAllowed, http.StatusNotFound}, answer.StatusCode, path)
	}
	after, _ := s.Stored()
	assert.Equal(t, before, after)
}

func TestStaticFiles(t *testing.T) {
	s := trial.New(t)
	for path, kind := range map[string]string{
		"/static/coursewright.css": "text/css", "/static/drawing.css": "text/css", "/static/bench.js": "javascript",
		"/static/icon.svg": "image/svg", "/static/condensed.ttf": "font/ttf", "/static/condensed-bold.ttf": "font/ttf",
	} {
		answer, body := s.Get(path)
		assert.Equal(t, http.StatusOK, answer.StatusCode, path)
		assert.Contains(t, answer.Header.Get("Content-Type"), kind, path)
		assert.NotEmpty(t, body, path)
	}
	answer, _ := s.Get("/static/")
	assert.Equal(t, http.StatusNotFound, answer.StatusCode)
}

func TestABodyOverTheLimitIsRefused(t *testing.T) {
	s := trial.New(t)
	answer, page := s.Post("/jobs/1", url.Values{"title": {strings.Repeat("x", 5<<20)}})
	assert.Equal(t, http.StatusRequestEntityTooLarge, answer.StatusCode)
	assert.Contains(t, page, "1 MiB")
}

func TestMissingJobsAreMissing(t *testing.T) {
	s := trial.New(t)
	for _, path := range []string{"/jobs/77", "/jobs/0", "/jobs/x", "/jobs/1/nowhere", "/elsewhere"} {
		answer, page := s.Get(path)
		assert.Equal(t, http.StatusNotFound, answer.StatusCode, path)
		assert.Contains(t, page, "Back to the jobs")
	}
}

func TestWhatCanBeTakenAway(t *testing.T) {
	s := trial.New(t)
	for path, begins := range map[string]string{"plan.json": "{", "cuts.csv": "\ufeff", "takeoff.csv": "\ufeff", "sheets.pdf": "%PDF-", "job.json": "{"} {
		answer, body := s.Get("/jobs/1/" + path)
		assert.Equal(t, http.StatusOK, answer.StatusCode, path)
		assert.True(t, strings.HasPrefix(body, begins), "%s begins with %.20q", path, body)
		assert.Contains(t, answer.Header.Get("Content-Disposition"), "heron-street--upstairs-bath")
	}
	answer, _ := s.Get("/jobs/1/sheets.pdf?paper=papyrus")
	assert.Equal(t, http.StatusBadRequest, answer.StatusCode)
}
