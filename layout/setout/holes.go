package setout

import (
	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// hole is what a pipe takes of one row, in the frame of the rows.
type hole struct {
	from, to length.Length
	ring     plane.Ring
}

// holes lists the pipes that cross a row.
func (f *field) holes(row bond.Row) []hole {
	var out []hole
	for _, ring := range f.pipes {
		part := plane.Region{ring}.KeepAll(plane.Above(row.Low), plane.Below(row.High))
		if len(part) > 0 {
			box := part.Bounds()
			out = append(out, hole{box.Left, box.Right, ring})
		}
	}
	return out
}

// pipeRings are the holes of a wall's pipes, in the frame of the rows.
func pipeRings(room *survey.Room, w survey.WallFound) []plane.Ring {
	var out []plane.Ring
	for _, o := range w.Openings {
		if o.Kind != "pipe" {
			continue
		}
		region := plane.Region{plane.Circle(plane.Point{X: o.At, Y: o.Up}, o.Diameter+2*survey.PipeClear(room.Units), 0)}
		if room.Bond.Plumb {
			region = region.Transposed()
		}
		out = append(out, region[0])
	}
	return out
}

// covers tells whether the hole takes the whole rectangle.
func (h *hole) covers(r plane.Rect) bool {
	for i, a := range h.ring {
		edge := plane.Through(a.Point, h.ring[(i+1)%len(h.ring)].Point)
		for _, c := range r.Ring(0) {
			if edge.Side(c.Point) < 0 {
				return false
			}
		}
	}
	return true
}
