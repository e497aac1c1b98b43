package setout

import (
	"context"

	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/setout/parted"
	"coursewright/layout/setout/phase"
	"coursewright/layout/survey"
)

// A room laid in a pattern is set out with what its bands take left out of it, the
// pattern going on behind them; then the bands are, each by itself.

// besideBands is the room with what its bands take from the field of every wall. Under a
// band that goes up to the head the field has no head of its own.
func besideBands(room survey.Room) survey.Room {
	if len(room.Bands) == 0 {
		return room
	}
	walls, heights := make([]survey.WallFound, len(room.Walls)), parted.Heights(room)
	for i := range room.Walls {
		walls[i] = room.Beside(i, heights)
		for _, b := range room.Bands {
			if b.ToHead && b.On(i) {
				walls[i].Head.Stops.From = walls[i].Head.Stops.To
			}
		}
	}
	room.Walls = walls
	return room
}

// bandsThrough sets out the bands of a room laid in a pattern and adds them to what is
// said of its set-out; nil where it has none.
func bandsThrough(ctx context.Context, room survey.Room, r *phase.Result, s *plan.Setout) (*parted.Result, error) {
	if len(room.Bands) == 0 {
		return nil, nil
	}
	var placed []survey.Placed
	for _, c := range r.Walls {
		placed = append(placed, c.Placed)
	}
	bands, err := parted.Through(ctx, room, placed)
	if err != nil {
		return nil, err
	}
	s.Merit = s.Merit.Plus(&bands.Merit)
	switch {
	case !s.Proven:
	case room.Prefer.Shared:
		s.Proven, s.Bound = false, "Rim and head are made as alike as they can be in the field, not in field and bands together."
	case !bands.Proven:
		s.Proven, s.Bound = false, "A band that is free stands where it is wished, and free ends where they are best for the pattern. Measure both, and all is tried."
	}
	return &bands, nil
}

// among gives a wall with its bands: the wall's own shape with the edges of bands among its
// sides, the pieces from the bottom up, and what is bare.
func among(room survey.Room, bands *parted.Result, wall int, field survey.Shape, cut []piece.Piece, gaps []piece.Gap) (survey.Shape, []piece.Piece, []piece.Gap) {
	shape := room.Walls[wall].Shape(room.Units, bands.Placed(wall))
	shape.Sides = field.Sides
	pieces, bare := bands.Among(wall, shape, cut)
	return shape, pieces, append(gaps, bare...)
}
