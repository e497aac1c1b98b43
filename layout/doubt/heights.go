package doubt

import (
	"cmp"
	"fmt"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// heights asks about readings that lie far from the others of the same rim,
// floor or ceiling.
func (a *asker) heights() {
	for _, g := range a.groups() {
		if g[0].kind == survey.Ceiling {
			if len(a.places(g)) < 4 || !a.slipped(g, a.inch(), false) {
				a.ceiling(g)
			}
		} else {
			a.level(g)
		}
	}
}

// inch is how far a rim or ceiling may be out before it is asked about: 1 in or
// 25 mm. Common practice, no source.
func (a *asker) inch() length.Length { return a.either(length.Inch, 25*length.Millimetre) }

// level asks about the readings that spread over more than an inch. What
// drains may fall besides, by a quarter inch in the foot (NTCA, TCNA).
func (a *asker) level(g group) {
	limit := a.inch() + 2*a.room.Doubt
	if g[0].kind != survey.Tub {
		for _, l := range g {
			limit += (l.last().at - l.readings[0].at) / 48
		}
	}
	smooth := a.smooth(g)
	if a.slipped(g, limit, smooth) {
		return
	}
	if smooth {
		a.tilt(g, limit)
		return
	}
	for _, r := range suspects(g.readings(), limit, a.usual(g[0].kind)) {
		a.askHeight(g, r, a.expected(g, r))
	}
}

// smooth tells whether every reading lies where those round it expect it, within
// an inch: then the thing itself is out of level, and no reading is.
func (a *asker) smooth(g group) bool {
	for _, r := range g.readings() {
		if (r.up - a.expected(g, r)).Abs() > a.inch() {
			return false
		}
	}
	return true
}

// tilt asks about a rim that is out of level by more than the limit, at its
// lowest reading.
func (a *asker) tilt(g group, limit length.Length) {
	low, high := g.readings()[0], g.readings()[0]
	for _, r := range g.readings() {
		if r.up < low.up {
			low = r
		}
		if r.up > high.up {
			high = r
		}
	}
	if high.up-low.up > limit {
		a.ask(Doubt{Rule: Level, Path: low.path, Wall: low.wall,
			Text: fmt.Sprintf("The %s lies %s at %s, and %s at %s: %s out of level.",
				g[0].kind, a.height(high.up), a.place(high), a.height(low.up), a.place(low), a.fine(high.up-low.up))}, high.path)
	}
}

// place says where along a wall a reading was taken.
func (a *asker) place(r *reading) string {
	switch r.at {
	case 0:
		return "the left end of " + a.wall(r.wall)
	case a.room.Walls[r.wall].Width:
		return "the right end of " + a.wall(r.wall)
	}
	return a.say(r.at) + " along " + a.wall(r.wall)
}

// suspects marks readings, the one furthest from the median first, until the
// others lie within the limit of each other. Of two alone the one further from
// what is usual in the room is taken, else the later.
func suspects(all []*reading, limit, usual length.Length) []*reading {
	var found []*reading
	for {
		rest := slices.DeleteFunc(slices.Clone(all), func(r *reading) bool { return r.suspected })
		if len(rest) < 2 || spread(rest) <= limit {
			return found
		}
		middle := median(rest)
		if len(rest) == 2 {
			middle = usual
		}
		worst := rest[len(rest)-1]
		for _, r := range slices.Backward(rest) {
			if (r.up - middle).Abs() > (worst.up - middle).Abs() {
				worst = r
			}
		}
		worst.suspected = true
		found = append(found, worst)
	}
}

// usual is the median of all readings of one kind of boundary in the room. Of
// two alone it is the one under the level line, for a base over it is rarer, or
// halfway between them.
func (a *asker) usual(kind survey.Kind) length.Length {
	var all []*reading
	for _, l := range a.measured() {
		for i := range l.readings {
			if l.kind == kind {
				all = append(all, &l.readings[i])
			}
		}
	}
	if len(all) != 2 {
		return median(all)
	}
	low, high := min(all[0].up, all[1].up), max(all[0].up, all[1].up)
	if low < 0 && high > 0 {
		return low
	}
	return (low + high).Half()
}

func spread(rs []*reading) length.Length {
	low, high := rs[0].up, rs[0].up
	for _, r := range rs {
		low, high = min(low, r.up), max(high, r.up)
	}
	return high - low
}

// median is the middle one of the heights, of an even number the lower.
func median(rs []*reading) length.Length {
	sorted := slices.SortedFunc(slices.Values(rs), func(x, y *reading) int { return cmp.Compare(x.up, y.up) })
	return sorted[(len(sorted)-1)/2].up
}

// expected is the height at a reading's place by those that are not suspected:
// the other wall's at a corner, else between its neighbours, else that of the
// nearest neighbour, else the median of the group.
func (a *asker) expected(g group, r *reading) length.Length {
	if o := a.partner(g, r); o != nil && !o.suspected {
		return o.up
	}
	var left, right *reading
	for _, o := range g.readings() {
		switch {
		case o.wall != r.wall || o.suspected:
		case o.at < r.at:
			left = o
		case o.at > r.at && right == nil:
			right = o
		}
	}
	switch {
	case left != nil && right != nil:
		return survey.At([]survey.Reading{{At: left.at, Value: left.up}, {At: right.at, Value: right.up}}, r.at)
	case left != nil:
		return left.up
	case right != nil:
		return right.up
	}
	if rest := slices.DeleteFunc(g.readings(), func(o *reading) bool { return o.suspected }); len(rest) > 0 {
		return median(rest)
	}
	return r.up
}

// partner is the reading of the other wall in the corner in which r was read,
// both within an inch of it; nil where r was read elsewhere.
func (a *asker) partner(g group, r *reading) *reading {
	for _, o := range g {
		for _, l := range g {
			if !a.follows(o, l) {
				continue
			}
			end, begin := o.last(), &l.readings[0]
			if a.room.Walls[o.wall].Width-end.at > a.inch() || begin.at > a.inch() {
				continue
			}
			switch r {
			case end:
				return begin
			case begin:
				return end
			}
		}
	}
	return nil
}

// askHeight asks about a reading that should be about as high as wanted.
func (a *asker) askHeight(g group, r *reading, want length.Length) {
	reach := a.inch() / 2
	if a.partner(g, r) != nil {
		reach = 2 * a.room.Doubt
	}
	fits, how := a.fits(r, want, reach)
	rule := Off
	if how == signSlip {
		rule = Sign
	}
	l := a.lineOf(g, r)
	a.ask(Doubt{Rule: rule, Path: r.path, Wall: r.wall, Fits: fits,
		Text: fmt.Sprintf("At %s the %s is read %s; the readings round it say %s.", a.place(r), l.kind, a.height(r.up), a.height(want))})
}

// fits gives what should have been typed for a reading that is wanted at a
// height: a slip set right where there is one, else the height itself.
func (a *asker) fits(r *reading, want, reach length.Length) (string, slip) {
	if r.down {
		want = -want
	}
	if text, how := mend(a.texts[r.path], want, reach, a.room.Units); how != noSlip {
		return text, how
	}
	return a.typed(want), noSlip
}

func (a *asker) lineOf(g group, r *reading) *line {
	for _, l := range g {
		for i := range l.readings {
			if &l.readings[i] == r {
				return l
			}
		}
	}
	return g[0]
}

// height says where a place lies by the level line.
func (a *asker) height(up length.Length) string {
	switch {
	case up < 0:
		return a.say(-up) + " under the level line"
	case up > 0:
		return a.say(up) + " over the level line"
	}
	return "on the level line"
}

// wall is a wall's name as it stands in a sentence.
func (a *asker) wall(i int) string { return a.room.Walls[i].Name }

// ceiling asks about single readings that leave a ceiling which is level before
// and after them. A ceiling may rake, kink or step, so one that does is not
// asked about, and an end only where a slip explains it.
func (a *asker) ceiling(g group) {
	for _, l := range g {
		rs := l.readings
		for k := range rs {
			if len(rs) < 3 {
				break
			}
			near, far := k-1, k+1
			if k == 0 {
				near, far = 1, 2
			} else if k == len(rs)-1 {
				near, far = k-1, k-2
			}
			want := rs[near].up
			if k > 0 && k < len(rs)-1 {
				want = survey.At([]survey.Reading{{At: rs[near].at, Value: rs[near].up}, {At: rs[far].at, Value: rs[far].up}}, rs[k].at)
			}
			level := (rs[near].up - rs[far].up).Abs() <= a.inch()
			if !level || (rs[k].up-want).Abs() <= a.inch() {
				continue
			}
			_, how := a.fits(&rs[k], want, a.inch()/2)
			if end := k == 0 || k == len(rs)-1; end && how == noSlip {
				continue
			}
			rs[k].suspected = true
			a.askHeight(g, &rs[k], want)
		}
	}
}

// corners asks where two walls give their common corner two heights, over twice
// the doubt of a reading.
func (a *asker) corners() {
	for _, g := range a.groups() {
		for _, o := range g {
			for _, l := range g {
				if o != l && a.follows(o, l) {
					a.corner(g, o, l)
				}
			}
		}
	}
}

func (a *asker) corner(g group, o, l *line) {
	end, begin := o.last(), &l.readings[0]
	left, right := survey.At(o.found, a.room.Walls[o.wall].Width), survey.At(l.found, 0)
	if (left - right).Abs() <= a.twice() {
		return
	}
	r, other, want := begin, end, left
	middle := median(g.readings())
	if (left - middle).Abs() > (right - middle).Abs() {
		r, other, want = end, begin, right
	}
	fits, _ := a.fits(r, want, a.twice())
	a.ask(Doubt{Rule: Corner, Path: r.path, Wall: r.wall, Fits: fits,
		Text: fmt.Sprintf("In the corner of %s and %s the %s is read %s on %s and %s on %s. One corner has one height.",
			a.wall(o.wall), a.wall(l.wall), o.kind, a.height(left), a.wall(o.wall), a.height(right), a.wall(l.wall))}, other.path)
}

// tall asks about tile that ends more than 12 ft (3.6 m) over its base, higher
// than rooms are. Common practice, no source.
func (a *asker) tall() {
	for i, w := range a.room.Walls {
		low := w.Base[0].Readings[0].Value
		for _, s := range w.Base {
			for _, r := range s.Readings {
				low = min(low, r.Value)
			}
		}
		path, high := fmt.Sprintf("walls[%d].head.stops", i), w.Head.Stops.From
		if w.Head.Meets {
			high = w.Head.Readings[0].Value
			for n, r := range w.Head.Readings {
				if n == 0 || r.Value > high {
					high, path = r.Value, fmt.Sprintf("walls[%d].head.readings[%d].rise", i, n)
				}
			}
		} else {
			path = a.markPath(path)
		}
		if high-low > a.either(12*length.Foot, 3600*length.Millimetre) && !a.rough[i] {
			a.ask(Doubt{Rule: Tall, Path: path, Wall: i,
				Text: fmt.Sprintf("On %s tile would end %s over the lowest point of its base, higher than rooms are.", w.Name, a.say(high-low))})
			a.rough[i] = true
		}
	}
}

// through asks about tile that stops over the ceiling where its wall stands, as in the
// corner with a wall under a slope. Under a top that is refused.
func (a *asker) through() {
	for i, w := range a.room.Walls {
		if w.Head.Meets || w.Head.Top != nil || a.rough[i] {
			continue
		}
		ceiling, where := a.room.CeilingBeside(i)
		stop := w.Head.Stops.From + w.Head.Inset(a.room)
		if where == "" || stop <= ceiling+2*a.room.Doubt {
			continue
		}
		path, fits := a.markPath(fmt.Sprintf("walls[%d].head.stops", i)), ""
		if !w.Head.Stops.Free() {
			fits = ceiling.FloorTo(a.room.Tape).Plain(a.room.Units, 0)
		}
		a.ask(Doubt{Rule: Through, Path: path, Wall: i, Fits: fits,
			Text: fmt.Sprintf("Tile on %s stops %s, and the ceiling is read %s %s.", w.Name, a.height(stop), a.height(ceiling), where)})
	}
}
