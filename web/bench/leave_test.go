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
