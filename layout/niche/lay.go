package niche

import (
	"context"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/setout"
	"coursewright/layout/survey"
)

// cut lays a face at a phase that is known: that of the wall, or, with a tile or
// bond of its own, from the front and from the middle.
func (b *box) cut(f *plan.Face) {
	room := b.roomOf(f)
	if f.Is != survey.BackFace {
		room.Bond = b.returned(f)
		f.Bond = room.Bond
	}
	line, edge := b.phase(f)
	f.Round = b.goesRound(f)
	f.Line, f.Start.Edge = line, edge
	if !room.Bond.Coursed() {
		pattern := bond.For(room, b.setout.Hand)
		f.Pieces, f.Gaps = piece.Lay(f.Shape, pattern, pattern.Origin(line, edge), piece.RuleFor(room, survey.WallFound{}, f.Shape.Sides))
		return
	}
	laid := bond.Of(room, b.setout.Hand)
	box := f.Shape.Solid.Bounds()
	along, across := edge, line
	if room.Bond.Plumb {
		box, along, across = box.Transposed(), line, edge
	}
	rows := laid.Rows(across, along, box.Bottom-laid.Across(), box.Top+laid.Across())
	f.Pieces, f.Gaps = piece.Cut(f.Shape, rows, piece.RuleFor(room, survey.WallFound{}, f.Shape.Sides))
}

// roomOf is the room with the tile, joint and bond of a face.
func (b *box) roomOf(f *plan.Face) survey.Room {
	room := b.room
	room.Tile, room.Joint, room.Joints, room.Bond = f.Tile, f.Joint, []length.Length{f.Joint}, f.Bond
	return room
}

// returned is the bond of a return: its own, or that of the wall where it goes on round the edge, or else plain rows
// behind each other, because the courses of the wall come round to it one by one. On the top of
// a wall the bond goes on, unless it is one of columns.
func (b *box) returned(f *plan.Face) survey.BondRule {
	found := b.lies
	if found == nil {
		found = &b.in.Faces[f.Is]
	}
	switch {
	case found.Bond != nil:
		return *found.Bond
	case b.goesRound(f):
		return b.room.Bond
	case f.Is == survey.WallTop && !f.Own && (!b.room.Bond.Coursed() || !b.room.Bond.Plumb):
		return b.room.Bond
	}
	return survey.BondRule{Kind: survey.Stack, Den: 1}
}

// goesRound tells whether a face is a return on which the wall's bond goes on round the edge.
func (b *box) goesRound(f *plan.Face) bool {
	return f.Is != survey.BackFace && f.Is != survey.WallTop && !f.Own && b.room.GoesRound()
}

// phase is where course 0 of a face begins. That of a side which begins anew stands whole on the sill,
// but for what the fall takes of it behind the front.
func (b *box) phase(f *plan.Face) (line, edge length.Length) {
	box := f.Shape.Solid.Bounds()
	along, up := b.going(f)
	if f.Own {
		along, up = centred(box.Left, box.Right, f.Tile.Width, f.Joint), centred(box.Bottom, box.Top, f.Tile.Height, f.Joint)
	}
	if b.goesRound(f) {
		along, up = b.folded(f)
	} else {
		along, up = b.fromFront(f, along, up)
	}
	if b.lies == nil && b.in.Faces[f.Is].AtSill {
		up = box.Bottom
	}
	return up, along
}

// folded is where the bond of the wall begins on a return that it goes on to round the edge. The wall's tile ends at the edge, and a
// joint behind it what the edge cuts off goes on, as if the return were folded out into the wall.
func (b *box) folded(f *plan.Face) (along, up length.Length) {
	box, joint := f.Shape.Solid.Bounds(), b.room.Joint
	along, up = b.wall.Start.Edge-f.Origin.X, b.line()
	switch f.Is {
	case survey.LeftFace:
		along = b.wall.Start.Edge - (b.hole.Left + joint) + box.Left
	case survey.RightFace:
		along = b.wall.Start.Edge - (b.hole.Right - joint) + box.Right
	case survey.SillFace:
		up += box.Bottom - (b.hole.Bottom + joint)
	case survey.TopFace:
		up += box.Top - (b.hole.Top - joint)
	}
	return along, up
}

// fromFront is where the rows of a return begin that are whole at its front, or are cut there as at the back, where else they would
// begin at along and up.
func (b *box) fromFront(f *plan.Face, along, up length.Length) (x, y length.Length) {
	box := f.Shape.Solid.Bounds()
	switch f.Is {
	case survey.LeftFace:
		along = box.Left - b.shared(f, box.Width(), f.Tile.Width)
	case survey.RightFace:
		along = box.Right - f.Tile.Width + b.shared(f, box.Width(), f.Tile.Width)
	case survey.SillFace:
		up = box.Bottom - b.shared(f, box.Height(), f.Tile.Height)
	case survey.WallTop:
		if !f.Own && b.room.Bond.Coursed() {
			up = box.Bottom - up // the rows that lie under it in the wall
		} else if f.Own {
			up = box.Bottom
		}
		up -= b.less
		if b.start != nil {
			along = *b.start
		}
	case survey.TopFace:
		up = box.Top - f.Tile.Height + b.shared(f, box.Height(), f.Tile.Height)
	}
	return along, up
}

// shared is how much is cut off the front row of a return that is deeper than a tile: nothing, unless a
// sliver would be left at its back and the front edge stands in the joint behind the tile of the wall, where a cut does not
// show. Then first and last row are cut alike (common practice, no source).
func (b *box) shared(f *plan.Face, deep, tile length.Length) length.Length {
	rest := length.Mod(deep, tile+f.Joint)
	if b.in.Flush || f.Bond.Num != 0 || deep < tile || rest <= max(b.room.Sealant-b.gap, 0) || rest >= piece.SliverLimit(b.roomOf(f), tile) {
		return 0
	}
	return tile - (tile + rest).Half()
}

// going is where the bond of the wall goes on: at the back as it is, at the
// sides the course heights, at sill and top the plumb joints of their course.
func (b *box) going(f *plan.Face) (along, up length.Length) {
	shift := func(k int64, pitch length.Length) length.Length {
		return b.room.Bond.Shift(int(k), b.setout.Hand, pitch)
	}
	edge, line := b.wall.Start.Edge, b.line()
	wide, high := b.room.Tile.Width+b.room.Joint, b.room.Tile.Height+b.room.Joint
	course := func(y length.Length) length.Length {
		if b.room.Bond.Plumb {
			return edge
		}
		return edge + shift(length.DivFloor(y-line, high), wide)
	}
	column := func(x length.Length) length.Length {
		if !b.room.Bond.Plumb {
			return line
		}
		return line + shift(length.DivFloor(x-edge, wide), high)
	}
	switch f.Is {
	case survey.LeftFace:
		return 0, column(b.hole.Left - 1)
	case survey.RightFace:
		return 0, column(b.hole.Right)
	case survey.SillFace:
		return course(b.hole.Bottom-1) - f.Origin.X, 0
	case survey.TopFace:
		return course(b.hole.Top) - f.Origin.X, 0
	case survey.WallTop:
		return b.onward(f)
	}
	return edge - f.Origin.X, line
}

// onward is how the bond goes on upon the top of a wall: from the same start, and how
// far under its first row course 0 would lie, the courses over each other. A pattern
// goes on as if the wall went on.
func (b *box) onward(f *plan.Face) (along, up length.Length) {
	along = b.wall.Start.Edge - f.Origin.X
	if !b.room.Bond.Coursed() {
		return along, b.setout.Line - f.Origin.Y
	}
	if b.room.Bond.Plumb {
		return along, 0
	}
	high := b.room.Tile.Height + b.room.Joint
	return along, length.Length(length.DivFloor(b.hole.Bottom-1-b.line(), high)+1+int64(b.skip)) * high
}

// line is the bottom edge of course 0 as the courses beside the opening have it:
// over a band they begin anew.
func (b *box) line() length.Length {
	p := b.beside()
	if p == nil || b.over > 0 || b.room.Bond.Plumb || !b.room.Bond.Coursed() {
		return b.setout.Line
	}
	return p.Tile.Bottom - length.Length(p.Row)*(b.room.Tile.Height+b.room.Joint)
}

// beside is a piece of the tile that the wall is laid in there as near to the middle of the
// opening up or down the wall as there is one, or nil.
func (b *box) beside() *piece.Piece {
	middle := (b.hole.Bottom + b.hole.Top).Half()
	var near *piece.Piece
	var least length.Length
	for i := range b.wall.Pieces {
		p := &b.wall.Pieces[i]
		if off := ((p.Tile.Bottom + p.Tile.Top).Half() - middle).Abs(); p.Laid == b.over && (near == nil || off < least) {
			near, least = p, off
		}
	}
	return near
}

// centred is the start with a tile or a joint in the middle, whichever leaves the
// larger cut at both ends.
func centred(from, to, tile, joint length.Length) length.Length {
	onTile, onJoint := (from + to - tile).Half(), (from + to + joint).Half()
	end := func(start length.Length) length.Length {
		if e := length.Mod(start-joint-from, tile+joint); e > 0 {
			return min(e, tile)
		}
		return tile
	}
	if end(onTile) >= end(onJoint) {
		return onTile
	}
	return onJoint
}

// solve sets out a back with a tile or bond of its own as a small room of one
// wall, all of whose boundaries meet something.
func (b *box) solve(ctx context.Context, f *plan.Face) error {
	room := b.roomOf(f)
	box := f.Outline.Bounds()
	meets := survey.EndFound{Meets: true, Gap: b.gap, Beyond: -1}
	level := func(y length.Length) []survey.Reading {
		return []survey.Reading{{At: 0, Value: y}, {At: box.Width(), Value: y}}
	}
	room.Walls = []survey.WallFound{{Name: f.Found.Name, Letter: f.Found.Letter, Width: box.Width(), Left: meets, Right: meets,
		Base: []survey.SegmentFound{{Meets: survey.Corner, Gap: b.gap, Readings: level(box.Bottom)}},
		Head: survey.HeadFound{Meets: true, Gap: b.gap, Readings: level(box.Top)}}}
	room.Line, room.Passed, room.Bands, room.Course = nil, nil, nil, nil // they are those of the walls
	_, s, walls, err := setout.Quick(ctx, room)
	if err != nil {
		return err
	}
	sides := f.Shape.Sides
	found := f.Found
	f.Wall = walls[0]
	f.Line, f.Found, f.Shape.Sides = s.Line, found, sides
	return nil
}
