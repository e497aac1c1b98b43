package piece_test

import (
	"testing"

	"coursewright/layout/length"

	"github.com/stretchr/testify/require"
)

// Pieces worked by hand, in millimetres: of tile 300 by 100 with joints of 2, unless the
// sketch says otherwise, course 0 from 0 up and a tile of it from 0 on. What it costs is
// merit.md's term 12: 1 for a cut across the tile, 2 for a rip or a taper, 4 for a hole, 5 for
// a notch, 6 more for a hole whose rim is within 13 mm of an edge.
func TestPiecesCutByHand(t *testing.T) {
	for name, c := range map[string]struct {
		sketch     string
		line, edge length.Length
		x, y       length.Length // a point of the tile
		wide, high length.Length
		kind       string
		effort     int
		across, up []string
	}{
		"a whole tile":                    {"1000x600 300x100+2", 0, 0, 350, 50, 300, 100, "whole", 0, nil, nil},
		"the last of a course":            {"1000x600 300x100+2", 0, 0, 950, 50, 94, 100, "cross cut", 1, []string{"right"}, nil}, // 906 to 1000
		"the first":                       {"1000x600 300x100+2", 0, -120, 50, 50, 180, 100, "cross cut", 1, []string{"left"}, nil},
		"under the ceiling":               {"1000x600 300x100+2", 0, 0, 350, 550, 300, 90, "rip", 2, nil, []string{"head"}}, // 510 to 600
		"over the tub":                    {"1000x600 300x100+2", -30, 0, 350, 30, 300, 70, "rip", 2, nil, []string{"base 0"}},
		"in a corner":                     {"1000x600 300x100+2", 0, 0, 950, 550, 94, 90, "rip, cross cut", 3, []string{"right"}, []string{"head"}},
		"from end to end":                 {"250x600 300x100+2", 0, -20, 100, 50, 250, 100, "cross cut", 1, []string{"left", "right"}, nil},
		"of a tile that stands":           {"1000x600 100x300+2", 0, 0, 950, 50, 82, 300, "rip", 2, []string{"right"}, nil}, // 918 to 1000
		"its height":                      {"1000x600 100x300+2", -50, 0, 150, 50, 100, 250, "cross cut", 1, nil, []string{"base 0"}},
		"of a square tile, across":        {"1000x600 100x100+2", 0, 0, 950, 50, 82, 100, "cross cut", 1, []string{"right"}, nil},
		"over a rake":                     {"1000x600 300x100+2 base=0,20", 0, 0, 350, 60, 300, 87, "taper", 2, nil, []string{"base 0"}}, // 100 - 20·602/1000 = 87.96
		"beside a corner that leans":      {"1000x600 300x100+2 leanleft=0,60", 0, 0, 100, 50, 290, 100, "taper", 2, []string{"left"}, nil},
		"round the corner of a window":    {"1000x600 300x100+2 window=100,300,50,200", 0, 0, 50, 80, 100, 50, "notch", 5, []string{"window n left"}, []string{"window n bottom"}},
		"left of a window":                {"1000x600 300x100+2 window=100,300,50,200", 0, 0, 50, 150, 100, 100, "cross cut", 1, []string{"window n left"}, nil},
		"a window within the tile":        {"1000x600 300x100+2 window=400,90,30,50", 0, 0, 350, 50, 98, 20, "notch", 5, []string{"window n right", "window n left"}, []string{"window n top", "window n bottom"}},
		"with a hole":                     {"1000x600 300x100+2 pipe=450,50,30", 0, 0, 450, 50, 300, 100, "hole", 4, nil, nil}, // 32 from either edge
		"with a hole near an edge":        {"1000x600 300x100+2 pipe=450,30,30", 0, 0, 450, 50, 300, 100, "hole", 10, nil, nil},
		"cut, with a hole":                {"1000x600 300x100+2 pipe=950,50,30", 0, 0, 950, 50, 94, 100, "cross cut, hole", 5, []string{"right"}, nil},
		"a leg beside the tub":            {"1000x600 300x100+2 leg=150", -200, 0, 50, -150, 150, 100, "cross cut", 1, []string{"step 0"}, nil},
		"over the rim beside the leg":     {"1000x600 300x100+2 leg=150", -50, 0, 50, 0, 150, 50, "notch", 5, []string{"step 0"}, []string{"base 1"}},
		"in columns, the last of a row":   {"1000x600 300x100+2 columns", 0, 0, 950, 50, 94, 100, "cross cut", 1, []string{"right"}, nil},
		"in columns, under the ceiling":   {"1000x600 300x100+2 columns", 0, 0, 350, 550, 300, 90, "rip", 2, nil, []string{"head"}},
		"in columns, at a rake":           {"1000x600 300x100+2 columns base=0,20", 0, 0, 350, 60, 300, 87, "taper", 2, nil, []string{"base 0"}},
		"what the next wall's tile hides": {"1000x600 300x100+2 cover=13", 0, 0, 950, 50, 81, 100, "cross cut", 1, []string{"right"}, nil},
	} {
		w := sketch(c.sketch, c.line, c.edge)
		p := w.at(t, c.x, c.y)
		require.Equal(t, []length.Length{c.wide, c.high}, []length.Length{p.Wide / mm, p.High / mm}, name)
		require.Equal(t, c.kind, p.Kind.String(), name)
		require.Equal(t, c.effort, p.Effort(), name)
		require.Equal(t, c.kind == "whole", p.Whole, name)
		require.Equal(t, c.across, w.names(p.Across), name)
		require.Equal(t, c.up, w.names(p.Up), name)
	}
}
