package layout

import (
	"coursewright/layout/survey"
	"coursewright/layout/trim"
)

// trimFile is one piece of trim; inner is its side next to the tile, outer the other.
type trimFile struct {
	ID     string    `json:"id"`
	Edge   string    `json:"edge"` // "left", "right", "head", "base"
	Name   string    `json:"name"`
	Kind   string    `json:"kind"`
	Face   [][][2]mm `json:"face"`
	Length mm        `json:"length"`
	Inner  mm        `json:"inner"`
	Outer  mm        `json:"outer"`
	Whole  bool      `json:"whole,omitempty"`
	Corner bool      `json:"corner,omitempty"`
	Mitres int       `json:"mitres,omitempty"`
}

// trimOf lists the trim of a wall; nil where it has none.
func trimOf(pieces []trim.Piece) []trimFile {
	var out []trimFile
	for _, p := range pieces {
		edge := "head"
		switch p.Edge {
		case survey.LeftEnd:
			edge = "left"
		case survey.RightEnd:
			edge = "right"
		case survey.BaseSegment:
			edge = "base"
		}
		out = append(out, trimFile{ID: p.ID, Edge: edge, Name: p.Trim.Name, Kind: string(p.Trim.Kind), Face: ringsOf(p.Face),
			Length: p.Long.Millimetres(), Inner: p.Inner.Millimetres(), Outer: p.Outer.Millimetres(), Whole: p.Whole, Corner: p.Corner, Mitres: p.Mitres})
	}
	return out
}
