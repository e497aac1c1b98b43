package count

import (
	"encoding/binary"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
)

// rowKey tells apart the rows that are cut: what is there for tile, where the row's
// tiles begin, its class in the bond, and what the free openings take from it.
type rowKey struct {
	band        int
	left, right length.Length // of the tile field
	first       length.Length
	class       int
	taken       string
	on          *ground // where openings take from the row
	beyond      bool    // only what no free opening can touch
}

// numbered is a band with its number: bands of several grounds that are the same have one.
type numbered struct {
	piece.Band
	number int
}

// band is what a row covers of the ground.
func (f *fitted) band(row bond.Row) numbered {
	if known, there := f.bands[row.Low]; there {
		return known
	}
	band := piece.BandOf(f.shape, row, f.c.w.frame.plumb)
	key := band.Key()
	number, there := f.c.bands[key]
	if !there {
		number = len(f.c.bands)
		f.c.bands[key] = number
	}
	f.bands[row.Low] = numbered{band, number}
	return f.bands[row.Low]
}

func (f *fitted) key(row bond.Row, taken string) rowKey {
	key := rowKey{band: f.band(row).number, left: f.box.Left, right: f.box.Right, first: length.Mod(row.First, row.Pitch), class: f.c.w.class(row.Course), taken: taken}
	if taken != "" {
		key.on = f.ground
	}
	return key
}

// rowCount is what one row gives that had to be cut.
type rowCount struct {
	sights [2]merit.Sight
	work   int
	runs   []runLeast
	tile   []plane.Region // what stands, in the frame of the rows
	whole  []plane.Rect
	ends   widths
}

type runLeast struct {
	run   int
	least length.Length
}

// row gives what a row gives that is not plain.
func (f *fitted) row(row bond.Row) *rowCount {
	key := f.key(row, f.taken(row))
	return f.c.rows.of(key, func() *rowCount { return f.cut(row, key.taken != "") })
}

// cut cuts a row, from which free openings may take something.
func (f *fitted) cut(row bond.Row, taken bool) *rowCount {
	w, band := f.c.w, f.band(row).Band
	if taken {
		f.c.meter.add(10 * len(w.free))
		band = piece.BandOf(f.whole(), row, w.frame.plumb)
	}
	f.c.meter.add(17 + f.c.corners/3)
	t, at := f.c.tally(), bothEnds{w, f.box}
	out := &rowCount{ends: noWidths}
	piece.Row(band, row, w.rule, func(p *piece.Piece) {
		f.c.meter.add(10)
		out.tile = append(out.tile, p.Solid())
		t.piece(p)
		if !w.frame.plumb {
			at.addPiece(&out.ends, p)
		}
	}, func(r plane.Rect) {
		out.whole = append(out.whole, r)
		if !w.frame.plumb {
			at.add(&out.ends, endPiece{seen: r, tile: r, wide: r.Width()})
		}
	})
	t.into(out)
	return out
}

// beyond gives of a row the pieces that no free opening can touch.
func (f *fitted) beyond(row bond.Row) *rowCount {
	key := f.key(row, "")
	key.beyond = true
	return f.c.rows.of(key, func() *rowCount { return f.cutBeyond(row) })
}

func (f *fitted) cutBeyond(row bond.Row) *rowCount {
	w := f.c.w
	f.c.meter.add(17 + f.c.corners/3)
	t, out := f.c.tally(), &rowCount{ends: noWidths}
	piece.Row(f.band(row).Band, row, w.rule, func(p *piece.Piece) {
		f.c.meter.add(10)
		if !w.freeIn(w.frame.rect(p.Tile)) {
			t.piece(p)
		}
	}, func(plane.Rect) {})
	t.into(out)
	return out
}

// taken is what the free openings take from a row.
func (f *fitted) taken(row bond.Row) string {
	var b []byte
	w := f.c.w
	for _, i := range w.free {
		r := w.frame.rect(w.boxOf(i, w.found.Openings[i], f.placed))
		if r.Bottom >= row.High || r.Top <= row.Low {
			continue
		}
		for _, l := range [...]length.Length{length.Length(i), r.Left, r.Right, max(r.Bottom, row.Low), min(r.Top, row.High)} {
			b = binary.AppendVarint(b, int64(l))
		}
	}
	return string(b)
}

// all adds up the pieces of a set-out.
func (c *cutter) all(s Setting) *tally {
	f, t := c.fit(s.Placed), c.tally()
	cover := f.bare()
	rows := c.w.rows(s, f.box)
	slow := t.plain(f.outline(), rows, cover)
	for _, row := range slow {
		t.add(f.row(row), cover)
	}
	t.bare(cover.Gaps())
	c.meter.add(7 + 2*len(rows) + 2*len(slow))
	return t
}
