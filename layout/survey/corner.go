package survey

import "strconv"

// CornerName is what the corner at the right end of a wall is called, or before the first wall of a closed room, where so
// many walls go round.
func CornerName(round, wall int) string {
	switch {
	case round == 2:
		return "corner"
	case round == 3 && wall == 0:
		return "left corner"
	case round == 3 && wall == 1:
		return "right corner"
	case wall < 0:
		wall += round
	}
	return "corner " + strconv.Itoa(wall+1)
}
