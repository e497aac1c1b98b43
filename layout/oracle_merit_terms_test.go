package layout_test

import (
	"cmp"
	"math"
	"slices"
	"strings"
)

// judgedRun is all pieces of one wall that are cut by the same edges the same
// way and stand in the same class of the bond.
type judgedRun struct {
	edges []string
	way   int
	class int
	least float64
	low   bool     // out of sight
	ids   []string // the pieces whose size is the least
	depth float64  // how deep its edges cut at most
}

// runs gathers the runs of wall i.
func (j *judge) runs(i int) {
	w := &j.walls[i]
	for _, p := range w.pieces {
		for way, edges := range p.cuts {
			if len(edges) == 0 {
				continue
			}
			class := 0
			if (way == wayUp) == j.plumb {
				class = j.class(w, p.row)
			}
			run := w.run(edges, way, class)
			for _, e := range edges {
				run.depth = max(run.depth, p.depth[e])
			}
			switch size := p.size[way]; {
			case size < run.least:
				run.least, run.ids = size, []string{p.doc.ID}
			case size == run.least:
				run.ids = append(run.ids, p.doc.ID)
			}
		}
	}
}

// run finds a run by its key, or begins it.
func (w *judgedWall) run(edges []string, way, class int) *judgedRun {
	if at := w.find(edges, way, class); at != nil {
		return at
	}
	r := judgedRun{edges: edges, way: way, class: class, least: math.Inf(1), low: w.lies(edges)}
	w.runs = append(w.runs, r)
	return &w.runs[len(w.runs)-1]
}

func (w *judgedWall) find(edges []string, way, class int) *judgedRun {
	for k := range w.runs {
		if r := &w.runs[k]; r.way == way && r.class == class && slices.Equal(r.edges, edges) {
			return r
		}
	}
	return nil
}

// lies tells whether one of a run's edges is out of sight.
func (w *judgedWall) lies(edges []string) bool {
	return slices.ContainsFunc(edges, func(e string) bool { return w.low[e] })
}

// share is a size over the full tile, both in units of 1/960 mm.
type share struct{ size, full float64 }

func (s share) compare(o share) int { return cmp.Compare(s.size*o.full, o.size*s.full) }

// under tells whether a share is less than a part of the tile.
func (s share) under(parts float64) bool { return s.size*parts < s.full }

func (s share) number() float64 { return s.size / s.full }

// capped is at most a half.
func (s share) capped() share {
	if 2*s.size > s.full {
		return share{1, 2}
	}
	return s
}

// shares in ascending order; what is missing at the end counts as full.
type shares []share

// compare entry by entry, the shorter list filled up.
func (s shares) compare(o shares, full share) int {
	for k := range max(len(s), len(o)) {
		a, b := full, full
		if k < len(s) {
			a = s[k]
		}
		if k < len(o) {
			b = o[k]
		}
		if c := a.compare(b); c != 0 {
			return c
		}
	}
	return 0
}

func (s shares) numbers() []float64 {
	out := []float64{}
	for _, v := range s {
		out = append(out, v.number())
	}
	return out
}

// sighted are the terms that are judged in sight and again out of it.
type sighted struct {
	bare                                float64
	unworkable, slivers, fifths, thirds int
	runs                                shares
}

// terms is all of merit.md but the slack of the starts.
type terms struct {
	sight, low               sighted
	exposed, openings        int
	mirror                   float64
	rim, head                shares
	built, work              int
	smallCorners, bondBreaks int
	facing, near             float64
	find                     int
}

// terms adds up the merit of the plan.
func (j *judge) terms() (m terms) {
	for i := range j.walls {
		w := &j.walls[i]
		j.sighted(w, &m.sight, false)
		j.sighted(w, &m.low, true)
		m.exposed += j.exposed(w)
		j.judgeOpenings(w, &m)
		m.mirror += j.mirror(w)
		j.rims(w, &m)
		m.work += j.work(w)
		m.find += j.findable(w)
	}
	j.onTops(&m)
	for _, list := range []*shares{&m.sight.runs, &m.low.runs, &m.rim, &m.head} {
		slices.SortFunc(*list, share.compare)
	}
	for i := range j.walls {
		j.corners(i, &m)
	}
	m.facing = j.facing()
	return m
}

// sighted adds terms 1 to 4 and 7 of a wall, of what has one sight.
func (j *judge) sighted(w *judgedWall, s *sighted, low bool) {
	for _, l := range w.limits {
		if seen, unseen := j.bareAlong(w, l); low {
			s.bare += unseen
		} else {
			s.bare += seen
		}
	}
	for _, p := range w.pieces {
		unworkable, sliver := false, false
		for way, edges := range p.cuts {
			if len(edges) == 0 || w.lies(edges) != low {
				continue
			}
			unworkable = unworkable || p.size[way] < j.limit[way]
			sliver = sliver || p.size[way] < j.sliver[way]
		}
		switch {
		case unworkable:
			s.unworkable++
		case sliver:
			s.slivers++
		}
	}
	for _, r := range w.runs {
		if r.low != low {
			continue
		}
		v := j.marked(r)
		if v.under(5) {
			s.fifths++
		}
		if v.under(3) {
			s.thirds++
		}
		if 2*v.size < v.full {
			s.runs = append(s.runs, v)
		}
	}
}

// marked is the share of a run in whole marks of the tape.
func (j *judge) marked(r judgedRun) share { return share{j.down(r.least), j.full(r.way)} }

// exposed counts the exposed ends at which no class of the bond has a tile edge.
func (j *judge) exposed(w *judgedWall) (n int) {
	for _, e := range []struct {
		own, other endDoc
		name       string
		right      bool
	}{{w.found.Left, w.found.Right, "left", false}, {w.found.Right, w.found.Left, "right", true}} {
		if e.own.Meets != "" || e.other.Meets == "" {
			continue
		}
		at := w.left
		if e.right {
			at = w.right
		}
		if !j.onLine(w, wayAcross, at, e.right) {
			n++
		}
	}
	return n
}

// offsets are the places of the tiles' first edges in a direction, one for
// each class, modulo the pitch.
func (j *judge) offsets(w *judgedWall, way int) (out []float64, pitch float64) {
	if way == wayUp {
		out, pitch = []float64{units(j.plan.Course.Line)}, j.height+j.joint
	} else {
		out, pitch = []float64{w.edge}, j.width+j.joint
	}
	if (way == wayUp) != j.plumb {
		return out, pitch
	}
	first := out[0]
	out = nil
	for k := range j.classes(w) {
		out = append(out, first+j.shift(w, k))
	}
	return out, pitch
}

// onLine tells whether in some class a tile ends at a place from below or the
// left (last) or begins there.
func (j *judge) onLine(w *judgedWall, way int, at float64, last bool) bool {
	offsets, pitch := j.offsets(w, way)
	return slices.ContainsFunc(offsets, func(first float64) bool {
		if last {
			first += j.full(way)
		}
		return modulo(at-first, pitch) == 0
	})
}

// cutsAt are the sizes that an edge of an opening leaves of the tiles beside
// it, by class, ascending: low is its left or lower edge.
func (j *judge) cutsAt(w *judgedWall, way int, at float64, low bool) (out []float64) {
	offsets, pitch := j.offsets(w, way)
	for _, first := range offsets {
		into := modulo(at-first, pitch)
		if low {
			out = append(out, min(into, j.full(way)))
			if into == 0 {
				out[len(out)-1] = j.full(way)
			}
			continue
		}
		left := j.full(way) - into
		if left <= 0 {
			left = j.full(way)
		}
		out = append(out, left)
	}
	slices.Sort(out)
	return out
}

// judgeOpenings adds terms 6, 11 and 15 of a wall.
func (j *judge) judgeOpenings(w *judgedWall, m *terms) {
	for _, h := range w.holes {
		for way, d := range [...]struct {
			place, size *markDoc
			low, high   float64
		}{{h.doc.Left, h.doc.Width, h.left, h.right}, {h.doc.Bottom, h.doc.tall(), h.bottom, h.top}} {
			on := [...]bool{j.onLine(w, way, d.low, true), j.onLine(w, way, d.high, false)}
			if !j.free(d.place) && !j.free(d.size) {
				// An edge beyond all tile of the wall cuts none.
				tiled := [...]bool{d.low > [...]float64{w.left, w.bottom}[way], d.high < [...]float64{w.right, w.top}[way]}
				for k, o := range on {
					if !o && tiled[k] {
						m.built++
					}
				}
				continue
			}
			a, b := j.cutsAt(w, way, d.low, true), j.cutsAt(w, way, d.high, false)
			equal := slices.Equal(a, b) && 2*a[0] >= j.full(way)
			if !(on[0] && on[1]) && !equal {
				m.openings++
			}
		}
		m.near += j.down(j.fromWish(w, h))
	}
}

func (j *judge) free(m *markDoc) bool { return m.At == "" && j.said(m.From) < j.said(m.To) }

// span is a mark's least and greatest place.
func (j *judge) span(m *markDoc) (from, to float64) {
	if m.At != "" {
		return j.said(m.At), j.said(m.At)
	}
	return j.said(m.From), j.said(m.To)
}

// fromWish is how far a free opening's middle stands from where it is wished, in
// the directions in which it is free: a niche without a wish is wished in the middle of the
// tile field, as near as its range allows.
func (j *judge) fromWish(w *judgedWall, h holeFound) float64 {
	aside, over := 0.0, 0.0
	x, y := (h.left+h.right)/2, (h.bottom+h.top)/2
	free := [...]bool{j.free(h.doc.Left) || j.free(h.doc.Width), j.free(h.doc.Bottom) || j.free(h.doc.tall())}
	switch near := h.doc.Near; {
	case near != nil:
		if near.X != "" && free[wayAcross] {
			aside = x - j.said(near.X)
		}
		if near.Y != "" && free[wayUp] {
			over = y - j.said(near.Y)
		}
	case h.doc.Kind == "niche" && free[wayAcross]:
		left, last := j.span(h.doc.Left)
		least, most := j.span(h.doc.Width)
		aside = x - min(max(w.middle(), left+least/2), last+most/2)
	}
	return math.Hypot(aside, over)
}

// ends are the least widths at one end of a wall by class, ascending: the full
// tile where a class has no run cut by that end alone.
func (j *judge) ends(w *judgedWall, name string) (out []float64) {
	classes := j.classes(w)
	if j.plumb {
		classes = 1
	}
	for class := range classes {
		size := j.width
		if r := w.find([]string{name}, wayAcross, class); r != nil {
			size = r.least
		}
		out = append(out, size)
	}
	slices.Sort(out)
	return out
}

func apart(a, b []float64) (sum float64) {
	for k := range a {
		sum += math.Abs(a[k] - b[k])
	}
	return sum
}

// mirror is how far the two ends of a wall are from being alike.
func (j *judge) mirror(w *judgedWall) float64 {
	if (w.found.Left.Meets == "") != (w.found.Right.Meets == "") {
		return 0
	}
	return j.down(apart(j.ends(w, "left"), j.ends(w, "right")))
}

// facing is how far the corner cuts of the first and the last of three walls
// are from being alike.
func (j *judge) facing() float64 {
	if len(j.walls) != 3 || j.walls[0].found.Right.Meets == "" || j.walls[2].found.Left.Meets == "" {
		return 0
	}
	return j.down(apart(j.ends(&j.walls[0], "right"), j.ends(&j.walls[2], "left")))
}

// rims adds the shares of base and head.
func (j *judge) rims(w *judgedWall, m *terms) {
	for _, r := range w.runs {
		if r.way != wayUp || r.low {
			continue
		}
		base := !slices.ContainsFunc(r.edges, func(e string) bool { return !strings.HasPrefix(e, "base ") })
		switch {
		case base:
			m.rim = append(m.rim, j.marked(r))
		case slices.Equal(r.edges, []string{"head"}):
			m.head = append(m.head, j.marked(r))
		}
	}
}

// weights of the kinds of cut, term 12.
var weights = map[string]int{"cross cut": 1, "rip": 2, "taper": 2, "hole": 4, "notch": 5}

// nearHole is what a hole near an edge adds.
const nearHole = 6

// work adds up the cuts of a wall.
func (j *judge) work(w *judgedWall) (sum int) {
	for _, p := range w.pieces {
		for _, kind := range strings.Split(p.doc.Kind, ", ") {
			sum += weights[kind]
		}
		if j.weak(w, p) {
			sum += nearHole
		}
	}
	return sum
}

// weak tells whether a hole in a piece comes within 1/2 in (13 mm) of one of its edges.
func (j *judge) weak(w *judgedWall, p judgedPiece) bool {
	reach := j.or("", "1/2", "13")
	return strings.Contains(p.doc.Kind, "hole") && slices.ContainsFunc(w.pipes, func(hole pipe) bool {
		gap, drilled := p.fromEdge(hole)
		return drilled && gap <= reach+1
	})
}

// fromEdge is how far a hole's rim is from the nearest edge of the piece, not
// over zero where it breaks through; drilled is false where it misses the piece. Plans
// draw the rim with straight sides round the circle.
func (p judgedPiece) fromEdge(hole pipe) (gap float64, drilled bool) {
	nearest := math.Inf(1)
	for _, s := range p.outline() {
		nearest = min(nearest, distance(hole.at, s.a, s.b))
	}
	return nearest - hole.r, partAt(p.rows, hole.at) != 0 || nearest < hole.r*1.0013+1
}

// outline lists the edges of a piece: the ends of its strips, and where strips
// end that no other carries on.
func (p judgedPiece) outline() (out []side) {
	for _, s := range p.rows {
		for _, c := range s.spans {
			out = append(out, side{xy{c.from[0], s.low}, xy{c.from[1], s.high}}, side{xy{c.to[0], s.low}, xy{c.to[1], s.high}})
		}
	}
	for _, s := range p.cols {
		for _, c := range s.spans {
			out = append(out, side{xy{s.low, c.from[0]}, xy{s.high, c.from[1]}}, side{xy{s.low, c.to[0]}, xy{s.high, c.to[1]}})
		}
	}
	return out
}

// distance of a place from a line between two others.
func distance(p, a, b xy) float64 {
	dx, dy := b.x-a.x, b.y-a.y
	t := 0.0
	if long := dx*dx + dy*dy; long > 0 {
		t = min(1, max(0, ((p.x-a.x)*dx+(p.y-a.y)*dy)/long))
	}
	return math.Hypot(p.x-a.x-t*dx, p.y-a.y-t*dy)
}

// corners adds term 13 of the inside corner at the right end of wall i.
func (j *judge) corners(i int, m *terms) {
	n := j.beyond(i, true)
	if n < 0 {
		return
	}
	a, b := &j.walls[i], &j.walls[n]
	if j.small(a, "right") && j.small(b, "left") {
		m.smallCorners++
	}
	if j.den == 1 || j.plumb || a.single || b.single {
		return
	}
	left, right := j.atCorner(a, true), j.atCorner(b, false)
	half := (j.width + j.joint) / 2
	for row, x := range left {
		if y, both := right[row]; both && (x < half && y < half || x > half && y > half) {
			m.bondBreaks++
		}
	}
}

// small tells whether a run at an end, a leg's left out, is under a third of the tile.
func (j *judge) small(w *judgedWall, end string) bool {
	return slices.ContainsFunc(w.runs, func(r judgedRun) bool {
		return r.way == wayAcross && slices.Contains(r.edges, end) && !ofLeg(r.edges) && share{r.least, j.width}.under(3)
	})
}

// ofLeg tells whether one of the edges is a step: what stands between it and an
// end is a leg, whose width is nobody's choice.
func ofLeg(edges []string) bool {
	return slices.ContainsFunc(edges, func(e string) bool { return strings.HasPrefix(e, "step ") })
}

// atCorner is what is seen of the last piece of every course at one end. A leg
// between the end and a step is of nobody's choice and left out.
func (j *judge) atCorner(w *judgedWall, right bool) map[int]float64 {
	name, slack := "left", 0.0
	if right {
		name = "right"
	}
	var chain []xy
	for _, l := range w.limits {
		if l.name == name {
			slack, chain = l.slack, l.chain
		}
	}
	out := map[int]float64{}
	for _, p := range w.pieces {
		at := slices.Contains(p.cuts[wayAcross], name)
		if at && ofLeg(p.cuts[wayAcross]) {
			continue
		}
		for _, s := range p.rows {
			limit := between(chain, (s.low+s.high)/2)
			for _, c := range s.spans {
				gap := (c.from[0]+c.from[1])/2 - limit
				if right {
					gap = limit - (c.to[0]+c.to[1])/2
				}
				at = at || gap <= slack+j.joint
			}
		}
		if old, seen := out[p.row]; at && (!seen || p.size[wayAcross] < old) {
			out[p.row] = p.size[wayAcross]
		}
	}
	return out
}

// findable is term 16 of a wall.
func (j *judge) findable(w *judgedWall) int {
	offsets, pitch := j.offsets(w, wayAcross)
	centred := func(first float64) bool {
		for _, off := range [...]float64{j.width / 2, j.width + j.joint/2} {
			if d := modulo(w.middle()-first-off+1, pitch); d <= 2 {
				return true
			}
		}
		return false
	}
	switch {
	case slices.ContainsFunc(offsets, centred):
		return 0
	case j.onLine(w, wayAcross, w.left, false), j.onLine(w, wayAcross, w.right, true):
		return 1
	}
	return 2
}
