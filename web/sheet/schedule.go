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
	leastLine = 9600
)

// schedule lists what to cut: one line for every setting of the fence.
func (b *book) schedule() {
	s := b.scheduled()
	f, least, under := s.f, drawing.Micron(leastLine), drawing.Micron(0)
	if b.order != nil {
		if under = b.underSchedule(s); under > 0 {
			least = joinedLine
		}
	}
	if len(s.lines) == 0 {
		f.nothingCut()
		return
	}
	for i, leaf := range f.parted(s.lines, s.end+under, least) {
		if i > 0 {
			f.turn()
		}
		if len(leaf) > 0 {
			f.cutNames()
		}
		for _, l := range leaf {
			f.write(l)
		}
	}
	f.cutEnd()
}

// scheduled begins the schedule and makes its lines.
func (b *book) scheduled() scheduled {
	s := scheduled{f: b.flow(subject{title: "Cut schedule"}, false), leaves: 1}
	f := s.f
	if b.plan.Room.Stands() {
		f.words(plain, "What is set already is not in this list.")
	}
	if len(b.cuts.Groups) == 0 {
		s.end = f.tried((*flow).nothingCut)
		return s
	}
	f.words(plain, b.cutSummary()+b.said())
	f.markWords()
	rows := b.rows()
	partners := b.partners(rows)
	for i, r := range rows {
		s.lines = append(s.lines, f.cutLine(r, partners[i]))
	}
	s.end = f.tried((*flow).cutEnd)
	s.leaves = len(f.parted(s.lines, s.end, leastLine))
	return s
}

// nothingCut is all of the schedule of a room in which no tile is cut.
func (f *flow) nothingCut() {
	f.words(body, "No piece is to be cut.")
	f.sheetTable()
	f.trimTable()
	f.mitreTable()
}

// cutSummary says how the lines are meant and what they come to.
func (b *book) cutSummary() string {
	tiles, two := b.cuts.Offcuts.TilesCut, b.cuts.Offcuts.TilesSaved
	for _, o := range b.cuts.Others {
		tiles, two = tiles+o.TilesCut, two+o.TilesSaved
	}
	text := fmt.Sprintf("Size to set the fence to · cut from the face side · %d pieces, %d lines, out of %d tiles", len(b.cuts.Cuts), len(b.cuts.Groups), tiles)
	if two > 0 {
		text += fmt.Sprintf(", %d of which %s two", two, gives(two))
	}
	return text + " · " + held("kerf "+b.fine(b.opts.Saw.Kerf)) + "."
}

// cutEnd is what stands under the last line.
func (f *flow) cutEnd() {
	f.y += 1500
	f.percent = 80
	f.sheetTable()
	f.trimTable()
	f.mitreTable()
	f.cutNotes()
	f.cautions(atTheSaw...)
}

// parted shares lines out to leaves with what stands at their end: no more leaves than
// they must take, as many lines on each so that none is nearly empty, and each line as
// high as that allows and no lower than least.
func (f *flow) parted(lines []cutLine, end, least drawing.Micron) [][]cutLine {
	room := f.left() - columnName.leading() - 600 // a leaf that follows has more, for it has no words
	for leaves := 1; ; leaves++ {
		each := (len(lines) + leaves - 1) / leaves
		for high := drawing.Micron(mostLine); high >= least; high -= 500 {
			for _, most := range []int{each, len(lines)} {
				if out := packed(lines, high, room, end, most); len(out) <= leaves {
					return out
				}
			}
		}
	}
}

// packed fills leaves with lines, none of them lower than high, up to most on each
// and with room for the end on the last, which has no line where there is room beside none.
func packed(lines []cutLine, high, room, end drawing.Micron, most int) (out [][]cutLine) {
	var leaf []cutLine
	var used drawing.Micron
	for i, l := range lines {
		l.high = max(high, l.least)
		last := drawing.Micron(0)
		if i == len(lines)-1 {
			last = end
		}
		if len(leaf) > 0 && (len(leaf) == most || used+l.high+last > room) {
			out, leaf, used = append(out, leaf), nil, 0
		}
		leaf, used = append(leaf, l), used+l.high
	}
	if out = append(out, leaf); used+end > room { // one line, and no room under it
		out = append(out, nil)
	}
	return out
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
}{{0, "line"}, {70, "count"}, {165, "set the fence to"}, {475, "from the face"}, {605, "cut, and where it goes"}, {810, "from one tile"}, {950, "done"}}

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

// kinds names the cut of a row, and how many of its pieces are mirrored.
func (s sawn) kinds() string {
	if s.mirrored > 0 {
		return kindWords(s.Group) + fmt.Sprintf("; %d mirrored", s.mirrored)
	}
	return kindWords(s.Group)
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
		all = append(all, held(fmt.Sprintf("%s %s %d", p.Wall, sideText(p.Side), len(p.Pieces))))
	}
	return strings.Join(all, " · ")
}

// partners says of each row what else comes out of its tiles.
func (b *book) partners(rows []sawn) []string {
	at, number := map[string]int{}, map[string]int{}
	for i, s := range rows {
		for _, id := range s.Pieces {
			at[id] = i
		}
	}
	for i, g := range b.cuts.Groups {
		number[g.ID] = i + 1
	}
	with := make([]map[int]int, len(rows))
	for i := range with {
		with[i] = map[int]int{}
	}
	for _, p := range b.cuts.Offcuts.Pairs {
		a, z := at[p[0]], at[p[1]]
		with[a][z]++
		if a != z {
			with[z][a]++
		}
	}
	out := make([]string, len(rows))
	for i := range rows {
		var parts []string
		var others []int
		if n := with[i][i]; n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s two", n, gives(n)))
		}
		n := 0
		for other, s := range rows {
			if k := with[i][other]; k > 0 && other != i {
				n, others = n+k, append(others, number[s.ids[0]])
			}
		}
		if n > 0 {
			parts = append(parts, held(fmt.Sprintf("%d with", n))+hold+"C"+coursesText(others))
		}
		if out[i] = strings.Join(parts, ", "); len(parts) == 0 {
			out[i] = "–"
		}
	}
	return out
}

// gives is what one tile does, or several.
func gives(n int) string {
	if n == 1 {
		return "gives"
	}
	return "give"
}

// markWords say how marks are read, over the first line that has some.
func (f *flow) markWords() {
	most, shown := 0, false
	for _, g := range f.book.cuts.Groups {
		if f.book.marked(g) {
			most, shown = max(most, len(g.Saws)), true
		}
	}
	if !shown {
		return
	}
	text := cuts.Corners
	if most > 1 {
		text += " Where a tile has several cuts, mark all of them before the first is sawn."
	}
	f.words(plain, text)
}

// cutNotes explain what the lines say, once.
func (f *flow) cutNotes() {
	up := ", the arrow points up"
	if !slices.ContainsFunc(f.book.cuts.Groups, func(g cuts.Group) bool { return g.Outline == nil }) {
		up = ", dashed is the whole tile"
	}
	text := "Heavy edges are cut" + up + ". Sizes are rounded down, so that no piece is larger than its place."
	if f.book.opts.Saw.Turn && !f.book.plan.Room.Tile.Grain {
		text += " Turned end for end, a cross cut serves left and right."
	}
	has := func(how cuts.How) bool {
		return slices.ContainsFunc(f.book.cuts.Groups, func(g cuts.Group) bool { return g.How == how })
	}
	if len(f.book.rows()) < len(f.book.cuts.Groups) {
		text += " Lines that are one cut stand together, each by its number. Mirrored: at the same settings, from the other end of the tile."
	}
	if has(cuts.InPlace) {
		text += " Measure in place: hold the tile up and mark it."
	}
	if has(cuts.FirstCourse) {
		text += " By the first-course sheet: each tile has its own two heights."
	}
	if n := f.book.cuts.Offcuts.Nearly; n > 0 {
		near := cuts.Near(f.book.plan.Room.Units)
		tiles := fmt.Sprintf("%d tiles", n)
		if n == 1 {
			tiles = "1 tile"
		}
		text += fmt.Sprintf(" %s less at the cuts would save %s.", f.book.fine(near), tiles)
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
