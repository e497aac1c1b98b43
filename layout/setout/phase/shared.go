package phase

import (
	"coursewright/layout/merit"
	"coursewright/layout/piece"
)

// Where rim and head are to be alike ("shared"), the walls of a room are judged together: which set-out of one wall is best hangs
// on those of the others. What is sure of a line is a bound as before, since rim and head may come out alike in any case
// (merit.Merit.Part). Of the lines that come first by it those set-outs of every wall are gathered that may be part of a better
// room, and the best room is made of them.

// shared tells whether rim and head are to be alike.
func (s *solver) shared() bool { return s.order.Shared() == merit.Rim }

// setOut is a set-out of every wall of a line, and what they give together.
type setOut struct {
	line  *trial
	walls []*Counted
	merit merit.Merit
}

// taken is the line with these set-outs.
func (o *setOut) taken() *trial {
	for i, h := range o.line.hunts {
		h.best = o.walls[i]
	}
	o.line.bound = o.merit
	return o.line
}

// fits are set-outs of every wall of a line, of which those are sought that go together best: as good as the wall's best by the terms
// that come before, one for each least rim and least head.
type fits struct {
	*solver
	line  *trial
	walls [][]*Counted
}

func fitsOn(t *trial, s *solver) *fits { return &fits{s, t, make([][]*Counted, len(t.hunts))} }

// gather looks on at the line, of which the best start of every wall is known, as long as it may give a better room than the best, and
// gives the best room then. It is not done where the work ends first.
func (f *fits) gather(best *setOut) (_ *setOut, done bool) {
	all := make([][]*stretch, len(f.walls))
	defer func() {
		for i, h := range f.line.hunts {
			for _, x := range all[i] {
				h.queue.add(x)
			}
		}
	}()
	for !f.stopped() {
		i := f.waits(all, best)
		if i < 0 {
			return best, true
		}
		h := f.line.hunts[i]
		if h.queue.first().exact == nil {
			f.look(h)
			continue
		}
		x := h.queue.take()
		all[i] = append(all[i], x)
		best = f.add(i, x.exact, best)
	}
	return best, false
}

// waits is the wall whose next start promises the best room, with the least that the other walls may give, or −1 if no room would be
// better than the best. All are starts that were gathered.
func (f *fits) waits(all [][]*stretch, best *setOut) int {
	wall, promised := -1, merit.Merit{}
	for i, h := range f.line.hunts {
		if h.queue.empty() {
			continue
		}
		m := h.queue.first().merit
		for k, other := range f.line.hunts {
			switch {
			case k == i:
			case len(all[k]) > 0:
				m = m.Plus(&all[k][0].merit)
			default:
				m = m.Plus(&other.queue.first().merit)
			}
		}
		if (best == nil || f.order.Better(&m, &best.merit)) && (wall < 0 || f.order.Better(&m, &promised)) {
			wall, promised = i, m
		}
	}
	return wall
}

// add adds a set-out of one wall, and gives the best room then.
func (f *fits) add(wall int, c *Counted, best *setOut) *setOut {
	kept := f.walls[wall][:0]
	for _, have := range f.walls[wall] {
		before, _ := f.order.Until(&c.Merit, &have.Merit, merit.Rim)
		alike := before == 0 && leasts(&c.Merit) == leasts(&have.Merit)
		switch worse, _ := f.order.Compare(&c.Merit, &have.Merit); {
		case before > 0, alike && worse >= 0:
			return best
		case before < 0, alike:
		default:
			kept = append(kept, have)
		}
	}
	f.walls[wall] = append(kept, c)
	return f.with(wall, c, make([]*Counted, 0, len(f.walls)), best)
}

// with is the best room, with those that have a set-out of one wall, and some of the first walls.
func (f *fits) with(wall int, c *Counted, first []*Counted, best *setOut) *setOut {
	switch n := len(first); {
	case n == len(f.walls):
		if m := together(first); best == nil || f.order.Better(&m, &best.merit) {
			best = &setOut{f.line, append([]*Counted(nil), first...), m}
		}
	case n == wall:
		best = f.with(wall, c, append(first, c), best)
	default:
		for _, other := range f.walls[n] {
			best = f.with(wall, c, append(first, other), best)
		}
	}
	return best
}

// together is what set-outs of all walls give, but for their corners.
func together(walls []*Counted) (m merit.Merit) {
	for _, c := range walls {
		m = m.Plus(&c.Merit)
	}
	m.Part = false
	return m
}

// leasts are the least rim and the least head, or nothing where all tiles are whole there.
func leasts(m *merit.Merit) (out [2]piece.Share) {
	for i, list := range [...][]piece.Share{m.Rim, m.Head} {
		if len(list) > 0 {
			out[i] = list[0]
		}
	}
	return out
}

// total takes the best of what was counted on a line, some of it before, and adds up what the walls give.
func (s *solver) total(t *trial, before []*Counted) {
	best := make([]*Counted, 0, len(t.hunts))
	for _, h := range t.hunts {
		best = append(best, h.best)
	}
	r := &setOut{t, best, together(best)}
	if s.shared() {
		fits := fitsOn(t, s)
		r = nil
		for i, h := range t.hunts {
			r = fits.add(i, h.best, r)
			if before != nil {
				r = fits.add(i, before[i], r)
			}
			for _, x := range h.queue.items {
				if x.exact != nil {
					r = fits.add(i, x.exact, r)
				}
			}
		}
	}
	r.taken()
}
