package phase

import (
	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// notch is what an opening takes out of a tile, from where the tile stands.
type notch struct {
	tile int
	out  plane.Rect
}

// beside is what the other boundaries cut of the tiles that an opening may touch, while it is clear of all:
// the same wherever it then stands.
func (c *choice) beside(a *axis, p *survey.Placed) *tally {
	t := c.others[a]
	if t == nil {
		t = &tally{w: c.w, surely: true}
		if len(a.around) > 0 {
			c.cutTurns(t, a, p, rectOf(p.Openings[a.opening]), nil)
		}
		if c.others == nil {
			c.others = map[*axis]*tally{}
		}
		c.others[a] = t
	}
	return t
}

// notched is what an opening that is clear of all cuts, with the tiles at its corners. It stops, and is
// not done, once that comes after another merit.
func (c *choice) notched(a *axis, o *option, p *survey.Placed, other *merit.Merit) (t *tally, done bool) {
	at := a.standsAt(c.w, c.origin, o)
	if t = a.cut[at]; t != nil {
		return t, true
	}
	t = &tally{w: c.w, surely: true, runs: make([]run, 0, 8)}
	a.bounds(t, c.origin, p)
	if done = c.cutNotches(t, a, p, other); done {
		a.cut[at] = t
	}
	return t, done
}

// cutNotches adds up what an opening that is clear of all cuts of the tiles at its corners, but for those
// that its edges cut alone. What is cut out of a tile hangs on where the opening stands beside it, and
// is cut once.
func (c *choice) cutNotches(t *tally, a *axis, p *survey.Placed, other *merit.Merit) (done bool) {
	w, at := c.w, rectOf(p.Openings[a.opening])
	corner := func(x, y length.Length) plane.Rect {
		return between(plane.Point{X: x, Y: y}, plane.Point{X: x, Y: y}, 1)
	}
	done = true
	corners := []plane.Rect{corner(at.Left, at.Bottom), corner(at.Right, at.Bottom), corner(at.Left, at.Top), corner(at.Right, at.Top)}
	w.eachIn(&ground{box: everywhere}, &zones{boxes: corners}, c.origin, func(set bond.Set) {
		if !done {
			return
		}
		out := meet(w.boxOf(&set), at)
		if out.Empty() || a.takes(w, &set, p) {
			return
		}
		key := notch{set.Tile, moved(out, set.At)}
		cut := a.notches[key]
		if cut == nil {
			now := afresh(w)
			now.surely = true
			layer, by := a.cutter(w, p)
			there := set
			there.At.X, there.At.Y = set.At.X+by.X, set.At.Y+by.Y
			layer.Cut(there, func(p *piece.Piece) { now.piece(p, set.Tile) })
			w.runs = now.runs
			cut = now.copy()
			a.notches[key] = cut
			w.Work++
		}
		t.add(cut)
		done = other == nil || !t.after(other)
	})
	return done
}

// clearing is an opening of one size where it stood clear of all the first time.
type clearing struct {
	layer *piece.Layer
	at    plane.Point
}

// cutter cuts tiles at an opening that is clear of all as where one of its size stood first: by so much they
// are to be moved.
func (a *axis) cutter(w *Wall, p *survey.Placed) (*piece.Layer, plane.Point) {
	is := p.Openings[a.opening]
	size := plane.Point{X: is.Right - is.Left, Y: is.Top - is.Bottom}
	first, there := a.clearings[size]
	if !there {
		first = clearing{w.ground(*p).layer, plane.Point{X: is.Left, Y: is.Bottom}}
		a.clearings[size] = first
	}
	return first.layer, plane.Point{X: first.at.X - is.Left, Y: first.at.Y - is.Bottom}
}
