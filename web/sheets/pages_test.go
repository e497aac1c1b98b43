package sheets_test

import (
	"net/http"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/web/trial"
)

// The page says how many pages its button prints, shows a picture of each in that order,
// and the button prints so many: findings without room on their own wall go to another
// list that is printed, not to a leaf of their own.
func TestThePageCountsWhatTheButtonPrints(t *testing.T) {
	for _, name := range []string{"alcove.json", "hexagon.json"} {
		s := trial.Of(t, trial.File(t, name))
		for _, query := range []string{"", "?for=saw", "?for=client", "?kind=elevations&kind=cuts&paper=a4"} {
			_, page := s.Get("/jobs/1/sheets" + query)
			said := regexp.MustCompile(`>Print (\d+) pages?<`).FindStringSubmatch(page)
			require.NotNil(t, said, "%s %s", name, query)
			want, err := strconv.Atoi(said[1])
			require.NoError(t, err)
			pictures := regexp.MustCompile(`src="(/jobs/1/sheet.svg[^"]*)"`).FindAllStringSubmatch(page, -1)
			assert.Len(t, pictures, want, "%s %s", name, query)
			for n, p := range pictures {
				path := strings.ReplaceAll(p[1], "&amp;", "&")
				assert.Contains(t, path, "page="+strconv.Itoa(n+1)+"&", "%s %s", name, query)
				answer, picture := s.Get(path)
				require.Equal(t, http.StatusOK, answer.StatusCode, path)
				assert.Contains(t, picture, strconv.Itoa(n+1)+" of "+strconv.Itoa(want), "%s: the picture bears the number of its page", path)
			}
			require.Contains(t, page, `formaction="/jobs/1/sheets.pdf"`)
			_, pdf := s.Get("/jobs/1/sheets.pdf?" + boxes(page).Encode())
			file := filepath.Join(t.TempDir(), "sheets.pdf")
			require.NoError(t, os.WriteFile(file, []byte(pdf), 0o600))
			info, err := exec.Command("pdfinfo", file).Output()
			require.NoError(t, err)
			assert.Regexp(t, `Pages: +`+said[1]+`\n`, string(info), "%s %s", name, query)
		}
	}
}

// boxes are what a form of sheets sends as it stands.
func boxes(page string) url.Values {
	out := url.Values{"paper": {""}}
	for _, box := range regexp.MustCompile(`name="kind" value="([^"]*)" checked`).FindAllStringSubmatch(page, -1) {
		out.Add("kind", box[1])
	}
	if paper := regexp.MustCompile(`<option value="([^"]*)" selected`).FindStringSubmatch(page); paper != nil {
		out.Set("paper", paper[1])
	}
	return out
}

// What is ticked is what is counted, shown and printed, without a button for it in between; the boxes keep the
// focus, and with none ticked there is nothing to print.
func TestThePageFollowsItsBoxes(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1/sheets?for=saw"), chromedp.WaitVisible("#print"))
	require.Equal(t, "Print 1 page", trial.See[string](t, ctx, `document.getElementById("print").textContent`))
	trial.See[bool](t, ctx, `(document.querySelector("input[value=choices]").focus(), true)`)
	trial.Steps(t, ctx, chromedp.KeyEvent(" "))
	trial.Await(t, ctx, `document.getElementById("print").textContent === "Print 2 pages"`)
	assert.Equal(t, 2, trial.See[int](t, ctx, `document.querySelectorAll("#previews img").length`))
	assert.Equal(t, "choices", trial.See[string](t, ctx, `document.activeElement.value`))
	assert.Equal(t, "?kind=cuts&kind=choices&paper=", trial.See[string](t, ctx, `location.search`))
	sent := trial.See[string](t, ctx, `new URL(document.getElementById("print").formAction).pathname + "?" + new URLSearchParams(new FormData(document.querySelector("form.kinds")))`)
	answer, pdf := s.Get(sent)
	require.Equal(t, "application/pdf", answer.Header.Get("Content-Type"))
	assert.Contains(t, pdf, "/Count 2")
	trial.See[bool](t, ctx, `(() => { for (const box of document.querySelectorAll("input[name=kind]:checked")) box.click(); return true })()`)
	trial.Await(t, ctx, `document.getElementById("print").disabled`)
	trial.See[bool](t, ctx, `(document.querySelector("input[value=stages]").click(), true)`)
	trial.Await(t, ctx, `!document.getElementById("print").disabled && document.getElementById("print").textContent === "Print 1 page"`)
	trial.See[bool](t, ctx, `(document.querySelector("#previews img").src = "/jobs/1/sheets/none", true)`)
	trial.Await(t, ctx, `document.querySelector("#previews .leaf").textContent === "open it to see it"`)
}

// A list that stands under another has no page of its own: the page says on which it is.
func TestAListUnderAnotherIsFound(t *testing.T) {
	_, page := trial.Of(t, trial.File(t, "one-wall.json")).Get("/jobs/1/sheets")
	on := regexp.MustCompile(`Take-off</b>[^/]*</small></span> <i[^>]*>on (\d+)</i>`).FindStringSubmatch(page)
	require.NotNil(t, on)
	assert.Contains(t, page, "<b>"+on[1]+"</b> Cut schedule, take-off")
}

// Who sets the tile gets the story pole with the rest: the stages send him to it every fifth course.
func TestTheJobIncludesTheStoryPole(t *testing.T) {
	_, page := trial.New(t).Get("/jobs/1/sheets")
	assert.Regexp(t, `value="story-pole"[^>]* checked`, page)
}

// The paper that was chosen is kept by the device, on every page of sheets and for every job, until another is chosen.
func TestThePaperIsKept(t *testing.T) {
	s := trial.OfFile(t, "toy")
	chosen := func(path string) string {
		return regexp.MustCompile(`<option value="([^"]*)" selected`).FindStringSubmatch(trial.Second(s.Get(path)))[1]
	}
	assert.Empty(t, chosen("/jobs/1/sheets"))
	assert.Equal(t, "letter", chosen("/jobs/1/sheets?for=saw&paper=letter"))
	for _, path := range []string{"/jobs/1/sheets", "/jobs/1/sheets?for=measure"} {
		assert.Equal(t, "letter", chosen(path), path)
	}
	_, pdf := s.Get("/jobs/1/sheets.pdf?kinds=cuts")
	assert.Contains(t, pdf, "/MediaBox [0 0 612.00 792.00]")
	_, page := s.Get("/jobs/1/sheets?paper=")
	assert.Contains(t, page, "paper=&amp;", "what is shown is what is printed, whatever another window chooses")
	assert.Empty(t, chosen("/jobs/1/sheets"), "the usual one again")
	bad, _ := http.NewRequest(http.MethodGet, s.URL+"/jobs/1/sheets", nil)
	bad.AddCookie(&http.Cookie{Name: "paper", Value: "bark"})
	answer, _ := s.Do(bad)
	assert.Equal(t, http.StatusOK, answer.StatusCode)
}
