package count

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Pair is where the two facing edges of an opening stand.
type Pair struct{ Low, High length.Length }

// most bounds how many places are listed for one mark.
const most = 400

// within lists, ascending, every place in the span where a tile of some class
// begins, each moved by add.
func (g grid) within(span survey.Span, add length.Length) []length.Length {
	var out []length.Length
	for _, s := range g.shifts {
		for x := span.From + length.Mod(g.first+s+add-span.From, g.pitch); x <= span.To && len(out) < most; x += g.pitch {
			out = append(out, x)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// EndOptions lists where a free end may stand: on tile edges, and at the limits
// of its range and in front of the steps of the base, where a run turns.
func (w *Wall) EndOptions(edge length.Length, right bool) []length.Length {
	e, add := w.Found.Left, length.Length(0)
	if right {
		e, add = w.Found.Right, w.room.Tile.Width
	}
	switch {
	case e.Meets:
		return []length.Length{0}
	case !e.Stops.Free():
		return []length.Length{e.Stops.From}
	}
	out := w.level(edge).within(e.Stops, add)
	for _, ring := range w.field.Solid {
		for i, c := range ring {
			if d := ring[(i+1)%len(ring)]; c.On >= survey.SideBase && c.X == d.X && e.Stops.From <= c.X && c.X <= e.Stops.To {
				out = append(out, c.X)
			}
		}
	}
	out = append(out, e.Stops.From, e.Stops.To)
	slices.Sort(out)
	return slices.Compact(out)
}

// HeadOptions lists where a free head may stand: on the top edges of courses, or
// at the limits of its range where there is none.
func (w *Wall) HeadOptions(line length.Length) []length.Length {
	h := w.Found.Head
	switch {
	case h.Meets:
		return []length.Length{0}
	case !h.Stops.Free():
		return []length.Length{h.Stops.From}
	}
	if out := w.upright(line).within(h.Stops, w.room.Tile.Height); len(out) > 0 {
		return out
	}
	return []length.Length{h.Stops.From, h.Stops.To}
}

// LevelPairs lists where the plumb edges of a free opening may stand, for a start,
// and UprightPairs where its level edges may, for a course line.
func (w *Wall) LevelPairs(i int, edge length.Length) []Pair {
	o := w.Found.Openings[i]
	wish, is := w.wishX(o, w.Bounds())
	return reaching(w.pairs(w.level(edge), o.Left, o.Width, w.pinned(o, survey.RightEdge), wish, is), o.Left, o.Width, o.Right)
}

// UprightPairs lists where the level edges of a free opening may stand.
func (w *Wall) UprightPairs(i int, line length.Length) []Pair {
	o := w.Found.Openings[i]
	wish, is := length.Length(0), o.Near.Y != nil
	if is {
		wish = 2 * *o.Near.Y
	}
	return reaching(w.pairs(w.upright(line), o.Bottom, o.Height, w.pinned(o, survey.TopEdge), wish, is), o.Bottom, o.Height, o.Top)
}

// pairs lists every place of two facing edges at which a run or the sight of a
// joint line turns: each on a line, at a limit of its range, leaving equal cuts, or
// with the middle where it is wished.
func (w *Wall) pairs(g grid, low, size survey.Span, high *length.Length, twiceWish length.Length, wish bool) []Pair {
	var out []Pair
	add := func(a, b length.Length) {
		if low.From <= a && a <= low.To && size.From <= b-a && b-a <= size.To && (high == nil || b == *high) {
			out = append(out, Pair{a, b})
		}
	}
	lows := append(g.within(low, g.tile), low.From, low.To)
	highSpan := survey.Span{From: low.From + size.From, To: low.To + size.To}
	highs := append(g.within(highSpan, 0), highSpan.From, highSpan.To)
	if high != nil {
		highs = append(highs, *high)
	}
	for _, a := range lows {
		for _, b := range highs {
			add(a, b)
		}
		add(a, a+size.From)
		add(a, a+size.To)
	}
	for _, b := range highs {
		add(b-size.From, b)
		add(b-size.To, b)
	}
	for _, s := range sizesOf(size) {
		for _, a := range g.equalCuts(low, s) {
			add(a, a+s)
		}
		if wish {
			a := (twiceWish - s).Half()
			add(a, a+s)
			add(a.FloorTo(w.room.Tape), a.FloorTo(w.room.Tape)+s)
		}
	}
	slices.SortFunc(out, Pair.compare)
	return slices.Compact(out)
}

func sizesOf(s survey.Span) []length.Length {
	if s.Free() {
		return []length.Length{s.From, s.To}
	}
	return []length.Length{s.From}
}

// equalCuts lists where an opening of one size leaves the same of a tile of one
// class before it as of a tile of another class after it.
func (g grid) equalCuts(low survey.Span, size length.Length) []length.Length {
	var out []length.Length
	for _, s := range g.shifts {
		for _, t := range g.shifts {
			// before = a - first - s, after = tile - (a + size - first - t), modulo the pitch.
			twice := 2*g.first + s + t + g.tile - size
			from := 2 * low.From
			for x := from + length.Mod(twice-from, g.pitch); x <= 2*low.To && len(out) < most; x += g.pitch {
				out = append(out, x.Half())
			}
		}
	}
	return out
}

// overlap tells whether an opening runs into another, or into a pipe's hole.
func (w *Wall) Overlap(p survey.Placed) bool {
	boxes := make([]plane.Rect, 0, len(p.Openings))
	for i, o := range w.Found.Openings {
		boxes = append(boxes, w.boxOf(i, o, p))
	}
	for _, i := range w.free {
		for k := range boxes {
			if k != i && boxes[k].Overlaps(boxes[i]) {
				return true
			}
		}
	}
	return false
}

// boxOf is what an opening takes from the wall, a pipe with its clearance.
func (w *Wall) boxOf(i int, o survey.OpeningFound, p survey.Placed) plane.Rect {
	if o.Kind == survey.Pipe {
		r := (o.Diameter + 2*survey.PipeClear(w.room.Units) + 1) / 2
		return plane.Rect{Left: o.At - r, Right: o.At + r, Bottom: o.Up - r, Top: o.Up + r}
	}
	e := p.Openings[i]
	return plane.Rect{Left: e.Left, Right: e.Right, Bottom: e.Bottom, Top: e.Top}
}

// Option is one place of two facing edges of a free opening with what it gives at
// best.
type Option struct {
	Pair
	Merit merit.Merit
}

// LevelOptions are the places of the plumb edges of a free opening for a start, the
// best first, and UprightOptions those of its level edges for a course line. They
// are worked out once.
func (w *Wall) LevelOptions(i int, edge length.Length) []Option {
	return w.remember(optionKey{i, edge, false}, func() []Option {
		return w.optionsOf(w.LevelPairs(i, edge), func(p Pair) merit.Merit { return w.LevelPair(i, edge, p) })
	})
}

// UprightOptions are the places of the level edges of a free opening.
func (w *Wall) UprightOptions(i int, line length.Length) []Option {
	return w.remember(optionKey{i, line, true}, func() []Option {
		return w.optionsOf(w.UprightPairs(i, line), func(p Pair) merit.Merit { return w.UprightPair(i, line, p) })
	})
}

// optionKey is an opening with the phase of the tiles that its edges seek.
type optionKey struct {
	opening int
	at      length.Length
	upright bool
}

// mostOptions bounds how many lists of options are kept.
const mostOptions = 4000

func (w *Wall) remember(key optionKey, make func() []Option) []Option {
	out, there := w.options[key]
	if !there {
		if len(w.options) >= mostOptions {
			clear(w.options)
		}
		out = make()
		w.options[key] = out
	}
	return out
}

func (w *Wall) optionsOf(pairs []Pair, of func(Pair) merit.Merit) []Option {
	out := make([]Option, len(pairs))
	for k, p := range pairs {
		out[k] = Option{p, of(p)}
	}
	w.Work += 4 * len(pairs)
	slices.SortStableFunc(out, func(a, b Option) int {
		order, _ := w.order.Compare(&a.Merit, &b.Merit)
		return order
	})
	return out
}
