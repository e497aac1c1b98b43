package plan

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Inside is the inside of a niche or window as it will be laid.
type Inside struct {
	Opening int          // of the wall's openings
	Letter  string       // "B-N1", "B-W1": how its pieces begin
	Clear   survey.Edges // between finished faces, at the front
	Rough   survey.Edges // between studs and blocking: what is framed
	Depth   length.Length
	Rise    length.Length // how much higher the sill lies at its back
	Faces   []Face        // those that are tiled, in the order of survey.FaceNames
}

// Face is one face of an inside, seen from within and folded out into the plane
// of the wall: a flat wall of its own, with x from its left edge. Heights of the
// back and the sides are those of the wall; those of sill and top begin at their
// lower edge.
type Face struct {
	Wall
	Is      survey.FaceName
	Origin  plane.Point     // where 0, 0 of the face lies in the wall when folded out
	Outline plane.Region    // the face with its soft joints, between the faces that meet it
	Tile    survey.TileSize // where bands of the wall go on upon it, that of pieces which are no band's (piece.Piece.Laid)
	Joint   length.Length
	Bond    survey.BondRule
	Line    length.Length // bottom edge of course 0
	Own     bool          // tile or bond are its own, not the wall's
	Round   bool          // a return on which tile goes on as it is laid on the wall (survey.Room.GoesRound), its own or that of bands
	Slab    bool          // one slab takes the place of tile
	Soft    []plane.Side  // the sides whose soft joints are counted here
}

// Find gives a face of the inside, or nil.
func (in *Inside) Find(is survey.FaceName) *Face {
	for i := range in.Faces {
		if in.Faces[i].Is == is {
			return &in.Faces[i]
		}
	}
	return nil
}

// Name is the face with its opening: "back of niche shelf".
func (f *Face) Name() string { return f.Found.Name }
