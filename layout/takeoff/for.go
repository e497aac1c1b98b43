package takeoff

import (
	"slices"

	"coursewright/layout/survey"
)

// For gives the settings of a room: what its job says, else what is usual. The
// saw that cuts tile cuts trim as well.
func For(room survey.Room) Settings {
	set, w := Usual(room.Units), room.Work
	if w.Breakage != nil {
		set.Breakage = *w.Breakage
	}
	if w.Allowance != nil {
		set.Allowance = *w.Allowance
	}
	if w.Kerf != nil {
		set.Kerf = *w.Kerf
	}
	set.Notch = Notch(slices.Index(survey.Notches(), w.Notch) + 1)
	set.Niche = Niche{Depth: w.NicheDepth, Back: w.NicheBack, Trim: w.NicheTrim, Tile: w.NicheTile}
	return set
}
