package finding

import (
	"fmt"

	"coursewright/layout/survey"
)

// headRules judge heads that were left free, each wall by itself.
func headRules() []Rule {
	return []Rule{{
		Name: StepOfTheHead, Grade: Advice, judge: headSteps,
		Why:    "The top of the tile is seen as one line round the room; where it steps in a corner the trim of one wall ends on the tile of the next.",
		Do:     "Give the heads one height: type it, or drag the mark of one head to that of the other.",
		Source: practice,
	}}
}

// headSteps judges inside corners at which tile stops at two heights, one of which was free.
func headSteps(in Input) []place {
	var all []place
	for i, w := range in.Walls {
		n := w.Found.Left.Beyond
		if !w.Found.Left.Meets || n < 0 || n >= len(in.Walls) || n == i {
			continue
		}
		beside := in.Walls[n]
		heads := [...]survey.HeadFound{beside.Found.Head, w.Found.Head}
		if heads[0].Meets || heads[1].Meets || !heads[0].Stops.Free() && !heads[1].Stops.Free() {
			continue
		}
		high, low, by := beside.Found.Name, w.Found.Name, headHeight(beside)-headHeight(w)
		if by < 0 {
			high, low, by = low, high, -by
		}
		if by >= max(1, in.Room.Tape) {
			all = append(all, place{wall: -1, text: fmt.Sprintf("The tile on %s ends %s higher than on %s: a step where they meet.", high, in.tape(by), low)})
		}
	}
	return all
}
