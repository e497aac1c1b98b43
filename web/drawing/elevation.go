package drawing

import (
	"strings"

	"coursewright/layout"
	"coursewright/layout/length"
)

// ScreenWidth is how wide a drawing that fits the screen is on paper: 1200 px
// at four to the millimetre.
const ScreenWidth = 300 * Millimetre

// ScreenHeight is how high such an elevation may be.
const ScreenHeight = 260 * Millimetre

// page is how much room an elevation needs round the wall itself.
type page struct{ left, top, right, bottom Micron }

// Elevation draws one wall of the plan as seen from inside the room. The wall
// must be an index into plan.Walls; any other gives an empty scene.
func Elevation(plan layout.Plan, wall int, o Options) Scene {
	if wall < 0 || wall >= len(plan.Walls) {
		return Scene{}
	}
	b := &board{plan: plan, texts: o.texts()}
	w := plan.Walls[wall]
	r, up, across := extents(w), b.heights(w), b.widths(w)
	m := page{left: 20000, top: b.texts.letter + 16000, right: 14000 + b.longest(up, b.signed)}
	m.bottom = ground + 14000 + b.longest(across, b.figure) + 4000
	if o.Scale == (Scale{}) {
		o.Scale = fit(r.Right-r.Left, ScreenWidth-m.left-m.right).or(fit(r.Top-r.Bottom, ScreenHeight-m.top-m.bottom))
	}
	f := frame{wall: wall, scale: o.Scale, origin: Point{m.left - o.Scale.On(r.Left), m.top + o.Scale.On(r.Top)}}
	b.Scale = o.Scale
	b.Width = m.left + o.Scale.On(r.Right-r.Left) + m.right
	b.Width = max(b.Width, m.left+TextWidth(seen+b.unitNote(), b.texts.note)+b.texts.letter+50000)
	under := b.Width - m.left - 4000
	b.Height = m.top + o.Scale.On(r.Top-r.Bottom) + m.bottom + b.legendHeight(under) + 2000
	b.wall(f, w, true)
	b.courseNumbers(f, w)
	b.levelLine(f.origin.Y, m.left-6500, f.at(r.Right, 0).X+6000)
	b.sizes(f, w.Pieces)
	b.startName(f, w)
	b.plumbString(f, f.at(r.Right, 0).X+8500, up)
	b.levelString(f, f.at(0, r.Bottom).Y+ground+6500, across)
	if o.Handles {
		b.handles(f, w, true)
	}
	b.flags(f, true)
	b.heading(w, m.left)
	b.keyPlan(Point{b.Width - keyPlanRoom, 3000}, Point{40000, b.texts.letter + 7000}, wall)
	b.legend(Point{m.left, b.Height - 2000 - b.legendHeight(under)}, under)
	if o.Handles {
		b.pick([]layout.Wall{w})
	}
	b.Title = "Wall " + w.Found.Letter + ", " + w.Found.Name
	b.Describe = b.story(w)
	return b.Scene
}

// wall draws everything that stands on a wall itself, from the ground up.
func (b *board) wall(f frame, w layout.Wall, full bool) {
	b.base(f, w, full)
	b.head(f, w, full)
	b.ends(f, w)
	b.pieces(f, w.Pieces)
	b.outline(f, w)
	over := Micron(0)
	if full {
		over = 4000
		b.centreLine(f, w)
	}
	b.startLine(f, w)
	b.openings(f, w, true)
	b.lap(f, w)
	b.courseLine(f, w, over)
	b.start(f, w)
}

// heading is the wall's letter and name and where it is seen from.
func (b *board) heading(w layout.Wall, x Micron) {
	size := b.texts.letter
	y := 4000 + size*3/4
	tag := Tag{Kind: Name, Wall: -1}
	b.label(Label{Tag: tag, Text: w.Found.Letter, Size: size, Bold: true, At: Point{x, y}, Colour: Black})
	x += TextWidth(w.Found.Letter, size) + size*3/4
	space := (b.Width - keyPlanRoom - x) * 100 / 115
	b.label(Label{Tag: tag, Text: short(wallName(w.Found.Name), b.texts.note*3/2, space), Size: b.texts.note * 3 / 2, Bold: true,
		At: Point{x, y - b.texts.note*8/5}, Colour: Black})
	b.label(Label{Tag: tag, Text: seen + b.unitNote(), Size: b.texts.note,
		At: Point{x, y}, Colour: Grey})
}

// keyPlanRoom is the room the key plan takes beside the heading.
const keyPlanRoom = 44000

const seen = "seen from inside the room · "

// wallName is the name as a heading: "left" becomes "left wall".
func wallName(name string) string {
	if strings.HasSuffix(name, "wall") {
		return name
	}
	return name + " wall"
}

// unitNote says once what the figures are in.
func (b *board) unitNote() string {
	if b.plan.Room.Units == length.Metric {
		return "sizes in mm"
	}
	return "sizes in feet and inches"
}

// story tells in words what a wall's drawing shows.
func (b *board) story(w layout.Wall) string {
	cut, sliver := 0, 0
	for _, p := range w.Pieces {
		if !p.Whole {
			cut++
		}
		if p.Sliver {
			sliver++
		}
	}
	return counted(len(w.Pieces), "piece") + ", " + counted(cut, "cut piece") + ", " + counted(sliver, "sliver") +
		"; course line " + b.signed(b.plan.Setout.Line) + " from the level line; start at " + b.figure(w.Start.X) +
		" from the left"
}
