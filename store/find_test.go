package store

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestJobsAreFoundByTheWordsOfTheirNames(t *testing.T) {
	s := fresh(t)
	for _, title := range []string{"Upstairs bath", "Küche, Größe 2", "upstairs shower", "Attic BATH", "100% done", "under_score"} {
		_, err := s.Create(t.Context(), title, nil)
		require.NoError(t, err)
	}
	gone := must(s.Create(t.Context(), "bath that is deleted", nil))
	require.NoError(t, s.Delete(t.Context(), gone.ID))
	for words, want := range map[string][]string{
		"bath":          {"Attic BATH", "Upstairs bath"},
		"BATH  up":      {"Upstairs bath"},
		"größe":         {"Küche, Größe 2"},
		"KÜCHE":         {"Küche, Größe 2"},
		"%":             {"100% done"},
		"_":             {"under_score"},
		"nothing":       nil,
		"' OR 1=1":      nil,
		"bath shower":   nil,
		"upstairs":      {"upstairs shower", "Upstairs bath"},
		"  ":            {"under_score", "100% done", "Attic BATH", "upstairs shower", "Küche, Größe 2", "Upstairs bath"},
		"stairs shower": {"upstairs shower"},
	} {
		found, all, err := s.Find(t.Context(), words, 0, 99)
		require.NoError(t, err)
		var titles []string
		for _, m := range found {
			titles = append(titles, m.Title)
		}
		require.Equal(t, want, titles, words)
		require.Equal(t, len(want), all, words)
	}
	found, all, err := s.Find(t.Context(), "", 2, 3)
	require.NoError(t, err)
	require.Equal(t, 6, all)
	require.Len(t, found, 3)
	require.Equal(t, "Attic BATH", found[0].Title)
	for _, c := range [][2]int{{-1, -1}, {99, 9}, {0, 0}} {
		found, all, err = s.Find(t.Context(), "", c[0], c[1])
		require.NoError(t, err)
		require.Equal(t, 6, all)
		require.Empty(t, found)
	}
}

// years fills a store with so many jobs and, in one of them, so many revisions.
func years(b *testing.B, jobs, revisions int) (*Store, Job) {
	s, err := Open(b.Context(), b.TempDir()+"/jobs.db")
	require.NoError(b, err)
	b.Cleanup(func() { s.Close() })
	document := make([]byte, 6000) // about that of a room of three walls
	for i := range jobs {
		_, err := s.Create(b.Context(), fmt.Sprint("Bath of house number ", i), document)
		require.NoError(b, err)
	}
	job, err := s.Load(b.Context(), 1)
	require.NoError(b, err)
	for i := range revisions {
		job, err = s.Save(b.Context(), 1, job.Revision, fmt.Sprint(i), document)
		require.NoError(b, err)
	}
	return s, job
}

// BenchmarkYears asks what a file of 5,000 jobs and 20,000 revisions is asked every day.
func BenchmarkYears(b *testing.B) {
	s, job := years(b, 5000, 20_000)
	for name, act := range map[string]func(int) error{
		"find":    func(int) error { _, _, err := s.Find(b.Context(), "house 77", 0, 50); return err },
		"history": func(int) error { _, err := s.Revisions(b.Context(), 1, 0, 50); return err },
		"save": func(i int) (err error) {
			job, err = s.Save(b.Context(), 1, job.Revision, fmt.Sprint("again ", b.N, i), job.Document)
			return err
		},
		"undo": func(int) (err error) { job, err = s.Undo(b.Context(), 1, job.Revision); return err },
		"thin": func(int) error { _, err := s.Thin(b.Context(), s.Now()); return err },
	} {
		b.Run(name, func(b *testing.B) {
			for i := range b.N {
				require.NoError(b, act(i))
			}
		})
	}
}
