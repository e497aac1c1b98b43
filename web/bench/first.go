package bench

import (
	"slices"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
	"coursewright/web/page"
)

// corner is a place where the first course begins or ends on a wall.
type corner struct {
	Name   string
	Wall   int
	X      length.Length
	Rim    length.Length // of the base, over the level line
	Height length.Length // of the first course there, as its first or last tile is cut
	Whole  bool
}

// firstCourse gives the height of the first course at each corner of the base.
func (b Bench) firstCourse() Answer {
	a := Answer{ID: "first", Asked: "First course over this " + b.base(), Decided: true, To: page.JobPath(b.ID, "#drawing")}
	if !b.Plan.Room.Bond.Coursed() {
		return b.alongBase(a)
	}
	a.ends = b.baseEnds()
	for _, c := range b.named(a.ends) {
		a.Figures = append(a.Figures, page.Figure{Value: b.courseText(c), Note: c.Name})
	}
	if len(a.Figures) > 4 && !slices.ContainsFunc(a.Figures, func(f page.Figure) bool { return f.Value != a.Figures[0].Value }) {
		a.Figures = []page.Figure{{Value: a.Figures[0].Value, Note: "at every corner"}}
	}
	if len(a.Figures) > mostCorners {
		if a.Figures = b.firstByWall(a.ends); len(a.Figures) > mostHeights && len(a.ends) <= 2*mostWalls {
			a.Figures = nil
		}
	}
	in := stages.Input{Room: b.Plan.Room, Walls: b.Plan.Walls, Cuts: b.Schedule}
	for _, w := range b.Plan.Walls {
		for _, p := range w.Pieces {
			if in.FirstCourse(w, p) {
				a.Pieces = append(a.Pieces, p.ID)
			}
		}
	}
	return a
}

// mostCorners are told apart in the answer. Of more it says on which walls the first course is how
// high; where that are more than mostHeights, each of up to mostWalls has its two heights under its letter.
const (
	mostCorners = 5
	mostHeights = 4
	mostWalls   = 4
)

// firstByWall gives the heights of the first course, each once, with the walls that have it
// at both ends or at one.
func (b Bench) firstByWall(all []corner) (out []page.Figure) {
	var heights []string
	places := map[string][]string{} // by height
	add := func(height, place string) {
		if places[height] == nil {
			heights = append(heights, height)
		}
		if !slices.Contains(places[height], place) {
			places[height] = append(places[height], place)
		}
	}
	for i := 0; i+1 < len(all); i += 2 {
		letter, left, right := b.Plan.Walls[all[i].Wall].Found.Letter, b.courseText(all[i]), b.courseText(all[i+1])
		if left == right {
			add(left, letter)
			continue
		}
		add(left, letter+" left")
		add(right, letter+" right")
	}
	for _, height := range heights {
		out = append(out, page.Figure{Value: height, Note: strings.Join(places[height], ", ")})
	}
	return out
}

// courseText is how high the first course stands at a corner, as the sheets have it.
func (b Bench) courseText(c corner) string {
	if c.Whole {
		return "whole"
	}
	return strings.TrimSuffix(drawing.CourseHeight(b.Plan.Room.Units, c.Height), `"`)
}

// alongBase tells of a pattern how wide the least piece along the base is, wall by
// wall: it has no first course.
func (b Bench) alongBase(a Answer) Answer {
	a.Asked = "Least cut over the " + b.base()
	for _, w := range b.Plan.Walls {
		for _, r := range w.Runs {
			if len(r.Edges) == 1 && strings.HasPrefix(r.Edges[0], "base ") && !r.Low {
				a.Figures = append(a.Figures, page.Figure{Name: w.Found.Letter, Value: b.bare(r.Least)})
				a.Pieces = append(a.Pieces, r.Piece)
			}
		}
	}
	if len(a.Figures) == 0 {
		a.Figures = []page.Figure{{Value: "whole", Note: "no tile is cut there"}}
	}
	return a
}

// base is what the walls stand on: the first that is no floor, else the floor.
func (b Bench) base() string {
	for _, w := range b.Plan.Walls {
		for _, s := range w.Found.Base {
			if s.Meets != survey.Floor {
				return string(s.Meets)
			}
		}
	}
	return string(survey.Floor)
}

// baseEnds are both ends of each stretch of the base on each wall. The first course is the
// lowest whose top edge stands over the base everywhere.
func (b Bench) baseEnds() []corner {
	var out []corner
	var bases []survey.SegmentFound
	top, first := length.Length(0), true
	for i, w := range b.Plan.Walls {
		for _, s := range w.Found.Base {
			if string(s.Meets) != b.base() || len(s.Readings) == 0 {
				continue
			}
			bases = append(bases, s)
			for _, r := range []survey.Reading{s.Readings[0], s.Readings[len(s.Readings)-1]} {
				out = append(out, corner{Wall: i, X: r.At, Rim: r.Value + s.Gap})
			}
			for _, r := range s.Readings {
				if y := r.Value + s.Gap; first || y > top {
					top, first = y, false
				}
			}
		}
	}
	tile, pitch := b.Plan.Room.Tile.Height, b.Plan.Room.Tile.Height+b.Plan.Room.Joint
	if pitch <= 0 || first || !b.Plan.Room.Bond.Coursed() {
		return nil
	}
	line := b.Plan.Setout.Line + tile
	edge := line + pitch*length.Length(length.DivFloor(top-line, pitch)+1)
	at := func(c corner) length.Length { return min(edge-c.Rim, tile) }
	for i := 0; i < len(out); i += 2 { // both ends of a stretch
		l, r := drawing.FootCuts(b.Plan, b.Plan.Walls[out[i].Wall], bases[i/2], at(out[i]), at(out[i+1]))
		out[i].Height, out[i].Whole = l, l >= tile
		out[i+1].Height, out[i+1].Whole = r, r >= tile
	}
	return out
}

// named names the corners and lays those of one corner, inside or outside, together, but
// where the first course is not as high on both its walls.
func (b Bench) named(all []corner) []corner {
	var out []corner
	for i, c := range all {
		w := b.Plan.Walls[c.Wall].Found
		meets := i%2 == 0 && (w.Left.Meets || w.Left.Outside != nil) || i%2 == 1 && (w.Right.Meets || w.Right.Outside != nil)
		switch {
		case !meets:
			c.Name = map[bool]string{true: "front", false: "end"}[len(b.Plan.Walls) > 1]
		case i%2 == 0 && c.Wall > 0 && len(out) > 0 && b.courseText(out[len(out)-1]) == b.courseText(c) && out[len(out)-1].Wall == c.Wall-1:
			continue
		default:
			c.Name = b.endName(c.Wall, i%2 == 0)
			if n := len(out) - 1; n >= 0 && i%2 == 0 && out[n].Wall == c.Wall-1 && out[n].Name == c.Name { // which differ
				out[n].Name, c.Name = b.Plan.Walls[c.Wall-1].Found.Letter+" right", w.Letter+" left"
			}
		}
		out = append(out, c)
	}
	return out
}

// endName is what an end of a wall is called: by the corner there, or where it meets no other wall of the list by itself.
func (b Bench) endName(wall int, left bool) string {
	if name := plan.CornerName(b.Plan.Walls, wall, left); name != "" {
		return name
	}
	return b.Plan.Walls[wall].Found.Letter + map[bool]string{true: " left", false: " right"}[left]
}
