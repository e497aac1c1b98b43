package layout

import "coursewright/layout/fixture"

// fixtureFile is a fixture where it stands: its middle, or the end of its underside
// in the corner, and its holes.
type fixtureFile struct {
	Kind  string     `json:"kind"`
	Name  string     `json:"name"`
	At    [2]mm      `json:"at"`
	Box   [4]mm      `json:"box"`           // left, bottom, right, top
	Off   mm         `json:"off,omitempty"` // from the nearest joint line
	Holes []holeFile `json:"holes,omitempty"`
}

type holeFile struct {
	At    [2]mm  `json:"at"`
	Clear mm     `json:"clear"` // from its rim to the nearest edge of tile
	Piece string `json:"piece,omitempty"`
}

// fixturesOf lists what is fixed to a wall; nil where there is nothing.
func fixturesOf(all []fixture.Placed) []fixtureFile {
	var out []fixtureFile
	for _, p := range all {
		b := p.Box
		f := fixtureFile{Kind: string(p.Found.Kind), Name: p.Found.Name, At: [2]mm{p.At.X.Millimetres(), p.At.Y.Millimetres()}, Off: p.Off.Millimetres(),
			Box: [4]mm{b.Left.Millimetres(), b.Bottom.Millimetres(), b.Right.Millimetres(), b.Top.Millimetres()}}
		for _, h := range p.Holes {
			f.Holes = append(f.Holes, holeFile{[2]mm{h.At.X.Millimetres(), h.At.Y.Millimetres()}, h.Clear.Millimetres(), h.Piece})
		}
		out = append(out, f)
	}
	return out
}
