package stages_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/piece"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
)

var rooms = []struct{ job, line string }{{"toy", ""}, {"one-wall", ""}, {"corner-shower", ""}, {"alcove", ""}, {"alcove", "-40"}, {"alcove", "-38 1/4"}}

// ordered gives a room, and its steps with all their pieces one after the other.
func ordered(t *testing.T, name, line string, change ...func(*survey.Job)) (stages.Input, []stages.Step) {
	t.Helper()
	job := jobOf(t, name)
	job.Pins.Course.Line = line
	for _, c := range change {
		c(&job)
	}
	p, err := layout.Now(job)
	require.NoError(t, err)
	in := stages.Input{Room: p.Room, Walls: p.Walls, Cuts: cuts.Of(cuts.Input{Room: p.Room, Walls: p.Walls}, cuts.For(p.Room))}
	return in, stages.Order(in)
}

func TestEveryPieceIsInOneStep(t *testing.T) { // law 1 of Order
	for _, r := range rooms {
		in, steps := ordered(t, r.job, r.line)
		times := map[string]int{}
		for _, s := range steps {
			require.NotEmpty(t, s.Pieces)
			for _, p := range s.Pieces {
				times[p.ID]++
				assert.Equal(t, s.Pieces[0].Course, p.Course, "%v: %s", r, p.ID)
				assert.Equal(t, s.Pieces[0].Whole, p.Whole, "%v: %s", r, p.ID)
			}
		}
		for _, w := range in.Walls {
			for _, p := range w.Pieces {
				assert.Equal(t, 1, times[p.ID], "%v: %s", r, p.ID)
			}
		}
	}
}

func TestStepsFollowTheOrderOfTheTrade(t *testing.T) { // laws 2, 3 and 4 of Order
	for _, r := range rooms {
		in, steps := ordered(t, r.job, r.line)
		at, wallAt := map[string]int{}, map[string]int{}
		for i, s := range steps {
			if i > 0 {
				assert.GreaterOrEqual(t, s.Part, steps[i-1].Part, "%v: step %d", r, i)
			}
			for _, p := range s.Pieces {
				at[p.ID], wallAt[p.ID] = i, s.Wall
			}
		}
		for _, w := range in.Walls {
			for _, p := range w.Pieces {
				for _, q := range w.Pieces {
					name := fmt.Sprintf("%v: %s and %s", r, p.ID, q.ID)
					if p.Whole && !q.Whole && p.Course == q.Course {
						assert.Less(t, at[p.ID], at[q.ID], name)
					}
					carries := p.Whole && steps[at[p.ID]].Part != stages.Under && p.Tile.Top < q.Tile.Bottom &&
						p.Tile.Left < q.Tile.Right && q.Tile.Left < p.Tile.Right
					if carries {
						assert.Less(t, at[p.ID], at[q.ID], name)
					}
				}
			}
		}
	}
}

// The whole tiles of the first full course go from the start to the right, then
// from the start to the left.
func TestACourseGrowsFromTheStart(t *testing.T) {
	in, steps := ordered(t, "alcove", "")
	var row []piece.Piece
	for _, s := range steps {
		if s.Wall == steps[0].Wall && s.Part == stages.OnBatten && s.Pieces[0].Whole {
			row = append(row, s.Pieces...)
		}
	}
	w := in.Walls[steps[0].Wall]
	full, found := stages.FirstFull(in.Room, row[0].Tile.Bottom, in.Walls)
	require.True(t, found)
	start, ok := stages.StartTile(w, full)
	require.True(t, ok)
	assert.Equal(t, start.ID, row[0].ID)
	back := 0
	for i := 1; i < len(row); i++ {
		if row[i].Tile.Left < row[i-1].Tile.Left && row[i-1].Tile.Left >= start.Tile.Left {
			back++
			assert.Less(t, row[i].Tile.Left, start.Tile.Left)
		}
	}
	assert.LessOrEqual(t, back, 1, "it turns back once")
}

func TestColumnsAreSetFromTheBattenToo(t *testing.T) {
	in, steps := ordered(t, "one-wall", "", func(j *survey.Job) { j.Bond.Along = "plumb" })
	n := 0
	for _, s := range steps {
		n += len(s.Pieces)
	}
	assert.Len(t, in.Walls[0].Pieces, n)
	assert.Equal(t, stages.OnBatten, steps[0].Part)
}

func TestTheLineStruckIsNeverBehindARim(t *testing.T) { // laws of ToStrike
	joints := 0
	for _, r := range rooms {
		in, _ := ordered(t, r.job, r.line)
		job := jobOf(t, r.job)
		job.Pins.Course.Line = r.line
		p, err := layout.Now(job)
		require.NoError(t, err)
		s := stages.ToStrike(in.Room, p.Setout.Line, in.Walls)
		behind := false
		for _, w := range in.Walls {
			for _, b := range w.Found.Base {
				for _, x := range b.Readings {
					behind = behind || x.Value > p.Setout.Line
					assert.LessOrEqual(t, x.Value, s.At, "%v", r)
				}
			}
		}
		assert.Equal(t, behind, s.Joint, "%v", r)
		if !s.Joint {
			assert.Equal(t, p.Setout.Line, s.At, "%v", r)
			continue
		}
		joints++
	}
	assert.Positive(t, joints, "in some of the rooms a rim stands above the course line")
}

// In the alcove the two corners of the tub serve two walls each, and the floor
// beside the tub holds no water.
func TestACornerIsOneStation(t *testing.T) {
	in, _ := ordered(t, "alcove", "")
	var names []string
	for _, s := range stages.Stations(in.Room.Units, in.Walls) {
		names = append(names, s.Name+" "+string(s.Meets))
	}
	assert.Equal(t, []string{"L left floor", `L at 4 3/8" floor`, `L at 4 3/8" tub`, "corner L–B tub", "corner B–R tub", `R at 30 5/8" tub`, `R at 30 5/8" floor`, "R right floor"}, names)
	assert.Len(t, stages.Rims(stages.Stations(in.Room.Units, in.Walls)), 4)
	dry := []stages.Station{{Name: "A left", Meets: survey.Floor}}
	assert.Equal(t, dry, stages.Rims(dry))
}
