package survey_test

import (
	"strings"
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func fitted() survey.Job {
	job := sketch("in", "a", "b", "c")
	job.Walls[1].Fixtures = []survey.Fixture{
		{Kind: "corner shelf", Name: "shelf", Corner: "right", Width: "8", Height: survey.Measure{Mark: free("2", "10")}, Near: "7"},
		{Kind: "foot rest", Name: "rest", Corner: "left", Width: "7", Height: survey.Measure{Plain: "-26"}},
		{Kind: "soap dish", Name: "dish", At: "20", Width: "6", High: "4", Height: survey.Measure{Mark: free("-6", "0")}},
		{Kind: "grab bar", Name: "bar", At: "30", Width: "24", Height: survey.Measure{Plain: "-5"}},
		{Kind: "glass line", Name: "door", At: "44", Holes: []survey.Drilled{{Height: "-30"}, {Height: "30"}}},
	}
	return job
}

func TestFixtures(t *testing.T) {
	room, faults := fitted().Resolve()
	require.Empty(t, faults)
	f := room.Walls[1].Fixtures
	require.Len(t, f, 5)
	assert.Equal(t, survey.FixtureFound{Kind: survey.CornerShelf, Name: "shelf", Right: true, At: room.Walls[1].Width, Width: 8 * in,
		Height: survey.Span{From: 2 * in, To: 10 * in}, Near: 7 * in}, f[0])
	assert.Equal(t, -26*in, f[1].Near, "what is measured is where it is wished")
	assert.Equal(t, -3*in, f[2].Near, "the middle of the range")
	assert.Len(t, f[4].Holes, 2)
}

func TestFixturesAreRefused(t *testing.T) {
	type fixtures = []survey.Fixture
	for _, c := range []struct {
		spoil func(fixtures)
		fault string
	}{
		{func(f fixtures) { f[0].Kind = "mirror" }, "walls[1].fixtures[0].kind: found “mirror”; write one of corner shelf, foot rest, soap dish, grab bar, glass line"},
		{func(f fixtures) { f[0].Name = "" }, "walls[1].fixtures[0].name: found nothing; write a name"},
		{func(f fixtures) { f[1].Name = "shelf" }, "walls[1].fixtures[1].name: found “shelf” a second time"},
		{func(f fixtures) { f[0].Corner = "top" }, "walls[1].fixtures[0].corner: found “top”; write one of left, right"},
		{func(f fixtures) { f[0].At = "3" }, "walls[1].fixtures[0].at: found “3”; write nothing here: a shelf or a foot rest stands in a corner"},
		{func(f fixtures) { f[0].Width = "" }, "walls[1].fixtures[0].width: found nothing"},
		{func(f fixtures) { f[0].Near = "11" }, "walls[1].fixtures[0].near: found “11”; write a length from 2\" to 10\""},
		{func(f fixtures) { f[1].Near = "-26" }, "walls[1].fixtures[1].near: found “-26”; write nothing here: a wish belongs to a height that is a range"},
		{func(f fixtures) { f[1].Height = survey.Measure{} }, "walls[1].fixtures[1].height: found nothing"},
		{func(f fixtures) { f[1].High = "4" }, "walls[1].fixtures[1].high: found “4”; write nothing here"},
		{func(f fixtures) { f[2].Corner = "left" }, "walls[1].fixtures[2].corner: found “left”; write nothing here"},
		{func(f fixtures) { f[2].High = "" }, "walls[1].fixtures[2].high: found nothing"},
		{func(f fixtures) { f[3].At = "300" }, "walls[1].fixtures[3].at: found “300”"},
		{func(f fixtures) { f[3].Holes = []survey.Drilled{{}} }, "walls[1].fixtures[3].holes: found holes; write nothing here"},
		{func(f fixtures) { f[4].Holes[1].Height = "up" }, "walls[1].fixtures[4].holes[1].height: found “up”"},
		{func(f fixtures) { f[4].Height = survey.Measure{Plain: "3"} }, "walls[1].fixtures[4].height: found “3”; write nothing here"},
	} {
		job := fitted()
		c.spoil(job.Walls[1].Fixtures)
		_, faults := job.Resolve()
		require.NotEmpty(t, faults, c.fault)
		assert.True(t, strings.HasPrefix(faults[0].String(), c.fault), "want %s\ngot  %s", c.fault, faults[0])
	}
	job := fitted()
	job.Walls[1].Left = survey.End{Stops: mark("0")}
	_, faults := job.Resolve()
	require.Len(t, faults, 1)
	assert.Equal(t, "walls[1].fixtures[1].corner: found “left”, where the wall meets no corner; write an end that meets a corner", faults[0].String())
}
