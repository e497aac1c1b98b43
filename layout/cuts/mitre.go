package cuts

import (
	"fmt"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// Mitre is the mitred edge of one wall at an outside corner: every piece beside it,
// whole tiles too, is cut there with the saw tilted. The sizes of the schedule are
// those of the face, which stays full.
type Mitre struct {
	Wall   string        // its letter
	Right  bool          // at its right end
	Bevel  string        // how far the saw is tilted: "45°", "22.5°"
	Back   length.Length // how much shorter the back is than the face
	Kerf   length.Length // what the cut takes along the face
	Pieces []string      // their ids, from the bottom up
	Whole  int           // how many of them are whole tiles otherwise
}

// mitres lists the mitred edges of a room, from left to right.
func mitres(in Input, set Settings) []Mitre {
	var all []Mitre
	for _, c := range plan.Corners(in.Room, in.Walls) {
		if c.How != survey.Mitre {
			continue
		}
		for _, wall := range []int{c.Before, c.After} {
			w := &in.Walls[wall]
			m := Mitre{Wall: w.Found.Letter, Right: wall == c.Before, Bevel: survey.HalfDegrees(c.Bevel()), Back: c.Back(in.Room.Tile.Thickness), Kerf: c.Kerf(set.Kerf)}
			for i := range w.Pieces {
				if p := &w.Pieces[i]; c.At(in.Walls, wall, p) && !w.Found.Stands(p.Row) {
					m.Pieces = append(m.Pieces, p.ID)
					if p.Whole {
						m.Whole++
					}
				}
			}
			all = append(all, m)
		}
	}
	return all
}

// Words tell what to do: "P left: tilt the saw to 45°; the back is 5/16" shorter
// than the face", and how many whole tiles are cut too.
func (m Mitre) Words(u length.System) []string {
	end := "left"
	if m.Right {
		end = "right"
	}
	out := []string{fmt.Sprintf("%s %s: tilt the saw to %s; the back is %s shorter than the face", m.Wall, end, m.Bevel, m.Back.Fine(u))}
	if m.Whole > 0 {
		out = append(out, fmt.Sprintf("%d of %d are whole tiles otherwise", m.Whole, len(m.Pieces)))
	}
	return out
}

// rows are its pieces in the table of cuts, whole tiles too: a row of their own beside
// that of their other cuts.
func (m Mitre) rows() [][]string {
	end := "left"
	if m.Right {
		end = "right"
	}
	var out [][]string
	for _, id := range m.Pieces {
		row := make([]string, len(columns))
		row[0], row[2] = id, "mitre "+end+", "+m.Bevel
		out = append(out, row)
	}
	return out
}

// mitred is what the mitred cuts of a piece take along its face beyond the kerf of
// a square cut. A factory edge that is mitred takes nothing of the tile.
func (w work) mitred(kerf length.Length) (more length.Length) {
	cut := func(o *survey.OutsideFound, edge, tile length.Length) {
		if o != nil && o.How == survey.Mitre && edge != tile {
			more += o.Kerf(kerf) - kerf
		}
	}
	if w.own != nil {
		return 0
	}
	at, f := w.wall.Start.Placed, w.wall.Found
	if w.box.Left == at.Left {
		cut(f.Left.Outside, w.box.Left, w.piece.Tile.Left)
	}
	if w.box.Right == at.Right {
		cut(f.Right.Outside, w.box.Right, w.piece.Tile.Right)
	}
	return more
}
