// Package plan holds what the solver has worked out, for everybody who reads it:
// the set-out, its merit, and every wall with its pieces. No solver is in it.
package plan

import (
	"cmp"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/survey"
)

// Setout is everything the solver decides for a room.
type Setout struct {
	Line    length.Length // bottom edge of course 0
	Hand    survey.Hand
	Pinned  bool // the line was pinned
	Walls   []Start
	Merit   Merit
	Exact   Merit    // the best possible before rounding to the tape
	Loss    string   // what rounding cost, or empty
	Short   bool     // so much is free that only the most promising course lines were tried
	Reasons []string // plain sentences: what decided, where the smallest cut is
	Lines   []ClassicLine
	Holds   []Hold
	Least   Least // where the smallest cut is; Piece is empty when nothing is cut
}

// Least names the smallest cut piece of the room.
type Least struct {
	Wall  int
	Piece string
	Size  length.Length
	Share piece.Share
}

// Start is where the bond begins on one wall, and what was weighed for it.
type Start struct {
	X       length.Length // middle of a joint or of a tile in course 0
	OnTile  bool
	Edge    length.Length // left edge of a tile of course 0
	Pinned  bool
	Placed  survey.Placed
	Classic []Classic     // the classic starts with their figures
	Slide   []SlidePoint  // the smallest cut against the start, over one period
	From    length.Length // the start may slip from From to To without a new sliver
	To      length.Length
}

// Classic is a start people know by name, or "best".
type Classic struct {
	Name     string // "joint on centre", "tile on centre", "full tile at left", "full tile at right", "best"
	X        length.Length
	OnTile   bool
	Smallest length.Length
	Share    piece.Share
	Slivers  int
	Bare     int
}

// ClassicLine is a course line people know by name.
type ClassicLine struct {
	Name     string // "full course at the tub's low point", "full course at the head of back", ...
	Line     length.Length
	Smallest length.Length
	Share    piece.Share
	Slivers  int
	Bare     int
}

// SlidePoint is one corner of the slide curve: with the left edge of a tile of
// course 0 at Edge, the smallest cut on the wall is Share.
type SlidePoint struct {
	Edge    length.Length
	Share   piece.Share
	Slivers int
}

// Hold says between which sizes a measured length may lie before a sliver appears.
type Hold struct {
	What     string // "width of back"
	Wall     int
	Measured length.Length
	From, To length.Length
}

// Merit is what a set-out is judged by.
type Merit struct {
	Bare      int
	Slivers   int
	OffLine   int
	Smallest  piece.Share // at most one half
	Imbalance length.Length
	CutPieces int
	Find      int // how hard the starts are to find again, summed over the walls
}

// Better tells whether m comes before o.
func (m Merit) Better(o Merit) bool {
	return cmp.Or(cmp.Compare(m.Bare, o.Bare), cmp.Compare(m.Slivers, o.Slivers), cmp.Compare(m.OffLine, o.OffLine),
		-cmp.Compare(m.Smallest.Num*o.Smallest.Den, o.Smallest.Num*m.Smallest.Den), cmp.Compare(m.Imbalance, o.Imbalance),
		cmp.Compare(m.CutPieces, o.CutPieces), cmp.Compare(m.Find, o.Find)) < 0
}
