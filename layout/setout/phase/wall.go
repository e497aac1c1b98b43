package phase

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
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
	Left, Right length.Length
	Least       length.Length // the smallest run in sight, and the tile's least width
	Full        length.Length
}

// Wall is one wall of a room laid in a pattern.
type Wall struct {
	Found   survey.WallFound // with what is pinned fixed
	Pattern bond.Pattern
	Work    int // what was counted so far
	odds    [allSteps]odds

	room      *survey.Room
	rule      piece.Rule
	order     merit.Order
	axes      []*axis
	inner     plane.Rect // the wall with its free ends and head where they leave least
	scratch   []survey.Edges
	byMarks   bool // only tiles that free marks may touch are bounded, along edges that meet nothing
	endsApart bool // see endsStandApart
	outer     survey.Placed
	typed     survey.WallFound // as the survey has it
	lines     lines
	shape     *ground
	known     map[groundKey]*ground
	edges     []edge          // those that stand
	loose     []looseEdge     // those that free marks move, where the wall is largest
	least     []limits        // by tile of the pattern
	corners   int             // how many corners and pipes it has
	classic   []length.Length // starts of the trade, off the tape too
}

type limits struct{ full, sliver, unworkable length.Length }

// NewWall is a wall of a room laid in a pattern.
func NewWall(room *survey.Room, found survey.WallFound, pattern bond.Pattern) *Wall {
	w := &Wall{Found: count.WithPins(found), Pattern: pattern, room: room, order: merit.OrderFor(room.Prefer), typed: found}
	w.lines = lines{w, pattern.PlumbLines(), pattern.LevelLines()}
	for _, t := range pattern.Tiles {
		w.least = append(w.least, limits{t.Least, piece.SliverLimit(*room, t.Least), piece.UnworkableLimit(*room, t.Least)})
	}
	w.outer = outermost(w.Found)
	w.findAxes()
	w.rule = piece.RuleFor(*room, w.Found, w.Found.Sides())
	g := w.ground(w.outer)
	w.corners = len(g.turns)
	w.findEdges(g.shape)
	w.findOthers(g.shape)
	w.fenceAxes()
	w.endsApart = w.endsStandApart()
	if w.Found.Pin == nil {
		w.classic = w.lines.startsToFind()
	}
	return w
}

// ground is a wall with its marks placed, on which any phase may be laid.
type ground struct {
	placed survey.Placed
	shape  survey.Shape
	layer  *piece.Layer
	zones  []plane.Rect // where tiles meet a boundary: all others are whole or outside, and cover none
	turns  []plane.Rect // where two boundaries meet, and the pipes
	hard   []plane.Rect // the turns, and where tiles meet a boundary that may be left bare
	marked []plane.Rect // the hard ones, then all zones, as far as free marks may touch tiles there
	box    plane.Rect
}

// mostGrounds is how many placings of a wall's marks are kept.
const mostGrounds = 1024

// groundKey finds a ground again: where the ends, the head and the last free opening stand.
type groundKey struct {
	left, right, head length.Length
	last              survey.Edges
}

// ground is the wall with its marks placed; the last ones are kept.
func (w *Wall) ground(p survey.Placed) *ground {
	if w.shape != nil && same(w.shape.placed, p) {
		return w.shape
	}
	key := groundKey{p.Left, p.Right, p.Head, survey.Edges{}}
	if n := len(w.axes); n > 0 && w.axes[n-1].opening >= 0 {
		key.last = p.Openings[w.axes[n-1].opening]
	}
	if g := w.known[key]; g != nil && same(g.placed, p) {
		w.shape = g
		return g
	}
	s := w.Found.Shape(w.room.Units, p)
	g := &ground{placed: p, shape: s, layer: piece.NewLayer(s, w.Pattern, w.rule), box: s.Solid.Bounds()}
	far := max(w.rule.Joint, w.rule.Sealant) + 16
	zone := func(a, b plane.Point) {
		g.zones = append(g.zones, plane.Rect{Left: min(a.X, b.X) - far, Bottom: min(a.Y, b.Y) - far, Right: max(a.X, b.X) + far, Top: max(a.Y, b.Y) + far})
	}
	for _, r := range []plane.Region{s.Solid, s.Visible} {
		for _, ring := range r {
			for i, c := range ring {
				zone(c.Point, ring[(i+1)%len(ring)].Point)
				if c.On != 0 && w.rule.Sides[c.On].Meets {
					g.hard = append(g.hard, g.zones[len(g.zones)-1])
				}
				g.turns = append(g.turns, plane.Rect{Left: c.X - 1, Bottom: c.Y - 1, Right: c.X + 1, Top: c.Y + 1})
			}
		}
	}
	for _, pipe := range w.rule.Pipes {
		r := pipe.Radius + pipe.Radius/64 + 2
		zone(plane.Point{X: pipe.Centre.X - r, Y: pipe.Centre.Y - r}, plane.Point{X: pipe.Centre.X + r, Y: pipe.Centre.Y + r})
		g.turns = append(g.turns, g.zones[len(g.zones)-1])
	}
	g.zones, g.turns = slices.Compact(g.zones), slices.Compact(g.turns)
	g.hard = append(slices.Compact(g.hard), g.turns...)
	g.marked = w.touchedIn(slices.Concat(g.hard, g.zones), w.axes)
	w.shape = g
	if w.known == nil || len(w.known) >= mostGrounds {
		w.known = map[groundKey]*ground{}
	}
	w.known[key] = g
	w.Work += 20
	return g
}

func boolean(b bool) int {
	if b {
		return 1
	}
	return 0
}

func same(a, b survey.Placed) bool {
	return a.Left == b.Left && a.Right == b.Right && a.Head == b.Head && slices.Equal(a.Openings, b.Openings)
}

// Count reads the merit of a set-out from the pieces along the boundaries.
func (w *Wall) Count(s Setting) Counted {
	g := w.ground(s.Placed)
	g.layer.Cover.Clear()
	t := tally{w: w}
	w.eachIn(g, g.zones, w.Pattern.Origin(s.Line, s.Edge), func(set bond.Set) {
		g.layer.Cut(set, func(p *piece.Piece) { t.piece(p, set.Tile) })
		w.Work++
	})
	for _, gap := range g.layer.Cover.Gaps() {
		t.sights[boolean(gap.Low)].Bare += gap.Length
	}
	w.Work += 20
	return t.counted(s)
}

// eachIn gives every tile in some zones of the wall, once, without its outline.
func (w *Wall) eachIn(g *ground, zones []plane.Rect, origin plane.Point, each func(bond.Set)) {
	w.eachZone(g, zones, origin, func(set bond.Set, _ int) { each(set) })
}

// eachZone gives every tile in some zones, with the first that it is in.
func (w *Wall) eachZone(g *ground, zones []plane.Rect, origin plane.Point, each func(set bond.Set, zone int)) {
	for n, zone := range zones {
		w.Pattern.Each(origin, zone, func(place int, at plane.Point) {
			tile := w.Pattern.Places[place].Tile
			box := w.Pattern.Tiles[tile].BoxAt(at)
			for _, before := range zones[:n] {
				if before.Overlaps(box) {
					return
				}
			}
			if g.box.Overlaps(box) {
				each(bond.Set{Place: place, Tile: tile, At: at}, n)
			}
		})
	}
}

// Cut makes the pieces of the wall, without IDs, with the bare places.
func (w *Wall) Cut(s Setting) (survey.Shape, []piece.Piece, []piece.Gap) {
	shape := w.Found.Shape(w.room.Units, s.Placed)
	pieces, bare := piece.Lay(shape, w.Pattern, w.Pattern.Origin(s.Line, s.Edge), w.rule)
	return shape, pieces, bare
}
