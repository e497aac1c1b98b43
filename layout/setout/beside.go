package setout

import (
	"context"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/setout/count"
	"coursewright/layout/setout/parted"
	"coursewright/layout/setout/search"
	"coursewright/layout/setout/tell"
	"coursewright/layout/survey"
)

// A strip from base to head parts the field of its wall. Each side is set out as a
// wall of its own that stops at the strip, on the course line that all walls share,
// with whole tile next to the strip in every course, or in running bond in one of
// its classes, unless a cut there is better (cutbeside.go). Then the sides are put together again as one wall.
//
// The search for a line takes the class of one wall with it, and the free head of a wall
// where all of its parts would have the same; so a measured strip is proven as anything is. A
// free strip is tried at marks of its range on the line found for where it is wished, and so
// are the classes of a second wall. These are never said to be proven.

// solveBeside is Solve for a room with such strips.
func solveBeside(ctx context.Context, room survey.Room, of telling, kept *count.Kept) (survey.Room, plan.Setout, []plan.Wall, error) {
	found, err := setBeside(ctx, room, of, kept)
	if err != nil {
		return room, plan.Setout{}, nil, err
	}
	room, s, walls := found.cut()
	return room, s, walls, ctx.Err()
}

// setBeside finds the set-out of a room with such strips. Its walls are cut when they are asked for.
func setBeside(ctx context.Context, room survey.Room, of telling, kept *count.Kept) (uncut, error) {
	var best *beside
	var got solved
	all := make([]solved, 0, len(room.Joints))
	for _, j := range room.Joints {
		with := room.Jointed(j)
		with.Joints = []length.Length{j}
		b := newBeside(ctx, with, of, kept)
		s, err := b.solve()
		if err == nil && !b.free {
			b, s, err = b.orCut(s)
		}
		if err != nil {
			return uncut{}, err
		}
		if all = append(all, s); best == nil || s.setout.Better(&got.setout) {
			best, got = b, s
		}
	}
	if best.free && best.whole == nil { // which no joint is proven to be best for: the cuts are tried with the best of them
		var err error
		if best, got, err = best.orCut(got); err != nil {
			return uncut{}, err
		}
	}
	if best.free {
		got.setout.Proven, got.setout.Bound = false, "A strip was tried in its places, and the courses with a joint beside it, with one course line only. Measure the strip"+best.freeHead()+", pin the start, and all is tried."
	}
	return uncut{got, best, room.Joints, all}, ctx.Err()
}

// uncut is a room of parts that is set out, with what was found with each of its joints.
type uncut struct {
	solved
	beside *beside
	joints []length.Length
	with   []solved
}

// cut is the room put together again, with all that is told of it.
func (u *uncut) cut() (survey.Room, plan.Setout, []plan.Wall) {
	b := u.beside
	setout, walls := b.together(u.solved)
	if len(u.with) > 1 {
		for i, s := range u.with {
			setout.Joints = append(setout.Joints, jointOf(b.room, u.joints[i], &s.setout, &u.setout))
		}
	}
	room := b.room
	room.Joints = u.joints
	told(&setout, room, walls, b.of)
	return room, setout, walls
}

// beside is a room whose walls are parted by strips.
type beside struct {
	ctx   context.Context
	room  survey.Room
	left  []map[int]length.Length // by wall and opening: the left edge of a parting strip's place
	class []int                   // by wall: the class of the bond that has a joint beside its strips
	head  []*length.Length        // by wall: where a free head stops on all of its sides
	free  bool                    // not all was tried with every line
	cut   [][]bool                // by wall and part: its tile may be cut beside its strips
	whole *merit.Merit            // what whole tile beside all strips would give, where some is cut
	work  int                     // for one search
	of    telling
	kept  *count.Kept // walls of rooms before this one; nil where all is told of them

	chosen []*search.Result // by wall: its parts set out with the places chosen
}

// solved is a room that is set out. Of one of parts the walls are there once they are laid.
type solved struct {
	room   survey.Room
	setout plan.Setout
	walls  []plan.Wall
	own    []merit.Merit // of each part
	found  *found        // of parts
}

func newBeside(ctx context.Context, room survey.Room, of telling, kept *count.Kept) *beside {
	b := &beside{ctx: ctx, room: room, of: of, kept: kept, work: search.Work, class: make([]int, len(room.Walls)), head: make([]*length.Length, len(room.Walls)), chosen: make([]*search.Result, len(room.Walls))}
	for _, w := range room.Walls {
		at := map[int]length.Length{}
		for _, k := range w.PartedBy() {
			at[k] = wished(w, w.Openings[k])
		}
		b.left, b.cut = append(b.left, at), append(b.cut, make([]bool, len(at)+1))
	}
	return b
}

// solve finds the whole set-out.
func (b *beside) solve() (solved, error) {
	any, more := b.choices()
	if !any {
		room, _ := b.parts()
		return b.ofParts(room)
	}
	on, err := b.first()
	if err != nil {
		return solved{}, err
	}
	if !more && on.level {
		room, _ := b.parts()
		return b.asFound(room, &on), nil
	}
	b.free = true
	for wall := range b.room.Walls {
		if err := b.choose(wall, &on); err != nil {
			return solved{}, err
		}
	}
	room, sides := b.parts()
	room.Line, room.Bond.Hand = &on.line, on.hand
	if on.result != nil {
		return b.asFound(room, &found{result: b.chosenOf(&room, sides, on.result)}), nil
	}
	for i, s := range sides { // the other walls stay as they were found
		if s.of == 1 && room.Walls[i].Pin == nil {
			room.Walls[i].Pin = &survey.StartPin{X: on.edges[i], Is: survey.OnEdge}
		}
	}
	return b.ofParts(room)
}

// ofParts is a room of parts set out.
func (b *beside) ofParts(room survey.Room) (solved, error) {
	on, err := b.search(&room)
	if err != nil {
		return solved{}, err
	}
	return b.asFound(room, &on), nil
}

// asFound is a room of parts as it was set out.
func (b *beside) asFound(room survey.Room, on *found) solved {
	if on.bands != nil {
		return solved{room: room, setout: saidParted(room, on.bands), own: ownOf(&on.bands.Field), found: on}
	}
	return solved{room: room, setout: said(&room, on.result), own: ownOf(on.result), found: on}
}

// lay cuts the walls of a room of parts.
func (b *beside) lay(s *solved) {
	if on := s.found; on.bands != nil {
		s.walls = laidParted(s.room, on.bands, b.of, &s.setout)
	} else {
		s.walls = laid(s.room, on.result, b.of, &s.setout)
	}
}

// ownOf is what each wall gives by itself.
func ownOf(r *search.Result) (out []merit.Merit) {
	for i := range r.Walls {
		out = append(out, r.Walls[i].Merit)
	}
	return out
}

// chosenOf is what was found for the line, with the parts of walls whose strips have been
// placed since as they were found with them.
func (b *beside) chosenOf(room *survey.Room, sides []side, r *search.Result) *search.Result {
	taken := map[int]search.Taken{}
	for wall, chosen := range b.chosen {
		if chosen == nil {
			continue
		}
		n := 0
		for i, s := range sides {
			if s.wall == wall {
				taken[i] = search.Taken{From: chosen, Wall: n}
				n++
			}
		}
	}
	return r.With(room, taken)
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
	got.level = true
	for i, s := range sides {
		got.level = got.level && (b.head[s.wall] == nil || got.heads[i] == *b.head[s.wall])
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

	level  bool           // the parts of every wall have one head
	result *search.Result // of a room without bands
	bands  *parted.Result // of one with bands
}

// search sets a room of parts out without cutting it. Its walls are there for the next room: what is asked of the result
// changes nothing in them.
func (b *beside) search(room *survey.Room) (found, error) {
	f, err := b.searchAgainst(room, b.kept, nil)
	if err != nil {
		return found{}, err
	}
	if f.result != nil {
		f.result.Keep(b.kept)
	}
	return *f, nil
}

// searchAgainst is search with walls that are prepared; nil where that is sure to be worse than the rival.
func (b *beside) searchAgainst(room *survey.Room, prepared *count.Kept, rival *merit.Merit) (*found, error) {
	if len(room.Bands) == 0 {
		r, err := search.Against(b.ctx, room, b.work, prepared, rival)
		if err != nil || r == nil {
			return nil, err
		}
		out := found{line: r.Line, hand: r.Hand, merit: r.Merit, result: r}
		for i := range r.Walls {
			out.edges, out.heads = append(out.edges, r.Walls[i].Edge), append(out.heads, r.Walls[i].Placed.Head)
		}
		return &out, nil
	}
	r, err := parted.Room(b.ctx, room)
	if err != nil {
		return nil, err
	}
	out := found{line: r.Field.Line, hand: r.Field.Hand, merit: r.Merit, bands: &r}
	for i := range room.Walls {
		out.edges, out.heads = append(out.edges, r.Field.Walls[i].Edge), append(out.heads, r.Placed(i).Head)
	}
	return &out, nil
}

// jointOf says what one joint of a range would give.
func jointOf(room survey.Room, size length.Length, s, best *plan.Setout) plan.Joint {
	f := plan.Figures{Least: s.Least.Size, Share: s.Least.Share, Slivers: s.Merit.Slivers, Unworkable: s.Merit.Unworkable, Bare: s.Merit.Bare}
	if s.Least.Piece == "" {
		f.Share = piece.Share{Num: 1, Den: 1}
	}
	tell.Against(&f, room.Units, best.Order, &s.Merit, &best.Merit)
	return plan.Joint{Size: size, Line: s.Line, Figures: f}
}
