package count

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// wallOf is all that a wall is counted from.
type wallOf struct {
	room  survey.Room
	found survey.WallFound
	hand  survey.Hand
}

// basis is what a wall is counted from of its room.
func basis(room *survey.Room) survey.Room {
	t := room.Tile
	return survey.Room{
		Units: room.Units, Tape: room.Tape, Joint: room.Joint, Prefer: room.Prefer, Bed: room.Bed, Bond: room.Bond, Sliver: room.Sliver, Sealant: room.Sealant,
		Tile: survey.TileSize{Width: t.Width, Height: t.Height, Thickness: t.Thickness},
	}
}

// facts is what is known of a wall before anything is decided. Nothing in it changes.
type facts struct {
	found survey.WallFound // with pinned marks fixed
	typed survey.WallFound // as the survey has it
	room  *survey.Room
	order merit.Order
	bond  bond.Coursed
	frame frame
	rule  piece.Rule
	top   *Top // what lies on the wall, where its bond goes on there

	shifts []length.Length // of the classes along the rows
	outer  survey.Placed   // measured marks, and free ones where they leave most wall
	free   []int           // openings with a free mark
	moving [3]bool         // whether the left end, the right one and the head are free
	field  survey.Shape    // without free openings and holes, with every free end where it leaves most
	tiled  survey.TileField
	holes  []plane.Rect // round pipes, in the frame of the rows
}

func newFacts(room *survey.Room, found survey.WallFound, hand survey.Hand) *facts {
	if found.Single {
		with, single := room.Singly(found)
		room, found = &with, single
	}
	w := &facts{found: WithPins(found), typed: found, room: room, order: merit.OrderFor(room.Prefer),
		bond: bond.Of(*room, hand), frame: frame{room.Bond.Plumb}}
	w.shifts = w.bond.Shifts()
	w.outer, w.free = outermost(w.found)
	w.moving = [...]bool{!w.found.Left.Meets && w.found.Left.Stops.Free(), !w.found.Right.Meets && w.found.Right.Stops.Free(), !w.found.Head.Meets && w.found.Head.Stops.Free()}
	w.field = w.found.Undrilled(w.without(w.outer))
	w.tiled = w.found.TileField(room.Units)
	w.top = NewTop(room, found, hand)
	w.rule = piece.RuleFor(*room, w.found, w.field.Sides)
	for i, o := range w.found.Openings {
		if o.Kind == survey.Pipe {
			r := w.boxOf(i, o, w.outer)
			out := r.Width()/256 + 2 // the hole is a ring of straight edges round the circle
			w.holes = append(w.holes, w.frame.rect(plane.Rect{Left: r.Left - out, Right: r.Right + out, Bottom: r.Bottom - out, Top: r.Top + out}))
		}
	}
	return w
}

// outermost places every measured mark, and free ends and heads where they
// leave most wall; it lists the openings with a free mark.
func outermost(w survey.WallFound) (survey.Placed, []int) {
	p := survey.Placed{Left: w.Left.Stops.From, Right: w.Right.Stops.To, Head: w.Head.Stops.To, Openings: make([]survey.Edges, len(w.Openings))}
	var free []int
	for i, o := range w.Openings {
		if o.Kind == survey.Pipe {
			continue
		}
		if o.Left.Free() || o.Width.Free() || o.Bottom.Free() || o.Height.Free() {
			free = append(free, i)
		}
		p.Openings[i] = survey.Edges{Left: o.Left.From, Bottom: o.Bottom.From, Right: o.Left.From + o.Width.From, Top: o.Bottom.From + o.Height.From}
	}
	return p, free
}

// box is the box of the wall's tile with every free end where it leaves most.
func (w *facts) box() plane.Rect { return w.field.Solid.Bounds() }

// rows of the bond over a box and one beyond it each way.
func (w *facts) rows(s Setting, box plane.Rect) []bond.Row {
	along, across := w.frame.phases(s.Line, s.Edge)
	return w.rowsFrom(along, across, box)
}

// rowsFrom are the rows of the bond that begin at along and stand at across, in the frame of the
// rows.
func (w *facts) rowsFrom(along, across length.Length, box plane.Rect) []bond.Row {
	box = w.frame.rect(box)
	return w.bond.Rows(across, along, box.Bottom-w.bond.Across(), box.Top+w.bond.Across())
}

// begun is a row of a line whose tiles begin at along.
func begun(row bond.Row, along length.Length) bond.Row {
	row.First += along
	return row
}

// allBegun are rows of a line whose tiles begin at along.
func allBegun(rows []bond.Row, along length.Length) []bond.Row {
	out := slices.Clone(rows)
	for i := range out {
		out[i].First += along
	}
	return out
}

// class of a row in the bond.
func (w *facts) class(course int) int {
	return int(length.Mod(length.Length(course), length.Length(len(w.shifts))))
}

// classes of the pieces that the ends of the wall cut.
func (w *facts) classes() int {
	if w.frame.plumb {
		return 1
	}
	return len(w.shifts)
}

// period is after how much the classes of the rows repeat.
func (w *facts) period() length.Length {
	return (w.rule.Across + w.room.Joint) * length.Length(len(w.shifts))
}

// shiftsExactly tells whether rows stand to the next as these do to those after them, round and round: no shift was
// rounded.
func shiftsExactly(w *facts) bool {
	pitch := w.rule.Along + w.room.Joint
	for k, shift := range w.shifts {
		if next := w.shifts[(k+1)%len(w.shifts)]; length.Mod(shift+w.shifts[1%len(w.shifts)]-next, pitch) != 0 {
			return false
		}
	}
	return true
}

// phase is where rows stand in a pitch: those a pitch further stand alike, but for their classes.
func phase(w *facts, across length.Length) length.Length {
	return length.Mod(across, w.rule.Across+w.room.Joint)
}

// mark is a length in whole marks of the tape, rounded down.
func (w *facts) mark(l length.Length) length.Length { return l.FloorTo(w.room.Tape) }

// likeEnds tells whether both ends of the wall meet a corner, or both stop.
func (w *facts) likeEnds() bool { return w.found.LikeEnds() }

// covered tells whether the tile of a next wall hides some of this one's.
func (w *facts) covered() bool { return w.found.Left.Cover > 0 || w.found.Right.Cover > 0 }

// margin is how far from an edge that crosses this one a piece is sure to be seen,
// and wider than sealant fills.
func (w *facts) margin() length.Length {
	return max(w.found.Left.Cover, w.found.Right.Cover) + w.room.Sealant + w.room.Joint + 4
}

// moves tells whether the side is a free end or head, which may stand elsewhere.
func (w *facts) moves(side plane.Side) bool {
	switch side {
	case survey.SideLeft:
		return w.moving[0]
	case survey.SideRight:
		return w.moving[1]
	case survey.SideHead:
		return w.moving[2]
	}
	return false
}

// fixedEnds tells whether both ends of the wall stand where they were measured.
func (w *facts) fixedEnds() bool { return !w.moves(survey.SideLeft) && !w.moves(survey.SideRight) }

// movesEnd tells whether the exposed end of the wall is free.
func (w *facts) movesEnd() bool {
	left, right := w.found.Exposed()
	return left && w.moves(survey.SideLeft) || right && w.moves(survey.SideRight)
}

func boolean(b bool) int {
	if b {
		return 1
	}
	return 0
}
