package phase

import (
	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// How alike the ends of a wall are is no sum of pieces: a piece more at one of them may make them more alike or less. What is
// said of it before a set-out is counted holds for these reasons.
//
//   - It is said where both ends meet corners in plain sight (endsSeen), and once all is cut that an end cuts, but for
//     tiles that an opening may come to.
//   - What surely leaves out of a tally is hardly there, or hardly cut. A piece that is hardly there is too small to be set,
//     so that a set-out with it comes after what was said, whatever its ends are like. Of one that is hardly cut at an end
//     its width is noted; where an end leans it may be whole, and a whole tile be hardly cut, so that there only what is narrower than
//     the narrowest tile is compared.
//   - An opening that stands clear of all leaves at the ends what it leaves wherever it is clear. Where it is not, an
//     end that it may come to is left with as much as the tiles say that it cannot touch, or less; an end that it cannot come to is
//     left with just that.

// alike is what hangs on the wall alone of how alike its ends are.
type alike struct {
	seen, apart bool          // see endsSeen and endsStandApart
	most        length.Length // only what is narrower is compared
}

func (w *Wall) findAlike() (out alike) {
	out.most = length.Longest
	for _, l := range w.least {
		if len(w.Found.Left.Lean)+len(w.Found.Right.Lean) > 0 {
			out.most = min(out.most, l.full)
		}
	}
	out.seen = w.endsSeen()
	out.apart = out.seen && w.endsStandApart(w.edges)
	return out
}

// endsSeen tells whether both ends of the wall meet a corner in plain sight. At one that leans a strip is left to the
// sealant or not as it is rounded: one that is not has to be too small to be set.
func (w *Wall) endsSeen() bool {
	hopeless := w.least[0].unworkable
	for _, l := range w.least {
		hopeless = min(hopeless, l.unworkable)
	}
	for _, end := range [...]survey.EndFound{w.Found.Left, w.Found.Right} {
		leans := len(end.Lean) > 0 && w.room.Sealant-end.Gap+2*rounded >= hopeless
		if !end.Meets || end.Sight == survey.Low || leans {
			return false
		}
	}
	return true
}

// atEnds tells whether the axis may come to tiles that an end of the wall cuts.
func (a *axis) atEnds() bool { return a.atLeft || a.atRight }

// mirrorWith is by how much the ends surely differ once all is cut that no free mark can touch, and all that the marks
// of an end or the head cut where they stand, wherever the others stand: where both ends meet corners these are openings.
func (c *choice) mirrorWith(a *axis, lowers []run) length.Length {
	opening := (*axis)(nil)
	for _, b := range c.w.axes {
		switch {
		case b == a || !b.atEnds():
		case opening != nil:
			return 0 // two may make up for each other
		default:
			opening = b
		}
	}
	if opening == nil {
		return c.lowered(lowers).mirror()
	}
	if !opening.clearOfAll(c.w, &option{edges: c.w.outer.Openings[opening.opening]}) {
		return 0 // where it stands first is as good as any other place that is clear of all
	}
	beside := c.beside(opening, &c.w.outer)
	t := c.lowered(lowers)
	clear := t.copy()
	clear.add(beside)
	return min(clear.mirror(), t.mirrorCut(opening))
}

// mirrorCut is by how much the ends surely differ where an opening may cut tiles at them too: an end that it may
// come to may be left with less.
func (t *tally) mirrorCut(a *axis) length.Length {
	left, right := t.ends()
	if a.atLeft && left.least > right.least || a.atRight && right.least > left.least {
		return 0
	}
	return t.mirror()
}

// lowered is what no free mark can touch, with what some options cut of its runs.
func (c *choice) lowered(lowers []run) *tally {
	if len(lowers) == 0 {
		return c.apart
	}
	t := c.apart.copyTo(&c.w.lowered)
	for i := range lowers {
		t.addRun(&lowers[i])
	}
	return t
}

// mirror is by how much the ends of the wall surely differ, where endsSeen, but for what cuts are rounded by.
func (t *tally) mirror() length.Length {
	left, right := t.ends()
	most := t.w.alike.most
	return max(0, (min(left.least, most)-min(right.least, most)).Abs()-2*rounded).FloorTo(t.w.room.Tape)
}
