package drawing

import (
	"strconv"

	"coursewright/layout/finding"
)

// flagRadius is that of the disc that carries a finding's number.
const flagRadius = 2400

// flags marks this wall's findings at their place with their number in the
// list; where there is little room, only faults and warnings.
func (b *board) flags(f frame, all bool) {
	var taken []Point
	for i, x := range b.plan.Findings {
		if x.Wall != f.wall || x.At == nil || !all && x.Grade != finding.Fault && x.Grade != finding.Warning {
			continue
		}
		tag := Tag{Kind: Finding, Wall: f.wall, Piece: x.Piece, Finding: i + 1}
		at := f.at(x.At.X, x.At.Y)
		c := b.free(at, taken)
		taken = append(taken, c)
		b.chain(tag, line(Black, 350), at, c)
		b.disc(tag, fill(Black), at, 600)
		b.disc(tag, Ink{Fill: White, Line: Black, Width: 500}, c, flagRadius)
		b.label(centred(Label{Tag: tag, Text: strconv.Itoa(i + 1), Size: 3000, Bold: true, Colour: Black}, c))
	}
}

// free is a place for a flag beside its point: the first round it that keeps
// clear of the flags already set and of the paper's edge.
func (b *board) free(at Point, taken []Point) Point {
	const step = 4200
	for ring := Micron(1); ring <= 3; ring++ {
		for _, d := range []Point{{1, -1}, {-1, -1}, {1, 1}, {-1, 1}, {0, -1}, {0, 1}, {1, 0}, {-1, 0}} {
			c := Point{at.X + d.X*step*ring, at.Y + d.Y*step*ring}
			if b.onPaper(c) && apartFrom(c, taken) {
				return c
			}
		}
	}
	return Point{at.X + step, at.Y - step}
}

func (b *board) onPaper(c Point) bool {
	return c.X >= flagRadius && c.Y >= flagRadius && c.X <= b.Width-flagRadius && c.Y <= b.Height-flagRadius
}

func apartFrom(c Point, taken []Point) bool {
	for _, t := range taken {
		dx, dy := c.X-t.X, c.Y-t.Y
		if dx*dx+dy*dy < 4*(flagRadius+300)*(flagRadius+300) {
			return false
		}
	}
	return true
}
