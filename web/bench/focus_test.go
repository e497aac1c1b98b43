package bench_test

import (
	"encoding/json"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/web/shapes"
	"coursewright/web/trial"
)

// focused names what has the focus: its id, or what its button does.
const focused = `(document.activeElement.id || document.activeElement.value || document.activeElement.tagName)`

// Whoever works with the keys alone never has to begin at the top of the page again: a
// button that adds something leads to its first box, and of a control that is gone the
// nearest takes its place.
func TestTheFocusIsNeverLost(t *testing.T) {
	ctx := trial.Browse(t)
	s := trial.New(t)
	openAt(t, ctx, s, "/jobs/1")
	for _, step := range []struct{ press, leads string }{
		{"hold", "letgo"},
		{"letgo", "hold"},
		{"undo", "undo"},
		{"redo", "undo"}, // there is nothing more to redo
		{"add walls[2].openings pipe", "walls[2].openings[0].at"},
		{"remove walls[2].openings[0]", "add walls[2].openings niche"},
		{"measure walls[1].openings[0].left", "walls[1].openings[0].left.at"},
		{"guess walls[1].width", "walls[1].width"},
	} {
		before, _ := s.Stored()
		trial.See[bool](t, ctx, `(() => { const b = [...document.querySelectorAll("button")].find((b) => b.id === `+trial.Quote(step.press)+` || b.value === `+trial.Quote(step.press)+`);
			for (let d = b.closest("details"); d; d = d.parentElement.closest("details")) d.open = true;
			b.focus(); return true })()`)
		trial.Steps(t, ctx, chromedp.KeyEvent(kb.Enter))
		trial.Await(t, ctx, `document.querySelector("input[name=revision]").value !== "`+strconv.FormatInt(before.Revision, 10)+`" && `+status+` === "Saved"`)
		assert.Equal(t, step.leads, trial.See[string](t, ctx, focused), "after %q", step.press)
		assert.True(t, trial.See[bool](t, ctx, `(() => { const r = document.activeElement.getBoundingClientRect(); return r.top >= 0 && r.bottom <= innerHeight })()`), "%q can be seen", step.leads)
	}
}

// Found by a walk: after a range was typed into the box of the top, which makes two boxes of it, adding a window led back there.
func TestAButtonLeadsToWhatItBroughtItself(t *testing.T) {
	ctx := trial.Browse(t)
	job, err := shapes.New("tub", "in", "tub")
	require.NoError(t, err)
	file, err := json.Marshal(job)
	require.NoError(t, err)
	openAt(t, ctx, trial.Of(t, file), "/jobs/1")
	trial.Type(t, ctx, "walls[0].head.stops.at", "32 to 36")
	trial.Await(t, ctx, status+` === "Saved"`)
	trial.See[bool](t, ctx, `(() => { const b = document.querySelector('button[value="add walls[2].openings pipe"]'); b.closest("details").open = true; b.focus(); return true })()`)
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.Enter))
	trial.Await(t, ctx, `document.getElementById("walls[2].openings[0].at") !== null`)
	trial.Await(t, ctx, status+` === "Saved"`)
	assert.Equal(t, "walls[2].openings[0].at", trial.See[string](t, ctx, focused))
}

// A button that is pressed while another edit is on its way asks for it once that is answered, in the form that has come
// by then; pressed twice, as by a double click, it asks once. The second press was once refused, and only said not to work.
func TestAButtonPressedWhileAnEditIsOnItsWay(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	_, before := s.Stored()
	press := func(all ...string) {
		for _, do := range all {
			trial.See[bool](t, ctx, `(() => { document.querySelector('#survey button[value="`+do+`"]').click(); return true })()`)
		}
		trial.Await(t, ctx, `document.getElementById("status").textContent !== "Saving"`)
	}
	press("add walls[2].openings pipe", "add walls[2].openings pipe")
	trial.Await(t, ctx, `document.getElementById("walls[2].openings[0].name") !== null`)
	_, job := s.Stored()
	assert.Len(t, job.Walls[2].Openings, len(before.Walls[2].Openings)+1)
	press("add walls[2].openings window", "add walls[0].openings pipe")
	trial.Await(t, ctx, `document.getElementById("walls[0].openings[`+strconv.Itoa(len(before.Walls[0].Openings))+`].name") !== null`)
	assert.Equal(t, "Saved", trial.See[string](t, ctx, `document.getElementById("status").textContent`))
	_, job = s.Stored()
	assert.Len(t, job.Walls[2].Openings, len(before.Walls[2].Openings)+2)
	assert.Len(t, job.Walls[0].Openings, len(before.Walls[0].Openings)+1)
}

// Every button that is pressed within one save has its turn, undo too. Of three the middle one was lost.
func TestThreeButtonsPressedWithinOneSave(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	_, before := s.Stored()
	press := func(buttons ...string) {
		trial.See[bool](t, ctx, `(() => { for (const b of [`+strings.Join(buttons, ",")+`]) document.querySelector(b).click(); return true })()`)
	}
	add := func(kind string) string { return "'#survey button[value=\"add walls[2].openings " + kind + "\"]'" }
	had := func() int { _, job := s.Stored(); return len(job.Walls[2].Openings) - len(before.Walls[2].Openings) }
	press(add("pipe"), add("window"), add("niche"))
	assert.Eventually(t, func() bool { return had() == 3 }, trial.Patience, 20*time.Millisecond)
	trial.Await(t, ctx, `document.getElementById("status").textContent === "Saved" && document.getElementById("undo").textContent.includes("niche")`)
	press("'#undo'", "'#undo'", "'#undo'")
	assert.Eventually(t, func() bool { return had() == 0 }, trial.Patience, 20*time.Millisecond)
}
