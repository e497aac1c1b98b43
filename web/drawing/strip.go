package drawing

import (
	"cmp"
	"slices"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
)

// Strips are laid out for a phone of 360 px.
const (
	stripWide = 340 * px
	stripText = 13 * px
)

// FootEnds are the two ends of the edge by which a piece is cut to the base; of
// one that is not, the lower corners of its face.
func FootEnds(w layout.Wall, p piece.Piece) (left, right plane.Point) {
	found := false
	take := func(q plane.Point) {
		if !found || q.X < left.X {
			left = q
		}
		if !found || q.X > right.X {
			right = q
		}
		found = true
	}
	for _, ring := range p.Face {
		for i, c := range ring {
			next := ring[(i+1)%len(ring)].Point
			if w.Shape.Sides[c.On].Part.Is == survey.BaseSegment && (next.X-c.X).Abs() > (next.Y-c.Y).Abs() {
				take(c.Point)
				take(next)
			}
		}
	}
	if !found {
		box := p.Face.Bounds()
		left, right = plane.Point{X: box.Left, Y: box.Bottom}, plane.Point{X: box.Right, Y: box.Bottom}
	}
	return left, right
}

// Footing draws the tiles over the base round some of them, their tops on one
// line, with the two heights of those here; those of a pattern without courses where
// they stand, without heights, and a leg's foot by itself.
func Footing(plan layout.Plan, wall int, here []string) Scene {
	b := newBoard(plan, wrapTexts)
	w := plan.Walls[wall]
	in := stages.Input{Room: plan.Room, Walls: plan.Walls}
	leg := slices.ContainsFunc(w.Pieces, func(p piece.Piece) bool { return slices.Contains(here, p.ID) && UnderRim(w, p) })
	var row []piece.Piece
	for _, p := range w.Pieces {
		if in.FirstCourse(w, p) && UnderRim(w, p) == leg {
			row = append(row, p)
		}
	}
	slices.SortStableFunc(row, func(a, z piece.Piece) int { return cmp.Compare(a.Face.Bounds().Left, z.Face.Bounds().Left) })
	first := slices.IndexFunc(row, func(p piece.Piece) bool { return slices.Contains(here, p.ID) })
	b.Title, b.Width = "The first course", stripWide
	if first < 0 {
		return b.Scene
	}
	last := first
	for last+1 < len(row) && slices.Contains(here, row[last+1].ID) {
		last++
	}
	from, to := max(0, first-1), min(len(row)-1, last+1)
	row = row[from : to+1]
	high, laid := asLaid(row)
	x0, x1 := row[0].Face.Bounds().Left, row[0].Face.Bounds().Right
	var tall length.Length
	for _, p := range row {
		box := p.Face.Bounds()
		x1, tall = max(x1, box.Right), max(tall, box.Height())
		if laid {
			tall = max(tall, high-box.Bottom)
		}
	}
	b.Scale = fit(x1-x0, stripWide-8*px).or(fit(tall, 120*px))
	left, top := (stripWide-b.Scale.On(x1-x0))/2, 2*stripText
	low := top + b.Scale.On(tall)
	b.Height = low + 2*stripText
	for _, p := range row {
		from, own := p.Face.Bounds().Top, slices.Contains(here, p.ID)
		if laid {
			from = high
		}
		at := func(q plane.Point) Point {
			return Point{left + b.Scale.On(q.X-x0), top + b.Scale.On(from-q.Y)}
		}
		var rings [][]Point
		for _, ring := range p.Face {
			var pts []Point
			for _, c := range ring {
				pts = append(pts, at(c.Point))
			}
			rings = append(rings, pts)
		}
		tag, ink := Tag{Kind: Whole, Wall: wall, Piece: p.ID}, Ink{Fill: White, Line: Grout, Width: 2 * px}
		if own {
			ink = Ink{Fill: Ramp1, Line: Blue, Width: 3 * px}
		}
		b.path(tag, ink, rings...)
		if own {
			b.stripFigures(w, p, at, low, !laid)
		}
	}
	return b.Scene
}

// UnderRim tells whether all of a piece stands under the longest stretch of its wall's
// base: as a leg's foot does, beside a tub.
func UnderRim(w layout.Wall, p piece.Piece) bool {
	t, found := footOf(frame{scale: Scale{1, 1}}, w)
	if !found {
		return false
	}
	rim := t.base.Readings[0].Value
	for _, r := range t.base.Readings {
		rim = min(rim, r.Value)
	}
	return p.Face.Bounds().Top <= rim
}

// asLaid tells whether tiles stand at heights of their own, as in a pattern without
// courses, and how high the highest reaches.
func asLaid(row []piece.Piece) (high length.Length, laid bool) {
	high = row[0].Face.Bounds().Top
	for _, p := range row {
		high, laid = max(high, p.Face.Bounds().Top), laid || p.Outline != nil && p.Tile.Top != row[0].Tile.Top
	}
	return high, laid
}

// stripFigures writes a tile's name over it and its two heights under its ends,
// where there is room.
func (b *board) stripFigures(w layout.Wall, p piece.Piece, at func(plane.Point) Point, low Micron, heights bool) {
	box := p.Face.Bounds()
	mid := (at(plane.Point{X: box.Left, Y: box.Top}).X + at(plane.Point{X: box.Right, Y: box.Top}).X) / 2
	name := Label{Tag: Tag{Kind: Name, Wall: -1}, Text: p.ID, Size: stripText, Bold: true, Colour: Black, Anchor: Middle, At: Point{mid, 3 * stripText / 2}}
	b.offer(name)
	if !heights {
		return
	}
	l, r := FootEnds(w, p)
	step := b.plan.Room.Units.FineStep()
	figure := Label{Tag: Tag{Kind: Size, Wall: -1}, Size: stripText, Bold: true, Colour: Black}
	y, other := low+3*stripText/2, figure
	figure.Text, figure.At, figure.Anchor = (box.Top - l.Y).FloorTo(step).Fine(b.plan.Room.Units), Point{at(l).X, y}, Left
	other.Text, other.At, other.Anchor = (box.Top - r.Y).FloorTo(step).Fine(b.plan.Room.Units), Point{at(r).X, y}, Right
	if both := figure.width() + other.width() + 6*clearance; both > at(r).X-at(l).X { // beyond its ends, as far as the paper goes
		from := min(max(mid-both/2, clearance), stripWide-both-clearance)
		figure.At.X, other.At.X = from, from+both
	}
	b.offer(figure)
	b.offer(other)
}

// SetOut draws the walls as outlines on one level line, with the line that is
// struck and the tile edge that is struck on each.
func SetOut(plan layout.Plan) Scene {
	b := newBoard(plan, wrapTexts)
	b.Title, b.Width, b.Height = "The lines to strike", stripWide, 190*px
	struck := stages.ToStrike(plan.Room, plan.Setout.Line, plan.Walls)
	var sum, low, top length.Length
	for _, w := range plan.Walls {
		r := extents(w)
		sum, low, top = sum+w.Found.Width, min(low, r.Bottom, struck.At), max(top, r.Top, struck.At)
	}
	if len(plan.Walls) == 0 {
		return b.Scene
	}
	apart := 8 * px
	b.Scale = fit(sum, stripWide-8*px-apart*Micron(len(plan.Walls)-1)).or(fit(top-low, b.Height-4*stripText))
	y := stripText/2 + b.Scale.On(top)
	x := 4 * px
	under := y + b.Scale.On(-low) + 2*stripText
	for i, w := range plan.Walls {
		f := frame{wall: i, scale: b.Scale, origin: Point{x, y}}
		b.path(Tag{Kind: Outline, Wall: i}, Ink{Fill: White, Line: Black, Width: 2 * px}, f.rings(w.Shape.Region)...)
		tag := Tag{Kind: Name, Wall: -1}
		b.label(Label{Tag: tag, Text: w.Found.Letter, Size: stripText, Bold: true, Colour: Black, At: Point{x + 4*px, f.at(0, extents(w).Top).Y + stripText*5/4}})
		if edge, ok := stages.Strike(w, struck.Full); ok {
			b.chain(Tag{Kind: Start, Wall: i}, broken(Blue, px, DashDot), f.at(edge, extents(w).Top), f.at(edge, struck.At))
			b.offer(Label{Tag: Tag{Kind: Start, Wall: -1}, Text: b.figure(edge), Size: stripText, Bold: true, Colour: Blue, Anchor: Middle, At: Point{f.at(edge, 0).X, under}})
		}
		x += b.Scale.On(w.Found.Width) + apart
	}
	b.chain(Tag{Kind: LevelLine, Wall: -1}, line(Red, 2*px), Point{2 * px, y}, Point{x - apart, y})
	at := y - b.Scale.On(struck.At)
	b.chain(Tag{Kind: CourseLine, Wall: -1}, line(Blue, 3*px), Point{2 * px, at}, Point{x - apart, at})
	return b.Scene
}
