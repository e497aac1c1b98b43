package main

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// bound is when a test gives up on a server that does not drop a client: far
// beyond the limits it sets.
const bound = 60 * time.Second

// tight are limits that a slow client runs into at once.
var tight = limits{header: 200 * time.Millisecond, read: 400 * time.Millisecond, write: 400 * time.Millisecond, idle: 200 * time.Millisecond}

func dial(t *testing.T, s serving) *net.TCPConn {
	t.Helper()
	conn, err := net.Dial("tcp", strings.TrimPrefix(s.url, "http://"))
	require.NoError(t, err)
	t.Cleanup(func() { conn.Close() })
	require.NoError(t, conn.SetDeadline(time.Now().Add(bound)))
	return conn.(*net.TCPConn)
}

// dribble sends a byte now and then until the server hangs up, and tells whether it did.
func dribble(conn net.Conn) bool {
	for {
		if _, err := conn.Write([]byte("x")); err != nil {
			timeout, ok := err.(net.Error)
			return !ok || !timeout.Timeout()
		}
		time.Sleep(20 * time.Millisecond) // the slowness that is tested, not a wait for something
	}
}

func TestSlowClientsAreDroppedWhileOthersAreServed(t *testing.T) {
	s, _, _ := opened(t, tight, "--listen", "127.0.0.1:0", "--data", filepath.Join(t.TempDir(), "jobs.db"))
	slow := map[string]string{
		"a head that never ends":   "GET / HTTP/1.1\r\nHost: localhost\r\nX-Slow: ",
		"a body that never ends":   "POST /jobs HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: 1000000\r\n\r\ntitle=",
		"no request at all":        "",
		"a second that never ends": "GET /static/icon.svg HTTP/1.1\r\nHost: localhost\r\n\r\nGET / HTTP",
	}
	const each = 20
	dropped := make(chan string, each*len(slow))
	for name, begins := range slow {
		for range each {
			conn := dial(t, s)
			_, err := io.WriteString(conn, begins)
			require.NoError(t, err)
			go func() {
				if dribble(conn) {
					dropped <- name
				} else {
					dropped <- "not " + name
				}
			}()
		}
	}
	assert.Contains(t, s.page(t, "/"), "Heron Street", "others are served meanwhile")
	for range each * len(slow) {
		assert.Contains(t, slow, <-dropped)
	}
	assert.Contains(t, s.page(t, "/"), "Heron Street", "and afterwards")
}

func TestARequestThatTakesTooLongIsTold(t *testing.T) {
	s, _, _ := opened(t, limits{read: 200 * time.Millisecond}, "--listen", "127.0.0.1:0", "--data", filepath.Join(t.TempDir(), "jobs.db"))
	conn := dial(t, s)
	_, err := io.WriteString(conn, "POST /jobs HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: 100\r\n\r\ntitle=")
	require.NoError(t, err)
	answer, err := http.ReadResponse(bufio.NewReader(conn), nil)
	require.NoError(t, err)
	page, err := io.ReadAll(answer.Body)
	require.NoError(t, err)
	assert.Equal(t, http.StatusRequestTimeout, answer.StatusCode)
	assert.Contains(t, string(page), "nothing was saved")
	assert.NotContains(t, string(page), "127.0.0.1")
}

func TestAConnectionThatIsNotUsedIsClosed(t *testing.T) {
	s, _, _ := opened(t, tight, "--listen", "127.0.0.1:0", "--data", filepath.Join(t.TempDir(), "jobs.db"))
	conn := dial(t, s)
	_, err := io.WriteString(conn, "GET /static/icon.svg HTTP/1.1\r\nHost: localhost\r\n\r\n")
	require.NoError(t, err)
	in := bufio.NewReader(conn)
	answer, err := http.ReadResponse(in, nil)
	require.NoError(t, err)
	_, err = io.Copy(io.Discard, answer.Body)
	require.NoError(t, err)
	assert.False(t, answer.Close)
	_, err = in.ReadByte()
	assert.Equal(t, io.EOF, err)
}

// The client asks for far more than the buffers between the two hold, and reads nothing.
func TestAClientThatDoesNotReadIsDropped(t *testing.T) {
	s, _, _ := opened(t, tight, "--listen", "127.0.0.1:0", "--data", filepath.Join(t.TempDir(), "jobs.db"))
	conn := dial(t, s)
	require.NoError(t, conn.SetReadBuffer(4096))
	_, err := io.WriteString(conn, strings.Repeat("GET /static/condensed.ttf HTTP/1.1\r\nHost: localhost\r\n\r\n", 60))
	require.NoError(t, err)
	assert.True(t, dribble(conn))
	assert.Contains(t, s.page(t, "/"), "Heron Street")
}

func TestAHeadTooLargeIsRefused(t *testing.T) {
	s, _, _ := opened(t, limits{}, "--listen", "127.0.0.1:0", "--data", filepath.Join(t.TempDir(), "jobs.db"))
	conn := dial(t, s)
	_, _ = fmt.Fprintf(conn, "GET / HTTP/1.1\r\nHost: localhost\r\nX-Large: %s\r\n\r\n", strings.Repeat("x", 100<<10)) // it may hang up before it has read all
	answer, err := http.ReadResponse(bufio.NewReader(conn), nil)
	require.NoError(t, err)
	assert.Equal(t, http.StatusRequestHeaderFieldsTooLarge, answer.StatusCode)
}

// TestTheProgramEndsWhateverARequestDoes: of two requests that would never end one gives up when it
// is told to, the other does not listen; told to end, the program ends without an error.
func TestTheProgramEndsWhateverARequestDoes(t *testing.T) {
	begun, gaveUp, never := make(chan bool, 2), make(chan bool, 1), make(chan bool)
	defer close(never)
	handler := http.NewServeMux()
	handler.HandleFunc("/listens", func(_ http.ResponseWriter, r *http.Request) {
		begun <- true
		<-r.Context().Done()
		gaveUp <- true
	})
	handler.HandleFunc("/deaf", func(http.ResponseWriter, *http.Request) { begun <- true; <-never })
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	ctx, end := context.WithCancel(t.Context())
	ended := make(chan error, 1)
	go func() { ended <- run(ctx, limits{}.server(handler, slog.New(slog.DiscardHandler)), listener) }()
	for _, path := range []string{"/listens", "/deaf"} {
		go func() {
			answer, err := http.Get("http://" + listener.Addr().String() + path)
			if err == nil {
				answer.Body.Close()
			}
		}()
		<-begun
	}
	told := time.Now()
	end()
	require.NoError(t, <-ended)
	assert.True(t, <-gaveUp)
	t.Logf("ended after %v", time.Since(told))
}

// A request that is nearly done comes to its end and is answered.
func TestTheProgramLetsARequestComeToItsEnd(t *testing.T) {
	begun, proceed := make(chan bool), make(chan bool)
	handler := http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		begun <- true
		<-proceed
		if r.Context().Err() == nil {
			_, _ = io.WriteString(w, "done")
		}
	})
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	ctx, end := context.WithCancel(t.Context())
	ended, answered := make(chan error, 1), make(chan string, 1)
	go func() { ended <- run(ctx, limits{}.server(handler, slog.New(slog.DiscardHandler)), listener) }()
	go func() {
		_, body, _ := read(http.Get("http://" + listener.Addr().String()))
		answered <- body
	}()
	<-begun
	end()
	close(proceed)
	assert.Equal(t, "done", <-answered)
	assert.NoError(t, <-ended)
}
