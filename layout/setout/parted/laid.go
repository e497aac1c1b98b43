package parted

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/survey"
)

// Placed is where the marks of a wall stand, on the wall as it is.
func (r *Result) Placed(wall int) survey.Placed {
	var out survey.Placed
	if r.standing != nil {
		out = r.standing[wall]
		out.Openings = slices.Clone(out.Openings)
	} else {
		out = r.folds[wall].unfold(r.room.Walls[wall], r.Field.Walls[wall].Placed)
	}
	for i, b := range r.Bands {
		if b.placed == nil || !r.room.Bands[i].ToHead || !r.room.Bands[i].On(wall) {
			continue
		}
		p := b.placed[indexOf(r.room.Bands[i].Walls, wall)]
		out.Head = p.Head
		for k, o := range r.room.Walls[wall].Openings {
			if e, there := p.opening(o); there && o.Kind != survey.Pipe && e.Bottom >= b.Bottom {
				out.Openings[k] = e
			}
		}
	}
	return out
}

func indexOf(list []int, x int) int {
	for i, y := range list {
		if x == y {
			return i
		}
	}
	return -1
}

// Laid lists what is laid on a wall from the bottom up: the courses of the field
// under the first band, the band, and so on.
func (r *Result) Laid(wall int, shape survey.Shape) []piece.Laid {
	f, box := &r.folds[wall], shape.Solid.Bounds()
	field, pitch := bond.Of(r.room, r.Field.Hand), r.room.Tile.Height+r.room.Joint
	at := r.Field.Walls[wall]
	rule := piece.RuleFor(r.room, r.room.Walls[wall], shape.Sides)
	var out []piece.Laid
	lift := 0
	// courses adds those of the field between two heights of the folded wall.
	courses := func(low, high, by length.Length) {
		rows := field.Rows(at.Line, at.Edge, low, high)
		for i := range rows {
			rows[i].Low, rows[i].High = rows[i].Low+by, rows[i].High+by
		}
		out = append(out, piece.Laid{Rows: rows, Rule: rule, Lift: lift, Shape: shape})
	}
	low := box.Bottom - pitch
	for n, s := range f.strips {
		by := f.down(n)
		courses(low, s.bottom-by-f.joint, by)
		low = s.bottom - by
		first := int((low - at.Line) / pitch)
		band, rows := r.band(wall, s, shape, box.Top)
		for i := range band.Rows {
			band.Rows[i].Course += first
		}
		if band.Lift += lift; band.Pattern != nil {
			band.Lift += first
		}
		out = append(out, band)
		lift += rows
		if s.toHead {
			return out
		}
	}
	by := f.down(len(f.strips))
	courses(low, box.Top-by+pitch, by)
	return out
}

// band is what is laid in one strip of a wall, and in how many rows.
func (r *Result) band(wall int, s strip, shape survey.Shape, top length.Length) (piece.Laid, int) {
	room, b := r.room.Laid(s.band+1), r.Bands[s.band]
	if !room.Bond.Coursed() {
		return r.patternBand(wall, s, shape)
	}
	if !s.toHead {
		top = s.top
	}
	edge := b.Edges[indexOf(r.room.Bands[s.band].Walls, wall)]
	rows := bond.Of(room, b.Hand).Rows(b.Bottom, edge, b.Bottom, top)
	return piece.Laid{Tile: s.band + 1, Rows: rows, Rule: piece.RuleFor(room, r.room.Walls[wall], shape.Sides), Shape: shape}, len(rows)
}

// Bottoms are where the bands begin.
func (r *Result) Bottoms() (out []length.Length) {
	for _, b := range r.Bands {
		out = append(out, b.Bottom)
	}
	return out
}
