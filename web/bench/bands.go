package bench

import (
	"cmp"
	"strings"

	"coursewright/layout/plan"
	"coursewright/layout/survey"
	"coursewright/web/page"
)

// bandBonds are the bonds of a band; it is laid in stack bond where none was picked.
var bandBonds = append(page.Choices("", "stack bond"), bondChoices[1:]...)

// bandsLine is the one line of the closed section.
func bandsLine(b Bench) string {
	var out []string
	for _, band := range b.Typed.Bands {
		out = append(out, band.Name)
	}
	for _, w := range b.Typed.Walls {
		for _, s := range w.Strips {
			out = append(out, s.Name+" up "+w.Name)
		}
	}
	return cmp.Or(strings.Join(out, ", "), "none")
}

// bandsUnder are the bands before one, upon which it may stand.
func (b Bench) bandsUnder(band int) []page.Choice {
	out := []string{"", "at a height of its own"}
	for _, under := range b.Typed.Bands[:band] {
		if !under.ToHead {
			out = append(out, under.Name, "upon "+under.Name)
		}
	}
	return page.Choices(out...)
}

// bandAbout says where the band stands now, and over the floor; where it does not
// stand yet, what is usual.
func (b Bench) bandAbout(typed survey.Band) string {
	for _, band := range b.Plan.Setout.Bands {
		if band.Name == typed.Name {
			return bandStands(b.Plan.Room, band)
		}
	}
	return "There is no standard for its height: 56 to 64 in (1400 to 1600 mm) over the floor is usual."
}

// bandStands says where a band stands.
func bandStands(room survey.Room, band plan.Band) string {
	u := room.Units
	text := "It stands from " + band.Bottom.Tape(u) + " up to " + band.Top.Tape(u) + " over the level line"
	if band.Bottom < 0 {
		text = "Its bottom stands at " + band.Bottom.Tape(u) + " from the level line, its top at " + band.Top.Tape(u)
	}
	return text + "; " + (band.Bottom - room.Foot()).Tape(u) + " over the floor or the lowest base."
}
