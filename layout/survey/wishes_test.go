package survey_test

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestJointsOfARange(t *testing.T) {
	sizes := func(unit length.Length, halves ...length.Length) (l []length.Length) {
		for _, h := range halves {
			l = append(l, h*unit)
		}
		return l
	}
	spacers := func(from, to string) survey.Measure { return survey.Measure{Mark: free(from, to)} }
	const thirtySecond, half = in / 32, length.Millimetre / 2
	for name, c := range map[string]struct {
		units string
		joint survey.Measure
		want  []length.Length
	}{
		"one joint":             {"in", survey.Measure{Plain: "5/32"}, sizes(thirtySecond, 5)},
		"one joint as a mark":   {"in", survey.Measure{Mark: mark("5/32")}, sizes(thirtySecond, 5)},
		"all of the trade":      {"in", spacers("1/16", "1/4"), sizes(thirtySecond, 2, 3, 4, 6, 8)},
		"the ends belong to it": {"in", spacers("3/32", "3/16"), sizes(thirtySecond, 3, 4, 6)},
		"between spacers":       {"in", spacers("5/64", "5/32"), sizes(thirtySecond, 3, 4)},
		"millimetres by halves": {"mm", spacers("2", "3"), sizes(half, 4, 5, 6)},
		"no wider than 10 mm":   {"mm", spacers("9.5", "20"), sizes(half, 19, 20)},
	} {
		t.Run(name, func(t *testing.T) {
			job := sketch(c.units, "a")
			job.Joint = c.joint
			room, faults := job.Resolve()
			require.Empty(t, faults)
			assert.Equal(t, c.want, room.Joints)
			assert.Equal(t, c.want[0], room.Joint)
		})
	}
}

func TestJointsRefuse(t *testing.T) {
	for fault, c := range map[string]struct {
		units string
		mark  *survey.Mark
	}{
		`joint: found a range from 9/64" to 11/64" with no spacer in it; write a range that holds one of 1/16, 3/32, 1/8, 3/16, 1/4 in, or one joint in quotes`: {"in", free("9/64", "11/64")},
		"joint: found a range from 2.1 mm to 2.4 mm with no spacer in it; write a range that holds one of the whole and half millimetres from 0.5 mm to 10 mm":  {"mm", free("2.1", "2.4")},
		`joint.to: found “1/16”; write a length of at least 1/8`: {"in", free("1/8", "1/16")},
		`joint.from: found nothing`:                              {"in", free("", "1/4")},
		`joint.at: found nothing; write a length from 0`:         {"in", &survey.Mark{}},
	} {
		job := sketch(c.units, "a")
		job.Joint = survey.Measure{Mark: c.mark}
		_, faults := job.Resolve()
		if assert.Len(t, faults, 1, "%v", faults) {
			assert.Contains(t, faults[0].String(), fault)
		}
	}
	job := stood(asSet("1", "-30", "-30", "joint", "20"), nil)
	job.Joint = survey.Measure{Mark: free("1/16", "1/4")}
	_, faults := job.Resolve()
	require.Len(t, faults, 1)
	assert.Equal(t, "joint: found a range, where courses stand; write the joint between the courses that stand, as one length in quotes", faults[0].String())

	job = sketch("in", "a")
	job.Joint = survey.Measure{Mark: free("1/16", "1/4")}
	job.Tile.Sample = &survey.Sample{Use: true, Across: survey.Run{Length: "61 1/8"}}
	_, faults = job.Resolve()
	require.Len(t, faults, 1)
	assert.Equal(t, "tile.sample.across.spacer: found nothing, and the joint is still a range; write the spacer it was laid with", faults[0].String())
}

func TestPreferences(t *testing.T) {
	job := sketch("in", "a")
	job.Prefer = []string{"openings", "full head"}
	room, faults := job.Resolve()
	require.Empty(t, faults)
	assert.Equal(t, survey.Prefer{Openings: true, FullHead: true}, room.Prefer)
	job.Prefer = survey.Preferences()
	room, faults = job.Resolve()
	require.Empty(t, faults)
	assert.Equal(t, survey.Prefer{LargeCuts: true, Openings: true, Shared: true, FullHead: true}, room.Prefer)
	job.Prefer = []string{"openings", "small cuts"}
	_, faults = job.Resolve()
	require.Len(t, faults, 1)
	assert.Equal(t, "prefer[1]: found “small cuts”; write one of large cuts, openings, shared, full head", faults[0].String())
}

func TestSight(t *testing.T) {
	legs := []survey.Segment{{Meets: "floor", Readings: drops("0", "4")}, {Meets: "tub", Readings: drops("4", "60")}}
	for _, c := range []struct {
		name  string
		spoil func(w *survey.Wall)
		low   []string
	}{
		{"all is seen", func(w *survey.Wall) {}, nil},
		{"a floor alone is seen", func(w *survey.Wall) { w.Base = legs[:1] }, nil},
		{"a floor beside a tub is the foot of a leg", func(w *survey.Wall) { w.Base = legs }, []string{"base"}},
		{"unless the person says it is seen", func(w *survey.Wall) {
			w.Base = []survey.Segment{{Meets: "floor", Sight: "plain", Readings: drops("0", "4")}, legs[1]}
		}, nil},
		{"whatever the person says is low", func(w *survey.Wall) {
			w.Left.Sight, w.Head.Sight = "low", "low"
			w.Openings = []survey.Opening{niche("n", *mark("10"), *mark("12"))}
			w.Openings[0].Sight = "low"
		}, []string{"left", "head", "niche n"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			job := sketch("in", "a")
			c.spoil(&job.Walls[0])
			room, faults := job.Resolve()
			require.Empty(t, faults)
			var low []string
			placed := survey.Placed{Right: 60 * in, Head: 30 * in, Openings: make([]survey.Edges, len(room.Walls[0].Openings))}
			for _, b := range room.Walls[0].Shape(room.Units, placed).Sides {
				if b.Low {
					low = append(low, b.Name)
				}
			}
			assert.Equal(t, c.low, low)
		})
	}
	job := sketch("in", "a")
	job.Walls[0].Base[0].Sight = "hidden"
	_, faults := job.Resolve()
	require.Len(t, faults, 1)
	assert.Equal(t, "walls[0].base[0].sight: found “hidden”; write one of plain, low", faults[0].String())
}

func TestAPlaceWished(t *testing.T) {
	job := sketch("in", "a")
	job.Walls[0].Openings = []survey.Opening{niche("n", *free("10", "30"), *mark("12")), niche("m", *free("43", "44"), *mark("12"))}
	job.Walls[0].Openings[0].Near = &survey.Place{X: "22", Y: "-3"}
	job.Walls[0].Openings[1].Near = &survey.Place{Y: "8"}
	room, faults := job.Resolve()
	require.Empty(t, faults)
	n, m := room.Walls[0].Openings[0].Near, room.Walls[0].Openings[1].Near
	assert.Equal(t, [2]length.Length{22 * in, -3 * in}, [2]length.Length{*n.X, *n.Y})
	assert.Nil(t, m.X)
	assert.Equal(t, 8*in, *m.Y)

	job.Walls[0].Openings = []survey.Opening{niche("n", *free("10", "30"), *mark("12")), pipe("p", "50", "0", "4")}
	job.Walls[0].Openings[0].Near = &survey.Place{X: "70"}
	job.Walls[0].Openings[1].Near = &survey.Place{X: "7"}
	_, faults = job.Resolve()
	require.Len(t, faults, 2)
	assert.Contains(t, faults[0].String(), "walls[0].openings[0].near.x: found “70”; write a length from 0\" to")
	assert.Equal(t, "walls[0].openings[1].near: found a place; write nothing here: a pipe stays where it is", faults[1].String())
	job.Walls[0].Openings[0].Near, job.Walls[0].Openings[1].Near = &survey.Place{}, nil
	_, faults = job.Resolve()
	require.Len(t, faults, 1)
	assert.Equal(t, `walls[0].openings[0].near: found nothing; write {"x": …, "y": …}, or one of them`, faults[0].String())
}

// What stands in the joint, the edge and the tile of one start: tile 6 in, joint 1/8.
func TestAStartIsPinnedInThreeWords(t *testing.T) {
	const tile, joint = 6 * in, in / 8
	for name, c := range map[string]struct {
		pin  survey.WallPin
		want survey.StartPin
		edge length.Length
	}{
		"edge":                    {survey.WallPin{Edge: "30"}, survey.StartPin{X: 30 * in, Is: survey.OnEdge}, 30 * in},
		"joint":                   {survey.WallPin{Joint: "30"}, survey.StartPin{X: 30 * in, Is: survey.OnJoint}, 30*in + in/16},
		"tile":                    {survey.WallPin{Tile: "30"}, survey.StartPin{X: 30 * in, Is: survey.OnTile}, 27 * in},
		"all three, one place":    {survey.WallPin{Joint: "30", Edge: "30 1/16", Tile: "33 1/16"}, survey.StartPin{X: 30 * in, Is: survey.OnJoint}, 30*in + in/16},
		"edge and another's tile": {survey.WallPin{Edge: "30", Tile: "39 1/8"}, survey.StartPin{X: 30 * in, Is: survey.OnEdge}, 30 * in},
	} {
		t.Run(name, func(t *testing.T) {
			job := sketch("in", "a")
			job.Pins.Walls = map[string]survey.WallPin{"a": c.pin}
			room, faults := job.Resolve()
			require.Empty(t, faults)
			assert.Equal(t, c.want, *room.Walls[0].Pin)
			assert.Equal(t, c.edge, room.Walls[0].Pin.Edge(tile, joint))
		})
	}
	job := sketch("in", "a")
	job.Pins.Walls = map[string]survey.WallPin{"a": {Edge: "30", Tile: "34"}}
	_, faults := job.Resolve()
	require.Len(t, faults, 1)
	assert.Equal(t, `pins.walls.a.tile: found “34”, which clashes with the edge at “30” by 1"; write only one of pins.walls.a.edge and pins.walls.a.tile`, faults[0].String())
}

// A plan prints to 0.001 mm, which is no whole number of units.
func TestWhatAPlanPrintsIsPinnedAsPrinted(t *testing.T) {
	for _, units := range []string{"in", "mm"} {
		job := sketch(units, "a")
		job.Walls[0].Left = survey.End{Stops: free("0 in", "3 in")}
		line, start, end := -982*length.Millimetre-637, 830*length.Millimetre+253, 17*length.Millimetre+1
		print := func(l length.Length) string { return l.MillimetreText() + " mm" }
		job.Pins.Course.Line = print(line)
		job.Pins.Walls = map[string]survey.WallPin{"a": {Edge: print(start), Marks: map[string]string{"end left": print(end)}}}
		room, faults := job.Resolve()
		require.Empty(t, faults)
		assert.Equal(t, line, *room.Line)
		assert.Equal(t, start, room.Walls[0].Pin.X)
		assert.Equal(t, end, room.Walls[0].MarkPins["end left"])

		job.Walls[0].Width = "1500.263 mm"
		_, faults = job.Resolve()
		require.NotEmpty(t, faults, "only a pin may come from a plan; a reading is exact or refused")
		assert.Contains(t, faults[0].String(), "walls[0].width: found “1500.263 mm”, which cannot be kept exactly")
	}
}

func TestGuessesAreFieldsThatAreThere(t *testing.T) {
	job := sketch("in", "a")
	job.Walls[0].Openings = []survey.Opening{pipe("p", "30", "0", "4")}
	job.Guess = []string{"walls[0].width", "walls[0].openings[0].height", "walls[3].width", "walls[0].width", "joint"}
	room, faults := job.Resolve()
	require.Empty(t, faults)
	assert.Equal(t, []string{"walls[0].width", "walls[0].openings[0].height", "joint"}, room.Guesses)
	assert.True(t, room.Guess())
	assert.False(t, survey.Room{}.Guess())

	job.Confirmed = make([]string, 1001)
	job.Guess = []string{"a\nb"}
	_, faults = job.Resolve()
	require.Len(t, faults, 2)
	assert.Equal(t, "confirmed: found 1001 paths; write at most 1000", faults[0].String())
	assert.Equal(t, "guess[0]: found “a?b” with control characters; write letters on one line", faults[1].String())
}

func TestTextsAreFiledUnderTheirPaths(t *testing.T) {
	job := sketch("in", "a")
	job.Walls[0].Openings = []survey.Opening{niche("n", *free("10", "30"), *mark("12"))}
	job.Pins.Walls = map[string]survey.WallPin{"a": {Edge: "3"}}
	texts := job.Texts()
	for path, want := range map[string]string{
		"units": "in", "joint": "1/8 in", "tile.width": job.Tile.Width, "walls[0].base[0].readings[1].drop": "40 in", "walls[0].head.stops.at": "30 in",
		"walls[0].openings[0].left.to": "30", "walls[0].openings[0].height.at": "10", "pins.walls.a.edge": "3",
	} {
		assert.Equal(t, want, texts[path], path)
	}
	assert.NotContains(t, texts, "bed")
}

func TestABoxSaysWhatItCovers(t *testing.T) {
	job := sketch("in", "a")
	job.Tile.Box = &survey.Box{Count: 6, Area: "11.63 sq ft"}
	room, faults := job.Resolve()
	require.Empty(t, faults)
	assert.Equal(t, (1163*length.Foot.Times(length.Foot)+50)/100, room.Tile.BoxArea)
	for area, says := range map[string]string{
		"lots": "tile.box.area: found “lots”, which has “lots” where a number is needed; write an area such as",
		"0":    "tile.box.area: found “0”; write what a box covers",
	} {
		job.Tile.Box.Area = area
		_, faults := job.Resolve()
		require.Len(t, faults, 1)
		assert.Contains(t, faults[0].String(), says)
	}
}
