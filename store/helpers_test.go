package store

import (
	"context"
	"database/sql"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestMain(m *testing.M) {
	if path := os.Getenv("STORE_TEST_EDIT"); path != "" {
		editUntilKilled(path)
	}
	os.Exit(m.Run())
}

// opened is a store on a real file that ends with the test. Its clock starts at a fixed time and
// gains a second with every look.
func opened(t *testing.T, path string, options ...Option) *Store {
	t.Helper()
	s, err := Open(t.Context(), path, options...)
	require.NoError(t, err)
	t.Cleanup(func() { s.Close() })
	s.Now = ticking()
	return s
}

func fresh(t *testing.T) *Store {
	t.Helper()
	return opened(t, filepath.Join(t.TempDir(), "jobs.db"))
}

func ticking() func() time.Time {
	ticks := make(chan time.Time, 1)
	ticks <- time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
	return func() time.Time {
		now := <-ticks
		ticks <- now.Add(time.Second)
		return now
	}
}

func created(t *testing.T, s *Store, document string) Job {
	t.Helper()
	job, err := s.Create(t.Context(), "Attic bath", []byte(document))
	require.NoError(t, err)
	return job
}

func saved(t *testing.T, s *Store, on Job, document string) Job {
	t.Helper()
	job, err := s.Save(t.Context(), on.ID, on.Revision, on.Title, []byte(document))
	require.NoError(t, err)
	require.Equal(t, document, string(job.Document))
	return job
}

func undone(t *testing.T, s *Store, on Job) Job {
	t.Helper()
	job, err := s.Undo(t.Context(), on.ID, on.Revision)
	require.NoError(t, err)
	return job
}

func redone(t *testing.T, s *Store, on Job) Job {
	t.Helper()
	job, err := s.Redo(t.Context(), on.ID, on.Revision)
	require.NoError(t, err)
	return job
}

// sound asks SQLite whether every page, index and reference of the file is right.
func sound(t *testing.T, s *Store) {
	t.Helper()
	require.Equal(t, []string{"ok"}, column(t, s, `PRAGMA integrity_check`))
	require.Empty(t, column(t, s, `SELECT "table" FROM pragma_foreign_key_check`))
}

// column is the first column of a query.
func column(t *testing.T, s *Store, query string, args ...any) []string {
	t.Helper()
	var list []string
	err := s.read(context.Background(), func(ctx context.Context, tx *sql.Tx) (err error) {
		scan := func(rows *sql.Rows) (string, error) {
			var v string
			err := rows.Scan(&v)
			return v, err
		}
		list, err = collect(ctx, tx, scan, query, args...)
		return err
	})
	require.NoError(t, err)
	return list
}

// documents are all documents of a job ever saved, the oldest first.
func documents(t *testing.T, s *Store, id int64) []string {
	t.Helper()
	return column(t, s, `SELECT CAST(document AS TEXT) FROM revision WHERE job = ? ORDER BY id`, id)
}
