package store

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestBackupsOfADayAreKeptForAWeek(t *testing.T) {
	s := fresh(t)
	job := created(t, s, "a")
	day := time.Date(2026, 2, 25, 23, 30, 0, 0, time.UTC)
	for i := range 10 {
		now := day.AddDate(0, 0, i)
		require.NoError(t, s.DailyBackup(t.Context(), now))
		require.NoError(t, s.DailyBackup(t.Context(), now.Add(time.Minute)), "once a day is enough")
	}
	var names []string
	for _, path := range backups(backupFolder(s.path), "*") {
		names = append(names, filepath.Base(path))
	}
	require.Equal(t, []string{
		"daily-2026-02-28.db", "daily-2026-03-01.db", "daily-2026-03-02.db", "daily-2026-03-03.db",
		"daily-2026-03-04.db", "daily-2026-03-05.db", "daily-2026-03-06.db",
	}, names)
	last := opened(t, filepath.Join(backupFolder(s.path), "daily-2026-03-06.db"))
	require.Equal(t, job, must(last.Load(t.Context(), job.ID)))
}

func TestABackupNeverReplacesAFile(t *testing.T) {
	s := fresh(t)
	path := filepath.Join(t.TempDir(), "kept.db")
	require.NoError(t, os.WriteFile(path, []byte("kept"), 0o600))
	require.ErrorIs(t, s.Backup(t.Context(), path), fs.ErrExist)
	require.Equal(t, "kept", string(must(os.ReadFile(path))))
}

func TestADamagedFileNamesTheNewestBackupWhichIsPutBack(t *testing.T) {
	path := filepath.Join(t.TempDir(), "jobs.db")
	s := opened(t, path)
	job := created(t, s, "a")
	require.NoError(t, s.DailyBackup(t.Context(), time.Date(2026, 3, 1, 0, 0, 0, 0, time.UTC)))
	saved(t, s, job, "b")
	require.NoError(t, s.Close())
	require.NoError(t, os.Truncate(path, 5000))
	damaged := must(os.ReadFile(path))

	_, err := Open(t.Context(), path)
	var refused *Refused
	require.ErrorAs(t, err, &refused)
	require.Equal(t, filepath.Join(backupFolder(path), "daily-2026-03-01.db"), refused.Backup)
	require.Contains(t, err.Error(), refused.Backup)

	require.NoError(t, os.WriteFile(path+"-wal", []byte("an old log"), 0o600))
	aside, err := PutBack(refused.Backup, path, time.Date(2026, 3, 2, 9, 30, 0, 0, time.UTC))
	require.NoError(t, err)
	require.Equal(t, path+"-aside-20260302T093000", aside)
	require.Equal(t, damaged, must(os.ReadFile(filepath.Join(aside, "jobs.db"))))
	require.Equal(t, "an old log", string(must(os.ReadFile(filepath.Join(aside, "jobs.db-wal")))))
	require.NoFileExists(t, path+"-wal")
	back := opened(t, path)
	require.Equal(t, job, must(back.Load(t.Context(), job.ID)))
	sound(t, back)
	require.FileExists(t, refused.Backup, "a backup is copied, not moved")
}

// A device whose pass was taken back stays out when a backup from before that is put back.
func TestPassesAreNotPutBack(t *testing.T) {
	folder := t.TempDir()
	path, backup := filepath.Join(folder, "jobs.db"), filepath.Join(folder, "copy.db")
	s := opened(t, path)
	created(t, s, "a")
	pass, err := s.AddPass(t.Context(), "lost phone", [32]byte{1})
	require.NoError(t, err)
	require.NoError(t, s.Backup(t.Context(), backup))
	require.NoError(t, s.TakePass(t.Context(), pass.ID))
	require.NoError(t, s.Close())
	aside, err := PutBack(backup, path, time.Now())
	require.NoError(t, err)
	for _, file := range []string{path, filepath.Join(aside, "jobs.db")} {
		s = opened(t, file)
		passes, err := s.Passes(t.Context())
		require.NoError(t, err)
		require.Empty(t, passes)
		list, err := s.Jobs(t.Context())
		require.NoError(t, err)
		require.Len(t, list, 1)
		require.NoError(t, s.Close())
	}
}

func TestOnlyABackupOfOursIsPutBack(t *testing.T) {
	folder := t.TempDir()
	path, stranger := filepath.Join(folder, "jobs.db"), filepath.Join(folder, "stranger.db")
	s := opened(t, path)
	job := created(t, s, "a")
	require.NoError(t, s.Close())
	raw(`CREATE TABLE t (x)`)(t, stranger)
	_, err := PutBack(stranger, path, time.Now())
	require.ErrorIs(t, err, ErrForeign)
	_, err = PutBack(filepath.Join(folder, "missing.db"), path, time.Now())
	require.ErrorIs(t, err, fs.ErrNotExist)
	require.Equal(t, job, must(opened(t, path).Load(t.Context(), job.ID)))
}

func TestADamagedBackupIsNotPutBack(t *testing.T) {
	folder := t.TempDir()
	path, backup := filepath.Join(folder, "jobs.db"), filepath.Join(folder, "backup.db")
	s := opened(t, path)
	job := saved(t, s, created(t, s, "a"), strings.Repeat("x", 100_000))
	require.NoError(t, s.Backup(t.Context(), backup))
	require.NoError(t, s.Close())
	scribble(t, backup, 3)
	_, err := PutBack(backup, path, time.Now())
	var refused *Refused
	require.ErrorAs(t, err, &refused)
	require.ErrorIs(t, err, ErrDamaged)
	require.Equal(t, backup, refused.Path)
	require.NoFileExists(t, path+".part")
	require.Equal(t, job, must(opened(t, path).Load(t.Context(), job.ID)), "the data file stands as it was")
}

func TestABackupIsMadeBesideARunningProgram(t *testing.T) {
	folder := t.TempDir()
	s := opened(t, filepath.Join(folder, "jobs.db"))
	job := saved(t, s, created(t, s, "a"), "b")
	open, ended := filepath.Join(folder, "open.db"), filepath.Join(folder, "ended.db")
	require.NoError(t, BackupOf(t.Context(), s.path, open))
	job = saved(t, s, job, "c")
	require.NoError(t, s.Close())
	require.NoError(t, BackupOf(t.Context(), s.path, ended))
	require.NoFileExists(t, s.path+"-wal")
	require.NoFileExists(t, s.path+"-shm")
	require.Equal(t, []string{"a", "b"}, documents(t, opened(t, open), job.ID))
	require.Equal(t, []string{"a", "b", "c"}, documents(t, opened(t, ended), job.ID))

	require.ErrorIs(t, BackupOf(t.Context(), s.path, ended), fs.ErrExist)
	require.ErrorIs(t, BackupOf(t.Context(), filepath.Join(folder, "none.db"), filepath.Join(folder, "new.db")), fs.ErrNotExist)
	require.NoFileExists(t, filepath.Join(folder, "none.db"))
	stranger := filepath.Join(folder, "stranger.db")
	raw(`CREATE TABLE t (x)`)(t, stranger)
	require.ErrorIs(t, BackupOf(t.Context(), stranger, filepath.Join(folder, "new.db")), ErrForeign)
	scribble(t, s.path, 3)
	require.ErrorIs(t, BackupOf(t.Context(), s.path, filepath.Join(folder, "new.db")), ErrDamaged)
	require.NoFileExists(t, filepath.Join(folder, "new.db"))
}

// While a backup is put back another process looks whether the file is there, all the time.
func TestPuttingBackLeavesAFileAtEveryMoment(t *testing.T) {
	path, backup := filepath.Join(t.TempDir(), "jobs.db"), filepath.Join(t.TempDir(), "backup.db")
	s := opened(t, path)
	created(t, s, "a")
	require.NoError(t, s.Backup(t.Context(), backup))
	require.NoError(t, s.Close())
	done, gone := make(chan bool), make(chan int)
	go func() {
		n := 0
		for {
			select {
			case <-done:
				gone <- n
				return
			default:
				if _, err := os.Stat(path); err != nil {
					n++
				}
			}
		}
	}()
	for i := range 200 {
		_, err := PutBack(backup, path, time.Date(2026, 3, 1, 0, 0, i, 0, time.UTC))
		require.NoError(t, err)
	}
	close(done)
	require.Zero(t, <-gone)
	sound(t, opened(t, path))
}

func TestABackupForWhichThereIsNoRoomIsNotPutBack(t *testing.T) {
	folder := t.TempDir()
	path, backup := filepath.Join(folder, "jobs.db"), filepath.Join(folder, "backup.db")
	s := opened(t, path)
	created(t, s, "a")
	require.NoError(t, s.Backup(t.Context(), backup))
	require.NoError(t, s.Close())
	require.NoError(t, os.Truncate(backup, 1<<42)) // a file of holes, larger than any disk of a test
	_, err := PutBack(backup, path, time.Now())
	require.ErrorIs(t, err, ErrFull)
	require.ErrorContains(t, err, "takes 4194305 MB")
	require.NoFileExists(t, path+".part")
	require.Equal(t, "a", string(must(opened(t, path).Load(t.Context(), 1)).Document))
}

func TestTwoRestoresInOneSecondKeepBothFiles(t *testing.T) {
	path, backup := filepath.Join(t.TempDir(), "jobs.db"), filepath.Join(t.TempDir(), "backup.db")
	second := time.Date(2026, 3, 1, 0, 0, 0, 0, time.UTC)
	s := opened(t, path)
	created(t, s, "a")
	require.NoError(t, s.Backup(t.Context(), backup))
	saved(t, s, created(t, s, "b"), "c")
	require.NoError(t, s.Close())
	first, err := PutBack(backup, path, second)
	require.NoError(t, err)
	other, err := PutBack(backup, path, second)
	require.NoError(t, err)
	require.NotEqual(t, first, other)
	require.Equal(t, []string{"b", "c"}, documents(t, opened(t, filepath.Join(first, "jobs.db")), 2))
	require.Equal(t, []string{"a"}, documents(t, opened(t, filepath.Join(other, "jobs.db")), 1))
}

// After a crash the newest edits stand in the log alone. A person who put back a backup, and thinks
// better of it, puts back what was kept aside.
func TestWhatWasKeptAsideComesBackWithItsLog(t *testing.T) {
	folder := t.TempDir()
	path, backup := filepath.Join(folder, "jobs.db"), filepath.Join(folder, "backup.db")
	s := opened(t, path)
	created(t, s, "0")
	require.NoError(t, s.Backup(t.Context(), backup))
	require.NoError(t, s.Close())
	cut(t, path)
	edits := documents(t, opened(t, copyWith(t, path)), 1)
	require.Greater(t, len(edits), 1)

	aside, err := PutBack(backup, path, time.Now())
	require.NoError(t, err)
	again, err := PutBack(filepath.Join(aside, "jobs.db"), path, time.Now())
	require.NoError(t, err)
	require.NotEmpty(t, again)
	require.FileExists(t, filepath.Join(aside, "jobs.db-wal"), "it is left as it was")
	require.Equal(t, edits, documents(t, opened(t, path), 1))
}

// copyWith copies a file and its log elsewhere.
func copyWith(t *testing.T, path string) string {
	t.Helper()
	to := filepath.Join(t.TempDir(), "copy.db")
	require.NoError(t, copyFile(path, to))
	require.NoError(t, copyFile(path+"-wal", to+"-wal"))
	return to
}

// From a disk that is read-only, as one that the system trusts no more, a crash's file is backed up with its log.
func TestABackupIsMadeFromADiskThatIsReadOnly(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "data")
	path, to := filepath.Join(folder, "jobs.db"), filepath.Join(t.TempDir(), "backup.db")
	s := opened(t, path)
	created(t, s, "0")
	require.NoError(t, s.Close())
	cut(t, path)
	require.False(t, readOnly(folder))
	require.NoError(t, os.Chmod(folder, 0o500))
	t.Cleanup(func() { os.Chmod(folder, 0o700) })
	make := BackupOf
	if os.Getuid() == 0 { // whom nothing is read-only for
		make = backUpCopy
	} else {
		require.True(t, readOnly(folder))
	}
	require.NoError(t, make(t.Context(), path, to))
	left, err := os.ReadDir(filepath.Dir(to))
	require.NoError(t, err)
	require.Len(t, left, 1)
	edits := documents(t, opened(t, to), 1)
	require.Greater(t, len(edits), 1)
	require.NoError(t, os.Chmod(folder, 0o700))
	require.Equal(t, edits, documents(t, opened(t, path), 1))
}
