package bench

import (
	"fmt"
	"strings"

	"coursewright/layout/mosaic"
	"coursewright/web/page"
)

// sheetsLine is the one line of the closed table of sheets.
func (b Bench) sheetsLine() string {
	whole, parts := 0, 0
	for _, f := range b.Schedule.Mosaic {
		bought := mosaic.Buy([]mosaic.Field{f})
		whole, parts = whole+bought.Full, parts+bought.Parts
	}
	return fmt.Sprintf("%s and %s", page.Count(whole, "whole sheet"), page.Count(parts, "part"))
}

// sheetRow is a row of the table of sheets: those of which the same stays.
type sheetRow struct {
	stays       string
	ids, pieces []string
}

// sheetRows lists the whole sheets of a field, then its parts.
func sheetRows(f mosaic.Field) []sheetRow {
	size := f.Tile.Sheet
	whole := sheetRow{stays: fmt.Sprintf("all %d × %d tiles", size.Across, size.Up)}
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
		r := sheetRow{stays: fmt.Sprintf("%d × %d tiles", a.Wide, a.High), ids: a.Sheets}
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
