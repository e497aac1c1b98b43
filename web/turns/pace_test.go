package turns

import (
	"context"
	"errors"
	"net/http"
	"net/http/httptest"
	"runtime"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/page"
)

// slowly solves a room titled slow until it may end, asking its context all along, and others at once.
type slowly struct {
	begun chan bool
	end   chan bool
}

func (s slowly) solve(ctx context.Context, job survey.Job) (layout.Plan, error) {
	plan := layout.Plan{Room: survey.Room{Title: job.Title}}
	if job.Title != "slow" {
		return plan, nil
	}
	s.begun <- true
	for {
		select {
		case <-s.end:
			return plan, ctx.Err()
		default:
		}
		if err := ctx.Err(); err != nil {
			return layout.Plan{}, err
		}
		runtime.Gosched()
	}
}

// oneByOne are limits under which one room is worked on, and a turn may be passed on at once.
func oneByOne() Limits {
	return Limits{Rooms: 1, Wait: time.Hour, Whole: time.Hour, Slice: 1}
}

// Law 7: the only place is held by a room that does not end before the others are answered, and they
// are.
func TestARoomThatTakesLongLetsOthersGoFirst(t *testing.T) {
	s := slowly{make(chan bool, 1), make(chan bool, 1)}
	d := New(s.solve, oneByOne())
	slow := ask(t, d, room(t, "slow", few))
	<-s.begun
	for range 3 {
		for _, title := range []string{"a", "b"} {
			quick := ask(t, d, room(t, title, few))
			assert.Equal(t, title, quick.answer(t).Body.String())
		}
	}
	s.end <- true
	assert.Equal(t, "slow", slow.answer(t).Body.String())
	idle(t, d)
}

// Law 7: one who has been here for long keeps the turn.
func TestWhoHasBeenHereForLongIsNotHeldUp(t *testing.T) {
	s := slowly{make(chan bool, 1), make(chan bool, 1)}
	d := New(s.solve, oneByOne())
	d.queue.wait = time.Millisecond // the request has been here for longer
	mine := &turn{queue: d.queue, came: time.Now().Add(-time.Second), has: true, since: time.Now().Add(-time.Second)}
	d.queue.free[ordinary], d.queue.has[asker{}] = 0, 1
	first := &place{size: ordinary, ready: make(chan struct{})}
	d.queue.those = []*place{first}
	require.NoError(t, mine.passOn(t.Context()))
	assert.Len(t, d.queue.those, 1, "still waits")
	d.queue.wait = time.Hour
	go func() {
		<-first.ready // and is let in now
		d.queue.leave(asker{}, ordinary, time.Now())
	}()
	require.NoError(t, mine.passOn(t.Context()))
	assert.Empty(t, d.queue.those)
	mine.end()
	idle(t, d)
}

// Who leaves while others have the turn gives up the room, and nobody is held up.
func TestWhoLeavesWhileRestingIsDone(t *testing.T) {
	s := slowly{make(chan bool, 1), make(chan bool, 1)}
	d := New(s.solve, oneByOne())
	slow := ask(t, d, room(t, "slow", few))
	<-s.begun
	taken := make(chan bool)
	free := make(chan bool)
	other := d.Handler(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		_, err := d.Solve(r.Context(), room(t, "quick", few))
		assert.NoError(t, err)
		taken <- true
		<-free
	}))
	go other.ServeHTTP(discard{}, httptest.NewRequestWithContext(t.Context(), http.MethodGet, "/", nil))
	<-taken // the slow one rests
	waiting(t, d, 1)
	slow.leave()
	assert.Equal(t, statusOf(context.Canceled), slow.answer(t).Code)
	free <- true
	require.Eventually(t, func() bool {
		d.queue.mu.Lock()
		defer d.queue.mu.Unlock()
		return d.queue.free[ordinary] == 1 && d.queue.resting == 0
	}, long, time.Millisecond)
}

// A place that does not come back in time ends the room with the words for that.
func TestARestThatTakesTooLongIsTold(t *testing.T) {
	q := &queue{wait: time.Hour, rooms: 1, slice: 1}
	q.has = map[asker]int{{}: 1}
	mine := &turn{queue: q, came: time.Now(), has: true, since: time.Now().Add(-time.Second)}
	q.those = []*place{{size: ordinary, ready: make(chan struct{})}} // who is let in, and keeps the place
	p := &pace{turn: mine}
	ctx, cancel := context.WithCancelCause(t.Context())
	p.Context = ctx
	cancel(page.ErrBusy)
	err := p.Err()
	assert.True(t, errors.Is(err, page.ErrBusy), "%v", err)
	assert.Equal(t, err, p.Err(), "and stays so")
	assert.False(t, mine.has)
}

func statusOf(err error) int {
	status, _, _ := page.Explain(err)
	return status
}

// discard is an http.ResponseWriter that keeps nothing.
type discard struct{}

func (discard) Header() http.Header         { return http.Header{} }
func (discard) Write(p []byte) (int, error) { return len(p), nil }
func (discard) WriteHeader(int)             {}
