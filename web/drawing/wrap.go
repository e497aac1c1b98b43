package drawing

import (
	"strconv"
	"strings"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// Room round the walls of a wrap.
const (
	wallGap   = 44 * px  // between two walls on a screen, at the least
	paperGap  = 6000     // and on paper
	spareGap  = 72 * px  // what two walls stand further apart, at most, where there is room
	edgeRoom  = 4 * px   // along the edge of the paper
	headRoom  = 5 * px   // between a wall and what is written over it
	lineReach = 6 * px   // how far lines run past a wall
	wrapHigh  = 420 * px // how high walls may stand on a narrow screen
	leastHigh = 300 * px // of the highest wall, on a screen, where all do not go into the frame
	fewHigh   = 130 * px // of the highest wall, where they do: all four walls of a room are seen at once on a tablet
	pointTo   = 8 * px   // from a pointer to its text
)

// wrap is a wrap in the making: one frame and what is written over it for each
// wall.
type wrap struct {
	*board
	opt      Options
	gap      Micron // between two walls
	stations []station
	frames   []frame
	heads    []overhead
	over     plane.Rect // the highest and the lowest point of all walls
	axis     Micron     // of the rail
	end      Micron     // where the last wall's room ends
	zero     Micron     // the level line
	foot     Micron     // the baseline of the first line under the walls
}

// Wrap draws all walls unfolded side by side on one level line, in the job's
// order, so that the courses are seen to run round the corners. A plan without
// walls gives an empty scene.
func Wrap(plan layout.Plan, o Options) Scene {
	if len(plan.Walls) == 0 {
		return Scene{}
	}
	w := &wrap{board: newBoard(plan, o.texts(wrapTexts)), opt: o, gap: wallGap}
	if o.Sheet {
		w.gap = paperGap
		w.texts.figure, w.texts.note, w.texts.name, w.texts.letter = 3200, 2600, 3600, 7000
	}
	w.Title = "The wrap: all walls on one level line"
	for _, x := range plan.Walls {
		w.Describe += x.Found.Name + ": " + w.story(x) + ". "
	}
	w.Finished = o.Finish
	if !o.Finish {
		w.stations = w.heights(plan.Walls)
	}
	w.lay()
	w.common()
	w.parts(w.frames, w.wallPart, false, o)
	if o.Handles && !o.Finish {
		w.pick(plan.Walls)
	}
	return w.Scene
}

// lay finds the scale and the places of everything.
func (w *wrap) lay() {
	wide := length.Length(0)
	for _, x := range w.plan.Walls {
		r := extents(x)
		w.over.Top, w.over.Bottom = max(w.over.Top, r.Top), min(w.over.Bottom, r.Bottom)
		wide += r.Width()
	}
	left, right := Micron(edgeRoom), Micron(edgeRoom)
	if !w.opt.Finish {
		left += w.railWidth(w.stations, w.edgeCaption(), courseCaption, baseCaption(w.plan.Walls)) + railRoom
		right += w.numberRoom(nil)
	}
	if w.Scale = w.opt.Scale; w.Scale == (Scale{}) {
		w.Scale = fit(w.over.Height(), w.opt.high(wrapHigh))
		for range 8 { // slots do not shrink below their texts
			over := w.slots(left) + right - w.opt.wide()
			if over <= 0 {
				break
			}
			all := w.Scale.On(wide)
			w.Scale = fit(wide, max(all-over, all/4))
		}
		if w.Scale.On(w.over.Height()) < fewHigh && !w.opt.Within { // rather wider than its frame, which scrolls
			w.Scale = fit(w.over.Height(), leastHigh)
		}
	}
	w.end, w.axis = w.slots(left), left-railRoom
	used := w.end + right
	w.Width = used
	if rest := w.opt.wide() - used; w.opt.Scale == (Scale{}) && rest > 0 { // spread what is left over between the walls, and round them
		spare := min(rest/Micron(len(w.frames)), spareGap)
		begin := (rest - spare*Micron(len(w.frames)-1)) / 2
		for i := range w.frames {
			w.frames[i].origin.X += begin + spare*Micron(i)
		}
		w.axis, w.end = w.axis+begin, w.end+begin+spare*Micron(len(w.frames)-1)
		w.Width = w.opt.wide()
	}
	w.upright()
}

// slots lays the walls side by side from a place on, each in room enough for what
// is written with it, and gives where the last one ends.
func (w *wrap) slots(x Micron) Micron {
	w.frames = w.frames[:0]
	for i, wall := range w.plan.Walls {
		r := extents(wall)
		on := w.Scale.On(r.Width())
		slot := max(on, w.need(wall))
		w.frames = append(w.frames, frame{wall: i, scale: w.Scale, origin: Point{x + (slot-on)/2 - w.Scale.On(r.Left), 0}})
		x += slot + w.gap
	}
	return x - w.gap
}

// longName is the longest name, in pixels, that a wall is given room for however narrow it is.
const longName = 110

// need is the room that a wall's texts take, however narrow it is: a start's on
// either side of its pointer.
func (w *wrap) need(wall layout.Wall) Micron {
	letter := BoldWidth(wall.Found.Letter, w.texts.letter) + 8*px
	name := TextWidth(wall.Found.Name, w.texts.name) + 4*clearance
	n := letter + max(52*px, min(name-w.gap, longName*px))
	if wall.Found.Name == w.plan.Walls[len(w.plan.Walls)-1].Found.Name { // no gap after it, and it begins over the wall
		n = max(n, 2*(letter+min(name, longName*px))-w.Scale.On(extents(wall).Width()))
	}
	if w.opt.Finish && w.opt.Scale != (Scale{}) { // on paper a column wide, where a name gives way
		n = letter
	}
	if edge, ok := w.struckEdge(wall); ok && !w.opt.Finish {
		figure := BoldWidth(w.figure(w.startFigure(wall, edge)), w.texts.figure) + pointTo + 2*clearance
		n = max(n, 2*figure)
		if t, found := footOf(frame{scale: w.Scale}, wall); found && t.x1-t.x0 < n { // beside a lower base what is wanting
			n = max(n, w.Scale.On(extents(wall).Width())+2*figure-(t.x1-t.x0))
		}
	}
	return n
}

// startText is what stands at a start.
func (b *board) startText(far length.Length) string { return "START " + b.figure(far) }

// reach is how far to the right the texts over a wall may run.
func (w *wrap) reach(i int) Micron {
	if i == len(w.frames)-1 {
		return w.end
	}
	return w.frames[i].at(extents(w.plan.Walls[i]).Right, 0).X + w.gap - 4*clearance
}

// upright finds the heights of everything.
func (w *wrap) upright() {
	top := edgeRoom + rise(w.texts.letter) + headRoom
	for i, wall := range w.plan.Walls {
		h := overhead{}
		if !w.opt.Finish {
			h = w.board.heads(w.columnsOf(w.frames[i], wall), w.Scale.On(extents(wall).Width()), w.reach(i)-w.frames[i].at(extents(wall).Left, 0).X)
		}
		w.heads = append(w.heads, h)
	}
	w.evenHeads()
	for i, wall := range w.plan.Walls {
		h := w.heads[i]
		over := edgeRoom + rise(w.texts.letter) + fall(w.texts.letter) + headRoom + h.under*leading(w.texts.figure) + w.ceiling(wall) + headRoom
		top = max(top, over-w.Scale.On(w.over.Top-extents(wall).Top))
	}
	w.zero = top + w.Scale.On(w.over.Top)
	low, base := Micron(0), Micron(0)
	for i := range w.frames {
		w.frames[i].origin.Y = w.zero
		if t, found := footOf(w.frames[i], w.plan.Walls[i]); found {
			base = max(base, t.low)
		}
		low = max(low, w.frames[i].at(0, extents(w.plan.Walls[i]).Bottom).Y)
	}
	w.foot = max(base, w.zero-w.Scale.On(w.strike.At)) + ground + footGap + rise(w.texts.figure)
	w.Height = low + ground + edgeRoom
	if !w.opt.Finish {
		lines := Micron(3)
		w.Height = max(low+ground+clearance+leading(w.texts.note), w.foot+lines*w.footStep()) + edgeRoom
		w.Height += w.notesHeight(w.Width - 2*edgeRoom)
	}
}

// evenHeads leaves under the names of walls that end at one height room for as many lines, so
// that the names stand on one line.
func (w *wrap) evenHeads() {
	for i, wall := range w.plan.Walls {
		h := &w.heads[i]
		h.under = h.lines
		for k, other := range w.plan.Walls {
			if away := w.Scale.On(extents(wall).Top) - w.Scale.On(extents(other).Top); max(away, -away) < leading(w.texts.figure) {
				h.under = max(h.under, w.heads[k].lines)
			}
		}
	}
}

// ceiling is how far the ceiling's band stands over a wall.
func (b *board) ceiling(w layout.Wall) Micron {
	if w.Found.Head.Meets {
		return ground
	}
	return 0
}

// common draws what belongs to no wall alone: the level line behind them, the
// rail, the captions, the course numbers and the legend.
func (w *wrap) common() {
	if w.opt.Finish {
		return
	}
	w.levelLine(-1, w.zero, w.axis, w.end+lineReach)
	w.keepLevel(w.axis, w.end+lineReach)
	captions := w.foot - rise(w.texts.figure)
	w.rail(w.axis, w.zero, w.Scale, w.stations, edgeRoom, captions)
	w.captions()
	w.numbers(Tag{Kind: Course, Wall: -1}, w.zero, w.Scale, w.end, w.tallies(w.plan.Walls...), 5, false)
	w.notes(edgeRoom, w.Height-w.notesHeight(w.Width-2*edgeRoom), w.Width-2*edgeRoom)
}

// captions name the lines under the walls, in the rail.
func (w *wrap) captions() {
	y := w.foot
	l := Label{Tag: Tag{Kind: Dim, Wall: -1}, Size: w.texts.note, Anchor: Right, Colour: Blue}
	put := func(text string) {
		l.Text, l.At = text, Point{w.axis - railGap, y}
		if text != "" {
			w.label(l)
		}
		y += w.footStep()
	}
	put(w.edgeCaption())
	if w.inCourses() {
		put(courseCaption)
	}
	l.Colour = Black
	put(baseCaption(w.plan.Walls))
}

// wallPart draws one wall of a wrap and all that is written with it.
func (w *wrap) wallPart(i int) {
	wall, f := w.plan.Walls[i], w.frames[i]
	r := extents(wall)
	if w.opt.Finish {
		w.finished(f, wall)
		w.nameOver(f, wall, f.at(0, r.Top).Y-w.ceiling(wall)-headRoom)
		return
	}
	w.wall(f, wall, false)
	w.levelLine(i, w.zero, f.at(r.Left, 0).X-lineReach, f.at(r.Right, 0).X+lineReach)
	y := f.at(0, r.Top).Y - w.ceiling(wall) - headRoom
	w.overhang(f, w.heads[i], f.at(r.Left, 0).X, f.at(r.Right, 0).X, y)
	w.nameOver(f, wall, y-w.heads[i].under*leading(w.texts.figure)-fall(w.texts.letter))
	w.keepLegs(f, wall)
	w.startUnder(f, wall)
	w.footLines(f, wall, w.foot+w.footStep())
	w.written(f, wall, w.heads[i].said, false)
	w.fold(i)
}

// nameOver writes a wall's letter, name and width over it, on a baseline.
func (w *wrap) nameOver(f frame, wall layout.Wall, y Micron) {
	r := extents(wall)
	tag, at := Tag{Kind: Name, Wall: f.wall}, Point{f.at(r.Left, 0).X, y}
	letter := Label{Tag: tag, Text: wall.Found.Letter, Size: w.texts.letter, Bold: true, At: at, Colour: Black}
	w.label(letter)
	at.X += letter.width() + 8*px
	width := ""
	if !w.opt.Finish {
		width = apart + w.figure(wall.Found.Width)
	}
	space := w.reach(f.wall) - at.X - TextWidth(width, w.texts.name)
	if full := space + TextWidth(width, w.texts.name); TextWidth(wall.Found.Name, w.texts.name) > space && !w.opt.Finish {
		space, width = full, "" // rather no width than half a name
	}
	name := Label{Tag: tag, Text: short(wall.Found.Name, w.texts.name, space) + width, Size: w.texts.name, At: at, Colour: w.measured(w.wallPath(wall) + "width")}
	if w.opt.Finish && w.opt.Scale != (Scale{}) && name.Text != wall.Found.Name {
		return // the letter alone, rather than half a name
	}
	if space > TextWidth("…", w.texts.name) {
		w.label(name)
	}
}

// startUnder points at the tile edge to strike and writes how far it lies from
// the left corner of the boards.
func (w *wrap) startUnder(f frame, wall layout.Wall) {
	edge, ok := w.struckEdge(wall)
	if !ok {
		return
	}
	x, r, far := f.at(edge, 0).X, extents(wall), w.startFigure(wall, edge)
	w.pointer(f.wall, Point{x, w.foot - rise(w.texts.figure)})
	mid, half := f.at((r.Left+r.Right)/2, 0).X, max(w.Scale.On(r.Width()), w.need(wall))/2
	lo, hi := max(mid-half-w.gap/3, 0), min(mid+half+w.gap/3, w.Width)
	l := Label{Tag: Tag{Kind: Start, Wall: f.wall}, Size: w.texts.figure, Bold: true, Colour: Blue}
	for _, l.Text = range []string{w.startText(far), w.figure(far)} {
		if at, found := w.beside(l, x, lo, hi); found {
			l.At = at
			w.label(l)
			return
		}
	}
}

// beside finds a place for a start's text in the line of starts: right of its
// pointer, left of it, or the nearest to either.
func (w *wrap) beside(l Label, x, lo, hi Micron) (Point, bool) {
	wide := l.width()
	for away := Micron(pointTo); away < hi-lo; away += clearance {
		for _, from := range []Micron{x + away, x - away - wide} {
			l.At = Point{from, w.foot}
			if t := l.box(); t.from.X >= lo && t.to.X <= hi && w.vacant(t) {
				return l.At, true
			}
		}
	}
	return Point{}, false
}

// written writes what may stand where there is room: sizes, names of pipes and
// heights of lower bases.
func (b *board) written(f frame, w layout.Wall, said map[string]bool, full bool) {
	for _, x := range b.plan.Findings {
		if x.Wall == f.wall && x.At != nil && b.flagged(x, full) {
			b.keep(box{f.at(x.At.X, x.At.Y), f.at(x.At.X, x.At.Y)}.grown(findingDot))
		}
	}
	b.openingNames(f, w)
	b.fixtureNames(f, w)
	b.sizes(f, w, said)
	b.trimSizes(f, w)
	b.legs(f, w)
	if full {
		b.sheetNames(f)
	}
}

func counted(n int, what string) string {
	if n != 1 {
		what = plural(what)
	}
	return strconv.Itoa(n) + " " + what
}

// plural is the word for several of what a room has.
func plural(what string) string {
	switch stem, shelf := strings.CutSuffix(what, "lf"); {
	case shelf:
		return stem + "lves"
	case strings.HasSuffix(what, "s"), strings.HasSuffix(what, "sh"), strings.HasSuffix(what, "ch"):
		return what + "es"
	}
	return what + "s"
}
