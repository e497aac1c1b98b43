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
	"coursewright/layout/stages"
)

// order is a plan in the order in which it is set, that of stages.Order. Its
// law, with a test: every piece of the plan is in exactly one step, or stands
// already.
type order struct {
	plan   layout.Plan
	walls  []int // indices into the plan's walls, the one set first in front
	steps  []step
	at     map[string]int    // by piece id, the index of its step
	marks  map[string]string // by piece id
	stands map[string]bool   // by piece id, what the job says is set already
}

// step is what one sets in one go: whole tiles beside each other in a course,
// alike cuts beside each other, one cut piece, or a sheet of mosaic.
type step struct {
	stages.Step
	batch *cuts.Group // nil for whole tiles and sheets
	cut   *cuts.Cut   // the first piece by itself; nil for whole tiles and sheets
	of    int         // how many pieces the course has, or sheets
}

// orderOf makes the steps of a plan; s is its cut schedule.
func orderOf(plan layout.Plan, s cuts.Schedule) order {
	o := order{plan: plan, at: map[string]int{}, marks: map[string]string{}, stands: map[string]bool{}}
	batch, cut := map[string]*cuts.Group{}, map[string]*cuts.Cut{}
	for i := range s.Groups {
		for _, id := range s.Groups[i].Pieces {
			batch[id] = &s.Groups[i]
		}
	}
	for i := range s.Cuts {
		cut[s.Cuts[i].Piece] = &s.Cuts[i]
	}
	for i := range plan.Walls {
		o.walls = append(o.walls, i)
	}
	slices.SortStableFunc(o.walls, func(a, b int) int { return cmp.Compare(plan.Walls[a].Found.Order, plan.Walls[b].Found.Order) })
	of := make([]map[int]int, len(plan.Walls)) // by wall and course, how many pieces
	for i, w := range plan.Walls {
		of[i] = map[int]int{}
		for _, p := range w.Pieces {
			of[i][p.Course]++
			if w.Found.Stands(p.Row) {
				o.stands[p.ID] = true
			}
		}
	}
	for _, next := range stages.Order(stages.Input{Room: plan.Room, Walls: plan.Walls, Cuts: s}) {
		if next.Sheet != nil {
			o.add(step{Step: next, of: next.Beside})
			continue
		}
		first := next.Pieces[0]
		o.add(step{Step: next, batch: batch[first.ID], cut: cut[first.ID], of: o.ofThem(next, of)})
	}
	return o
}

// ofThem is how many pieces there are of those that a step is a part of: of a course
// of the wall, of a strip's or a face's, or of a wall's trim.
func (o *order) ofThem(s stages.Step, field []map[int]int) int {
	switch {
	case s.Trim != nil && s.On != nil:
		return len(s.On.Trim)
	case s.Trim != nil:
		return len(o.plan.Walls[s.Wall].Trim)
	case s.On == nil:
		return field[s.Wall][s.Pieces[0].Course]
	}
	n := 0
	for _, p := range s.On.Pieces {
		if p.Course == s.Pieces[0].Course {
			n++
		}
	}
	return n
}

func (o *order) add(s step) {
	name, by := o.plan.Walls[s.Wall].Found.Name, plane.Point{}
	switch {
	case s.Trim != nil && s.On != nil:
		name, by = name+" top, trim", s.On.Origin
	case s.Trim != nil:
		name += " trim"
	case s.On != nil && s.Part == stages.InStrip:
		name += " strip"
	case s.On != nil && s.Part == stages.OnTop:
		name, by = name+" top", s.On.Origin
	case s.On != nil:
		name, by = name+" inside, "+s.On.Is.String(), s.On.Origin
	}
	for _, p := range s.Pieces {
		o.at[p.ID] = len(o.steps)
		p.Face = moved(p.Face, by)
		o.marks[p.ID] = markOf(name, p)
	}
	o.steps = append(o.steps, s)
}

// moved is a face where it lies when it is folded out into its wall.
func moved(face plane.Region, by plane.Point) plane.Region {
	if by == (plane.Point{}) {
		return face
	}
	out := make(plane.Region, len(face))
	for i, ring := range face {
		out[i] = slices.Clone(ring)
		for k := range out[i] {
			out[i][k].X, out[i][k].Y = out[i][k].X+by.X, out[i][k].Y+by.Y
		}
	}
	return out
}

// offcut says of a piece that shares its tile with another what becomes of the rest: who sets the first
// of the two keeps it, whichever of them was cut the larger; nothing where it shares with none.
func (o order) offcut(pairs [][2]string, id string) string {
	for _, pair := range pairs {
		other := pair[0]
		if other == id {
			other = pair[1]
		} else if pair[1] != id {
			continue
		}
		switch at, known := o.at[other]; {
		case o.stands[other] || !known:
			return ""
		case at > o.at[id]:
			return "keep the rest of the tile: " + other + " comes out of it"
		}
		return "comes out of the rest of the tile of " + other
	}
	return ""
}

// row names what a step is a part of: the course of its wall, or what it is on.
func (s step) row() string {
	switch {
	case s.Trim != nil && s.On != nil:
		return s.On.Name() + ", trim"
	case s.Trim != nil:
		return "trim"
	case s.On != nil:
		return s.On.Name()
	case s.Sheet != nil:
		return sheetRow(s.Field, s.Sheet)
	}
	return strconv.Itoa(s.Pieces[0].Course)
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
