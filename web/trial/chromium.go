package trial

import (
	"context"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// Patience is how long a page may take on a busy machine before a test gives up.
const Patience = 60 * time.Second

// Browse starts a real Chromium with a profile of its own.
func Browse(t *testing.T) context.Context {
	t.Helper()
	if testing.Short() {
		t.Skip("needs a browser")
	}
	ctx, cancel := context.WithTimeout(t.Context(), Patience)
	t.Cleanup(cancel)
	return Chromium(t, ctx)
}

// Ready waits for the page's script.
var Ready = chromedp.WaitReady("html.scripted")

// Laid waits until the drawing is laid out for the frame that the browser has.
func Laid(t *testing.T, ctx context.Context) {
	t.Helper()
	Await(t, ctx, `Math.abs((document.querySelector("#drawing svg")?.viewBox.baseVal.width ?? 0) / 250 - document.getElementById("drawing").clientWidth) < 16`)
}

// See evaluates a script in the page.
func See[T any](t *testing.T, ctx context.Context, script string) T {
	t.Helper()
	out, err := chromedp.Run(ctx, chromedp.Evaluate[T](script))
	require.NoError(t, err)
	return out
}

// Await waits until a script gives true.
func Await(t *testing.T, ctx context.Context, script string) {
	t.Helper()
	_, err := chromedp.Run(ctx, chromedp.Poll[bool](script))
	require.NoError(t, err, script)
}

// Steps does one action after the other.
func Steps(t *testing.T, ctx context.Context, list ...chromedp.Action[chromedp.Void]) {
	t.Helper()
	require.NoError(t, chromedp.Do(ctx, list...))
}

// Type writes a field as a person does: focus, all of it replaced.
func Type(t *testing.T, ctx context.Context, id, text string) {
	t.Helper()
	See[bool](t, ctx, `(() => { const f = document.getElementById(`+Quote(id)+`); for (let d = f.closest("details"); d; d = d.parentElement.closest("details")) d.open = true; f.focus(); f.select(); return true })()`)
	Steps(t, ctx, chromedp.KeyEvent(text))
}

// Quote writes a text for a script.
func Quote(s string) string { return "`" + s + "`" }

// Chromium starts Chromium with a fresh profile and gives one tab of it. A test fails where a script of its pages does.
func Chromium(t *testing.T, ctx context.Context, more ...chromedp.ExecAllocatorOption) context.Context {
	t.Helper()
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.NoSandbox, chromedp.Headless, chromedp.DisableGPU,
		chromedp.UserDataDir(t.TempDir()),
		chromedp.Flag("disable-quic", true),
		chromedp.Flag("no-first-run", true),
		chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true),
		chromedp.Flag("disable-sync", true),
	)
	options = append(options, more...)
	ctx, cancel := chromedp.NewExecAllocator(ctx, options...)
	t.Cleanup(cancel)
	ctx, stop := chromedp.NewContext(ctx, chromedp.WithListener(thrown(t)))
	t.Cleanup(stop)
	return ctx
}

// thrown notes what scripts throw and nobody catches, and tells it when the test is over.
func thrown(t *testing.T) func(any) {
	var lock sync.Mutex
	var seen []string
	t.Cleanup(func() {
		lock.Lock()
		defer lock.Unlock()
		require.Empty(t, seen, "thrown by scripts of the page")
	})
	return func(event any) {
		if e, ok := event.(*runtime.EventExceptionThrown); ok {
			lock.Lock()
			defer lock.Unlock()
			seen = append(seen, e.ExceptionDetails.Text)
			if what := e.ExceptionDetails.Exception; what != nil {
				seen = append(seen, what.Description)
			}
		}
	}
}

// Shot takes a picture of the window as it stands into the folder named by SHOTS,
// for people to look at.
func Shot(t *testing.T, ctx context.Context, name string) {
	t.Helper()
	dir := os.Getenv("SHOTS")
	if dir == "" {
		return
	}
	picture, err := chromedp.Run(ctx, chromedp.CaptureScreenshot())
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(dir, name+".png"), picture, 0o600))
}

// Colours shows pages as on a system set to light or to dark.
func Colours(scheme string) chromedp.Action[chromedp.Void] {
	return media(&emulation.MediaFeature{Name: "prefers-color-scheme", Value: scheme})
}

// Forced shows pages in the few colours of a person, as for eyes that need much contrast, on light ground or on dark.
func Forced(scheme string) chromedp.Action[chromedp.Void] {
	return media(&emulation.MediaFeature{Name: "forced-colors", Value: "active"}, &emulation.MediaFeature{Name: "prefers-color-scheme", Value: scheme})
}

// Focused lets a page have the focus, so that a script that moves it does as a key would.
func Focused() chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, emulation.SetFocusEmulationEnabled, emulation.SetFocusEmulationEnabledParams{Enabled: true})
		return err
	})
}

func media(features ...*emulation.MediaFeature) chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
			Features: features,
		})
		return err
	})
}
