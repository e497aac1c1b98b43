package count

import (
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/plane"
)

// aloneKey is how a free opening lies among the rows of the bond.
type aloneKey struct {
	opening                     int
	left, bottom, width, height length.Length // from where a tile of course 0 begins, over so many courses as the bond has classes
}

// Alone is what a free opening makes of the tiles round it with its edges so, without what its marks give; false where
// something else may cut one of them, wherever the other free marks go.
func (w *Wall) Alone(i int, level, upright Pair, line, edge length.Length) (merit.Merit, bool) {
	box := w.facts.frame.rect(plane.Rect{Left: level.Low, Right: level.High, Bottom: upright.Low, Top: upright.High})
	if !w.Places.boundary.alwaysClear(i, box) {
		return merit.Merit{}, false
	}
	return w.cutter.alone(i, box, line, edge), true
}

// alwaysClear tells whether a free opening at a place is clear of all else wherever that goes.
func (b *boundary) alwaysClear(i int, box plane.Rect) bool {
	if !b.onWall(box) {
		return false
	}
	reach, own := b.w.around(box), b.own(i)
	for n, o := range b.obstacles {
		if n != own && touch(reach, o.Rect) {
			return false
		}
	}
	return true
}

// alone is what a free opening makes of whole tiles, worked out once for every way it lies among them.
func (c *cutter) alone(i int, box plane.Rect, line, edge length.Length) merit.Merit {
	along, across := c.w.frame.phases(line, edge)
	key := aloneKey{i, length.Mod(box.Left-along, c.w.rule.Along+c.w.room.Joint), length.Mod(box.Bottom-across, c.w.period()), box.Width(), box.Height()}
	return c.lonely.of(key, func() merit.Merit {
		t := c.tally()
		t.around(c, i, box, c.w.rowsFrom(along, across, c.w.frame.rect(box)))
		c.meter.add(16)
		m, _ := t.merit()
		return m
	})
}
