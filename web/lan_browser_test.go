package web_test

import (
	"context"
	"net"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"

	"coursewright/web"
)

// A browser trusts 127.0.0.1 and tells a server there more of where a form
// comes from than one on the network, so a phone is played under another name.
func TestAPhoneIsLetInAndTicks(t *testing.T) {
	if testing.Short() {
		t.Skip("needs a browser")
	}
	door := web.NewDoor(ours + ":7310")
	h := newHouse(t, door)
	_, port, _ := net.SplitHostPort(h.at)
	ctx, cancel := context.WithTimeout(t.Context(), patience)
	t.Cleanup(cancel)
	ctx = chromium(t, ctx, chromedp.Flag("host-resolver-rules", "MAP bench.example 127.0.0.1"))
	steps(t, ctx, chromedp.EmulateViewport(320, 568), chromedp.Navigate("http://bench.example:"+port+"/jobs/1/bathroom"), chromedp.WaitVisible("#code"))
	shot(t, ctx, "door-320")
	assert.False(t, see[bool](t, ctx, `isSecureContext`))
	steps(t, ctx, chromedp.SendKeys("#code", "0000-0000\r"), chromedp.WaitVisible(".faults"))
	shot(t, ctx, "door-wrong-320")
	assert.NotContains(t, see[string](t, ctx, `document.documentElement.outerHTML`), "0000-0000", "a wrong code is not shown again")
	steps(t, ctx, chromedp.SendKeys("#code", door.Code()+"\r"), chromedp.WaitVisible(".thumb .set"))
	assert.Equal(t, "/jobs/1/bathroom", see[string](t, ctx, `location.pathname`), "on to where the phone wanted to go")
	assert.Empty(t, see[string](t, ctx, `document.cookie`), "no script reads the pass")
	steps(t, ctx, chromedp.Click(".thumb .set"), chromedp.WaitVisible(".thumb .tick"))
	ticks, err := h.store.Ticks(t.Context(), 1)
	assert.NoError(t, err)
	assert.NotEmpty(t, ticks)
	steps(t, ctx, chromedp.Navigate("http://bench.example:"+port+"/open/"+bare(door)), chromedp.WaitVisible(".jobs"))
	assert.Equal(t, "/", see[string](t, ctx, `location.pathname`), "away from the address with the code")
	assert.Empty(t, see[string](t, ctx, `document.referrer`))
}
