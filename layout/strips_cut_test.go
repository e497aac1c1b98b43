package layout_test

import (
	"fmt"
	"testing"

	"coursewright/layout"
	"coursewright/layout/keep"
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// besideAStrip is a wall of 60 in, of tile of 6 in with joints and gaps of 1/8, with a strip of three columns:
// 5 7/8 in wide, so the field is open for 6 1/8.
func besideAStrip(t *testing.T, left, bond, middle string) survey.Job {
	t.Helper()
	job, err := survey.Read([]byte(fmt.Sprintf(`{"format": "coursewright-job/1", "title": "t", "units": "in", "tile": {"width": "6", "height": "6", "thickness": "5/16"}, "joint": "1/8",
		"bond": %s, "walls": [{"name": "back", "width": "60", "left": %s, "right": {"meets": "corner", "gap": "1/8"},
		"base": [{"meets": "floor", "gap": "1/8", "readings": [{"at": "0", "drop": "30"}, {"at": "60", "drop": "30"}]}],
		"head": {"stops": {"at": "30"}},
		"strips": [{"name": "slate", "columns": 3, "middle": {"at": "%s"}, "tile": {"width": "1 7/8", "height": "1 7/8", "thickness": "1/4"}}]}]}`, bond, left, middle)))
	require.NoError(t, err)
	return job
}

const (
	inACorner = `{"meets": "corner", "gap": "1/8"}`
	atAnEnd   = `{"stops": {"at": "0"}}`
	inStack   = `{"kind": "stack"}`
)

func solvedNow(t *testing.T, job survey.Job) layout.Plan {
	t.Helper()
	p, err := layout.Solve(t.Context(), job)
	require.NoError(t, err)
	return p
}

// cutOf are the least widths of the pieces that each side of a wall cuts.
func cutOf(w *layout.Wall) map[plane.Side]length.Length {
	out := map[plane.Side]length.Length{}
	for _, p := range w.Pieces {
		for _, side := range p.Cuts {
			if wide, there := out[side]; !there || p.Wide < wide {
				out[side] = p.Wide
			}
		}
	}
	return out
}

// The side of the strip: the wall has one stretch of base and no other opening.
const ofStrip = survey.SideBase + 1

// By hand: the strip on 23 takes the field from 19 15/16 on, so 19 13/16 are left of it: three tiles and joints
// (18 3/8), and in the corner a sliver of 1 7/16. Cut at both ends, that and a tile are 7 7/16 together, of which neither need be
// under half a tile. To the right of it are 33 13/16: five tiles and joints (30 5/8) and 3 3/16, over half a tile, so that
// the tile beside the strip stays whole there.
func TestTileIsCutBesideAStripWhereWholeTileLeavesASliver(t *testing.T) {
	job := besideAStrip(t, inACorner, inStack, "23")
	p := solvedNow(t, job)
	cut := cutOf(&p.Walls[0])
	assert.Zero(t, p.Setout.Merit.Slivers)
	assert.True(t, p.Setout.Proven)
	assert.Equal(t, 7*length.Inch+length.Inch*7/16, cut[survey.SideLeft]+cut[ofStrip])
	assert.GreaterOrEqual(t, min(cut[survey.SideLeft], cut[ofStrip]), 3*length.Inch)
	assert.Equal(t, 3*length.Inch+length.Inch*3/16, cut[survey.SideRight])
	assert.Contains(t, p.Setout.Reasons, "On wall back tile is cut beside strip slate: whole tile there would give 10 slivers instead of none.")
	assert.Equal(t, 1, p.Setout.Merit.Built, "one edge of the strip is off the joint lines")

	job.Walls[0].Strips[0].Beside = "whole"
	p = solvedNow(t, job)
	assert.Equal(t, length.Inch+length.Inch*7/16, cutOf(&p.Walls[0])[survey.SideLeft])
	assert.Equal(t, 10, p.Setout.Merit.Slivers)
	assert.True(t, p.Setout.Proven)
	assert.Zero(t, p.Setout.Merit.Built)
}

// By hand: from an end that stops at 0 to the strip on 20 are 16 15/16: two tiles and joints (12 1/4) and 4 11/16. The end keeps its full
// tile (merit.md, term 5) and the cut is beside the strip. On 21 1/2 they are three tiles with their joints to the unit, and on 17 5/8
// what is left would be a sliver beside the strip, 2 5/16: no fifth, so the end keeps its tile.
func TestAnEndThatStopsKeepsItsTileBeforeAStripDoes(t *testing.T) {
	for middle, want := range map[string]length.Length{"20": 4*length.Inch + length.Inch*11/16, "21 5/16": 0, "17 5/8": 2*length.Inch + length.Inch*5/16} {
		p := solvedNow(t, besideAStrip(t, atAnEnd, inStack, middle))
		assert.Zero(t, p.Setout.Merit.Exposed, middle)
		assert.Equal(t, want, cutOf(&p.Walls[0])[ofStrip], middle)
	}
}

// No tile is cut beside a strip for what the order of merit has after the exposed ends: by hand, the strip on 24 1/2
// leaves a cut of 2 15/16 in the corner, and of 1 11/16, a little over a quarter, on the right.
func TestTileBesideAStripStaysWholeForLesserCuts(t *testing.T) {
	p := solvedNow(t, besideAStrip(t, inACorner, inStack, "24 1/2"))
	cut := cutOf(&p.Walls[0])
	assert.Zero(t, cut[ofStrip])
	assert.Equal(t, 2*length.Inch+length.Inch*15/16, cut[survey.SideLeft])
	assert.Equal(t, length.Inch+length.Inch*11/16, cut[survey.SideRight])
	assert.Nil(t, p.Walls[0].Start.Cut)
}

// What is cut beside strips is kept, in every place of the strip, and nothing is worse by it than with
// whole tile down to the exposed ends.
func TestWhatIsCutBesideAStripIsKept(t *testing.T) {
	cuts := 0
	for _, bond := range []string{inStack, `{"kind": "running", "offset": "1/2"}`, `{"kind": "running", "offset": "1/3"}`, `{"kind": "running", "offset": "1/2", "along": "plumb"}`} {
		for _, left := range []string{inACorner, atAnEnd} {
			for _, middle := range []string{"19", "20 1/4", "22", "23", "26 7/8"} {
				job := besideAStrip(t, left, bond, middle)
				p, err := layout.Now(job)
				require.NoError(t, err)
				if p.Walls[0].Start.Cut != nil {
					cuts++
				}
				held, err := layout.Now(keep.Hold(job, keep.Of("", job, p.Setout, p.Walls)))
				require.NoError(t, err)
				assert.True(t, keep.Same(p.Walls, held.Walls), "%s %s %s", bond, left, middle)
				assert.Equal(t, keep.Of("", job, p.Setout, p.Walls), keep.Of("", job, held.Setout, held.Walls))
				wallsMadeUp(t, p)
				job.Walls[0].Strips[0].Beside = "whole"
				whole, err := layout.Now(job)
				require.NoError(t, err)
				order, term := p.Setout.Order.Compare(&p.Setout.Merit, &whole.Setout.Merit)
				assert.LessOrEqual(t, order, 0, "%s %s %s: whole tile is better in %s", bond, left, middle, term)
			}
		}
	}
	assert.Greater(t, cuts, 8, "or this tests nothing")
}

func TestTileBesideAStripIsSaidOfOneFromBaseToHead(t *testing.T) {
	job := besideAStrip(t, inACorner, inStack, "23")
	job.Walls[0].Strips[0].Beside = "cut"
	_, err := layout.Now(job)
	assert.ErrorContains(t, err, "walls[0].strips[0].beside")
	job.Walls[0].Strips[0].Beside = "whole"
	job.Walls[0].Strips[0].Top = &survey.Mark{At: "10"}
	_, err = layout.Now(job)
	assert.ErrorContains(t, err, "goes on over or under")
	job.Walls[0].Strips[0] = besideAStrip(t, inACorner, inStack, "23").Walls[0].Strips[0]
	job.Held = &survey.Held{Walls: map[string]survey.WallPin{"back": {Beyond: map[string]string{"slat": "2"}}}}
	_, err = layout.Now(job)
	assert.ErrorContains(t, err, "held.walls.back.beyond.slat")
}
