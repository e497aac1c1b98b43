package phase

import (
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// ceiling is a level ceiling over a small room, in which rim and head are wished alike, on a coarse tape.
func ceiling(height, tape length.Length) func(*survey.Room) {
	return func(r *survey.Room) {
		r.Tape, r.Prefer.Shared = tape, true
		r.Walls[0].Head = survey.HeadFound{Meets: true, Gap: 3 * mm, Readings: []survey.Reading{{At: 0, Value: height}, {At: r.Walls[0].Width, Value: height}}}
	}
}

// openHead is a head that is free, with rim and head wished alike.
func openHead(from, to, tape length.Length) func(*survey.Room) {
	return func(r *survey.Room) {
		r.Tape, r.Prefer.Shared = tape, true
		r.Walls[0].Head = survey.HeadFound{Stops: survey.Span{From: from, To: to}}
	}
}

// beside is another wall round the corner, so much narrower and with its tub so much higher.
func beside(narrower, higher length.Length) func(*survey.Room) {
	return func(r *survey.Room) {
		w := r.Walls[0]
		w.Name, w.Letter, w.Width = "b", "B", w.Width-narrower
		w.Right.Stops = survey.Span{From: w.Width - 9*mm, To: w.Width - 9*mm}
		w.Base = []survey.SegmentFound{{Meets: survey.Tub, Gap: 3 * mm, Readings: []survey.Reading{{At: 0, Value: higher - 300*mm}, {At: w.Width, Value: higher - 300*mm}}}}
		r.Walls = append(r.Walls, w)
	}
}

// alikeRoom draws a small room of one or two walls in a pattern, under a ceiling or with a head that is free.
func alikeRoom(t *rapid.T) survey.Room {
	n := func(name string, low, high int) length.Length {
		return length.Length(rapid.IntRange(low, high).Draw(t, name)) * mm
	}
	tape, walls := 2*n("tape", 2, 7), rapid.IntRange(1, 2).Draw(t, "walls")
	var with []func(*survey.Room)
	if rapid.IntRange(0, 3).Draw(t, "open") == 0 {
		from := n("from", 220, 250)
		with = append(with, openHead(from, from+n("range", 5, 40), max(tape, 10*mm*length.Length(walls))))
	} else {
		with = append(with, ceiling(n("ceiling", 220, 280), tape*length.Length(walls)))
	}
	if rapid.Bool().Draw(t, "niche") {
		with = append(with, niche)
	}
	if walls == 2 {
		with = append(with, beside(n("narrower", 10, 110), n("higher", 0, 30)))
	}
	switch rapid.IntRange(0, 5).Draw(t, "bond") {
	case 0:
		return small(survey.MixedHeights, n("width", 90, 160), n("height", 60, 90), append(with, twoHeights(n("other", 30, 55)))...)
	case 1:
		return small(survey.Herringbone, n("width", 120, 170), n("height", 55, 80), with...)
	case 2:
		wide := n("width", 80, 120)
		return small(survey.Hexagon, wide, wide, with...)
	case 3:
		high := n("height", 40, 60)
		return small(survey.BasketWeave, 2*high+2*mm, high, with...)
	case 4:
		wide, other := n("width", 80, 110), n("other", 40, 60)
		return small(survey.Pinwheel, wide, wide, append(with, func(r *survey.Room) {
			r.Bond.Others = []survey.TileSize{{Width: other, Height: other}}
		})...)
	}
	return small(survey.Herringbone, n("width", 120, 160), n("height", 55, 75), append(with, func(r *survey.Room) { r.Bond.Turned = true })...)
}

// Where rim and head are to be alike no line, starts and free marks are better, by brute force over all marks of a coarse tape and, with
// two walls, over all that their set-outs give together.
func TestNoMarkOfTheTapeIsBetterWithRimAndHeadAlike(t *testing.T) {
	decided := 0
	rapid.Check(t, func(t *rapid.T) {
		r := alikeRoom(t)
		found, err := Room(t.Context(), &r)
		require.NoError(t, err)
		require.True(t, found.Proven)
		without := r
		without.Prefer.Shared = false
		other, err := Room(t.Context(), &without)
		require.NoError(t, err)
		if _, term := found.Order().Until(&found.Merit, &other.Merit, merit.Corners); term == merit.Rim {
			decided++
		}
		for line := range found.everyLine() {
			nothingGoesBetterTogether(t, &r, &found, line)
		}
	})
	require.Positive(t, decided)
	t.Logf("the preference decided in %d rooms", decided)
}

// nothingGoesBetterTogether wants that the set-outs of all walls on a line give nothing better than what was found, all that are
// different by rim, head and the rest of their merit.
func nothingGoesBetterTogether(t require.TestingT, r *survey.Room, found *Result, line length.Length) {
	sums := []merit.Merit{{}}
	for _, wall := range r.Walls {
		w := NewWall(r, wall, bond.For(*r, survey.Free))
		var own, all []merit.Merit
		w.everySetOut(line, func(c Counted) {
			for _, m := range own {
				if order, _ := merit.OrderFor(survey.Prefer{}).Compare(&m, &c.Merit); order == 0 {
					return
				}
			}
			own = append(own, c.Merit)
		})
		for i := range sums {
			for k := range own {
				all = append(all, sums[i].Plus(&own[k]))
			}
		}
		sums = all
	}
	for _, m := range sums {
		m.Part = false
		order, term := found.Order().Until(&m, &found.Merit, merit.Corners)
		require.GreaterOrEqual(t, order, 0, "line %v: %s, %+v for %+v", line, term, m, found.Merit)
	}
}

// everySetOut counts every start on a line, with every way to place its free marks.
func (w *Wall) everySetOut(line length.Length, each func(Counted)) {
	for _, edge := range w.everyStart() {
		if len(w.axes) == 0 {
			each(w.Count(Setting{Line: line, Edge: edge, Placed: w.outer}))
			continue
		}
		c := w.choose(&stretch{edge: edge, marks: 1}, &hunt{wall: w, line: line})
		c.ready()
		pick := make([]int, len(w.axes))
		for more := true; more; more = c.turn(pick) {
			if p, ok := c.everyWay(pick); ok {
				each(w.Count(Setting{Line: line, Edge: edge, Placed: p}))
			}
		}
	}
}

// twoHeights is another height of course.
func twoHeights(other length.Length) func(*survey.Room) {
	return func(r *survey.Room) {
		r.Bond.Others = []survey.TileSize{{Width: r.Tile.Width, Height: other}}
	}
}

// The back of a niche in two heights: 21336 at rim and head was to be had where a rim of 16764 under whole tiles was called proven.
func TestARimUnderWholeTilesIsNotAlike(t *testing.T) {
	r := small(survey.MixedHeights, 70*mm, 25*mm, twoHeights(12*mm))
	r.Tape, r.Prefer.Shared = length.Inch/16, true
	end := survey.EndFound{Meets: true, Gap: 3 * mm, Beyond: -1}
	level := func(y length.Length) []survey.Reading { return []survey.Reading{{Value: y}, {At: 192_024, Value: y}} }
	r.Walls[0].Width, r.Walls[0].Left, r.Walls[0].Right = 192_024, end, end
	r.Walls[0].Base = []survey.SegmentFound{{Meets: survey.Corner, Gap: 3 * mm, Readings: level(-5_820)}}
	r.Walls[0].Head = survey.HeadFound{Meets: true, Gap: 3 * mm, Readings: level(59_436)}
	free, err := Room(t.Context(), &r)
	require.NoError(t, err)
	require.True(t, free.Proven)
	line := length.Length(35_052)
	r.Line, r.Walls[0].Pin = &line, &survey.StartPin{X: 65_532, Is: survey.OnEdge}
	pinned, err := Room(t.Context(), &r)
	require.NoError(t, err)
	require.True(t, pinned.Proven)
	require.False(t, free.Order().Better(&pinned.Merit, &free.Merit), "%+v\n%+v", free.Merit, pinned.Merit)
}

// With little work something is found that is not called proven, and no worse than the same with less.
func TestRimAndHeadAlikeWithLittleWork(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := randomRoom(t, 2)
		r.Prefer.Shared = true
		found, err := Within(t.Context(), &r, rapid.SampledFrom([]int{0, 300, 3000}).Draw(t, "work"))
		require.NoError(t, err)
		require.Len(t, found.Walls, len(r.Walls))
		own := found.whole(found.Walls)
		require.Equal(t, own, found.Merit)
		if !found.Proven {
			require.False(t, found.Order().Better(&found.Merit, &found.Bound), "%+v\n%+v", found.Merit, found.Bound)
		}
	})
}
