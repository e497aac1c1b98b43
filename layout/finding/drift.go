package finding

import (
	"fmt"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// driftRules tell how far the courses may wander from the set-out when tiles
// differ in size.
func driftRules() []Rule {
	return []Rule{{
		Name: DriftOfTheCourses, Grade: Advice, judge: drift,
		Why: "Tiles that are all a little tall, or all a little short, add up: after n courses the line may be off by n times " +
			"the variation.",
		Do:     "Measure a stack of ten real tiles with their joints, put its pitch into the job, and mark the wall from the story pole, not tile by tile.",
		Source: "geometry: courses times variation; the stack of ten is common practice, no source",
	}}
}

// drift speaks once for the room: to its highest course, and to each niche.
func drift(in Input) []place {
	vary := in.Room.Tile.Vary
	top := 0
	for _, w := range in.Walls {
		for _, p := range w.Pieces {
			top = max(top, p.Row+p.Lift+1)
		}
	}
	if vary == 0 || top == 0 || in.Room.Bond.Plumb || !in.Room.Bond.Coursed() {
		return nil
	}
	text := fmt.Sprintf("From the course line the top course may drift by %s (%d courses × %s)", in.fine(vary*length.Length(top)), top, in.fine(vary))
	pitch := in.Room.Tile.Height + in.Room.Joint
	for _, w := range in.Walls {
		for i, o := range w.Found.Openings {
			if o.Kind == survey.Pipe || o.Strip != nil || o.Kind == survey.SoapDish || w.Start.Placed.Openings[i].Bottom <= in.Setout.Line {
				continue
			}
			n := (w.Start.Placed.Openings[i].Bottom - in.Setout.Line + pitch - 1) / pitch
			text += fmt.Sprintf(", the sill of %s by %s", o.Called(), in.fine(vary*n))
		}
	}
	return room(text + ".")
}
