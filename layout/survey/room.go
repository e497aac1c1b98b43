// Package survey is the room as found: the job file as typed (Job), the same
// with every length read and checked (Room), and the shape each wall leaves
// for tile (Shape).
package survey

import "coursewright/layout/length"

// Room is a job whose every length has been read and checked.
type Room struct {
	Title   string
	Units   length.System
	Tape    length.Length // the smallest step of the person's tape
	Doubt   length.Length
	Tile    TileSize
	Joint   length.Length
	Bed     length.Length
	Bond    BondRule
	Sliver  length.Length // 0: the default of formats.md
	Sealant length.Length
	Walls   []WallFound
	Line    *length.Length // the course line where it is pinned or tile stands, or nil
	Passed  *length.Length // a pinned course line that gave way to tile that stands, or nil
	Work    WorkRule
	Grout   Colour
}

// TileSize is one tile, true size as it stands on the wall.
type TileSize struct {
	Name                           string
	Width, Height, Thickness, Vary length.Length
	Grain                          bool
	Colour                         Colour
	BoxCount                       int
	BoxCents                       int64 // price of a box in hundredths
	Real                           Real  // what a sample of real tiles says
}

// BondRule is how courses shift against each other. Stack bond is Num 0, Den 1.
type BondRule struct {
	Kind     string
	Num, Den int64 // offset as a fraction of the pitch, 0 <= Num < Den
	Hand     Hand
	Plumb    bool // columns instead of courses
}

// Shift is how far the joints of course k stand to the right of those of course
// 0, in [0, pitch), to the nearest unit; pitch is that along the courses. This
// is the one place where an offset that does not divide the pitch is rounded.
func (b BondRule) Shift(k int, hand Hand, pitch length.Length) length.Length {
	n := int64(length.Mod(length.Length(int64(k)*b.Num), length.Length(b.Den)))
	if hand != Right {
		n = (b.Den - n) % b.Den
	}
	return length.Length((2*n*int64(pitch) + b.Den) / (2 * b.Den))
}

// Hand is the side to which each course steps.
type Hand int8

// Hands of a bond. Free lets the solver choose.
const (
	Free  Hand = 0
	Left  Hand = -1
	Right Hand = 1
)

// Span is a mark: From == To when it was measured.
type Span struct{ From, To length.Length }

// Free tells whether the solver may place the mark.
func (s Span) Free() bool { return s.From < s.To }

// WallFound is one wall with its boundaries.
type WallFound struct {
	Name        string
	Letter      string // "A"… in list order, or the name's own initial where no two walls share it
	Width       length.Length
	Left, Right EndFound
	Base        []SegmentFound
	Head        HeadFound
	Openings    []OpeningFound
	Order       int // 0 for the wall set first
	Pin         *StartPin
	MarkPins    map[string]length.Length
	Set         *Standing // the courses that stand, or nil
}

// StartPin fixes the middle of a joint, or of a tile, at X in course 0.
type StartPin struct {
	X      length.Length
	OnTile bool
}

// EndFound is one end of a wall.
type EndFound struct {
	Meets  bool // meets a corner; otherwise it stops
	Gap    length.Length
	Cover  length.Length // bed + thickness where the neighbour's tile laps over this wall, else 0
	Behind length.Length // bed + thickness where this wall laps over its neighbour's tile, else 0
	Lean   []Reading     // At is the height, Value how far to the right
	Stops  Span
	Finish string
	Beyond int // the neighbour's index, or -1
}

// Reading is one measured value at a place along a boundary.
type Reading struct{ At, Value length.Length }

// SegmentFound is a stretch of base. Value of a reading is the height, so
// negative below the level line.
type SegmentFound struct {
	Meets    string
	Gap      length.Length
	Readings []Reading
}

// HeadFound is the top of the tile. Value of a reading is the height.
type HeadFound struct {
	Meets    bool
	Gap      length.Length
	Readings []Reading
	Stops    Span
	Finish   string
}

// OpeningFound is a niche, a window or a pipe.
type OpeningFound struct {
	Kind, Name                  string
	Left, Width, Bottom, Height Span          // niche and window
	At, Up, Diameter            length.Length // pipe: its centre and size
}

// Placed is where the marks of one wall stand: measured ones and those the
// solver chose.
type Placed struct {
	Left, Right length.Length // the ends, where they stop
	Head        length.Length // the head, where it stops
	Openings    []Edges       // by opening; zero for pipes
}

// Edges are the four edges of a niche or window.
type Edges struct{ Left, Bottom, Right, Top length.Length }
