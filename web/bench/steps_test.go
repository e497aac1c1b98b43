package bench_test

import (
	"context"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
	"coursewright/web/trial"
)

// newTub is a site whose second job is a tub of which nothing is measured.
func newTub(t *testing.T) trial.Site {
	t.Helper()
	s := trial.New(t)
	answer, page := s.Post("/jobs", url.Values{"shape": {"tub"}, "units": {"in"}, "title": {"Our bathroom"}})
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	return s
}

func TestANewJobIsAGuessAndSaysSo(t *testing.T) {
	s := newTub(t)
	_, page := s.Get("/jobs/2")
	for _, said := range []string{"This plan is a guess.", `href="#survey">To the survey`, "0 of 14 measured", "not measured · guess 60", `class="guess"`, "(guess 35&#34;)", "Print the measuring sheet"} {
		assert.Contains(t, page, said)
	}
	answer, _ := s.Post("/jobs/2", trial.Fields(t, page))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, again := s.Get("/jobs/2")
	assert.Contains(t, again, "0 of 14 measured", "a box left empty measures nothing")
	filled := trial.Fields(t, again)
	filled.Set("walls[1].width", "59 7/8")
	s.Post("/jobs/2", filled)
	_, page = s.Get("/jobs/2")
	assert.Contains(t, page, "1 of 14 measured")
	assert.NotContains(t, page, "guess 60")
	assert.Contains(t, page, "(measured 4&#39;-11 7/8&#34;)")
	_, list := s.Get("/")
	assert.Contains(t, list, "1 of 14 measured")
	assert.Contains(t, list, ">example<", "the job that was there at first is marked")
}

// Enter leads from one figure to the next, over the steps; the question stands over the boxes.
func TestOneMeasuresStepByStep(t *testing.T) {
	s := newTub(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/2"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	assert.Contains(t, trial.See[string](t, ctx, `document.querySelector("#section-walls .asking").textContent`), "How far from the corner do the boards of wall left run?")
	trial.See[bool](t, ctx, `(() => { document.getElementById("walls[0].width").focus(); return true })()`)
	for _, figure := range []string{"35 1/4", "59 7/8", "34 3/4", "38 7/8", "38 3/4"} {
		trial.Steps(t, ctx, chromedp.KeyEvent(figure), chromedp.KeyEvent(kb.Enter))
	}
	trial.Await(t, ctx, `document.getElementById("status").textContent === "Saved" && document.getElementById("line-count").textContent.startsWith("5 of 14")`)
	assert.True(t, trial.See[bool](t, ctx, `document.getElementById("section-down").open`), "the next step opens by itself")
	assert.Equal(t, "walls[1].base[0].readings[1].drop", trial.See[string](t, ctx, `document.activeElement.id`))
	assert.Contains(t, trial.See[string](t, ctx, `document.querySelector("#section-down .asking").textContent`), "corner of back and right")
	_, page := s.Get("/jobs/2/job.json")
	assert.Contains(t, page, `"38 3/4"`)
	assert.Equal(t, 5.0, trial.See[float64](t, ctx, `document.querySelectorAll(".tape i:not(.no)").length`), "a tick for each")
}

// A wrong width is said once, at its box, though readings at the end of the wall follow
// it; emptied again, the box is not measured.
func TestAnAnswerThatIsRefusedIsSaidOnceAndTakenBack(t *testing.T) {
	s := newTub(t)
	_, page := s.Get("/jobs/2")
	filled := trial.Fields(t, page)
	filled.Set("walls[2].width", "-32")
	answer, page := s.Post("/jobs/2", filled)
	require.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
	assert.Contains(t, page, "1 thing to put right")
	assert.NotContains(t, page, `class="all`)
	filled = trial.Fields(t, page)
	assert.Equal(t, "-32", filled.Get("walls[2].width"))
	filled.Set("walls[2].width", "")
	answer, page = s.Post("/jobs/2", filled)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	_, page = s.Get("/jobs/2")
	assert.Contains(t, page, "0 of 14 measured")
}

// Tab goes from a box that holds a figure to the next one, past the button that clears it: what is typed there, a
// space between whole number and fraction among it, clears nothing. Of a figure that is refused it stops there.
func TestTabGoesPastTheButtonThatClears(t *testing.T) {
	s := newTub(t)
	_, page := s.Get("/jobs/2")
	clear := func(page string) string {
		_, tag, _ := strings.Cut(page, `value="guess walls[2].width`)
		tag, _, found := strings.Cut(tag, ">Clear<")
		require.True(t, found, "there is such a button")
		return tag
	}
	filled := trial.Fields(t, page)
	filled.Set("walls[2].width", "-32")
	_, page = s.Post("/jobs/2", filled)
	assert.NotContains(t, clear(page), "tabindex")
	filled.Set("walls[2].width", "34 3/4")
	s.Post("/jobs/2", filled)
	_, page = s.Get("/jobs/2")
	assert.Contains(t, clear(page), `tabindex="-1"`)
}

// A width sent while it is half typed refuses guesses further along its wall. They stay guesses, and
// their boxes empty.
func TestAGuessThatAnotherAnswerRefusesStaysAGuess(t *testing.T) {
	s := newTub(t)
	_, page := s.Get("/jobs/2")
	filled := trial.Fields(t, page)
	filled.Set("walls[2].width", "3")
	answer, page := s.Post("/jobs/2", filled)
	require.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
	filled = trial.Fields(t, page)
	assert.Empty(t, filled.Get("walls[2].base[0].readings[1].at"))
	filled.Set("walls[2].width", "34 3/4")
	s.Post("/jobs/2", filled)
	_, page = s.Get("/jobs/2")
	assert.Contains(t, page, "1 of 14 measured")
}

// What is added to the room is not measured before somebody has measured it, and the
// tops that stop at one line are given one range.
func TestWhatIsAddedIsAGuessAndTopsGoTogether(t *testing.T) {
	s := newTub(t)
	press := func(do string) string {
		_, page := s.Get("/jobs/2")
		filled := trial.Fields(t, page)
		filled.Set("do", do)
		answer, page := s.Post("/jobs/2", filled)
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
		_, page = s.Get("/jobs/2")
		return page
	}
	page := press("add walls[1].openings window")
	assert.Contains(t, page, "0 of 18 measured")
	assert.Contains(t, page, "over the casing, if there is one")
	page = press("add walls[1].base[0].readings")
	assert.Contains(t, page, "0 of 19 measured")
	assert.Contains(t, page, "Middle of wall back, below the line")
	page = press("free walls[0].head.stops walls[1].head.stops walls[2].head.stops")
	filled := trial.Fields(t, page)
	assert.False(t, filled.Has("walls[1].head.stops.from"), "one range for all")
	filled.Set("walls[0].head.stops.from", "30")
	answer, page := s.Post("/jobs/2", filled)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	_, file := s.Get("/jobs/2/job.json")
	assert.Equal(t, 3, strings.Count(file, `"from": "30"`))
}

// A reading that can hardly be true is asked about at its box, and taken or set right with one tap.
func TestADoubtStandsAtItsReading(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	open := func() {
		trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	}
	const field, swapped = "walls[1].base[0].readings[1].drop", "83 13/16"
	open()
	trial.Type(t, ctx, field, swapped)
	trial.Await(t, ctx, `document.querySelector(".doubtbox")?.textContent.includes("keep `+swapped+`") ?? false`)
	assert.Contains(t, trial.See[string](t, ctx, `document.getElementById("line-count").textContent`), "in doubt")
	trial.Type(t, ctx, "walls[2].width", "34 3/4")
	trial.Await(t, ctx, `document.activeElement.id === "walls[2].width"`)
	assert.LessOrEqual(t, trial.See[float64](t, ctx, `Math.abs(document.querySelector(".survey-head").getBoundingClientRect().top - document.querySelector("aside.survey").getBoundingClientRect().top)`), 1.0, "the count stays in sight")
	trial.Steps(t, ctx, chromedp.Click(`#line-count a`))
	assert.Equal(t, field, trial.See[string](t, ctx, `document.activeElement.id`), "from where one has gone on to")
	trial.Steps(t, ctx, chromedp.Click(`.doubtbox button[value^="use "]`))
	trial.Await(t, ctx, `document.querySelector(".doubtbox") === null`)
	trial.Await(t, ctx, `document.activeElement.id === `+trial.Quote(field)) // it was on the button that clears it
	_, job := s.Stored()
	assert.Contains(t, job.Walls[1].Base[0].Readings[1].Drop, "38 ", "what would fit")
	trial.Type(t, ctx, field, swapped)
	trial.Await(t, ctx, `document.querySelector(".doubtbox")?.textContent.includes("keep `+swapped+`") ?? false`)
	trial.Steps(t, ctx, chromedp.Click(`.doubtbox button[value^="confirm "]`))
	trial.Await(t, ctx, `document.querySelector(".doubtbox") === null`)
	_, job = s.Stored()
	assert.Contains(t, job.Confirmed, field)
}

// What was probably meant by a mistyped figure is offered at its box.
func TestAMistypedFigureOffersWhatWasMeant(t *testing.T) {
	s := trial.New(t)
	posted := s.Bench()
	posted.Set("walls[1].width", "59 7/")
	_, page := s.Post("/jobs/1", posted)
	require.Contains(t, page, "aria-invalid")
	posted.Set("walls[1].width", "5o 7/8")
	_, page = s.Post("/jobs/1", posted)
	assert.Contains(t, page, `value="answer walls[1].width=50 7/8"`)
	posted.Set("do", "answer walls[1].width=50 7/8")
	s.Post("/jobs/1", posted)
	_, job := s.Stored()
	assert.Equal(t, "50 7/8", job.Walls[1].Width)
}

// It counts from the end that the box is asked from, and so does what would be right.
func TestWhatWasMeantCountsFromTheSameEnd(t *testing.T) {
	s := newTub(t)
	_, page := s.Get("/jobs/2")
	posted := trial.Fields(t, page)
	const box = "right walls[0].base[0].readings[1].at"
	require.True(t, posted.Has(box))
	posted.Set(box, "3o 1/4")
	_, page = s.Post("/jobs/2", posted)
	assert.NotContains(t, page, "from the left end; write")
	require.Contains(t, page, `value="answer `+box+`=30 1/4"`)
	posted.Set("do", "answer "+box+"=30 1/4")
	answer, _ := s.Post("/jobs/2", posted)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, page = s.Get("/jobs/2")
	assert.Contains(t, page, `id="walls[0].base[0].readings[1].at" name="`+box+`" value="30 1/4"`)
}

// The echo says exactly what was read.
func TestTheEchoIsExact(t *testing.T) {
	s := trial.New(t)
	posted := s.Bench()
	posted.Set("joint", "3/32")
	s.Post("/jobs/1", posted)
	_, page := s.Get("/jobs/1")
	assert.Contains(t, page, `3/32&#34; ≈ 2.4 mm`)
}

// On a phone the pad writes fractions behind a space and never covers the box.
func TestThePadNeverCoversItsBox(t *testing.T) {
	s := newTub(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(390, 844, chromedp.EmulateMobile, chromedp.EmulateTouch), chromedp.Navigate(s.URL+"/jobs/2"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	trial.Await(t, ctx, `!document.getElementById("drawing").matches(".wrap") && !document.getElementById("hand-hint").textContent.includes("to the front")`) // where one wall is by then
	fingersOn(t, ctx, true)
	_, err := chromedp.Run(ctx, chromedp.Func(func(ctx context.Context, tab *chromedp.Target) error {
		_, err := cdp.Call(ctx, tab, emulation.SetFocusEmulationEnabled, emulation.SetFocusEmulationEnabledParams{Enabled: true})
		return err
	}))
	require.NoError(t, err)
	trial.See[bool](t, ctx, `(() => { document.querySelector(".survey-head").dispatchEvent(new PointerEvent("pointerdown", { bubbles: true, pointerType: "touch" })); return true })()`)
	for _, id := range []string{"walls[0].width", "walls[2].width", "walls[1].base[0].readings[0].drop"} {
		trial.See[bool](t, ctx, `(() => { document.querySelector("[data-leave]").click(); const f = document.getElementById(`+trial.Quote(id)+`) ?? document.querySelector("#section-down .asked input"); for (let d = f.closest("details"); d; d = d.parentElement.closest("details")) d.open = true; f.focus(); return true })()`)
		trial.Await(t, ctx, `!document.getElementById("keys").hidden`)
		trial.Await(t, ctx, `(() => { const f = document.activeElement.getBoundingClientRect(), pad = document.getElementById("keys").getBoundingClientRect(); return f.bottom <= pad.top && f.top >= 0 })()`)
		assert.Equal(t, 1, trial.See[int](t, ctx, `[...document.querySelectorAll("#survey .asked")].filter((f) => f.offsetParent).length`), "one question at a time")
		assert.True(t, trial.See[bool](t, ctx, `(() => { const shown = [...document.querySelectorAll(".places .place")].filter((p) => p.checkVisibility({ visibilityProperty: true })); return shown.length === 1 && shown[0].dataset.place === document.activeElement.closest(".asked").dataset.field })()`), "the map shows where")
		assert.True(t, trial.See[bool](t, ctx, `(() => { const q = document.activeElement.closest(".inside").querySelector(".asking .question").getBoundingClientRect(); return q.top >= 0 && q.bottom < document.activeElement.getBoundingClientRect().top })()`), "and it is read over its box")
	}
	trial.See[bool](t, ctx, `(() => { document.querySelector("[data-leave]").click(); const f = document.getElementById("walls[1].width"); f.closest("details").open = true; f.focus(); for (const k of ["5", "9", "7/8"]) [...document.querySelectorAll("#keys button")].find((b) => b.textContent === k).dispatchEvent(new PointerEvent("pointerdown", { bubbles: true, cancelable: true })); return true })()`)
	assert.Equal(t, "59 7/8", trial.See[string](t, ctx, `document.getElementById("walls[1].width").value`))
	assert.Equal(t, "none", trial.See[string](t, ctx, `document.activeElement.inputMode`))
	for _, key := range []string{"−", ".", "/"} { // the phone's own keys stay away: what is not here cannot be typed
		assert.True(t, trial.See[bool](t, ctx, `[...document.querySelectorAll("#keys button")].some((b) => b.textContent === `+trial.Quote(key)+`)`), key)
	}
	for _, id := range []string{"walls[2].width", "walls[0].base[1].readings[0].drop"} { // in the step, and in the next
		trial.See[bool](t, ctx, `(() => { [...document.querySelectorAll("#keys button")].find((b) => b.textContent === "Next").dispatchEvent(new PointerEvent("pointerdown", { bubbles: true, cancelable: true })); dispatchEvent(new PointerEvent("pointerup")); return true })()`)
		trial.Await(t, ctx, `document.activeElement.id === `+trial.Quote(id))
		trial.Await(t, ctx, status+` === "Saved" && document.activeElement.offsetParent !== null`)
		assert.Equal(t, 1, trial.See[int](t, ctx, `[...document.querySelectorAll("#survey .asked")].filter((f) => f.offsetParent).length`), "also after an answer")
	}
	trial.Shot(t, ctx, "one-question")
	trial.See[bool](t, ctx, `(() => { const press = (k) => [...document.querySelectorAll("#keys button")].find((b) => b.textContent === k).dispatchEvent(new PointerEvent("pointerdown", { bubbles: true, cancelable: true })); for (const k of ["3", "9", "Next", "9", "3", "Next"]) press(k); dispatchEvent(new PointerEvent("pointerup")); return true })()`)
	trial.Await(t, ctx, `document.querySelector(".asked.doubted .doubtbox")?.offsetParent != null && document.querySelector(".asked.now").offsetParent !== null && !document.querySelector(".asked.now.doubted")`) // what is in doubt is seen beside the next
	assert.True(t, trial.See[bool](t, ctx, `(() => { const box = document.activeElement.getBoundingClientRect(), pad = document.getElementById("keys").getBoundingClientRect(); return box.bottom <= pad.top && box.bottom < document.querySelector(".asked.doubted").getBoundingClientRect().top })()`), "under the box of the next, which stays over the pad")
	// An answer that comes while the next figure is typed and waits to be sent leaves the question in sight and the box its focus.
	trial.Await(t, ctx, status+` === "Saved"`)
	trial.See[bool](t, ctx, `(() => { const real = fetch; window.fetch = async (...a) => { const r = await real(...a); if (a[1]?.method === "POST" && !String(a[0]).includes("/look") && !window.answer) await new Promise((d) => { window.answer = d }); return r };
		window.lost = 0; document.activeElement.addEventListener("blur", () => { window.lost++ });
		window.press = (k) => [...document.querySelectorAll("#keys button")].find((b) => b.textContent === k).dispatchEvent(new PointerEvent("pointerdown", { bubbles: true, cancelable: true })) | dispatchEvent(new PointerEvent("pointerup"));
		window.box = document.activeElement; press("3"); return true })()`)
	trial.Await(t, ctx, `window.answer !== undefined`)
	trial.See[bool](t, ctx, `(() => { press("9"); window.box.dispatchEvent(new Event("change", { bubbles: true })); answer(); return true })()`)
	trial.Await(t, ctx, status+` === "Saved" && window.box.offsetParent !== null`)
	assert.True(t, trial.See[bool](t, ctx, `document.activeElement === window.box && window.lost === 0 && window.box.closest(".asked").matches(".now")`), "the box keeps the focus")
	// The last question is done with a key that says so, and leads to the drawing.
	assert.Equal(t, "Next", trial.See[string](t, ctx, `document.querySelector("#keys .go").textContent`))
	trial.Steps(t, ctx, chromedp.Click("[data-leave]"))
	trial.See[bool](t, ctx, `(() => { const all = [...document.querySelectorAll("#survey .asked input[id]")], last = all.at(-1); for (let d = last.closest("details"); d; d = d.parentElement.closest("details")) d.open = true; last.focus(); return true })()`)
	trial.See[bool](t, ctx, `(press("Done"), true)`)
	trial.Await(t, ctx, `document.getElementById("keys").hidden && !document.body.classList.contains("one")`)
	trial.See[bool](t, ctx, `(() => { document.getElementById("walls[1].width").focus(); return true })()`)
	trial.Await(t, ctx, `!document.getElementById("keys").hidden`)
	trial.Steps(t, ctx, chromedp.Click("[data-leave]"))
	trial.Await(t, ctx, `document.getElementById("keys").hidden && document.querySelector("#paper svg").getBoundingClientRect().height > 0 && [...document.querySelectorAll("#survey .asked")].filter((f) => f.offsetParent).length > 1`)
}

// A corner that leans is told by its gap and its side, and the drawing leans with it.
func TestACornerThatLeansIsAskedInItsStep(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	const gap = "walls[1].left.lean[1].off"
	side := func(value string) {
		trial.See[bool](t, ctx, `(() => { const s = document.querySelector('[name="lean-way walls[1].left"]'); s.value = `+trial.Quote(value)+`; s.dispatchEvent(new Event("change", { bubbles: true })); return true })()`)
	}
	openPart(t, ctx, "section-top")
	side("away")
	assert.Equal(t, "away", trial.See[string](t, ctx, `document.querySelector('[name="lean-way walls[1].left"]').value`), "the side stays while its figure is missing")
	trial.Type(t, ctx, gap, "1/4")
	trial.Await(t, ctx, status+` === "Saved"`)
	_, job := s.Stored()
	assert.Equal(t, []survey.Lean{{Height: "-48", Off: "1/4"}, {Height: "48", Off: "-1/4"}}, job.Walls[1].Left.Lean)
	side("into")
	trial.Await(t, ctx, status+` === "Saved" && document.querySelector('[name="lean-way walls[1].left"]').value === "into"`)
	trial.Type(t, ctx, gap, "3")
	trial.Await(t, ctx, `document.querySelector('[data-field="`+gap+`"] .doubtbox') !== null`)
	_, job = s.Stored()
	assert.Equal(t, "3", job.Walls[1].Left.Lean[1].Off, "a doubt stands at the gap")
	trial.Type(t, ctx, gap, "wide")
	trial.Await(t, ctx, `document.getElementById("`+gap+`-said").textContent !== ""  && document.querySelector(".faults") !== null`)
	assert.Equal(t, "wide", trial.See[string](t, ctx, `document.getElementById("`+gap+`").value`), "and what does not read stays as typed")
	trial.See[bool](t, ctx, `(() => { document.getElementById("line-count").prepend("12 of 18 measured, 1 refused, "); return true })()`)
	assert.Equal(t, 1, trial.See[int](t, ctx, `(() => { const r = document.createRange(); r.selectNode([...document.querySelector(".survey-head h2").childNodes].find((n) => n.textContent.trim() === "Survey")); return r.getClientRects().length })()`),
		"the heading is not broken where much is counted beside it: it read Surve y")
}

// Whether the end of the tile is seen is asked where it stops, and weighs in the plan.
func TestSightIsAskedWhereTileStops(t *testing.T) {
	s := trial.New(t)
	_, page := s.Get("/jobs/1")
	for _, said := range []string{`name="walls[0].left.sight"`, `name="walls[2].right.sight"`, `name="walls[1].head.sight"`, "Left end of left", "Edge at the left end of left", "Which ends of the tile are seen?"} {
		assert.Contains(t, page, said)
	}
	assert.NotContains(t, page, `name="walls[0].right.sight"`, "a corner is always seen")
	filled := trial.Fields(t, page)
	filled.Set("walls[0].left.sight", "low")
	answer, _ := s.Post("/jobs/1", filled)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, job := s.Stored()
	assert.Equal(t, "low", job.Walls[0].Left.Sight)
}

// On an end wall distances are typed from the corner or from the front; the job keeps one figure.
func TestDistancesFromTheFront(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	const field = "walls[0].openings[1].at"
	openPart(t, ctx, "section-openings")
	assert.Equal(t, "15 1/2", trial.See[string](t, ctx, `document.getElementById("`+field+`").value`), "from the corner")
	trial.Steps(t, ctx, chromedp.Navigate(s.URL+trial.See[string](t, ctx, `document.querySelector("#ends-openings a:not([aria-current])").getAttribute("href")`)), trial.Ready)
	assert.Equal(t, "19 3/4", trial.See[string](t, ctx, `document.getElementById("`+field+`").value`), "from the front")
	assert.True(t, trial.See[bool](t, ctx, `document.getElementById("section-openings").open`), "the step stays open")
	trial.Type(t, ctx, field, "20")
	trial.Await(t, ctx, status+` === "Saved"`)
	_, job := s.Stored()
	assert.Equal(t, "20", job.Walls[0].Openings[1].At)
	assert.Equal(t, "20", trial.See[string](t, ctx, `document.getElementById("`+field+`").value`))
}

// What is typed while the answer to a choice is on its way stays in its box, and is saved after it.
func TestWhatIsTypedDuringAnAnswerStays(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1?all=1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	trial.See[bool](t, ctx, `(() => { const real = fetch; window.fetch = async (...a) => { const r = await real(...a); if (a[1]?.method === "POST" && !String(a[0]).includes("/look") && !window.answer) await new Promise((d) => { window.answer = d }); return r };
		const s = document.getElementById("bond.kind"); s.value = "stack"; s.dispatchEvent(new Event("change", { bubbles: true })); return true })()`)
	trial.Await(t, ctx, `window.answer !== undefined`)
	trial.Type(t, ctx, "walls[1].width", "60 1/2")
	trial.See[bool](t, ctx, `(() => { answer(); return true })()`)
	trial.Await(t, ctx, `document.getElementById("bond.offset") === null`)
	assert.Equal(t, "60 1/2", trial.See[string](t, ctx, `document.getElementById("walls[1].width").value`))
	trial.Await(t, ctx, status+` === "Saved"`)
	_, job := s.Stored()
	assert.Equal(t, "60 1/2", job.Walls[1].Width)
	assert.Equal(t, "stack", job.Bond.Kind)
}

// Who measures to a casing can say so in the step in which he does; an edge with trim in pieces has its own place.
func TestWhatCoversAnEdgeIsAskedWithTheWidths(t *testing.T) {
	s := newTub(t)
	_, page := s.Get("/jobs/2")
	require.Contains(t, page, `name="walls[2].right.finish"`)
	filled := trial.Fields(t, page)
	filled.Set("walls[2].right.finish", "casing")
	answer, _ := s.Post("/jobs/2", filled)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, job := s.Get("/jobs/2/job.json")
	assert.Contains(t, job, `"finish": "casing"`)
	posted, made := s.Post("/jobs", url.Values{"shape": {"trimmed"}, "units": {"in"}, "title": {"With bullnose"}})
	require.Equal(t, http.StatusSeeOther, posted.StatusCode, made)
	_, page = s.Get("/jobs/3")
	assert.NotContains(t, page, `.finish"`)
}

// In a closed room there is no place for a wall more beside the others, in steps or all at once: it is not offered.
func TestAClosedRoomIsOfferedNoWallMore(t *testing.T) {
	s := trial.New(t)
	offers := func(page string) (beside, benches bool) {
		return strings.Contains(page, `value="add walls"`) || strings.Contains(page, `value="add walls round"`), strings.Contains(page, `value="add walls bench"`)
	}
	for _, do := range []string{"add walls", "close", "open"} {
		answer, page := s.Post("/jobs/1", s.With("do", do))
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
		for _, path := range []string{"/jobs/1", "/jobs/1?all=1"} {
			_, page = s.Get(path)
			beside, benches := offers(page)
			assert.Equal(t, do != "close", beside, "%s after %s", path, do)
			assert.True(t, benches, "%s after %s", path, do)
		}
	}
}

// What a sheet of mosaic is told by has the units of the job.
func TestTheExampleOfASheetIsInTheUnitsOfTheJob(t *testing.T) {
	s := trial.New(t)
	for units, said := range map[string]string{"in": "a sheet of 12 in with six tiles of 1 7/8 in has 1/8 in.", "mm": "a sheet of 300 mm with six tiles of 48 mm has 2 mm."} {
		answer, _ := s.Post("/jobs", url.Values{"shape": {"one"}, "units": {units}, "title": {"Gym"}})
		_, page := s.Get(answer.Header.Get("Location"))
		assert.Contains(t, page, said)
	}
}
