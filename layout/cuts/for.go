package cuts

import "coursewright/layout/survey"

// For gives the settings of a room: what its job says, else what is usual.
func For(room survey.Room) Settings {
	set, w := Usual(room.Units), room.Work
	if w.Kerf != nil {
		set.Kerf = *w.Kerf
	}
	if w.Turn != nil {
		set.Turn = *w.Turn
	}
	if w.Least != nil {
		set.Least = *w.Least
	}
	return set
}
