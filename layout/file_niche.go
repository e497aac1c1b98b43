package layout

import "coursewright/layout/survey"

// insideFile is the inside of a niche or window. X of a face runs from its left
// edge as seen from within; y of the back and the sides are heights of the wall,
// those of sill and top begin at the lower edge when folded out.
type insideFile struct {
	Opening string     `json:"opening"`
	Letter  string     `json:"letter"`
	Clear   edgesFile  `json:"clear"` // between finished faces, at the front
	Rough   edgesFile  `json:"rough"` // between studs and blocking
	Depth   mm         `json:"depth"`
	Rise    mm         `json:"rise"` // of the sill from its front to its back
	Faces   []faceFile `json:"faces"`
}

type edgesFile struct {
	Left   mm `json:"left"`
	Right  mm `json:"right"`
	Bottom mm `json:"bottom"`
	Top    mm `json:"top"`
}

type faceFile struct {
	Name   string      `json:"name"` // "back", "left", "right", "sill" or "top"
	At     [2]mm       `json:"at"`   // where 0, 0 lies in the wall when folded out
	Region [][][2]mm   `json:"region"`
	Slab   bool        `json:"slab,omitempty"`
	Tile   string      `json:"tile,omitempty"` // the name of a tile of its own
	Pieces []pieceFile `json:"pieces"`
}

func insidesOf(w Wall) []insideFile {
	var out []insideFile
	for _, in := range w.Insides {
		edges := func(e survey.Edges) edgesFile {
			return edgesFile{e.Left.Millimetres(), e.Right.Millimetres(), e.Bottom.Millimetres(), e.Top.Millimetres()}
		}
		one := insideFile{Opening: w.Found.Openings[in.Opening].Key(), Letter: in.Letter,
			Clear: edges(in.Clear), Rough: edges(in.Rough),
			Depth: in.Depth.Millimetres(), Rise: in.Rise.Millimetres()}
		for _, f := range in.Faces {
			face := faceFile{Name: f.Is.String(), At: [2]mm{f.Origin.X.Millimetres(), f.Origin.Y.Millimetres()},
				Region: ringsOf(f.Shape.Region), Slab: f.Slab, Pieces: make([]pieceFile, len(f.Pieces))}
			if w.Found.Openings[in.Opening].Inside.Faces[f.Is].Tile != nil {
				face.Tile = f.Tile.Name
			}
			for i, p := range f.Pieces {
				face.Pieces[i] = pieceOf(f.Wall, p)
			}
			one.Faces = append(one.Faces, face)
		}
		out = append(out, one)
	}
	return out
}
