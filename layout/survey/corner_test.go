package survey_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"coursewright/layout/survey"
)

// A corner is called by its place among the walls that go round: of three walls by its side, of a closed room by number,
// and the one before its first wall is the last.
func TestCornersAreCalledByTheirPlace(t *testing.T) {
	for _, c := range []struct {
		round, wall int
		name        string
	}{{2, 0, "corner"}, {3, 0, "left corner"}, {3, 1, "right corner"}, {4, 0, "corner 1"}, {4, 3, "corner 4"}, {4, -1, "corner 4"}} {
		assert.Equal(t, c.name, survey.CornerName(c.round, c.wall))
	}
}
