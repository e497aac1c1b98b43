package sheet

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The first course of a long wall in small tile stays on its leaf: 150 tiles of 20 mm were each given room for a number, so
// that the strip was drawn at 1:1000 and the numbers of whole tiles ran off the paper.
func TestAFirstCourseOfSmallTileStaysOnItsLeaf(t *testing.T) {
	for _, paper := range Papers()[:2] {
		b := newBook(roomOf(t, "jobs/mosaic"), Options{Paper: paper, Kinds: []Kind{FirstCourse}})
		require.Len(t, b.leaves, 1, paper.Name)
		l := b.leaves[0]
		assert.LessOrEqual(t, l.scale.Real/l.scale.Paper, int64(25), paper.Name)
		_, hi := l.area()
		for _, x := range texts(l) {
			_, to := x.Room()
			assert.LessOrEqual(t, to.X, hi.X, "%s: %q", paper.Name, x.Text)
		}
	}
}

// Found by reading the sheet: what is cut to width too was told wall by wall in the order of the job, under
// strips in the order of setting, each time with the same words before it.
func TestWidthsAreToldInTheOrderOfTheStrips(t *testing.T) {
	text := words(printedText(t, roomOf(t, "jobs/old-house"), FirstCourse))
	_, told, found := strings.Cut(text, "Cut to width first: ")
	require.True(t, found)
	require.NotContains(t, told, "Cut to width first")
	back, left, right := strings.Index(told, "B-"), strings.Index(told, "L-"), strings.Index(told, "R-")
	require.True(t, 0 == back && back < left && left < right, told)
}
