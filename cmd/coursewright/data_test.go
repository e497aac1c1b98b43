package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTheJobsAreKeptInTheFolderForDataAndFoundWhereTheyWere(t *testing.T) {
	home := t.TempDir()
	t.Setenv("HOME", home)
	t.Setenv("XDG_DATA_HOME", "")
	t.Setenv("XDG_CONFIG_HOME", "")
	usual, former := filepath.Join(home, ".local", "share", "coursewright", "jobs.db"), filepath.Join(home, ".config", "coursewright", "jobs.db")
	is := func(want, why string) {
		t.Helper()
		path, err := dataFile()
		require.NoError(t, err)
		assert.Equal(t, want, path, why)
	}
	is(usual, "a new one")
	assert.NoDirExists(t, filepath.Join(home, ".local"), "asking makes nothing")
	put(t, former)
	is(former, "an old one is still found")
	put(t, usual)
	is(usual, "once there is a new one it counts")
	t.Setenv("XDG_DATA_HOME", filepath.Join(home, "data"))
	is(former, "moved elsewhere")
	t.Setenv("XDG_DATA_HOME", "relative")
	is(usual, "what is not absolute is none")
	t.Setenv("HOME", "")
	_, err := dataFile()
	assert.ErrorContains(t, err, "--data")
	path, err := orUsual("mine.db")
	require.NoError(t, err)
	assert.Equal(t, "mine.db", path)
}

func put(t *testing.T, path string) {
	t.Helper()
	require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o700))
	require.NoError(t, os.WriteFile(path, nil, 0o600))
}

func TestServeSaysWhereTheJobsAreKept(t *testing.T) {
	data := filepath.Join(t.TempDir(), "jobs.db")
	_, out, _ := opened(t, limits{}, "--listen", "127.0.0.1:0", "--data", data)
	assert.Contains(t, out.String(), "The jobs are kept in "+data+"\n")
}

func TestABackupIsMadeWhileTheProgramServes(t *testing.T) {
	folder := t.TempDir()
	data, copied := filepath.Join(folder, "jobs.db"), filepath.Join(folder, "copy.db")
	p := started(t, data)
	_, page, err := p.get("/jobs/1")
	require.NoError(t, err)
	status, _, err := p.edit(1, revisionOf(page), "title", "just now")
	require.NoError(t, err)
	require.Equal(t, 200, status)
	code, out, errs := command(t, "", "backup", copied, "--data", data)
	require.Zero(t, code, errs)
	assert.Contains(t, out, copied)
	again := serve(t, copied)
	assert.Contains(t, again.page(t, "/"), "just now")

	for says, args := range map[string][]string{
		"is there already": {"backup", copied, "--data", data},
		"no such file":     {"backup", copied + "2", "--data", data + "2"},
		"name of one new":  {"backup"},
		"not a data file":  {"backup", copied + "2", "--data", toy},
		"no option --fast": {"backup", copied, "--fast"},
	} {
		code, _, errs := command(t, "", args...)
		assert.NotZero(t, code, says)
		assert.Contains(t, errs, says)
	}

	t.Chdir(folder) // as people type it: by a name in the folder they stand in
	code, _, errs = command(t, "", "backup", "here.db", "--data", "jobs.db")
	require.Zero(t, code, errs)
	code, _, errs = command(t, "", "backup", "deep/er.db", "--data", "jobs.db")
	require.Zero(t, code, errs)
	code, _, errs = command(t, "", "restore", "deep/er.db", "--data", "other.db")
	require.Zero(t, code, errs)
}
