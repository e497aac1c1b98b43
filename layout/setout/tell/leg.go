package tell

import (
	"fmt"

	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// Legs says of every leg of a wall that is laid as is best how it is laid, and why.
func Legs(room survey.Room, w plan.Wall) (out []string) {
	for _, l := range w.Found.LegsBeside() {
		if k, _ := w.Found.LegOf(l); w.Found.Base[k].Best {
			out = append(out, Leg(room, w, l))
		}
	}
	return out
}

// Leg says so of one of them.
func Leg(room survey.Room, w plan.Wall, l survey.LegBeside) string {
	k, _ := w.Found.LegOf(l)
	at := l.Width(w.Found, w.Start.Placed)
	if at <= 0 {
		return fmt.Sprintf("No tile stands in the leg at the %s of %s: the tile of the wall ends before it.", l.Side(), w.Found.Name)
	}
	wide := at.FloorTo(room.Units.FineStep()).Format(room.Units, 0)
	return fmt.Sprintf("The leg at the %s of %s %s.", l.Side(), w.Found.Name, whyLeg(w.Found.Base[k].Why, wide, at <= room.Tile.Width))
}

// whyLeg goes on after the name of a leg so wide, which one tile spans or not.
func whyLeg(why survey.LegReason, wide string, spanned bool) string {
	single := "is laid in single tiles, each " + wide + " wide"
	if !spanned {
		single = "is laid by itself in columns, " + wide + " wide together"
	}
	switch why {
	case survey.LegParted:
		return single + ": wherever the bond began, it would put a joint into it, with smaller pieces beside it"
	case survey.LegWorse:
		return single + ": the bond would leave smaller cuts in it, or elsewhere for its sake"
	case survey.LegAlike:
		return "is laid in the bond, which leaves nothing smaller in it than single tiles would, " + wide + " wide"
	case survey.LegBetter:
		return "is laid in the bond: it is " + wide + " wide, more than one tile, and the bond leaves better cuts in it"
	case survey.LegTooThin:
		return "is left out: it is " + wide + " wide, and nobody can cut a tile so narrow"
	case survey.LegHeld:
		return "is laid as the set-out that is held has it"
	}
	return "is laid in the bond: single tiles are no choice in this room"
}
