package count

import (
	"cmp"
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// CutWithLegs makes the pieces of the wall as Cut does, and those of the legs that
// are in single tiles. What these give hangs on no start; of them merit counts
// the foot, which hangs on the line, and those that are as narrow as the leg, which hangs on its end. What stands wholly under the rim belongs to
// the leg. The course that reaches over the rim belongs to the bond down to its
// bottom, unless the leg's own tile goes up in it and leaves better pieces.
func (w *Wall) CutWithLegs(s Setting) (survey.Shape, []piece.Piece, []piece.Gap) {
	if !w.facts.found.SingleLegs() {
		return w.Cut(s)
	}
	l := legged{w: w.facts, whole: w.facts.found.WithLegs().Shape(w.facts.room.Units, s.Placed)}
	l.rows = w.facts.rows(s, l.whole.Solid.Bounds())
	for _, leg := range w.facts.found.LegsBeside() {
		if _, how := w.facts.found.LegOf(leg); how == survey.SingleTiles {
			l.legs = append(l.legs, leg)
		}
	}
	l.higher = make([]bool, len(l.legs))
	pieces, bare := l.cut()
	for i := range l.legs {
		l.higher[i] = true
		if p, b := l.cut(); l.better(p, pieces) {
			pieces, bare = p, b
			continue
		}
		l.higher[i] = false
	}
	return l.whole, pieces, bare
}

// legged is a wall with legs in single tiles.
type legged struct {
	w      *facts
	whole  survey.Shape
	rows   []bond.Row
	legs   []survey.LegBeside
	higher []bool // by leg: it goes up in the course that reaches over the rim
}

// cut makes all pieces.
func (l *legged) cut() (pieces []piece.Piece, bare []piece.Gap) {
	field := l.whole
	for i, leg := range l.legs {
		under, top := beneath(l.rows, leg, l.higher[i])
		if len(under) == 0 {
			continue
		}
		joint := length.Length(0)
		if l.higher[i] {
			joint = l.w.room.Joint // beside the leg's tile, over the rim
		}
		front := l.front(leg)
		part := outOfBox(below(l.whole, top), beside(leg), front)
		field = outOfBox(field, legBox(leg, joint, top), front)
		at := part.Solid.Bounds()
		for k := range under {
			if under[k].First = at.Left; leg.Right {
				under[k].First = at.Right - under[k].Width
			}
		}
		p, gaps := piece.Cut(part, under, l.w.rule)
		pieces, bare = append(pieces, p...), append(bare, gaps...)
	}
	p, gaps := piece.Cut(field, l.rows, l.w.rule)
	pieces, bare = append(p, pieces...), append(gaps, bare...)
	slices.SortStableFunc(pieces, func(a, b piece.Piece) int {
		return cmp.Or(cmp.Compare(a.Row, b.Row), cmp.Compare(a.Face.Bounds().Left, b.Face.Bounds().Left))
	})
	return pieces, bare
}

// better tells whether pieces are better than others of the same wall: fewer that are
// unworkable, then fewer slivers.
func (l *legged) better(a, b []piece.Piece) bool {
	count := func(pieces []piece.Piece) (unworkable, slivers int) {
		for _, p := range pieces {
			if p.Unworkable {
				unworkable++
			}
			if p.Sliver {
				slivers++
			}
		}
		return unworkable, slivers
	}
	u, s := count(a)
	v, t := count(b)
	return u < v || u == v && s < t
}

// beneath gives the rows of a leg, those wholly under the rim and, where it goes
// higher, the one that reaches over it; and where the next row begins.
func beneath(rows []bond.Row, leg survey.LegBeside, higher bool) (under []bond.Row, top length.Length) {
	for i, r := range rows {
		if i+1 == len(rows) || r.High > leg.Rim && (!higher || r.Low >= leg.Rim) {
			break
		}
		under, top = append(under, r), rows[i+1].Low
	}
	return under, top
}

// legBox is the part of the wall that is a leg's, up to a height, and more beside it.
func legBox(leg survey.LegBeside, more, top length.Length) plane.Rect {
	const far = 100 * length.Metre
	if leg.Right {
		return plane.Rect{Left: leg.Front - more, Right: far, Bottom: -far, Top: top}
	}
	return plane.Rect{Left: -far, Right: leg.Front + more, Bottom: -far, Top: top}
}

// beside is everything on the other side of the front from a leg.
func beside(leg survey.LegBeside) plane.Rect {
	const far = 100 * length.Metre
	if leg.Right {
		return plane.Rect{Left: -far, Right: leg.Front, Bottom: -far, Top: far}
	}
	return plane.Rect{Left: leg.Front, Right: far, Bottom: -far, Top: far}
}

// front is the side of the wall's shape that the front beside a leg is.
func (l *legged) front(leg survey.LegBeside) plane.Side {
	if leg.Right {
		return survey.SideBase + plane.Side(len(l.w.found.Base)-2)
	}
	return survey.SideBase + 1
}

// below is what a shape has under a height.
func below(s survey.Shape, y length.Length) survey.Shape {
	line := plane.Below(y)
	s.Region, s.Solid, s.Visible = s.Region.Keep(line), s.Solid.Keep(line), s.Visible.Keep(line)
	return s
}

// outOfBox is a shape less a box, of which the new edges lie on a side.
func outOfBox(s survey.Shape, box plane.Rect, on plane.Side) survey.Shape {
	ring := box.Ring(0)
	s.Region, s.Solid, s.Visible = s.Region.Less(ring, on), s.Solid.Less(ring, on), s.Visible.Less(ring, on)
	return s
}

// addLegs grades the pieces of every leg in single tiles: each is as wide as the leg, and the
// lowest is cut by its floor.
func (t *tally) addLegs(m *merit.Merit, s Setting) {
	w := t.w
	if !w.found.SingleLegs() {
		return
	}
	for _, leg := range w.found.LegsBeside() {
		index, how := w.found.LegOf(leg)
		wide := leg.Width(w.found, s.Placed)
		floor, tub, end := w.found.Base[index], w.found.Base[1], w.found.Left
		if leg.Right {
			tub, end = w.found.Base[index-1], w.found.Right
		}
		sight := sightOf(m, end.Sight)
		switch {
		case how != survey.SingleTiles || wide <= 0:
			continue
		case wide <= max(0, w.room.Sealant-tub.Gap): // too narrow for any piece
			sight.Bare += max(0, leg.Rim-highest(floor))
			continue
		}
		across, up := w.rule.Limits[0], w.rule.Limits[1]
		if wide >= w.room.Tile.Width {
			across = piece.Limits{} // no piece is cut to its width
		}
		high := foot(w.room, floor, s.Line)
		grade(sight, wide < across.Unworkable, wide < across.Sliver, above(w.room, floor, leg, s.Line))
		grade(sightOf(m, floor.Sight), high < up.Unworkable || wide < across.Unworkable, high < up.Sliver || wide < across.Sliver, 1)
	}
}

func sightOf(m *merit.Merit, s survey.Sight) *merit.Sight {
	if s == survey.Low {
		return &m.OutOfSight
	}
	return &m.Sight
}

// grade counts n pieces that are unworkable, or else slivers.
func grade(m *merit.Sight, unworkable, sliver bool, n int) {
	switch {
	case unworkable:
		m.Unworkable += n
	case sliver:
		m.Slivers += n
	}
}

// above is how many pieces a leg has over its lowest: one for each course that ends under the rim.
func above(room *survey.Room, floor survey.SegmentFound, leg survey.LegBeside, line length.Length) int {
	pitch := room.Tile.Height + room.Joint
	from := highest(floor) + floor.Gap + max(0, room.Sealant-floor.Gap) + 1
	top := from + length.Mod(line+room.Tile.Height-from, pitch) // of the lowest piece
	return max(0, int(length.DivFloor(leg.Rim-top, pitch)))
}

// highest is how high a floor comes.
func highest(floor survey.SegmentFound) length.Length {
	top := floor.Readings[0].Value
	for _, r := range floor.Readings {
		top = max(top, r.Value)
	}
	return top
}

// foot is the height of the lowest piece over a floor, where the floor is highest.
// What sealant fills is no piece.
func foot(room *survey.Room, floor survey.SegmentFound, line length.Length) length.Length {
	top := highest(floor) + floor.Gap
	tile := room.Tile.Height
	high := tile - length.Mod(top-line, tile+room.Joint)
	if high <= max(0, room.Sealant-floor.Gap) {
		return tile
	}
	return high
}
