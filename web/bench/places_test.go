package bench_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The small map of the walls, which a phone shows over its question (TestThePadNeverCoversItsBox), has a place for every
// figure that is measured along the walls or from the level line, and none for the size of a tile.
func TestTheMapOfPlacesKnowsWhereFiguresAreMeasured(t *testing.T) {
	s := newTub(t)
	_, page := s.Get("/jobs/2")
	for _, path := range []string{"walls[1].width", "walls[0].base[1].readings[0].drop", "walls[0].head.stops.at", "walls[0].right.lean[1].off", "walls[2].base[0].readings[1].at"} {
		assert.Equal(t, 1, strings.Count(page, `data-place="`+path+`"`), path)
	}
	assert.NotContains(t, page, `data-place="tile.width"`)
}
