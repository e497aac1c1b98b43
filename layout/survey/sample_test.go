package survey_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// measured is a metric job with joints of 3 mm, tile typed as 200 by 100 mm,
// and a sample of it that is used.
func measured(t *testing.T, s survey.Sample) survey.Job {
	job := sketch("in", "a", "b", "c")
	job.Units, job.Joint.Plain = "mm", "3"
	job.Tile = survey.Tile{Width: "200", Height: "100", Vary: "0.5", Sample: &s}
	return job
}

func singles(sizes ...string) (s []survey.Single) {
	for i := 0; i < len(sizes); i += 2 {
		s = append(s, survey.Single{Width: sizes[i], Height: sizes[i+1]})
	}
	return s
}

func TestTheTrueSizeOfTheTile(t *testing.T) {
	for _, c := range []struct {
		name                string
		sample              survey.Sample
		width, height, vary length.Length
	}{
		// Modular sizes as the trade press has them: 197 + 3 = 200, 97 + 3 = 100.
		{"ten with a joint each", survey.Sample{Across: survey.Run{Joints: "each", Length: "2000"}, Up: survey.Run{Joints: "each", Length: "1000"}},
			197 * mm, 97 * mm, mm / 2},
		{"ten with nine joints between", survey.Sample{Across: survey.Run{Length: "1997"}}, 197 * mm, 100 * mm, mm / 2},
		{"the same, said", survey.Sample{Across: survey.Run{Tiles: "10", Joints: "between", Length: "1997"}}, 197 * mm, 100 * mm, mm / 2},
		{"five large ones", survey.Sample{Across: survey.Run{Tiles: "5", Length: "1012"}}, 200 * mm, 100 * mm, mm / 2},
		{"laid with spacers of 2 mm", survey.Sample{Up: survey.Run{Spacer: "2", Length: "988"}}, 200 * mm, 97 * mm, mm / 2},
		{"laid tight", survey.Sample{Up: survey.Run{Spacer: "0", Length: "970"}}, 200 * mm, 97 * mm, mm / 2},
		{"singles in both directions", survey.Sample{Singles: singles("199.5", "99", "200.5", "100.5", "201.5", "100.5")},
			200*mm + mm/2, 100 * mm, 2 * mm},
		{"singles of which one side was measured", survey.Sample{Singles: singles("199", "", "", "", "201", "")}, 200 * mm, 100 * mm, 2 * mm},
		{"a mean between two units goes up", survey.Sample{Singles: singles("200", "100", "200 1/960", "100")}, 200*mm + 1, 100 * mm, 1},
		{"one single says nothing of variation", survey.Sample{Singles: singles("199", "99")}, 199 * mm, 99 * mm, mm / 2},
		{"a row counts before singles", survey.Sample{Across: survey.Run{Length: "1997"}, Singles: singles("199", "99", "200", "101")}, 197 * mm, 100 * mm, 2 * mm},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.sample.Use = true
			room, faults := measured(t, c.sample).Resolve()
			require.Empty(t, faults)
			assert.Equal(t, c.width, room.Tile.Width)
			assert.Equal(t, c.height, room.Tile.Height)
			assert.Equal(t, c.vary, room.Tile.Vary)
			assert.Equal(t, [2]length.Length{200 * mm, 100 * mm}, room.Tile.Real.Sold)

			c.sample.Use = false
			room, faults = measured(t, c.sample).Resolve()
			require.Empty(t, faults)
			assert.Equal(t, 200*mm, room.Tile.Width, "not used: the size typed holds")
			assert.Equal(t, mm/2, room.Tile.Vary)
			job := measured(t, c.sample)
			real := job.Real()
			assert.Equal(t, room.Tile.Real.Width, real.Width, "while typing the same is said")
			assert.Equal(t, room.Tile.Real.Vary, real.Vary)
		})
	}
}

func TestASampleThatSaysNothingLeavesTheTileAsTyped(t *testing.T) {
	room, faults := measured(t, survey.Sample{Use: true, Up: survey.Run{Spacer: "2"}}).Resolve()
	require.Empty(t, faults)
	assert.Equal(t, 100*mm, room.Tile.Height)
	assert.False(t, room.Tile.Real.Used)
}

// A tenth of 80 in less nine joints of 1/8 in is 7.8875 in, 192328.8 units.
func TestAMeanIsRoundedToTheUnit(t *testing.T) {
	job := sketch("in", "a", "b", "c")
	job.Joint.Plain = "1/8"
	job.Tile.Sample = &survey.Sample{Use: true, Across: survey.Run{Length: "80"}}
	room, faults := job.Resolve()
	require.Empty(t, faults)
	assert.Equal(t, length.Length(192329), room.Tile.Width)
}

func TestASampleRefuses(t *testing.T) {
	for _, c := range []struct {
		sample survey.Sample
		fault  string
	}{
		{survey.Sample{Across: survey.Run{Length: "long"}}, "tile.sample.across.length: found “long”, which has"},
		{survey.Sample{Across: survey.Run{Length: "20"}}, "tile.sample.across.length: found “20”, which makes a tile of -0.5 mm; write the length of 10 tiles with 9 joints of 3 mm"},
		{survey.Sample{Up: survey.Run{Tiles: "1", Length: "200"}}, "tile.sample.up.tiles: found “1”; write a whole number of tiles from 2 to 100"},
		{survey.Sample{Up: survey.Run{Tiles: "ten", Length: "200"}}, "tile.sample.up.tiles: found “ten”; write a whole number of tiles from 2 to 100"},
		{survey.Sample{Up: survey.Run{Joints: "some", Length: "200"}}, "tile.sample.up.joints: found “some”; write one of between, each"},
		{survey.Sample{Up: survey.Run{Spacer: "30"}}, "tile.sample.up.spacer: found “30”; write a length from 0 mm to 25 mm"},
		{survey.Sample{Singles: singles("200", "100", "200", "1")}, "tile.sample.singles[1].height: found “1”; write a length from 5 mm to 3000 mm"},
		{survey.Sample{Singles: singles("200", "100", "100", "100")}, "tile.sample.singles: found tiles that differ by 100 mm; write widths and heights of one kind of tile"},
		{survey.Sample{Singles: make([]survey.Single, 51)}, "tile.sample.singles: found 51 tiles; write at most 50"},
	} {
		t.Run(c.fault, func(t *testing.T) {
			_, faults := measured(t, c.sample).Resolve()
			require.Len(t, faults, 1, "%v", faults)
			assert.Contains(t, faults[0].String(), c.fault)
		})
	}
}

func TestASampleOfANicheTileOrAChoiceIsReadWithItsOwnJoint(t *testing.T) {
	job := measured(t, survey.Sample{})
	run := &survey.Sample{Use: true, Across: survey.Run{Joints: "each", Length: "530"}}
	job.Work.Niche = survey.NicheWork{Tile: survey.Tile{Width: "50", Height: "50", Sample: run}}
	room, faults := job.Resolve()
	require.Empty(t, faults)
	assert.Equal(t, 50*mm, room.Work.NicheTile.Width)

	job.Choices = []survey.Choice{{Name: "a"}, {Name: "b", Joint: survey.Measure{Plain: "30"}, Tile: survey.Tile{Width: "50", Height: "50", Sample: run}, Bond: survey.Bond{Kind: "stack"}}}
	job.Chosen = "a"
	_, faults = job.Resolve()
	require.NotEmpty(t, faults)
	assert.Equal(t, "choices[1].joint", faults[len(faults)-1].Path)
}
