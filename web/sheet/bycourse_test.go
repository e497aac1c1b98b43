package sheet

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// herringboneBand is the alcove with a measured band in herringbone round it.
func herringboneBand(j *survey.Job) {
	j.Walls[1].Openings = nil
	j.Bands = []survey.Band{{Name: "accent", Bottom: survey.Mark{At: "16"}, Height: "8", Joint: "1/16",
		Tile: survey.Tile{Width: "4", Height: "1 1/4", Thickness: "1/4"}, Bond: survey.Bond{Kind: "herringbone"}}}
}

// Along an edge in a pattern nearly every piece is a cut of its own. They printed 31 pages for
// an alcove with a band; now a wall has its drawing and one leaf with its list.
func TestCutsOfAPatternAreListedByPlaceAndCourse(t *testing.T) {
	plan := solved(t, "alcove", herringboneBand)
	b := newBook(plan, Options{})
	assert.LessOrEqual(t, len(b.leaves), 16, "%v", leavesOf(b))
	assert.LessOrEqual(t, leavesOf(b)[Elevations], 2*len(plan.Walls))

	pieces := map[int]int{}
	for i, g := range b.cuts.Groups {
		pieces[i+1] = g.Count
	}
	inRow := 0
	for _, w := range plan.Walls {
		course := map[string]int{}
		for _, p := range w.Pieces {
			course[p.ID] = p.Course
		}
		for _, e := range b.wallEntries(w, course) {
			for _, line := range e.lines {
				if e.byCourse != "" {
					assert.Contains(t, e.byCourse+",", "C"+number(line), "the line of each cut is named")
				}
			}
			if e.byCourse != "" {
				inRow += e.pieces
				assert.Regexp(t, `^[0-9]+:`+hold+`|^[0-9]+: `, e.byCourse)
			}
		}
	}
	assert.Greater(t, inRow, 60, "most of them")
}

// How marks are read stands over the first line that has some, not pages later, and nowhere else.
func TestMarksAreExplainedBeforeTheFirst(t *testing.T) {
	text := words(printedText(t, roomOf(t, "jobs/herringbone"), CutSchedule))
	said, first := strings.Index(text, words(cuts.Corners)), -1
	if at := regexp.MustCompile(`marks [A-D] to`).FindStringIndex(text); at != nil {
		first = at[0]
	}
	assert.Positive(t, said)
	assert.Greater(t, first, said)
	for _, plan := range []layout.Plan{solved(t, "alcove"), solved(t, "alcove", herringboneBand)} { // the band's cuts are all straight
		assert.NotContains(t, words(printedText(t, plan, CutSchedule)), words(cuts.Corners))
	}
}

// Ten tiles are measured as they can be laid: a herringbone has no row of ten, and read so it would have been six feet, as
// a dotted weave's row, which has a tile of the other way between any two.
func TestTenTilesAreMeasuredAsTheyCanBeLaid(t *testing.T) {
	for kind, want := range map[string]string{"running": `joints in a row take 4'-0 5/8"`, "herringbone": `laid side by side on the floor, take 24 7/8"`, "chevron": `laid side by side on the floor, take 24 7/8"`} {
		plan := solved(t, "alcove", func(j *survey.Job) {
			j.Walls[1].Openings, j.Bond = nil, survey.Bond{Kind: kind}
			j.Tile.Width, j.Tile.Height, j.Joint = "4 3/4", "2 3/8", survey.Measure{Plain: "1/8"}
		})
		says(t, strings.ReplaceAll(newBook(plan, Options{}).checks(), hold, " "), want, kind)
	}
}

// A wall's sheet tells how marks are read, once and only where its list has some; without the schedule at hand, in full. A
// setter cuts by the wall's sheet and once found them explained on the schedule alone, and there only where a quarter of its lines had some.
func TestASheetWithMarksTellsHowTheyAreRead(t *testing.T) {
	for name, c := range map[string]struct {
		plan  layout.Plan
		marks bool
	}{"hexagon": {demoIn(t, "4 1/4", "4 1/4", survey.Bond{Kind: "hexagon"}), true}, "alcove": {roomOf(t, "jobs/alcove"), false}} {
		for _, kinds := range [][]Kind{{Elevations}, {Elevations, CutSchedule}} {
			b := newBook(c.plan, Options{Kinds: kinds})
			told := "A to B: from corner A towards B"
			if len(kinds) == 1 {
				told = cuts.Corners
			}
			for w := range c.plan.Walls {
				for _, narrow := range []bool{false, true} {
					said := 0
					for _, r := range b.wallCuts(c.plan.Walls[w], narrow).rows {
						if r.note && strings.HasPrefix(r.cells[0], told) {
							said++
						}
					}
					assert.Equal(t, c.marks, said == 1, "%s, wall %d: %d", name, w, said)
				}
			}
		}
	}
	few := newBook(demoIn(t, "6 1/8", "3", survey.Bond{Kind: "basket weave"}), Options{Kinds: []Kind{CutSchedule}})
	few.cuts.Groups = slices.DeleteFunc(few.cuts.Groups, func(g cuts.Group) bool { return few.marked(g) && g.Count == 1 })
	f := few.flow(subject{title: "Cut schedule"}, false)
	f.markWords()
	assert.Contains(t, words(strings.Join(labelsOf(f.leaf), " ")), cuts.Corners)
}

func labelsOf(l *leaf) (all []string) {
	for _, x := range texts(l) {
		all = append(all, x.Text)
	}
	return all
}

// What stands over the cuts of a place goes on over columns in which nothing stands: it was once broken after "at the".
func TestThePlaceOfManyCutsStandsOnOneLine(t *testing.T) {
	plan := demoIn(t, "4 1/4", "4 1/4", survey.Bond{Kind: "hexagon"})
	b := newBook(plan, Options{Kinds: []Kind{Elevations}})
	f := &flow{leaf: &leaf{size: b.opts.Paper.lie(false)}, book: b, percent: 100}
	f.lo, f.hi = f.leaf.area()
	list, seen := b.wallCuts(plan.Walls[1], false), 0
	list.text = body
	for _, r := range list.rows {
		if r.strong != "" {
			seen++
			lines, _ := list.lines(r, f.columns(list.columns))
			assert.Equal(t, r.strong, lines[0][0])
		}
	}
	assert.Positive(t, seen)
}

// A word that belongs to the figure is set apart from what is said of the places.
func TestTheWordBesideAFigureIsSetApartFromItsPlaces(t *testing.T) {
	b := &book{plan: roomOf(t, "jobs/alcove")}
	assert.Equal(t, `high; places up to 1/16" larger`, strings.ReplaceAll(b.withSpread("high", cuts.Group{Spread: length.Inch / 16}), hold, " "))
	assert.Equal(t, `places up to 1/16" larger`, strings.ReplaceAll(b.withSpread("", cuts.Group{Spread: length.Inch / 16}), hold, " "))
}

// Courses in which the same is cut stand together; a herringbone beside a strip once took a third of a sheet to say "C2, C3"
// twenty times.
func TestCoursesCutAlikeAreToldTogether(t *testing.T) {
	told := map[int][]string{2: {"C41", "C42"}, 3: {"C2", "C3"}, 4: {"C2", "C3"}, 5: {"C2", "C3"}, 6: {"C9"}, 7: {"C2", "C3"}}
	assert.Equal(t, "2: C41, C42; 3 to 5, 7: C2, C3; 6: C9", coursesTold(told))
}

// A flush soap dish of the name that it comes with is called so once.
func TestASoapDishIsCalledSoOnce(t *testing.T) {
	for side, want := range map[string]string{"soap dish soap dish": "at soap dish", "soap dish shell": "at soap dish shell", "niche shelf": "at niche shelf"} {
		assert.Equal(t, want, placeText(side))
	}
}
