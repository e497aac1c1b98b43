package drawing

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// parts hangs handles on what is laid on the field or fixed to it: the bottom edge of
// bands, fixtures, and ends and heads that were measured, where they stop.
func (h hands) parts() {
	h.bands()
	h.fixed()
	h.stops()
}

// bands: one that was measured is moved, and of a free one the height that is wished.
func (h hands) bands() {
	r := h.w.Shape.Region.Bounds()
	for _, i := range h.plan.Room.BandsOn(h.f.wall) {
		found, at := h.plan.Room.Bands[i], h.plan.Setout.Bands[i]
		if found.Upon != "" {
			continue // it goes with the band it stands upon
		}
		id, text, y := "band "+found.Name, "bottom edge of "+found.Name, at.Bottom
		place, _ := h.clear("y", plane.Point{X: r.Left, Y: y}, plane.Point{X: r.Right, Y: y})
		band := Handle{ID: id, Axis: "y", Text: text, X: place.X, Y: y, At: h.f.at(place.X, y), Measured: !found.Bottom.Free()}
		if h.plan.Room.Bond.Coursed() { // a pattern has no joint lines to put it on
			band.Snaps = []Snap{{Axis: "y", Side: Begins}}
		}
		h.add(band)
	}
}

// fixed: a fixture is moved along the wall where it stands in no corner, and in height;
// of one whose height is a range what is wished.
func (h hands) fixed() {
	for _, p := range h.w.Fixtures {
		f := p.Found
		if f.Flush && slices.ContainsFunc(h.w.Found.Openings, func(o survey.OpeningFound) bool {
			return o.Kind == survey.SoapDish && o.Name == f.Name && !o.Measured()
		}) {
			continue // the edges of its hole are dragged
		}
		axis := "xy"
		switch {
		case f.Kind == survey.GlassLine:
			axis = "x"
		case f.InCorner():
			axis = "y"
		}
		at := plane.Point{X: (p.Box.Left + p.Box.Right).Half(), Y: p.At.Y}
		if f.Kind == survey.GlassLine {
			at.Y = (p.Box.Bottom + p.Box.Top).Half()
		}
		h.measured("fixture "+f.Name, axis, f.Name, at.X, at.Y, h.f.at(at.X, at.Y), h.standsOn(f)...)
	}
}

// standsOn are the joint lines a shelf or a dish goes to: those on which it stands.
func (h hands) standsOn(f survey.FixtureFound) []Snap {
	switch {
	case f.Flush || !h.plan.Room.Bond.Coursed() || h.plan.Room.Bond.Plumb:
		return nil
	case f.InCorner():
		return []Snap{{Axis: "y", Side: Ends}}
	case f.Kind == survey.SoapDish:
		return []Snap{{Axis: "y", Side: Begins, From: -f.High.Half()}}
	}
	return nil
}

// stops: an end or a head that was measured, at the outer edge of its trim, where the
// tape was held.
func (h hands) stops() {
	r, w := h.w.Shape.Region.Bounds(), h.w.Found
	joint := h.plan.Room.Joint
	middle := (r.Bottom + r.Top).Half()
	stop := func(id, axis, text string, at plane.Point, side Side, in length.Length) {
		h.measured("stop "+id, axis, text, at.X, at.Y, h.f.at(at.X, at.Y), Snap{axis, side, in})
	}
	if e := w.Left; !e.Meets && !e.Stops.Free() {
		in := e.Trim.Inset(joint)
		stop("left", "x", "left end, as measured", plane.Point{X: h.w.Start.Placed.Left - in, Y: middle}, Begins, in)
	}
	if e := w.Right; !e.Meets && !e.Stops.Free() {
		in := e.Trim.Inset(joint)
		stop("right", "x", "right end, as measured", plane.Point{X: h.w.Start.Placed.Right + in, Y: middle}, Ends, -in)
	}
	if e := w.Head; !e.Meets && !e.Stops.Free() {
		in, y := e.Inset(h.plan.Room), h.w.Start.Placed.Head
		place, _ := h.clear("y", plane.Point{X: r.Left, Y: y}, plane.Point{X: r.Right, Y: y})
		x := place.X
		stop("head", "y", "head, as measured", plane.Point{X: x, Y: y + in}, Ends, -in)
	}
}
