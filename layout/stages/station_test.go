package stages_test

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/stages"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
)

// The corner in which a closed room begins and ends is one place, as any other of its corners: once the last wall named it
// again, and a person looked for a fifth corner.
func TestTheLastCornerOfAClosedRoomIsOneStation(t *testing.T) {
	low, high := -40*length.Inch, -39*length.Inch
	closed := func(last length.Length) (walls []plan.Wall) {
		for i, at := range [][2]length.Length{{low, low}, {low, high}, {high, low}, {low, last}} {
			walls = append(walls, plan.Wall{Found: survey.WallFound{Letter: string(rune('A' + i)), Left: survey.EndFound{Meets: true, Beyond: (i + 3) % 4},
				Base: []survey.SegmentFound{{Meets: survey.Floor, Readings: []survey.Reading{{At: 0, Value: at[0]}, {At: 50 * length.Inch, Value: at[1]}}}}}})
		}
		return walls
	}
	names := func(walls []plan.Wall) (names []string) {
		for _, s := range stages.Stations(length.Imperial, walls) {
			names = append(names, s.Name)
		}
		return names
	}
	assert.Equal(t, []string{"corner 4", "corner 1", "corner 2", "corner 3"}, names(closed(low)))
	assert.Equal(t, []string{"A left", "corner 1", "corner 2", "corner 3", "D right"}, names(closed(high)), "two heights are two figures")
}
