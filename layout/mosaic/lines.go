package mosaic

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// beside is a tile that stands beside another one: its place of the pattern, how it
// stands from that one, and the line half way between the two, from the corner of that one.
type beside struct {
	place    int
	by       plane.Point // from corner to corner of their boxes
	rows     int         // in courses
	from, to plane.Point
}

// besides lists for every place of a pattern what stands to the right of its tile or over
// it: of two tiles beside each other one has the other.
func (l lattice) besides() [][]beside {
	p, out := l.pattern, make([][]beside, len(l.pattern.Places))
	near := p.Joint + length.Millimetre // what tiles lack of their module the joints take up
	for n := range p.Places {
		own := p.Tiles[p.Places[n].Tile]
		ring, at := moved(own.Outline, p.Places[n].At), l.corner(n)
		box := own.BoxAt(p.Places[n].At)
		box = plane.Rect{Left: box.Left - near, Bottom: box.Bottom - near, Right: box.Right + near, Top: box.Top + near}
		for _, s := range p.Over(plane.Point{}, box) {
			b := p.Tiles[s.Tile].BoxAt(s.At)
			by := plane.Point{X: b.Left - at.X, Y: b.Bottom - at.Y}
			if mine := own.BoxAt(p.Places[n].At); !after(middle(b), middle(mine)) {
				continue
			}
			for _, line := range between(ring, s.Outline, near, p.Joint) {
				one := beside{place: s.Place, by: by, from: less(line[0], at), to: less(line[1], at)}
				if l.courses() {
					one.rows = s.Row - n
				} else if l.rule.Coursed() {
					one.rows = round(int64(by.X), int64(p.U.X)/int64(len(p.Places)))
				}
				out[n] = append(out[n], one)
			}
		}
	}
	return out
}

// after tells whether a point is over another one, or level with it and to its right.
func after(a, b plane.Point) bool { return a.Y > b.Y || a.Y == b.Y && a.X > b.X }

func middle(r plane.Rect) plane.Point {
	return plane.Point{X: (r.Left + r.Right).Half(), Y: (r.Bottom + r.Top).Half()}
}

func less(a, b plane.Point) plane.Point { return plane.Point{X: a.X - b.X, Y: a.Y - b.Y} }

func more(a, b plane.Point) plane.Point { return plane.Point{X: a.X + b.X, Y: a.Y + b.Y} }

func moved(r plane.Ring, by plane.Point) plane.Ring {
	out := slices.Clone(r)
	for i := range out {
		out[i].Point = more(out[i].Point, by)
	}
	return out
}

// between are the lines half way between the sides of two tiles that face each other no
// farther apart than near, as long as both sides are, and drawn out to meet those of the
// next joints.
func between(a, b plane.Ring, near, joint length.Length) (out [][2]plane.Point) {
	for i, c := range a {
		d := a[(i+1)%len(a)]
		side, long := less(d.Point, c.Point), plane.Distance(c.Point, d.Point)
		for k, e := range b {
			f := b[(k+1)%len(b)]
			back := less(f.Point, e.Point)
			if !facing(side, back, long, plane.Distance(e.Point, f.Point)) {
				continue
			}
			to := plane.Apart(e.Point, c.Point, d.Point)
			if plane.Through(c.Point, d.Point).Side(e.Point) > 0 || to > near {
				continue
			}
			from, until := max(0, along(f.Point, c.Point, side, long)), min(long, along(e.Point, c.Point, side, long))
			if from >= until {
				continue
			}
			meet := joint.Half()
			if len(a) != 4 {
				meet = joint * 29 / 100 // joints that meet at 120°: tan 30°/2 of one
			}
			out = append(out, [2]plane.Point{beyond(c.Point, side, long, from-meet, to), beyond(c.Point, side, long, until+meet, to)})
		}
	}
	return out
}

// facing tells whether two sides run against each other, to within a thousandth.
func facing(a, b plane.Point, long, other length.Length) bool {
	dot := a.X.Times(b.X) + a.Y.Times(b.Y)
	cross := a.X.Times(b.Y) - a.Y.Times(b.X)
	return dot < 0 && max(cross, -cross) <= long.Times(other)/1000
}

// along is how far a point is along a side from its beginning.
func along(p, from, side plane.Point, long length.Length) length.Length {
	d := less(p, from)
	return length.Length((d.X.Times(side.X) + d.Y.Times(side.Y)) / length.Area(max(1, long)))
}

// beyond is the point so far along a side and half of a distance out from it, to its right.
func beyond(from, side plane.Point, long, by, out length.Length) plane.Point {
	scale := func(l, by length.Length) length.Length {
		return length.Length(length.DivFloor(2*l*by+long, 2*max(1, long)))
	}
	return plane.Point{
		X: from.X + scale(side.X, by) + scale(side.Y, out.Half()),
		Y: from.Y + scale(side.Y, by) - scale(side.X, out.Half()),
	}
}

// lines are the joints of a tile's sides at which another sheet begins, to its right and
// over it, inside the wall.
func (l laying) lines(t tile, origin plane.Point, lift int, size survey.SheetSize, region plane.Region) (out [][2]plane.Point) {
	here, _ := l.sheet(l.cell(t, origin), l.base[lift], size)
	for _, n := range l.beside[t.place] {
		next := tile{n.place, more(t.corner, n.by), t.row + n.rows}
		if there, _ := l.sheet(l.cell(next, origin), l.base[lift], size); there != here {
			out = append(out, inside(region, more(t.corner, n.from), more(t.corner, n.to))...)
		}
	}
	return out
}

// inside are the parts of a line that lie in a region.
func inside(r plane.Region, from, to plane.Point) (out [][2]plane.Point) {
	line := plane.Through(from, to)
	stops := []plane.Point{from, to}
	for _, ring := range r {
		for i, c := range ring {
			d := ring[(i+1)%len(ring)]
			if sc, sd := line.Side(c.Point), line.Side(d.Point); sc > 0 && sd < 0 || sc < 0 && sd > 0 {
				stops = append(stops, plane.Crossing(c.Point, d.Point, line))
			}
		}
	}
	along := func(p plane.Point) length.Area {
		return line.D.X.Times(p.X-from.X) + line.D.Y.Times(p.Y-from.Y)
	}
	stops = slices.DeleteFunc(stops, func(p plane.Point) bool { return along(p) < 0 || along(p) > along(to) })
	slices.SortFunc(stops, func(a, b plane.Point) int { return cmp.Compare(along(a), along(b)) })
	for i := 1; i < len(stops); i++ {
		a, b := stops[i-1], stops[i]
		if a != b && r.Contains(plane.Point{X: (a.X + b.X).Half(), Y: (a.Y + b.Y).Half()}) {
			out = append(out, [2]plane.Point{a, b})
		}
	}
	return out
}
