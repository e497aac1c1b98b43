// Package survey is the room as found: the job file as typed (Job), the same
// with every length read and checked (Room), and the shape each wall leaves
// for tile (Shape).
//
// Laws:
//
//  1. Read gives back what Write was given, to the letter as typed.
//  2. Read and Resolve name every fault at once, each by the path of its field
//     with what stood there and what would be right. A job with faults gives no
//     room; a reading that merely looks odd is no fault (layout/doubt asks).
//  3. A length in a Room is the one that was typed, exactly. Only a pin may be
//     given to 0.001 mm, as a plan prints it, and is the unit it was printed from.
//  4. Every range of a free opening holds only places that some choice of the
//     other free marks leaves in the tile, where there are any.
//  5. Every boundary of a wall says which part of it it is and whether it is
//     seen; nobody needs its name for that.
//  6. The same job gives the same room.
package survey

import "coursewright/layout/length"

// Room is a job whose every length has been read and checked.
type Room struct {
	Title   string
	Units   length.System
	Tape    length.Length // the smallest step of the person's tape
	Doubt   length.Length
	Tile    TileSize
	Joint   length.Length   // the joint; of a range the least, until a set-out picks one of Joints
	Joints  []length.Length // the spacers to choose from, ascending: the range's, or the one joint alone
	Prefer  Prefer
	Bed     length.Length
	Bond    BondRule
	Sliver  length.Length // 0: the default of formats.md
	Sealant length.Length
	Trims   []TrimFound
	Walls   []WallFound
	Bands   []BandFound
	Course  []Span         // where course lines must stand, whole pitches aside: in each of these spans
	Line    *length.Length // the course line where it is pinned or tile stands, or nil
	Passed  *length.Length // a pinned course line that gave way to tile that stands, or nil
	Work    WorkRule
	Guesses []string // paths of fields of the job that nobody has measured yet, in the job's order
	Grout   Colour

	InRows bool // a pattern comes round the edges of openings in plain rows, as a set-out has it that is held from before it went on there
}

// GoesRound tells whether the tile goes on round the edges of openings as it is laid on the wall, and not in plain rows: a pattern
// does, and a running bond on sheets.
func (r Room) GoesRound() bool {
	return !r.InRows && (!r.Bond.Coursed() || r.Bond.Num != 0 && r.Tile.Sheet.Any())
}

// Guess tells whether the room is not measured through yet: what is worked out
// for it will move.
func (r Room) Guess() bool { return len(r.Guesses) > 0 }

// TileSize is one tile, true size as it stands on the wall.
type TileSize struct {
	Name                           string
	Width, Height, Thickness, Vary length.Length
	Grain                          bool
	Colour                         Colour
	BoxCount                       int
	BoxCents                       int64 // price of a box in hundredths
	Money                          Money // the sign that was typed with it
	BoxArea                        length.Area
	Sheet                          SheetSize
	Real                           Real // what a sample of real tiles says
}

// Grained tells whether a tile of the room's bond, the first 0, may not be turned: it has grain, or the first has.
func (r Room) Grained(of int) bool {
	return r.Tile.Grain || of > 0 && of <= len(r.Bond.Others) && r.Bond.Others[of-1].Grain
}

// BondRule is how courses shift against each other, or how tiles that do not
// stand in courses are laid. Stack bond is Num 0, Den 1.
type BondRule struct {
	Kind     BondKind
	Num, Den int64 // offset as a fraction of the pitch, 0 <= Num < Den
	Hand     Hand
	Plumb    bool       // columns instead of courses; not of a pattern
	Swapped  bool       // a pattern with x and y swapped: columns for its rows
	Turned   bool       // the whole pattern stands at 45°
	Angle    int        // of a chevron: how steep its long edges are, in degrees from level
	Others   []TileSize // the tiles of a pattern beside the room's, in the order of the job
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
	Fixtures    []FixtureFound
	Order       int // 0 for the wall set first
	Pin         *StartPin
	MarkPins    map[MarkName]length.Length
	Moved       map[MarkName]length.Length // where the held set-out has marks that were measured elsewhere since
	Set         *Standing                  // the courses that stand, or nil
	Taken       []Taken                    // what bands take from a field laid in a pattern, or leave to a band that is
	Single      bool                       // laid in single tiles of its own width, course by course

	Beyond map[string]length.Length // by strip: where the tile to the right of it is held to start, the left edge of a tile of course 0
}

// StartPin fixes what stands at X in course 0.
type StartPin struct {
	X  length.Length
	Is Struck
}

// Struck is what of a bond stands at a place.
type Struck uint8

// What a start is pinned by, or told by.
const (
	OnJoint Struck = iota // the middle of a joint
	OnTile                // the middle of a tile
	OnEdge                // the left edge of a tile
)

// String gives the word of the job file and the plan file.
func (s Struck) String() string { return [...]string{"joint", "tile", "edge"}[s] }

// Edge is where the pin puts the left edge of a tile of course 0. Halves of a
// tile or a joint round down to the unit.
func (p StartPin) Edge(tile, joint length.Length) length.Length {
	switch p.Is {
	case OnTile:
		return p.X - tile.Half()
	case OnEdge:
		return p.X
	}
	return p.X + joint.Half()
}

// EndFound is one end of a wall.
type EndFound struct {
	Meets  bool // meets an inside corner; otherwise it stops
	Gap    length.Length
	Cover  length.Length // bed + thickness where the neighbour's tile laps over this wall, else 0
	Behind length.Length // bed + thickness where this wall laps over its neighbour's tile, else 0
	Lean   []Reading     // At is the height, Value how far to the right
	Stops  Span          // where its tile ends, clear of trim
	Finish Kind          // Trim, Bullnose, Casing or empty
	Trim   *TrimFound    // set in pieces along it, or nil
	Sight  Sight
	Beyond int // the neighbour's index at an inside corner, or -1

	Against bool // it meets the run of another wall, and keeps clear of the tile there

	Outside *OutsideFound // the outside corner that its tile ends at, or nil

	Goes Onward // of a part of a wall: it ends at a strip, beyond which the wall goes on
}

// Neighbour is the wall that an end meets at a corner, inside or outside.
func (e EndFound) Neighbour() (wall int, turns bool) {
	if e.Outside != nil {
		return e.Outside.Next, e.Outside.Next >= 0
	}
	return e.Beyond, e.Meets && e.Beyond >= 0
}

// Onward is how a wall goes on where a part of it ends at a strip.
type Onward int

// Where the end of a part is no strip, the wall ends with it.
const (
	Nowhere  Onward = iota
	ToCorner        // to an end that meets a corner
	ToStop          // to an end that stops
)

// corner tells whether the wall meets a corner there, or where it goes on to.
func (e EndFound) corner() bool { return e.Meets || e.Goes == ToCorner }

// stop tells whether the wall itself stops there.
func (e EndFound) stop() bool { return !e.Meets && e.Goes == Nowhere }

// Exposed tells which end of the wall is exposed: one that stops, where the other
// meets a corner.
func (w WallFound) Exposed() (left, right bool) {
	return w.Left.stop() && w.Right.corner(), w.Left.corner() && w.Right.stop()
}

// IsPart tells whether it is a part of a wall, beside a strip.
func (w WallFound) IsPart() bool { return w.Left.Goes != Nowhere || w.Right.Goes != Nowhere }

// LikeEnds tells whether both ends of the wall meet a corner or both stop. A part of a
// wall that ends at a strip has no two ends to be alike.
func (w WallFound) LikeEnds() bool { return w.Left.Like(w.Right) }

// Like tells whether both are ends of a wall, and meet a corner or both stop.
func (e EndFound) Like(o EndFound) bool {
	return e.Meets == o.Meets && e.Goes == Nowhere && o.Goes == Nowhere
}

// Reading is one measured value at a place along a boundary.
type Reading struct{ At, Value length.Length }

// SegmentFound is a stretch of base. Value of a reading is the height, so
// negative below the level line.
type SegmentFound struct {
	Meets    Kind // Tub, ShowerBase, Curb, Seat or Floor
	Gap      length.Length
	Readings []Reading
	Sight    Sight         // where the job does not say: a floor beside a tub, shower base or curb is low
	Cove     *TrimFound    // that stands along it, or nil; then Gap reaches over it
	Rise     length.Length // how much of Gap the cove takes, with the joint over it
	Leg      Leg           // how the tile beside the rim is laid, over a floor at an end of the base
	Best     bool          // the job leaves that to the order of merit
	Why      LegReason     // why it is laid so, where it does
}

// HeadFound is the top of the tile. Value of a reading is the height.
type HeadFound struct {
	Meets    bool
	Gap      length.Length
	Readings []Reading
	Stops    Span // where its tile ends, clear of trim and of the top
	Finish   Kind
	Trim     *TrimFound // set in pieces along it, or nil
	Top      *TopFound  // the horizontal face on the wall, or nil
	Beneath  *TopFound  // that of the wall round the corner, where it lies over the end of this one too, or nil
	Sight    Sight
}

// Slants tells whether a ceiling falls more than one in eight somewhere, as under a roof.
func (h HeadFound) Slants() bool {
	for i := 1; i < len(h.Readings); i++ {
		if a, b := h.Readings[i-1], h.Readings[i]; 8*(b.Value-a.Value).Abs() > b.At-a.At {
			return true
		}
	}
	return false
}

// OpeningFound is a niche, a window or a pipe.
type OpeningFound struct {
	Kind                        Kind // Niche, Window or Pipe
	Name                        string
	Sight                       Sight
	Near                        Near          // where its middle is wished
	Left, Width, Bottom, Height Span          // niche and window
	At, Up, Diameter            length.Length // pipe: its centre and size; of a doorway Up is its top
	Inside                      *InsideFound  // of a niche or window; nil where the job says nothing of it
	Strip                       *StripFound   // of a strip of other tile
	Right, Top                  Span          // between which the far edges may lie; zero: anywhere
	Doorway                     bool          // a window down to the floor, whose inside nobody asks about
	Down                        bool          // the job calls it a doorway: its bottom is that of the base there
}

// Near is the place wished for the middle of an opening: X from the wall's left
// end, Y over the level line. Nil is no wish in that direction.
type Near struct{ X, Y *length.Length }

// Placed is where the marks of one wall stand: measured ones and those the
// solver chose.
type Placed struct {
	Left, Right length.Length // the ends, where they stop
	Head        length.Length // the head, where it stops
	Openings    []Edges       // by opening; zero for pipes
}

// Edges are the four edges of a niche or window.
type Edges struct{ Left, Bottom, Right, Top length.Length }
