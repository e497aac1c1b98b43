package doubt

import (
	"fmt"

	"coursewright/layout/plane"
)

// benches asks about benches in corners whose three sides make a corner far from square:
// a front that is a fortieth longer or shorter than in a square corner, which is some 3°.
// Walls of houses are rarely so far out (common practice, no source). Which of the three is
// wrong nobody can tell.
func (a *asker) benches() {
	for i, w := range a.room.Walls {
		t := w.Head.Top
		if t == nil || t.Corner == nil {
			continue
		}
		left, right := t.Corner.Along[0], t.Corner.Along[1]
		square := plane.Root(left.Times(left) + right.Times(right))
		if (w.Width - square).Abs() <= square/40 {
			continue
		}
		path := fmt.Sprintf("walls[%d]", i)
		a.ask(Doubt{Rule: Square, Path: path + ".width", Wall: i,
			Text: fmt.Sprintf("The %s is %s wide with %s and %s along the walls behind it: that corner is far %s square. In a square corner the front is %s.",
				w.Name, a.say(w.Width), a.say(left), a.say(right), wider(w.Width > square), a.say(square.RoundTo(a.room.Tape)))},
			path+".top.depth", path+".top.right")
	}
}

// wider says on which side of square a corner is.
func wider(wide bool) string {
	if wide {
		return "wider than"
	}
	return "sharper than"
}
