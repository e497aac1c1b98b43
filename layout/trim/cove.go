package trim

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// coves lays the coves along the base, from left to right: the foot of each follows the
// base, and so does its upper edge.
func (l *layer) coves() {
	for i := range l.wall.Base {
		if l.wall.Base[i].Cove != nil {
			l.cove(i)
		}
	}
}

// cove lays that of one stretch of the base. At the front of a higher one it keeps the
// gap from that; its own front it reaches up to, a joint from the tile beside it.
func (l *layer) cove(i int) {
	s := l.wall.Base[i]
	tile := l.wall.Shape(l.tile.Units, l.at).Region.Bounds()
	from, to := tile.Left, tile.Right
	open := [2]bool{!l.wall.Left.Meets, !l.wall.Right.Meets}
	if i > 0 {
		from, open[0] = l.wall.Step(i-1, s.Readings[0].At), l.wall.Rises(i-1)
		if open[0] {
			from += l.tile.Joint
		}
	}
	if last := len(l.wall.Base) - 1; i < last {
		to, open[1] = l.wall.Step(i, s.Readings[len(s.Readings)-1].At), !l.wall.Rises(i)
		if open[1] {
			to -= l.tile.Joint
		}
	}
	var left, right corner
	if i == 0 {
		left = l.foot(survey.LeftEnd)
	}
	if i == len(l.wall.Base)-1 {
		right = l.foot(survey.RightEnd)
	}
	if left.mitred {
		from = l.outer.Left
	}
	if right.mitred {
		to = l.outer.Right
	}
	strip := l.all.KeepAll(append([]plane.Line{plane.RightOf(from), plane.LeftOf(to)}, append(left.level, right.level...)...)...)
	for _, ring := range over(s, s.Gap-l.tile.Joint) {
		strip = strip.Less(ring, 0)
	}
	plan := splitting{long: s.Cove.Length, joint: l.between(*s.Cove), full: shared}
	switch {
	case open[0] && !open[1]:
		plan.full = low
	case open[1] && !open[0]:
		plan.full = high
	}
	if n, follows := l.follows(s.Cove.Length, l.tile.Width); follows && l.tile.Plumb {
		plan.anchor, plan.full = l.tile.Start, following
		plan.pitch, plan.phases = l.tile.Width+l.tile.Joint, n
	}
	l.cornerPiece(left, survey.BaseSegment, *s.Cove)
	l.lay(survey.BaseSegment, *s.Cove, strip, plan)
	l.cornerPiece(right, survey.BaseSegment, *s.Cove)
}

// over is everything over a base by so much, stretch by stretch.
func over(s survey.SegmentFound, by length.Length) []plane.Ring {
	const far = 100 * length.Metre
	at := func(x, y length.Length) plane.Corner { return plane.Corner{Point: plane.Point{X: x, Y: y}} }
	first, last := s.Readings[0], s.Readings[len(s.Readings)-1]
	line := append([]survey.Reading{{At: -far, Value: first.Value}}, s.Readings...)
	line = append(line, survey.Reading{At: far, Value: last.Value})
	var out []plane.Ring
	for i := 1; i < len(line); i++ {
		if a, b := line[i-1], line[i]; a.At < b.At {
			out = append(out, plane.Ring{at(a.At, a.Value+by), at(b.At, b.Value+by), at(b.At, far), at(a.At, far)})
		}
	}
	return out
}
