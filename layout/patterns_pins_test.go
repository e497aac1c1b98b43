package layout_test

import (
	"context"
	"encoding/json"
	"maps"
	"testing"

	"coursewright/layout"
	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// inMillimetres are patterns of tile as it is sold.
var inMillimetres = []object{
	{"width": "190 mm", "height": "60 mm", "bond": object{"kind": "herringbone"}},
	{"width": "190 mm", "height": "60 mm", "bond": object{"kind": "herringbone", "turn": "45"}},
	{"width": "108 mm", "height": "108 mm", "bond": object{"kind": "hexagon"}},
	{"width": "150 mm", "height": "150 mm", "bond": object{"kind": "hexagon", "along": "plumb"}},
	{"width": "75 mm", "height": "190 mm", "bond": object{"kind": "picket"}},
	{"width": "190 mm", "height": "60 mm", "bond": object{"kind": "chevron"}},
	{"width": "100 mm", "height": "100 mm", "bond": object{"kind": "diagonal"}},
	{"width": "153 mm", "height": "75 mm", "bond": object{"kind": "basket weave"}},
	{"width": "126 mm", "height": "60 mm", "bond": object{"kind": "basket weave", "tiles": []object{{"width": "30 mm"}}}},
	{"width": "130 mm", "height": "130 mm", "bond": object{"kind": "pinwheel", "tiles": []object{{"width": "60 mm"}}}},
	{"width": "97 mm", "height": "97 mm", "bond": object{"kind": "modular", "tiles": []object{{"width": "197 mm", "height": "97 mm"}, {"width": "197 mm"}, {"width": "297 mm", "height": "197 mm"}}}},
	{"width": "180 mm", "height": "75 mm", "bond": object{"kind": "mixed heights", "offset": "1/2", "tiles": []object{{"height": "40 mm"}}}},
	{"width": "190 mm", "height": "60 mm", "bond": object{"kind": "double herringbone"}},
}

// showerInPattern is one of the showers, laid in one pattern after another.
func showerInPattern(t require.TestingT, seed int) []byte {
	return inPatternOf(t, showers.Example(seed), inMillimetres[seed%len(inMillimetres)])
}

// inPatternOf is a room laid in a tile with its bond.
func inPatternOf(t require.TestingT, room []byte, tile object) []byte {
	var doc object
	require.NoError(t, json.Unmarshal(room, &doc))
	tile = maps.Clone(tile)
	doc["joint"], doc["bond"] = "3 mm", tile["bond"]
	delete(tile, "bond")
	tile["thickness"] = "8 mm"
	doc["tile"] = tile
	data, err := json.Marshal(doc)
	require.NoError(t, err)
	return data
}

// Showers in patterns with what they were found to have at worst since: pins beat each of them once by its runs or by a
// sliver, before the search that settles looked further, or while it cut more of what it passed over.
func TestPatternsThatPinsBeatOnce(t *testing.T) {
	for seed, most := range map[int]spoiled{75: {slivers: 3, exposed: 1, openings: 1, thirds: 2}, 76: {}, 95: {slivers: 1, fifths: 99}} {
		job, err := survey.Read(showerInPattern(t, seed))
		require.NoError(t, err)
		plan, err := layout.Quick(context.Background(), job)
		require.NoError(t, err)
		m := plan.Setout.Merit
		got := spoiled{m.Slivers, m.Fifths, m.Exposed, m.Openings, m.Thirds}
		require.LessOrEqual(t, got.compare(most), 0, "shower %d: %+v, was %+v", seed, got, most)
		require.Less(t, len(m.Runs), map[int]int{75: 99, 76: 1, 95: 99}[seed], "shower %d: %v", seed, m.Runs)
	}
}

// Rooms of which no set-out is proven, and lines or starts that beat what was found, until the search that settles went on with more
// lines for as much work as it had, passed over those that cannot be better, and looked once more at the best.
func TestPinsDoNotBeatWhatWasSearchedFurther(t *testing.T) {
	line := func(at length.Length) survey.Pins { return survey.Pins{Course: survey.CoursePin{Line: lengthText(at)}} }
	hexagons := object{"width": "200 mm", "height": "200 mm", "bond": object{"kind": "hexagon", "along": "plumb"}}
	chevrons := object{"width": "300 mm", "height": "100 mm", "bond": object{"kind": "chevron"}}
	for _, c := range []struct {
		name string
		room []byte
		pins survey.Pins
	}{
		{"shower 207", showerInPattern(t, 207), line(-164592)},
		{"shower 209", showerInPattern(t, 209), line(-35052)},
		{"shower 3028", inPatternOf(t, showers.Example(3028), inMillimetres[10]), survey.Pins{Walls: map[string]survey.WallPin{"left": {Edge: "533 mm"}}}},
		{"shower 3034", inPatternOf(t, showers.Example(3034), hexagons), line(-207264)},
		{"house 3034", inPatternOf(t, houses.Example(3034), chevrons), line(-259080)},
	} {
		job, err := survey.Read(c.room)
		require.NoError(t, err)
		free, err := layout.Quick(t.Context(), job)
		require.NoError(t, err)
		job.Pins = c.pins
		pinned, err := layout.Quick(t.Context(), job)
		require.NoError(t, err)
		order, term := free.Setout.Order.Until(&pinned.Setout.Merit, &free.Setout.Merit, free.Setout.Order.Shared())
		require.GreaterOrEqual(t, order, 0, "%s: pinned as %+v it is better in %s", c.name, job.Pins, term)
	}
}

// A shower whose worst run is more than a third, as it was before no way was passed over that may be better: that had cost it until
// more lines were looked at.
func TestMoreLinesGiveALargerWorstRun(t *testing.T) {
	job, err := survey.Read(showerInPattern(t, 27))
	require.NoError(t, err)
	plan, err := layout.Quick(t.Context(), job)
	require.NoError(t, err)
	require.Zero(t, plan.Setout.Merit.Thirds)
	require.True(t, (piece.Share{Num: 2, Den: 5}).Less(plan.Setout.Merit.Runs[0]), "%v", plan.Setout.Merit.Runs)
}

// A proven set-out that pins beat once by its head: the end of the right wall that came first cut the rim, and those after
// it, which do not, were passed over for that. In showers in patterns the same cost one in fifteen something.
func TestEndsAreTriedAfterOneThatCutsTheRim(t *testing.T) {
	for _, p := range roomsInPatterns {
		if p.name != "herringbone at 45" {
			continue
		}
		job := p.lay(t, "alcove")
		free, err := layout.Quick(t.Context(), job)
		require.NoError(t, err)
		require.True(t, free.Setout.Proven)
		job.Pins.Course.Line = lengthText(-3048)
		job.Pins.Walls = edgePin(free.Walls[2], 422148)
		pinned, err := layout.Quick(t.Context(), job)
		require.NoError(t, err)
		order, term := free.Setout.Order.Until(&pinned.Setout.Merit, &free.Setout.Merit, free.Setout.Order.Shared())
		require.GreaterOrEqual(t, order, 0, "pinned it is better in %s", term)
	}
}

// A proven set-out that a pinned line beat once by its rim: a piece at a corner that leans was a unit narrower, and by that
// a mark, than with the head where it then stands.
func TestWhatIsRoundedAtALeaningCornerIsNotSure(t *testing.T) {
	job, err := survey.Read(showerInPattern(t, 132))
	require.NoError(t, err)
	free, err := layout.Quick(t.Context(), job)
	require.NoError(t, err)
	require.True(t, free.Setout.Proven)
	job.Pins.Course.Line = lengthText(-192024)
	pinned, err := layout.Quick(t.Context(), job)
	require.NoError(t, err)
	order, term := free.Setout.Order.Until(&pinned.Setout.Merit, &free.Setout.Merit, free.Setout.Order.Shared())
	require.GreaterOrEqual(t, order, 0, "pinned it is better in %s", term)
}

// No phase that is pinned, quarters of the pattern's reach and marks by chance, beats the set-out of a shower in a
// pattern that is proven best. Of 200 showers 191 are proven; of the others pins like these beat three.
func TestNoPinnedPhaseBeatsAPattern(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		seed := rapid.IntRange(0, 199).Draw(t, "shower")
		if !rare(t, 25) {
			return
		}
		job, err := survey.Read(showerInPattern(t, seed))
		require.NoError(t, err)
		free, err := layout.Quick(context.Background(), job)
		require.NoError(t, err)
		if !free.Setout.Proven {
			return
		}
		for range 3 {
			job.Pins = phasePins(t, &free)
			pinned, err := layout.Quick(context.Background(), job)
			require.NoError(t, err)
			order, term := free.Setout.Order.Until(&pinned.Setout.Merit, &free.Setout.Merit, free.Setout.Order.Shared())
			require.GreaterOrEqual(t, order, 0, "shower %d: pinned it is better in %s\n%s", seed, term, mustWrite(job))
		}
	})
}

// Where rim and head are wished alike no phase that is pinned beats a proven set-out either, by how alike they are too: in two rooms of
// three walls, laid in every pattern, one of them with free ends, heads and a niche.
func TestNoPinnedPhaseMakesRimAndHeadMoreAlike(t *testing.T) {
	proven := 0
	rapid.Check(t, func(t *rapid.T) {
		p, name := rapid.SampledFrom(roomsInPatterns).Draw(t, "pattern"), rapid.SampledFrom([]string{"herringbone", "herringbone", "alcove"}).Draw(t, "room")
		if !rare(t, 8) {
			return
		}
		job := p.lay(t, name)
		job.Prefer = []string{"shared"}
		free, err := layout.Quick(context.Background(), job)
		require.NoError(t, err)
		if !free.Setout.Proven {
			return
		}
		proven++
		for range 4 {
			job.Pins = phasePins(t, &free)
			pinned, err := layout.Quick(context.Background(), job)
			require.NoError(t, err)
			order, term := free.Setout.Order.Until(&pinned.Setout.Merit, &free.Setout.Merit, merit.Corners)
			require.GreaterOrEqual(t, order, 0, "%s, %s: pinned it is better in %s\n%s", p.name, name, term, mustWrite(job))
		}
	})
	t.Logf("%d rooms proven", proven)
}

// phasePins pins the line, starts, or both at marks of the tape among those that are searched.
func phasePins(t *rapid.T, free *layout.Plan) (pins survey.Pins) {
	pattern, tape := bond.For(free.Room, free.Room.Bond.Hand), free.Room.Tape
	mark := func(what string, middle2, size length.Length) string {
		marks := int(max(1, size/tape))
		k := rapid.IntRange(0, marks-1).Draw(t, what)
		if rapid.Bool().Draw(t, what+" at a quarter") {
			k = marks * rapid.IntRange(0, 3).Draw(t, what+" quarter") / 4
		}
		return lengthText((middle2 - size).Half().CeilTo(tape) + length.Length(k)*tape)
	}
	what := rapid.IntRange(0, 2).Draw(t, "pinned")
	widest := &free.Walls[0]
	for i := range free.Walls {
		w := &free.Walls[i]
		box := largest(w)
		if w.Found.Width > widest.Found.Width {
			widest = w
		}
		if what > 0 && rapid.Bool().Draw(t, w.Found.Name) {
			if pins.Walls == nil {
				pins.Walls = map[string]survey.WallPin{}
			}
			pins.Walls[w.Found.Name] = survey.WallPin{Edge: mark(w.Found.Name+" start", box.Left+box.Right, pattern.Reach)}
		}
	}
	if what < 2 {
		pins.Course.Line = mark("line", largest(widest).Bottom+largest(widest).Top, pattern.Rise)
	}
	return pins
}

// largest is the box of a wall's tile with free ends and head where they leave most.
func largest(w *layout.Wall) plane.Rect {
	box := w.Shape.Region.Bounds()
	if !w.Found.Left.Meets {
		box.Left = w.Found.Left.Stops.From
	}
	if !w.Found.Right.Meets {
		box.Right = w.Found.Right.Stops.To
	}
	if !w.Found.Head.Meets {
		box.Top = w.Found.Head.Stops.To
	}
	return box
}
