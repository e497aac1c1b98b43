package main

import (
	"database/sql"
	"errors"
	"io/fs"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/store"
)

// withBackup makes a data file that has a backup of the state before its last job.
func withBackup(t *testing.T) (data, backup string) {
	t.Helper()
	data = filepath.Join(t.TempDir(), "jo'bs.db")
	kept, err := store.Open(t.Context(), data)
	require.NoError(t, err)
	_, err = kept.Create(t.Context(), "in the backup", []byte(`{}`))
	require.NoError(t, err)
	day := time.Date(2026, 3, 1, 0, 0, 0, 0, time.UTC)
	require.NoError(t, kept.DailyBackup(t.Context(), day))
	_, err = kept.Create(t.Context(), "after the backup", []byte(`{}`))
	require.NoError(t, errors.Join(err, kept.Close()))
	return data, filepath.Join(data+"-backups", "daily-2026-03-01.db")
}

// files reads every file below a folder.
func files(t *testing.T, folder string) map[string]string {
	t.Helper()
	out := map[string]string{}
	require.NoError(t, filepath.WalkDir(folder, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		body, err := os.ReadFile(path)
		out[path] = string(body)
		return err
	}))
	return out
}

func spoil(query string) func(*testing.T, string) {
	return func(t *testing.T, path string) {
		db, err := sql.Open("sqlite", (&url.URL{Scheme: "file", Path: path}).String())
		require.NoError(t, err)
		_, err = db.ExecContext(t.Context(), query)
		require.NoError(t, errors.Join(err, db.Close()))
	}
}

func overwrite(at int64, text string) func(*testing.T, string) {
	return func(t *testing.T, path string) {
		f, err := os.OpenFile(path, os.O_RDWR, 0)
		require.NoError(t, err)
		_, err = f.WriteAt([]byte(text), at)
		require.NoError(t, errors.Join(err, f.Close()))
	}
}

func TestAFileThatCannotBeUsedIsRefusedAtStartAndLeftAsItIs(t *testing.T) {
	for name, c := range map[string]struct {
		spoil  func(*testing.T, string)
		says   string
		offers bool
	}{
		"a text":         {func(t *testing.T, path string) { require.NoError(t, os.WriteFile(path, []byte("dear diary"), 0o600)) }, "not a data file of Coursewright", true},
		"another's":      {spoil(`PRAGMA application_id = 7`), "not a data file of Coursewright", true},
		"newer":          {spoil(`PRAGMA user_version = 99`), "written by a newer Coursewright", false},
		"the head lost":  {overwrite(0, strings.Repeat("\x00", 100)), "not a data file of Coursewright", true},
		"a page lost":    {overwrite(2*4096, strings.Repeat("lost", 1024)), "the data file is damaged", true},
		"the end is cut": {func(t *testing.T, path string) { require.NoError(t, os.Truncate(path, 3*4096)) }, "the data file is damaged", true},
	} {
		t.Run(name, func(t *testing.T) {
			data, backup := withBackup(t)
			c.spoil(t, data)
			require.NoError(t, os.Remove(data+".lock"))
			before := files(t, filepath.Dir(data))
			out, err := programOf("serve", "--listen", "127.0.0.1:0", "--data", data).CombinedOutput()
			said := string(out)
			var exit *exec.ExitError
			require.ErrorAs(t, err, &exit, said)
			assert.Equal(t, failed, exit.ExitCode())
			assert.Contains(t, said, c.says)
			assert.Contains(t, said, data)
			assert.Equal(t, c.offers, strings.Contains(said, backup), said)
			after := files(t, filepath.Dir(data))
			delete(after, data+".lock")
			assert.Equal(t, before, after)
			if c.offers {
				goesOnFromTheBackup(t, said, data, before[data])
			}
		})
	}
}

// goesOnFromTheBackup types what the refusal says into a shell and starts again.
func goesOnFromTheBackup(t *testing.T, said, data, spoiled string) {
	t.Helper()
	line := regexp.MustCompile(`(?m)^  coursewright (restore .*)$`).FindStringSubmatch(said)
	require.NotNil(t, line, said)
	c := exec.Command("sh", "-c", quoted(os.Args[0])+" "+line[1])
	c.Env = append(os.Environ(), asProgram+"=1")
	out, err := c.CombinedOutput()
	require.NoError(t, err, string(out))
	aside := regexp.MustCompile(`kept in (.*)\.\n`).FindStringSubmatch(string(out))
	require.NotNil(t, aside, string(out))
	body, err := os.ReadFile(filepath.Join(aside[1], filepath.Base(data)))
	require.NoError(t, err)
	assert.Equal(t, spoiled, string(body), "nothing is thrown away")
	p := started(t, data)
	_, page, err := p.get("/")
	require.NoError(t, err)
	assert.Contains(t, page, "in the backup")
	assert.NotContains(t, page, "after the backup")
}

func TestRestoreRefuses(t *testing.T) {
	data, backup := withBackup(t)
	refused := func(says string, args ...string) {
		t.Helper()
		out, err := programOf(append([]string{"restore"}, args...)...).CombinedOutput()
		require.Error(t, err)
		assert.Contains(t, string(out), says)
	}
	refused("takes one backup file")
	refused("no such file", backup+".old", "--data", data)
	refused("not a data file", toy, "--data", data)
	started(t, data)
	refused("already open in another", backup, "--data", data)
}

func TestASecondProgramIsToldWhereTheFirstOneIs(t *testing.T) {
	data := filepath.Join(t.TempDir(), "jobs.db")
	first := started(t, data)
	for name, listen := range map[string]string{"on another port": "127.0.0.1:0", "on the same port": strings.TrimPrefix(first.url, "http://")} {
		out, err := programOf("serve", "--listen", listen, "--data", data).CombinedOutput()
		require.Error(t, err, name)
		assert.Contains(t, string(out), "already open in another Coursewright", name)
		assert.Contains(t, string(out), first.url, name)
	}
	status, _, err := first.get("/")
	require.NoError(t, err)
	assert.Equal(t, 200, status, "the first goes on")
	out, err := programOf("serve", "--listen", strings.TrimPrefix(first.url, "http://"), "--data", data+"2").CombinedOutput()
	require.Error(t, err)
	assert.Contains(t, string(out), "another program serves at", "another file, the same port")
	assert.Contains(t, string(out), "serve elsewhere with --listen 127.0.0.1:")
	assert.Contains(t, string(out), "address already in use")
}
