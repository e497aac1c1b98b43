package search

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// A queue gives what is least first, whatever came when and whatever got worse meanwhile.
func TestAQueueGivesTheLeastFirst(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for range 20 {
			q := queue[*int]{before: func(a, b *int) bool { return *a < *b }}
			var left []int
			for range rapid.IntRange(1, 30).Draw(t, "steps") {
				x := rapid.IntRange(0, 99).Draw(t, "x")
				switch what := rapid.IntRange(0, 3).Draw(t, "what"); {
				case q.empty() || what < 2:
					q.add(&x)
					left = append(left, x)
				case what == 2: // the first is looked at more closely, and is worse than it seemed
					first := q.first()
					k := slices.Index(left, *first)
					*first += x
					left[k] = *first
					q.settle()
				default:
					slices.Sort(left)
					require.Equal(t, left[0], *q.take())
					left = left[1:]
				}
				require.Len(t, q.items, len(left))
				if !q.empty() {
					require.Equal(t, slices.Min(left), *q.first())
				}
			}
		}
	})
}

func TestAQueueIsPutInOrderAtOnce(t *testing.T) {
	q := queue[int]{items: []int{5, 3, 9, 1, 7}, before: func(a, b int) bool { return a < b }}
	q.sort()
	var got []int
	for !q.empty() {
		got = append(got, q.take())
	}
	require.Equal(t, []int{1, 3, 5, 7, 9}, got)
}
