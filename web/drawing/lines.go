package drawing

import (
	"cmp"
	"slices"
	"strconv"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
)

// levelLine draws the one red line, over the whole width given: behind the
// walls, and over each of them again.
func (b *board) levelLine(wall int, y, from, to Micron) {
	b.level = y
	b.chain(Tag{Kind: LevelLine, Wall: wall}, line(Red, 500), Point{from, y}, Point{to, y})
}

// keepLevel keeps texts off the level line.
func (b *board) keepLevel(from, to Micron) {
	b.keep(box{Point{from, b.level - 350}, Point{to, b.level + 350}})
}

// courseLine draws the line to strike, with a flag at each end where it runs
// over the wall.
func (b *board) courseLine(f frame, w layout.Wall, over Micron) {
	y, _ := b.struckOn(w)
	r := extents(w)
	if y < r.Bottom || y > r.Top {
		return
	}
	a, z := f.at(r.Left, y), f.at(r.Right, y)
	tag := Tag{Kind: CourseLine, Wall: f.wall}
	b.chain(tag, line(Blue, 500), Point{a.X - over, a.Y}, Point{z.X + over, z.Y})
	if over > 0 {
		b.path(tag, fill(Blue), flag(Point{a.X - over, a.Y}, 1400))
		b.path(tag, fill(Blue), flag(Point{z.X + over, z.Y}, -1400))
	}
}

// flag is an arrow head that points from p towards +x (or −x).
func flag(p Point, d Micron) []Point {
	h := max(d, -d) / 2
	return []Point{{p.X - d, p.Y - h}, p, {p.X - d, p.Y + h}}
}

// startLine draws the plumb line of the tile edge to strike, from the start
// tile up; it stops at openings.
func (b *board) startLine(f frame, w layout.Wall) {
	edge, ok := b.struckEdge(w)
	if !ok {
		return
	}
	full, _ := b.strike.Full.On(w)
	from, tag := max(full.Bottom, w.Shape.Region.Bounds().Bottom), Tag{Kind: Start, Wall: f.wall}
	stretch := func(to length.Length) {
		if from < to {
			b.chain(tag, broken(Blue, 350, DashDot), f.at(edge, to), f.at(edge, from))
		}
	}
	for _, e := range crossed(w, edge) {
		stretch(e.Bottom)
		from = max(from, e.Top)
	}
	stretch(w.Shape.Region.Bounds().Top)
}

// crossed are the openings over a place along the wall, from the bottom up.
func crossed(w layout.Wall, x length.Length) []survey.Edges {
	var out []survey.Edges
	for _, e := range w.Start.Placed.Openings {
		if e.Left < x && x < e.Right {
			out = append(out, e)
		}
	}
	slices.SortFunc(out, func(a, b survey.Edges) int { return cmp.Compare(a.Bottom, b.Bottom) })
	return out
}

// startTile is the tile to start with, as everywhere else in the program.
func (b *board) startTile(w layout.Wall) (piece.Piece, bool) {
	return stages.StartTile(w, b.strike.Full)
}

// struckEdge is the tile edge to strike on a wall.
func (b *board) struckEdge(w layout.Wall) (length.Length, bool) {
	return stages.Strike(w, b.strike.Full)
}

// startFigure is how far the tile edge to strike lies from the left corner of the
// boards, as a tape shows it that is held along the line struck.
func (b *board) startFigure(w layout.Wall, edge length.Length) length.Length {
	return b.strike.From(w, edge)
}

// edgeCaption is what of a tile is struck on each wall.
func (b *board) edgeCaption() string { return "tile " + string(b.strike.Plumb) }

// edgeName is the same in the least of words.
func (b *board) edgeName() string {
	if b.strike.Plumb == stages.Corner {
		return string(b.strike.Plumb)
	}
	return b.edgeCaption()
}

// struckOn is the line that is struck on some walls, and its name: of a single one that ends under
// the line of the room its own.
func (b *board) struckOn(walls ...layout.Wall) (at length.Length, name string) {
	at = b.strike.At
	if len(walls) == 1 {
		if own, found := b.strike.On(walls[0]); found {
			at = own
		}
	}
	if at == b.plan.Setout.Line {
		return at, "course line"
	}
	return at, "joint line"
}

// start outlines the tile to start with and writes START in it where that fits.
func (b *board) start(f frame, w layout.Wall) {
	t, ok := b.startTile(w)
	if !ok {
		return
	}
	tag := Tag{Kind: Start, Wall: f.wall, Piece: t.ID}
	b.path(tag, line(Blue, 900), f.rings(t.Face)...)
	l := Label{Tag: Tag{Kind: Start, Wall: f.wall}, Text: "START", Size: b.texts.figure, Bold: true, Colour: Blue}
	face := f.rings(t.Face)
	for ; l.Size >= b.texts.least; l.Size -= px / 2 {
		if at, ok := b.room(l, []string{l.Text}, face); ok && l.width()+2*clearance <= f.scale.On(t.Tile.Width()) {
			b.label(centred(l, at))
			return
		}
	}
}

// pointerHigh is how high the sign is that marks a tile edge from below.
const pointerHigh = 8 * px

// pointer marks a tile edge from below, and keeps texts off.
func (b *board) pointer(wall int, at Point) {
	b.keep(box{Point{at.X - 5*px, at.Y}, Point{at.X + 5*px, at.Y + pointerHigh}})
	b.path(Tag{Kind: Pointer, Wall: wall}, fill(Blue), []Point{at, {at.X + 5*px, at.Y + pointerHigh}, {at.X - 5*px, at.Y + pointerHigh}})
}

// Room of the course numbers beside a wall.
const (
	numberGap = 7 * px // from the wall to the number, and on to the height
	leaderTo  = 5 * px // how far a height's leader runs
)

// numberRoom is the room right of a wall that its course numbers take, with the
// heights of joint lines where those are written.
func (b *board) numberRoom(heights []tally) Micron {
	w := numberGap + BoldWidth("888", b.texts.note)
	for _, h := range heights {
		w = max(w, numberGap+BoldWidth("888", b.texts.note)+numberGap+TextWidth(b.signed(h.bottom), b.texts.note))
	}
	return w + clearance
}

// tally is a course of a wall as it is counted.
type tally struct {
	number      int
	bottom, top length.Length // of its tile, within the wall
	whole       bool          // bottom is an edge of its tile
}

// tallies are the courses of some walls that are laid level, from the bottom.
func (b *board) tallies(walls ...layout.Wall) []tally {
	if b.plan.Room.Bond.Plumb {
		return nil
	}
	var out []tally
	seen := map[int]bool{}
	for _, w := range walls {
		r, laid := w.Shape.Region.Bounds(), b.patternCourses(w)
		for _, p := range w.Pieces {
			if !seen[p.Course] {
				seen[p.Course] = true
				at := plan.Course{Bottom: p.Tile.Bottom, Top: p.Tile.Top}
				if p.Outline != nil {
					at = laid[p.Course]
				}
				out = append(out, tally{p.Course, max(at.Bottom, r.Bottom), min(at.Top, r.Top), at.Bottom >= r.Bottom})
			}
		}
	}
	slices.SortFunc(out, func(a, b tally) int { return cmp.Compare(a.number, b.number) })
	return out
}

// patternCourses are where the courses of a pattern stand, which on one wall may lack the tile that stands lowest:
// those of the room. Over bands walls count apart.
func (b *board) patternCourses(w layout.Wall) map[int]plan.Course {
	if len(b.plan.Setout.Bands) > 0 {
		return plan.PatternCourses(w)
	}
	return plan.PatternCourses(b.plan.Walls...)
}

// fifth tells whether a course's number stands out.
func (c tally) fifth() bool { return c.number%5 == 0 }

// numbers counts the courses right of x: every one where each is high enough for
// its number, else as many as keep apart. With heights, every fifth also has the
// height of its bottom edge, which is what the story pole lists and a batten carries.
func (b *board) numbers(tag Tag, zero Micron, scale Scale, x Micron, all []tally, every int, heights bool) {
	size := b.texts.note
	pitch := scale.On(b.plan.Room.Tile.Height + b.plan.Room.Joint)
	for every = max(every, 1); pitch*Micron(every) < leading(size) && every <= len(all); { // drawn very small no number has room
		every = 5 * ((every + 5) / 5)
	}
	told := func(c tally) bool { return heights && c.whole && c.number%max(5, every) == 0 && !b.behindRim(c) }
	for _, c := range all {
		if c.number%every != 0 && (c.number != 1 || every > 5) {
			continue
		}
		mid := zero - scale.On((c.bottom+c.top)/2)
		l := Label{Tag: tag, Text: strconv.Itoa(c.number), Size: size, Bold: c.fifth() && every < 5, Colour: Black,
			Anchor: Right, At: Point{x + numberGap + BoldWidth("888", size), mid + drop(size)}}
		// In a pattern the height of one course may stand beside the number of another, and be read as its.
		struck := slices.ContainsFunc(all, func(other tally) bool {
			y := zero - scale.On(other.bottom)
			return other.number != c.number && told(other) && l.box().from.Y <= y && y <= l.box().to.Y
		})
		if b.vacant(l.box()) && !struck {
			b.label(l)
		}
		if told(c) {
			b.courseHeight(x, zero-scale.On(c.bottom), c, l)
		}
	}
}

// behindRim tells whether a course stands on a course line that nobody can strike, because a rim
// stands over it.
func (b *board) behindRim(c tally) bool {
	return b.strike.At != b.plan.Setout.Line && c.bottom == b.plan.Setout.Line
}

// courseHeight writes the height of the bottom edge of a course.
func (b *board) courseHeight(x, y Micron, c tally, beside Label) {
	l := Label{Tag: Tag{Kind: Dim, Wall: beside.Wall}, Text: b.signed(c.bottom), Size: beside.Size, Colour: Black}
	l.At = Point{beside.At.X + numberGap, y + drop(l.Size)}
	if !b.offer(l) {
		return
	}
	number := beside.box()
	if number.from.Y > y || number.to.Y < y {
		b.chain(l.Tag, line(Black, 180), Point{x + clearance, y}, Point{l.At.X - clearance, y})
		return
	}
	b.chain(l.Tag, line(Black, 180), Point{x + clearance, y}, Point{x + leaderTo, y})
	b.chain(l.Tag, line(Black, 180), Point{number.to.X + clearance, y}, Point{l.At.X - clearance, y})
}

// columnNumbers counts the columns of a plumb bond along a line over the wall.
func (b *board) columnNumbers(f frame, w layout.Wall, y Micron) {
	r, size := w.Shape.Region.Bounds(), b.texts.note
	for _, p := range firsts(w.Pieces) {
		x := f.at((max(p.Tile.Left, r.Left)+min(p.Tile.Right, r.Right))/2, 0).X
		b.offer(Label{Tag: Tag{Kind: Course, Wall: f.wall}, Text: strconv.Itoa(p.Course), Size: size, Colour: Black, Anchor: Middle, At: Point{x, y}})
	}
}

// firsts are the first pieces of each course, in the order of the pieces.
func firsts(pieces []piece.Piece) []piece.Piece {
	var out []piece.Piece
	seen := map[int]bool{}
	for _, p := range pieces {
		if !seen[p.Course] {
			seen[p.Course] = true
			out = append(out, p)
		}
	}
	return out
}
