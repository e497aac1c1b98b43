package drawing

import (
	"strings"

	"coursewright/layout"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// openings draws niches and windows framed, and the holes for pipes.
func (b *board) openings(f frame, w layout.Wall, names bool) {
	for i, o := range w.Found.Openings {
		switch e := placed(w, i); {
		case o.Kind == "pipe":
			b.pipe(f, o)
		case e.Left < e.Right && e.Bottom < e.Top:
			b.opening(f, o, e, names)
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

func (b *board) opening(f frame, o survey.OpeningFound, e survey.Edges, names bool) {
	kind := Niche
	if o.Kind == "window" {
		kind = Window
	}
	tag := Tag{Kind: kind, Wall: f.wall}
	box := f.rect(plane.Rect(e))
	inner := corners(Point{box[0].X + 900, box[0].Y + 900}, Point{box[2].X - 900, box[2].Y - 900})
	b.path(tag, Ink{Fill: Pale, Line: Black, Width: 500}, box)
	b.path(tag, line(Black, 180), inner)
	for i := range box {
		b.chain(tag, line(Black, 180), box[i], inner[i])
	}
	if kind == Window {
		b.chain(tag, line(Black, 180), inner[0], inner[2])
		b.chain(tag, line(Black, 180), inner[1], inner[3])
	}
	if names {
		b.openingName(tag, box, o, e)
	}
}

func (b *board) openingName(tag Tag, box []Point, o survey.OpeningFound, e survey.Edges) {
	mid := Point{(box[0].X + box[2].X) / 2, (box[0].Y + box[2].Y) / 2}
	size := b.texts.note
	name := Label{Tag: tag, Text: OpeningName(string(o.Kind), o.Name), Size: size, Bold: true, Colour: Black}
	space := box[2].X - box[0].X - 3000
	if name.width() > space {
		name.Text = string(o.Kind)
	}
	if name.width() > space {
		return
	}
	b.plate(name, Point{mid.X, mid.Y - size*3/4}, Pale)
	clear := b.figure(e.Right-e.Left) + " × " + b.figure(e.Top-e.Bottom)
	if TextWidth(clear, size) < space {
		b.plate(Label{Tag: tag, Text: clear, Size: size, Colour: Black}, Point{mid.X, mid.Y + size*3/4}, Pale)
	}
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

func (b *board) pipe(f frame, o survey.OpeningFound) {
	c, r := f.at(o.At, o.Up), max(f.scale.On(o.Diameter)/2, 300)
	tag := Tag{Kind: Hole, Wall: f.wall}
	b.disc(tag, Ink{Fill: White, Line: Black, Width: 500}, c, r)
	arm := r + 1200
	b.chain(tag, line(Black, 180), Point{c.X - arm, c.Y}, Point{c.X + arm, c.Y})
	b.chain(tag, line(Black, 180), Point{c.X, c.Y - arm}, Point{c.X, c.Y + arm})
}
