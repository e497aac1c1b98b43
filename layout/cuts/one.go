package cuts

import (
	"fmt"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/piece"
)

// straightSize is the size of a piece without tapers.
func straightSize(wide, high length.Length) Size {
	return Size{Width: wide, Height: high, Left: high, Right: high, Bottom: wide, Top: wide}
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
	g := Group{Kind: w.kind(b.step), Size: w.size(b.step)}
	switch kind := w.piece.Kind; {
	case w.unworkable():
		g.How, g.Size.Notches, g.Size.Holes = Unworkable, nil, nil
		return lot{key: fmt.Sprint("unworkable ", w.piece.Of, " ", w.wall.Found.Letter, " ", w.goes()), group: g, pieces: []work{w}}
	case kind&piece.Hole != 0 && kind&(piece.Taper|piece.Notch) == 0:
		g.How = InPlace
		key := fmt.Append(nil, "hole ", w.piece.Of, " ", w.wall.Found.Letter, w.goes())
		if kind != piece.Hole { // cut to size before
			key = appendLengths(key, g.Size.Width, g.Size.Height)
		}
		return lot{key: string(key), group: g, pieces: []work{w}}
	case w.own != nil && kind&(piece.Notch|piece.Hole) == 0 && w.barely(b.step):
		g.uncut(w, b.step)
		return lot{key: fmt.Sprint("uncut ", w.piece.Of), group: g, pieces: []work{w}}
	case w.own != nil:
		w = w.straightened(b.step)
		g.Kind, g.Size, g.Saws = w.kind(b.step), w.size(b.step), w.saws(b.step)
		return lot{key: b.laidKey(w, g.Saws), group: g, pieces: []work{w}}
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

// unworkable tells whether the plan says that no saw makes this piece. One that runs out to a point, as
// under a roof, is cut as others are where it is no less than 1/2 in from there to its other side.
func (w work) unworkable() bool { return w.piece.NoSaw() }
