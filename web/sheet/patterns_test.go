package sheet

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
)

// demoIn is the demo laid in a pattern, of a tile of some size.
func demoIn(t *testing.T, width, height string, bond survey.Bond) layout.Plan {
	t.Helper()
	name := fmt.Sprint("demo in ", width, height, bond)
	if plan, known := rooms[name]; known {
		return plan
	}
	rooms[name] = solved(t, "../../static/demo", func(j *survey.Job) {
		j.Tile.Width, j.Tile.Height, j.Bond = width, height, bond
	})
	return rooms[name]
}

// A tile with points, cut along the side that it lies on, is told by the one figure of its fence; it was once told by the two widths
// that come of it.
func TestATileWithPointsIsCutAtAFence(t *testing.T) {
	b, along := newBook(roomOf(t, "jobs/hexagon"), Options{Kinds: []Kind{CutSchedule}}), 0
	for _, g := range b.cuts.Groups {
		if sawn := strings.Join(g.Cut, " "); g.Kind != "cross cut" || sawn != "top" && sawn != "bottom" {
			continue
		}
		big, small := b.fence(g)
		along++
		assert.Equal(t, b.bare(g.Size.Height), big, g.ID)
		assert.True(t, strings.HasPrefix(small, "high"), "%s: %s", g.ID, small)
	}
	assert.Greater(t, along, 3)
}

// No cut is told by one figure twice: along a side of a hexagon, as plumb through a chevron, both marks are as far from their corners, and once it said 41 → 41.
func TestNoCutIsToldByOneFigureTwice(t *testing.T) {
	for name, plan := range map[string]layout.Plan{
		"hexagon": roomOf(t, "jobs/hexagon"), "picket": demoIn(t, "3", "7 1/2", survey.Bond{Kind: "picket"}),
		"chevron": demoIn(t, "7 1/2", "2 3/8", survey.Bond{Kind: "chevron"}), "diagonal": demoIn(t, "4", "4", survey.Bond{Kind: "diagonal"}),
		"basket weave": demoIn(t, "6", "2 15/16", survey.Bond{Kind: "basket weave"}), "old house": roomOf(t, "jobs/old-house"),
	} {
		b := newBook(plan, Options{Kinds: []Kind{CutSchedule}})
		both := 0
		for _, g := range b.cuts.Groups {
			big, small := b.fence(g)
			first, second, two := strings.Cut(big, " → ")
			assert.False(t, two && first == second, "%s, %s: %s, %s", name, g.ID, big, small)
			if strings.HasPrefix(small, "at both marks, ") {
				both++
			}
		}
		slanted := name != "basket weave" && name != "old house"
		assert.Equal(t, slanted, both > 3, "%s: %d", name, both)
	}
}

// The measuring sheet asks for rows only of tile that is laid in rows.
func TestTheMeasuringSheetAsksForTilesAsTheyCanBeLaid(t *testing.T) {
	square := survey.TileSize{Width: 96000, Height: 96000}
	long := survey.TileSize{Width: 180000, Height: 60000}
	for name, c := range map[string]struct {
		tile survey.TileSize
		bond survey.BondRule
		want []string
	}{
		"running":     {long, survey.BondRule{Kind: survey.Running}, []string{"lying in a row", "standing"}},
		"herringbone": {long, survey.BondRule{Kind: survey.Herringbone}, []string{"side by side on the floor", "end to end on the floor"}},
		"diagonal":    {square, survey.BondRule{Kind: survey.Diagonal}, []string{"side by side on the floor"}},
		"hexagon":     {square, survey.BondRule{Kind: survey.Hexagon}, []string{"side against side"}},
		"picket":      {long, survey.BondRule{Kind: survey.Picket}, []string{"side by side on the floor", "from point to point"}},
		"chevron":     {long, survey.BondRule{Kind: survey.Chevron}, []string{"long sides together", "along a long side"}},
		"pinwheel":    {square, survey.BondRule{Kind: survey.Pinwheel, Others: []survey.TileSize{square}}, []string{"side by side on the floor", "Tile 2 of the pattern"}},
		"sheets":      {survey.TileSize{Width: 96000, Height: 96000, Sheet: survey.SheetSize{Across: 5, Up: 5}}, survey.BondRule{Kind: survey.Stack}, []string{"of a sheet", "up"}},
	} {
		asked := tilesAsked(survey.Room{Tile: c.tile, Bond: c.bond})
		require.Len(t, asked, len(c.want), name)
		for i, want := range c.want {
			assert.Contains(t, asked[i], want, name)
		}
	}
	says(t, words(printedText(t, roomOf(t, "jobs/herringbone"), Measuring)), "side by side on the floor: overall")
}

// Herringbone at 45° has its first whole tiles 1/8 in over the rim, where no batten goes; the alcove has room for one.
func TestTheSetOutSaysWhereNoBattenGoesIn(t *testing.T) {
	says(t, words(printedText(t, roomOf(t, "jobs/herringbone"), SetOut)), "is between it and the rim: where no batten goes in, stand the course on wedges there.")
	assert.NotContains(t, words(printedText(t, roomOf(t, "jobs/alcove"), SetOut)), "where no batten goes in")
}

// Names of what stands at one height stand under each other beside a wall, none cut short.
func TestNamesAtOneHeightAreWhole(t *testing.T) {
	plan := solved(t, "alcove", func(j *survey.Job) {
		for i, name := range []string{"shower arm", "hand shower", "diverter valve"} {
			j.Walls[0].Openings = append(j.Walls[0].Openings, survey.Opening{Kind: "pipe", Name: name,
				At: []string{"8", "14", "20"}[i], Height: &survey.Measure{Plain: "20"}, Diameter: "1"})
		}
	})
	for _, l := range newBook(plan, Options{Kinds: []Kind{Elevations}}).leaves {
		beside := map[string]int{}
		for _, x := range texts(l) {
			assert.False(t, strings.HasSuffix(x.Text, "…"), "%s: %s", l.wall, x.Text)
			for name := range strings.SplitSeq(strings.TrimSuffix(x.Text, ","), ", ") {
				beside[name]++
			}
		}
		if strings.HasPrefix(l.wall, "L") || beside["shower arm"] > 0 {
			for _, name := range []string{"shower arm", "hand shower", "diverter valve"} {
				assert.GreaterOrEqual(t, beside[name], 2, "beside %s and at its hole: %s", l.wall, name)
			}
		}
	}
}

// The first course of a room in a pattern is read in one way on all walls, and under every tile stands how low it is there: the wall
// without a leg once had heights from the points of its hexagons, of which the sheet says nothing, and the rim's figure
// stood under the tile on the floor.
func TestTheFirstCourseOfAPatternIsReadInOneWay(t *testing.T) {
	plan := demoIn(t, "4 1/4", "4 1/4", survey.Bond{Kind: "hexagon"})
	b := newBook(plan, Options{Kinds: []Kind{FirstCourse, CutSchedule}})
	at := map[string]drawing.Point{}
	for _, x := range texts(b.leaves[0]) {
		at[x.Text] = x.At
	}
	line := map[string]string{}
	for _, c := range b.cuts.Cuts {
		line[c.Piece] = c.Group
	}
	for i, s := range b.footings() {
		for _, tile := range s.tiles {
			assert.Contains(t, at, tile.piece.ID+", "+line[tile.piece.ID])
		}
		require.Len(t, s.grounds, len(plan.Walls[i].Found.Base))
	}
	floor, rim := at[b.bareTape(-plan.Walls[0].Found.Base[0].Readings[0].Value)], at[b.bareTape(-plan.Walls[0].Found.Base[1].Readings[0].Value)]
	assert.Greater(t, floor.Y, rim.Y)
	assert.Less(t, floor.X, rim.X)
	assert.NotContains(t, words(printedText(t, plan, FirstCourse)), "Cut to width first")
}
