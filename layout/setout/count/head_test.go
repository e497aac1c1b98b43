package count

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/piece"

	"github.com/stretchr/testify/require"
)

// By hand: tile 300 by 100 with joints of 2 from 0 on a wall of 1000. A head at 430 leaves 22 of
// the course from 408 up: 22 of 100 is a sliver. Two tiles at least of each course lie between
// the ends wherever it begins, and each is a rip.
func TestWhatAFreeHeadCutsIsSure(t *testing.T) {
	type sure struct {
		small, work int
		runs, head  []piece.Share
	}
	share := func(n length.Length) []piece.Share {
		return []piece.Share{{Num: int64(n * mm), Den: int64(100 * mm)}}
	}
	for name, c := range map[string]struct {
		sketch string
		head   length.Length
		want   sure
	}{
		"22 of a course":              {"1000x600 300x100+2 head=410..500", 430, sure{2, 4, share(22), share(22)}},
		"60 of a course":              {"1000x600 300x100+2 head=410..500", 468, sure{0, 4, nil, share(60)}},
		"a whole course":              {"1000x600 300x100+2 head=410..600", 508, sure{0, 0, nil, nil}},
		"in a joint":                  {"1000x600 300x100+2 head=410..600", 509, sure{0, 0, nil, nil}},
		"beside a window up to it":    {"1000x600 300x100+2 head=410..500 window=100,800,350,200", 430, sure{0, 0, nil, nil}},
		"a window in the middle":      {"2000x600 300x100+2 head=410..500 window=950,100,350,200", 430, sure{4, 8, share(22), share(22)}}, // two tiles at least of the 950 on either side
		"a window well under it":      {"1000x600 300x100+2 head=410..500 window=100,800,50,200", 430, sure{2, 4, share(22), share(22)}},
		"a free end at the left":      {"1000x600 300x100+2 left=0..90 head=410..500", 430, sure{2, 4, share(22), share(22)}}, // 910 from the farthest
		"where a niche may come near": {"1000x600 300x100+2 head=410..500 niche=300..400,200,330..350,150", 430, sure{0, 0, nil, nil}},
	} {
		w := drawWall(c.sketch)
		m := w.Bounds.AtHead(c.head*mm, 0, 0)
		require.Equal(t, c.want.small, m.Slivers+m.Unworkable, name)
		require.Equal(t, c.want.work, m.Work, name)
		require.True(t, sameShares(c.want.runs, m.Runs), "%s: runs %v", name, m.Runs)
		require.True(t, sameShares(c.want.head, m.Head), "%s: head %v", name, m.Head)
	}
}

// The best place of a free head is no worse than any of its places, and none of them claims more
// than a wall gives that is counted with it there.
func TestTheBestPlaceOfAFreeHead(t *testing.T) {
	for _, line := range []string{"1000x600 300x100+2 head=410..500", "1000x600 300x100+2 1/2 left=0..80 head=420..560", "1000x600 150x150+2 head=420..480 window=200,150,380,100"} {
		w := drawWall(line)
		w.setOuts(func(at, edge length.Length) {
			best := w.Bounds.bestHead(at)
			for _, y := range w.Places.Heads(at) {
				m := w.Bounds.AtHead(y, at, edge)
				order, term := w.facts.order.Compare(&best, &m)
				require.LessOrEqual(t, order, 0, "%s: the best is worse than %v in %s", line, y/mm, term)
			}
			w.everyPlace(at, edge, func(s Setting) {
				got, m := w.Count(s).Merit, w.Bounds.AtHead(s.Placed.Head, at, edge)
				order, term := w.facts.order.Compare(&got, &m)
				require.GreaterOrEqual(t, order, 0, "%s: with the head at %v it claims more in %s", line, s.Placed.Head/mm, term)
				require.LessOrEqual(t, m.Work, got.Work)
			})
		})
	}
}

// A head that stands, or columns under one, give nothing here: their edges are counted with
// those that stand, or by the rows that run into them.
func TestAHeadThatStandsIsNoFreeOne(t *testing.T) {
	for _, line := range []string{"1000x600 300x100+2", "1000x600 300x100+2 head=430", "1000x600 300x100+2 columns head=410..500"} {
		w := drawWall(line)
		require.Empty(t, w.Bounds.bestHead(0).Head, line)
		require.Zero(t, w.Bounds.bestHead(0).Work, line)
	}
}
