package bathroom

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"slices"
	"strconv"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
)

// order is a plan in the order in which it is set: wall after wall, each course
// by course from the bottom and from left to right. Its law, with a test: every
// piece of the plan is in exactly one step, or stands already.
type order struct {
	plan   layout.Plan
	walls  []int // indices into the plan's walls, the one set first in front
	steps  []step
	at     map[string]int    // by piece id, the index of its step
	marks  map[string]string // by piece id
	stands map[string]bool   // by piece id, what the job says is set already
}

// step is what one sets in one go: whole tiles beside each other in a course,
// alike cuts beside each other, or one cut piece.
type step struct {
	wall   int
	pieces []piece.Piece
	batch  *cuts.Group // nil for whole tiles
	first  int         // place of its first piece in the course, from 1
	of     int         // how many pieces the course has
}

// orderOf makes the steps of a plan; s is its cut schedule.
func orderOf(plan layout.Plan, s cuts.Schedule) order {
	o := order{plan: plan, at: map[string]int{}, marks: map[string]string{}, stands: map[string]bool{}}
	batch := map[string]*cuts.Group{}
	for i := range s.Groups {
		for _, id := range s.Groups[i].Pieces {
			batch[id] = &s.Groups[i]
		}
	}
	for i := range plan.Walls {
		o.walls = append(o.walls, i)
	}
	slices.SortStableFunc(o.walls, func(a, b int) int { return cmp.Compare(plan.Walls[a].Found.Order, plan.Walls[b].Found.Order) })
	for _, wall := range o.walls {
		o.wall(wall, batch)
	}
	return o
}

// wall adds the steps of one wall, course by course. What the job says stands
// already is no step.
func (o *order) wall(wall int, batch map[string]*cuts.Group) {
	w := o.plan.Walls[wall]
	var rest []piece.Piece
	for _, p := range w.Pieces {
		if w.Found.Stands(p.Row) {
			o.stands[p.ID] = true
		} else {
			rest = append(rest, p)
		}
	}
	for len(rest) > 0 {
		n := alike(rest, func(p piece.Piece) any { return p.Course })
		course := rest[:n]
		for from := 0; from < n; {
			run := alike(course[from:], func(p piece.Piece) any { return batch[p.ID] })
			o.add(step{wall: wall, pieces: course[from : from+run], batch: batch[course[from].ID], first: from + 1, of: n})
			from += run
		}
		rest = rest[n:]
	}
}

// alike tells how many pieces at the beginning have the same key.
func alike(pieces []piece.Piece, key func(piece.Piece) any) int {
	n := 1
	for n < len(pieces) && key(pieces[n]) == key(pieces[0]) {
		n++
	}
	return n
}

func (o *order) add(s step) {
	name := o.plan.Walls[s.wall].Found.Name
	for _, p := range s.pieces {
		o.at[p.ID] = len(o.steps)
		o.marks[p.ID] = markOf(name, p)
	}
	o.steps = append(o.steps, s)
}

// markOf says what is set when a piece is: the wall by its name, and the very
// outline of the piece on it, to the unit. Two plans that agree in these agree
// in the mark, whatever else of the job has changed and whatever the piece is
// called in each.
func markOf(wall string, p piece.Piece) string {
	text := strconv.AppendQuote(nil, wall)
	for _, ring := range outline(p.Face) {
		text = append(text, '|')
		for _, c := range ring {
			text = strconv.AppendInt(append(text, ' '), int64(c.X), 10)
			text = strconv.AppendInt(append(text, ','), int64(c.Y), 10)
		}
	}
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:12])
}

// outline gives the rings of a face without corners in mid-edge, each from its
// lowest, then leftmost corner, and in the order of those corners.
func outline(face plane.Region) plane.Region {
	byPlace := func(a, b plane.Corner) int { return cmp.Or(cmp.Compare(a.Y, b.Y), cmp.Compare(a.X, b.X)) }
	var out plane.Region
	for _, ring := range face.Straight() {
		if len(ring) == 0 {
			continue
		}
		first := slices.Index(ring, slices.MinFunc(ring, byPlace))
		out = append(out, append(slices.Clone(ring[first:]), ring[:first]...))
	}
	slices.SortFunc(out, func(a, b plane.Ring) int { return byPlace(a[0], b[0]) })
	return out
}
