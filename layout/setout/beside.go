package setout

import (
	"context"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/setout/parted"
	"coursewright/layout/setout/search"
	"coursewright/layout/setout/tell"
	"coursewright/layout/survey"
)

// A strip from base to head parts the field of its wall. Each side is set out as a
// wall of its own that stops at the strip, on the course line that all walls share,
// with whole tile next to the strip in every course, or in running bond in one of
// its classes. Then the sides are put together again as one wall.
//
// A free strip is tried at marks of its range on the line found for where it is
// wished, and so are the classes of a running bond. So a free strip, and one in a
// running bond, is never said to be proven.

// solveBeside is Solve for a room with such strips.
func solveBeside(ctx context.Context, room survey.Room) (survey.Room, plan.Setout, []plan.Wall, error) {
	var best *beside
	var got solved
	all := make([]solved, 0, len(room.Joints))
	for _, j := range room.Joints {
		with := room.Jointed(j)
		with.Joints = []length.Length{j}
		b := newBeside(ctx, with)
		s, err := b.solve()
		if err != nil {
			return room, plan.Setout{}, nil, err
		}
		if all = append(all, s); best == nil || s.setout.Better(&got.setout) {
			best, got = b, s
		}
	}
	setout, walls := best.together(got)
	if len(all) > 1 {
		for i, s := range all {
			setout.Joints = append(setout.Joints, jointOf(room, room.Joints[i], &s.setout, &got.setout))
		}
	}
	best.room.Joints = room.Joints
	told(&setout, best.room, walls)
	return best.room, setout, walls, ctx.Err()
}

// beside is a room whose walls are parted by strips.
type beside struct {
	ctx   context.Context
	room  survey.Room
	left  []map[int]length.Length // by wall and opening: the left edge of a parting strip's place
	class []int                   // by wall: the class of the bond that has a joint beside its strips
	head  []*length.Length        // by wall: where a free head stops on all of its sides
	free  bool                    // not all was tried with every line
}

// side is one part of a wall.
type side struct {
	wall     int
	openings []int // of the wall, by opening of the part
	n, of    int   // it is the nth of so many
}

type solved struct {
	room   survey.Room
	setout plan.Setout
	walls  []plan.Wall
}

func newBeside(ctx context.Context, room survey.Room) *beside {
	b := &beside{ctx: ctx, room: room, class: make([]int, len(room.Walls)), head: make([]*length.Length, len(room.Walls))}
	for _, w := range room.Walls {
		at := map[int]length.Length{}
		for _, k := range w.PartedBy() {
			at[k] = wished(w, w.Openings[k])
		}
		b.left = append(b.left, at)
	}
	return b
}

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
		w.Left, w.Name = survey.EndFound{Stops: survey.Span{From: from, To: from}, Beyond: -1}, w.Name+", right of "+o.Name
		delete(w.MarkPins, survey.EndLeft)
	}
	if n < len(by) {
		o := w.Openings[by[n]]
		to = b.left[wall][by[n]]
		w.Right = survey.EndFound{Stops: survey.Span{From: to, To: to}, Beyond: -1}
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
	w.Pin = b.pin(wall, by, n)
	w.Openings, w.Fixtures = nil, nil
	for k, o := range b.room.Walls[wall].Openings {
		if e := o.Reach(); !o.Parts() && e.Right > from && e.Left < to {
			w.Openings, s.openings = append(w.Openings, o), append(s.openings, k)
		}
	}
	return w, s
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
// those before it.
func (b *beside) pin(wall int, by []int, n int) *survey.StartPin {
	own := b.room.Walls[wall].Pin
	if n == 0 && own != nil {
		return own
	}
	edge, class := b.left[wall][by[0]]+b.room.Joint, b.class[wall]
	if own != nil {
		off := length.Mod(edge-own.Edge(b.room.Tile.Width, b.room.Joint), b.room.Tile.Width+b.room.Joint)
		for c := range b.classes() {
			if b.shift(c) == off {
				class = c
			}
		}
	}
	if n > 0 {
		edge = b.left[wall][by[n-1]] + b.room.Walls[wall].Openings[by[n-1]].Width.From
	}
	return &survey.StartPin{X: edge - b.shift(class), Is: survey.OnEdge}
}

// shift is how far the joints of a class stand to the right of those of course 0.
func (b *beside) shift(class int) length.Length {
	return b.room.Bond.Shift(class, survey.Left, b.room.Tile.Width+b.room.Joint)
}

// classes is how many classes of joints a level bond has; columns have one.
func (b *beside) classes() int {
	if b.room.Bond.Plumb {
		return 1
	}
	return int(max(1, b.room.Bond.Den))
}

// solve finds the places of free strips and the classes, and then the whole set-out.
func (b *beside) solve() (solved, error) {
	var on *found
	if b.choices() {
		got, err := b.first()
		if err != nil {
			return solved{}, err
		}
		on = &got
		for wall := range b.room.Walls {
			if err := b.choose(wall, got.line); err != nil {
				return solved{}, err
			}
		}
	}
	room, sides := b.parts()
	if on != nil {
		room.Line, room.Bond.Hand = &on.line, on.hand
		for i, s := range sides { // the other walls stay as they were found
			if s.of == 1 && room.Walls[i].Pin == nil {
				room.Walls[i].Pin = &survey.StartPin{X: on.edges[i], Is: survey.OnEdge}
			}
		}
	}
	var s solved
	var err error
	s.room, s.setout, s.walls, err = Solve(b.ctx, room)
	return s, err
}

// choices tells whether anything beside lines and starts is to be chosen.
func (b *beside) choices() bool {
	for _, w := range b.room.Walls {
		for _, k := range w.PartedBy() {
			if b.movable(w, k) {
				b.free = true
			}
			if !w.Head.Meets && w.Head.Stops.Free() || b.classes() > 1 && w.Pin == nil {
				b.free = true
			}
		}
	}
	return b.free
}

func (b *beside) movable(w survey.WallFound, k int) bool {
	_, pinned := w.MarkPins[w.Openings[k].Mark(survey.LeftEdge)]
	return w.Openings[k].Left.Free() && !pinned
}

// first is what is found for the strips where they are wished. Free heads stop where
// the widest side has them.
func (b *beside) first() (found, error) {
	room, sides := b.parts()
	got, err := b.search(&room)
	if err != nil {
		return found{}, err
	}
	widest := make([]length.Length, len(b.room.Walls))
	for i, s := range sides {
		w := b.room.Walls[s.wall]
		if s.of == 1 || w.Head.Meets || !w.Head.Stops.Free() {
			continue
		}
		if wide := b.wide(room.Walls[i]); wide > widest[s.wall] {
			widest[s.wall] = wide
			b.head[s.wall] = &got.heads[i]
		}
	}
	return got, nil
}

func (b *beside) wide(w survey.WallFound) length.Length {
	left, right := length.Length(0), w.Width
	if !w.Left.Meets {
		left = w.Left.Stops.From
	}
	if !w.Right.Meets {
		right = w.Right.Stops.To
	}
	return right - left
}

// found is a room of parts as it is set out: its course line, and by part where the
// bond starts and where a head stops.
type found struct {
	line  length.Length
	hand  survey.Hand
	merit merit.Merit
	edges []length.Length
	heads []length.Length
}

// search sets a room of parts out without cutting it.
func (b *beside) search(room *survey.Room) (found, error) {
	if len(room.Bands) == 0 {
		r, err := search.Room(b.ctx, room)
		if err != nil {
			return found{}, err
		}
		out := found{line: r.Line, hand: r.Hand, merit: r.Merit}
		for i := range r.Walls {
			out.edges, out.heads = append(out.edges, r.Walls[i].Edge), append(out.heads, r.Walls[i].Placed.Head)
		}
		return out, nil
	}
	r, err := parted.Room(b.ctx, room)
	if err != nil {
		return found{}, err
	}
	out := found{line: r.Field.Line, hand: r.Field.Hand, merit: r.Merit}
	for i := range room.Walls {
		out.edges, out.heads = append(out.edges, r.Field.Walls[i].Edge), append(out.heads, r.Placed(i).Head)
	}
	return out, nil
}

// choose takes the best place and class for the strips of one wall on a course line.
func (b *beside) choose(wall int, line length.Length) error {
	w := b.room.Walls[wall]
	for _, k := range w.PartedBy() {
		places := []length.Length{b.left[wall][k]}
		if b.movable(w, k) {
			places = b.places(wall, k)
		}
		classes := b.classes()
		if w.Pin != nil {
			classes = 1
		}
		if len(places)*classes == 1 {
			continue
		}
		wish := wished(w, w.Openings[k])
		order := merit.OrderFor(b.room.Prefer)
		var best merit.Merit
		var at length.Length
		class, any := 0, false
		for _, x := range places {
			for c := range classes {
				b.left[wall][k], b.class[wall] = x, c
				m, err := b.alone(wall, line)
				if err != nil {
					return err
				}
				if m.Near += (x - wish).Abs().FloorTo(b.room.Tape); !any || order.Better(&m, &best) {
					best, at, class, any = m, x, c, true
				}
			}
		}
		b.left[wall][k], b.class[wall] = at, class
	}
	return nil
}

// alone is what one wall gives on a course line.
func (b *beside) alone(wall int, line length.Length) (merit.Merit, error) {
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
	room.Line = &line
	got, err := b.search(&room)
	return got.merit, err
}

// places lists where a free strip is tried: where it is wished, and at marks of the
// tape all over its range. Where the wall's start is pinned it stands on its joints.
func (b *beside) places(wall, opening int) []length.Length {
	w := b.room.Walls[wall]
	span := w.Openings[opening].Left
	out := []length.Length{b.left[wall][opening]}
	if w.Pin != nil {
		pitch := b.room.Tile.Width + b.room.Joint
		joint := w.Pin.Edge(b.room.Tile.Width, b.room.Joint) - b.room.Joint
		for c := range b.classes() {
			for x := span.From + length.Mod(joint+b.shift(c)-span.From, pitch); x <= span.To && len(out) < mostPlaces; x += pitch {
				out = append(out, x)
			}
		}
		if len(out) > 1 {
			out = out[1:]
		}
		return out
	}
	step := max(b.room.Tape, ((span.To - span.From) / mostPlaces).CeilTo(b.room.Tape))
	for x := span.From.CeilTo(b.room.Tape); x <= span.To; x += step {
		out = append(out, x)
	}
	return out
}

// mostPlaces bounds at how many places a free strip is tried.
const mostPlaces = 12

// jointOf says what one joint of a range would give.
func jointOf(room survey.Room, size length.Length, s, best *plan.Setout) plan.Joint {
	f := plan.Figures{Least: s.Least.Size, Share: s.Least.Share, Slivers: s.Merit.Slivers, Unworkable: s.Merit.Unworkable, Bare: s.Merit.Bare}
	if s.Least.Piece == "" {
		f.Share = piece.Share{Num: 1, Den: 1}
	}
	_, f.Term = best.Order.Compare(&s.Merit, &best.Merit)
	f.Its, f.Chosen = tell.Figure(room.Units, f.Term, &s.Merit, &best.Merit), tell.Figure(room.Units, f.Term, &best.Merit, &s.Merit)
	return plan.Joint{Size: size, Line: s.Line, Figures: f}
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
