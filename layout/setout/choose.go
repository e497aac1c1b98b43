package setout

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"
)

// wished is where a strip begins: where it is measured or pinned, or as near to where
// it is wished as its range lets it, or else in the middle of it.
func wished(w survey.WallFound, o survey.OpeningFound) length.Length {
	if x, there := w.MarkPins[o.Mark(survey.LeftEdge)]; there {
		return x
	}
	if o.Near.X == nil {
		return o.Left.From + (o.Left.To - o.Left.From).Half()
	}
	return min(max(*o.Near.X-o.Width.From.Half(), o.Left.From), o.Left.To)
}

// choices tells whether anything beside lines and starts is to be chosen, and whether
// more than the class of one wall is and where heads stop. The search for a line takes a class
// with it: the courses with a joint beside a strip are those of another line, a course higher.
func (b *beside) choices() (any, more bool) {
	walls, heads := 0, false
	for _, w := range b.room.Walls {
		by := w.PartedBy()
		if len(by) == 0 {
			continue
		}
		if b.classes() > 1 && w.Pin == nil {
			walls++
		}
		heads = heads || !w.Head.Meets && w.Head.Stops.Free()
		for _, k := range by {
			more = more || b.movable(w, k)
		}
	}
	more = more || walls > 1 || walls == 1 && b.room.Line != nil
	return more || walls > 0 || heads, more
}

func (b *beside) movable(w survey.WallFound, k int) bool {
	_, pinned := w.MarkPins[w.Openings[k].Mark(survey.LeftEdge)]
	return w.Openings[k].Left.Free() && !pinned
}

// choose takes the best place and class for the strips of one wall on the course line that
// was found, and sets its parts out so.
func (b *beside) choose(wall int, on *found) error {
	w := b.room.Walls[wall]
	for _, k := range w.PartedBy() {
		places, apart := []length.Length{b.left[wall][k]}, length.Length(0)
		if b.movable(w, k) {
			places, apart = b.places(wall, k)
		}
		classes := []int{b.class[wall]}
		if w.Pin == nil {
			classes = b.allClasses()
		}
		if len(places)*len(classes) == 1 && b.head[wall] == nil {
			continue
		}
		options := b.options(wall, k, places, classes)
		if len(b.room.Bands) > 0 {
			var err error
			if options, err = b.likely(wall, k, on, options); err != nil {
				return err
			}
		}
		best, err := b.best(wall, k, on, options)
		if err == nil && apart > b.room.Tape && len(b.room.Bands) == 0 {
			span := w.Openings[k].Left
			near := b.marks(survey.Span{From: max(span.From, best.x-apart+1), To: min(span.To, best.x+apart-1)}, b.room.Tape)
			near = slices.DeleteFunc(near, func(x length.Length) bool { return x == best.x })
			best, err = b.best(wall, k, on, append([]option{best}, b.options(wall, k, near, []int{best.class})...))
		}
		if err != nil {
			return err
		}
		b.place(wall, k, best)
		b.chosen[wall] = best.found.result
	}
	return nil
}

// option is one place and class for the strips of a wall, with what it cannot beat: as far as its parts
// were looked at.
type option struct {
	x     length.Length
	class int
	near  length.Length
	bound merit.Merit
	parts *parts
	known int // of its parts
	found *found
}

// parts are those of a wall whose strips are placed, whatever class of the bond they go with: each is prepared when
// it is looked at.
type parts struct {
	room  survey.Room
	walls []*count.Wall
}

func (b *beside) place(wall, opening int, o option) {
	b.left[wall][opening], b.class[wall] = o.x, o.class
}

// options lists where a strip may stand, and with which class of the bond.
func (b *beside) options(wall, opening int, places []length.Length, classes []int) (out []option) {
	w := b.room.Walls[wall]
	wish := wished(w, w.Openings[opening])
	for i, x := range places {
		if slices.Contains(places[:i], x) {
			continue
		}
		o := option{x: x, near: (x - wish).Abs().FloorTo(b.room.Tape), bound: merit.Merit{Part: true}, parts: &parts{}}
		o.bound.Near = o.near
		for _, o.class = range classes {
			out = append(out, o)
		}
	}
	return out
}

// likely are the options that are best where the bands are left out, of which few are worth
// while to set out with them.
func (b *beside) likely(wall, opening int, on *found, options []option) (out []option, err error) {
	plain := *b
	plain.room.Bands, plain.room.Course = nil, nil
	for len(options) > 0 && len(out) < mostLikely {
		best, err := plain.best(wall, opening, on, options)
		if err != nil {
			return nil, err
		}
		options = slices.DeleteFunc(slices.Clone(options), func(o option) bool { return o.x == best.x && o.class == best.class })
		out = append(out, option{x: best.x, class: best.class, near: best.near, parts: &parts{}})
	}
	return out, nil
}

// mostLikely bounds at how many places a free strip is tried with bands beside it.
const mostLikely = 3

// closer adds to what an option cannot beat what the next of its parts cannot; false where all that is known of them
// was added. Of parts with bands nothing is.
func (b *beside) closer(wall int, on *found, o *option) bool {
	if len(b.room.Bands) > 0 {
		return false
	}
	p, n := o.parts, o.known
	if p.walls == nil {
		p.room = b.partsOf(wall, on)
		p.walls = make([]*count.Wall, len(p.room.Walls))
	}
	if n == len(p.walls) {
		return false
	}
	if p.walls[n] == nil {
		p.walls[n] = count.NewWall(&p.room, p.room.Walls[n], on.hand)
	}
	pin := b.pin(wall, b.room.Walls[wall].PartedBy(), n)
	m := p.walls[n].Bounds.OfBoth(on.line, pin.Edge(b.room.Tile.Width, b.room.Joint))
	o.bound, o.known = o.bound.Plus(&m), n+1
	return true
}

// best is the first of the best options. They are looked at and tried in the order of what they cannot beat.
func (b *beside) best(wall, opening int, on *found, options []option) (option, error) {
	order := merit.OrderFor(b.room.Prefer)
	before := func(i, k int) int {
		c, _ := order.Compare(&options[i].bound, &options[k].bound)
		return cmp.Or(c, cmp.Compare(i, k))
	}
	var queue []int
	put := func(i int) {
		at, _ := slices.BinarySearchFunc(queue, i, before)
		queue = slices.Insert(queue, at, i)
	}
	for i := range options {
		put(i)
	}
	best := -1
	for len(queue) > 0 {
		i := queue[0]
		queue = queue[1:]
		o := &options[i]
		if best >= 0 && order.Better(&options[best].found.merit, &o.bound) {
			break
		}
		b.place(wall, opening, *o)
		if o.found == nil && b.closer(wall, on, o) {
			put(i)
			continue
		}
		var rival *merit.Merit
		if best >= 0 {
			rival = &options[best].found.merit
		}
		if err := b.try(wall, on, o, rival); err != nil {
			return *o, err
		}
		if o.found == nil {
			continue
		}
		if best < 0 {
			best = i
		} else if c, _ := order.Compare(&o.found.merit, rival); c < 0 || c == 0 && i < best {
			best = i
		}
	}
	return options[best], nil
}

// try sets the parts of a wall out with an option, unless that was done; it finds nothing where that is sure to be
// worse than the rival.
func (b *beside) try(wall int, on *found, o *option, rival *merit.Merit) error {
	if o.found != nil {
		return nil
	}
	if rival != nil {
		m := *rival
		m.Near -= o.near
		rival = &m
	}
	room, prepared := b.partsOf(wall, on), &count.Kept{}
	prepared.Keep(o.parts.walls)
	found, err := b.searchAgainst(&room, prepared, rival)
	if err != nil || found == nil {
		return err
	}
	found.merit.Near += o.near
	o.found, o.parts = found, &parts{} // which may have been used for it
	return nil
}

// partsOf is the room with the parts of one wall alone, on the course line that was found.
func (b *beside) partsOf(wall int, on *found) survey.Room {
	room, sides := b.parts()
	kept := make([]int, len(sides))
	all := room.Walls
	room.Walls = nil
	for i, s := range sides {
		if kept[i] = -1; s.wall == wall {
			kept[i] = len(room.Walls)
			w := all[i]
			w.Left.Beyond, w.Right.Beyond = -1, -1
			room.Walls = append(room.Walls, w)
		}
	}
	bands := room.Bands
	room.Bands = nil
	for _, band := range bands {
		var on []int
		for _, w := range band.Walls {
			if kept[w] >= 0 {
				on = append(on, kept[w])
			}
		}
		if band.Walls, band.Starts = on, nil; len(on) > 0 {
			room.Bands = append(room.Bands, band)
		}
	}
	room.Line, room.Bond.Hand = &on.line, on.hand
	return room
}

// places lists where a free strip is tried: where it is wished, where it suits the ends of
// the wall, and at marks of the tape all over its range, so far apart. Where the wall's start is pinned it stands on its joints.
func (b *beside) places(wall, opening int) (out []length.Length, apart length.Length) {
	w := b.room.Walls[wall]
	span := w.Openings[opening].Left
	if w.Pin == nil {
		step := max(b.room.Tape, ((span.To - span.From) / mostPlaces).CeilTo(b.room.Tape))
		out = append([]length.Length{b.left[wall][opening]}, b.suited(w, opening)...)
		return append(out, b.marks(span, step)...), step
	}
	pitch := b.room.Tile.Width + b.room.Joint
	joint := w.Pin.Edge(b.room.Tile.Width, b.room.Joint) - b.room.Joint
	for c := range b.classes() {
		for x := span.From + length.Mod(joint+b.shift(c)-span.From, pitch); x <= span.To && len(out) < mostPlaces; x += pitch {
			out = append(out, x)
		}
	}
	if len(out) == 0 {
		out = append(out, b.left[wall][opening])
	}
	return out, 0
}

// suited are the places in the range of a strip that leave full tiles at an exposed end that
// is measured, or the same at two ends that are alike.
func (b *beside) suited(w survey.WallFound, opening int) (out []length.Length) {
	span, wide, pitch := w.Openings[opening].Left, w.Openings[opening].Width.From, b.room.Tile.Width+b.room.Joint
	add := func(x, every length.Length) {
		for x = span.From + length.Mod(x-span.From, every); x <= span.To; x += every {
			out = append(out, x)
		}
	}
	left, right := w.Exposed()
	for c := range b.classes() {
		if left && !w.Left.Stops.Free() {
			add(w.Left.Stops.From-b.room.Joint+b.shift(c), pitch)
		}
		if right && !w.Right.Stops.Free() {
			add(w.Right.Stops.From+b.room.Joint-wide-b.shift(c), pitch)
		}
	}
	if w.LikeEnds() {
		from, to := w.Field()
		add((from + to - wide).Half(), pitch.Half())
	}
	return out[:min(len(out), 2*mostPlaces)]
}

// marks are those of the tape in a range, so far apart.
func (b *beside) marks(s survey.Span, apart length.Length) (out []length.Length) {
	for x := s.From.CeilTo(b.room.Tape); x <= s.To; x += apart {
		out = append(out, x)
	}
	return out
}

// mostPlaces bounds at how many places a free strip is tried, before those round the best.
const mostPlaces = 8
