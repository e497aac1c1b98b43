package main

import (
	"fmt"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// mayGrowTo lets the system refuse to let any file of the program grow over a size, as a full
// disk or a quota does; "unlimited" takes that back. prlimit is part of util-linux.
func (p process) mayGrowTo(t *testing.T, size string) {
	t.Helper()
	out, err := exec.Command("prlimit", "--pid", strconv.Itoa(p.Process.Pid), "--fsize="+size+":").CombinedOutput()
	require.NoError(t, err, string(out))
}

// TestAFullDiskIsSaidAndGoesBy: with no room left an edit is answered with 507 or 503 and what was
// typed; what was saved before can be read; and the next edit after there is room is saved.
func TestAFullDiskIsSaidAndGoesBy(t *testing.T) {
	data := filepath.Join(t.TempDir(), "jobs.db")
	p := started(t, data)
	p.imports(t, toy)
	_, page, err := p.get("/jobs/2")
	require.NoError(t, err)
	base := revisionOf(page)

	for turn := range 3 {
		log, err := os.Stat(data + "-wal")
		require.NoError(t, err)
		p.mayGrowTo(t, fmt.Sprint(log.Size()+100*int64(turn)))
		for range 3 {
			status, page, err := p.edit(2, base, "title", "no room for this")
			require.NoError(t, err)
			assert.Contains(t, []int{http.StatusInsufficientStorage, http.StatusServiceUnavailable}, status)
			assert.Contains(t, page, "Everything saved before is safe")
			assert.Contains(t, page, `value="no room for this"`, "what was typed stays on the page")
			for _, path := range []string{"/", "/jobs/2", "/jobs/2/job.json", "/jobs/2/sheets.pdf"} {
				status, page, err := p.get(path)
				require.NoError(t, err)
				assert.Equal(t, http.StatusOK, status, path)
				assert.NotContains(t, page, "no room for this")
			}
		}
		for _, verb := range []string{"delete", "undo", "choices"} {
			answer, err := patient.PostForm(fmt.Sprintf("%s/jobs/2/%s", p.url, verb), map[string][]string{
				"revision": {fmt.Sprint(base)}, "do": {"duplicate"}, "of": {"first"}, "name": {"second"}})
			status, page, err := read(answer, err)
			require.NoError(t, err)
			if verb == "undo" && turn == 0 {
				continue // there is nothing to undo yet, and nothing to write
			}
			assert.Contains(t, []int{http.StatusInsufficientStorage, http.StatusServiceUnavailable}, status, verb)
			assert.Contains(t, page, "<h1>Not saved", verb)
		}
		p.mayGrowTo(t, "unlimited")
		status, page, err := p.edit(2, base, "title", fmt.Sprint("room again ", turn))
		require.NoError(t, err)
		require.Equal(t, http.StatusOK, status, page)
		base = revisionOf(page)
	}
	require.NoError(t, p.Process.Kill())
	p.Wait()
	one := &editor{job: 2, answered: []string{"Six tiles", "room again 0", "room again 1", "room again 2"}}
	holds(t, data, []*editor{one})
}
