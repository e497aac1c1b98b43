package store

import (
	"database/sql"
	"fmt"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"coursewright/migrations"
)

// released is a data file as the program left it that knew the first so many steps. Before a new
// step is added, one is laid down for the last: copy a data file with a few jobs, branches and a
// deleted job that the program as it is has closed.
func released(version int) string {
	return filepath.Join("testdata", "released", fmt.Sprintf("%d.sqlite", version))
}

func TestEveryReleasedFileStillOpens(t *testing.T) {
	for version := 1; version < len(must(migrations.Steps())); version++ {
		t.Run(fmt.Sprint(version), func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "jobs.db")
			require.NoError(t, copyFile(released(version), path), "a released version has no file here")
			stillOpens(t, path, version)
		})
	}
}

// TestEveryReleasedSchemaStillOpens makes the files by the first steps, with what this test puts in.
func TestEveryReleasedSchemaStillOpens(t *testing.T) {
	steps := must(migrations.Steps())
	for version := 1; version <= len(steps); version++ {
		t.Run(fmt.Sprint(version), func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "jobs.db")
			old, err := open(t.Context(), path, steps[:version])
			require.NoError(t, err)
			filled(t, old)
			require.NoError(t, old.Close())
			stillOpens(t, path, version)
		})
	}
}

// filled puts a job with a branch and a deleted one into a file of any version, in the words of the first schema.
func filled(t *testing.T, s *Store) {
	t.Helper()
	_, err := s.db.ExecContext(t.Context(), `BEGIN;
		INSERT INTO job (id, cursor, created, saved, deleted) VALUES (1, 3, 1000, 4000, NULL), (2, 4, 5000, 5000, 6000);
		INSERT INTO revision (id, job, parent, title, document, saved) VALUES
			(1, 1, NULL, 'Attic bath', X'61', 1000), (2, 1, 1, 'Attic bath', X'62', 2000), (3, 1, 1, 'Attic bath', X'63', 4000), (4, 2, NULL, 'Attic bath', X'78', 5000);
		COMMIT`)
	require.NoError(t, err)
}

// stillOpens opens a file of an older version and holds that all its jobs and revisions are in it
// as they were, that they can be worked with, and that the older file is kept as a backup.
func stillOpens(t *testing.T, path string, version int) {
	t.Helper()
	before := contents(t, path)
	require.NotEmpty(t, before)
	require.Contains(t, before[0], fmt.Sprint("version ", version))

	s := opened(t, path)
	sound(t, s)
	for _, job := range must(s.Jobs(t.Context())) {
		now := must(s.Load(t.Context(), job.ID))
		saved(t, s, now, "edited")
	}
	gone := must(s.Deleted(t.Context()))
	require.NotEmpty(t, gone)
	for _, job := range gone {
		require.NoError(t, s.Restore(t.Context(), job.ID))
	}
	require.NoError(t, s.Close())
	require.Subset(t, contents(t, path)[1:], before[1:])

	made := backups(backupFolder(path), "before-v*.db")
	require.Len(t, made, len(must(migrations.Steps()))-version)
	if len(made) > 0 {
		require.Equal(t, before, contents(t, made[0]))
	}
}

// contents writes out the version and every revision of a file, read without the store.
func contents(t *testing.T, path string) []string {
	t.Helper()
	db, err := connect(path, "rw")
	require.NoError(t, err)
	defer db.Close()
	var version int
	require.NoError(t, db.QueryRow(`PRAGMA user_version`).Scan(&version))
	out := []string{fmt.Sprint("version ", version)}
	rows, err := db.Query(`SELECT job, id, parent, title, document, saved FROM revision ORDER BY id`)
	require.NoError(t, err)
	defer rows.Close()
	for rows.Next() {
		var job, id, at int64
		var parent sql.NullInt64
		var title, document string
		require.NoError(t, rows.Scan(&job, &id, &parent, &title, &document, &at))
		out = append(out, fmt.Sprint(job, id, parent, title, document, at))
	}
	require.NoError(t, rows.Err())
	return out
}

func TestAMigrationCutShortIsTakenUpInTheSameSecond(t *testing.T) {
	s := fresh(t)
	at := ticking()()
	s.Now = func() time.Time { return at }
	step := migrations.Step{Version: 9}
	require.NoError(t, s.backUpBefore(t.Context(), step))
	require.NoError(t, s.backUpBefore(t.Context(), step), "the backup is there already")
}
