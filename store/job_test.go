package store

import (
	"errors"
	"io/fs"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestAJobComesBackAsItWasSaved(t *testing.T) {
	s := fresh(t)
	for _, document := range []string{`{"title":"Attic bath"}`, "", "\x00\xff\r\n", `½ ⌀ "'; DROP TABLE job; --`} {
		job := created(t, s, document)
		require.Equal(t, document, string(job.Document))
		require.False(t, job.CanUndo || job.CanRedo)
		again, err := s.Load(t.Context(), job.ID)
		require.NoError(t, err)
		require.Equal(t, job, again)
	}
}

func TestTimesAreThoseOfTheClock(t *testing.T) {
	s := fresh(t)
	at := time.Date(2026, 3, 1, 8, 0, 0, 123_000_000, time.UTC)
	s.Now = func() time.Time { return at }
	job := created(t, s, "a")
	require.Equal(t, at, job.Created)
	at = at.Add(time.Hour)
	job = saved(t, s, job, "b")
	require.Equal(t, at.Add(-time.Hour), job.Created)
	require.Equal(t, at, job.Saved)
	at = at.Add(time.Hour)
	require.Equal(t, at, undone(t, s, job).Saved)
}

func TestUndoAndRedoMoveAlongRevisionsAcrossRestarts(t *testing.T) {
	path := filepath.Join(t.TempDir(), "jobs.db")
	s := opened(t, path)
	job := created(t, s, "a")
	job = saved(t, s, job, "b")
	job = saved(t, s, job, "c")
	reopen := func() {
		require.NoError(t, s.Close())
		s = opened(t, path)
	}
	for _, want := range []struct {
		move       func(*testing.T, *Store, Job) Job
		document   string
		undo, redo bool
	}{
		{undone, "b", true, true},
		{undone, "a", false, true},
		{undone, "a", false, true},
		{redone, "b", true, true},
		{redone, "c", true, false},
		{redone, "c", true, false},
	} {
		reopen()
		job = want.move(t, s, job)
		require.Equal(t, want.document, string(job.Document))
		require.Equal(t, want.undo, job.CanUndo)
		require.Equal(t, want.redo, job.CanRedo)
	}
	sound(t, s)
}

func TestAnEditAfterUndoBeginsABranchAndKeepsTheOldOne(t *testing.T) {
	s := fresh(t)
	a := created(t, s, "a")
	b := saved(t, s, a, "b")
	c := saved(t, s, b, "c")
	job := undone(t, s, undone(t, s, c))
	d := saved(t, s, job, "d")
	require.False(t, d.CanRedo)
	require.Equal(t, []string{"a", "b", "c", "d"}, documents(t, s, a.ID))

	require.Equal(t, "d", string(redone(t, s, undone(t, s, d)).Document), "redo follows the newest child")

	list, err := s.Revisions(t.Context(), a.ID, 0, 99)
	slices.Reverse(list)
	require.NoError(t, err)
	var tree [][2]int64
	for _, r := range list {
		tree = append(tree, [2]int64{r.Parent, r.ID})
		require.Equal(t, r.ID == d.Revision, r.Shown)
		require.Equal(t, r.ID == b.Revision || r.ID == c.Revision, r.Undone)
	}
	require.Equal(t, [][2]int64{{0, a.Revision}, {a.Revision, b.Revision}, {b.Revision, c.Revision}, {a.Revision, d.Revision}}, tree)
}

func TestEveryRevisionCanBeReadAgain(t *testing.T) {
	s := fresh(t)
	other, a := created(t, s, "other"), created(t, s, "a")
	b := saved(t, s, a, "b")
	saved(t, s, undone(t, s, b), "c")
	for _, of := range []Job{a, b} {
		was, err := s.At(t.Context(), a.ID, of.Revision)
		require.NoError(t, err)
		require.Equal(t, of.Title, was.Title)
		require.Equal(t, of.Document, was.Document)
	}
	for _, number := range []int64{0, 99, other.Revision} {
		_, err := s.At(t.Context(), a.ID, number)
		require.ErrorIs(t, err, fs.ErrNotExist)
	}
}

func TestARevisionThatIsShownIsNeverChangedNorRemoved(t *testing.T) {
	s := fresh(t)
	job := created(t, s, "a")
	for _, query := range []string{
		`UPDATE revision SET document = 'x'`, `UPDATE revision SET title = 'x'`, `UPDATE revision SET saved = 0`, `UPDATE revision SET id = 99`,
		`DELETE FROM revision`, `DELETE FROM job`, `UPDATE job SET cursor = 99`,
	} {
		_, err := s.db.ExecContext(t.Context(), query)
		require.Error(t, err, query)
	}
	require.Equal(t, []string{"a"}, documents(t, s, job.ID))
}

func TestTheCursorNeverPointsIntoAnotherJob(t *testing.T) {
	s := fresh(t)
	a, b := created(t, s, "a"), created(t, s, "b")
	_, err := s.db.ExecContext(t.Context(), `UPDATE job SET cursor = ? WHERE id = ?`, b.Revision, a.ID)
	require.Error(t, err)
}

func TestASecondTabIsShownWhatTheFirstSaved(t *testing.T) {
	s := fresh(t)
	base := created(t, s, "a")
	theirs := saved(t, s, base, "theirs")

	for name, act := range map[string]func() (Job, error){
		"save": func() (Job, error) { return s.Save(t.Context(), base.ID, base.Revision, base.Title, []byte("mine")) },
		"undo": func() (Job, error) { return s.Undo(t.Context(), base.ID, base.Revision) },
		"redo": func() (Job, error) { return s.Redo(t.Context(), base.ID, base.Revision) },
	} {
		job, err := act()
		var conflict *Conflict
		require.ErrorAs(t, err, &conflict, name)
		require.Equal(t, Job{}, job, name)
		require.Equal(t, base.Revision, conflict.Mine, name)
		require.Equal(t, theirs, conflict.Theirs, name)
	}
	require.Equal(t, []string{"a", "theirs"}, documents(t, s, base.ID))

	saved(t, s, theirs, "mine")
}

func TestAnEditSentTwiceCountsOnce(t *testing.T) {
	s := fresh(t)
	base := created(t, s, "a")
	first := saved(t, s, base, "b")
	require.Equal(t, first, saved(t, s, base, "b"), "the answer was lost and the tab sends it again")
	require.Equal(t, first, saved(t, s, first, "b"), "nothing was edited")
	require.Equal(t, []string{"a", "b"}, documents(t, s, base.ID))
}

func TestANewTitleIsAnEdit(t *testing.T) {
	s := fresh(t)
	job := created(t, s, "a")
	job, err := s.Save(t.Context(), job.ID, job.Revision, "Hall bath", []byte("a"))
	require.NoError(t, err)
	require.Equal(t, "Hall bath", job.Title)
	require.Equal(t, "Attic bath", undone(t, s, job).Title)
}

func TestDeleteHasAWayBack(t *testing.T) {
	s := fresh(t)
	first, job := created(t, s, "first"), created(t, s, "a")
	job = undone(t, s, saved(t, s, job, "b"))
	require.Equal(t, []int64{job.ID, first.ID}, ids(s.Jobs(t.Context())))

	require.NoError(t, s.Delete(t.Context(), job.ID))
	gone, err := s.Deleted(t.Context())
	require.NoError(t, err)
	require.NoError(t, s.Delete(t.Context(), job.ID))
	again, err := s.Deleted(t.Context())
	require.NoError(t, err)
	require.Equal(t, gone, again, "deleting twice keeps the time of the first")
	require.Equal(t, []int64{first.ID}, ids(s.Jobs(t.Context())))
	for name, act := range everyUse(s) {
		err := act(t, job.ID)
		require.ErrorIs(t, err, ErrDeleted, name)
		require.ErrorIs(t, err, fs.ErrNotExist, name)
	}

	require.NoError(t, s.Restore(t.Context(), job.ID))
	require.NoError(t, s.Restore(t.Context(), job.ID))
	back, err := s.Load(t.Context(), job.ID)
	require.NoError(t, err)
	require.Equal(t, job, back)
	require.Empty(t, ids(s.Deleted(t.Context())))
	returns, err := s.Returns(t.Context(), job.ID)
	require.NoError(t, err)
	require.Len(t, returns, 1, "to bring back what is there is no return")
	require.Equal(t, []any{job.Revision, gone[0].Deleted}, []any{returns[0].Revision, returns[0].Deleted})
	require.True(t, returns[0].Back.After(returns[0].Deleted))
	require.Empty(t, must(s.Returns(t.Context(), first.ID)))

	require.NoError(t, s.Delete(t.Context(), job.ID))
	_, err = s.Erase(t.Context(), job.ID)
	require.NoError(t, err)
	require.Empty(t, must(s.Returns(t.Context(), job.ID)))
}

func TestAMissingJobIsNotExist(t *testing.T) {
	s := fresh(t)
	for name, act := range everyUse(s) {
		err := act(t, 7)
		require.ErrorIs(t, err, fs.ErrNotExist, name)
		require.False(t, errors.Is(err, ErrDeleted), name)
	}
	require.ErrorIs(t, s.Delete(t.Context(), 7), fs.ErrNotExist)
	require.ErrorIs(t, s.Restore(t.Context(), 7), fs.ErrNotExist)
}

func everyUse(s *Store) map[string]func(*testing.T, int64) error {
	return map[string]func(*testing.T, int64) error{
		"load":      func(t *testing.T, id int64) error { _, err := s.Load(t.Context(), id); return err },
		"save":      func(t *testing.T, id int64) error { _, err := s.Save(t.Context(), id, 1, "t", nil); return err },
		"undo":      func(t *testing.T, id int64) error { _, err := s.Undo(t.Context(), id, 1); return err },
		"redo":      func(t *testing.T, id int64) error { _, err := s.Redo(t.Context(), id, 1); return err },
		"revisions": func(t *testing.T, id int64) error { _, err := s.Revisions(t.Context(), id, 0, 9); return err },
	}
}

func ids(list []Summary, err error) []int64 {
	if err != nil {
		return []int64{-1}
	}
	var out []int64
	for _, m := range list {
		out = append(out, m.ID)
	}
	return out
}
