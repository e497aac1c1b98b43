package trim

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// corner is how the trim of an end and that of the head meet: what each keeps
// of its strip, and the place of a corner piece between them.
type corner struct {
	upright, level []plane.Line
	piece          plane.Rect // empty where there is none
	mitred         bool
}

// corner finds how the trim of an end meets that of the head. Two that are alike
// are mitred or have a corner piece; of two that differ the head's runs over the
// end's. Common practice, no source.
func (l *layer) corner(is survey.PartIs) corner {
	side, in, out := l.wall.Left.Trim, l.at.Left, l.outer.Left
	if is == survey.RightEnd {
		side, in, out = l.wall.Right.Trim, l.at.Right, l.outer.Right
	}
	over, j := l.wall.Head.Trim, l.tile.Joint
	if side == nil || over == nil {
		return corner{}
	}
	inside := plane.LeftOf(in)
	beyond := plane.Rect{Left: in + j, Right: out}
	if is == survey.LeftEnd {
		inside, beyond = plane.RightOf(in), plane.Rect{Left: out, Right: in - j}
	}
	beyond.Bottom, beyond.Top = l.at.Head+j, l.outer.Head
	under := []plane.Line{plane.Below(l.at.Head)}
	switch alike := side.Kind == over.Kind && side.Width == over.Width; {
	case !alike:
		return corner{upright: under}
	case side.Mitred && over.Mitred:
		return l.mitre(is, beyond, l.between(*side))
	default:
		return corner{upright: under, level: []plane.Line{inside}, piece: beyond}
	}
}

// mitre parts the corner along its diagonal, with a joint there. Along an upright
// line a joint across a mitre of 45° is √2 of it; 99/70 is that to 1 in 14,000.
func (l *layer) mitre(is survey.PartIs, box plane.Rect, joint length.Length) corner {
	a, b := plane.Point{X: box.Right, Y: box.Bottom}, plane.Point{X: box.Left, Y: box.Top}
	if is == survey.RightEnd {
		a, b = plane.Point{X: box.Right, Y: box.Top}, plane.Point{X: box.Left, Y: box.Bottom}
	}
	gap := joint * 99 / 70
	down, up := gap.Half(), gap-gap.Half()
	return corner{
		upright: []plane.Line{plane.Through(plane.Point{X: a.X, Y: a.Y - down}, plane.Point{X: b.X, Y: b.Y - down})},
		level:   []plane.Line{plane.Through(plane.Point{X: b.X, Y: b.Y + up}, plane.Point{X: a.X, Y: a.Y + up})},
		mitred:  true,
	}
}

// cornerPiece sets a corner piece where there is one.
func (l *layer) cornerPiece(c corner, t survey.TrimFound) {
	if c.piece.Empty() {
		return
	}
	face := l.all.KeepAll(plane.RightOf(c.piece.Left), plane.LeftOf(c.piece.Right), plane.Above(c.piece.Bottom), plane.Below(c.piece.Top))
	l.pieces = append(l.pieces, Piece{Edge: survey.HeadEdge, Trim: t, Face: face, Long: t.Width, Wide: t.Width, Inner: t.Width, Outer: t.Width, Corner: true})
}

// mitres counts the mitred ends of a piece that fills a box.
func (l *layer) mitres(edge survey.PartIs, t survey.TrimFound, box plane.Rect) int {
	n := 0
	for _, is := range []survey.PartIs{survey.LeftEnd, survey.RightEnd} {
		if edge != survey.HeadEdge && edge != is || !l.corner(is).mitred {
			continue
		}
		// Only the piece at the corner reaches past the tile's own corner.
		past := box.Top > l.at.Head+l.tile.Joint
		if edge == survey.HeadEdge {
			past = is == survey.LeftEnd && box.Left < l.at.Left-l.tile.Joint || is == survey.RightEnd && box.Right > l.at.Right+l.tile.Joint
		}
		if past {
			n++
		}
	}
	return n
}
