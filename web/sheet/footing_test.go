package sheet

import (
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
