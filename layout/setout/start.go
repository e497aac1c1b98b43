package setout

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/survey"
)

// choice is one way to set out one wall: where a tile of course 0 begins, and
// where the free marks stand.
type choice struct {
	edge   length.Length
	placed survey.Placed
	merit  Merit
}

// weigh finds the merit of one start with the best free marks.
func (f *field) weigh(line, edge length.Length, heads []headed) (best choice) {
	found := false
	f.eachEnds(line, edge, heads, func(p survey.Placed, heads []headed) {
		if c := f.weighAt(line, edge, heads, p); !found || c.merit.Better(best.merit) {
			best, found = c, true
		}
	})
	return best
}

// eachEnds goes through the places where the wall's free ends may stand.
func (f *field) eachEnds(line, edge length.Length, heads []headed, each func(p survey.Placed, heads []headed)) {
	for _, l := range f.ends(f.found.Left, edge, false) {
		for _, r := range f.ends(f.found.Right, edge, true) {
			p := f.placed
			p.Left, p.Right = l, r
			if f.plumb && (f.found.Left.Stops.Free() || f.found.Right.Stops.Free()) {
				heads = f.recompiled(line, edge, heads, p)
			}
			each(p, heads)
		}
	}
}

// recompiled cuts the wall into columns again with its ends elsewhere: an end
// lies along the columns.
func (f *field) recompiled(line, edge length.Length, heads []headed, p survey.Placed) []headed {
	across, _ := f.frame(line, edge)
	out := make([]headed, len(heads))
	for i, h := range heads {
		p.Head = h.head
		shape := f.shapeWith(p)
		out[i] = f.headAt(h.head, f.compile(across, shape), shape, h.open)
	}
	return out
}

// headed is the wall compiled with its head at one place, for one phase across.
type headed struct {
	head length.Length
	*compiled
	shape  survey.Shape
	open   bool  // the head takes no course away: it meets a ceiling, or the rows run upwards
	sure   []int // by class: how many of its rows no free opening can touch
	beside []int // by class: how many it can
}

// headAt is the wall's rows with the head at one place.
func (f *field) headAt(head length.Length, rows *compiled, shape survey.Shape, open bool) headed {
	h := headed{head, rows, shape, open, make([]int, len(rows.classes)), make([]int, len(rows.classes))}
	for _, c := range rows.courses {
		switch {
		case !h.has(c):
		case f.openingMayTake(c):
			h.beside[c.class]++
		default:
			h.sure[c.class]++
		}
	}
	return h
}

// has tells whether a course stands under the head. A head off the joint lines
// has rows of its own.
func (h headed) has(c course) bool { return h.open || c.low < h.head }

// weighAt weighs a start with the ends where they are, its rows counted once
// for all the places of the head that share them.
func (f *field) weighAt(line, edge length.Length, heads []headed, p survey.Placed) (best choice) {
	_, along := f.frame(line, edge)
	whole := f.limitsOf(p)
	var rows *compiled
	var tallies []piece.Tally
	for i, h := range heads {
		if h.compiled != rows {
			rows = h.compiled
			tallies = f.tallies(rows, along, whole)
		}
		p.Head = h.head
		if c := f.sum(line, edge, along, h, p, whole, tallies); i == 0 || c.merit.Better(best.merit) {
			best = c
		}
	}
	return best
}

// tallies counts the rows of every class.
func (f *field) tallies(rows *compiled, along length.Length, whole part) []piece.Tally {
	out := make([]piece.Tally, len(rows.classes))
	for i := range rows.classes {
		out[i] = f.tally(&rows.classes[i], along, whole)
	}
	return out
}

// sum weighs a start with every mark but those of free openings where it is.
func (f *field) sum(line, edge, along length.Length, h headed, p survey.Placed, whole part, tallies []piece.Tally) choice {
	inside := make([]int, len(h.courses)) // which free opening's range a course is in, plus one
	total := piece.NewTally()
	total.Bare = h.beds
	if len(f.free) > 0 {
		p.Openings = append([]survey.Edges(nil), p.Openings...)
		for _, i := range f.free {
			f.open(i, line, edge, along, h, whole, tallies, inside, &p, &total)
		}
	}
	for i, c := range h.courses {
		if inside[i] == 0 && h.has(c) {
			total.Plus(tallies[c.class])
		}
	}
	return choice{edge, p, meritOf(total, f.offLine(line, edge, p), f.find(edge, p), f.room.Tile.Width)}
}

// limitsOf is the part of every row between the wall's free ends.
func (f *field) limitsOf(p survey.Placed) part {
	w := part{-beyond, beyond, survey.SideLeft, survey.SideRight}
	if f.plumb {
		return w
	}
	if !f.found.Left.Meets {
		w.from = p.Left
	}
	if !f.found.Right.Meets {
		w.to = p.Right
	}
	return w
}

const beyond = 50 * length.Metre

// find tells how hard a start is to find again: 0 on the wall's centre, 1 with
// a full tile at an end, 2 anywhere else.
func (f *field) find(edge length.Length, p survey.Placed) int {
	tile, pitch := f.room.Tile.Width, f.room.Tile.Width+f.room.Joint
	if f.pinned() {
		return 0
	}
	for _, c := range f.classics(p) {
		if length.Mod(edge-c.edge(tile, f.room.Joint), pitch) == 0 {
			return c.rank
		}
	}
	return 2
}

func (f *field) pinned() bool { return f.found.Pin != nil }

// classic is a start people know by name.
type classic struct {
	name   string
	x      length.Length
	onTile bool
	rank   int
}

// edge is the left edge of a tile of course 0 when a joint, or a tile, stands at x.
func (c classic) edge(tile, joint length.Length) length.Length {
	return edgeAt(c.x, c.onTile, tile, joint)
}

func edgeAt(x length.Length, onTile bool, tile, joint length.Length) length.Length {
	if onTile {
		return x - tile.Half()
	}
	return x + joint.Half()
}

// classics are the starts of the trade: joint or tile on the wall's centre, or
// a full tile at an end. At a leaning end the full tile stands where the wall
// is widest and the rest are cut to follow.
func (f *field) classics(p survey.Placed) []classic {
	tile := f.room.Tile.Width
	box := f.shape.Solid.Bounds()
	if !f.found.Left.Meets {
		box.Left = p.Left
	}
	if !f.found.Right.Meets {
		box.Right = p.Right
	}
	centre := f.found.Width.Half()
	return []classic{
		{"joint on centre", centre, false, 0},
		{"tile on centre", centre, true, 0},
		{"full tile at left", box.Left + tile.Half(), true, 1},
		{"full tile at right", box.Right - tile + tile.Half(), true, 1},
	}
}
