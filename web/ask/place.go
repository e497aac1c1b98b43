package ask

import (
	"slices"
	"strings"

	"coursewright/layout/survey"
	"coursewright/web/form"
)

// WallName is a wall as it is asked about: wall back, and not wall window wall.
func WallName(name string) string {
	if strings.Contains(strings.ToLower(name), "wall") {
		return name
	}
	return "wall " + name
}

// corner tells whether a wall meets a corner at an end, inside or outside, and there
// the neighbour of the list.
func (r *room) corner(wall int, left bool) bool {
	w := r.job.Walls[wall]
	if left {
		return w.Left.Meets != ""
	}
	return w.Right.Meets != ""
}

// turns tells whether a wall turns an outside corner at an end.
func (r *room) turns(wall int, left bool) bool {
	e := r.job.Walls[wall].Right
	if left {
		e = r.job.Walls[wall].Left
	}
	return e.Meets == string(survey.OutsideCorner)
}

// place names the end of a wall: the corner by its two walls, as the sheets do by their letters, or the front.
func (r *room) place(wall int, left bool) string {
	name, end := r.job.Walls[wall].Name, map[bool]string{true: "left end", false: "right end"}[left]
	if form.Between(r.job.Walls[wall]) {
		return end + " of " + name
	}
	if !r.corner(wall, left) {
		if r.round() == 1 {
			return end
		}
		return "front of " + WallName(name)
	}
	before, after, found := r.walls(wall, left)
	switch {
	case !found:
		return map[bool]string{true: "left corner", false: "right corner"}[left] + " of " + WallName(name)
	case r.turns(wall, left):
		return string(survey.OutsideCorner) + " of " + before + " and " + after
	}
	return "corner of " + before + " and " + after
}

// walls names the two walls of a corner from left to right; none where the wall it meets is not in the list.
func (r *room) walls(wall int, left bool) (before, after string, found bool) {
	at, n := wall, r.round()
	if left {
		at--
	}
	if at < 0 || at == n-1 {
		if may, does := form.Closes(r.job); !may || !does {
			return "", "", false
		}
	}
	return r.job.Walls[(at+n)%n].Name, r.job.Walls[(at+1)%n].Name, true
}

// round counts the walls that go round the room.
func (r *room) round() (n int) {
	for _, w := range r.job.Walls {
		if !form.Between(w) {
			n++
		}
	}
	return n
}

// closing is the last wall that goes round, where the first meets it in an inside corner.
func (r *room) closing() (wall int, closes bool) {
	for i, w := range r.job.Walls {
		if !form.Between(w) {
			wall = i
		}
	}
	if may, does := form.Closes(r.job); !may || !does || r.turns(0, true) || r.turns(wall, false) {
		return 0, false
	}
	return wall, true
}

// kinds tells whether the walls stand on more than one kind of base, legs aside: then it is
// said which is meant.
func (r *room) kinds() bool {
	first := ""
	for _, w := range r.job.Walls {
		for j, s := range w.Base {
			if main(w, j) && first != "" && s.Meets != first {
				return true
			}
			if main(w, j) {
				first = s.Meets
			}
		}
	}
	return false
}

// besideSeat tells whether a reading of a stretch of base stands where a seat begins or ends.
func besideSeat(w survey.Wall, j, k int) bool {
	before, after := k == 0 && j > 0, k == len(w.Base[j].Readings)-1 && j+1 < len(w.Base)
	return before && isSeat(w.Base[j]) != isSeat(w.Base[j-1]) || after && isSeat(w.Base[j]) != isSeat(w.Base[j+1])
}

// seatAt names the seat that begins or ends at a reading of a stretch of base: of two on a wall by its side.
func seatAt(w survey.Wall, j, k int) string {
	seat := isSeat(w.Base[j])
	if !seat && k == 0 {
		j--
	} else if !seat {
		j++
	}
	before, after := slices.ContainsFunc(w.Base[:j], isSeat), slices.ContainsFunc(w.Base[min(j+1, len(w.Base)):], isSeat)
	switch {
	case before:
		return "right seat"
	case after:
		return "left seat"
	}
	return "seat"
}

func isSeat(s survey.Segment) bool { return s.Meets == string(survey.Seat) }
