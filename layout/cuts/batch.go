package cuts

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// mostLines is how many lines one run of pieces along a boundary may take. A run that
// would take more is one line, and each of its pieces is measured by itself.
const mostLines = 3

// batcher puts cut pieces into lines.
type batcher struct {
	room survey.Room
	turn bool          // tiles may be turned round
	step length.Length // what the schedule is written to
	near length.Length // within this, cuts into a corner are alike
}

// lot is pieces that will be one line, with the text that tells it from others.
type lot struct {
	key    string
	group  Group
	pieces []work
}

// groups makes the lines. A piece that is cut to one boundary only belongs to
// the run along it, and a run that ends in a corner, at a base or at a head may
// share settings; all others must be equal.
func (b batcher) groups(cut []work) []Group {
	var lots []lot
	index := map[string]int{}
	for _, part := range b.runs(cut) {
		for _, l := range b.settings(part) {
			i, known := index[l.key]
			if !known {
				i, lots = len(lots), append(lots, lot{key: l.key, group: l.group})
				index[l.key] = i
			}
			lots[i].pieces = append(lots[i].pieces, l.pieces...)
			lots[i].group.Spread = max(lots[i].group.Spread, l.group.Spread)
			lots[i].group.Size.shrinkTo(l.group.Size)
		}
	}
	var parted []lot
	for _, l := range lots {
		parted = append(parted, b.nearlyAlike(l)...)
	}
	lots = parted
	order := map[string]int{}
	for i, w := range cut {
		order[w.piece.ID] = i
	}
	all := make([]Group, len(lots))
	for i, l := range lots {
		slices.SortStableFunc(l.pieces, func(a, c work) int { return order[a.piece.ID] - order[c.piece.ID] })
		all[i] = filled(l, b.step)
		if of := l.pieces[0].piece.Of; of > 0 {
			all[i].Of, all[i].Tile = of, b.further(of)
		}
	}
	return numbered(all)
}

// further names a tile of a pattern beside the first: its own name, or its number and size.
func (b batcher) further(of int) string {
	if of > len(b.room.Bond.Others) {
		return ""
	}
	t, u := b.room.Bond.Others[of-1], b.room.Units
	if t.Name != "" {
		return t.Name
	}
	hard := "\u00a0" // no line is broken within a size
	return fmt.Sprintf("tile %d, %s", of+1, strings.ReplaceAll(t.Width.Fine(u)+" × "+t.Height.Fine(u), " ", hard))
}

// shrinkTo makes no measure larger than that of another size.
func (s *Size) shrinkTo(o Size) {
	s.Width, s.Height = min(s.Width, o.Width), min(s.Height, o.Height)
	s.Left, s.Right = min(s.Left, o.Left), min(s.Right, o.Right)
	s.Bottom, s.Top = min(s.Bottom, o.Bottom), min(s.Top, o.Top)
}

// filled completes a line from its pieces.
func filled(l lot, step length.Length) Group {
	g := l.group
	if l.pieces[0].own != nil && g.How == Fence {
		g.byLeast(l.pieces, step)
	}
	g.Outline = l.pieces[0].around()
	first := l.plainest()
	g.Sketch = first.face
	g.Factory, g.Cut = first.edges()
	for _, w := range l.pieces {
		g.Pieces = append(g.Pieces, w.piece.ID)
		wall, side := w.wall.Found.Letter, w.goes()
		i := slices.IndexFunc(g.Places, func(p Place) bool { return p.Wall == wall && p.Side == side })
		if i < 0 {
			i, g.Places = len(g.Places), append(g.Places, Place{Wall: wall, Side: side})
		}
		g.Places[i].Pieces = append(g.Places[i].Pieces, w.piece.ID)
	}
	return g
}

// plainest is the first piece of a line; of one with a single cut the first that is
// cut on no more than one side, because a cut under the fine step is no cut.
func (l lot) plainest() work {
	if l.group.Kind == "cross cut" || l.group.Kind == "rip" {
		for _, w := range l.pieces {
			if _, sawn := w.edges(); len(sawn) == 1 {
				return w
			}
		}
	}
	return l.pieces[0]
}

// key is equal for lines of equal sizes and kinds.
func (g Group) key() string {
	s := g.Size
	key := appendLengths([]byte(g.Kind), s.Width, s.Height, s.Left, s.Right, s.Bottom, s.Top)
	if len(s.Notches)+len(s.Holes) > 0 {
		key = fmt.Append(key, s.Notches, s.Holes)
	}
	return string(key)
}

func appendLengths(text []byte, all ...length.Length) []byte {
	for _, l := range all {
		text = strconv.AppendInt(append(text, ' '), int64(l), 10)
	}
	return text
}
