package drawing

import (
	"cmp"
	"slices"
	"strings"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// columns is what is said once over the ends of a wall, instead of in each of
// the pieces there: the sizes to cut, in turn from the bottom course up.
type columns struct {
	left, right string          // empty where nothing is cut to that end alone
	said        map[string]bool // ids of the pieces that need no size of their own
}

// mostInTurn is how many sizes in turn can be taken in at a glance; of more
// only the least and the largest are said.
const mostInTurn = 3

// columnsOf reads the end columns of a wall.
func (b *board) columnsOf(f frame, w layout.Wall) columns {
	c := columns{said: map[string]bool{}}
	c.left = b.inTurn(f, w, survey.SideLeft, c.said)
	c.right = b.inTurn(f, w, survey.SideRight, c.said)
	return c
}

// lot is the pieces of an end column whose tiles stand one over the other.
type lot struct {
	bottom      length.Length // of the lowest
	least, most length.Length // to cut, from the narrowest to the widest side; zero where all are whole
	whole       bool          // some of them are
}

// inTurn gives the sizes of one end column and marks its pieces as said, those of a pattern
// only where sizes are few. It is
// empty where no piece is cut to that end alone.
func (b *board) inTurn(f frame, w layout.Wall, side plane.Side, said map[string]bool) string {
	lots := map[length.Length]*lot{} // by the left edge of the tile
	step, cut := b.plan.Room.Units.Step(), false
	last := b.lastIn(f, w, side)
	for _, p := range last {
		wide, most := length.Length(0), length.Length(0)
		if !p.Whole {
			wide, _ = uncovered(p)
			wide, cut = wide.FloorTo(step), true
			most = max(wide, p.Face.Bounds().Width().FloorTo(step))
			said[p.ID] = true
		}
		l := lots[p.Tile.Left]
		if l == nil {
			l = &lot{bottom: p.Tile.Bottom}
			lots[p.Tile.Left] = l
		}
		l.bottom = min(l.bottom, p.Tile.Bottom)
		l.add(lot{least: wide, most: most, whole: p.Whole})
	}
	if !cut {
		return ""
	}
	if len(lots) > mostInTurn { // the least and the largest say nothing of one piece of a pattern
		for _, p := range last {
			if p.Outline != nil {
				delete(said, p.ID)
			}
		}
	}
	return b.lotsText(lots)
}

// lastIn lists the pieces at one end of a wall that are whole or cut by that
// end alone.
func (b *board) lastIn(f frame, w layout.Wall, side plane.Side) []piece.Piece {
	last := map[int]*piece.Piece{} // by course, the whole tile furthest to that end
	var out []piece.Piece
	for i := range w.Pieces {
		p := &w.Pieces[i] // a piece is large to copy
		if b.plan.Walls[f.wall].Found.Stands(p.Row) {
			continue
		}
		if toldByLine(p) || p.Laid > 0 {
			continue // what is of a band says its own size
		}
		if !p.Whole && slices.Equal(p.Cuts, []plane.Side{side}) && p.Kind&(piece.Notch|piece.Hole) == 0 {
			out = append(out, *p)
		}
		q, seen := last[p.Course]
		if !seen || (p.Tile.Left > q.Tile.Left) == (side == survey.SideRight) {
			last[p.Course] = p
		}
	}
	if b.plan.Room.Bond.Plumb {
		return out // a course is a column there, and its last piece no end
	}
	for _, p := range last {
		if p.Whole {
			out = append(out, *p)
		}
	}
	return out
}

func (b *board) lotsText(lots map[length.Length]*lot) string {
	var all []*lot
	for _, l := range lots {
		all = append(all, l)
	}
	slices.SortFunc(all, func(x, y *lot) int { return cmp.Or(cmp.Compare(x.bottom, y.bottom), cmp.Compare(x.least, y.least)) })
	if len(all) > mostInTurn {
		sum := lot{}
		for _, l := range all {
			sum.add(*l)
		}
		return b.lotText(sum)
	}
	texts := make([]string, len(all))
	for i, l := range all {
		texts[i] = b.lotText(*l)
	}
	return strings.Join(slices.Compact(texts), " · ")
}

// lotText writes one size, or the least and the largest where a corner leans by more
// than the cut schedule takes as one setting.
func (b *board) lotText(l lot) string {
	switch {
	case l.least <= 0:
		return "whole"
	case l.whole:
		return b.bare(l.least) + " to whole"
	case l.most-l.least <= cuts.Near(b.plan.Room.Units):
		return b.bare(l.least)
	}
	return b.bare(l.least) + "–" + b.bare(l.most)
}

// add takes in what is cut, and whether any is whole.
func (l *lot) add(o lot) {
	if o.least > 0 && (l.least == 0 || o.least < l.least) {
		l.least = o.least
	}
	l.most, l.whole = max(l.most, o.most), l.whole || o.whole
}

// bare writes a size to cut as figures alone: what they are in, the drawing
// says once.
func (b *board) bare(l length.Length) string {
	u := b.plan.Room.Units
	return l.FloorTo(u.Step()).Plain(u, 0)
}

// overhead is the room that columns take over a wall, and how they are written.
type overhead struct {
	columns
	both  string // where the two ends agree
	lines Micron // how many lines it takes
	under Micron // how many are left for it under the wall's name
}

// heads finds how the columns of a wall are written over it, on being its width on
// paper and wide the room there is: both ends in one line, one over the other, or
// not at all where even that is too wide. What is not written there is written in
// the pieces.
func (b *board) heads(c columns, on, wide Micron) overhead {
	h := overhead{columns: c}
	size, gap := b.texts.figure, 2*b.texts.figure
	if c.left != "" && c.left == c.right {
		h.both = "both ends " + c.left
		if TextWidth(h.both, size) <= wide {
			h.lines = 1
			return h
		}
		h.both = ""
	}
	l, r := TextWidth(c.left, size), TextWidth(c.right, size)
	switch {
	case c.left == "" && c.right == "":
	case l+r+gap <= on || (c.left == "" || c.right == "") && l+r <= wide:
		h.lines = 1
	case max(l, r) <= wide:
		h.lines = 2
	default:
		h.columns = columns{}
	}
	return h
}

// overhang writes the columns over a wall, the lowest line at y. A text wider than
// its wall runs on to the right.
func (b *board) overhang(f frame, h overhead, x0, x1, y Micron) {
	l := Label{Tag: Tag{Kind: Column, Wall: f.wall}, Size: b.texts.figure, Colour: Black}
	put := func(text string, a Anchor, x, y Micron) {
		l.Text, l.Anchor, l.At = text, a, Point{x, y}
		if l.box().from.X < x0 {
			l.Anchor, l.At.X = Left, x0
		}
		if text != "" {
			b.label(l)
		}
	}
	if h.both != "" {
		put(h.both, Middle, (x0+x1)/2, y)
		return
	}
	put(h.right, Right, x1, y)
	put(h.left, Left, x0, y-(h.lines-1)*leading(l.Size))
}
