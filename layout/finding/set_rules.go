package finding

import (
	"fmt"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// setRules judge the courses that stand already against the line the rest is
// set to. A joint may close to the least joint, or open by as much.
func setRules() []Rule {
	const source = practice + "; the least joint: ANSI A108.02 4.3 (joint widths), as quoted by TileLetter; commonly cited so, look it up"
	return []Rule{
		{
			Name: SetCoursesThatTheJointsCannotTakeUp, Grade: Fault, judge: setOff(false),
			Why:    "What the joints cannot take up stays in every course up to the top, and shows there as a taper.",
			Do:     "Take the course up again while the mortar lets go of it, or widen the joint; measure again before going on.",
			Source: source,
		},
		{
			Name: SetCourseOutOfLevel, Grade: Advice, judge: setOff(true),
			Why:    "Spread over several joints the difference is not seen; left in one it is, and courses set to the tile below carry it on.",
			Do:     "Set the next courses to marks of the story pole at both ends, not to the tile below, and let the joints open or close a little.",
			Source: source,
		},
		{
			Name: SetCoursesOfTwoWallsApart, Grade: Warning, judge: wallsApart,
			Why:    "The courses of all walls share one line and meet in the corners; there the step is seen.",
			Do:     "If one of the two is still soft, set it again; else bring both to the line a little in each joint before they meet at eye height.",
			Source: source,
		},
		{
			Name: NumberOfASetCourse, Grade: Warning, judge: setNumber,
			Why:    "Which pieces stand already is known by the height; the number only says whether the two of you mean the same course.",
			Do:     "Count again from the lowest course of the room, or measure the height again.",
			Source: practice,
		},
		{
			Name: FreeMarkWhereTileStands, Grade: Warning, judge: freeMark,
			Why:    "The set-out may still move it, and the tile that stands beside it cannot follow.",
			Do:     "Type where it was built, as a measured place.",
			Source: practice,
		},
		{
			Name: PinGivenUpToSetTile, Grade: Advice, judge: pinPassed,
			Why:    "Tile that stands does not move; what was pinned before stays in the job and counts again when nothing is said to stand.",
			Do:     "Nothing, if the difference is what you found on the wall.",
			Source: practice,
		},
	}
}

// spare is how much one joint may open or close.
func (in Input) spare() length.Length { return in.Room.Joint - in.Limits.LeastJoint }

// top is the top edge of a row, by the course line.
func (in Input) top(row int) length.Length {
	return in.Setout.Line + length.Length(row)*(in.Room.Tile.Height+in.Room.Joint) + in.Room.Tile.Height
}

// number gives the course of a row, and false where the room has no piece.
func (in Input) number(row int) (course int, ok bool) {
	for _, w := range in.Walls {
		for _, p := range w.Pieces {
			return row + p.Course - p.Row, true
		}
	}
	return 0, false
}

// setOff speaks of each wall whose set course is off the line by more than
// half a step of the tape's finest reading: where the joints above can take
// that up, or where they cannot.
func setOff(can bool) func(Input) []place {
	return func(in Input) []place {
		var all []place
		for i, w := range in.Walls {
			s := w.Found.Set
			if s == nil {
				continue
			}
			left, right := s.Left-in.top(s.Row), s.Right-in.top(s.Row)
			worst := max(left.Abs(), right.Abs())
			if 2*worst < in.Room.Units.FineStep() {
				continue
			}
			if n, enough := in.courses(w, worst); enough == can {
				at := plane.Point{X: w.Found.Width, Y: s.Right}
				if left.Abs() > right.Abs() {
					at = plane.Point{Y: s.Left}
				}
				all = append(all, onPoint(i, at, in.offText(w, left, right)+in.takeUp(w, n, can)))
			}
		}
		return all
	}
}

// courses is how many joints over the set course it takes to bring it back to
// the line, and whether there are as many.
func (in Input) courses(w plan.Wall, off length.Length) (n int, enough bool) {
	spare := in.spare()
	if spare <= 0 {
		return 0, false
	}
	n = int((off + spare - 1) / spare)
	return n, n <= in.above(w)
}

// above is how many courses are still to be set over the set one.
func (in Input) above(w plan.Wall) int {
	above := 0
	for _, p := range w.Pieces {
		above = max(above, p.Row-w.Found.Set.Row)
	}
	return above
}

func (in Input) offText(w plan.Wall, left, right length.Length) string {
	s := w.Found.Set
	text := fmt.Sprintf("Course %d of %s is level", s.Course, w.Found.Name)
	switch low := s.Low(); {
	case low > 0:
		text = fmt.Sprintf("Course %d of %s stands %s lower at its right end than at its left", s.Course, w.Found.Name, in.close(low))
	case low < 0:
		text = fmt.Sprintf("Course %d of %s stands %s higher at its right end than at its left", s.Course, w.Found.Name, in.close(-low))
	}
	return text + fmt.Sprintf("; against the line that the rest is set to it is %s at the left and %s at the right.", in.side(left), in.side(right))
}

// side says how far a place is over or under where it should be.
func (in Input) side(off length.Length) string {
	switch {
	case 2*off.Abs() < in.Room.Units.FineStep():
		return "on it"
	case off < 0:
		return in.close(-off) + " low"
	}
	return in.close(off) + " high"
}

// takeUp says in which courses the joints take it up.
func (in Input) takeUp(w plan.Wall, n int, can bool) string {
	spare, set := in.spare(), w.Found.Set.Course
	switch {
	case spare <= 0:
		return fmt.Sprintf(" A joint of %s has nothing to spare over the least joint of %s.", in.close(in.Room.Joint), in.close(in.Limits.LeastJoint))
	case !can:
		return fmt.Sprintf(" With %s to spare in a joint that takes %d courses; %d are still to be set.", in.close(spare), n, in.above(w))
	case n == 1:
		return fmt.Sprintf(" The joint under course %d can take that up: it has %s to spare.", set+1, in.close(spare))
	}
	return fmt.Sprintf(" With %s to spare in each, the joints under courses %d to %d can take that up.", in.close(spare), set+1, set+n)
}

// wallsApart names the two walls whose set courses lie farthest apart, where
// one joint on each cannot bring them together.
func wallsApart(in Input) []place {
	low, high := -1, -1
	off := func(i int) length.Length {
		s := in.Walls[i].Found.Set
		return (s.Left + s.Right).Half() - in.top(s.Row)
	}
	for i, w := range in.Walls {
		if w.Found.Set == nil {
			continue
		}
		if low < 0 || off(i) < off(low) {
			low = i
		}
		if high < 0 || off(i) > off(high) {
			high = i
		}
	}
	if low < 0 || off(high)-off(low) <= 2*max(0, in.spare()) {
		return nil
	}
	a, b := in.Walls[high].Found, in.Walls[low].Found
	return []place{onPoint(high, plane.Point{X: a.Width.Half(), Y: (a.Set.Left + a.Set.Right).Half()},
		fmt.Sprintf("By their middles the set courses of %s stand %s higher than those of %s: more than one joint of %s on each wall can take up. "+
			"The rest is set to a line between them.", a.Name, in.close(off(high)-off(low)), b.Name, in.close(in.Room.Joint)))}
}

func setNumber(in Input) []place {
	var all []place
	for i, w := range in.Walls {
		s := w.Found.Set
		if s == nil {
			continue
		}
		if course, ok := in.number(s.Row); ok && course != s.Course {
			all = append(all, onPoint(i, plane.Point{X: w.Found.Width.Half(), Y: s.Left},
				fmt.Sprintf("The course of %s typed as %d is course %d by its height.", w.Found.Name, s.Course, course)))
		}
	}
	return all
}

// freeMark speaks of free ends beside set tile and of free edges of openings
// that set tile reaches.
func freeMark(in Input) []place {
	var all []place
	for i, w := range in.Walls {
		s := w.Found.Set
		if s == nil {
			continue
		}
		top := max(s.Left, s.Right)
		for k, o := range w.Found.Openings {
			free := o.Left.Free() || o.Width.Free() || o.Bottom.Free() || o.Height.Free()
			if e := edges(w, k); o.Kind != survey.Pipe && free && e.Bottom < top {
				all = append(all, onPoint(i, plane.Point{X: e.Left, Y: e.Bottom},
					fmt.Sprintf("The %s of %s is still free to move, and tile stands beside it.", o.Called(), w.Found.Name)))
			}
		}
		for _, end := range []struct {
			name string
			mark survey.MarkName
			free bool
			x    length.Length
		}{
			{"left", survey.EndLeft, w.Found.Left.Stops.Free(), w.Start.Placed.Left}, {"right", survey.EndRight, w.Found.Right.Stops.Free(), w.Start.Placed.Right},
		} {
			if _, pinned := w.Found.MarkPins[end.mark]; end.free && !pinned {
				all = append(all, onPoint(i, plane.Point{X: end.x, Y: s.Left},
					fmt.Sprintf("The %s end of %s is still free to move, and tile stands there.", end.name, w.Found.Name)))
			}
		}
	}
	return all
}

func pinPassed(in Input) []place {
	var all []place
	if p := in.Room.Passed; p != nil && length.Mod(*p-in.Setout.Line, in.Room.Tile.Height+in.Room.Joint) != 0 {
		all = append(all, room(fmt.Sprintf("The course line is pinned at %s; the tile that stands puts it at %s, and that counts.",
			in.tape(*p), in.tape(in.Setout.Line)))...)
	}
	for i, w := range in.Walls {
		if w.Found.Set != nil && w.Found.Set.Passed != nil {
			all = append(all, place{wall: i, text: fmt.Sprintf("The start of %s is pinned, and tile stands: the start as set counts.", w.Found.Name)})
		}
	}
	return all
}
