package survey

import (
	"slices"

	"coursewright/layout/length"
)

// Inside is the inside of a niche, or of a window with tiled returns: what
// frames it, how deep it is, and what each of its faces gets.
type Inside struct {
	Studs *Studs `json:"studs,omitempty"` // the bay it stands in
	Sizes string `json:"sizes,omitempty"` // what left, width, bottom and height say: a word of Sizes

	Depth   string `json:"depth,omitempty"`
	DepthIs string `json:"depthIs,omitempty"` // a word of Sizes; left out: that of the sizes
	Lining  string `json:"lining,omitempty"`  // the board on every face
	Front   string `json:"front,omitempty"`   // a word of Fronts
	Gap     string `json:"gap,omitempty"`     // of the soft joints in its corners; left out: the joint

	Fall      string `json:"fall,omitempty"`      // of the sill to the room: so much to the foot, or to the metre
	Tolerance string `json:"tolerance,omitempty"` // how far lining or trim lets a measured edge move
	Behind    string `json:"behind,omitempty"`    // a word of Behinds

	Back  InsideFace `json:"back,omitzero"`
	Left  InsideFace `json:"left,omitzero"`
	Right InsideFace `json:"right,omitzero"`
	Sill  InsideFace `json:"sill,omitzero"`
	Top   InsideFace `json:"top,omitzero"`
}

// Studs are the faces of two studs that look at each other, from the wall's
// left end.
type Studs struct {
	Left  string `json:"left"`
	Right string `json:"right"`
}

// InsideFace is one face of the inside. What is left out is as on the wall.
type InsideFace struct {
	Cased  bool   `json:"cased,omitempty"` // it gets casing, and no tile
	Slab   string `json:"slab,omitempty"`  // one slab of this thickness takes the place of tile
	Depth  string `json:"depth,omitempty"` // of this return alone, said as that of the inside
	Lining string `json:"lining,omitempty"`
	Tile   *Tile  `json:"tile,omitempty"`
	Joint  string `json:"joint,omitempty"` // of a tile of its own
	Bond   *Bond  `json:"bond,omitempty"`
	Begin  string `json:"begin,omitempty"` // of a side: a word of Beginnings; left out, its courses are those of the wall, and those of its own tile are centred
}

// Beginnings says where the courses of a side begin anew.
func Beginnings() []string { return []string{"sill"} }

// Size says what a size of an opening is measured between.
type Size string

// The sizes of an opening, from the framing inwards.
const (
	Rough    Size = "rough"    // studs and blocking, before the board
	Lined    Size = "lined"    // board to board, before the tile
	Finished Size = "finished" // tile to tile
)

// Sizes lists the sizes by the words of the job file.
func Sizes() []string { return []string{string(Finished), string(Lined), string(Rough)} }

// Fronts says how the tile of the wall and that of the inside meet at the
// front: the wall's laps over the edge of the other, or the other comes out
// flush with the wall's face.
func Fronts() []string { return []string{"lapped", "flush"} }

// Behinds says what is behind the wall.
func Behinds() []string { return []string{"inside", "outside"} }

// FaceName is a face of the inside of an opening.
type FaceName uint8

// The faces, in the order in which they are listed.
const (
	BackFace FaceName = iota
	LeftFace
	RightFace
	SillFace
	TopFace
	faces

	WallTop FaceName = faces // the horizontal face on a wall, of no opening
)

// FaceNames lists the faces in their order.
func FaceNames() [faces]FaceName {
	return [faces]FaceName{BackFace, LeftFace, RightFace, SillFace, TopFace}
}

// String gives the word of the job file.
func (f FaceName) String() string {
	return [...]string{"back", "left", "right", "sill", "top", "top"}[f]
}

// InsideFound is the inside of an opening, read and checked.
type InsideFound struct {
	Bay       *Span          // between the faces of the studs, or nil
	Depth     length.Length  // from the face of the wall's tile to that of the back, or to a window's frame
	Flush     bool           // its tile comes out to the face of the wall's; else the wall's laps over it
	Gap       *length.Length // of its soft joints; nil: the joint
	Fall      length.Length  // of the sill to the room, to one FallRun
	Tolerance length.Length
	Wide      bool   // place and width were measured, and may move by the tolerance
	High      bool   // so were sill and height
	Behind    string // a word of Behinds, or empty
	AsTyped   bool   // place and size were typed as the wall's tile leaves the opening
	Faces     [faces]FaceFound
}

// Tiled tells whether tile or a slab lies on any face; the inside of which nothing is known has none.
func (in *InsideFound) Tiled() bool {
	return in != nil && slices.ContainsFunc(in.Faces[:], func(f FaceFound) bool { return f.Tiled })
}

// FaceFound is one face of the inside.
type FaceFound struct {
	Tiled  bool          // tile or a slab; a face without either is cased
	Slab   length.Length // its thickness, or 0
	AtSill bool          // a side whose courses begin anew, with a full tile on the sill
	Lining length.Length
	Cover  length.Length // what stands on the lining: bed and tile, or bed and slab
	Depth  length.Length // as that of the inside
	Tile   *TileSize     // a tile of its own, or nil
	Joint  length.Length // of that tile
	Bond   *BondRule     // a bond of its own, or nil
}

// Own tells whether the face does not go on with tile and bond of the wall.
func (f FaceFound) Own() bool { return f.Tile != nil || f.Bond != nil }

// Within moves the far edges of an opening to where they may lie, and the near ones
// after them where too little would be left.
func (o OpeningFound) Within(e Edges) Edges {
	e.Left, e.Right = within(e.Left, e.Right, o.Width.From, o.Right)
	e.Bottom, e.Top = within(e.Bottom, e.Top, o.Height.From, o.Top)
	return e
}

func within(low, high, least length.Length, far Span) (length.Length, length.Length) {
	if far != (Span{}) {
		high = min(max(high, far.From), far.To)
		low = min(low, high-least)
	}
	return low, high
}

// FallRun is the length over which a fall is told: a foot, or a metre.
func FallRun(s length.System) length.Length {
	if s == length.Metric {
		return length.Metre
	}
	return length.Foot
}

// UsualFall is the least fall of a ledge: 1/4 in to the foot, or 21 mm to the
// metre (NTCA, TileLetter).
func UsualFall(s length.System) length.Length {
	if s == length.Metric {
		return 21 * length.Millimetre
	}
	return length.Inch / 4
}

// Rise is how much higher the sill lies at its back than at its front, to the
// nearest unit.
func (in *InsideFound) Rise(s length.System) length.Length {
	sill := in.Faces[SillFace]
	if !sill.Tiled {
		return 0
	}
	run := int64(FallRun(s))
	return length.Length((2*int64(in.Fall)*int64(sill.Depth) + run) / (2 * run))
}

// Clear are the edges between the finished faces of an inside, at the front,
// in an opening that the tile of the wall leaves.
func (in *InsideFound) Clear(opening Edges) Edges {
	if !in.Flush {
		return opening
	}
	return Edges{
		Left: opening.Left + in.Faces[LeftFace].Cover, Right: opening.Right - in.Faces[RightFace].Cover,
		Bottom: opening.Bottom + in.Faces[SillFace].Cover, Top: opening.Top - in.Faces[TopFace].Cover,
	}
}

// Rough is the opening in the framing, between studs and blocking, for an
// opening that the tile of the wall leaves.
func (in *InsideFound) Rough(opening Edges) Edges {
	return Edges{
		Left: opening.Left - in.beside(LeftFace), Right: opening.Right + in.beside(RightFace),
		Bottom: opening.Bottom - in.beside(SillFace), Top: opening.Top + in.beside(TopFace),
	}
}

// beside is how far an edge of the opening stands inside the rough opening, on
// the side of a face.
func (in *InsideFound) beside(f FaceName) length.Length {
	return in.Faces[f].Lining + in.lapped(f)
}

// lapped is how far an edge of the opening stands inside the lined opening.
func (in *InsideFound) lapped(f FaceName) length.Length {
	if in.Flush {
		return 0
	}
	return in.Faces[f].Cover
}

// Needs is how wide the framing must be for an opening of a width.
func (in *InsideFound) Needs(wide length.Length) length.Length {
	return wide + in.beside(LeftFace) + in.beside(RightFace)
}
