package piece

import "coursewright/layout/length"

// NoSaw tells whether nobody can cut the piece. One that runs out to a point is nothing wide there, and
// is judged by that; under a roof it is cut all the same, where it is no less than 1/2 in (13 mm) to its other side and its
// point no sharper than one in six (common practice, no source).
func (p *Piece) NoSaw() bool {
	if !p.Unworkable || p.Least > 0 || len(p.Visible) == 0 {
		return p.Unworkable
	}
	box := p.Visible.Bounds()
	least := min(box.Width(), box.Height())
	return least < length.Inch/2 || 6*least < max(box.Width(), box.Height())
}
