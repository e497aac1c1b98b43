package count

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
)

// frame turns what is in the frame of the wall into that of the rows, and back: with
// level courses they are the same, with columns the rows stand up.
type frame struct{ plumb bool }

func (f frame) rect(r plane.Rect) plane.Rect {
	if f.plumb {
		return r.Transposed()
	}
	return r
}

func (f frame) region(r plane.Region) plane.Region {
	if f.plumb {
		return r.Transposed()
	}
	return r
}

func (f frame) point(p plane.Point) plane.Point {
	if f.plumb {
		return plane.Point{X: p.Y, Y: p.X}
	}
	return p
}

func (f frame) edge(e piece.Edge) piece.Edge {
	if f.plumb {
		return e.Transposed()
	}
	return e
}

func (f frame) facing(g piece.Facing) piece.Facing {
	if f.plumb {
		return g ^ 2
	}
	return g
}

// phases orders a line and an edge as along the rows and across them.
func (f frame) phases(line, edge length.Length) (along, across length.Length) {
	if f.plumb {
		return line, edge
	}
	return edge, line
}
