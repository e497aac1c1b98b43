package count

import (
	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// patchKey is how a free opening lies in a row: from where the tile begins that it
// begins in, and from the row's lower edge.
type patchKey struct {
	opening, class           int
	left, width, bottom, top length.Length
}

// bareKey is a set-out without its free openings.
type bareKey struct{ line, edge, left, right, head length.Length }

// mostPatches and mostBare bound how many of each are kept.
const (
	mostPatches = 20_000
	mostBare    = 512
)

// cleared adds up the pieces of a set-out of which every free opening stands clear of
// all else: those of the wall without them, and what they make of whole tiles.
func (c *cutter) cleared(s Setting) *tally {
	t := c.without(s)
	for _, i := range c.w.free {
		if s.Placed.Openings[i] == Away {
			continue
		}
		box := c.w.placed(i, s.Placed)
		t.around(c, i, box, c.w.rows(s, c.w.frame.rect(box)))
	}
	return t
}

// around adds what an opening that stands clear makes of the whole tiles of rows.
func (t *tally) around(c *cutter, i int, box plane.Rect, rows []bond.Row) {
	for _, row := range rows {
		if row.Low < box.Top && row.High > box.Bottom {
			t.count(c.patch(i, box, row))
		}
	}
}

// patch is what an opening makes of the whole tiles of a row, cut on a piece of wall
// as large as those tiles, and once for every way the opening can lie among them.
func (c *cutter) patch(i int, box plane.Rect, row bond.Row) *rowCount {
	tile := func(x length.Length) length.Length {
		return row.First + length.Length(length.DivFloor(x-row.First, row.Pitch))*row.Pitch
	}
	from, to := tile(box.Left), tile(box.Right)+row.Pitch
	key := patchKey{i, c.w.class(row.Course), box.Left - from, box.Width(), max(0, box.Bottom-row.Low), min(row.High, box.Top) - row.Low}
	return c.patches.of(key, func() *rowCount { return c.cutPatch(i, box, row, from, to) })
}

// cutPatch cuts it, between the ends of the tiles that it lies among.
func (c *cutter) cutPatch(i int, box plane.Rect, row bond.Row, from, to length.Length) *rowCount {
	c.meter.add(160)
	ground := plane.Region{plane.Rect{Left: from, Right: to, Bottom: row.Low, Top: row.High}.Ring(survey.SideFactory)}
	side := survey.SideBase + plane.Side(len(c.w.found.Base)+i)
	region := c.w.frame.region(ground.Less(box.Ring(0), side))
	t, out := c.tally(), &rowCount{ends: noWidths}
	band := piece.BandOf(survey.Shape{Region: region, Solid: region, Visible: region}, row, c.w.frame.plumb)
	piece.Row(band, row, c.w.rule, t.piece, func(plane.Rect) {})
	t.into(out)
	return out
}

// without adds up what a set-out gives without its free openings.
func (c *cutter) without(s Setting) *tally {
	key := bareKey{s.Line, s.Edge, s.Placed.Left, s.Placed.Right, s.Placed.Head}
	s.Placed = c.w.without(s.Placed)
	return c.bare.of(key, func() *tally { return c.all(s) }).copy()
}
