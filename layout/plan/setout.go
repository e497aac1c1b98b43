// Package plan holds what the solver has worked out, for everybody who reads it:
// the set-out, its merit, and every wall with its pieces. No solver is in it.
//
// Laws, each with a test:
//  1. Every size that a plan shows is the size of a piece that exists in the
//     set-out it is shown for.
//  2. What a plan prints can be pinned as printed, and gives the same set-out.
package plan

import (
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/survey"
)

// Setout is everything the solver decides for a room.
type Setout struct {
	Line     length.Length // bottom edge of course 0
	Hand     survey.Hand
	Joint    length.Length
	Pinned   bool // the line was pinned
	Walls    []Start
	Merit    merit.Merit
	Order    merit.Order // in which the terms were compared
	CutTiles int         // pieces that are not whole tiles
	Proven   bool        // nothing on the tape is better
	Bound    string      // where it is not proven: what no set-out can beat
	Reasons  []string    // plain sentences: what decided, where the smallest cut is; of a plan that is told
	Lines    []ClassicLine
	Joints   []Joint // what each joint of a range would give; empty for a single joint
	Holds    []Hold
	Bands    []Band        // in the job's order
	Least    Least         // where the smallest cut in sight is; Piece is empty when nothing is cut
	Rise     length.Length // of a pattern: from one row of its lattice to the next; 0 for courses
	Courses  int           // of a pattern: rows of tiles, as people count them, to a row of its lattice
}

// Better tells whether the set-out comes before another of the same room.
func (s *Setout) Better(o *Setout) bool { return s.Order.Better(&s.Merit, &o.Merit) }

// Told tells whether the plan says why: with its reasons, what the classic starts and lines
// would give, and how far starts may slip. Of one that was solved quickly all of that is left out.
func (s *Setout) Told() bool { return len(s.Reasons) > 0 }

// OffLine counts what openings leave off the joint lines.
func (s *Setout) OffLine() int { return s.Merit.Openings + s.Merit.Built }

// Least names the smallest cut piece of the room.
type Least struct {
	Wall  int
	Piece string
	Size  length.Length
	Share piece.Share
	Point bool // it is seen, and runs out to a point, so that its size is nothing
}

// Start is where the bond begins on one wall, and what was weighed for it.
type Start struct {
	Edge    length.Length // left edge of a tile of course 0: what is struck on the wall
	X       length.Length // middle of a joint or of a tile in course 0
	OnTile  bool
	Pinned  bool
	Anew    []Anew // from left to right: where it begins afresh beyond strips
	Cut     *Cut   // where tile is cut beside strips, or nil
	Placed  survey.Placed
	Classic []Classic     // the classic starts with their figures, and the best
	Slide   []SlidePoint  // the worst run against the start, over one period
	Map     *Map          // of a pattern, in place of the slide: the worst run against line and start
	From    length.Length // the start may slip from From to To without a new sliver
	To      length.Length
}

// Figures is what a set-out that was not chosen would give.
type Figures struct {
	Least       length.Length // the smallest cut of it, and its share of the tile
	Share       piece.Share
	Slivers     int
	Unworkable  int
	Bare        length.Length
	Term        merit.Term // the first term in which it differs from the chosen one; merit.None where it does not
	Its, Chosen string     // both figures, in the unit of that term
	Than        string     // that of the chosen one without the words that Its says already
}

// Against says in the unit of the term that decided how the set-out differs from
// the chosen one; empty where it does not.
func (f Figures) Against() string {
	if f.Term == merit.None {
		return ""
	}
	return f.Its + ", not " + f.Than
}

// Classic is a start people know by name, or "best".
type Classic struct {
	Name   string // "joint on centre", "tile on centre", "quarter on centre", "full tile at left", "full tile at right", "best"
	Edge   length.Length
	X      length.Length
	OnTile bool
	Figures
}

// ClassicLine is a course line people know by name, with the best starts on it.
type ClassicLine struct {
	Name string // "full course at the tub's low point", "full course at the head of back", ...
	Line length.Length
	Figures
}

// Joint is one joint of a range, with the best set-out that it allows.
type Joint struct {
	Size length.Length
	Line length.Length
	Figures
}

// SlidePoint is one corner of the slide curve: with the left edge of a tile of
// course 0 at Edge, the worst run of the wall has Share.
type SlidePoint struct {
	Edge    length.Length
	Share   piece.Share
	Slivers int
}

// Hold says between which sizes a measured length may lie before a sliver appears.
type Hold struct {
	What     string // "width of back"
	Path     string // of the field or group of the job that was measured, as walls[1].base[0]
	Wall     int
	Measured length.Length
	From, To length.Length
}

// Run is all pieces of a wall that the same boundary edges cut in the same
// direction, in one class of the bond.
type Run struct {
	Edges  []string // "left", "base 0", "step 0", "niche shelf left"
	Across bool     // measured by width; otherwise by height
	Class  int
	Laid   int // which of the room's tiles: 0 is its own, n that of its band n-1
	Least  length.Length
	Share  piece.Share
	Piece  string // the piece that gives it
	Low    bool   // out of sight
}
