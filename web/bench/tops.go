package bench

import (
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/web/form"
	"coursewright/web/page"
)

var (
	topKinds    = page.Choices("seat", "seat of a bench", "ledge", "ledge", "curb", "top of a curb", "cap", "cap of a half wall")
	topSizes    = page.Choices("", "tile to tile (finished)", "lined", "board to board (lined)")
	topBacks    = page.Choices("", "a wall", "corner", "a corner")
	topLapWords = page.Choices("", "the top laps over the front", "front", "the front laps over the top")
)

// stopsWord names the stop of a head.
func stopsWord(w survey.Wall) string {
	switch {
	case w.Top == nil:
		return "Stops over the level line"
	case w.Top.Sizes == string(survey.Lined):
		return "Top of the boards at the front, over the level line"
	}
	return "Finished front edge, over the level line"
}

// wallTopsLine is the one line of the closed section.
func wallTopsLine(b Bench) string {
	var out []string
	for i, w := range b.Typed.Walls {
		if w.Top != nil {
			kind := w.Top.Kind
			if w.Top.Behind == "corner" {
				kind = "corner " + kind
			}
			out = append(out, w.Name+": "+kind+" "+b.Value(form.At("walls", i)+".top.depth"))
		}
	}
	if len(out) == 0 {
		return "none"
	}
	return strings.Join(out, ", ")
}

// lowWall is how high a wall may be that is offered a top: half walls are 36 to 42 in
// high, some to 60 (how-to pages).
const lowWall = 60 * length.Inch

// low tells whether the tile of a wall ends no higher than a half wall's.
func (b Bench) low(i int) bool {
	if i >= len(b.Plan.Walls) {
		return true
	}
	w := b.Plan.Walls[i]
	return w.Start.Placed.Head-w.Shape.Region.Bounds().Bottom <= lowWall
}

// topOpening is a top in the words of a face of an opening.
func topOpening(w survey.Wall) survey.Opening {
	return survey.Opening{Kind: string(survey.Niche), Name: w.Name}
}
