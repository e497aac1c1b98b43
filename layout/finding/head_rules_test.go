package finding

import (
	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// headCases begin with an alcove in herringbone that ended its tile 5 in higher on one wall than
// on the next.
func headCases() []ruleCase {
	heads := func(left length.Length, free bool) func(*Input) {
		return func(in *Input) {
			roundFrom(in, 30*inch)
			for i := range in.Walls {
				w := &in.Walls[i]
				w.Found.Head = survey.HeadFound{Stops: survey.Span{From: 34 * inch, To: 34 * inch}}
				if free {
					w.Found.Head.Stops.To = 40 * inch
				}
				w.Start.Placed.Head = 34 * inch
			}
			in.Walls[1].Start.Placed.Head = left
		}
	}
	// The head of the left wall may stop at 34 to 40 in; that of the back goes up to the ceiling.
	ceiling := func(rise, head length.Length) func(*Input) {
		return func(in *Input) {
			heads(head, true)(in)
			in.Walls[0].Found.Head = survey.HeadFound{Meets: true, Readings: readings(0, rise, 60, rise)}
		}
	}
	return []ruleCase{
		{"a free head over the ceiling", HeadOverTheCeiling, ceiling(37, 39*inch), []string{`The tile on left ends 2" over the ceiling, as that is read in the corner with back.`}},
		{"a free head at the ceiling", HeadOverTheCeiling, ceiling(39, 39*inch), nil},
		{"a range over the ceiling is asked about", HeadOverTheCeiling, ceiling(33, 39*inch), nil},
		{"free heads at two heights", StepOfTheHead, heads(39*inch, true), []string{`The tile on left ends 5" higher than on back: a step where they meet.`}},
		{"free heads at one height", StepOfTheHead, heads(34*inch, true), nil},
		{"two heads that were measured", StepOfTheHead, heads(39*inch, false), nil},
	}
}
