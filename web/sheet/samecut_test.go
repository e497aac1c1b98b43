package sheet

import (
	"fmt"
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
		"places that are larger":              {corner, others(func(g *cuts.Group) { g.Spread = mm }), 1, 0},
		"with a notch":                        {corner, others(func(g *cuts.Group) { g.Size.Notches = []cuts.Notch{{Left: 9 * mm}} }), 2, 0},
	} {
		b := &book{opts: Options{Saw: &cuts.Settings{Turn: true}}, plan: layout.Plan{Room: survey.Room{Units: length.Metric}}, cuts: cuts.Schedule{Groups: []cuts.Group{c.a, c.b}}}
		rows := b.rows()
		assert.Len(t, rows, c.rows, name)
		assert.Equal(t, c.mirrored, rows[0].mirrored, name)
		assert.Equal(t, 3-c.rows, rows[0].Count, name)
		assert.Len(t, rows[0].Places, 1, name)
		if rows[0].Count > 1 {
			assert.Equal(t, max(c.a.Spread, c.b.Spread), rows[0].Spread, name)
		}
		b.plan.Room.Tile.Grain = true
		assert.Len(t, b.rows(), 2, "%s, of a tile that must not be turned", name)
	}
}

// What two rows say of one tile is never the same: pieces alike for the saw stand in one row, and a row of pieces that
// are cut both ways says both sizes. Those out of the square tile of a pattern once had only their height.
func TestNoTwoRowsOfTheScheduleSayTheSame(t *testing.T) {
	for name, plan := range map[string]layout.Plan{
		"herringbone": demoIn(t, "7 1/2", "2 3/8", survey.Bond{Kind: "herringbone"}), "herringbone in mm": demoIn(t, "190 mm", "60 mm", survey.Bond{Kind: "herringbone"}),
		"pinwheel": demoIn(t, "5 1/4", "5 1/4", survey.Bond{Kind: "pinwheel", Tiles: []survey.Tile{{Width: "2 1/2", Height: "2 1/2"}}}), "alcove": roomOf(t, "jobs/alcove")} {
		b, row := newBook(plan, Options{Kinds: []Kind{CutSchedule}}), map[string][]string{}
		for _, s := range b.rows() {
			if s.How != cuts.Fence || b.marked(s.Group) {
				continue
			}
			s.Spread = 0
			big, small := b.fence(s.Group)
			said := fmt.Sprint(s.kinds(), " ", s.Of, ": ", big, " ", small)
			assert.Empty(t, row[said], "%s: %s are told as %s", name, s.ids, said)
			row[said] = s.ids
		}
		assert.Greater(t, len(row), 3, name)
	}
}
