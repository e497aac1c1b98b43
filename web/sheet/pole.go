package sheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/web/drawing"
)

// notch is one place on the story pole.
type notch struct {
	at     length.Length
	name   string
	colour drawing.Colour
}

// pole is the story pole: the tiles of one column and everything that stands
// at a height in the room.
type pole struct {
	tiles    []stood
	marks    []notch
	low, top length.Length
}

// stood is one tile on the pole.
type stood struct {
	course      int
	bottom, top length.Length
}

// pole collects the heights. In a plumb bond it is that of the column at the start.
func (b *book) pole() pole {
	p := pole{marks: []notch{{0, "LEVEL LINE", drawing.Red}, {b.plan.Setout.Line, "course line", drawing.Blue}}}
	p.low, p.top = min(0, b.plan.Setout.Line), max(0, b.plan.Setout.Line)
	for _, w := range b.plan.Walls {
		r := w.Shape.Region.Bounds()
		p.low, p.top = min(p.low, r.Bottom), max(p.top, r.Top)
		p.marks = append(p.marks, b.wallMarks(w)...)
	}
	slices.SortStableFunc(p.marks, func(a, b notch) int { return cmp.Compare(a.at, b.at) })
	p.low, p.top = min(p.low, p.marks[0].at), max(p.top, p.marks[len(p.marks)-1].at)
	p.marks = slices.CompactFunc(p.marks, func(a, b notch) bool { return a == b })
	p.tiles = b.column(p.low, p.top)
	if len(p.tiles) > 0 {
		p.low, p.top = min(p.low, p.tiles[0].bottom), max(p.top, p.tiles[len(p.tiles)-1].top)
	}
	return p
}

// column gives the tiles over each other that reach between two heights, with
// the numbers of their courses.
func (b *book) column(low, top length.Length) []stood {
	tile, pitch := b.plan.Room.Tile.Height, b.plan.Room.Tile.Height+b.plan.Room.Joint
	row := int(length.DivFloor(low-b.plan.Setout.Line+b.plan.Room.Joint, pitch))
	first := b.firstRow(row)
	var out []stood
	for ; ; row++ {
		bottom := b.plan.Setout.Line + length.Length(row)*pitch
		if bottom >= top {
			return out
		}
		if row >= first {
			out = append(out, stood{row - first + 1, bottom, bottom + tile})
		}
	}
}

// firstRow is the row of course 1, counted from the course line. Columns of a
// plumb bond have none, so there the lowest tile is 1.
func (b *book) firstRow(lowest int) int {
	for _, w := range b.plan.Walls {
		if len(w.Pieces) > 0 && !b.plan.Room.Bond.Plumb {
			return w.Pieces[0].Row - w.Pieces[0].Course + 1
		}
	}
	return lowest
}

// wallMarks are the heights of one wall: base and ceiling at both ends, where
// tile stops, openings.
func (b *book) wallMarks(w layout.Wall) []notch {
	var out []notch
	add := func(at length.Length, name string) {
		out = append(out, notch{at, w.Found.Letter + " " + name, drawing.Black})
	}
	for _, s := range w.Found.Base {
		name := strings.TrimPrefix(string(s.Meets), "shower ")
		add(s.Readings[0].Value, name+" left")
		add(s.Readings[len(s.Readings)-1].Value, name+" right")
	}
	if w.Found.Head.Meets {
		n := len(w.Found.Head.Readings)
		add(w.Found.Head.Readings[0].Value, "ceiling left")
		add(w.Found.Head.Readings[n-1].Value, "ceiling right")
	} else {
		add(w.Start.Placed.Head, "top of the tile")
	}
	for i, o := range w.Found.Openings {
		if o.Kind == "pipe" {
			add(o.Up, o.Name)
			continue
		}
		add(w.Start.Placed.Openings[i].Bottom, o.Name+" bottom")
		add(w.Start.Placed.Openings[i].Top, o.Name+" top")
	}
	return out
}

// storyPole prints the pole at full size in strips, then as a list.
func (b *book) storyPole() {
	p := b.pole()
	b.strips(p)
	f := b.flow(subject{title: "Story pole, list of heights"}, false)
	f.words(body, "For a stick of your own: mark the level line on it first, then everything up and down from there.")
	f.table(b.heightList(p))
}

func (b *book) heightList(p pole) table {
	t := table{columns: []column{{name: "what", share: 70, bold: true}, {name: "from the level line", share: 40, right: true}, {name: "from the foot of the pole", share: 40, right: true}}}
	all := slices.Clone(p.marks)
	for _, u := range p.tiles {
		all = append(all, notch{u.bottom, fmt.Sprintf("bottom of course %d", u.course), drawing.Black})
	}
	slices.SortStableFunc(all, func(a, b notch) int { return cmp.Compare(b.at, a.at) })
	for _, m := range all {
		t.rows = append(t.rows, row{cells: []string{m.name, b.signed(m.at), b.tape(m.at - p.low)}})
	}
	return t
}
