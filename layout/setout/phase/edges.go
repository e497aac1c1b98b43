package phase

import (
	"cmp"
	"slices"
	"sort"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// edge is a straight boundary of the wall. What it alone cuts off a tile depends
// only on how deep the tile stands in the wall, square to the edge; the tables say
// by that depth how wide the piece is, and are filled by cutting.
type edge struct {
	name   piece.Edge
	low    bool
	meets  bool // it meets something, and may be left bare
	line   plane.Line
	long   length.Length // the edge's length
	bare   length.Length // a strip left to the sealant leaves bare wall where it is deeper than this and flat
	reach  length.Length // how far along tile beside such a strip may cover it, as a gap is measured
	normal plane.Point   // its square, into the wall, in thousandths
	tables []table       // by tile of the pattern
	near   [][]copied    // the tiles that it may cut in some phase, by tile, those farthest in front of it last
	others []other       // other boundaries so near that they may cut the same tile
}

// copied is one copy of a tile.
type copied struct {
	tile int
	side int64      // of its origin, as the edge's line measures it
	box  plane.Rect // round it
	from int64      // where it begins along the edge, as the edge measures it
	to   int64      // and where it ends
}

// off is how much farther from the line a tile is that is moved.
func (e *edge) off(move plane.Point) int64 {
	return int64(e.line.D.X)*int64(move.Y) - int64(e.line.D.Y)*int64(move.X)
}

// table holds the widths of what an edge leaves of a tile.
type table struct {
	box         plane.Rect    // round the tile
	deep        length.Length // the tile's extent square to the edge
	first, last int64         // its extent as line.Side measures it, about its own origin
	from, to    int64         // and along the edge
	sealed      length.Length // what stands no deeper may be left to the sealant
	strip       length.Length // and what stands no deeper than this surely is
	flat        length.Length // how long the side of the tile is that looks into the wall and runs along the edge, if any, as a gap is measured
	effort      int           // of a cut along the edge
	wide        []length.Length
}

// faint is how deep a tile stands at most of which nothing is said of how it is cut: its
// corners are rounded, and so is the slant of the cut.
const faint = 96

// steps is how finely a table says how deep a tile stands.
const steps = 256

// findEdges lists the boundaries that stand where they were measured, with the
// tiles that each may cut.
func (w *Wall) findEdges(s survey.Shape) {
	for _, ring := range s.Solid {
		for i, c := range ring {
			d := ring[(i+1)%len(ring)]
			switch {
			case c.On == 0:
			case !w.moves(c.On):
				w.edges = append(w.edges, w.edgeOf(c, d))
			default:
				w.loose = append(w.loose, looseEdge{w.edgeOf(c, d), c.On})
			}
		}
	}
}

func (w *Wall) edgeOf(c, d plane.Corner) edge {
	side := w.rule.Sides[c.On]
	e := edge{name: piece.EdgeBetween(c, d), line: plane.Through(c.Point, d.Point)}
	e.low, e.meets = e.name.Low(w.rule.Sides), side.Meets
	e.long = plane.Root(length.Area(e.line.D.X)*length.Area(e.line.D.X) + length.Area(e.line.D.Y)*length.Area(e.line.D.Y))
	if e.long == 0 {
		return e
	}
	e.normal = plane.Point{X: -e.line.D.Y * 1000 / e.long, Y: e.line.D.X * 1000 / e.long}
	limit := length.Length(0)
	if side.Meets {
		limit = max(0, w.room.Sealant-side.Gap)
	}
	if limit > 0 {
		far := w.room.Sealant + piece.Slant(w.room.Sealant, c.Point, d.Point)
		e.bare, e.reach = e.square(far-side.Gap)-w.room.Joint+96, far+w.room.Joint+96
	}
	hidden := length.Length(0)
	switch {
	case c.On == survey.SideLeft:
		hidden = max(0, w.Found.Left.Cover-w.Found.Left.Gap-w.Found.Left.Behind)
	case c.On == survey.SideRight:
		hidden = max(0, w.Found.Right.Cover-w.Found.Right.Gap-w.Found.Right.Behind)
	}
	for _, t := range w.Pattern.Tiles {
		e.tables = append(e.tables, e.tableOf(t, hidden, limit))
	}
	box := plane.Rect{Left: min(c.X, d.X), Bottom: min(c.Y, d.Y), Right: max(c.X, d.X) + 1, Top: max(c.Y, d.Y) + 1}
	box.Left -= w.Pattern.Reach
	box.Bottom -= w.Pattern.Rise
	e.near = make([][]copied, len(w.Pattern.Tiles))
	w.Pattern.Each(plane.Point{}, box, func(place int, at plane.Point) {
		tile := w.Pattern.Places[place].Tile
		tab, along := &e.tables[tile], e.along(plane.Point{X: at.X - e.line.P.X, Y: at.Y - e.line.P.Y})
		e.near[tile] = append(e.near[tile], copied{tile, e.line.Side(at), w.Pattern.Tiles[tile].BoxAt(at), along + tab.from, along + tab.to})
	})
	for _, near := range e.near {
		slices.SortStableFunc(near, func(a, b copied) int { return cmp.Compare(a.side, b.side) })
	}
	return e
}

// along is how far a vector goes along the edge, as the edge measures it.
func (e *edge) along(v plane.Point) int64 {
	return int64(e.line.D.X)*int64(v.X) + int64(e.line.D.Y)*int64(v.Y)
}

// square is a length measured plumb from the edge, or level from a steep one, measured square to it; it
// is as well what a length along the edge measures level, or plumb.
func (e *edge) square(l length.Length) length.Length {
	return l * max(e.line.D.X.Abs(), e.line.D.Y.Abs()) / e.long
}

// tableOf cuts a tile at every depth along the edge. Entry n is the width of what
// stands no deeper than n+1 steps, which no shallower cut exceeds. A strip no wider than limit
// is left to the sealant.
func (e *edge) tableOf(t bond.Tile, hidden, limit length.Length) table {
	line, long := e.line, e.long
	tab := table{box: t.Box, effort: piece.EffortAlong(t, line.D)}
	for i, c := range t.Outline {
		s := int64(line.D.X)*int64(c.Y) - int64(line.D.Y)*int64(c.X)
		a := int64(line.D.X)*int64(c.X) + int64(line.D.Y)*int64(c.Y)
		if i == 0 {
			tab.first, tab.last, tab.from, tab.to = s, s, a, a
		}
		tab.first, tab.last = min(tab.first, s), max(tab.last, s)
		tab.from, tab.to = min(tab.from, a), max(tab.to, a)
	}
	for i, c := range t.Outline {
		d := t.Outline[(i+1)%len(t.Outline)]
		s := int64(line.D.X)*int64(c.Y) - int64(line.D.Y)*int64(c.X)
		u := int64(line.D.X)*int64(d.Y) - int64(line.D.Y)*int64(d.X)
		if near := 96 * int64(long); tab.last-s < near && tab.last-u < near {
			tab.flat = e.square(plane.Distance(c.Point, d.Point))
		}
	}
	tab.deep = length.Length((tab.last-tab.first)/int64(long)) + 1
	tile := plane.Region{t.Outline}
	if limit > 0 {
		strip := e.deepest(tile, &tab, limit)
		tab.sealed, tab.strip = strip+96, strip-96
	}
	for n := range int64(steps) {
		deep := length.Length(n+1)*tab.deep/steps + 2 - hidden
		wide := length.Length(0)
		if deep > 0 {
			// The line parallel to the edge, deep below the tile's last point.
			wide = min(t.Least, tile.Keep(parallel(line, tab.last-int64(deep)*int64(long))).LeastWidth()+4)
		}
		tab.wide = append(tab.wide, wide)
	}
	return tab
}

// deepest is how deep a tile may stand for what the edge leaves of it to be a strip no wider than
// limit, measured as the sealant is. The tip of a tile that leans over the edge is thinner than it is deep.
func (e *edge) deepest(tile plane.Region, tab *table, limit length.Length) length.Length {
	steep := e.line.D.Y.Abs() > e.line.D.X.Abs()
	n := sort.Search(int(tab.deep), func(deep int) bool {
		part := tile.Keep(parallel(e.line, tab.last-int64(deep)*int64(e.long)))
		if steep {
			return part.Across().Most > limit
		}
		return part.Upward().Most > limit
	})
	return length.Length(n)
}

// parallel is the line of this direction on which Side of points about the origin,
// as a line through it would measure, is off.
func parallel(line plane.Line, off int64) plane.Line {
	d := line.D
	all := int64(d.X)*int64(d.X) + int64(d.Y)*int64(d.Y)
	scale := func(v length.Length) length.Length {
		n := float64(v) * (float64(off) / float64(all))
		return length.Length(n)
	}
	return plane.Line{P: plane.Point{X: -scale(d.Y), Y: scale(d.X)}, D: d}
}

// AtBest is what no set-out can beat whose phase is no farther from the line and
// the edge than so much, along and up, wherever its free marks stand. It counts only tiles
// that one boundary that stands cuts.
func (w *Wall) AtBest(line, start length.Length, along, up length.Length) merit.Merit {
	t := afresh(w)
	w.atBest(&t, line, start, along, up, w.inner)
	m := t.merit()
	w.runs = t.runs
	w.lines.sure(&m, line, start, along, up)
	return m
}

// atBest adds up what the edges that stand are sure to cut of tiles within a box.
func (w *Wall) atBest(t *tally, line, start, along, up length.Length, within plane.Rect) {
	w.Work++
	move := w.Pattern.Phase(w.Pattern.Origin(line, start))
	for i := range w.edges {
		e := &w.edges[i]
		if e.long == 0 || w.byMarks && e.meets {
			continue
		}
		slack := (along*e.normal.X.Abs()+up*e.normal.Y.Abs())/1000 + 2
		at := e.laidAt(move, slack, along+up, within)
		e.bounds(t, &at)
	}
}

// laid is where the lattice has moved and how far it may still move: what the edge is sure to cut then.
type laid struct {
	move          plane.Point
	off, along    int64 // how much farther from the line a tile is, and how much farther on along it
	slack, beside length.Length
	within        plane.Rect // only tiles in it count
}

// laidAt is where the lattice has moved, and by how much more it may.
func (e *edge) laidAt(move plane.Point, slack, beside length.Length, within plane.Rect) laid {
	return laid{move, e.off(move), e.along(move), slack, beside, within}
}

// bounds adds up what the edge is sure to cut.
func (e *edge) bounds(t *tally, at *laid) {
	for tile, near := range e.near {
		for k, n := e.reached(tile, at); k < n; k++ {
			e.bound(t, &near[k], at)
		}
	}
}

// reached are the copies of a tile, from the first to before the last, that may come to the edge.
func (e *edge) reached(tile int, at *laid) (from, to int) {
	tab, near, long := &e.tables[tile], e.near[tile], int64(e.long)
	first := int64(min(0, e.bare))*long - tab.last - at.off // those before it do not reach the edge
	end := -tab.first - at.off - int64(at.slack)*long       // from here on they are not cut
	from = sort.Search(len(near), func(k int) bool { return near[k].side >= first })
	for to = from; to < len(near) && near[to].side < end; {
		to++
	}
	return from, to
}

// bound counts one tile that reaches over the edge, if the edge surely cuts it and nothing else does.
func (e *edge) bound(t *tally, c *copied, at *laid) {
	tab, long, s := &e.tables[c.tile], int64(e.long), c.side+at.off
	// It stands before the edge from end to end, however it moves.
	if margin := int64(at.beside+tab.deep/32) * long; c.from+at.along < margin || c.to+at.along > long*long-margin {
		return
	}
	box := e.boxOf(c, at)
	if in := &at.within; box.Left < in.Left || box.Right > in.Right || box.Bottom < in.Bottom || box.Top > in.Top {
		return
	}
	if e.shared(&box, at.beside) || t.w.byMarks && !t.w.touched(box, 0) {
		return
	}
	if s+tab.last <= int64(tab.sealed+at.slack)*long {
		if tab.flat > 2*e.reach && s+tab.last >= int64(e.bare+at.slack)*long && s+tab.last <= int64(tab.strip-at.slack)*long {
			t.sights[boolean(e.low)].Bare += tab.flat - 2*e.reach
		}
		return
	}
	deep := length.Length((s+tab.last)/long) + at.slack
	wide := tab.wide[min(steps-1, int(int64(deep)*steps/int64(tab.deep)))]
	w := t.w
	limits := &w.least[c.tile]
	switch sight := &t.sights[boolean(e.low)]; {
	case wide < limits.unworkable:
		sight.Unworkable++
	case wide < limits.sliver:
		sight.Slivers++
	}
	if deep > faint {
		t.work += tab.effort
	} else {
		t.work++
	}
	t.single(e, wide, limits.full)
}

// boxOf is round a tile where the lattice has moved, and as much more as it is short of the edge: that is to
// be in a box too.
func (e *edge) boxOf(c *copied, at *laid) plane.Rect {
	box := plane.Rect{Left: c.box.Left + at.move.X, Bottom: c.box.Bottom + at.move.Y, Right: c.box.Right + at.move.X, Top: c.box.Top + at.move.Y}
	if short := int64(e.long) - c.side - at.off - e.tables[c.tile].last; short > 0 {
		box = wider(box, length.Length(short/int64(e.long))+1)
	}
	return box
}

// inside tells whether a tile at x, y stands before the edge from end to end.
func (e *edge) inside(tab *table, x, y length.Length) bool {
	long, a := int64(e.long), e.along(plane.Point{X: x, Y: y})
	margin := int64(tab.deep/32) * long
	return a+tab.from >= margin && a+tab.to <= long*long-margin
}

// single notes a width of the run that one edge cuts.
func (t *tally) single(e *edge, wide, full length.Length) {
	for i := range t.runs {
		if r := &t.runs[i]; r.n == 1 && r.edges[0] == e.name {
			r.note(wide, full, t.w.room.Tape)
			return
		}
	}
	t.runs = append(t.runs, run{edges: [4]piece.Edge{e.name}, n: 1, least: wide, full: full, narrowest: wide, low: e.low})
}

// takes tells whether bound may count a tile.
func (e *edge) takes(tile int, at plane.Point) bool {
	if e.long == 0 {
		return false
	}
	tab := &e.tables[tile]
	if e.shared(&plane.Rect{Left: at.X + tab.box.Left, Bottom: at.Y + tab.box.Bottom, Right: at.X + tab.box.Right, Top: at.Y + tab.box.Top}, 0) {
		return false
	}
	x, y := at.X-e.line.P.X, at.Y-e.line.P.Y
	side := int64(e.line.D.X)*int64(y) - int64(e.line.D.Y)*int64(x)
	return side+tab.first-2*int64(e.long) < 0 && side+tab.last > 0 && e.inside(tab, x, y)
}
