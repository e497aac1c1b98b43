package phase

import (
	"coursewright/layout/merit"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// along are small pieces along edges that stand, of tiles that the marks of one end or of the head alone may
// touch: each is there where those marks leave its tile alone.
type along []smallPiece

type smallPiece struct {
	box    plane.Rect
	sights [2]merit.Sight
}

// clearOf is how far a tile stands from an end or the head that surely leaves it alone.
const clearOf = 8 * rounded

// along lists what the edges that meet something cut too small of the tiles that only an end, or the head, can
// touch.
func (c *choice) along(a *axis) (out along) {
	w := c.w
	if a.opening >= 0 {
		return nil
	}
	move := w.Pattern.Phase(c.origin)
	t := tally{w: w}
	for i := range w.edges {
		e := &w.edges[i]
		if e.long == 0 || !e.meets {
			continue
		}
		at := e.laidAt(move, rounded, 0, everywhere)
		for tile, near := range e.near {
			for k, n := e.reached(tile, &at); k < n; k++ {
				box := e.boxOf(&near[k], &at)
				if !box.Overlaps(a.hull) || w.touchedBut(a, box, 0) {
					continue
				}
				t.runs = t.runs[:0]
				t.sights = [2]merit.Sight{}
				if e.bound(&t, &near[k], &at); t.small() {
					out = append(out, smallPiece{box, t.sights})
				}
			}
		}
	}
	return out
}

// small tells whether anything is too small of what was added up.
func (t *tally) small() bool {
	s, low := &t.sights[0], &t.sights[1]
	return s.Unworkable+s.Slivers+low.Unworkable+low.Slivers > 0
}

// add adds to an option the small pieces whose tiles it leaves alone.
func (all along) add(w *Wall, a *axis, o *option) {
	for i := range all {
		p := &all[i]
		if !a.leaves(o, p.box) {
			continue
		}
		m := w.merits.next()
		*m = *o.merit
		o.merit = m
		for low, s := range [...]*merit.Sight{&m.Sight, &m.OutOfSight} {
			s.Unworkable += p.sights[low].Unworkable
			s.Slivers += p.sights[low].Slivers
		}
	}
}

// leaves tells whether an end or the head stands beyond a box.
func (a *axis) leaves(o *option, box plane.Rect) bool {
	switch a.on {
	case survey.SideLeft:
		return box.Left >= o.at+clearOf
	case survey.SideRight:
		return box.Right <= o.at-clearOf
	}
	return box.Top <= o.at-clearOf
}
