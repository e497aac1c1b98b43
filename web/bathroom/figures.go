package bathroom

import (
	"strings"

	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
)

// Large is one large figure: a name and a length in its parts.
type Large struct{ Name, Whole, Fraction, Unit string }

// sizes are the figures to cut to, rounded down as in the cut schedule. What stays as
// wide or as high as the tile has none.
func (b Bathroom) sizes() (out []Large) {
	s := b.Step.Cut.Size
	heights, widths := s.Tapers()
	full := b.full()
	if full != fullWidth {
		out = b.both(out, "wide", widths && s.Bottom > 0 && s.Top > 0, s.Width, Large{Name: "below"}, s.Bottom, Large{Name: "above"}, s.Top)
	}
	if full != fullHeight {
		out = b.both(out, "high", heights && s.Left > 0 && s.Right > 0, s.Height, Large{Name: "left"}, s.Left, Large{Name: "right"}, s.Right)
	}
	return out
}

// What a cut leaves as it is.
const (
	fullWidth  = "full width"
	fullHeight = "full height"
)

// full says which way a piece is left as large as its tile where it is cut the other
// way alone; empty where it is cut both ways or neither, and of a pattern, whose tiles
// do not stand upright.
func (b Bathroom) full() string {
	p, s, step := b.Step.Pieces[0], b.Step.Cut.Size, b.Plan.Room.Units.FineStep()
	heights, widths := s.Tapers()
	wide := !widths && s.Width == p.Tile.Width().FloorTo(step)
	high := !heights && s.Height == p.Tile.Height().FloorTo(step)
	switch {
	case p.Outline != nil || b.Step.Trim != nil || wide == high:
		return ""
	case wide:
		return fullWidth
	}
	return fullHeight
}

// both adds one figure, or those of the two sides where they differ.
func (b Bathroom) both(out []Large, name string, two bool, all length.Length, first Large, a length.Length, second Large, z length.Length) []Large {
	if !two {
		return append(out, b.large(name, all))
	}
	return append(out, b.large(name+" "+first.Name, a), b.large(name+" "+second.Name, z))
}

func (b Bathroom) large(name string, l length.Length) Large {
	return inParts(name, l.Fine(b.Plan.Room.Units))
}

// fraction follows the whole number at a small distance.
func (l Large) fraction() string {
	if l.Fraction == "" || l.Whole == "" {
		return l.Fraction
	}
	return " " + l.Fraction
}

// inParts takes a length as it is written into whole, fraction and unit.
func inParts(name, text string) Large {
	out := Large{Name: name, Whole: text}
	if number, found := strings.CutSuffix(text, " mm"); found {
		out.Whole, out.Unit = number, "mm"
		return out
	}
	if number, found := strings.CutSuffix(text, `"`); found {
		out.Whole, out.Unit = number, `"`
		if strings.Contains(number, "/") {
			at := strings.LastIndexAny(number, " -") + 1
			out.Whole, out.Fraction = strings.TrimSuffix(number[:at], " "), number[at:]
		}
	}
	return out
}

// more are the lines on a cut that are no width and no height: what stays whole,
// notches, holes, and of a piece of a pattern where the saw enters and leaves it.
func (b Bathroom) more() []string {
	var out []string
	if full := b.full(); full != "" {
		out = append(out, full)
	}
	for _, line := range b.Step.Cut.Words(b.Plan.Room.Units) {
		if strings.HasPrefix(line, "notch ") || strings.HasPrefix(line, "hole ") {
			out = append(out, line)
		}
	}
	if marks := b.Step.Cut.Marks(b.Plan.Room.Units); len(marks) > 0 {
		out = append(append(out, marks...), cuts.Corners)
	}
	return out
}

// made says which edges are cut, and which stay as made.
func (b Bathroom) made() string {
	g := b.Step.Cut
	out := "Heavy edges are cut: " + strings.Join(g.Cut, ", ") + "."
	if len(g.Cut) == 0 {
		out = ""
	}
	if len(g.Factory) > 0 {
		out += " As made: " + strings.Join(g.Factory, ", ") + "."
	}
	return out
}

// mitred says which pieces of the step are mitred at an outside corner, whole tiles too;
// empty where none is.
func (b Bathroom) mitred() string {
	if b.Step.Trim != nil {
		return ""
	}
	var out []string
	for i := range b.Step.Pieces {
		p := &b.Step.Pieces[i].Piece
		if edges := plan.MitredOn(&b.Plan.Walls[b.Wall], b.Step.On, p); len(edges) > 0 {
			out = append(out, p.ID+" "+strings.Join(edges, ", "))
		}
	}
	if len(out) == 0 {
		return ""
	}
	return "Mitre " + strings.Join(out, "; ") + ": the face stays full."
}

// Edge is where an edge of the first piece stands.
type Edge struct{ Name, At, From string }

// edges say where the first piece of the step stands: by edges as made where it
// has them, because those are the ones that are held to a line.
func (b Bathroom) edges() []Edge {
	p := b.Step.Pieces[0]
	box := p.Face.Bounds()
	tile := plane.Region{p.Outline}
	side, x := "left edge", box.Left
	switch {
	case p.Outline != nil && stages.LeftOf(tile) == stages.Corner: // no edge of it is plumb
		side = "left " + string(stages.LeftOf(p.Face))
	case box.Left != p.Tile.Left && box.Right == p.Tile.Right:
		side, x = "right edge", box.Right
	}
	end, y := "bottom edge", box.Bottom
	switch {
	case p.Outline != nil && stages.LowestOf(tile) == stages.Corner:
		if stages.LowestOf(p.Face) == stages.Corner {
			end = "lowest corner"
		}
	case box.Bottom != p.Tile.Bottom && box.Top == p.Tile.Top:
		end, y = "top edge", box.Top
	}
	switch {
	case b.Step.Sheet != nil:
		side, x, end, y = "left edge", b.Step.Sheet.Box.Left, "bottom edge", b.Step.Sheet.Box.Bottom
	case len(b.Step.Pieces) > 1:
		side = "first " + side
	}
	if f := b.Step.On; f != nil && f.Origin != (plane.Point{}) {
		return []Edge{{side, b.Tape(x), "from the left edge of the face"}, {end, b.Tape(y.Abs()), upFrom(f.Is, y)}}
	}
	return []Edge{{side, b.Tape(x), "from the left end, " + b.fromStart(x)}, {end, b.Tape(y.Abs()), over(y)}}
}

func over(y length.Length) string {
	switch {
	case y < 0:
		return "under the level line"
	case y > 0:
		return "over the level line"
	}
	return "on the level line"
}

// upFrom says from what a height on a face is counted: sill and top are seen folded
// out, from their lower edge.
func upFrom(is survey.FaceName, y length.Length) string {
	switch is {
	case survey.SillFace:
		return "behind the front edge of the sill"
	case survey.WallTop:
		return "behind the finished front edge"
	case survey.TopFace:
		return "in front of the back edge of the top"
	}
	return over(y)
}

// fromStart says where a place is from the tile edge that is struck on the wall.
func (b Bathroom) fromStart(x length.Length) string {
	w := b.Plan.Walls[b.Wall]
	edge, struck := stages.Strike(w, stages.ToStrike(b.Plan.Room, b.Plan.Setout.Line, b.Plan.Walls).Full)
	if !struck {
		edge = w.Start.Edge
	}
	switch d := x - edge; {
	case d < 0:
		return b.Tape(-d) + " left of the start"
	case d > 0:
		return b.Tape(d) + " right of the start"
	}
	return "on the start"
}

// leftEdge is where one of several tiles begins.
func (b Bathroom) leftEdge(p Placed) string {
	return b.Tape(p.Face.Bounds().Left) + " from the left end"
}
