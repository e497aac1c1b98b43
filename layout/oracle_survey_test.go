package layout_test

import (
	"cmp"
	"math"
	"math/big"
	"slices"
	"strings"

	"coursewright/layout/survey"

	"github.com/peterstace/simplefeatures/geom"
)

// The oracle of the contract tests: it works formats.md out again, in float64
// units of 1/960 mm (whole numbers are exact in them), and shares no code with
// the core but the job's type. Areas and cuts are made by a general geometry
// library.

const (
	perMM = 960.0
	far   = 60_000 * perMM // farther out than any wall
)

type xy struct{ x, y float64 }

// said reads a length as the job files of these tests write it.
func said(text, units string) float64 {
	perUnit := map[string]*big.Rat{"in": big.NewRat(24384, 1), "mm": big.NewRat(960, 1), "cm": big.NewRat(9600, 1), "'": big.NewRat(12*24384, 1), `"`: big.NewRat(24384, 1)}
	minus := strings.HasPrefix(text, "-")
	text = strings.TrimPrefix(text, "-")
	text = strings.NewReplacer("-", " ", "'", " ' ", `"`, ` " `).Replace(text)
	total, pending := new(big.Rat), new(big.Rat)
	flush := func(unit string) {
		total.Add(total, pending.Mul(pending, perUnit[unit]))
		pending = new(big.Rat)
	}
	for _, word := range strings.Fields(text) {
		if _, unit := perUnit[word]; unit {
			flush(word)
			continue
		}
		v, ok := new(big.Rat).SetString(word)
		if !ok {
			panic("a test's length does not read: " + text)
		}
		pending.Add(pending, v)
	}
	flush(units)
	if minus {
		total.Neg(total)
	}
	f, _ := total.Float64()
	return math.Round(f)
}

// room is the job read again.
type room struct {
	job                              survey.Job
	width, height, joint, deep, seal float64
	sliver, unworkable               [2]float64 // limits of width and height
	offset                           *big.Rat
	plumb                            bool
	clear                            float64
}

func (r room) said(text string) float64 { return said(text, r.job.Units) }

// or is a length or its default in inches and millimetres.
func (r room) or(text, inches, mm string) float64 {
	switch {
	case text != "":
		return r.said(text)
	case r.job.Units == "mm":
		return said(mm, "mm")
	}
	return said(inches, "in")
}

func roomOf(job survey.Job) room {
	job.Walls = slices.Clone(job.Walls)
	for i := range job.Walls {
		w := &job.Walls[i]
		w.Left.Meets, w.Right.Meets = notTurned(w.Left.Meets), notTurned(w.Right.Meets)
	}
	r := room{job: job, offset: new(big.Rat), plumb: job.Bond.Along == "plumb"}
	r.width, r.height, r.joint = r.said(job.Tile.Width), r.said(job.Tile.Height), r.said(job.Joint.Plain)
	r.deep = r.or(job.Bed, "3/16", "5") + r.or(job.Tile.Thickness, "5/16", "8")
	r.seal = r.or(job.Limits.Sealant, "1/4", "6")
	r.clear = r.or("", "1/8", "3")
	for way, full := range [...]float64{r.width, r.height} {
		r.sliver[way] = min(full/4, r.or("", "2", "50"))
		if job.Limits.Sliver != "" {
			r.sliver[way] = min(r.said(job.Limits.Sliver), full/2)
		}
		r.unworkable[way] = min(max(r.or("", "1/2", "13"), 1.5*r.or(job.Tile.Thickness, "5/16", "8")), full/2)
	}
	if job.Bond.Kind == "running" {
		if _, ok := r.offset.SetString(job.Bond.Offset); !ok {
			panic("a test's offset does not read")
		}
	}
	return r
}

// boundary is one thing a wall meets or stops at, as a chain of places.
type boundary struct {
	name  string
	meets bool
	gap   float64
	chain []xy
}

// wall is one wall read again, with its marks as the plan placed them.
type wall struct {
	boundaries            []boundary // left, right, head, then the segments of base
	region, solid, shown  geom.Geometry
	left, right, low, top float64
	holes                 [][4]float64 // niches and windows
	pipes                 []pipe
}

type pipe struct {
	at xy
	r  float64
}

// end is where tile ends at a corner, from far below to far above.
func (r room) end(e survey.End, x, in float64) []xy {
	if len(e.Lean) == 0 {
		return []xy{{x + in, -far}, {x + in, far}}
	}
	var c []xy
	for _, l := range e.Lean {
		c = append(c, xy{x + in + r.said(l.Off), r.said(l.Height)})
	}
	return append(append([]xy{{c[0].x, -far}}, c...), xy{c[len(c)-1].x, far})
}

// rank is the place of a wall in the setting order.
func (r room) rank(i int) (place int) {
	named := func(name string) int {
		for k, n := range r.job.SetOrder {
			if n == name {
				return k
			}
		}
		return len(r.job.SetOrder)
	}
	for k := range r.job.Walls {
		a, b := named(r.job.Walls[k].Name), named(r.job.Walls[i].Name)
		wa, wb := r.said(r.job.Walls[k].Width), r.said(r.job.Walls[i].Width)
		if a < b || a == b && (wa > wb || wa == wb && k < i) {
			place++
		}
	}
	return place
}

// lap is how far tile stays behind the neighbour's, and how much of it is hidden.
func (r room) lap(i int, right bool) (behind, cover float64) {
	n, walls := i-1, r.job.Walls
	own := walls[i].Left
	if right {
		n, own = i+1, walls[i].Right
	}
	if own.Meets == "wall" { // the run of a wall that is tiled
		if top := walls[i].Top; top != nil && top.Behind == "corner" {
			return math.Round(deepAtAnAngle(r.deep, r.said(walls[i].Width), r.said(top.Depth), r.said(cmp.Or(top.Right, top.Depth)), right)), 0
		}
		return r.deep, 0
	}
	if len(walls) >= 4 {
		n = (n + len(walls)) % len(walls)
	}
	if n < 0 || n >= len(walls) {
		return 0, 0
	}
	other := walls[n].Right
	if right {
		other = walls[n].Left
	}
	switch {
	case other.Meets == "" || other.Meets == "wall":
		return 0, 0
	case r.rank(i) < r.rank(n):
		return 0, r.deep
	}
	return r.deep, 0
}

// wall reads wall i with the marks of the plan.
func (r room) wall(i int, marks marks) wall {
	found := r.job.Walls[i]
	width := r.said(found.Width)
	var w wall
	corner := func(name string, e survey.End, x, way float64, right bool) (b boundary, shown []xy) {
		if e.Meets == "" {
			at := marks.at("end " + name)
			c := []xy{{at, -far}, {at, far}}
			return boundary{name: name, chain: c}, c
		}
		behind, cover := r.lap(i, right)
		gap := r.or(e.Gap, "1/8", "3")
		b = boundary{name, true, gap, r.end(e, x, way*(gap+behind))}
		return b, r.end(e, x, way*max(gap+behind, cover))
	}
	left, leftShown := corner("left", found.Left, 0, 1, false)
	right, rightShown := corner("right", found.Right, width, -1, true)
	head := boundary{name: "head"}
	if found.Head.Meets == "" {
		at := marks.at("head")
		head.chain = []xy{{-far, at}, {far, at}}
	} else {
		head.meets, head.gap = true, r.or(found.Head.Gap, "1/8", "3")
		for _, rise := range found.Head.Readings {
			head.chain = append(head.chain, xy{r.said(rise.At), r.said(rise.Rise) - head.gap})
		}
		head.chain = reaching(head.chain, -far, far)
	}
	w.boundaries = append([]boundary{left, right, head}, r.base(found.Base)...)
	w.solid = w.between(left.chain, right.chain)
	w.shown = w.between(leftShown, rightShown)
	w.openings(r, found.Openings, marks)
	box := w.solid.Envelope()
	if lo, hi, ok := box.MinMaxXYs(); ok {
		w.left, w.low, w.right, w.top = lo.X, lo.Y, hi.X, hi.Y
	}
	return w
}

// reaching holds a chain level out to either side.
func reaching(c []xy, from, to float64) []xy {
	return append(append([]xy{{from, c[0].y}}, c...), xy{to, c[len(c)-1].y})
}

// base is the segments with their gaps. The front of the higher of two keeps
// its gap to the side, so its chain goes down there.
func (r room) base(segments []survey.Segment) (out []boundary) {
	for k, s := range segments {
		b := boundary{name: "base", meets: true, gap: r.or(s.Gap, "1/8", "3")}
		for _, d := range s.Readings {
			b.chain = append(b.chain, xy{r.said(d.At), b.gap - r.said(d.Drop)})
		}
		first, last := b.chain[0], b.chain[len(b.chain)-1]
		switch {
		case k == 0:
			b.chain = append([]xy{{-far, first.y}}, b.chain...)
		default:
			b.chain = append([]xy{{first.x - b.gap, -far}, {first.x - b.gap, first.y}}, b.chain...)
		}
		switch {
		case k == len(segments)-1:
			b.chain = append(b.chain, xy{far, last.y})
		default:
			b.chain = append(b.chain, xy{last.x + b.gap, last.y}, xy{last.x + b.gap, -far})
		}
		out = append(out, b)
	}
	return out
}

// between is the wall over the base, under the head and between two ends.
func (w wall) between(left, right []xy) geom.Geometry {
	g := polygon([]xy{{-far / 2, -far / 2}, {far / 2, -far / 2}, {far / 2, far / 2}, {-far / 2, far / 2}})
	less := func(c []xy, more ...xy) { g = must(geom.Difference(g, polygon(append(append([]xy{}, c...), more...)))) }
	for _, b := range w.boundaries[3:] {
		less(b.chain, xy{b.chain[len(b.chain)-1].x, -2 * far}, xy{b.chain[0].x, -2 * far})
	}
	less(w.boundaries[2].chain, xy{far, 2 * far}, xy{-far, 2 * far})
	less(left, xy{-2 * far, far}, xy{-2 * far, -far})
	less(right, xy{2 * far, far}, xy{2 * far, -far})
	return g
}

// openings takes niches, windows and pipes out.
func (w *wall) openings(r room, openings []survey.Opening, marks marks) {
	for _, o := range openings {
		if o.Kind == "pipe" {
			w.pipes = append(w.pipes, pipe{xy{r.said(o.At), r.said(o.Height.Plain)}, r.said(o.Diameter)/2 + r.clear})
			continue
		}
		e := marks.edges(o.Kind + " " + o.Name)
		w.holes = append(w.holes, e)
		hole := polygon([]xy{{e[0], e[1]}, {e[2], e[1]}, {e[2], e[3]}, {e[0], e[3]}})
		w.solid = must(geom.Difference(w.solid, hole))
		w.shown = must(geom.Difference(w.shown, hole))
	}
	w.region = w.solid
	for _, p := range w.pipes {
		w.region = must(geom.Difference(w.region, p.disc()))
	}
}

func (p pipe) disc() geom.Geometry {
	var c []xy
	for i := range 256 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 256)
		c = append(c, xy{p.at.x + p.r*cos, p.at.y + p.r*sin})
	}
	return polygon(c)
}

func polygon(c []xy) geom.Geometry {
	var flat []float64
	for _, p := range append(c, c[0]) {
		flat = append(flat, p.x, p.y)
	}
	return geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(flat, geom.DimXY))}).AsGeometry()
}

func must(g geom.Geometry, err error) geom.Geometry {
	if err != nil {
		panic(err)
	}
	return g
}

// deepAtAnAngle is what tile so deep on the wall behind a corner bench takes of its front,
// on which tile stands as deep: with α the angle between them, by the law of cosines from
// the three sides, deep · tan α/2.
func deepAtAnAngle(deep, front, left, right float64, atRight bool) float64 {
	along, across := left, right
	if atRight {
		along, across = right, left
	}
	return deep * math.Tan(math.Acos((along*along+front*front-across*across)/(2*along*front))/2)
}
