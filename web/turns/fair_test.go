package turns

import (
	"context"
	"net/http/httptest"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// queued is a queue with so many places, and who waits in it.
type queued struct {
	*queue
	t     *testing.T
	begun chan asker
}

func newQueued(t *testing.T, places int) queued {
	return queued{&queue{has: map[asker]int{}, free: [2]int{ordinary: places, large: 1}, wait: time.Hour, rooms: places}, t, make(chan asker, 100)}
}

// comes lets somebody ask for a place, and waits until it has one or stands in the queue.
func (q queued) comes(who asker) {
	before := q.waiting() + len(q.begun)
	go func() {
		if q.enter(context.Background(), who, ordinary) == nil {
			q.begun <- who
		}
	}()
	require.Eventually(q.t, func() bool { return q.waiting()+len(q.begun) > before }, long, time.Millisecond)
}

func (q queued) waiting() int {
	q.mu.Lock()
	defer q.mu.Unlock()
	return len(q.those)
}

// Law 2: a device that asks for very much lets others wait for one of its rooms, not for all, and of one
// device a job with much to do waits no longer than another.
func TestPlacesGoRoundAmongThoseWhoWait(t *testing.T) {
	q := newQueued(t, 1)
	much, more, other, phone := asker{"10.0.0.7", "/jobs/1"}, asker{"10.0.0.7", "/jobs/2"}, asker{"10.0.0.7", "/jobs/3"}, asker{"10.0.0.8", "/jobs/1"}
	q.comes(much)
	require.Equal(t, much, <-q.begun)
	q.comes(other) // and has the place beyond those there are
	require.Equal(t, other, <-q.begun)
	for range 20 {
		q.comes(much)
	}
	q.comes(more)
	q.comes(phone)
	require.Equal(t, phone, <-q.begun, "a device that has none, however many jobs another works on")
	q.comes(phone)
	q.leave(other, ordinary, time.Now())
	require.Equal(t, 22, q.waiting(), "by now it has one, and so has the other")
	q.leave(phone, ordinary, time.Now())
	require.ElementsMatch(t, []asker{more, phone}, []asker{<-q.begun, <-q.begun}, "a job of which nothing is worked on, and a device")
	assert.Equal(t, 20, q.waiting(), "who has one gets none beyond those there are")
	q.leave(phone, ordinary, time.Now())
	q.leave(more, ordinary, time.Now())
	q.leave(much, ordinary, time.Now())
	require.Equal(t, much, <-q.begun)
	assert.Equal(t, 19, q.waiting())
}

func TestWhoAsksIsADeviceAtAJob(t *testing.T) {
	for path, job := range map[string]string{"/": "/", "/jobs/7": "/jobs/7", "/jobs/7/sheets.pdf": "/jobs/7", "/jobs/7/piece/B-1": "/jobs/7"} {
		r := httptest.NewRequestWithContext(t.Context(), "GET", path, nil)
		r.RemoteAddr = "[fe80::1]:5000"
		assert.Equal(t, asker{"fe80::1", job}, askerOf(r))
	}
}
