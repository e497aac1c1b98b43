package sheet

import (
	"fmt"
	"slices"
	"strings"

	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
)

// The lines of the schedule are as high as these, so that few pages hold them.
const (
	mostLine  = 15 * mmPaper
	leastLine = 10000
)

// schedule lists what to cut: one line for every setting of the fence.
func (b *book) schedule() {
	f := b.flow(subject{title: "Cut schedule"}, false)
	if b.plan.Room.Stands() {
		f.words(plain, "What is set already is not in this list.")
	}
	if len(b.cuts.Groups) == 0 {
		f.words(body, "No piece is to be cut.")
		f.trimTable()
		return
	}
	o := b.cuts.Offcuts
	f.words(plain, fmt.Sprintf("Size to set the fence to · cut from the face side · %d pieces, %d lines; %d tiles are cut into and %d of them give two pieces · kerf %s",
		len(b.cuts.Cuts), len(b.cuts.Groups), o.TilesCut, o.TilesSaved, b.fine(b.opts.Saw.Kerf))+b.said())
	high, each := f.lineHigh(len(b.cuts.Groups))
	partners := b.partners()
	f.cutNames()
	for i, g := range b.cuts.Groups {
		if i > 0 && i%each == 0 {
			f.turn()
			f.cutNames()
		}
		f.cutLine(g, partners[g.ID], high)
	}
	f.cutEnd()
}

// cutEnd is what stands under the last line.
func (f *flow) cutEnd() {
	f.y += 1500
	f.percent = 80
	f.trimTable()
	f.cutNotes()
	f.cautions(atTheSaw...)
}

// lineHigh is how high lines may be so that they take no more leaves than they
// must, and how many of them stand on each, so that none is nearly empty.
func (f *flow) lineHigh(lines int) (high drawing.Micron, each int) {
	names := columnName.leading() + 600
	room := f.left() - names // a leaf that follows has more, for it has no words
	end := f.tried((*flow).cutEnd)
	for leaves := 1; ; leaves++ {
		each = (lines + leaves - 1) / leaves
		last := lines - each*(leaves-1)
		if last < 1 {
			continue
		}
		high = min(mostLine, (room-end)/drawing.Micron(last))
		if leaves > 1 {
			high = min(high, room/drawing.Micron(each))
		}
		if high >= leastLine {
			return high, each
		}
	}
}

// tried is how much room something takes that is written on a leaf of its own.
func (f *flow) tried(write func(*flow)) drawing.Micron {
	try := *f
	try.leaf = &leaf{subject: f.subject, size: f.size}
	try.book = &book{plan: f.book.plan, opts: f.book.opts, cuts: f.book.cuts}
	_, try.hi = try.leaf.area()
	write(&try)
	return try.y - f.y
}

// cutColumns are where the columns of a line begin, in thousandths of the breadth.
var cutColumns = []struct {
	at   drawing.Micron
	name string
}{{0, "line"}, {70, "count"}, {165, "set the fence to"}, {475, "from the face"}, {615, "cut, and where it goes"}, {840, "from one tile"}, {950, "done"}}

func (f *flow) cutAt(i int) drawing.Micron {
	lo, hi := f.area()
	if i == len(cutColumns) {
		return hi.X
	}
	return lo.X + (hi.X-lo.X)*cutColumns[i].at/1000
}

func (f *flow) cutNames() {
	for i, c := range cutColumns {
		f.text(drawing.Point{X: f.cutAt(i), Y: f.y + columnName.size}, columnName, c.name)
	}
	f.y += columnName.leading() + 600
	f.rule(500)
}

// rule draws a line across the flow.
func (f *flow) rule(width drawing.Micron) {
	lo, hi := f.area()
	f.line(ink(drawing.Black, width), drawing.Point{X: lo.X, Y: f.y}, drawing.Point{X: hi.X, Y: f.y})
}

// cutLine writes one line.
func (f *flow) cutLine(g cuts.Group, partner string, high drawing.Micron) {
	mid := f.y + high/2
	at := func(i int, s style) drawing.Point { return drawing.Point{X: f.cutAt(i), Y: mid + s.size*36/100} }
	name := style{size: 4600, bold: true}
	f.text(at(0, name), name, g.ID)
	count := style{size: 5200, anchor: drawing.Right}
	f.text(drawing.Point{X: f.cutAt(2) - 2500, Y: mid + count.size*36/100}, count, number(g.Count)+" ×")
	f.fence(g, mid, high)
	f.cutSketch(g, drawing.Point{X: f.cutAt(3), Y: f.y + 1500}, drawing.Point{X: f.cutAt(4) - 3000, Y: f.y + high - 1500})
	f.lines(4, f.cutAt(5)-f.cutAt(4)-1500, mid, high, style{size: 3400, bold: true}, kindWords(g), style{size: 3000}, placesText(g))
	f.lines(5, f.cutAt(6)-f.cutAt(5)-1000, mid, high, style{size: 3000}, partner, style{size: 3000}, "")
	const side = 7 * mmPaper
	_, hi := f.area()
	f.box(ink(drawing.Black, 350), drawing.Point{X: hi.X - side, Y: mid - side/2}, drawing.Point{X: hi.X, Y: mid + side/2})
	f.y += high
	f.rule(180)
}

// fence writes the figure to set, 6 mm high where it is one size, and what is to
// be said with it.
func (f *flow) fence(g cuts.Group, mid, high drawing.Micron) {
	big, small := f.book.fence(g)
	room := f.cutAt(3) - f.cutAt(2) - 2000
	s := style{size: 8200, bold: true}
	for s.size > 4200 && s.width(big) > room {
		s.size -= 200
	}
	x := f.cutAt(2)
	f.text(drawing.Point{X: x, Y: mid + s.size*36/100}, s, big)
	note := style{size: 3200}
	beside := room - s.width(big) - 1500
	lines := note.wrap(small, max(beside, 1))
	if beside > 12*mmPaper && drawing.Micron(len(lines))*note.leading() < high && fits(note, lines, beside) {
		y := mid - drawing.Micron(len(lines)-2)*note.leading()/2 - note.leading()/2 + note.size*36/100
		for _, line := range lines {
			f.text(drawing.Point{X: x + s.width(big) + 1500, Y: y}, note, line)
			y += note.leading()
		}
		return
	}
	// Under the figure, which moves up for it and gives way.
	f.own.Elements = f.own.Elements[:len(f.own.Elements)-1]
	note.size = leastText
	lines = note.wrap(small, room)
	lines = lines[:min(len(lines), 2)]
	under := drawing.Micron(len(lines)) * note.leading()
	s.size = min(s.size, max(3400, high-1200-under))
	y := mid - (s.size+under)/2 + s.size*76/100
	f.text(drawing.Point{X: x, Y: y}, s, big)
	y += s.size*24/100 + note.size*76/100 + 100
	for _, line := range lines {
		f.text(drawing.Point{X: x, Y: y}, note, line)
		y += note.leading()
	}
}

func fits(s style, lines []string, wide drawing.Micron) bool {
	return !slices.ContainsFunc(lines, func(line string) bool { return s.width(line) > wide })
}

// lines writes a strong line over plain ones, centred in a line of the schedule;
// what finds no room is cut short.
func (f *flow) lines(column int, wide, mid, high drawing.Micron, s style, first string, t style, rest string) {
	type written struct {
		style
		text string
	}
	var all []written
	for _, l := range s.wrap(first, wide) {
		all = append(all, written{s, l})
	}
	if rest != "" {
		for _, l := range t.wrap(rest, wide) {
			all = append(all, written{t, l})
		}
	}
	if most := int((high - 800) / t.leading()); len(all) > most {
		all = all[:most]
		all[most-1].text = all[most-1].short(all[most-1].text+" …", wide)
	}
	var sum drawing.Micron
	for _, l := range all {
		sum += l.leading()
	}
	y := mid - sum/2
	for _, l := range all {
		f.text(drawing.Point{X: f.cutAt(column), Y: y + l.size*86/100}, l.style, l.text)
		y += l.leading()
	}
}

// kindWords name the cut and how it is made.
func kindWords(g cuts.Group) string {
	kind := strings.ReplaceAll(g.Kind, "rip, cross cut", "rip and cross cut")
	if g.How == cuts.Uncut {
		return "none"
	}
	if g.How == cuts.Unworkable {
		return "no saw makes this"
	}
	if g.Tile != "" {
		return kind + ", " + g.Tile
	}
	return kind
}

// placesText says where the pieces of a line go: a few by name, more by wall.
func placesText(g cuts.Group) string {
	if len(g.Pieces) <= 3 {
		return strings.Join(g.Pieces, " ")
	}
	var all []string
	for _, p := range g.Places {
		all = append(all, held(fmt.Sprintf("%s %s %d", p.Wall, p.Side, len(p.Pieces))))
	}
	return strings.Join(all, " · ")
}

// partners says of each line what else comes out of its tiles.
func (b *book) partners() map[string]string {
	line := map[string]string{}
	for _, c := range b.cuts.Cuts {
		line[c.Piece] = c.Group
	}
	with := map[string]map[string]int{}
	add := func(a, z string) {
		if with[a] == nil {
			with[a] = map[string]int{}
		}
		with[a][z]++
	}
	for _, p := range b.cuts.Offcuts.Pairs {
		add(line[p[0]], line[p[1]])
		if line[p[0]] != line[p[1]] {
			add(line[p[1]], line[p[0]])
		}
	}
	out := map[string]string{}
	for _, g := range b.cuts.Groups {
		var parts, others []string
		if n := with[g.ID][g.ID]; n > 0 {
			parts = append(parts, fmt.Sprintf("%d give two", n))
		}
		n := 0
		for _, other := range b.cuts.Groups {
			if k := with[g.ID][other.ID]; k > 0 && other.ID != g.ID {
				n, others = n+k, append(others, other.ID)
			}
		}
		if n > 0 {
			parts = append(parts, fmt.Sprintf("%d with %s", n, strings.Join(others, " ")))
		}
		if out[g.ID] = strings.Join(parts, ", "); len(parts) == 0 {
			out[g.ID] = "–"
		}
	}
	return out
}

// cutNotes explain what the lines say, once.
func (f *flow) cutNotes() {
	text := "Heavy edges are cut, the arrow points up. Sizes are rounded down, so that no piece is larger than its place."
	if f.book.opts.Saw.Turn && !f.book.plan.Room.Tile.Grain {
		text += " Turned end for end, a cross cut serves left and right."
	}
	has := func(how cuts.How) bool {
		return slices.ContainsFunc(f.book.cuts.Groups, func(g cuts.Group) bool { return g.How == how })
	}
	if !f.book.plan.Room.Bond.Coursed() {
		text += " " + cuts.Corners
	}
	if has(cuts.InPlace) {
		text += " Measure in place: hold the tile up and mark it."
	}
	if has(cuts.FirstCourse) {
		text += " By the first-course sheet: each tile has its own two heights."
	}
	if n := f.book.cuts.Offcuts.Nearly; n > 0 {
		near := cuts.Near(f.book.plan.Room.Units)
		text += fmt.Sprintf(" %s less at the cuts would save %d tiles.", f.book.fine(near), n)
	}
	f.words(plain, text)
}

// inMillimetres says what bare figures are in.
func (b *book) inMillimetres() string {
	if b.plan.Room.Units == length.Metric {
		return ", mm"
	}
	return ""
}

// tileOf is the tile that a line is cut from.
func (b *book) tileOf(g cuts.Group) survey.TileSize {
	for _, o := range plan.Others(b.plan.Room, b.plan.Walls) {
		if g.Tile != "" && o.Name == g.Tile {
			return o.Tile
		}
	}
	return b.plan.Room.Tile
}

// cutSketch draws a piece in its tile, as seen from the face, into a box.
func (f *flow) cutSketch(g cuts.Group, lo, hi drawing.Point) {
	if g.Outline != nil {
		f.laidSketch(g, lo, hi)
		return
	}
	t := f.book.tileOf(g)
	tile := plane.Rect{Right: t.Width, Top: t.Height}
	lo.X += 3500 // the arrow
	s := within(tile, hi.X-lo.X, hi.Y-lo.Y)
	w, h := s.On(t.Width), s.On(t.Height)
	corner := drawing.Point{X: lo.X, Y: (lo.Y + hi.Y + h) / 2}
	f.box(drawing.Ink{Fill: drawing.None, Line: drawing.Grey, Width: 180, Dash: drawing.Hidden}, drawing.Point{X: corner.X, Y: corner.Y - h}, drawing.Point{X: corner.X + w, Y: corner.Y})
	box := g.Sketch.Bounds()
	var dx, dy length.Length
	if has := func(side string) bool { return slices.Contains(g.Cut, side) }; true {
		if has("left") && !has("right") {
			dx = t.Width - box.Right
		}
		if has("bottom") && !has("top") {
			dy = t.Height - box.Top
		}
	}
	f.face(g.Sketch, func(p plane.Point) drawing.Point {
		return drawing.Point{X: corner.X + s.On(p.X+dx), Y: corner.Y - s.On(p.Y+dy)}
	})
	f.arrow(drawing.Point{X: lo.X - 2200, Y: (lo.Y+hi.Y)/2 + 3500})
}
