package drawing

import (
	"fmt"
	"slices"
	"strings"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Handle is something a person may drag. X and Y are its figures in wall units,
// At is its place on paper.
type Handle struct {
	ID       string // "course", "start", a mark as the plan file names it, or what form.Apply places
	Wall     int
	Axis     string // "x", "y" or "xy"
	X, Y     length.Length
	At       Point
	Text     string // what it is, for a person
	Stands   string // its figures as a tape reads
	Measured bool   // it was measured: dragging it changes the survey, where others are pinned
	Pinned   bool
	Snaps    []Snap // the joint lines it goes to
}

// hands hangs handles on one wall.
type hands struct {
	*board
	f frame
	w layout.Wall
}

// handles lists what a person may drag on a wall: the course line, the start,
// free marks and pipes; on a wall of its own also what was measured.
func (b *board) handles(f frame, w layout.Wall, full bool) {
	h := hands{b, f, w}
	h.decided(full)
	for i, o := range w.Found.Openings {
		switch e := placed(w, i); {
		case o.Kind == "pipe":
			h.measured("pipe "+o.Name, "xy", "pipe "+o.Name, o.At, o.Up, f.at(o.At, o.Up))
		case o.Strip != nil:
			h.strip(w, i, full)
		default:
			h.opening(o, e)
			if o.Kind == survey.SoapDish {
				continue // where it was measured it is moved as a fixture
			}
			if full && (o.Inside == nil || o.Inside.AsTyped) {
				h.corners(o, e)
			}
		}
	}
	if full {
		h.readings()
		h.parts()
	}
	h.clearStart()
}

// clearStart hangs the start higher up its plumb line where another handle would cover it, as
// a reading in the middle of a rim does, or a spout.
func (h hands) clearStart() {
	var start *Handle
	var others []Point
	for i := range h.Handles {
		switch one := &h.Handles[i]; {
		case one.Wall != h.f.wall:
		case one.ID == "start":
			start = one
		default:
			others = append(others, one.At)
		}
	}
	if start == nil {
		return
	}
	top := h.f.at(0, h.w.Shape.Region.Bounds().Top).Y
	for at := start.At; at.Y >= top; at.Y -= gripStep {
		if !slices.ContainsFunc(others, func(p Point) bool { return near(p, at, handlesApart) }) {
			start.At = at
			return
		}
	}
}

// near tells whether two places are closer than so far, along and up.
func near(a, b Point, far Micron) bool {
	return max(a.X-b.X, b.X-a.X) < far && max(a.Y-b.Y, b.Y-a.Y) < far
}

// handlesApart keeps two handles beside each other from lying over each other.
const handlesApart = 24 * px

// decided are the unknowns of the set-out; where tile stands, line and start are
// none. The course line is held beside the wall, where its flag is, so that it
// keeps clear of the readings at the corner.
func (h hands) decided(full bool) {
	r, line := h.w.Shape.Region.Bounds(), h.line()
	beside := h.f.at(r.Left, line)
	if full {
		all := extents(h.w)
		beside = h.besideWall(all.Left, all.Right, line)
	}
	if !h.plan.Room.Stands() && !h.besideLine() {
		h.add(Handle{ID: "course", Axis: "y", Text: "course line", X: r.Left, Y: line, At: beside, Pinned: h.plan.Setout.Pinned})
	}
	if h.w.Found.Set == nil && !h.w.Found.Single {
		h.add(Handle{ID: "start", Axis: "x", Text: "start", X: h.w.Start.X, Y: line, At: h.f.at(h.w.Start.X, min(line, r.Top)), Pinned: h.w.Start.Pinned})
	}
	if e := h.w.Found.Left; !e.Meets && e.Stops.Free() {
		h.mark("end left", Begins, "x", "left end of the tile", h.w.Start.Placed.Left, (r.Bottom+r.Top)/2)
	}
	if e := h.w.Found.Right; !e.Meets && e.Stops.Free() {
		h.mark("end right", Ends, "x", "right end of the tile", h.w.Start.Placed.Right, (r.Bottom+r.Top)/2)
	}
	if e := h.w.Found.Head; !e.Meets && e.Stops.Free() {
		head := h.w.Start.Placed.Head
		h.edge("head", Ends, "y", "head of the tile", plane.Point{X: r.Left, Y: head}, plane.Point{X: r.Right, Y: head})
	}
}

// line is where course line and start hang on a wall: at the course line, or, where the
// tile begins over a seat a course or more higher, all along it or where one of the two
// would hang, at the lowest course over that in which the joints stand as they do at the
// line; where it ends under the line, as on the front of a bench, at the highest such course on it.
// Pinned there, nothing else moves.
func (h hands) line() length.Length {
	room, line := h.plan.Room, h.plan.Setout.Line
	pitch := (room.Tile.Height + room.Joint) * length.Length(max(1, room.Bond.Den))
	box := h.w.Shape.Region.Bounds()
	if !room.Bond.Coursed() || room.Bond.Plumb || len(room.Bands) > 0 {
		return line
	}
	if over := max(box.Bottom, baseAt(h.w, box.Left), baseAt(h.w, h.w.Start.X)) - line; over > room.Tile.Height+room.Joint {
		return line + (over+pitch-1)/pitch*pitch
	}
	if under := line - box.Top; under > 0 && line-(under+pitch-1)/pitch*pitch >= box.Bottom {
		return line - (under+pitch-1)/pitch*pitch
	}
	return line
}

// besideLine tells whether a wall stops so far under the course line that no course of it stands as those at the line do:
// the front of a bench in tall tile. The line is moved on the other walls then.
func (h hands) besideLine() bool {
	return len(h.plan.Walls) > 1 && h.line() > h.w.Shape.Region.Bounds().Top
}

// gripStep is how far apart places for a handle are tried, of which it takes the
// first that keeps clear of texts.
const gripStep = 4 * px

// clear is where along a line from one place to another a handle meets no text: in
// the middle, or as near to it as may be. It tells whether there is such a place.
func (h hands) clear(axis string, from, to plane.Point) (plane.Point, bool) {
	long := max(to.X-from.X, to.Y-from.Y)
	step := max(1, long*length.Length(gripStep)/max(1, length.Length(h.f.scale.On(long))))
	middle := plane.Point{X: (from.X + to.X) / 2, Y: (from.Y + to.Y) / 2}
	for _, tight := range []Micron{0, 500} { // between two rows of sizes the arrows just go
		for off := length.Length(0); off < long/2; off += step {
			for _, away := range []length.Length{-off, off} {
				at := middle
				if axis == "y" {
					at.X += away
				} else {
					at.Y += away
				}
				if h.vacant(gripRoom(axis, h.f.at(at.X, at.Y)).grown(-tight)) {
					return at, true
				}
			}
		}
	}
	return middle, false
}

// gripRoom is what the arrows of a handle take along its axis.
func gripRoom(axis string, at Point) box {
	across, along := Micron(1500), Micron(3200)
	if axis == "x" {
		across, along = along, across
	}
	return box{Point{at.X - across, at.Y - along}, Point{at.X + across, at.Y + along}}.grown(clearance)
}

// edge hangs the handle of a mark on the line that the mark moves, from one place to
// another.
func (h hands) edge(id string, side Side, axis, text string, from, to plane.Point) {
	at, clear := h.clear(axis, from, to)
	h.mark(id, side, axis, text, at.X, at.Y)
	if !clear {
		h.hangUnder(&h.Handles[len(h.Handles)-1], from, to)
	}
}

// hangUnder hangs the handle of a level mark just under its line, where texts stand on all of that.
func (h hands) hangUnder(one *Handle, from, to plane.Point) {
	if one.Axis != "y" {
		return
	}
	left, right := h.f.at(from.X, from.Y), h.f.at(to.X, to.Y)
	for off := Micron(0); off < (right.X-left.X)/2; off += gripStep {
		for _, away := range []Micron{-off, off} {
			at := Point{(left.X+right.X)/2 + away, left.Y + 3200 + clearance}
			if h.vacant(gripRoom("y", at)) {
				one.At = at
				return
			}
		}
	}
}

// opening are the edges of a niche or window that the set-out places.
func (h hands) opening(o survey.OpeningFound, e survey.Edges) {
	id, called := o.Key(), o.Called()
	if o.Left.Free() {
		h.edge(id+" left", Ends, "x", "left edge of "+called, plane.Point{X: e.Left, Y: e.Bottom}, plane.Point{X: e.Left, Y: e.Top})
	}
	if o.Left.Free() || o.Width.Free() {
		h.edge(id+" right", Begins, "x", "right edge of "+called, plane.Point{X: e.Right, Y: e.Bottom}, plane.Point{X: e.Right, Y: e.Top})
	}
	if o.Bottom.Free() {
		h.edge(id+" bottom", Ends, "y", "bottom edge of "+called, plane.Point{X: e.Left, Y: e.Bottom}, plane.Point{X: e.Right, Y: e.Bottom})
	}
	if o.Bottom.Free() || o.Height.Free() {
		h.edge(id+" top", Begins, "y", "top edge of "+called, plane.Point{X: e.Left, Y: e.Top}, plane.Point{X: e.Right, Y: e.Top})
	}
}

// corners are the two corners by which a measured niche or window is moved and
// sized, each along what of it was measured. A doorway stands on the floor: it is moved along
// the wall by its left edge, and its size is its width and where its top is.
func (h hands) corners(o survey.OpeningFound, e survey.Edges) {
	id, called := o.Key(), o.Called()
	if o.Down {
		h.measured("move "+id, "x", "place of "+called, e.Left, e.Bottom, h.f.at(e.Left, (e.Bottom+e.Top)/2), Snap{"x", Ends, 0})
		h.measured("size "+id, "xy", "width and top of "+called, e.Right-e.Left, e.Top, h.f.at(e.Right, e.Top), Snap{"x", Begins, e.Left}, Snap{"y", Begins, 0})
		return
	}
	if axis := measuredAxis(o.Left, o.Bottom); axis != "" {
		h.measured("move "+id, axis, "place of "+called, e.Left, e.Bottom, h.f.at(e.Left, e.Bottom), along(axis, Snap{"x", Ends, 0}, Snap{"y", Ends, 0})...)
	}
	if axis := measuredAxis(o.Width, o.Height); axis != "" {
		h.measured("size "+id, axis, "size of "+called, e.Right-e.Left, e.Top-e.Bottom, h.f.at(e.Right, e.Top),
			along(axis, Snap{"x", Begins, e.Left}, Snap{"y", Begins, e.Bottom})...)
	}
}

func measuredAxis(x, y survey.Span) string {
	axis := ""
	if !x.Free() {
		axis = "x"
	}
	if !y.Free() {
		axis += "y"
	}
	return axis
}

// readings are the points of the level readings. Those at the ends of a
// stretch keep their place along the wall.
func (h hands) readings() {
	for i, s := range h.w.Found.Base {
		h.points(fmt.Sprintf("base %d", i+1), string(s.Meets), s.Readings)
	}
	if h.w.Found.Head.Meets {
		h.points("head", "ceiling", h.w.Found.Head.Readings)
	}
}

func (h hands) points(id, meets string, readings []survey.Reading) {
	for k, r := range readings {
		axis := "xy"
		if k == 0 || k == len(readings)-1 {
			axis = "y"
		}
		h.measured(fmt.Sprintf("%s reading %d", id, k+1), axis, fmt.Sprintf("%s, reading %d", meets, k+1), r.At, r.Value, h.f.at(r.At, r.Value))
	}
}

func (h hands) add(x Handle) {
	x.Wall, x.Stands = h.f.wall, h.stands(x)
	h.Handles = append(h.Handles, x)
}

// stands says the figures of a handle that may change: 34" across, 14 1/2" down.
func (h hands) stands(x Handle) string {
	var said []string
	if strings.Contains(x.Axis, "x") {
		said = append(said, x.X.Tape(h.plan.Room.Units)+" across")
	}
	if way := map[bool]string{true: " down", false: " up"}[x.Y < 0]; strings.Contains(x.Axis, "y") {
		said = append(said, x.Y.Abs().Tape(h.plan.Room.Units)+way)
	}
	return strings.Join(said, ", ")
}

func (h hands) mark(id string, side Side, axis, text string, x, y length.Length) {
	_, pinned := h.w.Found.MarkPins[survey.MarkName(id)]
	h.add(Handle{ID: id, Axis: axis, Text: text, X: x, Y: y, At: h.f.at(x, y), Pinned: pinned, Snaps: []Snap{{Axis: axis, Side: side}}})
}

func (h hands) measured(id, axis, text string, x, y length.Length, at Point, snaps ...Snap) {
	h.add(Handle{ID: id, Axis: axis, Text: text, X: x, Y: y, At: at, Measured: true, Snaps: snaps})
}
