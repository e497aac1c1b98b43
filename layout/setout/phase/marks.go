package phase

import (
	"cmp"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// axis is the free marks of a wall that are placed together: of a free end, of the free
// head, or of an opening. Where none of what it cuts may be cut by anything else, what it gives
// hangs on where it stands in the lattice alone, and is worked out once.
type axis struct {
	on        plane.Side
	opening   int         // or -1
	span      survey.Span // where an end or the head may stand
	edges     []*looseEdge
	atLeft    bool                      // it may come to tiles that the left end of the wall cuts
	atRight   bool                      // or the right end
	hull      plane.Rect                // of all places at which its marks may stand
	zone      plane.Rect                // of all tiles that it may cut, wherever it stands
	fence     plane.Rect                // the tiles that it cuts alone stand within
	busy      []plane.Rect              // round other boundaries that may cut tiles of the zone
	known     map[standing]*merit.Merit // what the edges are sure to cut
	around    []plane.Rect              // boundaries near an opening, see findAround
	cut       map[standing]*tally       // what an opening that is clear of all cuts
	notches   map[notch]*tally          // and what it takes out of tiles
	clearings map[plane.Point]clearing  // by size, see cutter
	clear     [2]map[length.Length]bool // whether an opening can be placed clear, along and up, by where the lattice stands
}

// standing is where an axis stands in the lattice, how large it is, and, where other
// boundaries are near, where on the wall.
type standing struct{ phase, size, on pair }

// pair is a point of a room, in one number.
type pair uint64

func paired(p plane.Point) pair { return pair(uint32(p.X))<<32 | pair(uint32(p.Y)) }

// option is one way to place the marks of an axis, and what it is sure to give.
type option struct {
	at    length.Length // of an end or the head
	edges survey.Edges  // of an opening
	merit *merit.Merit  // what it is sure to give, but for near
	near  length.Length // how far an opening is from where it is wished, in whole marks
	cut   int           // how much of what it touches was cut: nothing, the corners, all

	stopped bool // cutting all was stopped once, see cutNext

	lowers []run        // widths there of runs of edges that stand
	alone  *merit.Merit // of an end or the head: what the phase gives with this and no other placed
}

// How much of some tiles is cut: those in corners, or all.
const (
	cornersCut = 1
	allCut     = 2
)

// compare compares what two options are sure to give.
func (o *option) compare(order merit.Order, b *option) int {
	c, _ := order.Compare(o.merit, b.merit)
	return cmp.Or(c, cmp.Compare(o.near, b.near))
}

// addTo adds what the option is sure to give.
func (o *option) addTo(m *merit.Merit) {
	*m = m.Plus(o.merit)
	m.Near += o.near
}

// set places the marks of the axis.
func (a *axis) set(p *survey.Placed, o *option) {
	switch a.on {
	case survey.SideLeft:
		p.Left = o.at
	case survey.SideRight:
		p.Right = o.at
	case survey.SideHead:
		p.Head = o.at
	default:
		p.Openings[a.opening] = o.edges
	}
}

// outermost places every measured mark, free ends and heads where they leave most wall, and
// free openings in the middle of their ranges, or where they are wished.
func outermost(w survey.WallFound) survey.Placed {
	p := survey.Placed{Left: w.Left.Stops.From, Right: w.Right.Stops.To, Head: w.Head.Stops.To, Openings: make([]survey.Edges, len(w.Openings))}
	for i, o := range w.Openings {
		if o.Kind == survey.Pipe {
			continue
		}
		e := &p.Openings[i]
		e.Left, e.Right = begin(o.Left, o.Width, o.Near.X)
		e.Bottom, e.Top = begin(o.Bottom, o.Height, o.Near.Y)
		*e = o.Within(*e)
	}
	return p
}

// begin is where an opening stands first in one direction.
func begin(low, size survey.Span, near *length.Length) (from, to length.Length) {
	wide := (size.From + size.To).Half()
	from = (low.From + low.To).Half()
	if near != nil {
		from = min(max(*near-wide.Half(), low.From), low.To)
	}
	return from, from + wide
}

// fenceAxes notes beside every axis the boundaries that may cut a tile with it. Those that an
// end or the head runs into close a fence; all others are busy.
func (w *Wall) fenceAxes() {
	for _, a := range w.axes {
		a.fence = everywhere
		for i := range w.edges {
			e := &w.edges[i]
			to := plane.Point{X: e.line.P.X + e.line.D.X, Y: e.line.P.Y + e.line.D.Y}
			box, side := between(e.line.P, to, rounded), e.name.Side()
			base := side >= survey.SideBase && int(side-survey.SideBase) < len(w.Found.Base)
			a.atLeft = a.atLeft || side == survey.SideLeft && box.Overlaps(a.zone)
			a.atRight = a.atRight || side == survey.SideRight && box.Overlaps(a.zone)
			switch level := a.on == survey.SideLeft || a.on == survey.SideRight; {
			case !box.Overlaps(a.zone):
			case level && base:
				a.fence.Bottom = max(a.fence.Bottom, box.Top)
			case level && side == survey.SideHead:
				a.fence.Top = min(a.fence.Top, box.Bottom)
			case a.on == survey.SideHead && side == survey.SideLeft:
				a.fence.Left = max(a.fence.Left, box.Right)
			case a.on == survey.SideHead && side == survey.SideRight:
				a.fence.Right = min(a.fence.Right, box.Left)
			default:
				a.busy = append(a.busy, box)
			}
		}
		for _, pipe := range w.rule.Pipes {
			if b := between(pipe.Centre, pipe.Centre, pipe.Radius+pipe.Radius/64+rounded); b.Overlaps(a.zone) {
				a.busy = append(a.busy, b)
			}
		}
		for _, b := range w.axes {
			switch hull := b.hull; {
			case b == a || !hull.Overlaps(a.zone):
			case a.opening < 0 && b.opening < 0: // ends and the head run into each other
				w.fenceOff(a, b)
			default:
				a.busy = append(a.busy, hull)
			}
		}
		if w.crosses(a) {
			a.busy = append(a.busy, a.zone)
		}
		for i := range w.loose {
			if w.loose[i].on == a.on {
				a.edges = append(a.edges, &w.loose[i])
			}
		}
		a.findAround(w)
	}
}

// sure is what an axis is sure to give with its marks placed so. What was worked out before is given again.
func (w *Wall) sure(a *axis, origin plane.Point, o *option) *merit.Merit {
	at := a.standsAt(w, origin, o)
	m := a.known[at]
	if m == nil {
		p := a.placed(w, o)
		t := afresh(w)
		a.bounds(&t, origin, &p)
		m = w.merits.next()
		*m = t.merit()
		w.runs = t.runs
		w.lines.ofOption(a, origin, o, m)
		a.known[at] = m
		w.Work++
	}
	return m
}

// placed are the marks where they stand first, but for those of the axis, until the next are asked for.
func (a *axis) placed(w *Wall, o *option) survey.Placed {
	p := w.outer
	p.Openings = append(w.scratch[:0], p.Openings...)
	w.scratch = p.Openings
	a.set(&p, o)
	return p
}

// standsAt is where the axis stands with an option.
func (a *axis) standsAt(w *Wall, origin plane.Point, o *option) (at standing) {
	phase := origin
	switch a.on {
	case survey.SideLeft, survey.SideRight:
		phase.X -= o.at
	case survey.SideHead:
		phase.Y -= o.at
	default:
		phase = plane.Point{X: origin.X - o.edges.Left, Y: origin.Y - o.edges.Bottom}
		at.size = paired(plane.Point{X: o.edges.Right - o.edges.Left, Y: o.edges.Top - o.edges.Bottom})
	}
	at.phase = paired(w.Pattern.Phase(phase))
	if a.nearBusy(o, w.reach()) {
		at.on = paired(plane.Point{X: o.at + o.edges.Left, Y: o.edges.Bottom + 1})
	}
	return at
}

// endsStandApart tells whether no tile that the ends of the wall cut may be touched by the marks of two axes: then what
// the ends leave is known once every axis was looked at by itself.
func (w *face) endsStandApart(edges []edge) bool {
	far := w.reach() + 3*rounded
	for i := range edges {
		e := &edges[i]
		if !isEnd(e.name.Side()) {
			continue
		}
		box := between(e.line.P, plane.Point{X: e.line.P.X + e.line.D.X, Y: e.line.P.Y + e.line.D.Y}, far)
		for n, a := range w.axes {
			for _, b := range w.axes[:n] {
				if a.hull.Overlaps(box) && b.hull.Overlaps(box) && a.hull.Overlaps(wider(b.hull, far)) {
					return false
				}
			}
		}
	}
	return true
}
