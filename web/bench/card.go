package bench

import (
	"fmt"
	"strings"

	"github.com/a-h/templ"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
)

// Card is all there is to know about one piece.
type Card struct {
	Plan   layout.Plan
	Wall   int
	Piece  piece.Piece
	Batch  *cuts.Group // the cut of the schedule that it belongs to; nil for a whole tile, and for one that is set
	From   string      // the piece whose off-cut it comes from, or empty
	Sketch templ.Component
}

// course says where the piece is in the bond.
func (c Card) course() string {
	what := "course"
	if c.Plan.Room.Bond.Plumb {
		what = "column"
	}
	return fmt.Sprintf("%s, %s %d", c.Plan.Walls[c.Wall].Found.Name, what, c.Piece.Course)
}

func (c Card) kind() string {
	text := c.Piece.Kind.String()
	switch {
	case c.Piece.Whole:
		text = "whole tile"
	case c.Batch != nil:
		text = c.Batch.Kind
	}
	if c.Piece.Sliver {
		text += ", a sliver"
	}
	if c.stands() {
		text += ", set already"
	}
	return text
}

// stands tells whether the piece is set already.
func (c Card) stands() bool { return c.Plan.Walls[c.Wall].Found.Stands(c.Piece.Row) }

// swatch is the class of the piece's colour.
func (c Card) swatch() string {
	return strings.TrimPrefix(string(drawing.CutKind(c.Piece)), "piece ")
}

// box is the place of its tile on the wall, in millimetres: left, bottom, right, top.
func (c Card) box() string {
	t := c.Piece.Tile
	return strings.Join([]string{t.Left.MillimetreText(), t.Bottom.MillimetreText(), t.Right.MillimetreText(), t.Top.MillimetreText()}, " ")
}

// lines are its sizes and edges, as in the cut schedule.
func (c Card) lines() []string {
	if c.Piece.Whole {
		s, t := c.Plan.Room.Units, c.Plan.Room.Laid(c.Piece.Laid).Tile
		return append([]string{"wide " + t.Width.Fine(s) + ", high " + t.Height.Fine(s), "factory: left, right, bottom, top"}, c.mitred()...)
	}
	var out []string
	if c.Batch != nil {
		out = c.Batch.Words(c.Plan.Room.Units)[1:]
	}
	if meets := c.meets(); meets != "" {
		out = append(out, "cut to "+meets)
	}
	return append(out, c.mitred()...)
}

// mitred says which edges are mitred at an outside corner; nothing where none is.
func (c Card) mitred() []string {
	edges := plan.Mitred(&c.Plan.Walls[c.Wall], &c.Piece)
	if len(edges) == 0 {
		return nil
	}
	return []string{"mitred " + strings.Join(edges, ", ") + ", the face stays full"}
}

// meets names what the piece is cut to.
func (c Card) meets() string {
	var out []string
	for _, side := range c.Piece.Cuts {
		b := c.Plan.Walls[c.Wall].Shape.Sides[side]
		switch is := b.Part.Is; {
		case is == survey.BaseSegment:
			out = append(out, "the "+string(b.Kind))
		case is == survey.LeftEnd || is == survey.RightEnd:
			out = append(out, "the "+b.Name+" end")
		case is == survey.HeadEdge && b.Meets:
			out = append(out, "the "+string(b.Kind))
		default:
			out = append(out, b.Name)
		}
	}
	return strings.Join(out, ", ")
}

func (c Card) batchText() string {
	if c.Batch.Count == 1 {
		return ", the only one of its kind"
	}
	return fmt.Sprintf(", one of %d alike", c.Batch.Count)
}
