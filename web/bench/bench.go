package bench

import (
	"github.com/a-h/templ"

	"coursewright/layout/cuts"
	"coursewright/layout/keep"
	"coursewright/layout/takeoff"
	"coursewright/web/ask"
	"coursewright/web/page"
)

// Bench is one job's page.
type Bench struct {
	page.Job
	sight
	Drawing  *page.Walls
	Told     bool              // why the set-out is as it is stands on the page
	Slides   []templ.Component // by wall, of what is told
	Insides  []templ.Component // of the niches and windows of the walls shown, folded out
	Card     *Card             // the piece looked at, or nil
	TrimCard *Trimmed          // the piece of trim looked at, or nil
	Schedule cuts.Schedule
	Buy      takeoff.Takeoff
	Phone    Phone
	Anew     *keep.Difference // what the set-out held would be, judged anew; nil where that was not asked
	Unfit    []page.Fault     // why the set-out that was kept is not held

	RestSaved bool // all but what is refused is saved
	Listed    bool // the cuts of the wall in front stand beside it

	steps map[string][]ask.Question // what is asked, by step, once that is worked out
}

// Walls gives the walls to show below the drawing, by index: all, or the one
// in front.
func (b Bench) Walls() []int {
	if b.Wall >= 0 {
		return []int{b.Wall}
	}
	all := make([]int, len(b.Plan.Walls))
	for i := range all {
		all[i] = i
	}
	return all
}
