package count

import (
	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// Classic is a start people know by name.
type Classic struct {
	Name string
	Edge length.Length // left edge of a tile of course 0
}

// Classics are the starts of the trade: a joint, a tile or, in running bond, a
// quarter of a tile on the middle of the tile field, or a full tile at an end.
// At a leaning end the full tile stands where the wall is widest.
func (s *Starts) Classics(p survey.Placed) []Classic {
	box := s.w.box()
	if !s.w.found.Left.Meets {
		box.Left = p.Left
	}
	if !s.w.found.Right.Meets {
		box.Right = p.Right
	}
	tile, joint := s.w.room.Tile.Width, s.w.room.Joint
	centre := (box.Left + box.Right).Half()
	out := []Classic{
		{"joint on centre", centre + joint.Half()},
		{"tile on centre", centre - tile.Half()},
	}
	if !s.w.frame.plumb && len(s.w.shifts) > 1 {
		out = append(out, Classic{"quarter on centre", centre + joint.Half() - (tile + joint).Half().Half()})
	}
	return append(out, Classic{"full tile at left", box.Left}, Classic{"full tile at right", box.Right - tile})
}

// everyClassic lists the classic starts with every free end at either limit of its
// range: the middle of the tile field moves with it.
func (s *Starts) everyClassic() []Classic {
	var out []Classic
	for _, left := range limits(s.w.found.Left) {
		for _, right := range limits(s.w.found.Right) {
			p := s.w.outer
			p.Left, p.Right = left, right
			out = append(out, s.Classics(p)...)
		}
	}
	return out
}

func limits(e survey.EndFound) []length.Length {
	if e.Meets || !e.Stops.Free() {
		return []length.Length{e.Stops.From}
	}
	return []length.Length{e.Stops.From, e.Stops.To}
}
