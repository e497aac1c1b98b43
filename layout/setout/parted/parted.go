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
//  2. A room with bands is searched as closely as one without: where the result is
//     proven, no course line and starts are better for the room's own tile. What
//     the bands' tile gives is the best for that.
//  3. Where an opening may stand on either side of a band, line and starts are
//     found with one side taken, and the side is then chosen with them, wall by
//     wall: such a result is never said to be proven.
//  4. The same room gives the same result.
//
// A pipe that stands across the edge of a band is left out where the field is
// counted; its tile is cut to it all the same.
package parted

import (
	"context"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/search"
	"coursewright/layout/survey"
)

// Result is the best set-out found of a room with bands.
type Result struct {
	Field  search.Result // of the folded room
	Folded survey.Room
	Bands  []Band // in the job's order
	Near   bool   // an opening may stand on either side of a band, and not all was tried with each
	Merit  merit.Merit

	room  survey.Room
	folds []fold
}

// Band is how one band is set out.
type Band struct {
	Bottom, Top length.Length // over the level line; where it goes up to the head Top is Bottom
	Hand        survey.Hand
	Edges       []length.Length // by wall of the band: the left edge of a tile of its lowest course
	Merit       merit.Merit

	placed []placedBand // by wall of the band
}

// Room is the best set-out of a room with the joint it has. The error is the
// context's.
func Room(ctx context.Context, room *survey.Room) (Result, error) {
	p := parter{ctx: ctx, room: room.WithJoint(room.Joint)}
	if p.fixed() {
		return p.onFixed()
	}
	lines, proven, bound, err := p.lines()
	if err != nil {
		return Result{}, err
	}
	var best *Result
	for _, line := range lines {
		r, err := p.on(&line)
		if err != nil {
			return Result{}, err
		}
		if r.Field.Proven = proven; !proven {
			r.Field.Bound, r.Near = bound, r.Near || !p.clear()
		}
		if order := r.Field.Order(); best == nil || order.Better(&r.Merit, &best.Merit) {
			best = &r
		}
	}
	return *best, nil
}

type parter struct {
	ctx  context.Context
	room survey.Room
}

// pitch is from course to course of the room's own tile.
func (p *parter) pitch() length.Length { return p.room.Tile.Height + p.room.Joint }

// found is a line with the hand of the bond that was found with it, and where a band
// that goes up to the head begins, where that is not left to its wish.
type found struct {
	line length.Length
	hand survey.Hand
	from *length.Length

	edges []length.Length // the starts found with it, by wall
	zones [][]zone        // with the openings among the strips so
}

// lines gives the course lines to set the room out on: the best of the folded room,
// with its bands where they are wished. Where a band goes up to the head its own
// courses have a say, and a few more are tried.
func (p *parter) lines() (out []found, proven bool, bound merit.Merit, err error) {
	strips := p.strips(nil)
	zones := firsts(ways(p.room.Walls, strips, nil))
	folded, _ := p.fold(strips, zones)
	r, err := search.Room(p.ctx, &folded)
	if err != nil {
		return nil, false, bound, err
	}
	best := found{line: r.Line, hand: r.Hand, zones: zones}
	for _, c := range r.Walls {
		best.edges = append(best.edges, c.Edge)
	}
	out, proven, bound = []found{best}, r.Proven && p.clear(), r.Bound
	if !p.clear() {
		bound = merit.Merit{}
	} else if r.Proven {
		bound = r.Merit
	}
	for _, f := range append(p.otherJoints(r.Line), p.fullHeads()...) {
		f.hand = r.Hand
		out, proven = append(out, f), false
	}
	return out, proven, bound, nil
}

// onFixed sets the room out on the course line that is fixed. On a pinned one a band
// that goes up to the head may begin on other joint lines.
func (p *parter) onFixed() (Result, error) {
	best, err := p.on(nil)
	if err != nil || p.room.Line == nil {
		return best, err
	}
	proven := best.Field.Proven
	for _, f := range p.otherJoints(p.line()) {
		f.hand = p.room.Bond.Hand
		r, err := p.on(&f)
		if err != nil {
			return Result{}, err
		}
		if order := r.Field.Order(); order.Better(&r.Merit, &best.Merit) {
			best = r
		}
		proven = proven && r.Field.Proven
	}
	best.Field.Proven = proven
	return best, nil
}

// line is the course line that is fixed, whole pitches aside.
func (p *parter) line() length.Length {
	for i, b := range p.room.Bands {
		if p.room.Line == nil && !b.Bottom.Free() {
			return b.Bottom.From - p.room.Under(b.Walls[0], i)
		}
	}
	return *p.room.Line
}

// fixed tells whether the course line is pinned, or said by a band.
func (p *parter) fixed() bool {
	for _, b := range p.room.Bands {
		if !b.Bottom.Free() {
			return true
		}
	}
	return p.room.Line != nil
}

// clear tells whether every opening stays clear of all heights at which a free band
// of its wall may stand: then the folded room is the same for all of them.
func (p *parter) clear() bool {
	for w := range p.room.Walls {
		if !p.clearOn(w) {
			return false
		}
	}
	return true
}

// clearOn is clear of one wall.
func (p *parter) clearOn(wall int) bool {
	for _, i := range p.room.BandsOn(wall) {
		b := p.room.Bands[i]
		low, high := b.Bottom.From-p.room.Joint, b.Bottom.To+b.High(p.room.Joint)+p.room.Joint
		for _, o := range p.room.Walls[wall].Openings {
			if e := o.Reach(); b.ToHead && e.Top > low || e.Top > low && e.Bottom < high {
				return false
			}
		}
	}
	return true
}

// fullHeads are the course lines with which the tile of a free band that goes up to
// the head ends there in a full course, wall by wall.
func (p *parter) fullHeads() (out []found) {
	for i, b := range p.room.Bands {
		if !b.ToHead {
			continue
		}
		pitch := b.Tile.Height + b.Inner(p.room.Joint)
		for _, w := range b.Walls {
			top := headOf(p.room.Walls[w])
			y := b.Bottom.From + length.Mod(top-b.Tile.Height-b.Bottom.From, pitch)
			for ; y <= b.Bottom.To && len(out) < mostHeads; y += pitch {
				if line := y - p.room.Under(w, i); p.stands(line) {
					from := y
					out = append(out, found{line: line, from: &from})
				}
			}
		}
	}
	return out
}

// otherJoints are the joint lines of one course line on which a free band that goes
// up to the head may begin as well.
func (p *parter) otherJoints(line length.Length) (out []found) {
	for i, b := range p.room.Bands {
		if !b.ToHead {
			continue
		}
		wished := p.bottom(b.Walls[0], i, &found{line: line})
		up := p.room.Under(b.Walls[0], i)
		for y := b.Bottom.From + length.Mod(line+up-b.Bottom.From, p.pitch()); y <= b.Bottom.To && len(out) < mostHeads; y += p.pitch() {
			if y != wished {
				from := y
				out = append(out, found{line: line, from: &from})
			}
		}
	}
	return out
}

// mostHeads bounds how many more lines are tried for bands that go up to the head.
const mostHeads = 4

func (p *parter) stands(line length.Length) bool {
	for _, c := range p.room.Course {
		if !c.Congruent(line, p.pitch()) {
			return false
		}
	}
	return true
}

// headOf is the lowest the head of a wall is, with its gap.
func headOf(w survey.WallFound) length.Length {
	if !w.Head.Meets {
		return w.Head.Stops.To
	}
	top := w.Head.Readings[0].Value
	for _, r := range w.Head.Readings {
		top = min(top, r.Value)
	}
	return top - w.Head.Gap
}

// bottom is where the bottom edge of band i stands, with the courses of a wall on a
// line: where it is wished, without one; else on the joint line nearest to that.
func (p *parter) bottom(wall, i int, at *found) length.Length {
	b := p.room.Bands[i]
	switch {
	case at == nil || !b.Bottom.Free():
		return b.Near
	case b.ToHead && at.from != nil:
		return *at.from
	}
	pitch := p.pitch()
	low := b.Bottom.From + length.Mod(at.line+p.room.Under(wall, i)-b.Bottom.From, pitch)
	best := low
	for y := low; y <= b.Bottom.To; y += pitch {
		if (y - b.Near).Abs() < (best - b.Near).Abs() {
			best = y
		}
	}
	return best
}

// strips are the strips of every wall from the bottom up, with the course line given.
func (p *parter) strips(at *found) [][]strip {
	out := make([][]strip, len(p.room.Walls))
	for w := range p.room.Walls {
		for _, i := range p.room.BandsOn(w) {
			b := p.room.Bands[i]
			s := strip{band: i, bottom: p.bottom(b.Walls[0], i, at), toHead: b.ToHead}
			if s.top, s.next = s.bottom, s.bottom; !b.ToHead {
				s.top += b.High(p.room.Joint)
				s.next = s.top + p.room.Joint
			}
			out[w] = append(out[w], s)
		}
	}
	return out
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

// on sets the room out on a course line, with its openings where they are best;
// without one on the line that is fixed. The ways are tried wall by wall, with the starts
// that were found with the line, or with those of the first; the best is searched again.
func (p *parter) on(at *found) (Result, error) {
	from := at
	if from == nil {
		from = &found{line: p.line()}
	}
	strips := p.strips(from)
	all := ways(p.room.Walls, strips, &joints{line: from.line, pitch: p.pitch(), joint: p.room.Joint})
	zones := firsts(all)
	first := at.starts()
	best, err := p.way(at, strips, zones, first)
	if err != nil {
		return Result{}, err
	}
	if first == nil {
		first = best.starts()
	}
	from.hand = best.Field.Hand
	changed, several := false, false
	for w := range all {
		if len(all[w]) == 1 {
			continue
		}
		several = true
		k, err := p.best(from, strips, all[w], w, first[w])
		if err != nil {
			return Result{}, err
		}
		zones[w], changed = all[w][k], changed || k > 0
	}
	if changed || at != nil && !at.alike(zones) {
		r, err := p.way(at, strips, zones, p.startsOf(at))
		if err != nil {
			return Result{}, err
		}
		if order := r.Field.Order(); order.Better(&r.Merit, &best.Merit) {
			best = r
		}
	}
	best.Near = several
	best.Field.Proven = best.Field.Proven && !several
	return best, nil
}

// best is the best of the ways in which the openings of one wall may stand, with its
// start on a line. Merits add up over walls, so it is the best whatever the others do.
func (p *parter) best(at *found, strips [][]strip, ways [][]zone, wall int, start *survey.StartPin) (int, error) {
	alone := parter{ctx: p.ctx, room: p.room.Alone(wall)}
	var on []strip
	for _, s := range strips[wall] {
		s.band = len(on)
		on = append(on, s)
	}
	line := *at
	line.edges, line.zones = nil, nil
	chosen := 0
	var best Result
	for k, zones := range ways {
		r, err := alone.way(&line, [][]strip{on}, [][]zone{zones}, []*survey.StartPin{start})
		if err != nil {
			return 0, err
		}
		if order := r.Field.Order(); k == 0 || order.Better(&r.Merit, &best.Merit) {
			best, chosen = r, k
		}
	}
	return chosen, nil
}

// starts are the starts that were found with a line, as pins; nil where there are none.
func (f *found) starts() (out []*survey.StartPin) {
	if f == nil {
		return nil
	}
	for _, edge := range f.edges {
		out = append(out, &survey.StartPin{X: edge, Is: survey.OnEdge})
	}
	return out
}

// alike tells whether the openings stand among the strips as they did when the starts
// were found: then these are as good as others.
func (f *found) alike(zones [][]zone) bool {
	for w := range zones {
		for k, z := range zones[w] {
			if f.zones == nil || z.bottom != f.zones[w][k].bottom || z.top != f.zones[w][k].top {
				return false
			}
		}
	}
	return true
}

// startsOf are the starts that were found with a line, of the walls that are the same
// wherever the bands stand.
func (p *parter) startsOf(at *found) []*survey.StartPin {
	if at == nil || at.edges == nil {
		return nil
	}
	out := make([]*survey.StartPin, len(at.edges))
	for w, edge := range at.edges {
		if p.clearOn(w) {
			out[w] = &survey.StartPin{X: edge, Is: survey.OnEdge}
		}
	}
	return out
}

// starts are the starts of a result, as pins.
func (r *Result) starts() []*survey.StartPin {
	out := make([]*survey.StartPin, len(r.Field.Walls))
	for w, c := range r.Field.Walls {
		out[w] = &survey.StartPin{X: c.Edge, Is: survey.OnEdge}
	}
	return out
}

// way sets the room out with its openings in one way, and some of its walls with the
// starts given.
func (p *parter) way(at *found, strips [][]strip, zones [][]zone, starts []*survey.StartPin) (Result, error) {
	folded, folds := p.fold(strips, zones)
	if at != nil {
		folded.Line, folded.Bond.Hand = &at.line, at.hand
	}
	for w, pin := range starts {
		if pin != nil && folded.Walls[w].Pin == nil {
			folded.Walls[w].Pin = pin
		}
	}
	f, err := search.Room(p.ctx, &folded)
	if err != nil {
		return Result{}, err
	}
	r := Result{Field: f, Folded: folded, Merit: f.Merit, room: p.room, folds: folds}
	return r, p.setBands(&r, strips, zones)
}
