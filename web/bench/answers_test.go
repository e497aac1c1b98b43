package bench_test

import (
	"encoding/json"
	"fmt"
	"html"
	"os"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/plane"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
	"coursewright/web/shapes"
	"coursewright/web/trial"
)

// The five answers stand on the first screen, and none of them is cut off.
func TestTheFiveAnswersStandOnTheFirstScreen(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	for _, size := range [][2]int64{{1440, 900}, {768, 1024}, {745, 1024}, {390, 844}, {320, 700}} {
		trial.Steps(t, ctx, chromedp.EmulateViewport(size[0], size[1]), chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"))
		bottoms := trial.See[[]float64](t, ctx, `[...document.querySelectorAll(".answers a")].map((a) => a.getBoundingClientRect().bottom)`)
		require.Len(t, bottoms, 5, "at %d", size[0])
		for i, bottom := range bottoms {
			assert.LessOrEqual(t, bottom, float64(size[1]), "answer %d at %d", i, size[0])
		}
		cropped := trial.See[[]string](t, ctx, `[...document.querySelectorAll(".answers a *")].filter((e) => e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).display !== "inline" && !e.closest("svg")).map((e) => e.textContent)`)
		assert.Empty(t, cropped, "at %d", size[0])
		assert.LessOrEqual(t, trial.See[float64](t, ctx, `document.documentElement.scrollWidth - innerWidth`), 0.0)
		assert.True(t, trial.See[bool](t, ctx, `(() => { const [which, last] = [document.getElementById("which"), document.querySelector(".bar .nav a:last-child")].map((e) => e.getBoundingClientRect());
			return which.width === 0 || which.right <= last.left || which.left >= last.right || which.bottom <= last.top; })()`), "the name of the choice lies over the pages at %d", size[0])
	}
}

// The heights of the first course over a base with many corners, as beside a bench, find room on a phone.
func TestManyHeightsFindRoomOnAPhone(t *testing.T) {
	job, err := shapes.New("corner bench", "in", "Bench")
	require.NoError(t, err)
	for i, drop := range []string{"39 3/4", "39 5/8", "39 11/16", "39 7/16", "39 1/2", "39 9/16"} {
		w := &job.Walls[[]int{0, 0, 1, 1, 2, 3}[i]]
		s := &w.Base[[]int{0, 0, 1, 1, 0, 0}[i]]
		s.Readings[[]int{0, 1, 0, 1, 1, 1}[i]].Drop = drop
	}
	job.Walls[2].Base[0].Readings[0].Drop, job.Walls[3].Base[0].Readings[0].Drop = "39 7/16", "39 5/8"
	file, err := survey.Write(job)
	require.NoError(t, err)
	s := trial.Of(t, file)
	ctx := trial.Browse(t)
	for _, width := range []int64{1440, 390, 320} {
		trial.Steps(t, ctx, chromedp.EmulateViewport(width, 844), chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"))
		require.Greater(t, trial.See[int](t, ctx, `document.querySelectorAll(".corners b").length`), 5)
		assert.LessOrEqual(t, trial.See[float64](t, ctx, `document.documentElement.scrollWidth - innerWidth`), 0.0, "at %d", width)
	}
}

// Each answer leads to its place: the smallest cut to its piece, the niche to its wall.
func TestAnAnswerLeadsToItsPlace(t *testing.T) {
	s := trial.New(t)
	_, page := s.Get("/jobs/1")
	for id, to := range map[string]string{"start": `/jobs/1#drawing`, "smallest": `/jobs/1\?piece=[A-Z]-`, "niche": `/jobs/1\?wall=2#drawing`, "buy": `/jobs/1/work#take-off`} {
		assert.Regexp(t, `href="`+to+`[^"]*" id="answer-`+id+`"`, page)
	}
	for _, said := range []string{"Where to start", "First course over this tub", "corner L–B", "corner B–R", "7 boxes", "of a tile"} {
		assert.Contains(t, page, said)
	}
}

// A wall whose whole tiles all lap round an outside corner starts beyond its left end, and no figure has a minus.
func TestAStartBeyondAnOutsideCornerIsSaidSo(t *testing.T) {
	_, page := trial.OfFile(t, "boxing").Get("/jobs/1")
	start := page[strings.Index(page, `id="answer-start"`):strings.Index(page, `id="answer-first"`)]
	assert.Contains(t, start, `11 <small>beyond it</small>`)
	assert.NotContains(t, start, "−")
}

// Where a left corner leans, the bench says as the sheets do from where a start is counted, and from where all else.
func TestAStartBesideALeaningCornerSaysFromWhereItIsMeasured(t *testing.T) {
	s := trial.OfFile(t, "old-house")
	_, page := s.Get("/jobs/1")
	assert.Contains(t, page, "from its left end, held along the line to strike, 34 11/16 below level")
	_, page = s.Get("/jobs/1/told")
	assert.Regexp(t, `Its left corner leans: START is [^<]+ from it along the line struck, and [^<]+ from the corner on the level line`, page)
	_, page = trial.OfFile(t, "one-wall").Get("/jobs/1")
	assert.Contains(t, page, "from its left end; strike")
}

// Where the room has no niche, the cell says where the tile stops.
func TestWithoutANicheTheTileStopsSomewhere(t *testing.T) {
	s := trial.OfFile(t, "one-wall")
	_, page := s.Get("/jobs/1")
	assert.Contains(t, page, "Where the tile stops")
}

// A piece that is cut both ways is told by both: what the saw is set to for its width alone is
// not the size that is called the smallest. Pieces beside a seat are said to be at its front.
func TestTheSmallestCutIsToldByWhatItIsCutTo(t *testing.T) {
	job, err := shapes.New("bench", "in", "bench")
	require.NoError(t, err)
	file, err := json.Marshal(job)
	require.NoError(t, err)
	s := trial.Of(t, file)
	_, page := s.Get("/jobs/1")
	assert.Contains(t, page, "cut\u00a07\u00a05/16 × 1\u00a01/2")
	_, page = s.Get("/jobs/1?piece=L-02-06")
	assert.Contains(t, page, "cut to the seat&#39;s front")

	job, err = shapes.New("tub", "in", "tub") // beside the front of the tub all of it shows
	require.NoError(t, err)
	job.Walls[0].Base[0].Leg, job.Walls[2].Base[1].Leg = "", "" // in the bond
	file, err = json.Marshal(job)
	require.NoError(t, err)
	_, page = trial.Of(t, file).Get("/jobs/1")
	answer := page[strings.Index(page, `id="answer-smallest"`):]
	answer = answer[:strings.Index(answer, "</a>")]
	assert.Contains(t, answer, "2 1/8 <small>26\u00a0% of a tile")
	assert.NotContains(t, answer, "· cut", "one size is said once")
}

// A piece shows less than it is cut to where the next wall covers it, and nowhere else. Found by a walk: 66 mm of a piece of
// 66 × 75 were said to show, and of a notched tile 5/8 in beside "cut 6".
func TestTheSmallestCutShowsLessOnlyWhereItIsCovered(t *testing.T) {
	half, err := shapes.New("half wall", "mm", "half wall")
	require.NoError(t, err)
	notched, err := shapes.New("one", "in", "one")
	require.NoError(t, err)
	notched.Tile.Width, notched.Tile.Height, notched.Joint.Plain = "6", "3", "1/8"
	w := &notched.Walls[0]
	w.Openings = []survey.Opening{{Kind: "window", Name: "window", Left: &survey.Mark{At: "11 5/8"}, Width: &survey.Mark{At: "26"}, Bottom: &survey.Mark{At: "2"}, Height: &survey.Measure{Mark: &survey.Mark{At: "16"}}}}
	for _, job := range []survey.Job{half, notched} {
		file, err := json.Marshal(job)
		require.NoError(t, err)
		_, page := trial.Of(t, file).Get("/jobs/1")
		answer := page[strings.Index(page, `id="answer-smallest"`):]
		answer = answer[:strings.Index(answer, "</a>")]
		assert.NotContains(t, answer, "shows")
	}
}

// What is smaller inside a window than anything on the walls is told beside that. Found by a walk: the smallest cut of a bath was
// 2 3/8 in, and the sill of its window had a strip of 5/8 in.
func TestASliverInsideAWindowIsToldBesideTheSmallestCut(t *testing.T) {
	job, err := shapes.New("one", "in", "window")
	require.NoError(t, err)
	job.Tile.Width, job.Tile.Height = "11 7/8", "3 7/8"
	w := &job.Walls[0]
	w.Width, w.Right.Stops.At, w.Head.Stops.At = "33", "33", "50"
	w.Base = []survey.Segment{{Meets: "tub", Gap: "1/8", Readings: []survey.Drop{{At: "0", Drop: "30"}, {At: "33", Drop: "30"}}}}
	w.Openings = []survey.Opening{{Kind: "window", Name: "window", Left: &survey.Mark{At: "8 1/2"}, Width: &survey.Mark{At: "20 1/8"},
		Bottom: &survey.Mark{At: "10"}, Height: &survey.Measure{Mark: &survey.Mark{At: "24"}}, Inside: &survey.Inside{Depth: "4 1/2"}}}
	answer := func() string {
		file, err := json.Marshal(job)
		require.NoError(t, err)
		_, page := trial.Of(t, file).Get("/jobs/1")
		page = page[strings.Index(page, `id="answer-smallest"`):]
		return page[:strings.Index(page, "</a>")]
	}
	assert.Regexp(t, `4.3/16.* · (sill|top) of window 1.9/16`, answer())
	w.Openings[0].Inside = nil
	assert.NotContains(t, answer(), "sill of window")
}

// In a room with many corners the first course is told by its walls, each height once. Found on
// a bench with a curb: seven figures ran out of their answer, and two of them were called corner 4.
func TestTheFirstCourseOfManyCornersIsToldByWalls(t *testing.T) {
	job, err := shapes.New("bench", "in", "bench")
	require.NoError(t, err)
	answer := func() string {
		file, err := json.Marshal(job)
		require.NoError(t, err)
		_, page := trial.Of(t, file).Get("/jobs/1")
		page = page[strings.Index(page, `id="answer-first"`):]
		return page[:strings.Index(page, "</a>")]
	}
	assert.Contains(t, answer(), "<b>3 5/8</b> <small>L, R, B</small>")
	assert.Contains(t, answer(), "<b>3 7/16</b> <small>C</small>")
	job.Pins.Course.Line = "-39 1/2"
	drops := job.Walls[0].Base[0].Readings
	drops[len(drops)-1].Drop = "40 1/2"
	assert.Contains(t, answer(), "L right", "which falls by 1/2 in")
}

// Where the first course is not as high on both walls of a corner, each wall's figure says whose it
// is. Found in a bath whose right wall has whole tiles and whose back wall has them cut by 1/32 in:
// two figures were called right corner.
func TestTwoFiguresOfOneCornerSayTheirWalls(t *testing.T) {
	job, err := shapes.New("tub", "in", "tub")
	require.NoError(t, err)
	job.Tile.Height, job.Pins.Course.Line = "3 7/8", "-35"
	job.Walls[1].Base[0].Readings[1].Drop = "39 1/8"
	job.Walls[2].Base[0].Readings[0].Drop, job.Walls[2].Base[0].Readings[1].Drop = "39 1/8", "39 1/4"
	job.Walls[0].Base[1].Readings[0].Drop, job.Walls[0].Base[1].Readings[1].Drop, job.Walls[1].Base[0].Readings[0].Drop = "38 7/8", "38 3/4", "38 3/4"
	file, err := json.Marshal(job)
	require.NoError(t, err)
	_, page := trial.Of(t, file).Get("/jobs/1")
	answer := page[strings.Index(page, `id="answer-first"`):]
	answer = answer[:strings.Index(answer, "</a>")]
	assert.Contains(t, answer, "<b>3 27/32</b> <small>B right</small>")
	assert.Contains(t, answer, "<b>whole</b> <small>R left</small>")
	assert.Contains(t, answer, "<small>corner L–B</small>")
}

// Undo says what it takes back, on every page of the job, and leads back to that page.
func TestUndoSaysWhatItTakesBack(t *testing.T) {
	s := trial.New(t)
	posted := s.Bench()
	posted.Set("walls[1].width", "60")
	s.Post("/jobs/1", posted)
	for _, path := range []string{"", "/work", "/choices", "/sheets"} {
		_, page := s.Get("/jobs/1" + path)
		assert.Contains(t, page, ">Undo: width of back", path)
	}
	stored, _ := s.Stored()
	answer, _ := s.Post("/jobs/1/undo?from=work", trial.Hidden(t, trial.Second(s.Get("/jobs/1/work"))))
	assert.Equal(t, "/jobs/1/work", answer.Header.Get("Location"))
	after, _ := s.Stored()
	assert.NotEqual(t, stored.Revision, after.Revision)

	// What is looked at stays: the kinds and the paper of the sheets, the look of the choices.
	action := regexp.MustCompile(`action="(/jobs/1/undo[^"]*)"`)
	for path, back := range map[string]string{"/sheets?kind=cuts&kind=stages&paper=a4": "/jobs/1/sheets?kind=cuts&kind=stages&paper=a4", "/choices?look=finish&wall=1": "/jobs/1/choices?look=finish&wall=1"} {
		posted := s.Bench()
		posted.Set("walls[1].width", "60 1/4")
		s.Post("/jobs/1", posted)
		_, page := s.Get("/jobs/1" + path)
		undo := action.FindStringSubmatch(page)
		require.NotNil(t, undo, path)
		answer, _ := s.Post(html.UnescapeString(undo[1]), trial.Hidden(t, page))
		assert.Equal(t, back, answer.Header.Get("Location"))
	}
}

// Pages that stand in no navigation mark the bench, from which one comes.
func TestPagesOfTheBenchMarkTheBench(t *testing.T) {
	s := trial.OfFile(t, "toy")
	for _, path := range []string{"/help", "/told", "/widths", "/pieces"} {
		_, page := s.Get("/jobs/1" + path)
		assert.Contains(t, page, `<a href="/jobs/1" aria-current="true">Bench</a>`, path)
	}
}

// That the room is solved, and how well, is said to who does not see the drawing; of what cannot be solved, nothing.
func TestThatItIsSolvedIsSaid(t *testing.T) {
	s := trial.New(t)
	said := regexp.MustCompile(`<p id="solved" class="hidden" role="status">([^<]*)</p>`)
	_, page := s.Get("/jobs/1")
	now := said.FindStringSubmatch(page)
	require.NotNil(t, now)
	assert.Contains(t, now[1], "Solved. Smallest cut:")
	assert.Contains(t, page, `data-solved="`+now[1]+`"`, "the script says it anew after each edit")
	posted := s.Bench()
	posted.Set("walls[1].width", "wide")
	_, page = s.Post("/jobs/1", posted)
	assert.Contains(t, page, `<p id="solved" class="hidden" role="status"></p>`)
}

// A refused value adds nothing, so undo takes back the last good one and nothing else.
func TestUndoAfterARefusedValueUndoesNothingElse(t *testing.T) {
	s := trial.New(t)
	posted := s.Bench()
	posted.Set("walls[1].width", "60")
	s.Post("/jobs/1", posted)
	good, _ := s.Stored()
	posted = s.Bench()
	posted.Set("walls[0].width", "wide")
	_, page := s.Post("/jobs/1", posted, "X-Bench", "live")
	assert.Contains(t, page, ">Undo: width of back", "what was refused is not named")
	now, _ := s.Stored()
	require.Equal(t, good.Revision, now.Revision)
	s.Post("/jobs/1/undo", trial.Hidden(t, page))
	_, job := s.Stored()
	assert.Equal(t, "59 7/8", job.Walls[1].Width)
	assert.Equal(t, "35 1/4", job.Walls[0].Width)
}

// A click on an answer marks on the drawing what it is about.
func TestAnAnswerMarksWhatItIsAbout(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	trial.Steps(t, ctx, chromedp.Click("#answer-first"))
	trial.Await(t, ctx, `document.querySelectorAll("#drawing .rings path:not(.ground)").length > 5`)
	trial.Steps(t, ctx, chromedp.Click("#answer-smallest"))
	trial.Await(t, ctx, `document.querySelectorAll("#drawing .rings path:not(.ground)").length === 1 && document.querySelector("#card .piececard") !== null`)
}

// Each key redraws before anything is saved, and what does not read yet leaves the last drawing.
func TestEachKeyRedraws(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	before, _ := s.Stored()
	trial.See[bool](t, ctx, `(() => { const real = fetch; window.held = []; window.fetch = (...a) => String(a[0]).includes("/look") ? real(...a) : new Promise((go) => held.push(() => go(real(...a)))); return true })()`)
	drawn := trial.See[string](t, ctx, `document.querySelector("#paper").innerHTML`)
	trial.Type(t, ctx, "walls[1].width", "61")
	trial.Await(t, ctx, `document.querySelector("#paper").innerHTML !== `+trial.Quote(drawn))
	trial.Await(t, ctx, `document.getElementById("walls[1].width-said").textContent.includes("1549")`)
	now, _ := s.Stored()
	assert.Equal(t, before.Revision, now.Revision, "nothing is saved yet")
	drawn = trial.See[string](t, ctx, `document.querySelector("#paper").innerHTML`)
	trial.Steps(t, ctx, chromedp.KeyEvent(" 1/"))
	trial.Await(t, ctx, `held.length > 0`)
	assert.Equal(t, drawn, trial.See[string](t, ctx, `document.querySelector("#paper").innerHTML`), "what does not read yet changes nothing")
	trial.Steps(t, ctx, chromedp.KeyEvent("2"))
	trial.Await(t, ctx, `document.getElementById("walls[1].width-said").textContent.includes("1/2")`)
	trial.See[bool](t, ctx, `(() => { for (const go of held) go(); window.fetch = (a => (...b) => a(...b))(window.fetch); held.push = (go) => go(); return true })()`)
	require.Eventually(t, func() bool { // "Saved" may stand there for the 61 that was held
		_, job := s.Stored()
		return job.Walls[1].Width == "61 1/2"
	}, trial.Patience, 20*time.Millisecond)
	trial.Await(t, ctx, `document.getElementById("status").textContent === "Saved"`)
}

// Of an edit only what has changed travels to a script that has the rest.
func TestOnlyWhatChangedTravels(t *testing.T) {
	s := trial.New(t)
	posted := s.Bench()
	posted.Set("joint", "3/16")
	answer, all := s.Post("/jobs/1", posted, "X-Bench", "live")
	require.NotEmpty(t, answer.Header.Get("X-Parts"))
	assert.Contains(t, all, `id="paper"`)
	assert.Contains(t, all, `id="survey"`)
	posted = s.Bench()
	posted.Set("tile.name", "kiln grey")
	answer, some := s.Post("/jobs/1", posted, "X-Bench", "live", "X-Have", answer.Header.Get("X-Parts"))
	require.Equal(t, 200, answer.StatusCode)
	assert.NotContains(t, some, `id="paper"`, "the drawing is the same")
	assert.Contains(t, some, `id="survey"`)
	assert.Less(t, len(some), len(all)*3/5)
}

// hiddenCut is a site with a job whose smallest piece lies behind the tile of the next wall.
func hiddenCut(t *testing.T) trial.Site {
	t.Helper()
	file, err := os.ReadFile("../../testdata/jobs/alcove.json")
	require.NoError(t, err)
	job, err := survey.Read(file)
	require.NoError(t, err)
	job.Walls[1].Openings = nil
	job.Bands = []survey.Band{{Name: "accent", Bottom: survey.Mark{At: "14"}, Height: "12",
		Tile: survey.Tile{Width: "3", Height: "7 1/2", Thickness: "1/4"}, Bond: survey.Bond{Kind: "picket"}}}
	file, err = json.Marshal(job)
	require.NoError(t, err)
	return trial.Of(t, file)
}

// A piece that lies behind the tile of the next wall shows nothing: it was said to show 0.
func TestAHiddenPieceIsSaidToBeHidden(t *testing.T) {
	_, page := hiddenCut(t).Get("/jobs/1")
	assert.Contains(t, page, "hidden")
	assert.Contains(t, page, "nothing of it shows")
	assert.NotContains(t, page, "shows, 0")
}

// Of a pattern of several tiles all are to be bought: the answer named those of one size alone.
func TestAllTilesOfAPatternAreToBeBought(t *testing.T) {
	file, err := os.ReadFile("../../testdata/jobs/herringbone.json")
	require.NoError(t, err)
	job, err := survey.Read(file)
	require.NoError(t, err)
	job.Tile.Width, job.Tile.Height, job.Tile.Box = "6", "6", nil
	job.Bond = survey.Bond{Kind: "pinwheel", Tiles: []survey.Tile{{Width: "2 1/2"}}}
	file, err = json.Marshal(job)
	require.NoError(t, err)
	_, page := trial.Of(t, file).Get("/jobs/1")
	assert.Regexp(t, `[0-9]+ \+ [0-9]+ of its sizes, [0-9]+ of them spare`, page)
}

// The first course is told by what its outer tiles are cut to, as on the first-course sheet: at the ends of
// their cuts, and not at the corner of the boards, from which a gap and the neighbour's tile keep them.
func TestTheFirstCourseIsThatOfTheSheet(t *testing.T) {
	figures := regexp.MustCompile(`<span class="corner"><b>(.*?)</b>`)
	told := 0
	for _, name := range []string{"cases/dubious-niche-beyond-end", "cases/few-tiles-many-places-pinned", "cases/free-openings-placed-overlapping", "cases/leg-rules-the-room",
		"cases/pipe-eats-tile-valve", "cases/upright-bare-min", "jobs/corner-bench", "jobs/corner-shower"} {
		document, err := os.ReadFile("../../testdata/" + name + ".json")
		require.NoError(t, err)
		job, err := survey.Read(document)
		require.NoError(t, err)
		plan, err := layout.Now(job)
		require.NoError(t, err)
		cut := map[string]bool{"whole": true}
		in := stages.Input{Room: plan.Room, Walls: plan.Walls}
		for _, w := range plan.Walls {
			for _, p := range w.Pieces {
				if in.FirstCourse(w, p) {
					left, right := drawing.FootEnds(w, p)
					for _, end := range []plane.Point{left, right} {
						cut[strings.TrimSuffix(drawing.CourseHeight(plan.Room.Units, p.Face.Bounds().Top-end.Y), `"`)] = true
					}
				}
			}
		}
		_, page := trial.Of(t, document).Get("/jobs/1")
		for _, m := range figures.FindAllStringSubmatch(page, -1) {
			told++
			assert.Contains(t, cut, m[1], name)
		}
	}
	require.Greater(t, told, 10)
}

// All answers of a room are in one unit, which none of them says: neither inches nor millimetres.
func TestTheAnswersSayNoUnit(t *testing.T) {
	for _, name := range []string{"alcove", "corner-shower", "hexagon"} {
		_, page := trial.OfFile(t, name).Get("/jobs/1")
		answers := page[strings.Index(page, `id="answers"`):]
		answers = answers[:strings.Index(answers, "</nav>")]
		assert.NotRegexp(t, `\d mm|\d&#34;`, answers, name)
	}
}

// What to buy names the tiles beside the room's own: whoever reads the boxes alone would
// come home without those of the band.
func TestWhatToBuyTellsOfOtherTile(t *testing.T) {
	job, err := shapes.New("banded", "in", "banded")
	require.NoError(t, err)
	file, err := json.Marshal(job)
	require.NoError(t, err)
	_, page := trial.Of(t, file).Get("/jobs/1")
	assert.Regexp(t, `answer-buy[^§]*?· and \d+ other (tiles|sheets)`, page)
	_, page = trial.New(t).Get("/jobs/1")
	assert.NotContains(t, page, "other tiles")
}

// No answer stands over the next one, however long its words are: a cut of which nothing shows has the longest.
func TestAnAnswerKeepsToItsPlace(t *testing.T) {
	ctx := trial.Browse(t)
	s := hiddenCut(t)
	for _, wide := range []int64{1440, 1024, 768, 390} {
		trial.Steps(t, ctx, chromedp.EmulateViewport(wide, 900), chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
		assert.Equal(t, "hidden", trial.See[string](t, ctx, `document.querySelector("#answer-smallest .figure").firstChild.textContent.trim()`))
		assert.Empty(t, trial.See[[]string](t, ctx, `[...document.querySelectorAll("#answers .a, #answers .n")].filter(e => e.getBoundingClientRect().right > e.closest("li").getBoundingClientRect().right + 1).map(e => e.textContent)`), "%d wide", wide)
	}
}

// Under a roof that falls more than half its width pieces run out to a point: the answer says so, and counts none of them
// as a sliver.
func TestAPieceThatRunsOutToAPointIsNoSliver(t *testing.T) {
	file, err := os.ReadFile("../../testdata/doubts/true/tub-under-a-gable.json")
	require.NoError(t, err)
	job, err := survey.Read(file)
	require.NoError(t, err)
	job.Walls[1].Head.Readings[1].Rise = "1198"
	file, err = survey.Write(job)
	require.NoError(t, err)
	s := trial.Of(t, file)
	_, page := s.Get("/jobs/1")
	assert.Contains(t, page, "a point")
	assert.NotContains(t, page, "nothing of it shows")
	plan, err := layout.Now(job)
	require.NoError(t, err)
	require.Positive(t, plan.Setout.Merit.Unworkable)
	require.Zero(t, plan.Setout.Merit.Slivers)
	assert.NotContains(t, page, fmt.Sprintf("%d slivers", plan.Setout.Merit.Unworkable))

	job.Walls[1].Head.Readings[1].Rise = "1197" // a millimetre lower 4 mm are left of the point: no tile covers any of it
	file, err = survey.Write(job)
	require.NoError(t, err)
	_, page = trial.Of(t, file).Get("/jobs/1")
	assert.NotContains(t, page, "4 <small>shows")
}
