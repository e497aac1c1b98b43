package plan

// CornerName is what the corner at an end of a wall is called, inside or outside, by the letters of its two walls from
// left to right: "corner L–B"; empty where no other wall of the list stands. It is one name on the bench, the drawings
// and the sheets, in open and closed rooms: its letters stand on every key plan, and nobody takes it for the end of a
// wall, as a "left corner".
func CornerName(walls []Wall, wall int, left bool) string {
	end := walls[wall].Found.Right
	if left {
		end = walls[wall].Found.Left
	}
	other, turns := end.Neighbour()
	if !turns || other >= len(walls) {
		return ""
	}
	if left {
		wall, other = other, wall
	}
	return "corner " + walls[wall].Found.Letter + "–" + walls[other].Found.Letter
}
