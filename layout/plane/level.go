package plane

import "coursewright/layout/length"

// LevelAt is where the edge a–b crosses the level line at y, rounded as BendY
// rounds; a is not above b. Outside the edge it is the nearer end's place.
func LevelAt(a, b Point, y length.Length) length.Length {
	switch {
	case a.X == b.X, y <= a.Y:
		return a.X
	case y >= b.Y:
		return b.X
	}
	return cross(a, b, int64(a.Y-y), int64(b.Y-y)).X
}
