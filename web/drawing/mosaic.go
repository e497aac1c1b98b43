package drawing

import (
	"coursewright/layout"
	"coursewright/layout/mosaic"
	"coursewright/layout/plan"
)

// SheetLine is a joint between two sheets of mosaic.
const SheetLine Kind = "sheet-line"

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
