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
	"coursewright/web/page"
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
		s.rationed(routeOf(t, method, path), http.HandlerFunc(func(http.ResponseWriter, *http.Request) {})).ServeHTTP(answer, r)
		return answer.Code, answer.Body.String()
	}
	const phone, here = "192.168.7.9", "127.0.0.1"
	status, _ := saves(http.MethodPost, "/jobs", phone)
	assert.Equal(t, http.StatusOK, status)
	for range 2 {
		_, err = kept.Create(t.Context(), "large", []byte(strings.Repeat("x", 1<<20)))
		require.NoError(t, err)
	}
	status, said := saves(http.MethodPost, "/jobs", phone)
	assert.Equal(t, http.StatusInsufficientStorage, status)
	assert.Contains(t, said, "Everything saved before is safe.")
	for _, one := range [][3]string{{http.MethodGet, "/jobs/1", phone}, {http.MethodPost, "/open", phone}, {http.MethodPost, "/jobs/1/look", phone}, {http.MethodPost, "/jobs", here}} {
		status, _ = saves(one[0], one[1], one[2])
		assert.Equal(t, http.StatusOK, status, one)
	}
	for _, path := range []string{"/jobs/1", "/jobs/1/undo", "/jobs/1/choices", "/jobs/1/bathroom", "/jobs/import"} {
		status, _ = saves(http.MethodPost, path, phone)
		assert.Equal(t, http.StatusInsufficientStorage, status, path)
	}
	size, full := s.filled(t.Context())
	assert.Equal(t, "3 MB", size)
	assert.True(t, full)
}

// routeOf is the route of the table that a path is of.
func routeOf(t *testing.T, method, path string) page.Route {
	t.Helper()
	like := strings.Replace(path, "/jobs/1", "/jobs/{id}", 1)
	all := door.New(nil).Routes()
	for _, routes := range pages {
		all = append(all, routes(page.Site{})...)
	}
	for _, one := range all {
		if one.Method == method && one.Path == like {
			return one
		}
	}
	t.Fatalf("no route %s %s", method, path)
	return page.Route{}
}
