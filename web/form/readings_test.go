package form

import (
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
)

// A reading between two others may be left out: with both of its figures emptied it is, and the guesses behind it move along.
func TestAReadingThatIsEmptiedIsLeftOut(t *testing.T) {
	job := demo(t)
	const list = "walls[1].base[0].readings"
	before := job.Walls[1].Base[0].Readings
	require.Len(t, before, 3)
	first, last := before[0], before[2]
	job.Guess = []string{list + "[1].drop", list + "[2].drop"}
	half := job.Clone()
	require.NoError(t, Decode(&half, url.Values{list + "[1].drop": {""}}))
	assert.Len(t, half.Walls[1].Base[0].Readings, 3, "where it stands is kept until that is emptied too")
	require.NoError(t, Decode(&half, url.Values{list + "[1].at": {""}, list + "[1].drop": {""}}))
	assert.Equal(t, []survey.Drop{first, last}, half.Walls[1].Base[0].Readings)
	assert.Equal(t, []string{list + "[1].drop"}, half.Guess)

	ends := job.Clone()
	require.NoError(t, Decode(&ends, url.Values{list + "[0].at": {""}, list + "[0].drop": {""}}))
	assert.Len(t, ends.Walls[1].Base[0].Readings, 3, "the first and the last are asked for")
}
