package drawing

import (
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// mostPicked is up to how many pieces of an inside can be picked one by one; those of a
// mosaic are only looked at.
const mostPicked = 700

// picks tells whether the pieces of a fold can be picked.
func (f *fold) picks(o Options) bool {
	n := 0
	for i := range f.in.Faces {
		n += len(f.in.Faces[i].Pieces)
	}
	return o.Handles && n <= mostPicked
}

// pickFaces names the pieces of the faces for readers who pick one. All of them belong to
// the wall in the drawing.
func (f *fold) pickFaces(wall int) {
	f.Pieces = &Pieces{Names: map[string]string{}, Walls: make([]string, wall+1)}
	f.Pieces.Walls[wall] = f.name
	for i := range f.in.Faces {
		face := &f.in.Faces[i]
		f.Pieces.Course = RowWord(face)
		for _, p := range face.Pieces {
			f.Pieces.Names[p.ID] = f.pieceName(p)
			if face.Slab {
				f.Pieces.Names[p.ID] = p.ID + ", slab " + f.cutTo(p.Wide) + " × " + f.cutTo(p.High)
			}
		}
		for _, p := range face.Trim {
			f.Pieces.Names[p.ID] = f.trimName(p)
		}
	}
}

// RowWord is what the pieces of a face are counted in: courses where they go on with
// those of the wall, or else rows.
func RowWord(face *plan.Face) string {
	if face.Is <= survey.RightFace && !face.Own {
		return "course"
	}
	return "row"
}
