package phase

// counted is how many of the starts seen on a line that is finished are counted.
const counted = 5

// finish looks so often at the most promising starts of every wall of a line, and takes the best
// that was counted. Of those whose corners alone were cut it counts the most promising.
func (s *solver) finish(t *trial, looks int) {
	for _, h := range t.hunts {
		for steps := 0; h.best == nil && steps < looks; steps++ {
			s.look(h)
		}
		s.bestCounted(h)
	}
	s.total(t, nil)
}

// bestCounted takes the best start of a wall that was counted, after counting the most promising, where the
// best is not known.
func (s *solver) bestCounted(h *hunt) {
	if h.best != nil {
		return
	}
	for n := range counted {
		if x := s.nearest(h, n == 0); x != nil {
			c := h.wall.Count(*x.at)
			x.exact, x.merit = &c, c.Merit
		}
	}
	for _, x := range h.queue.items {
		if x.exact != nil && (h.best == nil || s.order.Better(&x.merit, &h.best.Merit)) {
			h.best = x.exact
		}
	}
}

// nearest is the most promising start that is not counted, of those looked at most
// closely: those with their corners cut. Where there is none it is the first, if any is needed.
func (s *solver) nearest(h *hunt, needed bool) (best *stretch) {
	for _, x := range h.queue.items {
		if x.close && x.exact == nil && (best == nil || s.order.Better(&x.merit, &best.merit)) {
			best = x
		}
	}
	if best == nil && needed {
		best = s.placedFirst(h)
	}
	return best
}

// placedFirst is the most promising start with its marks placed, where they may stand.
func (s *solver) placedFirst(h *hunt) *stretch {
	x := *h.queue.first()
	if x.choice == nil && len(h.wall.axes) > 0 {
		x.choice = h.wall.choose(&x, h)
	}
	if x.choice != nil {
		x.choice.ready()
	}
	if x.choice != nil && x.pick == nil {
		x.pick = make([]int, len(h.wall.axes))
	}
	x.at, x.close = &Setting{Line: h.line, Edge: x.edge, Placed: h.wall.outer}, true
	if x.choice != nil {
		if p, ok := x.choice.placed(x.pick); ok {
			x.at.Placed = p
		}
	}
	h.queue.items = append(h.queue.items, &x)
	return &x
}
