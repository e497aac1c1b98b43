package cuts

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// work is one cut piece on its wall, with its face moved to 0, 0 and the outer
// ring first.
type work struct {
	piece piece.Piece
	wall  *plan.Wall
	face  plane.Region
	box   plane.Rect
	clear length.Length // what tile keeps away from a pipe
	turn  bool          // its tile may be turned round
	own   *frame        // of a piece that is cut by marks: its tile's frame, in which piece, face and box are; nil for the wall's
}

// inSettingOrder lists the cut pieces by setting order of the walls, then as
// they stand on the wall: those still to be cut, and those set already. A tile with grain is never turned.
func inSettingOrder(in Input, turn bool) (cut, stood []work) {
	walls := make([]*plan.Wall, len(in.Walls))
	for i := range in.Walls {
		walls[i] = &in.Walls[i]
	}
	slices.SortStableFunc(walls, func(a, b *plan.Wall) int { return cmp.Compare(a.Found.Order, b.Found.Order) })
	for _, w := range walls {
		for _, p := range w.Pieces {
			turn := turn && !in.Room.Grained(p.Of)
			switch {
			case p.Whole:
			case w.Found.Stands(p.Row):
				stood = append(stood, newWork(p, w, in.Room.Units, turn))
			default:
				cut = append(cut, newWork(p, w, in.Room.Units, turn))
			}
		}
	}
	return cut, stood
}

func newWork(p piece.Piece, w *plan.Wall, units length.System, turn bool) work {
	out := work{wall: w, clear: survey.PipeClear(units), turn: turn}
	if p.Outline == nil && p.Kind&piece.Taper != 0 && out.as(p).cornered(Near(units)) {
		p.Outline = p.Tile.Ring(0)
		p.Kind = kindOf(p)
	}
	if p.Outline != nil {
		lies, f := lying(p, turn, units.FineStep())
		p, out.own = lies, &f
	}
	return out.as(p)
}

// as is the work that another piece of its tile makes.
func (w work) as(p piece.Piece) work {
	box := p.Face.Bounds()
	face := make(plane.Region, 0, len(p.Face))
	for _, ring := range p.Face.Straight() {
		moved := make(plane.Ring, 0, len(ring))
		for _, c := range ring {
			c.X, c.Y = c.X-box.Left, c.Y-box.Bottom
			moved = append(moved, c)
		}
		face = append(face, fromLowest(moved))
	}
	slices.SortStableFunc(face, func(a, b plane.Ring) int { return cmp.Compare(b.Area2(), a.Area2()) })
	w.piece, w.face, w.box = p, face, box
	return w
}

// fromLowest turns a ring so that its lowest, then leftmost corner comes first.
func fromLowest(r plane.Ring) plane.Ring {
	first := 0
	for i, c := range r {
		if c.Y < r[first].Y || c.Y == r[first].Y && c.X < r[first].X {
			first = i
		}
	}
	return append(slices.Clone(r[first:]), r[:first]...)
}

// boundaries are what the piece is cut to.
func (w work) boundaries() []survey.Boundary {
	var all []survey.Boundary
	for _, side := range w.piece.Cuts {
		if int(side) > 0 && int(side) < len(w.wall.Shape.Sides) {
			all = append(all, w.wall.Shape.Sides[side])
		}
	}
	return all
}

// outline is equal for faces whose corners round down to the same places; the
// rims of holes do not count, their size does.
func (w work) outline(step length.Length) string {
	var text []byte
	for _, c := range w.face[0] {
		if !w.pipe(c.On) {
			text = appendLengths(text, c.X.FloorTo(step), c.Y.FloorTo(step))
		}
	}
	return string(text)
}

// kind names the cuts of a piece. A square tile of a pattern, whose sides are alike, is cut both ways where it is made
// narrower and lower.
func (w work) kind(step length.Length) string {
	k, t := w.piece.Kind, w.piece.Tile
	if k&piece.Rip != 0 && w.own != nil && rectangle(w.piece.Outline) && min(t.Width()-w.box.Width(), t.Height()-w.box.Height()) >= step {
		k |= piece.Cross
	}
	return kindText(k)
}

// kindText names cuts.
func kindText(k piece.Kind) string {
	names := []struct {
		kind piece.Kind
		name string
	}{{piece.Rip, "rip"}, {piece.Cross, "cross cut"}, {piece.Taper, "taper"}, {piece.Notch, "notch"}, {piece.Hole, "hole"}, {piece.Angle, "angle cut"}}
	text := ""
	for _, n := range names {
		if k&n.kind != 0 {
			text += ", " + n.name
		}
	}
	if text == "" {
		return "cut"
	}
	return text[2:]
}
