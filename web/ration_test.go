package web

import (
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/store"
	"coursewright/web/door"
)

// A device of the network fills no more than the ration: then it is told so, reads on, and this machine saves on
// and sees it at the foot of its pages.
func TestDevicesOfTheNetworkFillARationAndNoMore(t *testing.T) {
	kept, err := store.Open(t.Context(), filepath.Join(t.TempDir(), "jobs.db"))
	require.NoError(t, err)
	t.Cleanup(func() { kept.Close() })
	s := &Server{Store: kept, Ration: 2 << 20, Door: &door.Door{Network: true}}
	saves := func(method, path, from string) (status int, page string) {
		r := httptest.NewRequest(method, path, nil)
		r.RemoteAddr = from + ":1234"
		answer := httptest.NewRecorder()
		s.rationed(http.HandlerFunc(func(http.ResponseWriter, *http.Request) {})).ServeHTTP(answer, r)
		return answer.Code, answer.Body.String()
	}
	const phone, here = "192.168.7.9", "127.0.0.1"
	status, _ := saves(http.MethodPost, "/jobs", phone)
	assert.Equal(t, http.StatusOK, status)
	for range 2 {
		_, err = kept.Create(t.Context(), "large", []byte(strings.Repeat("x", 1<<20)))
		require.NoError(t, err)
	}
	status, page := saves(http.MethodPost, "/jobs", phone)
	assert.Equal(t, http.StatusInsufficientStorage, status)
	assert.Contains(t, page, "Everything saved before is safe.")
	for _, one := range [][3]string{{http.MethodGet, "/jobs/1", phone}, {http.MethodPost, "/open", phone}, {http.MethodPost, "/jobs", here}} {
		status, _ = saves(one[0], one[1], one[2])
		assert.Equal(t, http.StatusOK, status, one)
	}
	size, full := s.filled(t.Context())
	assert.Equal(t, "3 MB", size)
	assert.True(t, full)
}
