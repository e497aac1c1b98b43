package web_test

import (
	"coursewright/web/trial"

	"bufio"
	"bytes"
	"crypto/sha256"
	"fmt"
	"io"
	"log/slog"
	"maps"
	"net"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/go-chi/chi/v5"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"coursewright/layout"
	"coursewright/static"
	"coursewright/web"
)

// route is one method and path of the server.
type route struct{ method, path string }

// routes lists what the server answers to, from its own table, so that a new route cannot escape
// the tests below. Job 1 is there, and piece W-01-01 of it.
func routes(s trial.Site, t *testing.T) []route {
	t.Helper()
	w := &web.Server{Store: s.Store, Static: static.Files, Solve: layout.Quick, Tell: layout.Solve, Log: slog.New(slog.DiscardHandler)}
	table, ok := w.Handler().(chi.Routes)
	require.True(t, ok, "the routes can no longer be listed")
	fill := strings.NewReplacer("{id}", "1", "{code}", "abc", "{piece}", "W-01-01", "/*", "/bench.js")
	var out []route
	require.NoError(t, chi.Walk(table, func(method, pattern string, _ http.Handler, _ ...func(http.Handler) http.Handler) error {
		path := fill.Replace(pattern)
		require.NotContains(t, path, "{", "a new kind of path: say what stands for it")
		if path != "/" {
			path = strings.TrimSuffix(path, "/")
		}
		out = append(out, route{method, path})
		return nil
	}))
	require.Greater(t, len(out), 20)
	return out
}

// guarded is a site with one small job, and the folder its data are in.
func guarded(t *testing.T) (trial.Site, string) {
	t.Helper()
	folder := t.TempDir()
	s := trial.At(t, filepath.Join(folder, "jobs.db"), layout.Solve)
	document, err := os.ReadFile("../testdata/jobs/toy.json")
	require.NoError(t, err)
	answer, page := s.Upload(document)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	return s, folder
}

// bytesOf sums up every file of the data but the index of the log, which reading may change.
func bytesOf(t *testing.T, folder string) map[string]string {
	t.Helper()
	out := map[string]string{}
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	for _, e := range entries {
		if e.IsDir() || strings.HasSuffix(e.Name(), "-shm") {
			continue
		}
		body, err := os.ReadFile(filepath.Join(folder, e.Name()))
		require.NoError(t, err)
		out[e.Name()] = fmt.Sprintf("%x", sha256.Sum256(body))
	}
	return out
}

// ask sends a request that no client library has tidied.
func ask(t *testing.T, s trial.Site, method, target string, headers ...string) (*http.Response, string) {
	t.Helper()
	conn, err := net.Dial("tcp", strings.TrimPrefix(s.URL, "http://"))
	require.NoError(t, err)
	defer conn.Close()
	_, err = io.WriteString(conn, method+" "+target+" HTTP/1.1\r\n"+strings.Join(headers, "\r\n")+"\r\nConnection: close\r\n\r\n")
	require.NoError(t, err)
	answer, err := http.ReadResponse(bufio.NewReader(conn), &http.Request{Method: method})
	require.NoError(t, err)
	defer answer.Body.Close()
	body, err := io.ReadAll(answer.Body)
	require.NoError(t, err)
	return answer, string(body)
}

var methods = []string{"GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE", "PROPFIND"}

// paths lists the paths of the routes once each, and some that are none.
func paths(all []route) []string {
	out := map[string]bool{"/nowhere": true, "/jobs/1/nowhere": true, "/jobs/99": true, "/static/none.js": true}
	for _, r := range all {
		out[r.path] = true
	}
	return slices.Sorted(maps.Keys(out))
}

func TestAForeignHostIsRefusedOnEveryRouteAndMethod(t *testing.T) {
	s, folder := guarded(t)
	before := bytesOf(t, folder)
	for _, path := range paths(routes(s, t)) {
		for _, method := range methods {
			answer, body := ask(t, s, method, path, "Host: rebound.example", "Content-Length: 0")
			require.Equal(t, http.StatusMisdirectedRequest, answer.StatusCode, "%s %s", method, path)
			require.NotContains(t, body, "Six tiles")
			holdsSafeHeaders(t, answer, path)
		}
	}
	for _, host := range []string{"", "rebound.example:80", "127.0.0.1.rebound.example", "localhost.rebound.example", "rebound.example#localhost",
		"0.0.0.0", "[::]", "10.0.0.1", "127.0.0.1@rebound.example", "localhost.", "127.1.rebound.example", "2130706433"} {
		answer, body := ask(t, s, "GET", "/jobs/1", "Host: "+host)
		require.Contains(t, []int{http.StatusMisdirectedRequest, http.StatusBadRequest}, answer.StatusCode, host)
		require.NotContains(t, body, "Six tiles")
	}
	local := "Host: " + strings.TrimPrefix(s.URL, "http://")
	for name, c := range map[string][]string{
		"the address line names another": {"http://rebound.example/jobs/1", local},
		"two hosts":                      {"/jobs/1", local, "Host: rebound.example"},
		"a forwarded host":               {"/jobs/1", "Host: rebound.example", "X-Forwarded-Host: localhost"},
	} {
		answer, body := ask(t, s, "GET", c[0], c[1:]...)
		require.Contains(t, []int{http.StatusMisdirectedRequest, http.StatusBadRequest}, answer.StatusCode, name)
		require.NotContains(t, body, "Six tiles")
	}
	require.Equal(t, before, bytesOf(t, folder))
}

func TestAnotherSitesWritesAreRefusedOnEveryRoute(t *testing.T) {
	s, folder := guarded(t)
	before := bytesOf(t, folder)
	local := "Host: " + strings.TrimPrefix(s.URL, "http://")
	writes := 0
	for _, r := range routes(s, t) {
		if r.method == http.MethodGet {
			continue
		}
		writes++
		for _, from := range []string{"Sec-Fetch-Site: cross-site", "Sec-Fetch-Site: same-site", "Origin: https://elsewhere.example", "Origin: null", "Origin: http://localhost:1"} {
			answer, _ := ask(t, s, r.method, r.path, local, from, "Content-Length: 0", "Content-Type: application/x-www-form-urlencoded")
			require.Equal(t, http.StatusForbidden, answer.StatusCode, "%s %s with %s", r.method, r.path, from)
			holdsSafeHeaders(t, answer, r.path)
		}
	}
	require.Greater(t, writes, 8)
	require.Equal(t, before, bytesOf(t, folder))
}

func TestNoGetChangesAByte(t *testing.T) {
	s, folder := guarded(t)
	for _, more := range []string{"/jobs/1/undo", "/jobs/1/delete"} { // something to be undone, and a deleted job
		s.Post("/jobs/1", s.With("title", "edited "+more))
	}
	s.Upload([]byte(must(os.ReadFile("../testdata/jobs/toy.json"))))
	s.Post("/jobs/2/delete", nil)
	before := bytesOf(t, folder)
	queries := []string{"", "?wall=1", "?cut=C1", "?deleted=1", "?do=remove+walls[0]&revision=1&title=x", "?paper=letter&kinds=cuts", "?piece=W-01-01"}
	for _, path := range paths(routes(s, t)) {
		for _, query := range queries {
			for _, method := range []string{"GET", "HEAD"} {
				answer, _ := ask(t, s, method, path+query, "Host: localhost")
				require.Less(t, answer.StatusCode, 500, "%s %s", method, path+query)
			}
		}
	}
	require.Equal(t, before, bytesOf(t, folder))
}

// HEAD is answered as GET is, on every route, without the body.
func TestHeadIsGetWithoutItsBody(t *testing.T) {
	s, _ := guarded(t)
	for _, path := range paths(routes(s, t)) {
		for _, query := range []string{"", "?wall=1", "?paper=nonsense"} {
			get, page := ask(t, s, "GET", path+query, "Host: localhost")
			head, nothing := ask(t, s, "HEAD", path+query, "Host: localhost")
			require.Equal(t, get.StatusCode, head.StatusCode, path+query)
			require.Empty(t, nothing, path)
			for _, name := range []string{"Content-Type", "Content-Disposition", "Cache-Control", "Location", "Allow"} {
				require.Equal(t, get.Header.Get(name), head.Header.Get(name), "%s of %s", name, path+query)
			}
			if length := head.Header.Get("Content-Length"); length != "" {
				require.Equal(t, strconv.Itoa(len(page)), length, path+query)
			}
		}
	}
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// TestEveryAnswerIsSafe looks at every route with every method, right and wrong, and at what stands
// in the pages that come back.
func TestEveryAnswerIsSafe(t *testing.T) {
	s, _ := guarded(t)
	pages := 0
	for _, path := range paths(routes(s, t)) {
		for _, method := range methods {
			for _, body := range []string{"", "revision=1&title=%00&do=nothing", "revision=9&document=x"} {
				if body != "" && method != "POST" {
					continue
				}
				answer, page := ask(t, s, method, path, "Host: localhost", "Content-Type: application/x-www-form-urlencoded",
					fmt.Sprintf("Content-Length: %d", len(body)), "", body)
				require.Less(t, answer.StatusCode, 500, "%s %s %s", method, path, body)
				holdsSafeHeaders(t, answer, path)
				if strings.HasPrefix(answer.Header.Get("Content-Type"), "text/html") && method != "HEAD" {
					pages++
					holdsNothingInline(t, page, method+" "+path)
				}
			}
		}
	}
	require.Greater(t, pages, 50)
}

// holdsSafeHeaders wants on every answer what keeps a page of ours from running, loading, framing or
// telling anything it should not, and from being kept where others can read it.
func holdsSafeHeaders(t *testing.T, answer *http.Response, path string) {
	t.Helper()
	h := answer.Header
	csp := map[string]string{}
	for part := range strings.SplitSeq(h.Get("Content-Security-Policy"), ";") {
		name, value, _ := strings.Cut(strings.TrimSpace(part), " ")
		csp[name] = value
	}
	require.Equal(t, map[string]string{
		"default-src": "'none'", "script-src": "'self'", "style-src": "'self'", "img-src": "'self' data:", "font-src": "'self'",
		"connect-src": "'self'", "form-action": "'self'", "base-uri": "'none'", "frame-ancestors": "'none'",
	}, csp, path)
	require.Equal(t, "nosniff", h.Get("X-Content-Type-Options"), path)
	require.Equal(t, "DENY", h.Get("X-Frame-Options"), path)
	require.Equal(t, "no-referrer", h.Get("Referrer-Policy"), path)
	require.Equal(t, "same-origin", h.Get("Cross-Origin-Opener-Policy"), path)
	require.Equal(t, "same-origin", h.Get("Cross-Origin-Resource-Policy"), path)
	if !strings.HasPrefix(path, "/static/") {
		require.Equal(t, "no-store", h.Get("Cache-Control"), path)
	}
	require.Empty(t, h.Get("Access-Control-Allow-Origin"), path)
	require.Empty(t, h.Get("Server"), path)
}

// holdsNothingInline reads a page as a browser does.
func holdsNothingInline(t *testing.T, page, where string) {
	t.Helper()
	root, err := html.Parse(strings.NewReader(page))
	require.NoError(t, err)
	for n := range root.Descendants() {
		if n.Type != html.ElementNode {
			continue
		}
		require.NotContains(t, []string{"style", "iframe", "object", "embed", "base", "frame"}, n.Data, where)
		if n.Data == "img" { // pictures of a job come from its own pages alone
			require.True(t, strings.HasPrefix(trial.Attr(n, "src"), "/jobs/"), "%s: a picture from elsewhere", where)
		}
		if n.Data == "script" {
			require.True(t, strings.HasPrefix(trial.Attr(n, "src"), "/static/"), "%s: a script in the page", where)
			require.Nil(t, n.FirstChild, where)
		}
		for _, a := range n.Attr {
			require.NotEqual(t, "style", a.Key, where)
			require.False(t, strings.HasPrefix(a.Key, "on"), "%s: %s", where, a.Key)
			if slices.Contains([]string{"href", "src", "action", "formaction", "poster", "data"}, a.Key) {
				to, err := url.Parse(a.Val)
				require.NoError(t, err, where)
				require.True(t, to.Scheme == "" && to.Host == "", "%s leads to %s", where, a.Val)
			}
		}
	}
}

func TestPathsThatClimbLeadNowhere(t *testing.T) {
	s, folder := guarded(t)
	require.NoError(t, os.WriteFile(filepath.Join(folder, "secret"), []byte("coursewright secret"), 0o600))
	up := strings.Repeat("/..", 12)
	upEscaped := strings.Repeat("/%2e%2e", 12)
	for _, target := range []string{
		"/static" + up + folder + "/secret", "/static" + upEscaped + folder + "/secret", "/static/..%2f..%2f..%2fgo.mod", "/static/..%5c..%5cgo.mod",
		"/static/%2e%2e%2fserver.go", "/static/....//....//go.mod", "/static//etc/passwd", "/static/%2fetc%2fpasswd", "/static/..;/go.mod",
		"//etc/passwd", "/../etc/passwd", "/static/%00", "/static/bench.js%00.css", "/static/bench.js/", "/static/", "/static", "/static/.", "/static/static.go",
		"/static/demo_test.go", "/jobs/1/..%2f..%2fstatic", "/jobs/..%2f1", "/jobs/%31%2f", "/jobs/1%00", "/jobs/1/../2", "/jobs/-1", "/jobs/1e0",
		"/jobs/9999999999999999999999", "/jobs/1/piece/..%2f..", "//rebound.example/jobs/1", "/jobs/1//", "/open/..%2fjobs%2f1", "*",
		"/debug/pprof/", "/debug/pprof/heap", "/debug/vars", "/metrics", "/.git/config", "/.env", "/server-status", "/healthz", "/jobs.db", "/jobs.db-backups/",
	} {
		answer, body := ask(t, s, "GET", target, "Host: localhost")
		require.Contains(t, []int{301, 302, 303, 307, 308, 400, 404, 405}, answer.StatusCode, target)
		require.NotContains(t, body, "root:", target)
		require.NotContains(t, body, "module coursewright", target)
		require.NotContains(t, body, "coursewright secret", target)
		require.NotContains(t, body, "package static", target)
		require.NotContains(t, body, "goroutine", target)
		if to := answer.Header.Get("Location"); to != "" {
			at, err := url.Parse(to)
			require.NoError(t, err, target)
			require.Empty(t, at.Host, "%s leads to %s", target, to)
		}
	}
}

func TestBodiesOverTheLimitAreRefusedOnEveryRoute(t *testing.T) {
	s, folder := guarded(t)
	s.Get("/jobs/1") // judged once, and its set-out kept
	before := bytesOf(t, folder)
	large := append([]byte("revision=1&title="), bytes.Repeat([]byte("x"), 5<<20)...)
	upload := []byte("--b\r\nContent-Disposition: form-data; name=\"file\"; filename=\"a.json\"\r\n\r\n" + strings.Repeat("x", 5<<20) + "\r\n--b--\r\n")
	for _, r := range routes(s, t) {
		if r.method != http.MethodPost {
			continue
		}
		if strings.HasSuffix(r.path, "delete") || strings.HasSuffix(r.path, "restore") || strings.HasSuffix(r.path, "erase") || strings.HasSuffix(r.path, "copy") {
			continue // they read no body
		}
		kind, body := "application/x-www-form-urlencoded", large
		if strings.HasSuffix(r.path, "import") {
			kind, body = "multipart/form-data; boundary=b", upload
		}
		request, err := http.NewRequest(r.method, s.URL+r.path, bytes.NewReader(body))
		require.NoError(t, err)
		request.Header.Set("Content-Type", kind)
		answer, page := s.Do(request)
		require.Contains(t, []int{http.StatusRequestEntityTooLarge, http.StatusBadRequest}, answer.StatusCode, "%s: %.300s", r.path, page)
	}
	require.Equal(t, before, bytesOf(t, folder))
}

// counted writes a form of up to 4 MB by numbers.
func counted(format string) string {
	var b strings.Builder
	b.WriteString("revision=1")
	for i := 0; b.Len() < 4_000_000; i++ {
		fmt.Fprintf(&b, "&"+format+"=1", i)
	}
	return b.String()
}

// TestWhatIsBuiltToCostMuchIsRefused posts forms and files within the limits of size that are as
// costly as they can be made.
func TestWhatIsBuiltToCostMuchIsRefused(t *testing.T) {
	s, folder := guarded(t)
	before := bytesOf(t, folder)
	for name, body := range map[string]string{
		"a name many times": strings.Repeat("a&", 2_000_000),
		"many names":        counted("name%d"),
		"many walls":        counted("walls[%d].name"),
		"many pins":         counted("pins.walls.w%d.joint"),
		"a deep name":       "walls" + strings.Repeat("[0]", 1_000_000) + "=1",
		"a long name":       "pins.walls." + strings.Repeat("x", 4_000_000) + ".joint=1",
		"a deep file":       "filled=" + strings.Repeat("[", 1_000_000),
		"an index past all": "walls[9999999].name=x",
	} {
		r, err := http.NewRequest(http.MethodPost, s.URL+"/jobs/1", strings.NewReader(body))
		require.NoError(t, err)
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		answer, page := s.Do(r)
		require.Contains(t, []int{http.StatusBadRequest, http.StatusUnprocessableEntity}, answer.StatusCode, name)
		require.Less(t, len(page), 100_000, name)
	}
	for name, file := range map[string]string{
		"deep lists":     strings.Repeat("[", 1_000_000),
		"deep objects":   strings.Repeat(`{"a":`, 200_000),
		"many walls":     `{"format":"coursewright-job/1","walls":[` + strings.Repeat(`{},`, 340_000) + `{}]}`,
		"many faults":    `{"format":"coursewright-job/1","walls":[` + strings.Repeat(`{"x":1},`, 120_000) + `{}]}`,
		"a long number":  `{"tile":{"box":{"count":1` + strings.Repeat("0", 900_000) + `}}}`,
		"a huge wall":    strings.NewReplacer(`"304"`, `"99 m"`, `"202"`, `"99 m"`, `"100"`, `"5"`).Replace(string(must(os.ReadFile("../testdata/jobs/toy.json")))),
		"past its limit": `{"title":"` + strings.Repeat("x", 1<<20) + `"}`,
		"long in lines":  `{"format":"coursewright-job/1","walls":[` + strings.Repeat(`{"name":"a"},`, 70_000) + `{}]}`,
	} {
		answer, page := s.Upload([]byte(file))
		require.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode, name)
		require.Less(t, len(page), 100_000, name)
	}
	require.Equal(t, before, bytesOf(t, folder))
}
