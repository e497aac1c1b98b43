package plan_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// A corner is called by the letters of its walls from left to right, alike from both of them: in a room of
// four walls with an outside corner, closed, and where it is left open.
func TestACornerHasOneNameOnBothItsWalls(t *testing.T) {
	room := func(closed bool) []plan.Wall {
		meets := func(wall int) survey.EndFound { return survey.EndFound{Meets: true, Beyond: wall} }
		turns := func(wall int) survey.EndFound {
			return survey.EndFound{Beyond: -1, Outside: &survey.OutsideFound{Next: wall}}
		}
		walls := []plan.Wall{
			{Found: survey.WallFound{Letter: "N", Left: meets(3), Right: meets(1)}},
			{Found: survey.WallFound{Letter: "E", Left: meets(0), Right: turns(2)}},
			{Found: survey.WallFound{Letter: "P", Left: turns(1), Right: meets(3)}},
			{Found: survey.WallFound{Letter: "W", Left: meets(2), Right: meets(0)}},
		}
		if !closed { // the first meets a wall that is not tiled, the last stops
			walls[0].Found.Left, walls[3].Found.Right = survey.EndFound{Meets: true, Beyond: -1}, survey.EndFound{Beyond: -1}
		}
		return walls
	}
	names := func(walls []plan.Wall) (names []string) {
		for i := range walls {
			names = append(names, plan.CornerName(walls, i, true), plan.CornerName(walls, i, false))
		}
		return names
	}
	assert.Equal(t, []string{"corner W–N", "corner N–E", "corner N–E", "corner E–P", "corner E–P", "corner P–W", "corner P–W", "corner W–N"}, names(room(true)))
	assert.Equal(t, []string{"", "corner N–E", "corner N–E", "corner E–P", "corner E–P", "corner P–W", "corner P–W", ""}, names(room(false)))
}
