package drawing

import (
	"slices"
	"strings"

	"coursewright/layout"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// openings draws niches and windows framed, strips, and over them the holes for pipes, as behind a valve a strip often stands.
func (b *board) openings(f frame, w layout.Wall) {
	for i, o := range w.Found.Openings {
		switch e := placed(w, i); {
		case o.Strip != nil:
			b.strip(f, w, i)
		case o.Kind == survey.SoapDish:
			b.path(Tag{Kind: Niche, Wall: f.wall}, Ink{Fill: Pale, Line: Black, Width: 500}, f.rect(plane.Rect(e)))
		case e.Left < e.Right && e.Bottom < e.Top:
			b.opening(f, o, e)
			b.seenWithin(f, w, i)
		}
	}
	b.pipes(f, w)
}

// pipes draws the holes for pipes alone.
func (b *board) pipes(f frame, w layout.Wall) {
	for _, o := range w.Found.Openings {
		if o.Kind == "pipe" {
			b.pipe(f, o)
		}
	}
}

// openingNames writes what each opening is: in a niche or window with its size,
// beside a pipe.
func (b *board) openingNames(f frame, w layout.Wall) {
	for i, o := range w.Found.Openings {
		switch e := placed(w, i); {
		case o.Kind == "pipe":
			b.pipeName(f, w, o)
		case o.Strip != nil, o.Kind == survey.SoapDish: // named by its widths, or as a fixture
		case e.Left < e.Right && e.Bottom < e.Top:
			b.openingName(f, openingShort(w, i), o, e)
		}
	}
}

// placed is where an opening's edges stand; zero for a pipe.
func placed(w layout.Wall, i int) survey.Edges {
	if i >= len(w.Start.Placed.Openings) {
		return survey.Edges{}
	}
	return w.Start.Placed.Openings[i]
}

// Frame of an opening on paper.
const frameWidth = 3 * px

func (b *board) opening(f frame, o survey.OpeningFound, e survey.Edges) {
	kind := Niche
	if o.Kind == "window" {
		kind = Window
	}
	tag := Tag{Kind: kind, Wall: f.wall}
	box := f.rect(plane.Rect(e))
	inner := corners(Point{box[0].X + frameWidth, box[0].Y + frameWidth}, Point{box[2].X - frameWidth, box[2].Y - frameWidth})
	b.path(tag, Ink{Fill: Pale, Line: Black, Width: 500}, box)
	b.path(tag, line(Black, 180), inner)
	if kind == Window && !o.Doorway {
		b.chain(tag, line(Black, 180), inner[0], inner[2])
		b.chain(tag, line(Black, 180), inner[1], inner[3])
	}
}

// openingName writes name and size in an opening, in as many lines as stand there.
func (b *board) openingName(f frame, name string, o survey.OpeningFound, e survey.Edges) {
	a, z := f.at(e.Left, e.Top), f.at(e.Right, e.Bottom)
	space := box{Point{a.X + frameWidth + clearance, a.Y + frameWidth + clearance}, Point{z.X - frameWidth - clearance, z.Y - frameWidth - clearance}}
	wide, high := b.plain(e.Right-e.Left), b.plain(e.Top-e.Bottom)
	bold := Label{Tag: Tag{Kind: Niche, Wall: f.wall}, Text: name, Size: b.texts.figure, Bold: true, Colour: Black}
	if o.Kind == "window" {
		bold.Kind = Window
	}
	plain := bold
	plain.Bold, plain.Colour, plain.Size = false, decided(o.Width.Free() || o.Height.Free()), b.texts.note
	kind, one, first, second := bold, plain, plain, plain
	kind.Text, one.Text, first.Text, second.Text = kindOf(o), wide+" × "+high, wide, "× "+high
	for _, lines := range [][]Label{{bold, one}, {kind, one}, {bold, first, second}, {kind, first, second}} {
		if b.stackIn(space, lines) {
			return
		}
	}
	if b.alone != nil && !b.paper && (b.namedOutside(a, z, bold, one) || b.namedOutside(a, z, kind, one)) {
		return
	}
	_ = b.stackIn(space, []Label{bold}) || b.stackIn(space, []Label{kind})
}

// namedOutside writes what has no room in an opening under its frame or over it, as near as a handle
// on that edge lets it.
func (b *board) namedOutside(a, z Point, lines ...Label) bool {
	wide, high := Micron(0), Micron(0)
	for _, l := range lines {
		wide, high = max(wide, l.width()), high+leading(l.Size)
	}
	from, to := (a.X+z.X-wide)/2, (a.X+z.X+wide)/2
	off, slack := handleReach+clearance, high/2
	under := box{Point{from, z.Y + off}, Point{to, z.Y + off + high + slack}}
	over := box{Point{from, a.Y - off - high - slack}, Point{to, a.Y - off}}
	return b.stackIn(under, lines) || b.stackIn(over, lines)
}

// kindOf is what an opening is, in a word.
func kindOf(o survey.OpeningFound) string {
	if o.Doorway {
		return "doorway"
	}
	return string(o.Kind)
}

// stackIn writes lines over each other, anywhere up or down the middle of a
// space where they fit and meet no other text.
func (b *board) stackIn(space box, lines []Label) bool {
	var wide, high Micron
	for _, l := range lines {
		wide, high = max(wide, l.width()), high+leading(l.Size)
	}
	if wide > space.to.X-space.from.X || high > space.to.Y-space.from.Y {
		return false
	}
	x := (space.from.X + space.to.X) / 2
	for _, eighth := range []Micron{4, 3, 5, 2, 6, 1, 7, 0, 8} {
		top := space.from.Y + (space.to.Y-space.from.Y-high)*eighth/8
		if !b.vacant(box{Point{x - wide/2, top}, Point{x + wide/2, top + high}}) {
			continue
		}
		for _, l := range lines {
			b.plate(l, Point{x, top + leading(l.Size)/2}, Pale)
			top += leading(l.Size)
		}
		return true
	}
	return false
}

// pipeName writes a pipe's name beside it, on the side where there is room, clear of the other pipes; on a screen clear
// of its handle too. Where that cannot be, it goes where no other text is.
func (b *board) pipeName(f frame, w layout.Wall, o survey.OpeningFound) {
	c, r := f.at(o.At, o.Up), f.hole(o)+3*clearance
	l := Label{Tag: Tag{Kind: Hole, Wall: f.wall}, Text: short(o.Name, b.texts.note, mostName), Size: b.texts.note, Colour: Black}
	clear := func(room box) bool { return b.vacant(room) && !f.overPipe(w, room) }
	switch {
	case !b.paper && r < handleReach && b.nameBeside(l, c, handleReach, clear):
	case b.nameBeside(l, c, r, clear):
	default:
		b.nameBeside(l, c, r, b.vacant)
	}
}

// hole is the radius a pipe is drawn with.
func (f frame) hole(o survey.OpeningFound) Micron { return max(f.scale.On(o.Diameter)/2, leastHole) }

// overPipe tells whether what is written in a room would cover the hole of a pipe.
func (f frame) overPipe(w layout.Wall, room box) bool {
	return slices.ContainsFunc(w.Found.Openings, func(o survey.OpeningFound) bool {
		c := f.at(o.At, o.Up)
		return o.Kind == survey.Pipe && room.meets(box{c, c}.grown(f.hole(o)))
	})
}

// nameBeside writes a name so far from a middle, on the first side on which there is room.
func (b *board) nameBeside(l Label, c Point, r Micron, free func(box) bool) bool {
	half, high := l.width()/2, leading(l.Size)/2
	for _, at := range []Point{{c.X + r + half, c.Y}, {c.X - r - half, c.Y}, {c.X, c.Y - r - high}, {c.X, c.Y + r + high},
		{c.X + r + half, c.Y - r}, {c.X - r - half, c.Y - r}, {c.X + r + half, c.Y + r}, {c.X - r - half, c.Y + r}} {
		if free(plateRoom(l, at)) {
			b.plate(l, at, White)
			return true
		}
	}
	return false
}

// OpeningName is how an opening is called: its kind and its name, or the name
// alone where that begins with the kind, as a new one's does: "niche shelf",
// "niche 2".
func OpeningName(kind, name string) string {
	if name == kind || strings.HasPrefix(name, kind+" ") {
		return name
	}
	return kind + " " + name
}

// handleReach is how far from its middle the grip of a handle is drawn, and its outline.
const handleReach = 3700

// leastHole is the least radius a pipe is drawn with.
const leastHole = 300

func (b *board) pipe(f frame, o survey.OpeningFound) {
	c, r := f.at(o.At, o.Up), f.hole(o)
	tag := Tag{Kind: Hole, Wall: f.wall}
	b.disc(tag, Ink{Fill: White, Line: Black, Width: 500}, c, r)
	arm := r + 1200
	b.chain(tag, line(Black, 180), Point{c.X - arm, c.Y}, Point{c.X + arm, c.Y})
	b.chain(tag, line(Black, 180), Point{c.X, c.Y - arm}, Point{c.X, c.Y + arm})
}
