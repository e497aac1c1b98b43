package survey

// beneath lets the tile of walls end under the caps and curbs that lie over them: round an
// outside corner a half wall has an end, as wide as it is thick, and its cap covers that too. It is
// one whose head stops at the same height and has no top or trim of its own.
func (r *resolver) beneath(room *Room) {
	for _, w := range room.Walls {
		t := w.Head.Top
		if t == nil || !t.Open() {
			continue
		}
		for _, e := range []EndFound{w.Left, w.Right} {
			if e.Outside == nil || e.Outside.Next < 0 {
				continue
			}
			h := &room.Walls[e.Outside.Next].Head
			if h.Meets || h.Top != nil || h.Trim != nil || h.Stops != w.Head.Stops.Moved(w.Head.Inset(*r.around)) {
				continue
			}
			h.Beneath = t
			h.edgedBy(t)
			h.Stops = h.Stops.Moved(-h.Inset(*r.around))
		}
	}
}
