package drawing

import (
	"slices"
	"strings"

	"coursewright/layout"
	"coursewright/layout/plane"
	"coursewright/layout/stages"
)

// wallHigh is how high one wall may stand on a narrow screen.
const wallHigh = 600 * px

// single is the drawing of one wall in the making.
type single struct {
	*board
	opt     Options
	w       layout.Wall
	r       plane.Rect
	f       frame
	up      []station
	along   []station
	courses []tally
	over    overhead
	axis    Micron // of the rail
	foot    Micron // the baseline of the first line under the wall
	dims    Micron // the level string
	heading Micron // how far the heading reaches down
}

// Elevation draws one wall of the plan as seen from inside the room. The wall
// must be an index into plan.Walls; any other gives an empty scene.
func Elevation(plan layout.Plan, wall int, o Options) Scene {
	if wall < 0 || wall >= len(plan.Walls) {
		return Scene{}
	}
	w := plan.Walls[wall]
	s := &single{board: newBoard(plan, o.texts(o.alone())), opt: o, w: w, r: extents(w), f: frame{wall: wall}}
	s.Title = "Wall " + w.Found.Letter + ", " + w.Found.Name
	s.Describe, s.alone, s.paper = s.story(w), &wall, o.Sheet
	s.Finished, s.lines = o.Finish, o.Lines
	if !o.Finish {
		s.up, s.along, s.courses = s.heights([]layout.Wall{w}), s.widths(w), s.tallies(w)
	}
	s.lay()
	s.common()
	s.parts([]frame{s.f}, func(int) { s.part() }, true, o)
	if o.Handles && !o.Finish {
		s.pick([]layout.Wall{w})
	}
	return s.Scene
}

// lay finds the scale and the places of everything.
func (s *single) lay() {
	left, right := Micron(edgeRoom), Micron(edgeRoom)
	if !s.opt.Finish {
		left += s.railWidth(s.up, courseCaption, baseCaption([]layout.Wall{s.w})) + railRoom
		right += s.numberRoom(s.withHeights())
	}
	s.Scale = s.opt.Scale
	if s.Scale == (Scale{}) {
		s.Scale = fit(s.r.Width(), s.opt.wide()-left-right).or(fit(s.r.Height(), s.opt.high(wallHigh)))
	}
	on := s.Scale.On(s.r.Width())
	s.Width = left + on + right
	if s.opt.Scale == (Scale{}) {
		left += (s.opt.wide() - s.Width) / 2
		s.Width = s.opt.wide()
	} else {
		s.Width = max(s.Width, s.headingWidth())
	}
	s.f.scale, s.f.origin.X = s.Scale, left-s.Scale.On(s.r.Left)
	s.axis = left - railRoom
	s.upright()
}

// upright finds the heights of everything.
func (s *single) upright() {
	high := Micron(0)
	if !s.opt.Finish {
		s.over = s.heads(s.columnsOf(s.f, s.w), s.Scale.On(s.r.Width()), s.Scale.On(s.r.Width()))
		high = s.over.lines * leading(s.texts.figure)
		if s.plan.Room.Bond.Plumb {
			high += leading(s.texts.note)
		}
	}
	s.heading = s.headingHeight()
	s.f.origin.Y = s.heading + high + s.ceiling(s.w) + headRoom + s.Scale.On(s.r.Top)
	low := s.f.at(0, s.r.Bottom).Y + ground
	base := low - ground
	if t, found := footOf(s.f, s.w); found {
		base = t.low
	}
	struck, _ := s.struckOn(s.w)
	s.foot = max(base, s.f.at(0, struck).Y) + ground + pointerHigh + 5*px + rise(s.texts.figure)
	s.dims = max(s.foot+2*s.footStep(), low+leading(s.texts.note)+footGap)
	s.Height = s.dims + s.stringHeight(s.along, s.Width-2*edgeRoom) + edgeRoom + s.legendHeight(s.Width-2*edgeRoom) + headRoom
	if s.opt.Finish {
		s.Height = low + edgeRoom
	}
}

// common draws the heading, the rail, the level line behind the wall, and what
// stands under it.
func (s *single) common() {
	s.head()
	if s.opt.Finish {
		return
	}
	right := s.f.at(s.r.Right, 0).X
	if s.level = s.f.origin.Y; s.levelSeen() {
		s.levelLine(-1, s.f.origin.Y, s.axis, right+lineReach)
		s.keepLevel(s.axis, right+lineReach)
	}
	caption := s.foot - rise(s.texts.figure)
	s.rail(s.axis, s.f.origin.Y, s.Scale, s.up, s.heading, caption)
	l := Label{Tag: Tag{Kind: Dim, Wall: -1}, Size: s.texts.note, Anchor: Right, Colour: Blue, At: Point{s.axis - railGap, s.foot}}
	if l.Text = courseCaption; s.inCourses() {
		s.label(l)
		l.At.Y += s.footStep()
	}
	if l.Text, l.Colour = baseCaption([]layout.Wall{s.w}), Black; l.Text != "" {
		s.label(l)
	}
	s.numbers(Tag{Kind: Course, Wall: s.f.wall}, s.f.origin.Y, s.Scale, right, s.courses, 1, len(s.withHeights()) > 0)
	s.legend(Point{edgeRoom, s.Height - s.legendHeight(s.Width-2*edgeRoom) - edgeRoom/2}, s.Width-2*edgeRoom)
}

// levelSeen tells whether the level line runs through the drawing: over a curb it runs
// above the heading.
func (s *single) levelSeen() bool { return s.heading <= s.f.origin.Y && s.f.origin.Y <= s.Height }

// part draws the wall and all that is written with it.
func (s *single) part() {
	if s.opt.Finish {
		s.finished(s.f, s.w)
		return
	}
	left, right := s.f.at(s.r.Left, 0).X, s.f.at(s.r.Right, 0).X
	s.wall(s.f, s.w, true)
	if s.levelSeen() {
		s.levelLine(s.f.wall, s.f.origin.Y, left-lineReach, right+lineReach)
	}
	y := s.f.at(0, s.r.Top).Y - s.ceiling(s.w) - headRoom
	if s.plan.Room.Bond.Plumb {
		s.columnNumbers(s.f, s.w, y)
		y -= leading(s.texts.note)
	}
	s.overhang(s.f, s.over, left, right, y)
	if edge, ok := s.struckEdge(s.w); ok {
		s.pointer(s.f.wall, Point{s.f.at(edge, 0).X, s.foot - rise(s.texts.figure) - pointerHigh - 3*px})
	}
	s.keepLegs(s.f, s.w)
	s.footLines(s.f, s.w, s.foot)
	s.across(s.f, s.dims, s.along, edgeRoom, s.Width-edgeRoom)
	s.written(s.f, s.w, s.over.said, true)
}

// wall draws everything that stands on a wall itself, from the ground up.
func (b *board) wall(f frame, w layout.Wall, full bool) {
	b.base(f, w, full)
	b.head(f, w, full)
	b.ends(f, w)
	b.pieces(f, w)
	b.outline(f, w)
	over := Micron(0)
	if full {
		over = lineReach
	}
	b.startLine(f, w)
	b.lap(f, w)
	b.openings(f, w)
	b.fixtures(f, w)
	b.turnedEdges(f, w)
	b.topOver(f, w)
	b.courseLine(f, w, over)
	b.start(f, w)
}

// Key plan beside a heading.
const (
	keyWide = 26 * Millimetre
	keyHigh = 14 * Millimetre
)

// keySize is the key plan's room: smaller where the drawing is narrow.
func (s *single) keySize() Point {
	if s.Width < 3*keyWide+2*edgeRoom {
		return Point{keyWide * 2 / 3, keyHigh * 2 / 3}
	}
	return Point{keyWide, keyHigh}
}

func (s *single) seenLines() []string {
	return linesOf(s.seen()+s.courseHeights()+s.levelFrom(s.w)+s.turnsText(s.w)+topText(s.w), s.texts.note, s.Width-s.keySize().X-3*edgeRoom)
}

// withHeights are the courses whose heights are written beside the wall: on a phone none.
func (s *single) withHeights() []tally {
	if s.opt.narrow() {
		return nil
	}
	return s.courses
}

// courseHeights says which edge of a course the heights beside it are of.
func (s *single) courseHeights() string {
	if !slices.ContainsFunc(s.withHeights(), func(c tally) bool { return c.whole && c.number%5 == 0 }) {
		return ""
	}
	if s.strike.Level == stages.Corner {
		return ", of a course its lowest corner"
	}
	return ", of a course its bottom edge"
}

// headingWidth is the least width that the heading asks for on paper: what it is laid
// out for.
func (s *single) headingWidth() Micron { return max(100*Millimetre, s.opt.Wide) }

// headingHeight is the room of the heading.
func (s *single) headingHeight() Micron {
	if s.opt.Finish {
		return edgeRoom + leading(s.texts.letter)
	}
	words := rise(s.texts.letter) + fall(s.texts.letter) + Micron(len(s.seenLines()))*leading(s.texts.note)
	return edgeRoom + max(words, s.keySize().Y) + headRoom
}

// head is the wall's letter and name, from where it is seen, and the key plan.
func (s *single) head() {
	tag, at := Tag{Kind: Name, Wall: -1}, Point{edgeRoom, edgeRoom + rise(s.texts.letter)}
	letter := Label{Tag: tag, Text: s.w.Found.Letter, Size: s.texts.letter, Bold: true, At: at, Colour: Black}
	s.label(letter)
	space := s.Width - s.keySize().X - 3*edgeRoom - letter.width() - 8*px
	name := short(wallName(s.w.Found.Name), s.texts.name, space*9/10)
	s.label(Label{Tag: tag, Text: name, Size: s.texts.name, Bold: true, At: Point{at.X + letter.width() + 8*px, at.Y}, Colour: Black})
	if s.opt.Finish {
		return
	}
	at.Y += fall(s.texts.letter) + rise(s.texts.note)
	for _, line := range s.seenLines() {
		s.label(Label{Tag: tag, Text: line, Size: s.texts.note, At: at, Colour: Grey})
		at.Y += leading(s.texts.note)
	}
	s.keyPlan(Point{s.Width - edgeRoom - s.keySize().X, edgeRoom}, s.keySize(), s.f.wall)
}

// wallName is the name as a heading: "left" becomes "left wall".
func wallName(name string) string {
	if strings.HasSuffix(name, "wall") {
		return name
	}
	return name + " wall"
}

// story tells in words what a wall's drawing shows.
func (b *board) story(w layout.Wall) string {
	cut, sliver := 0, 0
	for _, p := range w.Pieces {
		if !p.Whole {
			cut++
		}
		if p.Sliver {
			sliver++
		}
	}
	struck, name := b.struckOn(w)
	text := counted(len(w.Pieces), "piece") + ", " + counted(cut, "cut piece") + ", " + counted(sliver, "sliver") +
		"; " + name + " " + b.signed(struck) + " from the level line"
	if edge, ok := b.struckEdge(w); ok {
		text += "; start at the " + b.edgeCaption() + " " + b.figure(b.startFigure(w, edge)) + " from the left"
	}
	return text
}
