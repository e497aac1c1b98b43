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
	plain bool
	strip bool // sealant takes all of it and reaches the next row
	key   plainKey
	rake  *outline // where the height varies
	lean  bool     // the rake runs to a leaning end, whose tile must be cut
	holes []hole   // of pipes
	band  piece.Band
	low   length.Length
	phase int
}

// compile cuts the wall's shape into rows.
func (f *field) compile(across length.Length, shape survey.Shape) *compiled {
	rows := f.rows(across, 0, shape)
	framed := piece.Frame(shape, rows, f.plumb)
	c := &compiled{beds: piece.Beds(framed, rows, f.rule)}
	seen := map[plainKey]int{}
	for _, row := range rows {
		band := piece.Slice(framed, row.Low, row.High)
		if len(band.Solid) == 0 {
			continue
		}
		c.courses = append(c.courses, course{row.Low, row.High, c.classOf(band, row, f.rule, f.holes(row), seen)})
	}
	return c
}

func (c *compiled) classOf(band piece.Band, row bond.Row, rule piece.Rule, holes []hole, seen map[plainKey]int) int {
	k := class{band: band, low: row.Low, phase: row.Phase}
	k.strip = isStrip(band, rule)
	k.key, k.rake, k.plain = plainBand(band, row, rule)
	k.lean = k.rake != nil && (k.key.fromOut < k.key.from || k.key.to < k.key.toOut)
	k.holes = holes
	if k.plain && k.rake == nil && len(holes) == 0 {
		if i, there := seen[k.key]; there {
			return i
		}
		seen[k.key] = len(c.classes)
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
			if c.On == 0 || steep(c, d) {
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

// plainBand recognises a row that runs from end to end between two long edges,
// and is taller than sealant ever fills where it is level. Pipes are left to
// holes.
func plainBand(band piece.Band, row bond.Row, rule piece.Rule) (k plainKey, rake *outline, ok bool) {
	o, ok := outlineOf(band.Solid)
	if !ok {
		return k, nil, false
	}
	seen, ok := outlineOf(band.Visible)
	if !ok {
		return k, nil, false
	}
	k = plainKey{o.fromOut, o.from, o.to, o.toOut, seen.from, seen.to, 0, false, o.left, o.right, o.under, o.over, row.Phase}
	solid, level := o.flat()
	high, flat := seen.flat()
	if !level || !flat {
		return k, &seen, !rule.Plumb // a lap hides part of a column's breadth
	}
	k.high, k.short = high, solid < rule.Across
	return k, nil, solid >= rule.Across || solid > rule.Sealant
}

// row is the bond's row of a class with a tile of course 0 at along.
func (f *field) row(k *class, along length.Length) bond.Row {
	return bond.Row{Phase: k.phase, Low: k.low, High: k.low + f.bond.Height, First: along + f.shifts[k.phase], Width: f.bond.Width, Pitch: f.bond.Along()}
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
	if k.plain {
		if t, ok := f.plainTally(k, along+f.shifts[k.phase], p); ok {
			return t
		}
	}
	band := k.band
	if box := band.Solid.Bounds(); p.from > box.Left || p.to < box.Right {
		band = band.Trim(p.from, p.to, p.left, p.right)
	}
	return band.Tally(f.row(k, along), f.rule)
}
