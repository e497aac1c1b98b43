package layout_test

import (
	"math"
	"slices"

	"github.com/peterstace/simplefeatures/geom"
)

// tile is where one tile of the bond stands, and its course.
type tile struct {
	course                   int
	left, bottom, right, top float64
}

func (t tile) geometry() geom.Geometry {
	return polygon([]xy{{t.left, t.bottom}, {t.right, t.bottom}, {t.right, t.top}, {t.left, t.top}})
}

// shift of course k: k · offset · pitch, to the right or left, to the unit.
func (r room) shift(k int, hand string) float64 {
	pitch := r.width
	if r.plumb {
		pitch = r.height
	}
	pitch += r.joint
	offset, _ := r.offset.Float64()
	s := float64(k) * offset
	if hand != "right" {
		s = -s
	}
	s -= math.Floor(s + 1e-9)
	return math.Floor(max(0, s)*pitch + 0.5)
}

// tiles are the bond's tiles that touch a box, by the definition of formats.md:
// a tile of course 0 begins at edge, the bottom of a course 0 tile is at line.
func (r room) tiles(w wall, line, edge float64, hand string) (out []tile) {
	px, py := r.width+r.joint, r.height+r.joint
	if r.plumb {
		for k := int(math.Floor((w.left-edge)/px)) - 1; edge+float64(k)*px < w.right; k++ {
			first := line + r.shift(k, hand)
			for i := math.Floor((w.low-first)/py) - 1; first+i*py < w.top; i++ {
				out = append(out, tile{k, edge + float64(k)*px, first + i*py, edge + float64(k)*px + r.width, first + i*py + r.height})
			}
		}
		return out
	}
	for k := int(math.Floor((w.low-line)/py)) - 1; line+float64(k)*py < w.top; k++ {
		first := edge + r.shift(k, hand)
		for i := math.Floor((w.left-first)/px) - 1; first+i*px < w.right; i++ {
			out = append(out, tile{k, first + i*px, line + float64(k)*py, first + i*px + r.width, line + float64(k)*py + r.height})
		}
	}
	return out
}

// part is a connected remainder of a tile, worked out again.
type part struct {
	tile        tile
	solid, face geom.Geometry
	whole       bool
	across, up  bool    // cut in its width, in its height
	sealed      bool    // a strip for the sealant
	margin      float64 // how far the strip's width is from the limit that decides
	wide, high  float64 // of the visible part
	lapped      bool    // some of it is hidden
	share       float64
}

// parts are what the wall leaves of a tile.
func (r room) parts(w wall, t tile) (out []part) {
	full := r.width * r.height
	g := must(geom.Intersection(w.solid, t.geometry()))
	for _, solid := range g.Dump() {
		if solid.Area() < 10 { // noise of the library
			continue
		}
		p := part{tile: t, solid: solid, face: w.drilled(solid), margin: math.Inf(1)}
		p.whole = p.face.Area() > full-1
		if p.face.Area() < 10 {
			continue
		}
		r.strip(w, &p)
		p.across, p.up = cut(solid, t)
		p.wide, p.high = across(w.edgesShown(t, solid, false)), across(w.edgesShown(t, solid, true))
		p.lapped = must(geom.Intersection(t.geometry(), w.shown)).Area() < g.Area()-1
		p.share = min(p.wide/r.width, p.high/r.height)
		out = append(out, p)
	}
	return out
}

// drilled is a part less the pipes.
func (w wall) drilled(g geom.Geometry) geom.Geometry {
	for _, p := range w.pipes {
		g = must(geom.Difference(g, p.disc()))
	}
	return g
}

// edgesShown are the edges of what a part shows, x and y swapped if asked. The
// tile is cut anew: a library in floats is best asked once.
func (w wall) edgesShown(t tile, part geom.Geometry, swap bool) (out []side) {
	lo, hi, _ := part.Envelope().MinMaxXYs()
	for _, g := range must(geom.Intersection(t.geometry(), w.shown)).Dump() {
		c, d, ok := g.Envelope().MinMaxXYs()
		if ok && c.X >= lo.X-1 && d.X <= hi.X+1 && c.Y >= lo.Y-1 && d.Y <= hi.Y+1 {
			out = append(out, edgesOf(g, swap)...)
		}
	}
	return out
}

// strip finds whether sealant takes the part.
func (r room) strip(w wall, p *part) {
	for _, b := range w.boundaries {
		for _, plumb := range [...]bool{true, false} {
			if !b.meets || r.seal <= b.gap || !lies(p.solid, b.chain, plumb) {
				continue
			}
			over := widest(edgesOf(p.solid, !plumb)) - (r.seal - b.gap)
			p.sealed = p.sealed || over <= 0
			p.margin = min(p.margin, math.Abs(over))
		}
	}
}

// cut tells in which directions a part of a tile is cut: by its width where a
// steep edge is not the tile's own, by its height where a flat one is not.
func cut(solid geom.Geometry, t tile) (across, up bool) {
	own := func(a, b, edge float64) bool { return math.Abs(a-edge) < 1 && math.Abs(b-edge) < 1 }
	for _, e := range edgesOf(solid, false) {
		dx, dy := math.Abs(e.a.x-e.b.x), math.Abs(e.a.y-e.b.y)
		switch {
		case max(dx, dy) < 2: // noise of the library
		case dy > dx:
			across = across || !own(e.a.x, e.b.x, t.left) && !own(e.a.x, e.b.x, t.right)
		default:
			up = up || !own(e.a.y, e.b.y, t.bottom) && !own(e.a.y, e.b.y, t.top)
		}
	}
	return across, up
}

// over is how far the part is over a limit of width and height, in the
// directions in which it is cut; below zero it is under the limit.
func (p part) over(limit [2]float64) float64 {
	least := math.Inf(1)
	if p.across {
		least = p.wide - limit[0]
	}
	if p.up {
		least = min(least, p.high-limit[1])
	}
	return least
}

type side struct{ a, b xy }

// edgesOf lists the edges of a shape, x and y swapped if asked.
func edgesOf(g geom.Geometry, swap bool) (out []side) {
	for _, part := range g.Dump() {
		p, ok := part.AsPolygon()
		if !ok {
			continue
		}
		for _, ring := range p.DumpRings() {
			s := ring.Coordinates()
			for i := 1; i < s.Length(); i++ {
				a, b := s.GetXY(i-1), s.GetXY(i)
				e := side{xy{a.X, a.Y}, xy{b.X, b.Y}}
				if swap {
					e = side{xy{a.Y, a.X}, xy{b.Y, b.X}}
				}
				out = append(out, e)
			}
		}
	}
	return out
}

// chord is a level line through a shape between two edges that see each other.
type chord struct {
	wide       float64
	bothSteep  bool
	slabHeight float64
}

// chords cuts a shape into slabs at every corner and measures each stretch
// inside at the slab's bottom and top.
func chords(edges []side) (out []chord) {
	var ys []float64
	for _, e := range edges {
		ys = append(ys, e.a.y, e.b.y)
	}
	slices.Sort(ys)
	for i := 1; i < len(ys); i++ {
		lo, hi := ys[i-1], ys[i]
		if hi-lo < 0.6 { // under a unit: noise
			continue
		}
		type crossing struct {
			at    [2]float64
			steep bool
		}
		var cs []crossing
		for _, e := range edges {
			a, b := e.a, e.b
			if a.y > b.y {
				a, b = b, a
			}
			if mid := (lo + hi) / 2; a.y >= mid || b.y <= mid {
				continue
			}
			x := func(y float64) float64 { return a.x + (b.x-a.x)*(y-a.y)/(b.y-a.y) }
			cs = append(cs, crossing{[2]float64{x(lo), x(hi)}, b.y-a.y > math.Abs(b.x-a.x)})
		}
		slices.SortFunc(cs, func(a, b crossing) int {
			return int(math.Copysign(1, a.at[0]+a.at[1]-b.at[0]-b.at[1]))
		})
		for k := 1; k < len(cs); k += 2 {
			a, b := cs[k-1], cs[k]
			for _, end := range [...]int{0, 1} {
				out = append(out, chord{b.at[end] - a.at[end], a.steep && b.steep, hi - lo})
			}
		}
	}
	return out
}

// across is the least chord between two steep edges, or the extent where no
// two see each other.
func across(edges []side) float64 {
	least, found := 0.0, false
	for _, c := range chords(edges) {
		if c.bothSteep && (!found || c.wide < least) {
			least, found = c.wide, true
		}
	}
	if found || len(edges) == 0 {
		return max(0, least)
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, e := range edges {
		lo, hi = min(lo, e.a.x), max(hi, e.a.x)
	}
	return hi - lo
}

// widest is the longest chord of all.
func widest(edges []side) (w float64) {
	for _, c := range chords(edges) {
		w = max(w, c.wide)
	}
	return w
}

// lies tells whether an edge of a shape, steep or flat as asked, lies on a chain.
func lies(g geom.Geometry, chain []xy, steep bool) bool {
	for _, e := range edgesOf(g, false) {
		dx, dy := math.Abs(e.a.x-e.b.x), math.Abs(e.a.y-e.b.y)
		if max(dx, dy) < 2 || (dy > dx) != steep {
			continue
		}
		if on(chain, e.a) && on(chain, e.b) {
			return true
		}
	}
	return false
}

// on tells whether a place is on a chain, within a unit.
func on(chain []xy, p xy) bool {
	for i := 1; i < len(chain); i++ {
		a, b := chain[i-1], chain[i]
		dx, dy := b.x-a.x, b.y-a.y
		long := math.Hypot(dx, dy)
		if long == 0 {
			continue
		}
		aside := math.Abs(dx*(p.y-a.y)-dy*(p.x-a.x)) / long
		ahead := (dx*(p.x-a.x) + dy*(p.y-a.y)) / long
		if aside < 1 && ahead > -1 && ahead < long+1 {
			return true
		}
	}
	return false
}
