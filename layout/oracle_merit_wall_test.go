package layout_test

import (
	"cmp"
	"fmt"
	"math"
)

// edge is what a part of an outline lies on: a boundary edge by its name in
// the plan file, with the way in which it cuts. The tile's own edges and lines
// that nobody sees have no name.
type edge struct {
	name string
	way  int
}

// block is a convex shape that no tile may enter, counter-clockwise; edges[i]
// is what the side from corner i to the next lies on.
type block struct {
	corners  []xy
	edges    []edge
	low, top xy // its box
}

func blockOf(corners []xy, edges ...edge) block {
	b := block{corners: corners, edges: edges, low: corners[0], top: corners[0]}
	for _, c := range corners {
		b.low = xy{min(b.low.x, c.x), min(b.low.y, c.y)}
		b.top = xy{max(b.top.x, c.x), max(b.top.y, c.y)}
	}
	return b
}

// turned swaps x and y of a block.
func (b block) turned() block {
	n := len(b.corners)
	out := block{corners: make([]xy, n), edges: make([]edge, n), low: xy{b.low.y, b.low.x}, top: xy{b.top.y, b.top.x}}
	for i, c := range b.corners {
		out.corners[n-1-i] = xy{c.y, c.x}
		out.edges[(2*n-2-i)%n] = b.edges[i]
	}
	return out
}

// limitEdge is a boundary edge that meets something or stops, as a function of
// the place along it: its corners as (along, height) over the base, under the head,
// as (height, x) at ends and steps.
type limitEdge struct {
	edge
	meets, low bool // low: out of sight
	slack      float64
	chain      []xy
	side       float64 // +1 where tile lies above (right of) it, -1 where below (left of)
}

// judgedWall is one wall with its boundary, its pieces and its runs.
type judgedWall struct {
	found       wallDoc
	width       float64
	limits      []limitEdge
	blocks      []block // the wall's boundary and openings
	hidden      []block // the lap cover at its ends
	holes       []holeFound
	pipes       []pipe
	left, right float64 // the tile field, from its leftmost to its rightmost place
	bottom, top float64 // and from its lowest to its highest
	edge        float64 // left edge of a tile of course 0, bottom edge of one of column 0's with columns
	single      bool    // laid in single tiles of its own width
	pieces      []judgedPiece
	runs        []judgedRun
	low         map[string]bool // edges out of sight
}

// holeFound is a niche or window as placed.
type holeFound struct {
	doc                      openingDoc
	name                     string
	left, bottom, right, top float64
}

// wall reads the boundary of wall i with the plan's marks.
func (j *judge) wall(i int) judgedWall {
	found := j.job.Walls[i]
	w := judgedWall{found: found, width: j.said(found.Width), low: map[string]bool{}}
	marks := j.plan.Walls[i].Marks
	j.end(&w, i, false, marks)
	j.end(&w, i, true, marks)
	j.base(&w)
	j.head(&w, marks)
	w.left, w.right, w.bottom, w.top = w.field()
	j.openings(&w, marks)
	return w
}

// field is the leftmost and the rightmost place of the wall over its base and under its head, the lowest and the highest.
func (w judgedWall) field() (left, right, bottom, top float64) {
	left, right, bottom, top = math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, s := range swept([4]float64{-w.width, -far / 2, 2 * w.width, far / 2}, w.blocks) {
		for _, c := range s.spans {
			left, right = min(left, c.from[0], c.from[1]), max(right, c.to[0], c.to[1])
			bottom, top = min(bottom, s.low), max(top, s.high)
		}
	}
	return math.Round(left), math.Round(right), math.Round(bottom), math.Round(top)
}

// see keeps whether an edge is out of sight, as the job says or else by default.
func (w *judgedWall) see(name, said string, low bool) bool {
	if said != "" {
		low = said == "low"
	}
	w.low[name] = low
	return low
}

// end adds one end of a wall.
func (j *judge) end(w *judgedWall, i int, right bool, marks marks) {
	name, doc, x, way := "left", w.found.Left, 0.0, 1.0
	if right {
		name, doc, x, way = "right", w.found.Right, w.width, -1.0
	}
	l := limitEdge{edge: edge{name, wayAcross}, meets: doc.Meets != "", side: way, low: w.see(name, doc.Sight, false)}
	if !l.meets {
		at := marks.at("end " + name)
		l.chain = []xy{{-far, at}, {far, at}}
		w.add(l, &w.blocks)
		return
	}
	gap := j.or(doc.Gap, "1/8", "3")
	behind, cover := 0.0, 0.0
	if doc.Meets == "wall" { // the run of a wall that is tiled
		behind = j.deep
		if top := w.found.Top; top != nil && top.Behind == "corner" {
			behind = math.Round(deepAtAnAngle(j.deep, w.width, j.said(top.Depth), j.said(cmp.Or(top.Right, top.Depth)), right))
		}
	} else if n := j.beyond(i, right); n >= 0 {
		if j.rank(i) < j.rank(n) {
			cover = j.deep
		} else {
			behind = j.deep
		}
	}
	l.slack = j.sealant - gap
	l.chain = j.corner(doc, x+way*(gap+behind))
	w.add(l, &w.blocks)
	if cover > gap+behind {
		shown := l
		shown.chain = j.corner(doc, x+way*cover)
		limits := w.limits
		w.add(shown, &w.hidden)
		w.limits = limits
	}
}

// corner is the line of an end at x, as it leans: (height, x) from below to above.
func (j *judge) corner(doc endDoc, x float64) (chain []xy) {
	if len(doc.Lean) == 0 {
		return []xy{{-far, x}, {far, x}}
	}
	for _, l := range doc.Lean {
		chain = append(chain, xy{j.said(l.Height), x + j.said(l.Off)})
	}
	return outward(chain)
}

// outward holds a chain straight out to either side.
func outward(chain []xy) []xy {
	return append(append([]xy{{-far, chain[0].y}}, chain...), xy{far, chain[len(chain)-1].y})
}

// add keeps a boundary edge and blocks what lies beyond it.
func (w *judgedWall) add(l limitEdge, to *[]block) {
	w.limits = append(w.limits, l)
	for k := 1; k < len(l.chain); k++ {
		a, b := l.chain[k-1], l.chain[k]
		out := -l.side * 2 * far
		var corners []xy
		if l.way == wayUp {
			corners = []xy{{a.x, a.y}, {b.x, b.y}, {b.x, out}, {a.x, out}}
		} else {
			corners = []xy{{a.y, a.x}, {b.y, b.x}, {out, b.x}, {out, a.x}}
		}
		edges := []edge{l.edge, {}, {}, {}}
		if signed(corners) < 0 {
			corners = []xy{corners[1], corners[0], corners[3], corners[2]}
		}
		*to = append(*to, blockOf(corners, edges...))
	}
}

// stretch is a segment of base between two places, with its gap.
type stretch struct {
	from, to float64
	gap      float64
	readings []xy
}

// at is the height of the segment with its gap.
func (s stretch) at(x float64) float64 { return s.gap + between(s.readings, x) }

// between is the value of readings at a place, straight between them and held
// level outside.
func between(readings []xy, x float64) float64 {
	last := len(readings) - 1
	switch {
	case x <= readings[0].x:
		return readings[0].y
	case x >= readings[last].x:
		return readings[last].y
	}
	k := 1
	for readings[k].x < x {
		k++
	}
	a, b := readings[k-1], readings[k]
	return a.y + (b.y-a.y)*(x-a.x)/(b.x-a.x)
}

// base adds the segments of the base and the steps between them. The higher
// of two segments keeps its gap to the side too.
func (j *judge) base(w *judgedWall) {
	docs, segments := w.found.Base, j.stretches(w)
	bath := false
	for _, d := range docs {
		bath = bath || d.Meets != "floor"
	}
	for k := range segments {
		s := &segments[k]
		if k > 0 {
			before := &segments[k-1]
			x := s.from
			switch a, b := before.at(x), s.at(x); {
			case a < b:
				x -= s.gap
			case a > b:
				x += before.gap
			}
			before.to, s.from = x, x
		}
	}
	for k, s := range segments {
		name := fmt.Sprintf("base %d", k)
		l := limitEdge{edge: edge{name, wayUp}, meets: true, slack: j.sealant - s.gap, side: 1,
			low: w.see(name, docs[k].Sight, docs[k].Meets == "floor" && bath)}
		l.chain = []xy{{s.from, s.at(s.from)}}
		for _, r := range s.readings {
			if s.from < r.x && r.x < s.to {
				l.chain = append(l.chain, xy{r.x, s.at(r.x)})
			}
		}
		l.chain = append(l.chain, xy{s.to, s.at(s.to)})
		first := len(w.blocks)
		w.add(l, &w.blocks)
		w.blocks[first].edges[1] = stepName(k - 1)
		w.blocks[len(w.blocks)-1].edges[3] = stepName(k)
		if k > 0 {
			j.stepEdge(w, k-1, segments[k-1], s)
		}
	}
}

// stretches reads the segments; one of a single reading reaches from the
// segment before it to the next.
func (j *judge) stretches(w *judgedWall) (out []stretch) {
	for _, d := range w.found.Base {
		s := stretch{gap: j.or(d.Gap, "1/8", "3")}
		for _, r := range d.Readings {
			s.readings = append(s.readings, xy{j.said(r.At), -j.said(r.Drop)})
		}
		out = append(out, s)
	}
	for k := range out {
		s := &out[k]
		s.from, s.to = s.readings[0].x, s.readings[len(s.readings)-1].x
		if k > 0 {
			s.from = out[k-1].to
		}
		if k+1 < len(out) && len(s.readings) == 1 {
			s.to = out[k+1].readings[0].x
		}
	}
	out[0].from, out[len(out)-1].to = -far, far
	return out
}

func stepName(k int) edge { return edge{fmt.Sprintf("step %d", k), wayAcross} }

// stepEdge adds the plumb side between two segments. What lies behind it is
// blocked by the higher of them.
func (j *judge) stepEdge(w *judgedWall, k int, a, b stretch) {
	x, name := b.from, stepName(k)
	low, high := a.at(x), b.at(x)
	l := limitEdge{edge: name, meets: true, side: -1, low: w.see(name.name, "", false), slack: j.sealant - b.gap}
	if low > high {
		low, high = high, low
		l.side, l.slack = 1, j.sealant-a.gap
	}
	if low == high {
		return
	}
	l.chain = []xy{{low, x}, {high, x}}
	w.limits = append(w.limits, l)
}

// head adds where tile ends at the top.
func (j *judge) head(w *judgedWall, marks marks) {
	doc := w.found.Head
	l := limitEdge{edge: edge{"head", wayUp}, meets: doc.Meets != "", side: -1, low: w.see("head", doc.Sight, false)}
	if !l.meets {
		at := marks.at("head")
		l.chain = []xy{{-far, at}, {far, at}}
		w.add(l, &w.blocks)
		return
	}
	gap := j.or(doc.Gap, "1/8", "3")
	l.slack = j.sealant - gap
	for _, r := range doc.Readings {
		l.chain = append(l.chain, xy{j.said(r.At), j.said(r.Rise) - gap})
	}
	l.chain = outward(l.chain)
	w.add(l, &w.blocks)
}

// openings adds niches and windows, and keeps the pipes.
func (j *judge) openings(w *judgedWall, marks marks) {
	for _, o := range w.found.Openings {
		if o.Kind == "pipe" {
			w.pipes = append(w.pipes, pipe{xy{j.said(o.At), j.said(o.up())}, j.said(o.Diameter)/2 + j.clear})
			continue
		}
		name := o.Kind + " " + o.Name
		e := marks.edges(name)
		h := holeFound{doc: o, name: name, left: e[0], bottom: e[1], right: e[2], top: e[3]}
		w.holes = append(w.holes, h)
		w.blocks = append(w.blocks, blockOf([]xy{{h.left, h.bottom}, {h.right, h.bottom}, {h.right, h.top}, {h.left, h.top}},
			edge{name + " bottom", wayUp}, edge{name + " right", wayAcross}, edge{name + " top", wayUp}, edge{name + " left", wayAcross}))
		for _, side := range [...]string{" left", " right", " bottom", " top"} {
			w.see(name+side, o.Sight, false)
		}
	}
}

// middle of the tile field.
func (w judgedWall) middle() float64 { return (w.left + w.right) / 2 }

// near tells whether a block comes into a box.
func (b block) near(box [4]float64) bool {
	return b.low.x < box[2] && b.top.x > box[0] && b.low.y < box[3] && b.top.y > box[1]
}

// within is where a line at y crosses a block, and the edges it crosses there.
func (b block) within(y float64) (from, to float64, enters, leaves edge, ok bool) {
	from, to = math.Inf(1), math.Inf(-1)
	for i, p := range b.corners {
		q := b.corners[(i+1)%len(b.corners)]
		if min(p.y, q.y) >= y || max(p.y, q.y) <= y {
			continue
		}
		x := p.x
		if p.x != q.x {
			x += (q.x - p.x) * (y - p.y) / (q.y - p.y)
		}
		if x < from {
			from, enters = x, b.edges[i]
		}
		if x > to {
			to, leaves = x, b.edges[i]
		}
	}
	return from, to, enters, leaves, from <= to
}
