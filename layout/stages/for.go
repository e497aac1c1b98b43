package stages

import (
	"cmp"

	"coursewright/layout/survey"
)

// For gives the settings of a room: what its job says, else what is usual.
func For(room survey.Room) Settings {
	set, w := Usual(), room.Work
	set.Holds = w.Holds
	set.First = *cmp.Or(w.First, &set.First)
	set.Grout = *cmp.Or(w.Grout, &set.Grout)
	set.Sealant = *cmp.Or(w.Sealant, &set.Sealant)
	set.Water = *cmp.Or(w.Water, &set.Water)
	return set
}
