package drawing

import (
	"slices"

	"coursewright/layout/piece"
)

// entry is one swatch of the legend with its place in it.
type entry struct {
	kind Kind
	text string
	at   Point
}

// Parts of the legend.
const (
	swatchWide = 6000
	swatchGap  = 1200 // from a swatch to its words
	entryGap   = 4000 // to the next swatch
)

// meanings are what the fillings of pieces stand for, in the order of the legend.
var meanings = []entry{
	{kind: CutHalf, text: "half a tile or more"}, {kind: CutThird, text: "a third to a half"},
	{kind: CutFifth, text: "a fifth to a third"}, {kind: CutLeast, text: "under a fifth, or a sliver"}, {kind: Set, text: "set already"},
	{kind: TrimPiece, text: "trim"}, {kind: SheetLine, text: "from sheet to sheet"},
}

// entries lays out those of the fillings that the walls shown have, in rows no
// wider than given.
func (b *board) entries(width Micron) []entry {
	if b.alone != nil && b.texts == sheetTexts && !b.needsKey() {
		return nil
	}
	has := map[Kind]bool{}
	for i := range b.plan.Walls {
		w := &b.plan.Walls[i]
		if b.alone != nil && *b.alone != i {
			continue
		}
		for n := range w.Pieces {
			if p := &w.Pieces[n]; !p.Whole || w.Found.Set != nil {
				has[b.kind(frame{wall: i}, *p)] = true
			}
		}
		for k := range w.Strips {
			for _, p := range w.Strips[k].Pieces {
				has[CutKind(p)] = true
			}
		}
		for _, p := range w.Trim {
			_, ink := trimKind(p)
			has[ink] = true
		}
	}
	for _, m := range b.mosaic {
		if b.alone == nil || *b.alone == m.Wall {
			has[SheetLine] = true
		}
	}
	var all []entry
	var at Point
	for _, e := range meanings {
		if !has[e.kind] {
			continue
		}
		w := swatchWide + swatchGap + TextWidth(e.text, b.texts.note)
		if at.X > 0 && at.X+w > width {
			at = Point{0, at.Y + 2*b.texts.note}
		}
		e.at = at
		all = append(all, e)
		at.X += w + entryGap
	}
	return all
}

// needsKey tells whether the wall shown has a filling that sizes do not explain: of
// pieces under a third, of what is set already, of trim.
func (b *board) needsKey() bool {
	w := &b.plan.Walls[*b.alone]
	return w.Found.Set != nil || len(w.Trim) > 0 || slices.ContainsFunc(w.Pieces, func(p piece.Piece) bool {
		return !p.Whole && (CutKind(p) == CutFifth || CutKind(p) == CutLeast)
	})
}

// legendHeight is how much room the legend takes.
func (b *board) legendHeight(width Micron) Micron {
	e := b.entries(width)
	if len(e) == 0 {
		return 0
	}
	return e[len(e)-1].at.Y + 2*b.texts.note
}

// legend draws the swatches from p down.
func (b *board) legend(p Point, width Micron) {
	size := b.texts.note
	for _, e := range b.entries(width) {
		q := Point{p.X + e.at.X, p.Y + e.at.Y + size}
		b.path(Tag{Kind: Key, Wall: -1}, swatch(e.kind), corners(Point{q.X, q.Y - size}, Point{q.X + swatchWide, q.Y + size/3}))
		b.label(Label{Tag: Tag{Kind: Note, Wall: -1}, Text: e.text, Size: size, At: Point{q.X + swatchWide + swatchGap, q.Y}, Colour: Black})
	}
}

func swatch(k Kind) Ink {
	ink := cutInk(k)
	if k == TrimPiece {
		ink = trimInk(k)
	}
	ink.Width = 350
	if k == SheetLine {
		ink = sheetInk()
		ink.Fill = White
	}
	return ink
}
