package main

import (
	"flag"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A long run: go test ./cmd/coursewright -run SlowReaders -v -readers 16 -wall 9800 -timeout 0
var (
	readers = flag.Int("readers", 3, "how many slow readers take the pages of a large room")
	wall    = flag.Int("wall", 2000, "how wide and high its wall is, in millimetres; 9800 makes some 196,000 pieces")
)

// mostMemory is what the program may take with 16 slow readers of 200,000 pieces.
const mostMemory = 700 << 10 // kB

// largeRoom is a job of one square wall in tile of 20 mm.
func largeRoom(t *testing.T, side int) string {
	t.Helper()
	job := fmt.Sprintf(`{"format": "coursewright-job/1", "title": "large", "units": "mm", "tile": {"width": "20", "height": "20", "thickness": "4"}, "joint": "2",
		"bond": {"kind": "stack"}, "walls": [{"name": "wall", "width": "%d", "left": {"meets": "corner"}, "right": {"meets": "corner"},
		"base": [{"meets": "floor", "readings": [{"at": "0", "drop": "%d"}, {"at": "%d", "drop": "%d"}]}],
		"head": {"meets": "ceiling", "readings": [{"at": "0", "rise": "100"}, {"at": "%d", "rise": "100"}]}}]}`, side, side-100, side, side-100, side)
	name := filepath.Join(t.TempDir(), "large.json")
	require.NoError(t, os.WriteFile(name, []byte(job), 0o600))
	return name
}

// TestSlowReadersTakeLittleAndHoldNobodyUp: slow readers ask for the pages of a large room, all at
// once, and take a little at a time. Others are answered meanwhile, and memory stays bounded.
func TestSlowReadersTakeLittleAndHoldNobodyUp(t *testing.T) {
	p := started(t, filepath.Join(t.TempDir(), "jobs.db"))
	p.imports(t, toy)
	p.imports(t, largeRoom(t, *wall))
	pages := []string{"/jobs/3/plan.json", "/jobs/3", "/jobs/3?wall=1", "/jobs/3/cuts.csv"}
	first := make(chan string, *readers)
	for i := range *readers {
		go func() { first <- p.dribbled(pages[i%len(pages)]) }()
	}
	var took []time.Duration
	for begun := 0; begun < *readers; {
		asked := time.Now()
		status, page, err := p.get("/jobs/2")
		took = append(took, time.Since(asked))
		require.NoError(t, err)
		require.Equal(t, http.StatusOK, status)
		status, _, err = p.edit(2, revisionOf(page), "title", fmt.Sprint("meanwhile ", len(took)))
		require.NoError(t, err)
		assert.Equal(t, http.StatusOK, status)
		select {
		case line := <-first:
			assert.Contains(t, []string{"HTTP/1.1 200 OK", "HTTP/1.1 503 Service Unavailable"}, line)
			begun++
			t.Logf("%d of %d are being served, %s; %s kB so far", begun, *readers, line, p.peak(t))
		default:
		}
	}
	slices.Sort(took)
	memory, err := strconv.Atoi(p.peak(t))
	require.NoError(t, err)
	t.Logf("%d slow readers of a wall of %d mm: others were answered in %v at most, %v in the middle, %d times; at most %d kB of memory",
		*readers, *wall, took[len(took)-1].Round(time.Millisecond), took[len(took)/2].Round(time.Millisecond), len(took), memory)
	assert.Less(t, memory, mostMemory)
}

// peak is the most memory the process ever took, in kB.
func (p process) peak(t *testing.T) string {
	t.Helper()
	status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", p.Process.Pid))
	require.NoError(t, err)
	return peak.FindStringSubmatch(string(status))[1]
}

// dribbled asks for a page, gives the first line of the answer, and goes on taking a little of it
// until the server hangs up.
func (p process) dribbled(path string) string {
	conn, err := net.Dial("tcp", strings.TrimPrefix(p.url, "http://"))
	if err != nil {
		return err.Error()
	}
	_ = conn.(*net.TCPConn).SetReadBuffer(4096)
	_, err = io.WriteString(conn, "GET "+path+" HTTP/1.1\r\nHost: localhost\r\n\r\n")
	line := make([]byte, 64)
	n, readErr := io.ReadAtLeast(conn, line, 32)
	if err != nil || readErr != nil {
		return fmt.Sprint(err, readErr)
	}
	go func() {
		defer conn.Close()
		for some := make([]byte, 512); err == nil; _, err = conn.Read(some) {
			time.Sleep(50 * time.Millisecond) // the slowness that is tested, not a wait for something
		}
	}()
	out, _, _ := strings.Cut(string(line[:n]), "\r\n")
	return out
}
