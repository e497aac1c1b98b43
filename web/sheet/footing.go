package sheet

import (
	"cmp"
	"slices"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
)

// footing is the first course of a wall, from left to right.
type footing struct {
	tiles   []footed
	asLaid  bool // they stand at heights of their own or have points, as in a pattern without courses
	grounds []ground
}

// footed is one tile of it: its face, and the two ends of the edge that is cut.
type footed struct {
	piece       piece.Piece
	box         plane.Rect
	left, right plane.Point
	line        string // of the cut schedule
	leg         bool   // it is the foot of a leg, all of it under the rim
}

// heights are measured from the top edge down to the ends of the cut.
func (t footed) heights() (left, right length.Length) {
	return t.box.Top - t.left.Y, t.box.Top - t.right.Y
}

// footing collects the first course of a wall.
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
			box := p.Face.Bounds()
			out.tiles = append(out.tiles, footed{p, box, left, right, lines[p.ID], drawing.UnderRim(w, p)})
			out.asLaid = out.asLaid || p.Outline != nil && (p.Tile.Top != out.tiles[0].piece.Tile.Top || !upright(p.Outline))
		}
	}
	slices.SortStableFunc(out.tiles, func(a, b footed) int { return cmp.Compare(a.box.Left, b.box.Left) })
	out.grounds = out.under(w)
	return out
}

// upright tells whether a tile is a rectangle that stands on one of its sides.
func upright(tile plane.Ring) bool {
	box := plane.Region{tile}.Bounds()
	return !slices.ContainsFunc(tile, func(c plane.Corner) bool {
		return c.X != box.Left && c.X != box.Right || c.Y != box.Bottom && c.Y != box.Top
	})
}

// footings are the first courses of all walls. Where one is drawn as it is laid all are, so that the sheet is read in one way.
func (b *book) footings() []footing {
	out := make([]footing, len(b.plan.Walls))
	for i, w := range b.plan.Walls {
		out[i] = b.footing(w)
	}
	if slices.ContainsFunc(out, func(s footing) bool { return s.asLaid }) {
		for i := range out {
			out[i].asLaid = len(out[i].tiles) > 0
		}
	}
	return out
}

// ground is a stretch of base under tiles, between its ends there.
type ground struct{ left, right plane.Point }

// under are the stretches of base that the tiles stand over.
func (s footing) under(w layout.Wall) (out []ground) {
	if len(s.tiles) == 0 {
		return nil
	}
	from, to := s.tiles[0].box.Left, rightOf(s.tiles)
	for _, base := range w.Found.Base {
		if len(base.Readings) == 0 {
			continue
		}
		left, right := from, to
		if n := len(base.Readings); n > 1 {
			left, right = max(from, base.Readings[0].At), min(to, base.Readings[n-1].At)
		}
		if left < right {
			out = append(out, ground{plane.Point{X: left, Y: survey.At(base.Readings, left)}, plane.Point{X: right, Y: survey.At(base.Readings, right)}})
		}
	}
	return out
}

// runs are what is drawn apart: the feet of legs, the course between them, and what of
// it stands over the rest.
func (f footing) runs() [][]footed {
	if f.asLaid {
		return [][]footed{f.tiles}
	}
	middle := slices.IndexFunc(f.tiles, func(t footed) bool { return !t.leg })
	var left, course, right []footed
	for i, t := range f.tiles {
		switch {
		case !t.leg:
			course = append(course, t)
		case i < middle || middle < 0 || t.box.Right <= f.tiles[middle].box.Right:
			left = append(left, t)
		default:
			right = append(right, t)
		}
	}
	runs := append([][]footed{left}, byRow(course)...)
	return slices.DeleteFunc(append(runs, right), func(r []footed) bool { return len(r) == 0 })
}

// byRow parts a course where tiles of it stand over each other, as those on a seat do
// over those beside its front: row by row, from left to right.
func byRow(course []footed) [][]footed {
	over := false
	for i := range course {
		over = over || i > 0 && course[i].box.Left < course[i-1].box.Right
	}
	if !over {
		return [][]footed{course}
	}
	var rows [][]footed
	for _, t := range course {
		i := slices.IndexFunc(rows, func(r []footed) bool { return r[0].piece.Row == t.piece.Row })
		if i < 0 {
			i, rows = len(rows), append(rows, nil)
		}
		rows[i] = append(rows[i], t)
	}
	return rows
}

// The texts of a strip stand upright under and over the tiles.
var (
	footHeight = style{size: 3800, bold: true, up: true, anchor: drawing.Right}
	footDrop   = style{size: 3000, up: true, anchor: drawing.Right}
	footName   = style{size: 3000, up: true}
)

const (
	footApart = 4100        // from text to text
	legApart  = 5 * mmPaper // between a leg's foot and the course
	nameAbove = 5 * mmPaper // the texts over tiles that stand as laid
)

// mark is what stands under one end of a tile.
type mark struct {
	at           drawing.Micron
	height, drop string
}

// runWide is how wide one run is drawn: no narrower than its figures.
func (f *flow) runWide(s footing, run []footed, scale drawing.Scale) drawing.Micron {
	wide := scale.On(rightOf(run) - run[0].box.Left)
	return max(wide, footApart*drawing.Micron(max(len(f.named(s, run, scale)), len(f.marks(s, run, scale)))))
}

// rightOf is how far a run reaches.
func rightOf(run []footed) (x length.Length) {
	x = run[0].box.Right
	for _, t := range run {
		x = max(x, t.box.Right)
	}
	return x
}

func (f *flow) footWide(s footing, scale drawing.Scale) (wide drawing.Micron) {
	for i, run := range s.runs() {
		if wide += f.runWide(s, run, scale); i > 0 {
			wide += legApart
		}
	}
	return wide
}

// bands are the heights of what a strip consists of, from its title down.
type bands struct{ title, names, tiles, heights, drops drawing.Micron }

func (f *flow) bands(s footing, scale drawing.Scale) bands {
	b := bands{title: f.of(strong).leading() + 1500, heights: footHeight.width("1 1/2\""), drops: footDrop.width("drop")}
	for _, run := range s.runs() {
		for _, m := range f.marks(s, run, scale) {
			b.heights, b.drops = max(b.heights, footHeight.width(m.height)), max(b.drops, footDrop.width(m.drop))
		}
	}
	for _, t := range s.tiles {
		b.tiles, b.names = max(b.tiles, scale.On(t.box.Height())), max(b.names, footName.width(s.name(t)))
	}
	if s.asLaid {
		top, low := s.reach()
		b.tiles, b.heights, b.names = scale.On(top-low), 0, b.names+nameAbove
		for _, g := range s.grounds {
			b.drops = max(b.drops, footDrop.width(f.book.bareTape(-g.left.Y)), footDrop.width(f.book.bareTape(-g.right.Y)))
		}
	}
	return b
}

// name is what stands over a tile.
func (s footing) name(t footed) string {
	if s.asLaid && t.line != "" {
		return t.piece.ID + ", " + t.line
	}
	return t.piece.ID
}

// reach is between which heights the tiles of a strip stand.
func (s footing) reach() (top, low length.Length) {
	top, low = s.tiles[0].box.Top, s.tiles[0].box.Bottom
	for _, t := range s.tiles {
		top, low = max(top, t.box.Top), min(low, t.box.Bottom)
	}
	return top, low
}

func (f *flow) footHigh(s footing, scale drawing.Scale) drawing.Micron {
	b := f.bands(s, scale)
	return b.title + b.names + b.tiles + b.heights + b.drops + 7*mmPaper
}

// strip draws the first course of a wall from x on, and gives where it ends below.
func (f *flow) strip(s footing, scale drawing.Scale, title string, x drawing.Micron) drawing.Micron {
	b := f.bands(s, scale)
	f.text(drawing.Point{X: x, Y: f.y + f.of(strong).size}, f.of(strong), title)
	top := f.y + b.title + b.names + 1000
	for _, run := range s.runs() {
		f.run(s, run, scale, drawing.Point{X: x, Y: top}, b)
		x += f.runWide(s, run, scale) + legApart
	}
	return top + b.tiles + b.heights + b.drops + 5000
}

// run draws tiles beside each other from a place on, with their names over them and
// their figures under them.
func (f *flow) run(s footing, run []footed, scale drawing.Scale, at drawing.Point, b bands) {
	high, _ := s.reach()
	for _, t := range run {
		from := t.box.Top
		if s.asLaid {
			from = high
		}
		f.face(t.piece.Face, func(p plane.Point) drawing.Point {
			return drawing.Point{X: at.X + scale.On(p.X-run[0].box.Left), Y: at.Y + scale.On(from-p.Y)}
		})
	}
	f.footNames(s, run, scale, at)
	if s.asLaid {
		f.footGrounds(s, scale, at)
		return
	}
	low := at.Y + b.tiles + 1500
	for _, m := range f.marks(s, run, scale) {
		tick := at.X + m.at - footHeight.size/3
		f.line(ink(drawing.Grey, 180), drawing.Point{X: tick, Y: low - 1200}, drawing.Point{X: tick, Y: low - 200})
		f.text(drawing.Point{X: at.X + m.at, Y: low}, footHeight, m.height)
		f.text(drawing.Point{X: at.X + m.at - 300, Y: low + b.heights + 1500}, footDrop, m.drop)
	}
}

// footGrounds writes under the ends of each stretch of base how far it is under the level line: one figure where the stretch
// has no room for two and they are the same.
func (f *flow) footGrounds(s footing, scale drawing.Scale, at drawing.Point) {
	high, _ := s.reach()
	write := func(x drawing.Micron, end plane.Point) {
		y := at.Y + scale.On(high-end.Y) + 1000
		tick := x - footDrop.size/3
		f.line(ink(drawing.Grey, 180), drawing.Point{X: tick, Y: y}, drawing.Point{X: tick, Y: y + 1000})
		f.text(drawing.Point{X: x, Y: y + 1500}, footDrop, f.book.bareTape(-end.Y))
	}
	for _, g := range s.grounds {
		left, right := at.X+scale.On(g.left.X-s.tiles[0].box.Left)+footDrop.size, at.X+scale.On(g.right.X-s.tiles[0].box.Left)-300
		write(left, g.left)
		if right-left >= footApart || f.book.bareTape(g.left.Y) != f.book.bareTape(g.right.Y) {
			write(max(right, left+footApart), g.right)
		}
	}
}

// footNames writes the names over the tiles of a run, apart from each other; where
// tiles stand as laid, with a line down to each.
func (f *flow) footNames(s footing, run []footed, scale drawing.Scale, at drawing.Point) {
	high, _ := s.reach()
	from := at.X - footApart
	for _, t := range f.named(s, run, scale) {
		middle := at.X + scale.On((t.box.Left+t.box.Right).Half()-run[0].box.Left)
		x := max(middle+footName.size/3, from+footApart)
		y := at.Y - 800
		if s.asLaid {
			y -= nameAbove
			f.line(ink(drawing.Grey, 180), drawing.Point{X: x - footName.size/3, Y: y + 500},
				drawing.Point{X: middle, Y: at.Y + scale.On(high-(t.box.Top+t.box.Bottom).Half())})
		}
		from = x
		f.text(drawing.Point{X: x, Y: y}, footName, s.name(t))
	}
}

// named are the tiles of a run that bear their number, from left to right: where they are crowded, the first of those
// beside each other that are cut by one line of the schedule, or not at all.
func (f *flow) named(s footing, run []footed, scale drawing.Scale) []footed {
	order := slices.Clone(run)
	slices.SortStableFunc(order, func(a, b footed) int { return cmp.Compare(a.box.Left+a.box.Right, b.box.Left+b.box.Right) })
	if s.asLaid || !f.crowded(scale) {
		return order
	}
	return slices.CompactFunc(order, func(a, b footed) bool { return a.line == b.line })
}

// crowded tells whether two figures do not fit under one tile.
func (f *flow) crowded(scale drawing.Scale) bool {
	return scale.On(f.book.plan.Room.Tile.Width) < 2*footApart+500
}

// marks are the figures under a run, from its left edge and apart from each other.
// Where tiles are small, a figure that repeats the one before it is left out. What
// no saw makes has none.
func (f *flow) marks(s footing, run []footed, scale drawing.Scale) []mark {
	if s.asLaid {
		return nil
	}
	b, x0 := f.book, run[0].box.Left
	at := func(p plane.Point) drawing.Micron { return scale.On(p.X - x0) }
	var out []mark
	for i, t := range run {
		if t.piece.NoSaw() {
			continue
		}
		l, r := t.heights()
		left := mark{at(t.left) + footHeight.size + 200, b.down(l), b.bareTape(-t.left.Y)}
		right := mark{at(t.right) - 300, b.down(r), b.bareTape(-t.right.Y)}
		both := []mark{left, right}
		if right.at-left.at < footApart && left.height == right.height {
			left.at = (at(t.left)+at(t.right))/2 + footHeight.size/3
			both = []mark{left}
		}
		for k, m := range both {
			end := i == len(run)-1 && k == len(both)-1
			if n := len(out); f.crowded(scale) && n > 0 && out[n-1].height == m.height && !end {
				continue
			}
			out = append(out, m)
		}
	}
	return apart(out, max(scale.On(rightOf(run)-x0), footApart*drawing.Micron(len(out))))
}

// apart moves marks apart that stand too near to each other, and back from the end.
func apart(out []mark, wide drawing.Micron) []mark {
	for i := range out {
		if out[i].at = max(out[i].at, footHeight.size); i > 0 {
			out[i].at = max(out[i].at, out[i-1].at+footApart)
		}
	}
	for i, limit := len(out)-1, wide; i >= 0 && out[i].at > limit; i-- {
		out[i].at, limit = limit, limit-footApart
	}
	return out
}
