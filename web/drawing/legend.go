package drawing

// entry is one swatch of the legend with its place in it.
type entry struct {
	kind Kind
	text string
	at   Point
}

// entries lays the legend out in rows no wider than given.
func (b *board) entries(width Micron) []entry {
	all := []entry{
		{kind: Whole, text: "whole"}, {kind: CutHalf, text: "half a tile or more"},
		{kind: CutThird, text: "a third to a half"}, {kind: CutFifth, text: "a fifth to a third"},
		{kind: CutLeast, text: "under a fifth, or a sliver"},
	}
	if b.plan.Room.Stands() {
		all = append(all, entry{kind: Set, text: "set already"})
	}
	var at Point
	for i := range all {
		w := 8500 + TextWidth(all[i].text, b.texts.note)
		if at.X > 0 && at.X+w > width {
			at = Point{0, at.Y + 2*b.texts.note}
		}
		all[i].at = at
		at.X += w + 5000
	}
	return all
}

// legendHeight is how much room the legend takes.
func (b *board) legendHeight(width Micron) Micron {
	e := b.entries(width)
	return e[len(e)-1].at.Y + 2*b.texts.note
}

// legend draws the swatches from p down.
func (b *board) legend(p Point, width Micron) {
	size := b.texts.note
	for _, e := range b.entries(width) {
		q := Point{p.X + e.at.X, p.Y + e.at.Y + size}
		b.path(Tag{Kind: Key, Wall: -1}, swatch(e.kind), corners(Point{q.X, q.Y - size}, Point{q.X + 7000, q.Y + size/3}))
		b.label(Label{Tag: Tag{Kind: Note, Wall: -1}, Text: e.text, Size: size, At: Point{q.X + 8500, q.Y}, Colour: Black})
	}
}

func swatch(k Kind) Ink {
	ink := cutInk(k)
	ink.Width = 350
	return ink
}
