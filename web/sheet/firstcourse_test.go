package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// Over a tub that falls from left to right every tile is as high as its
// course's top edge stands over the readings and the gap.
func TestTheFirstCourseFollowsTheReadings(t *testing.T) {
	plan := solved(t, "alcove")
	b := newBook(plan, Options{Kinds: []Kind{FirstCourse}})
	w := plan.Walls[1] // back: one stretch of tub from end to end
	tub := w.Found.Base[0]
	rows := b.overBase(w).rows
	seen := 0
	for _, p := range w.Pieces {
		if p.Course != w.Pieces[0].Course {
			continue
		}
		box := p.Face.Bounds()
		over := func(x length.Length) length.Length { return p.Tile.Top - survey.At(tub.Readings, x) - tub.Gap }
		r := rows[seen].cells
		assert.Equal(t, held(p.ID), r[0])
		for i, x := range map[int]length.Length{3: box.Left, 4: box.Right} {
			got, err := length.Parse(r[i], length.Imperial)
			require.NoError(t, err)
			assert.LessOrEqual(t, got, over(x)+2, "%s: never higher than its place", p.ID)
			assert.Less(t, over(x)-got, length.Inch/32+2, "%s: short by less than 1/32 in", p.ID)
		}
		seen++
	}
	assert.Len(t, rows, seen)
	assert.Greater(t, seen, 9)
}

func TestANotchedTileHasTwoHeights(t *testing.T) {
	plan := solved(t, "alcove")
	rows := newBook(plan, Options{Kinds: []Kind{FirstCourse}}).overBase(plan.Walls[0]).rows
	for _, r := range rows {
		if r.cells[0] == "L-06-01" {
			assert.NotEqual(t, r.cells[3], r.cells[4], "over the front of the tub it is lower at the right")
			return
		}
	}
	t.Error("the tile over the front of the tub is not in the first course")
}

func TestManyAlikeAreToldByTheFirstAndTheLast(t *testing.T) {
	at := func(id, left, right string) row {
		return row{cells: []string{id, "", "5", left, right, "", "d" + id, "taper"}}
	}
	rows := []row{at("B-1", "9", "9"), at("B-2", "9", "9"), at("B-3", "9", "9"), at("B-4", "9", "9"), at("5", "9", "8"), at("6", "8", "8")}
	got := alike(rows)
	assert.Equal(t, []string{"B-1 to 4", "", "5", "9", "9", "", "dB-4", "taper"}, got[0].cells)
	assert.Len(t, got, 3)
	var r runs
	for _, id := range []string{"A", "B", "C", "D"} {
		r = r.add(id, "C1")
	}
	assert.Equal(t, held("A to D: C1 each"), r.text())
	r = r.gap().add("F", "C1").add("G", "C2")
	assert.Equal(t, held("A to D: C1 each")+";  "+held("F: C1")+";  "+held("G: C2"), r.gap().text())
}
