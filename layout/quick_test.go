package layout_test

import (
	"context"
	"os"
	"testing"

	"coursewright/layout/keep"
	"coursewright/layout/setout"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Whoever asks quickly gets the same set-out, bands, strips, columns and patterns alike; only
// what is told beside it is left out.
func TestQuickIsTheSameSetOut(t *testing.T) {
	jobs := map[string]survey.Job{"demo": demo(t), "banded": demo(t), "strip": demo(t), "columns": demo(t), "parted and banded": demo(t)}
	change := func(name string, f func(*survey.Job)) { job := jobs[name]; f(&job); jobs[name] = job }
	change("banded", func(j *survey.Job) { j.Bands = []survey.Band{mosaic(survey.Mark{From: "16", To: "22"})} })
	change("strip", func(j *survey.Job) { j.Walls[0].Strips = []survey.Strip{slate(survey.Mark{From: "16", To: "22"})} })
	change("columns", func(j *survey.Job) {
		s := slate(survey.Mark{At: "19 3/4"})
		s.Columns, s.MostColumns = 2, 3
		j.Walls[0].Strips = []survey.Strip{s}
	})
	change("parted and banded", func(j *survey.Job) {
		j.Walls[0].Strips = []survey.Strip{slate(survey.Mark{At: "19 3/4"})}
		j.Bands = []survey.Band{mosaic(survey.Mark{At: "28"})}
	})
	for _, name := range []string{"bench", "herringbone", "corner-shower"} {
		data, err := os.ReadFile("../testdata/jobs/" + name + ".json")
		require.NoError(t, err)
		jobs[name], err = survey.Read(data)
		require.NoError(t, err)
	}
	for name, job := range jobs {
		room, faults := job.Resolve()
		require.Empty(t, faults, name)
		_, all, walls, err := setout.Solve(context.Background(), room)
		require.NoError(t, err, name)
		room, faults = job.Resolve()
		require.Empty(t, faults, name)
		_, quick, its, err := setout.Quick(context.Background(), room)
		require.NoError(t, err, name)
		assert.Equal(t, []any{all.Line, all.Hand, all.Joint, all.Merit, all.Proven, all.Bound, all.Least, all.CutTiles, all.Bands, all.Holds, all.Joints}, []any{quick.Line, quick.Hand, quick.Joint, quick.Merit, quick.Proven, quick.Bound, quick.Least, quick.CutTiles, quick.Bands, quick.Holds, quick.Joints}, name)
		assert.True(t, keep.Same(walls, its), name)
		for i, w := range all.Walls {
			assert.Equal(t, []any{w.Edge, w.X, w.OnTile, w.Placed, w.Pinned}, []any{quick.Walls[i].Edge, quick.Walls[i].X, quick.Walls[i].OnTile, quick.Walls[i].Placed, quick.Walls[i].Pinned}, name)
			assert.Len(t, quick.Walls[i].Classic, 1, "%s: nothing is told of the classic starts", name)
		}
		assert.Empty(t, quick.Lines, name)
		assert.Equal(t, []bool{true, false}, []bool{all.Told(), quick.Told()}, name)
	}
}
