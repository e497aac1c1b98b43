package survey

import (
	"slices"
	"strings"

	"coursewright/layout/length"
)

// pins reads what a person has fixed and checks that no two pins clash.
func (r *resolver) pins(p path, pins Pins, room *Room) {
	if text := pins.Course.Line; text != "" {
		line := r.printed(value{p.dot("course.line"), text}, upright())
		room.Line = &line
	}
	for _, name := range sortedKeys(pins.Walls) {
		at := slices.IndexFunc(room.Walls, func(w WallFound) bool { return w.Name == name })
		here := p.dot("walls").dot(name)
		if at < 0 {
			r.faults.add(here, quote(name), "the name of a wall: "+wallNames(room.Walls))
			continue
		}
		w := &room.Walls[at]
		if pin := r.start(here, pins.Walls[name], *room); pin != nil {
			w.Pin = pin
		}
		r.startsBeyond(here.dot("beyond"), pins.Walls[name].Beyond, w)
		if r.sound[at] {
			r.marks(here.dot("marks"), pins.Walls[name].Marks, w)
		}
	}
}

// startsBeyond reads where the tile to the right of strips starts.
func (r *resolver) startsBeyond(p path, pins map[string]string, w *WallFound) {
	for _, name := range sortedKeys(pins) {
		if !slices.ContainsFunc(w.Openings, func(o OpeningFound) bool { return o.Kind == PlumbStrip && o.Name == name }) {
			r.faults.add(p.dot(name), quote(name), "the name of a strip of the wall")
			continue
		}
		if w.Beyond == nil {
			w.Beyond = map[string]length.Length{}
		}
		w.Beyond[name] = r.printed(value{p.dot(name), pins[name]}, upright())
	}
}

// started is one way in which a start is pinned.
type started struct {
	value
	StartPin
}

// start reads the pin of a wall's start. It may be pinned in several words
// where they say the same: the joint counts, then the edge, then the tile.
func (r *resolver) start(p path, pin WallPin, room Room) *StartPin {
	before := len(r.faults)
	var said []started
	for _, s := range []started{
		{value{p.dot("joint"), pin.Joint}, StartPin{Is: OnJoint}},
		{value{p.dot("edge"), pin.Edge}, StartPin{Is: OnEdge}},
		{value{p.dot("tile"), pin.Tile}, StartPin{Is: OnTile}},
	} {
		if s.text != "" {
			s.X = r.printed(s.value, upright())
			said = append(said, s)
		}
	}
	if len(said) == 0 {
		return nil
	}
	for _, other := range said[1:] {
		if room.Tile.Width > 0 && len(room.Joints) == 1 && len(r.faults) == before {
			r.agree(said[0], other, room.Tile.Width, room.Joint)
		}
	}
	return &said[0].StartPin
}

// agree checks that two pins put the tiles in the same places, whole pitches
// aside, or within half a unit.
func (r *resolver) agree(a, b started, tile, joint length.Length) {
	pitch := tile + joint
	off := length.Mod(a.twice(tile, joint)-b.twice(tile, joint), 2*pitch)
	if off > pitch {
		off -= 2 * pitch
	}
	if off.Abs() <= 1 {
		return
	}
	off = (off.Abs() / 2).RoundTo(r.units.FineStep())
	r.faults.add(b.path, quote(b.text)+", which clashes with the "+a.Is.String()+" at "+quote(a.text)+" by "+off.Format(r.units, 0),
		"only one of "+string(a.path)+" and "+string(b.path))
}

// twice is double the left edge of a tile, so that no half is rounded.
func (p StartPin) twice(tile, joint length.Length) length.Length {
	switch p.Is {
	case OnTile:
		return 2*p.X - tile
	case OnJoint:
		return 2*p.X + joint
	}
	return 2 * p.X
}

// marks reads the pinned marks of one wall and checks each against its range.
func (r *resolver) marks(p path, pins map[string]string, w *WallFound) {
	ranges := w.markRanges()
	for _, key := range sortedKeys(pins) {
		span, known := ranges[MarkName(key)]
		if !known {
			r.faults.add(p.dot(key), "a mark that the wall does not have", "one of "+markList(sortedKeys(ranges)))
			continue
		}
		before := len(r.faults)
		l := r.printed(value{p.dot(key), pins[key]}, upright())
		if p.held() {
			l = r.asMeasured(w, MarkName(key), l, span)
		}
		if len(r.faults) > before || !r.inRange(value{p.dot(key), pins[key]}, l, span) {
			continue
		}
		if w.MarkPins == nil {
			w.MarkPins = map[MarkName]length.Length{}
		}
		w.MarkPins[MarkName(key)] = l
	}
	r.pairs(p, w)
}

func markList(marks []MarkName) string {
	if len(marks) == 0 {
		return "none: nothing on this wall can be pinned"
	}
	names := make([]string, len(marks))
	for i, m := range marks {
		names[i] = string(m)
	}
	return strings.Join(names, ", ")
}

// inRange refuses a pin outside its mark's range and says by how much.
func (r *resolver) inRange(v value, l length.Length, s Span) bool {
	off := max(s.From-l, l-s.To)
	if off <= 0 {
		return true
	}
	found := quote(v.text)
	if v.path.held() { // which a plan has printed, in millimetres
		found = l.Format(r.units, 0)
	}
	r.faults.add(v.path, found+", which is "+off.Format(r.units, 0)+" past where the survey lets it stand",
		bounds{s.From, s.To}.text(r.units))
	return false
}

// held tells whether a field is one of the set-out that the job holds.
func (p path) held() bool { return strings.HasPrefix(string(p), "held.") }

// asMeasured is where a mark of a held set-out stands: where it was measured since, if it was. It is built then, and
// all else stays as it is held. What a plan prints is finer than a tape, so a mark one step off its range stands in it.
func (r *resolver) asMeasured(w *WallFound, mark MarkName, l length.Length, s Span) length.Length {
	in := min(max(l, s.From), s.To)
	switch {
	case (l - in).Abs() <= r.around.Tape:
		return in
	case !w.measured(mark, s):
		return l
	}
	w.move(mark, l)
	return in
}

// HeldAt is where a pinned mark is held, wherever it stands.
func (w WallFound) HeldAt(mark MarkName) length.Length {
	if held, moved := w.Moved[mark]; moved {
		return held
	}
	return w.MarkPins[mark]
}

// move notes where a mark is held that stands elsewhere.
func (w *WallFound) move(mark MarkName, held length.Length) {
	if _, noted := w.Moved[mark]; noted {
		return
	}
	if w.Moved == nil {
		w.Moved = map[MarkName]length.Length{}
	}
	w.Moved[mark] = held
}

// measured tells whether anything of where a mark stands was measured: an edge of an opening is as far from the facing one as
// the opening is large. What is built and may move by a tolerance was measured, whatever room that leaves it.
func (w *WallFound) measured(mark MarkName, s Span) bool {
	for _, o := range w.Openings {
		in := o.Inside
		switch {
		case in != nil && in.Wide && (mark == o.Mark(LeftEdge) || mark == o.Mark(RightEdge)),
			in != nil && in.High && (mark == o.Mark(BottomEdge) || mark == o.Mark(TopEdge)):
			return true
		}
		switch mark {
		case o.Mark(RightEdge):
			return !o.Left.Free() || !o.Width.Free()
		case o.Mark(TopEdge):
			return !o.Bottom.Free() || !o.Height.Free()
		}
	}
	return !s.Free()
}

// markRanges gives the marks of a wall by their names in the plan, with the
// range in which each may stand.
func (w WallFound) markRanges() map[MarkName]Span {
	ranges := map[MarkName]Span{}
	if !w.Left.Meets {
		ranges[EndLeft] = w.Left.Stops
	}
	if !w.Right.Meets {
		ranges[EndRight] = w.Right.Stops
	}
	if !w.Head.Meets {
		ranges[HeadMark] = w.Head.Stops
	}
	for _, o := range w.Openings {
		if o.Kind == Pipe {
			continue
		}
		ranges[o.Mark(LeftEdge)], ranges[o.Mark(RightEdge)] = o.Left, o.Left.plus(o.Width)
		ranges[o.Mark(BottomEdge)], ranges[o.Mark(TopEdge)] = o.Bottom, o.Bottom.plus(o.Height)
	}
	return ranges
}

func (s Span) plus(t Span) Span { return Span{s.From + t.From, s.To + t.To} }

// pairs checks that two pinned edges of an opening leave it a size in range.
func (r *resolver) pairs(p path, w *WallFound) {
	for _, o := range w.Openings {
		var right, top Span // where what is built may end
		if o.Inside != nil && o.Inside.Wide {
			right = o.Right
		}
		if o.Inside != nil && o.Inside.High {
			top = o.Top
		}
		r.pair(p, w, o.Mark(LeftEdge), o.Mark(RightEdge), o.Width, right)
		r.pair(p, w, o.Mark(BottomEdge), o.Mark(TopEdge), o.Height, top)
	}
}

// pair checks two edges that are size apart; far is where the second may lie, where that is said by itself.
func (r *resolver) pair(p path, w *WallFound, low, high MarkName, size, far Span) {
	a, pinned := w.MarkPins[low]
	b, both := w.MarkPins[high]
	if !pinned || !both {
		return
	}
	if p.held() {
		if held, moved := w.Moved[low]; moved && size.Free() { // what is built elsewhere is as large as it is held
			b = a + min(max(w.HeldAt(high)-held, size.From), size.To)
		}
		if far != (Span{}) {
			b = min(max(b, far.From), far.To)
		}
		b = r.asMeasured(w, high, b, size.plus(Span{a, a}))
		w.MarkPins[high] = b
	}
	off := max(size.From-(b-a), (b-a)-size.To)
	if off > 0 {
		r.faults.add(p.dot(string(high)), b.Format(r.units, 0)+", which clashes with “"+clip(string(low))+"” at "+a.Format(r.units, 0)+
			" by "+off.Format(r.units, 0), "two edges that are "+bounds{size.From, size.To}.text(r.units)+" apart")
	}
}
