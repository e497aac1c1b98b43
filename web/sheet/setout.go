package sheet

import (
	"strconv"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
)

// setOut makes the sheet by which the marks are put on the wall, in the order
// in which one does it, and the wrap as an overview.
func (b *book) setOut() {
	f := b.flow(subject{title: "Set-out sheet"}, false)
	lo, hi := f.area()
	key := drawing.KeyPlan(b.plan, -1)
	f.lay(drawing.Point{X: hi.X - key.Width, Y: lo.Y}, key)
	f.words(plain, "In the order one does it, with laser, plumb line and pencil.")
	f.y = max(f.y, lo.Y+key.Height)
	f.step("1", "Throw the level line round the room.", "It is height ±0. Check it against the base at both ends of every wall; "+
		"if one differs by more than "+b.tape(b.plan.Room.Doubt)+", measure the room again before going on.")
	f.table(b.levels())
	f.step("2", "Draw the course line, "+b.over(b.plan.Setout.Line)+" the level line.",
		"It is the bottom edge of one course on all the walls. Strike it right round, then measure it over the base as in the table.")
	f.step("3", "Drop a plumb line at the start of each wall.", "")
	f.table(b.starts())
	f.step("4", "Mark where tile ends and where the openings stand.", "")
	f.table(b.marks())
	f.step("5", "Check with real tiles.", "Lay ten tiles with their joints in a row: they take "+b.tape(b.run(10))+
		". Hold the story pole to the level line at each corner. Set the first tile of each wall on the course line, on a batten where the line is over the base.")
	f.cautions()
	b.wrap()
}

// run is how far n tiles and the joints between them reach along a course.
func (b *book) run(n length.Length) length.Length {
	return n*(b.plan.Room.Tile.Width+b.plan.Room.Joint) - b.plan.Room.Joint
}

// levels gives how far the level line and the course line stand over the base
// at both ends of every stretch of it.
func (b *book) levels() table {
	t := table{columns: []column{{name: "wall", share: 26, bold: true}, {name: "base", share: 22},
		{name: "level line over its left end", share: 24, right: true}, {name: "over its right end", share: 24, right: true},
		{name: "course line over its left end", share: 24, right: true}, {name: "over its right end", share: 24, right: true}}}
	for _, w := range b.plan.Walls {
		for _, s := range w.Found.Base {
			left, right := s.Readings[0].Value, s.Readings[len(s.Readings)-1].Value
			t.rows = append(t.rows, row{cells: []string{wallText(w.Found), string(s.Meets), b.tape(-left), b.tape(-right),
				b.tape(b.plan.Setout.Line - left), b.tape(b.plan.Setout.Line - right)}})
		}
	}
	return t
}

// starts says where the bond begins on each wall.
func (b *book) starts() table {
	t := table{columns: []column{{name: "wall", share: 26, bold: true}, {name: "start, from the wall's left end", share: 34, right: true},
		{name: "it is the middle of", share: 22}, {name: "first tile on the course line", share: 62}}}
	for _, w := range b.plan.Walls {
		is := "a joint"
		if w.Start.OnTile {
			is = "a tile"
		}
		t.rows = append(t.rows, row{cells: []string{wallText(w.Found), b.tape(w.Start.X), is, b.firstTile(w)}})
	}
	return t
}

// firstTile says where the tile stands that the bond is counted from.
func (b *book) firstTile(w layout.Wall) string {
	text := "its left edge at " + b.tape(w.Start.Edge)
	for _, p := range w.Pieces {
		if p.Tile.Left == w.Start.Edge && p.Tile.Bottom == b.plan.Setout.Line {
			return held(p.ID) + ", " + text
		}
	}
	return text
}

// marks lists the edges to mark on every wall: from its left end, and from the
// level line.
func (b *book) marks() table {
	t := table{columns: []column{{name: "wall", share: 26, bold: true}, {name: "mark", share: 34},
		{name: "from the left end", share: 42, right: true}, {name: "from the level line", share: 42, right: true}}}
	for _, w := range b.plan.Walls {
		add := func(name, x, y string) { t.rows = append(t.rows, row{cells: []string{wallText(w.Found), name, x, y}}) }
		p := w.Start.Placed
		if !w.Found.Left.Meets {
			add("tile begins", b.tape(p.Left), "")
		}
		if !w.Found.Right.Meets {
			add("tile ends", b.tape(p.Right), "")
		}
		if !w.Found.Head.Meets {
			add("top of the tile", "", b.signed(p.Head))
		}
		for i, o := range w.Found.Openings {
			x, y := b.opening(o, p, i)
			add(drawing.OpeningName(string(o.Kind), o.Name), x, y)
		}
	}
	if len(t.rows) == 0 {
		t.rows = []row{{cells: []string{"all", "nothing to mark", "", ""}}}
	}
	return t
}

// opening gives the places of an opening: its edges, or a pipe's middle.
func (b *book) opening(o survey.OpeningFound, p survey.Placed, i int) (x, y string) {
	if o.Kind == "pipe" {
		return "centre " + b.tape(o.At), "centre " + b.signed(o.Up)
	}
	e := p.Openings[i]
	return held(b.tape(e.Left)+" to ") + b.tape(e.Right), held(b.signed(e.Bottom)+" to ") + b.signed(e.Top)
}

// wrap draws all walls on one level line where a scale of the ladder takes
// them on one sheet.
func (b *book) wrap() {
	for _, scale := range ladder(b.plan.Room.Units) {
		s := drawing.Wrap(b.plan, drawing.Options{Sheet: true, Scale: scale})
		l := &leaf{subject: subject{title: "The wrap", scale: scale}, size: b.opts.Paper.lie(true)}
		lo, hi := l.area()
		if s.Width <= hi.X-lo.X && s.Height <= hi.Y-lo.Y {
			l.lay(lo, s)
			b.leaves = append(b.leaves, l)
			return
		}
	}
}

func number(n int) string { return strconv.Itoa(n) }
