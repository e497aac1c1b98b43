package store

import (
	"context"
	"errors"
	"os"
	"os/exec"
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

// Under a limit on how far files of this process may grow, SQLite meets an I/O error or a full disk. The limit
// holds for every file of the process, the log of the test itself too, so these tests run in one of their own.
func TestAFileThatMayNotGrowRecoversByItself(t *testing.T) {
	if !alone(t) {
		return
	}
	s := fresh(t)
	job := created(t, s, "a")
	var backup error
	err := whileFilesMayNotGrow(t, 200_000, func() error {
		_, err := s.Save(t.Context(), job.ID, job.Revision, job.Title, make([]byte, 900_000))
		backup = s.Backup(t.Context(), filepath.Join(t.TempDir(), "fits.db"))
		return err
	})

	require.Error(t, err)
	require.True(t, isTrouble(err), err)
	require.NoError(t, backup)
	require.Equal(t, job, must(s.Load(t.Context(), job.ID)))
	saved(t, s, job, strings.Repeat("x", 900_000))
	sound(t, s)
}

func TestAFailedBackupLeavesNothingBehind(t *testing.T) {
	if !alone(t) {
		return
	}
	s := fresh(t)
	saved(t, s, created(t, s, "a"), strings.Repeat("x", 900_000))
	folder := t.TempDir()

	err := whileFilesMayNotGrow(t, 200_000, func() error {
		return s.Backup(t.Context(), filepath.Join(folder, "big.db"))
	})

	require.True(t, isTrouble(err), err)
	require.Empty(t, must(os.ReadDir(folder)))
}

// inner says to a test that it runs in a process of its own.
const inner = "COURSEWRIGHT_TEST_ALONE"

// alone tells whether a test runs in a process of its own; where it does not, alone runs it in one.
func alone(t *testing.T) bool {
	if os.Getenv(inner) != "" {
		return true
	}
	c := exec.CommandContext(t.Context(), must(os.Executable()), "-test.run=^"+t.Name()+"$", "-test.v")
	c.Env = append(os.Environ(), inner+"=1")
	out, err := c.CombinedOutput()
	require.NoError(t, err, "%s", out)
	require.Contains(t, string(out), "--- PASS: "+t.Name())
	return false
}

// whileFilesMayNotGrow does something while no file of this process may grow over a size in bytes.
func whileFilesMayNotGrow(t *testing.T, size uint64, do func() error) error {
	var old syscall.Rlimit
	require.NoError(t, syscall.Getrlimit(syscall.RLIMIT_FSIZE, &old))
	require.NoError(t, syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: size, Max: old.Max}))
	defer syscall.Setrlimit(syscall.RLIMIT_FSIZE, &old)
	return do()
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
