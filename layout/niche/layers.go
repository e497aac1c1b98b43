package niche

import (
	"coursewright/layout/length"
	"coursewright/layout/plan"
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
