package web_test

import (
	"context"
	"testing"

	"github.com/chromedp/chromedp"
)

// chromium starts Chromium with a fresh profile and gives one tab of it.
func chromium(t *testing.T, ctx context.Context, more ...chromedp.ExecAllocatorOption) context.Context {
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
	ctx, stop := chromedp.NewContext(ctx)
	t.Cleanup(stop)
	return ctx
}
