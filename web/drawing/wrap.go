package drawing

import (
	"strconv"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// wrapGap is the space between two walls of the wrap.
const wrapGap = 9 * Millimetre

// wrapHeight is how high the walls of a wrap may stand on a screen.
const wrapHeight = 170 * Millimetre

// Wrap draws all walls unfolded side by side on one level line, in the job's
// order, so that the courses are seen to run round the corners.
func Wrap(plan layout.Plan, o Options) Scene {
	b := &board{plan: plan, texts: o.texts()}
	all, wide := b.measure()
	side, top := Micron(16000), Micron(15000)
	if o.Scale == (Scale{}) {
		o.Scale = fit(wide, ScreenWidth-2*side-wrapGap*Micron(max(0, len(plan.Walls)-1))).or(fit(all.Top-all.Bottom, wrapHeight))
	}
	b.Scale, b.Title = o.Scale, "The wrap: all walls on one level line"
	x, y := side, top+o.Scale.On(all.Top)
	for i, w := range plan.Walls {
		r := extents(w)
		f := frame{wall: i, scale: o.Scale, origin: Point{x - o.Scale.On(r.Left), y}}
		b.wall(f, w, false)
		if o.Handles { // on a screen one may come nearer
			b.sizes(f, w.Pieces)
		}
		b.nameOver(f, w, r)
		x = f.at(r.Right, 0).X + wrapGap
	}
	b.Width = x - wrapGap + side
	b.Height = top + o.Scale.On(all.Top-all.Bottom) + ground + 8000 + b.legendHeight(b.Width-2*side)
	b.levelLine(y, side-11000, b.Width-side+11000)
	b.lineNames(y, side)
	b.overWalls(o, side, y)
	b.legend(Point{side, b.Height - 2000 - b.legendHeight(b.Width-2*side)}, b.Width-2*side)
	if o.Handles {
		b.pick(plan.Walls)
	}
	for _, w := range plan.Walls {
		b.Describe += w.Found.Name + ": " + b.story(w) + ". "
	}
	return b.Scene
}

// overWalls adds what must lie over the level line: flags and handles.
func (b *board) overWalls(o Options, x, y Micron) {
	for i, w := range b.plan.Walls {
		r := extents(w)
		f := frame{wall: i, scale: o.Scale, origin: Point{x - o.Scale.On(r.Left), y}}
		if o.Handles {
			b.handles(f, w, false)
		}
		b.flags(f, false)
		x = f.at(r.Right, 0).X + wrapGap
	}
}

// measure gives the highest and lowest point of all walls and their widths
// together.
func (b *board) measure() (all plane.Rect, wide length.Length) {
	for _, w := range b.plan.Walls {
		r := extents(w)
		all.Top, all.Bottom = max(all.Top, r.Top), min(all.Bottom, r.Bottom)
		wide += r.Right - r.Left
	}
	return all, wide
}

// nameOver writes a wall's letter, name and width over it.
func (b *board) nameOver(f frame, w layout.Wall, r plane.Rect) {
	at := f.at(r.Left, r.Top)
	tag := Tag{Kind: Name, Wall: f.wall}
	letter, size := w.Found.Letter, b.texts.letter*2/3
	at.Y -= ground + 3500
	b.label(Label{Tag: tag, Text: letter, Size: size, Bold: true, At: at, Colour: Black})
	at.X += TextWidth(letter, size) + 1800
	width := apart + b.figure(w.Found.Width)
	space := f.at(r.Right, 0).X + wrapGap - 1500 - at.X - TextWidth(width, b.texts.note)
	b.label(Label{Tag: tag, Text: short(w.Found.Name, b.texts.note, space) + width, Size: b.texts.note, At: at, Colour: Black})
}

// lineNames names the level line and the course line at the left margin.
func (b *board) lineNames(y, side Micron) {
	size := b.texts.least
	x := side - 13500
	b.label(Label{Tag: Tag{Kind: LevelLine, Wall: -1}, Text: "level", Size: size, Bold: true,
		At: Point{x + 1000, y - 1200}, Colour: Red})
	c := y - b.Scale.On(b.plan.Setout.Line)
	if c-y < 8000 && y-c < 8000 {
		return
	}
	tag := Tag{Kind: CourseLine, Wall: -1}
	b.label(Label{Tag: tag, Text: "course", Size: size, Bold: true, At: Point{x + 1000, c - 1200}, Colour: Blue})
	b.label(Label{Tag: tag, Text: b.signed(b.plan.Setout.Line), Size: size, At: Point{x + 1000, c + size + 600}, Colour: Blue})
	b.chain(tag, line(Blue, 500), Point{x + 1000, c}, Point{side, c})
}

func counted(n int, what string) string {
	if n != 1 {
		what += "s"
	}
	return strconv.Itoa(n) + " " + what
}
