package bench_test

import (
	"testing"
	"time"

	"coursewright/web/trial"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Who looks at another page before the pause after the last key is over loses nothing. The clock of the page stands
// still here, so the pause never ends by itself.
func TestWhatWasTypedIsSavedAsThePageIsLeft(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	trial.See[bool](t, ctx, `(() => { window.setTimeout = () => 0; return true })()`)
	trial.Type(t, ctx, "walls[1].width", "59 13/16")
	_, before := s.Stored()
	require.NotEqual(t, "59 13/16", before.Walls[1].Width, "the pause")
	trial.See[bool](t, ctx, `(() => {
		Object.defineProperty(document, "hidden", { value: true });
		document.dispatchEvent(new Event("visibilitychange"));
		return true
	})()`)
	assert.Eventually(t, func() bool {
		_, job := s.Stored()
		return job.Walls[1].Width == "59 13/16"
	}, trial.Patience, 20*time.Millisecond)
}

// Who presses a link right after the last key gets there once the edit is saved; where it is refused the page stays to
// say so, and the link leads on when it is pressed again.
func TestALinkWaitsForWhatWasTyped(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	press := `(() => { document.querySelector('a[href="/jobs/1/work"]').click(); return true })()`
	trial.Type(t, ctx, "walls[1].width", "59 13/16")
	trial.See[bool](t, ctx, press)
	trial.Steps(t, ctx, chromedp.WaitVisible(`a[href="/jobs/1/work"][aria-current]`))
	_, job := s.Stored()
	assert.Equal(t, "59 13/16", job.Walls[1].Width)

	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	trial.Type(t, ctx, "walls[1].width", "59 l3/16")
	trial.See[bool](t, ctx, press)
	trial.Await(t, ctx, `document.querySelector(".fault") !== null`)
	assert.Equal(t, "/jobs/1", trial.See[string](t, ctx, `location.pathname`))
	trial.See[bool](t, ctx, press)
	trial.Steps(t, ctx, chromedp.WaitVisible(`a[href="/jobs/1/work"][aria-current]`))
}

// A joint that was refused had been gone after another page was looked at: it comes back into its box, with what is
// wrong with it. Once the job has moved on, or is another, it is told and not put back, since the box may mean another thing.
func TestWhatWasRefusedIsThereWhenThePageIsOpenedAgain(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	open := func() {
		trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1?all=1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	}
	const box, fault = `document.getElementById("joint").value`, `document.querySelector(".fault") !== null`
	open()
	trial.Type(t, ctx, "joint", "thin")
	trial.Await(t, ctx, fault)
	assert.Equal(t, "true", trial.See[string](t, ctx, `document.getElementById("joint").getAttribute("aria-invalid")`), "an empty one says no to a screen reader")
	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1/work"), chromedp.WaitReady(`a[href="/jobs/1/work"][aria-current]`))
	open()
	trial.Await(t, ctx, box+` === "thin" && `+fault)
	kept, job := s.Stored()
	assert.Equal(t, "1/8", job.Joint.Plain)

	trial.Type(t, ctx, "joint", "3/16")
	trial.Await(t, ctx, status+` === "Saved" && !(`+fault+`)`)
	open()
	assert.Equal(t, "3/16", trial.See[string](t, ctx, box), "what is taken is forgotten")

	trial.Type(t, ctx, "joint", "thick")
	trial.Await(t, ctx, fault)
	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1/work"), chromedp.WaitReady(`a[href="/jobs/1/work"][aria-current]`))
	answer, _ := s.Post("/jobs/1", s.With("walls[1].width", "59 13/16"))
	require.Equal(t, 303, answer.StatusCode)
	after, _ := s.Stored()
	require.Greater(t, after.Revision, kept.Revision)
	open()
	trial.Await(t, ctx, status+`.includes("Joint between tiles “thick”")`)
	assert.Equal(t, "3/16", trial.See[string](t, ctx, box))
	open()
	assert.Equal(t, "Saved", trial.See[string](t, ctx, status), "it is said once")

	trial.Type(t, ctx, "joint", "thick")
	trial.Await(t, ctx, fault)
	trial.See[bool](t, ctx, `(() => { for (const key of Object.keys(localStorage)) localStorage[key] = localStorage[key].replace("Heron Street", "Another file"); return true })()`)
	open()
	trial.Await(t, ctx, status+`.includes("Joint between tiles “thick”")`)
	assert.Equal(t, "3/16", trial.See[string](t, ctx, box), "another job of the same address keeps its joint")
}
