package sheet

import (
	"cmp"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
)

// The widths of lines on paper, of the series of ISO 128: outline, openings and cut edges, tiles, dimensions.
var lineWidths = map[drawing.Kind]drawing.Micron{
	drawing.Outline: 700, drawing.Niche: 500, drawing.Cut: 500, drawing.Dim: 180,
	drawing.CutHalf: 250, drawing.CutThird: 250, drawing.CutFifth: 250, drawing.CutLeast: 250,
}

var dimensioned = []string{"jobs/alcove", "jobs/old-house", "jobs/bench", "jobs/corner-shower", "cases/g-300x600", "cases/c2-4x16-fixed"}

func TestLinesOnPaperAreAsWideAsTheirMeaning(t *testing.T) {
	width := regexp.MustCompile(`(?m)([\d.]+) w$`)
	for _, name := range dimensioned {
		plan, o := roomOf(t, name), Options{Kinds: []Kind{Elevations}}
		seen := map[drawing.Kind]int{}
		for i, path := range wallPaths(newBook(plan, o)) {
			if want, known := lineWidths[path.Kind]; known && path.Line != drawing.None && !bolder(path) && !(path.Kind == drawing.Niche && path.Fill == drawing.None) {
				seen[path.Kind]++
				assert.Equal(t, want, path.Width, "%s: %s, line %d", name, path.Kind, i)
			}
		}
		for _, k := range []drawing.Kind{drawing.Outline, drawing.Cut, drawing.Dim} {
			assert.NotZero(t, seen[k], "%s: %s", name, k)
		}
		written := map[drawing.Micron]bool{}
		for _, m := range width.FindAllStringSubmatch(stream(t, plan, o), -1) {
			points, err := strconv.ParseFloat(m[1], 64)
			require.NoError(t, err)
			written[drawing.Micron(math.Round(points*2540/72))*10] = true
		}
		for _, w := range lineWidths {
			assert.True(t, written[w], "%s: no line of %d µm in the PDF: %v", name, w, written)
		}
	}
}

// bolder tells whether a line is meant to be heavier than others of its kind: the mark of a station at 45°, and the front of a
// top and of a niche that is folded out.
func bolder(p drawing.Path) bool {
	r := p.Rings[0]
	mark := len(r) == 2 && r[0].X != r[1].X && max(r[1].X-r[0].X, r[0].X-r[1].X) == max(r[1].Y-r[0].Y, r[0].Y-r[1].Y)
	return p.Kind == drawing.Dim && mark || p.Kind == drawing.Outline && p.Width == 1200
}

// Each figure of the running dimensions of a wall is what the stretches before it come to, as they are drawn, and the
// last is the wall's measured width; to half of what a tape shows. The start is measured along the line struck, from a corner that
// may lean: there it is as far off as that leans.
func TestRunningDimensionsAreSumsOfTheirStretches(t *testing.T) {
	for _, name := range dimensioned {
		plan := roomOf(t, name)
		b := newBook(plan, Options{Kinds: []Kind{Elevations}})
		walls := 0
		for _, l := range b.leaves {
			for _, p := range l.parts {
				walls += runs(t, name, plan, p.scene)
			}
		}
		assert.Equal(t, len(plan.Walls), walls, name)
	}
}

// runs checks the level string of a drawing, and tells how many it has.
func runs(t *testing.T, name string, plan layout.Plan, s drawing.Scene) int {
	var whole drawing.Path
	var leaders []drawing.Path
	for _, e := range s.Elements {
		p, is := e.(drawing.Path)
		if !is || p.Kind != drawing.Dim || p.Wall < 0 || len(p.Rings) != 1 {
			continue
		}
		switch r := p.Rings[0]; {
		case len(r) == 2 && r[0].Y == r[1].Y && (whole.Rings == nil || r[1].X-r[0].X > whole.Rings[0][1].X-whole.Rings[0][0].X):
			whole = p
		case len(r) == 3 && r[0].X == r[1].X && r[2].Y > r[1].Y && r[1].Y > r[0].Y:
			leaders = append(leaders, p)
		}
	}
	if whole.Rings == nil {
		return 0
	}
	y, from, wall := whole.Rings[0][0].Y, whole.Rings[0][0].X, plan.Walls[whole.Wall].Found
	leaders = slices.DeleteFunc(leaders, func(p drawing.Path) bool { return p.Rings[0][0].Y < y || p.Rings[0][0].Y > y+3*drawing.Millimetre })
	slices.SortFunc(leaders, func(a, c drawing.Path) int { return cmp.Compare(a.Rings[0][0].X, c.Rings[0][0].X) })
	require.GreaterOrEqual(t, len(leaders), 3, "%s, %s", name, wall.Name)
	half := plan.Room.Units.Step()/2 + length.Millimetre/10
	var last length.Length
	for i, p := range leaders {
		said, start := figureUnder(t, s, p.Rings[0][2], plan.Room.Units)
		drawn, want := p.Rings[0][0].X-from, s.Scale.On(said)
		off := half
		if start {
			off += leans(wall.Left)
		}
		assert.LessOrEqual(t, max(drawn-want, want-drawn), s.Scale.On(off)+2, "%s, %s: figure %d, %s, is drawn %d µm from the first", name, wall.Name, i, said.Tape(plan.Room.Units), drawn)
		last = said
	}
	assert.LessOrEqual(t, (last - wall.Width).Abs(), half, "%s, %s: the last figure", name, wall.Name)
	return 1
}

// leans is how far a corner leans at most.
func leans(e survey.EndFound) (most length.Length) {
	for _, r := range e.Lean {
		most = max(most, r.Value.Abs())
	}
	return most
}

// figureUnder is the figure that stands under the end of a leader, and tells whether it is that of the start.
func figureUnder(t *testing.T, s drawing.Scene, end drawing.Point, units length.System) (l length.Length, start bool) {
	t.Helper()
	var nearest drawing.Label
	far := drawing.Micron(1 << 40)
	for _, e := range s.Elements {
		x, is := e.(drawing.Label)
		if away := max(x.At.X-end.X, end.X-x.At.X) + x.At.Y - end.Y; is && x.Bold && x.Kind == drawing.Dim && x.At.Y > end.Y && away < far {
			nearest, far = x, away
		}
	}
	l, err := length.Parse(strings.ReplaceAll(nearest.Text, "−", "-"), units)
	require.NoError(t, err, nearest.Text)
	for _, e := range s.Elements {
		if x, is := e.(drawing.Label); is && strings.HasPrefix(x.Text, "START") && max(x.At.X-nearest.At.X, nearest.At.X-x.At.X) < drawing.Millimetre {
			start = true
		}
	}
	return l, start
}

// wallPaths are the lines of all drawings of a book.
func wallPaths(b *book) (all []drawing.Path) {
	for _, l := range b.leaves {
		for _, p := range l.parts {
			for _, e := range p.scene.Elements {
				if path, is := e.(drawing.Path); is {
					all = append(all, path)
				}
			}
		}
	}
	return all
}
