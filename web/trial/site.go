// Package trial is a running server for tests: over a real data file, and with
// a real Chromium in front of it.
package trial

import (
	"bytes"
	"context"
	"io"
	"log/slog"
	"mime/multipart"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/store"
	"coursewright/web"
	"coursewright/web/page"
	"coursewright/web/turns"
)

// Site is a running server over a real data file, with one job, the demo unless said otherwise.
type Site struct {
	*httptest.Server
	T       *testing.T
	Store   *store.Store
	Browser *http.Client // keeps cookies and follows no redirect
}

// New is a site with the demo.
func New(t *testing.T) Site {
	t.Helper()
	return Of(t, static.Demo)
}

// Of is a site with one job.
func Of(t *testing.T, file []byte) Site {
	t.Helper()
	return solving(t, file, turns.ByJob(func() page.Solver { return new(layout.Keeper).Quick }), layout.Solve)
}

// Solving is a site with one job, whose jobs are solved so, whether one asks why or not.
func Solving(t *testing.T, file []byte, solve page.Solver) Site {
	t.Helper()
	return solving(t, file, solve, solve)
}

func solving(t *testing.T, file []byte, solve, tell page.Solver) Site {
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
	w := &web.Server{Store: kept, Static: static.Files, Hosts: []string{"bench.example"}, Solve: solve, Tell: tell, Log: slog.New(slog.NewTextHandler(t.Output(), nil))}
	s := httptest.NewServer(w.Handler())
	t.Cleanup(s.Close)
	jar, _ := cookiejar.New(nil)
	client := &http.Client{Jar: jar, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	return Site{s, t, kept, client}
}

// Do sends a request and reads the answer.
func (s Site) Do(r *http.Request) (*http.Response, string) {
	s.T.Helper()
	answer, err := s.Browser.Do(r)
	require.NoError(s.T, err)
	defer answer.Body.Close()
	body, err := io.ReadAll(answer.Body)
	require.NoError(s.T, err)
	return answer, string(body)
}

// Get asks for a page.
func (s Site) Get(path string) (*http.Response, string) {
	r, err := http.NewRequest(http.MethodGet, s.URL+path, nil)
	require.NoError(s.T, err)
	return s.Do(r)
}

// Post sends a form; headers are names and values in turn.
func (s Site) Post(path string, fields url.Values, headers ...string) (*http.Response, string) {
	r, err := http.NewRequest(http.MethodPost, s.URL+path, strings.NewReader(fields.Encode()))
	require.NoError(s.T, err)
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	for i := 0; i < len(headers); i += 2 {
		r.Header.Set(headers[i], headers[i+1])
	}
	return s.Do(r)
}

// Upload sends a job file as the first page does.
func (s Site) Upload(document []byte) (*http.Response, string) {
	var body bytes.Buffer
	form := multipart.NewWriter(&body)
	part, err := form.CreateFormFile("file", "job.json")
	require.NoError(s.T, err)
	_, _ = part.Write(document)
	require.NoError(s.T, form.Close())
	r, err := http.NewRequest(http.MethodPost, s.URL+"/jobs/import", &body)
	require.NoError(s.T, err)
	r.Header.Set("Content-Type", form.FormDataContentType())
	return s.Do(r)
}

// Fields reads the survey form off a page, as a browser would post it.
func Fields(t *testing.T, page string) url.Values {
	t.Helper()
	root, err := html.Parse(strings.NewReader(page))
	require.NoError(t, err)
	out := url.Values{}
	for n := range root.Descendants() {
		if n.Type == html.ElementNode && Attr(n, "form") == "survey" {
			collect(out, n)
		}
		if n.Type == html.ElementNode && Attr(n, "id") == "survey" {
			for field := range n.Descendants() {
				collect(out, field)
			}
		}
	}
	return out
}

func collect(out url.Values, n *html.Node) {
	name := Attr(n, "name")
	switch {
	case name == "" || n.Data == "button":
	case n.Data == "input" && (Attr(n, "type") != "checkbox" || Has(n, "checked")):
		out.Add(name, Attr(n, "value"))
	case n.Data == "select":
		if o := picked(n); o != nil {
			out.Add(name, Attr(o, "value"))
		}
	}
}

// picked is the option that a browser sends of a list: the last that is selected, or else the first; nil of an empty list.
func picked(list *html.Node) *html.Node {
	var first, selected *html.Node
	for o := range list.Descendants() {
		if o.Data != "option" {
			continue
		}
		if first == nil {
			first = o
		}
		if Has(o, "selected") {
			selected = o
		}
	}
	if selected == nil {
		return first
	}
	return selected
}

// Has tells whether an element has an attribute.
func Has(n *html.Node, key string) bool {
	for _, a := range n.Attr {
		if a.Key == key {
			return true
		}
	}
	return false
}

// Attr is an attribute of an element, empty where it has none.
func Attr(n *html.Node, key string) string {
	for _, a := range n.Attr {
		if a.Key == key {
			return a.Val
		}
	}
	return ""
}

// Bench gets job 1 and its form with every field.
func (s Site) Bench() url.Values {
	s.T.Helper()
	answer, page := s.Get("/jobs/1?all=1")
	require.Equal(s.T, http.StatusOK, answer.StatusCode)
	return Fields(s.T, page)
}

// Stored is job 1 as it is kept, but for the set-out that its revision keeps: to write that down is no edit.
func (s Site) Stored() (store.Job, survey.Job) {
	s.T.Helper()
	kept, err := s.Store.Load(s.T.Context(), 1)
	require.NoError(s.T, err)
	job, err := survey.Read(kept.Document)
	require.NoError(s.T, err)
	kept.Setout = nil
	return kept, job
}

// Setout is the set-out that the shown revision of job 1 keeps; nil where it has none yet.
func (s Site) Setout() []byte {
	s.T.Helper()
	kept, err := s.Store.Load(s.T.Context(), 1)
	require.NoError(s.T, err)
	return kept.Setout
}

// Hidden reads the hidden fields off a page.
func Hidden(t *testing.T, page string) url.Values {
	t.Helper()
	root, err := html.Parse(strings.NewReader(page))
	require.NoError(t, err)
	out := url.Values{}
	for n := range root.Descendants() {
		if n.Data == "input" && Attr(n, "type") == "hidden" {
			out.Set(Attr(n, "name"), Attr(n, "value"))
		}
	}
	return out
}

// Empty is a server over a data file without jobs, which solves them as told.
func Empty(t *testing.T, solve page.Solver) Site {
	t.Helper()
	return At(t, filepath.Join(t.TempDir(), "jobs.db"), solve)
}

// At is a server over the data file of a name.
func At(t *testing.T, data string, solve page.Solver) Site {
	t.Helper()
	kept, err := store.Open(t.Context(), data)
	require.NoError(t, err)
	t.Cleanup(func() { assert.NoError(t, kept.Close()) })
	w := &web.Server{Store: kept, Static: static.Files, Solve: solve, Tell: solve, Log: slog.New(slog.NewTextHandler(t.Output(), nil))}
	s := httptest.NewServer(w.Handler())
	t.Cleanup(s.Close)
	jar, _ := cookiejar.New(nil)
	client := &http.Client{Jar: jar, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	return Site{s, t, kept, client}
}

// Resolved reads a job as Solve does, with every refusal, and sets nothing out: for tests of what
// becomes of a job before and after it is solved.
func Resolved(_ context.Context, job survey.Job) (layout.Plan, error) {
	room, faults := job.Resolve()
	if len(faults) > 0 {
		return layout.Plan{}, faults
	}
	return layout.Plan{Room: room}, nil
}

// Swift is a site with the demo, whose jobs are read and not set out.
func Swift(t *testing.T) Site {
	t.Helper()
	s := Empty(t, Resolved)
	answer, page := s.Upload(static.Demo)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	return s
}

// OfFile is a site with a job under testdata; that of toy is six whole tiles.
func OfFile(t *testing.T, name string) Site {
	t.Helper()
	file, err := os.ReadFile("../../testdata/jobs/" + name + ".json")
	require.NoError(t, err)
	return Of(t, file)
}

// Form reads the hidden fields of the form that has a button with a text.
func Form(t *testing.T, page, button string) url.Values {
	t.Helper()
	root, err := html.Parse(strings.NewReader(page))
	require.NoError(t, err)
	for n := range root.Descendants() {
		if n.Data != "form" || !strings.Contains(Text(n), button) {
			continue
		}
		out := url.Values{}
		for f := range n.Descendants() {
			if f.Data == "input" && Attr(f, "type") == "hidden" {
				out.Add(Attr(f, "name"), Attr(f, "value"))
			}
		}
		return out
	}
	t.Fatalf("no form with %q", button)
	return nil
}

// Text is what an element says, without line breaks.
func Text(n *html.Node) string {
	var out strings.Builder
	for d := range n.Descendants() {
		if d.Type == html.TextNode {
			out.WriteString(d.Data)
		}
	}
	return strings.Join(strings.Fields(out.String()), " ")
}

// Second is the page of an answer.
func Second(_ *http.Response, page string) string { return page }

// File reads a job under testdata.
func File(t *testing.T, name string) []byte {
	t.Helper()
	file, err := os.ReadFile("../../testdata/jobs/" + name)
	require.NoError(t, err)
	return file
}

// Button finds what the first button asks for that begins so.
func Button(t *testing.T, page, begins string) string {
	t.Helper()
	root, err := html.Parse(strings.NewReader(page))
	require.NoError(t, err)
	for n := range root.Descendants() {
		if n.Type == html.ElementNode && n.Data == "button" && strings.HasPrefix(Attr(n, "value"), begins) {
			return Attr(n, "value")
		}
	}
	t.Fatalf("no button for %q", begins)
	return ""
}

// Once solves each job once: the pages of one job all show the same plan.
func Once() page.Solver {
	type solved struct {
		plan layout.Plan
		err  error
	}
	known := map[string]solved{}
	var mu sync.Mutex
	return func(ctx context.Context, job survey.Job) (layout.Plan, error) {
		key, err := survey.Write(job)
		if err != nil {
			return layout.Plan{}, err
		}
		mu.Lock()
		defer mu.Unlock()
		if _, ok := known[string(key)]; !ok {
			plan, err := layout.Solve(ctx, job)
			known[string(key)] = solved{plan, err}
		}
		return known[string(key)].plan, known[string(key)].err
	}
}

// With gives the fields a form of job 1 is posted with.
func (s Site) With(fields ...string) url.Values {
	kept, _ := s.Stored()
	out := url.Values{"revision": {strconv.FormatInt(kept.Revision, 10)}}
	for i := 0; i < len(fields); i += 2 {
		out.Set(fields[i], fields[i+1])
	}
	return out
}
