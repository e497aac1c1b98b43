package takeoff

import (
	"testing"

	"coursewright/layout/fixture"
	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
)

func TestFixturesAreBought(t *testing.T) {
	in := twoByTwo()
	at := func(kind survey.Kind, name string) fixture.Placed {
		return fixture.Placed{Found: survey.FixtureFound{Kind: kind, Name: name}}
	}
	in.Walls[0].Fixtures = []fixture.Placed{at(survey.CornerShelf, "high"), at(survey.GrabBar, "bar"), at(survey.CornerShelf, "low"), at(survey.GlassLine, "door")}
	got := Of(in, Usual(length.Imperial))
	assert.Equal(t, Line{Item: "corner shelf", Unit: "piece", Net: 2, Count: 2, Because: "high on back, low on back"}, line(t, got.Lines, "corner shelf"))
	assert.Equal(t, 1, line(t, got.Lines, "grab bar").Count)
	for _, l := range got.Lines {
		assert.NotEqual(t, "glass line", l.Item)
	}
}
