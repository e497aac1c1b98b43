package work

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/a-h/templ"

	"coursewright/layout/cuts"
	"coursewright/layout/stages"
	"coursewright/layout/takeoff"
	"coursewright/web/drawing"
	"coursewright/web/page"
)

// Work is what a plan means for the work.
type Work struct {
	page.Job
	Drawing  templ.Component
	Cuts     cuts.Schedule
	Sketches []templ.Component // by group
	Saw      cuts.Settings
	Buy      takeoff.Takeoff
	Stages   []stages.Stage
	Days     stages.Settings
	Marked   string         // the id of the cut whose pieces are marked in the drawing
	Wide     drawing.Micron // of the frame of the drawing; 0 where it is not known
}

var (
	notchChoices = page.Choices("", "by the tile's size", "quarter", `1/4 × 1/4 in (6 × 6 mm)`, "three eighths", `1/4 × 3/8 in (6 × 10 mm)`, "half", `1/2 × 1/2 in (12 × 12 mm)`)
	yesChoices   = page.Choices("", "no", "true", "yes")
	turnChoices  = page.Choices("true", "yes", "false", "no")
)

// turns tells whether a word of turnChoices holds: the usual answer is yes, so
// an empty field is not no.
func (w Work) turns(value string) bool { return strconv.FormatBool(w.Saw.Turn) == value }

func (w Work) offcutsText() string {
	o := w.Cuts.Offcuts
	text := fmt.Sprintf("%s cut into; two pieces come out of %d of them, which saves as many.", isAre(o.TilesCut, "tile"), o.TilesSaved)
	if o.LowerBound == o.TilesCut {
		return text + " By area and number no way of cutting two from a tile takes fewer."
	}
	return text + fmt.Sprintf(" By area and number no way of cutting two from a tile takes fewer than %d.", o.LowerBound)
}

func isAre(n int, noun string) string {
	if n == 1 {
		return "1 " + noun + " is"
	}
	return fmt.Sprintf("%d %ss are", n, noun)
}

// compared says what the flat 10 % rule would have bought.
func (w Work) compared() string {
	if len(w.Buy.Lines) == 0 {
		return ""
	}
	return w.Buy.Compared()
}

func numberOr(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

func stageCuts(s stages.Stage) string { return strings.Join(s.Ready(), ", ") }

func (w Work) cutPath(id string) templ.SafeURL {
	return page.JobPath(w.ID, "/work?cut="+id+"#drawing")
}

func hours(n int) string { return page.Count(n, "hour") }
