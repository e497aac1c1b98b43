package finding

import (
	"fmt"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// onSheets is the quiet room with so many whole tiles in stack bond, on sheets.
func onSheets(wide, high int, sheet survey.SheetSize) func(*Input) {
	return func(in *Input) {
		in.Room.Tile.Sheet = sheet
		w := &in.Walls[0]
		w.Pieces = nil
		across, up := in.Room.Tile.Width+in.Room.Joint, in.Room.Tile.Height+in.Room.Joint
		for k := range high {
			for i := range wide {
				t := plane.Rect{Left: length.Length(i) * across, Bottom: length.Length(k) * up}
				t.Right, t.Top = t.Left+in.Room.Tile.Width, t.Bottom+in.Room.Tile.Height
				face := plane.Region{t.Ring(0)}
				w.Pieces = append(w.Pieces, piece.Piece{ID: fmt.Sprintf("B-%02d-%02d", k+1, i+1), Row: k, Course: k + 1, Tile: t, Face: face, Visible: face, Whole: true})
			}
		}
	}
}

// mosaicCases are those of TestRules for tile on sheets.
func mosaicCases() []ruleCase {
	three := survey.SheetSize{Across: 3, Up: 3}
	return []ruleCase{
		{"tile set one by one", SheetLines, onSheets(6, 6, survey.SheetSize{}), nil},
		{"tile on sheets", SheetLines, onSheets(6, 6, three), []string{"The mosaic comes on sheets of 3 × 3 tiles. The lines between sheets must not show."}},
		{"whole sheets", NarrowStripOfASheet, onSheets(6, 6, three), nil},
		{"strips of two", NarrowStripOfASheet, onSheets(8, 6, three), nil},
		{"strips of one", NarrowStripOfASheet, onSheets(7, 6, three), []string{"On back 2 parts of a sheet are one row of tiles alone (B-S1-3)."}},
		{"sheets one tile high", NarrowStripOfASheet, onSheets(6, 6, survey.SheetSize{Across: 3, Up: 1}), nil},
	}
}
