package survey

import (
	"slices"

	"coursewright/layout/length"
)

// underCeiling refuses an opening with an inside that stands out through the ceiling
// wherever it may stand, as a niche under a slope does whose upper corner is past it: its
// sides and its top could not be laid. What merely sticks out of the tile, and has no
// inside, is asked about (layout/doubt). What stands out by no more than readings may be
// wrong is left to that too.
func (r *resolver) underCeiling(p path, w WallFound, doubt length.Length) {
	if !w.Head.Meets {
		return
	}
	for i, o := range w.Openings {
		if o.Inside == nil {
			continue
		}
		at, ceiling := w.Head.highestFor(o)
		top := o.Bottom.From + o.Height.From
		if top <= ceiling+2*doubt {
			continue
		}
		r.faults.add(p.at(i).dot("bottom"), o.Called()+" with its top at "+top.Plain(r.units, r.units.FineStep()),
			"a top no higher than the ceiling over it, which is at "+ceiling.Plain(r.units, r.units.FineStep())+" where it stands best, from "+at.Plain(r.units, r.units.FineStep()))
	}
}

// fixturesUnder refuses a fixture that would stand through the ceiling wherever it may
// stand: nothing can be fixed there. What stands out by no more than readings may be wrong
// is let be. A flush dish is looked at with the openings (flushClear).
func (r *resolver) fixturesUnder(p path, w WallFound, doubt length.Length) {
	if !w.Head.Meets {
		return
	}
	say := func(l length.Length) string { return l.Plain(r.units, r.units.FineStep()) }
	for i, f := range w.Fixtures {
		ceiling := lowest(w.Head.Readings, f.reach().From, f.reach().To)
		for k, hole := range f.Holes {
			if hole > ceiling+2*doubt {
				r.faults.add(p.at(i).dot("holes").at(k).dot("height"), say(hole),
					"a height under the ceiling, which is at "+say(ceiling)+" over "+f.Name)
			}
		}
		if top := f.Height.From + f.High.Half(); !f.Flush && f.Kind != GlassLine && top > ceiling+2*doubt {
			r.faults.add(p.at(i).dot("height"), f.Name+" with its top at "+say(top),
				"a top no higher than the ceiling over it, which is at "+say(ceiling))
		}
	}
}

// topsUnder refuses a top that lies higher than the ceiling goes where its wall stands: in
// the corner with the wall before or after it, or, where it meets the run of other walls,
// anywhere in a room in which they all go up to the ceiling.
func (r *resolver) topsUnder(typed []Wall, room *Room) {
	for i, w := range room.Walls {
		if w.Head.Top == nil || w.Head.Meets || !r.sound[i] {
			continue
		}
		ceiling, where := room.CeilingBeside(i)
		edge := w.Head.Stops.From + w.Head.Inset(*room)
		if where == "" || edge <= ceiling+2*room.Doubt {
			continue
		}
		p := path("walls").at(i).dot("head.stops.at")
		if m := typed[i].Head.Stops; m != nil && m.At == "" {
			p = path("walls").at(i).dot("head.stops.from")
		}
		say := func(l length.Length) string { return l.Plain(r.units, r.units.FineStep()) }
		r.faults.add(p, "the "+w.Head.Top.Of(w.Name)+" at "+say(edge),
			"a height no higher than the ceiling, which is at "+say(ceiling)+" "+where)
	}
}

// CeilingBeside is the lowest ceiling that is known over a wall whose own tile does not go up
// to it, and where that is; where is empty if none is known.
func (r Room) CeilingBeside(i int) (ceiling length.Length, where string) {
	w := r.Walls[i]
	for _, n := range []struct {
		wall int
		left bool // the end of that wall in the corner
	}{{w.Left.before(), false}, {w.Right.before(), true}} {
		if n.wall < 0 || !r.Walls[n.wall].Head.Meets {
			continue
		}
		next := r.Walls[n.wall]
		at := length.Length(0)
		if !n.left {
			at = next.Width
		}
		if y := At(next.Head.Readings, at); where == "" || y < ceiling {
			ceiling, where = y, "in the corner with "+next.Name
		}
	}
	if where == "" && (w.Left.Against || w.Right.Against) {
		return r.highestCeiling()
	}
	return ceiling, where
}

// before is the wall round the corner at an end, or -1.
func (e EndFound) before() int {
	if e.Outside != nil {
		return e.Outside.Next
	}
	return e.Beyond
}

// highestCeiling is the highest reading of the ceiling of a room in which all walls go up
// to it but for those that meet the run of others.
func (r Room) highestCeiling() (ceiling length.Length, where string) {
	for _, w := range r.Walls {
		if w.Left.Against || w.Right.Against {
			continue
		}
		if !w.Head.Meets {
			return 0, ""
		}
		for _, at := range w.Head.Readings {
			if where == "" || at.Value > ceiling {
				ceiling, where = at.Value, "at its highest, on "+w.Name
			}
		}
	}
	return ceiling, where
}

// highestFor is how high the ceiling is over an opening at its least width where it may
// stand best along the wall, and the left edge there. Between its readings the ceiling is
// straight, so that is at a limit of the range, at a reading with one of its edges, or
// where both edges are under the ceiling alike.
func (h HeadFound) highestFor(o OpeningFound) (left, ceiling length.Length) {
	wide := o.Width.From
	spots := []length.Length{o.Left.From, o.Left.To}
	for _, reading := range h.Readings {
		spots = append(spots, reading.At, reading.At-wide)
	}
	spots = slices.DeleteFunc(spots, func(x length.Length) bool { return x < o.Left.From || x > o.Left.To })
	slices.Sort(spots)
	for _, x := range level(h.Readings, spots, wide) {
		if y := lowest(h.Readings, x, x+wide); x == spots[0] || y > ceiling {
			left, ceiling = x, y
		}
	}
	return left, ceiling
}

// level adds to places, between which the ceiling over both edges of an opening is
// straight, those at which it is as high over the one as over the other.
func level(readings []Reading, places []length.Length, wide length.Length) []length.Length {
	out := places[:1:1]
	for i := 1; i < len(places); i++ {
		a, b := places[i-1], places[i]
		d, e := At(readings, a)-At(readings, a+wide), At(readings, b)-At(readings, b+wide)
		if d != e && (d < 0) != (e < 0) {
			out = append(out, a+length.Length(int64(b-a)*int64(d)/int64(d-e)))
		}
		out = append(out, b)
	}
	return out
}
