package cuts

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/table"
)

var columns = []string{"cut", "count", "kind", "width", "height", "height left", "height right", "width bottom", "width top",
	"notch leaves", "hole", "factory edges", "cut edges", "pieces", "from one tile"}

// CSV writes the schedule with one row per group, safe to open in a
// spreadsheet (see table.Write), lengths as the tape shows them. It fails only
// when w does.
func (s Schedule) CSV(w io.Writer, units length.System) error {
	rows := [][]string{columns}
	mate := map[string]string{}
	for _, p := range s.Offcuts.Pairs {
		mate[p[0]], mate[p[1]] = p[1], p[0]
	}
	for _, g := range s.Groups {
		rows = append(rows, g.row(units, mate))
	}
	return table.Write(w, rows)
}

func (g Group) row(u length.System, mate map[string]string) []string {
	row := []string{g.ID, strconv.Itoa(g.Count), g.Kind}
	for _, l := range []length.Length{g.Size.Width, g.Size.Height, g.Size.Left, g.Size.Right, g.Size.Bottom, g.Size.Top} {
		row = append(row, l.Fine(u))
	}
	return append(row, notchText(g.Size.Notches, u), holeText(g.Size.Holes, u),
		strings.Join(g.Factory, " "), strings.Join(g.Cut, " "), strings.Join(g.Pieces, " "), pairText(g.Pieces, mate))
}

func notchText(notches []Notch, u length.System) string {
	var all []string
	for _, n := range notches {
		var arms []string
		for _, arm := range []struct {
			left length.Length
			side string
		}{{n.Left, "left"}, {n.Right, "right"}, {n.Below, "below"}, {n.Above, "above"}} {
			if arm.left > 0 {
				arms = append(arms, arm.left.Fine(u)+" "+arm.side)
			}
		}
		all = append(all, strings.Join(arms, ", "))
	}
	return strings.Join(all, "; ")
}

func holeText(holes []Hole, u length.System) string {
	var all []string
	for _, h := range holes {
		all = append(all, fmt.Sprintf("%s: %s across, centre %s from left, %s up", h.Name, h.Diameter.Fine(u), h.FromLeft.Fine(u), h.Up.Fine(u)))
	}
	return strings.Join(all, "; ")
}

// pairText tells which piece comes out of the same tile: "B-01-01 + B-04-09".
func pairText(ids []string, mate map[string]string) string {
	var all []string
	for _, id := range ids {
		if other, paired := mate[id]; paired {
			all = append(all, id+" + "+other)
		}
	}
	return strings.Join(all, "; ")
}
