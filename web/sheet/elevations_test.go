package sheet

import (
	"strings"
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

// Where only a line of its heading is wanting, a drawing beside its list takes a wider heading rather
// than a smaller scale.
func TestAWiderHeadingGivesALargerDrawing(t *testing.T) {
	b := newBook(roomOf(t, "../static/demo"), Options{Paper: Papers()[1], Kinds: []Kind{Elevations}})
	large := drawing.Scale{Paper: 1, Real: 12}
	for _, l := range b.leaves {
		if l.title == "Wall" && l.wall != "B, back" {
			assert.Equal(t, large, l.scale, l.wall)
		}
	}
	for _, f := range b.walls {
		assert.GreaterOrEqual(t, f.breadth(), leastAt(f.percent), f.wall)
	}
}

// The names over the narrowest list break between words only.
func TestNamesOverANarrowListAreWhole(t *testing.T) {
	b := newBook(roomOf(t, "../static/demo"), Options{Paper: Papers()[1], Kinds: []Kind{Elevations}})
	f := *b.walls[0]
	f.hi.X, f.percent = f.lo.X+leastAt(percents[len(percents)-1]), percents[len(percents)-1]
	list := narrowCuts(nil, "", "")
	xs, s := f.columns(list.columns), f.of(columnName)
	for i, c := range list.columns {
		assert.Equal(t, strings.Fields(c.name), strings.Fields(strings.Join(s.wrap(c.name, c.room(xs[i], xs[i+1])), " ")), c.name)
	}
}
