package layout

import (
	"coursewright/layout/survey"
	"coursewright/layout/trim"
)

// topFile is the horizontal face on a wall, as if folded up into its plane: x from its
// left end, y from its finished front edge to the back.
type topFile struct {
	Kind   string      `json:"kind"` // "seat", "ledge", "curb", "cap"
	Letter string      `json:"letter"`
	Front  mm          `json:"front"` // the height of its finished edge at the front
	Rise   mm          `json:"rise"`  // from there to the back, where it is deepest
	At     [2]mm       `json:"at"`    // where 0, 0 lies in the wall when folded up
	Edge   string      `json:"edge"`  // "lap", "mitre", "profile", "bullnose"
	Region [][][2]mm   `json:"region"`
	Slab   bool        `json:"slab,omitempty"`
	Tile   string      `json:"tile,omitempty"` // the name of a tile of its own
	Pieces []pieceFile `json:"pieces"`
	Runs   []runFile   `json:"runs"` // as those of a wall, between "front" and "back"
	Trim   []trimFile  `json:"trim,omitempty"`
}

// topOf is the top of a wall; nil where it has none.
func topOf(w Wall) *topFile {
	t := w.Top
	if t == nil {
		return nil
	}
	out := &topFile{Kind: string(t.Found.Kind), Letter: t.Wall.Found.Letter, Front: t.Front.Millimetres(), Rise: t.Rise.Millimetres(),
		At: [2]mm{t.Origin.X.Millimetres(), t.Origin.Y.Millimetres()}, Edge: string(t.Found.How), Region: ringsOf(t.Shape.Region), Slab: t.Slab,
		Pieces: make([]pieceFile, len(t.Pieces)), Runs: runsOf(t.Runs), Trim: topTrimOf(t.Trim)}
	if t.Found.Face.Tile != nil {
		out.Tile = t.Tile.Name
	}
	for i, p := range t.Pieces {
		out.Pieces[i] = pieceOf(t.Wall, p)
	}
	return out
}

// topTrimOf is the trim along the edges of a top, which has a front and a back for head
// and base.
func topTrimOf(pieces []trim.Piece) []trimFile {
	out := trimOf(pieces)
	for i, p := range pieces {
		switch p.Edge {
		case survey.HeadEdge:
			out[i].Edge = "front"
		case survey.BaseSegment:
			out[i].Edge = "back"
		}
	}
	return out
}
