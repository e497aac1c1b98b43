// Package count tells what a set-out of one wall gives to the order of merit:
// exactly, by cutting the wall, or as what it cannot beat, from the pieces that
// arithmetic alone is sure of.
//
// A Wall is made of parts: Starts lists where its bond may begin, Places where its
// free marks may stand, Marks judges where tile edges stand to ends and openings,
// and Bounds says what no set-out can beat. All of them read the same facts.
//
// Laws, each with a test:
//  1. Wall.Count is read from the pieces that the cutter makes, and from where
//     tile edges stand: nothing is counted in two ways.
//  2. What Starts.Groups and Bounds (OfBoth, Plainly, Beyond) give does not come after
//     what Wall.Count gives, whatever the marks that are still free, but for the rounding of law 3.
//  3. Rows that are read off by arithmetic give what cutting them gives, but for what
//     is bare along a raked edge, which is rounded by as much as one unit of height
//     is along it, and for sizes along one that a free opening comes to, which bends it
//     by one unit.
package count

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Wall is one wall, ready to be counted at many set-outs. It is not safe for
// several goroutines at once.
type Wall struct {
	Found  survey.WallFound // with pinned marks fixed
	Starts *Starts
	Places *Places
	Marks  *Marks
	Bounds *Bounds

	of     wallOf
	facts  *facts
	cutter *cutter
	shapes table[string, survey.Shape] // the last few that were cut whole
	meter  *meter
}

// mostShapes bounds how many of them are kept.
const mostShapes = 65

// Setting is one set-out of a wall.
type Setting struct {
	Line, Edge length.Length // bottom and left edge of a tile of course 0
	Placed     survey.Placed
}

// NewWall prepares a wall of a room whose bond has the hand given.
func NewWall(room *survey.Room, found survey.WallFound, hand survey.Hand) *Wall {
	return newWall(wallOf{basis(room), found, hand})
}

func newWall(of wallOf) *Wall {
	w, m := newFacts(&of.room, of.found, of.hand), &meter{}
	marks, boundary := &Marks{w}, boundaryOf(w)
	cutter := newCutter(w, marks, m)
	places := newPlaces(w, marks, boundary, m)
	zones := zonesOf(w, m)
	zones.narrow = narrowsOf(zones)
	bounds := newBounds(cutter, places, zones)
	return &Wall{of: of, Found: w.found, Starts: newStarts(bounds), Places: places, Marks: marks, Bounds: bounds,
		facts: w, cutter: cutter, shapes: newTable[string, survey.Shape](mostShapes, m), meter: m}
}

// Outer is where measured marks stand, and free ends and heads where they leave most wall.
func (w *Wall) Outer() survey.Placed { return w.facts.outer }

// Free lists the openings with a mark that is still free.
func (w *Wall) Free() []int { return w.facts.free }

// Box holds the wall's tile with every free end where it leaves most.
func (w *Wall) Box() plane.Rect { return w.facts.box() }

// FixedEnds tells whether both ends of the wall stand where they were measured.
func (w *Wall) FixedEnds() bool { return w.facts.fixedEnds() }

// Work is how much was counted so far, and Spend adds to it what a search does itself.
func (w *Wall) Work() int { return w.meter.work }

// Spend adds to the work.
func (w *Wall) Spend(n int) { w.meter.add(n) }

// Count reads the merit of a set-out from the pieces of the wall. Rows in which
// nothing is but their ends are read off by arithmetic, which makes the same
// pieces; the others are cut, each once for all set-outs that cut it alike, and the
// tiles round a free opening that stands clear once for every way it lies among them.
func (w *Wall) Count(s Setting) Counted {
	box := w.cutter.ground(s.Placed).shape.Region.Bounds()
	if w.Places.Clear(s.Placed) {
		w.meter.add(4)
		return w.cutter.cleared(s).counted(s, box)
	}
	return w.cutter.all(s).counted(s, box)
}

// Cut makes the pieces of the wall, without IDs, with the bare places.
func (w *Wall) Cut(s Setting) (survey.Shape, []piece.Piece, []piece.Gap) {
	shape := w.shape(s.Placed)
	pieces, bare := piece.Cut(shape, w.facts.rows(s, shape.Solid.Bounds()), w.facts.rule)
	return shape, pieces, bare
}

// shape is the wall's shape with its marks placed. The last few are kept.
func (w *Wall) shape(p survey.Placed) survey.Shape {
	return w.shapes.of(placedKey(p), func() survey.Shape {
		w.meter.add(200)
		return w.facts.found.Shape(w.facts.room.Units, p)
	})
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

// ShiftsExactly tells whether courses that are level stand to those above them as these do to the
// next, round and round: no shift was rounded.
func (w *Wall) ShiftsExactly() bool { return !w.facts.frame.plumb && shiftsExactly(w.facts) }

// Rise is after how much of a course line a wall gives the same again: a pitch, or with columns whose start is
// free as little as it takes until another of them stands where the first did, as the others then do.
func (w *Wall) Rise() length.Length {
	rise := w.facts.room.Tile.Height + w.facts.room.Joint
	along := w.facts.rule.Across + w.facts.room.Joint
	if !w.facts.frame.plumb || w.Found.Pin != nil || length.Mod(along, w.facts.room.Tape) != 0 || !shiftsExactly(w.facts) {
		return rise
	}
	for _, shift := range w.facts.shifts {
		if up := length.Mod(shift, rise); up > 0 {
			rise = min(rise, up)
		}
	}
	return rise
}

// From is a set-out as it is seen from another course line, a whole number of courses off.
func (w *Wall) From(s Setting, line length.Length) Counted {
	from, period := w.Starts.period()
	n := length.DivFloor(line-s.Line, w.facts.rule.Across+w.facts.room.Joint)
	shift := w.facts.shifts[length.Mod(length.Length(n), length.Length(len(w.facts.shifts)))]
	s.Line, s.Edge = line, from+length.Mod(s.Edge+shift-from, period)
	return w.Count(s)
}
