package count

import (
	"testing"

	"coursewright/layout/length"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Rows between two heights, counted one by one.
func TestRowsBetweenTwoHeights(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s := drawn(t)
		r := w.Bounds.rows
		from := length.Length(rapid.IntRange(-800, 400).Draw(t, "from")) * mm
		to := from + length.Length(rapid.IntRange(-100, 1200).Draw(t, "high"))*mm
		_, across := w.facts.frame.phases(s.Line, s.Edge)
		step := w.facts.rule.Across + w.facts.room.Joint
		classes := len(w.facts.shifts)
		counted := make([]int, classes)
		for n := int(-20_000 / classes * classes); n < 20_000; n++ { // course 0 has class 0
			y := across + step*length.Length(n)
			if y >= from && y+w.facts.rule.Across <= to {
				counted[(n%classes+classes)%classes]++
			}
			if y > to {
				break
			}
		}
		for class := range classes {
			require.Equal(t, counted[class], r.rowsIn(from, to, class, across), "class %d", class)
			least := guaranteed(to-from, w.facts.rule.Across, w.facts.period())
			require.LessOrEqual(t, least, counted[class], "as many as are sure wherever they stand")
		}
	})
}

func TestSlotsThatAreSure(t *testing.T) {
	for name, c := range map[string]struct{ span, size, period, n length.Length }{
		"none in less than a slot":                  {99, 100, 102, 0},
		"none in a slot alone":                      {100, 100, 102, 0}, // it may begin anywhere
		"one where a period more is left":           {202, 100, 102, 1},
		"not one in a unit less":                    {201, 100, 102, 0},
		"two in two periods more":                   {304, 100, 102, 2},
		"of every second row where classes are two": {304, 100, 204, 1},
		"none in less than nothing":                 {-50, 100, 102, 0},
	} {
		require.Equal(t, int(c.n), guaranteed(c.span, c.size, c.period), name)
	}
}

// What is coarse never counts more rows than there are, and rows that stand a period apart
// have one pattern.
func TestPatternsOfRows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s := drawn(t)
		r := w.Bounds.rows
		_, across := w.facts.frame.phases(s.Line, s.Edge)
		fine, coarse := r.at(across), r.coarse(across)
		require.Len(t, coarse, len(fine))
		for i := range fine {
			require.LessOrEqual(t, coarse[i], fine[i])
			require.Equal(t, coarse[i] == 0, fine[i] == 0 || coarse[i] == 0, "where any is, one counts")
		}
		require.Equal(t, fine, r.at(across+w.facts.period()))
		require.Equal(t, coarse.bytes(), r.coarse(across-2*w.facts.period()).bytes())
	})
}

// A list grows into the room that it has, and stands where it was when what was put behind it had to move.
func TestAListGrowsIntoItsRoom(t *testing.T) {
	list := make([]int, 1, 3)
	require.Equal(t, []int{0, 7, 8}, after(list, append(list[1:], 7, 8)))
	require.Equal(t, []int{0}, after(list, []int{7, 8, 9}), "no room for three")
}

// Tile begins on the right of an edge and ends on the left of the next.
func TestWhatStandsInPairs(t *testing.T) {
	begins, ends := crossing{steep: &steep{onLeft: true}}, crossing{steep: &steep{}}
	for _, c := range []struct {
		in  []crossing
		are bool
	}{{nil, true}, {[]crossing{begins, ends}, true}, {[]crossing{begins, ends, begins, ends}, true}, {[]crossing{begins}, false}, {[]crossing{ends, begins}, false}, {[]crossing{begins, begins, ends, ends}, false}} {
		require.Equal(t, c.are, paired(c.in), c.in)
	}
}
