package drawing

import "coursewright/layout/piece"

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
	ink := func(of int) Ink {
		i := fill(b.colourOf(of, tile))
		if less := thinJoint - f.exact(b.plan.Room.Joint); less > 0 {
			i.Line, i.Width = Grout, Micron(less)
			if tile != White {
				i.Line = Colour(b.plan.Room.Grout)
			}
		}
		return i
	}
	if len(pieces) <= manyTiles && tile == White {
		for _, p := range pieces {
			b.path(Tag{Kind: Whole, Wall: f.wall, Piece: p.ID}, ink(p.Of), f.rings(p.Face)...)
		}
		return
	}
	for of := 0; of <= len(b.plan.Room.Bond.Others); of++ {
		var rings [][]Point
		for _, p := range pieces {
			if p.Of == of {
				rings = append(rings, f.rings(p.Face)...)
			}
		}
		if len(rings) > 0 {
			b.path(Tag{Kind: Whole, Wall: f.wall}, ink(of), rings...)
		}
	}
}
