package bathroom

import (
	"os"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
	"coursewright/web/page"
)

// planOf solves a job under testdata, changed as change says.
func planOf(t *testing.T, name string, change func(*survey.Job)) layout.Plan {
	t.Helper()
	data, err := os.ReadFile("../../testdata/jobs/" + name + ".json")
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	change(&job)
	plan, err := layout.Now(job)
	require.NoError(t, err)
	return plan
}

func asItIs(*survey.Job) {}

func TestEveryPieceStandsInOneStep(t *testing.T) { // the law of order
	for _, name := range []string{"toy", "one-wall", "alcove", "corner-shower"} {
		plan := planOf(t, name, asItIs)
		o := orderOf(plan, page.Schedule(plan))
		var want, got []string
		for _, wall := range o.walls {
			for _, p := range plan.Walls[wall].Pieces {
				want = append(want, p.ID)
			}
		}
		for i, s := range o.steps {
			for _, p := range s.Pieces {
				got = append(got, p.ID)
				assert.Equal(t, i, o.at[p.ID])
				assert.Equal(t, s.batch == nil, p.Whole, "whole tiles stand with whole tiles")
				assert.Equal(t, s.Pieces[0].Course, p.Course)
				assert.LessOrEqual(t, len(s.Pieces), s.of)
				if s.batch != nil {
					assert.Equal(t, s.Pieces[0].ID, s.cut.Piece)
					assert.Contains(t, s.batch.Pieces, p.ID)
				}
			}
		}
		assert.ElementsMatch(t, want, got, name)
		in := stages.Input{Room: plan.Room, Walls: plan.Walls, Cuts: page.Schedule(plan)}
		for i, next := range stages.Order(in) {
			assert.Equal(t, next, o.steps[i].Step, "%s: the order of the stages", name)
		}
		for k := 1; k < len(o.walls); k++ {
			assert.Less(t, plan.Walls[o.walls[k-1]].Found.Order, plan.Walls[o.walls[k]].Found.Order)
		}
		marks := map[string]bool{}
		for _, mark := range o.marks {
			marks[mark] = true
		}
		assert.Len(t, marks, len(want), "every piece has a mark of its own")
	}
}

func TestTheMarkIsThatOfWhatIsSet(t *testing.T) {
	ring := plane.Rect{Left: 10, Bottom: 20, Right: 50, Top: 40}.Ring(0)
	one := piece.Piece{ID: "B-01-01", Course: 1, Face: plane.Region{ring}}
	mark := markOf("back", one)
	other := one
	other.ID, other.Course = "B-02-07", 2
	assert.Equal(t, mark, markOf("back", other), "whatever it is called")
	other.Face = plane.Region{append(slices.Clone(ring[2:]), ring[:2]...)}
	assert.Equal(t, mark, markOf("back", other), "wherever its outline begins")
	mid := plane.Corner{Point: plane.Point{X: 30, Y: 20}}
	other.Face = plane.Region{slices.Insert(slices.Clone(ring), 1, mid)}
	assert.Equal(t, mark, markOf("back", other), "with a corner in mid-edge")
	assert.NotEqual(t, mark, markOf("left", one), "on another wall")
	for _, r := range []plane.Rect{{Left: 11, Bottom: 20, Right: 51, Top: 40}, {Left: 10, Bottom: 20, Right: 50, Top: 41}} {
		other.Face = plane.Region{r.Ring(0)}
		assert.NotEqual(t, mark, markOf("back", other), "elsewhere, or of another size")
	}
}

// A change on one wall leaves the marks of another alone.
func TestAChangeElsewhereKeepsTheMarks(t *testing.T) {
	before := planOf(t, "toy", asItIs)
	after := planOf(t, "toy", func(j *survey.Job) { j.Title, j.Tile.Name = "Another", "another" })
	assert.Equal(t, orderOf(before, page.Schedule(before)).marks, orderOf(after, page.Schedule(after)).marks)
	wider := planOf(t, "toy", func(j *survey.Job) { j.Joint.Plain = "3" })
	assert.NotEqual(t, orderOf(before, page.Schedule(before)).marks, orderOf(wider, page.Schedule(wider)).marks)
}

func BenchmarkBathroomOrder(b *testing.B) {
	data, err := os.ReadFile("../../testdata/jobs/mosaic.json")
	require.NoError(b, err)
	job, err := survey.Read(data)
	require.NoError(b, err)
	plan, err := layout.Now(job)
	require.NoError(b, err)
	s := page.Schedule(plan)
	for b.Loop() {
		orderOf(plan, s)
	}
}

// Behind a rim nobody strikes a line: the phone says the same as the sheet.
func TestThePhoneStrikesTheFirstJointLineOverTheRim(t *testing.T) {
	plan := planOf(t, "alcove", func(j *survey.Job) { j.Pins.Course.Line = "-39" })
	m := bathroom{order: orderOf(plan, page.Schedule(plan))}.setOut()
	assert.Equal(t, "the first joint line", m.Name)
	assert.Equal(t, Large{Whole: "36", Unit: `"`}, m.Line)
	assert.Equal(t, "under the level line", m.Side)
	assert.Equal(t, []string{`2 7/8"`, `2 3/4"`, `3 1/16"`, `3 1/8"`}, []string{m.Rims[0].At, m.Rims[1].At, m.Rims[2].At, m.Rims[3].At})
	assert.Len(t, m.Edges, 3)
}

// Of two pieces out of one tile the one that is set first keeps the rest of it for the other, also where the
// other is the larger and was cut first by the schedule.
func TestWhoSetsTheFirstOfTwoKeepsTheRestOfTheTile(t *testing.T) {
	plan := planOf(t, "alcove", asItIs)
	s := page.Schedule(plan)
	o := orderOf(plan, s)
	larger, smaller := 0, 0
	for _, pair := range s.Offcuts.Pairs {
		first, second := pair[0], pair[1]
		if o.at[second] < o.at[first] {
			first, second = second, first
			smaller++
		} else {
			larger++
		}
		if o.at[first] == o.at[second] {
			continue
		}
		assert.Equal(t, "keep the rest of the tile: "+second+" comes out of it", o.offcut(s.Offcuts.Pairs, first))
		assert.Equal(t, "comes out of the rest of the tile of "+first, o.offcut(s.Offcuts.Pairs, second))
	}
	assert.Positive(t, larger)
	assert.Positive(t, smaller)
	assert.Empty(t, o.offcut(s.Offcuts.Pairs, plan.Walls[0].Pieces[0].ID+"?"))
	o.stands[s.Offcuts.Pairs[0][0]] = true
	assert.Empty(t, o.offcut(s.Offcuts.Pairs, s.Offcuts.Pairs[0][1]), "what stands already leaves nothing")
}
