package layout_test

import (
	"context"
	"slices"
	"testing"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/merit"
	"coursewright/layout/remedy"
	"coursewright/layout/setout/tell"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every remedy, written into the job and solved, gives the figures it states, and
// is better by the order it is told for. Of the drawn rooms only small ones are
// asked, because each is solved some dozen times.
func TestRemediesGiveWhatTheyState(t *testing.T) {
	told := 0
	for seed := range 16 {
		job, err := survey.Read(rooms.Example(seed))
		require.NoError(t, err)
		room, faults := job.Resolve()
		require.Empty(t, faults)
		if len(job.Walls) > 1 || room.About() > 300 {
			continue
		}
		now, err := layout.Now(job)
		require.NoError(t, err)
		help, err := layout.Remedies(context.Background(), job, now)
		require.NoError(t, err)
		all := help.Remedies
		told += len(all)
		for _, r := range all {
			checkRemedy(t, job, now, r)
		}
		short, err := layout.WouldHelp(context.Background(), job, now)
		require.NoError(t, err)
		changes := slices.DeleteFunc(slices.Clone(all), func(r layout.Remedy) bool { return r.Kind == remedy.NearMiss })
		assert.Equal(t, changes, append([]layout.Remedy{}, short.Remedies...), "seed %d: the same without near misses", seed)
		if assert.Equal(t, remedy.Troubled(&now.Setout.Merit), now.Troubled()); !now.Troubled() {
			assert.Empty(t, short.Remedies, "seed %d", seed)
			assert.False(t, slices.ContainsFunc(all, func(r layout.Remedy) bool { return r.Kind != remedy.NearMiss }), "seed %d", seed)
		}
	}
	assert.Positive(t, told)
}

func checkRemedy(t require.TestingT, job survey.Job, now layout.Plan, r layout.Remedy) {
	changed, err := remedy.Apply(job, r.Use)
	require.NoError(t, err)
	then, err := layout.Now(changed)
	require.NoError(t, err, r.Text)
	assert.Equal(t, then.Setout.Least, r.Least, r.Text)
	if r.Kind == remedy.NearMiss {
		assert.Equal(t, r.Tiles, tilesOf(now)-tilesOf(then), r.Text)
		return
	}
	order := now.Setout.Order
	if r.Kind == remedy.Preference {
		order = then.Setout.Order
	}
	c, term := order.Compare(&then.Setout.Merit, &now.Setout.Merit)
	assert.Negative(t, c, r.Text)
	assert.Equal(t, term, r.Term, r.Text)
	if r.Kind != remedy.Preference {
		c, _ = order.Until(&then.Setout.Merit, &now.Setout.Merit, merit.Mirror)
		assert.Negative(t, c, r.Text)
	}
	u := now.Room.Units
	assert.Equal(t, tell.Figure(u, term, &now.Setout.Merit, &then.Setout.Merit), r.Before, r.Text)
	assert.Equal(t, tell.Figure(u, term, &then.Setout.Merit, &now.Setout.Merit), r.After, r.Text)
}

// tilesOf is how many tiles a plan takes: whole ones and those that are cut into.
func tilesOf(p layout.Plan) (n int) {
	for _, w := range p.Walls {
		for _, piece := range w.Pieces {
			if piece.Whole {
				n++
			}
		}
	}
	return n + offcutsOf(p).TilesCut
}

func offcutsOf(p layout.Plan) cuts.Offcuts {
	return cuts.Of(cuts.Input{Room: p.Room, Walls: p.Walls}, cuts.For(p.Room)).Offcuts
}
