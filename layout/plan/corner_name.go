package plan

import "coursewright/layout/survey"

// CornerName is what the inside corner at the right end of a wall is called, -1 for that before the first: one name in the
// survey, on the bench and on the sheets. The fronts of benches and curbs, which stand between two other walls, go
// round nothing.
func CornerName(walls []Wall, wall int) string {
	round := 0
	for _, w := range walls {
		if !w.Found.Left.Against || !w.Found.Right.Against {
			round++
		}
	}
	return survey.CornerName(round, wall)
}
