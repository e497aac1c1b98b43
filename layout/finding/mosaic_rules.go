package finding

import (
	"fmt"

	"coursewright/layout/mosaic"
)

// mosaicRules judge tile that comes on sheets.
func mosaicRules() []Rule {
	return []Rule{
		{
			Name: SheetLines, Grade: Advice, judge: sheetLines,
			Why:    "A joint between two sheets that is wider or narrower than those within them is seen from across the room as the line of a sheet; no cut can hide it.",
			Do:     "Measure the joints of a sheet and type what they are as the joint; leave the same between sheets, look along the rows before the mortar takes, and push single tiles over where a line shows.",
			Source: "that sheet lines must not show: " + practice + "; how even the joints of a sheet are: ANSI A137.1 table 6, as TileLetter tells it; look it up",
		},
		{
			Name: NarrowStripOfASheet, Grade: Advice, judge: narrowStrips,
			Why:    "A strip of one row, cut off its sheet, hangs together by little and slides in the mortar.",
			Do:     "Set it tile by tile with spacers, or begin the sheets elsewhere, so that the strip is wider.",
			Source: practice,
		},
	}
}

// sheetLines speaks once where anything comes on sheets.
func sheetLines(in Input) []place {
	for _, f := range mosaic.Of(in.Room, in.Walls) {
		s := f.Size
		return []place{{wall: -1, text: fmt.Sprintf("The mosaic comes on sheets of %s. The lines between sheets must not show.", s.Counted(s.Across, s.Up))}}
	}
	return nil
}

// narrowStrips are parts of sheets one tile wide or high of walls and bands, where a sheet
// is wider and higher.
func narrowStrips(in Input) []place {
	var all []place
	for _, f := range mosaic.Of(in.Room, in.Walls) {
		n := 0
		first := ""
		for _, s := range f.Sheets {
			if f.Face == nil && (s.Wide == 1 && f.Size.Across > 1 || s.High == 1 && f.Size.Up > 1) {
				if n++; first == "" {
					first = s.ID
				}
			}
		}
		if n > 0 {
			all = append(all, place{wall: f.Wall, text: fmt.Sprintf("On %s %s of a sheet %s one row of tiles alone (%s).", f.Name, count(n, "part"), areOr(n), first)})
		}
	}
	return all
}

func areOr(n int) string {
	if n == 1 {
		return "is"
	}
	return "are"
}
