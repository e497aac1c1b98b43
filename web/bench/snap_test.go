package bench_test

import (
	"context"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/web/trial"
)

// TestDragsSnap drags marks near joint lines and away from them.
func TestDragsSnap(t *testing.T) {
	ctx := trial.Browse(t)
	for name, try := range map[string]func(*testing.T, context.Context){
		"a niche's edge goes to a plumb joint":       toAPlumbJoint,
		"a head goes to a course":                    toACourse,
		"off the tape it is exact":                   offTheTape,
		"nudged it stays on the tape":                nudgedItStays,
		"Esc leaves no trace":                        snappedAndGivenUp,
		"what was measured is kept as a tape reads":  measuredSnaps,
		"lines that lie close leave room in between": closeLines,
	} {
		t.Run(name, func(t *testing.T) { try(t, ctx) })
	}
}

// aim moves a handle that is held so that it lies off millimetres from the joint
// line nearest to where it would be, and gives that line.
func aim(t *testing.T, ctx context.Context, handle, axis string, x, y, far, off float64) (line, to [2]float64) {
	t.Helper()
	at := trial.See[[]float64](t, ctx, fmt.Sprintf(`(() => {
		const h = document.querySelector('#drawing [data-handle="%s"]'), svg = h.ownerSVGElement, wall = h.closest(".wall").dataset;
		const [, side, from] = h.dataset.snaps.split(";").map((s) => s.split(" ")).find(([a]) => a === "%s");
		const px = svg.dataset.paper / svg.dataset.real * 1000 * svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
		const all = ("%[2]s" === "x" ? wall.plumb : wall.level).split(" ").map((m) => Number(m) + (side === "begins" ? Number(wall.joint) : 0) - from);
		const now = Number("%[2]s" === "x" ? h.dataset.x : h.dataset.y), goal = now + %[3]f;
		const line = all.reduce((a, b) => Math.abs(b - goal) < Math.abs(a - goal) ? b : a);
		return [line, (line + %[4]f - now) * px];
	})()`, handle, axis, far, off))
	to = [2]float64{x + at[1], y}
	if axis == "y" {
		to = [2]float64{x, y - at[1]}
	}
	moveTo(t, ctx, to[0], to[1])
	return [2]float64{at[0]}, to
}

const lit = `document.querySelectorAll(".ghost .joint").length`

func toAPlumbJoint(t *testing.T, ctx context.Context) {
	s := trial.New(t)
	openAt(t, ctx, s, "/jobs/1?wall=2")
	before, _ := s.Stored()
	x, y := grasp(t, ctx, "niche shelf left")
	line, to := aim(t, ctx, "niche shelf left", "x", x, y, 60, 6)
	assert.Equal(t, 1, trial.See[int](t, ctx, lit), "the joint line is lit")
	assert.Contains(t, trial.See[string](t, ctx, `document.querySelector(".ghost").textContent`), "on the joint line")
	trial.Shot(t, ctx, "snapped")
	release(t, ctx, to[0], to[1])
	trial.Await(t, ctx, status+` === "Saved"`)
	after, job := s.Stored()
	assert.Equal(t, before.Revision+1, after.Revision, "one drag, one step")
	got, err := length.ParsePrinted(job.Pins.Walls["back"].Marks["niche shelf left"], length.Imperial)
	require.NoError(t, err)
	assert.InDelta(t, line[0], got.Millimetres(), 0.001)
	trial.Steps(t, ctx, chromedp.Click("#undo"))
	trial.Await(t, ctx, `document.getElementById("pins") === null`)
}

func toACourse(t *testing.T, ctx context.Context) {
	s := trial.New(t)
	openAt(t, ctx, s, "/jobs/1?wall=2")
	x, y := grasp(t, ctx, "head")
	line, to := aim(t, ctx, "head", "y", x, y, 70, 5)
	assert.Equal(t, 1, trial.See[int](t, ctx, lit))
	aim(t, ctx, "head", "y", x, y, 70, 30)
	assert.Zero(t, trial.See[int](t, ctx, lit), "in the middle of a tile nothing is")
	moveTo(t, ctx, to[0], to[1])
	assert.Equal(t, 1, trial.See[int](t, ctx, lit))
	release(t, ctx, to[0], to[1])
	trial.Await(t, ctx, status+` === "Saved"`)
	_, job := s.Stored()
	got, err := length.ParsePrinted(job.Pins.Walls["back"].Marks["head"], length.Imperial)
	require.NoError(t, err)
	assert.InDelta(t, line[0], got.Millimetres(), 0.001)
}

// odd is the demo with a tile whose joint lines lie on no mark of a tape.
func odd(t *testing.T) survey.Job {
	t.Helper()
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	job.Tile.Width, job.Tile.Height = "148.7 mm", "73.3 mm"
	return job
}

func offTheTape(t *testing.T, ctx context.Context) {
	document, err := survey.Write(odd(t))
	require.NoError(t, err)
	s := trial.Of(t, document)
	openAt(t, ctx, s, "/jobs/1?wall=2")
	x, y := grasp(t, ctx, "niche shelf bottom")
	line, to := aim(t, ctx, "niche shelf bottom", "y", x, y, 70, -5)
	release(t, ctx, to[0], to[1])
	trial.Await(t, ctx, status+` === "Saved"`)
	_, job := s.Stored()
	text := job.Pins.Walls["back"].Marks["niche shelf bottom"]
	assert.True(t, strings.HasSuffix(text, " mm"), "%q is exact", text)
	plan, err := layout.Now(job)
	require.NoError(t, err)
	got := plan.Walls[1].Start.Placed.Openings[0].Bottom
	assert.InDelta(t, line[0], got.Millimetres(), 0.001)
	assert.Contains(t, trial.See[string](t, ctx, `document.getElementById("pins").textContent`), got.Tape(length.Imperial), "read as a tape shows it")
}

func nudgedItStays(t *testing.T, ctx context.Context) {
	s := trial.New(t)
	openAt(t, ctx, s, "/jobs/1?wall=2")
	x, y := grasp(t, ctx, "niche shelf left")
	line, to := aim(t, ctx, "niche shelf left", "x", x, y, 60, 6)
	release(t, ctx, to[0], to[1])
	trial.Await(t, ctx, status+` === "Saved"`)
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.ArrowLeft))
	trial.Await(t, ctx, status+` === "Saved" && document.querySelector(".ghost") === null`)
	_, job := s.Stored()
	got, err := length.ParsePrinted(job.Pins.Walls["back"].Marks["niche shelf left"], length.Imperial)
	require.NoError(t, err)
	assert.InDelta(t, line[0]-25.4/16, got.Millimetres(), 0.01, "a step of the tape beside the line, not on it")
}

func snappedAndGivenUp(t *testing.T, ctx context.Context) {
	s := trial.New(t)
	openAt(t, ctx, s, "/jobs/1?wall=2")
	before, _ := s.Stored()
	drawn := trial.See[string](t, ctx, paper)
	x, y := grasp(t, ctx, "niche shelf left")
	_, to := aim(t, ctx, "niche shelf left", "x", x, y, 60, 6)
	require.Equal(t, 1, trial.See[int](t, ctx, lit))
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.Escape))
	release(t, ctx, to[0], to[1])
	assert.Equal(t, drawn, trial.See[string](t, ctx, paper))
	after, _ := s.Stored()
	assert.Equal(t, before, after)
}

func measuredSnaps(t *testing.T, ctx context.Context) {
	file := odd(t)
	niche := &file.Walls[1].Openings[0]
	*niche = survey.Opening{Kind: "window", Name: "north", Left: &survey.Mark{At: "20"}, Width: &survey.Mark{At: "14"},
		Bottom: &survey.Mark{At: "4"}, Height: &survey.Measure{Mark: &survey.Mark{At: "12"}}}
	document, err := survey.Write(file)
	require.NoError(t, err)
	s := trial.Of(t, document)
	openAt(t, ctx, s, "/jobs/1?wall=2")
	x, y := grasp(t, ctx, "size window north")
	line, to := aim(t, ctx, "size window north", "x", x, y, 40, 4)
	release(t, ctx, to[0], to[1])
	trial.Await(t, ctx, status+` === "Saved"`)
	_, job := s.Stored()
	got, err := length.Parse(job.Walls[1].Openings[0].Width.At, length.Imperial)
	require.NoError(t, err)
	assert.InDelta(t, line[0], got.Millimetres(), 25.4/128, "the nearest 1/64 in: %s", job.Walls[1].Openings[0].Width.At)
	assert.NotContains(t, job.Walls[1].Openings[0].Width.At, "mm")
}

func closeLines(t *testing.T, ctx context.Context) {
	openAt(t, ctx, trial.OfFile(t, "toy"), "/jobs/1")
	on, err := chromedp.Run(ctx, chromedp.Evaluate[[]float64](`import("/static/snap.js").then(({ snapped }) => {
		const wall = document.createElement("div"), handle = wall.appendChild(document.createElement("div"));
		wall.className = "wall";
		Object.assign(wall.dataset, { plumb: "0 10 20 30", joint: "2" });
		handle.dataset.snaps = "x begins 0";
		return [12, 14, 15, 17, 20, 22, 29, 37].map((at) => snapped(handle, "x", at, 1) ?? -1);
	})`, chromedp.EvalAwaitPromise))
	require.NoError(t, err)
	assert.Equal(t, []float64{12, 12, -1, -1, 22, 22, -1, -1}, on, "a quarter of the way on either side, and none beyond the last")
}

// The joint lines that a wall lists are those of its pieces.
func TestJointLinesAreThoseOfThePieces(t *testing.T) {
	for _, name := range []string{"alcove", "corner-shower", "old-house", "one-wall", "one-wall plumb", "one-wall herringbone"} {
		file, bond, _ := strings.Cut(name, " ")
		job, err := survey.Read(trial.File(t, file+".json"))
		require.NoError(t, err)
		switch bond {
		case "plumb":
			job.Bond.Along = "plumb"
		case "herringbone":
			job.Tile.Width, job.Tile.Height, job.Bond = "7 7/8", "3 7/8", survey.Bond{Kind: "herringbone"}
		}
		document, err := survey.Write(job)
		require.NoError(t, err)
		s := trial.Of(t, document)
		plan, err := layout.Now(job)
		require.NoError(t, err)
		_, page := s.Get("/jobs/1")
		for i, w := range plan.Walls {
			_, part, found := strings.Cut(page, fmt.Sprintf(`id="drawing-wall-%d"`, i))
			require.True(t, found)
			for _, p := range w.Pieces {
				if p.Whole {
					assert.True(t, listed(t, part, "data-plumb", p.Tile.Right), "%s: where %s ends", name, p.ID)
					assert.True(t, listed(t, part, "data-level", p.Tile.Top), "%s: over %s", name, p.ID)
				}
			}
		}
	}
}

func listed(t *testing.T, part, list string, at length.Length) bool {
	t.Helper()
	_, rest, _ := strings.Cut(part, list+`="`)
	texts, _, _ := strings.Cut(rest, `"`)
	for _, text := range strings.Fields(texts) {
		mm, err := strconv.ParseFloat(text, 64)
		require.NoError(t, err)
		if math.Abs(mm-at.Millimetres()) < 0.0005 {
			return true
		}
	}
	return false
}
