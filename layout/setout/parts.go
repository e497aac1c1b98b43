package setout

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
	"slices"
)

// side is one part of a wall.
type side struct {
	wall     int
	openings []int // of the wall, by opening of the part
	n, of    int   // it is the nth of so many
}

// parts is the room with every side of a strip as a wall of its own.
func (b *beside) parts() (survey.Room, []side) {
	room := b.room
	room.Walls = nil
	var sides []side
	first, last := make([]int, len(b.room.Walls)), make([]int, len(b.room.Walls))
	for i, w := range b.room.Walls {
		by := w.PartedBy()
		first[i] = len(sides)
		for n := range len(by) + 1 {
			part, s := b.part(i, by, n)
			room.Walls, sides = append(room.Walls, part), append(sides, s)
		}
		last[i] = len(sides) - 1
	}
	for i := range room.Walls {
		if e := &room.Walls[i].Left; e.Beyond >= 0 {
			e.Beyond = last[e.Beyond]
		}
		if e := &room.Walls[i].Right; e.Beyond >= 0 {
			e.Beyond = first[e.Beyond]
		}
	}
	room.Bands = slices.Clone(room.Bands)
	for k := range room.Bands {
		band := &room.Bands[k]
		starts := band.Starts
		band.Walls, band.Starts = nil, nil
		for i, s := range sides {
			if !b.room.Bands[k].On(s.wall) {
				continue
			}
			band.Walls = append(band.Walls, i)
			if x, held := starts[s.wall]; held && s.n == 0 {
				if band.Starts == nil {
					band.Starts = map[int]length.Length{}
				}
				band.Starts[i] = x
			}
		}
	}
	return room, sides
}

// part is what of a wall stands between the nth of its parting strips and the one
// before it.
func (b *beside) part(wall int, by []int, n int) (survey.WallFound, side) {
	w := b.room.Walls[wall]
	s := side{wall: wall, n: n, of: len(by) + 1}
	if len(by) == 0 {
		for k := range w.Openings {
			s.openings = append(s.openings, k)
		}
		return w, s
	}
	from, to := -far, far
	pins := w.MarkPins
	w.MarkPins = map[survey.MarkName]length.Length{}
	for mark, at := range pins {
		w.MarkPins[mark] = at
	}
	if n > 0 {
		o := w.Openings[by[n-1]]
		from = b.left[wall][by[n-1]] + o.Width.From
		w.Left, w.Name = atStrip(from, b.room.Walls[wall].Left), w.Name+", right of "+o.Name
		delete(w.MarkPins, survey.EndLeft)
	}
	if n < len(by) {
		o := w.Openings[by[n]]
		to = b.left[wall][by[n]]
		w.Right = atStrip(to, b.room.Walls[wall].Right)
		delete(w.MarkPins, survey.EndRight)
		if n == 0 {
			w.Name += ", left of " + o.Name
		}
	}
	if at := b.head[wall]; at != nil {
		w.Head.Stops = survey.Span{From: *at, To: *at}
		delete(w.MarkPins, survey.HeadMark)
	}
	w.Base = withoutLegsBeyond(w.Base, from, to)
	w.Head.Top = nil // it goes on over all parts
	w.Pin = b.pin(wall, by, n)
	w.Openings, w.Fixtures = nil, nil
	for k, o := range b.room.Walls[wall].Openings {
		if e := o.Takes(b.room.Units); !o.Parts() && e.Right > from && e.Left < to {
			w.Openings, s.openings = append(w.Openings, o), append(s.openings, k)
		}
	}
	return w, s
}

// atStrip is the end of a part at a strip, beyond which the wall goes on to another end.
func atStrip(x length.Length, to survey.EndFound) survey.EndFound {
	e := survey.EndFound{Stops: survey.Span{From: x, To: x}, Beyond: -1, Goes: survey.ToStop}
	if to.Meets {
		e.Goes = survey.ToCorner
	}
	return e
}

// withoutLegsBeyond is a base whose legs in single tiles stand in one part of the wall alone.
func withoutLegsBeyond(base []survey.SegmentFound, from, to length.Length) []survey.SegmentFound {
	base = slices.Clone(base)
	for i := range base {
		if r := base[i].Readings; r[len(r)-1].At <= from || r[0].At >= to {
			base[i].Leg = survey.InBond
		}
	}
	return base
}

// far is beyond any wall.
const far = 1000 * length.Metre

// pin is where the tile of a part starts: as the wall is pinned, on its first part,
// and else with a joint beside the strip. Beyond it the courses that have one are
// those before it. Where tile may be cut beside the strip it is not pinned.
func (b *beside) pin(wall int, by []int, n int) *survey.StartPin {
	own := b.room.Walls[wall].Pin
	if n == 0 && own != nil {
		return own
	}
	if n > 0 {
		w := &b.room.Walls[wall]
		if x, held := w.Beyond[w.Openings[by[n-1]].Name]; held {
			return &survey.StartPin{X: x, Is: survey.OnEdge}
		}
	}
	if b.cut[wall][n] {
		return nil
	}
	edge, class := b.left[wall][by[0]]+b.room.Joint, b.class[wall]
	if own != nil {
		class = b.classOf(wall, edge-own.Edge(b.room.Tile.Width, b.room.Joint))
	}
	if n > 0 {
		edge = b.left[wall][by[n-1]] + b.room.Walls[wall].Openings[by[n-1]].Width.From
	}
	return &survey.StartPin{X: edge - b.shift(class), Is: survey.OnEdge}
}

// classOf is the class whose joints stand so far to the right of those of course 0: of a wall
// whose start is pinned the very one, if there is one, of a wall on which tile stands the
// nearest, because that was read off a tape.
func (b *beside) classOf(wall int, off length.Length) int {
	pitch := b.room.Tile.Width + b.room.Joint
	class, least := b.class[wall], pitch
	for c := range b.classes() {
		d := length.Mod(off-b.shift(c), pitch)
		d = min(d, pitch-d)
		if d == 0 || b.room.Walls[wall].Set != nil && d < least {
			class, least = c, d
		}
	}
	return class
}

// shift is how far the joints of a class stand to the right of those of course 0.
func (b *beside) shift(class int) length.Length {
	return b.room.Bond.Shift(class, survey.Left, b.room.Tile.Width+b.room.Joint)
}

// allClasses lists the classes of joints.
func (b *beside) allClasses() (out []int) {
	for c := range b.classes() {
		out = append(out, c)
	}
	return out
}

// classes is how many classes of joints a level bond has; columns have one.
func (b *beside) classes() int {
	if b.room.Bond.Plumb {
		return 1
	}
	return int(max(1, b.room.Bond.Den))
}

// names gives the side of the whole wall for one of a part of it.
func (s side) names(w survey.WallFound, by []int) func(plane.Side) plane.Side {
	first := survey.SideBase + plane.Side(len(w.Base))
	return func(on plane.Side) plane.Side {
		switch {
		case on == survey.SideLeft && s.n > 0:
			return first + plane.Side(by[s.n-1])
		case on == survey.SideRight && s.n < s.of-1:
			return first + plane.Side(by[s.n])
		case on >= first:
			return first + plane.Side(s.openings[on-first])
		}
		return on
	}
}
