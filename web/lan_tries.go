package web

import (
	"net/netip"
	"sync"
	"time"
)

// How many wrong codes are heard, and for how long nobody is heard after them.
// The limit for everybody is larger, so that one guest who mistypes does not
// lock out the others; it also bounds what is remembered.
const (
	triesOfOne = 10
	triesOfAll = 100
	lockedFor  = 10 * time.Minute
)

// tries counts wrong codes, by address and of everybody. Its owner takes mu.
type tries struct {
	mu  sync.Mutex
	of  map[netip.Prefix]*count
	all count
}

// count is how many wrong codes came one after the other.
type count struct {
	wrong int
	last  time.Time
	until time.Time // nobody is heard before
}

// locked tells how long an address must wait, and whether everybody must.
func (t *tries) locked(from netip.Addr, now time.Time) (wait time.Duration, all bool) {
	if wait := t.all.until.Sub(now); wait > 0 {
		return wait, true
	}
	if one := t.of[household(from)]; one != nil {
		return max(0, one.until.Sub(now)), false
	}
	return 0, false
}

// wrong counts a wrong code and gives how many more the address has.
func (t *tries) wrong(from netip.Addr, now time.Time) (left int) {
	for at, one := range t.of {
		if one.stale(now) {
			delete(t.of, at)
		}
	}
	if t.of == nil {
		t.of = map[netip.Prefix]*count{}
	}
	at := household(from)
	if t.of[at] == nil {
		t.of[at] = &count{}
	}
	t.all.add(now, triesOfAll)
	return t.of[at].add(now, triesOfOne)
}

// forget clears the count of an address that gave the right code.
func (t *tries) forget(from netip.Addr) { delete(t.of, household(from)) }

// stale tells whether the last wrong code was long ago.
func (c *count) stale(now time.Time) bool { return now.Sub(c.last) >= lockedFor }

// add counts one more and locks at the limit.
func (c *count) add(now time.Time, limit int) (left int) {
	if c.stale(now) {
		c.wrong = 0
	}
	c.wrong++
	c.last = now
	if c.wrong < limit {
		return limit - c.wrong
	}
	c.wrong, c.until = 0, now.Add(lockedFor)
	return 0
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
