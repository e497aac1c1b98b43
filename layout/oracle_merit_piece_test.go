package layout_test

import (
	"math"
	"slices"

	"github.com/stretchr/testify/require"
)

// slab is a strip of a shape between two heights in which nothing turns.
type slab struct {
	low, high float64
	spans     []span
}

// span is one stretch of a slab: its ends at the slab's low and high side, and
// what they lie on.
type span struct {
	from, to       [2]float64
	enters, leaves edge // enters: at its left end
	part           int  // which connected part of the shape it belongs to
}

// swept cuts what blocks leave of a box into slabs, lowest first.
func swept(box [4]float64, blocks []block) (out []slab) {
	var near []block
	for _, b := range blocks {
		if b.near(box) {
			near = append(near, b)
		}
	}
	heights := turns(box, near)
	for k := 1; k < len(heights); k++ {
		low, high := heights[k-1], heights[k]
		s := slab{low: low, high: high}
		tall := high - low
		a, b := spansAt(box, near, low+tall/4), spansAt(box, near, high-tall/4)
		for i := range min(len(a), len(b)) {
			s.spans = append(s.spans, span{straight(a[i].from[0], b[i].from[0]), straight(a[i].to[0], b[i].to[0]), a[i].enters, a[i].leaves, 0})
		}
		out = append(out, s)
	}
	join(out)
	return out
}

// straight carries a line on from a quarter and three quarters of a slab to its sides.
func straight(quarter, three float64) [2]float64 {
	half := (three - quarter) / 2
	return [2]float64{quarter - half, three + half}
}

// turns are the heights at which the outline of a box less blocks may turn.
func turns(box [4]float64, blocks []block) []float64 {
	ys := []float64{box[1], box[3]}
	keep := func(y float64) {
		if box[1] < y && y < box[3] {
			ys = append(ys, y)
		}
	}
	type line struct{ a, b xy }
	lines := []line{{xy{box[0], box[1]}, xy{box[0], box[3]}}, {xy{box[2], box[1]}, xy{box[2], box[3]}}}
	for _, b := range blocks {
		for i, p := range b.corners {
			keep(p.y)
			if b.edges[i].name != "" {
				lines = append(lines, line{p, b.corners[(i+1)%len(b.corners)]})
			}
		}
	}
	for i, l := range lines {
		for _, m := range lines[:i] {
			if y, ok := crossing(l.a, l.b, m.a, m.b); ok {
				keep(y)
			}
		}
	}
	slices.Sort(ys)
	return slices.CompactFunc(ys, func(a, b float64) bool { return math.Abs(a-b) < same })
}

// same is how far apart, in units, two places may be worked out that are one.
const same = 1e-5

// crossing is the height at which two lines cross within their ends.
func crossing(a, b, c, d xy) (y float64, ok bool) {
	det := (b.x-a.x)*(d.y-c.y) - (b.y-a.y)*(d.x-c.x)
	if det == 0 {
		return 0, false
	}
	s := ((c.x-a.x)*(d.y-c.y) - (c.y-a.y)*(d.x-c.x)) / det
	t := ((c.x-a.x)*(b.y-a.y) - (c.y-a.y)*(b.x-a.x)) / det
	return a.y + s*(b.y-a.y), s >= 0 && s <= 1 && t >= 0 && t <= 1
}

// spansAt is what blocks leave of a box on a line at y.
func spansAt(box [4]float64, blocks []block, y float64) []span {
	spans := []span{{from: [2]float64{box[0]}, to: [2]float64{box[2]}}}
	for _, b := range blocks {
		from, to, enters, leaves, ok := b.within(y)
		if !ok {
			continue
		}
		var left []span
		for _, s := range spans {
			if s.from[0] < from {
				part := s
				if part.to[0] > from {
					part.to[0], part.leaves = from, enters
				}
				left = append(left, part)
			}
			if s.to[0] > to {
				part := s
				if part.from[0] < to {
					part.from[0], part.enters = to, leaves
				}
				left = append(left, part)
			}
		}
		spans = left
	}
	return spans
}

// join numbers the connected parts of a swept shape.
func join(slabs []slab) {
	parts := 0
	for k := range slabs {
		for i := range slabs[k].spans {
			parts++
			slabs[k].spans[i].part = parts
		}
	}
	for k := 1; k < len(slabs); k++ {
		if slabs[k].low != slabs[k-1].high {
			continue
		}
		for i := range slabs[k].spans {
			for m := range slabs[k-1].spans {
				a, b := slabs[k].spans[i], slabs[k-1].spans[m]
				if min(a.to[0], b.to[1])-max(a.from[0], b.from[1]) > 1e-6 {
					rename(slabs[:k+1], a.part, b.part)
				}
			}
		}
	}
}

func rename(slabs []slab, from, to int) {
	for _, s := range slabs {
		for i := range s.spans {
			if s.spans[i].part == from {
				s.spans[i].part = to
			}
		}
	}
}

// partAt is the part of a swept shape at a place, or 0.
func partAt(slabs []slab, p xy) int {
	for _, s := range slabs {
		if p.y < s.low || p.y > s.high {
			continue
		}
		t := (p.y - s.low) / (s.high - s.low)
		for _, c := range s.spans {
			if c.from[0]+t*(c.from[1]-c.from[0]) <= p.x && p.x <= c.to[0]+t*(c.to[1]-c.to[0]) {
				return c.part
			}
		}
	}
	return 0
}

// middle is a place inside a span of a slab.
func (s slab) middle(c span) xy {
	return xy{(c.from[0] + c.from[1] + c.to[0] + c.to[1]) / 4, (s.low + s.high) / 2}
}

// only keeps the spans of a shape that lie in one part of another, whose axes
// may be turned against it.
func only(slabs, whole []slab, part int, turned bool) (out []slab) {
	for _, s := range slabs {
		kept := slab{low: s.low, high: s.high}
		for _, c := range s.spans {
			at := s.middle(c)
			if turned {
				at = xy{at.y, at.x}
			}
			if partAt(whole, at) == part {
				kept.spans = append(kept.spans, c)
			}
		}
		if len(kept.spans) > 0 {
			out = append(out, kept)
		}
	}
	return out
}

// judgedPiece is a piece of the plan, measured again.
type judgedPiece struct {
	doc   pieceDoc
	box   [4]float64 // its tile
	row   int        // course or column
	size  [2]float64 // wide and high of what is seen, as the plan has them where they hold
	own   [2]float64 // the same as measured here
	cuts  [2][]string
	depth map[string]float64 // how deep each edge cuts into the tile
	rows  []slab             // the solid piece in level strips
	cols  []slab             // and in plumb ones, axes turned
	area  float64
}

// pieces measures every piece of wall i.
func (j *judge) pieces(t require.TestingT, i int) {
	w, doc := &j.walls[i], j.plan.Walls[i]
	turned := turnedAll(w.blocks)
	seen := append(slices.Clone(w.blocks), w.hidden...)
	seenTurned := turnedAll(seen)
	for _, d := range doc.Pieces {
		p := judgedPiece{doc: d, depth: map[string]float64{}}
		for k, v := range d.Tile {
			p.box[k] = units(v)
		}
		p.row = int(math.Round((p.box[1] - units(j.plan.Course.Line)) / j.step()))
		box := [4]float64{p.box[1], p.box[0], p.box[3], p.box[2]}
		rows := swept(p.box, w.blocks)
		at := inside(d.Face)
		part := partAt(rows, at)
		require.NotZero(t, part, "%s of %s: nothing of the wall is left at %v mm, where the piece is", d.ID, w.found.Name, xy{at.x / perMM, at.y / perMM})
		p.rows = only(rows, rows, part, false)
		p.cols = only(swept(box, turned), rows, part, true)
		p.area = areaOf(p.rows)
		p.cut(p.rows, wayAcross, p.box[0], p.box[2])
		p.cut(p.cols, wayUp, p.box[1], p.box[3])
		p.own[wayAcross] = narrowest(only(swept(p.box, seen), rows, part, false))
		p.own[wayUp] = narrowest(only(swept(box, seenTurned), rows, part, true))
		p.size = p.own
		for way, mm := range [...]float64{d.Wide, d.High} {
			if p.agrees(way, units(mm)) {
				p.size[way] = units(mm)
			}
		}
		w.pieces = append(w.pieces, p)
	}
	j.place(w, doc)
}

// agrees tells whether a size is the piece's own. Corners of raked and leaning
// edges stand on whole units in a plan, and a unit across such an edge is many along it.
func (p judgedPiece) agrees(way int, size float64) bool {
	slack := 1.0
	if p.slants() {
		slack = 100
	}
	return math.Abs(size-p.own[way]) <= slack
}

// slants tells whether an edge of the piece is neither level nor plumb.
func (p judgedPiece) slants() bool {
	for _, slabs := range [...][]slab{p.rows, p.cols} {
		for _, s := range slabs {
			for _, c := range s.spans {
				if math.Abs(c.from[0]-c.from[1]) > 1e-6 || math.Abs(c.to[0]-c.to[1]) > 1e-6 {
					return true
				}
			}
		}
	}
	return false
}

// place finds the first tile of course 0 (or of column 0) from a piece, or from the
// start where there is none, and with columns every piece's column.
func (j *judge) place(w *judgedWall, doc planWallDoc) {
	x := units(doc.Start.X)
	switch doc.Start.Is {
	case "joint":
		x += math.Floor(j.joint / 2)
	case "tile":
		x -= math.Floor(j.width / 2)
	}
	w.edge, w.single = x, doc.Laid == "single"
	if len(w.pieces) == 0 {
		return
	}
	first := w.pieces[0]
	if !j.plumb {
		near := first.box[0] - j.shift(w, first.row)
		w.edge = near + math.Round((x-near)/j.repeat())*j.repeat()
		return
	}
	w.edge = first.box[0] + math.Round((x-first.box[0])/j.step())*j.step()
	for k := range w.pieces {
		w.pieces[k].row = int(math.Round((w.pieces[k].box[0] - w.edge) / j.step()))
	}
}

func turnedAll(blocks []block) (out []block) {
	for _, b := range blocks {
		out = append(out, b.turned())
	}
	return out
}

// inside is a place well inside a face.
func inside(face [][][2]float64) (at xy) {
	var ys []float64
	for _, ring := range face {
		for _, c := range ring {
			ys = append(ys, units(c[1]))
		}
	}
	slices.Sort(ys)
	best := 0.0
	for k := 1; k < len(ys); k++ {
		y := (ys[k-1] + ys[k]) / 2
		var xs []float64
		for _, ring := range face {
			for i, c := range ring {
				a, b := c, ring[(i+1)%len(ring)]
				ax, ay, bx, by := units(a[0]), units(a[1]), units(b[0]), units(b[1])
				if min(ay, by) < y && y < max(ay, by) {
					xs = append(xs, ax+(bx-ax)*(y-ay)/(by-ay))
				}
			}
		}
		slices.Sort(xs)
		for i := 1; i < len(xs); i += 2 {
			if room := min(xs[i]-xs[i-1], ys[k]-ys[k-1]); room > best {
				best, at = room, xy{(xs[i] + xs[i-1]) / 2, y}
			}
		}
	}
	return at
}

func areaOf(slabs []slab) (sum float64) {
	for _, s := range slabs {
		for _, c := range s.spans {
			sum += (c.to[0] - c.from[0] + c.to[1] - c.from[1]) / 2 * (s.high - s.low)
		}
	}
	return sum
}

// cut lists the boundary edges that cut a piece one way, and how deep.
func (p *judgedPiece) cut(slabs []slab, way int, low, high float64) {
	note := func(e edge, depth float64) {
		if e.name == "" || e.way != way || depth < 0.75 { // rounded away
			return
		}
		if !slices.Contains(p.cuts[way], e.name) {
			p.cuts[way] = append(p.cuts[way], e.name)
		}
		p.depth[e.name] = max(p.depth[e.name], depth)
	}
	for _, s := range slabs {
		for _, c := range s.spans {
			note(c.enters, max(c.from[0], c.from[1])-low)
			note(c.leaves, high-min(c.to[0], c.to[1]))
		}
	}
	slices.Sort(p.cuts[way])
}

// narrowest is the least distance between two edges that see each other and
// stand rather than lie, in a shape cut into strips. Where no two do it is the whole
// extent; where nothing is seen, zero.
func narrowest(slabs []slab) float64 {
	least, low, high := math.Inf(1), math.Inf(1), math.Inf(-1)
	for _, s := range slabs {
		stands := func(at [2]float64) bool { return math.Abs(at[1]-at[0]) < s.high-s.low }
		for _, c := range s.spans {
			low, high = min(low, c.from[0], c.from[1]), max(high, c.to[0], c.to[1])
			if stands(c.from) && stands(c.to) {
				least = min(least, c.to[0]-c.from[0], c.to[1]-c.from[1])
			}
		}
	}
	switch {
	case !math.IsInf(least, 1):
		return max(0, least)
	case math.IsInf(low, 1):
		return 0
	}
	return high - low
}
