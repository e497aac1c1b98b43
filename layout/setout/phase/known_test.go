package phase

import (
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// What an option gives with its corners cut is the same on a wall that has cut others, which it
// knows by where they stand in the lattice, as on one that has cut none.
func TestAnOptionGivesTheSameWhateverWasCutBefore(t *testing.T) {
	hits := 0
	rapid.Check(t, func(t *rapid.T) {
		r := randomRoom(t, 1)
		n := func(name string, low, high int) length.Length {
			return length.Length(rapid.IntRange(low, high).Draw(t, name)) * mm
		}
		w := &r.Walls[0]
		w.Width, w.Right = 1600*mm, survey.EndFound{Meets: true, Gap: 3 * mm, Beyond: -1}
		w.Base = w.Base[:1]
		w.Base[0].Readings = []survey.Reading{{At: 0, Value: -900 * mm}, {At: w.Width, Value: -900 * mm}}
		left, bottom := n("left", 500, 700), n("bottom", -500, -300)
		w.Openings = []survey.OpeningFound{{Kind: survey.Niche, Name: "n", Left: survey.Span{From: left, To: left + n("range", 1, 200)},
			Width: survey.Span{From: 200 * mm, To: 200 * mm}, Bottom: survey.Span{From: bottom, To: bottom + n("range up", 1, 200)}, Height: survey.Span{From: 150 * mm, To: 150 * mm}}}
		used := NewWall(&r, *w, bond.For(r, r.Bond.Hand))
		for range 3 {
			line := length.Length(rapid.IntRange(0, 200).Draw(t, "line")) * r.Tape
			x := &stretch{edge: length.Length(rapid.IntRange(0, 200).Draw(t, "edge")) * r.Tape, marks: 1}
			fresh := NewWall(&r, *w, used.Pattern)
			a, b := used.choose(x, &hunt{wall: used, line: line}), fresh.choose(x, &hunt{wall: fresh, line: line})
			a.ready()
			b.ready()
			for i := range a.axes {
				for k, o := range a.axes[i].wait.items {
					other := b.axes[i].wait.items[k]
					axis := used.axes[i]
					if axis.clearOfAll(used, o) && axis.cut[axis.standsAt(used, a.origin, o)] != nil {
						hits++
					}
					a.cutCorners(axis, o, nil)
					clear(fresh.axes[i].cut)
					clear(fresh.axes[i].notches)
					clear(b.others)
					b.cutCorners(fresh.axes[i], other, nil)
					require.Equal(t, *other, *o)
				}
			}
		}
	})
	require.Positive(t, hits)
}
