package count

import (
	"testing"

	"coursewright/layout/piece"

	"github.com/stretchr/testify/require"
)

// A free head with no top of a course in its range cuts a course from end to end, and the
// run that is left is sure: worked by hand, with courses of 100 and a joint of 2 from 0 up.
func TestWhatAFreeHeadLeavesIsSure(t *testing.T) {
	for name, c := range map[string]struct {
		line string
		runs []piece.Share
	}{
		"no top in its range: 2 over the line at 408, or 42":     {"1000x600 300x100+2 head=410..450", []piece.Share{{Num: 42, Den: 100}}},
		"the top of a course":                                    {"1000x600 300x100+2 head=400..450", nil},
		"half or more is in no list":                             {"1000x600 300x100+2 head=460..500", nil},
		"a window that reaches above it leaves tile beside it":   {"2000x600 300x100+2 head=410..450 window=900,200,300,200", []piece.Share{{Num: 42, Den: 100}}},
		"a window from end to end of what no other edge is near": {"1000x600 300x100+2 head=410..450 window=100,800,300,200", nil},
		"both ends free, and far apart":                          {"1400x600 300x100+2 head=410..450 left=0..80 right=1300..1400", []piece.Share{{Num: 42, Den: 100}}},
	} {
		w := drawWall(c.line)
		got := w.Bounds.bestHead(0)
		require.Len(t, got.Runs, len(c.runs), name)
		for i, want := range c.runs {
			require.Equal(t, want.Num*got.Runs[i].Den, got.Runs[i].Num*want.Den, name)
		}
	}
}
