package count

import (
	"encoding/binary"
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// ground is a wall with its free ends and its head placed and without its free
// openings: what many set-outs have in common.
type ground struct {
	shape   survey.Shape
	box     plane.Rect // of the tile field
	profile *profile
	cover   *piece.Cover
	rows    map[rowKey]*rowCount
}

// rowKey tells apart the rows that are cut on one ground: where the row stands, its
// class in the bond, and what the free openings take from it.
type rowKey struct {
	low, first length.Length
	class      int
	taken      string
}

// rowCount is what one row gives that had to be cut.
type rowCount struct {
	sights [2]merit.Sight
	work   int
	runs   []runLeast
	tile   []plane.Region // what stands, in the frame of the rows
	whole  []plane.Rect
	ends   widths
}

type runLeast struct {
	run   int
	least length.Length
}

// mostGrounds bounds how many grounds are kept.
const mostGrounds = 256

// ground is the ground of a setting, made once.
func (w *Wall) ground(p survey.Placed) *ground {
	key := [3]length.Length{p.Left, p.Right, p.Head}
	g, there := w.grounds[key]
	if there {
		return g
	}
	if len(w.grounds) >= mostGrounds {
		clear(w.grounds)
	}
	w.Work += 300 + 40*w.corners
	shape := w.Found.Shape(w.room.Units, w.without(p))
	g = &ground{shape: shape, box: shape.Solid.Bounds(), profile: w.profileOf(shape), cover: piece.NewCover(shape, w.rule), rows: map[rowKey]*rowCount{}}
	w.grounds[key] = g
	return g
}

// without is the setting without its free openings.
func (w *Wall) without(p survey.Placed) survey.Placed {
	if len(w.free) == 0 {
		return p
	}
	openings := make([]survey.Edges, len(p.Openings))
	copy(openings, p.Openings)
	for _, i := range w.free {
		openings[i] = Away
	}
	p.Openings = openings
	return p
}

// lazy makes the shape of a setting when a row has to be cut: its ground without
// what the free openings take.
type lazy struct {
	w      *Wall
	ground *ground
	placed survey.Placed
	made   *survey.Shape
}

func (l *lazy) shape() survey.Shape {
	if l.made == nil {
		s := l.ground.shape
		for _, i := range l.w.free {
			if e := l.placed.Openings[i]; e != Away {
				s = s.Less(plane.Rect{Left: e.Left, Bottom: e.Bottom, Right: e.Right, Top: e.Top}, survey.SideBase+plane.Side(len(l.w.Found.Base)+i))
			}
		}
		l.w.Work += 40 * len(l.w.free)
		l.made = &s
	}
	return *l.made
}

// cutRow gives what a row gives that is not plain.
func (w *Wall) cutRow(g *ground, shape *lazy, row bond.Row) *rowCount {
	key := rowKey{row.Low, length.Mod(row.First, row.Pitch), w.class(row.Course), w.taken(row, shape.placed)}
	if c, there := g.rows[key]; there {
		return c
	}
	w.Work += 100 + w.corners/2
	t := w.newTally()
	c := &rowCount{ends: noWidths}
	piece.Row(shape.shape(), row, w.rule, func(p *piece.Piece) {
		w.Work += 10
		c.tile = append(c.tile, p.Solid(w.plumb))
		t.piece(p)
		if !w.plumb {
			w.pieceEnds(&c.ends, p, g.box)
		}
	}, func(r plane.Rect) {
		c.whole = append(c.whole, r)
		if !w.plumb {
			w.addEnds(&c.ends, [2]bool{}, r, r, g.box, r.Width())
		}
	})
	c.sights, c.work = t.sights, t.work
	for run, least := range t.least {
		if least != absent {
			c.runs = append(c.runs, runLeast{run, least})
		}
	}
	g.rows[key] = c
	return c
}

// taken is what the free openings take from a row.
func (w *Wall) taken(row bond.Row, p survey.Placed) string {
	var b []byte
	for _, i := range w.free {
		r := w.boxOf(i, w.Found.Openings[i], p)
		if w.plumb {
			r = r.Transposed()
		}
		if r.Bottom >= row.High || r.Top <= row.Low {
			continue
		}
		for _, l := range [...]length.Length{length.Length(i), r.Left, r.Right, max(r.Bottom, row.Low), min(r.Top, row.High)} {
			b = binary.AppendVarint(b, int64(l))
		}
	}
	return string(b)
}

// add adds what a row gives, and covers what its tile covers.
func (t *tally) add(c *rowCount, cover *piece.Cover) {
	for i := range t.sights {
		t.sights[i].Unworkable += c.sights[i].Unworkable
		t.sights[i].Slivers += c.sights[i].Slivers
	}
	t.work += c.work
	for _, r := range c.runs {
		t.lower(r.run, r.least)
	}
	for _, r := range c.tile {
		cover.Region(r)
	}
	for _, r := range c.whole {
		cover.Rect(r)
	}
}

// Beyond is what a setting gives in the rows that no free opening can touch, with
// what measured marks give: no placing of the free openings can beat it.
func (w *Wall) Beyond(s Setting) merit.Merit {
	g := w.ground(s.Placed)
	t := w.newTally()
	g.cover.Clear()
	var rows, touched []bond.Row
	for _, row := range w.rowsOver(s, g.box) {
		if w.touched(row.Low, row.High) {
			touched = append(touched, row)
			continue
		}
		rows = append(rows, row)
	}
	shape := lazy{w: w, ground: g, placed: w.without(s.Placed)}
	count := func(rows []bond.Row) {
		for _, row := range t.plain(g.profile, rows, g.cover) {
			t.add(w.cutRow(g, &shape, row), g.cover)
		}
	}
	count(rows)
	var m merit.Merit
	runs := t.runs()
	m.Sight, m.OutOfSight, m.Work = t.sights[0], t.sights[1], t.work
	for _, gap := range g.cover.Gaps() {
		sight := &m.Sight
		if gap.Low {
			sight = &m.OutOfSight
		}
		sight.Bare += w.clear(gap)
	}
	w.addRuns(&m, runs)
	if w.likeEnds() {
		left, right := w.cuts(runs, survey.SideLeft), w.cuts(runs, survey.SideRight)
		count(touched)
		// An opening may take a piece from an end, and adds none to it.
		all := t.runs()
		doubt := differences(left, w.cuts(all, survey.SideLeft)) + differences(right, w.cuts(all, survey.SideRight))
		m.Mirror = w.mark(max(0, differences(left, right)-doubt))
	}
	w.Work += 20
	fixed := w.Fixed(s.Line, s.Edge)
	return m.Plus(&fixed)
}

// Plainly is what no set-out with the start on the line can beat where both ends of
// the wall stand: what its plain rows give that no free opening touches, with what
// the edges along the rows and the marks give. Nothing is cut.
func (w *Wall) Plainly(line, edge length.Length) merit.Merit {
	s := Setting{Line: line, Edge: edge}
	t := w.newTally()
	var rows, touched []bond.Row
	headMoves := w.moves(survey.SideHead)
	for _, row := range w.rowsOver(s, w.Bounds()) {
		switch {
		case headMoves && (w.plumb || row.High > w.Found.Head.Stops.From):
		case w.touched(row.Low, row.High):
			touched = append(touched, row)
		default:
			rows = append(rows, row)
		}
	}
	t.plain(w.outline, rows, nil)
	t.apart(w.outline, touched)
	w.Work += len(rows) / 4
	var m merit.Merit
	m.Sight, m.OutOfSight, m.Work = t.sights[0], t.sights[1], t.work
	runs := t.runs()
	w.addRuns(&m, runs)
	along, across := w.phases(line, edge)
	mirror := w.surelyApart(runs, along, across)
	beds := w.bedsAt(across)
	m = m.Plus(&beds)
	w.addLevelMarks(&m, edge)
	w.addUprightMarks(&m, line)
	m.Mirror = max(m.Mirror, mirror)
	return m
}

// surelyApart is how far the two ends differ at least, where runs are those of some
// rows: what other rows have at an end is no more than the edge's drift allows. It
// is for level courses.
func (w *Wall) surelyApart(runs []Run, along, across length.Length) length.Length {
	if w.plumb || !w.likeEnds() || w.wedge(across, survey.SideLeft) || w.wedge(across, survey.SideRight) {
		return 0
	}
	s := sure{w: w}
	var doubt length.Length
	ends := 0
	for i := range w.ends {
		f := &w.ends[i]
		side := f.edge.Side()
		if side != survey.SideLeft && side != survey.SideRight {
			continue
		}
		ends++
		for class, shift := range w.shifts {
			first := f.first(along+shift, w.rule.Along)
			is, least, _ := f.slot(first, w.rule.Along, w.rule.Along+w.room.Joint, w.room.Joint, f.low, f.high)
			n := slices.IndexFunc(runs, func(r Run) bool { return r.Class == class && len(r.Edges) == 1 && r.Edges[0] == f.edge })
			if !s.alike(f, first, w.rule.Along) || is == kept && n < 0 {
				return 0
			}
			if is == kept {
				doubt += max(0, runs[n].Least-least+4)
			}
		}
	}
	if ends != 2 {
		return 0
	}
	return w.mark(max(0, differences(w.cuts(runs, survey.SideLeft), w.cuts(runs, survey.SideRight))-doubt))
}

// touched tells whether a free opening may come to stand between two heights of
// the frame of the rows.
func (w *Wall) touched(low, high length.Length) bool {
	for _, i := range w.free {
		if h := w.hull(i); h.Bottom < high && h.Top > low {
			return true
		}
	}
	return false
}

// clear is how much of a bare stretch is farther from every row that a free opening
// may touch than the tile of such a row covers.
func (w *Wall) clear(gap piece.Gap) length.Length {
	from, to := gap.From, gap.To
	if w.plumb {
		from, to = plane.Point{X: from.Y, Y: from.X}, plane.Point{X: to.Y, Y: to.X}
	}
	far := w.rule.Across + 2*w.room.Joint + w.room.Sealant
	low, high := min(from.Y, to.Y), max(from.Y, to.Y)
	if w.touched(low-far, high+far) {
		return 0
	}
	return gap.Length
}
