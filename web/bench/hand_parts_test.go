package bench_test

import (
	"coursewright/web/trial"

	"context"
	"encoding/json"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// fittedWall is one wall with all that was given handles of its own: bands and strips, fixtures,
// and ends and a head that were measured.
func fittedWall(t *testing.T) []byte {
	var job survey.Job
	require.NoError(t, json.Unmarshal(trial.File(t, "one-wall.json"), &job))
	at := func(x string) survey.Mark { return survey.Mark{At: x} }
	mark := func(from, to string) *survey.Mark { return &survey.Mark{From: from, To: to} }
	ends := func(x string) *survey.Mark { m := at(x); return &m }
	small := survey.Tile{Width: "1 7/8", Height: "1 7/8"}
	w := &job.Walls[0]
	w.Width = "90"
	w.Left, w.Right = survey.End{Meets: "corner"}, survey.End{Stops: ends("84")}
	w.Base[0].Readings = []survey.Drop{{At: "0", Drop: "40"}, {At: "90", Drop: "40"}}
	w.Head = survey.Head{Stops: ends("36")}
	job.Bands = []survey.Band{{Name: "free", Tile: small, Bottom: *mark("20", "30"), Near: "22"}}
	w.Strips = []survey.Strip{
		{Name: "measured", Columns: 2, Tile: small, Middle: at("30"), Bottom: ends("-30"), Top: ends("0")},
		{Name: "free", Columns: 2, Tile: small, Middle: *mark("44", "60"), Bottom: mark("-32", "-26"), Top: ends("-6")},
	}
	w.Fixtures = []survey.Fixture{
		{Kind: "corner shelf", Name: "shelf", Corner: "left", Width: "8", Height: survey.Measure{Plain: "4"}},
		{Kind: "soap dish", Name: "dish", At: "14", Width: "6", High: "4", Height: survey.Measure{Plain: "-16"}},
		{Kind: "soap dish", Name: "flush dish", Flush: true, At: "40", Width: "6", High: "4", Height: survey.Measure{Plain: "10"}},
		{Kind: "grab bar", Name: "bar", At: "24", Width: "16", Height: survey.Measure{Mark: mark("8", "16")}},
		{Kind: "glass line", Name: "door", At: "76", Holes: []survey.Drilled{{Height: "0"}}},
	}
	file, err := json.Marshal(job)
	require.NoError(t, err)
	return file
}

// Every kind of handle of bands, strips, fixtures and stops is dragged by the mouse: the
// figure at the hand is what the job says once it is let go, and the handle stands where it
// was let go.
func TestPartsInTheHand(t *testing.T) {
	if testing.Short() {
		t.Skip("needs a browser")
	}
	ctx, cancel := context.WithTimeout(t.Context(), 2*trial.Patience)
	t.Cleanup(cancel)
	ctx = trial.Chromium(t, ctx)
	s := trial.Of(t, fittedWall(t))
	openAt(t, ctx, s, "/jobs/1?wall=1")
	wall := func(j survey.Job) survey.Wall { return j.Walls[0] }
	for _, c := range []struct {
		handle string
		dx, dy float64 // on the screen
		x, y   func(survey.Job) string
		wish   string // the axis in which only a wish is moved
	}{
		{"band free", 0, -30, nil, func(j survey.Job) string { return j.Bands[0].Near }, "y"},
		{"move strip measured", 20, 0, func(j survey.Job) string { return wall(j).Strips[0].Middle.At }, nil, ""},
		{"strip free left", 30, 0, func(j survey.Job) string { return j.Pins.Walls["basin"].Marks["strip free left"] }, nil, ""},
		{"strip free bottom", 0, 12, nil, func(j survey.Job) string { return j.Pins.Walls["basin"].Marks["strip free bottom"] }, ""},
		{"fixture shelf", 0, 25, nil, func(j survey.Job) string { return wall(j).Fixtures[0].Height.Plain }, ""},
		{"fixture dish", 24, -18, func(j survey.Job) string { return wall(j).Fixtures[1].At }, func(j survey.Job) string { return wall(j).Fixtures[1].Height.Plain }, ""},
		{"fixture flush dish", -20, 20, func(j survey.Job) string { return wall(j).Fixtures[2].At }, func(j survey.Job) string { return wall(j).Fixtures[2].Height.Plain }, ""},
		{"fixture bar", 12, -10, func(j survey.Job) string { return wall(j).Fixtures[3].At }, func(j survey.Job) string { return wall(j).Fixtures[3].Near }, "y"},
		{"fixture door", -16, 0, func(j survey.Job) string { return wall(j).Fixtures[4].At }, nil, ""},
		{"stop right", -14, 0, func(j survey.Job) string { return wall(j).Right.Stops.At }, nil, ""},
		{"stop head", 0, 14, nil, func(j survey.Job) string { return wall(j).Head.Stops.At }, ""},
	} {
		t.Run(c.handle, func(t *testing.T) {
			before, was := s.Stored()
			x, y := grasp(t, ctx, c.handle)
			moveTo(t, ctx, x+c.dx/2, y+c.dy/2)
			moveTo(t, ctx, x+c.dx, y+c.dy)
			trial.Await(t, ctx, `document.querySelector(".ghost text") !== null`)
			figure := asTyped(trial.See[string](t, ctx, `document.querySelector(".ghost text").textContent`))
			release(t, ctx, x+c.dx, y+c.dy)
			trial.Await(t, ctx, status+`.startsWith("Saved")`) // and where a wish went to
			after, now := s.Stored()
			require.Equal(t, before.Revision+1, after.Revision, "one drag, one step; the hand said %s, the page %q", figure, trial.See[string](t, ctx, `document.getElementById("clash")?.textContent ?? ""`))
			for axis, of := range map[string]func(survey.Job) string{"x": c.x, "y": c.y} {
				if of == nil {
					continue
				}
				assert.NotEqual(t, of(was), of(now), axis)
				at := tapeOf(t, of(now))
				assert.Contains(t, figure, at.Plain(length.Imperial, length.Inch/64)+"″", "the figure at the hand is what is said of %s", axis)
				if c.wish != axis { // a wish is met on the nearest joint line
					stands := `Number(document.querySelector('#drawing [data-handle="` + c.handle + `"]').dataset.` + axis + `)`
					assert.InDelta(t, float64(at)/float64(length.Millimetre), trial.See[float64](t, ctx, stands), 0.001, "the handle stands there")
				}
			}
		})
	}
	trial.Shot(t, ctx, "parts-in-the-hand")
}

// tapeOf is a length as the job has it, also one that a plan has printed.
func tapeOf(t *testing.T, text string) length.Length {
	l, err := length.ParsePrinted(text, length.Imperial)
	require.NoError(t, err)
	return l
}
