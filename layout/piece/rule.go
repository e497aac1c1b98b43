package piece

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Rule is what decides whether a remainder is a piece and how it is judged,
// in the frame of the rows: along is x for level courses and y for columns.
type Rule struct {
	Along, Across length.Length // full tile
	Limits        [2]Limits     // of sizes along the row, and across it
	Joint         length.Length
	Sealant       length.Length // widest joint that sealant may fill
	NearEdge      length.Length // a hole whose rim is no farther from an edge is hard to make
	Plumb         bool          // rows are columns: x and y are swapped
	limits        func(full length.Length) Limits
	Sides         []survey.Boundary
	Pipes         []Pipe
}

// Limits are the sizes under which a cut piece is a sliver or unworkable.
type Limits struct{ Sliver, Unworkable length.Length }

// Pipe is the hole that tile leaves round a pipe, in the frame of the rows.
type Pipe struct {
	Side   plane.Side
	Centre plane.Point
	Radius length.Length // to the rim
}

// RuleFor is the rule of a room on one wall.
func RuleFor(room survey.Room, w survey.WallFound, sides []survey.Boundary) Rule {
	r := Rule{
		Along: room.Tile.Width, Across: room.Tile.Height,
		Limits: [2]Limits{limitsOf(room, room.Tile.Width), limitsOf(room, room.Tile.Height)},
		Joint:  room.Joint, Sealant: room.Sealant, NearEdge: leastWorkable(room.Units), Plumb: room.Bond.Plumb, Sides: sides,
		limits: func(full length.Length) Limits { return limitsOf(room, full) },
	}
	first := survey.SideBase + plane.Side(len(w.Base))
	for i, o := range w.Openings {
		if o.Kind == "pipe" {
			r.Pipes = append(r.Pipes, Pipe{first + plane.Side(i), plane.Point{X: o.At, Y: o.Up}, (o.Diameter + 2*survey.PipeClear(room.Units) + 1) / 2})
		}
	}
	if r.Plumb {
		r.Along, r.Across = r.Across, r.Along
		r.Limits[0], r.Limits[1] = r.Limits[1], r.Limits[0]
		for i, p := range r.Pipes {
			r.Pipes[i].Centre = plane.Point{X: p.Centre.Y, Y: p.Centre.X}
		}
	}
	return r
}

func limitsOf(room survey.Room, full length.Length) Limits {
	return Limits{Sliver: SliverLimit(room, full), Unworkable: UnworkableLimit(room, full)}
}

// SliverLimit is the sliver limit in a direction where the tile measures full:
// the job's own, at most half the tile; without one a quarter of the tile, at
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
	return min((full+3)/4, most)
}

// UnworkableLimit is the size under which nobody can cut and set a piece of a
// tile that measures full: 1/2 in (13 mm) or 1.5 times its thickness, whichever
// is more, but never more than half the tile. Common practice, no source.
func UnworkableLimit(room survey.Room, full length.Length) length.Length {
	return min(max(leastWorkable(room.Units), (3*room.Tile.Thickness+1)/2), (full+1)/2)
}

func leastWorkable(units length.System) length.Length {
	if units == length.Metric {
		return 13 * length.Millimetre
	}
	return length.Inch / 2
}
