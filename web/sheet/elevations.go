package sheet

import (
	"cmp"
	"slices"
	"strings"

	"coursewright/layout/finding"
	"coursewright/web/drawing"
)

// elevations makes one sheet of each wall, in setting order: its drawing at the
// largest scale of the ladder that leaves room for its cut list.
func (b *book) elevations() {
	done := map[int]bool{}
	for _, i := range b.inOrder() {
		if panel := b.panelOf(i); panel >= 0 && !done[i] && !done[panel] && b.withPanel(i, panel) {
			done[i], done[panel] = true, true
		}
		if !done[i] {
			done[i] = true
			b.elevation(i)
		}
	}
}

// inOrder lists the walls in setting order.
func (b *book) inOrder() []int {
	order := make([]int, len(b.plan.Walls))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int { return b.plan.Walls[i].Found.Order - b.plan.Walls[j].Found.Order })
	return order
}

// lie is how a drawing and its list lie on a sheet.
type lie struct {
	scale        drawing.Scale
	wide, beside bool // the paper on its long side; the list at the right of the drawing
	columns      int  // of the list under it, where it stands in several
	narrow       bool // the list may be as narrow as its smallest text allows
}

// lies are the ways to lay a drawing of a scale and its list on a sheet, the usual ones first.
func lies(scale drawing.Scale) []lie {
	return []lie{{scale: scale}, {scale: scale, wide: true, beside: true}, {scale: scale, beside: true}, {scale: scale, wide: true},
		{scale: scale, columns: 2}, {scale: scale, columns: 3}, {scale: scale, wide: true, columns: 3},
		{scale: scale, beside: true, narrow: true}, {scale: scale, columns: 4, narrow: true}, {scale: scale, wide: true, beside: true, narrow: true}}
}

const (
	leastList = 52 * mmPaper // how narrow a cut list may be beside a drawing, with text of the usual size
	listGap   = 4 * mmPaper
	named     = 5 // scales of the ladder with names of their own; smaller ones are for halls
)

// elevation lays one wall on a sheet: upright or wide, its list below or beside.
func (b *book) elevation(wall int) {
	below, beside := b.wallCuts(b.plan.Walls[wall], false), b.wallCuts(b.plan.Walls[wall], true)
	scales := ladder(b.plan.Room.Units)
	if b.plan.Walls[wall].Top != nil && b.withTop(wall, below, beside) {
		return
	}
	smallest := b.smallest(wall, scales)
	for i, scale := range scales {
		if i <= smallest && b.laidAt(wall, scale, i > named) {
			return
		}
		if i == min(named, smallest) {
			b.apart(wall, below)
			return
		}
	}
	f := b.flow(subject{title: "Wall", wall: wallText(b.plan.Walls[wall].Found)}, false)
	f.words(body, "This wall is too large to be drawn on "+b.opts.Paper.Name+". Take A3 or Tabloid, or look at it on the screen.")
	f.findings(wall)
	f.insides(wall)
}

// smallest is the last scale of the ladder at which a wall is drawn beside its list: of a
// pattern, whose pieces have their sizes written in them one by one, the next to the largest
// at which it goes on a leaf by itself.
func (b *book) smallest(wall int, scales []drawing.Scale) int {
	if len(inPattern(b.plan.Walls[wall])) > 0 {
		for i, scale := range scales {
			for _, wide := range []bool{false, true} {
				if b.wallLeaf(wall, lie{scale: scale, wide: wide}) != nil {
					return i + 1
				}
			}
		}
	}
	return len(scales)
}

// laidAt lays a wall and its list on a leaf at a scale, if they go on it; anyhow lets the list
// run on. A leaf that has room to say where the findings stand comes before one that has not.
func (b *book) laidAt(wall int, scale drawing.Scale, anyhow bool) bool {
	below, beside := b.wallCuts(b.plan.Walls[wall], false), b.wallCuts(b.plan.Walls[wall], true)
	for _, kept := range []struct {
		free  drawing.Micron
		leans bool
	}{{b.pointer(wall), true}, {b.pointer(wall), false}, {0, false}} {
		free := kept.free
		for _, l := range lies(scale) {
			f, t := b.wallLeaf(wall, l), below
			if l.beside || l.columns > 0 {
				t = beside
			}
			if l.columns > 0 && free < b.pointer(wall) {
				continue // no larger drawing is worth a number in a ring of which nothing is said
			}
			if f != nil {
				f.leans = kept.leans
			}
			if f != nil && (f.holds(t, free, l.columns, wall) || anyhow && l.columns == 0 && !l.narrow) {
				b.leaves = append(b.leaves, f.leaf)
				f.list(t, free+f.inColumn(0, max(l.columns, 1)).notesHigh(wall), l.columns).findings(wall)
				f.insides(wall)
				b.walls = append(b.walls, f)
				return true
			}
		}
	}
	return false
}

// pointer is the room for the line that says on which sheet the findings of a wall stand.
func (b *book) pointer(wall int) drawing.Micron {
	if slices.ContainsFunc(b.plan.Findings, func(x finding.Finding) bool { return ofWall(x, wall) }) {
		return plain.leading() + 100
	}
	return 0
}

// holds finds a size of text at which a list fits on what is left of the leaf, but for what is kept free and for the notes of its wall.
func (f *flow) holds(t table, free drawing.Micron, columns, wall int) bool {
	for _, f.percent = range append(slices.Clone(percents), smallest) {
		keep := free + f.inColumn(0, max(columns, 1)).notesHigh(wall)
		if keep == 0 {
			keep = -tableGap // nothing stands under it
		}
		if columns == 0 && f.breadth() >= leastAt(f.percent) && f.high(t) <= f.left()-keep || columns > 0 && f.holdsIn(t, keep, columns) {
			return true
		}
	}
	return false
}

// leastAt is how narrow a cut list may be with text of some size.
func leastAt(percent drawing.Micron) drawing.Micron { return leastList * percent / 100 }

// list writes a cut list, in columns if there are to be some, and gives where what follows it goes.
func (f *flow) list(t table, free drawing.Micron, columns int) *flow {
	if columns > 0 {
		return f.inColumns(t, free, columns)
	}
	f.table(t)
	return f
}

// wallLeaf lays a drawing on a leaf of its own that is not yet in the book, and
// gives what is left of it to write on; nil where the drawing does not fit.
func (b *book) wallLeaf(wall int, l lie) *flow {
	sheet := &leaf{subject: subject{kind: b.now, title: "Wall", wall: wallText(b.plan.Walls[wall].Found), scale: l.scale}, size: b.opts.Paper.lie(l.wide)}
	lo, hi := sheet.area()
	o := drawing.Options{Sheet: true, Scale: l.scale, Lines: b.cuts.Lines()}
	if !l.beside {
		o.Wide = hi.X - lo.X
	}
	f := &flow{leaf: sheet, book: b, wide: l.wide, percent: 100, y: lo.Y, lo: lo, hi: hi}
	least := drawing.Micron(leastList)
	if l.narrow {
		least = leastAt(percents[len(percents)-1])
	}
	s := drawing.Elevation(b.plan, wall, o)
	if l.beside && s.Height > hi.Y-lo.Y { // a wider heading takes fewer lines
		o.Wide = hi.X - lo.X - listGap - least
		s = drawing.Elevation(b.plan, wall, o)
	}
	if s.Width > hi.X-lo.X || s.Height > hi.Y-lo.Y || l.beside && hi.X-lo.X-s.Width < least+listGap {
		return nil
	}
	sheet.lay(lo, s)
	if l.beside {
		f.lo.X += s.Width + listGap
		f.foot = lo.Y + s.Height + 1000
		f.y += 12 * mmPaper
	} else {
		f.y += s.Height + 1000
	}
	return f
}

// apart gives a wall whose list finds no room beside its drawing two sheets.
func (b *book) apart(wall int, t table) {
	for _, scale := range ladder(b.plan.Room.Units) {
		for _, wide := range []bool{false, true} {
			if f := b.wallLeaf(wall, lie{scale: scale, wide: wide}); f != nil {
				b.leaves = append(b.leaves, f.leaf)
				sheet := *f.leaf
				sheet.title, f.leaf = "Cut list", &sheet
				f = f.onFewest(t)
				f.findings(wall)
				f.insides(wall)
				return
			}
		}
	}
}

// onFewest writes a table on leaves of its own, as few as it takes with text down to four fifths of its
// size, and as large as it goes on these.
func (f *flow) onFewest(t table) *flow {
	fewest, size, before := 0, f.percent, f.book.mark()
	for _, percent := range percents {
		f.written(t, percent)
		if n := len(f.book.leaves) - before.leaves; fewest == 0 || n < fewest {
			fewest, size = n, percent
		}
		f.book.back(before)
	}
	return f.written(t, size)
}

// written is the flow after it has written a table with text of that size, from the next leaf on.
func (f *flow) written(t table, percent drawing.Micron) *flow {
	out := *f
	out.percent = percent
	out.turn()
	out.table(t)
	return &out
}

// ofWall tells whether a finding is told by its number on the sheet of a wall; cautions stand
// with the work they belong to.
func ofWall(x finding.Finding, wall int) bool { return x.Wall == wall && x.Grade != finding.Caution }

// findings writes the notes of a wall and lists what stands on its drawing, by the number at its place,
// as far as there is room; the rest goes on to the sheet of findings, and a line
// that says so is left room for.
func (f *flow) findings(wall int) {
	f.notes(wall)
	var all []later
	high := drawing.Micron(0)
	for i, x := range f.book.plan.Findings {
		if ofWall(x, wall) {
			all = append(all, later{number(i + 1), strings.TrimSpace(x.Text + " " + x.Do), f})
			high += f.bulletHigh(all[len(all)-1].text)
		}
	}
	room := f.left()
	if high > room {
		room -= f.of(plain).leading()
	}
	for _, l := range all {
		if room -= f.bulletHigh(l.text); room >= 0 {
			f.bullet(l.sign, l.text)
			continue
		}
		room += f.bulletHigh(l.text)
		l.text = wallText(f.book.plan.Walls[wall].Found) + ": " + l.text
		f.book.later = append(f.book.later, l)
	}
}

// bulletHigh is how high a text behind a sign is.
func (f *flow) bulletHigh(text string) drawing.Micron {
	p := f.of(plain)
	return drawing.Micron(len(p.wrap(text, f.breadth()-9000)))*p.leading() + p.size/3
}

// later is a finding for which its own sheet had no room.
type later struct {
	sign, text string
	from       *flow // of its own sheet
}

// findingsLeft writes the findings that found no room on their own sheets on the first list with
// room for each, and the rest on a sheet of their own; all of them there, if it were nearly empty
// otherwise. The sheets of the walls then say where they stand.
func (b *book) findingsLeft() {
	if len(b.later) == 0 {
		return
	}
	lists := b.listsFor(b.later)
	where, begun := make([]*leaf, len(b.later)), map[*flow]bool{}
	for i, l := range b.later {
		if f := lists[i]; f != nil {
			if !begun[f] {
				f.add(func(f *flow) { f.sub(findingsTold) })
			}
			f.add(func(f *flow) { f.bullet(l.sign, l.text) })
			where[i], begun[f] = f.leaf, true
		}
	}
	if slices.Contains(where, nil) && !b.findingsUnder(where) {
		if b.now == Measuring { // whose title block is filled in by hand
			b.now = b.first(Elevations)
		}
		b.fitted(subject{title: "Findings"}, false, func(f *flow) {
			f.words(plain, "By their numbers on the walls.")
			for i, l := range b.later {
				if where[i] == nil {
					f.bullet(l.sign, l.text)
				}
			}
		})
	}
	b.pointTo(where)
}

// findingsUnder writes the findings that stand nowhere yet under a list that has room for all of them in smaller text, and tells
// whether there is one.
func (b *book) findingsUnder(where []*leaf) bool {
	write := func(f *flow) {
		f.sub(findingsTold)
		for i, l := range b.later {
			if where[i] == nil {
				f.bullet(l.sign, l.text)
			}
		}
	}
	for _, f := range slices.Backward(b.flows) {
		if f.kind != Measuring && f.kind != Elevations && b.refill(f, write) {
			for i := range where {
				where[i] = cmp.Or(where[i], f.leaf)
			}
			return true
		}
	}
	return false
}

const findingsTold = "Findings, by their numbers on the walls"

// fewest is how many findings a sheet of their own has at the least, if there are so many.
const fewest = 5

// listsFor finds the lists that have room for findings; nil for those that have none.
func (b *book) listsFor(all []later) []*flow {
	out, left, rest := make([]*flow, len(all)), map[*flow]drawing.Micron{}, 0
	for i, l := range all {
		for _, f := range b.flows {
			room, begun := left[f]
			if !begun {
				room = f.left() - 1500 - f.of(large).leading() - f.of(plain).leading()
			}
			if room -= f.bulletHigh(l.text); f.kind != Measuring && room >= 0 {
				out[i], left[f] = f, room
				break
			}
		}
		if out[i] == nil {
			rest++
		}
	}
	if rest > 0 && rest < fewest {
		return make([]*flow, len(all))
	}
	return out
}

// pointTo says on the sheets of the walls on which sheets their findings stand: on those given, or
// on the last. Where a list beside a drawing leaves no room for it, it stands under the drawing.
func (b *book) pointTo(where []*leaf) {
	for i := 0; i < len(b.later); {
		from, line, sheet := b.later[i].from, "Findings", 0
		for ; i < len(b.later) && b.later[i].from == from; i++ {
			n := slices.Index(b.leaves, where[i]) + 1
			if n == 0 {
				n = len(b.leaves)
			}
			if sheet != 0 && n != sheet {
				line += ": sheet " + number(sheet) + ";"
			} else if sheet != 0 {
				line += ","
			}
			line, sheet = line+" "+b.later[i].sign, n
		}
		from.pointing(line+": sheet "+number(sheet)+".", "Findings: sheet "+number(sheet)+".")
	}
}

// pointing writes a line where there is room for all of it, in the list or under the drawing beside it, or else its
// short form: it begins no leaf.
func (f *flow) pointing(line, short string) {
	room := func(at *flow, text string) bool {
		p := at.of(plain)
		return at.left() >= drawing.Micron(len(p.wrap(text, at.breadth())))*p.leading()
	}
	for _, text := range []string{line, short} {
		places := []*flow{f}
		if f.foot > 0 {
			places = append(places, f.underDrawing())
		}
		for _, at := range places {
			if room(at, text) {
				at.words(plain, text)
				return
			}
		}
	}
}
