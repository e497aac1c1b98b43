package setout

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// linesIn lists, ascending, every place in [from, to] that is at offset plus a
// whole number of pitches, for any of the offsets.
func linesIn(span survey.Span, pitch length.Length, offsets ...length.Length) []length.Length {
	var out []length.Length
	for x := span.From; ; {
		next, found := length.Length(0), false
		for _, o := range offsets {
			if y := x + length.Mod(o-x, pitch); !found || y < next {
				next, found = y, true
			}
		}
		if !found || next > span.To || len(out) > 400 {
			return out
		}
		out = append(out, next)
		x = next + 1
	}
}

// shifted adds every shift of the bond to an offset.
func (f *field) shifted(o length.Length) []length.Length {
	out := make([]length.Length, len(f.shifts))
	for i, s := range f.shifts {
		out[i] = o + s
	}
	return out
}

// spans are pairs of facing edges: an opening between tile edges on both sides.
type spans [][2]length.Length

// sizes is what an opening allows along one axis: where its low edge may stand,
// how big it may be, and where its high edge is pinned, if it is.
type sizes struct {
	low, size survey.Span
	high      *length.Length
}

// reach is where the high edge may stand for a low edge at a.
func (s sizes) reach(a length.Length) survey.Span {
	if s.high != nil {
		return survey.Span{From: *s.high, To: *s.high}
	}
	return survey.Span{From: a + s.size.From, To: a + s.size.To}
}

// facing lists the openings from a line of low edges to a line of high edges.
// Where no line stands in the range, the edge is where the range's middle is,
// and off the lines.
func facing(s sizes, pitch length.Length, lows, highs []length.Length) (out spans, onLines bool) {
	starts := linesIn(s.low, pitch, lows...)
	for _, a := range starts {
		for _, b := range linesIn(s.reach(a), pitch, highs...) {
			if b > a {
				out = append(out, [2]length.Length{a, b})
			}
		}
	}
	if len(out) > 0 {
		return out, true
	}
	if len(starts) == 0 {
		starts = []length.Length{middle(s.low)}
	}
	for _, a := range starts {
		ends := linesIn(s.reach(a), pitch, highs...)
		if len(ends) == 0 {
			ends = []length.Length{middle(s.reach(a))}
		}
		for _, b := range ends {
			out = append(out, [2]length.Length{a, b})
		}
	}
	return out, false
}

func middle(s survey.Span) length.Length { return (s.From + s.To).Half() }

// upright lists where the plumb edges of an opening may stand, level where its
// level edges may, best-liked first: nearest to the middle of its ranges.
func (f *field) upright(o survey.OpeningFound, edge length.Length) (spans, bool) {
	offsets, width := []length.Length{edge}, f.room.Tile.Width
	if !f.plumb {
		offsets = f.shifted(edge)
	}
	return f.between(sizes{o.Left, o.Width, f.pin(o, "right")}, width, offsets)
}

func (f *field) level(o survey.OpeningFound, line length.Length) (spans, bool) {
	offsets, height := []length.Length{line}, f.room.Tile.Height
	if f.plumb {
		offsets = f.shifted(line)
	}
	return f.between(sizes{o.Bottom, o.Height, f.pin(o, "top")}, height, offsets)
}

func (f *field) between(z sizes, tile length.Length, offsets []length.Length) (spans, bool) {
	far := make([]length.Length, len(offsets))
	for i, o := range offsets {
		far[i] = o + tile
	}
	out, on := facing(z, tile+f.room.Joint, far, offsets)
	want := [2]length.Length{middle(z.low), middle(z.reach(middle(z.low)))}
	sortStable(out, func(s [2]length.Length) int64 {
		return int64((s[0] - want[0]).Abs() + (s[1] - want[1]).Abs())
	})
	return out, on
}

// ends lists where a free end may stand: on tile edges in its range, or at the
// range's limits where there are none.
func (f *field) ends(e survey.EndFound, edge length.Length, right bool) []length.Length {
	if e.Meets {
		return []length.Length{0}
	}
	if !e.Stops.Free() {
		return []length.Length{e.Stops.From}
	}
	offsets := []length.Length{edge}
	if !f.plumb {
		offsets = f.shifted(edge)
	}
	if right {
		for i := range offsets {
			offsets[i] += f.room.Tile.Width
		}
	}
	if out := linesIn(e.Stops, f.room.Tile.Width+f.room.Joint, offsets...); len(out) > 0 {
		return out
	}
	return []length.Length{e.Stops.From, e.Stops.To}
}

// heads lists where a free head may stand: on the top edges of courses.
func (f *field) heads(line length.Length) []length.Length {
	h := f.found.Head
	if h.Meets {
		return []length.Length{0}
	}
	if !h.Stops.Free() {
		return []length.Length{h.Stops.From}
	}
	offsets := []length.Length{line}
	if f.plumb {
		offsets = f.shifted(line)
	}
	for i := range offsets {
		offsets[i] += f.room.Tile.Height
	}
	if out := linesIn(h.Stops, f.room.Tile.Height+f.room.Joint, offsets...); len(out) > 0 {
		return out
	}
	return []length.Length{h.Stops.From, h.Stops.To}
}

// offLine counts the edges of openings that coincide with no tile edge.
func (f *field) offLine(line, edge length.Length, p survey.Placed) int {
	n := 0
	for i, o := range f.found.Openings {
		if o.Kind == "pipe" {
			continue
		}
		e := p.Openings[i]
		for _, x := range [...]length.Length{e.Left, e.Right} {
			n += f.off(x, edge, f.room.Tile.Width, !f.plumb)
		}
		for _, y := range [...]length.Length{e.Bottom, e.Top} {
			n += f.off(y, line, f.room.Tile.Height, f.plumb)
		}
	}
	return n
}

// off is 0 where x is at either edge of a tile that begins at first, shifted
// with the bond or not, and else 1.
func (f *field) off(x, first, tile length.Length, shift bool) int {
	shifts := f.shifts
	if !shift {
		shifts = shifts[:1]
	}
	pitch := tile + f.room.Joint
	for _, s := range shifts {
		if into := length.Mod(x-first-s, pitch); into == 0 || into == tile {
			return 0
		}
	}
	return 1
}

// levelOff counts the level edges of openings that a course line leaves off the
// joint lines, wherever a free opening goes.
func (f *field) levelOff(line length.Length) int {
	n := 0
	for i, o := range f.found.Openings {
		if o.Kind == "pipe" {
			continue
		}
		e := f.placed.Openings[i]
		edges := spans{{e.Bottom, e.Top}}
		if slices.Contains(f.free, i) {
			edges, _ = f.level(o, line)
		}
		n += f.leastOff(edges, line, f.room.Tile.Height, f.plumb)
	}
	return n
}

// plumbOff counts the plumb edges that a start leaves off the joint lines.
func (f *field) plumbOff(edge length.Length) int {
	n := 0
	for i, o := range f.found.Openings {
		if o.Kind == "pipe" {
			continue
		}
		e := f.placed.Openings[i]
		edges := spans{{e.Left, e.Right}}
		if slices.Contains(f.free, i) {
			edges, _ = f.upright(o, edge)
		}
		n += f.leastOff(edges, edge, f.room.Tile.Width, !f.plumb)
	}
	return n
}

// leastOff is how many edges stay off the lines at the best of several places.
func (f *field) leastOff(edges spans, first, tile length.Length, shift bool) int {
	least := 2
	for _, s := range edges {
		least = min(least, f.off(s[0], first, tile, shift)+f.off(s[1], first, tile, shift))
	}
	return least
}

// pin is where an edge of an opening is pinned, or nil.
func (f *field) pin(o survey.OpeningFound, edge survey.EdgeName) *length.Length {
	if x, there := f.found.MarkPins[o.Mark(edge)]; there {
		return &x
	}
	return nil
}

// withPins is the wall with the low ends of pinned marks fixed where they are
// pinned. A pinned high edge of an opening is looked up by pin.
func withPins(w survey.WallFound) survey.WallFound {
	if len(w.MarkPins) == 0 {
		return w
	}
	fix := func(s *survey.Span, key survey.MarkName) {
		if x, there := w.MarkPins[key]; there {
			*s = survey.Span{From: x, To: x}
		}
	}
	fix(&w.Left.Stops, survey.EndLeft)
	fix(&w.Right.Stops, survey.EndRight)
	fix(&w.Head.Stops, survey.HeadMark)
	w.Openings = slices.Clone(w.Openings)
	for i := range w.Openings {
		o := &w.Openings[i]
		fix(&o.Left, o.Mark(survey.LeftEdge))
		fix(&o.Bottom, o.Mark(survey.BottomEdge))
		o.Left = within(o.Left, o.Width, w.MarkPins, o.Mark(survey.RightEdge))
		o.Bottom = within(o.Bottom, o.Height, w.MarkPins, o.Mark(survey.TopEdge))
	}
	return w
}

// within narrows where a low edge may stand to what a pinned high edge leaves.
func within(low, size survey.Span, pins map[survey.MarkName]length.Length, key survey.MarkName) survey.Span {
	high, there := pins[key]
	if !there {
		return low
	}
	return survey.Span{From: max(low.From, high-size.To), To: min(low.To, high-size.From)}
}
