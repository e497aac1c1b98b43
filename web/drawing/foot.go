package drawing

import (
	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
)

// foot is what is written under the longest stretch of a wall's base: at both of
// its ends how high the first course stands over it, and its own height.
type foot struct {
	x0, x1 Micron // the stretch on paper
	low    Micron // its lowest point there
	base   survey.SegmentFound
	n      int              // the segment's number
	ends   [2]length.Length // along the wall
}

// footOf finds the longest stretch of base. found is false on a wall without one.
func footOf(f frame, w layout.Wall) (t foot, found bool) {
	var most length.Length
	for n, s := range w.Found.Base {
		if len(s.Readings) == 0 {
			continue
		}
		from, to := reach(w, s)
		if found && to-from <= most {
			continue
		}
		most, found = to-from, true
		t = foot{x0: f.at(from, 0).X, x1: f.at(to, 0).X, base: s, n: n, ends: [2]length.Length{from, to}}
		for _, r := range s.Readings {
			t.low = max(t.low, f.at(0, r.Value).Y)
		}
	}
	return t, found
}

// reach is the stretch of a wall that a base runs over; one with a lone reading runs over all.
func reach(w layout.Wall, base survey.SegmentFound) (from, to length.Length) {
	if len(base.Readings) == 1 {
		return 0, w.Found.Width
	}
	return max(base.Readings[0].At, 0), min(base.Readings[len(base.Readings)-1].At, w.Found.Width)
}

// firstCourse is the height of the lowest piece over a base at a place: what is
// left of a tile between the base's gap and the joint over it. A whole tile, or
// a strip that sealant fills under one, gives the tile's height.
func (b *board) firstCourse(s survey.SegmentFound, x length.Length) length.Length {
	room := b.plan.Room
	high := b.strike.Full.Bottom - room.Joint - survey.At(s.Readings, x) - s.Gap
	pitch := room.Tile.Height + room.Joint
	if high > room.Tile.Height {
		high = length.Mod(high, pitch)
	}
	if high <= room.Sealant || high > room.Tile.Height {
		return room.Tile.Height
	}
	return high
}

// courseText writes the height of a first course.
func (b *board) courseText(high length.Length) string {
	if high == b.plan.Room.Tile.Height {
		return "whole"
	}
	return CourseHeight(b.plan.Room.Units, high)
}

// CourseHeight writes the height of a first course, wherever one is told: as the cut schedule shows
// sizes, rounded down so that no tile stands on the base; millimetres without their unit.
func CourseHeight(u length.System, high length.Length) string {
	if high = high.FloorTo(u.FineStep()); u == length.Metric {
		return high.Plain(u, u.FineStep())
	}
	return high.Fine(u)
}

// Captions of the lines under the walls.
const (
	courseCaption = "first course"
)

// baseCaption is what the walls come down to, in one word.
func baseCaption(walls []layout.Wall) string {
	name := ""
	for i, w := range walls {
		t, found := footOf(frame{wall: i, scale: Scale{1, 1}}, w)
		switch {
		case !found:
		case name == "":
			name = string(t.base.Meets)
		case name != string(t.base.Meets):
			return "base"
		}
	}
	return name
}

// footGap is the room between the base and the first line under it.
const footGap = 4 * px

// footStep is the height of one line under the walls.
func (b *board) footStep() Micron { return leading(b.texts.figure) }

// footLines writes the first course and the base under a wall, y being the
// first line's baseline.
func (b *board) footLines(f frame, w layout.Wall, y Micron) {
	t, found := footOf(f, w)
	if !found {
		return
	}
	tag := Tag{Kind: Dim, Wall: f.wall}
	if b.inCourses() {
		l, r := FootCuts(b.plan, w, t.base, b.firstCourse(t.base, t.ends[0]), b.firstCourse(t.base, t.ends[1]))
		b.pair(Label{Tag: tag, Size: b.texts.figure, Bold: true, Colour: Blue}, b.courseText(l), b.courseText(r), t, y)
		y += b.footStep()
	}
	left, right := survey.At(t.base.Readings, t.ends[0]), survey.At(t.base.Readings, t.ends[1])
	b.pair(Label{Tag: tag, Size: b.texts.note, Colour: b.heightsOf(f.wall, t.n)}, b.signed(left), b.signed(right), t, y)
}

// FootCuts are the heights of the first course at the outer ends of its first and its
// last cut over a stretch of base, as the first-course sheet gives them; l and r where
// it has none.
func FootCuts(plan layout.Plan, w layout.Wall, base survey.SegmentFound, l, r length.Length) (left, right length.Length) {
	in, rim := stages.Input{Room: plan.Room, Walls: plan.Walls}, base.Readings[0].Value
	for _, s := range base.Readings {
		rim = min(rim, s.Value)
	}
	left, right = l, r
	from, to := reach(w, base)
	first, last := to, from
	for _, p := range w.Pieces {
		box := p.Face.Bounds()
		if box.Top <= rim || box.Bottom > rim+2*plan.Room.Tile.Height || !in.FirstCourse(w, p) {
			continue
		}
		a, z := FootEnds(w, p)
		if a.X >= to || z.X <= from {
			continue // over another stretch
		}
		if a.X < first {
			first, left = a.X, box.Top-a.Y
		}
		if z.X > last {
			last, right = z.X, box.Top-z.Y
		}
	}
	return left, right
}

// pair writes a text at each end of a stretch; one in its middle where both are
// the same or there is not room for two.
func (b *board) pair(l Label, left, right string, t foot, y Micron) {
	one := func(text string, a Anchor, x Micron) Label {
		l.Text, l.Anchor, l.At = text, a, Point{x, y}
		return l
	}
	const margin = 3 * clearance // off the outline of a leg beside it
	from, to := one(left, Left, t.x0+margin), one(right, Right, t.x1-margin)
	if left != right && from.width()+to.width()+2*margin <= t.x1-t.x0 {
		b.label(from)
		b.label(to)
		return
	}
	if left != right {
		left += " to " + right
	}
	b.offer(one(left, Middle, (t.x0+t.x1)/2))
}

// keepLegs keeps texts off the tile that comes down beside the longest stretch
// of base.
func (b *board) keepLegs(f frame, w layout.Wall) {
	main, _ := footOf(f, w)
	for _, s := range w.Found.Base {
		n := len(s.Readings)
		if n == 0 || s.Readings[0] == main.base.Readings[0] {
			continue
		}
		a, z := f.at(s.Readings[0].At, s.Readings[0].Value), f.at(s.Readings[n-1].At, s.Readings[n-1].Value)
		if low := max(a.Y, z.Y); low > main.low {
			b.keep(box{Point{a.X, main.low}, Point{z.X, low + ground}})
		}
	}
}

// legs writes the height of the other stretches of base under each of them,
// where there is room.
func (b *board) legs(f frame, w layout.Wall) {
	main, _ := footOf(f, w)
	for i, s := range w.Found.Base {
		n := len(s.Readings)
		if n == 0 || s.Readings[0] == main.base.Readings[0] {
			continue
		}
		a, z := f.at(s.Readings[0].At, s.Readings[0].Value), f.at(s.Readings[n-1].At, s.Readings[n-1].Value)
		y := max(a.Y, z.Y) + ground + clearance + rise(b.texts.note)
		figure := b.signed(s.Readings[0].Value)
		l := Label{Tag: Tag{Kind: Dim, Wall: f.wall}, Text: string(s.Meets) + " " + figure, Size: b.texts.note, Colour: b.heightsOf(f.wall, i)}
		middle, left, right := l, l, l
		middle.Anchor, middle.At = Middle, Point{(a.X + z.X) / 2, y}
		left.At = Point{a.X, y}
		right.Anchor, right.At = Right, Point{z.X, y}
		if places := []Label{middle, left, right}; max(a.Y, z.Y) >= main.low {
			b.offer(places...)
		} else {
			b.under(places, figure, a.X, z.X)
		}
	}
}

// under offers a label under a stretch of base that stands higher than the longest: there
// tile stands beside it, so it keeps between the ends of the stretch, or to its figure alone.
func (b *board) under(places []Label, figure string, from, to Micron) {
	for _, text := range []string{places[0].Text, figure} {
		for _, l := range places {
			if l.Text = text; l.width()+2*clearance <= to-from && b.offer(l) {
				return
			}
		}
	}
}
