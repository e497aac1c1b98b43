package bench

import (
	"strings"

	"github.com/a-h/templ"

	"coursewright/web/form"
	"coursewright/web/page"
)

var (
	unitChoices   = page.Choices("in", "inches", "mm", "millimetres")
	baseChoices   = page.Choices("tub", "tub", "shower base", "shower base", "curb", "curb", "seat", "seat of a bench", "floor", "floor")
	legChoices    = page.Choices("best", "as is best", "", "in the bond", "single", "single tiles of its own width", "none", "left out")
	headChoices   = page.Choices("ceiling", "meets the ceiling", "", "stops at a line")
	endChoices    = page.Choices("corner", "meets a corner", "wall", "meets the run of a wall", "", "stops at a line", "outside corner", "turns an outside corner")
	finishChoices = page.Choices("", "none", "trim", "trim", "bullnose", "bullnose", "casing", "casing")
	bondChoices   = page.Choices("stack", "stack bond", "running", "running bond", "diagonal", "diagonal (45°)", "herringbone", "herringbone",
		"double herringbone", "double herringbone", "basket weave", "basket weave", "hexagon", "hexagon", "picket", "picket", "chevron", "chevron",
		"mixed heights", "mixed heights in turn", "pinwheel", "pinwheel", "modular", "modular of four tiles")
	turnChoices   = page.Choices("", "upright", "45", "at 45°")
	angleChoices  = page.Choices("30", "30°", "", "45°", "60", "60°")
	alongChoices  = page.Choices("level", "level", "plumb", "plumb")
	rowsChoices   = page.Choices("", "level", "plumb", "plumb")
	jointsChoices = page.Choices("", "between", "each", "and at an end")
	startChoices  = page.Choices("left edge", "left edge of a tile", "right edge", "right edge of a tile", "joint", "middle of a joint", "tile", "middle of a tile")
	sightChoices  = page.Choices("", "seen", "low", "hidden")
	footChoices   = page.Choices("", "as usual", "plain", "seen", "low", "hidden")
	handChoices   = page.Choices("", "better side", "left", "left", "right", "right")
)

// here is the address of the page as it is looked at.
func (b Bench) here() templ.SafeURL { return page.JobPath(b.ID, b.query()) }

// alongChoices says nothing of how rows run where the job says nothing: a form that nobody touched is no edit.
func (b Bench) alongChoices() []page.Choice {
	if b.Typed.Bond.Along == "" {
		return rowsChoices
	}
	return alongChoices
}

func (b Bench) wallChoices() []page.Choice {
	var out []page.Choice
	for _, w := range b.Typed.Walls {
		out = append(out, page.Choice{Value: w.Name, Text: w.Name})
	}
	return out
}

// widest names the wall that is set first where nobody chose.
func (b Bench) widest() string {
	name, width := "", int64(-1)
	for i, w := range b.Typed.Walls {
		if l, err := page.Parse(b.Job, form.At("walls", i)+".width"); err == nil && int64(l) > width {
			name, width = w.Name, int64(l)
		}
	}
	return name
}

// leans counts the readings of a leaning corner.
func (b Bench) leans(path string) int {
	n := 0
	for _, f := range form.Fields(b.Typed) {
		if strings.HasPrefix(f.Path, path+".lean[") && strings.HasSuffix(f.Path, ".height") {
			n++
		}
	}
	return n
}

func setOrdinal(i int) string {
	return []string{"Set first", "Then", "Then", "Then"}[min(i, 3)]
}
