package plan

import (
	"slices"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/survey"
	"coursewright/layout/trim"
)

// Top is the horizontal face on a wall as it will be laid: seen from above with its
// front edge below, as if folded up into the plane of the wall. Its y runs from the
// finished edge at the front, level, to the back.
type Top struct {
	Face
	Found *survey.TopFound
	Front length.Length // the height of its finished edge at the front
	Rise  length.Length // how much higher it lies at its back, where it is deepest
	Skip  int           // how many courses of the wall's bond are passed over before its first row
	Less  length.Length // what is cut off its front row, because a whole one would leave something poor at the back
}

// WithTops gives the walls, each followed by its top as a flat wall: all that edges and
// trim go along.
func WithTops(walls []Wall) []Wall {
	out := make([]Wall, 0, len(walls))
	for _, w := range walls {
		out = append(out, w)
		if w.Top != nil {
			out = append(out, w.Top.Wall)
		}
	}
	return out
}

// AllTrim is the trim along the edges of a wall and of its top.
func (w *Wall) AllTrim() []trim.Piece {
	if w.Top == nil || len(w.Top.Trim) == 0 {
		return w.Trim
	}
	return append(slices.Clone(w.Trim), w.Top.Trim...)
}

// Mitred says which edges of a piece of the top are mitred: "front at 45°".
func (t *Top) Mitred(p *piece.Piece) []string {
	var out []string
	if t.Found.How == survey.Mitre && p.Face.Bounds().Bottom == t.Shape.Region.Bounds().Bottom {
		out = append(out, "front at "+square)
	}
	for _, edge := range Mitred(&t.Wall, p) {
		out = append(out, strings.Replace(edge, "head", "back", 1))
	}
	return out
}

// MitredOn says the same of a piece on a wall, or on what is laid on it.
func MitredOn(w *Wall, on *Face, p *piece.Piece) []string {
	switch {
	case on == nil:
		return Mitred(w, p)
	case w.Top != nil && on == &w.Top.Face:
		return w.Top.Mitred(p)
	}
	return nil
}
