package store

import (
	"context"
	"fmt"
	"io/fs"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// at sets the store's clock.
func at(s *Store, day, hour int) {
	s.Now = func() time.Time { return time.Date(2026, 3, day, hour, 0, 0, 0, time.UTC) }
}

// parents draws the revisions of a job as document<parent, the oldest first.
func parents(t *testing.T, s *Store, id int64) []string {
	t.Helper()
	return column(t, s, `SELECT CAST(r.document AS TEXT) || '<' || coalesce(CAST(p.document AS TEXT), '')
		FROM revision r LEFT JOIN revision p ON p.id = r.parent WHERE r.job = ? ORDER BY r.id`, id)
}

func TestOldRevisionsAreThinnedToOneADay(t *testing.T) {
	s := fresh(t)
	at(s, 1, 8)
	job := created(t, s, "a")
	for day := 1; day <= 3; day++ {
		for _, hour := range []int{9, 12, 18} {
			at(s, day, hour)
			job = saved(t, s, job, fmt.Sprintf("%d.%d", day, hour))
		}
	}
	now := time.Date(2026, 3, 3, 12, 0, 0, 0, time.UTC)
	removed, err := s.Thin(t.Context(), now)
	require.NoError(t, err)
	require.Equal(t, 2, removed)
	require.Equal(t, []string{"a<", "1.18<a", "2.9<1.18", "2.12<2.9", "2.18<2.12", "3.9<2.18", "3.12<3.9", "3.18<3.12"}, parents(t, s, job.ID),
		"all of the last 24 hours, of what is older the last of each day, and the first")
	removed, err = s.Thin(t.Context(), now)
	require.NoError(t, err)
	require.Zero(t, removed, "once is enough")
	removed, err = s.Thin(t.Context(), now.AddDate(0, 0, 9))
	require.NoError(t, err)
	require.Equal(t, 4, removed)
	require.Equal(t, []string{"a<", "1.18<a", "2.18<1.18", "3.18<2.18"}, parents(t, s, job.ID))
	for _, want := range []string{"2.18", "1.18", "a"} { // undo passes over what is gone
		job = undone(t, s, job)
		require.Equal(t, want, string(job.Document))
	}
	require.Equal(t, "1.18", string(redone(t, s, job).Document))
	sound(t, s)
}

func TestWhatCountsIsNotThinned(t *testing.T) {
	s := fresh(t)
	at(s, 1, 8)
	a := created(t, s, "first")
	named := saved(t, s, a, "named")
	require.NoError(t, s.Name(t.Context(), a.ID, named.Revision, "before the niche"))
	ticked := saved(t, s, named, "ticked")
	require.NoError(t, s.Tick(t.Context(), a.ID, Tick{Mark: "m", Revision: ticked.Revision}))
	gone := saved(t, s, ticked, "gone")
	shown := saved(t, s, gone, "shown")
	last := saved(t, s, shown, "last of the day")
	require.Equal(t, "shown", string(undone(t, s, last).Document))
	deleted := created(t, s, "x")
	saved(t, s, saved(t, s, deleted, "y"), "z")
	require.NoError(t, s.Delete(t.Context(), deleted.ID))

	removed, err := s.Thin(t.Context(), time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC))
	require.NoError(t, err)
	require.Equal(t, 2, removed)
	require.Equal(t, []string{"first<", "named<first", "ticked<named", "shown<ticked", "last of the day<shown"}, parents(t, s, a.ID))
	require.Equal(t, []string{"x<", "z<x"}, parents(t, s, deleted.ID))
	require.NoError(t, s.Restore(t.Context(), deleted.ID))
	sound(t, s)

	for _, query := range []string{ // the file itself refuses what the rule does not do
		fmt.Sprint(`DELETE FROM revision WHERE id = `, named.Revision), fmt.Sprint(`DELETE FROM revision WHERE id = `, shown.Revision),
		fmt.Sprint(`DELETE FROM revision WHERE id = `, a.Revision), fmt.Sprint(`UPDATE revision SET parent = NULL WHERE id = `, shown.Revision),
		fmt.Sprintf(`UPDATE revision SET parent = %d WHERE id = %d`, last.Revision, shown.Revision),
	} {
		_, err := s.db.ExecContext(t.Context(), query)
		require.Error(t, err, query)
	}
}

// TestThinningAgainstAModel edits, undoes, names and waits at random; then a plain reading of the
// rule says what must be left, and where undo leads.
func TestThinningAgainstAModel(t *testing.T) {
	s := fresh(t)
	rapid.Check(t, func(r *rapid.T) {
		clock := time.Date(2026, 3, 1, 0, 0, 0, 0, time.UTC)
		s.Now = func() time.Time { return clock }
		job, err := s.Create(t.Context(), "t", []byte("0"))
		require.NoError(r, err)
		for i := range rapid.IntRange(0, 25).Draw(r, "acts") {
			clock = clock.Add(time.Duration(rapid.IntRange(1, 15).Draw(r, "hours")) * time.Hour)
			switch rapid.IntRange(0, 4).Draw(r, "act") {
			case 0:
				job, err = s.Undo(t.Context(), job.ID, job.Revision)
			case 1:
				job, err = s.Redo(t.Context(), job.ID, job.Revision)
			case 2:
				err = s.Name(t.Context(), job.ID, job.Revision, "n")
			default:
				job, err = s.Save(t.Context(), job.ID, job.Revision, "t", fmt.Append(nil, i+1))
			}
			require.NoError(r, err)
		}
		before, err := s.Revisions(t.Context(), job.ID, 0, 999)
		require.NoError(r, err)
		now := clock.Add(time.Duration(rapid.IntRange(0, 100).Draw(r, "wait")) * time.Hour)
		_, err = s.Thin(t.Context(), now)
		require.NoError(r, err)
		after, err := s.Revisions(t.Context(), job.ID, 0, 999)
		require.NoError(r, err)
		require.Equal(r, thinned(before, now), after)
		undone := map[int64]bool{} // what undo leads back to is the shown one and its parents
		for _, one := range after {
			undone[one.ID] = true
		}
		for at := job.Revision; at != 0; {
			undone[at] = false
			at = after[slices.IndexFunc(after, func(one Revision) bool { return one.ID == at })].Parent
		}
		for _, one := range after {
			require.Equal(r, undone[one.ID], one.Undone)
		}
		var paged []Revision
		for from := int64(0); len(paged) == 0 || from != 0; {
			page, err := s.Revisions(t.Context(), job.ID, from, rapid.IntRange(1, 9).Draw(r, "a page"))
			require.NoError(r, err)
			if from = 0; len(page) > 0 {
				from = page[len(page)-1].ID
			}
			paged = append(paged, page...)
		}
		require.Equal(r, after, paged)
	})
	sound(t, s)
}

// thinned is the rule on a list of revisions, the newest first.
func thinned(all []Revision, now time.Time) []Revision {
	days, parent := map[string]bool{}, map[int64]int64{}
	var left []Revision
	for _, r := range all {
		parent[r.ID] = r.Parent
		young, day := now.Sub(r.Saved) <= wholeFor, r.Saved.Format(time.DateOnly)
		if young || r.Shown || r.Name != "" || r.Parent == 0 || !days[day] {
			left = append(left, r)
		}
		days[day] = days[day] || !young
	}
	for i := range left {
		for left[i].Parent != 0 && !slices.ContainsFunc(left, func(r Revision) bool { return r.ID == left[i].Parent }) {
			left[i].Parent = parent[left[i].Parent]
		}
	}
	return left
}

func TestThinningEndsWithTheProgram(t *testing.T) {
	s := fresh(t)
	ctx, end := context.WithCancel(t.Context())
	end()
	removed, err := s.Thin(ctx, s.Now())
	require.NoError(t, err)
	require.Zero(t, removed)
}

// What is thinned out is listed once, and goes in parts: meanwhile a person names one of them, shows
// another, and erases a job.
func TestWhatCountsByThenIsNotThinned(t *testing.T) {
	s := fresh(t)
	at(s, 1, 8)
	job, gone := created(t, s, "a"), created(t, s, "x")
	var ids []int64
	for i := range 6 {
		job, gone = saved(t, s, job, fmt.Sprint(i)), saved(t, s, gone, fmt.Sprint("x", i))
		ids = append(ids, job.Revision)
	}
	old, err := s.old(t.Context(), s.Now().AddDate(0, 0, 9))
	require.NoError(t, err)
	require.Len(t, old, 10)
	require.NoError(t, s.Name(t.Context(), job.ID, ids[1], "named"))
	for range 2 {
		job = undone(t, s, job)
	}
	require.NoError(t, s.Delete(t.Context(), gone.ID))
	_, err = s.Erase(t.Context(), gone.ID)
	require.NoError(t, err)
	removed, err := s.removeSpare(t.Context(), old)
	require.NoError(t, err)
	require.Equal(t, 3, removed)
	require.Equal(t, []string{"a<", "1<a", "3<1", "5<3"}, parents(t, s, job.ID))
	sound(t, s)
}

func TestARevisionBearsAName(t *testing.T) {
	s := fresh(t)
	a, other := created(t, s, "a"), created(t, s, "b")
	for _, name := range []string{"before the niche", "as built", ""} {
		require.NoError(t, s.Name(t.Context(), a.ID, a.Revision, name))
		list := must(s.Revisions(t.Context(), a.ID, 0, 9))
		require.Equal(t, name, list[0].Name)
	}
	require.ErrorIs(t, s.Name(t.Context(), a.ID, other.Revision, "x"), fs.ErrNotExist)
	require.ErrorIs(t, s.Name(t.Context(), 99, a.Revision, "x"), fs.ErrNotExist)
}

func TestRevisionsComeByThePage(t *testing.T) {
	s := fresh(t)
	job := created(t, s, "0")
	for i := range 9 {
		job = saved(t, s, job, fmt.Sprint(i+1))
	}
	var seen []int64
	for before := int64(0); ; {
		list := must(s.Revisions(t.Context(), job.ID, before, 4))
		if len(list) == 0 {
			break
		}
		for _, r := range list {
			seen = append(seen, r.ID)
		}
		before = list[len(list)-1].ID
	}
	require.Equal(t, []int64{10, 9, 8, 7, 6, 5, 4, 3, 2, 1}, seen)
}
