package phase

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// lines are the joint lines of a wall's pattern, up it and along it. The terms that are read
// from them hang on the start alone or on the line alone, and on the marks.
type lines struct {
	w            *Wall
	plumb, level bond.Lines
	tiled        survey.TileField
}

// add adds the terms that are read from where joint lines and marks stand: exposed ends,
// openings, the place wished for and the start. Box holds the tile field.
func (l *lines) add(m *merit.Merit, s Setting, box plane.Rect) {
	at := l.w.Pattern.Origin(s.Line, s.Edge)
	p := &s.Placed
	m.Exposed = l.exposed(at.X, survey.Span{From: p.Left, To: p.Left}, survey.Span{From: p.Right, To: p.Right})
	l.openings(m, at, p, l.tiled.Placed(*p), 0, 0)
	m.Near, m.Find = l.near(p, box).FloorTo(l.w.room.Tape), l.find(at.X, box)
}

// ofOption adds the terms of an option that are read from joint lines, but for how near it is to a wish.
func (l *lines) ofOption(a *axis, origin plane.Point, o *option, m *merit.Merit) {
	if a.opening >= 0 {
		found := l.w.typed.Openings[a.opening]
		off(m, &l.plumb, found.Left.Free() || found.Width.Free(), true, o.edges.Left-origin.X, o.edges.Right-origin.X, 0, survey.Sides{})
		off(m, &l.level, found.Bottom.Free() || found.Height.Free(), true, o.edges.Bottom-origin.Y, o.edges.Top-origin.Y, 0, survey.Sides{})
		m.Built = 0 // of what is measured, which is counted apart
		return
	}
	at := survey.Span{From: o.at, To: o.at}
	switch a.on {
	case survey.SideLeft:
		if l.w.Found.Right.Meets {
			m.Exposed = l.exposed(origin.X, at, at)
		}
	case survey.SideRight:
		if l.w.Found.Left.Meets {
			m.Exposed = l.exposed(origin.X, at, at)
		}
	}
}

// exposed counts the ends that stop, on a wall whose other end meets a corner, between whose
// limits tile begins or ends on no joint line. A pattern without such lines has none.
func (l *lines) exposed(x length.Length, left, right survey.Span) int {
	begins, meets := l.w.Found.Left, l.w.Found.Right
	within := func(lines []length.Length, s survey.Span) bool { return l.plumb.Any(lines, s.From-x, s.To-x) }
	switch {
	case l.plumb.None():
	case !begins.Meets && meets.Meets && !within(l.plumb.Begins, left):
		return 1
	case begins.Meets && !meets.Meets && !within(l.plumb.Ends, right):
		return 1
	}
	return 0
}

// openings adds what the edges of openings give: of measured ones by edge, no farther than
// so much from a line, where a field of tile goes on beyond it; of free ones by direction, where their marks are placed.
func (l *lines) openings(m *merit.Merit, at plane.Point, p *survey.Placed, field plane.Rect, along, up length.Length) {
	for i := range l.w.typed.Openings {
		o := &l.w.typed.Openings[i]
		if o.Kind == survey.Pipe {
			continue
		}
		e := o.AsMeasured()
		if p != nil {
			e = p.Openings[i]
		}
		off(m, &l.plumb, o.Left.Free() || o.Width.Free(), p != nil, e.Left-at.X, e.Right-at.X, along, o.TiledAcross(e, field))
		off(m, &l.level, o.Bottom.Free() || o.Height.Free(), p != nil, e.Bottom-at.Y, e.Top-at.Y, up, o.TiledUp(e, field))
	}
}

// off adds what one direction of an opening gives.
func off(m *merit.Merit, l *bond.Lines, free, placed bool, low, high, far length.Length, tiled survey.Sides) {
	switch {
	case l.None() || free && !placed:
	case free:
		m.Openings += boolean(!l.Clear(low, high))
	default:
		m.Built += boolean(tiled.Low && !l.Any(l.Ends, low-far, low+far)) + boolean(tiled.High && !l.Any(l.Begins, high-far, high+far))
	}
}

// find tells how hard the start is to find again: 0 with a tile or a joint on the middle of
// the tile field, 1 with full tiles at an end of it, 2 anywhere else.
func (l *lines) find(x length.Length, box plane.Rect) int {
	switch {
	case l.plumb.Centred(box.Left + box.Right - 2*x):
		return 0
	case l.plumb.Any(l.plumb.Begins, box.Left-x, box.Left-x), l.plumb.Any(l.plumb.Ends, box.Right-x, box.Right-x):
		return 1
	}
	return 2
}

// near is how far the middles of free openings are from the places wished for: where
// nothing is said, a niche's from the middle of the tile field, as near as its range allows.
func (l *lines) near(p *survey.Placed, box plane.Rect) length.Length {
	var twice length.Length
	for i, o := range l.w.typed.Openings {
		if o.Kind != survey.Pipe {
			twice += l.nearOf(i, p.Openings[i], box)
		}
	}
	return twice.Half()
}

// nearOf is twice what one opening is from its wish.
func (l *lines) nearOf(i int, e survey.Edges, box plane.Rect) (twice length.Length) {
	o := l.w.typed.Openings[i]
	if o.Left.Free() || o.Width.Free() {
		switch {
		case o.Near.X != nil:
			twice = (e.Left + e.Right - 2**o.Near.X).Abs()
		case o.Kind == survey.Niche:
			wish := min(max(box.Left+box.Right, 2*o.Left.From+o.Width.From), 2*o.Left.To+o.Width.To)
			twice = (e.Left + e.Right - wish).Abs()
		}
	}
	if o.Near.Y != nil && (o.Bottom.Free() || o.Height.Free()) {
		twice += (e.Bottom + e.Top - 2**o.Near.Y).Abs()
	}
	return twice
}

// Unjudged tells in which way joint lines run that would matter to an exposed end or an
// opening of the wall, and which the pattern has not: "plumb", "level", both, or none.
func (w *Wall) Unjudged() (ways []string) {
	opening := slices.ContainsFunc(w.typed.Openings, func(o survey.OpeningFound) bool { return o.Kind != survey.Pipe })
	if w.lines.plumb.None() && (opening || w.Found.Left.Meets != w.Found.Right.Meets) {
		ways = append(ways, "plumb")
	}
	if w.lines.level.None() && opening {
		ways = append(ways, "level")
	}
	return ways
}

// startsToFind are the starts of the trade, as left sides of a tile of the first place: a tile's
// middle or the joint before it on the middle of the tile field, and where an end is measured,
// full tiles at it, once for each way in which the pattern then stands to the course line.
func (l *lines) startsToFind() (out []length.Length) {
	for _, c := range l.w.Classics() {
		out = append(out, c.Edge)
	}
	box, reach := l.w.ground(l.w.outer).box, l.w.Pattern.Reach
	from := (box.Left + box.Right - reach).Half()
	first := l.w.Pattern.Origin(0, 0).X // the origin's place, with the start at 0
	at := func(end length.Length, lines []length.Length) {
		for _, x := range lines {
			out = append(out, l.plumb.Within([]length.Length{end - x - first}, from, from+reach-1, mostStarts)...)
		}
	}
	if !l.w.moves(survey.SideLeft) {
		at(box.Left, l.plumb.Begins)
	}
	if !l.w.moves(survey.SideRight) {
		at(box.Right, l.plumb.Ends)
	}
	return out
}

// mostStarts is how many starts with full tiles at one end on one line are tried.
const mostStarts = 16
