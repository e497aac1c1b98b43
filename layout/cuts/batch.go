package cuts

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/piece"
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
	order := map[string]int{}
	for i, w := range cut {
		order[w.piece.ID] = i
	}
	all := make([]Group, len(lots))
	for i, l := range lots {
		slices.SortStableFunc(l.pieces, func(a, c work) int { return order[a.piece.ID] - order[c.piece.ID] })
		all[i] = filled(l, b.step)
	}
	return numbered(all)
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

// byLeast gives a line of pieces of a pattern that are nearly alike the marks of the
// smallest, and says how much larger the places of others are.
func (g *Group) byLeast(pieces []work, step length.Length) {
	least := pieces[0]
	for _, w := range pieces {
		if w.piece.Face.Area2() < least.piece.Face.Area2() {
			least = w
		}
	}
	g.Saws = least.saws(step)
	for _, w := range pieces {
		size := w.size(step)
		g.Spread = max(g.Spread, size.Width-g.Size.Width, size.Height-g.Size.Height)
	}
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

// level tells whether a boundary is a base or a head.
func level(b survey.Boundary) bool {
	return b.Part.Is == survey.BaseSegment || b.Part.Is == survey.HeadEdge
}

// goes names the boundary by which a piece is looked for: an opening before the base or
// head, those before the front of a tub or a seat, and that before an end.
func (w work) goes() string {
	name, first := "", 0
	for _, on := range w.piece.Cuts {
		if int(on) <= 0 || int(on) >= len(w.wall.Shape.Sides) {
			continue
		}
		side, rank, called := w.wall.Shape.Sides[on], 1, w.wall.Shape.Sides[on].Name
		switch {
		case side.Part.Is == survey.OpeningEdge:
			return side.Name
		case w.piece.AtStep(on, w.wall.Shape.Sides):
			rank, called = 2, side.Front()
		case level(side):
			if rank = 3; side.Part.Is == survey.BaseSegment && w.stepped() {
				called = "the " + string(side.Kind)
			}
		}
		if rank > first {
			name, first = called, rank
		}
	}
	return name
}

// stepped tells whether the wall stands on more than one kind of base.
func (w work) stepped() bool {
	base := w.wall.Found.Base
	return slices.ContainsFunc(base, func(s survey.SegmentFound) bool { return s.Meets != base[0].Meets })
}

// run is pieces beside or over each other that are cut to the same boundary.
type run struct {
	pieces []work
	side   survey.PartIs // zero for a piece by itself
	hides  length.Length
}

// runs parts the pieces into runs, in the order of their first pieces.
func (b batcher) runs(cut []work) []run {
	var all []run
	index := map[string]int{}
	for _, w := range cut {
		side, key, hides := b.along(w)
		if i, known := index[key]; known && side != 0 {
			all[i].pieces = append(all[i].pieces, w)
			continue
		}
		index[key] = len(all)
		all = append(all, run{pieces: []work{w}, side: side, hides: hides})
	}
	return all
}

// along tells to which run a piece belongs, and what of a difference is hidden
// there: by the tile that laps over it, or by sealant. Side is empty for a
// piece of no run. Corner pieces of the base and the head belong to their runs.
func (b batcher) along(w work) (side survey.PartIs, key string, hides length.Length) {
	if w.piece.Kind&(piece.Notch|piece.Hole) != 0 || w.unworkable() || w.own != nil {
		return 0, w.piece.ID, 0
	}
	cut := w.boundaries()
	end := func(s survey.Boundary) bool { return s.Part.Is == survey.LeftEnd || s.Part.Is == survey.RightEnd }
	for _, s := range cut {
		switch {
		case !s.Meets && end(s) && slices.ContainsFunc(cut, level):
			continue // a plain edge at the end of the run
		case !s.Meets:
			return 0, w.piece.ID, 0
		case side == 0 || level(s):
			side = s.Part.Is
		}
	}
	if side == 0 {
		return 0, w.piece.ID, 0
	}
	hides = b.room.Sealant
	place := w.piece.Tile.Left
	switch side {
	case survey.LeftEnd:
		hides = max(hides, w.wall.Found.Left.Cover)
	case survey.RightEnd:
		hides = max(hides, w.wall.Found.Right.Cover)
	default:
		place = w.piece.Tile.Bottom
	}
	return side, fmt.Sprint(w.wall.Found.Letter, " ", w.wall.Found.Name, " ", side, " ", int64(place)), hides
}

// settings parts a run into lines: equal settings where few are enough, then
// settings within near, then one line whose pieces are measured one by one.
func (b batcher) settings(r run) []lot {
	equal := b.equal(r.pieces)
	if r.side == 0 || len(equal) == 1 {
		return equal
	}
	if r.side == survey.LeftEnd || r.side == survey.RightEnd {
		return b.ends(r, equal)
	}
	if len(equal) <= mostLines && tapers(equal) <= 1 {
		return equal
	}
	how := FirstCourse
	if r.side == survey.HeadEdge {
		how = InPlace
	}
	return []lot{b.single(r, how)}
}

// tapers counts the lines with two heights.
func tapers(lots []lot) (n int) {
	for _, l := range lots {
		if tall, _ := l.group.Size.Tapers(); tall {
			n++
		}
	}
	return n
}

// ends are the lines of a run into a corner.
func (b batcher) ends(r run, equal []lot) []lot {
	if slices.ContainsFunc(r.pieces, func(w work) bool { return len(w.piece.Cuts) > 1 }) {
		return equal
	}
	low, high := b.reach(r.pieces)
	switch {
	case high-low <= b.near:
		return []lot{b.batch(r.pieces)}
	case high-low <= r.hides:
		return []lot{b.single(r, InPlace)}
	}
	var out []lot
	rest := slices.Clone(r.pieces)
	slices.SortStableFunc(rest, func(a, c work) int { return int(a.narrow() - c.narrow()) })
	for len(rest) > 0 {
		n := 1
		for ; n < len(rest); n++ {
			if low, high := b.reach(rest[:n+1]); high-low > b.near {
				break
			}
		}
		out = append(out, b.batch(rest[:n]))
		rest = rest[n:]
	}
	if len(out) > mostLines {
		return []lot{b.single(r, InPlace)}
	}
	return out
}

// narrow is the least width a piece cut into a corner has over its height.
func (w work) narrow() length.Length {
	_, _, bottom, top := w.sides()
	if bottom == 0 || top == 0 {
		return w.box.Width()
	}
	return min(bottom, top)
}

// reach is between which widths the pieces of a run lie.
func (b batcher) reach(pieces []work) (low, high length.Length) {
	low = pieces[0].narrow()
	for _, w := range pieces {
		low, high = min(low, w.narrow()), max(high, w.box.Width())
	}
	return low, high
}

// batch is one setting for pieces that are nearly alike: that of the narrowest,
// cut straight.
func (b batcher) batch(pieces []work) lot {
	low, high := b.reach(pieces)
	wide, tall := low.FloorTo(b.step), pieces[0].box.Height()
	for _, w := range pieces {
		tall = min(tall, w.box.Height())
	}
	g := Group{Kind: pieces[0].narrowing(), Size: straightSize(wide, tall.FloorTo(b.step)), Spread: b.spread(high - low), Hides: true}
	return lot{key: b.plainKey(g, pieces[0]), group: g, pieces: pieces}
}

// spread is a difference that the schedule states: nothing under its step.
func (b batcher) spread(l length.Length) length.Length {
	if l < b.step {
		return 0
	}
	return l
}

// straightSize is the size of a piece without tapers.
func straightSize(wide, high length.Length) Size {
	return Size{Width: wide, Height: high, Left: high, Right: high, Bottom: wide, Top: wide}
}

// single is one line for a whole run whose pieces are measured one by one.
func (b batcher) single(r run, how How) lot {
	low, high := b.reach(r.pieces)
	g := Group{How: how, Kind: r.pieces[0].narrowing()}
	wide, tall := low, r.pieces[0].short()
	tallest := tall
	for _, w := range r.pieces {
		tall, tallest = min(tall, w.short()), max(tallest, w.box.Height())
	}
	if r.side == survey.BaseSegment || r.side == survey.HeadEdge {
		g.Kind = r.pieces[0].lowering()
		low, high = tall, tallest
	}
	g.Size = straightSize(wide.FloorTo(b.step), tall.FloorTo(b.step))
	g.Spread, g.Hides = high.FloorTo(b.step)-low.FloorTo(b.step), high-low <= r.hides // to the largest as it is written
	return lot{key: fmt.Sprint(how, r.side, r.pieces[0].piece.ID), group: g, pieces: r.pieces}
}

// short is the least height a piece cut to a base or a head has over its width.
func (w work) short() length.Length {
	left, right, _, _ := w.sides()
	if left == 0 || right == 0 {
		return w.box.Height()
	}
	return min(left, right)
}

// crosses tells whether a cut that makes a piece narrower runs across the
// tile's length; on a square tile it counts so.
func (w work) crosses() bool {
	return w.piece.Tile.Width() >= w.piece.Tile.Height()
}

// narrowing and lowering name the straight cuts that make a piece less wide and
// less high.
func (w work) narrowing() string {
	if w.crosses() {
		return "cross cut"
	}
	return "rip"
}

func (w work) lowering() string {
	if w.crosses() {
		return "rip"
	}
	return "cross cut"
}

// equal makes one line for each cut that differs.
func (b batcher) equal(pieces []work) []lot {
	var out []lot
	index := map[string]int{}
	for _, w := range pieces {
		l := b.one(w)
		if i, known := index[l.key]; known {
			out[i].pieces = append(out[i].pieces, w)
			continue
		}
		index[l.key] = len(out)
		out = append(out, l)
	}
	return out
}

// one is the line of a piece by itself. A taper under the step is a straight
// cut, and a cut that takes off less than the step is none.
func (b batcher) one(w work) lot {
	factory, sawn := w.edges()
	g := Group{Kind: kindText(w.piece.Kind), Size: w.size(b.step)}
	switch kind := w.piece.Kind; {
	case w.unworkable():
		g.How, g.Size.Notches, g.Size.Holes = Unworkable, nil, nil
		return lot{key: "unworkable " + w.wall.Found.Letter + " " + w.goes(), group: g, pieces: []work{w}}
	case kind&piece.Hole != 0 && kind&(piece.Taper|piece.Notch) == 0:
		g.How = InPlace
		key := []byte("hole " + w.wall.Found.Letter + w.goes())
		if kind != piece.Hole { // cut to size before
			key = appendLengths(key, g.Size.Width, g.Size.Height)
		}
		return lot{key: string(key), group: g, pieces: []work{w}}
	case w.own != nil && kind&(piece.Notch|piece.Hole) == 0 && w.barely(b.step):
		g.uncut(w, b.step)
		return lot{key: fmt.Sprint("uncut ", w.piece.Of), group: g, pieces: []work{w}}
	case w.own != nil:
		g.Saws = w.saws(b.step)
		return lot{key: fmt.Sprint("laid ", w.piece.Of, " ", len(w.piece.Outline), g.Kind, sawn, w.outline(b.near)), group: g, pieces: []work{w}}
	case kind&(piece.Notch|piece.Hole) == 0:
		b.straighten(&g, w)
	}
	if g.How == Uncut {
		return lot{key: "uncut", group: g, pieces: []work{w}}
	}
	if g.How == Fence && (g.Kind == "cross cut" || g.Kind == "rip") {
		return lot{key: b.plainKey(g, w), group: g, pieces: []work{w}}
	}
	key := fmt.Sprint(g.How, g.key(), w.outline(b.step), factory, sawn)
	if g.Kind == "rip, cross cut" {
		key = fmt.Sprint(g.How, g.key(), b.corner(sawn))
	}
	return lot{key: key, group: g, pieces: []work{w}}
}

// straighten drops tapers and cuts that are under the step.
func (b batcher) straighten(g *Group, w work) {
	left, right, bottom, top := w.sides()
	if left == 0 || right == 0 || bottom == 0 || top == 0 {
		return // it runs to a point
	}
	if (left-right).Abs() >= b.step || (bottom-top).Abs() >= b.step {
		return
	}
	t := w.piece.Tile
	wide, high := min(bottom, top), min(left, right)
	narrower, lower := t.Width()-wide >= b.step, t.Height()-high >= b.step
	g.Size = straightSize(wide.FloorTo(b.step), high.FloorTo(b.step))
	switch {
	case narrower && lower:
		g.Kind = "rip, cross cut"
	case narrower:
		g.Kind = w.narrowing()
	case lower:
		g.Kind = w.lowering()
	default:
		g.uncut(w, b.step)
	}
}

// uncut makes a line one of tiles that are set whole.
func (g *Group) uncut(w work, step length.Length) {
	t := w.piece.Tile
	g.How, g.Kind = Uncut, "none"
	g.Size = straightSize(t.Width().FloorTo(step), t.Height().FloorTo(step))
}

// plainKey is equal for straight cuts at one setting. A tile that may be turned
// gives a left end as well as a right one.
func (b batcher) plainKey(g Group, w work) string {
	fence := g.Size.Width
	if (g.Kind == "rip") == w.crosses() {
		fence = g.Size.Height
	}
	key := fmt.Sprint(g.Kind, " ", int64(fence), " ", w.piece.Tile.Width(), " ", w.piece.Tile.Height())
	if !b.turn {
		_, sawn := w.edges()
		key += strings.Join(sawn, ",")
	}
	return key
}

// corner tells which corner of the tile a piece with two cuts keeps; a tile
// that may be turned gives the opposite one as well.
func (b batcher) corner(sawn []string) string {
	text := strings.Join(sawn, ",")
	if b.turn && (text == "right,top" || text == "left,bottom") {
		return "left,bottom"
	}
	if b.turn && (text == "left,top" || text == "bottom,right") {
		return "bottom,right"
	}
	return text
}

// unworkable tells whether the plan says that no saw makes this piece.
func (w work) unworkable() bool { return w.piece.Unworkable }

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
