package choices_test

import (
	"encoding/json"
	"fmt"
	"net/http"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"coursewright/layout/survey"
	"coursewright/web/trial"
)

// The name that is offered for a copy is one that can be taken: after a copy of “kiln white” the same name was offered
// beside it again, and refused.
func TestTheNameOfferedForACopyIsFree(t *testing.T) {
	s := trial.New(t)
	offered := regexp.MustCompile(`name="name" value="([^"]*)"`)
	for want := range 3 {
		_, page := s.Get("/jobs/1/choices")
		name := offered.FindStringSubmatch(page)
		require.NotNil(t, name)
		assert.Equal(t, fmt.Sprintf("kiln white %d", want+2), name[1])
		answer, page := s.Post("/jobs/1/choices", s.With("do", "duplicate", "of", "kiln white", "name", name[1]))
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	}
}

func TestChoicesFromOneToTwoAndBack(t *testing.T) {
	s := trial.New(t)
	_, page := s.Get("/jobs/1/choices")
	assert.Equal(t, 1, strings.Count(page, `<svg class="drawing"`))
	steps := []struct{ do, of, name string }{
		{"duplicate", "kiln white", "large"}, {"choose", "large", ""}, {"rename", "large", "tall"},
	}
	for _, step := range steps {
		answer, page := s.Post("/jobs/1/choices", s.With("do", step.do, "of", step.of, "name", step.name))
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
		assert.Equal(t, "/jobs/1/choices", answer.Header.Get("Location"))
	}
	bench := s.Bench()
	bench.Set("tile.width", "11 7/8")
	answer, _ := s.Post("/jobs/1", bench)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)

	_, job := s.Stored()
	assert.Equal(t, "tall", job.Chosen)
	assert.Equal(t, "11 7/8", job.Tile.Width, "the bench changes the chosen one")
	assert.Equal(t, []survey.Choice{{Name: "kiln white", Tile: job.Choices[0].Tile, Joint: survey.Measure{Plain: "1/8"}, Bond: job.Bond}, {Name: "tall"}}, job.Choices)
	assert.Equal(t, "5 7/8", job.Choices[0].Tile.Width)
	_, page = s.Get("/jobs/1/choices")
	assert.Equal(t, 2, strings.Count(page, `<svg class="drawing"`))
	for _, said := range []string{"Smallest cut", "Slivers", "Cut pieces", "Tiles to buy", "Cost, where known", "Warnings"} {
		assert.Equal(t, 2, strings.Count(page, "<dt>"+said+"</dt>"), said)
	}

	s.Post("/jobs/1/choices", s.With("do", "choose", "of", "kiln white"))
	_, job = s.Stored()
	assert.Equal(t, "5 7/8", job.Tile.Width)
	s.Post("/jobs/1/choices", s.With("do", "delete", "of", "tall"))
	kept, job := s.Stored()
	assert.Empty(t, job.Choices)
	_, err := s.Store.Undo(t.Context(), 1, kept.Revision)
	require.NoError(t, err)
	_, job = s.Stored()
	assert.Len(t, job.Choices, 2, "undo brings a deleted choice back")
}

// What a client is told to buy and to pay is the same on every page: of a pattern of two tiles Choices named those
// of the first size alone, beside the price of both, and the bench had the price of the room's own tile.
func TestTilesAndPricesAreTheSameOnEveryPage(t *testing.T) {
	file, err := os.ReadFile("../../testdata/jobs/one-wall.json")
	require.NoError(t, err)
	job, err := survey.Read(file)
	require.NoError(t, err)
	job.Tile.Width, job.Tile.Height, job.Tile.Box = "6", "6", &survey.Box{Count: 10, Price: "$20"}
	job.Bond = survey.Bond{Kind: "pinwheel", Tiles: []survey.Tile{{Width: "2 1/2", Box: &survey.Box{Count: 25, Price: "$9"}}}}
	file, err = json.Marshal(job)
	require.NoError(t, err)
	s := trial.Of(t, file)
	_, work := s.Get("/jobs/1/work")
	tiles, cents := 0, 0
	for _, row := range regexp.MustCompile(`<th scope="row">tile[^<]*</th>\s*<td class="num"><strong>(\d+)</strong>.*?\$(\d+)\.(\d\d)`).FindAllStringSubmatch(work, -1) {
		n, _ := strconv.Atoi(row[1])
		c, _ := strconv.Atoi(row[2] + row[3])
		tiles, cents = tiles+n, cents+c
	}
	require.Positive(t, cents)
	price := fmt.Sprintf("$%d.%02d", cents/100, cents%100)
	assert.Contains(t, work, "Known prices together: "+price)
	_, bench := s.Get("/jobs/1")
	assert.Contains(t, bench, price+" for what has a price")
	_, page := s.Get("/jobs/1/choices")
	assert.Regexp(t, fmt.Sprintf(`<dt>Tiles to buy</dt>\s*<dd>\s*%d\s`, tiles), page)
	assert.Contains(t, page, price+", without bullnose, bullnose corner, backing board and ")
}

// Pieces that nobody can cut are slivers too: the bench counted them and Choices did not, so that the worst
// choice looked like the best.
func TestSliversAreCountedAsOnTheBench(t *testing.T) {
	s := trial.Of(t, []byte(`{"format": "coursewright-job/1", "title": "slip", "units": "in", "tile": {"width": "6", "height": "6"}, "joint": "1/8",
		"bond": {"kind": "stack"}, "pins": {"course": {"line": "-12"}}, "walls": [{"name": "back", "width": "24 3/8",
		"left": {"stops": {"at": "0"}}, "right": {"stops": {"at": "24 3/8"}}, "head": {"stops": {"at": "12 3/8"}},
		"base": [{"meets": "curb", "gap": "1/8", "readings": [{"at": "0", "drop": "12 1/2"}, {"at": "24 3/8", "drop": "12 1/2"}]}]}]}`))
	_, bench := s.Get("/jobs/1")
	require.Contains(t, bench, "4 slivers")
	_, page := s.Get("/jobs/1/choices")
	assert.Regexp(t, `<dt>Slivers</dt>\s*<dd>\s*4\s`, page)
}

func TestWhatChoicesRefuse(t *testing.T) {
	s := trial.New(t)
	s.Post("/jobs/1/choices", s.With("do", "duplicate", "of", "first", "name", "second"))
	before, _ := s.Stored()
	for want, fields := range map[int][][]string{
		http.StatusUnprocessableEntity: {{"do", "duplicate", "of", "first", "name", "second"}, {"do", "rename", "of", "first", "name", " "}},
		http.StatusBadRequest:          {{"do", "delete", "of", "first"}, {"do", "choose", "of", "third"}, {"do", "paint", "of", "first"}},
	} {
		for _, f := range fields {
			answer, page := s.Post("/jobs/1/choices", s.With(f...))
			assert.Equal(t, want, answer.StatusCode, "%v: %s", f, page)
		}
	}
	after, _ := s.Stored()
	assert.Equal(t, before, after)

	_, page := s.Post("/jobs/1/choices", s.With("do", "rename", "of", "second", "name", "first"))
	assert.Contains(t, page, "1 thing to put right", "the other first is not told that it holds what stands at the top of the job")
	assert.Contains(t, page, "Choice 2, name")
}

func TestAChoiceThatNoLongerFitsSaysWhy(t *testing.T) {
	s := trial.New(t)
	s.Post("/jobs/1/choices", s.With("do", "duplicate", "of", "first", "name", "second"))
	kept, job := s.Stored()
	job.Choices[1].Pins.Walls = map[string]survey.WallPin{"back": {Marks: map[string]string{"niche shelf left": "900"}}}
	document, err := survey.Write(job)
	require.NoError(t, err)
	_, err = s.Store.Save(t.Context(), 1, kept.Revision, job.Title, document)
	require.NoError(t, err)
	answer, page := s.Get("/jobs/1")
	assert.Equal(t, http.StatusOK, answer.StatusCode, "the bench works on the chosen one")
	assert.NotContains(t, page, `class="faults"`)
	answer, page = s.Get("/jobs/1/choices")
	assert.Equal(t, http.StatusOK, answer.StatusCode)
	assert.Contains(t, page, "cannot be set on the walls as they are")
	answer, _ = s.Post("/jobs/1/choices", s.With("do", "choose", "of", "second"))
	assert.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
}

func TestChoicesFollowAWallThatIsRenamed(t *testing.T) {
	s := trial.New(t)
	s.Post("/jobs/1/choices", s.With("do", "duplicate", "of", "first", "name", "second"))
	kept, job := s.Stored()
	job.Choices[1].Pins.Walls = map[string]survey.WallPin{"back": {Joint: "30"}}
	document, err := survey.Write(job)
	require.NoError(t, err)
	_, err = s.Store.Save(t.Context(), 1, kept.Revision, job.Title, document)
	require.NoError(t, err)
	bench := s.Bench()
	bench.Set("walls[1].name", "long")
	answer, page := s.Post("/jobs/1", bench)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	_, job = s.Stored()
	assert.Equal(t, map[string]survey.WallPin{"long": {Joint: "30"}}, job.Choices[1].Pins.Walls)
}

// Each choice has its own grout, shown in the finish and on the bench.
func TestEachChoiceHasItsColours(t *testing.T) {
	s := trial.New(t)
	s.Post("/jobs/1/choices", s.With("do", "duplicate", "of", "first", "name", "second"))
	answer, page := s.Post("/jobs/1/choices?look=finish", s.With("do", "colour", "of", "second", "tile", "#224466", "grout", "#101010"))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	_, job := s.Stored()
	assert.Equal(t, "#101010", job.Choices[1].Grout)
	assert.Empty(t, job.Grout)
	_, page = s.Get("/jobs/1/choices?look=finish")
	for _, said := range []string{`fill="#101010"`, `fill="#b5afa3"`, `stroke="#224466"`, `value="#101010"`} {
		assert.Contains(t, page, said)
	}
	s.Post("/jobs/1/choices", s.With("do", "choose", "of", "second"))
	_, page = s.Get("/jobs/1?look=finish")
	assert.Contains(t, page, `fill="#101010"`, "the finish on the bench")
	assert.Contains(t, page, `name="grout"`)

	filled := trial.Fields(t, page)
	filled.Set("grout", "#202020")
	answer, _ = s.Post("/jobs/1?look=finish", filled)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, job = s.Stored()
	assert.Equal(t, "#202020", job.Grout)
	assert.Equal(t, "#b5afa3", job.Choices[0].Grout, "the other keeps what it had")

	answer, page = s.Post("/jobs/1/choices", s.With("do", "colour", "of", "first", "tile", "white", "grout", "#000000"))
	assert.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
	assert.Contains(t, page, "a colour as # and six digits")
}

// A colour that nobody has named is not written because a page shows it.
func TestUsualColoursStayUnnamed(t *testing.T) {
	s := trial.New(t)
	for _, path := range []string{"/jobs/1", "/jobs/1?look=finish", "/jobs/1?all=1"} {
		_, page := s.Get(path)
		filled := trial.Fields(t, page)
		require.Equal(t, "#b5afa3", filled.Get("grout"), path)
		s.Post(path, filled)
		_, job := s.Stored()
		assert.Empty(t, job.Grout, path)
		assert.Empty(t, job.Tile.Colour, path)
	}
}

// A button leads back to the choice it belongs to, and to a copy that it makes: the redirect has no
// fragment of its own, so a browser keeps that of the form.
func TestAButtonLeadsBackToItsChoice(t *testing.T) {
	ctx := trial.Browse(t)
	s := trial.New(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1/choices"), chromedp.WaitVisible("#choice0"))
	assert.Less(t, trial.See[float64](t, ctx, `document.querySelector("button[value=duplicate]").getBoundingClientRect().bottom`), 900.0, "a second way is offered on the first screen")
	for _, step := range []struct{ button, shown string }{{"duplicate", ".option #choice1"}, {"choose", ".option.chosen #choice1"}} {
		trial.Steps(t, ctx, chromedp.Click("button[value="+step.button+"]"), chromedp.WaitVisible(step.shown))
		assert.Equal(t, "#choice1", trial.See[string](t, ctx, `location.hash`), step.button)
	}
	// What is alike stands at one height, once the style sheet is there.
	trial.Await(t, ctx, `(([a, b]) => Math.abs(a - b) < 0.5)([...document.querySelectorAll(".option .facts")].map((f) => f.getBoundingClientRect().top))`)
}

// Beside the drawing of each choice stands what is cut on it as a table, with the ids of the drawing: of all walls, or of the
// one in front. Without a script too.
func TestBesideEachChoiceStandsATableOfItsCuts(t *testing.T) {
	s := trial.New(t)
	s.Post("/jobs/1/choices", s.With("do", "duplicate", "of", "first", "name", "second"))
	for _, query := range []string{"", "?wall=1", "?look=finish"} {
		_, page := s.Get("/jobs/1/choices" + query)
		root, err := html.Parse(strings.NewReader(page))
		require.NoError(t, err)
		tables := 0
		for n := range root.Descendants() {
			if !strings.HasPrefix(trial.Attr(n, "class"), "card option") {
				continue
			}
			drawn, named := map[string]bool{}, map[string]bool{}
			for d := range n.Descendants() {
				if id := trial.Attr(d, "data-piece"); id != "" {
					drawn[id] = true
				}
				if d.Data == "td" && trial.Attr(d, "class") == "ids" {
					for _, id := range strings.Fields(trial.Text(d)) {
						named[id] = true
					}
				}
				if d.Data == "table" {
					tables++
				}
			}
			require.NotEmpty(t, named, query)
			for id := range named {
				if len(drawn) > 0 {
					assert.Contains(t, drawn, id, query)
				}
			}
		}
		assert.Equal(t, 2, tables, query)
	}
}

// Enter in the name of a choice presses the first button of its form, which gives it that name and makes no copy.
func TestEnterInTheNameOfAChoiceRenamesIt(t *testing.T) {
	s := trial.New(t)
	s.Post("/jobs/1/choices", s.With("do", "duplicate", "of", "first", "name", "second"))
	_, page := s.Get("/jobs/1/choices")
	form := strings.Index(page, `class="change"`)
	require.Positive(t, form)
	first := regexp.MustCompile(`<button[^>]*value="([a-z]+)"`).FindStringSubmatch(page[form:])
	require.NotNil(t, first)
	assert.Equal(t, "rename", first[1])
}
