package door_test

import (
	"bytes"
	"context"
	"image/png"
	"net"
	"strconv"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/web/trial"
)

// A browser trusts 127.0.0.1 and tells a server there more of where a form
// comes from than one on the network, so a phone is played under another name.
func TestAPhoneIsLetInAndTicks(t *testing.T) {
	if testing.Short() {
		t.Skip("needs a browser")
	}
	h := newHouse(t, lan)
	_, port, _ := net.SplitHostPort(h.at)
	ctx, cancel := context.WithTimeout(t.Context(), trial.Patience)
	t.Cleanup(cancel)
	ctx = trial.Chromium(t, ctx, chromedp.Flag("host-resolver-rules", "MAP bench.example 127.0.0.1"))
	trial.Steps(t, ctx, chromedp.EmulateViewport(320, 568), chromedp.Navigate("http://bench.example:"+port+"/jobs/1/bathroom"), chromedp.WaitVisible("#code"))
	trial.Shot(t, ctx, "door-320")
	assert.False(t, trial.See[bool](t, ctx, `isSecureContext`))
	trial.Steps(t, ctx, chromedp.SendKeys("#code", "0000-0000\r"), chromedp.WaitVisible(".faults"))
	trial.Shot(t, ctx, "door-wrong-320")
	assert.NotContains(t, trial.See[string](t, ctx, `document.documentElement.outerHTML`), "0000-0000", "a wrong code is not shown again")
	trial.Steps(t, ctx, chromedp.SendKeys("#code", h.door.Code()+"\r"), chromedp.WaitVisible(".thumb .set"))
	assert.Equal(t, "/jobs/1/bathroom", trial.See[string](t, ctx, `location.pathname`), "on to where the phone wanted to go")
	assert.Empty(t, trial.See[string](t, ctx, `document.cookie`), "no script reads the pass")
	trial.Steps(t, ctx, chromedp.Click(".thumb .set"), chromedp.WaitVisible(".thumb .tick"))
	ticks, err := h.store.Ticks(t.Context(), 1)
	assert.NoError(t, err)
	assert.NotEmpty(t, ticks)
	trial.Steps(t, ctx, chromedp.Navigate("http://bench.example:"+port+"/open/"+bare(h.door)), chromedp.WaitVisible(".jobs"))
	assert.Equal(t, "/", trial.See[string](t, ctx, `location.pathname`), "away from the address with the code")
	assert.Empty(t, trial.See[string](t, ctx, `document.referrer`))
}

// The square is read off a picture of the page, as a camera would.
func TestTheDesksSquareReadsAsTheAddress(t *testing.T) {
	h := newHouse(t, lan)
	h.net.comingFrom("127.0.0.1")
	_, port, _ := net.SplitHostPort(h.at)
	ctx := trial.Browse(t)
	for _, width := range []int64{1440, 390, 320} {
		trial.Steps(t, ctx, chromedp.EmulateViewport(width, 900), chromedp.Navigate("http://127.0.0.1:"+port+"/jobs/1"), chromedp.WaitVisible("#phone"))
		trial.See[bool](t, ctx, `document.getElementById("phone").open = true`)
		assert.LessOrEqual(t, trial.See[float64](t, ctx, `document.documentElement.scrollWidth - innerWidth`), 0.0)
		trial.See[bool](t, ctx, `document.querySelector(".phone").scrollIntoView({block: "center"}), true`)
		trial.Shot(t, ctx, "phone-"+strconv.Itoa(int(width)))
		taken, err := chromedp.Run(ctx, chromedp.Screenshot(".qr"))
		require.NoError(t, err)
		picture, err := png.Decode(bytes.NewReader(taken))
		require.NoError(t, err)
		bits, err := gozxing.NewBinaryBitmapFromImage(picture)
		require.NoError(t, err)
		read, err := qrcode.NewQRCodeReader().Decode(bits, nil)
		require.NoError(t, err)
		assert.Equal(t, "http://192.168.7.2:7310/jobs/1/bathroom", read.GetText())
	}
}
