package sheet

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/layout/trim"
)

// trimmed is the alcove with bullnose where its tile stops, a shelf, a bar and a
// glass line.
func trimmed(t *testing.T) layout.Plan {
	return solved(t, "alcove", func(j *survey.Job) {
		j.Trims = []survey.TrimTile{{Name: "edge", Kind: "bullnose", Width: "2", Length: "6"}}
		for i := range j.Walls {
			w := &j.Walls[i]
			if w.Left.Meets == "" {
				w.Left.Trim = "edge"
			}
			if w.Right.Meets == "" {
				w.Right.Trim = "edge"
			}
			if w.Head.Meets == "" {
				w.Head.Trim = "edge"
			}
		}
		j.Walls[1].Fixtures = []survey.Fixture{
			{Kind: "corner shelf", Name: "razor shelf", Corner: "left", Width: "8", Height: survey.Measure{Mark: &survey.Mark{From: "2", To: "12"}}},
			{Kind: "grab bar", Name: "long bar", At: "30", Width: "24", Height: survey.Measure{Plain: "-20"}},
			{Kind: "glass line", Name: "screen", At: "50", Holes: []survey.Drilled{{Height: "-10"}, {Height: "10"}}},
		}
	})
}

// What poppler reads on the sheets names every cut of trim with its size and its pieces,
// and the stage that sets it.
func TestTrimIsOnTheSheets(t *testing.T) {
	plan := trimmed(t)
	pieces := plan.Trim()
	require.NotEmpty(t, pieces)
	schedule := printedText(t, plan, CutSchedule)
	groups := trim.Cuts(pieces, plan.Room.Units)
	require.NotEmpty(t, groups)
	says(t, schedule, trimWords)
	assert.NotContains(t, words(printedText(t, roomOf(t, "jobs/old-house"), CutSchedule)), "Trim along", "there is none")
	for _, g := range groups {
		says(t, schedule, g.ID+" edge")
		figure, _, _ := strings.Cut(g.Size, " beside")
		figure, _, _ = strings.Cut(figure, " with")
		says(t, schedule, strings.TrimSuffix(figure, " long, notched: held to its place and marked"))
		says(t, schedule, g.Pieces[0])
	}
	walls := printedText(t, plan, Elevations)
	for _, g := range groups {
		says(t, walls, g.ID)
	}
	says(t, printedText(t, plan, Stages), "Set the trim in the order of its numbers")
	says(t, printedText(t, plan, TakeOff), "bullnose edge")
}

// A shelf, a bar and a glass line are among the marks, in height from the level line and
// over the rim.
func TestFixturesAreOnTheSheets(t *testing.T) {
	plan := trimmed(t)
	text := printedText(t, plan, SetOut)
	b := newBook(plan, Options{Kinds: []Kind{SetOut}})
	w := plan.Walls[1]
	require.Len(t, w.Fixtures, 3)
	for _, p := range w.Fixtures {
		says(t, text, p.Found.Name)
	}
	says(t, text, b.signed(w.Fixtures[0].At.Y))
	says(t, text, "over the tub)")
	head := w.Start.Placed.Head + w.Found.Head.Trim.Width + plan.Room.Joint
	says(t, text, "(trim "+b.signed(head)+")", "the outer edge of the trim along the head")
	assert.Contains(t, words(text), "line 4'-2\"")
	laidOut(t, "alcove with trim", plan, Options{})
}
