package door_test

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
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
	"coursewright/web/door"
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
	t      *testing.T
	server *httptest.Server
	net    *network
	door   *door.Door
	store  *store.Store
	at     string // host and port to dial
	log    *bytes.Buffer
	mu     sync.Mutex
	now    time.Time
	paused []time.Duration // how long wrong codes waited
	wait   chan bool       // if set, a wrong code waits for it
}

// lan lets the network in.
func lan(d *door.Door) { d.Network, d.Address = true, ours+":7310" }

func shut(*door.Door) {}

// newHouse begins with a stranger at 192.168.7.9 and the demo.
func newHouse(t *testing.T, set func(*door.Door)) *house {
	t.Helper()
	h := houseAt(t, filepath.Join(t.TempDir(), "jobs.db"), set)
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	document, err := survey.Write(job)
	require.NoError(t, err)
	_, err = h.store.Create(t.Context(), job.Title, document)
	require.NoError(t, err)
	return h
}

// houseAt is a house over a data file.
func houseAt(t *testing.T, data string, set func(*door.Door)) *house {
	t.Helper()
	kept, err := store.Open(t.Context(), data)
	require.NoError(t, err)
	h := &house{t: t, door: door.New(kept), store: kept, log: &bytes.Buffer{}, now: time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)}
	log := slog.New(slog.NewTextHandler(&locked{mu: &h.mu, w: h.log}, nil))
	kept.Now = h.clock
	h.door.Log, h.door.Now, h.door.Pause = log, h.clock, h.pause
	set(h.door)
	w := &web.Server{Store: kept, Static: static.Files, Hosts: []string{"bench.example"}, Door: h.door, Solve: layout.Quick, Tell: layout.Solve, Log: log}
	h.server = httptest.NewUnstartedServer(w.Handler())
	h.net = &network{Listener: h.server.Listener, from: "192.168.7.9"}
	h.server.Listener = h.net
	h.server.Start()
	t.Cleanup(h.end)
	h.at = h.net.Listener.Addr().String()
	return h
}

// end ends the program, once.
func (h *house) end() {
	if h.server != nil {
		h.server.Close()
		assert.NoError(h.t, h.store.Close())
	}
	h.server = nil
}

func (h *house) clock() time.Time { h.mu.Lock(); defer h.mu.Unlock(); return h.now }

func (h *house) pause(_ context.Context, long time.Duration) {
	h.mu.Lock()
	h.paused = append(h.paused, long)
	wait := h.wait
	h.mu.Unlock()
	if wait != nil {
		<-wait
	}
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
// bear cookies, and gives the answer and its body. Headers are whole lines.
func (h *house) knock(method, path, cookie string, form url.Values, headers ...string) (*http.Response, string) {
	h.t.Helper()
	conn, err := net.Dial("tcp", h.at)
	require.NoError(h.t, err)
	defer conn.Close()
	body := form.Encode()
	_, err = fmt.Fprintf(conn, "%s %s HTTP/1.1\r\nHost: %s:7310\r\nConnection: close\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: %d\r\n", method, path, ours, len(body))
	require.NoError(h.t, err)
	if cookie != "" {
		headers = append(headers, "Cookie: "+cookie)
	}
	for _, line := range headers {
		fmt.Fprintf(conn, "%s\r\n", line)
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

// raw gives the status of a request with a host of its own.
func (h *house) raw(line, host string) string {
	h.t.Helper()
	conn, err := net.Dial("tcp", h.at)
	require.NoError(h.t, err)
	defer conn.Close()
	_, err = io.WriteString(conn, line+" HTTP/1.1\r\nHost: "+host+"\r\nContent-Length: 0\r\nConnection: close\r\n\r\n")
	require.NoError(h.t, err)
	answer, err := http.ReadResponse(bufio.NewReader(conn), nil)
	require.NoError(h.t, err)
	answer.Body.Close()
	return fmt.Sprint(answer.StatusCode)
}

// letIn lets a device in and gives its cookie.
func (h *house) letIn(name string) string {
	h.t.Helper()
	answer, text := h.knock("POST", "/open", "", url.Values{"code": {h.door.Code()}, "name": {name}})
	require.Equal(h.t, http.StatusSeeOther, answer.StatusCode, text)
	require.Len(h.t, answer.Cookies(), 1)
	return answer.Cookies()[0].Name + "=" + answer.Cookies()[0].Value
}

// status is what a device with cookies is answered at the first page.
func (h *house) status(cookie string) int {
	answer, _ := h.knock("GET", "/", cookie, nil)
	return answer.StatusCode
}

// bare is the code without its hyphens.
func bare(d *door.Door) string { return strings.ReplaceAll(d.Code(), "-", "") }

func wrong() url.Values { return url.Values{"code": {"0000-0000"}} }

func TestTheNetworkGetsNothingWithoutADoor(t *testing.T) {
	h := newHouse(t, shut)
	for _, path := range []string{"/", "/jobs/1", "/static/bench.js", "/open/x", "/nowhere"} {
		for _, host := range []string{"localhost", "bench.example"} {
			assert.Equal(t, "403", h.raw("GET "+path, host), "%s as %s", path, host)
		}
		assert.Equal(t, "421", h.raw("GET "+path, ours), path)
	}
	h.net.comingFrom("127.0.0.1")
	assert.Equal(t, "200", h.raw("GET /", "localhost"))
	assert.Equal(t, "404", h.raw("GET /open/x", "localhost"))
}

func TestADeviceIsAskedForTheCodeWhateverItCameFor(t *testing.T) {
	h := newHouse(t, lan)
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
	h := newHouse(t, lan)
	link, err := url.Parse(h.door.Link())
	require.NoError(t, err)
	answer, page := h.knock("GET", link.Path, "", nil)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	assert.Equal(t, "/", answer.Header.Get("Location"))
	assert.Equal(t, "no-referrer", answer.Header.Get("Referrer-Policy"))
	cookie := answer.Cookies()[0]
	assert.True(t, cookie.HttpOnly)
	assert.Equal(t, http.SameSiteStrictMode, cookie.SameSite)
	assert.NotContains(t, cookie.Value, bare(h.door))
	assert.NotEqual(t, bare(h.door), cookie.Value)

	answer, page = h.knock("GET", "/", cookie.Name+"="+cookie.Value, nil)
	assert.Equal(t, http.StatusOK, answer.StatusCode)
	assert.Contains(t, page, "Heron Street")
	for _, bad := range []string{bare(h.door), "", cookie.Value[1:], cookie.Value + "x"} {
		answer, _ = h.knock("GET", "/", cookie.Name+"="+bad, nil)
		assert.Equal(t, http.StatusForbidden, answer.StatusCode, "a pass that is not the pass")
	}
	other := newHouse(t, lan)
	answer, _ = other.knock("GET", "/", cookie.Name+"="+cookie.Value, nil)
	assert.Equal(t, http.StatusForbidden, answer.StatusCode, "the pass of another start")
}

func TestTheCodeIsTakenAsPeopleTypeItAndLeadsOn(t *testing.T) {
	h := newHouse(t, lan)
	for _, typed := range []string{h.door.Code(), bare(h.door), " " + strings.ToUpper(h.door.Code()), strings.ReplaceAll(h.door.Code(), "-", " "),
		strings.NewReplacer("0", "O", "1", "l").Replace(h.door.Code())} {
		answer, page := h.knock("POST", "/open", "", url.Values{"code": {typed}, "to": {"/jobs/1/work?cut=C1"}})
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
		assert.Equal(t, "/jobs/1/work?cut=C1", answer.Header.Get("Location"))
		assert.Len(t, answer.Cookies(), 1)
	}
}

func TestTheDoorLeadsNowhereElse(t *testing.T) {
	h := newHouse(t, lan)
	for _, to := range []string{"", "//elsewhere.example", "https://elsewhere.example", "/\\elsewhere.example", "/\t/elsewhere.example", "/open/x"} {
		answer, _ := h.knock("POST", "/open", "", url.Values{"code": {h.door.Code()}, "to": {to}})
		assert.Equal(t, "/", answer.Header.Get("Location"), to)
	}
}

func TestTheCodeStandsInNoPageAndNoLog(t *testing.T) {
	h := newHouse(t, lan)
	seen := &strings.Builder{}
	look := func(answer *http.Response, page string) *http.Response {
		_ = answer.Header.Write(seen)
		seen.WriteString(page)
		return answer
	}
	link, _ := url.Parse(h.door.Link())
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
	look(h.knock("POST", "/open", "", url.Values{"code": {h.door.Code() + "x"}}))
	for range 12 {
		look(h.knock("POST", "/open", "", wrong()))
	}
	look(h.knock("POST", "/open", "", url.Values{"code": {h.door.Code()}}))
	for _, code := range []string{h.door.Code(), bare(h.door)} {
		assert.NotContains(t, seen.String(), code)
		assert.NotContains(t, h.log.String(), code)
	}
	assert.Contains(t, h.log.String(), "wrong codes are slowed down")
	assert.Len(t, bare(h.door), 52, "256 bits at five to a letter")
}

// The right code is taken whatever happened before; wrong ones slow the address they come from.
func TestWrongCodesSlowTheAddressTheyComeFromAndNobodyElse(t *testing.T) {
	h := newHouse(t, lan)
	right := url.Values{"code": {h.door.Code()}}
	for i := range 10 {
		answer, page := h.knock("POST", "/open", "", wrong())
		require.Equal(t, http.StatusForbidden, answer.StatusCode)
		require.Contains(t, page, map[bool]string{true: "After one more wrong one", false: fmt.Sprintf("%d more tries", 9-i)}[i == 8])
	}
	assert.Empty(t, h.paused)
	for range 6 {
		answer, page := h.knock("GET", "/open/0000", "", nil) // a wrong link counts as well
		require.Equal(t, http.StatusTooManyRequests, answer.StatusCode)
		assert.Equal(t, "1", answer.Header.Get("Retry-After"))
		assert.Contains(t, page, "The right one is taken at once")
		assert.Contains(t, page, `name="code"`)
	}
	assert.Equal(t, []time.Duration{time.Second, 2 * time.Second, 4 * time.Second, 8 * time.Second, 8 * time.Second, 8 * time.Second}, h.paused)
	assert.Equal(t, 1, strings.Count(h.log.String(), "slowed down"), "the log is not filled from outside")

	h.wait = make(chan bool)
	held := make(chan int)
	go func() { answer, _ := h.knock("POST", "/open", "", wrong()); held <- answer.StatusCode }()
	require.Eventually(t, func() bool { h.mu.Lock(); defer h.mu.Unlock(); return len(h.paused) == 7 }, time.Minute, time.Millisecond)
	answer, _ := h.knock("POST", "/open", "", wrong())
	assert.Equal(t, http.StatusTooManyRequests, answer.StatusCode, "a second one does not wait beside the first")
	answer, _ = h.knock("POST", "/open", "", right)
	assert.Equal(t, http.StatusSeeOther, answer.StatusCode, "the right code is taken at once, while a wrong one waits")
	h.wait <- true
	assert.Equal(t, http.StatusTooManyRequests, <-held)
	h.wait = nil
	assert.Len(t, h.paused, 7)

	answer, page := h.knock("POST", "/open", "", wrong())
	assert.Equal(t, http.StatusForbidden, answer.StatusCode, "who gave the right code begins anew")
	assert.Contains(t, page, "9 more tries")
	h.net.comingFrom("192.168.7.10")
	_, page = h.knock("POST", "/open", "", wrong())
	assert.Contains(t, page, "9 more tries", "another device is not held up")
}

func TestWrongCodesAreForgottenInTime(t *testing.T) {
	h := newHouse(t, lan)
	for range 11 {
		h.knock("POST", "/open", "", wrong())
	}
	h.later(9*time.Minute + 59*time.Second)
	answer, _ := h.knock("POST", "/open", "", wrong())
	assert.Equal(t, http.StatusTooManyRequests, answer.StatusCode)
	h.later(10 * time.Minute)
	_, page := h.knock("POST", "/open", "", wrong())
	assert.Contains(t, page, "9 more tries")
}

// However many addresses send wrong codes, the right one from any of them is taken.
func TestNoNumberOfWrongCodesShutsOthersOut(t *testing.T) {
	h := newHouse(t, lan)
	for i := range 1100 { // more than are counted, the first half of each its own
		h.net.comingFrom(fmt.Sprintf("fd00:0:0:%x::9", i))
		answer, _ := h.knock("POST", "/open", "", wrong())
		require.Equal(t, http.StatusForbidden, answer.StatusCode, i)
	}
	for _, from := range []string{"192.168.7.200", "fd00:0:0:3::9"} {
		h.net.comingFrom(from)
		answer, _ := h.knock("POST", "/open", "", url.Values{"code": {h.door.Code()}})
		assert.Equal(t, http.StatusSeeOther, answer.StatusCode)
	}
}

func TestAddressesOfOneHouseholdCountAsOne(t *testing.T) {
	h := newHouse(t, lan)
	for i := range 11 {
		h.net.comingFrom(fmt.Sprintf("fd00:0:0:7::%x", i+1))
		answer, _ := h.knock("POST", "/open", "", wrong())
		require.Equal(t, i == 10, answer.StatusCode == http.StatusTooManyRequests, i)
	}
}

// A page of another site cannot let its visitor's device try a code, nor slow that device down.
func TestNoOtherSiteTriesACode(t *testing.T) {
	h := newHouse(t, lan)
	link := "/open/" + bare(h.door)
	for _, from := range []string{"Sec-Fetch-Site: cross-site", "Sec-Fetch-Site: same-site", "Origin: https://elsewhere.example", "Origin: null",
		"Referer: https://elsewhere.example/page", "Referer: http://" + ours + ":80/", "Referer: ::"} {
		for _, path := range []string{link, "/open/0000"} {
			answer, page := h.knock("GET", path, "", nil, from)
			assert.Equal(t, http.StatusForbidden, answer.StatusCode, from)
			assert.Empty(t, answer.Cookies(), from)
			assert.Contains(t, page, "not from another page", from)
		}
		if !strings.HasPrefix(from, "Referer") {
			answer, _ := h.knock("POST", "/open", "", url.Values{"code": {h.door.Code()}}, from)
			assert.Equal(t, http.StatusForbidden, answer.StatusCode, from)
			assert.Empty(t, answer.Cookies(), from)
		}
	}
	answer, _ := h.knock("HEAD", link, "", nil)
	assert.Equal(t, http.StatusForbidden, answer.StatusCode, "who only looks at a link is not let in")
	assert.Empty(t, answer.Cookies())
	passes, err := h.store.Passes(t.Context())
	require.NoError(t, err)
	assert.Empty(t, passes)
	_, page := h.knock("POST", "/open", "", wrong())
	assert.Contains(t, page, "9 more tries", "none of it counted")
	for _, from := range []string{"", "Sec-Fetch-Site: none", "Sec-Fetch-Site: same-origin", "Referer: http://" + ours + ":7310/"} {
		answer, _ := h.knock("GET", link, "", nil, append([]string{}, nonempty(from)...)...)
		assert.Equal(t, http.StatusSeeOther, answer.StatusCode, from)
	}
}

func nonempty(line string) []string {
	if line == "" {
		return nil
	}
	return []string{line}
}

func TestAPassIsOfOneDeviceAndKeptOverRestarts(t *testing.T) {
	data := filepath.Join(t.TempDir(), "jobs.db")
	h := houseAt(t, data, lan)
	phone, tablet := h.letIn("Ann's  phone"), h.letIn("tablet")
	assert.NotEqual(t, phone, tablet)
	h.end()
	for _, end := range []string{"", "-wal"} {
		body, _ := os.ReadFile(data + end)
		for _, pass := range []string{phone, tablet} {
			_, secret, _ := strings.Cut(pass, "=")
			assert.NotContains(t, string(body), secret, "the file does not hold the pass")
		}
	}

	h = houseAt(t, data, lan)
	assert.Equal(t, http.StatusOK, h.status(phone))
	assert.Equal(t, http.StatusOK, h.status(tablet))
	answer, page := h.knock("GET", "/devices", phone, nil)
	assert.Equal(t, http.StatusOK, answer.StatusCode)
	assert.Contains(t, page, "Ann&#39;s phone")
	assert.NotContains(t, page, "tablet", "a device sees to its own pass")
	answer, _ = h.knock("POST", "/devices", phone, url.Values{"id": {"2"}, "do": {"take"}})
	assert.Equal(t, http.StatusNotFound, answer.StatusCode)
	assert.Equal(t, http.StatusOK, h.status(tablet))

	h.net.comingFrom("127.0.0.1")
	_, page = h.knock("GET", "/devices", "", nil)
	assert.Contains(t, page, "Ann&#39;s phone")
	assert.Contains(t, page, "tablet", "this machine sees to all")
	answer, _ = h.knock("POST", "/devices", "", url.Values{"id": {"1"}, "do": {"take"}})
	assert.Equal(t, http.StatusSeeOther, answer.StatusCode)
	answer, _ = h.knock("POST", "/devices", "", url.Values{"id": {"2"}, "do": {"rename"}, "name": {"kitchen"}})
	assert.Equal(t, http.StatusSeeOther, answer.StatusCode)
	h.net.comingFrom("192.168.7.9")
	assert.Equal(t, http.StatusForbidden, h.status(phone), "from the next request on")
	assert.Equal(t, http.StatusOK, h.status(tablet))
	h.end()

	h = houseAt(t, data, lan)
	assert.Equal(t, http.StatusForbidden, h.status(phone), "and for good")
	_, page = h.knock("GET", "/devices", tablet, nil)
	assert.Contains(t, page, "kitchen")
	answer, _ = h.knock("POST", "/devices", tablet, url.Values{"id": {"2"}, "do": {"take"}})
	assert.Equal(t, http.StatusSeeOther, answer.StatusCode)
	assert.Equal(t, http.StatusForbidden, h.status(tablet), "a device may leave by itself")
	answer, _ = h.knock("POST", "/devices", "", url.Values{"id": {"2"}, "do": {"take"}})
	assert.Equal(t, http.StatusForbidden, answer.StatusCode)
}

func TestThePassOfADeviceThatComesAgainIsItsFirst(t *testing.T) {
	h := newHouse(t, lan)
	pass := h.letIn("phone")
	for range 3 {
		answer, _ := h.knock("GET", "/open/"+bare(h.door), pass, nil)
		assert.Equal(t, http.StatusSeeOther, answer.StatusCode)
		assert.Empty(t, answer.Cookies())
	}
	h.later(30 * 24 * time.Hour)
	assert.Equal(t, http.StatusOK, h.status(pass))
	passes, err := h.store.Passes(t.Context())
	require.NoError(t, err)
	require.Len(t, passes, 1)
	assert.Equal(t, h.clock(), passes[0].Seen)
}

// Another program on this machine, or an older pass, may have left a cookie of the same name.
func TestAnotherCookieOfTheNameDoesNoHarm(t *testing.T) {
	h := newHouse(t, lan)
	pass := h.letIn("phone")
	other := "coursewright-pass=AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA"
	for _, cookies := range []string{other + "; " + pass, pass + "; " + other, strings.Repeat(other+"; ", 200) + pass, "coursewright-pass=; " + pass, `coursewright-pass="x; ` + pass} {
		assert.Equal(t, http.StatusOK, h.status(cookies), cookies[:40])
	}
	assert.Equal(t, http.StatusForbidden, h.status(other+"; "+other))
}

func TestADeviceIsCalledByWhatItRunsOnUnlessNamed(t *testing.T) {
	h := newHouse(t, lan)
	for _, agent := range []string{"Mozilla/5.0 (Linux; Android 15)", "Mozilla/5.0 (iPhone; CPU)", "curl", strings.Repeat("x", 5000)} {
		answer, _ := h.knock("GET", "/open/"+bare(h.door), "", nil, "User-Agent: "+agent)
		require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	}
	h.letIn("<b>" + strings.Repeat("long ", 50))
	h.letIn("\u202emy\u2066 phone\u200b")
	passes, err := h.store.Passes(t.Context())
	require.NoError(t, err)
	var names []string
	for _, p := range passes {
		names = append(names, p.Name)
	}
	assert.Equal(t, []string{"Android device", "iPhone", "Device", "Device"}, names[:4])
	assert.Len(t, []rune(names[4]), 60)
	assert.Equal(t, "my phone", names[5], "nothing in it turns round what stands beside it")
	h.net.comingFrom("127.0.0.1")
	_, page := h.knock("GET", "/devices", "", nil)
	assert.NotContains(t, page, "<b>")
}

// With a proxy on this machine all that comes from elsewhere seems to come from here.
func TestThisMachineIsAskedTooWhereEveryoneIs(t *testing.T) {
	h := newHouse(t, func(d *door.Door) { d.Everyone, d.Address = true, "127.0.0.1:7310" })
	assert.Equal(t, "403", h.raw("GET /", "localhost"))
	h.net.comingFrom("127.0.0.1")
	answer, page := h.knock("GET", "/jobs/1", "", nil, "X-Forwarded-For: 203.0.113.9")
	assert.Equal(t, http.StatusMisdirectedRequest, answer.StatusCode, page)
	for _, path := range []string{"/", "/jobs/1", "/devices"} {
		assert.Equal(t, "403", h.raw("GET "+path, "localhost"), path)
	}
	status, cookie := open(t, h, h.door.Code())
	require.Equal(t, http.StatusSeeOther, status)
	r, err := http.NewRequest(http.MethodGet, "http://"+h.at+"/", nil)
	require.NoError(t, err)
	r.AddCookie(cookie)
	reply, err := http.DefaultClient.Do(r)
	require.NoError(t, err)
	reply.Body.Close()
	assert.Equal(t, http.StatusOK, reply.StatusCode)
	r.URL.Path = "/jobs/1"
	reply, err = http.DefaultClient.Do(r)
	require.NoError(t, err)
	defer reply.Body.Close()
	body, err := io.ReadAll(reply.Body)
	require.NoError(t, err)
	assert.NotContains(t, string(body), `class="qr"`, "no phone finds this machine by its own name for itself")
}

// open shows a code from this machine.
func open(t *testing.T, h *house, code string) (int, *http.Cookie) {
	t.Helper()
	client := &http.Client{CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	answer, err := client.PostForm("http://"+h.at+"/open", url.Values{"code": {code}})
	require.NoError(t, err)
	answer.Body.Close()
	require.NotEmpty(t, answer.Cookies())
	return answer.StatusCode, answer.Cookies()[0]
}

// The foot of the page says where the data file is, on this machine alone.
func TestThisMachineIsToldWhereTheJobsAre(t *testing.T) {
	h := newHouse(t, lan)
	_, page := h.knock("GET", "/", h.letIn("phone"), nil)
	assert.NotContains(t, page, h.store.Path())
	h.net.comingFrom("127.0.0.1")
	for _, path := range []string{"/", "/jobs/1", "/devices", "/nowhere"} {
		_, page = h.knock("GET", path, "", nil)
		assert.Contains(t, page, h.store.Path(), path)
	}
}

func TestTheMachinesOwnAddressIsAHostAndNoOther(t *testing.T) {
	h := newHouse(t, lan)
	for host, want := range map[string]string{
		ours: "403", ours + ":7310": "403", "bench.example": "403", "localhost": "403",
		"192.168.7.3": "421", "rebound.example": "421", ours + ".rebound.example": "421", "[fd00::2]:7310": "421",
	} {
		assert.Equal(t, want, h.raw("GET /", host), host)
		assert.Equal(t, want, h.raw("POST /jobs/1/delete", host), host)
	}
}

func TestTheDeskShowsTheAddressForAPhoneWithoutTheCode(t *testing.T) {
	h := newHouse(t, lan)
	h.net.comingFrom("127.0.0.1")
	_, page := h.knock("GET", "/jobs/1", "", nil)
	assert.Contains(t, page, "http://192.168.7.2:7310/jobs/1/bathroom")
	assert.Contains(t, page, `class="qr"`)
	assert.NotContains(t, page, bare(h.door))
	assert.NotContains(t, page, h.door.Code())

	h = newHouse(t, shut)
	h.net.comingFrom("127.0.0.1")
	answer, err := http.Get("http://" + h.at + "/jobs/1")
	require.NoError(t, err)
	defer answer.Body.Close()
	body, err := io.ReadAll(answer.Body)
	require.NoError(t, err)
	assert.Contains(t, string(body), "--lan", "without a door it says how to get one")
	assert.NotContains(t, string(body), `class="qr"`)
}

// An opener policy is sent wherever a browser takes one, and not where it would warn of it on every page.
func TestNoOpenerPolicyOverPlainHTTPFromAnAddress(t *testing.T) {
	handler := door.Guard{Hosts: []string{"bench.example"}, Door: new(door.Door)}.Wrap(http.NotFoundHandler())
	for host, want := range map[string]string{
		"127.0.0.1:7310": "same-origin", "[::1]:7310": "same-origin", "localhost": "same-origin", "bench.example": "same-origin", "[::ffff:127.0.0.1]:80": "same-origin",
		"192.168.7.2:7310": "", "192.168.7.2": "", "[fe80::1]:7310": "", "10.0.0.9:80": "",
	} {
		for header, want := range map[string]string{"": want, "https": "same-origin"} {
			r := httptest.NewRequest(http.MethodGet, "/", nil)
			r.Host = host
			if header != "" {
				r.Header.Set("X-Forwarded-Proto", header)
			}
			w := httptest.NewRecorder()
			handler.ServeHTTP(w, r)
			assert.Equal(t, want, w.Header().Get("Cross-Origin-Opener-Policy"), "%s %s", host, header)
		}
	}
}
