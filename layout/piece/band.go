package piece

import (
	"encoding/binary"
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Frame turns a shape into the frame of the rows, as it is for level courses,
// x and y swapped for columns, and bends it at the rows' edges so that cutting
// it into bands is exact.
func Frame(s survey.Shape, rows []bond.Row, plumb bool) survey.Shape {
	edges := make([]length.Length, 0, 2*len(rows))
	for _, r := range rows {
		edges = append(edges, r.Low, r.High)
	}
	slices.Sort(edges)
	turn := func(r plane.Region) plane.Region {
		if plumb {
			r = r.Transposed()
		}
		return r.BendY(edges)
	}
	t := s
	t.Solid = turn(s.Solid)
	t.Visible, t.Region = t.Solid, t.Solid
	if !same(s.Visible, s.Solid) {
		t.Visible = turn(s.Visible)
	}
	if !same(s.Region, s.Solid) {
		t.Region = turn(s.Region)
	}
	return t
}

// same tells whether two regions are one and the same, not merely equal.
func same(a, b plane.Region) bool {
	return len(a) == len(b) && (len(a) == 0 || &a[0] == &b[0])
}

// Band is the part of a shape that one row covers, in the frame of the rows.
type Band struct {
	Low, High              length.Length
	Solid, Visible, Region plane.Region
	floors, busy           []stretch
}

// stretch is an interval along the row.
type stretch struct{ from, to length.Length }

// Slice takes the band between low and high out of a framed shape.
func Slice(s survey.Shape, low, high length.Length) Band {
	b := Band{Low: low, High: high}
	b.Solid = slice(s.Solid, low, high)
	b.Visible, b.Region = b.Solid, b.Solid
	if !same(s.Visible, s.Solid) {
		b.Visible = slice(s.Visible, low, high)
	}
	if !same(s.Region, s.Solid) {
		b.Region = slice(s.Region, low, high)
	}
	return b
}

// BandOf is the band that one row covers of a wall.
func BandOf(s survey.Shape, row bond.Row, plumb bool) Band {
	return Slice(Frame(s, []bond.Row{row}, plumb), row.Low, row.High)
}

// Key tells bands apart: two with the same key leave the same of every tile.
func (b Band) Key() string {
	key := make([]byte, 0, 256)
	put := func(r plane.Region) {
		key = binary.AppendVarint(key, int64(len(r)))
		for _, ring := range r {
			key = binary.AppendVarint(key, int64(len(ring)))
			for _, c := range ring {
				key = binary.AppendVarint(key, int64(c.X))
				key = binary.AppendVarint(key, int64(c.Y))
				key = binary.AppendVarint(key, int64(c.On))
			}
		}
	}
	put(b.Solid)
	for _, r := range [...]plane.Region{b.Visible, b.Region} {
		if !same(r, b.Solid) {
			put(r)
		}
		key = append(key, '|')
	}
	return string(key)
}

func slice(r plane.Region, low, high length.Length) plane.Region {
	return r.Keep(plane.Above(low)).Keep(plane.Below(high))
}

// survey finds where the band has full height and where anything but its two
// long edges lies, once, for telling whole tiles from cut ones.
func (b *Band) survey() {
	drilled := !same(b.Region, b.Solid)
	b.note(b.Solid, !drilled) // what lies in a hole has no floor
	if !same(b.Visible, b.Solid) {
		b.note(b.Visible, false)
	}
	if drilled {
		b.note(b.Region, true)
		b.holes()
	}
	b.busy, b.floors = merge(b.busy), merge(b.floors)
}

func (b *Band) note(r plane.Region, floors bool) {
	for _, ring := range r {
		for i, c := range ring {
			d := ring[(i+1)%len(ring)]
			s := stretch{min(c.X, d.X), max(c.X, d.X)}
			switch {
			case c.Y == d.Y && c.Y == b.High:
			case c.Y == d.Y && c.Y == b.Low:
				if floors {
					b.floors = append(b.floors, s)
				}
			default:
				b.busy = append(b.busy, s)
			}
		}
	}
}

// holes makes the band busy over the whole breadth of every pipe's hole: a tile
// that lies in the hole has no edge of it, and is no piece.
func (b *Band) holes() {
	known := map[plane.Side]stretch{}
	sides(b.Solid, func(s plane.Side, _ stretch) { known[s] = stretch{} })
	found := map[plane.Side]stretch{}
	sides(b.Region, func(s plane.Side, x stretch) {
		if _, solid := known[s]; solid {
			return
		}
		if f, there := found[s]; there {
			x = stretch{min(f.from, x.from), max(f.to, x.to)}
		}
		found[s] = x
	})
	for _, s := range found {
		b.busy = append(b.busy, s)
	}
}

func sides(r plane.Region, each func(plane.Side, stretch)) {
	for _, ring := range r {
		for i, c := range ring {
			if c.On != 0 {
				d := ring[(i+1)%len(ring)]
				each(c.On, stretch{min(c.X, d.X), max(c.X, d.X)})
			}
		}
	}
}

func merge(s []stretch) []stretch {
	slices.SortFunc(s, func(a, b stretch) int { return int(max(-1, min(1, a.from-b.from))) })
	out := s[:0]
	for _, t := range s {
		if n := len(out); n > 0 && t.from <= out[n-1].to {
			out[n-1].to = max(out[n-1].to, t.to)
			continue
		}
		out = append(out, t)
	}
	return out
}

// whole tells whether a tile from left to right is uncut and unhidden, and
// empty whether the band has nothing there; both are certain, neither is
// claimed where the band is busy.
func (b *Band) whole(left, right length.Length) (whole, empty bool) {
	for _, s := range b.busy {
		if s.from < right && s.to > left {
			return false, false
		}
	}
	for _, s := range b.floors {
		if s.from <= left && s.to >= right {
			return true, false
		}
		if s.from < right && s.to > left { // a tip thinner than a unit lies flat on the line
			return false, false
		}
	}
	return false, true
}

// cells gives the indices of the tiles of a row that may touch the band.
func cells(r plane.Region, row bond.Row) (from, to int) {
	box := r.Bounds()
	from = int(length.DivFloor(box.Left-row.First, row.Pitch))
	to = int(length.DivFloor(box.Right-row.First-1, row.Pitch))
	return from, to
}

// layers are the regions of a shape, of which those that are the same as the solid one
// are so by identity.
type layers struct{ solid, visible, region plane.Region }

func (b *Band) layers() layers { return layers{b.Solid, b.Visible, b.Region} }

// keep keeps what lies to the left of every line.
func (s layers) keep(lines ...plane.Line) layers {
	out := layers{solid: s.solid.KeepAll(lines...)}
	out.visible, out.region = out.solid, out.solid
	if !same(s.visible, s.solid) {
		out.visible = s.visible.KeepAll(lines...)
	}
	if !same(s.region, s.solid) {
		out.region = s.region.KeepAll(lines...)
	}
	return out
}

// split cuts layers into the cells of a row by halves, so that a long row costs no
// more than its corners times the logarithm of its length.
func split(s layers, row bond.Row, from, to int, each func(i int, cell layers)) {
	if len(s.solid) == 0 {
		return
	}
	if from == to {
		left := row.First + length.Length(from)*row.Pitch
		if cell := s.keep(plane.RightOf(left), plane.LeftOf(left+row.Width)); len(cell.solid) > 0 {
			each(from, cell)
		}
		return
	}
	middle := from + (to-from)/2
	edge := row.First + length.Length(middle)*row.Pitch + row.Width
	split(s.keep(plane.LeftOf(edge)), row, from, middle, each)
	edge += row.Pitch - row.Width
	split(s.keep(plane.RightOf(edge)), row, middle+1, to, each)
}
