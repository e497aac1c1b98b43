package store

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sh runs a line of shell in a folder.
func sh(t *testing.T, folder, line string) {
	t.Helper()
	c := exec.Command("sh", "-e", "-c", line)
	c.Dir = folder
	out, err := c.CombinedOutput()
	require.NoError(t, err, string(out))
}

// other makes a data file of ours with other jobs in it.
func other(t *testing.T, path string) {
	t.Helper()
	s := opened(t, path)
	created(t, s, "another file")
	require.NoError(t, s.Close())
}

func TestWhatIsTakenAwayWhileItIsOpenIsRescuedAndNeverCalledSaved(t *testing.T) {
	for name, line := range map[string]string{
		"the file is removed":                    `rm jobs.db`,
		"the file is moved away":                 `mv jobs.db elsewhere.db`,
		"file and log are moved away":            `mkdir away; mv jobs.db jobs.db-wal away/`,
		"another file is put in its place":       `mv other.db jobs.db`,
		"a copy of itself is put in its place":   `cp jobs.db new.db; mv new.db jobs.db`,
		"a link to another is put in its place":  `ln -sf other.db jobs.db`,
		"a hard link is put in its place":        `ln -f other.db jobs.db`,
		"the log is removed":                     `rm jobs.db-wal`,
		"the log is moved away":                  `mv jobs.db-wal elsewhere`,
		"another log is put in its place":        `cp jobs.db-wal new; mv new jobs.db-wal`,
		"all is removed":                         `rm jobs.db*`,
		"the folder is removed":                  `rm -r ../data`,
		"the folder is moved":                    `mv ../data ../moved`,
		"another folder is put in its place":     `mv ../data ../moved; mkdir ../data; cp ../moved/other.db ../data/jobs.db`,
		"a file is moved away and one made anew": `mv jobs.db elsewhere.db; touch jobs.db`,
	} {
		t.Run(name, func(t *testing.T) {
			folder := filepath.Join(t.TempDir(), "data")
			other(t, filepath.Join(folder, "other.db"))
			s := opened(t, filepath.Join(folder, "jobs.db"))
			job := saved(t, s, created(t, s, "a"), "b")
			sh(t, folder, line)

			_, err := s.Save(t.Context(), job.ID, job.Revision, job.Title, []byte("never saved"))
			var astray *Astray
			require.ErrorAs(t, err, &astray)
			require.ErrorIs(t, err, ErrUnavailable)
			require.Contains(t, err.Error(), astray.Rescue)
			require.Equal(t, job, must(s.Load(t.Context(), job.ID)), "what is open can still be read")
			for _, write := range []error{
				s.Delete(t.Context(), job.ID), s.Tick(t.Context(), job.ID, Tick{Mark: "m", Revision: job.Revision}),
				second(s.Create(t.Context(), "c", nil)), second(s.Undo(t.Context(), job.ID, job.Revision)),
			} {
				var again *Astray
				require.ErrorAs(t, write, &again)
				require.Equal(t, astray.Rescue, again.Rescue, "one copy is enough while nothing changes")
			}
			require.ErrorAs(t, s.Close(), &astray, "the end says it too")

			found := opened(t, astray.Rescue)
			sound(t, found)
			require.Equal(t, job, must(found.Load(t.Context(), job.ID)))
			require.Equal(t, []string{"a", "b"}, documents(t, found, job.ID))
		})
	}
}

func second[T any](_ T, err error) error { return err }

// The edit was written before the file went, and its answer had not been given.
func TestAnEditWhoseFileGoesMeanwhileIsInTheRescueCopy(t *testing.T) {
	folder := t.TempDir()
	s := opened(t, filepath.Join(folder, "jobs.db"))
	job := created(t, s, "a")
	now := s.Now
	s.Now = func() time.Time { os.Remove(s.path); return now() } // asked for while the edit is written
	_, err := s.Save(t.Context(), job.ID, job.Revision, job.Title, []byte("b"))
	var astray *Astray
	require.ErrorAs(t, err, &astray)
	require.Error(t, s.Close())
	require.Equal(t, []string{"a", "b"}, documents(t, opened(t, astray.Rescue), job.ID))
}

func TestWhatComesBackIsSavedInAgain(t *testing.T) {
	folder := t.TempDir()
	s := opened(t, filepath.Join(folder, "jobs.db"))
	job := created(t, s, "a")
	sh(t, folder, `mv jobs.db away.db`)
	_, err := s.Save(t.Context(), job.ID, job.Revision, job.Title, []byte("b"))
	var first *Astray
	require.ErrorAs(t, err, &first)
	sh(t, folder, `mv away.db jobs.db`)
	job = saved(t, s, job, "c")
	sh(t, folder, `mv jobs.db away.db`)
	_, err = s.Save(t.Context(), job.ID, job.Revision, job.Title, []byte("d"))
	var next *Astray
	require.ErrorAs(t, err, &next)
	require.NotEqual(t, first.Rescue, next.Rescue, "the first copy does not hold the edit between")
	sh(t, folder, `mv away.db jobs.db`)
	require.NoError(t, s.Close())
	require.Equal(t, []string{"a", "c"}, documents(t, opened(t, next.Rescue), job.ID))
	require.Equal(t, []string{"a", "c"}, documents(t, opened(t, s.path), job.ID))
}

func TestARescueFindsAnotherFolderWhereItsOwnIsShut(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "data")
	t.Setenv("TMPDIR", t.TempDir())
	s := opened(t, filepath.Join(folder, "jobs.db"))
	job := created(t, s, "a")
	sh(t, folder, `rm -r ../data; touch ../data`)
	_, err := s.Save(t.Context(), job.ID, job.Revision, job.Title, []byte("b"))
	var astray *Astray
	require.ErrorAs(t, err, &astray)
	require.Equal(t, os.TempDir(), filepath.Dir(astray.Rescue))
	require.Error(t, s.Close())
	require.Equal(t, job, must(opened(t, astray.Rescue).Load(t.Context(), job.ID)))
}

// A person who leaves the page ends the request; the log must stay the one that is held.
func TestAnEditThatNobodyWaitsForDoesNotLoseTheLog(t *testing.T) {
	s := fresh(t)
	job := created(t, s, "a")
	ctx, leave := context.WithCancel(t.Context())
	now := s.Now
	s.Now = func() time.Time { leave(); return now() }
	_, err := s.Save(ctx, job.ID, job.Revision, job.Title, []byte(strings.Repeat("b", 900_000)))
	require.NoError(t, err, "what has begun is done")
	s.Now = now
	_, err = s.Save(ctx, job.ID, job.Revision, job.Title, []byte("c"))
	require.ErrorIs(t, err, context.Canceled, "what has not begun is not")
	require.NoError(t, s.Close())
}

func TestAFileIsLockedByAllItsNames(t *testing.T) {
	for name, line := range map[string]string{
		"a symbolic link":            `ln -s data/jobs.db jobs.db`,
		"a link to a link":           `ln -s data/jobs.db between; ln -s between jobs.db`,
		"a link to the folder":       `ln -s data linked; ln -s linked/jobs.db jobs.db`,
		"a hard link":                `ln data/jobs.db jobs.db`,
		"a path that goes round":     `ln -s ../$(basename $PWD)/data/../data/jobs.db jobs.db`,
		"a link to where it will be": `ln -s data/jobs.db jobs.db`,
	} {
		t.Run(name, func(t *testing.T) {
			if strings.Contains(name, "hard") && runtime.GOOS != "linux" {
				t.Skip("only Linux keeps such a lock apart from SQLite's own")
			}
			folder := t.TempDir()
			if strings.Contains(name, "will be") {
				sh(t, folder, `mkdir data; `+line)
			}
			first := opened(t, filepath.Join(folder, "data", "jobs.db"), Address("http://127.0.0.1:7310/"))
			created(t, first, "a")
			if !strings.Contains(name, "will be") {
				sh(t, folder, line)
			}
			linked := filepath.Join(folder, "jobs.db")
			_, err := Open(t.Context(), linked)
			var used *InUse
			require.ErrorAs(t, err, &used)
			if !strings.Contains(name, "hard") {
				require.Equal(t, "http://127.0.0.1:7310/", used.Address)
				require.Equal(t, used, Holder(linked))
			}
			_, err = PutBack(first.path, linked, time.Now())
			require.ErrorAs(t, err, &used)
			require.NoError(t, first.Close())
			again := opened(t, linked)
			require.Equal(t, []string{"a"}, documents(t, again, 1))
			require.NoError(t, again.Close())
		})
	}
}

func TestLinksThatLeadRoundAreRefused(t *testing.T) {
	folder := t.TempDir()
	sh(t, folder, `ln -s b a; ln -s a b`)
	_, err := Open(t.Context(), filepath.Join(folder, "a"))
	require.ErrorIs(t, err, ErrUnavailable)
}

// cut leaves file and log as a process that is killed leaves them.
func cut(t *testing.T, path string) {
	t.Helper()
	editAndKill(t, path, 0)
	require.True(t, hasLog(path))
}

func TestALogThatIsAnothersIsSaidAndLeft(t *testing.T) {
	for name, c := range map[string]struct {
		line  string
		stray bool
	}{
		"nothing was touched":                {`true`, false},
		"the file was replaced by another":   {`mv other.db jobs.db`, true},
		"the file was replaced by its copy":  {`cp jobs.db new.db; mv new.db jobs.db`, true},
		"the log was replaced":               {`cp jobs.db-wal new; mv new jobs.db-wal`, true},
		"both were moved and moved back":     {`mkdir old; mv jobs.db jobs.db-wal old; mv old/* .`, false},
		"both were copied to where they are": {`mkdir old; mv jobs.db jobs.db-wal old; cp old/* .`, false},
		"the log was removed":                {`rm jobs.db-wal`, false},
		"an older file, with another's log":  {`rm jobs.db-wal jobs.db.lock; mv other.db jobs.db; mv scrap jobs.db-wal`, false}, // SQLite takes a log of nonsense as none
	} {
		t.Run(name, func(t *testing.T) {
			folder := filepath.Join(t.TempDir(), "data")
			path := filepath.Join(folder, "jobs.db")
			other(t, filepath.Join(folder, "other.db"))
			require.NoError(t, os.WriteFile(filepath.Join(folder, "scrap"), []byte(strings.Repeat("scrap", 1000)), 0o600))
			s := opened(t, path)
			created(t, s, "1")
			require.NoError(t, s.Close())
			cut(t, path)
			sh(t, folder, c.line)
			if !c.stray {
				sound(t, opened(t, path))
				return
			}
			for range 2 { // the second try is answered as the first
				refusedUntouched(t, path, ErrStrayLog)
			}
			sh(t, folder, `mv jobs.db-wal aside`)
			sound(t, opened(t, path))
		})
	}
}

// The two were put together while no process had noted them, and make no sound file.
func TestALogThatMakesASoundFileDamagedIsSaid(t *testing.T) {
	folder := t.TempDir()
	path, from := filepath.Join(folder, "jobs.db"), filepath.Join(folder, "from.db")
	ours(`SELECT 1`)(t, path)
	s := opened(t, from)
	job := created(t, s, "a")
	for i := range 300 { // enough that the pages of its log point at pages the other file does not have
		job = saved(t, s, job, strings.Repeat(fmt.Sprint(i), 300))
	}
	require.NoError(t, s.Close())
	s = opened(t, from)
	saved(t, s, job, "the last edit")
	require.NoError(t, copyFile(from+"-wal", path+"-wal"))
	require.NoError(t, s.Close())
	require.NoError(t, os.Remove(from))
	_, err := look(t.Context(), path, "ro")
	require.ErrorIs(t, err, ErrDamaged)
	refusedUntouched(t, path, ErrStrayLog)
	require.NoError(t, os.Remove(path+"-wal"))
	assert.NotEmpty(t, documents(t, opened(t, path), 1))
}
