package bench

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/a-h/templ"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
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
	Decided   bool     // by the plan, so it is blue
	ends      []corner // of the base on each wall, two and two
}

// long tells whether the figures ask for smaller letters to stand on one line at 1440.
func (a Answer) long() bool {
	const most = 19
	n := 0
	for _, f := range a.Figures {
		n += len(f.Value)
	}
	return n > most
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

// whereToStart gives the left edge, or corner, of the tile that is set first on each wall.
func (b Bench) whereToStart() Answer {
	struck := stages.ToStrike(b.Plan.Room, b.Plan.Setout.Line, b.Plan.Walls)
	a := Answer{ID: "start", Asked: "Where to start", More: ": the tile " + string(struck.Plumb) + " on each wall", Decided: true, To: page.JobPath(b.ID, "#drawing")}
	how := "; strike "
	for _, w := range b.Plan.Walls {
		if tile, ok := stages.StartTile(w, struck.Full); ok {
			a.Pieces = append(a.Pieces, tile.ID)
		}
		if edge, ok := stages.Strike(w, struck.Full); ok {
			a.Figures = append(a.Figures, b.startAt(w.Found.Letter, struck.From(w, edge)))
			if struck.Leans(w, edge, b.Tape) {
				how = ", held along the line to strike, "
			}
		}
	}
	a.Note = "from its left end" + how + b.fromLine(struck.At)
	return a
}

// startAt is where a wall starts from its left end: where its tile laps round an outside corner, beyond it.
func (b Bench) startAt(letter string, x length.Length) page.Figure {
	f := page.Figure{Name: letter, Value: b.bare(x.Abs())}
	if x < 0 {
		f.Note = "beyond it"
	}
	return f
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
	if strings.Contains(text, "'") {
		return page.Minus(text) // of feet and inches both are said
	}
	return page.Minus(strings.TrimSuffix(strings.TrimSuffix(text, " mm"), `"`))
}

// smallestCut says what is the smallest on the walls, where it is and what the saw is set to.
func (b Bench) smallestCut() Answer {
	a := Answer{ID: "smallest", Asked: "Smallest cut", To: page.JobPath(b.ID, "#drawing")}
	bare, slivers := b.bareWall(), b.Slivers()
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
	if b.covered(least) {
		of = "shows, " + of
	}
	a.Figures = []page.Figure{{Value: b.fine(least.Size), Note: of}}
	switch {
	case least.Point:
		a.Figures = []page.Figure{{Value: "a point", Note: "it runs out to nothing"}}
	case least.Size == 0:
		a.Figures = []page.Figure{{Value: "hidden", Note: "nothing of it shows beside the next wall’s tile"}}
	}
	a.Note = b.whereIs(least)
	if slivers > 0 {
		a.Trouble, a.Note = true, page.Count(slivers, "sliver")+" · "+a.Note
	}
	if inside := b.smallerInside(least.Share); inside != "" {
		a.Note += " · " + inside
	}
	a.To, a.Pieces = b.pieceAt(least.Piece), []string{least.Piece}
	return a
}

// smallerInside tells of the worst sliver inside niches and windows and on tops, where it is a smaller part of its tile than
// the smallest on the walls, which is what the set-out is judged by.
func (b Bench) smallerInside(than piece.Share) (told string) {
	for i := range b.Plan.Walls {
		for _, f := range b.Plan.Walls[i].Folded() {
			for _, p := range f.Pieces {
				if (p.Sliver || p.Unworkable) && p.Share.Less(than) {
					than, told = p.Share, f.Name()+" "+b.fine(p.Least)
				}
			}
		}
	}
	return told
}

func (b Bench) fine(l length.Length) string {
	return withoutUnit(l.Fine(b.Plan.Room.Units))
}

// bareWall counts the places where wall shows beside the tile.
func (b Bench) bareWall() (n int) {
	for _, w := range b.Plan.Walls {
		for _, g := range w.Gaps {
			if !g.Low {
				n++
			}
		}
	}
	return n
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
func (b Bench) tileOf(id string) survey.TileSize { return b.Plan.Room.Laid(b.onWall(id).Laid).Tile }

// onWall is a piece of a wall, empty where it is of none.
func (b Bench) onWall(id string) piece.Piece {
	for _, w := range b.Plan.Walls {
		for _, p := range w.Pieces {
			if p.ID == id {
				return p
			}
		}
	}
	return piece.Piece{}
}

// cutOf is what the saw is set to for a piece. One with a notch takes more settings than can be told.
func (b Bench) cutOf(id string) string {
	set, tile := b.setTo(id), b.tileOf(id)
	high := set.Height > 0 && set.Height < tile.Height
	wide := set.Width > 0 && set.Width < tile.Width
	switch size := cmp.Or(set.Width, set.Height); {
	case size == 0 || len(set.Notches) > 0:
		return ""
	case wide && high:
		return b.fine(set.Width) + " × " + b.fine(set.Height)
	case high:
		return b.fine(set.Height)
	default:
		return b.fine(size)
	}
}

// setTo is the size on the line of the schedule that a piece is on.
func (b Bench) setTo(id string) cuts.Size {
	for _, g := range b.Schedule.Groups {
		if slices.Contains(g.Pieces, id) {
			return g.Size
		}
	}
	return cuts.Size{}
}

// covered tells whether a piece is cut larger than the least that shows of it: the next wall's tile
// covers the rest.
func (b Bench) covered(l plan.Least) bool {
	set, p := b.setTo(l.Piece), b.onWall(l.Piece)
	return p.Face.Bounds() != p.Visible.Bounds() && b.fine(set.Width) != b.fine(l.Size) && b.fine(set.Height) != b.fine(l.Size)
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

// solvedText says to who does not see the drawing that the room is solved, and how well; nothing while it cannot be.
func (b Bench) solvedText() string {
	if len(b.Plan.Walls) == 0 || len(b.Faults) > 0 {
		return ""
	}
	a := b.smallestCut()
	said := []string{a.Asked + ":"}
	for _, f := range a.Figures {
		said = append(said, strings.TrimSpace(f.Value+" "+f.Note))
	}
	return "Solved. " + strings.Join(said, " ") + ", " + a.Note + "."
}
