package plan

import "coursewright/layout/length"

// Course is where a course of a pattern stands: the lowest corner of its tiles, and how high those reach
// that stand so low. Others of it may stand higher.
type Course struct{ Bottom, Top length.Length }

// PatternCourses gives, by their numbers, the courses of what is laid in a pattern on some walls; none
// where nothing is.
//
// Law, with a test: on no wall does a tile of a course reach below its bottom, and some tile reaches down to it.
func PatternCourses(walls ...Wall) map[int]Course {
	out := map[int]Course{}
	for i := range walls {
		for k := range walls[i].Pieces {
			p := &walls[i].Pieces[k]
			if p.Outline == nil {
				continue
			}
			c, known := out[p.Course]
			switch {
			case !known || p.Tile.Bottom < c.Bottom:
				c = Course{p.Tile.Bottom, p.Tile.Top}
			case p.Tile.Bottom == c.Bottom:
				c.Top = max(c.Top, p.Tile.Top)
			}
			out[p.Course] = c
		}
	}
	return out
}
