package sheet

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
)

// printedText is what poppler reads on the sheets of one kind, each space one.
func printedText(t *testing.T, plan layout.Plan, k Kind) string {
	t.Helper()
	file, _ := paged(t, plan, Options{Kinds: []Kind{k}})
	return tool(t, "pdftotext", "-layout", file, "-")
}

// says tells whether a text has some words in a row, whatever parts them.
func says(t *testing.T, text, want string, of ...any) {
	t.Helper()
	if !strings.Contains(words(text), words(want)) {
		assert.Fail(t, fmt.Sprintf("%q is not said in\n%s", words(want), text), of...)
	}
}

func words(text string) string { return strings.Join(strings.Fields(text), " ") }

// Every tile over the base is as high as its top stands over the readings and
// the gap, at the ends of the edge that is cut; so too beside corners that lean.
func TestTheFirstCourseFollowsTheReadings(t *testing.T) {
	for _, name := range five {
		plan := roomOf(t, name)
		b := newBook(plan, Options{Kinds: []Kind{FirstCourse}})
		seen := 0
		for _, w := range plan.Walls {
			for _, tile := range b.footing(w).tiles {
				base := segmentAt(w, tile.left.X, tile.right.X)
				if base == nil || tile.piece.Kind&piece.Notch != 0 {
					continue
				}
				for _, end := range []struct{ x, height length.Length }{
					{tile.left.X, tile.box.Top - tile.left.Y}, {tile.right.X, tile.box.Top - tile.right.Y}} {
					place := tile.box.Top - survey.At(base.Readings, end.x) - base.Gap
					if tile.left.Y == tile.box.Bottom && tile.right.Y == tile.box.Bottom && tile.box.Bottom == tile.piece.Tile.Bottom {
						continue // it hangs over the base, not cut to it
					}
					seen++
					assert.InDelta(t, float64(place), float64(end.height), 2, "%s, %s at %v", name, tile.piece.ID, end.x)
				}
			}
		}
		assert.Greater(t, seen, 3, name)
	}
}

// segmentAt is the stretch of base that reaches over two places, or nil.
func segmentAt(w layout.Wall, a, z length.Length) *survey.SegmentFound {
	for i, s := range w.Found.Base {
		if s.Readings[0].At <= a && z <= s.Readings[len(s.Readings)-1].At {
			return &w.Found.Base[i]
		}
	}
	return nil
}

// In the room of the first report the back wall begins at 151 mm, 939 mm under
// the line; measured at the face's box it said 152.5 and 788.
func TestHeightsBesideALeaningCornerArePrintedAtTheCut(t *testing.T) {
	plan := roomOf(t, "cases/g-300x600")
	b := newBook(plan, Options{Kinds: []Kind{FirstCourse}})
	text := printedText(t, plan, FirstCourse)
	for _, w := range plan.Walls {
		for _, tile := range b.footing(w).tiles {
			left, right := tile.heights()
			for _, figure := range []string{b.down(left), b.down(right), b.bareTape(-tile.left.Y), b.bareTape(-tile.right.Y)} {
				says(t, text, figure, tile.piece.ID)
			}
		}
	}
	first := b.footing(plan.Walls[1]).tiles[0]
	corner := survey.At(plan.Walls[1].Found.Left.Lean, first.left.Y)
	assert.InDelta(t, float64(corner+plan.Walls[1].Found.Left.Gap), float64(first.left.X), float64(length.Millimetre), "measured at the corner as it leans")
}

func TestTheCutScheduleCountsEveryPiece(t *testing.T) {
	for _, name := range five {
		plan := roomOf(t, name)
		cut := 0
		for _, w := range plan.Walls {
			for _, p := range w.Pieces {
				if !p.Whole {
					cut++
				}
			}
		}
		b := newBook(plan, Options{Kinds: []Kind{CutSchedule}})
		f := &flow{leaf: b.leaves[0]}
		f.lo, f.hi = f.leaf.area()
		file, _ := paged(t, plan, Options{Kinds: []Kind{CutSchedule}})
		text := tool(t, "pdftotext", "-layout", file, "-")
		points := func(m drawing.Micron) string { return strconv.FormatInt(int64(m)*72/25400, 10) }
		counts := tool(t, "pdftotext", "-layout", "-x", points(f.cutAt(1)), "-y", "0", "-W", points(f.cutAt(2)-f.cutAt(1)), "-H", points(f.hi.Y), file, "-")
		sum, lines := 0, 0
		for _, m := range regexp.MustCompile(`(?m)^\s*(\d+) ?×`).FindAllStringSubmatch(counts, -1) {
			n, err := strconv.Atoi(m[1])
			require.NoError(t, err)
			sum, lines = sum+n, lines+1
		}
		assert.Equal(t, cut, sum, name)
		assert.Equal(t, lines, len(b.rows()), name)
		for _, g := range b.cuts.Groups {
			big, _ := b.fence(g)
			says(t, text, big, "%s, %s", name, g.ID)
		}
	}
}

func TestTheSetOutSheetSaysWhatIsStruck(t *testing.T) {
	joints := 0
	for _, name := range five {
		plan := roomOf(t, name)
		b := newBook(plan, Options{Kinds: []Kind{SetOut}})
		text := words(printedText(t, plan, SetOut))
		struck := stages.ToStrike(plan.Room, plan.Setout.Line, plan.Walls)
		says(t, text, "Strike "+b.lineName(struck)+" round all the walls: "+b.over(struck.At)+" the level line.", name)
		says(t, text, "top edge "+b.over(struck.Full.Bottom)+" the level line", name)
		for _, w := range plan.Walls {
			if edge, ok := stages.Strike(w, struck.Full); ok {
				says(t, text, wallText(w.Found)+" "+tileAt(w, edge, struck.Full)+" "+b.bareTape(stages.StruckFrom(w, edge, struck.At)), name)
			}
		}
		for _, s := range b.stations() {
			says(t, text, b.bareTape(-s.Height), name)
		}
		for _, s := range stages.Rims(b.stations()) {
			assert.GreaterOrEqual(t, struck.At, s.Height, "%s: nobody strikes a line behind a rim", name)
		}
		if struck.Joint {
			joints++
		}
	}
	t.Logf("the first joint line is struck in %d of %d rooms", joints, len(five))
}

// A line behind the rim of a tub cannot be struck: the first joint line is.
func TestBehindARimTheFirstJointLineIsStruck(t *testing.T) {
	plan := solved(t, "alcove", func(j *survey.Job) { j.Pins.Course.Line = "-39" })
	text := words(printedText(t, plan, SetOut))
	says(t, text, `Strike the first joint line over the rim round all the walls: 36" under the level line.`)
	says(t, text, `Fix the batten with its top edge 36" under the level line.`)
	says(t, text, `line over rim 2 7/8" 2 3/4" 3 1/16" 3 1/8"`)
	stages := words(printedText(t, plan, Stages))
	says(t, stages, `top edge 36" under the level line`)
}

func TestTheStoryPoleListsEveryCourseAndMark(t *testing.T) {
	for _, name := range five {
		plan := roomOf(t, name)
		b := newBook(plan, Options{Kinds: []Kind{StoryPole}})
		text := words(printedText(t, plan, StoryPole))
		p := b.pole()
		for _, u := range p.tiles {
			says(t, text, b.signed(u.bottom), "%s, course %d", name, u.course)
		}
		for _, m := range p.marks {
			says(t, text, b.signed(m.at), "%s, %s", name, m.name)
		}
	}
}

func TestTheTakeOffSaysWhatToBuy(t *testing.T) {
	for _, name := range five {
		plan := roomOf(t, name)
		b := newBook(plan, Options{Kinds: []Kind{TakeOff}})
		text := words(printedText(t, plan, TakeOff))
		for _, l := range b.buy.Lines {
			says(t, text, l.Amount()+" ", name)
			says(t, text, strings.Fields(l.Item)[0], name)
		}
	}
}

// What a wall's own list counts is what is cut on it.
func TestAWallsListCountsItsCuts(t *testing.T) {
	for _, name := range five {
		plan := roomOf(t, name)
		b := newBook(plan, Options{Kinds: []Kind{Elevations}})
		for _, w := range plan.Walls {
			cut, course := 0, map[string]int{}
			for _, p := range w.Pieces {
				course[p.ID] = p.Course
				if !p.Whole {
					cut++
				}
			}
			for _, e := range b.wallEntries(w, course) {
				cut -= e.pieces
			}
			assert.Zero(t, cut, "%s, %s", name, w.Found.Name)
		}
	}
}

func TestCoursesAreToldInFewSigns(t *testing.T) {
	for want, n := range map[string][]int{
		"7, 9 … 29": {7, 9, 11, 13, 15, 17, 19, 21, 23, 25, 27, 29}, "8 to 30": {8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25, 26, 27, 28, 29, 30},
		"21, 23": {21, 23}, "6": {6}, "1, 4, 5": {1, 4, 5}, "2 to 4, 9": {2, 3, 4, 9}, "1, 4 … 10": {1, 4, 7, 10}} {
		assert.Equal(t, want, strings.ReplaceAll(coursesText(n), hold, " "))
	}
}

// Tile that stands is in no list of what to cut.
func TestSheetsListOnlyWhatIsStillToBeSet(t *testing.T) {
	plan := solved(t, "alcove")
	back := &plan.Walls[1]
	first := back.Pieces[0]
	back.Found.Set = &survey.Standing{Course: first.Course, Row: first.Row}
	b := newBook(plan, Options{Kinds: []Kind{FirstCourse, Elevations}})
	assert.Empty(t, b.footing(*back).tiles)
	assert.NotEmpty(t, b.footing(plan.Walls[0]).tiles)
	for _, e := range b.wallEntries(*back, map[string]int{first.ID: first.Course}) {
		assert.NotContains(t, e.courses, first.Course)
	}
	for _, k := range []Kind{FirstCourse, Elevations, CutSchedule, Stages} {
		assert.NotEmpty(t, printedText(t, plan, k))
	}
}

// Where the left corner of a wall leans, its START and all other figures along it count from two places: the set-out and the sheet
// of the wall say so beside the figures, and say START both ways. They once gave one figure each and said nothing.
func TestAWallWithALeaningCornerSaysFromWhereItIsMeasured(t *testing.T) {
	leaning, plumb := 0, 0
	for _, name := range five {
		plan := roomOf(t, name)
		b, struck := newBook(plan, Options{}), stages.ToStrike(plan.Room, plan.Setout.Line, plan.Walls)
		setOut, onWall := words(printedText(t, plan, SetOut)), map[string]string{}
		for _, l := range b.leaves {
			for _, x := range texts(l) {
				onWall[l.wall] += x.Text + " "
			}
		}
		for i, w := range plan.Walls {
			edge, ok := stages.Strike(w, struck.Full)
			if !ok || len(b.unfolded(i)) > 0 || b.bareTape(struck.From(w, edge)) == b.bareTape(edge) {
				assert.Empty(t, b.leanText(i), "%s, %s", name, w.Found.Name)
				plumb++
				continue
			}
			leaning++
			says(t, setOut, w.Found.Letter+" "+b.bareTape(edge)+" "+stages.Datum(w), name)
			says(t, words(onWall[wallText(w.Found)]), "START is "+b.bareTape(struck.From(w, edge))+" from it along the line struck, and "+b.bareTape(edge)+" "+stages.Datum(w), name)
		}
	}
	assert.Greater(t, leaning, 1)
	assert.Greater(t, plumb, 4)
}

// Where tile goes round an outside corner it begins beyond the end of its wall: no tape shows a minus.
func TestNothingBeginsAtAMinus(t *testing.T) {
	for _, name := range []string{"jobs/half-wall", "jobs/boxing"} {
		b := newBook(roomOf(t, name), Options{Kinds: []Kind{SetOut}})
		beyond := 0
		for _, r := range b.marks().rows {
			assert.NotContains(t, r.cells[2], "-", name)
			if strings.Contains(strings.ReplaceAll(r.cells[2], hold, " "), "beyond it") {
				beyond++
			}
		}
		assert.Equal(t, 1, beyond, name)
	}
}
