package bench_test

import (
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/store"
	"coursewright/web"
	"coursewright/web/page"
	"coursewright/web/turns"
)

// BenchmarkEdit is a whole edit over HTTP: form in, solved, saved, page out. The room is one of two that
// have just been solved, so it is what an edit costs beside the solver.
func BenchmarkEdit(b *testing.B) { edits(b, func(i int) string { return strings.Repeat("x", 1+i%2) }) }

// BenchmarkEditAnew is the same where every edit makes another room.
func BenchmarkEditAnew(b *testing.B) { edits(b, strconv.Itoa) }

// edits changes the title of a job, which is enough for the server to solve it anew. cpu-ms/op is what that takes of
// a processor, whatever else the machine does.
func edits(b *testing.B, title func(int) string) {
	for _, name := range []string{"one-wall", "alcove", "mosaic"} {
		b.Run(name, func(b *testing.B) {
			file, err := os.ReadFile("../../testdata/jobs/" + name + ".json")
			require.NoError(b, err)
			kept, err := store.Open(b.Context(), filepath.Join(b.TempDir(), "jobs.db"))
			require.NoError(b, err)
			defer kept.Close()
			job, err := survey.Read(file)
			require.NoError(b, err)
			document, err := survey.Write(job)
			require.NoError(b, err)
			now, err := kept.Create(b.Context(), job.Title, document)
			require.NoError(b, err)
			h := (&web.Server{Store: kept, Static: static.Files, Log: slog.New(slog.NewTextHandler(io.Discard, nil)), Solve: turns.ByJob(func() page.Solver { return new(layout.Keeper).Quick }), Tell: layout.Solve}).Handler()
			began := busy(b)
			defer func() { b.ReportMetric(float64((busy(b)-began).Microseconds())/1000/float64(b.N), "cpu-ms/op") }()
			for i := 0; b.Loop(); i++ {
				now, err = kept.Load(b.Context(), now.ID)
				require.NoError(b, err)
				body := url.Values{"title": {title(i)}, "revision": {strconv.FormatInt(now.Revision, 10)}}
				r := httptest.NewRequest(http.MethodPost, "/jobs/1", strings.NewReader(body.Encode()))
				r.Host = "localhost"
				r.RemoteAddr = "127.0.0.1:1"
				r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
				r.Header.Set("X-Bench", "live")
				w := httptest.NewRecorder()
				h.ServeHTTP(w, r)
				require.Equal(b, http.StatusOK, w.Code)
			}
		})
	}
}

// busy is how long this process has kept processors busy.
func busy(b *testing.B) time.Duration {
	var used syscall.Rusage
	require.NoError(b, syscall.Getrusage(syscall.RUSAGE_SELF, &used))
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}
