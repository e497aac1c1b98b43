package cuts

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// laid is a piece of a pattern for pairing: its tile, the one straight cut that
// makes it, if one does, and the piece as it lies in the tile, turned in each way in
// which the tile looks the same.
type laid struct {
	of      int
	outline plane.Ring
	from, p plane.Point // the cut, the piece on its left
	single  bool
	ways    []plane.Region
}

func (w work) laid() *laid {
	if w.own == nil {
		return nil
	}
	l := &laid{of: w.piece.Of, outline: w.piece.Outline}
	for _, base := range bases(w.piece.Outline, w.turn) {
		l.ways = append(l.ways, frameOf(w.piece.Outline, base).region(w.piece.Face))
	}
	ring, cuts := w.piece.Face[0], 0
	for i, c := range ring {
		if c.On != 0 {
			cuts++
			l.from, l.p = c.Point, ring[(i+1)%len(ring)].Point
		}
	}
	l.single = cuts == 1 && len(w.piece.Face) == 1
	return l
}

// like tells whether two pieces are cut from tiles of one kind and shape.
func (l *laid) like(o *laid) bool {
	if l.of != o.of || len(l.outline) != len(o.outline) {
		return false
	}
	for i, c := range l.outline {
		if d := o.outline[i]; (c.X-d.X).Abs() > 4 || (c.Y-d.Y).Abs() > 4 {
			return false
		}
	}
	return true
}

// square tells whether the tile has square corners, so that what lies in its box
// lies in it.
func (l *laid) square() bool {
	box := plane.Region{l.outline}.Bounds()
	for _, c := range l.outline {
		if c.X-box.Left > 4 && box.Right-c.X > 4 || c.Y-box.Bottom > 4 && box.Top-c.Y > 4 {
			return false
		}
	}
	return true
}

// beyond tells whether the other piece, in some way in which its tile may be turned,
// lies in what the cut of this one leaves over, with a kerf between. It then has its
// factory edges, because it lies as in its own tile.
func (l *laid) beyond(o *laid, kerf length.Length) bool {
	if !l.single {
		return false
	}
	line := plane.Through(l.from, l.p)
	far := kerf.Times(plane.Distance(l.from, l.p) + 1)
	for _, way := range o.ways {
		clear := true
		for _, ring := range way {
			for _, c := range ring {
				clear = clear && length.Area(line.Side(c.Point)) <= -far
			}
		}
		if clear {
			return true
		}
	}
	return false
}
