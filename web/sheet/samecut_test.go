package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/layout/survey"
)

func TestLinesThatAreOneCutStandTogether(t *testing.T) {
	const mm = length.Millimetre
	line := func(kind string, wide, left, right length.Length, cut ...string) cuts.Group {
		high := max(left, right)
		return cuts.Group{ID: "C1", Count: 1, Kind: kind, Cut: cut, Pieces: []string{"B-01-01"}, Places: []cuts.Place{{Wall: "B", Side: "left", Pieces: []string{"B-01-01"}}},
			Size: cuts.Size{Width: wide, Height: high, Left: left, Right: right, Bottom: wide, Top: wide}}
	}
	corner, taper := line("rip, cross cut", 60*mm, 38*mm, 38*mm, "left", "bottom"), line("cross cut, taper", 78*mm, 62*mm, 63*mm, "bottom", "left")
	others := func(change func(*cuts.Group)) cuts.Group {
		g := corner
		change(&g)
		return g
	}
	for name, c := range map[string]struct {
		a, b           cuts.Group
		rows, mirrored int
	}{
		"a corner and its mirror image":       {corner, line("rip, cross cut", 60*mm, 38*mm, 38*mm, "bottom", "right"), 1, 1},
		"the same piece with another end cut": {line("cross cut", 60*mm, 64*mm, 64*mm, "left"), line("cross cut", 60*mm, 64*mm, 64*mm, "left", "right"), 1, 0},
		"a taper and its mirror image":        {taper, line("cross cut, taper", 78*mm, 63*mm, 62*mm, "bottom", "right"), 1, 1},
		"a taper that is cut elsewhere":       {taper, line("cross cut, taper", 78*mm, 63*mm, 62*mm, "top", "right"), 2, 0},
		"half a millimetre more":              {corner, line("rip, cross cut", 60*mm+mm/2, 38*mm, 38*mm, "bottom", "right"), 2, 0},
		"another tile":                        {corner, others(func(g *cuts.Group) { g.Tile = "mosaic" }), 2, 0},
		"measured in place":                   {corner, others(func(g *cuts.Group) { g.How = cuts.InPlace }), 2, 0},
		"places that are larger":              {corner, others(func(g *cuts.Group) { g.Spread = mm }), 2, 0},
		"with a notch":                        {corner, others(func(g *cuts.Group) { g.Size.Notches = []cuts.Notch{{Left: 9 * mm}} }), 2, 0},
	} {
		b := &book{opts: Options{Saw: &cuts.Settings{Turn: true}}, plan: layout.Plan{Room: survey.Room{Units: length.Metric}}, cuts: cuts.Schedule{Groups: []cuts.Group{c.a, c.b}}}
		rows := b.rows()
		assert.Len(t, rows, c.rows, name)
		assert.Equal(t, c.mirrored, rows[0].mirrored, name)
		assert.Equal(t, 3-c.rows, rows[0].Count, name)
		assert.Len(t, rows[0].Places, 1, name)
		b.plan.Room.Tile.Grain = true
		assert.Len(t, b.rows(), 2, "%s, of a tile that must not be turned", name)
	}
}
