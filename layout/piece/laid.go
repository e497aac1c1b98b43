package piece

import (
	"coursewright/layout/bond"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Laid is some rows of one tile on a wall where several are laid.
type Laid struct {
	Tile int // which of the room's tiles: 0 is its own, n that of its band n-1
	Rows []bond.Row
	Lift int // how many courses of other tile stand under row 0
	Rule Rule

	Shape survey.Shape // the part of the wall that it is cut to, with the sides of the wall

	// Of tile laid in a pattern, in place of Rows: where its lattice stands.
	Pattern *bond.Pattern
	Origin  plane.Point
}

// Reach are the lowest and the highest row of a pattern that touch its part of the wall.
func (l *Laid) Reach() (low, high int) {
	for i, set := range l.Pattern.Over(l.Origin, l.Shape.Solid.Bounds()) {
		if i == 0 {
			low, high = set.Row, set.Row
		}
		low, high = min(low, set.Row), max(high, set.Row)
	}
	return low, high
}

// CutLaid makes the pieces of a wall on which several tiles are laid, from the
// bottom up, and finds the bare places that none of them leaves covered. Rows
// must run level.
func CutLaid(shape survey.Shape, laid []Laid) (pieces []Piece, bare []Gap) {
	cover := NewCover(shape, laid[0].Rule)
	for _, l := range laid {
		add := func(p Piece) {
			p.Laid, p.Lift = l.Tile, l.Lift
			pieces = append(pieces, p)
		}
		if l.Pattern != nil {
			layer := NewLayer(l.Shape, *l.Pattern, l.Rule)
			layer.Cover = cover
			for _, p := range layer.all(l.Origin) {
				add(p)
			}
			continue
		}
		c := &cutter{rule: l.Rule, framed: Frame(l.Shape, l.Rows, l.Rule.Plumb), cover: cover}
		c.emit = func(p *Piece) { add(*p) }
		c.whole = func(row bond.Row, tile plane.Rect) { add(l.Rule.wholeTile(row, tile)) }
		c.all(l.Rows)
	}
	return pieces, cover.Gaps()
}
