package drawing

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
)

// Tiles are the whole tiles of one size on one wall, as runs of equal tiles
// with equal joints between them. A pen that knows nothing of runs is given
// them as a path.
type Tiles struct {
	Tag
	Fill       Colour
	Wide, High float64 // of a tile, in micrometres on paper
	Gap        float64 // between the tiles of a run
	Up         bool    // runs go up the wall, not along it
	Runs       []Run
}

// Reach is how long a run is, from edge to edge.
func (e Tiles) Reach(r Run) float64 {
	long := e.Wide
	if e.Up {
		long = e.High
	}
	return times(r.Count, long+e.Gap) - e.Gap
}

// Run is a row of whole tiles. X and Y are the middle of the first tile's left
// edge, or of its lower edge where the run goes up.
type Run struct {
	X, Y  float64
	Count int
	First string // id of the first; those of the others count on
}

// TilesPen is a Pen that can write runs of tiles shorter than as a path.
type TilesPen interface{ Tiles(Tiles) }

func (e Tiles) draw(p Pen) {
	if t, can := p.(TilesPen); can {
		t.Tiles(e)
		return
	}
	p.Path(e.Path())
}

// Path gives the tiles one by one.
func (e Tiles) Path() Path {
	out := Path{Tag: e.Tag, Ink: fill(e.Fill)}
	for _, r := range e.Runs {
		for n := range r.Count {
			x, y := r.X+times(n, e.Wide+e.Gap), r.Y-e.High/2
			if e.Up {
				x, y = r.X-e.Wide/2, r.Y-times(n, e.High+e.Gap)-e.High
			}
			out.Rings = append(out.Rings, corners(Point{round(x), round(y)}, Point{round(x + e.Wide), round(y + e.High)}))
		}
	}
	return out
}

// times is n times x, rounded before anything is added to it: a processor that
// does both at once would draw another micrometre.
func times(n int, x float64) float64 { return float64(float64(n) * x) }

func round(x float64) Micron {
	if x < 0 {
		return -round(-x)
	}
	return Micron(x + 0.5)
}

// thinJoint is the least width a joint is drawn with: a line of 0.18 mm.
const thinJoint = 180

// whole draws the whole tiles of a wall over the ground of their joints.
func (b *board) whole(f frame, pieces []*piece.Piece, tile Colour) {
	if b.single {
		b.wholeOfPattern(f, pieces, tile)
		return
	}
	laid := slices.IndexFunc(pieces, func(p *piece.Piece) bool { return p.Outline != nil })
	if laid >= 0 {
		rows := slices.DeleteFunc(slices.Clone(pieces), func(p *piece.Piece) bool { return p.Outline != nil })
		b.wholeOfPattern(f, slices.DeleteFunc(slices.Clone(pieces), func(p *piece.Piece) bool { return p.Outline == nil }), tile)
		pieces = rows
	}
	up := b.plan.Room.Bond.Plumb
	for _, size := range bySize(pieces, up) {
		joint := b.plan.Room.Laid(size[0].Laid).Joint
		e := Tiles{Tag: Tag{Kind: Whole, Wall: f.wall}, Fill: b.laidColour(size[0].Laid, tile), Up: up}
		e.sized(f, size[0].Tile, joint)
		for _, run := range inRuns(size, joint, up) {
			e.Runs = append(e.Runs, e.run(f, run))
		}
		b.Elements = append(b.Elements, e)
	}
}

// sized gives the tiles the size of a box, less what keeps their joints wide
// enough to be seen.
func (e *Tiles) sized(f frame, box plane.Rect, joint length.Length) {
	e.Gap = max(f.exact(joint), min(thinJoint, f.exact(min(box.Width(), box.Height()))/3))
	less := e.Gap - f.exact(joint)
	e.Wide, e.High = f.exact(box.Width())-less, f.exact(box.Height())-less
}

// run lays tiles beside each other on paper.
func (e *Tiles) run(f frame, tiles []*piece.Piece) Run {
	box := tiles[0].Tile
	r := Run{Count: len(tiles), First: tiles[0].ID}
	r.X, r.Y = float64(f.origin.X), float64(f.origin.Y)
	if e.Up {
		r.X += f.exact(box.Left+box.Right) / 2
		r.Y -= f.exact(box.Bottom) + (f.exact(box.Height())-e.High)/2
		return r
	}
	r.X += f.exact(box.Left) + (f.exact(box.Width())-e.Wide)/2
	r.Y -= f.exact(box.Bottom+box.Top) / 2
	return r
}

// bySize parts tiles by their size and by whose they are, each part in the order of runs.
func bySize(pieces []*piece.Piece, up bool) [][]*piece.Piece {
	type size struct {
		wide, high length.Length
		laid       int
	}
	of := map[size]int{}
	var out [][]*piece.Piece
	for _, p := range pieces {
		s := size{p.Tile.Width(), p.Tile.Height(), p.Laid}
		if _, known := of[s]; !known {
			of[s] = len(out)
			out = append(out, nil)
		}
		out[of[s]] = append(out[of[s]], p)
	}
	for _, part := range out {
		slices.SortStableFunc(part, func(p, q *piece.Piece) int {
			along, across := cmp.Compare(p.Tile.Left, q.Tile.Left), cmp.Compare(p.Tile.Bottom, q.Tile.Bottom)
			if up {
				return cmp.Or(along, across)
			}
			return cmp.Or(across, along)
		})
	}
	return out
}

// inRuns parts sorted tiles where the next one does not stand a joint further
// on in the same course.
func inRuns(tiles []*piece.Piece, joint length.Length, up bool) [][]*piece.Piece {
	var out [][]*piece.Piece
	from := 0
	for i := 1; i <= len(tiles); i++ {
		if i < len(tiles) && follows(tiles[i-1], tiles[i], joint, up) {
			continue
		}
		out = append(out, tiles[from:i])
		from = i
	}
	return out
}

// follows tells whether q is the next piece of p's course, right beside it.
func follows(p, q *piece.Piece, joint length.Length, up bool) bool {
	a, b := p.Tile, q.Tile
	if up {
		a, b = a.Transposed(), b.Transposed()
	}
	return p.Course == q.Course && a.Bottom == b.Bottom && a.Right+joint == b.Left
}
