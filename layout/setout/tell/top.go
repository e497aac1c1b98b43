package tell

import (
	"fmt"

	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// onTop tells how the tile on a top was begun, and where its smallest cut is.
func onTop(room survey.Room, t *plan.Top) string {
	said := "The " + t.Name()
	switch {
	case t.Own && t.Less > 0:
		said += " is set out by itself"
	case t.Own:
		said += " is set out by itself, its front row whole"
	case t.Skip > 0:
		said += fmt.Sprintf(" passes over %s of the bond, because the next one would leave poorer pieces", courses(t.Skip))
	default:
		said += " goes on with the courses of its wall, and is judged with it"
	}
	if t.Less > 0 {
		said += "; its front row is cut, because a whole one would leave poorer pieces at its back"
	}
	least := plan.Run{Share: piece.Share{Num: 1, Den: 1}}
	for _, r := range t.Runs {
		if r.Share.Less(least.Share) {
			least = r
		}
	}
	if least.Piece == "" {
		return said + "; no tile on it is cut."
	}
	return said + fmt.Sprintf("; its smallest cut is %s: %s, %s of a tile.", least.Piece, least.Least.Fine(room.Units), Percent(least.Share))
}

func courses(n int) string {
	if n == 1 {
		return "a course"
	}
	return fmt.Sprintf("%d courses", n)
}
