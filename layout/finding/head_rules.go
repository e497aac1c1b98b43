package finding

import (
	"fmt"

	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// headRules judge heads that were left free, each wall by itself.
func headRules() []Rule {
	return []Rule{
		{
			Name: HeadOverTheCeiling, Grade: Warning, judge: headsOverTheCeiling,
			Why:    "No tile stands higher than the ceiling; the top course would be bought and cut for nothing.",
			Do:     "End the range of its stops at the ceiling, or let the tile meet the ceiling.",
			Source: "plain geometry",
		},
		{
			Name: StepOfTheHead, Grade: Advice, judge: headSteps,
			Why:    "The top of the tile is seen as one line round the room; where it steps in a corner the trim of one wall ends on the tile of the next.",
			Do:     "Give the heads one height: type it, or drag the mark of one head to that of the other.",
			Source: practice,
		},
	}
}

// headsOverTheCeiling judges free heads that begin under the ceiling and came to stand over
// it. (Where all of the range is over it, that is asked about.)
func headsOverTheCeiling(in Input) []place {
	var all []place
	room := in.Room
	room.Walls = nil
	for _, w := range in.Walls {
		room.Walls = append(room.Walls, w.Found)
	}
	for i, w := range in.Walls {
		head := w.Found.Head
		if head.Meets || !head.Stops.Free() {
			continue
		}
		ceiling, where := room.CeilingBeside(i)
		inset, limit := head.Inset(in.Room), ceiling+2*in.Room.Doubt
		if where == "" || head.Stops.From+inset > limit || w.Start.Placed.Head+inset <= limit {
			continue
		}
		by := w.Start.Placed.Head + inset - ceiling
		top := plane.Point{X: w.Found.Width / 2, Y: w.Start.Placed.Head}
		all = append(all, onPoint(i, top, fmt.Sprintf("The tile on %s ends %s over the ceiling, as that is read %s.", w.Found.Name, in.tape(by), where)))
	}
	return all
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
