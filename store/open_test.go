package store

import (
	"crypto/sha256"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"coursewright/migrations"
)

var update = flag.Bool("update", false, "rewrite the files under testdata")

// golden holds a text against a file under testdata.
func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, string(want), got)
}

func TestTheMigrationsGiveTheSchemaOfTheSnapshot(t *testing.T) {
	s := fresh(t)
	statements := column(t, s, `SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite_%' ORDER BY name`)
	golden(t, "schema.sql", strings.Join(statements, ";\n\n")+";\n")
}

func TestReleasedMigrationsAreNeverEdited(t *testing.T) {
	steps, err := migrations.Steps()
	require.NoError(t, err)
	var sums strings.Builder
	for _, step := range steps {
		fmt.Fprintf(&sums, "%x  %s\n", sha256.Sum256([]byte(step.SQL)), step.Name)
	}
	golden(t, "migrations.sha256", sums.String())
}

func TestEveryConnectionIsSetForDurability(t *testing.T) {
	s := fresh(t)
	for pragma, want := range map[string]string{
		"journal_mode": "wal", "synchronous": "2", "foreign_keys": "1", "busy_timeout": "5000",
		"application_id": fmt.Sprint(applicationID), "user_version": fmt.Sprint(len(must(migrations.Steps()))),
	} {
		require.Equal(t, []string{want}, column(t, s, "PRAGMA "+pragma), pragma)
	}
	_, err := s.db.ExecContext(t.Context(), `SELECT "no such column"`)
	require.Error(t, err, "text in double quotes is a name")
}

func TestAnyFileNameWillDo(t *testing.T) {
	for _, name := range []string{"a b.db", "50%20off?mode=ro#1.db", "Bäder & Küchen.db", "new folder/jobs.db"} {
		path := filepath.Join(t.TempDir(), name)
		s := opened(t, path)
		created(t, s, "a")
		require.NoError(t, s.Close())
		info, err := os.Stat(path)
		require.NoError(t, err)
		require.NotZero(t, info.Size())
		require.Equal(t, fs.FileMode(0o600), info.Mode().Perm())
	}
}

func TestAFileThatIsNotOursIsRefusedAndLeftAsItWas(t *testing.T) {
	for name, c := range map[string]struct {
		make func(*testing.T, string)
		want error
	}{
		"text":                        {text("dear diary, a text long enough to be longer than the header of a database file, which is 100"), ErrForeign},
		"a short text":                {text("x"), ErrForeign},
		"SQLite of another program":   {raw(`CREATE TABLE t (x)`), ErrForeign},
		"the same with a log":         {raw(`PRAGMA journal_mode = WAL; CREATE TABLE t (x)`), ErrForeign},
		"the same with a mark":        {raw(`PRAGMA application_id = 7; CREATE TABLE t (x)`), ErrForeign},
		"written by a newer version":  {ours(fmt.Sprintf(`PRAGMA user_version = %d`, len(must(migrations.Steps()))+1)), ErrNewer},
		"a far newer version":         {ours(`PRAGMA user_version = 2000000000`), ErrNewer},
		"a version below none":        {ours(`PRAGMA user_version = -1`), ErrNewer},
		"ours, cut short":             {cutShort, ErrDamaged},
		"ours, with a scribbled page": {scribbled, ErrDamaged},
	} {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "jobs.db")
			c.make(t, path)
			before, err := os.ReadFile(path)
			require.NoError(t, err)

			_, err = Open(t.Context(), path)
			require.ErrorIs(t, err, c.want)
			var refused *Refused
			require.ErrorAs(t, err, &refused)
			require.Equal(t, path, refused.Path)

			after, err := os.ReadFile(path)
			require.NoError(t, err)
			require.Equal(t, before, after)
			files, err := os.ReadDir(filepath.Dir(path))
			require.NoError(t, err)
			left := slices.DeleteFunc(files, func(f os.DirEntry) bool { return f.Name() == "jobs.db.lock" })
			require.Len(t, left, 1, "nothing was left beside it")
		})
	}
}

func TestANewerVersionStillInTheLogIsRefused(t *testing.T) {
	path := filepath.Join(t.TempDir(), "jobs.db")
	s := opened(t, path)
	newest := len(must(migrations.Steps()))
	_, err := s.db.ExecContext(t.Context(), fmt.Sprintf(`PRAGMA user_version = %d`, newest+1))
	require.NoError(t, err)
	copied := filepath.Join(t.TempDir(), "jobs.db")
	require.NoError(t, errors.Join(copyFile(path, copied), copyFile(path+"-wal", copied+"-wal")))
	require.NoError(t, inspect(copied, newest), "the header alone does not tell")
	refusedUntouched(t, copied, ErrNewer)
}

func TestADamagedFileIsRefusedWithoutMovingItsLog(t *testing.T) {
	path := filepath.Join(t.TempDir(), "jobs.db")
	ours(`SELECT 1`)(t, path)
	s := opened(t, path)
	created(t, s, "b") // stands in the log, away from the damaged page of old revisions
	copied := filepath.Join(t.TempDir(), "jobs.db")
	require.NoError(t, errors.Join(copyFile(path, copied), copyFile(path+"-wal", copied+"-wal")))
	scribble(t, copied, 12)
	refusedUntouched(t, copied, ErrDamaged)
}

// refusedUntouched holds that neither the file nor its log change when it is refused.
func refusedUntouched(t *testing.T, path string, reason error) {
	t.Helper()
	file, log := must(os.ReadFile(path)), must(os.ReadFile(path+"-wal"))
	_, err := Open(t.Context(), path)
	require.ErrorIs(t, err, reason)
	require.Equal(t, file, must(os.ReadFile(path)))
	require.Equal(t, log, must(os.ReadFile(path+"-wal")))
}

func TestAFailedMigrationLeavesTheFileAtItsVersion(t *testing.T) {
	path := filepath.Join(t.TempDir(), "jobs.db")
	s := opened(t, path)
	job := created(t, s, "a")
	require.NoError(t, s.Close())
	steps := oneMore(t, "halfway.sql", `CREATE TABLE fine (x) STRICT; CREATE TABLE job (x) STRICT;`)

	_, err := open(t.Context(), path, steps)
	require.ErrorContains(t, err, "halfway.sql")

	s = opened(t, path)
	require.Equal(t, job, must(s.Load(t.Context(), job.ID)))
	require.Empty(t, column(t, s, `SELECT name FROM sqlite_schema WHERE name = 'fine'`))
}

func TestAMigrationIsBackedUpFirst(t *testing.T) {
	path := filepath.Join(t.TempDir(), "jobs.db")
	s := opened(t, path)
	job := created(t, s, "a")
	require.NoError(t, s.Close())
	steps := oneMore(t, "notes.sql", `CREATE TABLE note (x TEXT) STRICT;`)

	require.Empty(t, backups(backupFolder(path), "*"), "a new file has nothing to back up")
	newer, err := open(t.Context(), path, steps)
	require.NoError(t, err)
	require.Equal(t, job, must(newer.Load(t.Context(), job.ID)))
	require.NoError(t, newer.Close())
	_, err = Open(t.Context(), path)
	require.ErrorIs(t, err, ErrNewer)

	made := backups(backupFolder(path), fmt.Sprintf("before-v%d-*.db", len(steps)))
	require.Len(t, made, 1)
	require.Equal(t, job, must(opened(t, made[0]).Load(t.Context(), job.ID)), "this version still reads the backup")
}

// oneMore are the steps of this version and one that only a newer one has.
func oneMore(t *testing.T, name, query string) []migrations.Step {
	t.Helper()
	steps, err := migrations.Steps()
	require.NoError(t, err)
	return append(steps, migrations.Step{Version: len(steps) + 1, Name: name, SQL: query})
}

func TestUnsoundEnginesAreRefused(t *testing.T) {
	for version, sound := range map[string]bool{
		"3.51.2": false, "3.51.3": true, "3.52.0": false, "3.52.1": true, "3.53.0": true, "3.7.17": false, "4.0.0": true, "new": false,
	} {
		require.Equal(t, sound, soundEngine(version) == nil, version)
	}
}

func TestAFileThatCannotBeReachedIsUnavailable(t *testing.T) {
	folder := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(folder, "file"), nil, 0o600))
	for name, path := range map[string]string{"a folder": folder, "below a file": filepath.Join(folder, "file", "jobs.db")} {
		_, err := Open(t.Context(), path)
		require.ErrorIs(t, err, ErrUnavailable, name)
	}
}

func text(body string) func(*testing.T, string) {
	return func(t *testing.T, path string) { require.NoError(t, os.WriteFile(path, []byte(body), 0o600)) }
}

// raw makes an SQLite file by hand.
func raw(query string) func(*testing.T, string) {
	return func(t *testing.T, path string) {
		db, err := connect(path, "rwc")
		require.NoError(t, err)
		_, err = db.ExecContext(t.Context(), query)
		require.NoError(t, errors.Join(err, db.Close()))
	}
}

// ours makes a data file of ours with some revisions and then runs a query on it.
func ours(query string) func(*testing.T, string) {
	return func(t *testing.T, path string) {
		s, err := Open(t.Context(), path)
		require.NoError(t, err)
		job := created(t, s, "a")
		for i := range 20 {
			job = saved(t, s, job, strings.Repeat(fmt.Sprint(i), 3000))
		}
		require.NoError(t, s.Close())
		raw(query)(t, path)
		require.NoError(t, errors.Join(os.Remove(path+".lock")))
	}
}

func cutShort(t *testing.T, path string) {
	ours(`SELECT 1`)(t, path)
	require.NoError(t, os.Truncate(path, 3*4096))
}

func scribbled(t *testing.T, path string) {
	ours(`SELECT 1`)(t, path)
	scribble(t, path, 2)
}

// scribble writes over one page, counted from 0.
func scribble(t *testing.T, path string, page int64) {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	require.NoError(t, err)
	_, err = f.WriteAt([]byte(strings.Repeat("scribble", 512)), page*4096)
	require.NoError(t, errors.Join(err, f.Close()))
}

// A pipe would be waited for, and a device written to.
func TestWhatIsNoFileIsRefused(t *testing.T) {
	folder := t.TempDir()
	pipe := filepath.Join(folder, "pipe.db")
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	for _, path := range []string{pipe, folder, os.DevNull} {
		_, err := Open(t.Context(), path)
		require.ErrorIs(t, err, ErrUnavailable, path)
		require.ErrorIs(t, BackupOf(t.Context(), path, filepath.Join(folder, "new.db")), ErrUnavailable, path)
		_, err = PutBack(path, filepath.Join(folder, "jobs.db"), time.Now())
		require.ErrorIs(t, err, ErrUnavailable, path)
		require.NoFileExists(t, path+".lock")
	}
}
