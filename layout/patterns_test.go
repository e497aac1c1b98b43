package layout_test

import (
	"testing"

	"coursewright/layout"
	"coursewright/layout/piece"

	"github.com/stretchr/testify/require"
)

// The alcove with its ends, its head and its niche free, laid in patterns, is proven. In double
// herringbone the search once ended before it was, with a run of 47 %: no run under a half is to be had.
func TestAnAlcoveInPatternsIsProven(t *testing.T) {
	for _, p := range roomsInPatterns {
		switch p.name {
		case "herringbone", "double herringbone", "diagonal", "basket weave":
		default:
			continue
		}
		t.Run(p.name, func(t *testing.T) {
			plan, err := layout.Now(p.lay(t, "alcove"))
			require.NoError(t, err)
			require.True(t, plan.Setout.Proven)
			if p.name == "double herringbone" {
				require.Empty(t, plan.Setout.Merit.Sight.Runs, "a run under %v", piece.Half)
			}
		})
	}
}
