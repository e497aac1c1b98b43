// Package drawing turns a plan into scenes: elevations, the wrap, key plans
// and slide curves, as shapes and labels in whole micrometres on paper. A
// scene knows nothing of SVG or PDF; each of those is a Pen.
package drawing

// Micron is a distance on paper in whole micrometres.
type Micron int64

// Millimetre is one millimetre on paper.
const Millimetre Micron = 1000

// Point is a place on paper: X to the right of the left edge, Y below the top.
type Point struct{ X, Y Micron }

// Scene is a finished drawing. Elements are in drawing order, which is a
// total order: the same plan gives the same elements in the same places.
type Scene struct {
	Width, Height Micron
	Title         string // says what is shown; for readers who cannot see it
	Describe      string
	Scale         Scale // of the walls shown; zero in a scene without one
	Elements      []Element
	Parts         []Part // the walls drawn one by one; empty in a scene that is drawn as one
	Handles       []Handle
	Pieces        *Pieces // what a reader may pick; nil in a drawing to look at
	Finished      bool    // in the colours of the tile, which no other choice of colours changes
}

// Part is one wall of a scene: its elements from From up to To. Parts follow
// each other in the order of the elements, and between them stands what belongs to
// no wall alone.
type Part struct {
	Wall     int
	From, To int
	Origin   Point // x = 0 on the level line
	Name     string
	Joints   *JointLines // where there are handles to snap to them
}

// Pieces are the words for the pieces that a reader may pick.
type Pieces struct {
	Walls  []string          // by wall: what they are pieces of
	Names  map[string]string // by piece that is drawn by itself: what it is
	Course string            // what pieces are counted in: "course", or "column"
}

// Draw hands every element to the pen, in order.
func (s Scene) Draw(p Pen) {
	for _, e := range s.Elements {
		e.draw(p)
	}
}

// Draw hands one element to the pen.
func Draw(e Element, p Pen) { e.draw(p) }

// Pen writes the elements of a scene in one format.
type Pen interface {
	Path(Path)
	Disc(Disc)
	Label(Label)
}

// Element is a Path, a Disc, a Label or Tiles.
type Element interface{ draw(Pen) }

// Kind is what an element stands for. It is also its class name in SVG.
type Kind string

// Kinds a page may style or a script may look for. A piece carries "piece"
// and one of the kinds of its cut.
const (
	Whole      Kind = "piece whole"
	Joints     Kind = "joints"
	CutHalf    Kind = "piece cut-half"
	CutThird   Kind = "piece cut-third"
	CutFifth   Kind = "piece cut-fifth"
	CutLeast   Kind = "piece cut-least"
	Cut        Kind = "cut-edge"
	Plate      Kind = "plate"
	SizePlate  Kind = "plate of-size"
	Size       Kind = "size"
	Column     Kind = "column-size"
	Outline    Kind = "outline"
	Base       Kind = "base"
	Head       Kind = "head"
	Corner     Kind = "corner"
	Lap        Kind = "lap"
	Niche      Kind = "niche"
	Window     Kind = "window"
	Hole       Kind = "hole"
	LevelLine  Kind = "level-line"
	CourseLine Kind = "course-line"
	Centre     Kind = "centre"
	Start      Kind = "start"
	Dim        Kind = "dim"
	Course     Kind = "course-number"
	Finding    Kind = "finding"
	Doubt      Kind = "doubt" // a reading that can hardly be true
	Name       Kind = "name"
	Note       Kind = "note"
	Key        Kind = "key"
	KeyWall    Kind = "key-wall"
	KeyHere    Kind = "key-wall here"
	Pointer    Kind = "start pointer"
	Curve      Kind = "curve"
	Finish     Kind = "finish"
)

// Tag says what an element stands for and which part of the plan it shows.
type Tag struct {
	Kind    Kind
	Wall    int    // index into the plan's walls, or -1
	Piece   string // the piece's id, or empty
	Finding int    // number of the finding counted from 1, or 0
}

// Path is straight lines: closed rings filled by the even-odd rule, or open
// chains. It may hold several.
type Path struct {
	Tag
	Ink
	Rings [][]Point
	Open  bool
}

// Disc is a circle.
type Disc struct {
	Tag
	Ink
	Centre Point
	Radius Micron
}

// Label is one line of text. At is on its baseline, at the side Anchor names.
type Label struct {
	Tag
	Text   string
	At     Point
	Size   Micron
	Anchor Anchor
	Up     bool // reads upwards
	Turn   Turn // leans, about At
	Bold   bool
	Colour Colour
}

// Anchor is the place of a label's own length that At names.
type Anchor uint8

// Anchors.
const (
	Left Anchor = iota
	Middle
	Right
)

func (e Path) draw(p Pen)  { p.Path(e) }
func (e Disc) draw(p Pen)  { p.Disc(e) }
func (e Label) draw(p Pen) { p.Label(e) }
