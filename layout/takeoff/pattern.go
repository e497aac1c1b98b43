package takeoff

import (
	"fmt"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// kinds are the lines of the tiles of the room's bond: the room's own first, and of a
// pattern each of its others.
func (in Input) kinds(set Settings, typed Settings) []Line {
	if in.Room.Tile.Sheet.Any() {
		return []Line{in.sheets(in.Room.Tile, "", set)}
	}
	others := in.Room.Bond.Others
	if len(others) == 0 {
		return []Line{in.tiles(set)}
	}
	saved := in.saved()
	lines := make([]Line, len(others)+1)
	for of := range lines {
		t := in.Room.Tile
		if of > 0 {
			t = others[of-1]
		}
		whole, cut := in.ofKind(of)
		spare := typed.of(t, in.Room.Bond).Breakage
		l := boxed(bought("tile", "piece", whole+cut-saved[of], spare, ""), t)
		l.Because = fmt.Sprintf("%s: %d whole, %d cut into %s, and %d spare (%d %%%s)", kindName(t, in.Room.Units),
			whole, cut-saved[of], counted(cut, "piece"), l.Spare, spare, spareSource(in.Room.Bond))
		if of > 0 {
			l.Item, l.Further = fmt.Sprintf("tile %d of the %s", of+1, in.Room.Bond.Kind), of
		}
		lines[of] = l
	}
	return lines
}

// kindName is a tile's size, with its name where it has one.
func kindName(t survey.TileSize, units length.System) string {
	size := t.Width.Fine(units) + " × " + t.Height.Fine(units)
	if t.Name != "" {
		return t.Name + ", " + size
	}
	return size
}

// ofKind counts the whole tiles and the cut pieces of one tile of the bond.
func (in Input) ofKind(of int) (whole, cut int) {
	for _, w := range in.Walls {
		for _, p := range w.Pieces {
			switch {
			case p.Of != of:
			case p.Whole:
				whole++
			default:
				cut++
			}
		}
	}
	return whole, cut
}

// saved is how many tiles are cut twice, by which tile of the bond they are.
func (in Input) saved() map[int]int {
	of := map[string]int{}
	for _, w := range in.Walls {
		for _, p := range w.Pieces {
			of[p.ID] = p.Of
		}
	}
	out := map[int]int{}
	for _, pair := range in.Cuts.Pairs {
		out[of[pair[0]]]++
	}
	return out
}

// sparePattern is the percentage of spare for a pattern: 15 where cuts run at an
// angle to the tile, 10 for others. NTCA trainers say 5 to 15 % by shape and pattern
// (TileLetter); every piece is counted, so that this is for breakage alone.
func sparePattern(b survey.BondRule) int {
	switch {
	case b.Turned, b.Kind == survey.Diagonal, b.Kind == survey.Hexagon, b.Kind == survey.Picket, b.Kind == survey.Chevron:
		return 15
	}
	return 10
}

// spareSource says beside the spare of a pattern where it comes from.
func spareSource(b survey.BondRule) string {
	if b.Coursed() {
		return ""
	}
	return "; NTCA trainers say 5 to 15 % by shape and pattern"
}

// byCells is how many tiles of a pattern with their joints make up an area, rounded up.
func byCells(a length.Area, room survey.Room) int {
	p := bond.For(room, room.Bond.Hand)
	cell := p.Area2() / 2
	if cell <= 0 || a <= 0 {
		return 0
	}
	n := length.Area(len(p.Places))
	return int((a/cell)*n + ((a%cell)*n+cell-1)/cell)
}

// sidesOf counts the sides of a piece of a pattern that spacers stand at: half of its
// factory edges, the neighbour having the other half.
func sidesOf(face plane.Region) (edges int) {
	for _, ring := range face {
		for _, c := range ring {
			edges += one(c.On == 0)
		}
	}
	return edges
}
