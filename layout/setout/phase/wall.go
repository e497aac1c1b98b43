package phase

import (
	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"
)

// Setting is a set-out of one wall.
type Setting struct {
	Line, Edge length.Length // lowest point and left side of a tile of the first place
	Placed     survey.Placed
}

// Counted is what a set-out of one wall gives.
type Counted struct {
	Setting
	Merit       merit.Merit // all but the terms that two walls share
	left, right atEnd
	Least       length.Length // the smallest run in sight, and the tile's least width
	Full        length.Length
}

// Wall is one wall of a room laid in a pattern.
type Wall struct {
	face
	Work int // what was counted so far
	odds [allSteps]odds
	all  odds

	ends, apart odds  // what either was worth, see step
	shown       shown // by boundary of the outermost ground

	order   merit.Order
	scratch []survey.Edges
	merits  merits // room for those that are kept
	runs    []run  // room for those of a tally that is not kept
	cutRuns []run  // and for those of what an option cuts
	lowered tally  // room for what is worked out of what no free mark can touch
	closer  tally  // and for what a way cuts

	shares  [4][]piece.Share // room for the lists of a merit that is read from a tally
	byMarks bool             // only tiles that free marks may touch are bounded, along edges that meet nothing
	alike   alike
	lines   lines
	shape   *ground
	known   map[groundKey]*ground
	edges   []edge          // those that stand
	loose   []looseEdge     // those that free marks move, where the wall is largest
	least   []limits        // by tile of the pattern
	corners int             // how many corners and pipes it has
	classic []length.Length // starts of the trade, off the tape too
}

type limits struct{ full, sliver, unworkable length.Length }

// NewWall is a wall of a room laid in a pattern.
func NewWall(room *survey.Room, found survey.WallFound, pattern bond.Pattern) *Wall {
	w := &Wall{face: face{Found: count.WithPins(found), Pattern: pattern, room: room, typed: found}, order: merit.OrderFor(room.Prefer)}
	w.lines = lines{w: w, plumb: pattern.PlumbLines(), level: pattern.LevelLines()}
	for _, t := range pattern.Tiles {
		w.least = append(w.least, limits{t.Least, piece.SliverLimit(*room, t.Least), piece.UnworkableLimit(*room, t.Least)})
	}
	w.outer = outermost(w.Found)
	w.findAxes()
	w.rule = piece.RuleFor(*room, w.Found, w.Found.Sides())
	g := w.ground(w.outer)
	w.lines.tiled = w.Found.TileField(room.Units)
	w.corners = len(g.turns.boxes)
	w.findEdges(g.shape)
	w.findOthers(g.shape)
	w.fenceAxes()
	w.alike = w.findAlike()
	if w.Found.Pin == nil {
		w.classic = w.lines.startsToFind()
	}
	return w
}

// Count reads the merit of a set-out from the pieces along the boundaries.
func (w *Wall) Count(s Setting) Counted {
	g := w.ground(s.Placed)
	g.layer.Cover.Clear()
	t := tally{w: w}
	w.eachIn(g, &g.zones, w.Pattern.Origin(s.Line, s.Edge), func(set bond.Set) {
		g.layer.Cut(set, func(p *piece.Piece) { t.piece(p, set.Tile) })
		w.Work++
	})
	for _, gap := range g.layer.Cover.Gaps() {
		t.sights[boolean(gap.Low)].Bare += gap.Length
	}
	w.Work += 20
	return t.counted(s)
}

// Cut makes the pieces of the wall, without IDs, with the bare places.
func (w *Wall) Cut(s Setting) (survey.Shape, []piece.Piece, []piece.Gap) {
	shape := w.Found.Shape(w.room.Units, s.Placed)
	pieces, bare := piece.Lay(shape, w.Pattern, w.Pattern.Origin(s.Line, s.Edge), w.rule)
	return shape, pieces, bare
}

// counted turns what was added up into what a set-out gives.
func (t *tally) counted(s Setting) Counted {
	w := t.w
	c := Counted{Setting: s, Merit: t.merit(), Least: w.least[0].full, Full: w.least[0].full}
	c.left, c.right = t.ends()
	worst := full
	for i := range t.runs {
		r := &t.runs[i]
		if share := r.share(); !r.low && share.Less(worst) {
			worst, c.Least, c.Full = share, r.least, r.full
		}
	}
	if w.Found.Left.Meets == w.Found.Right.Meets {
		c.Merit.Mirror = (c.left.least - c.right.least).Abs().FloorTo(w.room.Tape)
	}
	w.lines.add(&c.Merit, s, w.ground(s.Placed).box)
	return c
}

// starts are the first start and how many marks of the tape there are from it: a
// pattern's reach about the middle of the tile field.
func (w *Wall) starts(tape length.Length) (length.Length, length.Length) {
	if p := w.Found.Pin; p != nil {
		return w.pinned(p), 1
	}
	box := w.ground(w.outer).box
	from := (box.Left + box.Right - w.Pattern.Reach).Half().CeilTo(tape)
	return from, (w.Pattern.Reach + tape - 1) / tape
}
