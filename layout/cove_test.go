package layout_test

import (
	"encoding/json"
	"testing"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

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
		"walls[0].base[0].trim: found “foot” along a base in several stretches": func(j *survey.Job) {
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
