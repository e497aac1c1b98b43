package store

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is in use grows with what is kept and shrinks when a job is erased, whatever size the file has by then.
func TestInUseIsWhatIsKept(t *testing.T) {
	s := fresh(t)
	at := func() int64 {
		n, err := s.InUse(t.Context())
		require.NoError(t, err)
		return n
	}
	empty := at()
	assert.Positive(t, empty)
	job, err := s.Create(t.Context(), "large", []byte(strings.Repeat("x", 1<<20)))
	require.NoError(t, err)
	assert.InDelta(t, empty+1<<20, at(), 1<<16)
	require.NoError(t, s.Delete(t.Context(), job.ID))
	_, err = s.Erase(t.Context(), job.ID)
	require.NoError(t, err)
	assert.InDelta(t, empty, at(), 1<<16)
}
