package setout

import (
	"context"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/setout/parted"
	"coursewright/layout/setout/tell"
	"coursewright/layout/survey"
)

// solveParted is Solve for a room with bands. What the classic starts and lines
// would give is told of the room's own tile.
func solveParted(ctx context.Context, room survey.Room, of telling) (survey.Room, plan.Setout, []plan.Wall, error) {
	var all []parted.Result
	best := 0
	for i, j := range room.Joints {
		with := room.WithJoint(j)
		r, err := parted.Room(ctx, &with)
		if err != nil {
			return room, plan.Setout{}, nil, err
		}
		all = append(all, r)
		if r.Field.Order().Better(&r.Merit, &all[best].Merit) {
			best = i
		}
	}
	r := &all[best]
	room = room.WithJoint(room.Joints[best])
	s, walls := wholeParted(room, r, of)
	if len(all) > 1 {
		for i := range all {
			s.Joints = append(s.Joints, tell.Joint(&room, room.Joints[i], &all[i].Field, &r.Field))
		}
	}
	told(&s, room, walls, of)
	return room, s, walls, ctx.Err()
}

// wholeParted is a set-out that was found with what is said of it and the walls cut, but for
// what is read from their pieces.
func wholeParted(room survey.Room, r *parted.Result, of telling) (plan.Setout, []plan.Wall) {
	s := saidParted(room, r)
	return s, laidParted(room, r, of, &s)
}

// saidParted is said of a room with bands.
func saidParted(room survey.Room, r *parted.Result) plan.Setout {
	f := &r.Field
	return plan.Setout{Line: f.Line, Hand: f.Hand, Joint: room.Joint, Pinned: room.Line != nil, Merit: r.Merit,
		Order: f.Order(), Proven: r.Proven, Bound: openOf(room, r)}
}

// laidParted is laid of a room with bands.
func laidParted(room survey.Room, r *parted.Result, of telling, s *plan.Setout) []plan.Wall {
	s.Walls, s.Lines = begun(&r.Folded, &r.Field, of)
	for i := range s.Walls {
		s.Walls[i].Placed, s.Walls[i].Pinned = r.Placed(i), room.Walls[i].Pin != nil
	}
	walls := cutParted(room, r, s.Walls)
	s.Bands = bandsOf(room, r, walls)
	return walls
}

// openOf says what keeps a room with bands from being proven; empty where it is.
func openOf(room survey.Room, r *parted.Result) string {
	if said := opens[r.Open]; said != "" {
		return said
	}
	whole := r.Field
	whole.Merit, whole.Bound, whole.Proven = r.Merit, r.Bound, r.Proven
	bound := tell.Bound(&room, &whole)
	switch r.Open {
	case parted.RunsOn:
		return "The plumb joints of a band run on from the field's. " + bound
	case parted.Ends:
		return "An end that is free cuts field and band, and not every place was tried with both. " + bound
	}
	return bound
}

// opens are what was not tried of rooms with bands, and how it would be.
var opens = map[parted.Open]string{
	parted.EitherSide: "An opening may stand across a band or on either side of it, and not every course line and start was tried with each. Measure both, and all is tried.",
	parted.HeightToo:  "The tile over the band's line goes up to the head, and not every height of it was tried. Measure its height, and all is tried.",
	parted.Leaning:    "A corner leans beside the band, and not every height of it was tried. Measure its height, and all is tried.",
	parted.UnderRoof:  "The ceiling slants over a band, and what it leaves of the band's wall was not judged with every course line and start.",
	parted.AcrossEdge: "A pipe stands across the edge of a band, and was left out where the field was judged.",
}

// bandsOf says where the bands stand. One that goes up to the head ends where its
// highest piece does.
func bandsOf(room survey.Room, r *parted.Result, walls []plan.Wall) []plan.Band {
	var out []plan.Band
	for i, b := range room.Bands {
		at := r.Bands[i]
		band := plan.Band{Name: b.Name, Bottom: at.Bottom, Top: at.Top, ToHead: b.ToHead, Hand: at.Hand, Walls: b.Walls, Line: at.Line, Edges: at.Edges}
		if b.ToHead {
			for _, w := range b.Walls {
				band.Top = max(band.Top, top(walls[w].Pieces))
			}
		}
		out = append(out, band)
	}
	return out
}

// top is the height of the highest piece.
func top(pieces []piece.Piece) (y length.Length) {
	for i, p := range pieces {
		if t := p.Face.Bounds().Top; i == 0 || t > y {
			y = t
		}
	}
	return y
}

// cutParted makes and numbers the pieces of every wall.
func cutParted(room survey.Room, r *parted.Result, starts []plan.Start) []plan.Wall {
	walls := make([]plan.Wall, len(room.Walls))
	pieces := make([][]piece.Piece, len(room.Walls))
	letters := make([]string, len(room.Walls))
	for i, w := range room.Walls {
		shape := w.Shape(room.Units, starts[i].Placed)
		shape.Sides = room.Beside(i, r.Bottoms()).Sides()
		var gaps []piece.Gap
		pieces[i], gaps = piece.CutLaid(shape, r.Laid(i, shape))
		walls[i] = plan.Wall{Found: w, Shape: shape, Start: starts[i], Gaps: gaps, Bare: places(gaps)}
		letters[i] = w.Letter
	}
	number(room, walls, pieces, letters)
	dress(room, walls, r.Field.Line)
	return walls
}
