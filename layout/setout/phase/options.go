package phase

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// fineness is at how many places a free mark is tried beside those on joint lines: of an end
// or the head, and in each direction of an opening.
type fineness struct{ places, ways int }

var (
	coarsely = fineness{12, 6}  // with every phase
	finely   = fineness{64, 20} // with the phase that is chosen
)

// options lists how the marks of an axis may be placed where the lattice's origin stands at
// origin, with what each is sure to give. An end or the head may stand on joint lines, at the limits
// of its range and at even steps between them, first where most wall is left; an opening likewise,
// with both edges on joint lines, where it is wished, or with its middle on that of a tile, of a
// joint, or on a line of symmetry.
func (w *Wall) options(a *axis, origin plane.Point, f fineness) []option {
	var at []length.Length
	var edges []survey.Edges
	l := &w.lines
	switch a.on {
	case survey.SideLeft:
		at = ends(&l.plumb, l.plumb.Begins, origin.X, a.span, w.room.Tape, f)
	case survey.SideRight:
		at = ends(&l.plumb, l.plumb.Ends, origin.X, a.span, w.room.Tape, f)
		slices.Reverse(at)
	case survey.SideHead:
		at = ends(&l.level, l.level.Ends, origin.Y, a.span, w.room.Tape, f)
		slices.Reverse(at)
	default:
		o := w.Found.Openings[a.opening]
		across, up := w.waysAcross(a, origin.X, f), w.waysUp(a, origin.Y, f)
		edges = make([]survey.Edges, 0, len(across)*len(up)+mostCentred)
		for _, x := range across {
			for _, y := range up {
				edges = append(edges, o.Within(survey.Edges{Left: x.From, Right: x.To, Bottom: y.From, Top: y.To}))
			}
		}
		edges = append(edges, w.onTiles(a, origin)...)
	}
	out := make([]option, len(at)+len(edges))
	for i := range out {
		if a.opening >= 0 {
			out[i].edges = edges[i]
		} else {
			out[i].at = at[i]
		}
		out[i].merit = w.sure(a, origin, &out[i])
		if a.opening >= 0 && w.middleStands() {
			out[i].near = w.lines.nearOf(a.opening, out[i].edges, w.ground(w.outer).box).Half().FloorTo(w.room.Tape)
		}
	}
	return out
}

// waysAcross lists where the sides of an opening may stand, and waysUp its sill and top.
func (w *Wall) waysAcross(a *axis, from length.Length, f fineness) []survey.Span {
	o := w.Found.Openings[a.opening]
	near := o.Near.X
	if o.Kind == survey.Niche && near == nil {
		box := w.ground(w.outer).box
		middle := (box.Left + box.Right).Half()
		near = &middle
	}
	return w.ways(&w.lines.plumb, from, o.Left, o.Width, near, w.markPin(o, survey.RightEdge), f.ways)
}

func (w *Wall) waysUp(a *axis, from length.Length, f fineness) []survey.Span {
	o := w.Found.Openings[a.opening]
	return w.ways(&w.lines.level, from, o.Bottom, o.Height, o.Near.Y, w.markPin(o, survey.TopEdge), f.ways)
}

// mostCentred is on the tiles of how many places of the cell an opening is centred.
const mostCentred = 4

// onTiles lists where an opening that is free both ways stands with its middle on that of a tile,
// of each place of the cell the one nearest to where it is tried first.
func (w *Wall) onTiles(a *axis, origin plane.Point) (out []survey.Edges) {
	o, e := &w.Found.Openings[a.opening], w.outer.Openings[a.opening]
	if !w.centred(a) {
		return nil
	}
	for place := range w.Pattern.Places[:min(mostCentred, len(w.Pattern.Places))] {
		c := w.Pattern.Centre(place, origin, plane.Point{X: e.Left + e.Right, Y: e.Bottom + e.Top})
		at := plane.Point{X: (c.X - e.Right + e.Left).Half(), Y: (c.Y - e.Top + e.Bottom).Half()}
		if at.X >= o.Left.From && at.X <= o.Left.To && at.Y >= o.Bottom.From && at.Y <= o.Bottom.To {
			out = append(out, o.Within(survey.Edges{Left: at.X, Right: at.X + e.Right - e.Left, Bottom: at.Y, Top: at.Y + e.Top - e.Bottom}))
		}
	}
	return out
}

// centred tells whether an opening may be placed with its middle on that of a tile.
func (w *face) centred(a *axis) bool {
	o := &w.Found.Openings[a.opening]
	return o.Left.Free() && o.Bottom.Free() && len(w.Found.MarkPins) == 0
}

// onAnyTile lists where onTiles may put two facing edges of an opening, whatever tile is nearest.
func (w *face) onAnyTile(a *axis, l *bond.Lines, from length.Length, up bool) (out []survey.Span) {
	if !w.centred(a) {
		return nil
	}
	o, e := &w.Found.Openings[a.opening], w.outer.Openings[a.opening]
	low, size := o.Left, e.Right-e.Left
	if up {
		low, size = o.Bottom, e.Top-e.Bottom
	}
	for _, twice := range l.Centres(mostCentred, 2*(low.From-from)+size, 2*(low.To-from)+size+1) {
		at := (twice + 2*from - size).Half()
		out = append(out, survey.Span{From: at, To: at + size})
	}
	return out
}

// ends lists the places of an end or the head, ascending.
func ends(l *bond.Lines, lines []length.Length, from length.Length, s survey.Span, tape length.Length, f fineness) []length.Length {
	out := evenly(s, f.places, tape)
	for _, x := range l.Within(lines, s.From-from, s.To-from, mostStarts) {
		out = append(out, x+from)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// evenly are the limits of a range and the marks of the tape between them, or even steps where
// there are more than so many.
func evenly(s survey.Span, most int, tape length.Length) (out []length.Length) {
	step := max(tape, ((s.To - s.From) / length.Length(most)).CeilTo(tape))
	for x := s.From; x < s.To; x += step {
		out = append(out, x)
	}
	return append(out, s.To)
}

// ways lists where two facing edges of an opening may stand.
func (w *Wall) ways(l *bond.Lines, from length.Length, low, size survey.Span, near, high *length.Length, most int) (out []survey.Span) {
	add := func(a, b length.Length) {
		if high != nil {
			b = *high
		}
		if s := (survey.Span{From: a, To: b}); a >= low.From && a <= low.To && b-a >= size.From && b-a <= size.To && !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	if !low.Free() && !size.Free() {
		return []survey.Span{{From: low.From, To: low.From + size.From}}
	}
	mean := (size.From + size.To).Half()
	if near != nil {
		add(min(max(*near-mean.Half(), low.From), low.To), min(max(*near-mean.Half(), low.From), low.To)+mean)
	}
	for _, a := range l.Within(l.Ends, low.From-from, low.To-from, most) {
		for _, b := range l.Within(l.Begins, a+size.From, a+size.To, most) {
			if len(out) < 2*most {
				add(a+from, b+from)
			}
		}
	}
	wish := low.From + low.To + mean
	if near != nil {
		wish = 2 * *near
	}
	for _, twice := range l.Middles(wish - 2*from) {
		twice += 2 * from
		a := (twice - mean).Half()
		if high != nil {
			a = twice - *high
		}
		add(a, a+mean)
	}
	sizes := []length.Length{mean}
	if size.Free() {
		sizes = append(sizes, size.From, size.To)
	}
	for _, a := range evenly(low, most/len(sizes), w.room.Tape) {
		for _, b := range sizes {
			add(a, a+b)
		}
	}
	if !low.Free() {
		for _, b := range evenly(size, most, w.room.Tape) {
			add(low.From, low.From+b)
		}
	}
	return out
}
