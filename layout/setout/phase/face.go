package phase

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// face is a wall with its pattern and with the marks that are free: where they may stand, and which
// tiles they may touch.
type face struct {
	Found   survey.WallFound // with what is pinned fixed
	Pattern bond.Pattern
	room    *survey.Room
	rule    piece.Rule
	typed   survey.WallFound // as the survey has it
	axes    []*axis
	outer   survey.Placed // where free marks stand first
	inner   plane.Rect    // the wall with its free ends and head where they leave least
}

// moves tells whether a side stands where a free mark puts it.
func (w *face) moves(s plane.Side) bool {
	switch {
	case s == survey.SideLeft:
		return !w.Found.Left.Meets && w.Found.Left.Stops.Free()
	case s == survey.SideRight:
		return !w.Found.Right.Meets && w.Found.Right.Stops.Free()
	case s == survey.SideHead:
		return !w.Found.Head.Meets && w.Found.Head.Stops.Free()
	}
	i := int(s-survey.SideBase) - len(w.Found.Base)
	if i < 0 || i >= len(w.Found.Openings) { // base, and edges of bands
		return false
	}
	o := w.Found.Openings[i]
	return o.Kind != survey.Pipe && (o.Left.Free() || o.Width.Free() || o.Bottom.Free() || o.Height.Free())
}

// movesEnd tells whether an end of the wall is free.
func (w *face) movesEnd() bool { return w.moves(survey.SideLeft) || w.moves(survey.SideRight) }

// markPin is where an edge of an opening is pinned, or nil.
func (w *face) markPin(o survey.OpeningFound, edge survey.EdgeName) *length.Length {
	if x, there := w.Found.MarkPins[o.Mark(edge)]; there {
		return &x
	}
	return nil
}

// middleStands tells whether the middle of the tile field stands wherever free marks do: no end is free, nor
// the head over one that leans.
func (w *face) middleStands() bool {
	leans := len(w.Found.Left.Lean) > 0 || len(w.Found.Right.Lean) > 0
	return !w.movesEnd() && !(leans && w.moves(survey.SideHead))
}

// movesExposed tells whether the exposed end of the wall is free.
func (w *face) movesExposed() bool {
	l, r := w.Found.Left.Meets, w.Found.Right.Meets
	return l != r && (l && w.moves(survey.SideRight) || r && w.moves(survey.SideLeft))
}

// boxOf is round a tile where it stands.
func (w *face) boxOf(set *bond.Set) plane.Rect { return w.Pattern.Tiles[set.Tile].BoxAt(set.At) }

// touched tells whether a free mark may come into a box, or nearer than so much to it.
func (w *face) touched(box plane.Rect, far length.Length) bool {
	return w.touchedBut(nil, box, far)
}

// touchedBut tells whether the marks of another axis may come into a box, or nearer.
func (w *face) touchedBut(a *axis, box plane.Rect, far length.Length) bool {
	box = wider(box, far+rounded)
	return slices.ContainsFunc(w.axes, func(b *axis) bool { return b != a && b.hull.Overlaps(box) })
}

// touchedIn is of every zone what holds the tiles there that the marks of some axes may touch. One
// that holds none is nowhere.
func (w *face) touchedIn(zones []plane.Rect, axes []*axis) []plane.Rect {
	out := make([]plane.Rect, len(zones))
	for i, z := range zones {
		out[i] = nowhere
		for _, a := range axes {
			if in := meet(z, wider(a.zone, 2*rounded)); !in.Empty() {
				out[i] = round(out[i], in)
			}
		}
	}
	return out
}

// far is how far from a stretch of boundary a tile may stand that covers some of it.
func (w *face) far() length.Length { return w.reach() + max(w.rule.Joint, w.rule.Sealant) }

// findAxes lists the free marks of the wall.
func (w *face) findAxes() {
	end := func(on plane.Side, meets bool, stops survey.Span) {
		if !meets && stops.Free() {
			w.axes = append(w.axes, &axis{on: on, opening: -1, span: stops})
		}
	}
	end(survey.SideLeft, w.Found.Left.Meets, w.Found.Left.Stops)
	end(survey.SideRight, w.Found.Right.Meets, w.Found.Right.Stops)
	end(survey.SideHead, w.Found.Head.Meets, w.Found.Head.Stops)
	for i, o := range w.Found.Openings {
		if o.Kind != survey.Pipe && !o.Measured() {
			w.axes = append(w.axes, &axis{on: survey.SideBase + plane.Side(len(w.Found.Base)+i), opening: i})
		}
	}
	w.inner = w.innermost()
	for _, a := range w.axes {
		a.known, a.cut, a.notches = map[standing]*merit.Merit{}, map[standing]*tally{}, map[notch]*tally{}
		a.clearings = map[plane.Point]clearing{}
		a.hull = w.hull(a)
		a.zone = w.zone(a)
	}
}

// innermost is the box of the wall with free ends and head where they leave least of it.
func (w *face) innermost() plane.Rect {
	box := everywhere
	for _, a := range w.axes {
		switch a.on {
		case survey.SideLeft:
			box.Left = a.span.To
		case survey.SideRight:
			box.Right = a.span.From
		case survey.SideHead:
			box.Top = a.span.From
		}
	}
	return box
}

// hull holds all places at which the marks of an axis may stand.
func (w *face) hull(a *axis) plane.Rect {
	box := everywhere
	switch a.on {
	case survey.SideLeft, survey.SideRight:
		box.Left, box.Right = a.span.From, a.span.To
	case survey.SideHead:
		box.Bottom, box.Top = a.span.From, a.span.To
	default:
		r := w.Found.Openings[a.opening].Reach()
		box = plane.Rect{Left: r.Left, Bottom: r.Bottom, Right: r.Right, Top: r.Top}
	}
	return box
}

// zone holds every tile that an axis may cut.
func (w *face) zone(a *axis) plane.Rect {
	far, box := w.reach(), a.hull
	return plane.Rect{Left: box.Left - far, Bottom: box.Bottom - far, Right: box.Right + far, Top: box.Top + far}
}

// reach is how far the farthest corner of any tile is from another.
func (w *face) reach() (far length.Length) {
	for _, t := range w.Pattern.Tiles {
		far = max(far, t.Box.Width(), t.Box.Height())
	}
	return far
}

// fenceOff keeps the tiles of an end or the head clear of another, wherever it stands.
func (w *face) fenceOff(a, b *axis) {
	switch b.on {
	case survey.SideLeft:
		a.fence.Left = max(a.fence.Left, b.span.To)
	case survey.SideRight:
		a.fence.Right = min(a.fence.Right, b.span.From)
	case survey.SideHead:
		a.fence.Top = min(a.fence.Top, b.span.From)
	}
}

// shift is how far the edge's beginning has moved from where the wall is largest.
func (w *face) shift(e *looseEdge, p *survey.Placed) plane.Point {
	switch e.on {
	case survey.SideLeft:
		return plane.Point{X: p.Left - w.outer.Left}
	case survey.SideRight:
		return plane.Point{X: p.Right - w.outer.Right}
	case survey.SideHead:
		return plane.Point{Y: p.Head - w.outer.Head}
	}
	is, was := w.opening(e.on, p), w.opening(e.on, &w.outer)
	by := plane.Point{X: is.Left - was.Left, Y: is.Bottom - was.Bottom}
	switch e.name.Facing() {
	case piece.OnLeft:
		by.X = is.Right - was.Right
	case piece.Under:
		by.Y = is.Top - was.Top
	}
	return by
}

func (w *face) opening(on plane.Side, p *survey.Placed) survey.Edges {
	return p.Openings[int(on-survey.SideBase)-len(w.Found.Base)]
}

// within is the box in which the edges that stand cut tiles: free ends and the free
// head leave out what is beyond them.
func (w *face) within(p *survey.Placed) plane.Rect {
	box := everywhere
	if w.moves(survey.SideLeft) {
		box.Left = p.Left
	}
	if w.moves(survey.SideRight) {
		box.Right = p.Right
	}
	if w.moves(survey.SideHead) {
		box.Top = p.Head
	}
	return box
}

// beside is the box in which a loose edge cuts tiles alone, as far as it is its own marks
// that say so.
func (w *face) beside(e *looseEdge, p *survey.Placed) plane.Rect {
	box := everywhere
	if e.on < survey.SideBase {
		return box
	}
	is := w.opening(e.on, p)
	switch e.name.Facing() {
	case piece.OnRight:
		box.Bottom, box.Top, box.Right = is.Bottom, is.Top, is.Right
	case piece.OnLeft:
		box.Bottom, box.Top, box.Left = is.Bottom, is.Top, is.Left
	case piece.Over:
		box.Left, box.Right, box.Top = is.Left, is.Right, is.Top
	default:
		box.Left, box.Right, box.Bottom = is.Left, is.Right, is.Bottom
	}
	return box
}

// pinned is the start that a pin gives: the left side of a tile of the first place.
func (w *face) pinned(p *survey.StartPin) length.Length {
	switch p.Is {
	case survey.OnTile:
		return p.X - w.Pattern.Tiles[w.Pattern.Places[0].Tile].Box.Width().Half()
	case survey.OnJoint:
		return p.X + w.room.Joint.Half()
	}
	return p.X
}
