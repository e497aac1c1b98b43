package search

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/setout/count"

	"github.com/stretchr/testify/require"
)

// Term 17 by hand, in millimetres: pitch 100, a tape that shows millimetres.
func TestTheStartThatMaySlipFarthest(t *testing.T) {
	const mm = length.Millimetre
	for name, c := range map[string]struct {
		starts []length.Length
		want   length.Length
	}{
		"one":                                    {[]length.Length{40}, 40},
		"the middle of five":                     {[]length.Length{40, 41, 42, 43, 44}, 42},
		"of two as good the one left":            {[]length.Length{40, 41, 42, 43}, 41},
		"a gap parts them":                       {[]length.Length{10, 11, 40, 41, 42}, 41},
		"on over the end of the pitch":           {[]length.Length{0, 1, 2, 97, 98, 99}, 0},
		"far apart: none may slip, the left one": {[]length.Length{70, 10, 40}, 10},
	} {
		var alike []count.Counted
		for _, x := range c.starts {
			alike = append(alike, count.Counted{Setting: count.Setting{Edge: x * mm}})
		}
		require.Equal(t, c.want, mostSlack(alike, 100*mm, mm).Edge/mm, name)
	}
	// Where every start of the pitch is as good, it ends, and takes the first.
	var all []count.Counted
	for x := range length.Length(100) {
		all = append(all, count.Counted{Setting: count.Setting{Edge: x * mm}})
	}
	require.Equal(t, length.Length(0), mostSlack(all, 100*mm, mm).Edge)
}
