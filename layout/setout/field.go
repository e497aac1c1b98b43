package setout

import (
	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// field is one wall as the solver sees it, in the frame of the rows: along a
// row and across the rows. With level courses along is x and across is y.
type field struct {
	found  survey.WallFound
	room   *survey.Room
	bond   bond.Bond
	hand   survey.Hand
	plumb  bool
	rule   piece.Rule
	placed survey.Placed // measured marks, and free ones at their outermost
	free   []int         // openings with a free mark
	shape  survey.Shape  // without the free openings, on the wall
	shifts []length.Length

	pipes []plane.Ring

	lineAxis, startAxis axis
	startFeatures       []feature
	marks               []length.Length         // the starts that the tape shows
	work                *int                    // counts the rows counted and cut, as the solver does
	atBest              map[bool]Merit          // what no start can beat, by whether it is on the tape
	guesses             map[length.Length]Merit // of starts, on any course line
}

func newField(room *survey.Room, w survey.WallFound, hand survey.Hand, work *int) *field {
	w = withPins(w)
	f := &field{found: w, room: room, bond: bond.Of(*room, hand), hand: hand, plumb: room.Bond.Plumb, work: work}
	f.shifts = f.bond.Shifts()
	f.placed, f.free = outermost(w)
	f.shape = f.shapeWith(f.placed)
	f.rule = piece.RuleFor(*room, f.shape.Sides)
	f.pipes = pipeRings(room, w)
	f.lineAxis, f.startAxis = f.axes()
	f.startFeatures = f.plumbs()
	if !f.plumb {
		f.startFeatures = f.withShifts(f.startFeatures)
	}
	f.atBest = map[bool]Merit{}
	f.guesses = map[length.Length]Merit{}
	return f
}

// shapeWith is the wall's shape without its free openings.
func (f *field) shapeWith(p survey.Placed) survey.Shape {
	*f.work += shapeCuts * rowCut
	w := f.found
	if len(f.free) > 0 {
		// A free opening far off the wall takes nothing away and keeps its number.
		p.Openings = append([]survey.Edges(nil), p.Openings...)
		for _, i := range f.free {
			p.Openings[i] = away
		}
	}
	return w.Shape(f.room.Units, p)
}

var away = survey.Edges{Left: -100 * length.Metre, Right: -99 * length.Metre, Bottom: -100 * length.Metre, Top: -99 * length.Metre}

// outermost places every measured mark, and free ends and heads where they
// leave most wall; it lists the openings with a free mark.
func outermost(w survey.WallFound) (survey.Placed, []int) {
	p := survey.Placed{Left: w.Left.Stops.From, Right: w.Right.Stops.To, Head: w.Head.Stops.To, Openings: make([]survey.Edges, len(w.Openings))}
	var free []int
	for i, o := range w.Openings {
		if o.Kind == "pipe" {
			continue
		}
		if o.Left.Free() || o.Width.Free() || o.Bottom.Free() || o.Height.Free() {
			free = append(free, i)
		}
		p.Openings[i] = survey.Edges{Left: o.Left.From, Bottom: o.Bottom.From, Right: o.Left.From + o.Width.From, Top: o.Bottom.From + o.Height.From}
	}
	return p, free
}

// rows of the bond over the wall and one beyond it each way.
func (f *field) rows(across, along length.Length, shape survey.Shape) []bond.Row {
	box := shape.Solid.Bounds()
	if f.plumb {
		box = box.Transposed()
	}
	return f.bond.Rows(across, along, box.Bottom-f.bond.Across(), box.Top+f.bond.Across())
}

// frame orders line and edge as across and along.
func (f *field) frame(line, edge length.Length) (across, along length.Length) {
	if f.plumb {
		return edge, line
	}
	return line, edge
}

// Cut makes the pieces of a wall from its set-out, without IDs, with the bare places.
func Cut(room survey.Room, w survey.WallFound, hand survey.Hand, line, edge length.Length, placed survey.Placed) (survey.Shape, []piece.Piece, []plane.Point) {
	f := &field{found: w, room: &room, bond: bond.Of(room, hand), hand: hand, plumb: room.Bond.Plumb}
	shape := w.Shape(room.Units, placed)
	across, along := f.frame(line, edge)
	pieces, bare := piece.Cut(shape, f.rows(across, along, shape), piece.RuleFor(room, shape.Sides))
	return shape, pieces, bare
}

// measureAll is the slow and sure way to a wall's merit: cut every piece.
func (f *field) measureAll(line, edge length.Length, placed survey.Placed) Merit {
	_, pieces, bare := Cut(*f.room, f.found, f.hand, line, edge, placed)
	t := piece.NewTally()
	t.Pieces(pieces)
	t.Bare = len(bare)
	return meritOf(t, f.offLine(line, edge, placed), f.find(edge, placed), f.room.Tile.Width)
}
