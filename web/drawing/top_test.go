package drawing

import (
	"fmt"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/shapes"
)

// benched is the shower with a bench and a curb that ships.
func benched(t *testing.T, change func(*survey.Job)) layout.Plan {
	t.Helper()
	file, err := os.ReadFile("../../testdata/jobs/bench.json")
	require.NoError(t, err)
	job, err := survey.Read(file)
	require.NoError(t, err)
	if change != nil {
		change(&job)
	}
	p, err := layout.Now(job)
	require.NoError(t, err)
	return p
}

// No text of a top lies on another or off the paper, on screens of any width and on
// paper, whatever its depth and edge; a wall without one gives nothing.
func TestATopKeepsItsTextsApart(t *testing.T) {
	for seed := range uint64(10) {
		r := rand.New(rand.NewPCG(seed, 11))
		p := benched(t, func(job *survey.Job) {
			n := func(low, high int) string { return fmt.Sprintf("%d/16", low*16+r.IntN((high-low)*16)) }
			job.Trims = append(job.Trims, survey.TrimTile{Name: "nose", Kind: "bullnose", Width: "2", Length: "6"})
			for i := 3; i < 5; i++ {
				top := job.Walls[i].Top
				top.Depth, top.Trim, top.Corner = n(5, 24), "", []string{"", "mitre", "profile", "bullnose"}[r.IntN(4)]
				switch {
				case top.Corner == "profile":
					top.Trim = "bar"
				case top.Corner == "bullnose" && r.IntN(2) == 0:
					top.Trim = "nose"
				}
				if r.IntN(3) == 0 {
					top.Right = n(5, 24)
				}
				if r.IntN(3) == 0 {
					job.Walls[i].Right = survey.End{Stops: &survey.Mark{At: n(20, 36)}}
				}
			}
		})
		for _, wall := range []int{3, 4} {
			for _, wide := range []Micron{0, 340 * px, 700 * px, 1900 * px} {
				keepApart(t, fmt.Sprintf("seed %d, wall %d, %d wide", seed, wall, wide), FoldTop(p, wall, Options{Wide: wide}), wallTexts.least)
			}
			for _, scale := range []Scale{{1, 8}, {1, 12}, {1, 16}} {
				keepApart(t, fmt.Sprintf("seed %d, wall %d, on paper", seed, wall), FoldTop(p, wall, Options{Sheet: true, Scale: scale}), sheetTexts.least)
			}
			assert.Contains(t, FoldTop(p, wall, Options{}).Describe, string(p.Walls[wall].Top.Found.Kind))
		}
		assert.Empty(t, FoldTop(p, 0, Options{}).Elements)
		assert.Empty(t, FoldTop(p, 9, Options{}).Elements)
	}
}

// A level line far over a low wall is no line on its sheet, and no tick of the rail leaves it.
func TestALowWallKeepsTheLevelLineOffItsSheet(t *testing.T) {
	p := benched(t, nil)
	s := Elevation(p, 4, Options{Sheet: true, Scale: Scale{Paper: 1, Real: 8}})
	for _, e := range s.Elements {
		if path, is := e.(Path); is {
			for _, ring := range path.Rings {
				for _, at := range ring {
					assert.GreaterOrEqual(t, at.Y, Micron(0), "%v", path.Tag)
				}
			}
		}
	}
	assert.Contains(t, topText(p.Walls[3]), "seat B-T on it: mitre")
	assert.Empty(t, topText(p.Walls[0]))
}

// On a wall over a seat course line and start hang where its tile is, not at the floor, on
// a line that pinned there moves no tile; on the other walls they hang at the course line.
func TestHandlesHangOnTheTileOverASeat(t *testing.T) {
	p := benched(t, nil)
	high := p.Room.Tile.Height + p.Room.Joint
	for i, w := range p.Walls {
		box := w.Shape.Region.Bounds()
		for _, h := range Elevation(p, i, Options{Handles: true}).Handles {
			if h.ID != "start" && h.ID != "course" {
				continue
			}
			assert.True(t, h.Y > box.Bottom-high && h.Y < box.Top, "%s of %s at %v", h.ID, w.Found.Name, h.Y)
			if w.Found.Name != "far end" && w.Found.Name != "right" { // which has the seat at its left end
				assert.Equal(t, p.Setout.Line, h.Y, w.Found.Name)
				continue
			}
			again := benched(t, func(job *survey.Job) {
				job.Pins.Course = survey.CoursePin{Line: h.Y.MillimetreText() + " mm"}
			})
			for k := range p.Walls {
				require.Len(t, again.Walls[k].Pieces, len(p.Walls[k].Pieces))
				for n, q := range p.Walls[k].Pieces {
					assert.Equal(t, q.Face, again.Walls[k].Pieces[n].Face, q.ID)
				}
			}
		}
	}
}

// On the front of a bench that ends under the course line they hang on its tile too, and the line on none where no
// course of it stands as those at the line do.
func TestHandlesHangOnABenchUnderTheLine(t *testing.T) {
	for tile, held := range map[string]bool{"3 15/16": true, "23 5/8": false} {
		p := benched(t, func(job *survey.Job) {
			job.Tile.Height = tile
			job.Pins.Course = survey.CoursePin{Line: "8 3/4"}
		})
		for i, w := range p.Walls {
			box, course := w.Shape.Region.Bounds(), false
			for _, h := range Elevation(p, i, Options{Handles: true}).Handles {
				course = course || h.ID == "course"
				if h.ID == "start" || h.ID == "course" {
					assert.True(t, h.ID == "start" || h.Y <= box.Top, "%s of %s at %v", h.ID, w.Found.Name, h.Y)
				}
			}
			if w.Found.Name == "bench" {
				assert.Equal(t, held, course, "tile %s high", tile)
			}
		}
	}
}

// The seat of a corner bench keeps its texts apart as well, and says how long the upper
// and the lower edge of a tile are that is cut at an angle: by hand, in a corner of 45° at
// both ends the two differ by the height of the tile.
func TestASeatInACornerSaysBothEdges(t *testing.T) {
	for seed := range uint64(8) {
		r := rand.New(rand.NewPCG(seed, 12))
		job, err := shapes.New("corner bench", []string{"in", "mm"}[seed%2], "bench")
		require.NoError(t, err)
		top := job.Walls[3].Top
		if seed > 1 {
			top.Corner = []string{"", "mitre", "bullnose"}[r.IntN(3)]
			job.Tile.Width, job.Tile.Height = fmt.Sprintf("%d mm", 60+r.IntN(300)), fmt.Sprintf("%d mm", 60+r.IntN(150))
		}
		p, err := layout.Now(job)
		require.NoError(t, err)
		for _, wide := range []Micron{0, 340 * px, 700 * px, 1900 * px} {
			keepApart(t, fmt.Sprintf("seed %d, %d wide", seed, wide), FoldTop(p, 3, Options{Wide: wide}), wallTexts.least)
		}
		for _, scale := range []Scale{{1, 8}, {1, 12}, {1, 16}} {
			keepApart(t, fmt.Sprintf("seed %d, on paper", seed), FoldTop(p, 3, Options{Sheet: true, Scale: scale}), sheetTexts.least)
		}
		if seed > 0 {
			continue
		}
		// 2 15/16 + 3 15/16 = 6 7/8, on the first row at both ends.
		texts := map[string]int{}
		for _, e := range FoldTop(p, 3, Options{Wide: 1900 * px}).Elements {
			if l, is := e.(Label); is && l.Kind == Size.on(Ramp1) {
				texts[l.Text]++
			}
		}
		assert.Equal(t, [2]int{2, 2}, [2]int{texts["2 15/16"], texts["6 7/8"]})
		assert.Contains(t, FoldTop(p, 3, Options{}).Describe, "seat 30 5/16 × 15 1/8, falls 11/32\" to the front")
	}
}

// What a higher stretch of base is called and how high it stands keeps between its ends,
// because tile stands beside it: on screens of any width, and on paper.
func TestASeatIsNamedUnderItself(t *testing.T) {
	for _, key := range []string{"bench", "corner bench"} {
		job, err := shapes.New(key, "in", "bench")
		require.NoError(t, err)
		p, err := layout.Now(job)
		require.NoError(t, err)
		for _, o := range []Options{{}, {Wide: 600 * px}, {Wide: 1000 * px}, {Wide: 1900 * px}} {
			s := Wrap(p, o)
			for _, e := range s.Elements {
				l, is := e.(Label)
				if !is || l.Kind != Dim || !strings.HasPrefix(l.Text, "seat ") || l.Wall < 0 {
					continue
				}
				for _, q := range s.Elements {
					if path, is := q.(Path); is && path.Kind == Outline && path.Wall == l.Wall {
						for _, ring := range path.Rings {
							for i, a := range ring {
								z := ring[(i+1)%len(ring)]
								if a.X == z.X && min(a.Y, z.Y) < l.At.Y && l.At.Y < max(a.Y, z.Y) {
									assert.False(t, l.box().from.X < a.X && a.X < l.box().to.X, "%s at %d: %s lies over the tile beside it", key, o.Wide, l.Text)
								}
							}
						}
					}
				}
			}
		}
	}
}
