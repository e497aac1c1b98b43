package count

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// grid is where tiles begin in one direction of a wall: at first plus any whole
// number of pitches, moved by the shift of each class of the bond.
type grid struct {
	first, tile, pitch length.Length
	shifts             []length.Length
}

// level and upright are where tiles begin along the wall and up it.
func (w *Wall) level(edge length.Length) grid {
	g := grid{edge, w.room.Tile.Width, w.room.Tile.Width + w.room.Joint, w.shifts}
	if w.plumb {
		g.shifts = g.shifts[:1]
	}
	return g
}

func (w *Wall) upright(line length.Length) grid {
	g := grid{line, w.room.Tile.Height, w.room.Tile.Height + w.room.Joint, w.shifts}
	if !w.plumb {
		g.shifts = g.shifts[:1]
	}
	return g
}

// begins tells whether a tile of some class begins at x, and ends whether one ends there.
func (g grid) begins(x length.Length) bool {
	for _, s := range g.shifts {
		if length.Mod(x-g.first-s, g.pitch) == 0 {
			return true
		}
	}
	return false
}

func (g grid) ends(x length.Length) bool { return g.begins(x - g.tile) }

// into is how far x lies in the tile of a class that it falls in, at most the tile.
func (g grid) into(x length.Length, class int) length.Length {
	return min(g.tile, length.Mod(x-g.first-g.shifts[class], g.pitch))
}

// off is 0 where the two edges of an opening both lie on joint lines, or leave
// equal cuts of at least half a tile in every class, else 1.
func (g grid) off(low, high length.Length) int {
	if g.ends(low) && g.begins(high) || g.equal(low, high) {
		return 0
	}
	return 1
}

func (g grid) equal(low, high length.Length) bool {
	n := len(g.shifts)
	before, after := make([]length.Length, 0, 8), make([]length.Length, 0, 8)
	for c := range n {
		before = append(before, g.before(low, c))
		after = append(after, g.after(high, c))
	}
	slices.Sort(before)
	slices.Sort(after)
	return 2*before[0] >= g.tile && slices.Equal(before, after)
}

// before is what the tile that x falls in leaves before it: the whole tile where
// x falls in a joint. after is what it leaves after it.
func (g grid) before(x length.Length, class int) length.Length {
	if into := g.into(x, class); into > 0 {
		return into
	}
	return g.tile
}

func (g grid) after(x length.Length, class int) length.Length {
	if into := g.into(x, class); into < g.tile {
		return g.tile - into
	}
	return g.tile
}

// addMarks adds the terms that are read from where tile edges stand. Box holds
// the tile field.
func (w *Wall) addMarks(m *merit.Merit, s Setting, box plane.Rect) {
	x, y := w.level(s.Edge), w.upright(s.Line)
	m.Exposed = w.exposed(x, s.Placed)
	for i, o := range w.typed.Openings {
		if o.Kind == survey.Pipe {
			continue
		}
		e := s.Placed.Openings[i]
		n, built := off(x, o.Left.Free() || o.Width.Free(), e.Left, e.Right)
		m.Openings, m.Built = m.Openings+n, m.Built+built
		n, built = off(y, o.Bottom.Free() || o.Height.Free(), e.Bottom, e.Top)
		m.Openings, m.Built = m.Openings+n, m.Built+built
	}
	m.Near = w.mark(w.near(s.Placed, box))
	m.Find = w.find(x, box)
}

// off is what one direction of an opening adds: to free openings off the lines
// where one of its marks is free, else edge by edge to built ones.
func off(g grid, free bool, low, high length.Length) (n, built int) {
	if free {
		return g.off(low, high), 0
	}
	if !g.ends(low) {
		built++
	}
	if !g.begins(high) {
		built++
	}
	return 0, built
}

// exposed counts the ends that stop, on a wall whose other end meets a corner,
// at which no class has a tile edge.
func (w *Wall) exposed(x grid, p survey.Placed) int {
	l, r := w.Found.Left, w.Found.Right
	switch {
	case !l.Meets && r.Meets && !x.begins(p.Left):
		return 1
	case l.Meets && !r.Meets && !x.ends(p.Right):
		return 1
	}
	return 0
}

// near is how far the middles of free openings are from the places wished for:
// where nothing is said, a niche's from the middle of the tile field.
func (w *Wall) near(p survey.Placed, box plane.Rect) length.Length {
	var twice length.Length
	for i, o := range w.typed.Openings {
		if o.Kind == survey.Pipe {
			continue
		}
		e := p.Openings[i]
		if o.Left.Free() || o.Width.Free() {
			if wish, is := w.wishX(o, box); is {
				twice += (e.Left + e.Right - wish).Abs()
			}
		}
		if o.Near.Y != nil && (o.Bottom.Free() || o.Height.Free()) {
			twice += (e.Bottom + e.Top - 2**o.Near.Y).Abs()
		}
	}
	return twice.Half()
}

// wishX is twice the place wished for the middle of an opening along the wall.
func (w *Wall) wishX(o survey.OpeningFound, box plane.Rect) (twice length.Length, is bool) {
	switch {
	case o.Near.X != nil:
		return 2 * *o.Near.X, true
	case o.Kind == survey.Niche:
		return wished(box.Left+box.Right, o.Left, o.Width), true
	}
	return 0, false
}

// wished moves twice a wish to where the range lets the middle be.
func wished(twice length.Length, low, size survey.Span) length.Length {
	return min(max(twice, 2*low.From+size.From), 2*low.To+size.To)
}

// find tells how hard the start is to find again: 0 with a tile or a joint on the
// middle of the tile field, to a unit, 1 with a full tile at an end of it, 2
// anywhere else.
func (w *Wall) find(x grid, box plane.Rect) int {
	twice := box.Left + box.Right
	for _, s := range x.shifts {
		from := twice - 2*(x.first+s)
		for _, on := range [...]length.Length{x.tile, -w.room.Joint} {
			if length.Mod(from-on+1, 2*x.pitch) <= 2 {
				return 0
			}
		}
	}
	if x.begins(box.Left) || x.ends(box.Right) {
		return 1
	}
	return 2
}

// Classic is a start people know by name.
type Classic struct {
	Name string
	Edge length.Length // left edge of a tile of course 0
}

// Classics are the starts of the trade: a joint, a tile or, in running bond, a
// quarter of a tile on the middle of the tile field, or a full tile at an end.
// At a leaning end the full tile stands where the wall is widest.
func (w *Wall) Classics(p survey.Placed) []Classic {
	box := w.Bounds()
	if !w.Found.Left.Meets {
		box.Left = p.Left
	}
	if !w.Found.Right.Meets {
		box.Right = p.Right
	}
	tile, joint := w.room.Tile.Width, w.room.Joint
	centre := (box.Left + box.Right).Half()
	out := []Classic{
		{"joint on centre", centre + joint.Half()},
		{"tile on centre", centre - tile.Half()},
	}
	if !w.plumb && len(w.shifts) > 1 {
		out = append(out, Classic{"quarter on centre", centre + joint.Half() - (tile + joint).Half().Half()})
	}
	return append(out, Classic{"full tile at left", box.Left}, Classic{"full tile at right", box.Right - tile})
}

// everyClassic lists the classic starts with every free end at either limit of its
// range: the middle of the tile field moves with it.
func (w *Wall) everyClassic() []Classic {
	var out []Classic
	for _, left := range limits(w.Found.Left) {
		for _, right := range limits(w.Found.Right) {
			p := w.outer
			p.Left, p.Right = left, right
			out = append(out, w.Classics(p)...)
		}
	}
	return out
}

func limits(e survey.EndFound) []length.Length {
	if e.Meets || !e.Stops.Free() {
		return []length.Length{e.Stops.From}
	}
	return []length.Length{e.Stops.From, e.Stops.To}
}

// Starts lists the starts that are tried, as left edges of a tile of course 0,
// ascending over one period round the middle: every tile edge at a mark of the
// tape, and the classic starts wherever they lie; the pinned one where there is one.
func (w *Wall) Starts() []length.Length {
	if p := w.Found.Pin; p != nil {
		return []length.Length{p.Edge(w.room.Tile.Width, w.room.Joint)}
	}
	return w.AllStarts()
}

// AllStarts lists the starts that a wall without a pin would try.
func (w *Wall) AllStarts() []length.Length {
	tile, joint, tape := w.room.Tile.Width, w.room.Joint, w.room.Tape
	period := tile + joint
	if w.plumb {
		period *= length.Length(len(w.shifts))
	}
	from := w.Found.Width.Half() - period.Half()
	var out []length.Length
	for x := from.CeilTo(tape); x < from+period; x += tape {
		out = append(out, x)
	}
	for _, c := range w.everyClassic() {
		for x := from + length.Mod(c.Edge-from, tile+joint); x < from+period; x += tile + joint {
			out = append(out, x)
		}
		if !w.plumb {
			// The same start seen from another course of the bond.
			for _, s := range w.shifts[1:] {
				out = append(out, from+length.Mod(c.Edge-s-from, period))
			}
		}
	}
	slices.SortFunc(out, cmp.Compare)
	return slices.Compact(out)
}
