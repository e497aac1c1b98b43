package view

import (
	"strconv"
	"strings"

	"github.com/a-h/templ"

	"coursewright/web/form"
)

// Choice is one word of a select, as the job file and as people write it.
type Choice struct{ Value, Text string }

var (
	unitChoices   = []Choice{{"in", "inches"}, {"mm", "millimetres"}}
	baseChoices   = []Choice{{"tub", "tub"}, {"shower base", "shower base"}, {"curb", "curb"}, {"floor", "floor"}}
	headChoices   = []Choice{{"ceiling", "meets the ceiling"}, {"", "stops at a line"}}
	endChoices    = []Choice{{"corner", "meets a corner"}, {"", "stops at a line"}}
	finishChoices = []Choice{{"", "none"}, {"trim", "trim"}, {"bullnose", "bullnose"}, {"casing", "casing"}}
	bondChoices   = []Choice{{"stack", "stack bond"}, {"running", "running bond"}}
	alongChoices  = []Choice{{"level", "level"}, {"plumb", "plumb"}}
	jointsChoices = []Choice{{"", "between"}, {"each", "and at an end"}}
	startChoices  = []Choice{{"left edge", "left edge of a tile"}, {"right edge", "right edge of a tile"}, {"joint", "middle of a joint"}, {"tile", "middle of a tile"}}
	handChoices   = []Choice{{"", "better side"}, {"left", "left"}, {"right", "right"}}
)

// here is the address of the page as it is looked at.
func (b Bench) here() templ.SafeURL { return jobPath(b.ID, b.query()) }

func (b Bench) query() string {
	if b.Wall < 0 {
		return ""
	}
	return "?wall=" + strconv.Itoa(b.Wall+1)
}

func (b Bench) wallChoices() []Choice {
	var out []Choice
	for _, w := range b.Typed.Walls {
		out = append(out, Choice{w.Name, w.Name})
	}
	return out
}

// widest names the wall that is set first where nobody chose.
func (b Bench) widest() string {
	name, width := "", int64(-1)
	for i, w := range b.Typed.Walls {
		if l, err := parse(b, form.At("walls", i)+".width"); err == nil && int64(l) > width {
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

// Pin is one pinned unknown: its field and what it is called.
type Pin struct{ Path, Label string }

func (b Bench) pinned() []Pin {
	var out []Pin
	for _, f := range form.Fields(b.Typed) {
		if strings.HasPrefix(f.Path, "pins.") {
			out = append(out, Pin{f.Path, placeIn(b.Typed, f.Path)})
		}
	}
	return out
}

func setOrdinal(i int) string {
	return []string{"Set first", "Then", "Then", "Then"}[min(i, 3)]
}
