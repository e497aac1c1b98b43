package drawing

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/web/drawing/sample"
)

func TestAnOpeningIsNotCalledByItsKindTwice(t *testing.T) {
	for _, c := range []struct{ kind, name, want string }{
		{"niche", "shelf", "niche shelf"}, {"niche", "niche", "niche"}, {"pipe", "pipe 2", "pipe 2"}, {"pipe", "pipeline", "pipe pipeline"},
	} {
		assert.Equal(t, c.want, OpeningName(c.kind, c.name))
	}
}

// A niche is as wide on the drawing as in the answers and on the sheets: 12 7/32 reads 12 1/4 everywhere,
// while a piece of that size is cut to 12 3/16.
func TestAnOpeningIsToldToTheNearestMark(t *testing.T) {
	p := sample.Plan()
	p.Room.Units = length.Imperial
	b := newBoard(p, wrapTexts)
	l := 12*length.Inch + 7*length.Inch/32
	assert.Equal(t, "12 1/4", b.plain(l))
	assert.Equal(t, "12 3/16", b.bare(l))
	for i, o := range p.Walls[1].Found.Openings {
		if e := &p.Walls[1].Start.Placed.Openings[i]; o.Kind == survey.Niche {
			e.Right, e.Top = e.Left+l, e.Bottom+l
		}
	}
	var said []string
	for _, e := range Elevation(p, 1, Options{}).Elements {
		if l, is := e.(Label); is {
			said = append(said, l.Text)
		}
	}
	assert.Contains(t, said, "× 12 1/4")
}

// The name of a pipe can be read while the hand is on its handle.
func TestAHandleCoversNoNameOfAPipe(t *testing.T) {
	scene := Wrap(sample.Plan(), Options{Handles: true})
	pipes := 0
	for _, h := range scene.Handles {
		for _, e := range scene.Elements {
			l, is := e.(Label)
			if !is || l.Kind != Hole || l.Wall != h.Wall || h.Axis != "xy" {
				continue
			}
			pipes++
			grip := box{Point{h.At.X - handleReach, h.At.Y - handleReach}, Point{h.At.X + handleReach, h.At.Y + handleReach}}
			assert.False(t, l.box().meets(grip), "%q under its handle", l.Text)
		}
	}
	assert.NotZero(t, pipes)
}

// shower is the corner shower that ships, with its second wall changed.
func shower(t *testing.T, change func(*survey.Wall)) layout.Plan {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "jobs", "corner-shower.json"))
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	change(&job.Walls[1])
	plan, err := layout.Now(job)
	require.NoError(t, err)
	return plan
}

// A strip stands under the ring of the valve in it: it was once drawn over that, and its joints filled the hole.
func TestAStripCoversNoPipe(t *testing.T) {
	plan := shower(t, func(w *survey.Wall) {
		w.Strips = []survey.Strip{{Name: "run", Tile: survey.Tile{Width: "48", Height: "48"}, Columns: 4, Middle: survey.Mark{At: "470"}}}
	})
	last, rings := 0, []int{}
	for i, e := range Elevation(plan, 1, Options{}).Elements {
		switch e := e.(type) {
		case Disc:
			if e.Kind == Hole {
				rings = append(rings, i)
			}
		case Tiles:
			last = i
		}
	}
	assert.Len(t, rings, 2)
	assert.Greater(t, rings[0], last, "a ring under tile")
}

// The name of a pipe covers no other pipe: hot and cold stand beside each other.
func TestTheNameOfAPipeCoversNoOther(t *testing.T) {
	plan := shower(t, func(w *survey.Wall) {
		w.Openings = []survey.Opening{{Kind: "pipe", Name: "hot", At: "400", Height: &survey.Measure{Plain: "-400"}, Diameter: "22"},
			{Kind: "pipe", Name: "cold", At: "470", Height: &survey.Measure{Plain: "-400"}, Diameter: "22"}}
	})
	for _, opt := range []Options{{}, {Sheet: true}} {
		scene := Elevation(plan, 1, opt)
		names := 0
		for _, e := range scene.Elements {
			l, is := e.(Label)
			if !is || l.Kind != Hole {
				continue
			}
			names++
			for _, e := range scene.Elements {
				if d, is := e.(Disc); is && d.Kind == Hole {
					assert.False(t, l.box().meets(box{d.Centre, d.Centre}.grown(d.Radius)), "%s over a ring", l.Text)
				}
			}
		}
		assert.Equal(t, 2, names)
	}
}
