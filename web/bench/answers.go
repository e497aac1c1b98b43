package bench

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/a-h/templ"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
	"coursewright/layout/takeoff"
	"coursewright/web/drawing"
	"coursewright/web/page"
)

// The five answers a person comes for, each with the place that shows it.

// Answer is one of them. Figures stand large, the note small under them.
type Answer struct {
	ID, Asked string
	More      string        // the rest of the question, where there is room
	Figures   []page.Figure // Name small before the value, Note small behind it
	Note      string
	To        templ.SafeURL
	Pieces    []string // what it is about, to be marked on the drawing
	Trouble   bool
	Decided   bool // by the plan, so it is blue
	corners   []corner
}

// answers are all five, and the strip of the first course apart.
func (b Bench) answers() []Answer {
	if len(b.Plan.Walls) == 0 {
		return nil
	}
	return []Answer{b.whereToStart(), b.firstCourse(), b.smallestCut(), b.whereTheNicheGoes(), b.whatToBuy()}
}

// full is the first full course, and the line of course 0 it is counted from.
func (b Bench) full() stages.FullCourse {
	full, _ := stages.FirstFull(b.Plan.Room, b.Plan.Setout.Line, b.Plan.Walls)
	return full
}

// whereToStart gives the left edge of the tile that is set first on each wall.
func (b Bench) whereToStart() Answer {
	a := Answer{ID: "start", Asked: "Where to start", More: ": the tile edge on each wall", Decided: true, To: page.JobPath(b.ID, "#drawing")}
	struck := stages.ToStrike(b.Plan.Room, b.Plan.Setout.Line, b.Plan.Walls)
	for _, w := range b.Plan.Walls {
		if tile, ok := stages.StartTile(w, struck.Full); ok {
			a.Pieces = append(a.Pieces, tile.ID)
		}
		if edge, ok := stages.Strike(w, struck.Full); ok {
			a.Figures = append(a.Figures, page.Figure{Name: w.Found.Letter, Value: b.bare(stages.StruckFrom(w, edge, struck.At))})
		}
	}
	a.Note = "from its left end; strike " + b.fromLine(struck.At)
	return a
}

// fromLine says where a height is from the level line, in few words.
func (b Bench) fromLine(y length.Length) string {
	switch {
	case y < 0:
		return b.bare(-y) + " below level"
	case y > 0:
		return b.bare(y) + " above level"
	}
	return "on the level line"
}

// bare gives a length as the tape shows it, without its unit: the figures of the answers are all of one.
func (b Bench) bare(l length.Length) string { return withoutUnit(b.Tape(l)) }

func withoutUnit(text string) string {
	return page.Minus(strings.TrimSuffix(strings.TrimSuffix(text, " mm"), `"`))
}

// corner is a place where the first course begins or ends on a wall.
type corner struct {
	Name   string
	Wall   int
	X      length.Length
	Rim    length.Length // of the base, over the level line
	Height length.Length // of the first course there, as its first or last tile is cut
	Whole  bool
}

// firstCourse gives the height of the first course at each corner of the base.
func (b Bench) firstCourse() Answer {
	a := Answer{ID: "first", Asked: "First course over this " + b.base(), Decided: true, To: page.JobPath(b.ID, "#drawing")}
	if !b.Plan.Room.Bond.Coursed() {
		return b.alongBase(a)
	}
	a.corners = b.corners()
	for _, c := range a.corners {
		a.Figures = append(a.Figures, page.Figure{Value: b.courseText(c), Note: c.Name})
	}
	if len(a.Figures) > 4 && !slices.ContainsFunc(a.Figures, func(f page.Figure) bool { return f.Value != a.Figures[0].Value }) {
		a.Figures = []page.Figure{{Value: a.Figures[0].Value, Note: "at every corner"}}
	}
	if len(a.Figures) > mostCorners {
		a.Figures = b.firstByWall()
	}
	in := stages.Input{Room: b.Plan.Room, Walls: b.Plan.Walls, Cuts: b.Schedule}
	for _, w := range b.Plan.Walls {
		for _, p := range w.Pieces {
			if in.FirstCourse(w, p) {
				a.Pieces = append(a.Pieces, p.ID)
			}
		}
	}
	return a
}

// mostCorners are told apart in the answer; of more it says on which walls the first course
// is how high.
const mostCorners = 5

// firstByWall gives the heights of the first course, each once, with the walls that have it
// at both ends or at one.
func (b Bench) firstByWall() (out []page.Figure) {
	var heights []string
	places := map[string][]string{} // by height
	add := func(height, place string) {
		if places[height] == nil {
			heights = append(heights, height)
		}
		if !slices.Contains(places[height], place) {
			places[height] = append(places[height], place)
		}
	}
	all := b.baseEnds()
	for i := 0; i+1 < len(all); i += 2 {
		letter, left, right := b.Plan.Walls[all[i].Wall].Found.Letter, b.courseText(all[i]), b.courseText(all[i+1])
		if left == right {
			add(left, letter)
			continue
		}
		add(left, letter+" left")
		add(right, letter+" right")
	}
	for _, height := range heights {
		out = append(out, page.Figure{Value: height, Note: strings.Join(places[height], ", ")})
	}
	return out
}

// courseText is how high the first course stands at a corner, as the sheets have it.
func (b Bench) courseText(c corner) string {
	if c.Whole {
		return "whole"
	}
	return strings.TrimSuffix(drawing.CourseHeight(b.Plan.Room.Units, c.Height), `"`)
}

// alongBase tells of a pattern how wide the least piece along the base is, wall by
// wall: it has no first course.
func (b Bench) alongBase(a Answer) Answer {
	a.Asked = "Least cut over the " + b.base()
	for _, w := range b.Plan.Walls {
		for _, r := range w.Runs {
			if len(r.Edges) == 1 && strings.HasPrefix(r.Edges[0], "base ") && !r.Low {
				a.Figures = append(a.Figures, page.Figure{Name: w.Found.Letter, Value: b.bare(r.Least)})
				a.Pieces = append(a.Pieces, r.Piece)
			}
		}
	}
	if len(a.Figures) == 0 {
		a.Figures = []page.Figure{{Value: "whole", Note: "no tile is cut there"}}
	}
	return a
}

// base is what the walls stand on: the first that is no floor, else the floor.
func (b Bench) base() string {
	for _, w := range b.Plan.Walls {
		for _, s := range w.Found.Base {
			if s.Meets != survey.Floor {
				return string(s.Meets)
			}
		}
	}
	return string(survey.Floor)
}

// corners are the ends of the base on each wall, from left to right; a corner
// that two walls share is one.
func (b Bench) corners() []corner { return b.named(b.baseEnds()) }

// baseEnds are both ends of each stretch of the base on each wall. The first course is the
// lowest whose top edge stands over the base everywhere.
func (b Bench) baseEnds() []corner {
	var out []corner
	var bases []survey.SegmentFound
	top, first := length.Length(0), true
	for i, w := range b.Plan.Walls {
		for _, s := range w.Found.Base {
			if string(s.Meets) != b.base() || len(s.Readings) == 0 {
				continue
			}
			bases = append(bases, s)
			for _, r := range []survey.Reading{s.Readings[0], s.Readings[len(s.Readings)-1]} {
				out = append(out, corner{Wall: i, X: r.At, Rim: r.Value + s.Gap})
			}
			for _, r := range s.Readings {
				if y := r.Value + s.Gap; first || y > top {
					top, first = y, false
				}
			}
		}
	}
	tile, pitch := b.Plan.Room.Tile.Height, b.Plan.Room.Tile.Height+b.Plan.Room.Joint
	if pitch <= 0 || first || !b.Plan.Room.Bond.Coursed() {
		return nil
	}
	line := b.Plan.Setout.Line + tile
	edge := line + pitch*length.Length(length.DivFloor(top-line, pitch)+1)
	at := func(c corner) length.Length { return min(edge-c.Rim, tile) }
	for i := 0; i < len(out); i += 2 { // both ends of a stretch
		l, r := drawing.FootCuts(b.Plan, b.Plan.Walls[out[i].Wall], bases[i/2], at(out[i]), at(out[i+1]))
		out[i].Height, out[i].Whole = l, l >= tile
		out[i+1].Height, out[i+1].Whole = r, r >= tile
	}
	return out
}

// named names the corners and lays those of one corner, inside or outside, together.
func (b Bench) named(all []corner) []corner {
	var out []corner
	for i, c := range all {
		w := b.Plan.Walls[c.Wall].Found
		meets := i%2 == 0 && (w.Left.Meets || w.Left.Outside != nil) || i%2 == 1 && (w.Right.Meets || w.Right.Outside != nil)
		switch {
		case !meets:
			c.Name = map[bool]string{true: "front", false: "end"}[len(b.Plan.Walls) > 1]
		case i%2 == 0 && c.Wall > 0 && len(out) > 0 && b.courseText(out[len(out)-1]) == b.courseText(c) && out[len(out)-1].Wall == c.Wall-1:
			continue
		default:
			c.Name = b.cornerName(c.Wall, i%2 == 0)
		}
		out = append(out, c)
	}
	return out
}

// cornerName says which inside corner a wall has at an end.
func (b Bench) cornerName(wall int, left bool) string {
	if left {
		wall--
	}
	switch n := len(b.Plan.Walls); {
	case n == 2:
		return "corner"
	case n == 3 && wall == 0:
		return "left corner"
	case n == 3 && wall == 1:
		return "right corner"
	}
	return "corner " + strconv.Itoa(wall+1)
}

// smallestCut says what is the smallest, where it is and what the saw is set to.
func (b Bench) smallestCut() Answer {
	a := Answer{ID: "smallest", Asked: "Smallest cut", To: page.JobPath(b.ID, "#drawing")}
	bare, slivers := b.troubles()
	least := b.Plan.Setout.Least
	switch {
	case bare > 0:
		a.Trouble, a.Note = true, "wider than sealant may fill: see the findings"
		a.Figures = []page.Figure{{Value: "bare wall", Note: page.Count(bare, "place")}}
		return a
	case least.Piece == "":
		a.Figures, a.Note = []page.Figure{{Value: "none"}}, "every tile is whole"
		return a
	}
	of := page.Percent(least.Share) + " of a tile"
	if b.cutOf(least.Piece) != b.fine(least.Size) {
		of = "shows, " + of
	}
	a.Figures = []page.Figure{{Value: b.fine(least.Size), Note: of}}
	if least.Size == 0 {
		a.Figures = []page.Figure{{Value: "hidden", Note: "nothing of it shows beside the next wall’s tile"}}
	}
	a.Note = b.whereIs(least)
	if slivers > 0 {
		a.Trouble, a.Note = true, page.Count(slivers, "sliver")+" · "+a.Note
	}
	a.To, a.Pieces = b.pieceAt(least.Piece), []string{least.Piece}
	return a
}

func (b Bench) fine(l length.Length) string {
	return withoutUnit(l.Fine(b.Plan.Room.Units))
}

// troubles counts what no plan should have.
func (b Bench) troubles() (bare, slivers int) {
	for _, w := range b.Plan.Walls {
		for _, g := range w.Gaps {
			if !g.Low {
				bare++
			}
		}
	}
	return bare, b.Plan.Setout.Merit.Slivers + b.Plan.Setout.Merit.Unworkable
}

// whereIs says where a piece stands and what is cut for it, where that is not what shows.
func (b Bench) whereIs(l plan.Least) string {
	w := b.Plan.Walls[l.Wall]
	i := slices.IndexFunc(w.Pieces, func(p piece.Piece) bool { return p.ID == l.Piece })
	if i < 0 {
		return w.Found.Name
	}
	p := w.Pieces[i]
	out := []string{w.Found.Name}
	for _, side := range p.Cuts {
		is := sideName(w.Shape.Sides[side], w)
		if p.AtStep(side, w.Shape.Sides) {
			is = "at the " + w.Shape.Sides[side].Front()
		}
		out = append(out, is)
	}
	out = append(out, "course "+strconv.Itoa(p.Course))
	text := strings.Join(slices.Compact(out), ", ")
	if g := b.cutOf(p.ID); g != "" && g != b.fine(l.Size) {
		text += " · cut\u00a0" + page.Unbroken(g)
	}
	return text
}

// sideName says what a piece is cut to.
func sideName(b survey.Boundary, w layout.Wall) string {
	switch b.Part.Is {
	case survey.LeftEnd:
		return "left end"
	case survey.RightEnd:
		return "right end"
	case survey.HeadEdge:
		return "at the top"
	case survey.BaseSegment:
		return "at the " + string(b.Kind)
	case survey.OpeningEdge:
		return "at " + w.Found.Openings[b.Part.N].Called()
	}
	return b.Name
}

// tileOf is the tile that a piece is cut from.
func (b Bench) tileOf(id string) survey.TileSize {
	for _, w := range b.Plan.Walls {
		for _, p := range w.Pieces {
			if p.ID == id {
				return b.Plan.Room.Laid(p.Laid).Tile
			}
		}
	}
	return b.Plan.Room.Tile
}

// cutOf is what the saw is set to for a piece.
func (b Bench) cutOf(id string) string {
	for _, g := range b.Schedule.Groups {
		if slices.Contains(g.Pieces, id) {
			size, tile := cmp.Or(g.Size.Width, g.Size.Height), b.tileOf(id)
			high := g.Size.Height > 0 && g.Size.Height < tile.Height
			wide := g.Size.Width > 0 && g.Size.Width < tile.Width
			switch {
			case wide && high:
				return b.fine(g.Size.Width) + " × " + b.fine(g.Size.Height)
			case high:
				size = g.Size.Height
			case wide:
				size = g.Size.Width
			}
			return b.fine(size)
		}
	}
	return ""
}

// whereTheNicheGoes gives the first niche, else where the tile stops.
func (b Bench) whereTheNicheGoes() Answer {
	for i, w := range b.Plan.Walls {
		for j, o := range w.Found.Openings {
			if o.Kind != survey.Niche || j >= len(w.Start.Placed.Openings) {
				continue
			}
			e := w.Start.Placed.Openings[j]
			a := Answer{ID: "niche", Asked: "Where the " + drawing.OpeningName(string(o.Kind), o.Name) + " goes", Decided: true,
				To: page.JobPath(b.ID, "?wall="+strconv.Itoa(i+1)+"#drawing")}
			a.Figures = []page.Figure{{Name: "left edge", Value: b.bare(e.Left)}, {Name: "sill", Value: b.signed(e.Bottom)}}
			a.Note = fmt.Sprintf("%s × %s on %s", b.bare(e.Right-e.Left), b.bare(e.Top-e.Bottom), w.Found.Name)
			return a
		}
	}
	return b.whereTileStops()
}

func (b Bench) whereTileStops() Answer {
	a := Answer{ID: "niche", Asked: "Where the tile stops", Decided: true, To: page.JobPath(b.ID, "#drawing"), Note: "no niche in this room"}
	var heads []string
	for _, w := range b.Plan.Walls {
		text := "ceiling"
		if !w.Found.Head.Meets {
			text = b.signed(w.Start.Placed.Head)
		}
		heads = append(heads, text)
		a.Figures = append(a.Figures, page.Figure{Name: w.Found.Letter, Value: text})
	}
	if y, trimmed := b.trimTop(); trimmed {
		a.Note = "the tile; its trim up to " + b.signed(y)
	}
	if slices.Sort(heads); heads[0] == heads[len(heads)-1] {
		a.Figures = []page.Figure{{Value: heads[0]}}
	}
	return a
}

// signed writes a height over the level line with its sign.
func (b Bench) signed(y length.Length) string {
	if y > 0 {
		return "+" + b.bare(y)
	}
	return b.bare(y)
}

func (b Bench) whatToBuy() Answer {
	a := Answer{ID: "buy", Asked: "What to buy", To: page.JobPath(b.ID, "/work#take-off")}
	if len(b.Buy.Lines) == 0 {
		a.Figures = []page.Figure{{Value: "nothing"}}
		return a
	}
	if kinds := b.kinds(); len(kinds) > 1 {
		return b.withOther(ofKinds(a, kinds))
	}
	tile := b.Buy.Lines[0]
	is := "tile"
	if tile.Unit == "sheet" {
		is = "sheet"
	}
	a.Figures = []page.Figure{{Value: page.Count(tile.Net+tile.Spare, is)}}
	a.Note = fmt.Sprintf("%d and %d spare", tile.Net, tile.Spare)
	if tile.Boxes > 0 {
		a.Figures = []page.Figure{{Value: boxes(tile.Boxes)}}
		a.Note = fmt.Sprintf("%s, %d spare", page.Count(tile.Net+tile.Spare, is), tile.Spare)
	}
	if tile.Cents > 0 {
		a.Note += " · " + takeoff.Line{Cents: tile.Cents}.Price()
	}
	return b.withOther(a)
}

// withOther adds how many there are to buy of the tiles beside the room's own: those of
// bands, of strips and of faces.
func (b Bench) withOther(a Answer) Answer {
	n := map[string]int{}
	for _, l := range b.Buy.Lines {
		if l.Other && l.Unit == "sheet" {
			n["other sheet"] += l.Count
		} else if l.Other {
			n["other tile"] += l.Count
		}
	}
	for _, is := range []string{"other tile", "other sheet"} {
		if n[is] > 0 {
			a.Note += " · and " + page.Count(n[is], is)
		}
	}
	return a
}

// kinds are the lines of the tiles of a pattern that is laid of several.
func (b Bench) kinds() (out []takeoff.Line) {
	for _, l := range b.Buy.Lines {
		if l.Item == "tile" || l.Further > 0 {
			out = append(out, l)
		}
	}
	return out
}

// ofKinds says how many tiles of every kind a pattern takes, in the order of the job.
func ofKinds(a Answer, kinds []takeoff.Line) Answer {
	all, spare := 0, 0
	var each []string
	for _, l := range kinds {
		all, spare, each = all+l.Count, spare+l.Spare, append(each, strconv.Itoa(l.Count))
	}
	a.Figures = []page.Figure{{Value: page.Count(all, "tile")}}
	a.Note = fmt.Sprintf("%s of its sizes, %d spare", strings.Join(each, " + "), spare)
	return a
}

func boxes(n int) string {
	if n == 1 {
		return "1 box"
	}
	return strconv.Itoa(n) + " boxes"
}
