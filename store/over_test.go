package store

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestWhatIsWrittenOverWhileItIsOpenIsNeverCalledSaved(t *testing.T) {
	for name, c := range map[string]struct {
		line    string
		refused bool // at the next start, with the log that lies there
	}{
		"another file is copied over it":      {`cat other.db > jobs.db`, true},
		"an older copy is copied over it":     {`cat older.db > jobs.db`, true},
		"one as long is, in the same tick":    {`touch -r jobs.db x; sed s/older/elder/ jobs.db > y; cat y > jobs.db; touch -r x jobs.db`, true},
		"it is cut to nothing":                {`: > jobs.db`, true},
		"it is made longer":                   {`echo x >> jobs.db`, true},
		"the log is cut to nothing":           {`: > jobs.db-wal`, false},
		"the log is cut short":                {`head -c 5000 jobs.db-wal > x; cat x > jobs.db-wal`, true},
		"another's log is copied over it":     {`cat scrap > jobs.db-wal`, true},
		"both are cut to nothing":             {`: > jobs.db-wal; : > jobs.db`, false},
		"it is written over with what it was": {`cp jobs.db x; cat x > jobs.db`, false},
		"it is only touched":                  {`touch jobs.db jobs.db-wal`, false},
	} {
		t.Run(name, func(t *testing.T) {
			folder := t.TempDir()
			path := filepath.Join(folder, "jobs.db")
			other(t, filepath.Join(folder, "other.db"))
			require.NoError(t, os.WriteFile(filepath.Join(folder, "scrap"), []byte(strings.Repeat("scrap", 100_000)), 0o600))
			for _, document := range []string{"older", "a"} {
				sh(t, folder, `if [ -e jobs.db ]; then cp jobs.db older.db; fi`)
				s := opened(t, path)
				created(t, s, document)
				require.NoError(t, s.Close())
			}
			s := opened(t, path)
			job := saved(t, s, created(t, s, "b"), "c")
			sh(t, folder, c.line)
			stood, err := os.ReadFile(path)
			require.NoError(t, err)

			if strings.HasSuffix(name, "what it was") || strings.HasSuffix(name, "touched") {
				job = saved(t, s, job, "d")
				require.NoError(t, s.Close())
				require.Equal(t, []string{"b", "c", "d"}, documents(t, opened(t, path), job.ID))
				return
			}
			var astray *Astray
			for range 2 {
				_, err = s.Save(t.Context(), job.ID, job.Revision, job.Title, []byte("never saved"))
				require.ErrorAs(t, err, &astray)
				require.ErrorIs(t, err, ErrUnavailable)
				require.True(t, astray.Over)
				require.Contains(t, err.Error(), "written over")
			}
			require.ErrorAs(t, s.Close(), &astray, "the end says it too")
			now, err := os.ReadFile(path)
			require.NoError(t, err)
			require.Equal(t, stood, now, "what was put there is left as it is")
			if astray.Rescue != "" {
				sound(t, opened(t, astray.Rescue))
			}
			if c.refused {
				refusedUntouched(t, path, ErrStrayLog)
			}
		})
	}
}

// What SQLite itself does with file and log is never taken for another's doing.
func TestWhatThisProgramWritesIsItsOwn(t *testing.T) {
	s := fresh(t)
	job, gone := created(t, s, "a"), created(t, s, "b")
	for i := range 60 { // far more than the log holds before it is moved into the file
		job = saved(t, s, job, strings.Repeat(string(rune('a'+i%26)), 200_000))
	}
	require.NoError(t, s.Delete(t.Context(), gone.ID))
	_, err := s.Erase(t.Context(), gone.ID)
	require.NoError(t, err)
	saved(t, s, job, "c")
	require.NoError(t, s.Close())
}
