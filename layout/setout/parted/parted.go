// Package parted sets out a room whose tile changes at a height: one with bands.
//
// A band stands between two joint lines of the room's tile. So the room with its
// bands taken out, and what stands over them moved down, is a room of one tile in
// one set of courses: that is what is searched (the folded room). Then the bands
// are set out, each in the strip that was left to it.
//
// Laws, each with a test:
//  1. Every course of the room's tile beside a band is whole in height there, and
//     so is every course of the band.
//  2. Field and bands are judged together, by all their pieces. Where the result is
//     proven, no course line, no starts of the field and no heights and starts of the
//     bands are better. Merit adds up over field and bands (law 2 of package merit), so
//     the best field with the best that each band could have by itself, wherever ends
//     and heights let it, is what nothing can beat; what reaches that is proven (proof.go).
//  3. Where an opening may stand on either side of a band, line and starts are
//     found with one side taken, and the side is then chosen with them, wall by
//     wall: such a result is never said to be proven.
//  4. The same room gives the same result.
package parted

import (
	"context"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/search"
	"coursewright/layout/survey"
)

// Result is the best set-out found of a room with bands.
type Result struct {
	Field  search.Result // of the folded room
	Folded survey.Room
	Bands  []Band      // in the job's order
	Merit  merit.Merit // of field and bands
	Proven bool        // nothing on the tape is better
	Open   Open        // what keeps it from being proven, beside what the field's search left
	Bound  merit.Merit // what nothing can beat, where it is not proven and nothing is Open

	room   survey.Room
	folds  []fold
	strips [][]strip // by wall, from the bottom up
	zones  [][]zone  // by wall and opening: how it stands among the strips

	standing []survey.Placed // where the marks of a field that is laid in a pattern stand
}

// Band is how one band is set out.
type Band struct {
	Bottom, Top length.Length // over the level line; where it goes up to the head Top is Bottom
	Hand        survey.Hand
	Line        length.Length   // of one laid in a pattern: its line
	Edges       []length.Length // by wall of the band: the left edge of a tile of its lowest course, or of a tile on its line
	Merit       merit.Merit

	placed []placedBand // by wall of the band
	bound  merit.Merit  // what nothing can beat in the strip as it stands
}

// Room is the best set-out of a room with the joint it has. The error is the
// context's.
func Room(ctx context.Context, room *survey.Room) (Result, error) {
	p := parter{ctx: ctx, room: room.WithJoint(room.Joint)}
	r, err := p.solve()
	if err == nil {
		r, err = p.sharedEnds(r)
	}
	if err == nil {
		err = p.prove(&r)
	}
	return r, err
}

type parter struct {
	ctx  context.Context
	room survey.Room

	own map[int]search.Result // by band: what it could have by itself beside the result found last
}

// solve is the best that is found for field and bands.
func (p *parter) solve() (Result, error) {
	if p.fixed() {
		return p.onFixed()
	}
	lines, err := p.lines()
	if err != nil {
		return Result{}, err
	}
	var best *Result
	for _, line := range lines {
		r, err := p.on(&line)
		if err != nil {
			return Result{}, err
		}
		if order := r.Field.Order(); best == nil || order.Better(&r.Merit, &best.Merit) {
			best = &r
		}
	}
	return *best, nil
}

// pitch is from course to course of the room's own tile.
func (p *parter) pitch() length.Length { return p.room.Tile.Height + p.room.Joint }

// found is a line with the hand of the bond that was found with it, and where a band
// that goes up to the head begins, where that is not left to its wish.
type found struct {
	line length.Length
	hand survey.Hand
	from *length.Length

	starts []*start       // found with it, by wall
	zones  [][]zone       // with the openings among the strips so
	field  *search.Result // the whole field found with it, where that is the same for all heights of the bands
}

// lines gives the course lines to set the room out on: the best of the folded room,
// with its bands where they are wished. Where a band goes up to the head its own
// courses have a say, and where it may run into a measured opening the edges of that; a few more
// are tried.
func (p *parter) lines() ([]found, error) {
	strips := p.strips(nil)
	zones := firsts(ways(p.room.Walls, strips, nil))
	folded, _ := p.fold(strips, zones)
	r, err := search.Room(p.ctx, &folded)
	if err != nil {
		return nil, err
	}
	best := found{line: r.Line, hand: r.Hand, starts: startsOf(&r, &folded), zones: zones}
	if p.alike() {
		best.field = &r
	}
	out := []found{best}
	low := r.Lowest() // by the height of a band it would be a line at one's head
	for _, f := range slices.Concat(p.otherJoints(r.Line), p.fullHeads(), p.flush()) {
		f.hand, f.line = r.Hand, low+length.Mod(f.line-low, p.pitch())
		out = append(out, f)
	}
	return out, nil
}

// onFixed sets the room out on the course line that is fixed. On a pinned one a band
// that goes up to the head may begin on other joint lines.
func (p *parter) onFixed() (Result, error) {
	best, err := p.on(nil)
	if err != nil || p.room.Line == nil {
		return best, err
	}
	for _, f := range p.otherJoints(p.line()) {
		f.hand = p.room.Bond.Hand
		r, err := p.on(&f)
		if err != nil {
			return Result{}, err
		}
		if order := r.Field.Order(); order.Better(&r.Merit, &best.Merit) {
			best = r
		}
	}
	return best, nil
}

// fold takes the strips out of the room.
func (p *parter) fold(strips [][]strip, zones [][]zone) (survey.Room, []fold) {
	room := p.room
	room.Bands = nil
	room.Walls = make([]survey.WallFound, len(p.room.Walls))
	folds := make([]fold, len(p.room.Walls))
	for i, w := range p.room.Walls {
		folds[i] = foldWall(w, strips[i], room.Joint, zones[i])
		room.Walls[i] = folds[i].wall
	}
	return room, folds
}
