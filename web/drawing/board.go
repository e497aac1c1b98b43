package drawing

import (
	"slices"
	"strings"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/mosaic"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/stages"
)

// Options choose how much a drawing shows.
type Options struct {
	Scale   Scale  // zero: fit the screen
	Sheet   bool   // for paper: larger text
	Handles bool   // with what a person may drag, and pieces to pick
	Finish  bool   // tile and grout in their colours, without a mark of any cut or handle
	Wide    Micron // what it is laid out for; zero: on a screen ScreenWidth, on paper what it needs
	High    Micron // on a screen, how high a wall may stand; zero: as is usual at that width
	NoFlags bool   // without findings by their numbers, where no list of them is beside it
	Within  bool   // on a screen, never wider than Wide, however small the walls become

	Lines map[string]string // by the id of a piece, its line of the cut schedule
}

// ScreenWidth is the width a drawing for a screen is laid out for where none is
// asked for: the drawing's part of a page of 1440.
const ScreenWidth = 984 * px

// wide is the width the drawing is laid out for.
func (o Options) wide() Micron {
	if o.Wide > 0 {
		return o.Wide
	}
	return ScreenWidth
}

// high is how high walls may stand on a screen, so that they are seen whole: part
// of the width, on a narrow screen no less than least.
func (o Options) high(least Micron) Micron {
	if o.High > 0 {
		return o.High
	}
	return max(o.wide()*6/10, least)
}

// Phone is the width under which there is no room for all walls, nor beside one for the
// heights of its courses, which the story pole lists.
const Phone = 480 * px

// narrow tells whether a drawing is laid out for a phone.
func (o Options) narrow() bool { return !o.Sheet && o.Wide > 0 && o.Wide < Phone }

// alone are the texts of a wall by itself, on a phone as small as those of all walls, so that
// the wall is larger.
func (o Options) alone() texts {
	if o.narrow() {
		return wrapTexts
	}
	return wallTexts
}

func (o Options) texts(usual texts) texts {
	if o.Sheet {
		return sheetTexts
	}
	return usual
}

// board is a scene in the making. It knows what room its texts take, so that
// none is written over another.
type board struct {
	Scene
	plan  layout.Plan
	texts texts
	taken []box
	level Micron // the level line, where texts keep off it
	alone *int   // the one wall that is shown, or nil
	paper bool   // it is for a sheet

	mosaic []mosaic.Field // what is laid by the sheet
	faces  []plan.Face    // what is drawn instead of walls: the faces of an inside, or a top
	folded plane.Region   // of the top of a wall: to the outer edges of its trim
	single bool           // whole tiles are drawn one by one, to be picked

	strike stages.Struck     // the line to strike, and the first course that no base cuts
	lines  map[string]string // by the id of a piece, its line of the cut schedule
}

// newBoard is an empty board for a plan.
func newBoard(plan layout.Plan, t texts) *board {
	b := &board{plan: plan, texts: t, mosaic: mosaic.Of(plan.Room, plan.Walls)}
	b.strike = stages.ToStrike(b.plan.Room, b.plan.Setout.Line, b.plan.Walls)
	return b
}

func (b *board) path(t Tag, ink Ink, rings ...[]Point) {
	b.Elements = append(b.Elements, Path{Tag: t, Ink: b.sureInk(ink), Rings: rings})
}

func (b *board) chain(t Tag, ink Ink, pts ...Point) {
	b.Elements = append(b.Elements, Path{Tag: t, Ink: b.sureInk(ink), Rings: [][]Point{pts}, Open: true})
}

func (b *board) disc(t Tag, ink Ink, c Point, r Micron) {
	b.Elements = append(b.Elements, Disc{Tag: t, Ink: b.sureInk(ink), Centre: c, Radius: r})
}

// label writes a text and keeps its room.
func (b *board) label(l Label) {
	l.Colour = b.sure(l.Colour)
	b.Elements = append(b.Elements, l)
	b.taken = append(b.taken, l.box())
}

// keep lets no text come into a box.
func (b *board) keep(t box) { b.taken = append(b.taken, t) }

// vacant tells whether a box is on the paper and holds no text.
func (b *board) vacant(t box) bool {
	return t.from.X >= 0 && t.from.Y >= 0 && t.to.X <= b.Width && t.to.Y <= b.Height && !slices.ContainsFunc(b.taken, t.meets)
}

// clearance is how far texts keep apart that are placed where there is room.
const clearance = 2 * px

// offer writes a text at the first of some places that is vacant, and tells
// whether there was one.
func (b *board) offer(places ...Label) bool {
	for _, l := range places {
		if b.vacant(l.box().grown(clearance)) {
			b.label(l)
			return true
		}
	}
	return false
}

// plate is a label on a ground of its own, centred on at.
func (b *board) plate(l Label, at Point, ground Colour) {
	room := plateRoom(l, at)
	kind := Plate
	if l.Kind == Size || l.Kind == Size.on(ground) {
		kind = SizePlate
	}
	b.path(Tag{Kind: kind, Wall: l.Wall}, fill(ground), corners(room.from, room.to))
	b.label(centred(l, at))
}

// plateRoom is the room of the ground that a label stands on with its middle at a point.
func plateRoom(l Label, at Point) box {
	w, h := l.width()/2+l.Size/8, l.Size*62/100
	if l.Up {
		w, h = h, w
	}
	return box{Point{at.X - w, at.Y - h}, Point{at.X + w, at.Y + h}}
}

// centred puts a label's middle at a point.
func centred(l Label, at Point) Label {
	l.Anchor, l.At = Middle, Point{at.X, at.Y + drop(l.Size)}
	if l.Up {
		l.At = Point{at.X + drop(l.Size), at.Y}
	}
	return l
}

// figure writes a length as the person's tape shows it; millimetres without
// their unit, which the heading says once.
func (b *board) figure(l length.Length) string {
	switch u := b.plan.Room.Units; {
	case l < 0:
		return "−" + b.figure(-l)
	case u == length.Metric:
		return l.Plain(u, u.Step())
	default:
		return l.Tape(u)
	}
}

// plain is a figure without the inch sign, as a place or a clear size is told everywhere: to the
// nearest mark, where the size of a piece (bare) is rounded down.
func (b *board) plain(l length.Length) string { return strings.TrimSuffix(b.figure(l), `"`) }

// cutTo writes a size to cut as the tape shows it, rounded down as in the cut
// schedule, so that the piece is never larger than its place.
func (b *board) cutTo(l length.Length) string { return b.figure(l.FloorTo(b.plan.Room.Units.Step())) }

// signed writes a height over the level line: up +, down −.
func (b *board) signed(l length.Length) string {
	switch {
	case l > 0:
		return "+" + b.figure(l)
	case l < 0:
		return b.figure(l)
	}
	return "0"
}
