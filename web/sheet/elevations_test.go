package sheet

import (
	"testing"

	"coursewright/web/drawing"

	"github.com/stretchr/testify/assert"
)

// An end wall of an alcove is drawn at 1 in to the foot on Letter, since its list may be as narrow as its text allows, and no
// list is narrower than that.
func TestANarrowListGivesALargerDrawing(t *testing.T) {
	b := newBook(roomOf(t, "jobs/alcove"), Options{Paper: Papers()[1], Kinds: []Kind{Elevations}})
	large := 0
	for _, l := range b.leaves {
		if l.title == "Wall" && l.scale == (drawing.Scale{Paper: 1, Real: 12}) {
			large++
		}
	}
	assert.Equal(t, 2, large, "both end walls")
	for _, f := range b.walls {
		assert.GreaterOrEqual(t, f.breadth(), leastAt(f.percent), f.wall)
	}
	assert.Equal(t, drawing.Micron(leastList), leastAt(100))
}
