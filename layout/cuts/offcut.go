package cuts

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// Offcuts says which two pieces come out of one tile. The counts are of the
// whole room, what is set already included, because the tile was bought for all
// of it; the pairs are of what is still to be cut.
type Offcuts struct {
	TilesCut   int         // tiles that are cut into, after pairing
	TilesSaved int         // tiles that are cut twice
	Pairs      [][2]string // piece ids: the one cut first, and the one from its off-cut
	LowerBound int         // no way of cutting at most two pieces from a tile needs fewer: area and count
	Nearly     int         // tiles more that would be saved if every cut took Near more off
}

// blank is a piece as a straight cutter sees it: an upright box, and which of
// its sides must be a side of the tile.
type blank struct {
	id         string
	wide, high length.Length
	keeps      [4]bool // by the order of sideNames: a factory edge is needed here
	tile       tile
	area2      length.Area
	laid       *laid // of a piece of a pattern
	turn       bool  // its tile may be turned round
}

type tile struct{ wide, high length.Length }

// pair finds as many pairs as there can be, and counts how many more there were
// if the cuts took a little more off.
func pair(cut []work, set Settings, near length.Length) Offcuts {
	blanks := make([]blank, len(cut))
	for i, w := range cut {
		blanks[i] = w.blank()
		more, up := w.mitred(set.Kerf)
		blanks[i].wide, blanks[i].high = blanks[i].wide+more, blanks[i].high+up
	}
	off := set.paired(blanks)
	for i := range blanks {
		blanks[i].shrink(near)
	}
	off.Nearly = max(0, set.paired(blanks).TilesSaved-off.TilesSaved)
	return off
}

// shrink takes a little more off the sides of a blank that are cut.
func (b *blank) shrink(by length.Length) {
	if b.wide < b.tile.wide {
		b.wide = max(b.wide-by, 0)
	}
	if b.high < b.tile.high {
		b.high = max(b.high-by, 0)
	}
}

// paired finds as many pairs as there can be. Two pieces pair when one straight
// cut (guillotine, edge to edge) parts the tile so that each has room on its
// side of the kerf with the factory edges it needs. Who pairs with whom is a
// maximum matching, so no other choice of pairs saves more tiles.
func (s Settings) paired(blanks []blank) Offcuts {
	order := s.usable(blanks)
	fits := func(i, j int) bool { return s.pairs(&blanks[order[i]], &blanks[order[j]]) }
	mates := match(len(order), fits)
	alike := func(i, j int) bool {
		a, b := &blanks[order[i]], &blanks[order[j]]
		return a.wide == b.wide && a.high == b.high
	}
	gather(mates, fits, alike)
	off := Offcuts{LowerBound: lowerBound(blanks)}
	for i, j := range mates {
		if i < j {
			off.Pairs = append(off.Pairs, [2]string{blanks[order[i]].id, blanks[order[j]].id})
		}
	}
	off.TilesSaved = len(off.Pairs)
	off.TilesCut = len(blanks) - off.TilesSaved
	return off
}

// count takes the counts, but not the pairs, of the whole room.
func (o *Offcuts) count(whole Offcuts) {
	o.TilesCut, o.TilesSaved, o.LowerBound = whole.TilesCut, whole.TilesSaved, whole.LowerBound
}

// usable lists the blanks that may share a tile, by area, the largest first,
// then as they are set.
func (s Settings) usable(blanks []blank) []int {
	var order []int
	for i, b := range blanks {
		if min(b.wide, b.high) >= s.Least {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(i, j int) int {
		return cmp.Compare(blanks[j].wide.Times(blanks[j].high), blanks[i].wide.Times(blanks[i].high))
	})
	return order
}

func (w work) blank() blank {
	b := blank{id: w.piece.ID, wide: w.box.Width(), high: w.box.Height(), area2: w.piece.Face.Area2(),
		tile: tile{w.piece.Tile.Width(), w.piece.Tile.Height()}, laid: w.laid(), turn: w.turn}
	for i, c := range w.face[0] {
		next := w.face[0][(i+1)%len(w.face[0])].Point
		if w.made(c, next) {
			b.keep(c.Point, next)
		}
	}
	return b
}

// keep notes a factory edge that lies on a side of the box.
func (b *blank) keep(from, to plane.Point) {
	b.keeps[0] = b.keeps[0] || from.X == 0 && to.X == 0
	b.keeps[1] = b.keeps[1] || from.Y == 0 && to.Y == 0
	b.keeps[2] = b.keeps[2] || from.X == b.wide && to.X == b.wide
	b.keeps[3] = b.keeps[3] || from.Y == b.high && to.Y == b.high
}

// pairs tells whether both pieces come out of one tile: by a plumb or a level
// cut as they stand, or, on a square tile that may be turned, with one of them
// lying.
func (s Settings) pairs(a, b *blank) bool {
	if a.tile != b.tile || (a.laid == nil) != (b.laid == nil) {
		return false
	}
	if a.laid != nil {
		switch {
		case !a.laid.like(b.laid):
			return false
		case a.laid.beyond(b.laid, s.Kerf) || b.laid.beyond(a.laid, s.Kerf):
			return true
		case !a.laid.square():
			return false
		}
	}
	wide, high := a.tile.wide-s.Kerf, a.tile.high-s.Kerf
	switch {
	case a.wide+b.wide <= wide && a.apart(b, 0, 2), a.high+b.high <= high && a.apart(b, 1, 3):
		return true
	case !a.turn || wide != high:
		return false
	}
	return a.wide+b.high <= wide || a.high+b.wide <= wide
}

// apart tells whether two pieces beside each other in a tile get their factory
// edges on the sides near and far. Each has one of the two, so pieces that need
// the same one fit only if one of them may be turned by half.
func (a *blank) apart(b *blank, near, far int) bool {
	return a.turn || !(a.keeps[near] && b.keeps[near] || a.keeps[far] && b.keeps[far])
}

// lowerBound is the larger of the pieces' area in tiles and half their number,
// rounded up; tiles of several sizes count as the largest.
func lowerBound(blanks []blank) int {
	var area2, most length.Area
	for _, b := range blanks {
		area2 += b.area2
		most = max(most, 2*b.tile.wide.Times(b.tile.high))
	}
	if most == 0 {
		return 0
	}
	return max(int((area2+most-1)/most), (len(blanks)+1)/2)
}
