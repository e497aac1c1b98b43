package tell

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/setout/count"
	"coursewright/layout/setout/search"
	"coursewright/layout/survey"
)

// slide is the worst run against the start over one period. Where all that stands on the wall was measured
// it is counted from the pieces; what is free goes where each start has it best, and there it is as far
// as the edges that stand decide it. Of a fine tape it has many points: it stops where nobody waits for it.
func slide(room *survey.Room, r *search.Result, wall int) []plan.SlidePoint {
	w, line, placed := r.Wall(wall), r.Line, r.Walls[wall].Placed
	c := curve{starts: w.Starts.All(), tape: room.Tape, stride: 1, ended: r.Ended, given: func(edge length.Length) merit.Merit { return w.Bounds.OfBoth(line, edge) }}
	if len(w.Free()) == 0 && w.FixedEnds() && slices.ContainsFunc(w.Found.Openings, func(o survey.OpeningFound) bool { return o.Kind != survey.Pipe }) {
		c.stride = 8
		c.given = func(edge length.Length) merit.Merit {
			return w.Count(count.Setting{Line: line, Edge: edge, Placed: placed}).Merit
		}
	}
	return straighten(c.points())
}

// curve is the worst run against the start. Between two starts not far apart of which what they give lies in line with
// what the one in the middle gives, none is asked: there a run grows, or shrinks, by as much as the start moves, and nothing
// else comes or goes.
type curve struct {
	starts []length.Length // ascending
	tape   length.Length
	stride int // how many starts are at most passed over so, and one more
	given  func(edge length.Length) merit.Merit
	ended  func() bool
}

// points are what all starts give; none where nobody waits for them any more.
func (c *curve) points() []plan.SlidePoint {
	asked := make([]told, len(c.starts))
	asked[0] = c.at(0)
	for from := 0; from < len(asked)-1; from += c.stride {
		to := min(from+c.stride, len(asked)-1)
		asked[to] = c.at(to)
		c.between(asked, from, to)
		if c.ended() {
			return nil
		}
	}
	out := make([]plan.SlidePoint, len(asked))
	for i := range asked {
		out[i] = asked[i].SlidePoint
	}
	return out
}

// told is what a start gives.
type told struct {
	plan.SlidePoint
	seen, hidden tally // in plain sight and out of it
	work         int
}

// tally is how much of everything there is, however wide.
type tally struct {
	bare                                      length.Length
	unworkable, slivers, fifths, thirds, runs int
}

func tallyOf(s *merit.Sight) tally {
	return tally{bare: s.Bare, unworkable: s.Unworkable, slivers: s.Slivers, fifths: s.Fifths, thirds: s.Thirds, runs: len(s.Runs)}
}

// at asks what a start gives.
func (c *curve) at(i int) told {
	m := c.given(c.starts[i])
	p := plan.SlidePoint{Edge: c.starts[i], Share: piece.Half, Slivers: m.Slivers + m.Unworkable}
	if m.Bare > 0 {
		p.Slivers++
	}
	if len(m.Runs) > 0 {
		p.Share = m.Runs[0]
	}
	return told{SlidePoint: p, seen: tallyOf(&m.Sight), hidden: tallyOf(&m.OutOfSight), work: m.Work}
}

// between fills in what lies between two starts that were asked.
func (c *curve) between(out []told, from, to int) {
	if to-from < 2 {
		return
	}
	mid := (from + to) / 2
	out[mid] = c.at(mid)
	slope, straight := slopeOf(out[from], out[to])
	if steady, same := slopeOf(out[from], out[mid]); !straight || !same || steady != slope || !c.onTape(from, to) {
		c.between(out, from, mid)
		c.between(out, mid, to)
		return
	}
	for i := from + 1; i < to; i++ {
		out[i] = out[from]
		out[i].Edge = c.starts[i]
		out[i].Share.Num += slope * int64(c.starts[i]-c.starts[from])
	}
}

// slopeOf is how much a run grows with the start from one to another without slivers, of which there may be more or
// less at every mark, and with as much of everything: by as much, by nothing, or by as much less.
func slopeOf(a, b told) (slope int64, straight bool) {
	if a.Slivers > 0 || b.Slivers > 0 || a.Share.Den != b.Share.Den || a.seen != b.seen || a.hidden != b.hidden || a.work != b.work {
		return 0, false
	}
	switch b.Share.Num - a.Share.Num {
	case 0:
		return 0, true
	case int64(b.Edge - a.Edge):
		return 1, true
	case int64(a.Edge - b.Edge):
		return -1, true
	}
	return 0, false
}

// onTape tells whether some starts stand whole marks of the tape from each other: what is said of a run is in whole
// marks, so that what lies between two marks is not in line.
func (c *curve) onTape(from, to int) bool {
	return !slices.ContainsFunc(c.starts[from:to+1], func(x length.Length) bool { return (x-c.starts[from])%c.tape != 0 })
}

// straighten drops points in the middle of a straight stretch.
func straighten(p []plan.SlidePoint) []plan.SlidePoint {
	var out []plan.SlidePoint
	for i, q := range p {
		if i > 0 && i < len(p)-1 && inLine(out[len(out)-1], q, p[i+1]) {
			continue
		}
		out = append(out, q)
	}
	return out
}

// inLine tells whether b lies on the way from a to c to within a thousandth of
// a tile: good enough to draw.
func inLine(a, b, c plan.SlidePoint) bool {
	if a.Slivers != b.Slivers || b.Slivers != c.Slivers || a.Edge == c.Edge {
		return false
	}
	want := a.Share.Float() + (c.Share.Float()-a.Share.Float())*float64(b.Edge-a.Edge)/float64(c.Edge-a.Edge)
	got := b.Share.Float()
	return want-got < 0.001 && got-want < 0.001
}

// slip is how far the start may move, both ways, before more slivers appear.
func slip(slide []plan.SlidePoint, edge, pitch length.Length) (from, to length.Length) {
	if len(slide) == 0 {
		return edge, edge
	}
	at := slide[0].Edge + length.Mod(edge-slide[0].Edge, pitch)
	i := 0
	for i+1 < len(slide) && slide[i+1].Edge <= at {
		i++
	}
	limit := slide[i].Slivers
	low, high := i, i
	for low > 0 && slide[low-1].Slivers <= limit {
		low--
	}
	for high+1 < len(slide) && slide[high+1].Slivers <= limit {
		high++
	}
	return edge + slide[low].Edge - at, edge + slide[high].Edge - at
}
