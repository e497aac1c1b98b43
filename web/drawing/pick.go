package drawing

import (
	"fmt"

	"coursewright/layout"
	"coursewright/layout/piece"
)

// pick names the pieces of some walls for readers who pick one.
func (b *board) pick(walls []layout.Wall) {
	b.Pieces = &Pieces{Names: map[string]string{}, Course: "course"}
	if b.plan.Room.Bond.Plumb {
		b.Pieces.Course = "column"
	}
	for _, w := range b.plan.Walls {
		b.Pieces.Walls = append(b.Pieces.Walls, "wall "+w.Found.Name)
	}
	for _, w := range walls {
		for _, p := range w.Pieces {
			switch {
			case w.Found.Stands(p.Row):
				b.Pieces.Names[p.ID] = b.pieceName(p) + ", set already"
			case !p.Whole || p.Outline != nil: // whole tiles of courses are named by the script that makes pieces of them
				b.Pieces.Names[p.ID] = b.pieceName(p)
			}
		}
		for i := range w.Strips {
			for _, p := range w.Strips[i].Pieces {
				if !p.Whole {
					b.Pieces.Names[p.ID] = b.pieceName(p)
				}
			}
		}
		for _, p := range w.Trim {
			b.Pieces.Names[p.ID] = b.trimName(p)
		}
	}
}

// pieceName says what a piece is: "B-03-01, course 3, cross cut 2 5/16"".
func (b *board) pieceName(p piece.Piece) string {
	name := fmt.Sprintf("%s, %s %d, ", p.ID, b.Pieces.Course, p.Course)
	if p.Whole {
		return name + "whole"
	}
	wide, high := uncovered(p)
	name += p.Kind.String() + " " + b.cutTo(wide) + " × " + b.cutTo(high)
	if p.Sliver {
		name += ", sliver"
	}
	return name
}
