package setout

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// plainKey is all that matters of a row that can be counted by arithmetic: its
// ends, what is seen between them, and the height left of the tile.
type plainKey struct {
	fromOut, from    length.Length // left end, outermost and innermost
	to, toOut        length.Length // right end
	seenFrom, seenTo length.Length // what the laps leave visible
	high             length.Length // height seen of the tile; 0 where it varies
	short            bool          // the tile is cut in height
	left, right      plane.Side
	under, over      plane.Side // of the long edges
	phase            int
}

// plain is a part of a row that arithmetic can count.
type plain struct {
	plainKey
	rake *outline // of what is seen, where the height varies
	wall *outline // of the row itself, there
	lean bool     // the rake runs to a leaning end, whose tile must be cut
}

// plainTally counts the pieces of a part of a row by arithmetic alone. Where it
// is not ok the row needs cutting: a leaning end passes a joint, or a pipe
// meets a tile that is cut anyway.
func (f *field) plainTally(k *class, first length.Length, p part) (piece.Tally, bool) {
	t, known := f.tallyRow(k, first, p, false)
	return t, known == all
}

// known is how much of a row was counted.
type known uint8

const (
	nothing known = iota // the row needs cutting
	most                 // all but single tiles that need cutting
	all
)

// tallyRow counts a part of a row; when it skims, it leaves out the single
// tiles that need cutting.
func (f *field) tallyRow(k *class, first length.Length, p part, skim bool) (piece.Tally, known) {
	*f.work++
	total, got := piece.NewTally(), all
	for i := range k.plain {
		r := plainRow{field: f, plain: k.plain[i], class: k, first: first, tally: piece.NewTally(), ok: true, skim: skim}
		if r.trim(p); r.from < r.to {
			r.count(first)
			for i := range k.holes {
				r.drill(&k.holes[i])
			}
		}
		if !r.ok {
			return total, nothing
		}
		if r.skipped {
			got = most
		}
		total.Plus(r.tally)
	}
	return total, got
}

// trim ends the row where a free end or an opening does.
func (r *plainRow) trim(p part) {
	if p.from > r.fromOut {
		r.ok = r.ok && p.from >= r.from
		r.fromOut, r.from, r.seenFrom, r.left = p.from, p.from, max(p.from, r.seenFrom), p.left
	}
	if p.to < r.toOut {
		r.ok = r.ok && p.to <= r.to
		r.to, r.toOut, r.seenTo, r.right = p.to, p.to, min(p.to, r.seenTo), p.right
	}
}

type plainRow struct {
	*field
	plain
	class   *class
	first   length.Length
	tally   piece.Tally
	ok      bool
	skim    bool // leave out tiles that need cutting
	skipped bool // one was left out
}

func (r *plainRow) count(first length.Length) {
	pitch, width := r.class.row.Pitch, r.class.row.Width
	i := length.Length(length.DivFloor(r.from-first, pitch))
	last := length.Length(length.DivFloor(r.to-first-1, pitch))
	into := r.from - first - i*pitch
	if lean := r.from - r.fromOut; lean > 0 && (into < lean || into >= width && into-lean < width) {
		r.ok = false
		return
	}
	if into >= width {
		if r.tall(r.from) {
			r.bare(r.left, pitch-into+r.from-r.fromOut)
		}
		i++
	}
	into = r.to - first - last*pitch
	if lean := r.toOut - r.to; lean > 0 && (into <= width && into+lean > width || into+lean > pitch) {
		r.ok = false
		return
	}
	if into > width && r.tall(r.to) {
		r.bare(r.right, into-width+r.toOut-r.to)
	}
	if r.rake != nil {
		for _, x := range r.wall.steps { // a step in a joint may leave bare wall
			if into := length.Mod(x-first, pitch); into >= width || into == 0 {
				r.ok = false
			}
		}
	}
	for ; i <= last && r.ok; i++ {
		left := first + i*pitch
		if left >= max(r.from, r.seenFrom) && left+width <= min(r.seenTo, r.to) {
			if r.rake == nil {
				n := (min(r.seenTo, r.to)-left-width)/pitch + 1
				r.add(width, r.high, r.short, int(n))
				i += n - 1
				continue
			}
			r.raked(left, left+width, left, left+width, false)
			continue
		}
		r.piece(left)
	}
}

func (r *plainRow) add(wide, high length.Length, cut bool, n int) {
	share := piece.Part(wide, r.rule.Along).Min(piece.Part(high, r.rule.Across))
	r.tally.Add(share, cut, wide < r.rule.SliverAlong || high < r.rule.SliverAcross, n)
	if r.plumb { // the wall's ends lie along columns
		r.tally.EndCut(r.under, high)
		r.tally.EndCut(r.over, high)
	}
}

// raked counts a piece from a to b, seen from c to d, whose height may vary,
// unless it is a strip along the base or head that sealant takes. It tells
// whether there is a piece.
func (r *plainRow) raked(a, b, c, d length.Length, cut bool) bool {
	if r.wall.stepped(a, b) {
		pitch := r.class.row.Pitch
		r.cut(r.first + length.Length(length.DivFloor(a-r.first, pitch))*pitch)
		return false
	}
	if _, most := r.wall.heights(a, b); most <= r.rule.Sealant && r.low(most) {
		return false
	}
	least, _ := r.rake.heights(c, d)
	r.add(d-c, least, cut || least < r.class.row.Height(), 1)
	return true
}

// low tells whether a remainder no higher than most is a strip along the base
// or head.
func (r *plainRow) low(most length.Length) bool {
	if r.under != 0 && r.over != 0 {
		r.ok = false
		return true
	}
	b, meets := r.meets(max(r.under, r.over))
	if !meets || most > r.rule.Sealant-b.Gap {
		return false
	}
	r.bare(max(r.under, r.over), most+r.rule.Joint)
	return true
}

// piece counts what remains of the tile at left where an end cuts or hides it.
func (r *plainRow) piece(left length.Length) {
	right := left + r.class.row.Width
	a, b := max(left, r.from), min(right, r.to)
	if r.lean || r.rake != nil && r.wall.stepped(left, right) {
		r.cut(left)
		return
	}
	if a == r.from && b == r.to && r.fromOut < r.from && r.to < r.toOut {
		r.ok = false // one tile between two leaning ends
		return
	}
	if b <= a {
		r.ok = r.ok && r.fromOut == r.from && r.toOut == r.to
		return
	}
	cutLeft, cutRight := r.fromOut > left || a > left, r.toOut < right || b < right
	if cutLeft && r.strip(r.left, b-a, right-a, r.from-r.fromOut) || cutRight && r.strip(r.right, b-a, b-left, r.toOut-r.to) {
		return
	}
	c, d := max(left, r.seenFrom), min(right, r.seenTo)
	wide := max(0, d-c)
	switch {
	case r.rake == nil:
		r.add(wide, r.high, cutLeft || cutRight || r.short, 1)
	case wide == 0:
		r.ok = false
		return
	case !r.raked(a, b, c, d, cutLeft || cutRight):
		return
	}
	if r.plumb {
		return
	}
	if cutLeft {
		r.tally.EndCut(r.left, wide)
	}
	if cutRight {
		r.tally.EndCut(r.right, wide)
	}
}

// strip tells whether a remainder is only a strip that sealant takes; reach is
// how far the boundary is from the tile's far edge. At a
// leaning end, or over a rake, that is not decided here.
func (r *plainRow) strip(side plane.Side, wide, reach, lean length.Length) bool {
	b, meets := r.meets(side)
	if !meets || wide > r.rule.Sealant-b.Gap {
		return false
	}
	if lean > 0 || r.rake != nil {
		r.ok = false
		return true
	}
	r.bare(side, reach+r.rule.Joint)
	return true
}

func (r *plainRow) meets(side plane.Side) (survey.Boundary, bool) {
	b := r.rule.Sides[side]
	return b, b.Meets
}

// bare counts an end whose boundary is farther from the next tile than sealant reaches.
func (r *plainRow) bare(side plane.Side, beyond length.Length) {
	if b, meets := r.meets(side); meets && b.Gap+beyond > r.rule.Sealant {
		r.tally.Bare++
	}
}

// cut counts one tile by cutting it, once for every place it may stand in its class.
func (r *plainRow) cut(left length.Length) {
	if r.skim {
		r.skipped = true
		return
	}
	p := part{max(left, r.fromOut), min(left+r.class.row.Width, r.toOut), r.left, r.right}
	key := cutKey{left, p}
	t, there := r.class.cuts[key]
	if !there {
		*r.work += rowCut
		row := r.class.at(r.first - r.class.row.First)
		t = r.class.band.Trim(p.from, p.to, p.left, p.right).Tally(row, r.rule)
		r.class.cuts[key] = t
	}
	r.tally.Plus(t)
}

// cutKey is a tile and what of its row remains there.
type cutKey struct {
	left length.Length
	part part
}

// drill counts the whole tiles that a pipe's hole makes cut ones. A tile that
// the hole takes altogether is no piece; where a tile is cut otherwise too, the
// row is left to the cutting.
func (r *plainRow) drill(h *hole) {
	pitch, width := r.class.row.Pitch, r.class.row.Width
	for i := length.Length(length.DivFloor(max(h.from, r.fromOut)-r.first, pitch)); ; i++ {
		left := r.first + i*pitch
		right := left + width
		if left >= min(h.to, r.toOut) {
			return
		}
		if right <= h.from {
			continue
		}
		switch {
		case !(left >= r.from && right <= r.to && !r.short && (r.rake == nil || r.full(left, right))):
			r.ok = false
		case !h.covers(plane.Rect{Left: left, Bottom: r.class.row.Low, Right: right, Top: r.class.row.High}):
			r.tally.Cut++
		}
	}
}

// full tells whether the row has its full height all the way from a to b.
func (r *plainRow) full(a, b length.Length) bool {
	if r.wall.stepped(a, b) {
		return false
	}
	least, _ := r.rake.heights(a, b)
	return least == r.class.row.Height()
}

// upright tells whether neither the long edges nor the ends are raked.
func (p plain) upright() bool { return p.rake == nil && p.fromOut == p.from && p.to == p.toOut }

// tall tells whether an end at x is more than the end of a strip that sealant
// fills along the base or head.
func (r *plainRow) tall(x length.Length) bool { return r.rake == nil || r.wall.at(x) > r.rule.Sealant }
