package layout_test

import (
	"context"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/length"
	laid "coursewright/layout/plan"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
	"coursewright/layout/takeoff"
)

// The bench of the example by hand (common practice, no source): the front stands between
// two tiled walls, 36 in less 1/2 in of bed and tile at both ends is 35 in of seat. It is
// 17 3/4 in deep, mitred, with a soft joint of 1/8 behind: four rows of 4 5/16 and three
// joints of 1/8 are 17 5/8. The fall of 1/4 in to the foot is 17 3/4 / 48 = 0.370 in.
func TestTheSeatOfTheExample(t *testing.T) {
	p, err := layout.Now(shippedJob(t, "bench.json"))
	require.NoError(t, err)
	seat := p.Walls[3].Top
	require.NotNil(t, seat)
	box := seat.Outline.Bounds()
	assert.Equal(t, 35*length.Inch, box.Width())
	assert.Equal(t, 71*length.Inch/4, box.Height())
	assert.InDelta(t, 17.75/48, seat.Rise.Millimetres()/25.4, 0.0005)
	assert.Equal(t, -145*length.Inch/8, seat.Front)
	rows := map[length.Length]int{}
	for _, q := range seat.Pieces {
		rows[q.Tile.Bottom]++
		assert.Equal(t, q.Tile.Height(), q.Face.Bounds().Height(), "%s is as high as the tile", q.ID)
	}
	assert.Len(t, rows, 4)
	assert.Equal(t, p.Walls[3].Start.Placed.Head, seat.Front, "at a mitre the front ends at the finished edge")

	// The curb: 4 13/16 in from edge to edge with bars of 1/8 and joints of 1/8 leaves one
	// row of 4 5/16; its front ends a joint under the bar, at 31 3/16 + 1/4.
	curb := p.Walls[4].Top
	region := curb.Shape.Region.Bounds()
	assert.Equal(t, 69*length.Inch/16, region.Height())
	assert.Equal(t, -503*length.Inch/16, p.Walls[4].Start.Placed.Head)
	require.Len(t, curb.Trim, 1, "a bar along the far edge; that along the front is on the wall")
	assert.Equal(t, survey.BaseSegment, curb.Trim[0].Edge)
	assert.Len(t, p.Walls[4].Trim, 1)
}

// Of every piece of a top it is known how it is cut, when it is set, and that it is bought.
func TestTopsAreCutBoughtAndSet(t *testing.T) {
	topsCutBoughtAndSet(t, "corner-bench.json")
	p, s := topsCutBoughtAndSet(t, "bench.json")
	ends := map[string]int{}
	for _, m := range s.Mitres {
		ends[m.Wall+" "+m.End] += len(m.Pieces)
	}
	head, row := 0, 0
	for _, q := range p.Walls[3].Pieces {
		if q.Face.Bounds().Top == p.Walls[3].Top.Front {
			head++
		}
	}
	for _, q := range p.Walls[3].Top.Pieces {
		if q.Course == 1 {
			row++
		}
	}
	assert.Equal(t, map[string]int{"B head": head, "B-T front": row}, ends)
}

func topsCutBoughtAndSet(t *testing.T, name string) (layout.Plan, cuts.Schedule) {
	p, err := layout.Now(shippedJob(t, name))
	require.NoError(t, err)
	s := cuts.Of(cuts.Input{Room: p.Room, Walls: p.Walls}, cuts.Usual(p.Room.Units))
	lines, set := map[string]int{}, map[string]int{}
	for _, g := range s.Groups {
		for _, id := range g.Pieces {
			lines[id]++
		}
	}
	for _, step := range stages.Order(stages.Input{Room: p.Room, Walls: p.Walls, Cuts: s}) {
		for _, q := range step.Pieces {
			set[q.ID]++
		}
	}
	whole, cut := 0, 0
	for _, w := range laid.WithTops(p.Walls) {
		for _, q := range w.Pieces {
			assert.Equal(t, 1, set[q.ID], "%s is set once", q.ID)
			if q.Whole {
				whole++
			} else {
				cut++
				assert.Equal(t, 1, lines[q.ID], "%s stands in one line", q.ID)
			}
		}
		for _, q := range w.Trim {
			assert.Equal(t, 1, set[q.ID], "%s is set once", q.ID)
		}
	}
	buy := takeoff.Of(takeoff.Input{Room: p.Room, Walls: p.Walls, Cuts: s.Offcuts, Others: s.Others}, takeoff.Usual(p.Room.Units))
	assert.Equal(t, whole-wholeOthers(p), buy.Whole)
	assert.Equal(t, cut, len(s.Cuts))
	return p, s
}

// wholeOthers counts the whole tiles of a top that has a tile of its own.
func wholeOthers(p layout.Plan) (n int) {
	for _, o := range laid.Others(p.Room, p.Walls) {
		for _, w := range o.Faces {
			for _, q := range w.Pieces {
				if q.Whole {
					n++
				}
			}
		}
	}
	return n
}

// Soft joints of tops are counted once: that behind the seat stands on the walls over it.
// By hand: the seat meets walls along both ends, 17 5/8 in each; the curb along both, 4 5/16 each.
func TestTheSoftJointsOfTops(t *testing.T) {
	job := shippedJob(t, "bench.json")
	long := func(change func(*survey.Job)) length.Length {
		j := job
		j.Walls = append([]survey.Wall(nil), job.Walls...)
		change(&j)
		p, err := layout.Now(j)
		require.NoError(t, err)
		sum := length.Length(0)
		for i := range p.Walls {
			if top := p.Walls[i].Top; top != nil {
				for _, side := range top.Soft {
					box := top.Shape.Region.Bounds()
					if side == survey.SideHead {
						sum += box.Width()
					} else {
						sum += box.Height()
					}
				}
			}
		}
		return sum
	}
	assert.Equal(t, 2*141*length.Inch/8+2*69*length.Inch/16, long(func(*survey.Job) {}))
	back := 139 * length.Inch / 4                                                            // 35 in less a gap at both ends
	assert.Equal(t, 2*141*length.Inch/8+2*69*length.Inch/16+back, long(func(j *survey.Job) { // nothing stands on the seat
		for i := range j.Walls[:3] {
			base := append([]survey.Segment(nil), j.Walls[i].Base...)
			for k := range base {
				if base[k].Meets == "seat" {
					base[k].Meets = "curb"
				}
			}
			j.Walls[i].Base = base
		}
	}))
}

// The plan file of a job without tops says nothing of tops; that of one with tops says all.
func TestThePlanFileOfTops(t *testing.T) {
	file := func(job survey.Job) (out struct {
		Walls []struct {
			Name string
			Top  *struct {
				Kind, Letter, Edge string
				Front, Rise        float64
				Pieces             []struct{ ID string }
				Trim               []struct{ Edge string }
			}
		}
	}) {
		p, err := layout.Solve(context.Background(), job)
		require.NoError(t, err)
		text, err := p.File()
		require.NoError(t, err)
		require.NoError(t, json.Unmarshal(text, &out))
		return out
	}
	of := file(shippedJob(t, "bench.json"))
	require.NotNil(t, of.Walls[3].Top)
	assert.Equal(t, "seat mitre B-T", of.Walls[3].Top.Kind+" "+of.Walls[3].Top.Edge+" "+of.Walls[3].Top.Letter)
	assert.Equal(t, "back", of.Walls[4].Top.Trim[0].Edge)
	assert.Nil(t, of.Walls[0].Top)
	for _, w := range file(shippedJob(t, "half-wall.json")).Walls {
		assert.Nil(t, w.Top, w.Name)
	}
}
