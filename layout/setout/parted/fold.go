package parted

import (
	"maps"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// strip is what a band takes from a wall: from bottom to top stands its tile, and
// up to next the joint over it. The tile over it is moved down by next - bottom
// when the strip is taken out.
type strip struct {
	band              int // index of room.Bands
	bottom, top, next length.Length
	toHead            bool
}

// fold is a wall with its strips taken out: what stays of it hangs together, one
// set of courses from base to head.
type fold struct {
	wall     survey.WallFound // in heights of the folded wall
	strips   []strip
	joint    length.Length
	openings []folded // by opening of the real wall
}

// folded is what becomes of one opening.
type folded struct {
	at        int           // its index on the folded wall, or -1 where the strips swallow it
	low, high length.Length // how far its bottom and top edges were moved down
	stands    survey.Span   // its bottom and top, where strips swallow it
}

// foldWall takes the strips out of a wall, with its free openings in the zones
// given.
func foldWall(w survey.WallFound, strips []strip, joint length.Length, zones []zone) fold {
	f := fold{wall: w, strips: strips, joint: joint}
	if len(strips) == 0 {
		for i := range w.Openings {
			f.openings = append(f.openings, folded{at: i})
		}
		return f
	}
	f.wall.MarkPins = maps.Clone(w.MarkPins) // the head's is taken out of it
	f.foldHead()
	f.wall.Left.Lean, f.wall.Right.Lean = f.lean(w.Left.Lean), f.lean(w.Right.Lean)
	f.wall.Openings = nil
	for i, o := range w.Openings {
		f.opening(o, zones[i])
	}
	if y, there := f.wall.MarkPins[survey.HeadMark]; there {
		f.wall.MarkPins[survey.HeadMark] = y - f.down(len(strips))
	}
	return f
}

// down is how far what stands over the first n strips is moved down.
func (f *fold) down(n int) length.Length {
	sum := length.Length(0)
	for _, s := range f.strips[:n] {
		if !s.toHead {
			sum += s.next - s.bottom
		}
	}
	return sum
}

func (f *fold) foldHead() {
	h, last := &f.wall.Head, f.strips[len(f.strips)-1]
	by := f.down(len(f.strips))
	if last.toHead {
		y := last.bottom - f.joint - by
		*h = survey.HeadFound{Stops: survey.Span{From: y, To: y}}
		delete(f.wall.MarkPins, survey.HeadMark)
		return
	}
	h.Stops.From, h.Stops.To = h.Stops.From-by, h.Stops.To-by
	h.Top = nil // what lies on it follows, its courses begun anew over the band
	h.Readings = slices.Clone(h.Readings)
	for i := range h.Readings {
		h.Readings[i].Value -= by
	}
}

// lean folds the readings of a corner: in the joint under a strip it steps from
// where it stands there to where it stands over the strip.
func (f *fold) lean(lean []survey.Reading) []survey.Reading {
	if len(lean) < 2 {
		return lean
	}
	var out []survey.Reading
	add := func(from, to, by length.Length) {
		if from > to {
			return
		}
		put := func(y length.Length) {
			out = append(out, survey.Reading{At: y - by, Value: survey.At(lean, y)})
		}
		put(from)
		for _, r := range lean {
			if from < r.At && r.At < to {
				put(r.At)
			}
		}
		if to > from {
			put(to)
		}
	}
	from := lean[0].At
	for n, s := range f.strips {
		if n > 0 && s.bottom == from { // upon the strip under it: no joint of the field is between
			if from = s.next; s.toHead {
				return out
			}
			continue
		}
		add(from, max(from, s.bottom-max(f.joint, 1)), f.down(n))
		if s.toHead {
			return out
		}
		from = s.next
	}
	add(from, max(from, lean[len(lean)-1].At), f.down(len(f.strips)))
	return out
}

// zone is between which strips the edges of an opening stand: over that many of
// them. Its free marks are narrowed so that they stay there.
type zone struct {
	bottom, top    int
	begins, height survey.Span
	free           bool
	beyond         bool // over a strip that goes up to the head: its tile is cut to it
}

// opening folds one opening.
func (f *fold) opening(o survey.OpeningFound, z zone) {
	out := folded{at: len(f.wall.Openings), stands: f.stands(o)}
	switch {
	case o.Kind == survey.Pipe:
		n, inside := f.over(o.Up)
		if inside {
			out.at = -1
			break
		}
		out.low, out.high = f.down(n), f.down(n)
		o.Up -= out.low
	case z.beyond:
		out.at = -1
	case z.free:
		out.low, out.high = f.down(z.bottom), f.down(z.top)
		o.Bottom = survey.Span{From: z.begins.From - out.low, To: z.begins.To - out.low}
		o.Height = survey.Span{From: z.height.From - out.high + out.low, To: z.height.To - out.high + out.low}
		if o.Near.Y != nil {
			y := *o.Near.Y - (out.low + out.high).Half()
			o.Near.Y = &y
		}
		f.move(o.Mark(survey.BottomEdge), out.low)
		f.move(o.Mark(survey.TopEdge), out.high)
	default:
		low, high := out.stands.From, out.stands.To
		delete(f.wall.MarkPins, o.Mark(survey.BottomEdge))
		delete(f.wall.MarkPins, o.Mark(survey.TopEdge))
		bottom, top := f.low(low), f.high(high)
		if bottom >= top {
			out.at = -1
			break
		}
		out.low, out.high = low-bottom, high-top
		o.Bottom, o.Height = survey.Span{From: bottom, To: bottom}, survey.Span{From: top - bottom, To: top - bottom}
	}
	f.openings = append(f.openings, out)
	if out.at >= 0 {
		f.wall.Openings = append(f.wall.Openings, o)
	}
}

// stands is from where to where an opening goes that no zone moves: its edges where they are pinned, or
// as low and as small as it may be.
func (f *fold) stands(o survey.OpeningFound) survey.Span {
	s := survey.Span{From: o.Bottom.From}
	if y, there := f.wall.MarkPins[o.Mark(survey.BottomEdge)]; there {
		s.From = y
	}
	s.To = s.From + o.Height.From
	if y, there := f.wall.MarkPins[o.Mark(survey.TopEdge)]; there {
		s.To = y
	}
	return s
}

func (f *fold) move(m survey.MarkName, by length.Length) {
	if y, there := f.wall.MarkPins[m]; there {
		f.wall.MarkPins[m] = y - by
	}
}

// over tells over how many strips a height stands, and whether it is inside the next.
func (f *fold) over(y length.Length) (n int, inside bool) {
	for n < len(f.strips) && y >= f.strips[n].top && !f.strips[n].toHead {
		n++
	}
	return n, n < len(f.strips) && y > f.strips[n].bottom
}

// low and high fold the bottom and the top edge of an opening. One inside a strip
// stands on the edge of the tile beyond it.
func (f *fold) low(y length.Length) length.Length {
	n, inside := f.over(y)
	if inside {
		return f.strips[n].bottom - f.down(n)
	}
	return y - f.down(n)
}

func (f *fold) high(y length.Length) length.Length {
	n, inside := f.over(y)
	if inside {
		return f.strips[n].bottom - f.joint - f.down(n)
	}
	return y - f.down(n)
}

// unfold puts the marks of the folded wall back where they stand on the real one.
func (f *fold) unfold(real survey.WallFound, p survey.Placed) survey.Placed {
	out := p
	out.Head += f.down(len(f.strips))
	out.Openings = make([]survey.Edges, len(real.Openings))
	for i, o := range real.Openings {
		to := f.openings[i]
		if o.Kind == survey.Pipe {
			continue
		}
		if to.at < 0 {
			out.Openings[i] = survey.Edges{Left: o.Left.From, Right: o.Left.From + o.Width.From, Bottom: to.stands.From, Top: to.stands.To}
			continue
		}
		e := p.Openings[to.at]
		e.Bottom, e.Top = e.Bottom+to.low, e.Top+to.high
		out.Openings[i] = e
	}
	return out
}
