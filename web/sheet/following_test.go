package sheet

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
)

// A list that stands under another takes a leaf less, is said in the leaf's title, and is written in the same
// size as alone; where none would be saved every list begins a leaf.
func TestAListFollowsWhereThatTakesALeafLess(t *testing.T) {
	followed := 0
	everyRoom(t, func(name string, plan layout.Plan) {
		for _, paper := range Papers()[:2] {
			o := Options{Paper: paper}
			b := newBook(plan, o)
			single := &book{plan: plan, opts: b.opts, cuts: b.cuts, buy: b.buy, single: true}
			single.fill()
			require.LessOrEqual(t, len(b.leaves), len(single.leaves), name)
			also := 0
			for _, l := range b.leaves {
				also += len(l.also)
				for _, k := range l.also {
					assert.Contains(t, l.title, ", ", "%s on %s: %s", name, paper.Name, k)
					assert.Less(t, slices.Index(Kinds(), l.kind), slices.Index(Kinds(), k), name)
				}
			}
			if followed += also; also == 0 {
				assert.Len(t, b.leaves, len(single.leaves), name)
				continue
			}
			assert.Less(t, len(b.leaves), len(single.leaves), "%s on %s", name, paper.Name)
			for _, text := range sizes(single, StoryPole, TakeOff, Stages) {
				assert.Contains(t, sizes(b, CutSchedule, StoryPole, TakeOff, Stages), text, "%s on %s", name, paper.Name)
			}
		}
	})
	assert.Greater(t, followed, 2)
}

// sized is a text with how high it is.
type sizedText struct {
	text string
	high int64
}

// sizes are the texts on the leaves of some kinds, no smaller than they stand there.
func sizes(b *book, kinds ...Kind) []sizedText {
	var out []sizedText
	for _, l := range b.leaves {
		if slices.Contains(kinds, l.kind) {
			for _, x := range texts(l) {
				if x.Size >= plain.size {
					out = append(out, sizedText{x.Text, int64(x.Size)})
				}
			}
		}
	}
	return out
}

// The narrow end of a half wall stands on the leaf of its neighbour where both go on it, with a list of its own.
func TestAnEndPanelStandsOnItsNeighboursLeaf(t *testing.T) {
	plan := shapeOf(t, "half wall")
	b := newBook(plan, Options{Paper: Papers()[0], Kinds: []Kind{Elevations}})
	require.Len(t, b.leaves, 3)
	assert.Equal(t, "H, half wall; E, end panel", b.leaves[2].wall)
	said := map[string]bool{}
	for _, x := range texts(b.leaves[2]) {
		said[x.Text] = true
	}
	for _, text := range []string{"half wall", "end panel wall", "Wall E, end panel"} {
		assert.True(t, said[text], text)
	}
	laidOut(t, "half wall", plan, Options{Paper: Papers()[0], Kinds: []Kind{Elevations}})
}
