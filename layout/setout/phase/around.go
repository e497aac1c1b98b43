package phase

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// findAround lists the boundaries that stand, and the pipes, so near an opening of the axis wherever that
// stands that a tile may come to both, or cover wall there.
func (a *axis) findAround(w *Wall) {
	near := wider(a.hull, w.far()+4*rounded)
	add := func(box plane.Rect) {
		if near.Overlaps(box) {
			a.around = append(a.around, box)
		}
	}
	for i := range w.edges {
		add(between(w.edges[i].line.P, w.edges[i].end(), rounded))
	}
	for _, p := range w.rule.Pipes {
		add(between(p.Centre, p.Centre, p.Radius+p.Radius/64+rounded))
	}
}

// clearOfAll tells whether an option is of an opening that cuts no tile that anything else can come to, so
// that what it cuts hangs on where it stands in the lattice alone.
func (a *axis) clearOfAll(w *Wall, o *option) bool {
	if a.opening < 0 || w.rule.Sides[a.on].Meets {
		return false
	}
	near := wider(rectOf(o.edges), w.far()+4*rounded)
	return !a.nearBusy(o, w.far()+4*rounded) && !slices.ContainsFunc(a.around, near.Overlaps)
}

func rectOf(e survey.Edges) plane.Rect {
	return plane.Rect{Left: e.Left, Bottom: e.Bottom, Right: e.Right, Top: e.Top}
}

// takes tells whether an edge of the axis may count a tile as one that it cuts alone.
func (a *axis) takes(w *Wall, set *bond.Set, p *survey.Placed) bool {
	return slices.ContainsFunc(a.edges, func(e *looseEdge) bool { return e.takes(w, set, p, a) })
}

// bounds adds up what the edges of the axis are sure to cut alone.
func (a *axis) bounds(t *tally, origin plane.Point, p *survey.Placed) {
	for _, e := range a.edges {
		e.bounds(t, origin, p, a)
	}
}

// nearBusy tells whether tiles that the axis cuts where it stands may be cut by others.
func (a *axis) nearBusy(o *option, far length.Length) bool {
	if len(a.busy) == 0 || a.opening < 0 {
		return len(a.busy) > 0
	}
	return slices.ContainsFunc(a.busy, wider(rectOf(o.edges), far).Overlaps)
}
