package main

import (
	"fmt"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestAFileThatGoesWhileItIsOpenIsSaidAndRescued: whatever becomes of the file under the running
// program, an edit is answered with 503 and the place of the rescue copy, what was typed stays on
// the page, and the copy put back by the words of the README holds every edit that was answered.
func TestAFileThatGoesWhileItIsOpenIsSaidAndRescued(t *testing.T) {
	for name, line := range map[string]string{
		"removed":      `rm jobs.db`,
		"moved":        `mkdir away; mv jobs.db* away/`,
		"replaced":     `cp jobs.db other.db; mv other.db jobs.db`,
		"linked":       `cp jobs.db other.db; ln -f other.db jobs.db`,
		"log gone":     `rm jobs.db-wal`,
		"written over": `echo more >> jobs.db`,
	} {
		t.Run(name, func(t *testing.T) {
			folder := t.TempDir()
			data := filepath.Join(folder, "jobs.db")
			p := started(t, data)
			_, page, err := p.get("/jobs/1")
			require.NoError(t, err)
			status, page, err := p.edit(1, revisionOf(page), "title", "before it went")
			require.NoError(t, err)
			require.Equal(t, http.StatusOK, status)
			c := exec.Command("sh", "-e", "-c", line)
			c.Dir = folder
			out, err := c.CombinedOutput()
			require.NoError(t, err, string(out))

			status, page, err = p.edit(1, revisionOf(page), "title", "after it went")
			require.NoError(t, err)
			assert.Equal(t, http.StatusServiceUnavailable, status)
			assert.Contains(t, page, `value="after it went"`, "what was typed stays")
			assert.NotContains(t, page, ">Saved<")
			rescue := regexp.MustCompile(`(/[^\s<>"]*-rescue-[^\s<>"]*\.db)`).FindString(page)
			require.NotEmpty(t, rescue, page)
			answer, err := patient.PostForm(p.url+"/jobs/1/delete", nil)
			status, page, err = read(answer, err)
			require.NoError(t, err)
			assert.Equal(t, http.StatusServiceUnavailable, status)
			assert.Contains(t, page, rescue)

			require.NoError(t, p.Process.Signal(syscall.SIGTERM))
			err = p.Wait()
			var exit *exec.ExitError
			require.ErrorAs(t, err, &exit, "the end says it too")
			assert.Equal(t, failed, exit.ExitCode())
			assert.Contains(t, p.said.String(), rescue)
			again := filepath.Join(folder, "again.db")
			code, _, errs := command(t, "", "restore", rescue, "--data", again)
			require.Zero(t, code, errs)
			_, page, err = started(t, again).get("/")
			require.NoError(t, err)
			assert.Contains(t, page, "before it went")
		})
	}
}

// TestAQuotaReadsAsFull has the system refuse every write of the running program with EDQUOT.
func TestAQuotaReadsAsFull(t *testing.T) {
	strace, err := exec.LookPath("strace")
	if err != nil {
		t.Skip("needs Debian's strace")
	}
	p := started(t, filepath.Join(t.TempDir(), "jobs.db"))
	_, page, err := p.get("/jobs/1")
	require.NoError(t, err)
	base := revisionOf(page)
	c := exec.Command(strace, "-f", "-qq", "-o", "/dev/null", "-e", "trace=pwrite64", "-e", "inject=pwrite64:error=EDQUOT", "-p", strconv.Itoa(p.Process.Pid))
	require.NoError(t, c.Start())
	status, words := 0, ""
	deadline := time.Now().Add(time.Minute)
	for n := 0; status != http.StatusInsufficientStorage && time.Now().Before(deadline); n++ { // until it has taken hold: each edit is to write something
		status, words, err = p.edit(1, base, "title", fmt.Sprint("no room ", n))
		require.NoError(t, err)
		base = max(base, revisionOf(words))
	}
	assert.Equal(t, http.StatusInsufficientStorage, status)
	assert.Contains(t, words, "the disk is full")
	require.NoError(t, c.Process.Signal(os.Interrupt))
	_ = c.Wait()
	_, page, err = p.get("/jobs/1")
	require.NoError(t, err)
	status, _, err = p.edit(1, revisionOf(page), "title", "room again")
	require.NoError(t, err)
	assert.Equal(t, http.StatusOK, status, "and goes by")
}
