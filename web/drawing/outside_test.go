package drawing

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// halfWall is the half wall that ships, its outside corner made in a way.
func halfWall(t *testing.T, how string) layout.Plan {
	file, err := os.ReadFile("../../testdata/jobs/half-wall.json")
	require.NoError(t, err)
	job, err := survey.Read(file)
	require.NoError(t, err)
	job.Trims = append(job.Trims, survey.TrimTile{Name: "bar", Kind: "profile", Width: "1/8"})
	job.Walls[2].Right = survey.End{Meets: "outside corner", Corner: how}
	if how == "profile" {
		job.Walls[2].Right.Trim = "bar"
	}
	p, err := layout.Now(job)
	require.NoError(t, err)
	return p
}

// Bed and tile are 3/16 + 5/16 = 1/2 in: there is the finished edge. Beside the tile of
// the panel is seen the side of the half wall's tile, 5/16 in, or the profile, 1/8 in; beside
// that of the half wall, which laps or carries the profile, nothing; at a mitre neither.
func TestWhatIsSeenAtAnOutsideCorner(t *testing.T) {
	const in = length.Inch
	for how, seen := range map[string]length.Length{"lap": 5 * in / 16, "bullnose": 5 * in / 16, "profile": in / 8, "mitre": 0} {
		p := halfWall(t, how)
		b := newBoard(p, wallTexts)
		face, panel := b.turns(p.Walls[2]), b.turns(p.Walls[3])
		require.Len(t, face, 1)
		require.Len(t, panel, 1)
		assert.Equal(t, 32*in, face[0].edge, how)
		assert.Equal(t, face[0].edge, face[0].hatched, how)
		assert.Equal(t, -in/2, panel[0].edge, how)
		assert.Equal(t, seen, panel[0].hatched-panel[0].edge, how)
		assert.Contains(t, b.turnsText(p.Walls[2]), "outside corner H–P: "+how)
	}
	p := halfWall(t, "mitre")
	assert.Contains(t, newBoard(p, wallTexts).turnsText(p.Walls[3]), "outside corner H–P: mitre 45°")
	assert.Empty(t, newBoard(p, wallTexts).turnsText(p.Walls[1]))
}

// The key plan goes up, right, down, and at the outside corner right again: away from
// the room.
func TestTheKeyPlanTurnsAway(t *testing.T) {
	var ways []Point
	for _, r := range runs(halfWall(t, "lap")) {
		ways = append(ways, Point{sign(r.to.X - r.from.X), sign(r.to.Y - r.from.Y)})
	}
	assert.Equal(t, []Point{{0, -1}, {1, 0}, {0, 1}, {1, 0}}, ways)
}

// Walls that meet the runs of others stand apart in the key plan, beside what is walked along.
// Found on a shower with a curb and a seat: the curb was drawn across the back wall.
func TestTheKeyPlanSetsBenchesAndCurbsApart(t *testing.T) {
	data, err := os.ReadFile("../../testdata/jobs/bench.json")
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	p, err := layout.Now(job)
	require.NoError(t, err)
	rs := runs(p)
	right := rs[2].to.X
	for _, i := range []int{3, 4} {
		assert.Greater(t, min(rs[i].from.X, rs[i].to.X), right, p.Walls[i].Found.Name)
	}
	assert.NotEqual(t, rs[3].from.Y, rs[4].from.Y)
	letters := 0
	for _, e := range KeyPlan(p, 0).Elements {
		if l, is := e.(Label); is && l.Kind == KeyWall {
			letters++
		}
	}
	assert.Equal(t, len(p.Walls), letters, "each has its letter")
}

// A wrap marks where it folds away from the room, once, and nowhere else.
func TestAWrapIsMarkedWhereItFolds(t *testing.T) {
	folds := func(p layout.Plan) (n int) {
		for _, e := range Wrap(p, Options{}).Elements {
			if c, ok := e.(Path); ok && c.Kind == Corner && c.Dash == DashDot {
				n++
			}
		}
		return n
	}
	assert.Equal(t, 1, folds(halfWall(t, "lap")))
}
