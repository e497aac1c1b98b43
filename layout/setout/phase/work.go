package phase

// work is what was counted so far.
func (s *solver) work() int {
	sum := 0
	for _, w := range s.walls {
		sum += w.Work
	}
	return sum
}

// stopped tells whether the work is spent or nobody waits any more.
func (s *solver) stopped() bool {
	s.ended = s.ended || s.ctx.Err() != nil
	return s.ended || s.work() > s.limit
}
