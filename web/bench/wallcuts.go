package bench

import (
	"coursewright/web/drawing"
	"coursewright/web/sheet"
)

// Beside the drawing of a single wall stand its cuts, where the frame has room for both. The style
// sheet shows the list from the same width on (.byside), and the script counts it to the frame.
const (
	listFrom = 800 * drawing.Pixel // the frame's width
	listWide = 352 * drawing.Pixel // what the list takes of it
)

// besideCuts tells whether the cuts of the wall in front may be listed beside it.
func (b Bench) besideCuts() bool { return b.Drawing != nil && b.Wall >= 0 && !b.Finish }

// drawingWide is what the list leaves of the frame.
func (b Bench) drawingWide() drawing.Micron {
	wide := b.Wide
	if wide == 0 {
		wide = drawing.ScreenWidth
	}
	if b.Wall < 0 || b.Finish || wide < listFrom {
		return b.Wide
	}
	return wide - listWide
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
