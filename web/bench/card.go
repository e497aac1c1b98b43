package bench

import (
	"fmt"
	"slices"
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
	On     *plan.Face  // of a strip, a niche or window, or the top of the wall; nil on the wall itself
	Batch  *cuts.Group // the cut of the schedule that it belongs to; nil for a whole tile, and for one that is set
	From   string      // the piece whose off-cut it comes from, or empty
	Sketch templ.Component
}

// apart tells whether the piece lies on a face that is folded out of the wall.
func (c Card) apart() bool {
	return c.On != nil && slices.Contains(c.Plan.Walls[c.Wall].Folded(), c.On)
}

// wall is the flat wall that the piece is on.
func (c Card) wall() *plan.Wall {
	if c.On != nil {
		return &c.On.Wall
	}
	return &c.Plan.Walls[c.Wall]
}

// course says where the piece is in the bond.
func (c Card) course() string {
	what := "course"
	if c.Plan.Room.Bond.Plumb {
		what = "column"
	}
	name := c.Plan.Walls[c.Wall].Found.Name
	if c.apart() {
		name, what = c.On.Name(), drawing.RowWord(c.On)
	}
	text := fmt.Sprintf("%s, %s %d", name, what, c.Piece.Course)
	if c.apart() && c.On.Is == survey.WallTop {
		text += " from the front"
	}
	return text
}

func (c Card) kind() string {
	text := c.Piece.Kind.String()
	switch {
	case c.On != nil && c.On.Slab:
		text = "slab"
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
func (c Card) stands() bool { return c.On == nil && c.Plan.Walls[c.Wall].Found.Stands(c.Piece.Row) }

// swatch is the class of the piece's colour.
func (c Card) swatch() string {
	return strings.TrimPrefix(string(drawing.CutKind(c.Piece)), "piece ")
}

// box is the place of its tile on the wall, in millimetres: left, bottom, right, top.
// What is folded out of the wall has none there.
func (c Card) box() string {
	if c.apart() {
		return ""
	}
	t := c.Piece.Tile
	return strings.Join([]string{t.Left.MillimetreText(), t.Bottom.MillimetreText(), t.Right.MillimetreText(), t.Top.MillimetreText()}, " ")
}

// lines are its sizes and edges, as in the cut schedule.
func (c Card) lines() []string {
	if c.Piece.Whole {
		s, wide, high := c.Plan.Room.Units, c.Piece.Tile.Width(), c.Piece.Tile.Height()
		if c.On == nil || c.Piece.Outline != nil {
			t := plan.TileOf(c.Plan.Room, c.On, &c.Piece)
			wide, high = t.Width, t.Height
		}
		out := []string{"wide " + wide.Fine(s) + ", high " + high.Fine(s)}
		if c.Piece.Outline != nil {
			out[0] = "tile of " + wide.Fine(s) + " × " + high.Fine(s)
			out = append(out, "factory: all edges")
		} else if c.On == nil || !c.On.Slab {
			out = append(out, "factory: left, right, bottom, top")
		}
		return append(out, c.mitred()...)
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
	edges := plan.MitredOn(&c.Plan.Walls[c.Wall], c.On, &c.Piece)
	if len(edges) == 0 {
		return nil
	}
	return []string{"mitred " + strings.Join(edges, ", ") + ", the face stays full"}
}

// meets names what the piece is cut to.
func (c Card) meets() string {
	var out []string
	for _, side := range c.Piece.Cuts {
		b := c.wall().Shape.Sides[side]
		switch is := b.Part.Is; {
		case c.apart() && is != survey.LeftEnd && is != survey.RightEnd:
			out = append(out, "the "+b.Name)
		case c.Piece.AtStep(side, c.wall().Shape.Sides):
			out = append(out, "the "+b.Front())
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
