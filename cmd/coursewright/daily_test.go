package main

import (
	"bytes"
	"context"
	"errors"
	"log/slog"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/store"
)

func TestServeMakesTheBackupOfTheDay(t *testing.T) {
	data := filepath.Join(t.TempDir(), "jobs.db")
	opened(t, limits{}, "--listen", "127.0.0.1:0", "--data", data)
	made, err := filepath.Glob(data + "-backups/daily-*.db")
	require.NoError(t, err)
	require.Len(t, made, 1)
	again := filepath.Join(t.TempDir(), "again.db")
	code, out, errs := command(t, "", "restore", made[0], "--data", again)
	require.Zero(t, code, errs)
	assert.Contains(t, out, again)
	s, _, _ := opened(t, limits{}, "--listen", "127.0.0.1:0", "--data", again)
	assert.Contains(t, s.page(t, "/"), "Heron Street", "the backup holds the jobs")
}

func TestABackupThatFailsIsSaidAndStopsNothing(t *testing.T) {
	data := filepath.Join(t.TempDir(), "jobs.db")
	require.NoError(t, os.WriteFile(data+"-backups", []byte("a file where the folder should be"), 0o600))
	s, _, errs := opened(t, limits{}, "--listen", "127.0.0.1:0", "--data", data)
	assert.Contains(t, s.page(t, "/"), "Heron Street")
	s.end()
	assert.Zero(t, <-s.code)
	assert.Contains(t, errs.String(), "no backup was made today")
}

func TestBackupsGoOnAfterOneFailed(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	ticks, ended := make(chan time.Time), make(chan struct{})
	var made []time.Time
	var said bytes.Buffer
	backUp := func(_ context.Context, now time.Time) error {
		made = append(made, now)
		if len(made) == 1 {
			return errors.New("no room")
		}
		return nil
	}
	go func() {
		defer close(ended)
		keepUp(ctx, backUp, ticks, slog.New(slog.NewTextHandler(&said, nil)))
	}()
	day := time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
	ticks <- day
	ticks <- day.Add(time.Hour)
	cancel()
	<-ended
	assert.Equal(t, []time.Time{day, day.Add(time.Hour)}, made)
	assert.Contains(t, said.String(), "no room")
}

// What is older than a day is thinned out after the backup, which still holds all of it.
func TestServeThinsOutWhatIsOldAfterItsBackup(t *testing.T) {
	data := filepath.Join(t.TempDir(), "jobs.db")
	kept, err := store.Open(t.Context(), data)
	require.NoError(t, err)
	kept.Now = func() time.Time { return time.Date(2020, 3, 1, 8, 0, 0, 0, time.UTC) }
	job, err := kept.Create(t.Context(), "a", nil)
	for _, title := range []string{"b", "c", "d"} {
		require.NoError(t, err)
		job, err = kept.Save(t.Context(), job.ID, job.Revision, title, nil)
	}
	require.NoError(t, errors.Join(err, kept.Close()))
	s, _, _ := opened(t, limits{}, "--listen", "127.0.0.1:0", "--data", data)
	now := filepath.Join(t.TempDir(), "now.db")
	require.Eventually(t, func() bool { // it serves before it has done so
		defer os.Remove(now)
		require.NoError(t, store.BackupOf(t.Context(), data, now))
		return len(column(t, copied(t, now), `SELECT id FROM revision`)) == 2
	}, time.Minute, 20*time.Millisecond)
	s.end()
	require.Zero(t, <-s.code)
	made, err := filepath.Glob(data + "-backups/daily-*.db")
	require.NoError(t, err)
	require.Len(t, made, 1)
	for file, want := range map[string][]string{data: {"a", "d"}, made[0]: {"a", "b", "c", "d"}} {
		assert.Equal(t, want, column(t, copied(t, file), `SELECT title FROM revision ORDER BY id`))
	}
}
