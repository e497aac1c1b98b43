package sheet

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
	"coursewright/layout/trim"
	"coursewright/web/drawing"
)

// notch is one place on the story pole.
type notch struct {
	at     length.Length
	name   string
	colour drawing.Colour
	wall   string // its letter, or empty for the whole room; joined puts it into the name
}

// pole is the story pole: the tiles of one column and everything that stands
// at a height in the room. It reaches from the highest rim, on which it stands
// anywhere, to the lowest ceiling, or to the top of the tile.
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
	struck := stages.ToStrike(b.plan.Room, b.plan.Setout.Line, b.plan.Walls)
	p := pole{marks: []notch{{at: 0, name: "LEVEL LINE", colour: drawing.Red}, {at: struck.At, name: lineMark(struck), colour: drawing.Blue}}}
	p.low, p.top = b.reach()
	low, top := p.low, p.top
	for _, w := range b.plan.Walls {
		r := w.Shape.Region.Bounds()
		low, top = min(low, r.Bottom), max(top, r.Top)
		p.marks = append(p.marks, b.wallMarks(w)...)
	}
	p.marks = slices.Concat(p.marks, b.ceilingMarks(), b.baseMarks(), b.bandMarks())
	p.marks = joined(p.marks)
	p.tiles = b.bySheets(b.column(low, top))
	return p
}

func lineMark(s stages.Struck) string {
	if s.Joint {
		return "FIRST JOINT LINE"
	}
	return "COURSE LINE"
}

// reach is from where to where a pole may go that stands anywhere in the room.
func (b *book) reach() (low, top length.Length) {
	var bases, rims, heads, ends []length.Length
	for _, w := range b.plan.Walls {
		for _, s := range w.Found.Base {
			for _, r := range s.Readings {
				bases = append(bases, r.Value)
				if s.Meets.Rim() {
					rims = append(rims, r.Value)
				}
			}
		}
		for _, r := range w.Found.Head.Readings {
			heads = append(heads, r.Value)
		}
		ends = append(ends, w.Start.Placed.Head, w.Shape.Region.Bounds().Top)
	}
	if len(rims) > 0 {
		bases = rims
	}
	if len(bases) > 0 {
		low = slices.Max(bases)
	}
	if top = slices.Max(ends); len(heads) > 0 {
		top = min(top, slices.Min(heads))
	}
	return min(low, 0), max(top, 0)
}

// joined makes one mark of those at one height, and sorts them upwards. What
// several walls have there is named once, behind their letters.
func joined(all []notch) []notch {
	slices.SortStableFunc(all, func(a, b notch) int { return cmp.Compare(a.at, b.at) })
	var out []notch
	for len(all) > 0 {
		n := 1
		for n < len(all) && all[n].at == all[0].at {
			n++
		}
		out = append(out, together(all[:n]))
		all = all[n:]
	}
	return out
}

// together is one mark for several at one height.
func together(all []notch) notch {
	var names []string
	walls := map[string][]string{}
	m := notch{at: all[0].at}
	for _, n := range all {
		if !slices.Contains(names, n.name) {
			names = append(names, n.name)
		}
		if n.wall != "" && !slices.Contains(walls[n.name], n.wall) {
			walls[n.name] = append(walls[n.name], n.wall)
		}
		if m.colour == drawing.Black {
			m.colour = n.colour
		}
	}
	for i, name := range names {
		names[i] = strings.Join(append(walls[name], name), " ")
	}
	m.name = strings.Join(names, ", ")
	return m
}

// column gives the tiles over each other that reach between two heights, with
// the numbers of their courses.
func (b *book) column(low, top length.Length) []stood {
	if len(b.plan.Setout.Bands) > 0 {
		return b.bandedColumn()
	}
	if b.plan.Setout.Rise > 0 {
		return b.patternColumn()
	}
	tile, pitch := b.plan.Room.Tile.Height, b.plan.Room.Tile.Height+b.plan.Room.Joint
	row := int(length.DivFloor(low-b.plan.Setout.Line+b.plan.Room.Joint, pitch))
	first := b.firstRow(row)
	var out []stood
	for row = max(row, first); ; row++ {
		bottom := b.plan.Setout.Line + length.Length(row)*pitch
		if bottom >= top {
			return out
		}
		out = append(out, stood{row - first + 1, bottom, bottom + tile})
	}
}

// patternColumn gives the courses of a pattern as its tiles stand, each up to the next.
func (b *book) patternColumn() []stood {
	at := plan.PatternCourses(b.plan.Walls...)
	var out []stood
	for _, n := range slices.Sorted(maps.Keys(at)) {
		if last := len(out) - 1; last >= 0 {
			out[last].top = at[n].Bottom
		}
		out = append(out, stood{n, at[n].Bottom, at[n].Top})
	}
	return out
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

// baseMarks are the heights of what the walls stand on, at the stations and by the names that
// the set-out gives them; what is level all round is one mark.
func (b *book) baseMarks() []notch {
	var out []notch
	all := stages.Stations(b.plan.Room.Units, b.plan.Walls)
	for _, s := range all {
		name := strings.TrimPrefix(string(s.Meets), "shower ")
		if slices.ContainsFunc(all, func(t stages.Station) bool { return t.Meets == s.Meets && t.Height != s.Height }) {
			name = s.Name + " " + name
		}
		out = append(out, notch{at: s.Height, name: name})
	}
	return out
}

// ceilingMarks are the heights of the ceiling at the ends of the walls, a corner once and by the name that the
// set-out gives it over the base; where it is level over a wall, one for the wall.
func (b *book) ceilingMarks() []notch {
	var out []notch
	for i, w := range b.plan.Walls {
		if !w.Found.Head.Meets {
			continue
		}
		letter, readings := w.Found.Letter, w.Found.Head.Readings
		left, right := readings[0].Value, readings[len(readings)-1].Value
		if left == right {
			out = append(out, notch{at: left, name: "ceiling", wall: letter})
			continue
		}
		if before := b.cornerBefore(i); before != "" && len(out) > 0 && out[len(out)-1] == (notch{at: left, name: before + " right ceiling"}) {
			out[len(out)-1].name = plan.CornerName(b.plan.Walls, i, true) + " ceiling"
		} else {
			out = append(out, notch{at: left, name: letter + " left ceiling"})
		}
		out = append(out, notch{at: right, name: letter + " right ceiling"})
	}
	return b.closed(out)
}

// closed makes one mark of the last and the first of the ceiling, where a closed room begins and ends in one corner.
func (b *book) closed(ceiling []notch) []notch {
	before, turns := b.plan.Walls[0].Found.Left.Neighbour()
	last := len(ceiling) - 1
	if !turns || last < 1 || ceiling[0] != (notch{at: ceiling[last].at, name: b.letter(0) + " left ceiling"}) || ceiling[last].name != b.letter(before)+" right ceiling" {
		return ceiling
	}
	ceiling[0].name = plan.CornerName(b.plan.Walls, 0, true) + " ceiling"
	return ceiling[:last]
}

// cornerBefore is the letter of the wall that a wall meets at its left, in the order of the walls; empty without one.
func (b *book) cornerBefore(wall int) string {
	before, turns := b.plan.Walls[wall].Found.Left.Neighbour()
	if wall == 0 || !turns || before != wall-1 {
		return ""
	}
	return b.plan.Walls[before].Found.Letter
}

// wallMarks are the heights of one wall: where tile and trim stop, openings, fixtures.
func (b *book) wallMarks(w layout.Wall) []notch {
	var out []notch
	add := func(at length.Length, name string) {
		out = append(out, notch{at: at, name: name, wall: w.Found.Letter})
	}
	if !w.Found.Head.Meets {
		add(w.Start.Placed.Head, "top of the tile")
	}
	if w.Found.Head.Trim != nil && len(w.Trim) > 0 {
		add(trim.Outline(w.Found, w.Start.Placed, b.plan.Room.Units, b.plan.Room.Joint).Bounds().Top, "top of the trim")
	}
	for _, p := range w.Fixtures {
		if p.Found.Kind != survey.GlassLine {
			add(p.At.Y, p.Found.Name)
		}
	}
	for i, o := range w.Found.Openings {
		if o.Kind == survey.Pipe {
			add(o.Up, o.Name)
			continue
		}
		if o.Strip != nil {
			stripNotches(w, i, add)
			continue
		}
		if !o.Doorway {
			add(w.Start.Placed.Openings[i].Bottom, o.Name+" bottom")
		}
		add(w.Start.Placed.Openings[i].Top, o.Name+" top")
	}
	return out
}

// storyPole prints the pole as two lists beside each other: the courses, and
// everything else that stands at a height.
func (b *book) storyPole() {
	p := b.pole()
	b.fitted(subject{title: "Story pole"}, false, func(f *flow) {
		f.words(plain, "For a stick of your own: mark the level line on it first, then everything up and down from there. Its foot stands on the "+b.rim()+" where that is highest, "+
			b.over(p.low)+" the level line."+b.said())
		f.heights(b.courseList(p), b.markList(p))
	})
}

// heights writes the courses and the marks beside each other; where the courses are too many for one leaf even in small
// text, the last of them over the marks.
func (f *flow) heights(courses, marks table) {
	const share = 45
	small := *f.inColumn(0, 2)
	small.percent = percents[len(percents)-1]
	if small.high(courses) <= f.left() {
		f.abreast(share, courses, marks)
		return
	}
	for {
		first, rest := f.inColumn(0, 2).evenly(courses, marks)
		parts := f.inColumn(0, 2).filled(courses, f.left())
		if len(parts) <= 2 || f.fitAbreast(share, first, rest, marks) {
			f.abreast(share, first, rest, marks)
			return
		}
		f.abreast(50, parts[0], parts[1]) // the marks go on the last leaf
		courses = courses.of(courses.rows[len(parts[0].rows)+len(parts[1].rows):])
		f.turn()
	}
}

// evenly parts the courses so that the first of them are about as high as the rest with the marks.
func (f *flow) evenly(courses, marks table) (first, rest table) {
	n := len(courses.rows)
	for n > 1 && f.high(courses.of(courses.rows[:n-1])) >= f.high(courses.of(courses.rows[n-1:]))+f.high(marks) {
		n--
	}
	return courses.of(courses.rows[:n]), courses.of(courses.rows[n:])
}

// courseFoot is what of a course its height is measured to.
func (b *book) courseFoot() string {
	if stages.ToStrike(b.plan.Room, b.plan.Setout.Line, b.plan.Walls).Level == stages.Corner {
		return "its lowest corner"
	}
	return "its bottom edge"
}

// courseList has the courses from the top down.
func (b *book) courseList(p pole) table {
	t := table{columns: []column{{name: "course", share: 16, bold: true}, {name: b.courseFoot(), share: 33, right: true}, {name: "from the foot", share: 33, right: true}}}
	for _, u := range slices.Backward(p.tiles) {
		t.rows = append(t.rows, row{cells: []string{number(u.course), held(b.signed(u.bottom)), b.fromFoot(p, u.bottom)}})
	}
	return t
}

// markList has the other marks from the top down.
func (b *book) markList(p pole) table {
	t := table{columns: []column{{name: "mark", share: 46, bold: true}, {name: "from the level line", share: 32, right: true}, {name: "from the foot", share: 33, right: true}}}
	for _, m := range slices.Backward(p.marks) {
		t.rows = append(t.rows, row{cells: []string{m.name, held(b.signed(m.at)), b.fromFoot(p, m.at)}})
	}
	return t
}

// fromFoot is a height over the foot of the pole.
func (b *book) fromFoot(p pole, at length.Length) string {
	if at < p.low {
		return "–"
	}
	return held(b.bareTape(at - p.low))
}
