package web_test

import (
	"context"
	"fmt"
	"net/http"
	"net/url"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"
)

// siteOfFile is a site with a job under testdata; that of toy is six whole tiles.
func siteOfFile(t *testing.T, name string) site {
	t.Helper()
	file, err := os.ReadFile("../testdata/jobs/" + name + ".json")
	require.NoError(t, err)
	return newSiteOf(t, file)
}

// formOf reads the hidden fields of the form that has a button with a text.
func formOf(t *testing.T, page, button string) url.Values {
	t.Helper()
	root, err := html.Parse(strings.NewReader(page))
	require.NoError(t, err)
	for n := range root.Descendants() {
		if n.Data != "form" || !strings.Contains(textOf(n), button) {
			continue
		}
		out := url.Values{}
		for f := range n.Descendants() {
			if f.Data == "input" && attr(f, "type") == "hidden" {
				out.Add(attr(f, "name"), attr(f, "value"))
			}
		}
		return out
	}
	t.Fatalf("no form with %q", button)
	return nil
}

func textOf(n *html.Node) string {
	var out strings.Builder
	for d := range n.Descendants() {
		if d.Type == html.TextNode {
			out.WriteString(d.Data)
		}
	}
	return strings.Join(strings.Fields(out.String()), " ")
}

// ticked are the pieces of job 1 that are ticked.
func (s site) ticked() []string {
	s.t.Helper()
	ticks, err := s.store.Ticks(s.t.Context(), 1)
	require.NoError(s.t, err)
	out := []string{}
	for _, one := range ticks {
		out = append(out, one.Piece)
	}
	return out
}

// follow posts a form of the bathroom view and goes where the answer sends.
func (s site) follow(form url.Values) string {
	s.t.Helper()
	answer, page := s.post("/jobs/1/bathroom", form)
	require.Equal(s.t, http.StatusSeeOther, answer.StatusCode, page)
	_, page = s.get(answer.Header.Get("Location"))
	return page
}

func TestTheBathroomTakesOneStepAfterTheOther(t *testing.T) {
	s := siteOfFile(t, "toy")
	_, page := s.get("/jobs/1/bathroom")
	assert.Contains(t, page, "3 whole tiles")
	assert.Contains(t, page, "0 of 6 set")
	assert.NotContains(t, page, `rel="prev"`)
	page = s.follow(formOf(t, page, "All 3 set"))
	assert.Contains(t, page, "3 of 6 set")
	assert.Contains(t, page, `<p class="tick" role="status">✓ set</p>`, "a second tap finds no button")
	assert.NotContains(t, page, `class="set"`)
	assert.Len(t, s.ticked(), 3)
	before, _ := s.stored()
	_, page = s.get("/jobs/1/bathroom")
	assert.Contains(t, page, "course 2", "it opens where one goes on")
	page = s.follow(formOf(t, page, "All 3 set"))
	assert.Contains(t, page, "6 of 6 set")
	assert.NotContains(t, page, `rel="next"`)
	after, _ := s.stored()
	assert.Equal(t, before, after, "ticks are no edit")
	_, page = s.get("/jobs/1/bathroom")
	assert.Contains(t, page, "course 1", "all is set: from the beginning")
}

func TestATickIsTakenOffOnlyOnAsking(t *testing.T) {
	s := siteOfFile(t, "toy")
	_, page := s.get("/jobs/1/bathroom")
	assert.NotContains(t, page, "Not set after all?")
	page = s.follow(formOf(t, page, "All 3 set"))
	assert.Regexp(t, `<details class="fold" id="unset"><summary>Not set after all\?`, page)
	page = s.follow(formOf(t, page, "Take the tick off"))
	assert.Contains(t, page, "0 of 6 set")
	assert.Empty(t, s.ticked())
}

func TestTilesOfARowAreTickedOneByOneToo(t *testing.T) {
	s := siteOfFile(t, "toy")
	_, page := s.get("/jobs/1/bathroom")
	marks := regexp.MustCompile(`name="mark" value="([0-9a-f]+)" aria-label="(\S+) is set"`).FindAllStringSubmatch(page, -1)
	require.Len(t, marks, 3)
	page = s.follow(url.Values{"wall": {"1"}, "piece": {marks[1][2]}, "mark": {marks[1][1]}})
	assert.Equal(t, []string{marks[1][2]}, s.ticked())
	assert.Contains(t, page, "Set the other 2")
	s.follow(formOf(t, page, "Set the other 2"))
	assert.Len(t, s.ticked(), 3)
}

func TestTicksOfAChangedPlanAreKeptAndCounted(t *testing.T) {
	s := siteOfFile(t, "toy")
	_, page := s.get("/jobs/1/bathroom")
	stale := formOf(t, page, "All 3 set")
	s.follow(stale)
	posted := s.bench()
	posted.Set("joint", "3")
	answer, text := s.post("/jobs/1", posted)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, text)
	_, page = s.get("/jobs/1/bathroom")
	lost := regexp.MustCompile(`(\d) ticks? no longer appl`).FindStringSubmatch(page)
	require.NotNil(t, lost, "said, with their number")
	assert.Len(t, s.ticked(), 3, "and kept")

	answer, text = s.post("/jobs/1/bathroom", stale)
	assert.Equal(t, http.StatusConflict, answer.StatusCode, "a page of the plan before ticks nothing")
	assert.Contains(t, text, "nothing was ticked")
	assert.Len(t, s.ticked(), 3)

	s.post("/jobs/1/undo", url.Values{"revision": {s.bench().Get("revision")}})
	_, page = s.get("/jobs/1/bathroom")
	assert.Contains(t, page, "3 of 6 set", "they are there again")
	assert.NotContains(t, page, "no longer appl")

	s.post("/jobs/1/redo", url.Values{"revision": {s.bench().Get("revision")}})
	_, page = s.get("/jobs/1/bathroom")
	page = s.follow(formOf(t, page, "for good"))
	assert.NotContains(t, page, "no longer appl")
	assert.Len(t, s.ticked(), 3-int(lost[1][0]-'0'), "dropped by the person")
}

func TestTicksOutliveAnEditThatMovesNoTile(t *testing.T) {
	s := siteOfFile(t, "toy")
	_, page := s.get("/jobs/1/bathroom")
	s.follow(formOf(t, page, "All 3 set"))
	posted := s.bench()
	posted.Set("title", "Another name")
	s.post("/jobs/1", posted)
	_, page = s.get("/jobs/1/bathroom")
	assert.Contains(t, page, "3 of 6 set")
	assert.NotContains(t, page, "no longer appl")
}

func TestAnAddressThatFitsNothingStillShowsThePage(t *testing.T) {
	s := newSite(t)
	for _, query := range []string{"?wall=99", "?wall=-1", "?wall=x", "?piece=Z-99-99", "?wall=2&piece=%3Cscript%3E", "?piece=" + strings.Repeat("A", 5000)} {
		answer, page := s.get("/jobs/1/bathroom" + query)
		assert.Equal(t, http.StatusOK, answer.StatusCode, query)
		assert.NotContains(t, page, "<script>")
		assert.Less(t, len(page), 400_000)
	}
	_, page := s.get("/jobs/1/bathroom?piece=Z-99-99")
	assert.Contains(t, page, "There is no piece Z-99-99")
	answer, _ := s.get("/jobs/9/bathroom")
	assert.Equal(t, http.StatusNotFound, answer.StatusCode)
	for _, form := range []url.Values{{"mark": {"made up"}}, {"mark": {""}}} {
		answer, _ = s.post("/jobs/1/bathroom", form)
		assert.Equal(t, http.StatusConflict, answer.StatusCode)
	}
	assert.Empty(t, s.ticked())
}

// Walking from the first step to the last by Next, with no script, shows every
// piece once and every caution of the plan where its work is.
func TestNextLeadsOverEveryPieceAndEveryCaution(t *testing.T) {
	s := newSite(t)
	_, bench := s.get("/jobs/1")
	next := regexp.MustCompile(`rel="next" href="([^"]+)"`)
	marks := regexp.MustCompile(`type="hidden" name="mark" value="([0-9a-f]+)"`)
	seen, said := map[string]bool{}, map[string]bool{}
	path, steps := "/jobs/1/bathroom", 0
	total := ""
	for path != "" {
		_, page := s.get(path)
		steps++
		total = regexp.MustCompile(`0 of (\d+) set`).FindStringSubmatch(page)[1]
		for _, m := range marks.FindAllStringSubmatch(page, -1) {
			require.False(t, seen[m[1]], "once")
			seen[m[1]] = true
		}
		for _, caution := range []string{"silica", "mains power", "asbestos", "C1288", "The tub moves", "carries all the others", "grab bar"} {
			if strings.Contains(page, caution) {
				said[caution] = true
			}
		}
		if strings.Contains(page, "silica") {
			require.Contains(t, page, "Sketch of the cut")
		}
		path = ""
		if m := next.FindStringSubmatch(page); m != nil {
			path = html.UnescapeString(m[1])
		}
	}
	assert.Contains(t, bench, "of "+total)
	assert.Equal(t, total, itoa(len(seen)))
	assert.Less(t, steps, len(seen), "whole tiles beside each other are one step")
	assert.Len(t, said, 7, "%v", said)
}

func TestTheBathroomAtArmsLength(t *testing.T) {
	s := newSite(t)
	ctx := browse(t)
	for _, width := range []int64{320, 390, 768, 1440} {
		for name, path := range map[string]string{"first": "/jobs/1/bathroom", "whole": "/jobs/1/bathroom?piece=B-08-03", "end": "/jobs/1/bathroom?piece=B-09-01", "pipe": "/jobs/1/bathroom?piece=L-16-04"} {
			steps(t, ctx, chromedp.EmulateViewport(width, 640), chromedp.Navigate(s.URL+path), chromedp.WaitVisible("#main"))
			shot(t, ctx, "bathroom-"+name+"-"+itoa(int(width)))
			assert.LessOrEqual(t, see[float64](t, ctx, `document.documentElement.scrollWidth - innerWidth`), 0.0, "%s at %d", name, width)
			small := see[[]string](t, ctx, `[...document.querySelectorAll("details")].forEach((d) => d.open = true), [...document.querySelectorAll("a:not(.skip), button, summary")].filter((e) => e.checkVisibility()).map((e) => [e, e.getBoundingClientRect()]).filter(([, r]) => r.width < 44 || r.height < 44).map(([e, r]) => e.outerHTML.slice(0, 80) + r.width + "x" + r.height)`)
			assert.Empty(t, small, "targets of 44 px and more")
			shot(t, ctx, "bathroom-"+name+"-open-"+itoa(int(width)))
		}
	}
}

func TestTheBathroomByTouchAndByKeys(t *testing.T) {
	s := newSite(t)
	ctx := browse(t)
	steps(t, ctx, chromedp.EmulateViewport(320, 568), chromedp.Navigate(s.URL+"/jobs/1/bathroom"), chromedp.WaitVisible(".thumb .set"))
	first := see[string](t, ctx, `document.querySelector(".which strong").textContent`)
	low := see[bool](t, ctx, `[...document.querySelectorAll(".thumb a, .thumb button")].every((e) => { const r = e.getBoundingClientRect(); return r.height >= 56 && r.top > innerHeight / 2 && r.bottom <= innerHeight })`)
	assert.True(t, low, "all that is tapped again and again is within reach of a thumb")
	at := see[[]float64](t, ctx, `(() => { const r = document.querySelector(".thumb .set").getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2] })()`)
	steps(t, ctx, chromedp.MouseClickXY(at[0], at[1]), chromedp.WaitVisible(".thumb .tick"))
	ticks := s.ticked()
	assert.NotEmpty(t, ticks)
	steps(t, ctx, chromedp.MouseClickXY(at[0], at[1]), chromedp.MouseClickXY(at[0], at[1]))
	assert.Equal(t, first, see[string](t, ctx, `document.querySelector(".which strong").textContent`), "a second tap does nothing")
	assert.Equal(t, ticks, s.ticked())

	steps(t, ctx, chromedp.KeyEvent(kb.ArrowRight), chromedp.WaitVisible(`.thumb a[rel="prev"]`))
	assert.NotEqual(t, first, see[string](t, ctx, `document.querySelector(".which strong").textContent`))
	steps(t, ctx, chromedp.KeyEvent(kb.ArrowLeft), chromedp.WaitVisible(".thumb .end"))
	assert.Equal(t, first, see[string](t, ctx, `document.querySelector(".which strong").textContent`))
	assert.Equal(t, ticks, s.ticked())
}

// swipe moves one finger over the page.
func swipe(t *testing.T, ctx context.Context, selector string, dx, dy int) {
	t.Helper()
	see[bool](t, ctx, fmt.Sprintf(`(() => {
		const target = document.querySelector(%q);
		const at = (x, y) => new Touch({ identifier: 1, target, clientX: x, clientY: y });
		target.dispatchEvent(new TouchEvent("touchstart", { bubbles: true, touches: [at(200, 200)], changedTouches: [at(200, 200)] }));
		target.dispatchEvent(new TouchEvent("touchend", { bubbles: true, touches: [], changedTouches: [at(%d, %d)] }));
		return true;
	})()`, selector, 200+dx, 200+dy))
}

func TestASwipeTurnsThePageAndASlipDoesNot(t *testing.T) {
	s := siteOfFile(t, "toy")
	ctx := browse(t)
	steps(t, ctx, chromedp.EmulateViewport(390, 844), chromedp.Navigate(s.URL+"/jobs/1/bathroom"), chromedp.WaitVisible(".thumb .set"))
	see[bool](t, ctx, `window.turned = 0, document.querySelector('.thumb a[rel="next"]').addEventListener("click", (e) => { window.turned++; e.preventDefault() }), true`)
	for _, slip := range [][2]int{{-60, 0}, {-120, 80}, {0, -300}, {120, 0}} {
		swipe(t, ctx, "main", slip[0], slip[1])
	}
	swipe(t, ctx, ".thumb .set", -200, 0)
	assert.Zero(t, see[int](t, ctx, `window.turned`), "a slip, a scroll, back from the first, a thumb on the buttons")
	swipe(t, ctx, "main", -150, 20)
	assert.Equal(t, 1, see[int](t, ctx, `window.turned`))
	assert.Empty(t, s.ticked())
}
