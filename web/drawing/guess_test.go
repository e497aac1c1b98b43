package drawing

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"coursewright/web/drawing/sample"
)

// inked lists the colours and dashes of what a scene draws of a kind on a wall, or of all where the kind is empty.
func inked(s Scene, kind Kind, wall int) (colours []Colour, dashes []Dash) {
	see := func(t Tag, ink Ink) {
		if kind == "" || t.Kind == kind && t.Wall == wall {
			colours, dashes = append(colours, ink.Fill, ink.Line), append(dashes, ink.Dash)
		}
	}
	for _, e := range s.Elements {
		switch x := e.(type) {
		case Path:
			see(x.Tag, x.Ink)
		case Disc:
			see(x.Tag, x.Ink)
		case Label:
			see(x.Tag, Ink{Fill: x.Colour})
		}
	}
	return colours, dashes
}

// colourOf is the colour of the first text on wall 1 that begins so.
func colourOf(s Scene, begins string) Colour {
	for _, e := range s.Elements {
		if l, is := e.(Label); is && l.Wall == 1 && strings.HasPrefix(l.Text, begins) {
			return l.Colour
		}
	}
	return None
}

// While there are guesses nothing is blue, and a wall with a guess has a dashed outline.
func TestAGuessIsDrawnApart(t *testing.T) {
	plan := sample.Plan()
	sure := Wrap(plan, Options{})
	colours, _ := inked(sure, "", 0)
	assert.Contains(t, colours, Blue)
	_, dashes := inked(sure, Outline, 1)
	assert.Equal(t, []Dash{Solid}, dashes)
	assert.Equal(t, Black, colourOf(sure, "back"))
	drop := newBoard(plan, wrapTexts).signed(plan.Walls[1].Found.Base[0].Readings[0].Value)
	assert.Equal(t, Black, colourOf(sure, drop))

	plan.Room.Guesses = []string{"walls[1].width", "walls[1].base[0].readings[0].drop"}
	for name, s := range map[string]Scene{"wrap": Wrap(plan, Options{}), "single": Elevation(plan, 1, Options{})} {
		colours, _ = inked(s, "", 0)
		assert.NotContains(t, colours, Blue, name)
		assert.Contains(t, colours, Red, "the level line is where it is: %s", name)
		_, dashes = inked(s, Outline, 1)
		assert.Equal(t, []Dash{Hidden}, dashes, name)
	}
	s := Wrap(plan, Options{})
	_, dashes = inked(s, Outline, 0)
	assert.Equal(t, []Dash{Solid}, dashes, "a wall that is measured")
	assert.Equal(t, Grey, colourOf(s, "back"))

	assert.Equal(t, Grey, colourOf(s, drop), "its base too")

	plan.Room.Guesses = []string{"walls[1].base[0].readings[0].at"}
	assert.Equal(t, Black, colourOf(Wrap(plan, Options{}), drop), "where it was read is a guess, how low it is is none")

	plan.Room.Guesses = []string{"tile.width"}
	_, dashes = inked(Wrap(plan, Options{}), Outline, 1)
	assert.Equal(t, []Dash{Solid}, dashes, "nothing of the wall")
}
