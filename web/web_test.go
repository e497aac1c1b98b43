package web_test

import (
	"bytes"
	"io"
	"log/slog"
	"mime/multipart"
	"net"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"net/url"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/store"
	"coursewright/web"
)

// site is a running server over a real data file, with one job, the demo unless said otherwise.
type site struct {
	*httptest.Server
	t      *testing.T
	store  *store.Store
	client *http.Client
}

func newSite(t *testing.T) site {
	t.Helper()
	return newSiteOf(t, static.Demo)
}

func newSiteOf(t *testing.T, file []byte) site {
	t.Helper()
	return newSiteSolving(t, file, web.Recent(layout.Solve))
}

func newSiteSolving(t *testing.T, file []byte, solve func(survey.Job) (layout.Plan, error)) site {
	t.Helper()
	kept, err := store.Open(t.Context(), filepath.Join(t.TempDir(), "jobs.db"))
	require.NoError(t, err)
	t.Cleanup(func() { assert.NoError(t, kept.Close()) })
	job, err := survey.Read(file)
	require.NoError(t, err)
	document, err := survey.Write(job)
	require.NoError(t, err)
	_, err = kept.Create(t.Context(), job.Title, document)
	require.NoError(t, err)
	w := &web.Server{Store: kept, Static: static.Files, Hosts: []string{"bench.example"}, Solve: solve, Log: slog.New(slog.NewTextHandler(t.Output(), nil))}
	s := httptest.NewServer(w.Handler())
	t.Cleanup(s.Close)
	jar, _ := cookiejar.New(nil)
	client := &http.Client{Jar: jar, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	return site{s, t, kept, client}
}

func (s site) do(r *http.Request) (*http.Response, string) {
	s.t.Helper()
	answer, err := s.client.Do(r)
	require.NoError(s.t, err)
	defer answer.Body.Close()
	body, err := io.ReadAll(answer.Body)
	require.NoError(s.t, err)
	return answer, string(body)
}

func (s site) get(path string) (*http.Response, string) {
	r, err := http.NewRequest(http.MethodGet, s.URL+path, nil)
	require.NoError(s.t, err)
	return s.do(r)
}

func (s site) post(path string, fields url.Values, headers ...string) (*http.Response, string) {
	r, err := http.NewRequest(http.MethodPost, s.URL+path, strings.NewReader(fields.Encode()))
	require.NoError(s.t, err)
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	for i := 0; i < len(headers); i += 2 {
		r.Header.Set(headers[i], headers[i+1])
	}
	return s.do(r)
}

func (s site) upload(document []byte) (*http.Response, string) {
	var body bytes.Buffer
	form := multipart.NewWriter(&body)
	part, err := form.CreateFormFile("file", "job.json")
	require.NoError(s.t, err)
	_, _ = part.Write(document)
	require.NoError(s.t, form.Close())
	r, err := http.NewRequest(http.MethodPost, s.URL+"/jobs/import", &body)
	require.NoError(s.t, err)
	r.Header.Set("Content-Type", form.FormDataContentType())
	return s.do(r)
}

// fields reads the survey form off a page, as a browser would post it.
func fields(t *testing.T, page string) url.Values {
	t.Helper()
	root, err := html.Parse(strings.NewReader(page))
	require.NoError(t, err)
	out := url.Values{}
	for n := range root.Descendants() {
		if n.Type == html.ElementNode && attr(n, "id") == "survey" {
			for field := range n.Descendants() {
				collect(out, field)
			}
		}
	}
	return out
}

func collect(out url.Values, n *html.Node) {
	name := attr(n, "name")
	switch {
	case name == "" || n.Data == "button":
	case n.Data == "input" && (attr(n, "type") != "checkbox" || has(n, "checked")):
		out.Add(name, attr(n, "value"))
	case n.Data == "select":
		for o := range n.ChildNodes() {
			if has(o, "selected") {
				out.Add(name, attr(o, "value"))
			}
		}
	}
}

func has(n *html.Node, key string) bool {
	for _, a := range n.Attr {
		if a.Key == key {
			return true
		}
	}
	return false
}

func attr(n *html.Node, key string) string {
	for _, a := range n.Attr {
		if a.Key == key {
			return a.Val
		}
	}
	return ""
}

// bench gets job 1 and its form.
func (s site) bench() url.Values {
	s.t.Helper()
	answer, page := s.get("/jobs/1")
	require.Equal(s.t, http.StatusOK, answer.StatusCode)
	return fields(s.t, page)
}

// stored is job 1 as it is kept.
func (s site) stored() (store.Job, survey.Job) {
	s.t.Helper()
	kept, err := s.store.Load(s.t.Context(), 1)
	require.NoError(s.t, err)
	job, err := survey.Read(kept.Document)
	require.NoError(s.t, err)
	return kept, job
}

func TestPagesCarryTheSafeHeadersAndNothingInline(t *testing.T) {
	s := newSite(t)
	for _, path := range []string{"/", "/jobs/1", "/jobs/1?wall=2", "/jobs/99", "/nowhere", "/jobs/1/job.json"} {
		answer, page := s.get(path)
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
	s := newSite(t)
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
	s := newSite(t)
	answer, _ := s.post("/jobs/1/delete", nil, "Sec-Fetch-Site", "cross-site")
	assert.Equal(t, http.StatusForbidden, answer.StatusCode)
	answer, _ = s.post("/jobs/1/delete", nil, "Origin", "https://elsewhere.example")
	assert.Equal(t, http.StatusForbidden, answer.StatusCode)
	answer, _ = s.get("/jobs/1")
	assert.Equal(t, http.StatusOK, answer.StatusCode, "the job is still there")
}

func TestNoGetChangesAnything(t *testing.T) {
	s := newSite(t)
	before, _ := s.stored()
	for _, path := range []string{"/jobs", "/jobs/import", "/jobs/1/undo", "/jobs/1/redo", "/jobs/1/delete", "/jobs/1/restore", "/jobs/1/keep"} {
		answer, _ := s.get(path)
		assert.Contains(t, []int{http.StatusMethodNotAllowed, http.StatusNotFound}, answer.StatusCode, path)
	}
	after, _ := s.stored()
	assert.Equal(t, before, after)
}

func TestStaticFiles(t *testing.T) {
	s := newSite(t)
	for path, kind := range map[string]string{
		"/static/coursewright.css": "text/css", "/static/drawing.css": "text/css", "/static/bench.js": "javascript",
		"/static/icon.svg": "image/svg", "/static/condensed.ttf": "font/ttf",
	} {
		answer, body := s.get(path)
		assert.Equal(t, http.StatusOK, answer.StatusCode, path)
		assert.Contains(t, answer.Header.Get("Content-Type"), kind, path)
		assert.NotEmpty(t, body, path)
	}
	answer, _ := s.get("/static/")
	assert.Equal(t, http.StatusNotFound, answer.StatusCode)
}

func TestABodyOverTheLimitIsRefused(t *testing.T) {
	s := newSite(t)
	answer, page := s.post("/jobs/1", url.Values{"title": {strings.Repeat("x", 5<<20)}})
	assert.Equal(t, http.StatusRequestEntityTooLarge, answer.StatusCode)
	assert.Contains(t, page, "1 MiB")
}

// hidden reads the hidden fields off a page.
func hidden(t *testing.T, page string) url.Values {
	t.Helper()
	root, err := html.Parse(strings.NewReader(page))
	require.NoError(t, err)
	out := url.Values{}
	for n := range root.Descendants() {
		if n.Data == "input" && attr(n, "type") == "hidden" {
			out.Set(attr(n, "name"), attr(n, "value"))
		}
	}
	return out
}
