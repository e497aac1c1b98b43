package bathroom

import (
	"fmt"
	"slices"

	"coursewright/layout/mosaic"
	"coursewright/layout/piece"
	"coursewright/web/page"
)

// OnSheet is a sheet of mosaic on which pieces of a step are.
type OnSheet struct {
	ID    string
	Stays string   // what of it stays: "6 × 4 tiles, 2 of them cut"
	Marks []string // of its pieces that are not set
}

// sheets lists the sheets of mosaic on which the pieces of a step are.
func (b bathroom) sheets(s step) []OnSheet {
	var out []OnSheet
	for _, f := range b.cuts.Mosaic {
		if f.Wall != s.Wall {
			continue
		}
		for _, sheet := range f.Sheets {
			if !slices.ContainsFunc(s.Pieces, func(p piece.Piece) bool { return slices.Contains(sheet.Pieces, p.ID) }) {
				continue
			}
			one := OnSheet{ID: sheet.ID, Stays: stays(f, sheet)}
			for _, id := range sheet.Pieces {
				if mark := b.marks[id]; mark != "" && !b.set[mark] && !b.stands[id] {
					one.Marks = append(one.Marks, mark)
				}
			}
			out = append(out, one)
		}
	}
	return out
}

// stays says what of a sheet is set.
func stays(f mosaic.Field, s mosaic.Sheet) string {
	text := f.Size.Counted(s.Wide, s.High)
	if s.Full(f.Size) {
		return "whole, " + text
	}
	if s.Parted(f.Size) {
		text = "cut along its joints to " + text
		if n := s.Wide*s.High*max(1, f.Size.Each) - s.Whole - s.Cut; n > 0 {
			text += fmt.Sprintf(", %s out of it", page.Count(n, "tile"))
		}
	}
	if s.Cut > 0 {
		text += fmt.Sprintf(", %d of them cut", s.Cut)
	}
	return text
}
