package layout

import (
	"coursewright/layout/cuts"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
)

// mapFile is what the worst run of a wall would be with other lines and starts: row
// by row, the lowest line first, columns of them in a row.
type mapFile struct {
	Edge    mm        `json:"edge"`
	Line    mm        `json:"line"`
	Across  mm        `json:"across"` // from column to column
	Up      mm        `json:"up"`     // from row to row
	Columns int       `json:"columns"`
	Shares  []float64 `json:"shares"`
}

func mapOf(m *plan.Map) *mapFile {
	if m == nil {
		return nil
	}
	return &mapFile{m.Edge.Millimetres(), m.Line.Millimetres(), m.Across.Millimetres(), m.Up.Millimetres(), m.Columns, shares(m.Shares)}
}

// sawFile is one straight cut of a piece of a pattern: its two marks, and whether it ends inside the tile, where
// its line crosses another.
type sawFile struct {
	Enters markFile `json:"enters"`
	Leaves markFile `json:"leaves"`
	Stops  bool     `json:"stops,omitempty"`
}

// markFile is a place on an edge of a tile that lies on its long edge, A to B: so far
// from one corner on the way to the next. Corners are counted to the left round it.
type markFile struct {
	On   string `json:"on"` // "A to B"
	From mm     `json:"from"`
}

func sawsOf(g cuts.Group) []sawFile {
	var out []sawFile
	for _, s := range g.Saws {
		out = append(out, sawFile{markFile{s.Enters.String(), s.Enters.From.Millimetres()}, markFile{s.Leaves.String(), s.Leaves.From.Millimetres()}, s.Stops})
	}
	return out
}

// outlineOf lists the corners of the tile of a pattern.
func outlineOf(r plane.Ring) [][2]mm {
	if r == nil {
		return nil
	}
	return ringsOf(plane.Region{r})[0]
}
