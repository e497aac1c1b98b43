package drawing

import (
	"fmt"
	"slices"
	"strings"

	"coursewright/layout"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// A reading that can hardly be true is set out with all the same, so that one sees what comes of it;
// on a screen a triangle stands at it until it is put right or kept. Sheets have none: what is
// printed is what the person has answered for.

// doubtSide is half the side of the triangle, doubtHigh how high it stands.
const (
	doubtSide = 2800
	doubtHigh = 4800
)

// doubtNote says what the triangles mean, where there are any.
func (b *board) doubtNote() string {
	if b.paper || !slices.ContainsFunc(b.plan.Walls, func(w layout.Wall) bool {
		return (b.alone == nil || b.plan.Walls[*b.alone].Found.Name == w.Found.Name) && len(b.doubted(w)) > 0
	}) {
		return ""
	}
	return " · ? in a triangle: a reading in doubt"
}

// doubts marks the readings of a wall that are in doubt, clear of texts, handles and flags.
func (b *board) doubts(f frame, w layout.Wall) {
	for _, p := range b.doubted(w) {
		at := f.at(p.X, p.Y)
		c, found := b.free(at)
		if !found {
			continue // the survey asks all the same
		}
		tag := Tag{Kind: Doubt, Wall: f.wall}
		b.chain(tag, line(Black, 350), at, c)
		b.disc(tag, fill(Black), at, findingDot)
		foot := c.Y + doubtHigh/2
		b.path(tag, Ink{Fill: White, Line: Black, Width: 500}, []Point{{c.X - doubtSide, foot}, {c.X, foot - doubtHigh}, {c.X + doubtSide, foot}})
		b.label(centred(Label{Tag: tag, Text: "?", Size: max(11*px, b.texts.least), Bold: true, Colour: Black}, Point{c.X, c.Y + doubtHigh/8}))
		b.keep(flagBox(c))
	}
}

// doubted are the places of the readings of a wall that are in doubt, each once.
func (b *board) doubted(w layout.Wall) []plane.Point {
	path := b.wallPath(w)
	var out []plane.Point
	for _, d := range b.plan.Doubts {
		field, is := strings.CutPrefix(d.Path, path)
		if at := placeOf(w, field); is && !slices.Contains(out, at) {
			out = append(out, at)
		}
	}
	return out
}

// placeOf is where a field of a wall is measured: a height at its reading, an opening at its middle,
// a width at the right end, what has no place of its own in the middle.
func placeOf(w layout.Wall, field string) plane.Point {
	for i, s := range w.Found.Base {
		for k, r := range s.Readings {
			if strings.HasPrefix(field, fmt.Sprintf("base[%d].readings[%d].", i, k)) {
				return plane.Point{X: r.At, Y: r.Value}
			}
		}
	}
	for k, r := range w.Found.Head.Readings {
		if strings.HasPrefix(field, fmt.Sprintf("head.readings[%d].", k)) {
			return plane.Point{X: r.At, Y: r.Value}
		}
	}
	for i, o := range w.Found.Openings {
		if !strings.HasPrefix(field, fmt.Sprintf("openings[%d].", i)) {
			continue
		}
		if e := placed(w, i); e != (survey.Edges{}) {
			return plane.Point{X: (e.Left + e.Right).Half(), Y: (e.Bottom + e.Top).Half()}
		}
		return plane.Point{X: o.At, Y: o.Up}
	}
	r := w.Shape.Region.Bounds()
	middle := plane.Point{X: (r.Left + r.Right).Half(), Y: (r.Bottom + r.Top).Half()}
	switch {
	case field == "width", strings.HasPrefix(field, "right."):
		middle.X = r.Right
	case strings.HasPrefix(field, "left."):
		middle.X = r.Left
	case strings.HasPrefix(field, "head"):
		middle.Y = r.Top
	}
	return middle
}
