package cuts

import (
	"fmt"

	"coursewright/layout/mosaic"
	"coursewright/layout/plan"
)

// Of makes the schedule of a plan. The faces of niches and windows that go on in
// the room's tile are cut with the walls; each tile that only such faces have
// gets lines of its own after those, because no off-cut of one serves another.
func Of(in Input, set Settings) Schedule {
	others := plan.Others(in.Room, in.Walls)
	s := of(Input{Room: in.Room, Walls: plan.Flat(in.Walls, func(f *plan.Face) bool { return f.OfRoom(in.Room) })}, set)
	for _, o := range others {
		room := in.Room
		room.Tile, room.Bond = o.Tile, o.Bond
		s.others(of(Input{Room: room, Walls: o.Faces}, set), o.Name)
	}
	s.Trim = trimCuts(in.Walls, in.Room.Units)
	s.Mitres = mitres(in, set)
	s.Mosaic = mosaic.Of(in.Room, in.Walls)
	return s
}

// others adds what is cut of another tile.
func (s *Schedule) others(next Schedule, name string) {
	line := map[string]string{}
	for _, g := range next.Groups {
		id := fmt.Sprintf("C%d", len(s.Groups)+1)
		line[g.ID] = id
		if g.ID = id; g.Of == 0 {
			g.Tile = name
		} else {
			g.Tile = name + ", " + g.Tile
		}
		s.Groups = append(s.Groups, g)
	}
	for _, c := range next.Cuts {
		c.Group = line[c.Group]
		s.Cuts = append(s.Cuts, c)
	}
	s.Others = append(s.Others, next.Offcuts)
	s.Offcuts.Pairs = append(s.Offcuts.Pairs, next.Offcuts.Pairs...)
}
