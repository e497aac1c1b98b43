package tell_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/setout/tell"
	"coursewright/layout/survey"
)

// What a set-out would give is told against the chosen one in one breath: the second figure
// without the words of the first, and never "not no slivers".
func TestAFigureAgainstTheChosenOne(t *testing.T) {
	sight := func(s merit.Sight) merit.Merit { return merit.Merit{Sight: s} }
	half := []piece.Share{{Num: 1, Den: 2}}
	for _, c := range []struct {
		its, chosen merit.Merit
		says        string
	}{
		{sight(merit.Sight{Slivers: 15}), merit.Merit{}, "15 slivers, not none"},
		{sight(merit.Sight{Slivers: 2}), sight(merit.Sight{Slivers: 1}), "2 slivers, not 1"},
		{merit.Merit{}, sight(merit.Sight{Slivers: 1}), "no slivers, not 1"},
		{sight(merit.Sight{Bare: length.Inch}), merit.Merit{}, `1" of bare wall, not none`},
		{sight(merit.Sight{Thirds: 2}), merit.Merit{}, "2 runs of cuts under a third of a tile, not none"},
		{merit.Merit{Openings: 1}, merit.Merit{}, "1 pair of edges of free openings off the joint lines, not none"},
		{sight(merit.Sight{Runs: []piece.Share{{Num: 2, Den: 5}}}), sight(merit.Sight{Runs: half}), "a run of cuts at 40 %, not 50 %"},
		{merit.Merit{Work: 215}, merit.Merit{Work: 213}, "the work of 215 plain cuts, not 213"},
		{merit.Merit{Facing: 2 * length.Inch}, merit.Merit{Facing: length.Inch}, `2" between facing walls, not 1"`},
	} {
		var f plan.Figures
		tell.Against(&f, length.Imperial, merit.OrderFor(survey.Prefer{}), &c.its, &c.chosen)
		assert.Equal(t, c.says, f.Against())
		assert.Equal(t, tell.Figure(length.Imperial, f.Term, &c.chosen, &c.its), f.Chosen, "the plan file keeps the words of both")
	}
}

// Of what is not proven it is said what the best may have, and not twice the same figure where they differ by
// less than is shown.
func TestWhatIsNotProven(t *testing.T) {
	bare := func(l length.Length) *merit.Merit { return &merit.Merit{Sight: merit.Sight{Bare: l}} }
	says := func(bound, found *merit.Merit) string {
		return tell.Unproven(length.Imperial, merit.OrderFor(survey.Prefer{}), bound, found)
	}
	const begins = "Not every set-out was looked at"
	assert.Equal(t, begins+"; none can be better than this one.", says(bare(length.Inch), bare(length.Inch)))
	assert.Equal(t, begins+`. The best there may be has at best 1" of bare wall; this one has 2" of bare wall.`, says(bare(length.Inch), bare(2*length.Inch)))
	assert.Equal(t, begins+`. This one has 1" of bare wall; the best there may be differs from that by less than the figure shows.`, says(bare(length.Inch-1), bare(length.Inch)))
}

// What is less than a tape shows was said to be 0: “0 mm of bare wall instead of none”.
func TestAFigureIsNeverNothing(t *testing.T) {
	bare, none := merit.Merit{}, merit.Merit{}
	bare.Bare = length.Millimetre / 3
	assert.Equal(t, "under 1 mm of bare wall", tell.Figure(length.Metric, merit.Bare, &bare, &none))
	assert.Equal(t, "no bare wall", tell.Figure(length.Metric, merit.Bare, &none, &bare))
	few, more := merit.Merit{}, merit.Merit{}
	few.Runs, more.Runs = []piece.Share{{Num: 1, Den: 200}}, []piece.Share{{Num: 1, Den: 100}}
	assert.Equal(t, "a run of cuts at under 1 %", tell.Figure(length.Metric, merit.Runs, &few, &more))
	assert.Equal(t, "a run of cuts at 1 %", tell.Figure(length.Metric, merit.Runs, &more, &few))
}

// Two shares that are one percent alike were told against each other all the same: “39 % instead of 39 %”.
func TestAFigureDiffersFromTheOtherIfItCan(t *testing.T) {
	its, chosen := merit.Merit{}, merit.Merit{}
	its.Runs, chosen.Runs = []piece.Share{{Num: 390, Den: 1000}}, []piece.Share{{Num: 3949, Den: 10000}}
	var f plan.Figures
	tell.Against(&f, length.Metric, merit.OrderFor(survey.Prefer{}), &its, &chosen)
	assert.Equal(t, "a run of cuts at 39.0 %, not 39.4 %", f.Against())
	its.Runs[0] = piece.Share{Num: 3940, Den: 10000}
	tell.Against(&f, length.Metric, merit.OrderFor(survey.Prefer{}), &its, &chosen)
	assert.Equal(t, "a run of cuts at 39.40 %, not 39.49 %", f.Against())
}
