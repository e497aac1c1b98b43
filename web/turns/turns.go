// Package turns lets rooms be worked out and their pages made in turns, so that memory is bounded,
// nobody is kept waiting by somebody else's large room, and nothing is worked out for nobody.
//
// Laws, each with a test:
//
//  1. So many rooms are worked on at once and no more, from the first step of solving to the last
//     byte of the page; and one more of a device at a job of which none is, and one of a device of
//     which none is. Of large rooms it is fewer, so that they never fill all places.
//  2. Those who wait are let in by turns: the device that was let in longest ago, of that its job,
//     and of those in the order they came; each among those of its size.
//  3. Who leaves gives up their place in the queue, or their turn, at once.
//  4. A room that is being solved is not solved a second time beside it: those who ask for the same
//     job file share one plan, and wait for it outside the queue. When the one it was begun for
//     leaves it is given up, and the next of them begins it anew.
//  5. A page is finished before its first byte is sent. While a slow reader takes it, its turn is
//     over and its plan forgotten; a large page waits packed, and while much waits no large room is
//     begun.
//  6. Who waits too long is told so (page.ErrBusy), and a request that takes too long is ended.
//  7. A room that takes long lets those who wait go first, again and again, until its request has
//     been here for two thirds of what one may wait; as many rest so as are worked on.
package turns

import (
	"cmp"
	"context"
	"runtime"
	"slices"
	"sync"
	"time"

	"coursewright/web/page"
)

// Limits bound what is worked on at once. A zero takes the usual one.
type Limits struct {
	Rooms  int           // worked on at once
	Large  int           // large ones beside them
	Pieces int64         // from which a room is large
	Packed int           // bytes of packed pages that wait for their readers while no large room is begun
	Wait   time.Duration // for a turn
	Whole  time.Duration // for a request, the waiting included
	Slice  time.Duration // after which a turn may be passed on to others
}

// orUsual fills in the usual limits. Rooms are more than there are processors, so that two that take
// long do not keep everybody else waiting; Wait and Whole stay under the time a connection has for
// its answer, so that whoever waits in vain is told.
func (l Limits) orUsual() Limits {
	return Limits{
		Rooms:  cmp.Or(l.Rooms, max(3, runtime.GOMAXPROCS(0)+1)),
		Large:  cmp.Or(l.Large, 1),
		Pieces: cmp.Or(l.Pieces, 20_000),
		Packed: cmp.Or(l.Packed, 64<<20),
		Wait:   cmp.Or(l.Wait, 30*time.Second),
		Whole:  cmp.Or(l.Whole, 45*time.Second),
		Slice:  cmp.Or(l.Slice, 50*time.Millisecond),
	}
}

// size tells large rooms from the others.
type size int

const (
	ordinary size = iota
	large
)

// queue lets requests in by their size.
type queue struct {
	mu     sync.Mutex
	free   [2]int        // places, by size; less than none where one is worked on beyond them
	has    map[asker]int // places for ordinary rooms, by who has them
	each   each          // and by device
	packed int           // bytes that wait for their readers
	most   int           // bytes that may wait while a large room is begun
	wait   time.Duration
	those  []*place // who wait, in order
	lately lately   // who was let in

	slice   time.Duration // the least time after which a turn is passed on
	held    time.Duration // how long a place was held of late
	rooms   int           // places for ordinary rooms
	resting int           // rooms whose turn was passed on
}

// place is somebody's place in the queue.
type place struct {
	who   asker
	size  size
	ready chan struct{} // closed when it is their turn
}

// enter waits for a turn. It fails when the context ends, and with page.ErrBusy when that takes too long.
func (q *queue) enter(ctx context.Context, who asker, s size) error {
	q.mu.Lock()
	mine := &place{who: who, size: s, ready: make(chan struct{})}
	q.those = append(q.those, mine)
	q.letIn()
	q.mu.Unlock()
	late := time.NewTimer(q.wait)
	defer late.Stop()
	select {
	case <-mine.ready:
		return nil
	case <-ctx.Done():
		q.giveUp(mine)
		return context.Cause(ctx)
	case <-late.C:
		q.giveUp(mine)
		return page.ErrBusy
	}
}

// giveUp takes a place out of the queue, or gives back the turn that came meanwhile.
func (q *queue) giveUp(p *place) {
	q.mu.Lock()
	defer q.mu.Unlock()
	if i := slices.Index(q.those, p); i >= 0 {
		q.those = slices.Delete(q.those, i, i+1)
		return
	}
	q.giveBack(p.who, p.size)
}

// leave ends a turn that began at a time.
func (q *queue) leave(who asker, s size, since time.Time) {
	q.mu.Lock()
	defer q.mu.Unlock()
	if s == ordinary {
		q.holding(time.Since(since))
	}
	q.giveBack(who, s)
}

// giveBack makes a place free. Its caller has mu.
func (q *queue) giveBack(who asker, s size) {
	q.free[s]++
	if s == ordinary {
		if q.has[who]--; q.has[who] == 0 {
			delete(q.has, who)
		}
		q.each.add(who.device, -1)
	}
	q.letIn()
}

// hold counts bytes that begin to wait for their reader, or, negative, that he has taken.
func (q *queue) hold(bytes int) {
	q.mu.Lock()
	defer q.mu.Unlock()
	q.packed += bytes
	q.letIn()
}

// letIn gives turns to those who may have one. Its caller has mu.
func (q *queue) letIn() {
	for i := q.next(); i >= 0; i = q.next() {
		p := q.those[i]
		q.those = slices.Delete(q.those, i, i+1)
		q.lately.note(p.who)
		q.free[p.size]--
		if p.size == ordinary {
			q.has[p.who]++
			q.each.add(p.who.device, 1)
		}
		close(p.ready)
	}
	if len(q.those) == 0 && len(q.has) == 0 {
		q.lately = lately{}
	}
}

// next is whose turn it is, as a place among those who wait, or -1.
func (q *queue) next() int {
	at := -1
	for i, p := range q.those {
		if !q.hasRoom(p) {
			continue
		}
		if at < 0 || q.lately.compare(p.who, q.those[at].who) < 0 {
			at = i
		}
	}
	return at
}

// hasRoom tells whether there is a place for somebody. Beyond those there are, one goes to a device's job
// that has none, and one more to a device that has none at all, which a device with many jobs cannot take
// from it. Its caller has mu.
func (q *queue) hasRoom(p *place) bool {
	if p.size == large {
		return q.free[large] > 0 && q.packed <= q.most
	}
	switch free := q.free[ordinary]; {
	case free > 0:
		return true
	case free == 0:
		return q.has[p.who] == 0
	default:
		return free == -1 && q.each[p.who.device] == 0
	}
}

// turn is one request's turn. It is taken when the first room is worked on, and kept to the end.
type turn struct {
	queue *queue
	who   asker
	came  time.Time // when the request came
	mu    sync.Mutex
	has   bool
	since time.Time // it has it
	size  size
}

// enter takes the turn if it is not taken yet. A turn for an ordinary room is exchanged for one for
// a large room. What is no request needs none.
func (t *turn) enter(ctx context.Context, s size) error {
	if t == nil {
		return nil
	}
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.has && t.size >= s {
		return nil
	}
	t.end()
	if err := t.queue.enter(ctx, t.who, s); err != nil {
		return err
	}
	t.has, t.size, t.since = true, s, time.Now()
	return nil
}

// end gives the turn back. Its caller has mu, or is the last to know of it.
func (t *turn) end() {
	if t.has {
		t.queue.leave(t.who, t.size, t.since)
		t.has = false
	}
}

// turnKey is where a request's context keeps its turn.
type turnKey struct{}

// turnOf is the turn of the request a context belongs to, or nil.
func turnOf(ctx context.Context) *turn {
	t, _ := ctx.Value(turnKey{}).(*turn)
	return t
}
