package piece

import (
	"cmp"
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Lay cuts the tiles of a pattern to the shape of a wall, where the lattice stands
// at origin: by row, then from left to right, with the bare places. Crossings of
// slanted edges are rounded to the unit, so that pieces and joints make up the
// region to within a unit along the edges of the pieces.
func Lay(shape survey.Shape, pattern bond.Pattern, origin plane.Point, rule Rule) (pieces []Piece, bare []Gap) {
	l := NewLayer(shape, pattern, rule)
	return l.all(origin), l.Cover.Gaps()
}

// all are the pieces of all tiles, in order.
func (l *Layer) all(origin plane.Point) (pieces []Piece) {
	l.sizes = true
	for _, set := range l.pattern.Over(origin, l.shape.Solid.Bounds()) {
		l.Cut(set, func(p *Piece) { pieces = append(pieces, *p) })
	}
	slices.SortStableFunc(pieces, func(a, b Piece) int {
		return cmp.Or(cmp.Compare(a.Row, b.Row), cmp.Compare(a.Tile.Left, b.Tile.Left), cmp.Compare(a.Tile.Bottom, b.Tile.Bottom), cmp.Compare(a.place, b.place))
	})
	return pieces
}

// Layer cuts tiles of a pattern, one by one, to one shape.
type Layer struct {
	Cover   *Cover
	shape   survey.Shape
	pattern bond.Pattern
	rule    Rule
	limits  []Limits // by tile of the pattern
	edges   []segment
	rims    []rim
	blocks  map[plane.Point]*[regions]plane.Region // the regions in pieces a few tiles wide, as they were asked for
	block   length.Length
	last    plane.Point            // which was asked for last
	here    *[regions]plane.Region // and that block
	sizes   bool                   // width, height and cuts are wanted too, and not the least width alone, and pieces are kept
	now     Piece                  // the one that is handed over
	spare   spare
}

// spare is room for the one piece that is handed over, where pieces are not kept.
type spare struct {
	ring       plane.Ring                 // of a tile that came without its outline
	cut        [regions]plane.Ring        // what one edge leaves of it
	of         [regions + 1][1]plane.Ring // regions of one ring
	part       [regions]plane.Room        // what is left of it where more than one edge comes
	across, up []Edge
}

// NewLayer is a layer on a wall on which nothing stands yet.
func NewLayer(shape survey.Shape, pattern bond.Pattern, rule Rule) *Layer {
	l := &Layer{Cover: NewCover(shape, rule), shape: shape, pattern: pattern, rule: rule}
	for _, t := range pattern.Tiles {
		l.limits = append(l.limits, rule.limits(t.Least))
	}
	for _, t := range pattern.Tiles {
		l.block = max(l.block, t.Box.Width(), t.Box.Height())
	}
	l.edges = make([]segment, 0, 32)
	l.note(shape.Solid, solid)
	if !same(shape.Visible, shape.Solid) {
		l.note(shape.Visible, visible)
	}
	if !same(shape.Region, shape.Solid) {
		l.note(shape.Region, drilled)
	}
	return l
}

// Cut hands over the pieces of one tile, each until the next, and covers what they cover.
// Without an outline the tile's is taken.
func (l *Layer) Cut(set bond.Set, each func(*Piece)) {
	tile := &l.pattern.Tiles[set.Tile]
	if set.Outline == nil {
		l.spare.ring = bond.MovedInto(l.spare.ring[:0], tile.Outline, set.At)
		set.Outline = l.spare.ring
	}
	box := tile.BoxAt(set.At)
	p := &l.now
	*p = Piece{Row: set.Row, Tile: box, Outline: set.Outline, Of: tile.Kind, place: set.Place}
	found := l.crossed(set.Outline, box)
	if found.none() {
		if !l.shape.Region.Contains(middle(box)) {
			return
		}
		p.Whole = true
		p.Face = l.region(regions, set.Outline)
		p.Visible, p.solid = p.Face, p.Face
		l.finish(p, set, each)
		return
	}
	if found.simple(l) {
		l.simple(p, set, &found, each)
		return
	}
	if !l.sizes && found.n[solid]+found.n[visible] == 0 && l.shape.Visible.Contains(middle(box)) {
		l.drilled(p, set, each)
		return
	}
	uncut, whole := *p, l.inTile(solid, set.Outline, box)
	if len(whole) == 1 {
		l.part(p, set, &found, whole, whole, each)
		return
	}
	for _, part := range ordered(whole.Parts()) {
		*p = uncut
		l.part(p, set, &found, whole, part, each)
	}
}

// drilled makes the piece of a tile that is whole but for its holes, without its outline round them.
func (l *Layer) drilled(p *Piece, set bond.Set, each func(*Piece)) {
	p.Face = l.region(regions, set.Outline)
	p.Visible, p.solid, p.Least, p.Kind = p.Face, p.Face, l.pattern.Tiles[set.Tile].Least, Hole
	for i := range l.rims {
		if r := &l.rims[i]; r.crosses(set.Outline, &p.Tile) {
			p.Cuts = append(p.Cuts, r.on)
		}
	}
	p.Share, p.Awkward = Part(p.Least, p.Least), l.rule.awkward(p)
	l.Cover.Near(p.solid)
	each(p)
}

// cutBy is what the last edge of a region that crosses a tile leaves of it.
func (l *Layer) cutBy(found *crossings, of region, outline plane.Ring) plane.Region {
	out := l.spare.cut[of][:0]
	if l.sizes {
		out = make(plane.Ring, 0, len(outline)+2)
	}
	out = found.last[of].cutBy(outline, out)
	l.spare.cut[of] = out
	return l.region(of, out).Tidy()
}

// region is a ring as a region, in spare room where pieces are not kept.
func (l *Layer) region(n region, ring plane.Ring) plane.Region {
	if l.sizes {
		return plane.Region{ring}
	}
	l.spare.of[n][0] = ring
	return l.spare.of[n][:]
}

// middle is a point inside a tile that a box is round.
func middle(b plane.Rect) plane.Point {
	return plane.Point{X: (b.Left + b.Right).Half(), Y: (b.Bottom + b.Top).Half()}
}

// simple makes the piece that one edge leaves of a tile, unless sealant takes it.
func (l *Layer) simple(p *Piece, set bond.Set, found *crossings, each func(*Piece)) {
	part := l.cutBy(found, solid, set.Outline)
	if len(part) == 0 || l.rule.sealed(part) {
		return
	}
	p.Face, p.Visible, p.solid = part, part, part
	if !same(l.shape.Visible, l.shape.Solid) {
		switch {
		case found.n[visible] == 1 && found.last[visible].alike(found.last[solid]):
		case found.n[visible] == 1:
			p.Visible = l.cutBy(found, visible, set.Outline)
		case l.shape.Visible.Contains(middle(p.Tile)):
			p.Visible = l.region(regions, set.Outline)
		default:
			p.Visible = nil
		}
	}
	l.finish(p, set, each)
}

// part makes a piece of one connected remainder of a tile, of all that is left of it, unless
// sealant takes it.
func (l *Layer) part(p *Piece, set bond.Set, found *crossings, whole, part plane.Region, each func(*Piece)) {
	p.Face, p.Visible, p.solid = part, part, part
	if !same(l.shape.Region, l.shape.Solid) {
		if p.Face = l.partOf(drilled, p, found, whole, part); p.Face.Area2() <= 0 {
			return
		}
	}
	if l.rule.sealed(part) {
		return
	}
	if !same(l.shape.Visible, l.shape.Solid) {
		p.Visible = l.partOf(visible, p, found, whole, part)
	}
	p.Whole = p.Face.Area2() == set.Outline.Area2()
	l.finish(p, set, each)
}

// partOf is a part of a tile in another region than the one that it was cut from. What is the same
// may begin with another corner, which only pieces that are kept show.
func (l *Layer) partOf(of region, p *Piece, found *crossings, whole, part plane.Region) plane.Region {
	switch {
	case !l.sizes && found.alike(of):
		if len(whole) == 1 {
			return part
		}
	case !same(l.about(of, p.Tile), l.about(solid, p.Tile)):
		whole = l.inTile(of, p.Outline, p.Tile)
	case len(whole) == 1:
		return part
	}
	return near(whole, part)
}

func (l *Layer) finish(p *Piece, set bond.Set, each func(*Piece)) {
	if !l.sizes {
		p.Across, p.Up = l.spare.across[:0], l.spare.up[:0]
	}
	l.rule.measureLaid(p, &l.pattern.Tiles[set.Tile], l.limits[set.Tile], l.sizes)
	if !l.sizes {
		l.spare.across, l.spare.up = p.Across[:0], p.Up[:0]
	}
	l.Cover.Near(p.solid)
	each(p)
}

// around is how far beyond a tile's box a region is cut before it is cut along the
// tile's edges, so that crossings on slanted edges are rounded near by.
const around = 8

// inTile is the part of a region inside a convex outline, which a box is round. A corner that comes to
// stand beside one of the outline's, because crossings are rounded, is that one.
func (l *Layer) inTile(of region, outline plane.Ring, box plane.Rect) plane.Region {
	r, room := l.about(of, box), &l.spare.part[of]
	if l.sizes {
		room = new(plane.Room)
	}
	if isBox(outline) {
		return r.KeepAllIn(room, plane.RightOf(box.Left), plane.LeftOf(box.Right), plane.Above(box.Bottom), plane.Below(box.Top))
	}
	lines := append(make([]plane.Line, 0, 12), plane.RightOf(box.Left-around), plane.LeftOf(box.Right+around), plane.Above(box.Bottom-around), plane.Below(box.Top+around))
	for i, c := range outline {
		lines = append(lines, plane.Through(c.Point, outline[(i+1)%len(outline)].Point))
	}
	if r = r.KeepAllIn(room, lines...); len(r) == 0 {
		return nil
	}
	return r.Snapped(outline, 3)
}

// about is the part of a region about a box no larger than a block: from the low
// left corner of the block in which the box begins to two blocks on.
func (l *Layer) about(of region, box plane.Rect) plane.Region {
	key := plane.Point{X: (box.Left - around).FloorTo(l.block), Y: (box.Bottom - around).FloorTo(l.block)}
	if l.here == nil || l.last != key {
		if l.blocks == nil {
			l.blocks = map[plane.Point]*[regions]plane.Region{}
		}
		if l.blocks[key] == nil {
			l.blocks[key] = l.blockAt(key)
		}
		l.last, l.here = key, l.blocks[key]
	}
	return l.here[of]
}

// blockAt is a block of every region; regions that are the same in it are one.
func (l *Layer) blockAt(key plane.Point) *[regions]plane.Region {
	b := &[regions]plane.Region{l.shape.Solid, l.shape.Visible, l.shape.Region}
	far := 2*l.block + 2*around
	for of := range b {
		b[of] = b[of].KeepAll(plane.RightOf(key.X-around), plane.LeftOf(key.X+far), plane.Above(key.Y-around), plane.Below(key.Y+far))
		if slices.EqualFunc(b[of], b[solid], slices.Equal[plane.Ring]) {
			b[of] = b[solid]
		}
	}
	return b
}
