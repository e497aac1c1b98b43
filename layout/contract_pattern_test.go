package layout_test

import (
	"encoding/json"
	"math"
	"slices"

	"coursewright/layout/survey"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// inCourses tells whether a job is laid in courses, and not in a pattern.
func inCourses(job survey.Job) bool {
	return survey.BondRule{Kind: survey.BondKind(job.Bond.Kind)}.Coursed()
}

// laidInPattern tells whether a job file is laid in a pattern, or a band of it.
func laidInPattern(data []byte) bool {
	job, err := survey.Read(data)
	return err == nil && (!inCourses(job) || slices.ContainsFunc(job.Bands, func(b survey.Band) bool { return !inCourses(survey.Job{Bond: b.Bond}) }))
}

// laidPlan is what the plan file of a job in a pattern says beside others.
type laidPlan struct {
	Merit struct{ Unworkable, Slivers int }
	Walls []struct {
		Region shape
		Pieces []struct {
			ID                        string
			Whole, Sliver, Unworkable bool
			Least, Share              float64
			Face                      shape
			Outline                   [][2]float64
		}
		Map *struct {
			Columns int
			Shares  []float64
		}
	}
}

// checkLaid reads a plan in a pattern back from its file alone, with a general geometry
// library: every face is the part of its tile on the wall, no two overlap, and the counts
// of the merit are those of the pieces.
func checkLaid(t require.TestingT, file []byte) {
	var p laidPlan
	require.NoError(t, json.Unmarshal(file, &p))
	unworkable, slivers := 0, 0
	for _, w := range p.Walls {
		region := ringsGeometry(w.Region)
		require.NotNil(t, w.Map)
		require.Zero(t, len(w.Map.Shares)%w.Map.Columns)
		area := 0.0
		for _, x := range w.Pieces {
			require.NotEmpty(t, x.Outline, x.ID)
			tile := ringsGeometry(shape{x.Outline})
			face := ringsGeometry(x.Face)
			on := must(geom.Intersection(tile, region))
			area += face.Area()
			assert.LessOrEqual(t, must(geom.Difference(face, on)).Area(), 0.6, "%s stands outside its tile or the wall", x.ID)
			assert.Equal(t, x.Whole, math.Abs(face.Area()-tile.Area()) < 0.01, x.ID)
			assert.LessOrEqual(t, x.Share, 1.0, x.ID)
			if x.Unworkable {
				unworkable++
			}
			if x.Sliver {
				slivers++
			}
		}
		assert.Less(t, area, region.Area(), "pieces leave joints")
	}
	assert.Equal(t, [2]int{unworkable, slivers}, [2]int{p.Merit.Unworkable, p.Merit.Slivers}, "all is in sight in these rooms")
}

// ringsGeometry is a region with holes for the library: outer rings run to the left, and
// the holes, which run to the right, are taken out of them.
func ringsGeometry(s shape) (all geom.Geometry) {
	for _, holes := range []bool{false, true} {
		for _, ring := range s {
			points := make([]xy, len(ring))
			twice := 0.0
			for k, c := range ring {
				d := ring[(k+1)%len(ring)]
				points[k] = xy{c[0], c[1]}
				twice += c[0]*d[1] - c[1]*d[0]
			}
			switch g := polygon(points); {
			case twice < 0 != holes:
			case holes:
				all = must(geom.Difference(all, g))
			default:
				all = must(geom.Union(all, g))
			}
		}
	}
	return all
}
