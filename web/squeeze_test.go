package web

import (
	"bytes"
	"compress/gzip"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What goes over the network is packed, and unpacked it is the same; on this machine it is not packed.
func TestTheNetworkGetsItPacked(t *testing.T) {
	text := strings.Repeat("One tile beside the other. ", 400)
	h := squeezed(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		_, _ = io.WriteString(w, text)
	}))
	for from, packed := range map[string]bool{"192.168.7.9:1234": true, "127.0.0.1:1234": false} {
		r := httptest.NewRequest(http.MethodGet, "/", nil)
		r.RemoteAddr = from
		r.Header.Set("Accept-Encoding", "gzip")
		answer := httptest.NewRecorder()
		h.ServeHTTP(answer, r)
		body := answer.Body.Bytes()
		require.Equal(t, packed, answer.Header().Get("Content-Encoding") == "gzip", from)
		if packed {
			assert.Less(t, len(body), len(text)/10)
			reader, err := gzip.NewReader(bytes.NewReader(body))
			require.NoError(t, err)
			body, err = io.ReadAll(reader)
			require.NoError(t, err)
		}
		assert.Equal(t, text, string(body), from)
	}
}
