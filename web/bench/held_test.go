package bench_test

import (
	"net/http"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/web/form"
	"coursewright/web/trial"
)

// wrap says where every wall starts, and on which line.
const wrap = `[...document.querySelectorAll("#line-is, [id^=start-is-]")].map((p) => p.firstChild.textContent.trim()).join("; ")`

// With the script nothing is loaded anew: the question, the drawing and undo change places.
func TestTheNewSetOutIsTakenOnTheBench(t *testing.T) {
	s, _, _, _ := trial.Earlier(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#anew button"), trial.Ready)
	assert.Contains(t, trial.See[string](t, ctx, `document.getElementById("anew").textContent`), "Judged anew, this set-out would be another one, with ")
	opened(t, ctx, "compare-starts", "compare-lines")
	trial.Shot(t, ctx, "anew")
	before := trial.See[string](t, ctx, wrap)

	trial.Type(t, ctx, "title", "Another name")
	trial.Await(t, ctx, `document.getElementById("undo").textContent === "Undo: title"`)
	assert.True(t, before == trial.See[string](t, ctx, wrap), "an edit moves no mark")
	assert.Contains(t, trial.See[string](t, ctx, `document.getElementById("anew").textContent`), "worked out by another version")

	trial.Steps(t, ctx, chromedp.Click(`#anew button[value="letgo"]`))
	trial.Await(t, ctx, `document.querySelector("#anew button") === null`)
	assert.False(t, before == trial.See[string](t, ctx, wrap), "the new one is drawn")
	trial.Steps(t, ctx, chromedp.Click("#undo"))
	trial.Await(t, ctx, `document.querySelector("#anew button") !== null`)
	assert.True(t, before == trial.See[string](t, ctx, wrap), "the old one is back")
	trial.Steps(t, ctx, chromedp.Click(`#anew button[value="hold"]`))
	trial.Await(t, ctx, `document.querySelector("#anew button") === null`)
	assert.True(t, before == trial.See[string](t, ctx, wrap), "it is kept")
	_, job := s.Stored()
	require.NotNil(t, job.Held)
}

func TestTheSetOutIsHeldAndLetGoOnTheBench(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1?all=1"), chromedp.WaitVisible("#held button"), trial.Ready)
	trial.See[bool](t, ctx, `(document.getElementById("held").scrollIntoView({block: "end"}), true)`)
	trial.Shot(t, ctx, "free")
	before := trial.See[string](t, ctx, wrap)
	trial.Steps(t, ctx, chromedp.Click(`#held button[value="hold"]`))
	trial.Await(t, ctx, `document.getElementById("undo").textContent === "Undo: hold the set-out"`)
	assert.Contains(t, trial.See[string](t, ctx, `document.getElementById("held").textContent`), "The set-out is held.")
	trial.Shot(t, ctx, "held")

	trial.Type(t, ctx, "limits.sliver", "3")
	trial.Await(t, ctx, `document.getElementById("undo").textContent.startsWith("Undo: ") && !document.getElementById("undo").textContent.includes("hold")`)
	trial.Steps(t, ctx, chromedp.Click("#undo"))
	trial.Await(t, ctx, `document.getElementById("undo").textContent === "Undo: hold the set-out"`)
	trial.Steps(t, ctx, chromedp.Click("#undo"))
	trial.Await(t, ctx, `document.querySelector('#held button[value="hold"]') !== null`)
	assert.True(t, before == trial.See[string](t, ctx, wrap), "one step back")
	_, job := s.Stored()
	assert.Nil(t, job.Held)
}

// Another tile on marks that are held leaves poor cuts all round, and nothing said that it is the marks.
func TestPoorCutsRoundHeldMarksSaySo(t *testing.T) {
	s := trial.New(t)
	const said = "Poor cuts are left round these marks."
	press := func(field, value string) string {
		posted := s.Bench()
		posted.Set(field, value)
		answer, body := s.Post("/jobs/1", posted)
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, body)
		_, page := s.Get("/jobs/1")
		return page
	}
	held := press(form.Do, "hold")
	assert.True(t, strings.Contains(held, "The set-out is held.") && !strings.Contains(held, said))
	assert.True(t, strings.Contains(press("tile.width", "9 1/4"), said))
	assert.False(t, strings.Contains(press(form.Do, "letgo"), said))
}
