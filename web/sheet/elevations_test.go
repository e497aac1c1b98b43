package sheet

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/web/drawing"
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

// A list whose columns take what their texts ask for is low enough for a larger drawing: the back wall of the old house on
// A4 and the walls beside a bench on Letter stood at 1/2" to the foot, the demo's back wall on A4 at 3/4".
func TestALowListGivesALargerDrawing(t *testing.T) {
	for _, c := range []struct {
		name, wall string
		paper      Paper
		real       int64
	}{{"jobs/old-house", "B, back", Papers()[0], 16}, {"../static/demo", "B, back", Papers()[0], 12}, {"jobs/bench", "L, left", Papers()[1], 16}} {
		b := newBook(roomOf(t, c.name), Options{Paper: c.paper, Kinds: []Kind{Elevations}})
		i := slices.IndexFunc(b.leaves, func(l *leaf) bool { return l.wall == c.wall && l.title == "Wall" })
		require.GreaterOrEqual(t, i, 0, c.name)
		assert.Equal(t, drawing.Scale{Paper: 1, Real: c.real}, b.leaves[i].scale, "%s on %s", c.name, c.paper.Name)
	}
}

// Neither a size under a drawing nor a line of the schedule is broken anywhere but between words.
func TestNoCellOfACutListIsBrokenInAWord(t *testing.T) {
	everyRoom(t, func(name string, plan layout.Plan) {
		b := newBook(plan, Options{Paper: Papers()[0], Kinds: []Kind{Elevations}})
		f := &flow{leaf: &leaf{size: b.opts.Paper.lie(false)}, book: b}
		for _, f.percent = range percents {
			for w := range plan.Walls {
				f.lo, f.hi = f.leaf.area()
				b.wholeCells(t, f, b.wallCuts(plan.Walls[w], false), name)
				f.hi.X = f.lo.X + leastAt(f.percent)
				b.wholeCells(t, f, b.wallCuts(plan.Walls[w], true), name)
			}
		}
	})
}

func (b *book) wholeCells(t *testing.T, f *flow, list table, name string) {
	list.text = f.of(list.text)
	xs := f.columns(list.columns)
	for _, r := range list.rows {
		lines, _ := list.lines(r, xs)
		for i, l := range lines {
			said := r.cells[i]
			if i == 0 && r.strong != "" {
				said = r.strong + " " + said
			}
			assert.Equal(t, strings.Fields(said), strings.Fields(strings.Join(l, " ")), "%s at %d %%", name, f.percent)
		}
	}
}
