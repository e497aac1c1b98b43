package takeoff

import (
	"strings"

	"coursewright/layout/survey"
)

// fixtures are the lines of what is fixed to the walls, a line for each kind. A
// glass line is nothing to buy: glass is measured when the tile stands.
func (in Input) fixtures() []Line {
	var lines []Line
	for _, kind := range []survey.Kind{survey.CornerShelf, survey.FootRest, survey.SoapDish, survey.GrabBar} {
		var names []string
		for _, w := range in.Walls {
			for _, f := range w.Fixtures {
				if f.Found.Kind == kind {
					names = append(names, f.Found.Name+" on "+w.Found.Name)
				}
			}
		}
		lines = append(lines, Line{Item: string(kind), Unit: "piece", Net: len(names), Count: len(names), Because: strings.Join(names, ", ")})
	}
	return lines
}
