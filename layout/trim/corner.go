package trim

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// corner is how the trim of an end meets that of the head, or of the base: what each
// keeps of its strip, and the place of a corner piece between them.
type corner struct {
	upright, level []plane.Line
	piece          plane.Rect // empty where there is none
	mitred         bool
}

// corner finds how the trim of an end meets that of the head. Two that are alike
// are mitred or have a corner piece; of two that differ the head's runs over the
// end's. Common practice, no source.
func (l *layer) corner(is survey.PartIs) corner {
	return l.meeting(is, l.wall.Head.Trim, l.at.Head, l.outer.Head)
}

// foot finds how the trim of an end meets that of the base, as round the back of a cap.
// Where the base slants, or the two differ, the end's runs on past the base's.
func (l *layer) foot(is survey.PartIs) corner {
	s, side := l.base(is), l.wall.Left.Trim
	if is == survey.RightEnd {
		side = l.wall.Right.Trim
	}
	if s.Cove == nil || side == nil || s.Cove.Kind != side.Kind || s.Cove.Width != side.Width || !level(s) {
		return corner{}
	}
	out := s.Readings[0].Value
	return l.meeting(is, s.Cove, out+s.Gap, out)
}

// base is the stretch of the base at an end.
func (l *layer) base(is survey.PartIs) survey.SegmentFound {
	if is == survey.RightEnd {
		return l.wall.Base[len(l.wall.Base)-1]
	}
	return l.wall.Base[0]
}

func level(s survey.SegmentFound) bool {
	for _, r := range s.Readings {
		if r.Value != s.Readings[0].Value {
			return false
		}
	}
	return true
}

// meeting finds how the trim of an end meets another, beside tile that ends at tile, whose
// outer edge is at out.
func (l *layer) meeting(is survey.PartIs, over *survey.TrimFound, tile, out length.Length) corner {
	side, in, end := l.wall.Left.Trim, l.at.Left, l.outer.Left
	if is == survey.RightEnd {
		side, in, end = l.wall.Right.Trim, l.at.Right, l.outer.Right
	}
	if side == nil || over == nil {
		return corner{}
	}
	j := l.tile.Joint
	under, inside := plane.Below(tile), plane.RightOf(in)
	beyond := plane.Rect{Left: end, Right: in - j, Bottom: tile + j, Top: out}
	if out < tile {
		under, beyond.Bottom, beyond.Top = plane.Above(tile), out, tile-j
	}
	if is == survey.RightEnd {
		inside, beyond.Left, beyond.Right = plane.LeftOf(in), in+j, end
	}
	switch alike := side.Kind == over.Kind && side.Width == over.Width; {
	case !alike:
		return corner{upright: []plane.Line{under}}
	case side.Mitred && over.Mitred:
		return mitre(beyond, is == survey.LeftEnd, out < tile, l.between(*side))
	default:
		return corner{upright: []plane.Line{under}, level: []plane.Line{inside}, piece: beyond}
	}
}

// mitre parts the corner along its diagonal, with a joint there. Along an upright
// line a joint across a mitre of 45° is √2 of it; 99/70 is that to 1 in 14,000.
func mitre(box plane.Rect, left, low bool, joint length.Length) corner {
	gap := joint * 99 / 70
	down, up := gap.Half(), gap-gap.Half()
	if low {
		down, up = -down, -up
	}
	from, to := plane.Point{X: box.Right, Y: box.Bottom}, plane.Point{X: box.Left, Y: box.Top}
	if left == low {
		from, to = plane.Point{X: box.Right, Y: box.Top}, plane.Point{X: box.Left, Y: box.Bottom}
	}
	if low {
		from, to = to, from
	}
	moved := func(p plane.Point, by length.Length) plane.Point { return plane.Point{X: p.X, Y: p.Y + by} }
	return corner{
		upright: []plane.Line{plane.Through(moved(from, -down), moved(to, -down))},
		level:   []plane.Line{plane.Through(moved(to, up), moved(from, up))},
		mitred:  true,
	}
}

// cornerPiece sets a corner piece where there is one.
func (l *layer) cornerPiece(c corner, edge survey.PartIs, t survey.TrimFound) {
	if c.piece.Empty() {
		return
	}
	face := l.all.KeepAll(plane.RightOf(c.piece.Left), plane.LeftOf(c.piece.Right), plane.Above(c.piece.Bottom), plane.Below(c.piece.Top))
	l.pieces = append(l.pieces, Piece{Edge: edge, Trim: t, Face: face, Long: t.Width, Wide: t.Width, Inner: t.Width, Outer: t.Width, Corner: true})
}

// mitres counts the mitred ends of a piece that fills a box. Only the piece at the corner
// reaches past the tile's own corner.
func (l *layer) mitres(edge survey.PartIs, box plane.Rect) int {
	n := 0
	for _, is := range []survey.PartIs{survey.LeftEnd, survey.RightEnd} {
		past := is == survey.LeftEnd && box.Left < l.at.Left-l.tile.Joint || is == survey.RightEnd && box.Right > l.at.Right+l.tile.Joint
		if past && edge != survey.BaseSegment && l.corner(is).mitred && box.Top > l.at.Head+l.tile.Joint {
			n++
		}
		if s := l.base(is); past && edge != survey.HeadEdge && l.foot(is).mitred && box.Bottom < s.Readings[0].Value+s.Gap-l.tile.Joint {
			n++
		}
	}
	return n
}
