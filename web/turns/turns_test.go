package turns

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/sync/errgroup"
	"pgregory.net/rapid"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/page"
)

// long is for what must come sooner or later; a test fails by it only when all hangs.
const long = time.Minute

// room is a job of one wall whose tile is so many millimetres wide: 304 × 202 of wall.
func room(t testing.TB, title string, tile int) survey.Job {
	t.Helper()
	job, err := survey.Read(fmt.Appendf(nil, `{"format": "coursewright-job/1", "title": %q, "units": "mm",
		"tile": {"width": "%d", "height": "%d"}, "joint": "2", "bond": {"kind": "stack"},
		"walls": [{"name": "wall", "width": "304", "left": {"stops": {"at": "0"}, "finish": "trim"}, "right": {"stops": {"at": "304"}, "finish": "trim"},
			"base": [{"meets": "tub", "readings": [{"at": "0", "drop": "101"}, {"at": "304", "drop": "101"}]}],
			"head": {"stops": {"at": "101"}, "finish": "trim"}}]}`, title, tile, tile))
	require.NoError(t, err)
	_, faults := job.Resolve()
	require.Empty(t, faults)
	return job
}

const (
	few  = 100
	many = 10 // a tile of 10 mm: some 400 pieces
)

// small are limits under which a room of some 400 pieces is large.
func small() Limits {
	return Limits{Rooms: 3, Large: 1, Pieces: 300, Wait: time.Hour, Whole: time.Hour}
}

// solver solves when it is told to, and stops when its context ends.
type solver struct {
	begun   chan string // the title of a room that is begun
	proceed chan bool   // one for each that may be done
	calls   atomic.Int64
	now     [2]atomic.Int64
	most    [2]atomic.Int64
}

func newSolver() *solver {
	return &solver{begun: make(chan string, 1000), proceed: make(chan bool, 1000)}
}

func (s *solver) solve(ctx context.Context, job survey.Job) (layout.Plan, error) {
	s.calls.Add(1)
	of := ordinary
	if strings.HasPrefix(job.Title, "large") {
		of = large
	}
	n := s.now[of].Add(1)
	defer s.now[of].Add(-1)
	for m := s.most[of].Load(); n > m && !s.most[of].CompareAndSwap(m, n); m = s.most[of].Load() {
	}
	s.begun <- job.Title
	select {
	case <-s.proceed:
		return layout.Plan{Room: survey.Room{Title: job.Title}}, nil
	case <-ctx.Done():
		return layout.Plan{}, context.Cause(ctx)
	}
}

// asked is one request to a desk, served in this process.
type asked struct {
	leave context.CancelFunc
	got   chan *httptest.ResponseRecorder
}

// ask lets a request solve a job at a desk and answer with the title of its plan.
func ask(t testing.TB, d *Desk, job survey.Job) asked {
	ctx, leave := context.WithCancel(t.Context())
	one := asked{leave, make(chan *httptest.ResponseRecorder, 1)}
	handler := d.Handler(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		plan, err := d.Solve(r.Context(), job)
		if err != nil {
			status, _, text := page.Explain(err)
			http.Error(w, text, status)
			return
		}
		_, _ = io.WriteString(w, plan.Room.Title)
	}))
	go func() {
		out := httptest.NewRecorder()
		handler.ServeHTTP(out, httptest.NewRequestWithContext(ctx, http.MethodGet, "/", nil))
		one.got <- out
	}()
	return one
}

func (a asked) answer(t testing.TB) *httptest.ResponseRecorder {
	t.Helper()
	select {
	case out := <-a.got:
		return out
	case <-time.After(long):
		t.Fatal("no answer")
		return nil
	}
}

// waiting waits until so many stand in the queue.
func waiting(t testing.TB, d *Desk, n int) {
	t.Helper()
	require.Eventually(t, func() bool {
		d.queue.mu.Lock()
		defer d.queue.mu.Unlock()
		return len(d.queue.those) == n
	}, long, time.Millisecond)
}

// idle holds that every place is free and nothing is remembered of what has ended.
func idle(t testing.TB, d *Desk) {
	t.Helper()
	l := d.limits
	d.queue.mu.Lock()
	defer d.queue.mu.Unlock()
	assert.Equal(t, [2]int{l.Rooms, l.Large}, d.queue.free)
	assert.Zero(t, d.queue.resting)
	assert.Empty(t, d.queue.those)
	assert.Zero(t, d.queue.packed)
	assert.Empty(t, d.running)
}

func TestSoManyRoomsAreWorkedOnAtOnceAndFewerLargeOnes(t *testing.T) {
	s := newSolver()
	d := New(s.solve, small())
	var all []asked
	for i := range 12 {
		all = append(all, ask(t, d, room(t, fmt.Sprint("room ", i), few)), ask(t, d, room(t, fmt.Sprint("large ", i), many)))
	}
	for range 4 {
		<-s.begun
	}
	waiting(t, d, 20)
	for range all {
		s.proceed <- true
	}
	for _, one := range all {
		assert.Equal(t, http.StatusOK, one.answer(t).Code)
	}
	assert.Equal(t, int64(3), s.most[ordinary].Load())
	assert.Equal(t, int64(1), s.most[large].Load())
	idle(t, d)
}

func TestThoseWhoWaitComeInOrder(t *testing.T) {
	s := newSolver()
	l := small()
	l.Rooms = 1
	d := New(s.solve, l)
	var all []asked
	for i := range 8 {
		all = append(all, ask(t, d, room(t, fmt.Sprint("room ", i), few)))
		waiting(t, d, max(0, i))
		if i == 0 {
			require.Equal(t, "room 0", <-s.begun)
		}
	}
	for i := range all[1:] {
		s.proceed <- true
		require.Equal(t, fmt.Sprint("room ", i+1), <-s.begun)
	}
	s.proceed <- true
	for i, one := range all {
		assert.Equal(t, fmt.Sprint("room ", i), one.answer(t).Body.String())
	}
	idle(t, d)
}

func TestWhoLeavesGivesUpTheirPlaceAndTheirTurn(t *testing.T) {
	s := newSolver()
	l := small()
	l.Rooms = 1
	d := New(s.solve, l)
	first := ask(t, d, room(t, "first", few))
	require.Equal(t, "first", <-s.begun)
	second := ask(t, d, room(t, "second", few))
	waiting(t, d, 1)
	third := ask(t, d, room(t, "third", few))
	waiting(t, d, 2)
	second.leave()
	second.answer(t)
	waiting(t, d, 1)
	first.leave()
	first.answer(t)
	require.Equal(t, "third", <-s.begun, "the turn of one who left goes to the next who stays")
	s.proceed <- true
	assert.Equal(t, "third", third.answer(t).Body.String())
	assert.Equal(t, int64(2), s.calls.Load())
	idle(t, d)
}

func TestTheSameRoomIsSolvedOnceForAll(t *testing.T) {
	s := newSolver()
	d := New(s.solve, small())
	job := room(t, "shared", few)
	first := ask(t, d, job)
	<-s.begun
	others := []asked{ask(t, d, job), ask(t, d, job), ask(t, d, job), ask(t, d, job), ask(t, d, job)}
	other := ask(t, d, room(t, "another", few))
	require.Equal(t, "another", <-s.begun, "those who wait for a plan keep no place from others")
	s.proceed <- true
	s.proceed <- true
	for _, one := range append(others, first) {
		assert.Equal(t, "shared", one.answer(t).Body.String())
	}
	other.answer(t)
	assert.Equal(t, int64(2), s.calls.Load())
	idle(t, d)
}

func TestWhatWasBegunForOneWhoLeftIsBegunAnewForTheNext(t *testing.T) {
	s := newSolver()
	d := New(s.solve, small())
	job := room(t, "shared", few)
	first := ask(t, d, job)
	<-s.begun
	second := ask(t, d, job)
	first.leave()
	first.answer(t)
	<-s.begun
	s.proceed <- true
	assert.Equal(t, "shared", second.answer(t).Body.String())
	idle(t, d)
}

func TestARunThatBreaksOffHoldsNobodyUp(t *testing.T) {
	calls := 0
	d := New(func(context.Context, survey.Job) (layout.Plan, error) {
		if calls++; calls == 1 {
			panic("broken")
		}
		return layout.Plan{}, nil
	}, small())
	job := room(t, "room", few)
	assert.Panics(t, func() {
		d.Handler(http.HandlerFunc(func(_ http.ResponseWriter, r *http.Request) { _, _ = d.Solve(r.Context(), job) })).
			ServeHTTP(httptest.NewRecorder(), httptest.NewRequest(http.MethodGet, "/", nil))
	})
	_, err := d.Solve(t.Context(), job)
	require.NoError(t, err)
	idle(t, d)
}

func TestWhoWaitsTooLongIsTold(t *testing.T) {
	s := newSolver()
	l := small()
	l.Rooms, l.Wait = 1, time.Millisecond
	d := New(s.solve, l)
	first := ask(t, d, room(t, "first", few))
	<-s.begun
	second := ask(t, d, room(t, "second", few)).answer(t)
	assert.Equal(t, http.StatusServiceUnavailable, second.Code)
	s.proceed <- true
	assert.Equal(t, "first", first.answer(t).Body.String(), "the first goes on")
	idle(t, d)
}

func TestARequestThatTakesTooLongIsEnded(t *testing.T) {
	s := newSolver()
	l := small()
	l.Whole = 10 * time.Millisecond
	d := New(s.solve, l)
	out := ask(t, d, room(t, "never done", few)).answer(t)
	assert.Equal(t, http.StatusServiceUnavailable, out.Code)
	assert.Contains(t, out.Body.String(), "less work")
	idle(t, d)
}

func TestAFaultTakesNoTurn(t *testing.T) {
	d := New(func(context.Context, survey.Job) (layout.Plan, error) {
		return layout.Plan{}, errors.New("never asked")
	}, small())
	job := room(t, "room", few)
	job.Joint.Plain = "wide"
	_, err := d.Solve(t.Context(), job)
	var faults survey.Faults
	require.ErrorAs(t, err, &faults)
}

func TestAPlanJustMadeIsRemembered(t *testing.T) {
	solved := 0
	d := New(func(context.Context, survey.Job) (layout.Plan, error) { solved++; return layout.Plan{}, nil }, small())
	job := room(t, "a", few)
	ask := func(title string) {
		job.Title = title
		_, err := d.Solve(t.Context(), job)
		require.NoError(t, err)
	}
	for _, title := range []string{"a", "a", "b", "c", "a"} {
		ask(title)
	}
	assert.Equal(t, 3, solved)
	for i := range mostRecent {
		ask(fmt.Sprint("other ", i))
	}
	assert.Equal(t, 3+mostRecent, solved)
	ask("a")
	assert.Equal(t, 4+mostRecent, solved, "the oldest is forgotten")
}

// TestTurnsAgainstChance lets requests of both sizes come, leave, be done and panic at random; at the
// end every place is free.
func TestTurnsAgainstChance(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		s := newSolver()
		d := New(s.solve, small())
		var all []asked
		for range rapid.IntRange(1, 30).Draw(r, "requests") {
			switch rapid.IntRange(0, 4).Draw(r, "what") {
			case 0:
				s.proceed <- true
			case 1:
				if len(all) > 0 {
					all[rapid.IntRange(0, len(all)-1).Draw(r, "who")].leave()
				}
			case 2:
				all = append(all, ask(t, d, room(t, fmt.Sprint("large ", rapid.IntRange(0, 2).Draw(r, "which")), many)))
			default:
				all = append(all, ask(t, d, room(t, fmt.Sprint("room ", rapid.IntRange(0, 5).Draw(r, "which")), few)))
			}
		}
		for range all {
			s.proceed <- true
		}
		for _, one := range all {
			one.answer(t)
		}
		assert.LessOrEqual(t, s.most[ordinary].Load(), int64(3))
		assert.LessOrEqual(t, s.most[large].Load(), int64(1))
		idle(t, d)
	})
}

// served is a real server with one page of so many bytes.
func served(t *testing.T, d *Desk, size int) *httptest.Server {
	t.Helper()
	text := strings.Repeat("0123456789abcdef", size/16)
	s := httptest.NewServer(d.Handler(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "/nothing" {
			w.WriteHeader(http.StatusNoContent)
			return
		}
		w.Header().Set("Content-Type", "text/plain")
		w.Header().Set("X-Of-The-Handler", "kept")
		w.WriteHeader(http.StatusTeapot)
		for part := range strings.SplitSeq(text, "f") {
			_, _ = io.WriteString(w, part)
		}
	})))
	t.Cleanup(s.Close)
	return s
}

func TestAnAnswerIsWhatTheHandlerWrote(t *testing.T) {
	for _, size := range []int{0, 16, 4096, packedFrom + 4096, 5 << 20} {
		s := served(t, New(newSolver().solve, small()), size)
		want := strings.Repeat("0123456789abcde", size/16)
		for _, packed := range []string{"", "gzip", "gzip;q=0", "br, GZIP;q=0.5", "identity"} {
			for _, method := range []string{http.MethodGet, http.MethodHead} {
				r, err := http.NewRequestWithContext(t.Context(), method, s.URL, nil)
				require.NoError(t, err)
				client := &http.Client{Transport: &http.Transport{DisableCompression: packed != "gzip"}}
				if packed != "" && packed != "gzip" {
					r.Header.Set("Accept-Encoding", packed)
				}
				answer, err := client.Do(r)
				require.NoError(t, err)
				body, err := io.ReadAll(answer.Body)
				require.NoError(t, err)
				answer.Body.Close()
				assert.Equal(t, http.StatusTeapot, answer.StatusCode)
				assert.Equal(t, "kept", answer.Header.Get("X-Of-The-Handler"))
				takes := strings.Contains(packed, "GZIP")
				assert.Equal(t, takes && len(want) > packedFrom, answer.Header.Get("Content-Encoding") == "gzip", packed)
				if method == http.MethodGet && !takes {
					assert.Equal(t, len(want), len(body))
					assert.Equal(t, want, string(body))
				}
				if packed == "identity" {
					assert.Equal(t, int64(len(want)), answer.ContentLength, "HEAD says how long GET is")
				}
			}
		}
		answer, err := http.Get(s.URL + "/nothing")
		require.NoError(t, err)
		answer.Body.Close()
		assert.Equal(t, http.StatusNoContent, answer.StatusCode)
	}
}

// TestASlowReaderKeepsNoTurn: a reader takes nothing of a long page; meanwhile others have their turns,
// and no large room is begun while too much waits to be taken.
func TestASlowReaderKeepsNoTurn(t *testing.T) {
	s := newSolver()
	l := small()
	l.Rooms, l.Packed = 1, 1
	d := New(s.solve, l)
	job := room(t, "long", few)
	var lines sync.Map
	server := httptest.NewServer(d.Handler(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if _, err := d.Solve(r.Context(), job); err != nil {
			return
		}
		for i := range 1 << 20 { // long, and hard to pack
			_, _ = fmt.Fprintf(w, "%x", uint64(i)*0x9e3779b97f4a7c15)
		}
		lines.Store("made", true)
	})))
	defer server.Close()
	s.proceed <- true
	conn, err := (&http.Transport{ReadBufferSize: 1}).RoundTrip(must(http.NewRequest(http.MethodGet, server.URL, nil)))
	require.NoError(t, err)
	<-s.begun

	other := ask(t, d, room(t, "another", few))
	s.proceed <- true
	assert.Equal(t, "another", other.answer(t).Body.String(), "the slow reader's turn is over")
	big := ask(t, d, room(t, "large", many))
	waiting(t, d, 1)
	_, made := lines.Load("made")
	assert.True(t, made)
	s.proceed <- true
	conn.Body.Close() // he gives up, and what waited for him is forgotten
	assert.Equal(t, "large", big.answer(t).Body.String())
	server.Close()
	idle(t, d)
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

func BenchmarkTurn(b *testing.B) {
	d := New(func(context.Context, survey.Job) (layout.Plan, error) { return layout.Plan{}, nil }, Limits{})
	var group errgroup.Group
	group.SetLimit(64)
	jobs := make([]survey.Job, 64)
	for i := range jobs {
		jobs[i] = room(b, fmt.Sprint(i), few)
	}
	for i := range b.N {
		group.Go(func() error { ask(b, d, jobs[i%64]).answer(b); return nil })
	}
	_ = group.Wait()
}

// A plan that is told of does for who does not ask why, and not the other way round.
func TestAPlanIsToldOfWhenAsked(t *testing.T) {
	solved, told := 0, 0
	d := New(func(context.Context, survey.Job) (layout.Plan, error) { solved++; return layout.Plan{}, nil }, small())
	tell := d.Telling(func(context.Context, survey.Job) (layout.Plan, error) { told++; return layout.Plan{}, nil })
	job, other := room(t, "one", few), room(t, "other", few)
	for _, solve := range []page.Solver{d.Solve, d.Solve, tell, tell, d.Solve} {
		_, err := solve(t.Context(), job)
		require.NoError(t, err)
	}
	assert.Equal(t, []int{1, 1}, []int{solved, told})
	assert.Len(t, d.recent.known, 1, "the one that is told of is kept in place of the other")
	for _, solve := range []page.Solver{tell, d.Solve} {
		_, err := solve(t.Context(), other)
		require.NoError(t, err)
	}
	assert.Equal(t, []int{1, 2}, []int{solved, told})
}
