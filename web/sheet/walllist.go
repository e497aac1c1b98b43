package sheet

import (
	"strings"

	"coursewright/layout"
	"coursewright/layout/cuts"
)

// WallCut is a row of the cut list of a wall, for a page that shows it beside the drawing.
type WallCut struct {
	Courses string // in which it stands; of trim nothing
	Where   string
	Size    string // to cut
	More    string // what else is to be said of it
	Line    string // of the cut schedule
	Count   int
	Pieces  []string // of tile
}

// WallCuts is the cut list that stands on a wall's sheet.
func WallCuts(plan layout.Plan, wall int, schedule cuts.Schedule) []WallCut {
	b, w := &book{plan: plan, cuts: schedule}, plan.Walls[wall]
	course := map[string]int{}
	for _, p := range w.Pieces {
		course[p.ID] = p.Course
	}
	var out []WallCut
	for _, e := range b.wallEntries(w, course) {
		c := WallCut{Courses: coursesText(e.courses), Where: e.where, Size: e.big, More: e.small, Line: e.lineText(), Count: e.pieces, Pieces: e.ids}
		if e.byCourse != "" {
			c.Size, c.More = "by course", e.byCourse
		}
		c.More = strings.ReplaceAll(c.More, "\n", " ")
		out = append(out, c)
	}
	return out
}
