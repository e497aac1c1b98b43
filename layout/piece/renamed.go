package piece

import (
	"slices"

	"coursewright/layout/plane"
)

// Renamed is the piece with its cut edges on other sides: those of a wall of which
// the wall it was cut for is a part.
func (p Piece) Renamed(to func(plane.Side) plane.Side) Piece {
	p.Face, p.Visible, p.solid = renamed(p.Face, to), renamed(p.Visible, to), renamed(p.solid, to)
	p.Cuts = slices.Clone(p.Cuts)
	for i := range p.Cuts {
		p.Cuts[i] = to(p.Cuts[i])
	}
	slices.Sort(p.Cuts)
	p.Across, p.Up = edges(p.Across, to), edges(p.Up, to)
	return p
}

// Renamed is the gap on another side.
func (g Gap) Renamed(to func(plane.Side) plane.Side) Gap {
	g.Edge = EdgeOf(to(g.Edge.Side()), g.Edge.Facing())
	return g
}

func renamed(r plane.Region, to func(plane.Side) plane.Side) plane.Region {
	out := make(plane.Region, len(r))
	for i, ring := range r {
		out[i] = slices.Clone(ring)
		for k := range out[i] {
			if on := out[i][k].On; on != 0 {
				out[i][k].On = to(on)
			}
		}
	}
	return out
}

func edges(list []Edge, to func(plane.Side) plane.Side) []Edge {
	out := slices.Clone(list)
	for i, e := range out {
		out[i] = EdgeOf(to(e.Side()), e.Facing())
	}
	slices.Sort(out)
	return out
}
