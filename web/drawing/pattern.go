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

// colourOf is the colour of a tile of the bond: the nth of the others, or 0 the room's.
// A drawing to work by has them in pale shades.
func (b *board) colourOf(of int, first Colour) Colour {
	switch others := b.plan.Room.Bond.Others; {
	case of == 0 || of > len(others):
		return first
	case first == White:
		return []Colour{0xe3e9ef, 0xd3dbe3, 0xc4ced8}[(of-1)%3]
	default:
		return Colour(others[of-1].Colour)
	}
}

// wholeOfPattern draws the whole tiles of a pattern over the ground of their
// joints, each by itself where they are not too many. Where a joint would be too thin
// to be seen, a line in its colour makes it so.
func (b *board) wholeOfPattern(f frame, pieces []*piece.Piece, tile Colour) {
	ink := func(p *piece.Piece) Ink {
		i := fill(b.colourOf(p.Of, b.laidColour(p.Laid, tile)))
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
	type kind struct{ laid, of int }
	rings, first, order := map[kind][][]Point{}, map[kind]*piece.Piece{}, []kind{}
	for _, p := range pieces {
		k := kind{p.Laid, p.Of}
		if first[k] == nil {
			first[k], order = p, append(order, k)
		}
		rings[k] = append(rings[k], f.rings(p.Face)...)
	}
	slices.SortFunc(order, func(a, b kind) int { return cmp.Or(cmp.Compare(a.laid, b.laid), cmp.Compare(a.of, b.of)) })
	for _, k := range order {
		b.path(Tag{Kind: Whole, Wall: f.wall}, ink(first[k]), rings[k]...)
	}
}
