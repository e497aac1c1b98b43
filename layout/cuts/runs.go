package cuts

import (
	"fmt"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/survey"
)

// level tells whether a boundary is a base or a head.
func level(b survey.Boundary) bool {
	return b.Part.Is == survey.BaseSegment || b.Part.Is == survey.HeadEdge
}

// goes names the boundary by which a piece is looked for: an opening before the base or
// head, those before the front of a tub or a seat, and that before an end.
func (w work) goes() string {
	name, first := "", 0
	for _, on := range w.piece.Cuts {
		if int(on) <= 0 || int(on) >= len(w.wall.Shape.Sides) {
			continue
		}
		side, rank, called := w.wall.Shape.Sides[on], 1, w.wall.Shape.Sides[on].Name
		switch {
		case side.Part.Is == survey.OpeningEdge:
			if o := w.wall.Found.Openings[side.Part.N]; o.Doorway {
				return o.Called()
			}
			return side.Name
		case w.piece.AtStep(on, w.wall.Shape.Sides):
			rank, called = 2, side.Front()
		case level(side):
			if rank = 3; side.Part.Is == survey.BaseSegment && w.stepped() {
				called = "the " + string(side.Kind)
			}
		}
		if rank > first {
			name, first = called, rank
		}
	}
	return name
}

// stepped tells whether the wall stands on more than one kind of base.
func (w work) stepped() bool {
	base := w.wall.Found.Base
	return slices.ContainsFunc(base, func(s survey.SegmentFound) bool { return s.Meets != base[0].Meets })
}

// run is pieces beside or over each other that are cut to the same boundary.
type run struct {
	pieces []work
	side   survey.PartIs // zero for a piece by itself
	hides  length.Length
}

// runs parts the pieces into runs, in the order of their first pieces.
func (b batcher) runs(cut []work) []run {
	var all []run
	index := map[string]int{}
	for _, w := range cut {
		side, key, hides := b.along(w)
		if i, known := index[key]; known && side != 0 {
			all[i].pieces = append(all[i].pieces, w)
			continue
		}
		index[key] = len(all)
		all = append(all, run{pieces: []work{w}, side: side, hides: hides})
	}
	return all
}

// along tells to which run a piece belongs, and what of a difference is hidden
// there: by the tile that laps over it, or by sealant. Side is empty for a
// piece of no run. Corner pieces of the base and the head belong to their runs.
func (b batcher) along(w work) (side survey.PartIs, key string, hides length.Length) {
	if w.piece.Kind&(piece.Notch|piece.Hole) != 0 || w.unworkable() || w.own != nil {
		return 0, w.piece.ID, 0
	}
	cut := w.boundaries()
	end := func(s survey.Boundary) bool { return s.Part.Is == survey.LeftEnd || s.Part.Is == survey.RightEnd }
	for _, s := range cut {
		switch {
		case !s.Meets && end(s) && slices.ContainsFunc(cut, level):
			continue // a plain edge at the end of the run
		case !s.Meets:
			return 0, w.piece.ID, 0
		case side == 0 || level(s):
			side = s.Part.Is
		}
	}
	if side == 0 {
		return 0, w.piece.ID, 0
	}
	hides = b.room.Sealant
	place := w.piece.Tile.Left
	switch side {
	case survey.LeftEnd:
		hides = max(hides, w.wall.Found.Left.Cover)
	case survey.RightEnd:
		hides = max(hides, w.wall.Found.Right.Cover)
	default:
		place = w.piece.Tile.Bottom
	}
	return side, fmt.Sprint(w.wall.Found.Letter, " ", w.wall.Found.Name, " ", side, " ", int64(place)), hides
}

// settings parts a run into lines: equal settings where few are enough, then
// settings within near, then one line whose pieces are measured one by one.
func (b batcher) settings(r run) []lot {
	equal := b.equal(r.pieces)
	if r.side == 0 || len(equal) == 1 {
		return equal
	}
	if r.side == survey.LeftEnd || r.side == survey.RightEnd {
		return b.ends(r, equal)
	}
	if len(equal) <= mostLines && tapers(equal) <= 1 {
		return equal
	}
	how := FirstCourse
	if r.side == survey.HeadEdge {
		how = InPlace
	}
	return []lot{b.single(r, how)}
}

// tapers counts the lines with two heights.
func tapers(lots []lot) (n int) {
	for _, l := range lots {
		if tall, _ := l.group.Size.Tapers(); tall {
			n++
		}
	}
	return n
}

// ends are the lines of a run into a corner.
func (b batcher) ends(r run, equal []lot) []lot {
	if slices.ContainsFunc(r.pieces, func(w work) bool { return len(w.piece.Cuts) > 1 }) {
		return equal
	}
	low, high := b.reach(r.pieces)
	switch {
	case high-low <= b.near:
		return []lot{b.batch(r.pieces)}
	case high-low <= r.hides:
		return []lot{b.single(r, InPlace)}
	}
	var out []lot
	rest := slices.Clone(r.pieces)
	slices.SortStableFunc(rest, func(a, c work) int { return int(a.narrow() - c.narrow()) })
	for len(rest) > 0 {
		n := 1
		for ; n < len(rest); n++ {
			if low, high := b.reach(rest[:n+1]); high-low > b.near {
				break
			}
		}
		out = append(out, b.batch(rest[:n]))
		rest = rest[n:]
	}
	if len(out) > mostLines {
		return []lot{b.single(r, InPlace)}
	}
	return out
}

// narrow is the least width a piece cut into a corner has over its height.
func (w work) narrow() length.Length {
	_, _, bottom, top := w.sides()
	if bottom == 0 || top == 0 {
		return w.box.Width()
	}
	return min(bottom, top)
}

// reach is between which widths the pieces of a run lie.
func (b batcher) reach(pieces []work) (low, high length.Length) {
	low = pieces[0].narrow()
	for _, w := range pieces {
		low, high = min(low, w.narrow()), max(high, w.box.Width())
	}
	return low, high
}

// batch is one setting for pieces that are nearly alike: that of the narrowest,
// cut straight.
func (b batcher) batch(pieces []work) lot {
	low, high := b.reach(pieces)
	wide, tall := low.FloorTo(b.step), pieces[0].box.Height()
	for _, w := range pieces {
		tall = min(tall, w.box.Height())
	}
	g := Group{Kind: pieces[0].narrowing(), Size: straightSize(wide, tall.FloorTo(b.step)), Spread: b.spread(high - low), Hides: true}
	return lot{key: b.plainKey(g, pieces[0]), group: g, pieces: pieces}
}

// spread is a difference that the schedule states: nothing under its step.
func (b batcher) spread(l length.Length) length.Length {
	if l < b.step {
		return 0
	}
	return l
}

// single is one line for a whole run whose pieces are measured one by one.
func (b batcher) single(r run, how How) lot {
	low, high := b.reach(r.pieces)
	g := Group{How: how, Kind: r.pieces[0].narrowing()}
	wide, tall := low, r.pieces[0].short()
	tallest := tall
	for _, w := range r.pieces {
		tall, tallest = min(tall, w.short()), max(tallest, w.box.Height())
	}
	if r.side == survey.BaseSegment || r.side == survey.HeadEdge {
		g.Kind = r.pieces[0].lowering()
		low, high = tall, tallest
	}
	g.Size = straightSize(wide.FloorTo(b.step), tall.FloorTo(b.step))
	g.Spread, g.Hides = high.FloorTo(b.step)-low.FloorTo(b.step), high-low <= r.hides // to the largest as it is written
	return lot{key: fmt.Sprint(how, r.side, r.pieces[0].piece.ID), group: g, pieces: r.pieces}
}

// short is the least height a piece cut to a base or a head has over its width.
func (w work) short() length.Length {
	left, right, _, _ := w.sides()
	if left == 0 || right == 0 {
		return w.box.Height()
	}
	return min(left, right)
}
