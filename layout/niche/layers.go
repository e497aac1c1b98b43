package niche

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// layer is what a wall is laid in between two heights.
type layer struct {
	tile       int // which of the room's tiles, as pieces have it (piece.Piece.Laid)
	low, high  length.Length
	foot, head int           // the edge of a band that a pattern is cut to there, counted from the first
	line, edge length.Length // where course 0 of it begins, or its pattern
	hand       survey.Hand
}

// far is over and under any wall.
const far = 1000 * length.Metre

// overLine is the band that goes up to the head over whose line a height is, counted from 1; 0
// where it is over none, and in a room laid in a pattern.
func overLine(room survey.Room, s plan.Setout, wall int, y length.Length) int {
	for _, i := range room.BandsOn(wall) {
		if b := s.Bands[i]; b.ToHead && b.Bottom <= y && room.Bond.Coursed() {
			return i + 1
		}
	}
	return 0
}

// layersOf lists what a wall is laid in beside an opening, from the bottom up; none where all
// of it is in one tile.
func layersOf(room survey.Room, s plan.Setout, wall int, w *plan.Wall, hole survey.Edges) (all []layer) {
	start := w.Start.At(hole.Left)
	field := layer{low: -far}
	upTo := func(high length.Length, head int) {
		if field.high, field.head = high, head; field.low < high {
			_, at, edge := s.At(room, wall, start, field.low)
			field.line, field.edge, field.hand = at.Line, edge, at.Hand
			all = append(all, field)
		}
	}
	for _, i := range room.BandsOn(wall) {
		band := s.Bands[i]
		if band.ToHead {
			band.Top = far
		}
		upTo(band.Bottom-room.Joint, 2*i)
		of := layer{tile: i + 1, low: band.Bottom, high: band.Top, foot: 2*i + 1, head: 2*i + 1, line: band.Bottom, hand: band.Hand}
		if of.edge, _ = band.Edge(wall); !room.Laid(i + 1).Bond.Coursed() {
			of.line = band.Line
		}
		all = append(all, of)
		field.low, field.foot = band.Top+room.Joint, 2*i
	}
	if all != nil {
		upTo(far, field.foot)
	}
	return all
}

// crossed tells whether bands of the wall lie across a face that goes on with it.
func (b *box) crossed(f *plan.Face) bool {
	return f.Is == survey.BackFace && !f.Own && !f.Slab && slices.ContainsFunc(b.behind(f), func(l layer) bool { return l.tile > 0 })
}

// behind are the layers of the wall that lie across a face.
func (b *box) behind(f *plan.Face) (all []layer) {
	box := f.Shape.Solid.Bounds()
	for _, l := range b.layers {
		if l.low < box.Top && l.high > box.Bottom {
			all = append(all, l)
		}
	}
	return all
}

// layered lays a back as the wall is laid, each tile at its own heights.
func (b *box) layered(f *plan.Face) {
	f.Line, f.Start.Edge = b.phase(f)
	first := plane.Side(len(f.Shape.Sides))
	var bands survey.WallFound
	for _, band := range b.room.Bands {
		bands.Taken = append(bands.Taken, survey.Taken{Name: band.Name})
	}
	f.Shape.Sides = append(f.Shape.Sides, bands.Sides()[survey.SideBase:]...)
	var laid []piece.Laid
	lift := 0
	for _, l := range b.behind(f) {
		on := b.laid(f, l, first, lift)
		laid, lift = append(laid, on), on.Lift
	}
	f.Pieces, f.Gaps = piece.CutLaid(f.Shape, laid)
}

// laid is a layer on a face. It goes on from the piece of the wall that stands beside the opening;
// where none does, from the start of the wall, its rows counted on from so many courses.
func (b *box) laid(f *plan.Face, l layer, first plane.Side, lift int) piece.Laid {
	room, box, near := b.room.Laid(l.tile), f.Shape.Solid.Bounds(), b.standing(l)
	out := piece.Laid{Tile: l.tile, Lift: lift, Rule: piece.RuleFor(room, survey.WallFound{}, f.Shape.Sides)}
	if room.Bond.Coursed() {
		courses, edge := bond.Of(room, l.hand), l.edge
		if near != nil {
			row := int(length.DivFloor(near.Tile.Bottom-l.line, courses.Across()))
			edge = near.Tile.Left - room.Bond.Shift(row, l.hand, courses.Along())
			out.Lift = near.Row + near.Lift - row
		}
		out.Rows = courses.Rows(l.line, edge-f.Origin.X, max(l.low, box.Bottom), min(l.high, box.Top))
		return out
	}
	pattern := bond.For(room, l.hand)
	if near != nil {
		out.Lift = near.Lift
	}
	out.Pattern, out.Origin = &pattern, pattern.Origin(l.line, l.edge-f.Origin.X)
	out.Shape = f.Shape.Less(plane.Rect{Left: -far, Bottom: -2 * far, Right: far, Top: l.low}, first+plane.Side(l.foot)).
		Less(plane.Rect{Left: -far, Bottom: l.high, Right: far, Top: 2 * far}, first+plane.Side(l.head))
	return out
}

// standing is the piece of a layer on the wall that is nearest to the opening along it, or nil.
func (b *box) standing(l layer) (near *piece.Piece) {
	var least length.Length
	middle := (b.hole.Left + b.hole.Right).Half()
	for i := range b.wall.Pieces {
		p := &b.wall.Pieces[i]
		box := p.Face.Bounds()
		off, at := ((box.Left + box.Right).Half() - middle).Abs(), (box.Bottom + box.Top).Half()
		if p.Laid == l.tile && l.low < at && at < l.high && (near == nil || off < least) {
			near, least = p, off
		}
	}
	return near
}
