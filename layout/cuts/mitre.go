package cuts

import (
	"fmt"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// Mitre is the mitred edge of one wall at an outside corner, or of a top: every piece beside it,
// whole tiles too, is cut there with the saw tilted. The sizes of the schedule are
// those of the face, which stays full.
type Mitre struct {
	Wall   string        // its letter
	End    string        // which of its edges: "left", "right", "head", of a top "front" and "back" too
	Corner string        // the outside corner there, "corner H–P", or empty
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
			m := Mitre{Wall: w.Found.Letter, End: "left", Corner: plan.CornerName(in.Walls, wall, wall == c.After), Bevel: survey.HalfDegrees(c.Bevel()), Back: c.Back(in.Room.Tile.Thickness), Kerf: c.Kerf(set.Kerf)}
			if wall == c.Before {
				m.End = "right"
			}
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
	return append(all, topMitres(in, set)...)
}

// Words tell what to do: "P left, corner H–P: tilt the saw to 45°; the back is 5/16" shorter
// than the face", and how many whole tiles are cut too.
func (m Mitre) Words(u length.System) []string {
	edge := m.Wall + " " + m.End
	if m.Corner != "" {
		edge += ", " + m.Corner
	}
	out := []string{fmt.Sprintf("%s: tilt the saw to %s; the back is %s shorter than the face", edge, m.Bevel, m.Back.Fine(u))}
	if m.Whole > 0 {
		out = append(out, fmt.Sprintf("%d of %d are whole tiles otherwise", m.Whole, len(m.Pieces)))
	}
	return out
}

// topMitres lists the mitred edges of tops: along the heads of their walls, and along
// their own open edges.
func topMitres(in Input, set Settings) []Mitre {
	var all []Mitre
	corner := survey.OutsideFound{Angle: 90}
	add := func(w *plan.Wall, end string, tile survey.TileSize, edges func(*piece.Piece) []string) {
		m := Mitre{Wall: w.Found.Letter, End: end, Bevel: survey.HalfDegrees(corner.Bevel()), Back: corner.Back(tile.Thickness), Kerf: corner.Kerf(set.Kerf)}
		for i := range w.Pieces {
			p := &w.Pieces[i]
			if !w.Found.Stands(p.Row) && slices.Contains(edges(p), end+" at "+m.Bevel) {
				m.Pieces = append(m.Pieces, p.ID)
				if p.Whole {
					m.Whole++
				}
			}
		}
		if len(m.Pieces) > 0 {
			all = append(all, m)
		}
	}
	for i := range in.Walls {
		w := &in.Walls[i]
		if !w.Found.Head.Mitred() {
			continue
		}
		add(w, "head", in.Room.Tile, func(p *piece.Piece) []string { return plan.Mitred(w, p) })
		if w.Top == nil { // it lies on the wall round the corner
			continue
		}
		for _, end := range []string{"front", "left", "right", "back"} {
			add(&w.Top.Wall, end, w.Top.Tile, w.Top.Mitred)
		}
	}
	return all
}

// rows are its pieces in the table of cuts, whole tiles too: a row of their own beside
// that of their other cuts.
func (m Mitre) rows() [][]string {
	var out [][]string
	for _, id := range m.Pieces {
		row := make([]string, len(columns))
		row[0], row[2] = id, "mitre "+m.End+", "+m.Bevel
		out = append(out, row)
	}
	return out
}

// mitred is what the mitred cuts of a piece take along its face beyond the kerf of
// a square cut, across and up. A factory edge that is mitred takes nothing of the tile.
func (w work) mitred(kerf length.Length) (more, up length.Length) {
	cut := func(o *survey.OutsideFound, edge, tile length.Length) {
		if o != nil && o.How == survey.Mitre && edge != tile {
			more += o.Kerf(kerf) - kerf
		}
	}
	if w.own != nil {
		return 0, 0
	}
	at, f := w.wall.Start.Placed, w.wall.Found
	if w.box.Left == at.Left {
		cut(f.Left.Outside, w.box.Left, w.piece.Tile.Left)
	}
	if w.box.Right == at.Right {
		cut(f.Right.Outside, w.box.Right, w.piece.Tile.Right)
	}
	if f.Head.Mitred() && w.box.Top == at.Head && w.box.Top != w.piece.Tile.Top {
		up = survey.OutsideFound{Angle: 90}.Kerf(kerf) - kerf
	}
	return more, up
}
