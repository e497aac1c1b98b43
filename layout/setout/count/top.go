package count

import (
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/survey"
)

// Top judges what is laid on a wall that stops at a height, where the wall's bond goes on
// upon it: a flat wall of its own, whose front row is whole unless that leaves something poor at its back. It hangs on the wall's start,
// on where its ends stand, and on which course its first row is.
type Top struct {
	room  survey.Room // laid as the top is
	found survey.WallFound
	hand  survey.Hand
	order merit.Order
	walls map[[3]length.Length]flatTop
	known map[topKey]OnTop
}

type flatTop struct {
	wall   *Wall
	begins length.Length // where on the wall its x begins
}

type topKey struct {
	at    [3]length.Length
	edge  length.Length
	class int
}

// OnTop is what a set-out of the wall gives on its top.
type OnTop struct {
	Merit merit.Merit
	Skip  int           // how many courses of the bond are passed over before its first row
	Front length.Length // what is cut off its front row
}

// NewTop is the top of a wall on which the wall's bond goes on in rows; nil where there is
// none, or where it is laid in a bond of its own.
func NewTop(room *survey.Room, found survey.WallFound, hand survey.Hand) *Top {
	if !found.Head.Top.GoesOn() || !room.Bond.Coursed() {
		return nil
	}
	t := &Top{room: *room, found: WithPins(found), hand: hand, order: merit.OrderFor(room.Prefer), walls: map[[3]length.Length]flatTop{}, known: map[topKey]OnTop{}}
	if t.room.Bond.Plumb {
		t.room.Bond = survey.BondRule{Kind: survey.Stack, Den: 1}
	}
	return t
}

// rows is after how many rows the joints stand as before.
func (t *Top) rows() int { return int(max(1, t.room.Bond.Den)) }

// At is what the top gives with the wall set out so. Its first row is the course after the
// highest one of the wall. Where that leaves something poor in sight (terms 1 to 4) it is
// the one of the courses after it that leaves least of that.
func (t *Top) At(s Setting) OnTop {
	high := t.room.Tile.Height + t.room.Joint
	next := int(length.Mod(length.Length(length.DivFloor(s.Placed.Head-1-s.Line, high)+1), length.Length(t.rows())))
	return t.from(s, next)
}

// Best is what the top gives at best with a start, whichever course its first row is.
func (t *Top) Best(s Setting) (best merit.Merit) {
	for class := range t.rows() {
		if on := t.from(s, class); class == 0 || t.order.Better(&on.Merit, &best) {
			best = on.Merit
		}
	}
	return best
}

// from is what the top gives where the course after the highest is of a class.
func (t *Top) from(s Setting, class int) OnTop {
	at := [3]length.Length{s.Placed.Left, s.Placed.Right, s.Placed.Head}
	key := topKey{at, s.Edge, class}
	if on, there := t.known[key]; there {
		return on
	}
	if len(t.known) >= mostTops {
		clear(t.known)
		clear(t.walls)
	}
	flat := t.flat(at, s.Placed)
	wide := t.room.Tile.Width + t.room.Joint
	var best OnTop
	for i, front := range flat.wall.fronts(t.found.Head.Top) {
		if order, _ := t.order.Until(&merit.Merit{}, &best.Merit, merit.Exposed); i > 0 && order == 0 {
			break
		}
		for skip := range t.rows() {
			start := Setting{Line: flat.wall.Box().Bottom - front, Edge: s.Edge + t.room.Bond.Shift(class+skip, t.hand, wide) - flat.begins, Placed: flat.wall.Outer()}
			m := flat.wall.Count(start).Merit
			m.Rim, m.Head, m.Find = nil, nil, 0 // its front is seen from above, and its start is the wall's
			if m.Bare > 0 && t.found.Head.Top.Open() {
				m.Bare = flat.bare(start)
			}
			if order, _ := t.order.Until(&m, &best.Merit, merit.Exposed); i+skip == 0 || order < 0 {
				best = OnTop{m, skip, front}
			}
		}
	}
	t.known[key] = best
	return best
}

// fronts are what may be cut off the front row of a flat wall that lies as a top: nothing, or what leaves as much of it as of the last row,
// where the edge does not show that it is cut.
func (w *Wall) fronts(top *survey.TopFound) []length.Length {
	if top == nil || !top.HidesCuts() {
		return []length.Length{0}
	}
	tile, box := w.facts.room.Tile.Height, w.Box()
	deep := box.Top - box.Bottom - (top.Left - top.Right).Abs()
	last := length.Mod(deep, tile+w.facts.room.Joint)
	if last >= tile || deep < tile {
		return []length.Length{0}
	}
	return []length.Length{0, (tile - last).Half()}
}

// bare is how much stays bare along the ends of a top that is open at its back, where
// nothing is sealed.
func (f flatTop) bare(s Setting) (sum length.Length) {
	_, _, gaps := f.wall.Cut(s)
	for _, gap := range gaps {
		if gap.Edge.Across() {
			sum += gap.Length
		}
	}
	return sum
}

// mostTops bounds how many set-outs of a top are kept.
const mostTops = 4096

func (t *Top) flat(at [3]length.Length, p survey.Placed) flatTop {
	f, there := t.walls[at]
	if !there {
		found, begins := t.found.FlatTop(t.room, p)
		f = flatTop{NewWall(&t.room, found, t.hand), begins}
		t.walls[at] = f
	}
	return f
}

// least is what no set-out with a start can beat on the top; nothing is sure where the
// ends of its wall or its head may stand elsewhere, or where there is none.
func (t *Top) least(edge length.Length) merit.Merit {
	if t == nil {
		return merit.Merit{}
	}
	w := t.found
	for _, e := range [...]survey.EndFound{w.Left, w.Right, {Stops: w.Head.Stops}} {
		if !e.Meets && e.Stops.Free() {
			return merit.Merit{}
		}
	}
	return t.Best(Setting{Edge: edge, Placed: survey.Placed{Left: w.Left.Stops.From, Right: w.Right.Stops.From, Head: w.Head.Stops.From}})
}

// BestOnTop is how a wall that lies as a top is begun best by the order of merit: the left edge of a tile of its front row, and what is cut
// off that.
func BestOnTop(room *survey.Room, found survey.WallFound, top *survey.TopFound, hand survey.Hand) (edge, front length.Length) {
	w := NewWall(room, found, hand)
	order := merit.OrderFor(room.Prefer)
	var best Counted
	for i, cut := range w.fronts(top) {
		if c, _ := order.Until(&merit.Merit{}, &best.Merit, merit.Exposed); i > 0 && c == 0 {
			break
		}
		found := w.bestFrom(w.Box().Bottom - cut)
		if c, _ := order.Until(&found.Merit, &best.Merit, merit.Exposed); i == 0 || c < 0 {
			best, front = found, cut
		}
	}
	return best.Edge, front
}

// bestFrom is the best start of a wall that stands as measured, on a line.
func (w *Wall) bestFrom(line length.Length) (best Counted) {
	for i, edge := range w.Starts.Tried() {
		c := w.Count(Setting{Line: line, Edge: edge, Placed: w.Outer()})
		if i == 0 || w.facts.order.Better(&c.Merit, &best.Merit) {
			best = c
		}
	}
	return best
}
