package survey

import (
	"fmt"
	"slices"

	"coursewright/layout/length"
)

// AsSet is where the courses of a wall that stand already really are, kept as
// typed. The top edge is measured, because it can be reached and because the
// next course stands on it.
type AsSet struct {
	Course string   `json:"course"` // the highest that stands, counted from the lowest of the room
	Left   string   `json:"left"`   // its top edge over the level line, at the wall's left end
	Right  string   `json:"right"`  // the same at the right end
	Start  SetStart `json:"start,omitzero"`
}

// SetStart is a place on that course by which its joints can be found again.
type SetStart struct {
	Is string `json:"is"` // one of Starts
	At string `json:"at"` // from the wall's left end
}

// Starts are the places by which a set course may be found again: the middle
// of a joint or of a tile, or an edge of a tile.
func Starts() []string { return []string{"joint", "tile", "left edge", "right edge"} }

// Standing is AsSet read and checked.
type Standing struct {
	Course      int           // as typed
	Row         int           // the same counted from the course line
	Left, Right length.Length // the top edge at the two ends, as measured
	At          length.Length // where on it the place stands by which its joints are found
	Passed      *StartPin     // a pinned start that gave way, or nil
}

// Stands tells whether a row of tile of the wall, counted from the course line,
// is set already.
func (w WallFound) Stands(row int) bool { return w.Set != nil && row <= w.Set.Row }

// Stands tells whether tile stands on any wall, so that the course line is given.
func (r Room) Stands() bool {
	return slices.ContainsFunc(r.Walls, func(w WallFound) bool { return w.Set != nil })
}

// Low is how far the right end is under the left one, negative where it is over it.
func (s Standing) Low() length.Length { return s.Left - s.Right }

// stand reads where tile stands and sets the room out from there: the mean
// height of the set courses becomes the course line, and each start as set that
// wall's pin. What was pinned before gives way: tile that stands does not move.
func (r *resolver) stand(typed []Wall, room *Room) {
	if len(typed) != len(room.Walls) {
		return
	}
	before := len(r.faults)
	var set []int
	for i, w := range typed {
		if w.Set != nil && !room.Bond.Coursed() {
			r.faults.add(path("walls").at(i).dot("set"), "courses that stand, of a "+string(room.Bond.Kind), "nothing here: only the courses of stack and running bond can be followed")
			return
		}
		if w.Set != nil {
			set = append(set, i)
			r.standing(path("walls").at(i).dot("set"), *w.Set, room, &room.Walls[i])
		}
	}
	if len(set) == 0 || len(r.faults) > before || room.Tile.Height == 0 || room.Tile.Width == 0 {
		return
	}
	if room.Bond.Num > 0 && room.Bond.Hand == Free {
		r.faults.add("bond.hand", "nothing", "left or right: the way the courses that stand step")
		return
	}
	if len(room.Joints) > 1 {
		r.faults.add("joint", "a range, where courses stand", "the joint between the courses that stand, as one length in quotes")
		return
	}
	r.together(set, room)
}

// standing reads one wall. The pin is that of the set course itself.
func (r *resolver) standing(p path, s AsSet, room *Room, w *WallFound) {
	if room.Bond.Plumb {
		r.faults.add(p, "a course that stands", "nothing here: the tile stands in columns; pin the course line and the starts instead")
		return
	}
	const most = 10_000
	found := Standing{Passed: w.Pin}
	if n := r.whole(value{p.dot("course"), s.Course}, 1, most, "courses, 1 for the lowest of the room,"); n != nil {
		found.Course = *n
	} else {
		r.faults.add(p.dot("course"), "nothing", "the number of the highest course that stands, such as 1")
	}
	before := len(r.faults)
	found.Left = r.length(value{p.dot("left"), s.Left}, upright())
	found.Right = r.length(value{p.dot("right"), s.Right}, upright())
	if off := found.Low().Abs(); len(r.faults) == before && room.Tile.Height > 0 && 2*off > room.Tile.Height {
		want := "the height of the top edge of the same course as at the left, " + bounds{found.Left - room.Tile.Height.Half(), found.Left + room.Tile.Height.Half()}.text(r.units)
		if turned := (found.Left + found.Right).Abs(); 2*turned <= room.Tile.Height {
			want += "; if it is under the level line, both ends have a minus"
		}
		r.faults.add(p.dot("right"), quote(s.Right)+", which is "+off.Format(r.units, 0)+" off the left end", want)
	}
	w.Set, w.Pin = &found, r.setStart(p.dot("start"), s.Start, *room, w.Width)
	found.At = w.Pin.X
}

// setStart reads where a joint or a tile of the set course stands.
func (r *resolver) setStart(p path, s SetStart, room Room, width length.Length) *StartPin {
	is := r.choice(value{p.dot("is"), s.Is}, Starts()...)
	across := bounds{0, width}
	if width == 0 {
		across.high = widestWall
	}
	at, tile := r.length(value{p.dot("at"), s.At}, across), room.Tile.Width
	switch is {
	case "tile":
		return &StartPin{X: at, Is: OnTile}
	case "left edge":
		return &StartPin{X: at, Is: OnEdge}
	case "right edge":
		return &StartPin{X: at - tile, Is: OnEdge}
	}
	return &StartPin{X: at}
}

// together brings the set courses of all walls onto one course line: that of
// the first wall's set course is course 0, and their mean height its place.
func (r *resolver) together(set []int, room *Room) {
	pitch, first := room.Tile.Height+room.Joint, room.Walls[set[0]].Set
	heights := make([]length.Length, len(set)) // of the bottom edge of course 0, by each wall
	var sum length.Length
	for k, i := range set {
		s := room.Walls[i].Set
		s.Row = s.Course - first.Course
		heights[k] = (s.Left + s.Right).Half() - room.Tile.Height - length.Length(s.Row)*pitch
		sum += heights[k]
		if off := heights[k] - heights[0]; 2*off.Abs() > pitch {
			r.apart(path("walls").at(i).dot("set.course"), s.Course, off, pitch, room.Walls[set[0]])
		}
	}
	line := nearest(sum, len(set))
	room.Passed, room.Line = room.Line, &line
	along := room.Tile.Width + room.Joint
	if room.Passed != nil { // starts beyond strips were told by the course on that line
		off := room.Bond.Shift(int(length.DivFloor(2*(line-*room.Passed)+pitch, 2*pitch)), room.Bond.Hand, along)
		for _, i := range set {
			for name := range room.Walls[i].Beyond {
				room.Walls[i].Beyond[name] += off
			}
		}
	}
	for _, i := range set {
		w := &room.Walls[i]
		if w.Pin.X -= room.Bond.Shift(w.Set.Row, room.Bond.Hand, along); w.Pin.X < 0 {
			w.Pin.X += along
		}
	}
}

// apart refuses a course that cannot be the one it is said to be, because it
// stands more than half a course off the same course of another wall.
func (r *resolver) apart(p path, course int, off, pitch length.Length, other WallFound) {
	way := "over"
	if off < 0 {
		way = "under"
	}
	count := length.DivFloor(2*off+pitch, 2*pitch) // to the nearest course
	want := fmt.Sprintf("the number of a course of which this is the top edge, such as %d; or measure both walls from the level line again",
		int64(course)+count)
	r.faults.add(p, fmt.Sprintf("“%d”, which by its heights is %s %s the same course of %s", course,
		off.Abs().Format(r.units, r.units.FineStep()), way, clip(other.Name)), want)
}
