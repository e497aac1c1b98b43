package store

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestAFullDiskCostsOnlyTheEditThatDidNotFit: SQLite's own page limit gives the same code as a
// full disk.
func TestAFullDiskCostsOnlyTheEditThatDidNotFit(t *testing.T) {
	s := fresh(t)
	job := created(t, s, "a")
	column(t, s, `PRAGMA max_page_count = 30`)

	big := strings.Repeat("x", 300_000)
	_, err := s.Save(t.Context(), job.ID, job.Revision, job.Title, []byte(big))
	require.ErrorIs(t, err, ErrFull)
	require.Equal(t, job, must(s.Load(t.Context(), job.ID)))
	job = saved(t, s, job, "a small edit still fits")

	column(t, s, `PRAGMA max_page_count = 100000`)
	saved(t, s, job, big)
	sound(t, s)
}

// TestAFileThatMayNotGrowRecoversByItself: the system refuses to let files of this process grow
// over a limit, which reaches SQLite as an I/O error or a full disk.
func TestAFileThatMayNotGrowRecoversByItself(t *testing.T) {
	s := fresh(t)
	job := created(t, s, "a")
	var old syscall.Rlimit
	require.NoError(t, syscall.Getrlimit(syscall.RLIMIT_FSIZE, &old))
	t.Cleanup(func() { syscall.Setrlimit(syscall.RLIMIT_FSIZE, &old) })

	require.NoError(t, syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: 200_000, Max: old.Max}))
	_, err := s.Save(t.Context(), job.ID, job.Revision, job.Title, make([]byte, 900_000))
	backup := s.Backup(t.Context(), filepath.Join(t.TempDir(), "fits.db"))
	require.NoError(t, syscall.Setrlimit(syscall.RLIMIT_FSIZE, &old))

	require.Error(t, err)
	require.True(t, isTrouble(err), err)
	require.NoError(t, backup)
	require.Equal(t, job, must(s.Load(t.Context(), job.ID)))
	saved(t, s, job, strings.Repeat("x", 900_000))
	sound(t, s)
}

func TestAFailedBackupLeavesNothingBehind(t *testing.T) {
	s := fresh(t)
	saved(t, s, created(t, s, "a"), strings.Repeat("x", 900_000))
	var old syscall.Rlimit
	require.NoError(t, syscall.Getrlimit(syscall.RLIMIT_FSIZE, &old))
	t.Cleanup(func() { syscall.Setrlimit(syscall.RLIMIT_FSIZE, &old) })
	folder := t.TempDir()

	require.NoError(t, syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: 200_000, Max: old.Max}))
	err := s.Backup(t.Context(), filepath.Join(folder, "big.db"))
	require.NoError(t, syscall.Setrlimit(syscall.RLIMIT_FSIZE, &old))

	require.True(t, isTrouble(err), err)
	require.Empty(t, must(os.ReadDir(folder)))
}

func isTrouble(err error) bool {
	return err != nil && (errors.Is(err, ErrFull) || errors.Is(err, ErrUnavailable))
}

func TestAnEditGivenUpIsNotSaved(t *testing.T) {
	s := fresh(t)
	job := created(t, s, "a")
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	_, err := s.Save(ctx, job.ID, job.Revision, job.Title, []byte("b"))
	require.ErrorIs(t, err, context.Canceled)
	require.Equal(t, job, must(s.Load(t.Context(), job.ID)))
}
