package layout_test

import (
	"encoding/json"
	"os"
	"slices"
	"strconv"
	"testing"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// stoodPlan is what the plan file says of measured tile and of courses that stand.
type stoodPlan struct {
	Tile   *struct{ Width, Height, Vary float64 }
	Course struct{ Line, Pitch float64 }
	Walls  []struct {
		Name   string
		Set    *struct{ Course int }
		Pieces []struct {
			ID     string
			Course int
			Whole  bool
			Tile   [4]float64
			Set    bool
		}
	}
	Cuts    []struct{ Pieces []string }
	Takeoff []struct {
		Item       string
		Net, Count int
	}
	Findings []struct{ Rule, Grade, Wall, Text string }
}

func jobOf(t *testing.T, file string) survey.Job {
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	return job
}

func solved(t *testing.T, job survey.Job) (stoodPlan, layout.Plan) {
	plan, err := layout.Now(job)
	require.NoError(t, err)
	file, err := plan.File()
	require.NoError(t, err)
	var p stoodPlan
	require.NoError(t, json.Unmarshal(file, &p))
	return p, plan
}

// The demo with course 8 of its back wall set 1/8 in out of level and 1/2 in to
// the right of where it was planned.
func TestTheRestIsSolvedFromWhereTileStands(t *testing.T) {
	job := jobOf(t, "../static/demo.json")
	before, _ := solved(t, job)
	const mm = 25.4
	var top, edge float64
	for _, p := range before.Walls[1].Pieces {
		if p.Course == 8 && p.Whole && edge == 0 {
			top, edge = p.Tile[3], p.Tile[0]
		}
	}
	require.NotZero(t, edge)
	left, right, start := top/mm, top/mm+1./8, edge/mm+.5
	say := func(in float64) string {
		return length.Length(in*24384+.5*sign(in)).Plain(length.Imperial, length.Inch/64)
	}
	job.Walls[1].Set = &survey.AsSet{Course: "8", Left: say(left), Right: say(right), Start: survey.SetStart{Is: "left edge", At: say(start)}}
	after, _ := solved(t, job)

	back := after.Walls[1]
	require.NotNil(t, back.Set)
	assert.Equal(t, 8, back.Set.Course)
	mean := top + mm/16
	set, found, cut := 0, false, map[string]bool{}
	for i, w := range after.Walls {
		for _, p := range w.Pieces {
			stands := i == 1 && p.Tile[3] < mean+mm
			assert.Equal(t, stands, p.Set, p.ID)
			if stands {
				set++
			} else if !p.Whole {
				cut[p.ID] = true
			}
			if i == 1 && p.Course == 8 {
				assert.InDelta(t, mean, p.Tile[3], 0.2, "the course stands at the mean of its ends, as read off the tape")
				found = found || p.Tile[0] > edge+mm/2-0.2 && p.Tile[0] < edge+mm/2+0.2
			}
		}
	}
	assert.True(t, found, "a tile edge stands where it was measured")
	assert.Greater(t, set, 10)
	for _, c := range after.Cuts {
		for _, id := range c.Pieces {
			assert.True(t, cut[id], "%s is cut once, and not when it stands", id)
			delete(cut, id)
		}
	}
	assert.Empty(t, cut, "every other cut piece is in the schedule")
	assert.True(t, slices.ContainsFunc(after.Findings, func(f struct{ Rule, Grade, Wall, Text string }) bool {
		return f.Rule == "set course out of level" && f.Wall == "back"
	}))
}

func sign(x float64) float64 {
	if x < 0 {
		return -1
	}
	return 1
}

// Said to stand just where it was planned, tile changes nothing of the plan but
// which pieces are still to be cut.
func TestTileThatStandsAsPlannedChangesNothing(t *testing.T) {
	for _, file := range []string{"../static/demo.json", "../testdata/jobs/corner-shower.json", "../testdata/jobs/one-wall.json"} {
		job := jobOf(t, file)
		before, plan := solved(t, job)
		require.True(t, hold(&job, plan))
		after, _ := solved(t, job)
		require.Len(t, after.Walls, len(before.Walls))
		for i, w := range before.Walls {
			require.Len(t, after.Walls[i].Pieces, len(w.Pieces), "%s %s", file, w.Name)
			stands := 0
			for k, p := range w.Pieces {
				now := after.Walls[i].Pieces[k]
				if now.Set {
					stands++
				}
				now.Set = false
				assert.Equal(t, p, now, "%s %s", file, w.Name)
			}
			assert.Positive(t, stands, "%s %s", file, w.Name)
		}
		assert.Equal(t, before.Takeoff, after.Takeoff, "what is bought is for the whole room")
	}
}

// hold says of every wall that its lowest course stands as planned. It is false
// where a wall has no tile edge to measure to.
func hold(job *survey.Job, plan layout.Plan) bool {
	u := plan.Room.Units
	if job.Bond.Kind == "running" && job.Bond.Hand == "" {
		job.Bond.Hand = map[survey.Hand]string{survey.Left: "left", survey.Right: "right"}[plan.Setout.Hand]
	}
	for i, w := range plan.Walls {
		if len(w.Pieces) == 0 {
			return false
		}
		p := w.Pieces[0]
		top := p.Tile.Top.Plain(u, 0)
		start := survey.SetStart{Is: "right edge", At: p.Tile.Right.Plain(u, 0)}
		if p.Tile.Right > w.Found.Width {
			start = survey.SetStart{Is: "left edge", At: p.Tile.Left.Plain(u, 0)}
			if p.Tile.Left < 0 {
				return false
			}
		}
		job.Walls[i].Set = &survey.AsSet{Course: strconv.Itoa(p.Course), Left: top, Right: top, Start: start}
	}
	return true
}

// Nor does it in any small room with courses: line and starts stay, and what
// is still free is set out no worse.
func TestInRandomRoomsTooTileMayStandAsPlanned(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := randomJob(t)
		job.Bond.Along = "level"
		job = pinned(t, job) // anywhere: looking for the best takes long
		before, err := layout.Now(job)
		require.NoError(t, err)
		if !hold(&job, before) {
			t.Skip("no tile edge on a wall")
		}
		job.Pins = survey.Pins{}
		after, err := layout.Now(job)
		require.NoError(t, err)
		pitch, along := before.Room.Tile.Height+before.Room.Joint, before.Room.Tile.Width+before.Room.Joint
		require.Zero(t, length.Mod(after.Setout.Line-before.Setout.Line, pitch))
		require.False(t, before.Setout.Merit.Bare < after.Setout.Merit.Bare || before.Setout.Merit.Bare == after.Setout.Merit.Bare && before.Setout.Merit.Slivers < after.Setout.Merit.Slivers,
			"%+v, then %+v", before.Setout.Merit, after.Setout.Merit)
		for i, w := range after.Walls {
			require.True(t, stoodAlike(before.Walls[i], w, along), "%s: the tiles of the first course stand where they stood", w.Found.Name)
		}
	})
}

// stoodAlike tells whether the first piece stands on the same tile in both
// plans, whole tiles and half a unit a course aside.
func stoodAlike(was, is layout.Wall, along length.Length) bool {
	a, b := was.Pieces[0].Tile, is.Pieces[0].Tile
	off := length.Mod(a.Left-b.Left, along)
	return a.Top == b.Top && min(off, along-off) <= 1
}

func TestMeasuredTileIsSetOut(t *testing.T) {
	job := jobOf(t, "../testdata/jobs/one-wall.json")
	plain, _ := solved(t, job)
	assert.Nil(t, plain.Tile, "the plan of a job that says nothing of it has no field for it")
	// Ten with nine joints of 1/8 in between: 117 7/8 in, so one is 11.675 in.
	job.Tile.Sample = &survey.Sample{Use: true, Across: survey.Run{Length: "117 7/8"}, Singles: []survey.Single{{Width: "11 5/8"}, {Width: "11 11/16"}}}
	p, _ := solved(t, job)
	require.NotNil(t, p.Tile)
	assert.InDelta(t, 11.675*25.4, p.Tile.Width, 0.001)
	assert.InDelta(t, 3.875*25.4, p.Tile.Height, 0.001)
	assert.InDelta(t, 25.4/16, p.Tile.Vary, 0.001)
	for _, piece := range p.Walls[0].Pieces {
		assert.InDelta(t, p.Tile.Width, piece.Tile[2]-piece.Tile[0], 0.002, piece.ID)
	}
	var rules []string
	for _, f := range p.Findings {
		rules = append(rules, f.Rule)
	}
	assert.Contains(t, rules, "joint against variation", "1/16 in asks for a joint of 3/16 in: ANSI A108.02 4.3.8, quoted in TileLetter")
}
