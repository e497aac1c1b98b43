package finding

import (
	"fmt"

	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// legRules judge the tile that comes down beside a tub.
func legRules() []Rule {
	return []Rule{
		{
			Name: LegLeftOut, Grade: Advice, judge: legsLeftOut,
			Why:    "Water that runs off the front of the tub comes to bare wall, and the lower edge of the tile is seen.",
			Do:     "Better let a leg of tile come down the front of the tub; else finish the lower edge, and paint and seal the wall under it.",
			Source: "CTEF and how-to pages; not a standard",
		},
	}
}

// legsLeftOut speaks of every end of a wall where tile runs past the tub without a leg.
func legsLeftOut(in Input) []place {
	var all []place
	for i, w := range in.Walls {
		for _, leg := range w.Found.LegsBeside() {
			if _, how := w.Found.LegOf(leg); how != survey.NoLeg || leg.Width(w.Found, w.Start.Placed) <= 0 {
				continue
			}
			all = append(all, onPoint(i, plane.Point{X: leg.Front, Y: leg.Rim},
				fmt.Sprintf("At the %s of %s the leg is left out: over %s beside the tub the tile ends at the rim.", leg.Side(), w.Found.Name, in.tape(leg.Width(w.Found, w.Start.Placed)))))
		}
	}
	return all
}
