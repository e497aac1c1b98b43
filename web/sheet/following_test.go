package sheet

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
)

// A list that stands under another takes a leaf less, is said in the leaf's title, says all that it says alone, and is written
// nearly as large; where none would be saved every list begins a leaf.
func TestAListFollowsWhereThatTakesALeafLess(t *testing.T) {
	followed := 0
	everyRoom(t, func(name string, plan layout.Plan) {
		for _, paper := range Papers()[:2] {
			b := newBook(plan, Options{Paper: paper})
			single := b.attempt(0)
			single.trying = false
			single.fill()
			require.LessOrEqual(t, len(b.leaves), len(single.leaves), name)
			also := 0
			for _, l := range b.leaves {
				also += len(l.also)
				for _, x := range texts(l) {
					assert.GreaterOrEqual(t, x.Size, drawing.Micron(leastText*9/10), "%s on %s: %s", name, paper.Name, x.Text)
				}
				if len(l.also) > 0 {
					assert.Contains(t, l.title, ", ", "%s on %s", name, paper.Name)
				}
			}
			if followed += also; also == 0 {
				assert.Len(t, b.leaves, len(single.leaves), name)
				continue
			}
			assert.Less(t, len(b.leaves), len(single.leaves), "%s on %s", name, paper.Name)
			said := wordsSaid(b)
			for word, n := range wordsSaid(single) {
				assert.GreaterOrEqual(t, said[word], n, "%s on %s: %s", name, paper.Name, word)
			}
		}
	})
	assert.Greater(t, followed, 8)
}

// wordsSaid counts the words on the lists for the room, but for names of columns and numbers of sheets, which are said once a leaf.
func wordsSaid(b *book) map[string]int {
	out := map[string]int{}
	for _, l := range b.leaves {
		if !slices.Contains(roomLists, l.kind) {
			continue
		}
		for _, x := range texts(l) {
			if x.Colour == drawing.Black && x.Size >= leastText {
				for word := range strings.FieldsSeq(strings.ReplaceAll(x.Text, hold, " ")) {
					out[word]++
				}
			}
		}
	}
	return out
}

// A list that takes more leaves than one may begin under another, where it then takes one less: its second leaf bears its own title.
func TestALongListGoesOnUnderItsOwnTitle(t *testing.T) {
	b := newBook(roomOf(t, "jobs/one-wall"), Options{Paper: Papers()[0]})
	b = &book{plan: b.plan, opts: b.opts, now: StoryPole, order: []Kind{FirstCourse, StoryPole}, singly: map[Kind]int{StoryPole: 2}}
	b.flow(subject{title: "First course"}, false).kind = FirstCourse
	b.fitted(subject{title: "Long"}, false, func(f *flow) {
		for range 60 {
			f.words(body, "a line")
		}
	})
	require.Len(t, b.leaves, 2)
	assert.Equal(t, "First course, long", b.leaves[0].title)
	assert.Equal(t, []Kind{StoryPole}, b.leaves[0].also)
	assert.Equal(t, "Long", b.leaves[1].title)
	assert.Equal(t, StoryPole, b.leaves[1].kind)
}

// What goes under a list stands there whenever the list is written anew.
func TestAListIsWrittenAnewWithWhatWasAdded(t *testing.T) {
	b := &book{opts: Options{Paper: Papers()[0]}, plan: roomOf(t, "jobs/one-wall"), single: true, now: Stages}
	lines := func(text string, n int) func(*flow) {
		return func(f *flow) {
			for range n {
				f.words(body, text)
			}
		}
	}
	b.fitted(subject{title: "List"}, false, lines("list", 20))
	f := b.flows[0]
	f.add(lines("added", 2))
	high := f.y
	for n := 1; !b.refill(f, lines("more", n)) || f.percent == 100; n++ {
		require.Less(t, n, 60)
	}
	assert.Greater(t, f.y, high)
	assert.Len(t, b.leaves, 1)
	assert.Equal(t, 20, countOf(b.leaves[0], "list"))
	assert.Equal(t, 2, countOf(b.leaves[0], "added"))
	assert.False(t, b.refill(f, lines("too many", 60)))
	assert.Equal(t, 2, countOf(b.leaves[0], "added"), "what does not fit changes nothing")
}

// Where its findings stand is said on the sheet of a wall in what room there is: it once began another leaf with one line.
func TestWhereFindingsStandBeginsNoLeaf(t *testing.T) {
	plan := roomOf(t, "jobs/one-wall")
	for _, left := range []drawing.Micron{1, 2, 3} {
		b := &book{opts: Options{Paper: Papers()[0]}, plan: plan, now: Elevations}
		f := b.flow(subject{title: "Wall"}, false)
		f.hi.X = f.lo.X + 40*mmPaper
		f.y = f.hi.Y - left*f.of(plain).leading()
		f.pointing("Findings 1, 2, 3, 4, 5, 6, 7, 8: sheet 12.", "Findings: sheet 12.")
		require.Len(t, b.leaves, 1)
		said := texts(b.leaves[0])
		if last := said[len(said)-1].Text; left == 1 {
			assert.Equal(t, "Findings: sheet"+" 12.", strings.ReplaceAll(last, hold, " "))
		} else {
			assert.Contains(t, last, "12.")
		}
	}
}

// The narrow end of a half wall stands on the leaf of its neighbour where both go on it, with a list of its own.
func TestAnEndPanelStandsOnItsNeighboursLeaf(t *testing.T) {
	plan := shapeOf(t, "half wall")
	b := newBook(plan, Options{Paper: Papers()[0], Kinds: []Kind{Elevations}})
	require.Len(t, b.leaves, 3)
	assert.Equal(t, "H, half wall; E, end panel", b.leaves[2].wall)
	said := map[string]bool{}
	for _, x := range texts(b.leaves[2]) {
		said[x.Text] = true
	}
	for _, text := range []string{"half wall", "end panel wall", "Wall E, end panel"} {
		assert.True(t, said[text], text)
	}
	laidOut(t, "half wall", plan, Options{Paper: Papers()[0], Kinds: []Kind{Elevations}})
}

// What stands under the last line of the schedule has room there: beside a single line it once ran on to a leaf of its own.
func TestTheEndOfTheScheduleHasRoomUnderItsLastLine(t *testing.T) {
	lines := []cutLine{{least: leastLine}, {least: leastLine}, {least: leastLine}}
	for end := drawing.Micron(0); end <= 100*mmPaper; end += mmPaper {
		leaves := packed(lines, mostLine, 100*mmPaper, end, 2)
		used := drawing.Micron(len(leaves[len(leaves)-1])) * mostLine
		assert.LessOrEqual(t, used+end, drawing.Micron(100*mmPaper))
	}
}

// What saves a leaf each: the list of an inside at another scale, a pole in two columns, findings and cautions under a list in smaller
// text. Every one of these began a leaf more.
func TestAsFewLeavesAsTheyTake(t *testing.T) {
	diagonal := jobOf(t, "shape/niche").Clone()
	diagonal.Bond, diagonal.Joint = survey.Bond{Kind: string(survey.Diagonal)}, survey.Measure{Plain: "1/8"}
	diagonal.Tile.Width, diagonal.Tile.Height = "5 7/8", "5 7/8"
	niche, err := layout.Now(diagonal)
	require.NoError(t, err)
	for _, c := range []struct {
		what  string
		plan  layout.Plan
		paper Paper
		kinds []Kind
		most  int
	}{
		{"a niche laid diagonally", niche, Papers()[0], []Kind{Elevations}, 6},
		{"the pole of a mosaic", roomOf(t, "jobs/mosaic"), Papers()[0], []Kind{StoryPole}, 2},
		{"findings", roomOf(t, "cases/tape-course-smallest"), Papers()[1], nil, 6},
		{"cautions", shapeOf(t, "dotted"), Papers()[1], nil, 9},
	} {
		assert.LessOrEqual(t, len(newBook(c.plan, Options{Paper: c.paper, Kinds: c.kinds}).leaves), c.most, c.what)
	}
}
