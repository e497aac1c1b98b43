package bench

import (
	"os"
	"testing"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/page"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The card of a whole tile of a pattern says its own size, not that of the first tile of the job: in the field,
// in a band and on the back of a niche.
func TestTheCardOfATileOfAPatternSaysItsOwnSize(t *testing.T) {
	file, err := os.ReadFile("../../testdata/jobs/sheets.json")
	require.NoError(t, err)
	job, err := survey.Read(file)
	require.NoError(t, err)
	job.Walls = job.Walls[:1]
	job.Tile = survey.Tile{Width: "5 7/8", Height: "5 7/8"}
	job.Bond = survey.Bond{Kind: "pinwheel", Tiles: []survey.Tile{{Width: "1 7/8"}}}
	small := survey.Bond{Kind: "pinwheel", Turn: "45", Tiles: []survey.Tile{{Width: "7/8"}}}
	job.Bands = []survey.Band{{Name: "b", Height: "7", Bottom: survey.Mark{At: "20"}, Tile: survey.Tile{Width: "2", Height: "2"}, Joint: "1/8", Bond: small}}
	back := &job.Walls[0].Openings[0].Inside.Back
	back.Tile, back.Joint, back.Bond = &survey.Tile{Width: "3", Height: "3"}, "1/8", &survey.Bond{Kind: "pinwheel", Tiles: []survey.Tile{{Width: "1"}}}
	plan, err := layout.Now(job)
	require.NoError(t, err)
	schedule, seen := page.Schedule(plan), map[string]bool{}
	say := func(id string) { seen[card(plan, schedule, id).lines()[0]] = true }
	for _, p := range plan.Walls[0].Pieces {
		if p.Whole {
			say(p.ID)
		}
	}
	for _, f := range plan.Walls[0].Insides[0].Faces {
		for _, p := range f.Pieces {
			if p.Whole && f.Is == survey.BackFace {
				say(p.ID)
			}
		}
	}
	want := map[string]bool{}
	for _, size := range []string{`5 7/8"`, `1 7/8"`, `2"`, `7/8"`, `3"`, `1"`} {
		want["tile of "+size+" × "+size] = true
	}
	assert.Equal(t, want, seen)
}
