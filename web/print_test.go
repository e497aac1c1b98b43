package web_test

import (
	"context"
	"fmt"
	"net/http"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/web/trial"
)

// paper lays the page out for paper or for the screen, on a system set to light or dark.
func paper(media, scheme string) chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: media,
			Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}})
		return err
	})
}

// printed prints the page as the browser would, on A4 without its own header.
func printed(t *testing.T, ctx context.Context, name string) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), name+".pdf")
	if dir := os.Getenv("SHOTS"); dir != "" {
		file = filepath.Join(dir, name+".pdf")
	}
	_, err := chromedp.Run(ctx, chromedp.Func(func(ctx context.Context, tab *chromedp.Target) error {
		out, err := cdp.Call(ctx, tab, page.PrintToPDF, page.PrintToPDFParams{PaperWidth: 8.27, PaperHeight: 11.69})
		if err != nil {
			return err
		}
		return os.WriteFile(file, out.Data, 0o600)
	}))
	require.NoError(t, err)
	return file
}

// pressed names what is shown that can only be pressed, typed into or dragged.
const pressed = `[...document.querySelectorAll("button, .button, input, select, nav:not(#answers), .handle, .brand, .seg, .skip, .pic, .slider, .slide, .keys, .rings, .ghost")]
	.filter((e) => e.getClientRects().length > 0 && e.checkVisibility() && !e.closest(".starts")).map((e) => e.outerHTML.slice(0, 90))`

// dark counts what is written or drawn light on a dark ground.
const darkGround = `[...document.querySelectorAll("body, main, section, header, figure, table, td, th, .card")]
	.filter((e) => e.getClientRects().length > 0).map((e) => getComputedStyle(e).backgroundColor.match(/\d+/g)?.map(Number) ?? [])
	.filter(([r, g, b, a]) => a !== 0 && r + g + b < 300).length`

// Any page printed from the browser is sheets: nothing to press, its job named, nothing wider than
// the paper, dark ink on light ground, and no leaf without a word.
func TestEveryPagePrintsAsCleanSheets(t *testing.T) {
	s := trial.New(t)
	answer, text := s.Post("/jobs", url.Values{"shape": {"tub"}, "units": {"in"}, "title": {"A guess"}})
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, text)
	s.Post("/jobs/1/choices", s.With("do", "duplicate", "of", "first", "name", "second"))
	ctx, cancel := context.WithTimeout(t.Context(), 4*trial.Patience)
	t.Cleanup(cancel)
	ctx = trial.Chromium(t, ctx)
	for i, one := range []struct{ path, says string }{
		{"/", "Heron Street"}, {"/jobs/1", "Heron Street"}, {"/jobs/1?wall=2&piece=B-10-10", "back wall"}, {"/jobs/1?look=finish", "Heron Street"}, {"/jobs/1?all=1", "Heron Street"},
		{"/jobs/2", "guess"}, {"/jobs/1/widths", "narrower"}, {"/jobs/1/help", "would help"}, {"/jobs/1/pieces", "B-10-10"}, {"/jobs/1/work", "Cut"}, {"/jobs/1/work?cut=C1", "Cut"},
		{"/jobs/1/choices", "second"}, {"/jobs/1/choices?look=finish", "second"}, {"/jobs/1/sheets", "Heron Street"}, {"/jobs/1/history", "Heron Street"}, {"/jobs/1/bathroom", "back"},
		{"/devices", "Devices"}, {"/nowhere", "nothing here"},
	} {
		for _, scheme := range []string{"light", "dark"} {
			trial.Steps(t, ctx, paper("screen", scheme), chromedp.EmulateViewport(718, 1000), chromedp.Navigate(s.URL+one.path), chromedp.WaitVisible("#main"))
			trial.Steps(t, ctx, paper("print", scheme))
			name := fmt.Sprintf("%s, %s", one.path, scheme)
			assert.Empty(t, trial.See[[]string](t, ctx, pressed), name)
			assert.Zero(t, trial.See[int](t, ctx, darkGround), "%s: dark grounds", name)
			assert.True(t, trial.See[bool](t, ctx, `[...document.querySelectorAll("h1")].some((h) => h.getClientRects().length > 0)`), "%s has no heading", name)
			assert.LessOrEqual(t, trial.See[float64](t, ctx, `document.documentElement.scrollWidth - innerWidth`), 0.0, "%s is wider than the paper", name)
			if scheme == "light" {
				text, err := exec.Command("pdftotext", "-layout", printed(t, ctx, fmt.Sprintf("print-%02d", i)), "-").Output()
				require.NoError(t, err)
				assert.Contains(t, strings.ToLower(string(text)), strings.ToLower(one.says), name)
				if one.path == "/jobs/1" {
					assert.Contains(t, string(text), "Hollows hold water", "findings are read on paper, also those that are closed")
				}
				leaves := strings.Split(strings.TrimSuffix(string(text), "\f"), "\f")
				for n, leaf := range leaves {
					assert.NotEmpty(t, strings.TrimSpace(leaf), "%s: leaf %d of %d is empty", name, n+1, len(leaves))
				}
			}
		}
	}
}

// Two choices stand beside each other under their heading, with no leaf for it alone, and so do three; of four
// two stand on the next leaf, each of them whole.
func TestChoicesPrintBesideEachOther(t *testing.T) {
	s := trial.New(t)
	s.Post("/jobs/1/choices", s.With("do", "duplicate", "of", "first", "name", "second"))
	s.Post("/jobs/1/choices", s.With("do", "duplicate", "of", "first", "name", "third"))
	ctx := trial.Browse(t)
	for i, look := range []string{"?wall=2", "?look=finish"} {
		trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1/choices"+look), chromedp.WaitVisible("#main"))
		text, err := exec.Command("pdftotext", "-layout", printed(t, ctx, fmt.Sprintf("beside-%d", i)), "-").Output()
		require.NoError(t, err)
		leaves := strings.Split(strings.TrimSuffix(string(text), "\f"), "\f")
		if assert.Len(t, leaves, 1, look) {
			assert.Equal(t, 3, strings.Count(leaves[0], "Advice"), look)
			assert.Equal(t, 1, strings.Count(leaves[0], "Heron Street"), "%s: the title once", look)
		}
	}
	s.Post("/jobs/1/choices", s.With("do", "duplicate", "of", "first", "name", "fourth"))
	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1/choices?look=finish"), chromedp.WaitVisible("#main"))
	text, err := exec.Command("pdftotext", "-layout", printed(t, ctx, "beside-4"), "-").Output()
	require.NoError(t, err)
	leaves := strings.Split(strings.TrimSuffix(string(text), "\f"), "\f")
	require.Len(t, leaves, 2)
	for _, leaf := range leaves {
		assert.Equal(t, 2, strings.Count(leaf, "Smallest cut"), leaf)
		assert.Equal(t, 2, strings.Count(leaf, "Advice"), leaf)
	}
}
