package count

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// profile is a wall with its marks placed as its rows see it: the boundary edges
// that cross rows, and the heights at which anything else is. It is in the frame
// of the rows.
type profile struct {
	w        *facts
	steep    []steep
	seen     []steep         // the same edges without what the next wall's tile hides, where it hides any
	heights  []length.Length // of all corners, ascending
	blocked  []bool          // by band between two heights: an edge lies slantwise in it
	leaning  []bool          // an edge that crosses it leans
	slanting []stretch
	space    *space
}

// steep is a boundary edge that crosses rows, from the lower end to the upper.
type steep struct {
	from, to plane.Point
	edge     piece.Edge // in the frame of the wall
	onLeft   bool       // it stands on the left of the tile
	meets    bool
	reach    length.Length // how wide a strip sealant takes along it
	slant    length.Length // how much farther off it still reaches a tile, because the edge slants
}

// fills is how far off sealant still reaches a tile.
func (s *steep) fills() length.Length { return max(0, s.reach+s.slant) }

// stretch is an interval across the rows.
type stretch struct{ from, to length.Length }

// profileOf reads the profile off a shape, in bands that end at some more heights too.
func profileOf(w *facts, shape survey.Shape, at ...length.Length) *profile {
	f := &profile{w: w, heights: at, space: newSpace()}
	f.steep = f.edges(w.frame.region(shape.Solid))
	if w.covered() {
		f.seen = f.edges(w.frame.region(shape.Visible))
	}
	return f.finish()
}

// finish notes the bands.
func (f *profile) finish() *profile {
	slices.SortFunc(f.heights, cmp.Compare)
	f.heights = slices.Compact(f.heights)
	f.blocked, f.leaning = make([]bool, len(f.heights)+1), make([]bool, len(f.heights)+1)
	for _, s := range f.slanting {
		f.mark(f.blocked, s)
	}
	for _, edges := range [...][]steep{f.steep, f.seen} {
		for i := range edges {
			if s := &edges[i]; s.from.X != s.to.X {
				f.mark(f.leaning, stretch{s.from.Y, s.to.Y})
			}
		}
	}
	return f
}

// mark marks the bands of a stretch.
func (f *profile) mark(bands []bool, s stretch) {
	from, _ := slices.BinarySearch(f.heights, s.from)
	for i := from; i < len(f.heights) && f.heights[i] < s.to; i++ {
		bands[i] = true
	}
}

// with puts free openings on a profile.
func (f *profile) with(p survey.Placed) *profile {
	g := *f
	more := 2 * len(g.w.free)
	g.steep, g.heights = roomFor(f.steep, more), roomFor(f.heights, more)
	if len(f.seen) > 0 {
		g.seen = roomFor(f.seen, more)
	}
	for _, i := range g.w.free {
		g.addOpening(i, p)
	}
	return g.finish()
}

// roomFor is a copy of a list with room for so many more.
func roomFor[T any](list []T, more int) []T { return append(make([]T, 0, len(list)+more), list...) }

// edges lists the edges of a region that cross rows, and notes the heights of all
// corners and where edges lie slantwise along rows.
func (f *profile) edges(region plane.Region) []steep {
	var out []steep
	for _, ring := range region {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			f.heights = append(f.heights, a.Y)
			if !plane.Steep(a, b) {
				if a.Y != b.Y {
					f.slanting = append(f.slanting, stretch{min(a.Y, b.Y), max(a.Y, b.Y)})
				}
				continue
			}
			facing := facingOf(a, b)
			e := f.w.frame.edge(piece.EdgeOf(a.On, facing))
			s := steep{from: a.Point, to: b.Point, edge: e, onLeft: facing == piece.OnLeft}
			if s.from.Y > s.to.Y {
				s.from, s.to = s.to, s.from
			}
			side := f.w.rule.Sides[a.On]
			s.meets, s.reach = side.Meets, f.w.room.Sealant-side.Gap
			s.slant = piece.Slant(f.w.room.Sealant, a.Point, b.Point)
			out = append(out, s)
		}
	}
	return out
}

// addOpening adds the two edges of a free opening that cross rows.
func (f *profile) addOpening(i int, p survey.Placed) {
	r := f.w.frame.rect(f.w.boxOf(i, f.w.found.Openings[i], p))
	side := survey.SideBase + plane.Side(len(f.w.found.Base)+i)
	f.heights = append(f.heights, r.Bottom, r.Top)
	edges := [...]steep{
		{from: plane.Point{X: r.Left, Y: r.Bottom}, to: plane.Point{X: r.Left, Y: r.Top}, edge: f.w.frame.edge(piece.EdgeOf(side, piece.OnRight))},
		{from: plane.Point{X: r.Right, Y: r.Bottom}, to: plane.Point{X: r.Right, Y: r.Top}, edge: f.w.frame.edge(piece.EdgeOf(side, piece.OnLeft)), onLeft: true},
	}
	f.steep = append(f.steep, edges[:]...)
	if len(f.seen) > 0 {
		f.seen = append(f.seen, edges[:]...)
	}
}

// band is the place of a row between two heights, or -1 where the row is not
// plain: a corner or a slanting edge is in it, or a pipe.
func (f *profile) band(low, high length.Length) int {
	i, _ := slices.BinarySearch(f.heights, low+1)
	i--
	if i < 0 || i+1 >= len(f.heights) || f.heights[i+1] < high || f.blocked[i] {
		return -1
	}
	if f.drilled(low, high) {
		return -1
	}
	return i
}

// drilled tells whether there is a pipe between two heights.
func (f *profile) drilled(low, high length.Length) bool {
	return slices.ContainsFunc(f.w.holes, func(r plane.Rect) bool { return r.Bottom < high && r.Top > low })
}

// row lists what crosses a plain row, from left to right in pairs: where tile may
// begin and where it ends.
func (f *profile) row(low, high length.Length, into []crossing) ([]crossing, bool) {
	if into == nil {
		into = make([]crossing, 0, 4)
	}
	for i := range f.steep {
		s := &f.steep[i]
		if s.from.Y <= low && s.to.Y >= high {
			c := crossing{steep: s, x0: plane.LevelAt(s.from, s.to, low), x1: plane.LevelAt(s.from, s.to, high)}
			if c.v0, c.v1 = c.x0, c.x1; len(f.seen) > 0 && !f.see(&c, low, high) {
				return into, false
			}
			into = append(into, c)
		}
	}
	slices.SortFunc(into, func(a, b crossing) int { return cmp.Compare(a.x0+a.x1, b.x0+b.x1) })
	return into, len(into)%2 == 0
}

// see finds where the edge of what is seen crosses the row.
func (f *profile) see(c *crossing, low, high length.Length) bool {
	for i := range f.seen {
		s := &f.seen[i]
		if s.edge == c.edge && s.from.Y <= low && s.to.Y >= high {
			c.v0, c.v1 = plane.LevelAt(s.from, s.to, low), plane.LevelAt(s.from, s.to, high)
			return true
		}
	}
	return false
}

// plainRow is what crosses a plain row, with its stubs.
type plainRow struct {
	band  int
	first length.Length
	in    []crossing
	found []stub
}

// space is where plainRows puts down what it hands over, for one call at a time.
type space struct {
	known []plainRow
	in    []crossing
	found []stub
}

func newSpace() *space {
	return &space{make([]plainRow, 0, 8), make([]crossing, 0, 64), make([]stub, 0, 64)}
}
