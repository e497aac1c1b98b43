package layout_test

import (
	"context"
	"encoding/json"
	"os"
	"testing"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/stages"
	"coursewright/layout/survey"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// bandedPlan is the plan of the demo with other tile, as its file says it.
type bandedPlan struct {
	Course struct{ Line, Pitch float64 }
	Bands  []bandedAt
	Walls  []struct {
		Name   string
		Region [][][2]float64
		Pieces []bandedPiece
	}
	Takeoff []struct {
		Item       string
		Net, Boxes int
		Price      float64
	}
	Proven bool
}

type bandedAt struct {
	Name        string
	Bottom, Top float64
}

type bandedPiece struct {
	ID, Band string
	Course   int
	Tile     [4]float64
	Face     [][][2]float64
}

func demoWith(t *testing.T, bands ...survey.Band) bandedPlan {
	t.Helper()
	data, err := os.ReadFile("../static/demo.json")
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	job.Bands = bands
	p, err := layout.Now(job)
	require.NoError(t, err)
	file, err := p.File()
	require.NoError(t, err)
	var out bandedPlan
	require.NoError(t, json.Unmarshal(file, &out))
	return out
}

func mosaic(bottom survey.Mark) survey.Band {
	return survey.Band{Name: "slate mosaic", Courses: 2, Bottom: bottom,
		Tile: survey.Tile{Width: "1 7/8", Height: "1 7/8", Thickness: "1/4", Box: &survey.Box{Count: 60, Price: "12.50"}}}
}

// The band stands at one height on every wall, whole courses of the field under and
// over it at a joint's distance; numbers run through; each tile is bought by itself.
func TestABandRunsRoundTheWalls(t *testing.T) {
	p := demoWith(t, mosaic(survey.Mark{From: "16", To: "22"}))
	require.Len(t, p.Bands, 1)
	b, joint := p.Bands[0], 25.4/8
	assert.InDelta(t, 2*1.875*25.4+joint, b.Top-b.Bottom, 0.002, "two courses and the joint between them")
	whole := (b.Bottom - p.Course.Line) / p.Course.Pitch
	assert.InDelta(t, whole, float64(int(whole+0.5)), 1e-6, "its bottom stands on a joint line")
	of := 0
	for _, w := range p.Walls {
		under, over := false, false
		heights := map[int]float64{}
		for _, q := range w.Pieces {
			if y, seen := heights[q.Course]; seen {
				require.InDelta(t, y, q.Tile[1], 0.002, "course %d of %s", q.Course, w.Name)
			}
			heights[q.Course] = q.Tile[1]
			under = under || at(q.Tile[3], b.Bottom-joint)
			over = over || at(q.Tile[1], b.Top+joint)
			if q.Band != "" {
				of++
				require.True(t, q.Tile[1] >= b.Bottom-0.002 && q.Tile[3] <= b.Top+0.002, q.ID)
			}
		}
		assert.True(t, under && over, "%s has courses right under and over the band", w.Name)
		for c := w.Pieces[0].Course + 1; c <= w.Pieces[len(w.Pieces)-1].Course; c++ {
			require.Greater(t, heights[c], heights[c-1], "course %d of %s", c, w.Name)
		}
	}
	require.NotZero(t, of)
	for _, l := range p.Takeoff {
		if l.Item == "tile for the slate mosaic" {
			assert.LessOrEqual(t, l.Net, of)
			assert.InDelta(t, float64(l.Boxes)*12.5, l.Price, 0.001)
			return
		}
	}
	t.Fatal("the band's tile is not bought")
}

func at(a, b float64) bool { return a-b < 0.002 && b-a < 0.002 }

// Pieces of both tiles and the joints between them make up the wall: areas and
// overlaps by a general geometry library (simplefeatures). What is left is joints,
// no more than their share of the smaller module.
func TestBandsConserveTheWall(t *testing.T) {
	for name, bands := range map[string][]survey.Band{
		"a band":    {mosaic(survey.Mark{From: "16", To: "22"})},
		"measured":  {mosaic(survey.Mark{At: "20"})},
		"through":   {mosaic(survey.Mark{From: "4", To: "10"})},
		"two tiles": {{Name: "cloud", ToHead: true, Bottom: survey.Mark{From: "4", To: "10"}, Tile: survey.Tile{Width: "7 7/8", Height: "7 7/8"}}},
	} {
		p := demoWith(t, bands...)
		for _, w := range p.Walls {
			region := geometry(t, w.Region)
			pieces := 0.0
			for i, q := range w.Pieces {
				face := geometry(t, q.Face)
				pieces += face.Area()
				outside, err := geom.Difference(face, region)
				require.NoError(t, err)
				require.Less(t, outside.Area(), 0.5, "%s: %s leaves the wall", name, q.ID)
				for _, r := range w.Pieces[:i] {
					require.False(t, q.Tile[0] < r.Tile[2]-0.002 && r.Tile[0] < q.Tile[2]-0.002 && q.Tile[1] < r.Tile[3]-0.002 && r.Tile[1] < q.Tile[3]-0.002 &&
						q.Tile != r.Tile, "%s: %s and %s", name, q.ID, r.ID)
				}
			}
			left := 1 - pieces/region.Area()
			assert.True(t, left > 0.02 && left < 0.09, "%s: %.3f of wall %s is joints", name, left, w.Name)
		}
	}
}

// geometry makes a region of rings in millimetres: outer rings less their holes.
func geometry(t require.TestingT, rings [][][2]float64) geom.Geometry {
	var out, holes geom.Geometry
	for _, ring := range rings {
		var at []float64
		turn := 0.0
		for i, c := range ring {
			d := ring[(i+1)%len(ring)]
			turn += c[0]*d[1] - d[0]*c[1]
			at = append(at, c[0], c[1])
		}
		at = append(at, ring[0][0], ring[0][1])
		one := geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(at, geom.DimXY))}).AsGeometry()
		var err error
		if turn >= 0 {
			out, err = geom.Union(out, one)
		} else {
			holes, err = geom.Union(holes, one)
		}
		require.NoError(t, err)
	}
	out, err := geom.Difference(out, holes)
	require.NoError(t, err)
	return out
}

// What a band costs beside the same room without: the aim is a third more at most. Free, it
// stands beside the niche or over it; clear, it is free where nothing else is.
func BenchmarkBand(b *testing.B) {
	data, err := os.ReadFile("../static/demo.json")
	require.NoError(b, err)
	job, err := survey.Read(data)
	require.NoError(b, err)
	for _, c := range []struct {
		name  string
		bands []survey.Band
	}{{"without", nil}, {"free", []survey.Band{mosaic(survey.Mark{From: "16", To: "22"})}},
		{"clear", []survey.Band{mosaic(survey.Mark{From: "-22", To: "-18"})}}, {"measured", []survey.Band{mosaic(survey.Mark{At: "20"})}}} {
		job.Bands = c.bands
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				if _, err := layout.Now(job); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// What would help is worked out for a room with a band too, and a set-out that is
// pinned as printed comes out the same.
func TestABandedPlanCanBeHelpedAndPinned(t *testing.T) {
	data, err := os.ReadFile("../static/demo.json")
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	job.Bands = []survey.Band{mosaic(survey.Mark{From: "16", To: "22"})}
	p, err := layout.Now(job)
	require.NoError(t, err)
	_, err = layout.Remedies(context.Background(), job, p)
	require.NoError(t, err)
	job.Pins.Course.Line = p.Setout.Line.MillimetreText() + " mm"
	job.Bands[0].Bottom = survey.Mark{At: p.Setout.Bands[0].Bottom.MillimetreText() + " mm"}
	job.Pins.Walls = map[string]survey.WallPin{}
	for _, w := range p.Walls {
		job.Pins.Walls[w.Found.Name] = survey.WallPin{Edge: w.Start.Edge.MillimetreText() + " mm"}
	}
	again, err := layout.Now(job)
	require.NoError(t, err)
	for i, w := range p.Walls {
		require.Len(t, again.Walls[i].Pieces, len(w.Pieces), w.Found.Name)
		for k, q := range w.Pieces {
			assert.Equal(t, q.Tile, again.Walls[i].Pieces[k].Tile, q.ID)
		}
	}
}

// In the order of setting every piece comes once, each over what it stands on.
func TestABandIsSetBetweenItsCourses(t *testing.T) {
	data, err := os.ReadFile("../static/demo.json")
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	job.Bands = []survey.Band{mosaic(survey.Mark{From: "16", To: "22"})}
	p, err := layout.Now(job)
	require.NoError(t, err)
	schedule := cuts.Of(cuts.Input{Room: p.Room, Walls: p.Walls}, cuts.For(p.Room))
	seen, high := map[string]bool{}, map[int]int{}
	for _, s := range stages.Order(stages.Input{Room: p.Room, Walls: p.Walls, Cuts: schedule}) {
		for _, q := range s.Pieces {
			require.False(t, seen[q.ID], q.ID)
			seen[q.ID] = true
			if s.Part == stages.Upwards {
				require.GreaterOrEqual(t, q.Course, high[s.Wall], "%s after course %d", q.ID, high[s.Wall])
				high[s.Wall] = q.Course
			}
		}
	}
	n := 0
	for _, w := range p.Walls {
		n += len(w.Pieces)
	}
	assert.Len(t, seen, n)
}

// A free band ends at the edge of a measured window rather than run into its side by a strip that
// nobody can cut. Found on a wainscot with a pencil liner round four walls: 1/8 in of it stood under
// the window's edge.
func TestAFreeBandEndsAtAWindow(t *testing.T) {
	level := []survey.Drop{{At: "0", Drop: "36 3/8"}, {At: "60", Drop: "36 1/4"}}
	job := survey.Job{Format: survey.Format, Title: "wainscot", Units: "in", Tile: survey.Tile{Width: "5 7/8", Height: "5 7/8", Thickness: "1/4"},
		Joint: survey.Measure{Plain: "1/8"}, Bond: survey.Bond{Kind: "stack"},
		Bands: []survey.Band{{Name: "pencil", Courses: 1, Bottom: survey.Mark{From: "-6", To: "4"}, Tile: survey.Tile{Width: "11 7/8", Height: "5/8"}}},
		Walls: []survey.Wall{{Name: "window side", Width: "60", Left: survey.End{Meets: "corner", Gap: "1/8"}, Right: survey.End{Meets: "corner", Gap: "1/8"},
			Base: []survey.Segment{{Meets: "floor", Gap: "1/8", Readings: level}}, Head: survey.Head{Stops: &survey.Mark{At: "11 1/8"}},
			Openings: []survey.Opening{{Kind: "window", Name: "light", Left: &survey.Mark{At: "20"}, Width: &survey.Mark{At: "20"},
				Bottom: &survey.Mark{At: "0"}, Height: &survey.Measure{Mark: &survey.Mark{At: "30"}}}}}}}
	p, err := layout.Now(job)
	require.NoError(t, err)
	assert.Zero(t, p.Setout.Merit.Unworkable)
	assert.Zero(t, p.Setout.Bands[0].Top, "it ends at the window's lower edge")
}

// With another tile above a line that is free the course line is struck where the walls begin, and not
// at that line over one's head, whose height was looked for.
func TestTheCourseLineIsStruckAboveTheBase(t *testing.T) {
	above := survey.Band{Name: "above", ToHead: true, Tile: survey.Tile{Width: "8", Height: "8"}, Bottom: survey.Mark{From: "8", To: "24"}, Near: "16"}
	plan := demoWith(t, above)
	lowest := 0.0
	for _, ring := range plan.Walls[1].Region {
		for _, p := range ring {
			lowest = min(lowest, p[1])
		}
	}
	require.Greater(t, plan.Bands[0].Bottom, 200.0)
	assert.GreaterOrEqual(t, plan.Course.Line, lowest)
	assert.Less(t, plan.Course.Line, lowest+plan.Course.Pitch)
}
