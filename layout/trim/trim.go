// Package trim lays trim out in pieces along the edges where tile stops.
//
// Laws, each with a test:
//
//  1. The pieces of an edge and the joints between them make up the strip that
//     the trim takes, exactly once. Where two edges are mitred a joint lies
//     along the mitre too.
//  2. No piece is longer than one that is bought, and no more than one piece of
//     an edge without a course to follow is cut at either end of it.
//  3. Every piece keeps a joint from the tile.
//  4. The same wall gives the same pieces.
package trim

import (
	"fmt"

	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Piece is one piece of trim as it is set.
type Piece struct {
	ID     string        // wall letter and number: "T-B-03"
	Edge   survey.PartIs // LeftEnd, RightEnd, HeadEdge or BaseSegment; a corner piece counts to the head or the base
	Trim   survey.TrimFound
	Face   plane.Region
	Long   length.Length // along the edge, to the longest point
	Inner  length.Length // along the side that is next to the tile
	Outer  length.Length // along the other side
	Wide   length.Length // across the edge, where it is widest
	Whole  bool          // as it is bought
	Corner bool          // rounded on two sides, at an outer corner
	Mitres int           // how many of its ends are mitred
}

// Cut tells whether anything is cut off the piece.
func (p Piece) Cut() bool { return !p.Whole && !p.Corner }

// Tile is the tile that the trim goes round, as it is set out.
type Tile struct {
	Units         length.System
	Width, Height length.Length
	Joint         length.Length
	Line          length.Length // bottom edge of a course
	Start         length.Length // left edge of a tile of that course
	Level, Plumb  bool          // whether joint lines run level from end to end, and plumb
}

// Of lays out the trim of one wall whose marks are placed: up its left end, along
// its head, up its right end, along its base. A wall without trim has none.
func Of(w survey.WallFound, at survey.Placed, tile Tile) []Piece {
	if w.Left.Trim == nil && w.Right.Trim == nil && w.Head.Trim == nil && !w.Coved() {
		return nil
	}
	w, at = edged(w.WithLegs(), at)
	l := layer{wall: w, at: at, outer: outer(w, at, tile.Joint), tile: tile}
	l.all = w.Bare().Shape(tile.Units, l.outer).Region
	l.end(survey.LeftEnd)
	l.head()
	l.end(survey.RightEnd)
	l.coves()
	for i := range l.pieces {
		l.pieces[i].ID = fmt.Sprintf("T-%s-%02d", w.Letter, i+1)
	}
	return l.pieces
}

// Outline is a wall, legs and all, to the outer edges of its trim.
func Outline(w survey.WallFound, at survey.Placed, units length.System, joint length.Length) plane.Region {
	w, at = edged(w.WithLegs(), at)
	return w.Bare().Shape(units, outer(w, at, joint)).Region
}

// edged is a wall without what its strips take from the field, for these have tile of
// their own: trim runs on over a strip that goes up to the head, and before the foot of
// one that goes down to the base.
func edged(w survey.WallFound, at survey.Placed) (survey.WallFound, survey.Placed) {
	openings, edges := w.Openings, at.Openings
	w.Openings, at.Openings = nil, nil
	for i, o := range openings {
		if o.Strip == nil {
			w.Openings, at.Openings = append(w.Openings, o), append(at.Openings, edges[i])
		}
	}
	return w, at
}

// outer are the marks of a wall where its trim ends instead of its tile.
func outer(w survey.WallFound, at survey.Placed, joint length.Length) survey.Placed {
	if t := w.Left.Trim; t != nil {
		at.Left -= t.Width + joint
	}
	if t := w.Right.Trim; t != nil {
		at.Right += t.Width + joint
	}
	if t := w.Head.Trim; t != nil {
		at.Head += t.Width + joint
	}
	return at
}

// layer lays the trim of one wall.
type layer struct {
	wall   survey.WallFound
	at     survey.Placed // where tile ends
	outer  survey.Placed // where trim ends
	tile   Tile
	all    plane.Region // the wall to the outer edges of its trim
	pieces []Piece
}

// end lays the trim of an upright edge, from the bottom up.
func (l *layer) end(is survey.PartIs) {
	t := l.wall.Left.Trim
	lines := []plane.Line{plane.LeftOf(l.at.Left - l.tile.Joint)}
	if is == survey.RightEnd {
		t = l.wall.Right.Trim
		lines = []plane.Line{plane.RightOf(l.at.Right + l.tile.Joint)}
	}
	if t == nil {
		return
	}
	strip := l.all.KeepAll(append(append(lines, l.corner(is).upright...), l.foot(is).upright...)...)
	if t.Kind == survey.Profile {
		strip = l.besideTile(is, strip)
	}
	plan := splitting{long: t.Length, joint: l.between(*t), full: high}
	if n, follows := l.follows(t.Length, l.tile.Height); follows && l.tile.Level {
		plan.anchor, plan.full = l.tile.Line, following
		plan.pitch, plan.phases = l.tile.Height+l.tile.Joint, n
	}
	l.lay(is, *t, strip, plan)
}

// besideTile is the strip of a profile at an end without what goes on down where no tile stands, as
// beside a tub that the tile runs no further than: its flange lies under tile.
func (l *layer) besideTile(is survey.PartIs, strip plane.Region) plane.Region {
	side, found, low := survey.SideLeft, false, length.Length(0)
	if is == survey.RightEnd {
		side = survey.SideRight
	}
	for _, ring := range l.wall.Bare().Shape(l.tile.Units, l.at).Region {
		for i, c := range ring {
			if y := min(c.Y, ring[(i+1)%len(ring)].Y); c.On == side && (!found || y < low) {
				low, found = y, true
			}
		}
	}
	if t := strip.Bounds(); !found || low-t.Bottom <= t.Width() {
		return strip
	}
	return strip.Keep(plane.Above(low))
}

// head lays the trim along the head, from left to right, with its corners.
func (l *layer) head() {
	t := l.wall.Head.Trim
	if t == nil {
		return
	}
	left, right := l.corner(survey.LeftEnd), l.corner(survey.RightEnd)
	strip := l.all.KeepAll(append([]plane.Line{plane.Above(l.at.Head + l.tile.Joint)}, append(left.level, right.level...)...)...)
	plan := splitting{long: t.Length, joint: l.between(*t), full: shared}
	open := [2]bool{!l.wall.Left.Meets, !l.wall.Right.Meets}
	switch {
	case open[0] && !open[1]:
		plan.full = low
	case open[1] && !open[0]:
		plan.full = high
	}
	if n, follows := l.follows(t.Length, l.tile.Width); follows && l.tile.Plumb {
		plan.anchor, plan.full = l.tile.Start, following
		plan.pitch, plan.phases = l.tile.Width+l.tile.Joint, n
	}
	l.cornerPiece(left, survey.HeadEdge, *t)
	l.lay(survey.HeadEdge, *t, strip, plan)
	l.cornerPiece(right, survey.HeadEdge, *t)
}

// follows tells whether pieces of a length stand with the tile: each as long as
// one tile, or as n with the joints between them.
func (l *layer) follows(long, tile length.Length) (n int, ok bool) {
	pitch, step := tile+l.tile.Joint, long+l.tile.Joint
	return int(step / pitch), step >= pitch && step%pitch == 0
}

// between is the joint between two pieces: bars butt.
func (l *layer) between(t survey.TrimFound) length.Length {
	if t.Bar() {
		return 0
	}
	return l.tile.Joint
}

// lay cuts a strip into pieces.
func (l *layer) lay(edge survey.PartIs, t survey.TrimFound, strip plane.Region, plan splitting) {
	up := edge == survey.LeftEnd || edge == survey.RightEnd
	for _, part := range strip.Parts() {
		box := part.Bounds()
		plan.from, plan.to = box.Left, box.Right
		if up {
			plan.from, plan.to = box.Bottom, box.Top
		}
		for _, s := range plan.spans() {
			lines := []plane.Line{plane.RightOf(s.from), plane.LeftOf(s.to)}
			if up {
				lines = []plane.Line{plane.Above(s.from), plane.Below(s.to)}
			}
			if face := part.KeepAll(lines...); len(face) > 0 {
				l.pieces = append(l.pieces, l.piece(edge, t, face))
			}
		}
	}
}

// piece measures a piece.
func (l *layer) piece(edge survey.PartIs, t survey.TrimFound, face plane.Region) Piece {
	p := Piece{Edge: edge, Trim: t, Face: face}
	box := face.Bounds()
	switch edge {
	case survey.LeftEnd:
		p.Long, p.Wide, p.Inner, p.Outer = box.Height(), box.Width(), on(face, false, box.Right), on(face, false, box.Left)
	case survey.RightEnd:
		p.Long, p.Wide, p.Inner, p.Outer = box.Height(), box.Width(), on(face, false, box.Left), on(face, false, box.Right)
	default:
		p.Long, p.Wide, p.Inner, p.Outer = box.Width(), box.Height(), on(face, true, box.Bottom), on(face, true, box.Top)
	}
	if edge == survey.BaseSegment { // it follows the base, which may be out of level
		p.Wide, p.Inner, p.Outer = t.Width, box.Width(), box.Width()
		if p.Mitres = l.mitres(edge, box); p.Mitres > 0 {
			p.Inner, p.Outer = on(face, true, box.Top), on(face, true, box.Bottom)
		}
		over := face.Area2() - 2*t.Length.Times(t.Width)
		p.Whole = p.Long == t.Length && max(over, -over) <= length.Area(4*p.Long)
		return p
	}
	p.Whole = p.Long == t.Length && face.Area2() == 2*t.Length.Times(t.Width)
	p.Mitres = l.mitres(edge, box)
	return p
}

// on is how long a face is along a level or an upright line.
func on(face plane.Region, level bool, at length.Length) length.Length {
	var sum length.Length
	for _, ring := range face {
		for i, c := range ring {
			d := ring[(i+1)%len(ring)]
			switch {
			case level && c.Y == at && d.Y == at:
				sum += (d.X - c.X).Abs()
			case !level && c.X == at && d.X == at:
				sum += (d.Y - c.Y).Abs()
			}
		}
	}
	return sum
}
