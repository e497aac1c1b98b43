package survey

import "coursewright/layout/length"

// flush adds the openings that flush soap dishes take from the field of a wall, after
// those of its strips: the dish with a joint round it. Its edges are best on joint
// lines, as those of a niche are.
func (r *resolver) flush(p path, typed []Fixture, w *WallFound, across bounds) {
	before := len(r.faults)
	own := len(w.Openings)
	var at []int
	for i, f := range w.Fixtures {
		if !f.Flush || i >= len(typed) || len(w.Base) == 0 {
			continue
		}
		joint := r.around.Joint
		wide, high := f.Width+2*joint, f.High+2*joint
		o := OpeningFound{Kind: SoapDish, Name: f.Name, Width: Span{wide, wide}, Height: Span{high, high},
			Bottom: f.Height.Moved(-f.High.Half() - joint)}
		along := Span{f.At, f.At}
		if typed[i].Along != nil {
			mute := resolver{units: r.units}
			along = mute.span(p, typed[i].Along, across)
		}
		o.Left = along.Moved(-f.Width.Half() - joint)
		near := f.Near
		o.Near.Y = &near
		if along.Free() {
			middle := f.At
			o.Near.X = &middle
		}
		w.Openings, at = append(w.Openings, o), append(at, i)
	}
	if len(r.faults) > before {
		return
	}
	for k, i := range at {
		r.flushClear(p.at(i), own+k, w)
	}
}

// flushClear checks that a flush dish stands inside the tile and clear of the other
// openings, wherever these may stand.
func (r *resolver) flushClear(p path, i int, w *WallFound) {
	o := w.Openings[i]
	left, right := w.Field()
	bottom, top := w.upright(o.Left.From, o.Left.To+o.Width.To)
	place := p.dot("at")
	if o.Left.Free() {
		place = p.dot("along")
	}
	half, up := o.Width.To.Half(), o.Height.To.Half()
	say := func(l length.Length) string { return l.Format(r.units, r.units.FineStep()) }
	switch {
	case o.Left.From <= left || o.Left.To+o.Width.To >= right:
		r.faults.add(place, "a flush dish from "+say(o.Left.From)+" to "+say(o.Left.To+o.Width.To),
			"a middle from "+say(left+half)+" to "+say(right-half)+", inside the tile of the wall")
		return
	case o.Bottom.From <= bottom || o.Bottom.To+o.Height.To >= top:
		r.faults.add(p.dot("height"), "a flush dish from "+say(o.Bottom.From)+" to "+say(o.Bottom.To+o.Height.To),
			"a middle from "+say(bottom+up)+" to "+say(top-up)+", inside the tile of the wall")
		return
	}
	e := o.Reach()
	for k, other := range w.Openings[:i] {
		if f := other.Reach(); f.Left < e.Right && e.Left < f.Right && f.Bottom < e.Top && e.Bottom < f.Top {
			r.faults.add(place, "a flush dish where "+clip(w.Openings[k].Key())+" may stand", "a place clear of it: measure it, or give either a narrower range")
			return
		}
	}
}

// dish is the opening that a flush dish takes from the field, by its place among the
// wall's fixtures; -1 where it takes none.
func (w WallFound) dish(fixture int) int {
	n := 0
	for i, f := range w.Fixtures {
		if f.Flush && i == fixture {
			break
		}
		if f.Flush {
			n++
		}
	}
	for k, o := range w.Openings {
		if o.Kind == SoapDish {
			if n == 0 {
				return k
			}
			n--
		}
	}
	return -1
}

// Dish is where a flush dish stands: the hole that the field leaves for it, with the
// marks placed.
func (w WallFound) Dish(fixture int, p Placed) (Edges, bool) {
	k := w.dish(fixture)
	if k < 0 || k >= len(p.Openings) || !w.Fixtures[fixture].Flush {
		return Edges{}, false
	}
	return p.Openings[k], true
}
