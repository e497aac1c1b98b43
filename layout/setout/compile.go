package setout

import (
	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// course is one row of a compiled wall: which class of row it is.
type course struct {
	low, high length.Length
	class     int
}

// compiled is a wall cut into rows for one phase across the rows. Rows that
// stand alike share a class, so the cost of a start does not grow with the
// number of courses.
type compiled struct {
	courses []course
	classes []class
	beds    int // bare places between rows
}

// class is a kind of row: one that arithmetic can count, or a band to be cut.
type class struct {
	strip bool    // sealant takes all of it and reaches the next row
	gapes bool    // sealant takes it, and does not reach the next row
	plain []plain // its parts, when arithmetic can count them all
	holes []hole  // of pipes
	band  piece.Band
	row   bond.Row               // where its tiles stand with the start at 0
	cuts  map[cutKey]piece.Tally // of single tiles that were cut to be counted
}

// quick tells whether the row is counted without cutting.
func (k *class) quick() bool { return k.plain != nil || k.strip }

// compile cuts the wall's shape into rows.
func (f *field) compile(across length.Length, shape survey.Shape) *compiled {
	rows := f.rows(across, 0, shape)
	framed := piece.Frame(shape, rows, f.plumb)
	*f.work += rowCut * len(rows)
	c := &compiled{beds: piece.Beds(framed, rows, f.rule)}
	seen := map[plainKey]int{}
	for _, row := range rows {
		band := piece.Slice(framed, row.Low, row.High)
		if len(band.Solid) == 0 {
			continue
		}
		c.courses = append(c.courses, course{row.Low, row.High, c.classOf(f, band, row, seen)})
	}
	return c
}

// openingMayTake tells whether a free opening can reach a row.
func (f *field) openingMayTake(row course) bool {
	for _, i := range f.free {
		o := f.found.Openings[i]
		low, size := o.Bottom, o.Height
		if f.plumb {
			low, size = o.Left, o.Width
		}
		if row.high > low.From && row.low < low.To+size.To {
			return true
		}
	}
	return false
}

// opened is the stretch along the rows that free openings can reach.
func (f *field) opened() (from, to length.Length) {
	for n, i := range f.free {
		o := f.found.Openings[i]
		low, size := o.Left, o.Width
		if f.plumb {
			low, size = o.Bottom, o.Height
		}
		if n == 0 {
			from, to = low.From, low.To+size.To
		}
		from, to = min(from, low.From), max(to, low.To+size.To)
	}
	return from, to
}

func (c *compiled) classOf(f *field, band piece.Band, row bond.Row, seen map[plainKey]int) int {
	k := class{band: band, row: row, cuts: map[cutKey]piece.Tally{}}
	k.strip = isStrip(band, f.rule)
	k.holes = f.holes(row)
	k.plain = plains(band, row, f.rule)
	k.gapes = !k.strip && k.plain == nil && f.gapes(band)
	if len(k.plain) == 1 && k.plain[0].rake == nil && len(k.holes) == 0 {
		key := k.plain[0].plainKey
		if i, there := seen[key]; there {
			return i
		}
		seen[key] = len(c.classes)
	}
	c.classes = append(c.classes, k)
	return len(c.classes) - 1
}

// isStrip recognises a row that sealant fills altogether, over one boundary
// and as far as the next row's tiles.
func isStrip(band piece.Band, rule piece.Rule) bool {
	least := rule.Sealant
	touches := false
	for _, ring := range band.Solid {
		for i, c := range ring {
			d := ring[(i+1)%len(ring)]
			if c.On == 0 || plane.Steep(c, d) {
				continue
			}
			b := rule.Sides[c.On]
			if !b.Meets {
				return false
			}
			touches = true
			least = min(least, rule.Sealant-b.Gap-rule.Joint)
		}
	}
	return touches && band.Solid.Bounds().Height() <= least
}

// gapes recognises a row, long enough for a tile in its middle, that sealant
// takes over one boundary without reaching the next row's tiles.
func (f *field) gapes(band piece.Band) bool {
	box := band.Solid.Bounds()
	if len(band.Solid) != 1 || box.Width() < 4*f.bond.Along() {
		return false
	}
	o, ok := outlineOf(band.Solid[0])
	if !ok || o.under != 0 && o.over != 0 {
		return false
	}
	high, flat := o.flat()
	b := f.rule.Sides[max(o.under, o.over)]
	return flat && b.Meets && high <= f.rule.Sealant-b.Gap && high+f.rule.Joint > f.rule.Sealant-b.Gap
}

// plains reads the parts of a row that each run from end to end between two
// long edges; nil when some part does not. Pipes are left to holes.
func plains(band piece.Band, row bond.Row, rule piece.Rule) []plain {
	if len(band.Visible) != len(band.Solid) {
		return nil
	}
	var out []plain
	for i, ring := range band.Solid {
		p, ok := plainOf(ring, band.Visible[i], row, rule)
		if !ok {
			return nil
		}
		out = append(out, p)
	}
	return out
}

func plainOf(solid, visible plane.Ring, row bond.Row, rule piece.Rule) (p plain, ok bool) {
	o, ok := outlineOf(solid)
	if !ok {
		return p, false
	}
	seen, ok := outlineOf(visible)
	if !ok || seen.fromOut < o.fromOut || seen.toOut > o.toOut {
		return p, false
	}
	p.plainKey = plainKey{o.fromOut, o.from, o.to, o.toOut, seen.from, seen.to, 0, false, o.left, o.right, o.under, o.over, row.Phase}
	whole, level := o.flat()
	high, flat := seen.flat()
	if !level || !flat || o.steps != nil {
		p.rake, p.wall = &seen, &o
		p.lean = o.fromOut < o.from || o.to < o.toOut
		return p, !rule.Plumb // a lap hides part of a column's breadth
	}
	p.high, p.short = high, whole < rule.Across
	return p, !(rule.Plumb && o.mixed && whole < rule.Across) && (whole >= rule.Across || whole > rule.Sealant)
}

// at is the row of a class with a tile of course 0 at along.
func (k *class) at(along length.Length) bond.Row {
	row := k.row
	row.First += along
	return row
}

// part is a stretch of a row and the sides it ends on.
type part struct {
	from, to    length.Length
	left, right plane.Side
}

// tally counts the pieces of one row of a class within a part of it.
func (f *field) tally(k *class, along length.Length, p part) piece.Tally {
	if k.strip {
		return piece.NewTally()
	}
	if k.plain != nil {
		if t, ok := f.plainTally(k, along+k.row.First, p); ok {
			return t
		}
	}
	*f.work += rowCut
	band := k.band
	if box := band.Solid.Bounds(); p.from > box.Left || p.to < box.Right {
		band = band.Trim(p.from, p.to, p.left, p.right)
	}
	return band.Tally(k.at(along), f.rule)
}
