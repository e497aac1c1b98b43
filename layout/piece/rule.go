package piece

import (
	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// Rule is what decides whether a remainder is a piece and how it is judged,
// in the frame of the rows: along is x for level courses and y for columns.
type Rule struct {
	Along, Across             length.Length // full tile
	SliverAlong, SliverAcross length.Length // least faces under these are slivers
	Joint                     length.Length
	Sealant                   length.Length // widest joint that sealant may fill
	Plumb                     bool          // rows are columns: x and y are swapped
	Sides                     []survey.Boundary
}

// RuleFor is the rule of a room on one wall.
func RuleFor(room survey.Room, sides []survey.Boundary) Rule {
	r := Rule{
		Along: room.Tile.Width, Across: room.Tile.Height,
		SliverAlong:  SliverLimit(room, room.Tile.Width),
		SliverAcross: SliverLimit(room, room.Tile.Height),
		Joint:        room.Joint, Sealant: room.Sealant, Plumb: room.Bond.Plumb, Sides: sides,
	}
	if r.Plumb {
		r.Along, r.Across = r.Across, r.Along
		r.SliverAlong, r.SliverAcross = r.SliverAcross, r.SliverAlong
	}
	return r
}

// SliverLimit is the sliver limit in a direction where the tile measures full:
// the job's own, at most half the tile; without one a third of the tile, at
// most 2 in (50 mm). Common practice, no source; formats.md fixes the numbers.
// Sizes that do not divide are rounded up, so that a size at the limit passes.
func SliverLimit(room survey.Room, full length.Length) length.Length {
	if room.Sliver > 0 {
		return min(room.Sliver, (full+1)/2)
	}
	most := 2 * length.Inch
	if room.Units == length.Metric {
		most = 50 * length.Millimetre
	}
	return min((full+2)/3, most)
}
