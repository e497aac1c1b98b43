package store

import (
	"bytes"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// secret is text that stands in a file only if the job that held it does.
func secret(i int) string { return fmt.Sprintf("secret-%04d ", i) }

// TestAnErasedJobLeavesNoByte erases every second of many jobs whose pages lie among each other. No byte of it is left in the file or its log, and all of the others is.
func TestAnErasedJobLeavesNoByte(t *testing.T) {
	for _, seed := range []uint64{1795652732833188160, uint64(time.Now().UnixNano())} { // overwriting alone failed with the first
		t.Run(fmt.Sprint(seed), func(t *testing.T) { leavesNoByte(t, seed) })
	}
}

// amongEachOther edits many jobs in turn, so that their pages lie among each other.
func amongEachOther(t *testing.T, s *Store, seed uint64) []Job {
	random := rand.New(rand.NewPCG(seed, 0))
	jobs := make([]Job, 20)
	for i := range jobs {
		jobs[i] = must(s.Create(t.Context(), "title "+secret(i), []byte(secret(i))))
	}
	for range 400 {
		i := random.IntN(len(jobs))
		document := strings.Repeat(secret(i), 1+random.IntN(900)) + fmt.Sprint(random.Int())
		jobs[i] = must(s.Save(t.Context(), jobs[i].ID, jobs[i].Revision, "title "+secret(i), []byte(document)))
		if random.IntN(5) == 0 {
			require.NoError(t, s.Tick(t.Context(), jobs[i].ID, Tick{Mark: secret(i), Piece: secret(i), Revision: jobs[i].Revision}))
			require.NoError(t, s.Name(t.Context(), jobs[i].ID, jobs[i].Revision, secret(i)))
		}
	}
	s.Now = time.Now
	must(s.Thin(t.Context(), time.Now().AddDate(1, 0, 0)))
	return jobs
}

// The program is killed after it has answered for the rows and before it has written the file anew.
func TestAnEraseThatIsCutShortIsDoneAtTheNextStart(t *testing.T) {
	s := fresh(t)
	jobs := amongEachOther(t, s, 1795652732833188160)
	left := func(path string) (n int) {
		for _, end := range []string{"", "-wal"} {
			body, _ := os.ReadFile(path + end)
			for i := 0; i < len(jobs); i += 2 {
				n += bytes.Count(body, []byte(strings.TrimSpace(secret(i))))
			}
		}
		return n
	}
	for i := 0; i < len(jobs); i += 2 {
		require.NoError(t, s.Delete(t.Context(), jobs[i].ID))
		require.NoError(t, s.remove(t.Context(), jobs[i].ID))
	}
	require.NoError(t, s.Close())
	require.Positive(t, left(s.path), "overwriting alone is not enough")
	again := opened(t, s.path)
	require.Zero(t, left(s.path))
	sound(t, again)
	require.NoError(t, again.Close())
	require.False(t, readNote(s.path).erasing)
}

func leavesNoByte(t *testing.T, seed uint64) {
	s := fresh(t)
	jobs := amongEachOther(t, s, seed)
	require.NoError(t, s.DailyBackup(t.Context(), time.Date(2026, 3, 1, 0, 0, 0, 0, time.UTC)))
	for i := 0; i < len(jobs); i += 2 {
		_, err := s.Erase(t.Context(), jobs[i].ID)
		require.ErrorIs(t, err, ErrNotDeleted)
		require.NoError(t, s.Delete(t.Context(), jobs[i].ID))
		stillIn, err := s.Erase(t.Context(), jobs[i].ID)
		require.NoError(t, err)
		require.Equal(t, backups(backupFolder(s.path), "daily-*"), stillIn)
		require.Len(t, stillIn, 1)
		require.Contains(t, string(must(os.ReadFile(stillIn[0]))), secret(i), "that it is still there is said")
	}
	for _, end := range []string{"", "-wal"} {
		body := must(os.ReadFile(s.path + end))
		for i := 0; i < len(jobs); i += 2 {
			require.Equal(t, -1, bytes.Index(body, []byte(strings.TrimSpace(secret(i)))), "%s in jobs.db%s", secret(i), end)
		}
	}
	for i, job := range jobs {
		_, err := s.Load(t.Context(), job.ID)
		if i%2 == 0 {
			require.ErrorIs(t, err, fs.ErrNotExist)
			require.NotErrorIs(t, err, ErrDeleted)
			_, err = s.Erase(t.Context(), job.ID)
			require.ErrorIs(t, err, fs.ErrNotExist)
			continue
		}
		require.NoError(t, err)
		require.Equal(t, job.Document, must(s.Load(t.Context(), job.ID)).Document)
	}
	sound(t, s)
}
