package survey

// beneath lets the tile of walls end under the caps and curbs that lie over them: round outside
// corners a half wall has an end, as wide as it is thick, and a back, and its cap covers these too. They
// are those whose heads stop at the same height and have no top or trim of their own.
func (r *resolver) beneath(room *Room) {
	for i, w := range room.Walls {
		if t := w.Head.Top; t == nil || !t.Open() {
			continue
		}
		r.round(room, i, func(e WallFound) EndFound { return e.Left })
		r.round(room, i, func(e WallFound) EndFound { return e.Right })
	}
}

// round goes from a wall with a cap round one outside corner after the other, as far as the cap
// lies over what is there.
func (r *resolver) round(room *Room, from int, end func(WallFound) EndFound) {
	head := room.Walls[from].Head
	stops := head.Stops.Moved(head.Inset(*r.around))
	for e := end(room.Walls[from]); e.Outside != nil && e.Outside.Next >= 0; {
		w := &room.Walls[e.Outside.Next]
		if h := &w.Head; h.Meets || h.under() != nil || h.Trim != nil || h.Stops != stops {
			return
		}
		w.Head.Beneath = head.Top
		w.Head.edgedBy(head.Top)
		w.Head.Stops = w.Head.Stops.Moved(-w.Head.Inset(*r.around))
		e = end(*w)
	}
}
