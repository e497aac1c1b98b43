package sheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"coursewright/layout"
	"coursewright/layout/mosaic"
	"coursewright/layout/stages"
)

// sheetTable lists the sheets of mosaic that are cut along their joints, before tiles of
// them are cut, and the whole ones of which tiles are cut. Those of one tile of which the
// same is left stand in one row.
func (f *flow) sheetTable() {
	t := table{text: plain, columns: []column{{name: "sheets of", share: 30}, {name: "count", share: 10, right: true}, {name: "leave", share: 40, bold: true}, {name: "then", share: 30}, {name: "sheets", share: 60}}}
	type key struct{ tile, leave, then string }
	var order []key
	ids := map[key][]string{}
	add := func(m mosaic.Field, sheets []string, leave string, cut bool) {
		k := key{cmp.Or(m.Tile.Name, "mosaic"), leave, "set"}
		if cut {
			k.then = "cut tiles at the edge"
		}
		if len(ids[k]) == 0 {
			order = append(order, k)
		}
		ids[k] = append(ids[k], sheets...)
	}
	for _, m := range f.book.cuts.Mosaic {
		for _, a := range m.Parts() {
			add(m, a.Sheets, leaves(m, a), a.Cut)
		}
		if cut := m.OnSheets(); len(cut) > 0 {
			add(m, cut, "all of it", true)
		}
	}
	for _, k := range order {
		t.rows = append(t.rows, row{cells: []string{k.tile, number(len(ids[k])) + " ×", k.leave, k.then, namesText(ids[k])}})
	}
	if len(t.rows) > 0 {
		f.words(plain, "First of all cut these sheets along their joints, from the back; then the tiles at their edges, on the sheet or taken off it.")
		f.table(t)
	}
	f.sheetOrder()
}

// sheetsTold says what the names of sheets stand for that a wall's drawing bears, where it has some.
func (b *book) sheetsTold(w layout.Wall) string {
	for _, m := range b.cuts.Mosaic {
		if m.Face == nil && b.plan.Walls[m.Wall].Found.Letter == w.Found.Letter && len(m.Sheets) > 0 {
			return fmt.Sprintf("%s in blue: sheet %s of mosaic.", m.Sheets[0].OnWall(), m.Sheets[0].ID)
		}
	}
	return ""
}

// sheetOrder lists the courses of sheets in the order in which they are set.
func (f *flow) sheetOrder() {
	t := table{text: plain, columns: []column{{name: "set sheets on", share: 40}, {name: "course", share: 12, right: true}, {name: "in this order, from the start outwards", share: 118}}}
	for _, c := range stages.Sheets(stages.Input{Room: f.book.plan.Room, Walls: f.book.plan.Walls, Cuts: f.book.cuts}) {
		course := ""
		if c.Field.Level {
			course = number(c.Sheets[0].Row)
		}
		var ids []string
		for _, s := range c.Sheets {
			ids = append(ids, s.ID)
		}
		t.rows = append(t.rows, row{cells: []string{c.Field.Name, course, strings.Join(ids, " ")}})
	}
	if len(t.rows) > 0 {
		f.table(t)
	}
}

// leaves says what is left of a sheet that is cut along its joints.
func leaves(m mosaic.Field, a mosaic.Alike) string {
	text := m.Size.Counted(a.Wide, a.High)
	if a.Missing > 0 {
		text += fmt.Sprintf(", %d out", a.Missing)
	}
	return text
}

// bySheets gives the tiles of the pole by the sheet, where they come on sheets: within one
// there is nothing to mark.
func (b *book) bySheets(tiles []stood) []stood {
	var out []stood
	for _, m := range b.cuts.Mosaic {
		if m.Face != nil || m.Band != "" || !b.plan.Room.Bond.Coursed() {
			continue
		}
		for _, s := range m.Sheets {
			at := slices.IndexFunc(tiles, func(t stood) bool { return t.bottom == s.Box.Bottom })
			if at >= 0 && !slices.ContainsFunc(out, func(t stood) bool { return t.bottom == s.Box.Bottom }) {
				out = append(out, stood{tiles[at].course, s.Box.Bottom, s.Box.Top})
			}
		}
	}
	if len(out) == 0 {
		return tiles
	}
	slices.SortFunc(out, func(a, b stood) int { return cmp.Compare(a.bottom, b.bottom) })
	return out
}
