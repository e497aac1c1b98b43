package phase

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
)

// mapped is how many lines and starts a map has at most, each way.
const mapped = 28

// Map is the worst run of a wall against line and start.
func (r *Result) Map(wall int) *plan.Map {
	w, tape := r.walls[wall], r.room.Tape
	m := &plan.Map{Reach: w.Pattern.Reach, Rise: w.Pattern.Rise}
	m.Across = max(tape, (m.Reach / mapped).CeilTo(tape))
	m.Up = max(tape, (m.Rise / mapped).CeilTo(tape))
	m.Columns = int((m.Reach + m.Across - 1) / m.Across)
	rows := int((m.Rise + m.Up - 1) / m.Up)
	// About the set-out found, so that it stands on an entry.
	m.Edge = r.Walls[wall].Edge - length.Length(m.Columns/2)*m.Across
	m.Line = r.Line - length.Length(rows/2)*m.Up
	for y := range rows {
		for x := range m.Columns {
			best := w.AtBest(m.Line+length.Length(y)*m.Up, m.Edge+length.Length(x)*m.Across, 0, 0)
			share := piece.Half
			if len(best.Runs) > 0 {
				share = best.Runs[0]
			}
			if best.Bare > 0 {
				share = piece.Share{Num: 0, Den: 1}
			}
			m.Shares, m.Unworkable = append(m.Shares, share), append(m.Unworkable, best.Unworkable)
		}
	}
	return m
}

// Classic is a start people know by name.
type Classic struct {
	Name   string
	Edge   length.Length
	OnTile bool
}

// Classics are the starts of the trade: a tile's middle, or a point of the pattern
// (where the first place's tile begins), on the middle of the tile field.
func (w *Wall) Classics() []Classic {
	box := w.ground(w.outer).box
	centre := (box.Left + box.Right).Half()
	wide := w.Pattern.Tiles[w.Pattern.Places[0].Tile].Box.Width()
	return []Classic{{"tile on centre", centre - wide.Half(), true}, {"joint on centre", centre + w.room.Joint.Half(), false}}
}
