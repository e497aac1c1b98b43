// Package count tells what a set-out of one wall gives to the order of merit:
// exactly, by cutting the wall, or as what it cannot beat, from the pieces that
// arithmetic alone is sure of.
//
// Laws, each with a test:
//  1. Wall.Count is read from the pieces that the cutter makes, and from where
//     tile edges stand: nothing is counted in two ways.
//  2. What Wall.Groups, OfBoth, Plainly and Beyond give does not come after what
//     Wall.Count gives, whatever the marks that are still free.
//  3. Rows that are read off by arithmetic give what cutting them gives, but for what
//     is bare along a raked edge, which is rounded to a few units.
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

// Wall is one wall, ready to be counted at many set-outs. It is not safe for
// several goroutines at once.
type Wall struct {
	Found survey.WallFound // with pinned marks fixed
	typed survey.WallFound // as the survey has it
	room  *survey.Room
	bond  bond.Coursed
	plumb bool
	rule  piece.Rule

	shifts []length.Length // of the classes along the rows
	outer  survey.Placed   // measured marks, and free ones where they leave most wall
	free   []int           // openings with a free mark
	fixed  plane.Region    // without free openings, in the frame of the rows
	field  survey.Shape

	ends, beds []feature // by edge: what crosses rows, and what lies along them
	obstacles  []obstacle
	holes      []plane.Rect // round pipes, in the frame of the rows
	loose      []plane.Rect // where free openings may come to stand, and those holes
	outline    *profile     // without free openings, with every free end where it leaves most
	order      merit.Order
	hullOf     []int // of the free openings, the number of its hull among the obstacles

	apart, apartKnown bool
	sorted            map[string][]Start // by pattern, with level courses
	columns           []columns          // with columns
	startsKnown       []length.Length
	options           map[optionKey][]Option
	corners           int // of the wall's shape, for what it costs to cut

	registry map[runKey]int
	keys     []runKey

	shapes  map[string]survey.Shape
	grounds map[[3]length.Length]*ground
	Work    int // how many tiles were cut and features looked at, for a budget
}

// Setting is one set-out of a wall.
type Setting struct {
	Line, Edge length.Length // bottom and left edge of a tile of course 0
	Placed     survey.Placed
}

// NewWall prepares a wall of a room whose bond has the hand given.
func NewWall(room *survey.Room, found survey.WallFound, hand survey.Hand) *Wall {
	w := &Wall{Found: WithPins(found), typed: found, room: room, plumb: room.Bond.Plumb,
		bond: bond.Of(*room, hand), registry: map[runKey]int{}, shapes: map[string]survey.Shape{}, grounds: map[[3]length.Length]*ground{}, sorted: map[string][]Start{}, options: map[optionKey][]Option{}}
	w.shifts = w.bond.Shifts()
	w.outer, w.free = outermost(w.Found)
	bare := w.outer
	if len(w.free) > 0 {
		bare.Openings = slices.Clone(bare.Openings)
		for _, i := range w.free {
			bare.Openings[i] = Away
		}
	}
	w.order = merit.OrderFor(room.Prefer)
	w.field = w.Found.Shape(room.Units, bare)
	for _, ring := range w.field.Region {
		w.corners += len(ring)
	}
	w.rule = piece.RuleFor(*room, w.Found, w.field.Sides)
	w.fixed = w.field.Solid
	if w.plumb {
		w.fixed = w.fixed.Transposed()
	}
	for i, o := range w.Found.Openings {
		if o.Kind == survey.Pipe {
			r := w.boxOf(i, o, w.outer)
			out := r.Width()/256 + 2 // the hole is a ring of straight edges round the circle
			r = plane.Rect{Left: r.Left - out, Right: r.Right + out, Bottom: r.Bottom - out, Top: r.Top + out}
			if w.plumb {
				r = r.Transposed()
			}
			w.holes = append(w.holes, r)
		}
	}
	w.loose = append(w.loose, w.holes...)
	for _, i := range w.free {
		w.loose = append(w.loose, w.hull(i))
	}
	w.outline = w.profileOf(w.field)
	w.findFeatures()
	return w
}

// Away is where an opening stands that takes nothing from a wall.
var Away = survey.Edges{Left: -100 * length.Metre, Right: -99 * length.Metre, Bottom: -100 * length.Metre, Top: -99 * length.Metre}

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

// Outer is where measured marks stand, and free ends and heads where they leave most wall.
func (w *Wall) Outer() survey.Placed { return w.outer }

// Free lists the openings with a mark that is still free.
func (w *Wall) Free() []int { return w.free }

// Bounds is the box of the wall's tile with every free end where it leaves most.
func (w *Wall) Bounds() plane.Rect { return w.field.Solid.Bounds() }

// phases orders a line and an edge as along the rows and across them.
func (w *Wall) phases(line, edge length.Length) (along, across length.Length) {
	if w.plumb {
		return line, edge
	}
	return edge, line
}

// shape is the wall's shape with its marks placed. The last few are kept.
func (w *Wall) shape(p survey.Placed) survey.Shape {
	key := placedKey(p)
	s, there := w.shapes[key]
	if !there {
		if len(w.shapes) > 64 {
			clear(w.shapes)
		}
		w.Work += 200
		s = w.Found.Shape(w.room.Units, p)
		w.shapes[key] = s
	}
	return s
}

func placedKey(p survey.Placed) string {
	b := make([]byte, 0, 24+32*len(p.Openings))
	put := func(l length.Length) {
		for range 8 {
			b = append(b, byte(l))
			l >>= 8
		}
	}
	put(p.Left)
	put(p.Right)
	put(p.Head)
	for _, e := range p.Openings {
		put(e.Left)
		put(e.Bottom)
		put(e.Right)
		put(e.Top)
	}
	return string(b)
}

// rows of the bond over a shape and one beyond it each way.
func (w *Wall) rows(s Setting, shape survey.Shape) []bond.Row {
	return w.rowsOver(s, shape.Solid.Bounds())
}

func (w *Wall) rowsOver(s Setting, box plane.Rect) []bond.Row {
	if w.plumb {
		box = box.Transposed()
	}
	along, across := w.phases(s.Line, s.Edge)
	return w.bond.Rows(across, along, box.Bottom-w.bond.Across(), box.Top+w.bond.Across())
}

// Cut makes the pieces of the wall, without IDs, with the bare places.
func (w *Wall) Cut(s Setting) (survey.Shape, []piece.Piece, []piece.Gap) {
	shape := w.shape(s.Placed)
	pieces, bare := piece.Cut(shape, w.rows(s, shape), w.rule)
	return shape, pieces, bare
}

// hull is where a free opening may come to stand, in the frame of the rows.
func (w *Wall) hull(i int) plane.Rect {
	o := w.Found.Openings[i]
	r := plane.Rect{Left: o.Left.From, Right: o.Left.To + o.Width.To, Bottom: o.Bottom.From, Top: o.Bottom.To + o.Height.To}
	if w.plumb {
		return r.Transposed()
	}
	return r
}

// FixedEnds tells whether both ends of the wall stand where they were measured.
func (w *Wall) FixedEnds() bool { return !w.moves(survey.SideLeft) && !w.moves(survey.SideRight) }

// Apart tells whether every free opening stays farther than a tile from all else
// wherever it goes, and none is placed by a free end.
func (w *Wall) Apart() bool {
	if len(w.free) == 0 || !w.FixedEnds() {
		return false
	}
	if !w.apartKnown {
		w.apart, w.apartKnown = w.findApart(), true
	}
	return w.apart
}

func (w *Wall) findApart() bool {
	for k, i := range w.free {
		hull := w.hull(i)
		hull.Left -= w.rule.Along + w.room.Joint
		hull.Right += w.rule.Along + w.room.Joint
		hull.Bottom -= w.rule.Across + w.room.Joint
		hull.Top += w.rule.Across + w.room.Joint
		for n, o := range w.obstacles {
			if n != w.hullOf[k] && o.Left <= hull.Right && o.Right >= hull.Left && o.Bottom <= hull.Top && o.Top >= hull.Bottom {
				return false
			}
		}
	}
	return true
}
