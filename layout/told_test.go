package layout_test

import (
	"os"
	"testing"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// A classic line or start that is the one chosen gives what was chosen. These said that the line that
// stands would be worse than itself, because they looked at it again with less care.
func TestTheLineThatWasChosenIsAsGoodAsItself(t *testing.T) {
	chosen := 0
	for _, file := range []string{"cases/c-4x16-free", "cases/min-free-end", "cases/few-tiles-many-places-pinned",
		"doubts/asked/rim-over-the-line-of-two", "doubts/true/niche-in-a-wide-range", "jobs/toy", "jobs/one-wall"} {
		document, err := os.ReadFile("../testdata/" + file + ".json")
		require.NoError(t, err)
		job, err := survey.Read(document)
		require.NoError(t, err)
		plan, err := layout.Now(job)
		require.NoError(t, err)
		pitch, pinned := plan.Room.Tile.Height+plan.Room.Joint, false
		for _, w := range plan.Walls {
			pinned = pinned || w.Found.Pin != nil
			for _, c := range w.Start.Classic {
				if c.Edge == w.Start.Edge {
					chosen++
					require.Equal(t, "the same", c.Figures.Its, "%s, wall %s, %s: chosen %s", file, w.Found.Name, c.Name, c.Figures.Chosen)
				}
			}
		}
		for _, l := range plan.Setout.Lines {
			if l.Line == plan.Setout.Line || !pinned && length.Mod(l.Line-plan.Setout.Line, pitch) == 0 {
				chosen++
				require.Equal(t, "the same", l.Figures.Its, "%s, %s: chosen %s", file, l.Name, l.Figures.Chosen)
			}
		}
	}
	require.Greater(t, chosen, 12)
}

// A start that is pinned belongs to a course, so that a line three courses higher is another set-out where
// the bond does not come back after three.
func TestALineWholeCoursesAwayFromAPinnedStartIsAnother(t *testing.T) {
	document, err := os.ReadFile("../testdata/cases/tape-course-smallest-pinned.json")
	require.NoError(t, err)
	job, err := survey.Read(document)
	require.NoError(t, err)
	plan, err := layout.Now(job)
	require.NoError(t, err)
	found := false
	for _, l := range plan.Setout.Lines {
		if l.Name == "line at the top of n0" {
			found = true
			require.Zero(t, length.Mod(l.Line-plan.Setout.Line, plan.Room.Tile.Height+plan.Room.Joint))
			require.NotEqual(t, "the same", l.Figures.Its)
			job.Pins.Course.Line = lengthText(l.Line)
			there, err := layout.Now(job)
			require.NoError(t, err)
			require.Equal(t, l.Figures.Slivers, there.Setout.Merit.Slivers, "it gives what is told of it")
			require.Equal(t, l.Figures.Unworkable, there.Setout.Merit.Unworkable)
		}
	}
	require.True(t, found)
}

// The slide curve of a wall on which all was measured is counted from its pieces, those beside a window as well.
func TestTheSlideCurveKnowsWhatStandsBesideAWindow(t *testing.T) {
	document, err := os.ReadFile("../testdata/jobs/corner-shower.json")
	require.NoError(t, err)
	job, err := survey.Read(document)
	require.NoError(t, err)
	plan, err := layout.Now(job)
	require.NoError(t, err)
	seen := 0
	for i, w := range plan.Walls {
		if w.Found.Name != "window wall" {
			continue
		}
		for _, p := range w.Start.Slide {
			seen++
			job.Pins = survey.Pins{Walls: map[string]survey.WallPin{w.Found.Name: {Edge: lengthText(p.Edge)}}}
			job.Pins.Course.Line = lengthText(plan.Setout.Line)
			there, err := layout.Quick(t.Context(), job)
			require.NoError(t, err)
			share := piece.Half
			for _, r := range there.Walls[i].Runs {
				if !r.Low && r.Share.Less(share) {
					share = r.Share
				}
			}
			require.InDelta(t, share.Float(), p.Share.Float(), 0.001, "started at %s", lengthText(p.Edge))
		}
	}
	require.Greater(t, seen, 5)
}
