package view

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
)

// Cut is one size to cut and the pieces that take it.
type Cut struct {
	Kind, Wide, High string
	Pieces           []string
}

// ids lists the pieces of a cut, the first dozen by name.
func (c Cut) ids() string {
	const named = 12
	if len(c.Pieces) <= named {
		return strings.Join(c.Pieces, ", ")
	}
	return strings.Join(c.Pieces[:named], ", ") + fmt.Sprintf(" and %d more", len(c.Pieces)-named)
}

// cuts gathers the cut pieces of the walls shown by kind and size, the
// commonest first. The sizes are of the rectangle round the piece.
func (b Bench) cuts() []Cut {
	found := map[string]*Cut{}
	for _, i := range b.Walls() {
		for _, p := range b.Plan.Walls[i].Pieces {
			if !p.Whole {
				b.gather(found, p)
			}
		}
	}
	out := make([]Cut, 0, len(found))
	for _, c := range found {
		out = append(out, *c)
	}
	slices.SortFunc(out, func(x, y Cut) int {
		return cmp.Or(cmp.Compare(len(y.Pieces), len(x.Pieces)), cmp.Compare(x.Pieces[0], y.Pieces[0]))
	})
	return out
}

func (b Bench) gather(found map[string]*Cut, p piece.Piece) {
	s := b.Plan.Room.Units
	wide, high := extent(p.Face)
	key := p.Kind.String() + wide.Fine(s) + high.Fine(s)
	if found[key] == nil {
		found[key] = &Cut{Kind: p.Kind.String(), Wide: wide.Fine(s), High: high.Fine(s)}
	}
	found[key].Pieces = append(found[key].Pieces, p.ID)
}

// extent gives the width and height of the rectangle round a region.
func extent(r plane.Region) (wide, high length.Length) {
	var box plane.Rect
	for i, ring := range r {
		for j, c := range ring {
			if i == 0 && j == 0 {
				box = plane.Rect{Left: c.X, Right: c.X, Bottom: c.Y, Top: c.Y}
			}
			box.Left, box.Right = min(box.Left, c.X), max(box.Right, c.X)
			box.Bottom, box.Top = min(box.Bottom, c.Y), max(box.Top, c.Y)
		}
	}
	return box.Right - box.Left, box.Top - box.Bottom
}

func (b Bench) cutsLine() string {
	n := 0
	cuts := b.cuts()
	for _, c := range cuts {
		n += len(c.Pieces)
	}
	return count(len(cuts), "size") + " for " + count(n, "piece")
}
