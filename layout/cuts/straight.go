package cuts

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
)

// straightened is a piece of a pattern without tapers under a step: each of its cuts that leaves an edge of
// the tile by less runs along that edge, through the end of the cut where the piece is smaller. One with
// notches or holes stays as it is.
func (w work) straightened(step length.Length) work {
	if w.own == nil || len(w.piece.Face) != 1 || w.piece.Kind&piece.Taper == 0 || w.piece.Kind&(piece.Notch|piece.Hole) != 0 {
		return w
	}
	p := w.piece
	for i, c := range w.piece.Face[0] {
		d := w.piece.Face[0][(i+1)%len(w.piece.Face[0])].Point
		if c.On == 0 {
			continue
		}
		if l, found := w.alongside(c.Point, d, step); found {
			if face := p.Face.Less(w.beyondLine(l), c.On); len(face) == 1 && reaches(face[0], p.Face[0], step) {
				p.Face = face
			}
		}
	}
	p.Visible, p.Kind = p.Face, kindOf(p)
	return w.as(p)
}

// alongside is the line along an edge of the tile that a cut from a to b leaves by less than a step, through the
// end of the cut that takes more off; of several edges the one it leaves least.
func (w work) alongside(a, b plane.Point, step length.Length) (l plane.Line, found bool) {
	least := step
	for i, c := range w.piece.Outline {
		d := w.piece.Outline[(i+1)%len(w.piece.Outline)].Point
		e := plane.Line{P: a, D: plane.Point{X: d.X - c.X, Y: d.Y - c.Y}}
		if e.D.X.Times(b.X-a.X)+e.D.Y.Times(b.Y-a.Y) < 0 {
			e.D = plane.Point{X: -e.D.X, Y: -e.D.Y}
		}
		off := plane.Apart(b, a, plane.Point{X: a.X + e.D.X, Y: a.Y + e.D.Y})
		if off >= least || 8*off >= plane.Distance(a, b) {
			continue
		}
		if e.Side(b) > 0 {
			e.P = b
		}
		l, least, found = e, off, true
	}
	return l, found
}

// beyondLine is all of the tile that lies to the right of a line, and more.
func (w work) beyondLine(l plane.Line) plane.Ring {
	box := plane.Region{w.piece.Outline}.Bounds()
	far := 2*(box.Width()+box.Height())/max(1, plane.Distance(plane.Point{}, l.D)) + 2
	x, y := far*l.D.X, far*l.D.Y
	at := func(along, out length.Length) plane.Corner {
		return plane.Corner{Point: plane.Point{X: l.P.X + along*x + out*y, Y: l.P.Y + along*y - out*x}}
	}
	return plane.Ring{at(-1, 1), at(1, 1), at(1, 0), at(-1, 0)}
}

// reaches tells whether no corner of what a piece was is a step or more from what it is now.
func reaches(now, was plane.Ring, step length.Length) bool {
	for _, c := range was {
		near := false
		for i, a := range now {
			near = near || plane.Within(c.Point, a.Point, now[(i+1)%len(now)].Point, step-1)
		}
		if !near {
			return false
		}
	}
	return true
}

// kindOf tells the cuts of a piece of a pattern that has neither notches nor holes.
func kindOf(p piece.Piece) (k piece.Kind) {
	ring := p.Face[0]
	for i, c := range ring {
		if c.On != 0 {
			k |= piece.CutAlong(p.Outline, rectangle(p.Outline), c.Point, ring[(i+1)%len(ring)].Point)
		}
	}
	return k
}

// rectangle tells whether a tile is one, lying in its own frame.
func rectangle(outline plane.Ring) bool {
	box := plane.Region{outline}.Bounds()
	for _, c := range outline {
		if min((c.X-box.Left).Abs(), (box.Right-c.X).Abs()) > 4 || min((c.Y-box.Bottom).Abs(), (box.Top-c.Y).Abs()) > 4 {
			return false
		}
	}
	return len(outline) == 4
}
