// Package bond says where the tiles of a bond stand.
//
// A bond laid in courses is a list of rows. A row is one tile repeated at a pitch
// along the wall; the quick path of the cutter and of the solver sees rows only.
// Every bond is also a Pattern: tiles of any convex outline on a lattice, and a
// new pattern is a constructor in patterns.go.
//
// Laws of patterns, each with a test:
//  1. Tiles never overlap, with a joint of 0 too.
//  2. Every copy of a tile is congruent to the unit with the cell's.
//  3. |U × V| is the area of the cell's tiles and of its joints: there is nothing else.
//  4. A bond laid in courses gives the same tiles as rows and as a pattern.
//  5. Every phase is found with the lattice's origin in a box of Reach by Rise.
//  6. Joint lines are where factory edges that face one way make up a tenth of a line or more.
package bond

import (
	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// Row is a line of equal tiles: tile i covers [First+i·Pitch, +Width] along
// the row and [Low, High] across it. Phase names rows that stand alike: two
// rows of one phase differ by whole pitches only.
type Row struct {
	Course    int // 0 at the course line
	Phase     int
	Low, High length.Length
	First     length.Length
	Width     length.Length
	Pitch     length.Length
}

// Height is the tile's height across the row.
func (r Row) Height() length.Length { return r.High - r.Low }

// Bond gives the rows that may touch a stretch of wall.
type Bond interface {
	// Rows lists the rows that meet [low, high] across the rows, lowest first,
	// where course 0 begins at line and a tile of it at edge.
	Rows(line, edge, low, high length.Length) []Row
	// Across is the pitch from row to row, Along the pitch in a row.
	Across() length.Length
	Along() length.Length
	// Shifts are how far a row of each phase is moved along, modulo Along.
	Shifts() []length.Length
}

// Coursed is stack bond and running bond of any offset: rows of one height,
// each shifted by the same part of the pitch.
type Coursed struct {
	Width, Height length.Length // along the row and across it
	Joint         length.Length
	Num, Den      int64 // the shift as a part of the pitch along; 0/1 in stack bond
	Hand          survey.Hand
}

// Of makes the bond of a room. With columns instead of courses, along means up
// the wall. A hand of survey.Free counts as left.
func Of(room survey.Room, hand survey.Hand) Coursed {
	c := Coursed{room.Tile.Width, room.Tile.Height, room.Joint, room.Bond.Num, room.Bond.Den, hand}
	if room.Bond.Plumb {
		c.Width, c.Height = c.Height, c.Width
	}
	if c.Den == 0 {
		c.Num, c.Den = 0, 1
	}
	return c
}

// Across is tile plus joint from row to row.
func (c Coursed) Across() length.Length { return c.Height + c.Joint }

// Along is tile plus joint in a row.
func (c Coursed) Along() length.Length { return c.Width + c.Joint }

// Shifts has one entry for each course until the bond repeats.
func (c Coursed) Shifts() []length.Length {
	out := make([]length.Length, c.Den)
	for k := range out {
		out[k] = c.shift(k)
	}
	return out
}

// shift of course k, in [0, Along).
func (c Coursed) shift(k int) length.Length {
	return survey.BondRule{Num: c.Num, Den: c.Den}.Shift(k, c.Hand, c.Along())
}

// Rows of the bond between low and high.
func (c Coursed) Rows(line, edge, low, high length.Length) []Row {
	from := length.DivFloor(low-line, c.Across())
	if line+length.Length(from)*c.Across()+c.Height <= low {
		from++
	}
	rows := make([]Row, 0, max(0, int(length.DivFloor(high-line, c.Across())-from)+1))
	for k := from; line+length.Length(k)*c.Across() < high; k++ {
		bottom := line + length.Length(k)*c.Across()
		rows = append(rows, Row{
			Course: int(k), Phase: int(length.Mod(length.Length(k), length.Length(c.Den))),
			Low: bottom, High: bottom + c.Height,
			First: edge + c.shift(int(k)), Width: c.Width, Pitch: c.Along(),
		})
	}
	return rows
}
