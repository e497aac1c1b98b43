package drawing

import (
	"slices"
	"strconv"

	"coursewright/layout/finding"
)

// flagRadius is that of the disc that carries a finding's number.
const flagRadius = 2400

// findingDot is the radius of the dot at the finding's own place.
const findingDot = 600

// flags marks this wall's findings at their place with their number in the
// list, clear of texts and of what may be dragged.
func (b *board) flags(f frame, all bool) {
	for i, x := range b.plan.Findings {
		if x.Wall != f.wall || x.At == nil || !b.flagged(x, all) {
			continue
		}
		tag := Tag{Kind: Finding, Wall: f.wall, Piece: x.Piece, Finding: i + 1}
		at := f.at(x.At.X, x.At.Y)
		c, found := b.free(at)
		if !found {
			continue // so many that the list must do
		}
		b.chain(tag, line(Black, 350), at, c)
		b.disc(tag, fill(Black), at, findingDot)
		b.disc(tag, Ink{Fill: White, Line: Black, Width: 500}, c, flagRadius)
		b.label(centred(Label{Tag: tag, Text: strconv.Itoa(i + 1), Size: max(11*px, b.texts.least), Bold: true, Colour: Black}, c))
		b.keep(flagBox(c))
	}
}

// flagged tells whether a finding is marked on a drawing: where there is little
// room, only faults and warnings; on paper no cautions, which are printed with the work
// they belong to and have no number there.
func (b *board) flagged(x finding.Finding, all bool) bool {
	return all && !(b.paper && x.Grade == finding.Caution) || x.Grade == finding.Fault || x.Grade == finding.Warning
}

// flagBox is the room of a flag.
func flagBox(c Point) box { return box{c, c}.grown(flagRadius + 200) }

// flagStep is how far apart the places for a flag are tried, farthestFlag how
// many steps away at the most.
const (
	flagStep     = 4200
	farthestFlag = 12
)

// free is a place for a flag beside its point: the first round it that keeps
// clear of every text, flag and handle and of the paper's edge, its leader too;
// where there is none, the leader may cross a text.
func (b *board) free(at Point) (Point, bool) {
	for _, leader := range []bool{true, false} {
		for ring := Micron(1); ring <= farthestFlag; ring++ {
			for _, d := range []Point{{1, -1}, {-1, -1}, {1, 1}, {-1, 1}, {0, -1}, {0, 1}, {1, 0}, {-1, 0}} {
				c := Point{at.X + d.X*flagStep*ring, at.Y + d.Y*flagStep*ring}
				if b.vacant(flagBox(c)) && b.offHandles(c) && !(leader && b.strikes(at, c)) {
					return c, true
				}
			}
		}
	}
	return Point{}, false
}

// strikes tells whether a leader runs through a text; the dot it begins at is none.
func (b *board) strikes(from, to Point) bool {
	return slices.ContainsFunc(b.taken, func(t box) bool {
		begins := t == box{from, from}.grown(findingDot)
		return !begins && crosses(from, to, t.from, t.to)
	})
}

// offHandles tells whether a flag at c covers nothing that may be dragged.
func (b *board) offHandles(c Point) bool {
	return !slices.ContainsFunc(b.Handles, func(h Handle) bool {
		if h.Axis != "xy" && gripRoom(h.Axis, h.At).meets(flagBox(c)) {
			return true
		}
		dx, dy := c.X-h.At.X, c.Y-h.At.Y
		return dx*dx+dy*dy < 4*(flagRadius+300)*(flagRadius+300)
	})
}
