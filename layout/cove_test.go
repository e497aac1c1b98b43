package layout_test

import (
	"encoding/json"
	"testing"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// coved is the back wall of the demo with a cove of 4 by 6 in along the tub.
func coved(t *testing.T) survey.Job {
	job := demo(t)
	job.Walls = job.Walls[1:2]
	job.SetOrder = nil
	job.Trims = []survey.TrimTile{{Name: "foot", Kind: string(survey.Cove), Width: "4", Length: "6", Box: &survey.Box{Count: 20, Price: "30"}}}
	job.Walls[0].Base[0].Trim = "foot"
	return job
}

// By hand: from corner to corner there are 59 7/8 in less a gap of 1/8 in at either end,
// 59 5/8 in: eight coves of 6 in and nine joints of 1/8 in leave 5 1/4 in at both ends. The
// field begins 1/8 in of gap, 4 in of cove and 1/8 in of joint over the tub.
func TestACoveStandsAlongTheBase(t *testing.T) {
	p, err := layout.Now(coved(t))
	require.NoError(t, err)
	w := p.Walls[0]
	require.Len(t, w.Trim, 10)
	for i, c := range w.Trim {
		assert.Equal(t, survey.BaseSegment, c.Edge)
		long := 6 * length.Inch
		if i == 0 || i == 9 {
			long = 21 * length.Inch / 4
		}
		assert.Equal(t, long, c.Long, c.ID)
		assert.Equal(t, long == 6*length.Inch, c.Whole, c.ID)
	}
	at := survey.At(w.Found.Base[0].Readings, w.Found.Width)
	for _, q := range w.Pieces {
		require.GreaterOrEqual(t, q.Face.Bounds().Bottom, at+17*length.Inch/4-1, q.ID)
	}
	file, err := p.File()
	require.NoError(t, err)
	var out struct {
		Walls   []struct{ Trim []struct{ Edge string } }
		Merit   struct{ Bare float64 }
		Takeoff []struct {
			Item       string
			Net, Count int
		}
	}
	require.NoError(t, json.Unmarshal(file, &out))
	assert.Equal(t, "base", out.Walls[0].Trim[0].Edge)
	assert.Zero(t, out.Merit.Bare)
	bought := map[string]int{}
	for _, l := range out.Takeoff {
		bought[l.Item] = l.Net
	}
	assert.Equal(t, 10, bought["cove foot"])
}

// The cove and the joint over it fill what the field leaves over the gap: areas by a
// general geometry library (simplefeatures), along a base that is out of level.
func TestACoveFillsWhatTheFieldLeaves(t *testing.T) {
	p, err := layout.Now(coved(t))
	require.NoError(t, err)
	w := p.Walls[0]
	area := func(r plane.Region) float64 {
		var all [][][2]float64
		for _, ring := range r {
			var one [][2]float64
			for _, c := range ring {
				one = append(one, [2]float64{c.X.Millimetres(), c.Y.Millimetres()})
			}
			all = append(all, one)
		}
		return geometry(t, all).Area()
	}
	sum := 0.0
	for _, c := range w.Trim {
		sum += c.Face.Bounds().Width().Millimetres() * 101.6
		require.Less(t, c.Face.Bounds().Top, w.Found.Base[0].Readings[0].Value+17*length.Inch/4, c.ID)
	}
	left := area(w.Found.Bare().Shape(p.Room.Units, w.Start.Placed).Region) - area(w.Shape.Region)
	joints := 59.625*25.4*3.175 + 9*3.175*101.6
	assert.InDelta(t, left, sum+joints, 1)
}

func TestCovesAreRefused(t *testing.T) {
	for fault, spoil := range map[string]func(*survey.Job){
		"walls[0].base[0].trim: found “none”; write the name of one of the trims": func(j *survey.Job) { j.Walls[0].Base[0].Trim = "none" },
		"walls[0].base[0].trim: found “foot”, which is a pencil; write a trim":    func(j *survey.Job) { j.Trims[0].Kind = "pencil" },
		"walls[0].head.trim: found “foot”, which is a cove; write a trim":         func(j *survey.Job) { j.Walls[0].Head.Trim, j.Walls[0].Head.Finish = "foot", "" },
		"walls[0].base[0].trim: found “foot” along a base with a leg down to the floor": func(j *survey.Job) {
			s := &j.Walls[0].Base[0]
			s.Readings = s.Readings[:2]
			j.Walls[0].Base = append(j.Walls[0].Base, survey.Segment{Meets: "floor", Readings: []survey.Drop{{At: "30", Drop: "52"}, {At: "59 7/8", Drop: "52"}}})
		},
	} {
		job := coved(t)
		spoil(&job)
		_, faults := job.Resolve()
		if assert.Len(t, faults, 1, "%s: %v", fault, faults) {
			assert.Contains(t, faults[0].String(), fault)
		}
	}
}

// Coves round the foot of a shower with a bench, on seats and base alike, by hand (common
// practice, no source): the field over the seat begins 1/8 in of gap, 4 in of cove and 1/8 in
// of joint over it; the front of the seat is at 39 1/2 in, the tile before it ends 1/8 in short
// of that, and the cove a joint after the tile: at 39 1/2 in. The cove on the base ends with
// that tile. Nothing lies on anything else, and all stays within the wall (simplefeatures).
func TestCovesFollowAStep(t *testing.T) {
	job := shippedJob(t, "bench.json")
	job.Trims = append(job.Trims, survey.TrimTile{Name: "foot", Kind: string(survey.Cove), Width: "4", Length: "6"})
	for i := range job.Walls[:3] {
		base := append([]survey.Segment(nil), job.Walls[i].Base...)
		for k := range base {
			base[k].Trim = "foot"
		}
		job.Walls[i].Base = base
	}
	p, err := layout.Now(job)
	require.NoError(t, err)
	assert.Zero(t, p.Setout.Merit.Bare)
	step := 79 * length.Inch / 2
	for i, mirrored := range map[int]bool{0: false, 2: true} {
		w := p.Walls[i]
		require.True(t, w.Found.Coved())
		low, high := plane.Rect{}, plane.Rect{} // the nearest to the step, on the base and on the seat
		for _, c := range w.Trim {
			box := c.Face.Bounds()
			if mirrored { // the seat is at the left
				box.Left, box.Right = w.Found.Width-box.Right, w.Found.Width-box.Left
			}
			if box.Bottom < -30*length.Inch && box.Right > low.Right {
				low = box
			} else if box.Bottom > -30*length.Inch && (high.Right == 0 || box.Left < high.Left) {
				high = box
			}
		}
		assert.Equal(t, step-length.Inch/8, low.Right, w.Found.Name)
		assert.Equal(t, step, high.Left, w.Found.Name)
		assert.Equal(t, 6*length.Inch, high.Width(), "the front of the seat has a whole piece")
		assert.Equal(t, -36*length.Inch+length.Inch/8, low.Bottom)
		laid := make([]geom.Geometry, 0, len(w.Trim)+len(w.Pieces))
		outline := shapeOfRegion(t, w.Found.Bare().Shape(p.Room.Units, w.Start.Placed).Region)
		for _, c := range w.Trim {
			laid = append(laid, shapeOfRegion(t, c.Face))
		}
		for _, q := range w.Pieces {
			laid = append(laid, shapeOfRegion(t, q.Face))
			if box := q.Face.Bounds(); !mirrored && box.Left >= step {
				assert.Greater(t, box.Bottom, -145*length.Inch/8+4*length.Inch, q.ID)
			}
		}
		for n, a := range laid {
			out, err := geom.Difference(a, outline)
			require.NoError(t, err)
			require.InDelta(t, 0, out.Area(), 0.5, "a unit along the rake of the seat")
			for _, b := range laid[:n] {
				both, err := geom.Intersection(a, b)
				require.NoError(t, err)
				require.InDelta(t, 0, both.Area(), 0.5)
			}
		}
	}
}

// shapeOfRegion is a region for a general geometry library, in millimetres.
func shapeOfRegion(t *testing.T, r plane.Region) geom.Geometry {
	var all [][][2]float64
	for _, ring := range r {
		var one [][2]float64
		for _, c := range ring {
			one = append(one, [2]float64{c.X.Millimetres(), c.Y.Millimetres()})
		}
		all = append(all, one)
	}
	return geometry(t, all)
}

// A strip from base to head ends on the cove as the field does: the cove runs on under it, piece by
// piece as without it, and the strip's lowest tiles stand a joint over it (gap, cove and joint are
// 1/8 + 4 + 1/8 in over the tub, which is out of level).
func TestACoveRunsOnUnderAStrip(t *testing.T) {
	job := coved(t)
	without, err := layout.Now(job)
	require.NoError(t, err)
	job.Walls[0].Openings = nil
	job.Walls[0].Strips = []survey.Strip{slate(survey.Mark{At: "30"})}
	p, err := layout.Now(job)
	require.NoError(t, err)
	w := p.Walls[0]
	require.Equal(t, len(without.Walls[0].Trim), len(w.Trim))
	for i, c := range w.Trim {
		assert.Equal(t, without.Walls[0].Trim[i].Long, c.Long, c.ID)
	}
	over := func(x length.Length) length.Length {
		return survey.At(w.Found.Base[0].Readings, x) + 17*length.Inch/4
	}
	require.Len(t, w.Strips, 1)
	lowest := map[length.Length]bool{}
	for _, q := range w.Strips[0].Pieces {
		b := q.Face.Bounds()
		least := min(over(b.Left), over(b.Right))
		require.GreaterOrEqual(t, b.Bottom, least-1, q.ID)
		if b.Bottom <= least+sealantFills {
			lowest[q.Tile.Left] = true
		}
	}
	assert.Len(t, lowest, 3, "each of its columns comes down to the cove")
}

// sealantFills is how far the lowest tile may stand off.
const sealantFills = length.Inch / 4
