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

// across are the layers of the wall that a face goes on with where a band is among them: those at the heights of a
// back or a side, and on sill and top the band that the whole opening is in. None of any other face.
func (b *box) across(f *plan.Face) (all []layer) {
	if f.Is == survey.WallTop || f.Own || f.Slab || b.in.Faces[f.Is].AtSill {
		return nil
	}
	box := f.Shape.Solid.Bounds()
	for _, l := range b.layers {
		switch {
		case f.Is > survey.RightFace && l.tile > 0 && l.low < b.hole.Bottom && b.hole.Top < l.high,
			f.Is <= survey.RightFace && l.low < box.Top && l.high > box.Bottom:
			all = append(all, l)
		}
	}
	if !slices.ContainsFunc(all, func(l layer) bool { return l.tile > 0 }) {
		return nil
	}
	return all
}

// layered lays a face in several layers, each at its own heights.
func (b *box) layered(f *plan.Face, layers []layer) {
	if f.Is != survey.BackFace {
		f.Bond = b.returned(f)
	}
	f.Line, f.Start.Edge = b.phase(f)
	f.Round = f.Is != survey.BackFace && slices.ContainsFunc(layers, func(l layer) bool { return b.room.Laid(l.tile).GoesRound() })
	first := plane.Side(len(f.Shape.Sides))
	var bands survey.WallFound
	for _, band := range b.room.Bands {
		bands.Taken = append(bands.Taken, survey.Taken{Name: band.Name})
	}
	f.Shape.Sides = append(f.Shape.Sides, bands.Sides()[survey.SideBase:]...)
	var laid []piece.Laid
	lift, fitted := 0, b.fitted(f, layers)
	for i, l := range layers {
		on := b.laid(f, l, fitted[i], lift)
		on.Rule = piece.RuleFor(b.room.Laid(l.tile), survey.WallFound{}, f.Shape.Sides)
		if on.Shape = fitted[i]; f.Is <= survey.RightFace && (on.Pattern != nil || !b.room.Bond.Coursed()) {
			on.Shape = fitted[i].Less(plane.Rect{Left: -far, Bottom: -2 * far, Right: far, Top: l.low}, first+plane.Side(l.foot)).
				Less(plane.Rect{Left: -far, Bottom: l.high, Right: far, Top: 2 * far}, first+plane.Side(l.head))
		}
		laid, lift = append(laid, on), on.Lift
	}
	if f.Is != survey.BackFace && !b.room.Bond.Coursed() {
		counted(laid)
	}
	f.Pieces, f.Gaps = piece.CutLaid(f.Shape, laid)
}

// laid is a layer on what a face leaves to it. It goes on from the piece of the wall that stands beside the opening; where none does, from
// the start of the wall, its rows counted on from so many courses.
func (b *box) laid(f *plan.Face, l layer, shape survey.Shape, lift int) piece.Laid {
	room, box, near := b.room.Laid(l.tile), shape.Solid.Bounds(), b.standing(l)
	out := piece.Laid{Tile: l.tile, Lift: lift}
	if near != nil && room.Bond.Coursed() {
		courses := bond.Of(room, l.hand)
		row := int(length.DivFloor(near.Tile.Bottom-l.line, courses.Across()))
		if out.Lift = near.Row + near.Lift - row; f.Is == survey.BackFace || room.GoesRound() {
			l.edge = near.Tile.Left - room.Bond.Shift(row, l.hand, courses.Along())
		}
	}
	line, edge := l.line, l.edge-f.Origin.X
	if f.Is != survey.BackFace {
		room, line, edge = b.comingRound(f, l, shape)
	}
	if !room.Bond.Coursed() {
		pattern := bond.For(room, l.hand)
		if near != nil {
			out.Lift = near.Lift
		}
		out.Pattern, out.Origin = &pattern, pattern.Origin(line, edge)
		return out
	}
	courses := bond.Of(room, l.hand)
	low, high := box.Bottom, box.Top
	if f.Is <= survey.RightFace {
		low, high = max(l.low, low), min(l.high, high)
	}
	out.Rows = courses.Rows(line, edge, low, high)
	return out
}

// comingRound is how a layer comes round to a return, and where its course 0 begins there: as it goes on round the edge, or whole
// at the front, in plain rows, a band laid in a pattern in that pattern.
func (b *box) comingRound(f *plan.Face, l layer, shape survey.Shape) (room survey.Room, line, edge length.Length) {
	on, wall := *b, *b.wall
	on.room, on.over, wall.Start.Edge = b.room.Laid(l.tile), l.tile, l.edge
	on.setout.Line, on.setout.Hand, on.wall = l.line, l.hand, &wall
	face := *f
	face.Tile, face.Joint, face.Shape = on.room.Tile, on.room.Joint, shape
	if room = on.room; (l.tile == 0 || room.Bond.Coursed()) && !room.GoesRound() {
		room.Bond = survey.BondRule{Kind: survey.Stack, Den: 1}
	}
	face.Bond = room.Bond
	if line, edge = on.phase(&face); f.Is <= survey.RightFace {
		line = l.line
	}
	return room, line, edge
}

// counted lets the rows of layers follow one another, as those of a wall in a pattern do not.
func counted(laid []piece.Laid) {
	next := 0
	for i := range laid {
		l := &laid[i]
		var low, high int
		if l.Pattern != nil {
			low, high = l.Reach()
		} else if len(l.Rows) > 0 {
			low, high = l.Rows[0].Course, l.Rows[len(l.Rows)-1].Course
		}
		l.Lift = next - low
		next = l.Lift + high + 1
	}
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
