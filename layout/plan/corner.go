package plan

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/survey"
)

// Corner is an outside corner of two walls as it is laid.
type Corner struct {
	*survey.OutsideFound     // as the wall before it has it
	Before, After        int // the walls left and right of it

	// Of a running bond in level courses: in how many courses a piece stands at the
	// corner on both walls, in how many of them the two make up one tile that goes
	// round or meet in a joint, and which tile edge of the course line on the wall after the corner lets
	// the bond of the wall before it go on.
	Courses, Round int
	Edge           length.Length
}

// Corners lists the outside corners of a room from left to right.
func Corners(room survey.Room, walls []Wall) []Corner {
	var all []Corner
	bonded := room.Bond.Coursed() && !room.Bond.Plumb && room.Bond.Num != 0
	for i := range walls {
		o := walls[i].Found.Right.Outside
		if o == nil || o.Next < 0 || o.Next >= len(walls) {
			continue
		}
		c := Corner{OutsideFound: o, Before: i, After: o.Next}
		if bonded && !walls[i].Found.Single && !walls[o.Next].Found.Single {
			c.follow(room, &walls[i], &walls[o.Next])
		}
		all = append(all, c)
	}
	return all
}

// follow looks how the bond goes round. The wall before the corner and the one after
// it are measured from the finished edge between them, as if folded flat there: a
// tile goes round where the pieces on both sides take up its width, whole pitches
// aside (a joint may stand at the edge), to within a joint, which nobody sees round
// an edge (common practice, no source; the kerf of a cut is left out).
func (c *Corner) follow(room survey.Room, a, b *Wall) {
	pitch := room.Tile.Width + room.Joint
	before, after := beside(a, true, a.Found.Width+c.Past, room.Joint), beside(b, false, -c.Past, room.Joint)
	for row, left := range before {
		if right, both := after[row]; both {
			c.Courses++
			if off := length.Mod(left+right-room.Tile.Width, pitch); min(off, pitch-off) <= room.Joint {
				c.Round++
			}
		}
	}
	if c.Edge = length.Mod(-c.Past-(a.Found.Width+c.Past-a.Start.Edge), pitch); c.Edge > b.Found.Width {
		c.Edge -= pitch // beside a narrow wall
	}
}

// beside gives for every course of the room's own tile how far the tile that stands at
// an end of a wall, or a joint from it, goes from a place into the wall, wherever it is cut.
func beside(w *Wall, right bool, from, joint length.Length) map[int]length.Length {
	out := map[int]length.Length{}
	for i := range w.Pieces {
		p := &w.Pieces[i]
		box := p.Face.Bounds()
		switch {
		case p.Laid != 0:
		case right && box.Right >= w.Start.Placed.Right-joint:
			out[p.Row] = from - p.Tile.Left
		case !right && box.Left <= w.Start.Placed.Left+joint:
			out[p.Row] = p.Tile.Right - from
		}
	}
	return out
}

// Lapping is the wall whose tile laps over the edge of the other's, or that carries
// the profile. At a mitre there is none, and it is the one after.
func (c Corner) Lapping() int {
	if c.Laps {
		return c.Before
	}
	return c.After
}

// square is the bevel of a mitre between two faces that are square to each other.
const square = "45°"

// Mitred says which edges of a piece are mitred at outside corners and under a top:
// "left at 45°".
func Mitred(w *Wall, p *piece.Piece) []string {
	var out []string
	box, at := p.Face.Bounds(), w.Start.Placed
	edge := func(o *survey.OutsideFound, there bool, name string) {
		if o != nil && o.How == survey.Mitre && there {
			out = append(out, name+" at "+survey.HalfDegrees(o.Bevel()))
		}
	}
	edge(w.Found.Left.Outside, box.Left == at.Left, "left")
	edge(w.Found.Right.Outside, box.Right == at.Right, "right")
	if w.Found.Head.Mitred() && box.Top == at.Head {
		out = append(out, "head at "+square)
	}
	return out
}

// At tells whether a piece stands at the corner, on either wall.
func (c Corner) At(walls []Wall, wall int, p *piece.Piece) bool {
	at, box := walls[wall].Start.Placed, p.Face.Bounds()
	return wall == c.Before && box.Right == at.Right || wall == c.After && box.Left == at.Left
}
