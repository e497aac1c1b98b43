package bench_test

import (
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"coursewright/web/trial"
)

// All windows of a browser share the cookie that tells how wide a drawing is, so an answer may be laid
// out for another window: one that is opened while another notes its width, or an edit after that. The
// drawing says what it was laid out for, and is asked for anew.
func TestADrawingThatIsLaidOutForAnotherWindowIsLaidOutAnew(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"))
	trial.Laid(t, ctx)

	trial.See[bool](t, ctx, `(() => { document.cookie = "frame=520; path=/; SameSite=Strict"; return true })()`)
	trial.Type(t, ctx, "walls[1].width", "60")
	trial.Await(t, ctx, status+` === "Saved"`)
	trial.Laid(t, ctx)

	wide := trial.See[string](t, ctx, `document.cookie`)
	require.Contains(t, wide, "frame=")
	trial.See[bool](t, ctx, `(() => { document.cookie = "frame=520; path=/; SameSite=Strict"; return true })()`)
	_, err := chromedp.Call(ctx, page.AddScriptToEvaluateOnNewDocument,
		page.AddScriptToEvaluateOnNewDocumentParams{Source: "document.cookie = " + trial.Quote(wide+"; path=/; SameSite=Strict")})
	require.NoError(t, err)
	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"))
	trial.Laid(t, ctx)
}
