package sheet

import (
	"cmp"
	"slices"
	"strings"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/stages"
	"coursewright/web/drawing"
)

// firstCourse draws the tiles over the base of every wall as a strip, with both
// heights of each, on one leaf at the largest scale that fits.
func (b *book) firstCourse() {
	strips := make([]footing, len(b.plan.Walls))
	var widest length.Length
	for i, w := range b.plan.Walls {
		strips[i] = b.footing(w)
		widest = max(widest, strips[i].wide())
	}
	before, scales := b.mark(), ladder(b.plan.Room.Units)
	for i, scale := range scales {
		for _, percent := range percents {
			b.back(before)
			f := b.sized(subject{title: "First course", scale: scale}, false, percent)
			if scale.On(widest) > f.breadth() && i < len(scales)-1 {
				continue
			}
			b.footings(f, strips, scale)
			if len(b.leaves) == before.leaves+1 {
				return
			}
		}
	}
}

// footings draws the strips, as many beside each other as there is room for.
func (b *book) footings(f *flow, strips []footing, scale drawing.Scale) {
	f.words(plain, "The tiles over the uneven base, seen from the face, their tops on one line. Cut the lower edge of each to its two heights, measured down from its top edge at the ends of the cut; "+
		"the drop is how far that end stands under the level line."+b.said())
	lo, _ := f.area()
	x, low := lo.X, f.y
	for _, i := range b.inOrder() {
		title, s := "Wall "+wallText(b.plan.Walls[i].Found), strips[i]
		if len(s.tiles) == 0 {
			f.y, x = low, lo.X
			f.words(body, title+": its first course is set already, or there is none.")
			low = f.y
			continue
		}
		wide := scale.On(s.wide())
		if x > lo.X && x+wide > lo.X+f.breadth() {
			f.y, x = low, lo.X
		}
		if x == lo.X {
			f.need(f.footHigh(s, scale))
			low = f.y
		}
		low = max(low, f.footing(s, scale, title, x))
		x += wide + 10*mmPaper
	}
	f.y = low
	for _, s := range strips {
		if text := b.widths(s); text != "" {
			f.words(plain, text)
		}
	}
	f.cautions(atTheBase...)
}

// footing is the first course of a wall, from left to right.
type footing struct{ tiles []footed }

// footed is one tile of it: its face, and the two ends of the edge that is cut.
type footed struct {
	piece       piece.Piece
	box         plane.Rect
	left, right plane.Point
	line        string // of the cut schedule
}

// heights are measured from the top edge down to the ends of the cut.
func (t footed) heights() (left, right length.Length) {
	return t.box.Top - t.left.Y, t.box.Top - t.right.Y
}

func (f footing) wide() length.Length {
	if len(f.tiles) == 0 {
		return 0
	}
	return f.tiles[len(f.tiles)-1].box.Right - f.tiles[0].box.Left
}

func (b *book) footing(w layout.Wall) footing {
	var out footing
	in := stages.Input{Room: b.plan.Room, Walls: b.plan.Walls}
	lines := map[string]string{}
	for _, c := range b.cuts.Cuts {
		lines[c.Piece] = c.Group
	}
	for _, p := range w.Pieces {
		if in.FirstCourse(w, p) && !w.Found.Stands(p.Row) {
			left, right := drawing.FootEnds(w, p)
			out.tiles = append(out.tiles, footed{p, p.Face.Bounds(), left, right, lines[p.ID]})
		}
	}
	slices.SortStableFunc(out.tiles, func(a, b footed) int { return cmp.Compare(a.box.Left, b.box.Left) })
	return out
}

// The texts of a strip stand upright under and over the tiles.
var (
	footHeight = style{size: 3800, bold: true, up: true, anchor: drawing.Right}
	footDrop   = style{size: 3000, up: true, anchor: drawing.Right}
	footName   = style{size: 3000, up: true}
)

const footApart = 4100 // from text to text

// mark is what stands under one end of a tile.
type mark struct {
	at           drawing.Micron
	height, drop string
}

// bands are the heights of what a strip consists of, from its title down.
type bands struct{ title, names, tiles, heights, drops drawing.Micron }

func (f *flow) bands(strip footing, scale drawing.Scale) bands {
	b := bands{title: f.of(strong).leading() + 1500, heights: footHeight.width("1 1/2\""), drops: footDrop.width("drop")}
	for _, m := range f.marks(strip, scale, 0) {
		b.heights, b.drops = max(b.heights, footHeight.width(m.height)), max(b.drops, footDrop.width(m.drop))
	}
	for _, t := range strip.tiles {
		b.tiles, b.names = max(b.tiles, scale.On(t.box.Height())), max(b.names, footName.width(t.piece.ID))
	}
	return b
}

func (f *flow) footHigh(strip footing, scale drawing.Scale) drawing.Micron {
	b := f.bands(strip, scale)
	return b.title + b.names + b.tiles + b.heights + b.drops + 7*mmPaper
}

// footing draws one strip from x on, and gives where it ends below.
func (f *flow) footing(strip footing, scale drawing.Scale, title string, x drawing.Micron) drawing.Micron {
	b := f.bands(strip, scale)
	f.text(drawing.Point{X: x, Y: f.y + f.of(strong).size}, f.of(strong), title)
	top := f.y + b.title + b.names + 1000
	from, last := x-footApart, ""
	for _, t := range strip.tiles {
		f.face(t.piece.Face, func(p plane.Point) drawing.Point {
			return drawing.Point{X: x + scale.On(p.X-strip.tiles[0].box.Left), Y: top + scale.On(t.box.Top-p.Y)}
		})
		at := max(x+scale.On((t.box.Left+t.box.Right).Half()-strip.tiles[0].box.Left)+footName.size/3, from+footApart)
		if f.crowded(scale) && last != "" && t.line == last {
			continue // one of many alike
		}
		from, last = at, t.line
		f.text(drawing.Point{X: at, Y: top - 800}, footName, t.piece.ID)
	}
	low := top + b.tiles + 1500
	for _, m := range f.marks(strip, scale, x) {
		tick := m.at - footHeight.size/3
		f.line(ink(drawing.Grey, 180), drawing.Point{X: tick, Y: low - 1200}, drawing.Point{X: tick, Y: low - 200})
		f.text(drawing.Point{X: m.at, Y: low}, footHeight, m.height)
		f.text(drawing.Point{X: m.at - 300, Y: low + b.heights + 1500}, footDrop, m.drop)
	}
	return low + b.heights + b.drops + 3500
}

// crowded tells whether two figures do not fit under one tile.
func (f *flow) crowded(scale drawing.Scale) bool {
	return scale.On(f.book.plan.Room.Tile.Width) < 2*footApart+500
}

// marks are the figures under a strip, apart from each other. Where tiles are
// small, a figure that repeats the one before it is left out.
func (f *flow) marks(strip footing, scale drawing.Scale, x drawing.Micron) []mark {
	var out []mark
	b, x0 := f.book, strip.tiles[0].box.Left
	for i, t := range strip.tiles {
		l, r := t.heights()
		at := func(p plane.Point) drawing.Micron { return x + scale.On(p.X-x0) }
		left := mark{at(t.left) + footHeight.size + 200, b.down(l), b.bareTape(-t.left.Y)}
		right := mark{at(t.right) - 300, b.down(r), b.bareTape(-t.right.Y)}
		both := []mark{left, right}
		if right.at-left.at < footApart && left.height == right.height {
			left.at = (at(t.left)+at(t.right))/2 + footHeight.size/3
			both = []mark{left}
		}
		for k, m := range both {
			end := i == len(strip.tiles)-1 && k == len(both)-1
			if n := len(out); f.crowded(scale) && n > 0 && out[n-1].height == m.height && !end {
				continue
			}
			out = append(out, m)
		}
	}
	for i := 1; i < len(out); i++ {
		out[i].at = max(out[i].at, out[i-1].at+footApart)
	}
	for i, limit := len(out)-1, x+scale.On(strip.wide())+footApart; i >= 0 && out[i].at > limit; i-- {
		out[i].at, limit = limit, limit-footApart
	}
	return out
}

// widths names the pieces of a strip that are cut in width too.
func (b *book) widths(strip footing) string {
	var all []string
	for _, t := range strip.tiles {
		if step := b.plan.Room.Units.FineStep(); t.piece.Tile.Width()-t.box.Width() >= step {
			all = append(all, held(t.piece.ID+" "+b.down(t.box.Width())))
		}
		if t.piece.Kind&(piece.Notch|piece.Hole) != 0 {
			all = append(all, held(t.piece.ID+" "+t.piece.Kind.String()+", line "+t.line))
		}
	}
	if len(all) == 0 {
		return ""
	}
	return "Cut to width first: " + strings.Join(all, ", ") + "."
}

// down writes a size as the cut schedule shows it, rounded down so that the
// piece is never larger than its place.
func (b *book) down(l length.Length) string { return b.bare(l.FloorTo(b.plan.Room.Units.FineStep())) }

// bareTape writes a length as the tape shows it, millimetres without their unit.
func (b *book) bareTape(l length.Length) string {
	if u := b.plan.Room.Units; u == length.Metric {
		return l.Plain(u, u.Step())
	}
	return b.tape(l)
}

// said is what is said once where millimetres stand without their unit.
func (b *book) said() string {
	if b.plan.Room.Units == length.Metric {
		return " All figures are in mm."
	}
	return ""
}
