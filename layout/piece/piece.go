// Package piece cuts the tiles of a bond to the shape of a wall and says of
// every piece what remains, how it is cut and how small it is.
//
// Laws, each with a test:
//  1. Conservation: pieces, sealed strips and joints make up the region exactly
//     once the region is bent at the lines of the bond (plane.Region.Bend).
//  2. No two pieces overlap.
//  3. A piece is never larger than its tile.
package piece

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// Piece is what remains of one tile on one wall.
type Piece struct {
	ID      string       // wall letter, course, number in the course: "B-01-03"
	Course  int          // 1 for the lowest course of the room, after Number
	Tile    plane.Rect   // the uncut tile where it stands; of a pattern the box round it
	Outline plane.Ring   // of a pattern: the uncut tile's corners where it stands; nil for a tile of a course
	Of      int          // which tile it is cut from: 0 the room's, n the nth of the bond's others
	Row     int          // the course counted from the course line; bands are left out, and count on from the one over them
	Lift    int          // how many courses stand under row 0 that are not counted by Row: those of bands
	Laid    int          // which of the room's tiles: 0 is its own, n that of its band n-1
	Face    plane.Region // what is set, the part behind the next wall's tile included
	Visible plane.Region // the face less the lap cover, holes of pipes not counted
	Whole   bool
	Wide    length.Length // least level distance between plumb edges, see formats.md
	High    length.Length // least plumb distance between level edges
	Least   length.Length // whichever of the two gives Share; of a pattern the least width
	Share   Share
	Cuts    []plane.Side // the boundaries it is cut to, ascending; names in survey.Shape.Sides
	Kind    Kind

	// Across and Up are the boundary edges that cut the piece in its width and in
	// its height, ascending. An edge that coincides with the tile's own cuts nothing.
	Across, Up []Edge
	Unworkable bool // in a direction in which it is cut, too small for anybody to cut and set
	Sliver     bool // not unworkable, and under the sliver limit in a direction in which it is cut
	Awkward    bool // the rim of a hole is close to an edge

	grades [2]Grade     // as it counts in plain sight, and out of it
	solid  plane.Region // the face with the holes of pipes filled
	place  int          // of a pattern: which place of the cell
}

// Place is, of a pattern, which place of the cell the tile stands at.
func (p *Piece) Place() int { return p.place }

// Grade is how small a piece is.
type Grade uint8

// The grades, the worst last.
const (
	Sound Grade = iota
	Small
	Hopeless
)

// Grade is how small the piece is by the cuts in plain sight alone, or by those
// out of it: Small is a sliver, Hopeless unworkable. A piece in a corner may
// count in both.
func (p *Piece) Grade(low bool) Grade {
	if low {
		return p.grades[1]
	}
	return p.grades[0]
}

// Effort is what the cuts of the piece cost: 1 for a cut across the tile, 2 for
// a rip, a taper or an angle cut, 4 for a hole, 5 for a notch, 6 more for a hole whose rim is
// close to an edge. Common practice, no source.
func (p *Piece) Effort() int {
	sum := 0
	for i, weight := range [...]int{2, 1, 2, 5, 4, 2} {
		if p.Kind&(1<<i) != 0 {
			sum += weight
		}
	}
	if p.Awkward {
		sum += 6
	}
	return sum
}

// Kind is the set of cuts a piece needs.
type Kind uint8

// The cuts, as bits. Zero is a whole tile.
const (
	Rip   Kind = 1 << iota // straight, along the tile's length
	Cross                  // straight, across the tile's length
	Taper                  // scribed to a rake or lean
	Notch                  // an L or U, or an opening wholly within the tile
	Hole                   // drilled or nipped round a pipe
	Angle                  // straight, at an angle to the tile's edges
)

var kindNames = [...]string{"rip", "cross cut", "taper", "notch", "hole", "angle cut"}

// String names the cuts, as "rip, hole"; "whole" for none.
func (k Kind) String() string {
	text := ""
	for i, name := range kindNames {
		if k&(1<<i) == 0 {
			continue
		}
		if text != "" {
			text += ", "
		}
		text += name
	}
	if text == "" {
		return "whole"
	}
	return text
}
