package layout_test

import (
	"fmt"
	"testing"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/finding"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// underARoof is one wall under a ceiling that falls 300 in 900, level where rise is nothing.
const underARoof = `{"format": "coursewright-job/1", "title": "roof", "units": "mm", "joint": "3",
 "tile": {"name": "white", "width": "300", "height": "100", "thickness": "8"}, "bond": {"kind": "%s"}, %s
 "walls": [{"name": "back", "width": "900", "left": {"meets": "corner"}, "right": {"meets": "corner"},
  "base": [{"meets": "floor", "readings": [{"at": "0", "drop": "900"}, {"at": "900", "drop": "900"}]}],
  "head": {"meets": "ceiling", "readings": [{"at": "0", "rise": "600"}, {"at": "900", "rise": "%s"}]}}]}`

// Under a ceiling that slants no wall is left bare; patterns are proven there as elsewhere, rooms with bands never.
func TestWhatIsProvenUnderARoof(t *testing.T) {
	const band = `"bands": [{"name": "accent", "bottom": {"at": "-200"}, "courses": 1, "tile": {"width": "300", "height": "50"}}],`
	for _, c := range []struct {
		bond, with, rise string
		proven           bool
		says             string
	}{
		{"stack", "", "600", true, ""},
		{"herringbone", "", "600", true, ""}, {"herringbone", "", "300", true, ""}, {"diagonal", "", "-400", true, ""},
		{"stack", band, "600", true, ""}, {"stack", band, "300", false, "The ceiling slants over a band"},
	} {
		job, err := survey.Read([]byte(fmt.Sprintf(underARoof, c.bond, c.with, c.rise)))
		require.NoError(t, err)
		plan, err := layout.Now(job)
		require.NoError(t, err)
		require.Equal(t, c.proven, plan.Setout.Proven, "%v", c)
		require.Contains(t, plan.Setout.Bound, c.says, "%v", c)
		require.Zero(t, plan.Setout.Merit.Bare, "%v", c)
	}
}

// Under a roof that falls more than half its width pieces run out to a point. No saw fails for that: it was said of each that nobody can
// cut it, and of the smallest that it lies behind the tile of the next wall, where there is none.
func TestPiecesThatRunOutToAPointAreCut(t *testing.T) {
	job, err := survey.Read([]byte(fmt.Sprintf(underARoof, "stack", "", "-310")))
	require.NoError(t, err)
	p, err := layout.Now(job)
	require.NoError(t, err)
	points := 0
	for _, x := range p.Walls[0].Pieces {
		if x.Unworkable && !x.NoSaw() {
			points++
			require.Zero(t, x.Least, x.ID)
			require.Len(t, x.Face[0], 3, x.ID)
		}
	}
	require.Positive(t, points)
	for _, g := range cuts.Of(cuts.Input{Room: p.Room, Walls: p.Walls}, cuts.For(p.Room)).Groups {
		if g.How == cuts.Unworkable {
			for _, id := range g.Pieces {
				for _, x := range p.Walls[0].Pieces {
					require.True(t, x.ID != id || x.NoSaw(), id)
				}
			}
		}
	}
	require.True(t, p.Setout.Least.Point)
	require.Contains(t, p.Setout.Reasons[0], "runs out to a point")
}

// Where a room under a roof is not proven, it is said which of the pieces that count as unworkable can be cut: six were
// named, and the fault spoke of one.
func TestWhatOnlyRunsOutToAPointIsToldWhereNothingIsProven(t *testing.T) {
	job := shippedJob(t, "boxing.json")
	for i := range job.Walls {
		job.Walls[i].Head.Readings = []survey.Rise{{At: "0", Rise: "1180"}, {At: "1", Rise: "1180"}}
	}
	job.Walls[0].Head.Readings = []survey.Rise{{At: "0", Rise: "1900"}, {At: "1246", Rise: "1180"}}
	p, err := layout.Now(job)
	require.NoError(t, err)
	pointed := 0
	for _, q := range p.Walls[0].Pieces {
		if q.Unworkable && !q.NoSaw() {
			pointed++
		}
	}
	require.Greater(t, pointed, 1)
	for _, f := range p.Findings {
		if f.Rule == finding.NotProvenBest {
			require.Contains(t, f.Text, fmt.Sprintf("%d pieces that count as unworkable only run out to a point", pointed))
			return
		}
	}
	t.Fatal("it is proven: take another room")
}
