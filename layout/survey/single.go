package survey

import (
	"slices"

	"coursewright/layout/length"
)

// Laid are the words of the job file for how a wall is laid.
func Laid() []string { return []string{"bond", "single"} }

// singles settles which walls are laid in single tiles: the end panel of a half wall, the
// cheek of boxing, any wall that is no wider than a tile. Where the job does not say, such
// a wall is where the room's bond would put a joint into it: the smaller of the two pieces
// beside the joint is then under half a tile and narrower than the one tile that would
// stand there, and on no course line does the order of merit prefer it. A wall whose start
// is pinned or stands keeps its bond, unless the set-out that is held has it in single tiles.
func (r *resolver) singles(job Job, room *Room) {
	for i := range room.Walls {
		w, at := &room.Walls[i], path("walls").at(i).dot("laid")
		if i >= len(job.Walls) {
			return
		}
		typed := ""
		if job.Walls[i].Laid != "" {
			typed = r.choice(value{at, job.Walls[i].Laid}, Laid()...)
		}
		if job.Pins.Walls[w.Name].Single {
			r.faults.add(path("pins.walls").dot(w.Name).dot("single"), "true", "nothing here: how a wall is laid is said by its field laid")
		}
		if len(r.faults) > 0 || typed == "bond" {
			continue
		}
		why := room.notSingle(*w)
		switch {
		case typed == "single" && why != "":
			r.faults.add(at, "“single” on "+why, "bond or nothing")
		case typed == "single":
			if p := job.Pins.Walls[w.Name]; p.Edge != "" || p.Joint != "" || p.Tile != "" {
				r.faults.add(path("pins.walls").dot(w.Name), "a start, on a wall that is laid in single tiles", "no start: each tile is cut to the width of the wall")
				continue
			}
			w.Single, w.Pin = true, nil
		case why == "" && w.Pin == nil && !w.freeEnds():
			w.Single = job.Held != nil && job.Held.Walls[w.Name].Single || room.parts(*w)
		}
	}
}

// notSingle says why a wall cannot be laid in single tiles; empty where it can.
func (r Room) notSingle(w WallFound) string {
	switch {
	case !r.Bond.Coursed() || r.Bond.Plumb:
		return "a wall without level courses"
	case len(r.Bands) > 0:
		return "a wall of a room with bands"
	case w.Set != nil:
		return "a wall on which tile stands"
	case w.Head.Top != nil:
		return "a wall with a top of its own"
	case slices.ContainsFunc(w.Openings, func(o OpeningFound) bool { return o.Kind != Pipe }):
		return "a wall with an opening or a strip"
	case w.anchor(true) < 0 && w.anchor(false) < 0:
		return "a wall without an end that stops where it was measured"
	case r.mostOf(w) > r.Tile.Width:
		return "a wall with " + r.mostOf(w).Format(r.Units, r.Units.FineStep()) + " of tile, which is wider than one"
	}
	return ""
}

// MayBeSingle tells whether single tiles are a choice on a wall: it is no wider than a tile,
// and the courses of the bond shift.
func (r Room) MayBeSingle(w WallFound) bool { return r.Bond.Num != 0 && r.notSingle(w) == "" }

// mostOf is how wide the tile of a wall may be where it is widest, with any joint of the room.
func (r Room) mostOf(w WallFound) length.Length {
	most := length.Length(0)
	for _, joint := range r.Joints {
		most = max(most, r.Jointed(joint).Walls[r.indexOf(w)].most())
	}
	return most
}

func (r Room) indexOf(w WallFound) int {
	return slices.IndexFunc(r.Walls, func(o WallFound) bool { return o.Name == w.Name })
}

// most is how wide its tile may be where it is widest.
func (w WallFound) most() length.Length {
	left, right := w.Left.Stops.From, w.Right.Stops.To
	if w.Left.Meets {
		left = w.Left.Gap + w.Left.Behind - most(negative(w.Left.Lean))
	}
	if w.Right.Meets {
		right = w.Width - w.Right.Gap - w.Right.Behind + most(w.Right.Lean)
	}
	return right - left
}

// parts tells whether the room's bond puts a joint into a wall in some course wherever it
// starts: the wall is wider than what lies clear between neighbouring joints of all its courses.
func (r Room) parts(w WallFound) bool { return r.Bond.Num != 0 && w.least() > r.clear() }

// clear is the widest that lies clear between neighbouring joints of all courses of the bond.
func (r Room) clear() length.Length {
	pitch := r.Tile.Width + r.Joint
	at := []length.Length{pitch}
	for k := range int(r.Bond.Den) {
		at = append(at, r.Bond.Shift(k, Left, pitch))
	}
	slices.Sort(at)
	clear := length.Length(0)
	for i := 1; i < len(at); i++ {
		clear = max(clear, at[i]-at[i-1]-r.Joint)
	}
	return clear
}

// least is how wide its tile is where it is narrowest.
func (w WallFound) least() length.Length {
	left, right := w.Left.Stops.To, w.Right.Stops.From
	if w.Left.Meets {
		left = w.Left.Gap + w.Left.Behind + most(w.Left.Lean)
	}
	if w.Right.Meets {
		right = w.Width - w.Right.Gap - w.Right.Behind - most(negative(w.Right.Lean))
	}
	return right - left
}

// anchor says how much an end wants the factory edge of single tiles; less than zero is an
// end that cannot have it, because it meets a corner or is free. A cut edge goes under the
// tile of the wall round the corner, or is mitred there, or is covered by trim, before a
// factory edge does; what is seen wants one.
func (w WallFound) anchor(right bool) int {
	e := w.Left
	if right {
		e = w.Right
	}
	covered := e.Trim != nil || e.Finish == Trim || e.Finish == Casing
	switch {
	case e.Meets || e.Stops.Free():
		return -1
	case e.Outside != nil && (e.Outside.How == Mitre || !e.Outside.Laps):
		return 0
	case covered || e.Outside != nil && e.Outside.Strip != nil:
		return 1
	}
	return 2
}

// freeEnds tells whether an end of the wall may stand elsewhere.
func (w WallFound) freeEnds() bool {
	return !w.Left.Meets && w.Left.Stops.Free() || !w.Right.Meets && w.Right.Stops.Free()
}

// Singly is the room as a wall in single tiles sees it, and that wall: no course is
// shifted against another, and each tile begins at one end. Of equal ends that is the left.
func (r Room) Singly(w WallFound) (Room, WallFound) {
	r.Bond.Num, r.Bond.Den = 0, 1
	edge := w.Left.Stops.From
	if w.anchor(true) > w.anchor(false) {
		edge = w.Right.Stops.From - r.Tile.Width
	}
	w.Pin = &StartPin{X: edge, Is: OnEdge}
	return r, w
}
