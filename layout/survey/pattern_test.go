package survey_test

import (
	"encoding/json"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// laid is a small job in inches with a tile, a joint and a bond as given.
func laid(t *testing.T, width, height, joint string, bond survey.Bond) (survey.Room, survey.Faults) {
	t.Helper()
	j := survey.Job{Format: survey.Format, Units: "in", Tile: survey.Tile{Width: width, Height: height}, Joint: survey.Measure{Plain: joint}, Bond: bond,
		Walls: []survey.Wall{{Name: "a", Width: "60", Left: survey.End{Stops: mark("0")}, Right: survey.End{Stops: mark("60")},
			Base: []survey.Segment{{Meets: "tub", Readings: drops("0", "60")}}, Head: survey.Head{Stops: mark("40")}}}}
	return j.Resolve()
}

// Sizes that do not close are refused with those that would.
func TestPatternsThatDoNotCloseAreRefused(t *testing.T) {
	type b = survey.Bond
	for _, c := range []struct {
		name                 string
		width, height, joint string
		bond                 survey.Bond
		fault                string // none where it is laid
	}{
		// Basket weave: L = nW + (n − 1)j. Pages say “exactly half” and forget the joint: 75 × 150 with 3 lacks 3.
		{"half and no joint between", "150 mm", "75 mm", "3 mm", b{Kind: "basket weave"}, "bond.kind: found a basket weave of tile 5 29/32\" × 2 15/16\" with a joint of 1/8\", which do not close; write a tile 6 1/32\" long: 2 of 2 15/16\" side by side with their joints"},
		{"two and a joint", "153 mm", "75 mm", "3 mm", b{Kind: "basket weave"}, ""},
		{"three and two joints", "6 1/4", "2", "1/8", b{Kind: "basket weave"}, ""},
		{"a joint that would close it", "4 1/4", "2", "1/8", b{Kind: "basket weave"}, "a tile 4 1/8\" long: 2 of 2\" side by side with their joints, or one 2 1/16\" wide, or a joint of 1/4\""},
		{"twice as long as wide", "6", "3", "1/8", b{Kind: "basket weave"}, "a tile 6 1/8\" long: 2 of 3\" side by side with their joints, or one 2 15/16\" wide"},
		// With a dot: L = W + 2(dot + j): 1 × 2 with 3/8 and joints of 1/8.
		{"squares, which are a stack", "4", "4", "1/8", b{Kind: "basket weave"}, ""},
		{"squares but for half a millimetre", "4 1/64", "4", "1/8", b{Kind: "basket weave"}, ""},
		{"nearly square", "4 1/2", "4", "1/8", b{Kind: "basket weave"}, "write a tile 8 1/8\" long: 2 of 4\" side by side with their joints"},
		{"a dot that closes", "2", "1", "1/8", b{Kind: "basket weave", Tiles: []survey.Tile{{Width: "3/8"}}}, ""},
		{"a dot that does not", "2", "1", "1/8", b{Kind: "basket weave", Tiles: []survey.Tile{{Width: "1/4"}}}, "a tile 1 3/4\" long: its width, two dots and two joints, or a dot of 3/8\""},
		{"any rectangle in herringbone", "7 1/2", "2 3/8", "3/32", b{Kind: "herringbone"}, ""},
		{"a square in herringbone", "4", "4", "1/8", b{Kind: "herringbone"}, "a tile that is longer than wide"},
		{"double herringbone too short", "5", "3", "1/8", b{Kind: "double herringbone"}, "a tile at least 6 1/8\" long: two of 3\" and a joint, or one at most 2 7/16\" wide"},
		{"a hexagon by its flats", "4", "4", "1/8", b{Kind: "hexagon"}, ""},
		{"a hexagon by both sizes", "4", "4 5/8", "1/8", b{Kind: "hexagon"}, ""},
		{"no regular hexagon", "4", "5", "1/8", b{Kind: "hexagon"}, "or 4 5/8\" from point to point"},
		{"a picket on its side", "12", "3", "1/8", b{Kind: "picket"}, "the 12\" from point to point as height and the 3\" across as the other size"},
		{"a square picket", "4", "4", "1/8", b{Kind: "picket"}, "a tile longer from point to point than across, such as 4\" across and 8\" from point to point as height, with any joint"},
		{"a square picket in plumb rows", "4", "4", "1/8", b{Kind: "picket", Along: "plumb"}, "such as 4\" across and 8\" from point to point as width, with any joint"},
		{"the sizes it is to have", "4", "8", "1/8", b{Kind: "picket"}, ""},
		{"the sizes it is to have in plumb rows", "8", "4", "1/8", b{Kind: "picket", Along: "plumb"}, ""},
		{"a picket on its side in plumb rows", "12", "3", "1/8", b{Kind: "picket", Along: "plumb"}, ""},
		{"mixed heights of one width", "8", "4", "1/8", b{Kind: "mixed heights", Tiles: []survey.Tile{{Height: "2"}}}, ""},
		{"mixed heights of two widths", "8", "4", "1/8", b{Kind: "mixed heights", Tiles: []survey.Tile{{Width: "6", Height: "2"}}}, "tiles of one width, 8\", and several heights"},
		{"no second height", "8", "4", "1/8", b{Kind: "mixed heights"}, "bond.tiles: found 0 tiles; write one or two tiles of the same width"},
		{"pinwheel of any two squares", "6", "6", "1/8", b{Kind: "pinwheel", Tiles: []survey.Tile{{Width: "2 1/2"}}}, ""},
		{"pinwheel of a rectangle", "6", "4", "1/8", b{Kind: "pinwheel", Tiles: []survey.Tile{{Width: "2"}}}, "a square as the first tile, such as 4\" both ways, and another of any size"},
		{"modular of whole modules less a joint", "4", "4", "1/8", b{Kind: "modular", Tiles: []survey.Tile{{Width: "8 1/8", Height: "4"}, {Width: "8 1/8"}, {Width: "12 1/4", Height: "8 1/8"}}}, ""},
		{"modular of nominal sizes", "4", "4", "1/8", b{Kind: "modular", Tiles: []survey.Tile{{Width: "8", Height: "4"}, {Width: "8"}, {Width: "12", Height: "8"}}}, "8 1/8\" × 4\" as tile 2: 2 by 1 modules of 4 1/8\" less a joint"},
		{"an angle nobody makes", "9", "2", "1/8", b{Kind: "chevron", Angle: "50"}, "bond.angle: found “50”; write one of 30, 45, 60"},
		{"an angle of a hexagon", "4", "4", "1/8", b{Kind: "hexagon", Angle: "45"}, "bond.angle: found “45”; write nothing here"},
		{"a turned hexagon", "4", "4", "1/8", b{Kind: "hexagon", Turn: "45"}, "bond.turn: found “45”; write nothing here"},
		{"a further tile of a stack", "4", "4", "1/8", b{Kind: "stack", Tiles: []survey.Tile{{Width: "2"}}}, "bond.tiles: found 1 tiles; write nothing here: a stack is laid of one tile"},
		{"a bond nobody knows", "4", "4", "1/8", b{Kind: "windmill"}, "bond.kind: found “windmill”; write one of stack, running, diagonal"},
	} {
		t.Run(c.name, func(t *testing.T) {
			room, faults := laid(t, c.width, c.height, c.joint, c.bond)
			if c.fault == "" {
				require.Empty(t, faults)
				assert.Equal(t, c.bond.Kind, string(room.Bond.Kind))
				return
			}
			require.Len(t, faults, 1)
			assert.Contains(t, faults[0].String(), c.fault)
		})
	}
}

// Courses that stand are those of stack and running bond.
func TestAPatternFollowsNoCoursesThatStand(t *testing.T) {
	j := survey.Job{}
	require.NoError(t, json.Unmarshal([]byte(`{"format": "coursewright-job/1", "title": "", "units": "mm", "tile": {"width": "100", "height": "100"}, "joint": "2",
		"bond": {"kind": "hexagon"}, "walls": [{"name": "a", "width": "900", "left": {"stops": {"at": "0"}}, "right": {"stops": {"at": "900"}},
		"base": [{"meets": "tub", "readings": [{"at": "0", "drop": "400"}, {"at": "900", "drop": "400"}]}], "head": {"stops": {"at": "500"}},
		"set": {"course": "1", "left": "-300", "right": "-300", "start": {"at": "20"}}}]}`), &j))
	_, faults := j.Resolve()
	require.NotEmpty(t, faults)
	assert.Contains(t, faults[len(faults)-1].String(), "only the courses of stack and running bond can be followed")
}

// A square of a further tile, and a course of another height, may be given by one size.
func TestFurtherTilesMayLeaveOutWhatFollows(t *testing.T) {
	room, faults := laid(t, "8", "4", "1/8", survey.Bond{Kind: "mixed heights", Tiles: []survey.Tile{{Height: "2"}}})
	require.Empty(t, faults)
	assert.Equal(t, survey.TileSize{Width: 8 * length.Inch, Height: 2 * length.Inch}, survey.TileSize{Width: room.Bond.Others[0].Width, Height: room.Bond.Others[0].Height})
	room, faults = laid(t, "6", "6", "1/8", survey.Bond{Kind: "pinwheel", Tiles: []survey.Tile{{Width: "3"}}})
	require.Empty(t, faults)
	assert.Equal(t, 3*length.Inch, room.Bond.Others[0].Height)
}
