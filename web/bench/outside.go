package bench

import (
	"cmp"
	"slices"
	"strings"

	"coursewright/layout/survey"
	"coursewright/web/form"
	"coursewright/web/page"
)

// outside is the word of an end that turns an outside corner.
const outside = string(survey.OutsideCorner)

var (
	outsideWays = page.Choices("", "a lap", "mitre", "a mitre", "profile", "a profile", "bullnose", "bullnose")
	lapChoices  = page.Choices("", "the wider wall laps", "left", "the wall left of it laps", "right", "the wall right of it laps")
)

// turn is an outside corner of the job: the right end of the wall before it.
type turn struct{ path, before, after string }

// turns lists the outside corners from left to right.
func (b Bench) turns() []turn {
	var out []turn
	for i, w := range b.Typed.Walls {
		if w.Right.Meets == outside {
			out = append(out, turn{form.At("walls", i) + ".right", w.Name, b.Typed.Walls[(i+1)%len(b.Typed.Walls)].Name})
		}
	}
	return out
}

// turnAt is the outside corner whose right or left end is at a path.
func (b Bench) turnAt(path string) (turn, bool) {
	all := b.turns()
	i := slices.IndexFunc(all, func(t turn) bool { return t.path == path })
	if i < 0 {
		return turn{}, false
	}
	return all[i], true
}

// outsideLine is the one line of the closed section.
func outsideLine(b Bench) string {
	var out []string
	for _, t := range b.turns() {
		out = append(out, t.before+" and "+t.after+": "+cmp.Or(b.Value(t.path+".corner"), "lap"))
	}
	return strings.Join(out, ", ")
}

// outsideTrim are the trims that may stand at an outside corner as it is made.
func (b Bench) outsideTrim(how string) []page.Choice {
	var out []page.Choice
	if survey.Kind(how) == survey.Bullnose {
		out = page.Choices("", "the tile’s own edge")
	}
	kinds := form.OutsideTrim(survey.Kind(how))
	for _, t := range b.Typed.Trims {
		if slices.Contains(kinds, survey.Kind(t.Kind)) {
			out = append(out, page.Choice{Value: t.Name, Text: t.Name})
		}
	}
	return out
}
