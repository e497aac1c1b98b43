package phase

import (
	"context"
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// Law 3 with free marks, by brute force over every mark of a coarse tape and every way to
// place the marks: an alcove's end wall with a free end and head, and a wall with a free niche.
func TestNoPlacingOfFreeMarksIsBetter(t *testing.T) {
	span := func(from, to length.Length) survey.Span { return survey.Span{From: from * mm, To: to * mm} }
	coarse := func(r *survey.Room) { r.Tape = 12 * mm }
	ends := func(r *survey.Room) {
		r.Walls[0].Right.Stops, r.Walls[0].Head.Stops = span(560, 620), span(220, 270)
	}
	shelf := func(r *survey.Room) {
		r.Walls[0].Openings = []survey.OpeningFound{{Kind: survey.Niche, Name: "n", Left: span(200, 260), Width: span(150, 150), Bottom: span(-100, -60), Height: span(110, 130)}}
	}
	for name, r := range map[string]survey.Room{
		"herringbone, end and head":          small(survey.Herringbone, 150*mm, 75*mm, coarse, ends),
		"hexagon, end and head":              small(survey.Hexagon, 100*mm, 100*mm, coarse, ends),
		"chevron, end and head":              small(survey.Chevron, 180*mm, 60*mm, coarse, ends),
		"basket weave, a niche":              small(survey.BasketWeave, 102*mm, 50*mm, coarse, shelf),
		"hexagon, a niche":                   small(survey.Hexagon, 100*mm, 100*mm, coarse, shelf),
		"hexagon, a niche across a roof":     small(survey.Hexagon, 100*mm, 100*mm, coarse, shelf, roof(0, 180*mm)),
		"herringbone, a niche across a roof": small(survey.Herringbone, 150*mm, 75*mm, coarse, shelf, roof(220*mm, -60*mm)),
		"herringbone, all":                   small(survey.Herringbone, 150*mm, 75*mm, func(r *survey.Room) { r.Tape = 26 * mm }, ends, shelf),
	} {
		t.Run(name, func(t *testing.T) {
			found, err := Room(context.Background(), &r)
			require.NoError(t, err)
			require.True(t, found.Free)
			require.True(t, found.Proven)
			w := NewWall(&r, r.Walls[0], bond.For(r, survey.Free))
			looked := 0
			for line := range found.everyLine() {
				for _, edge := range w.everyStart() {
					c := w.choose(&stretch{edge: edge, marks: 1}, &hunt{wall: w, line: line})
					c.ready()
					pick := make([]int, len(w.axes))
					for {
						if p, ok := c.everyWay(pick); ok {
							looked++
							n := w.Count(Setting{Line: line, Edge: edge, Placed: p})
							if order, term := found.Order().Compare(&n.Merit, &found.Walls[0].Merit); order < 0 {
								require.Failf(t, "better", "line %v, edge %v, marks %v: %s, %+v for %+v", line, edge, p, term, n.Merit, found.Walls[0].Merit)
							}
						}
						if !c.turn(pick) {
							break
						}
					}
				}
			}
			require.Greater(t, looked, 2000)
		})
	}
}

// everyLine are the lines at marks of the tape.
func (s *solver) everyLine() func(func(length.Length) bool) {
	line, marks := s.lines()
	return func(yield func(length.Length) bool) {
		for k := range marks {
			if !yield(line + k*s.room.Tape) {
				return
			}
		}
	}
}

// everyStart are the starts at marks of the tape, and those of the trade.
func (w *Wall) everyStart() []length.Length {
	first, marks := w.starts(w.room.Tape)
	out := append([]length.Length(nil), w.classic...)
	for k := range marks {
		out = append(out, first+k*w.room.Tape)
	}
	return out
}

// everyWay are the marks of one way, in the order in which options are listed.
func (c *choice) everyWay(pick []int) (survey.Placed, bool) {
	p := c.w.outer
	p.Openings = append([]survey.Edges(nil), p.Openings...)
	for axis, n := range pick {
		c.w.axes[axis].set(&p, c.axes[axis].wait.items[n])
	}
	return p, apart(p.Openings)
}

// turn counts on to the next way, and tells whether there is one.
func (c *choice) turn(pick []int) bool {
	for axis := range pick {
		if pick[axis]++; pick[axis] < len(c.axes[axis].wait.items) {
			return true
		}
		pick[axis] = 0
	}
	return false
}
