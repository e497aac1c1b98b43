package store

import (
	"errors"
	"io/fs"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"coursewright/migrations"
)

// ticked are the marks of a job's ticks.
func ticked(t *testing.T, s *Store, id int64) []string {
	t.Helper()
	list, err := s.Ticks(t.Context(), id)
	require.NoError(t, err)
	marks := []string{}
	for _, one := range list {
		marks = append(marks, one.Mark)
	}
	return marks
}

func TestTicksOutliveEditsUndoAndARestart(t *testing.T) {
	path := filepath.Join(t.TempDir(), "jobs.db")
	s := opened(t, path)
	job := created(t, s, "a")
	require.NoError(t, s.Tick(t.Context(), job.ID, Tick{Mark: "m1", Piece: "B-01-01", Revision: job.Revision}, Tick{Mark: "m2", Piece: "B-01-02", Revision: job.Revision}))
	next := saved(t, s, job, "b")
	require.NoError(t, s.Tick(t.Context(), job.ID, Tick{Mark: "m3", Piece: "B-01-01", Revision: next.Revision}))
	undone(t, s, next)
	require.Equal(t, []string{"m1", "m2", "m3"}, ticked(t, s, job.ID))
	require.NoError(t, s.Close())

	s = opened(t, path)
	require.Equal(t, []string{"m1", "m2", "m3"}, ticked(t, s, job.ID))
	require.NoError(t, s.Untick(t.Context(), job.ID, "m2", "never ticked"))
	require.Equal(t, []string{"m1", "m3"}, ticked(t, s, job.ID))
	sound(t, s)
}

func TestATickSentTwiceCountsOnceAndKeepsItsTime(t *testing.T) {
	s := fresh(t)
	job := created(t, s, "a")
	one := Tick{Mark: "m", Piece: "B-01-01", Revision: job.Revision}
	require.NoError(t, s.Tick(t.Context(), job.ID, one))
	before := must(s.Ticks(t.Context(), job.ID))
	require.NoError(t, s.Tick(t.Context(), job.ID, one))
	require.Equal(t, before, must(s.Ticks(t.Context(), job.ID)))
	require.Equal(t, job, must(s.Load(t.Context(), job.ID)), "a tick is no edit")
}

func TestTicksBelongToOneJob(t *testing.T) {
	s := fresh(t)
	a, b := created(t, s, "a"), created(t, s, "b")
	require.NoError(t, s.Tick(t.Context(), a.ID, Tick{Mark: "m", Piece: "B-01-01", Revision: a.Revision}))
	require.Empty(t, ticked(t, s, b.ID))
	require.NoError(t, s.Untick(t.Context(), b.ID, "m"))
	require.Len(t, ticked(t, s, a.ID), 1)
	require.Error(t, s.Tick(t.Context(), a.ID, Tick{Mark: "good", Piece: "B-01-01", Revision: a.Revision}, Tick{Mark: "n", Piece: "B-01-01", Revision: b.Revision}),
		"the revision of another job")
	require.Equal(t, []string{"m"}, ticked(t, s, a.ID), "all or none")
}

func TestAJobThatIsGoneHasNoTicks(t *testing.T) {
	s := fresh(t)
	job := created(t, s, "a")
	one := Tick{Mark: "m", Piece: "B-01-01", Revision: job.Revision}
	require.NoError(t, s.Tick(t.Context(), job.ID, one))
	require.NoError(t, s.Delete(t.Context(), job.ID))
	_, err := s.Ticks(t.Context(), job.ID)
	for _, err := range []error{err, s.Tick(t.Context(), job.ID, one), s.Untick(t.Context(), job.ID, "m")} {
		require.ErrorIs(t, err, ErrDeleted)
	}
	require.True(t, errors.Is(s.Tick(t.Context(), 99, one), fs.ErrNotExist))
	require.NoError(t, s.Restore(t.Context(), job.ID))
	require.Equal(t, []string{"m"}, ticked(t, s, job.ID), "a job that is brought back has its ticks")
}

func TestAFileFromBeforeTheTicksGainsThem(t *testing.T) {
	path := filepath.Join(t.TempDir(), "jobs.db")
	steps, err := migrations.Steps()
	require.NoError(t, err)
	old, err := open(t.Context(), path, steps[:1])
	require.NoError(t, err)
	filled(t, old)
	require.NoError(t, old.Close())

	s := opened(t, path)
	job := must(s.Load(t.Context(), 1))
	require.Empty(t, ticked(t, s, job.ID))
	require.NoError(t, s.Tick(t.Context(), job.ID, Tick{Mark: "m", Piece: "B-01-01", Revision: job.Revision}))
	require.Len(t, backups(backupFolder(path), "before-v2-*.db"), 1)
	require.Equal(t, job, must(s.Load(t.Context(), job.ID)))
}
