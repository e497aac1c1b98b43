package bench

import (
	"cmp"
	"strings"

	"coursewright/layout/survey"
	"coursewright/web/page"
)

var cornerChoices = page.Choices("left", "left", "right", "right")

// fixtureKinds are the fixtures that a wall may have: in a corner only where it
// meets one.
func fixtureKinds(w survey.Wall) []string {
	kinds := []string{string(survey.SoapDish), string(survey.GrabBar), string(survey.GlassLine)}
	if w.Left.Meets == "corner" || w.Right.Meets == "corner" {
		kinds = append([]string{string(survey.CornerShelf), string(survey.FootRest)}, kinds...)
	}
	return kinds
}

// heightOf says what of a fixture its height is measured to.
func heightOf(kind string) string {
	switch survey.Kind(kind) {
	case survey.CornerShelf, survey.FootRest:
		return "Its underside over the level line"
	}
	return "Its middle over the level line"
}

func fixturesLine(b Bench) string {
	var out []string
	for _, w := range b.Typed.Walls {
		for _, f := range w.Fixtures {
			out = append(out, f.Name+" on "+w.Name)
		}
	}
	return cmp.Or(strings.Join(out, ", "), "none")
}

// alongText is what a button says that lets a flush dish slide along the wall, or not.
func alongText(f survey.Fixture) string {
	if f.Along != nil {
		return "Measure its middle"
	}
	return "Let it slide to a joint line"
}
