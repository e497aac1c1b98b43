package drawing

import (
	"slices"
	"strconv"

	"coursewright/layout/finding"
)

// flagRadius is that of the disc that carries a finding's number.
const flagRadius = 2400

// flags marks this wall's findings at their place with their number in the
// list, clear of what may be dragged; where there is little room, only faults and warnings.
func (b *board) flags(f frame, all bool) {
	var taken []Point
	for _, h := range b.Handles {
		taken = append(taken, h.At)
	}
	texts := b.texting()
	for i, x := range b.plan.Findings {
		if x.Wall != f.wall || x.At == nil || !all && x.Grade != finding.Fault && x.Grade != finding.Warning {
			continue
		}
		tag := Tag{Kind: Finding, Wall: f.wall, Piece: x.Piece, Finding: i + 1}
		at := f.at(x.At.X, x.At.Y)
		c := b.free(at, taken, texts)
		taken = append(taken, c)
		b.chain(tag, line(Black, 350), at, c)
		b.disc(tag, fill(Black), at, 600)
		b.disc(tag, Ink{Fill: White, Line: Black, Width: 500}, c, flagRadius)
		b.label(centred(Label{Tag: tag, Text: strconv.Itoa(i + 1), Size: 3000, Bold: true, Colour: Black}, c))
	}
}

// free is a place for a flag beside its point: the first round it that keeps
// clear of the flags already set, of every text and of the paper's edge, its
// leader too; where all are taken, the leader may cross a text, then the flag
// may cover one.
func (b *board) free(at Point, taken []Point, texts []box) Point {
	for _, apart := range []func(c Point) bool{
		func(c Point) bool { return clearOf(c, texts) && !strikes(at, c, texts) },
		func(c Point) bool { return clearOf(c, texts) },
		func(Point) bool { return true },
	} {
		if c, found := b.spot(at, taken, apart); found {
			return c
		}
	}
	return Point{at.X + flagStep, at.Y - flagStep}
}

// flagStep is how far apart the places for a flag are tried.
const flagStep = 4200

func (b *board) spot(at Point, taken []Point, apart func(Point) bool) (Point, bool) {
	for ring := Micron(1); ring <= 5; ring++ {
		for _, d := range []Point{{1, -1}, {-1, -1}, {1, 1}, {-1, 1}, {0, -1}, {0, 1}, {1, 0}, {-1, 0}} {
			c := Point{at.X + d.X*flagStep*ring, at.Y + d.Y*flagStep*ring}
			if b.onPaper(c) && apartFrom(c, taken) && apart(c) {
				return c, true
			}
		}
	}
	return Point{}, false
}

// strikes tells whether a leader runs through a text.
func strikes(from, to Point, texts []box) bool {
	return slices.ContainsFunc(texts, func(t box) bool { return crosses(from, to, t.from, t.to) })
}

// box is an upright rectangle on paper, from its upper left corner to its
// lower right.
type box struct{ from, to Point }

// texting gives the boxes of all texts drawn so far.
func (b *board) texting() []box {
	var out []box
	for _, e := range b.Elements {
		if l, ok := e.(Label); ok {
			out = append(out, l.box())
		}
	}
	return out
}

// box is about the room a label takes.
func (l Label) box() box {
	w := l.width()
	before := []Micron{0, w / 2, w}[l.Anchor]
	if l.Up {
		return box{Point{l.At.X - l.Size*3/4, l.At.Y + before - w}, Point{l.At.X, l.At.Y + before}}
	}
	return box{Point{l.At.X - before, l.At.Y - l.Size*3/4}, Point{l.At.X - before + w, l.At.Y}}
}

// clearOf tells whether a flag at c covers none of the texts.
func clearOf(c Point, texts []box) bool {
	const r = flagRadius + 200
	for _, t := range texts {
		if c.X+r > t.from.X && c.X-r < t.to.X && c.Y+r > t.from.Y && c.Y-r < t.to.Y {
			return false
		}
	}
	return true
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
