package layout_test

import (
	"testing"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// panelled is the half wall that ships, its end panel laid so.
func panelled(t *testing.T, laid string) survey.Job {
	job := shippedJob(t, "half-wall.json")
	job.Walls[3].Laid = laid
	return job
}

// The panel takes 4 7/8 in and the 1/16 in that its tile goes on under the lap (the bed of 3/16
// less a joint of 1/8): each tile of 5 15/16 in is cut to 4 15/16, its factory edge at the end.
func TestAnEndPanelInSingleTiles(t *testing.T) {
	p, err := layout.Now(panelled(t, ""))
	require.NoError(t, err)
	panel := p.Walls[3]
	require.True(t, panel.Found.Single, "in half bond a joint would fall into it")
	courses := map[int]bool{}
	for _, x := range panel.Pieces {
		assert.False(t, courses[x.Course], "one piece in course %d", x.Course)
		courses[x.Course] = true
		assert.Equal(t, 79*length.Inch/16, x.Wide, x.ID)
		assert.Equal(t, panel.Start.Placed.Right, x.Tile.Right, "the factory edge faces out")
		require.Len(t, x.Across, 1, "%s is cut at one end", x.ID)
		assert.Equal(t, "left", x.Across[0].Name(panel.Shape.Sides))
	}
	assert.Len(t, courses, 14)
	bond, err := layout.Now(panelled(t, "bond"))
	require.NoError(t, err)
	assert.Len(t, bond.Walls[3].Pieces, 21, "in half bond every other course has two pieces")
	for i := range 3 {
		assert.Equal(t, ids(bond.Walls[i].Pieces), ids(p.Walls[i].Pieces), "the other walls are as they were")
	}
}

// Laws: wherever a wall is in single tiles by default, the room is no worse by the order of
// merit down to the runs than with that wall in the bond; and each course of it is one piece.
func TestSingleTilesAreByMerit(t *testing.T) {
	shipped := panelled(t, "")
	rapid.Check(t, func(t *rapid.T) {
		job := shipped.Clone()
		sixteenths := func(what string, from, to int) string {
			return (length.Length(rapid.IntRange(from, to).Draw(t, what)) * length.Inch / 16).Plain(length.Imperial, 0)
		}
		job.Bond.Offset = rapid.SampledFrom([]string{"1/2", "1/3", "1/4", "2/5"}).Draw(t, "offset")
		job.Tile.Width = sixteenths("tile", 80, 140)
		job.Tile.Height = sixteenths("high", 40, 90)
		job.Trims[0].Length = job.Tile.Width
		wide := sixteenths("panel", 24, 140)
		panel := &job.Walls[3]
		panel.Width, panel.Right.Stops = wide, &survey.Mark{At: wide}
		panel.Base[0].Readings = []survey.Drop{{At: "0", Drop: "36"}, {At: wide, Drop: sixteenths("floor", 570, 580)}}
		job.Walls[2].Right.Corner = rapid.SampledFrom([]string{"bullnose", "", "mitre"}).Draw(t, "corner")
		if job.Walls[2].Right.Laps = ""; job.Walls[2].Right.Corner != "bullnose" {
			job.Walls[2].Right.Trim = ""
		}
		if rapid.Bool().Draw(t, "a corner beyond") { // the panel is a cheek
			panel.Right = survey.End{Meets: "corner", Gap: "1/8"}
			job.Walls = append(job.Walls, survey.Wall{Name: "beyond", Width: "30", Left: survey.End{Meets: "corner", Gap: "1/8"}, Right: survey.End{Stops: &survey.Mark{At: "30"}},
				Base: []survey.Segment{{Meets: "floor", Gap: "1/8", Readings: []survey.Drop{{At: "0", Drop: "36"}}}}, Head: survey.Head{Stops: &survey.Mark{At: "6"}}})
		}
		job.Walls = job.Walls[2:] // the half wall, the panel, and what is beyond
		job.Walls[0].Left = survey.End{Stops: &survey.Mark{At: "0"}}
		room, faults := job.Resolve()
		require.Empty(t, faults)
		if !room.Walls[1].Single {
			return
		}
		single, err := layout.Now(job)
		require.NoError(t, err)
		per := map[int]int{}
		for _, x := range single.Walls[1].Pieces {
			per[x.Course]++
		}
		for course, n := range per {
			require.Equal(t, 1, n, "course %d", course)
		}
		statesItsMerit(t, mustWrite(job), planDocOf(t, single))
		job.Walls[1].Laid = "bond"
		bond, err := layout.Now(job)
		require.NoError(t, err)
		if single.Setout.Proven {
			order, term := single.Setout.Order.Until(&single.Setout.Merit, &bond.Setout.Merit, merit.Mirror)
			require.LessOrEqual(t, order, 0, "worse in %v: %s", term, mustWrite(job))
		}
	})
}
