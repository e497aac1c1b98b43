package drawing

import (
	"cmp"
	"slices"
	"strings"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
)

// chart is the field a slide curve is drawn in.
type chart struct {
	lo, hi Point
	first  length.Length
	period length.Length
	lower  Micron // how far all is lower than on a wide frame; 0 on one
}

// Places of a chart on paper: its field between an edge for the shares at the
// left, headings over it and the start under it.
const (
	slideWide    = 140 * Millimetre
	slideHigh    = 52 * Millimetre
	slideLeft    = 13 * Millimetre
	slideRight   = 4 * Millimetre
	slideTop     = 15 * Millimetre
	slideBottom  = 9 * Millimetre
	titleLine    = 3500 // baselines of the headings: what the axes are
	namesLine    = 8200 // and the names of starts
	namesFoot    = 9000 // where their leaders begin
	leaderTurn   = 2500 // how far over the field they turn down
	bandFrom     = 2200 // the colours of the shares, left of the field
	bandTo       = 600
	shareGap     = 3200
	dotRadius    = 1100
	chosenRadius = 1700
	narrowLower  = 4200 // how far all is lower where the headings have a line each
	slipReach    = 1400 // half an end stroke of the bar under the field
)

// Slide draws a wall's slide curve: the worst run, as a share of the tile,
// against the start over one period of the bond. Dots mark the classic starts
// and a larger one the chosen start; a bar on the axis is how far that may slip.
// The curve is what the edges that stand decide; what an opening cuts in the midst of
// tiles is counted at the dots alone, which may lie below it. On a frame that is narrower than
// its headings side by side they stand under each other and the names of starts are short; wide
// is the frame's width, or 0.
//
// Law, with a test: no text lies on another, whatever the width.
func Slide(plan layout.Plan, wall int, wide Micron) Scene {
	if wall >= 0 && wall < len(plan.Walls) && plan.Walls[wall].Start.Map != nil {
		return mapOf(plan, wall)
	}
	if wall < 0 || wall >= len(plan.Walls) || len(plan.Walls[wall].Start.Slide) == 0 {
		return Scene{}
	}
	b := newBoard(plan, wrapTexts)
	w := plan.Walls[wall]
	b.Width, b.Height, b.Title = slideWide, slideHigh, "Slide curve of the "+wallName(w.Found.Name)
	c := chart{lo: Point{slideLeft, slideTop}, first: w.Start.Slide[0].Edge, period: plan.Room.Tile.Width + plan.Room.Joint}
	if wide > 0 && wide < slideWide {
		b.Width, b.Height, c.lower = wide, slideHigh+narrowLower, narrowLower
	}
	c.lo.Y += c.lower
	c.hi = Point{b.Width - slideRight, b.Height - slideBottom}
	b.grid(c)
	b.curve(c, w.Start.Slide, wall)
	b.slip(c, w.Start, wall)
	b.dots(c, w.Start, wall)
	b.chosen(c, w, wall)
	b.Describe = "Smallest cut at best, as the edges that stand decide it, against the start, over one tile and joint. Chosen: " + b.startSays(w) + "."
	return b.Scene
}

// startSays is the start of a wall as it stands everywhere else.
func (b *board) startSays(w layout.Wall) string {
	if edge, ok := b.struckEdge(w); ok {
		return b.startText(b.startFigure(w, edge))
	}
	return b.startText(w.Start.Edge)
}

// x is where a tile edge falls in the chart, modulo the period.
func (c chart) x(edge length.Length) Micron {
	if c.period <= 0 {
		return c.lo.X
	}
	m := (edge - c.first) % c.period
	if m < 0 {
		m += c.period
	}
	return c.along(m)
}

func (c chart) along(m length.Length) Micron {
	return c.lo.X + Micron(int64(m)*int64(c.hi.X-c.lo.X)/int64(max(c.period, 1)))
}

// y is the height of a share; half a tile and more is the top of the chart.
func (c chart) y(s piece.Share) Micron {
	if s.Den <= 0 || s.Num*2 >= s.Den {
		return c.lo.Y
	}
	return c.hi.Y - Micron(max(s.Num, 0)*2*int64(c.hi.Y-c.lo.Y)/s.Den)
}

// grid draws the bands of the cut colours and their limits.
func (b *board) grid(c chart) {
	tag, size := Tag{Kind: Note, Wall: -1}, b.texts.least
	limits := []struct {
		share piece.Share
		text  string
		kind  Kind
	}{{piece.Share{Num: 1, Den: 5}, "1/5", CutLeast}, {piece.Share{Num: 1, Den: 3}, "1/3", CutFifth}, {piece.Share{Num: 1, Den: 2}, "1/2", CutThird}}
	low := c.hi.Y
	for _, l := range limits {
		y := c.y(l.share)
		b.path(Tag{Kind: Key, Wall: -1}, fill(cutInk(l.kind).Fill), corners(Point{c.lo.X - bandFrom, y}, Point{c.lo.X - bandTo, low}))
		b.chain(tag, line(Grey, 180), Point{c.lo.X, y}, Point{c.hi.X, y})
		b.label(Label{Tag: tag, Text: l.text, Size: size, Anchor: Right, At: Point{c.lo.X - shareGap, y + drop(size)}, Colour: Black})
		low = y
	}
	b.chain(tag, line(Black, 350), Point{c.lo.X, c.lo.Y}, Point{c.lo.X, c.hi.Y}, Point{c.hi.X, c.hi.Y})
	b.label(Label{Tag: tag, Text: "smallest cut at best, share of the tile", Size: size, At: Point{edgeRoom, titleLine}, Colour: Black})
	b.label(Label{Tag: tag, Text: "start slides right by one tile and joint, " + b.figure(c.period), Size: size,
		Anchor: Right, At: Point{c.hi.X, titleLine + c.lower}, Colour: Black})
}

// curve draws the corners as a line; two corners at one edge are a jump and
// break it. At the end of the period it is where it began.
func (b *board) curve(c chart, points []plan.SlidePoint, wall int) {
	tag := Tag{Kind: Curve, Wall: wall}
	var run []Point
	flush := func() {
		if len(run) > 1 {
			b.chain(tag, line(Black, 500), run...)
		}
		run = nil
	}
	for i, p := range points {
		if i > 0 && points[i-1].Edge == p.Edge {
			flush()
		}
		run = append(run, Point{c.along(p.Edge - c.first), c.y(p.Share)})
	}
	if first, end := points[0], points[0].Edge+c.period; points[len(points)-1].Edge < end {
		run = append(run, Point{c.hi.X, c.y(first.Share)})
	}
	flush()
}

// slip marks on the axis how far the start may slip without a new sliver.
func (b *board) slip(c chart, s plan.Start, wall int) {
	if s.From >= s.To {
		return
	}
	tag, at := Tag{Kind: Start, Wall: wall}, length.Mod(s.Edge-c.first, max(c.period, 1))
	lo := max(c.along(at+s.From-s.Edge), c.lo.X)
	hi := min(c.along(at+s.To-s.Edge), c.hi.X)
	b.chain(tag, line(Blue, 900), Point{lo, c.hi.Y}, Point{hi, c.hi.Y})
	for _, x := range []Micron{lo, hi} {
		b.chain(tag, line(Blue, 500), Point{x, c.hi.Y - slipReach}, Point{x, c.hi.Y + slipReach})
	}
}

// dots marks the classic starts with their names over the chart, and the
// chosen start.
func (b *board) dots(c chart, s plan.Start, wall int) {
	tag, size := Tag{Kind: Start, Wall: wall}, b.texts.least
	classic := Starts(s)
	slices.SortStableFunc(classic, func(p, q plan.Classic) int { return cmp.Compare(c.x(p.Edge), c.x(q.Edge)) })
	labels := make([]Label, len(classic))
	at, half := make([]Micron, len(classic)), make([]Micron, len(classic))
	for i, k := range classic {
		labels[i] = Label{Tag: tag, Text: c.called(k.Name), Size: size, Anchor: Middle, Colour: Black, Bold: k.Name == "best"}
		at[i], half[i] = c.x(k.Edge), labels[i].width()/2+1
	}
	room := b.Width - 2*edgeRoom
	for _, h := range half {
		room -= 2*h + blockGap
	}
	for i, x := range abreast(at, half, blockGap, edgeRoom, b.Width-edgeRoom) {
		y := c.y(classic[i].Share)
		named := room >= -blockGap // else the dots stand alone: the table beside them has the names
		if named {
			b.chain(tag, line(Grey, 180), Point{x, namesFoot + c.lower}, Point{at[i], c.lo.Y - leaderTurn}, Point{at[i], y})
		}
		b.disc(tag, Ink{Fill: White, Line: Black, Width: 350}, Point{at[i], y}, dotRadius)
		if named {
			labels[i].At = Point{x, namesLine + c.lower}
			b.label(labels[i])
		}
	}
}

// called is the name of a classic start, in a word or two on a narrow frame.
func (c chart) called(name string) string {
	if c.lower == 0 {
		return name
	}
	return strings.NewReplacer(" on centre", "", " tile at", "").Replace(name)
}

// chosen marks the start of the plan: a larger dot on the curve, and its
// place on the tape under the chart.
func (b *board) chosen(c chart, w layout.Wall, wall int) {
	tag, size, x := Tag{Kind: Start, Wall: wall}, b.texts.figure, c.x(w.Start.Edge)
	b.chain(tag, line(Blue, 500), Point{x, c.lo.Y}, Point{x, c.hi.Y + slipReach})
	b.disc(tag, Ink{Fill: Blue, Line: White, Width: 350}, Point{x, c.height(w.Start.Slide, x)}, chosenRadius)
	l := Label{Tag: tag, Text: b.startSays(w), Size: size, Bold: true, Colour: Blue}
	half := l.width() / 2
	b.label(centred(l, Point{min(max(x, half+edgeRoom), b.Width-half-edgeRoom), c.hi.Y + slipReach + size}))
}

// height is the curve's height over x; at a jump, that of its right side.
func (c chart) height(points []plan.SlidePoint, x Micron) Micron {
	y := c.y(points[0].Share)
	for i, p := range points {
		at := c.along(p.Edge - c.first)
		if at <= x {
			y = c.y(p.Share)
			continue
		}
		if i > 0 {
			from := c.along(points[i-1].Edge - c.first)
			y += (c.y(p.Share) - y) * (x - from) / (at - from)
		}
		break
	}
	return y
}

// Starts lists the starts people know. On a wall whose start is pinned there is
// no "best" among them: the search has kept the pin and compared nothing.
func Starts(s plan.Start) []plan.Classic {
	return slices.DeleteFunc(slices.Clone(s.Classic), func(k plan.Classic) bool { return s.Pinned && k.Name == "best" })
}
