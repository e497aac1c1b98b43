package sheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
)

// setOut makes the sheet by which the marks are put on the wall, in the order
// in which one does it.
func (b *book) setOut() {
	before := b.mark()
	if b.setOutWith(true); len(b.leaves) == before.leaves+1 {
		return
	}
	long := b.mark()
	leaves, flows := slices.Clone(b.leaves), slices.Clone(b.flows)
	b.back(before)
	if b.setOutWith(false); len(b.leaves) == before.leaves+1 {
		b.warnLater = true
		return
	}
	b.leaves, b.flows = leaves[:long.leaves], flows[:long.flows]
}

// setOutWith makes the sheet with the cautions at its end, or with a word that they
// stand further on.
func (b *book) setOutWith(cautions bool) {
	struck := stages.ToStrike(b.plan.Room, b.plan.Setout.Line, b.plan.Walls)
	b.fitted(subject{title: "Set-out"}, false, func(f *flow) {
		f.corner(drawing.KeyPlan(b.plan, -1))
		f.words(plain, "In the order one does it, with laser, plumb line and pencil."+b.said())
		f.step("1", "Throw the level line round the room: height 0.", "Check it against what the walls stand on. If a figure differs by more than "+
			b.tape(b.plan.Room.Doubt)+", measure the room again before going on.")
		f.stations(b.stations(), func(s stages.Station) string { return b.bareTape(-s.Height) }, "level line over")
		f.step("2", "Strike "+b.lineName(struck)+" round all the walls: "+b.over(struck.At)+" the level line.", b.lineHow(struck))
		f.stations(b.struckOver(struck), func(s stages.Station) string { up, _ := struck.Over(s, b.plan.Walls); return b.bareTape(up) }, "line over "+b.rim())
		f.step("3", "Fix the batten with its top edge "+b.over(struck.Full.Bottom)+" the level line.", b.battenHow(struck))
		f.step("4", "Strike a plumb line at a tile "+string(struck.Plumb)+" on each wall.", b.leaning(struck))
		f.table(b.edges(struck))
		f.step("5", "Mark where tile ends and where the openings stand.", "")
		f.table(b.marks())
		last := "6"
		if len(b.plan.Setout.Bands) > 0 {
			last = "7"
			f.step("6", "Strike the bottom edge of each band round its walls.", b.underBands())
			f.table(b.bands())
		}
		f.step(last, "Check before mixing mortar.", b.checks())
		if cautions {
			f.cautions()
		} else {
			f.words(strong, "Read the cautions before the work begins: they stand on a sheet further on.")
		}
	})
}

// corner puts a small scene into the upper right corner, beside the words under
// the heading.
func (f *flow) corner(s drawing.Scene) {
	_, hi := f.area()
	f.lay(drawing.Point{X: hi.X - s.Width, Y: f.y - 1000}, s)
	f.beside = s.Width
	f.until = f.y + s.Height
}

// lineName says which line is struck.
func (b *book) lineName(s stages.Struck) string {
	if s.Joint {
		if s.Level == stages.Corner {
			return "the first line of corners over the " + b.rim()
		}
		return "the first joint line over the " + b.rim()
	}
	return "the course line"
}

// lineHow says what the line is, and why it is that one.
func (b *book) lineHow(s stages.Struck) string {
	if s.Joint {
		return s.Is("the first full course") + " The course line, " + b.over(b.plan.Setout.Line) +
			" the level line, runs behind a " + b.rim() + ". " + b.lowLines(s) + "Measure down from the line to the " + b.rim() + " at each place as a check."
	}
	return s.Is("one course on all the walls") + " " + b.lowLines(s) + "Measure it over the " + b.rim() + " at each place as a check."
}

// lowLines says what is struck on walls that end under the line, as the front of a bench does.
func (b *book) lowLines(s stages.Struck) (text string) {
	for _, l := range stages.Lows(s.Full, b.plan.Walls) {
		ends := " ends lower: line and batten at "
		if len(l.Walls) > 1 {
			ends = " end lower: line and batten at "
		}
		text += stages.Letters(l.Walls, b.plan.Walls) + ends + b.signed(l.Bottom) + ". "
	}
	return text
}

// struckOver are the rims over which a line is struck.
func (b *book) struckOver(s stages.Struck) []stages.Station {
	return slices.DeleteFunc(stages.Rims(b.stations()), func(st stages.Station) bool {
		_, found := s.Over(st, b.plan.Walls)
		return !found
	})
}

func (b *book) battenHow(s stages.Struck) string {
	for _, w := range b.plan.Walls {
		for _, p := range w.Pieces {
			if p.Row == s.Full.Row && p.Tile.Bottom == s.Full.Bottom {
				return fmt.Sprintf("Course %d stands on it. What is under it is set last, when the batten is off.", p.Course) + b.battenRoom(s)
			}
		}
	}
	return "The first full course stands on it." + b.battenRoom(s)
}

// battenRoom says how little room there is for the batten over a rim, where there is less than the 3/4 in (19 mm) of
// a common strip of wood. Common practice, no source.
func (b *book) battenRoom(s stages.Struck) string {
	var least, most length.Length
	found := false
	for _, rim := range b.struckOver(s) {
		up := s.Full.Bottom - rim.Height
		if up < 0 {
			continue
		}
		if !found {
			least, most, found = up, up, true
		}
		least, most = min(least, up), max(most, up)
	}
	if !found || least >= 3*length.Inch/4 {
		return ""
	}
	room := held(b.bareTape(least))
	if b.bareTape(least) != b.bareTape(most) {
		room += " to " + held(b.bareTape(most))
	}
	return " Only " + room + " is between it and the " + b.rim() + ": where no batten goes in, stand the course on wedges there."
}

// rim is what lines are measured over.
func (b *book) rim() string { return stages.RimName(b.stations()) }

func (b *book) stations() []stages.Station { return stages.Stations(b.plan.Room.Units, b.plan.Walls) }

// stations writes one figure for every station, a few beside each other.
func (f *flow) stations(all []stages.Station, figure func(stages.Station) string, name string) {
	const across = 8
	for from := 0; from < len(all); from += across {
		some := all[from:min(from+across, len(all))]
		f.y = max(f.y, f.until)
		t := table{columns: []column{{name: "", share: 20}}, text: plain, rows: []row{{cells: []string{name}}}}
		for _, s := range some {
			t.columns = append(t.columns, column{name: s.Name + "\n" + string(s.Meets), share: 20, bold: true})
			t.rows[0].cells = append(t.rows[0].cells, held(figure(s)))
		}
		f.table(t)
	}
}

// checks says how the marks are proved.
func (b *book) checks() string {
	text := b.tenTiles() + ". Hold the story pole to the level line at each corner. "
	side := [3]length.Length{36 * length.Inch, 48 * length.Inch, 60 * length.Inch}
	if b.plan.Room.Units == length.Metric {
		side = [3]length.Length{900 * length.Millimetre, 1200 * length.Millimetre, 1500 * length.Millimetre}
	}
	return text + fmt.Sprintf("Line and plumb line are square if a mark %s along the one and a mark %s up the other, both from where they cross, are %s apart; on a small wall take half of each.",
		b.tape(side[0]), b.tape(side[1]), b.tape(side[2]))
}

// tenTiles says how far ten tiles and the joints between them reach: along a course, or where a pattern has no row of them, laid
// side by side, which holds for tile with points or slanted ends too.
func (b *book) tenTiles() string {
	room := &b.plan.Room
	reach := func(tile length.Length) string { return " take " + b.tape(10*(tile+room.Joint)-room.Joint) }
	if room.Bond.Coursed() || room.Bond.Kind == survey.MixedHeights && !room.Bond.Swapped {
		return "Ten tiles with their joints in a row" + reach(room.Tile.Width)
	}
	return "Ten tiles with their joints, laid side by side on the floor," + reach(min(room.Tile.Width, room.Tile.Height))
}

// edges says which tile edge is struck on each wall: measured from the left
// corner of the boards at the height of the line, and from the tile of a wall
// that was set before.
func (b *book) edges(s stages.Struck) table {
	t := table{columns: []column{{name: "wall, in setting order", share: 30, bold: true}, {name: "left " + string(s.Plumb) + " of tile", share: 24},
		{name: "from the left corner of the boards", share: 34, bold: true, right: true}, {name: "from the finished neighbour", share: 56}}}
	for _, i := range b.inOrder() {
		w := b.plan.Walls[i]
		edge, ok := stages.Strike(w, s.Full)
		if !ok && w.Found.Single {
			t.rows = append(t.rows, row{cells: []string{wallText(w.Found), "none", "", "single tiles, each cut to the width of the wall"}})
			continue
		}
		if !ok {
			t.rows = append(t.rows, row{cells: []string{wallText(w.Found), "none", "", "no tile has its left " + string(s.Plumb) + " on this wall"}})
			continue
		}
		t.rows = append(t.rows, row{cells: []string{wallText(w.Found), tileAt(w, edge, s.Full), b.fromEnd(s.From(w, edge)), b.fromNeighbour(w, edge, s)}})
	}
	return t
}

// leaning says from where figures along the walls are counted whose left corners lean.
func (b *book) leaning(s stages.Struck) string {
	var at []string
	for _, i := range b.inOrder() {
		w := b.plan.Walls[i]
		if edge, ok := stages.Strike(w, s.Full); ok && s.Leans(w, edge, b.bareTape) {
			at = append(at, w.Found.Letter+" "+held(b.fromEnd(edge))+" "+stages.Datum(w))
		}
	}
	if len(at) == 0 {
		return ""
	}
	return "Hold the tape along the line struck. Where the left corner leans, all other figures along the wall count from another height. The same edge is: " +
		strings.Join(at, "; ") + "."
}

// leanText says how START is counted on a wall whose left corner leans; not on one whose sheet the inside of a niche or window needs.
func (b *book) leanText(wall int) string {
	if wall == noWall || len(b.unfolded(wall)) > 0 {
		return ""
	}
	w, struck := b.plan.Walls[wall], stages.ToStrike(b.plan.Room, b.plan.Setout.Line, b.plan.Walls)
	edge, ok := stages.Strike(w, struck.Full)
	if !ok {
		return ""
	}
	return struck.LeanText(w, edge, b.bareTape)
}

// tileAt names the tile whose left edge is struck: the one to start with, or else one in
// the first full course or over it.
func tileAt(w layout.Wall, edge length.Length, full stages.FullCourse) string {
	if t, ok := stages.StartTile(w, full); ok {
		return t.ID
	}
	for _, low := range []length.Length{full.Bottom, -1 << 40} { // a low wall ends under it
		for _, p := range w.Pieces {
			if p.Tile.Left == edge && p.Tile.Bottom >= low {
				return p.ID
			}
		}
	}
	return ""
}

// corner is how far a leaning corner stands to the right of its plumb line.
func corner(e survey.EndFound, at length.Length) length.Length {
	if !e.Meets || len(e.Lean) == 0 {
		return 0
	}
	return survey.At(e.Lean, at)
}

// fromNeighbour measures an edge from tile that stands already where this wall
// is set later than a neighbour.
func (b *book) fromNeighbour(w layout.Wall, edge length.Length, s stages.Struck) string {
	at, found := s.On(w)
	if !found {
		at = s.At
	}
	switch l, r := w.Found.Left, w.Found.Right; {
	case l.Against:
		return held(b.bareTape(edge-corner(l, at)-l.Behind)) + " from the tile of the wall it meets there"
	case l.Meets && l.Behind > 0:
		return held(b.bareTape(edge-corner(l, at)-l.Behind)) + " from the tile of " + b.letter(l.Beyond)
	case r.Meets && r.Behind > 0:
		return held(b.bareTape(w.Found.Width+corner(r, at)-r.Behind-edge)) + " from the tile of " + b.letter(r.Beyond) + ", to the left"
	}
	return "set before its neighbours"
}

func (b *book) letter(wall int) string {
	if wall < 0 || wall >= len(b.plan.Walls) {
		return "the neighbour"
	}
	return b.plan.Walls[wall].Found.Letter
}

// fromEnd is how far a place lies from the left end of a wall, or beyond it: no tape shows less than nothing.
func (b *book) fromEnd(x length.Length) string { return stages.FromCorner(x, b.bareTape) }

// manyMarks is from how many rows on the list of marks is written smaller, so that the
// set-out stays on one leaf.
const manyMarks = 6

// marks lists the edges to mark on every wall: from its left end, and from the
// level line.
func (b *book) marks() table {
	t := table{columns: []column{{name: "wall", share: 26, bold: true}, {name: "mark", share: 30},
		{name: "from the left end", share: 42, right: true}, {name: "from the level line", share: 46, right: true}}}
	for _, w := range b.plan.Walls {
		name := wallText(w.Found)
		add := func(mark, x, y string) {
			t.rows = append(t.rows, row{cells: []string{name, mark, x, y}})
			name = ""
		}
		p, x, y := w.Start.Placed, "", ""
		left, right, head := b.trimEnds(w)
		turnLeft, turnRight := b.turnEdges(w)
		if !w.Found.Left.Meets {
			x = held("begins " + b.fromEnd(p.Left) + left + turnLeft)
		}
		if !w.Found.Right.Meets {
			x += strings.Repeat(", ", min(1, len(x))) + held("ends "+b.bareTape(p.Right)+right+turnRight)
		}
		if !w.Found.Head.Meets {
			y = held("top " + b.signed(p.Head) + head)
		}
		if x+y != "" {
			add("tile", x, y)
		}
		for i, o := range w.Found.Openings {
			if o.Strip != nil {
				b.stripMarks(w, i, add)
				continue
			}
			x, y := b.opening(o, p, i)
			add(o.Called(), x, y)
		}
		b.fixtureMarks(w, add)
	}
	switch {
	case len(t.rows) == 0:
		t.rows = []row{{cells: []string{"all", "nothing to mark", "", ""}}}
	case len(t.rows) > manyMarks:
		t.text = plain
	}
	return t
}

// opening gives the places of an opening: its edges, or a pipe's middle.
func (b *book) opening(o survey.OpeningFound, p survey.Placed, i int) (x, y string) {
	if o.Kind == survey.Pipe {
		return "centre " + b.bareTape(o.At), "centre " + b.signed(o.Up)
	}
	e := p.Openings[i]
	return held(b.bareTape(e.Left)+" to ") + b.bareTape(e.Right), held(b.signed(e.Bottom)+" to ") + b.signed(e.Top)
}

func number(n int) string { return strconv.Itoa(n) }
