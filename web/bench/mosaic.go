package bench

import (
	"fmt"
	"strconv"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/mosaic"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
	"coursewright/web/page"
)

// sheetLabel is what of a sheet is counted in a bond.
func sheetLabel(b survey.Bond) string {
	switch survey.BondKind(b.Kind) {
	case survey.Herringbone, survey.Pinwheel:
		return "Pairs"
	case survey.DoubleHerringbone:
		return "Fours"
	case survey.BasketWeave:
		if len(b.Tiles) > 0 {
			return "Tiles with their dot"
		}
		return "Squares"
	case survey.Modular:
		return "Groups"
	}
	return "Tiles"
}

// sheetExample tells by a sheet in the units of the job what the joint within it is.
func (b Bench) sheetExample() string {
	if b.System() == length.Metric {
		return "a sheet of 300 mm with six tiles of 48 mm has 2 mm"
	}
	return "a sheet of 12 in with six tiles of 1 7/8 in has 1/8 in"
}

// sheetNote says how the tiles of a sheet are counted in a bond.
func sheetNote(b survey.Bond) string {
	switch survey.BondKind(b.Kind) {
	case survey.Herringbone:
		return "Count the V’s side by side along, and those over each other up: each is a pair of tiles."
	case survey.DoubleHerringbone:
		return "Count the V’s side by side along, and those over each other up: each is two pairs of tiles."
	case survey.BasketWeave:
		if len(b.Tiles) > 0 {
			return "Count the tiles, each with one dot: an even number both ways, so that all sheets are alike."
		}
		return "Count the squares, each of the tiles that lie side by side in it: an even number both ways, so that all sheets are alike."
	case survey.Chevron:
		return "Count the columns along, an even number, and the tiles of one column up."
	case survey.MixedHeights:
		return "Count the tiles along and the courses up, as many as repeat or a multiple, so that all sheets are alike."
	case survey.Pinwheel:
		return "Count the large tiles, each with one small one, along their slanting rows."
	case survey.Modular:
		return "Count the groups in which the pattern repeats: two of the small squares, one of two by one, two of two by two and one of three by two."
	}
	return "Count the tiles of a row along, and the rows up."
}

// faceBond is the bond of a face of a niche or window that has a tile of its own.
func (b Bench) faceBond(f survey.InsideFace) survey.Bond {
	if f.Bond != nil {
		return *f.Bond
	}
	return b.Typed.Bond
}

// sheetsLine is the one line of the closed table of sheets.
func (b Bench) sheetsLine() string {
	whole, parts := 0, 0
	for _, f := range b.Schedule.Mosaic {
		bought := mosaic.Buy([]mosaic.Field{f})
		whole, parts = whole+bought.Full, parts+bought.Parts
	}
	return fmt.Sprintf("%s and %s", page.Count(whole, "whole sheet"), page.Count(parts, "part"))
}

// sheetOrder lists the courses of sheets in the order in which they are set.
func (b Bench) sheetOrder() (rows []sheetCourse) {
	in := stages.Input{Room: b.Plan.Room, Walls: b.Plan.Walls, Cuts: b.Schedule}
	for _, c := range stages.Sheets(in) {
		r := sheetCourse{name: c.Field.Name}
		if c.Field.Level {
			r.course = strconv.Itoa(c.Sheets[0].Row)
		}
		for _, s := range c.Sheets {
			r.ids, r.pieces = append(r.ids, s.ID), append(r.pieces, s.Pieces...)
		}
		rows = append(rows, r)
	}
	return rows
}

// sheetCourse is a row of the table of courses of sheets.
type sheetCourse struct {
	name, course string
	ids, pieces  []string
}

// sheetRow is a row of the table of sheets: those of which the same stays.
type sheetRow struct {
	stays       string
	ids, pieces []string
}

// sheetRows lists the whole sheets of a field, then its parts.
func sheetRows(f mosaic.Field) []sheetRow {
	size := f.Size
	whole := sheetRow{stays: "all " + size.Counted(size.Across, size.Up)}
	cut := sheetRow{stays: whole.stays + ", some of them cut"}
	pieces := map[string][]string{}
	for _, s := range f.Sheets {
		pieces[s.ID] = s.Pieces
		if s.Full(size) {
			whole.ids, whole.pieces = append(whole.ids, s.ID), append(whole.pieces, s.Pieces...)
		}
	}
	cut.ids = f.OnSheets()
	for _, id := range cut.ids {
		cut.pieces = append(cut.pieces, pieces[id]...)
	}
	var rows []sheetRow
	for _, r := range []sheetRow{whole, cut} {
		if len(r.ids) > 0 {
			rows = append(rows, r)
		}
	}
	for _, a := range f.Parts() {
		r := sheetRow{stays: size.Counted(a.Wide, a.High), ids: a.Sheets}
		if a.Missing > 0 {
			r.stays += fmt.Sprintf(", %d taken out", a.Missing)
		}
		if a.Cut {
			r.stays += ", some of them cut"
		}
		for _, id := range a.Sheets {
			r.pieces = append(r.pieces, pieces[id]...)
		}
		rows = append(rows, r)
	}
	return rows
}

// named lists the sheets, the first of many by name.
func (r sheetRow) named() string {
	first := r.ids[:min(mostNamed, len(r.ids))]
	text := strings.Join(first, " ")
	if n := len(r.ids) - len(first); n > 0 {
		text += fmt.Sprintf(" and %d more", n)
	}
	return text
}
