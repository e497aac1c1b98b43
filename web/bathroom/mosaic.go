package bathroom

import (
	"fmt"
	"slices"

	"coursewright/layout/mosaic"
	"coursewright/web/page"
)

// sheetRow names the course of sheets of which a sheet is one.
func sheetRow(f *mosaic.Field, s *mosaic.Sheet) string {
	name := "sheets"
	if f.Band != "" {
		name = f.Band + ", sheets"
	}
	if !f.Level {
		return name
	}
	return fmt.Sprintf("%s, course %d", name, s.Row)
}

// cutsOn says which tiles of a sheet are cut, by the lines of the cut schedule.
func (b bathroom) cutsOn(s step) (out []string) {
	n := map[string]int{}
	var order []string
	for _, g := range b.cuts.Groups {
		for _, p := range s.Pieces {
			if slices.Contains(g.Pieces, p.ID) {
				if n[g.ID]++; n[g.ID] == 1 {
					order = append(order, g.ID)
				}
			}
		}
	}
	for _, id := range order {
		out = append(out, fmt.Sprintf("%d as %s", n[id], id))
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
