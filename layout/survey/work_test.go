package survey_test

import (
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// rich is a sound job with every field that came after the first ones.
func rich(t *testing.T) survey.Job {
	t.Helper()
	job, err := survey.Read(jobFiles(t)["alcove.json"])
	require.NoError(t, err)
	turn := false
	job.Work = survey.Work{Kerf: "0", Turn: &turn, Least: "2", Breakage: "7", Allowance: "12", Notch: "half",
		Niche: survey.NicheWork{Depth: "3 1/2", Back: true, Trim: true, Tile: survey.Tile{Width: "2", Height: "2"}},
		Holds: true, Hours: survey.Hours{First: "12", Grout: "36", Sealant: "48", Water: "72"}}
	job, err = job.Duplicate("sage", "large")
	require.NoError(t, err)
	job.Choices[1].Tile = survey.Tile{Width: "11 13/16", Height: "23 5/8"}
	job.Choices[1].Bond = survey.Bond{Kind: "stack"}
	return job
}

func TestWorkAndChoicesAreReadBackAsWritten(t *testing.T) {
	job := rich(t)
	data, err := survey.Write(job)
	require.NoError(t, err)
	again, err := survey.Read(data)
	require.NoError(t, err)
	assert.Equal(t, job, again)
	room, faults := again.Resolve()
	require.Empty(t, faults)
	assert.Zero(t, *room.Work.Kerf)
	assert.False(t, *room.Work.Turn)
	assert.Equal(t, 7, *room.Work.Breakage)
	assert.Equal(t, 72, *room.Work.Water)
}

func TestAJobWithoutThemIsWrittenAsBefore(t *testing.T) {
	job, err := survey.Read(jobFiles(t)["alcove.json"])
	require.NoError(t, err)
	data, err := survey.Write(job)
	require.NoError(t, err)
	for _, field := range []string{"work", "choices", "chosen"} {
		assert.NotContains(t, string(data), `"`+field+`"`)
	}
}

func TestWorkAndChoicesRefuse(t *testing.T) {
	type job = survey.Job
	for _, c := range []struct {
		spoil func(j *job)
		fault string
	}{
		{func(j *job) { j.Work.Kerf = "2" }, "work.kerf: found “2”; write a length from"},
		{func(j *job) { j.Work.Least = "some" }, "work.least: found “some”"},
		{func(j *job) { j.Work.Breakage = "5.5" }, "work.breakage: found “5.5”; write a whole number of percent from 0 to 100"},
		{func(j *job) { j.Work.Allowance = "101" }, "work.allowance: found “101”"},
		{func(j *job) { j.Work.Notch = "wide" }, "work.notch: found “wide”; write one of quarter, three eighths, half"},
		{func(j *job) { j.Work.Niche.Depth = "-1" }, "work.niche.depth: found “-1”"},
		{func(j *job) { j.Work.Niche.Tile.Width = "" }, "work.niche.tile.width: found nothing"},
		{func(j *job) { j.Work.Hours.Water = "-1" }, "work.hours.water: found “-1”; write a whole number of hours"},
		{func(j *job) { j.Choices[1].Name = "sage" }, "choices[1].name: found “sage” a second time"},
		{func(j *job) { j.Choices[1].Name = " " }, "choices[1].name: found “ ”; write a name"},
		{func(j *job) { j.Choices[1].Joint.Plain = "x" }, "choices[1].joint: found “x”"},
		{func(j *job) { j.Choices[1].Tile.Width = "" }, "choices[1].tile.width: found nothing"},
		{func(j *job) { j.Choices[1].Bond.Kind = "odd" }, "choices[1].bond.kind: found “odd”"},
		{func(j *job) { j.Choices[1].Pins.Walls = map[string]survey.WallPin{"back": {Joint: "x"}} }, "choices[1].pins.walls.back.joint: found “x”"},
		{func(j *job) { j.Choices[0].Joint.Plain = "1/8" }, "choices[0]: found a tile, joint, bond, grout or pins of the chosen one; write only its name"},
		{func(j *job) { j.Chosen = "blue" }, "chosen: found “blue”; write the name of one of the choices"},
		{func(j *job) { j.Choices = nil }, "chosen: found “sage”; write nothing here"},
		{func(j *job) { j.Choices = make([]survey.Choice, 13) }, "choices: found 13 choices; write at most 12"},
	} {
		job := rich(t)
		c.spoil(&job)
		_, faults := job.Resolve()
		require.NotEmpty(t, faults, c.fault)
		assert.Contains(t, faults[0].String(), c.fault)
	}
}

func TestChoicesAreChosenRenamedAndDropped(t *testing.T) {
	job := rich(t)
	first := job.Tile
	large, there := job.As("large")
	require.True(t, there)
	assert.Equal(t, "11 13/16", large.Tile.Width)
	assert.Empty(t, large.Choices)

	chosen, err := job.Choose("large")
	require.NoError(t, err)
	assert.Equal(t, "large", chosen.Chosen)
	assert.Equal(t, "11 13/16", chosen.Tile.Width)
	assert.Equal(t, first, chosen.Choices[0].Tile, "the other one is kept")
	back, err := chosen.Choose("sage")
	require.NoError(t, err)
	assert.Equal(t, job, back)

	renamed, err := chosen.Rename("large", "tall")
	require.NoError(t, err)
	assert.Equal(t, "tall", renamed.Chosen)
	_, faults := renamed.Resolve()
	assert.Empty(t, faults)

	_, err = chosen.Drop("large")
	assert.ErrorContains(t, err, "is the chosen one")
	alone, err := chosen.Drop("sage")
	require.NoError(t, err)
	assert.Empty(t, alone.Choices)
	assert.Empty(t, alone.Chosen)

	_, there = job.As("none")
	assert.False(t, there)
	for _, fail := range []func(string) error{
		func(n string) error { _, err := job.Choose(n); return err },
		func(n string) error { _, err := job.Rename(n, "x"); return err },
		func(n string) error { _, err := job.Duplicate(n, "x"); return err },
		func(n string) error { _, err := job.Drop(n); return err },
	} {
		assert.ErrorContains(t, fail("none"), "there is no choice “none”")
	}
}
