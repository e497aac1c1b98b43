package web_test

import (
	"coursewright/web/trial"

	"bufio"
	"bytes"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"net/http/httptest"
	"net/url"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/store"
	"coursewright/web"
	"coursewright/web/page"
)

// network is a listener whose connections seem to come from elsewhere: to the
// machine's own address there, from the address that stands in from.
type network struct {
	net.Listener
	mu   sync.Mutex
	from string
}

// ours is the machine's own address on the network.
const ours = "192.168.7.2"

func (n *network) Accept() (net.Conn, error) {
	c, err := n.Listener.Accept()
	n.mu.Lock()
	defer n.mu.Unlock()
	return away{c, n.from}, err
}

func (n *network) comingFrom(address string) {
	n.mu.Lock()
	defer n.mu.Unlock()
	n.from = address
}

type away struct {
	net.Conn
	from string
}

func (a away) RemoteAddr() net.Addr { return &net.TCPAddr{IP: net.ParseIP(a.from), Port: 40000} }
func (a away) LocalAddr() net.Addr  { return &net.TCPAddr{IP: net.ParseIP(ours), Port: 7310} }

// house is a site with a door, on a network.
type house struct {
	t     *testing.T
	net   *network
	door  *web.Door
	store *store.Store
	at    string // host and port to dial
	log   *bytes.Buffer
	mu    sync.Mutex
	now   time.Time
}

// newHouse begins with a stranger at 192.168.7.9 and, with a door unless that is nil.
func newHouse(t *testing.T, door *web.Door) *house {
	t.Helper()
	kept, err := store.Open(t.Context(), filepath.Join(t.TempDir(), "jobs.db"))
	require.NoError(t, err)
	t.Cleanup(func() { assert.NoError(t, kept.Close()) })
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	document, err := survey.Write(job)
	require.NoError(t, err)
	_, err = kept.Create(t.Context(), job.Title, document)
	require.NoError(t, err)
	h := &house{t: t, door: door, store: kept, log: &bytes.Buffer{}, now: time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)}
	if door != nil {
		door.Now = func() time.Time { h.mu.Lock(); defer h.mu.Unlock(); return h.now }
	}
	w := &web.Server{Store: kept, Static: static.Files, Hosts: []string{"bench.example"}, Door: door, Solve: page.Whole(layout.Solve),
		Log: slog.New(slog.NewTextHandler(&locked{mu: &h.mu, w: h.log}, nil))}
	s := httptest.NewUnstartedServer(w.Handler())
	h.net = &network{Listener: s.Listener, from: "192.168.7.9"}
	s.Listener = h.net
	s.Start()
	t.Cleanup(s.Close)
	h.at = h.net.Listener.Addr().String()
	return h
}

type locked struct {
	mu *sync.Mutex
	w  io.Writer
}

func (l *locked) Write(b []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.w.Write(b)
}

func (h *house) later(d time.Duration) {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.now = h.now.Add(d)
}

// knock sends one request over a connection of its own, from a device that may
// bear a cookie, and gives the answer and its body.
func (h *house) knock(method, path, cookie string, form url.Values) (*http.Response, string) {
	h.t.Helper()
	conn, err := net.Dial("tcp", h.at)
	require.NoError(h.t, err)
	defer conn.Close()
	body := form.Encode()
	_, err = fmt.Fprintf(conn, "%s %s HTTP/1.1\r\nHost: %s:7310\r\nConnection: close\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: %d\r\n", method, path, ours, len(body))
	require.NoError(h.t, err)
	if cookie != "" {
		fmt.Fprintf(conn, "Cookie: %s\r\n", cookie)
	}
	_, err = io.WriteString(conn, "\r\n"+body)
	require.NoError(h.t, err)
	answer, err := http.ReadResponse(bufio.NewReader(conn), &http.Request{Method: method})
	require.NoError(h.t, err)
	defer answer.Body.Close()
	text, err := io.ReadAll(answer.Body)
	require.NoError(h.t, err)
	return answer, string(text)
}

// bare is the code without its hyphens.
func bare(d *web.Door) string { return strings.ReplaceAll(d.Code(), "-", "") }

func wrong() url.Values { return url.Values{"code": {"0000-0000"}} }

func TestTheNetworkGetsNothingWithoutADoor(t *testing.T) {
	h := newHouse(t, nil)
	for _, path := range []string{"/", "/jobs/1", "/static/bench.js", "/open/x", "/nowhere"} {
		for _, host := range []string{"localhost", "bench.example"} {
			assert.Equal(t, "403", raw(t, h.at, "GET "+path, host), "%s as %s", path, host)
		}
		assert.Equal(t, "421", raw(t, h.at, "GET "+path, ours), path)
	}
	h.net.comingFrom("127.0.0.1")
	assert.Equal(t, "200", raw(t, h.at, "GET /", "localhost"))
	assert.Equal(t, "404", raw(t, h.at, "GET /open/x", "localhost"))
}

func TestADeviceIsAskedForTheCodeWhateverItCameFor(t *testing.T) {
	h := newHouse(t, web.NewDoor(ours+":7310"))
	for _, line := range [][2]string{{"GET", "/"}, {"GET", "/jobs/1?wall=2"}, {"POST", "/jobs/1/delete"}, {"GET", "/static/bench.js"}, {"GET", "/nowhere"},
		{"GET", "/open"}, {"PUT", "/open"}, {"GET", "/static/../jobs/1"}, {"POST", "/static/coursewright.css"}, {"OPTIONS", "/"}} {
		answer, page := h.knock(line[0], line[1], "", nil)
		assert.Equal(t, http.StatusForbidden, answer.StatusCode, line)
		assert.NotContains(t, page, "Heron Street", line)
		assert.Contains(t, page, "not let in yet", line)
		assert.Contains(t, answer.Header.Get("Content-Security-Policy"), "default-src 'none'", line)
		assert.Equal(t, "no-store", answer.Header.Get("Cache-Control"), line)
	}
	answer, _ := h.knock("GET", "/static/coursewright.css", "", nil)
	assert.Equal(t, http.StatusOK, answer.StatusCode, "the page that asks has its looks")
	h.net.comingFrom("127.0.0.1")
	answer, page := h.knock("GET", "/", "", nil)
	assert.Equal(t, http.StatusOK, answer.StatusCode, "this machine needs no code")
	assert.Contains(t, page, "Heron Street")
}

func TestTheLinkLetsADeviceInAndLeadsAwayFromItself(t *testing.T) {
	door := web.NewDoor(ours + ":7310")
	h := newHouse(t, door)
	link, err := url.Parse(door.Link())
	require.NoError(t, err)
	answer, page := h.knock("GET", link.Path, "", nil)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	assert.Equal(t, "/", answer.Header.Get("Location"))
	assert.Equal(t, "no-referrer", answer.Header.Get("Referrer-Policy"))
	cookie := answer.Cookies()[0]
	assert.True(t, cookie.HttpOnly)
	assert.Equal(t, http.SameSiteStrictMode, cookie.SameSite)
	assert.NotContains(t, cookie.Value, bare(door))
	assert.NotEqual(t, bare(door), cookie.Value)

	answer, page = h.knock("GET", "/", cookie.Name+"="+cookie.Value, nil)
	assert.Equal(t, http.StatusOK, answer.StatusCode)
	assert.Contains(t, page, "Heron Street")
	for _, bad := range []string{bare(door), "", cookie.Value[1:], cookie.Value + "x"} {
		answer, _ = h.knock("GET", "/", cookie.Name+"="+bad, nil)
		assert.Equal(t, http.StatusForbidden, answer.StatusCode, "a pass that is not the pass")
	}
	other := newHouse(t, web.NewDoor(ours+":7310"))
	answer, _ = other.knock("GET", "/", cookie.Name+"="+cookie.Value, nil)
	assert.Equal(t, http.StatusForbidden, answer.StatusCode, "the pass of another start")
}

func TestTheCodeIsTakenAsPeopleTypeItAndLeadsOn(t *testing.T) {
	door := web.NewDoor(ours + ":7310")
	for _, typed := range []string{door.Code(), bare(door), " " + strings.ToUpper(door.Code()), strings.ReplaceAll(door.Code(), "-", " "),
		strings.NewReplacer("0", "O", "1", "l").Replace(door.Code())} {
		h := newHouse(t, door)
		answer, page := h.knock("POST", "/open", "", url.Values{"code": {typed}, "to": {"/jobs/1/work?cut=C1"}})
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
		assert.Equal(t, "/jobs/1/work?cut=C1", answer.Header.Get("Location"))
		assert.Len(t, answer.Cookies(), 1)
	}
}

func TestTheDoorLeadsNowhereElse(t *testing.T) {
	door := web.NewDoor(ours + ":7310")
	h := newHouse(t, door)
	for _, to := range []string{"", "//elsewhere.example", "https://elsewhere.example", "/\\elsewhere.example", "/\t/elsewhere.example", "/open/x"} {
		answer, _ := h.knock("POST", "/open", "", url.Values{"code": {door.Code()}, "to": {to}})
		assert.Equal(t, "/", answer.Header.Get("Location"), to)
	}
}

func TestTheCodeStandsInNoPageAndNoLog(t *testing.T) {
	door := web.NewDoor(ours + ":7310")
	h := newHouse(t, door)
	seen := &strings.Builder{}
	look := func(answer *http.Response, page string) *http.Response {
		_ = answer.Header.Write(seen)
		seen.WriteString(page)
		return answer
	}
	link, _ := url.Parse(door.Link())
	in := look(h.knock("GET", link.Path, "", nil)).Cookies()[0]
	pass := in.Name + "=" + in.Value
	look(h.knock("GET", link.Path, pass, nil))
	for _, path := range []string{"/", "/jobs/1", "/jobs/1/work", "/nowhere"} {
		look(h.knock("GET", path, pass, nil))
		look(h.knock("GET", path, "", nil))
	}
	look(h.knock("GET", link.Path+"x", "", nil))
	look(h.knock("HEAD", link.Path, "", nil))
	look(h.knock("POST", link.Path, "", nil))
	look(h.knock("POST", "/open", "", url.Values{"code": {door.Code() + "x"}}))
	for range 12 {
		look(h.knock("POST", "/open", "", wrong()))
	}
	look(h.knock("POST", "/open", "", url.Values{"code": {door.Code()}}))
	for _, code := range []string{door.Code(), bare(door)} {
		assert.NotContains(t, seen.String(), code)
		assert.NotContains(t, h.log.String(), code)
	}
	assert.Contains(t, h.log.String(), "locked after wrong codes")
	assert.Len(t, bare(door), 52, "256 bits at five to a letter")
}

func TestTenWrongCodesLockADeviceForAWhile(t *testing.T) {
	door := web.NewDoor(ours + ":7310")
	h := newHouse(t, door)
	right := url.Values{"code": {door.Code()}}
	for i := range 9 {
		answer, page := h.knock("POST", "/open", "", wrong())
		require.Equal(t, http.StatusForbidden, answer.StatusCode)
		require.Contains(t, page, map[bool]string{true: "One more wrong code", false: fmt.Sprintf("%d tries are left", 9-i)}[i == 8])
	}
	answer, page := h.knock("GET", "/open/0000", "", nil)
	require.Equal(t, http.StatusTooManyRequests, answer.StatusCode, "a wrong link counts as well")
	assert.Contains(t, page, "Wait 10 minutes")
	assert.NotContains(t, page, `name="code"`)
	assert.Equal(t, "601", answer.Header.Get("Retry-After"))
	answer, _ = h.knock("POST", "/open", "", right)
	assert.Equal(t, http.StatusTooManyRequests, answer.StatusCode, "no code is looked at")
	assert.Empty(t, answer.Cookies())

	h.net.comingFrom("192.168.7.10")
	answer, _ = h.knock("POST", "/open", "", right)
	assert.Equal(t, http.StatusSeeOther, answer.StatusCode, "another device is not held up")
	pass := answer.Cookies()[0]
	h.net.comingFrom("192.168.7.9")
	answer, _ = h.knock("GET", "/", pass.Name+"="+pass.Value, nil)
	assert.Equal(t, http.StatusOK, answer.StatusCode, "who is in stays in")

	h.later(9*time.Minute + 59*time.Second)
	_, page = h.knock("POST", "/open", "", right)
	assert.Contains(t, page, "Wait a minute")
	assert.Equal(t, 1, strings.Count(h.log.String(), "locked after"), "the log is not filled from outside")
	h.later(2 * time.Second)
	answer, _ = h.knock("POST", "/open", "", wrong())
	assert.Equal(t, http.StatusForbidden, answer.StatusCode, "then it begins anew")
	answer, _ = h.knock("POST", "/open", "", right)
	assert.Equal(t, http.StatusSeeOther, answer.StatusCode)
}

func TestManyAddressesTogetherLockTheDoor(t *testing.T) {
	door := web.NewDoor(ours + ":7310")
	h := newHouse(t, door)
	for i := range 100 { // one address after the other, the first half of each its own
		h.net.comingFrom(fmt.Sprintf("fd00:0:0:%x::9", i))
		answer, _ := h.knock("POST", "/open", "", wrong())
		require.Equal(t, i == 99, answer.StatusCode == http.StatusTooManyRequests, i)
	}
	h.net.comingFrom("192.168.7.200")
	answer, page := h.knock("POST", "/open", "", url.Values{"code": {door.Code()}})
	assert.Equal(t, http.StatusTooManyRequests, answer.StatusCode)
	assert.Contains(t, page, "from the network")
	h.later(11 * time.Minute)
	answer, _ = h.knock("POST", "/open", "", url.Values{"code": {door.Code()}})
	assert.Equal(t, http.StatusSeeOther, answer.StatusCode)
}

func TestAddressesOfOneHouseholdCountAsOne(t *testing.T) {
	h := newHouse(t, web.NewDoor(ours+":7310"))
	for i := range 10 {
		h.net.comingFrom(fmt.Sprintf("fd00:0:0:7::%x", i+1))
		answer, _ := h.knock("POST", "/open", "", wrong())
		require.Equal(t, i == 9, answer.StatusCode == http.StatusTooManyRequests, i)
	}
}

func TestTheMachinesOwnAddressIsAHostAndNoOther(t *testing.T) {
	h := newHouse(t, web.NewDoor(ours+":7310"))
	for host, want := range map[string]string{
		ours: "403", ours + ":7310": "403", "bench.example": "403", "localhost": "403",
		"192.168.7.3": "421", "rebound.example": "421", ours + ".rebound.example": "421", "[fd00::2]:7310": "421",
	} {
		assert.Equal(t, want, raw(t, h.at, "GET /", host), host)
		assert.Equal(t, want, raw(t, h.at, "POST /jobs/1/delete", host), host)
	}
}

func TestTheDeskShowsTheAddressForAPhoneWithoutTheCode(t *testing.T) {
	door := web.NewDoor(ours + ":7310")
	h := newHouse(t, door)
	h.net.comingFrom("127.0.0.1")
	_, page := h.knock("GET", "/jobs/1", "", nil)
	assert.Contains(t, page, "http://192.168.7.2:7310/jobs/1/bathroom")
	assert.Contains(t, page, `class="qr"`)
	assert.NotContains(t, page, bare(door))
	assert.NotContains(t, page, door.Code())

	s := trial.New(t)
	_, page = s.Get("/jobs/1")
	assert.Contains(t, page, "--lan", "without a door it says how to get one")
	assert.NotContains(t, page, `class="qr"`)
}
