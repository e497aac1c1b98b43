package sheet

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/web/drawing"
)

// A list that is too long to stand under a drawing in one column stands there in several, rather than that
// the wall is drawn smaller with half the leaf empty beside it: at 3/4" to the foot, where it was 1/2".
func TestALongListStandsInColumnsUnderALargerDrawing(t *testing.T) {
	for name, paper := range map[string]Paper{"cases/c2-4x16-fixed": Papers()[1]} {
		plan := roomOf(t, name)
		b := newBook(plan, Options{Paper: paper, Kinds: []Kind{Elevations}})
		l := b.leaves[0]
		assert.Equal(t, drawing.Scale{Paper: 1, Real: 16}, l.scale, name)
		var all []string
		for _, x := range texts(l) {
			all = append(all, x.Text)
		}
		words := strings.Join(all, " ")
		assert.Greater(t, strings.Count(words, " set "), 1, "%s: the columns have names", name)
		for w := range plan.Walls {
			if wallText(plan.Walls[w].Found) != l.wall {
				continue
			}
			for _, r := range b.wallCuts(plan.Walls[w], true).rows {
				assert.Contains(t, words, r.strong, name)
				assert.Contains(t, words, r.cells[2], name)
			}
		}
	}
}

// The rows of a list go into columns in their order, none is lost, and no other parting into as many
// columns would be lower.
func TestRowsArePartedIntoTheLowestColumns(t *testing.T) {
	b := newBook(roomOf(t, "jobs/old-house"), Options{Paper: Papers()[0], Kinds: []Kind{Elevations}})
	for w := range b.plan.Walls {
		list := b.wallCuts(b.plan.Walls[w], true)
		for columns := 1; columns <= 3; columns++ {
			f := &flow{leaf: &leaf{size: b.opts.Paper.lie(false)}, book: b, percent: 100}
			f.lo, f.hi = f.leaf.area()
			parts, high := f.into(list, columns)
			var rows []row
			f = f.inColumn(0, columns)
			for _, p := range parts {
				assert.LessOrEqual(t, f.high(p), high)
				rows = append(rows, p.rows...)
			}
			assert.LessOrEqual(t, len(parts), columns)
			require.Len(t, rows, len(list.rows))
			for i := range rows {
				assert.Equal(t, list.rows[i].cells, rows[i].cells)
			}
			assert.Equal(t, lowest(f, list, columns), high)
		}
	}
}

// lowest tries every way to part a list into columns.
func lowest(f *flow, list table, columns int) (best drawing.Micron) {
	if columns == 1 || len(list.rows) == 1 {
		return f.high(list)
	}
	for i := 1; i < len(list.rows); i++ {
		high := max(f.high(list.of(list.rows[:i])), lowest(f, list.of(list.rows[i:]), columns-1))
		if best == 0 || high < best {
			best = high
		}
	}
	return min(best, f.high(list))
}

// A list with a row that is higher than the leaf has room for does not go into columns: those of a chevron's list once stood empty, and their
// rows on leaves of their own.
func TestARowThatIsTooHighGoesIntoNoColumn(t *testing.T) {
	b := &book{opts: Options{Paper: Papers()[0]}}
	f := b.flow(subject{title: "List"}, false)
	long := table{text: body, columns: []column{{name: "place", share: 1}}, rows: []row{{cells: []string{strings.Repeat("long words ", 60)}}, {cells: []string{"short"}}}}
	f.y = f.hi.Y - 30*mmPaper
	assert.False(t, f.holdsIn(long, 5*mmPaper, 2))
}
