package door

import (
	"net/netip"
	"sync"
	"time"
)

// An address may mistype the code so often without waiting. After that each wrong code is answered
// the later the more there were, up to a limit, and one at a time. Whoever stops is forgotten after
// a while.
const (
	freeTries  = 10
	longest    = 8 * time.Second
	forgotten  = 10 * time.Minute
	mostCounts = 1000 // addresses that are remembered; of more, the ones over are not slowed
)

// tries counts wrong codes, by address.
type tries struct {
	mu sync.Mutex
	of map[netip.Prefix]*count
}

// count is how many wrong codes came one after the other.
type count struct {
	wrong   int
	last    time.Time
	waiting bool // one of them is waiting for its answer
}

// slowed is what comes of a wrong code.
type slowed struct {
	left   int           // how many more go without waiting
	pause  time.Duration // how long the answer to this one takes
	busy   bool          // another one from there is waiting already
	begins bool          // this is the first that waits
}

// wrong counts a wrong code. Where it has to wait, done must be called once it has.
func (t *tries) wrong(from netip.Addr, now time.Time) (s slowed, done func()) {
	t.mu.Lock()
	defer t.mu.Unlock()
	one := t.count(household(from), now)
	if one == nil {
		return slowed{}, func() {}
	}
	one.wrong++
	one.last = now
	if one.wrong <= freeTries {
		return slowed{left: freeTries - one.wrong}, func() {}
	}
	if one.waiting {
		return slowed{busy: true}, func() {}
	}
	one.waiting = true
	over := min(one.wrong-freeTries-1, 10)
	s = slowed{pause: min(time.Second<<over, longest), begins: over == 0}
	return s, func() {
		t.mu.Lock()
		defer t.mu.Unlock()
		one.waiting = false
	}
}

// count gives the count of an address, a new one if there is room for it. Its caller has mu.
func (t *tries) count(at netip.Prefix, now time.Time) *count {
	for at, one := range t.of {
		if now.Sub(one.last) >= forgotten && !one.waiting {
			delete(t.of, at)
		}
	}
	if t.of == nil {
		t.of = map[netip.Prefix]*count{}
	}
	if t.of[at] == nil && len(t.of) < mostCounts {
		t.of[at] = &count{}
	}
	return t.of[at]
}

// right forgets the wrong codes of an address that gave the right one.
func (t *tries) right(from netip.Addr) {
	t.mu.Lock()
	defer t.mu.Unlock()
	delete(t.of, household(from))
}

// household is what counts as one address: a device has one IPv4 address, but
// may take any number of IPv6 addresses with the same first half.
func household(a netip.Addr) netip.Prefix {
	bits := 32
	if a = a.Unmap().WithZone(""); a.Is6() {
		bits = 64
	}
	p, _ := a.Prefix(bits) // an address that did not read has none, and shares one count
	return p
}
