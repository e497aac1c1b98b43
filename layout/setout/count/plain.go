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
	w        *Wall
	steep    []steep
	seen     []steep         // the same edges without what the next wall's tile hides, where it hides any
	heights  []length.Length // of all corners, ascending
	blocked  []bool          // by band between two heights: an edge lies slantwise in it
	slanting []stretch
}

// steep is a boundary edge that crosses rows, from the lower end to the upper.
type steep struct {
	from, to plane.Point
	edge     piece.Edge // in the frame of the wall
	onLeft   bool       // it stands on the left of the tile
	meets    bool
	reach    length.Length
}

// stretch is an interval across the rows.
type stretch struct{ from, to length.Length }

// with puts free openings on a profile.
func (f *profile) with(p survey.Placed) *profile {
	g := *f
	g.steep = slices.Clone(f.steep)
	g.heights = slices.Clone(f.heights)
	if len(f.seen) > 0 {
		g.seen = slices.Clone(f.seen)
	}
	for _, i := range g.w.free {
		g.addOpening(i, p)
	}
	return g.finish()
}

// profileOf reads the profile off a shape.
func (w *Wall) profileOf(shape survey.Shape) *profile {
	solid := w.turned(shape.Solid)
	f := &profile{w: w}
	f.steep = f.edges(solid)
	if w.covered() {
		f.seen = f.edges(w.turned(shape.Visible))
	}
	return f.finish()
}

// finish notes the bands.
func (f *profile) finish() *profile {
	slices.SortFunc(f.heights, cmp.Compare)
	f.heights = slices.Compact(f.heights)
	f.blocked = make([]bool, len(f.heights)+1)
	for _, s := range f.slanting {
		from, _ := slices.BinarySearch(f.heights, s.from)
		for i := from; i < len(f.heights) && f.heights[i] < s.to; i++ {
			f.blocked[i] = true
		}
	}
	return f
}

// covered tells whether the tile of a next wall hides some of this one's.
func (w *Wall) covered() bool { return w.Found.Left.Cover > 0 || w.Found.Right.Cover > 0 }

// turned is a region in the frame of the rows.
func (w *Wall) turned(r plane.Region) plane.Region {
	if w.plumb {
		return r.Transposed()
	}
	return r
}

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
			e := f.w.wallEdge(piece.EdgeOf(a.On, facing))
			s := steep{from: a.Point, to: b.Point, edge: e, onLeft: facing == piece.OnLeft}
			if s.from.Y > s.to.Y {
				s.from, s.to = s.to, s.from
			}
			side := f.w.rule.Sides[a.On]
			s.meets, s.reach = side.Meets, f.w.room.Sealant-side.Gap
			out = append(out, s)
		}
	}
	return out
}

// addOpening adds the two edges of a free opening that cross rows.
func (f *profile) addOpening(i int, p survey.Placed) {
	r := f.w.boxOf(i, f.w.Found.Openings[i], p)
	if f.w.plumb {
		r = r.Transposed()
	}
	side := survey.SideBase + plane.Side(len(f.w.Found.Base)+i)
	f.heights = append(f.heights, r.Bottom, r.Top)
	edges := []steep{
		{from: plane.Point{X: r.Left, Y: r.Bottom}, to: plane.Point{X: r.Left, Y: r.Top}, edge: f.w.wallEdge(piece.EdgeOf(side, piece.OnRight))},
		{from: plane.Point{X: r.Right, Y: r.Bottom}, to: plane.Point{X: r.Right, Y: r.Top}, edge: f.w.wallEdge(piece.EdgeOf(side, piece.OnLeft)), onLeft: true},
	}
	f.steep = append(f.steep, edges...)
	if len(f.seen) > 0 {
		f.seen = append(f.seen, edges...)
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
	for _, r := range f.w.holes {
		if r.Bottom < high && r.Top > low {
			return -1
		}
	}
	return i
}

// crossing is a boundary edge where a row crosses it.
type crossing struct {
	x0, x1 length.Length // at the row's lower and upper edge
	v0, v1 length.Length // the same of what is seen
	*steep
}

// row lists what crosses a plain row, from left to right in pairs: where tile may
// begin and where it ends.
func (f *profile) row(low, high length.Length, into []crossing) ([]crossing, bool) {
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

// fall is where an edge falls among the tiles of a row.
type fall struct {
	tile int64 // the tile that it cuts, or the next one inside
	cut  bool
}

// falls tells where a crossing falls; it is false where it is not in one tile from
// the lower edge of the row to the upper.
func (c crossing) falls(first, tile, pitch length.Length) (fall, bool) {
	a, b := length.Mod(c.x0-first, pitch), length.Mod(c.x1-first, pitch)
	n, m := length.DivFloor(c.x0-first, pitch), length.DivFloor(c.x1-first, pitch)
	inA, inB := a > 0 && a < tile, b > 0 && b < tile
	switch {
	case n != m || inA != inB || !inA && (a == 0) != (b == 0):
		return fall{}, false
	case inA:
		return fall{n, true}, true
	case c.onLeft && a == 0:
		return fall{n, false}, true
	case c.onLeft:
		return fall{n + 1, false}, true
	case a == 0:
		return fall{n - 1, false}, true
	}
	return fall{n, false}, true
}

// stub is one cut piece of a plain row: where it begins and ends at the narrowest,
// and at the widest.
type stub struct {
	cuts        [2]*crossing // on its left and on its right, or nil
	wide        length.Length
	left, right length.Length // of its widest extent
	whole       bool
}

// stubs lists the tiles of a plain row that its crossings cut, and the whole ones
// beside them; middle is how many more whole tiles there are. It is false where a
// row is not plain after all.
func (w *Wall) stubs(in []crossing, first length.Length, each func(stub)) bool {
	tile, pitch := w.rule.Along, w.rule.Along+w.room.Joint
	for i := 0; i+1 < len(in); i += 2 {
		a, b := &in[i], &in[i+1]
		if !a.onLeft || b.onLeft {
			return false
		}
		p, ok := a.falls(first, tile, pitch)
		q, ok2 := b.falls(first, tile, pitch)
		if !ok || !ok2 {
			return false
		}
		for _, n := range ends(p.tile, q.tile) {
			s := stub{left: first + length.Length(n)*pitch, whole: true}
			s.right = s.left + tile
			// At the lower edge of the row and at the upper, of what is seen.
			from0, from1, to0, to1 := s.left, s.left, s.right, s.right
			if n == p.tile && p.cut {
				s.cuts[0], s.whole = a, false
				s.left = min(a.x0, a.x1)
			}
			if n == q.tile && q.cut {
				s.cuts[1], s.whole = b, false
				s.right = max(b.x0, b.x1)
			}
			from0, from1, to0, to1 = max(from0, a.v0), max(from1, a.v1), min(to0, b.v0), min(to1, b.v1)
			s.wide = max(0, min(to0-from0, to1-from1))
			each(s)
		}
	}
	return true
}

// ends are the first and the last of the tiles from n to m.
func ends(n, m int64) []int64 {
	switch {
	case m < n:
		return nil
	case m == n:
		return []int64{n}
	}
	return []int64{n, m}
}

// sealed tells whether a stub is only a strip for sealant.
func (s stub) sealed() bool {
	for _, c := range s.cuts {
		if c != nil && c.meets && c.reach > 0 && s.right-s.left <= c.reach {
			return true
		}
	}
	return false
}

// effort is what the cuts of a stub cost.
func (s stub) effort(along, across length.Length) int {
	sum := 0
	straight, taper := false, false
	for _, c := range s.cuts {
		if c != nil {
			straight = straight || c.x0 == c.x1
			taper = taper || c.x0 != c.x1
		}
	}
	if straight && along >= across {
		sum++
	} else if straight {
		sum += 2
	}
	if taper {
		sum += 2
	}
	return sum
}

// at is a plumb edge that a row crosses at x.
func at(x length.Length, s *steep) crossing { return crossing{x, x, x, x, s} }
