package turns

import (
	"context"
	"sync"
	"time"
)

// A room that takes long to solve is solved in slices: where others wait for a turn, its own is
// passed on to them, and it goes on once those have had theirs. A slice is twice as long as places
// were held of late, so that rooms that are all alike are not cut up, which would make everybody wait
// for the last; and who has been here for long is left alone and comes to an end.

// pace is the context of a room that is being solved. The solver asks it now and then whether it has
// ended (page.Solver), and is held up there while others have its place.
type pace struct {
	context.Context
	turn *turn

	mu  sync.Mutex
	err error // of a place that was not given back
}

// Err implements context.Context.
func (p *pace) Err() error {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.err == nil {
		p.err = p.turn.passOn(p.Context)
	}
	if p.err != nil {
		return p.err
	}
	return p.Context.Err()
}

// paced lets a request's turn be passed on by what is solved in its context.
func (d *Desk) paced(ctx context.Context) *pace { return &pace{Context: ctx, turn: turnOf(ctx)} }

// passOn lets others have the turn, if they wait and it has lasted for a slice, and takes it again.
func (t *turn) passOn(ctx context.Context) error {
	if t == nil {
		return nil
	}
	t.mu.Lock()
	defer t.mu.Unlock()
	if !t.has || t.size == large || !t.queue.rest(t.since, t.came) {
		return nil
	}
	t.end()
	err := t.queue.enter(ctx, t.who, t.size)
	t.queue.rested()
	if t.has = err == nil; t.has {
		t.since = time.Now()
	}
	return err
}

// rest tells whether a turn that began at a time, of a request that came at another, is to be passed
// on: a room less is being worked on then, and as many may rest as are worked on.
func (q *queue) rest(since, came time.Time) bool {
	q.mu.Lock()
	defer q.mu.Unlock()
	held := time.Since(since)
	if held < max(q.slice, 2*q.held) || time.Since(came) > q.wait*2/3 || q.resting == q.rooms || !q.awaited(ordinary) {
		return false
	}
	q.resting++
	return true
}

func (q *queue) rested() {
	q.mu.Lock()
	defer q.mu.Unlock()
	q.resting--
}

// awaited tells whether somebody waits for a place. Its caller has mu.
func (q *queue) awaited(s size) bool {
	for _, p := range q.those {
		if p.size == s {
			return true
		}
	}
	return false
}

// holding notes how long a place was held. Its caller has mu.
func (q *queue) holding(d time.Duration) { q.held += (d - q.held) / 16 }
