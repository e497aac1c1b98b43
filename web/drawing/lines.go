package drawing

import (
	"slices"
	"strconv"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/piece"
)

// levelLine draws the one red line, over the whole width given.
func (b *board) levelLine(y, from, to Micron) {
	b.chain(Tag{Kind: LevelLine, Wall: -1}, line(Red, 700), Point{from, y}, Point{to, y})
}

// courseLine draws the bottom edge of course 0, with a flag at each end.
func (b *board) courseLine(f frame, w layout.Wall, over Micron) {
	y, r := b.plan.Setout.Line, extents(w)
	if y < r.Bottom || y > r.Top {
		return
	}
	a, z := f.at(r.Left, y), f.at(r.Right, y)
	tag := Tag{Kind: CourseLine, Wall: f.wall}
	b.chain(tag, line(Blue, 700), Point{a.X - over, a.Y}, Point{z.X + over, z.Y})
	if over > 0 {
		b.path(tag, fill(Blue), flag(Point{a.X - over, a.Y}, 1400))
		b.path(tag, fill(Blue), flag(Point{z.X + over, z.Y}, -1400))
	}
}

// flag is an arrow head that points from p towards +x (or −x).
func flag(p Point, d Micron) []Point {
	h := max(d, -d) / 2
	return []Point{{p.X - d, p.Y - h}, p, {p.X - d, p.Y + h}}
}

// centreLine draws the plumb line through the wall's middle.
func (b *board) centreLine(f frame, w layout.Wall) {
	r, x := extents(w), w.Found.Width/2
	top, low := f.at(x, r.Top), f.at(x, baseAt(w, x))
	b.chain(Tag{Kind: Centre, Wall: f.wall}, broken(Black, 250, DashDot),
		Point{top.X, top.Y - 2500}, Point{low.X, low.Y + ground + 1500})
}

// startLine draws the plumb line that the bond begins on, from the course line up.
func (b *board) startLine(f frame, w layout.Wall) {
	b.chain(Tag{Kind: Start, Wall: f.wall}, broken(Blue, 350, DashDot),
		f.at(w.Start.X, extents(w).Top), f.at(w.Start.X, b.plan.Setout.Line))
}

// start marks where the bond begins: a pointer under the course line and the
// outline of the first tile.
func (b *board) start(f frame, w layout.Wall) {
	if p, ok := firstTile(w, b.plan.Setout.Line); ok {
		b.path(Tag{Kind: Start, Wall: f.wall, Piece: p.ID}, line(Blue, 900), f.rings(p.Face)...)
	}
	at := f.at(w.Start.X, b.plan.Setout.Line)
	b.path(Tag{Kind: Pointer, Wall: f.wall}, fill(Blue), []Point{at, {at.X + 1500, at.Y + 2800}, {at.X - 1500, at.Y + 2800}})
}

// startName writes START at the first tile: in it or in the courses over it,
// where it covers no size; else under the course line.
func (b *board) startName(f frame, w layout.Wall) {
	l := Label{Tag: Tag{Kind: Start, Wall: f.wall}, Text: "START joint", Size: b.texts.dim, Bold: true, Colour: Blue}
	if w.Start.OnTile {
		l.Text = "START tile"
	}
	at, texts, t := f.at(w.Start.X, b.plan.Setout.Line), b.texting(), b.plan.Room.Tile
	half, high := l.width()/2, f.scale.On(t.Height+b.plan.Room.Joint)
	for row := range Micron(3) {
		for _, side := range []Micron{1, -1} {
			c := Point{at.X + side*(half+1500), at.Y - high*row - high/2}
			if w.Start.OnTile && row == 0 {
				c.X = at.X
			}
			if b.vacant(plateRoom(l, c), texts) {
				b.plate(l, c, White)
				return
			}
		}
	}
	b.plate(l, Point{at.X + half + 2600, at.Y + l.Size}, White)
}

// vacant tells whether a text's room is on the paper and overlaps no other text.
func (b *board) vacant(room box, texts []box) bool {
	return room.from.X > 0 && room.to.X < b.Width && !slices.ContainsFunc(texts, func(t box) bool {
		return room.from.X < t.to.X && room.to.X > t.from.X && room.from.Y < t.to.Y && room.to.Y > t.from.Y
	})
}

// firstTile is the piece of course 0 that the start names: the one whose tile
// has its left edge on the start's tile edge.
func firstTile(w layout.Wall, line length.Length) (piece.Piece, bool) {
	for _, p := range w.Pieces {
		if p.Tile.Left == w.Start.Edge && p.Tile.Bottom == line {
			return p, true
		}
	}
	return piece.Piece{}, false
}

// courseNumbers counts the courses at the left end of the wall, from the
// bottom; columns of a plumb bond are counted along the head.
func (b *board) courseNumbers(f frame, w layout.Wall) {
	r, size, t := w.Shape.Region.Bounds(), b.texts.dim, b.plan.Room.Tile
	pitch, clear := f.scale.On(t.Height+b.plan.Room.Joint), size*5/4
	if b.plan.Room.Bond.Plumb {
		pitch, clear = f.scale.On(t.Width+b.plan.Room.Joint), size*2
	}
	every := everyNth(pitch, clear)
	for _, p := range firsts(w.Pieces) {
		if p.Course%every != 0 && p.Course != 1 {
			continue
		}
		l := Label{Tag: Tag{Kind: Course, Wall: f.wall}, Text: strconv.Itoa(p.Course), Size: size, Colour: Black}
		if b.plan.Room.Bond.Plumb {
			at := f.at((max(p.Tile.Left, r.Left)+min(p.Tile.Right, r.Right))/2, r.Top)
			b.label(centred(l, Point{at.X, at.Y - ground - size}))
			continue
		}
		at := f.at(r.Left, (max(p.Tile.Bottom, r.Bottom)+min(p.Tile.Top, r.Top))/2)
		l.Anchor, l.At = Right, Point{f.origin.X - 7500, at.Y + drop(size)}
		b.label(l)
	}
}

// firsts are the first pieces of each course, in the order of the pieces.
func firsts(pieces []piece.Piece) []piece.Piece {
	var out []piece.Piece
	seen := map[int]bool{}
	for _, p := range pieces {
		if !seen[p.Course] {
			seen[p.Course] = true
			out = append(out, p)
		}
	}
	return out
}

// everyNth is how many courses apart the numbers stand so that they keep clear.
func everyNth(pitch, clear Micron) int {
	for _, n := range []int{1, 2, 5, 10, 20, 50} {
		if pitch*Micron(n) >= clear {
			return n
		}
	}
	return 100
}
