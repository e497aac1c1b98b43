package setout

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// face is an edge of a wall's visible region that every set-out must cut to:
// level for the course line, plumb for the start.
type face struct {
	low, high length.Length // where the edge stands, least and most over its length
	long      length.Length // how far it runs
	rising    bool          // the wall lies towards higher values, as over a base
	seal      length.Length // what sealant takes there beyond the gap
	hidden    length.Length // how much farther a tile reaches behind a lap
}

// faces lists the level, or the plumb, edges of a wall that are there wherever
// its free marks go.
func (f *field) faces(level bool) []face {
	var out []face
	for _, ring := range f.shape.Visible {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if f.movable(a.On) {
				continue
			}
			for _, part := range f.certain(turned(a.Point, level), turned(b.Point, level), level) {
				if g, ok := f.faceOf(part, a.On); ok {
					g.rising = (part[0].X < part[1].X) == level
					out = append(out, g)
				}
			}
		}
	}
	return out
}

// stretch is a part of an edge, along X.
type stretch [2]plane.Point

// certain is what of an edge no free end, head or opening can take away.
func (f *field) certain(a, b plane.Point, level bool) []stretch {
	from, to := f.sureSpan(level)
	parts := [][2]length.Length{{max(from, min(a.X, b.X)), min(to, max(a.X, b.X))}}
	for _, i := range f.free {
		o := f.found.Openings[i]
		along, across := reach(o.Left, o.Width), reach(o.Bottom, o.Height)
		if !level {
			along, across = across, along
		}
		margin := f.room.Tile.Width + f.room.Tile.Height
		if max(a.Y, b.Y) < across.From-margin || min(a.Y, b.Y) > across.To+margin {
			continue
		}
		parts = without(parts, along.From-margin, along.To+margin)
	}
	var out []stretch
	for _, p := range parts {
		if p[0] >= p[1] {
			continue
		}
		s := stretch{{X: p[0], Y: between(a, b, p[0])}, {X: p[1], Y: between(a, b, p[1])}}
		if a.X > b.X {
			s[0], s[1] = s[1], s[0]
		}
		out = append(out, s)
	}
	return out
}

// sureSpan is how far the wall reaches at least, along a level edge or a plumb one.
func (f *field) sureSpan(level bool) (from, to length.Length) {
	w := f.found
	from, to = -beyond, beyond
	switch {
	case level:
		if !w.Left.Meets {
			from = w.Left.Stops.To
		}
		if !w.Right.Meets {
			to = w.Right.Stops.From
		}
	case !w.Head.Meets:
		to = w.Head.Stops.From
	}
	return from, to
}

// reach is from the least place of a free opening's low edge to the greatest of its high one.
func reach(low, size survey.Span) survey.Span {
	return survey.Span{From: low.From, To: low.To + size.To}
}

// without takes the stretch from–to out of others.
func without(parts [][2]length.Length, from, to length.Length) [][2]length.Length {
	var out [][2]length.Length
	for _, p := range parts {
		for _, part := range [...][2]length.Length{{p[0], min(p[1], from)}, {max(p[0], to), p[1]}} {
			if part[0] < part[1] {
				out = append(out, part)
			}
		}
	}
	return out
}

// between is the height of an edge at x.
func between(a, b plane.Point, x length.Length) length.Length {
	if a.X == b.X {
		return a.Y
	}
	return a.Y + (b.Y-a.Y)*(x-a.X)/(b.X-a.X)
}

// faceOf is a stretch as a face, unless it is steep or short. A raked one is
// shortened at either end by as much as joints and a sealed strip may hide.
func (f *field) faceOf(s stretch, on plane.Side) (face, bool) {
	hide := 2*f.room.Joint + f.room.Sealant + 2
	run, rise := (s[1].X - s[0].X).Abs(), (s[1].Y - s[0].Y).Abs()
	if run <= rise || run <= 2*hide {
		return face{}, false
	}
	trim := length.Length(0)
	if rise > 0 {
		trim = (rise*hide+run-1)/run + 1
	}
	g := face{low: min(s[0].Y, s[1].Y) + trim, high: max(s[0].Y, s[1].Y) - trim, long: run, seal: f.seal(on), hidden: f.cover(on)}
	return g, g.low <= g.high
}

// movable tells whether a side is a free mark of its own, or none at all.
func (f *field) movable(on plane.Side) bool {
	w := f.found
	switch on {
	case survey.SideLeft:
		return !w.Left.Meets && w.Left.Stops.Free()
	case survey.SideRight:
		return !w.Right.Meets && w.Right.Stops.Free()
	case survey.SideHead:
		return !w.Head.Meets && w.Head.Stops.Free()
	}
	return false
}

func turned(p plane.Point, level bool) plane.Point {
	if level {
		return p
	}
	return plane.Point{X: p.Y, Y: p.X}
}

// axis is everything needed to bound a merit from one phase alone.
type axis struct {
	faces   []face
	tile    length.Length
	pitch   length.Length
	limit   length.Length
	shifts  []length.Length // of the rows, for the phase along them; else one zero
	through length.Length   // a face this long is met by every shift
	other   length.Length   // pitch in the other direction
	eaten   int             // how many pieces along a face pipes may take altogether
}

// axes are the bounds' axes for the course line and for the start.
func (f *field) axes() (line, start axis) {
	t, j := f.room.Tile, f.room.Joint
	line = axis{faces: f.faces(true), tile: t.Height, pitch: t.Height + j, limit: piece.SliverLimit(*f.room, t.Height), shifts: []length.Length{0}, other: t.Width + j}
	start = axis{faces: f.faces(false), tile: t.Width, pitch: t.Width + j, limit: piece.SliverLimit(*f.room, t.Width), shifts: []length.Length{0}, other: t.Height + j}
	along, across := &start, &line
	if f.plumb {
		along, across = &line, &start
	}
	along.shifts = f.shifts
	along.through = across.pitch * length.Length(len(f.shifts)+1)
	for _, ring := range f.pipes {
		box := plane.Region{ring}.Bounds()
		wide := max(box.Width(), box.Height())
		line.eaten += int(wide/line.other) + 1
		start.eaten += int(wide/start.other) + 1
	}
	return line, start
}

// bound is a merit that no set-out with this phase can beat: what its level,
// or plumb, edges alone cost. Edges in one row may belong to one piece, so each
// row counts once.
func (a axis) bound(phase length.Length) Merit {
	m := Merit{Smallest: half}
	rows := make(map[[2]int64]Merit, len(a.faces))
	for _, g := range a.faces {
		if len(a.shifts) > 1 && g.long < a.through {
			continue
		}
		for i, s := range a.shifts {
			row := [2]int64{int64(i), length.DivFloor(g.low-phase-s, a.pitch)}
			at := rows[row]
			b := a.cost(g, phase+s)
			rows[row] = Merit{Slivers: max(at.Slivers, b.Slivers), CutPieces: max(at.CutPieces, b.CutPieces)}
			m.Smallest = m.Smallest.Min(b.Smallest)
		}
	}
	for _, r := range rows {
		m.Slivers += r.Slivers
		m.CutPieces += r.CutPieces
	}
	return m
}

// cost is what one face costs with rows at one phase. It claims nothing where
// the face may be a tile's edge, a joint or a sealed strip.
func (a axis) cost(g face, phase length.Length) Merit {
	m := Merit{Smallest: half}
	low := length.Mod(g.low-phase, a.pitch)
	high := low + g.high - g.low
	if g.rising && low <= g.hidden || low == 0 || high >= a.tile-g.hidden {
		return m
	}
	left, most := low, high // under a head, the least that remains is at its low end
	if g.rising {
		left, most = a.tile-high, a.tile-low
	}
	if left <= g.seal || most <= g.seal {
		return m
	}
	if len(a.shifts) > 1 && g.low != g.high {
		// The rows of one shift may miss the worst place by as much as a period.
		left += ((g.high-g.low+2)*a.through+g.long-1)/g.long + 1
	}
	if g.low != g.high {
		left += 2 // a raked edge is rounded to the unit at both ends
	}
	n := int(g.long/(a.other*length.Length(len(a.shifts)))) - 1 - a.eaten
	if a.eaten > 0 && n <= 0 {
		return m
	}
	m.Smallest = m.Smallest.Min(piece.Part(left, a.tile))
	m.CutPieces = max(0, n)
	if a.eaten > 0 && g.low != g.high {
		m.Smallest = half // the smallest may be among those a pipe takes
	}
	switch {
	case most+2 < a.limit: // all along the face
		m.Slivers = max(1, m.CutPieces)
	case left < a.limit && (a.eaten == 0 || g.low == g.high):
		m.Slivers = 1
	}
	return m
}
