package store

import (
	"errors"
	"io/fs"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// revised saves a document with the set-out it gives.
func revised(t *testing.T, s *Store, on Job, document, setout string) Job {
	t.Helper()
	job, err := s.SaveState(t.Context(), on.ID, on.Revision, State{Title: on.Title, Document: []byte(document), Setout: []byte(setout)})
	require.NoError(t, err)
	return job
}

func TestEachRevisionKeepsItsOwnSetOut(t *testing.T) {
	path := filepath.Join(t.TempDir(), "jobs.db")
	s := opened(t, path)
	a := created(t, s, "a")
	require.Nil(t, a.Setout, "not judged yet")
	require.NoError(t, s.KeepSetout(t.Context(), a.ID, a.Revision, []byte("of a")))
	b := revised(t, s, a, "b", "of b")
	require.Equal(t, "of b", string(b.Setout))
	require.NoError(t, s.Close())

	s = opened(t, path)
	b = must(s.Load(t.Context(), a.ID))
	require.Equal(t, "of b", string(b.Setout))
	back := undone(t, s, b)
	require.Equal(t, "of a", string(back.Setout))
	require.Equal(t, "of b", string(redone(t, s, back).Setout))
	require.Equal(t, State{Title: a.Title, Document: []byte("a"), Setout: []byte("of a")}, must(s.At(t.Context(), a.ID, a.Revision)))
	sound(t, s)
}

// Law 11.
func TestTheSetOutOfARevisionIsWrittenOnce(t *testing.T) {
	s := fresh(t)
	a := created(t, s, "a")
	require.NoError(t, s.KeepSetout(t.Context(), a.ID, a.Revision, []byte("first")))
	require.NoError(t, s.KeepSetout(t.Context(), a.ID, a.Revision, []byte("second")), "no fault: somebody else was quicker")
	kept := must(s.Load(t.Context(), a.ID))
	require.Equal(t, "first", string(kept.Setout))
	require.Equal(t, []int64{a.Revision, a.Saved.UnixMilli()}, []int64{kept.Revision, kept.Saved.UnixMilli()}, "it is no edit")

	for _, query := range []string{`UPDATE revision SET setout = X'78'`, `UPDATE revision SET setout = NULL`} {
		_, err := s.db.ExecContext(t.Context(), query)
		require.ErrorContains(t, err, "the set-out of a revision is never changed", query)
	}
	require.NoError(t, s.KeepSetout(t.Context(), a.ID, 99, []byte("of nothing")))
	require.NoError(t, s.KeepSetout(t.Context(), 99, a.Revision, []byte("of another")))
	require.Equal(t, "first", string(must(s.Load(t.Context(), a.ID)).Setout))
}

func TestAnotherSetOutIsARevisionOnlyWhereItWasTaken(t *testing.T) {
	s := fresh(t)
	a := revised(t, s, created(t, s, ""), "a", "old")
	same := State{Title: a.Title, Document: a.Document, Setout: []byte("new")}
	now := must(s.SaveState(t.Context(), a.ID, a.Revision, same))
	require.Equal(t, []any{a.Revision, "old"}, []any{now.Revision, string(now.Setout)}, "an edit of nothing is none")

	same.Anew = true
	taken := must(s.SaveState(t.Context(), a.ID, a.Revision, same))
	require.NotEqual(t, a.Revision, taken.Revision)
	require.Equal(t, "new", string(taken.Setout))
	twice := must(s.SaveState(t.Context(), a.ID, a.Revision, same))
	require.Equal(t, taken.Revision, twice.Revision, "sent twice it counts once")
	require.Equal(t, "old", string(undone(t, s, taken).Setout))
}

func TestATickAndTheStateItStandsOnAreOneWrite(t *testing.T) {
	s := fresh(t)
	a := created(t, s, "a")
	held := State{Title: a.Title, Document: []byte("held"), Setout: []byte("of a")}
	b, err := s.TickOn(t.Context(), a.ID, a.Revision, held, Tick{Mark: "m", Piece: "B-01-01"})
	require.NoError(t, err)
	require.Equal(t, "held", string(b.Document))
	ticks := must(s.Ticks(t.Context(), a.ID))
	require.Len(t, ticks, 1)
	require.Equal(t, b.Revision, ticks[0].Revision)

	_, err = s.TickOn(t.Context(), a.ID, a.Revision, State{Title: a.Title, Document: []byte("other")}, Tick{Mark: "n"})
	var conflict *Conflict
	require.True(t, errors.As(err, &conflict), "the job has moved on")
	require.Len(t, must(s.Ticks(t.Context(), a.ID)), 1, "neither is written")
	_, err = s.TickOn(t.Context(), 99, a.Revision, held, Tick{Mark: "m"})
	require.ErrorIs(t, err, fs.ErrNotExist)

	again, err := s.TickOn(t.Context(), a.ID, b.Revision, held, Tick{Mark: "n", Piece: "B-01-02"})
	require.NoError(t, err)
	require.Equal(t, b.Revision, again.Revision, "held already")
	require.Len(t, must(s.Ticks(t.Context(), a.ID)), 2)
}

// A file of the version before has no set-outs: they are kept when they are first judged.
func TestRevisionsOfTheVersionBeforeHaveNoSetOutYet(t *testing.T) {
	path := filepath.Join(t.TempDir(), "jobs.db")
	require.NoError(t, copyFile(released(3), path))
	s := opened(t, path)
	for _, job := range must(s.Jobs(t.Context())) {
		now := must(s.Load(t.Context(), job.ID))
		require.Nil(t, now.Setout)
		require.NoError(t, s.KeepSetout(t.Context(), now.ID, now.Revision, []byte("{}")))
		require.Equal(t, "{}", string(must(s.Load(t.Context(), job.ID)).Setout))
	}
}
