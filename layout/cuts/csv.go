package cuts

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/table"
)

var columns = []string{"piece", "cut", "kind", "width", "height", "height left", "height right", "width bottom", "width top",
	"notch leaves", "hole", "factory edges", "cut edges", "from one tile with"}

// Columns are the heads of the columns of the CSV.
func Columns() []string { return slices.Clone(columns) }

// CSV writes every cut piece in a row of its own, with its exact place in the
// schedule, safe to open in a spreadsheet (see table.Write), lengths to the
// fine step. It fails only when w does.
func (s Schedule) CSV(w io.Writer, units length.System) error {
	rows := [][]string{columns}
	mate := s.Offcuts.Partners()
	for _, c := range s.Cuts {
		rows = append(rows, c.row(units, mate[c.Piece]))
	}
	for _, f := range s.Mosaic {
		for _, a := range f.Parts() {
			for _, id := range a.Sheets {
				rows = append(rows, append([]string{id, "", fmt.Sprintf("part of a sheet: %s, cut along its joints", f.Size.Counted(a.Wide, a.High))}, make([]string, len(columns)-3)...))
			}
		}
	}
	for _, c := range s.Trim {
		rows = append(rows, c.row(units))
	}
	for _, m := range s.Mitres {
		rows = append(rows, m.rows()...)
	}
	return table.Write(w, rows)
}

// Partners gives for each piece of a pair the other.
func (o Offcuts) Partners() map[string]string {
	mate := map[string]string{}
	for _, p := range o.Pairs {
		mate[p[0]], mate[p[1]] = p[1], p[0]
	}
	return mate
}

func (c Cut) row(u length.System, mate string) []string {
	row := []string{c.Piece, c.Group, c.Kind}
	for _, l := range []length.Length{c.Size.Width, c.Size.Height, c.Size.Left, c.Size.Right, c.Size.Bottom, c.Size.Top} {
		row = append(row, l.Fine(u))
	}
	return append(row, notchText(c.Size.Notches, u), holeText(c.Size.Holes, u),
		strings.Join(c.Factory, " "), strings.Join(c.Cut, " "), mate)
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
