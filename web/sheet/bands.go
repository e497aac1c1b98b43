package sheet

import (
	"cmp"
	"slices"

	"coursewright/layout/plan"
	"coursewright/web/drawing"
)

// bandedColumn gives the courses of the walls with most bands, as their pieces
// stand: field, band and field. A band in a pattern, whose rows reach into each other and over its edges, is
// one length of the pole; up to the head it is what stands of its rows.
func (b *book) bandedColumn() []stood {
	most := 0
	for i := range b.plan.Walls {
		most = max(most, len(b.plan.Room.BandsOn(i)))
	}
	seen, whole := map[int]bool{}, map[int]bool{}
	var out []stood
	for i, w := range b.plan.Walls {
		if len(b.plan.Room.BandsOn(i)) < most {
			continue
		}
		laid := plan.PatternCourses(w)
		for _, p := range w.Pieces {
			s := stood{p.Course, p.Tile.Bottom, p.Tile.Top}
			if p.Laid == 0 && p.Outline != nil {
				s.bottom, s.top = laid[p.Course].Bottom, laid[p.Course].Top
			}
			if p.Laid > 0 && p.Outline != nil {
				band := b.plan.Setout.Bands[p.Laid-1]
				if s.bottom = max(s.bottom, band.Bottom); !band.ToHead {
					s.bottom, s.top = band.Bottom, band.Top
				}
				if whole[p.Laid] && s.bottom == band.Bottom {
					continue
				}
				whole[p.Laid] = true
			}
			if !seen[p.Course] {
				seen[p.Course] = true
				out = append(out, s)
			}
		}
	}
	slices.SortFunc(out, func(x, y stood) int { return cmp.Compare(x.bottom, y.bottom) })
	return out
}

// bandMarks are the edges of the bands.
func (b *book) bandMarks() []notch {
	var out []notch
	for _, band := range b.plan.Setout.Bands {
		out = append(out, notch{at: band.Bottom, name: band.Name + " bottom", colour: drawing.Blue})
		if !band.ToHead {
			out = append(out, notch{at: band.Top, name: band.Name + " top", colour: drawing.Blue})
		}
	}
	return out
}

// bands says where the bottom edge of each band is struck, and its tile edges.
func (b *book) bands() table {
	t := table{columns: []column{{name: "band", share: 44, bold: true}, {name: "bottom edge, from the level line", share: 40, bold: true, right: true},
		{name: "top edge", share: 26, right: true}, {name: "left edge of a tile, from the left corner of the boards", share: 74}}}
	for _, band := range b.plan.Setout.Bands {
		t.rows = append(t.rows, row{cells: []string{band.Name, b.signed(band.Bottom), b.bandTop(band), b.bandEdges(band)}})
	}
	return t
}

func (b *book) bandTop(band plan.Band) string {
	if band.ToHead {
		return "to the head"
	}
	return b.signed(band.Top)
}

// bandEdges are the starts of a band on its walls.
func (b *book) bandEdges(band plan.Band) string {
	text := ""
	for i, w := range band.Walls {
		if i > 0 {
			text += ", "
		}
		text += b.plan.Walls[w].Found.Letter + " " + b.tape(band.Edges[i])
	}
	return text
}

// underBands says how the field stands to the bands.
func (b *book) underBands() string {
	if !b.plan.Room.Bond.Coursed() {
		return "The pattern goes on behind it, and is cut a joint below its bottom edge and a joint over its top edge."
	}
	return "It lies on a joint line: the course under it ends a joint below."
}
