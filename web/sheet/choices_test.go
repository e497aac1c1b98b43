package sheet

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
)

// severalChoices is the alcove in its own tile, in a larger one, and in one
// whose pin stands outside the wall.
func severalChoices(t *testing.T) (layout.Plan, []Choice) {
	t.Helper()
	data, err := os.ReadFile("../../testdata/jobs/alcove.json")
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	for _, name := range []string{"large", "astray"} {
		job, err = job.Duplicate(job.Title, name)
		require.NoError(t, err)
		at := len(job.Choices) - 1
		for i, c := range job.Choices {
			if c.Name == name {
				at = i
			}
		}
		if name == "large" {
			job.Choices[at].Tile.Width, job.Choices[at].Tile.Height = "11 7/8", "5 7/8"
		} else {
			job.Choices[at].Pins.Walls = map[string]survey.WallPin{"nowhere": {Joint: "3"}}
		}
	}
	plan, err := layout.Now(job)
	require.NoError(t, err)
	return plan, ChoicesOf(job, layout.Now, nil)
}

func TestChoicesAreComparedOnASheet(t *testing.T) {
	plan, several := severalChoices(t)
	require.Len(t, several, 3)
	o := Options{Kinds: []Kind{Compare}, Choices: several}
	for _, paper := range Papers() {
		o.Paper = paper
		file, _ := paged(t, plan, o)
		text := tool(t, "pdftotext", "-layout", file, "-")
		for _, said := range []string{"(chosen)", "large", "cannot be set", "smallest cut", "tiles to buy", "nowhere", "licensed trades"} {
			assert.Contains(t, text, said, paper.Name)
		}
		drawn := 0
		for _, l := range newBook(plan, o).leaves {
			drawn += len(l.parts)
		}
		assert.Equal(t, 2, drawn, "two drawings on %s", paper.Name)
	}
}

func TestChoicesArePrintedOnlyWhereThereAreSeveral(t *testing.T) {
	plan, several := severalChoices(t)
	titles := func(o Options) (out []string) {
		for _, l := range newBook(plan, o).leaves {
			out = append(out, l.title)
		}
		return out
	}
	assert.NotContains(t, titles(Options{}), "Choices")
	assert.Contains(t, titles(Options{Choices: several}), "Choices")
	assert.Equal(t, []string{"How it will look"}, titles(Options{Kinds: []Kind{Compare}}), "asked for, it shows the plan itself")
}

// Three choices stand on one page, beside or under each other, whichever lets them be drawn
// larger, with nothing cut short.
func TestChoicesAreDrawnAsLargeAsTheyGo(t *testing.T) {
	plan := roomOf(t, "jobs/alcove")
	three := []Choice{{Name: "first", Chosen: true, Plan: plan}, {Name: "second", Plan: roomOf(t, "jobs/old-house")}, {Name: "third", Plan: roomOf(t, "cases/c2-4x16-fixed")}}
	for _, paper := range Papers() {
		for n := 2; n <= 3; n++ {
			o := Options{Kinds: []Kind{Compare}, Choices: three[:n], Paper: paper}
			b := newBook(plan, o)
			require.Len(t, b.leaves, 1, paper.Name)
			require.Len(t, b.leaves[0].parts, n, paper.Name)
			laidOut(t, "choices on "+paper.Name, plan, o)
			for i, part := range b.leaves[0].parts {
				assert.Greater(t, part.scene.Height, 45*mmPaper, "%s: drawing %d can be looked at", paper.Name, i+1)
				if i > 0 {
					left := b.leaves[0].parts[i-1]
					assert.True(t, part.at.X >= left.at.X+left.scene.Width || part.at.Y >= left.at.Y+left.scene.Height, "%s: beside or under the one before it", paper.Name)
				}
			}
			for _, x := range texts(b.leaves[0]) {
				assert.NotContains(t, x.Text, "…", paper.Name)
			}
		}
	}
}

// Baths go under each other where beside each other they would be drawn smaller. What there
// is to talk over is said in words.
func TestChoicesStandAsTheyAreLargest(t *testing.T) {
	for _, name := range []string{"jobs/alcove", "jobs/one-wall", "jobs/corner-shower"} {
		plan := roomOf(t, name)
		for n := 2; n <= 3; n++ {
			some := []Choice{{Name: "first", Plan: plan}, {Name: "second", Plan: plan}, {Name: "third", Plan: plan}}[:n]
			b := newBook(plan, Options{Kinds: []Kind{Compare}, Choices: some})
			require.Len(t, b.leaves, 1)
			drawn := b.leaves[0].parts[0].scene.Scale
			for wide, fill := range map[bool]filling{true: b.besideEachOther(some), false: b.underEachOther(some)} {
				if s, found := b.scaleOf("", wide, fill); found {
					assert.LessOrEqual(t, drawn.Real, s.Real, "%s, %d choices", name, n)
				}
			}
		}
	}
	bath := roomOf(t, "jobs/alcove")
	said := ""
	for _, x := range texts(newBook(bath, Options{Kinds: []Kind{Compare}, Choices: []Choice{{Name: "first", Plan: bath}, {Name: "second", Plan: bath}}}).leaves[0]) {
		said += x.Text + " "
	}
	assert.Contains(t, said, "The hole for valve takes")
}

// What is the same in all choices is said once over them; beside each stands what differs.
func TestWhatDiffersStandsBesideEachChoice(t *testing.T) {
	plan := roomOf(t, "jobs/alcove")
	other := plan
	other.Room.Joint = plan.Room.Joint / 2
	said := func(some ...Choice) (all []string) {
		for _, x := range texts(newBook(plan, Options{Kinds: []Kind{Compare}, Choices: some}).leaves[0]) {
			all = append(all, x.Text)
		}
		return all
	}
	count := func(all []string, label string) (n int) {
		for _, text := range all {
			if text == label {
				n++
			}
		}
		return n
	}
	two := said(Choice{Name: "first", Plan: plan}, Choice{Name: "second", Plan: other})
	assert.Equal(t, 2, count(two, "joint"), "it differs")
	assert.Zero(t, count(two, "pattern"))
	assert.Contains(t, strings.Join(two, " "), "The same in all: tile ")
	assert.Contains(t, strings.Join(two, " "), "pattern running bond 1/2")
	assert.Equal(t, 2, count(said(Choice{Name: "first", Plan: plan}, Choice{Name: "second", Plan: plan}), "pattern"), "nothing differs, so all is told")
	assert.NotContains(t, strings.Join(said(Choice{Name: "first", Plan: plan}, Choice{Name: "second", Amiss: "walls: too short"}), " "), "The same in all")
}
