package drawing

import (
	"cmp"
	"slices"

	"coursewright/layout/piece"
)

// inCourses tells whether the room is laid in level courses, which have heights to
// write beside them.
func (b *board) inCourses() bool { return b.plan.Room.Bond.Coursed() && !b.plan.Room.Bond.Plumb }

// manyTiles is how many whole tiles of a pattern are drawn each by itself, so that
// each can be picked; more are one path.
const manyTiles = 2500

// tint is which of the tiles of a wall a piece is of: one of the room's own or of a band's,
// and of a pattern the first or one of its others.
type tint struct{ laid, of int }

func tintOf(p *piece.Piece) tint { return tint{p.Laid, p.Of} }

// shades tell tiles from each other in a drawing to work by.
var shades = []Colour{0xe3e9ef, 0xd3dbe3, 0xc4ced8}

// colourOf is the colour of a tile on a wall where the room's own has the first. A drawing to
// work by has all others in pale shades.
func (b *board) colourOf(wall int, t tint, first Colour) Colour {
	others := b.plan.Room.Laid(t.laid).Bond.Others
	if wall < len(b.faces) && t.laid == 0 {
		others = b.faces[wall].Bond.Others
	}
	switch n := t.laid + t.of; {
	case t.of == 0 || t.of > len(others):
		return b.laidColour(t.laid, first)
	case first != White:
		return Colour(others[t.of-1].Colour)
	case t.of == len(shades) && t.laid > 0: // each shade is another tile of the band
		return White
	default:
		return shades[(n-1)%len(shades)]
	}
}

// wholeOfPattern draws the whole tiles of a pattern over the ground of their
// joints, each by itself where they are not too many. Where a joint would be too thin
// to be seen, a line in its colour makes it so.
func (b *board) wholeOfPattern(f frame, pieces []*piece.Piece, tile Colour) {
	ink := func(p *piece.Piece) Ink {
		i := fill(b.colourOf(f.wall, tintOf(p), tile))
		if less := thinJoint - f.exact(b.plan.Room.Laid(p.Laid).Joint); less > 0 {
			i.Line, i.Width = Grout, Micron(less)
			if tile != White {
				i.Line = Colour(b.plan.Room.Grout)
			}
		}
		return i
	}
	if len(pieces) <= manyTiles && tile == White {
		for _, p := range pieces {
			b.path(Tag{Kind: Whole, Wall: f.wall, Piece: p.ID}, ink(p), f.rings(p.Face)...)
		}
		return
	}
	rings, first, order := map[tint][][]Point{}, map[tint]*piece.Piece{}, []tint{}
	for _, p := range pieces {
		k := tintOf(p)
		if first[k] == nil {
			first[k], order = p, append(order, k)
		}
		rings[k] = append(rings[k], f.rings(p.Face)...)
	}
	slices.SortFunc(order, compareTints)
	for _, k := range order {
		b.path(Tag{Kind: Whole, Wall: f.wall}, ink(first[k]), rings[k]...)
	}
}

func compareTints(a, b tint) int { return cmp.Or(cmp.Compare(a.laid, b.laid), cmp.Compare(a.of, b.of)) }
