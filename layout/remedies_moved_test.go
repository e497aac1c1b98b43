package layout_test

import (
	"context"
	"fmt"
	"testing"

	"coursewright/layout"
	"coursewright/layout/remedy"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// What is moved and let go of gives what is stated too, in the demo with bands, a strip, a niche and a dish at
// measured places by chance, and with pins.
func TestWhatIsMovedGivesWhatItStates(t *testing.T) {
	told := map[remedy.Kind]int{}
	rapid.Check(t, func(rt *rapid.T) {
		job := demo(t)
		by := byRapid{t: rt}
		sixteenths := func(what string, low, high int) string {
			return fmt.Sprintf("%d/16", by.number(what, 16*low, 16*high))
		}
		for i := range job.Walls {
			if by.yes("a measured head") {
				job.Walls[i].Head.Stops = &survey.Mark{At: "38 1/2"}
			}
		}
		if by.yes("a band") {
			job.Bands = []survey.Band{mosaic(survey.Mark{At: sixteenths("its bottom", 16, 24)})}
		}
		if by.yes("a strip") {
			s := slate(survey.Mark{At: sixteenths("its middle", 14, 24)})
			if by.yes("between heights") {
				s.Bottom, s.Top = &survey.Mark{At: "-12"}, &survey.Mark{At: sixteenths("its top", 8, 14)}
			}
			job.Walls[2].Strips = []survey.Strip{s}
		}
		for i, o := range job.Walls[1].Openings {
			if o.Kind == "niche" && by.yes("a measured niche") {
				o.Left, o.Width = &survey.Mark{At: sixteenths("its left", 20, 30)}, &survey.Mark{At: "12"}
				o.Bottom, o.Height = &survey.Mark{At: sixteenths("its bottom", 4, 8)}, &survey.Measure{Mark: &survey.Mark{At: "8 3/4"}}
				o.Near = nil
				job.Walls[1].Openings[i] = o
			}
		}
		if by.yes("a pinned line") && job.Bands == nil {
			job.Pins.Course.Line = sixteenths("line", 1, 4)
		}
		now, err := layout.Now(job)
		if err != nil {
			rt.Skip(err)
		}
		help, err := layout.WouldHelp(context.Background(), job, now)
		require.NoError(rt, err)
		seen := map[remedy.Kind]bool{} // of each kind one, since each is solved twice more
		for _, r := range help.Remedies {
			if (r.Kind == remedy.Move || r.Kind == remedy.Pin) && !seen[r.Kind] {
				seen[r.Kind], told[r.Kind] = true, told[r.Kind]+1
				checkRemedy(rt, job, now, r)
			}
		}
	})
	assert.Positive(t, told[remedy.Move])
	assert.Positive(t, told[remedy.Pin])
}
