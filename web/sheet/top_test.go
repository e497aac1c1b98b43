package sheet

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/finding"
	"coursewright/layout/stages"
	"coursewright/web/drawing"
	"coursewright/web/shapes"
)

// Every top stands on a sheet at a scale of the ladder, with what is framed for it, its
// fall, and its pieces and trim in the list under it: poppler reads them.
func TestEveryTopHasItsSheet(t *testing.T) {
	plan := roomOf(t, "jobs/bench")
	text := printedText(t, plan, Elevations)
	for _, want := range []string{"B-T, seat of bench", "C-T, curb", `falls 3/8" to the front`, "edge mitred at 45°", "boards −18 5/8", "edge with the profile bar", `34 3/4"`} {
		says(t, text, want)
	}
	b := newBook(plan, Options{Kinds: []Kind{Elevations}})
	found := 0
	for _, l := range b.leaves {
		for _, p := range l.parts {
			if strings.HasPrefix(p.scene.Title, "The seat of") || strings.HasPrefix(p.scene.Title, "The curb") {
				found++
				lo, hi := l.area()
				assert.True(t, p.at.X >= lo.X && p.at.X+p.scene.Width <= hi.X && p.at.Y+p.scene.Height <= hi.Y, "within the margins")
				assert.Contains(t, ladder(plan.Room.Units), p.scene.Scale)
			}
		}
	}
	assert.Equal(t, 2, found)
	for i, w := range plan.Walls {
		for _, u := range b.unfolded(i) {
			listed := 0
			for _, r := range b.insideCuts(u).rows {
				require.Len(t, r.cells, 7)
				n := 0
				for _, c := range r.cells[4] {
					n = 10*n + int(c-'0')
				}
				listed += n
			}
			assert.Equal(t, len(w.Top.Pieces)+len(w.Top.Trim), listed, "all of %s is in its list", u.title)
		}
	}
}

// A bench and a half wall are no more pages than a setter carries, and every caution is on
// one of them: where the set-out sheet has no room they stand on a later list.
func TestLowWallsAreAtMostTwelvePages(t *testing.T) {
	for _, name := range []string{"jobs/bench", "jobs/half-wall"} {
		plan := roomOf(t, name)
		for _, paper := range Papers()[:2] {
			b := newBook(plan, Options{Paper: paper})
			assert.LessOrEqual(t, len(b.leaves), 12, "%s on %s: %v", name, paper.Name, leavesOf(b))
			assert.Equal(t, 1, leavesOf(b)[SetOut])
		}
		file, _ := paged(t, plan, Options{})
		text := tool(t, "pdftotext", "-layout", file, "-")
		says(t, text, finding.LocalCode)
		for _, f := range plan.Findings {
			if f.Grade == finding.Caution {
				says(t, text, f.Text)
			}
		}
	}
}

// The measuring sheet asks for the depth and the fall of every top, on one page whose
// boxes stand apart; a room without tops is not asked.
func TestTheMeasuringSheetAsksForTops(t *testing.T) {
	plan := roomOf(t, "jobs/bench")
	for _, paper := range Papers()[:2] {
		file, pages := paged(t, plan, Options{Kinds: []Kind{Measuring}, Paper: paper})
		assert.Equal(t, 1, pages, paper.Name)
		text := tool(t, "pdftotext", "-layout", file, "-")
		for _, want := range []string{"B seat of bench", "C curb", "depth, left end", "depth, right end", "level line to front edge", "back over front: its fall"} {
			says(t, text, want)
		}
		discs := map[drawing.Point]bool{} // one beside each box
		for _, e := range newBook(plan, Options{Kinds: []Kind{Measuring}, Paper: paper}).leaves[0].own.Elements {
			if d, is := e.(drawing.Disc); is {
				for at := range discs {
					assert.True(t, max(at.X-d.Centre.X, d.Centre.X-at.X) >= boxWide || max(at.Y-d.Centre.Y, d.Centre.Y-at.Y) >= boxHigh, "boxes at %v and %v lie on each other", at, d.Centre)
				}
				discs[d.Centre] = true
			}
		}
		assert.Len(t, discs, 13)
	}
	file, _ := paged(t, roomOf(t, "jobs/alcove"), Options{Kinds: []Kind{Measuring}})
	assert.NotContains(t, tool(t, "pdftotext", "-layout", file, "-"), "depth, left end")
}

// The days of a shower with a bench and a curb are one page: what would go on to another
// with less than five lines is written smaller. In all it is thirteen pages: five walls, the cuts of
// 28 lines on two.
func TestTheDaysOfABenchAreOnePage(t *testing.T) {
	for _, units := range []string{"in", "mm"} {
		job, err := shapes.New("bench", units, "bench")
		require.NoError(t, err)
		plan, err := layout.Now(job)
		require.NoError(t, err)
		for _, paper := range Papers()[:2] {
			b := newBook(plan, Options{Paper: paper})
			assert.Equal(t, 1, leavesOf(b)[Stages], "%s on %s", units, paper.Name)
			assert.LessOrEqual(t, len(b.leaves), 13, "%s on %s", units, paper.Name)
		}
	}
}

// Where a wall and its top find no room one under the other, their lists stand beside them:
// a page for each wall, with every piece of the top listed, no text over another, and the
// scale said where it is another than that of the page.
func TestAWallIsOnOnePageWithItsTop(t *testing.T) {
	job, err := shapes.New("bench", "in", "bench")
	require.NoError(t, err)
	plan, err := layout.Now(job)
	require.NoError(t, err)
	for _, paper := range Papers()[:2] {
		b := newBook(plan, Options{Paper: paper, Kinds: []Kind{Elevations}})
		assert.Len(t, b.leaves, len(plan.Walls), paper.Name)
		for i, w := range plan.Walls {
			for _, u := range b.unfolded(i) {
				require.Len(t, b.besideCuts(u).rows, len(b.insideCuts(u).rows))
				for k, r := range b.besideCuts(u).rows {
					assert.Equal(t, b.insideCuts(u).rows[k].cells[2], r.strong)
					assert.Equal(t, b.insideCuts(u).rows[k].cells[4:], r.cells[1:])
				}
			}
			for _, l := range b.leaves {
				for _, p := range l.parts {
					if w.Top != nil && strings.HasPrefix(p.scene.Title, "The "+w.Top.Name()) && p.scene.Scale != l.scale {
						said := false
						for _, e := range l.own.Elements {
							label, is := e.(drawing.Label)
							said = said || is && label.Text == "drawn at "+scaleText(p.scene.Scale, plan.Room.Units)
						}
						assert.True(t, said, "%s on %s", w.Top.Name(), paper.Name)
					}
				}
			}
		}
	}
}

// Cautions that find no room on a list stand on the sheet of a wall that has room, not on a leaf of
// their own. Found on the shower with a corner bench, on Letter.
func TestCautionsTakeNoLeafWhereAWallHasRoom(t *testing.T) {
	plan := roomOf(t, "jobs/corner-bench")
	for _, paper := range Papers()[:2] {
		b := newBook(plan, Options{Paper: paper})
		assert.LessOrEqual(t, len(b.leaves), 13, "%s: %v", paper.Name, leavesOf(b))
		for _, l := range b.leaves {
			assert.NotEqual(t, "Cautions", l.title, paper.Name)
		}
	}
}

// No line is to be struck over a bench or a curb that ends under it: found where the first joint
// line over the rim stood over both.
func TestALowWallHasALineOfItsOwn(t *testing.T) {
	plan := roomOf(t, "jobs/bench")
	text := words(printedText(t, plan, SetOut))
	lows := stages.Lows(stages.ToStrike(plan.Room, plan.Setout.Line, plan.Walls).Full, plan.Walls)
	require.NotEmpty(t, lows)
	b := newBook(plan, Options{})
	for _, l := range lows {
		says(t, text, "line and batten at "+b.signed(l.Bottom)+".")
		w := plan.Walls[l.Walls[0]]
		figure := b.bareTape(l.Bottom - w.Found.Base[0].Readings[0].Value)
		says(t, text, figure+" "+figure, w.Found.Name)
		drawn := words(printedText(t, plan, Elevations))
		says(t, drawn, b.signed(l.Bottom))
	}
}
