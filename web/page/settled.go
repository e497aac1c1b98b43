package page

import (
	"bytes"
	"crypto/sha256"
	"sync"
)

// Settled remembers which set-outs this program has itself seen come of the job files they are kept with,
// so that who needs no plan need not solve a room to know that it stands. The same job gives the
// same set-out for as long as a program runs.
type Settled struct {
	mu    sync.Mutex
	known map[[sha256.Size]byte]bool
}

// mostSettled is how many are remembered, in some 200 kB; when they are more all are forgotten.
const mostSettled = 4096

// has tells whether a set-out is known to come of a job file; nil knows of none.
func (s *Settled) has(document, setout []byte) bool {
	if s == nil {
		return false
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.known[sumOf(document, setout)]
}

// Note remembers that a set-out comes of a job file.
func (s *Settled) Note(document, setout []byte) {
	if s == nil || setout == nil {
		return
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.known == nil || len(s.known) == mostSettled {
		s.known = map[[sha256.Size]byte]bool{}
	}
	s.known[sumOf(document, setout)] = true
}

// sumOf tells job files with their set-outs apart. Neither holds a zero byte.
func sumOf(document, setout []byte) [sha256.Size]byte {
	return sha256.Sum256(bytes.Join([][]byte{document, setout}, []byte{0}))
}
