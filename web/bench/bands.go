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
			return b.bandStands(band)
		}
	}
	return "There is no standard for its height: 56 to 64 in (1400 to 1600 mm) over the floor is usual."
}

// bandStands says where a band stands.
func (b Bench) bandStands(band plan.Band) string {
	text := "It stands from " + b.Tape(band.Bottom) + " up to " + b.FromLevel(band.Top)
	if band.Bottom < 0 {
		text = "Its bottom stands " + b.FromLevel(band.Bottom) + ", its top " + b.FromLevel(band.Top)
	}
	return text + "; " + b.Tape(band.Bottom-b.Plan.Room.Foot()) + " over the floor or the lowest base."
}
