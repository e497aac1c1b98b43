package drawing

import (
	"cmp"
	"slices"

	"coursewright/layout"
	"coursewright/layout/mosaic"
	"coursewright/layout/plan"
)

// SheetLine is a joint between two sheets of mosaic.
const SheetLine Kind = "sheet-line"

// SheetName is the name of a sheet of mosaic.
const SheetName Kind = "sheet-name"

// sheetInk is how the lines between sheets are drawn: heavier than joints and cuts, because
// they say what is set in one go.
func sheetInk() Ink { return line(Blue, 600) }

// sheetLines draws the lines between the sheets of what is laid by the sheet on a wall.
func (b *board) sheetLines(f frame) {
	b.sheeted(f, func(m *mosaic.Field) bool { return m.Wall == f.wall && m.Face == nil })
}

// sheeted draws the lines between the sheets of some fields.
func (b *board) sheeted(f frame, take func(*mosaic.Field) bool) {
	var all [][]Point
	for i := range b.mosaic {
		if m := &b.mosaic[i]; take(m) {
			for _, l := range m.Lines {
				all = append(all, []Point{f.at(l[0].X, l[0].Y), f.at(l[1].X, l[1].Y)})
			}
		}
	}
	if len(all) > 0 {
		b.Elements = append(b.Elements, Path{Tag: Tag{Kind: SheetLine, Wall: f.wall}, Ink: sheetInk(), Rings: all, Open: true})
	}
}

// sheetNames writes on the sheets of a wall which they are, by the course of sheets and the
// number in it, as near their middle as there is room.
func (b *board) sheetNames(f frame) {
	if len(b.mosaic) == 0 {
		return
	}
	at := map[string]Point{}
	w := &b.plan.Walls[f.wall]
	for _, p := range w.All() {
		box := p.Visible.Bounds()
		at[p.ID] = f.at((box.Left + box.Right).Half(), (box.Bottom + box.Top).Half())
	}
	for i := range b.mosaic {
		if m := &b.mosaic[i]; m.Wall == f.wall && m.Face == nil {
			for k := range m.Sheets {
				b.sheetName(f, &m.Sheets[k], at)
			}
		}
	}
}

// mostTried is at how many tiles of a sheet its name is tried.
const mostTried = 24

// sheetName writes the name of a sheet on one of its tiles, which stand at.
func (b *board) sheetName(f frame, s *mosaic.Sheet, at map[string]Point) {
	l := Label{Tag: Tag{Kind: SheetName, Wall: f.wall}, Text: s.OnWall(), Size: b.texts.note, Bold: true, Colour: Blue}
	var places []Point
	var sum, least, most Point
	for i, id := range s.Pieces {
		p := at[id]
		if i == 0 {
			least, most = p, p
		}
		places, sum = append(places, p), Point{sum.X + p.X, sum.Y + p.Y}
		least, most = Point{min(least.X, p.X), min(least.Y, p.Y)}, Point{max(most.X, p.X), max(most.Y, p.Y)}
	}
	n := Micron(len(places))
	middle := Point{sum.X / n, sum.Y / n}
	off := func(p Point) Micron { return max(p.X-middle.X, middle.X-p.X) + max(p.Y-middle.Y, middle.Y-p.Y) }
	slices.SortStableFunc(places, func(p, q Point) int { return cmp.Compare(off(p), off(q)) })
	for _, p := range places[:min(len(places), mostTried)] {
		room := plateRoom(l, p)
		fits := room.to.X-room.from.X <= most.X-least.X+2*l.Size && room.from.X > least.X-l.Size && room.to.X < most.X+l.Size
		if fits && b.vacant(room.grown(clearance)) {
			b.plate(l, p, White)
			return
		}
	}
}

// mosaicWithin are the sheets of some faces, with the faces as walls.
func mosaicWithin(p layout.Plan, faces []plan.Face) []mosaic.Field {
	var out []mosaic.Field
	for _, m := range mosaic.Of(p.Room, p.Walls) {
		for i := range faces {
			if m.Face == &faces[i] {
				m.Wall, m.Face = i, nil
				out = append(out, m)
			}
		}
	}
	return out
}
