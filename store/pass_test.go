package store

import (
	"crypto/sha256"
	"io/fs"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestPassesAreKeptOverRestartsAndTakenBack(t *testing.T) {
	s := fresh(t)
	phone, err := s.AddPass(t.Context(), "phone", sha256.Sum256([]byte("a")))
	require.NoError(t, err)
	tablet, err := s.AddPass(t.Context(), "tablet", sha256.Sum256([]byte("b")))
	require.NoError(t, err)
	_, err = s.AddPass(t.Context(), "the same", phone.Hash)
	require.Error(t, err)
	day := time.Date(2026, 4, 1, 0, 0, 0, 0, time.UTC)
	require.NoError(t, s.SeePass(t.Context(), phone.ID, day))
	require.NoError(t, s.NamePass(t.Context(), phone.ID, "Ann's phone"))
	phone.Seen, phone.Name = day, "Ann's phone"
	require.NoError(t, s.Close())

	s = opened(t, s.path)
	require.Equal(t, []Pass{phone, tablet}, must(s.Passes(t.Context())))
	require.NoError(t, s.TakePass(t.Context(), phone.ID))
	require.Equal(t, []Pass{tablet}, must(s.Passes(t.Context())))
	for _, err := range []error{s.TakePass(t.Context(), phone.ID), s.SeePass(t.Context(), phone.ID, day), s.NamePass(t.Context(), 9, "x")} {
		require.ErrorIs(t, err, fs.ErrNotExist)
	}
}
