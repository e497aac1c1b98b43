package cuts

import (
	"context"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/setout"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// By hand: a wall of 466 mm in courses of 100 and of 50 in turn, four of each, tiles of 200 with joints of 3: at its left
// end every course is cut to 60, 466 = 60 + 3 + 200 + 3 + 200. All of these keep the right edge of their tile, so two come
// out of one tile only where that may be turned round, 60 + 3 + 60 <= 200: then two tiles of each height make four pieces.
func TestWhichTilesOfAPatternMayBeTurned(t *testing.T) {
	yes, no := "yes", "no"
	for name, c := range map[string]struct {
		first, second bool   // have grain
		turn          string // what the job says
		saved         int
	}{
		"plain":                         {false, false, "", 4},
		"plain, and said to be turned":  {false, false, yes, 4},
		"the second tile has grain":     {false, true, "", 2},
		"the first has, so both":        {true, false, "", 0},
		"no tile is turned in this job": {false, false, no, 0},
	} {
		t.Run(name, func(t *testing.T) {
			job := inColumn()
			job.Tile.Grain, job.Bond.Tiles[0].Grain = c.first, c.second
			if c.turn != "" {
				turn := c.turn == yes
				job.Work.Turn = &turn
			}
			room, faults := job.Resolve()
			require.Empty(t, faults)
			room, _, walls, err := setout.Solve(context.Background(), room)
			require.NoError(t, err)
			s := Of(Input{Room: room, Walls: walls}, For(room))
			assert.Equal(t, c.saved, s.Offcuts.TilesSaved)
			assert.Equal(t, 8-c.saved, s.Offcuts.TilesCut)
			require.Len(t, s.Groups, 2, "alike pieces are one line")
			for _, g := range s.Groups {
				assert.Equal(t, 4, g.Count)
				assert.Equal(t, 60*length.Millimetre, g.Size.Width)
			}
		})
	}
}

// inColumn is the wall by hand.
func inColumn() survey.Job {
	at := func(s string) survey.End { return survey.End{Stops: &survey.Mark{At: s}} }
	return survey.Job{Format: survey.Format, Units: "mm", Joint: survey.Measure{Plain: "3"},
		Tile: survey.Tile{Width: "200", Height: "100"},
		Bond: survey.Bond{Kind: "mixed heights", Tiles: []survey.Tile{{Height: "50"}}},
		Pins: survey.Pins{Course: survey.CoursePin{Line: "3"}, Walls: map[string]survey.WallPin{"w": {Edge: "63"}}},
		Walls: []survey.Wall{{Name: "w", Width: "466", Left: at("0"), Right: at("466"),
			Base: []survey.Segment{{Meets: "floor", Gap: "3", Readings: []survey.Drop{{At: "0", Drop: "0"}, {At: "466", Drop: "0"}}}},
			Head: survey.Head{Stops: &survey.Mark{At: "624"}}}},
	}
}
