package bench

import (
	"coursewright/layout/length"
	"coursewright/web/drawing"
	"coursewright/web/sheet"
)

// Beside the drawing of a single wall stand its cuts, where the frame has room for both. The style
// sheet shows the list from the same width on (.byside), and the script counts it to the frame.
const (
	listFrom = 800 * drawing.Pixel // the frame's width
	listWide = 352 * drawing.Pixel // what the list takes of it
)

// front draws the wall in front, its cuts beside it where that makes it hardly smaller: a wide wall needs
// all of its frame, or what is to be taken hold of on it would lie close together.
func (b *Bench) front(o drawing.Options) drawing.Scene {
	if !b.Finish {
		o.Lines = b.Schedule.Lines()
	}
	full := drawing.Elevation(b.Plan, b.Wall, o)
	if o.Wide == 0 {
		o.Wide = drawing.ScreenWidth
	}
	if b.Finish || o.Wide < listFrom {
		return full
	}
	o.Wide -= listWide
	less := drawing.Elevation(b.Plan, b.Wall, o)
	if less.Scale.On(100*length.Metre) < full.Scale.On(85*length.Metre) {
		return full
	}
	b.Listed = true
	return less
}

// wallCuts are the cuts of the wall in front, as its sheet lists them.
func (b Bench) wallCuts() []sheet.WallCut { return sheet.WallCuts(b.Plan, b.Wall, b.Schedule) }

// courseWord is what the rows of the wall are called.
func (b Bench) courseWord() string {
	if b.Plan.Room.Bond.Plumb {
		return "Column"
	}
	return "Course"
}
