package sheet

import (
	"fmt"
	"slices"
	"strings"

	"coursewright/layout/survey"
	"coursewright/web/drawing"
)

// measuring prints the walls of the job empty, unfolded on one level line, with
// numbered boxes to fill in on site, in the order in which the bench asks for them.
// Nothing measured stands on it, so it serves
// the next room of that shape as well. It is to no scale.
func (b *book) measuring() {
	b.fitted(subject{title: "Measuring sheet"}, false, func(f *flow) {
		f.words(plain, "The walls unfolded, seen from inside the room, to no scale. Write what the tape shows, to 1/16 in or 1 mm. Cross out what is not there.")
		f.words(plain, "1. Stand the laser where its line reaches all walls. Any height will do; do not move it until you are done.\n"+
			"2. Fill in the boxes in the order of their numbers.")
		m := &form{flow: f}
		m.walls(b.plan.Room.Walls)
		f.table(m.meanings())
		f.table(m.others(b.plan.Room.Walls))
		if t := tops(b.plan.Room.Walls); len(t.rows) > 0 {
			f.table(t)
		}
		f.table(pipes(b.plan.Room.Walls))
	})
}

// form is a measuring sheet in the making.
type form struct {
	*flow
	n             int // of the last box
	shapes        []blankWall
	narrow        []blankWall    // as they would be on the narrowest paper
	corners       drawing.Micron // from the rim down to the boxes of corners
	boxes         drawing.Micron // how wide the boxes are
	widths, drops [2]int         // the first and the last box of a sort
	floors, noses [2]int
}

// blankWall is an empty wall on paper.
type blankWall struct {
	survey.WallFound
	left, right drawing.Micron
	legs        [2]drawing.Micron // how wide the legs at its ends are drawn
}

// Heights on the form, from the top of the walls down.
const (
	formLevel  = 22 * mmPaper
	formRim    = 58 * mmPaper
	formFloor  = 78 * mmPaper
	formLeg    = 12 * mmPaper
	formApart  = 8 * mmPaper
	boxWide    = 23 * mmPaper
	boxHigh    = 10 * mmPaper
	formBottom = formFloor + 16*mmPaper // under legs
	formNoLegs = formRim + 18*mmPaper
	formAside  = 4 * mmPaper // from a line to a box beside it
	formTight  = 2800        // from the edge of a wall hardly wider than a box to a line on it
	formBeside = 3300        // and from there to its box
)

// walls draws all walls beside each other and numbers their boxes as one walks.
func (m *form) walls(walls []survey.WallFound) {
	lo, hi := m.area()
	m.shapes = shapesOf(walls, lo.X, hi.X)
	m.narrow = shapesOf(walls, lo.X, hi.X-m.book.opts.Paper.Width+Papers()[0].Width)
	m.boxes = boxWide
	for _, w := range m.shapes {
		m.boxes = min(m.boxes, w.right-w.left-2*formTight-formBeside)
	}
	bottom := formNoLegs
	m.corners = 11 * mmPaper
	if slices.ContainsFunc(m.shapes, func(w blankWall) bool { return w.legs[0]+w.legs[1] > 0 }) {
		bottom, m.corners = formBottom, 24*mmPaper // under the boxes between leg and corner
	}
	m.need(bottom + 8*mmPaper)
	head := m.y + 8*mmPaper
	for _, w := range m.shapes {
		m.outline(w, head)
	}
	level := head + formLevel
	m.line(ink(drawing.Red, 700), drawing.Point{X: lo.X, Y: level}, drawing.Point{X: hi.X, Y: level})
	widest := slices.MaxFunc(m.shapes, func(a, b blankWall) int { return int(a.right - a.left - b.right + b.left) })
	m.text(drawing.Point{X: (widest.left + widest.right) / 2, Y: level - 1200}, style{size: 3600, bold: true, colour: drawing.Red, anchor: drawing.Middle}, "level line, 0")
	m.count(&m.widths, func() {
		for _, w := range m.shapes {
			m.across(w.left, w.right, head+9*mmPaper)
		}
	})
	m.count(&m.drops, func() { m.down(level, head+formRim) })
	m.count(&m.noses, func() {
		for _, w := range m.shapes {
			if w.legs[0] > 0 {
				m.across(w.left+w.legs[0], w.right, head+formRim+11*mmPaper)
			}
			if w.legs[1] > 0 {
				m.across(w.left, w.right-w.legs[1], head+formRim+11*mmPaper)
			}
		}
	})
	m.count(&m.floors, func() {
		for _, w := range m.shapes {
			m.legsDown(w, level, head+formFloor)
		}
	})
	m.y = head + bottom
}

// count notes which boxes are drawn in between.
func (m *form) count(span *[2]int, draw func()) {
	span[0] = m.n + 1
	draw()
	span[1] = m.n
}

// shapesOf lays walls beside each other: as wide as they are to each other, none
// under what its boxes take.
func shapesOf(walls []survey.WallFound, from, to drawing.Micron) []blankWall {
	room := to - from - formApart*drawing.Micron(len(walls)-1)
	least := min(44*mmPaper, room/drawing.Micron(max(1, len(walls))))
	var sum drawing.Micron
	for _, w := range walls {
		sum += drawing.Micron(w.Width) / 1000
	}
	spare := room - least*drawing.Micron(len(walls))
	var out []blankWall
	for _, w := range walls {
		shape := blankWall{WallFound: w, left: from, right: from + least + spare*(drawing.Micron(w.Width)/1000)/max(1, sum)}
		if last := len(w.Base) - 1; last > 0 {
			if w.Base[0].Meets == survey.Floor {
				shape.legs[0] = formLeg
			}
			if w.Base[last].Meets == survey.Floor {
				shape.legs[1] = formLeg
			}
		}
		from = shape.right + formApart
		out = append(out, shape)
	}
	return out
}

// outline draws one empty wall and what it stands on.
func (m *form) outline(w blankWall, head drawing.Micron) {
	rim, floor := head+formRim, head+formFloor
	at := func(x, y drawing.Micron) drawing.Point { return drawing.Point{X: x, Y: y} }
	pts := []drawing.Point{at(w.left, head)}
	if w.legs[0] > 0 {
		pts = append(pts, at(w.left, floor), at(w.left+w.legs[0], floor), at(w.left+w.legs[0], rim))
	} else {
		pts = append(pts, at(w.left, rim))
	}
	if w.legs[1] > 0 {
		pts = append(pts, at(w.right-w.legs[1], rim), at(w.right-w.legs[1], floor), at(w.right, floor))
	} else {
		pts = append(pts, at(w.right, rim))
	}
	pts = append(pts, at(w.right, head))
	m.put(drawing.Path{Ink: drawing.Ink{Fill: drawing.None, Line: drawing.Black, Width: 700}, Rings: [][]drawing.Point{pts}})
	m.put(drawing.Path{Ink: drawing.Ink{Fill: drawing.None, Hatch: drawing.Earth, Line: drawing.None}, Rings: [][]drawing.Point{{
		at(w.left+w.legs[0], rim), at(w.right-w.legs[1], rim), at(w.right-w.legs[1], rim+2500), at(w.left+w.legs[0], rim+2500)}}})
	letter := style{size: 8000, bold: true}
	m.text(at(w.left, head-1500), letter, w.Letter)
	name := style{size: 3600}
	m.text(at(w.left+letter.width(w.Letter)+2000, head-1500), name, name.short(w.Name, w.right-w.left-letter.width(w.Letter)-2000))
}

// across draws a level dimension with a box in its middle.
func (m *form) across(from, to, y drawing.Micron) {
	m.dimension(drawing.Point{X: from, Y: y}, drawing.Point{X: to, Y: y})
	m.tick(drawing.Point{X: (from + to) / 2, Y: y})
}

// wide tells whether a wall has room for a box in the middle of its base, between two corners whose
// boxes hang higher or beside a free end. It is asked of the narrowest paper, so that a room has the
// same numbers on every one.
func (m *form) wide(i int, corners bool) bool {
	need := drawing.Micron(2*boxWide + 12*mmPaper)
	if corners {
		need = 2*boxWide + 6*mmPaper
	}
	w := m.narrow[i]
	return w.right-w.left > need
}

// down draws the heights from the level line to what the walls stand on: at free
// ends, at the corners, once for both walls, and in the middle of a wide wall. The box of a corner stands under the rim,
// where it lies over neither of its walls, unless a leg stands there.
func (m *form) down(level, rim drawing.Micron) {
	mid := (level + rim) / 2
	for i, w := range m.shapes {
		own := i == 0 || w.Left.Beyond != i-1 // its left end is no corner of the one before
		in, aside := drawing.Micron(4*mmPaper), drawing.Micron(formAside)
		if w.right-w.left < boxWide+12*mmPaper { // hardly wider than a box
			in, aside = formTight, formBeside
		}
		if own {
			m.drop(w.left+w.legs[0]+in, level, rim, mid+11*mmPaper, w.left+w.legs[0]+in+m.boxes/2+aside)
		}
		corners := !own && i+1 < len(m.shapes) && m.shapes[i+1].Left.Beyond == i
		if m.wide(i, corners) {
			m.drop((w.left+w.right)/2, level, rim, mid-5*mmPaper, (w.left+w.right)/2)
		}
		if i+1 < len(m.shapes) && m.shapes[i+1].Left.Beyond == i {
			x, y := w.right+formApart/2, rim+m.corners
			if w.legs[1]+m.shapes[i+1].legs[0] > 0 {
				y = mid - 9*mmPaper
			}
			m.drop(x, level, rim, y, x)
		} else {
			x, y := w.right-w.legs[1]-in, mid+11*mmPaper
			boxX := max(x-m.boxes/2-aside, w.left+w.legs[0]+m.boxes/2+2*formBeside) // its ring within the wall
			switch room := w.right - w.left; {
			case own && room < boxWide+12*mmPaper && w.legs[1] == 0: // hardly wider than a box: under the rim
				y, boxX = rim+m.corners, (w.left+w.right)/2
			case own && room < 2*boxWide+12*mmPaper: // narrow: over the box of its left end
				y = mid - 4*mmPaper
			}
			m.drop(x, level, rim, y, boxX)
		}
	}
}

// legsDown draws the heights from the level line to the floor at a wall's legs.
func (m *form) legsDown(w blankWall, level, floor drawing.Micron) {
	if w.legs[0] > 0 {
		m.drop(w.left+2500, level, floor, floor+9*mmPaper, w.left+2500+formAside+m.boxes/2)
	}
	if w.legs[1] > 0 {
		m.drop(w.right-2500, level, floor, floor+9*mmPaper, w.right-2500-formAside-m.boxes/2)
	}
}

// drop draws a plumb dimension with its box at a place of its own.
func (m *form) drop(x, from, to, boxY, boxX drawing.Micron) {
	m.dimension(drawing.Point{X: x, Y: from}, drawing.Point{X: x, Y: to})
	if boxY > to {
		m.line(ink(drawing.Black, 180), drawing.Point{X: x, Y: to}, drawing.Point{X: x, Y: boxY}, drawing.Point{X: boxX, Y: boxY})
	}
	m.tick(drawing.Point{X: boxX, Y: boxY})
}

// dimension is a line with a stroke at both ends.
func (m *form) dimension(a, z drawing.Point) {
	m.line(ink(drawing.Black, 180), a, z)
	for _, p := range []drawing.Point{a, z} {
		m.line(ink(drawing.Black, 350), drawing.Point{X: p.X - 1200, Y: p.Y + 1200}, drawing.Point{X: p.X + 1200, Y: p.Y - 1200})
	}
}

// tick draws the next box with its number.
func (m *form) tick(mid drawing.Point) {
	m.n++
	a := drawing.Point{X: mid.X - m.boxes/2, Y: mid.Y - boxHigh/2}
	white := drawing.Ink{Fill: drawing.White, Line: drawing.Black, Width: 350}
	m.box(white, a, drawing.Point{X: a.X + m.boxes, Y: a.Y + boxHigh})
	m.put(drawing.Disc{Ink: white, Centre: a, Radius: 3000})
	m.text(drawing.Point{X: a.X, Y: a.Y + 1300}, style{size: 3600, bold: true, anchor: drawing.Middle}, number(m.n))
}

// spanText names boxes by the first and the last.
func spanText(s [2]int) string {
	if s[0] == s[1] {
		return number(s[0])
	}
	return fmt.Sprintf("%d to %d", s[0], s[1])
}

// meanings say what the boxes on the walls are for.
func (m *form) meanings() table {
	t := table{text: plain, columns: []column{{name: "box", share: 16, bold: true}, {name: "what to measure", share: 140}}}
	add := func(s [2]int, text string) {
		if s[1] >= s[0] {
			t.rows = append(t.rows, row{cells: []string{spanText(s), text}})
		}
	}
	add(m.widths, "Width of each wall along the level line, board to board.")
	add(m.drops, "From the level line down to the rim. Stand the tape on the rim, tight to the wall. A corner is measured once and serves both walls.")
	add(m.noses, "From the corner to the front of the tub.")
	add(m.floors, "From the level line down to the floor, at the outer edge of the tile.")
	return t
}

// others are the boxes that stand on no wall.
func (m *form) others(walls []survey.WallFound) table {
	t := table{text: plain, columns: []column{{name: "box", share: 16, bold: true}, {name: "what to measure", share: 100}, {share: 40, blank: true}}}
	add := func(text string) {
		m.n++
		t.rows = append(t.rows, row{cells: []string{number(m.n), text, ""}})
	}
	add("From the level line up to the ceiling at its lowest corner, or to where tile should stop")
	for i, w := range walls {
		if i > 0 && w.Left.Meets && w.Left.Beyond == i-1 {
			add("Corner of " + walls[i-1].Letter + " and " + w.Letter + ": how far it leans by the top, and to which side")
		}
		if i > 0 && w.Left.Outside != nil {
			add("Outside corner of " + walls[i-1].Letter + " and " + w.Letter + ": the angle between the walls, if it is not square")
		}
	}
	for _, text := range tilesAsked(m.book.plan.Room) {
		add(text)
	}
	return t
}

// tilesAsked says what to measure of the tiles, as they can be laid in their pattern: ten in a row share out the
// error of the tape, but points and slanted ends make no row from end to end.
func tilesAsked(room survey.Room) []string {
	const ten, floor = "Ten tiles with their joints, ", "side by side on the floor: overall"
	switch {
	case room.Tile.Sheet.Any():
		return []string{"From the first tile of a sheet to the same tile of the next, laid with its joint: across", "The same, up"}
	case room.Bond.Coursed():
		return []string{ten + "lying in a row: overall", ten + "standing: overall"}
	case room.Bond.Kind == survey.Hexagon:
		return []string{ten + "side against side in a row: overall"}
	case room.Bond.Kind == survey.Picket:
		return []string{ten + floor, "One tile, from point to point"}
	case room.Bond.Kind == survey.Chevron:
		return []string{ten + "long sides together, " + floor, "One tile, along a long side"}
	}
	asked := []string{ten + floor}
	if room.Tile.Width != room.Tile.Height {
		asked = append(asked, ten+"end to end on the floor: overall")
	}
	for i := range room.Bond.Others {
		asked = append(asked, fmt.Sprintf("Tile %d of the pattern: width and height", i+2))
	}
	return asked
}

// tops are the depth and the fall of what lies on low walls, measured before it is tiled.
func tops(walls []survey.WallFound) table {
	t := table{text: plain, columns: []column{{name: "tops, measured level from board to board", share: 40, bold: true}, {name: "depth, left end", share: 29, blank: true},
		{name: "depth, right end", share: 29, blank: true}, {name: "level line to front edge", share: 29, blank: true}, {name: "back over front: its fall", share: 29, blank: true}}}
	for _, w := range walls {
		if top := w.Head.Top; top != nil {
			name := w.Letter + " " + top.Of(w.Name)
			if top.Corner != nil {
				name += ": depth is along each wall, to the corner"
			}
			t.rows = append(t.rows, row{cells: []string{name, "", "", "", ""}})
		}
	}
	return t
}

// pipes are the openings: those of the job by name, and lines to spare.
func pipes(walls []survey.WallFound) table {
	t := table{text: plain, columns: []column{{name: "openings", share: 52, bold: true}, {name: "from the corner", share: 30, blank: true},
		{name: "from the line, below or above", share: 40, blank: true}, {name: "hole, or width × height", share: 34, blank: true}}}
	for _, w := range walls {
		for _, o := range w.Openings {
			t.rows = append(t.rows, row{cells: []string{strings.TrimSpace(w.Letter + " " + o.Called()), "", "", ""}})
		}
	}
	for len(t.rows) < 4 {
		t.rows = append(t.rows, row{cells: []string{"wall ___", "", "", ""}})
	}
	t.rows = append(t.rows, row{cells: []string{"studs beside a niche, inner faces", "", "", ""}})
	return t
}
