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
	assert.Equal(t, []string{"corner D–A", "corner A–B", "corner B–C", "corner C–D"}, names(closed(low)))
	assert.Equal(t, []string{"A left", "corner A–B", "corner B–C", "corner C–D", "D right"}, names(closed(high)), "two heights are two figures")
}

// An outside corner under which both walls stand at one height is one place too.
func TestAnOutsideCornerIsOneStation(t *testing.T) {
	at := func(drop length.Length) []survey.SegmentFound {
		return []survey.SegmentFound{{Meets: survey.Floor, Readings: []survey.Reading{{Value: drop}, {At: 50 * length.Inch, Value: drop}}}}
	}
	names := func(a, b length.Length) (names []string) {
		for _, s := range stages.Stations(length.Imperial, []plan.Wall{
			{Found: survey.WallFound{Letter: "H", Left: survey.EndFound{Beyond: -1}, Right: survey.EndFound{Outside: &survey.OutsideFound{Next: 1}}, Base: at(a)}},
			{Found: survey.WallFound{Letter: "P", Left: survey.EndFound{Outside: &survey.OutsideFound{Next: 0}}, Right: survey.EndFound{Beyond: -1}, Base: at(b)}},
		}) {
			names = append(names, s.Name)
		}
		return names
	}
	assert.Equal(t, []string{"H left", "corner H–P", "P right"}, names(-40*length.Inch, -40*length.Inch))
	assert.Equal(t, []string{"H left", "H right", "P left", "P right"}, names(-40*length.Inch, -42*length.Inch))
}
