package search

import (
	"context"
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

const mm = length.Millimetre

// solverOf is the search through a sketch, before it begins.
func solverOf(line string) *solver {
	room := chance.Sketch(line)
	return solverIn(&room)
}

func solverIn(room *survey.Room) *solver {
	return newTask(context.Background(), room, hands(room), Work, nil).hands[0]
}

// The course lines of the trade, worked by hand: common practice, no source.
func TestClassicLines(t *testing.T) {
	for name, c := range map[string]struct {
		sketch string
		want   map[string]length.Length
	}{
		"a full course on the tub": {"1000x600 300x100+2", map[string]length.Length{"full course at the tub's low point": 0, "full course at the head of a": 500}},
		"at the low point of a raked one": {"1000x600 300x100+2 base=0,-8 gap=3",
			map[string]length.Length{"full course at the tub's low point": -5, "full course at the head of a": 497}},
		"of a tub and a floor each": {"1000x600 300x100+2 leg=150",
			map[string]length.Length{"full course at the tub's low point": 0, "full course at the floor's low point": -200, "full course at the head of a": 500}},
		"on a window's edges": {"1000x600 300x100+2 window=300,200,250,150", map[string]length.Length{"full course at the tub's low point": 0,
			"full course at the head of a": 500, "line at the bottom of n": 150, "line at the top of n": 400}},
		"not on those of a niche that may move": {"1000x600 300x100+2 niche=300,200,250..260,150",
			map[string]length.Length{"full course at the tub's low point": 0, "full course at the head of a": 500}},
		"nor at a head that may": {"1000x600 300x100+2 head=500..600", map[string]length.Length{"full course at the tub's low point": 0}},
		"the lower tub of two walls": {"1000x600 300x100+2 | 800x600 base=-4,0",
			map[string]length.Length{"full course at the tub's low point": -4, "full course at the head of a": 500, "full course at the head of b": 500}},
	} {
		got := map[string]length.Length{}
		for _, l := range solverOf(c.sketch).Lines() {
			got[l.Name] = l.Line / mm
		}
		require.Equal(t, c.want, got, name)
	}
}

// Every mark of the tape is tried over one pitch, and each classic line.
func TestEveryMarkAndClassicLineIsTried(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for range 10 {
			room := chance.House(t, 3)
			s := solverIn(&room)
			lines, pitch := s.lines(), room.Tile.Height+room.Joint
			require.True(t, slices.IsSorted(lines))
			require.Less(t, lines[len(lines)-1]-lines[0], pitch, "one pitch: no line twice")
			for y := lines[0].CeilTo(room.Tape); y < lines[0].CeilTo(room.Tape)+pitch-room.Tape; y += room.Tape {
				require.Contains(t, lines, y, "a mark of the tape")
			}
			for _, c := range s.Lines() {
				require.True(t, slices.ContainsFunc(lines, func(y length.Length) bool { return length.Mod(y-c.Line, pitch) == 0 }), c.Name)
			}
		}
	})
}

func TestAPinnedLineIsTriedAlone(t *testing.T) {
	room := chance.Sketch("1000x600 300x100+2")
	y := 17*mm + 5
	room.Line = &y
	require.Equal(t, []length.Length{y}, solverIn(&room).lines())
}

// A pinned start stands in a course of the bond: then the line is tried over all its classes.
func TestAPinnedStartTiesTheCoursesToTheLine(t *testing.T) {
	for name, c := range map[string]struct {
		sketch string
		pinned bool
		span   length.Length
	}{
		"no pin, third bond":          {"1000x600 300x100+2 1/3", false, 1},
		"a pin, third bond":           {"1000x600 300x100+2 1/3", true, 3},
		"a pin, stack bond":           {"1000x600 300x100+2", true, 1},
		"a pin in columns of a third": {"1000x600 300x100+2 1/3 columns", true, 1},
	} {
		room := chance.Sketch(c.sketch)
		if c.pinned {
			room.Walls[0].Pin = &survey.StartPin{Is: survey.OnEdge}
		}
		s := solverIn(&room)
		require.Equal(t, c.span, s.periods(), name)
		lines := s.lines()
		require.Greater(t, lines[len(lines)-1]-lines[0], c.span*102*mm-2*mm, name)
	}
}

// Where the room lets course lines stand: spans that hold whole pitches aside.
func TestLinesStandWhereTheRoomLetsThem(t *testing.T) {
	room := chance.Sketch("1000x600 300x100+2")
	room.Course = []survey.Span{{From: 1030 * mm, To: 1033 * mm}} // 10 and more: 1030 - 10·102
	require.Equal(t, []length.Length{10 * mm, 11 * mm, 12 * mm, 13 * mm}, solverIn(&room).lines())

	room.Course = append(room.Course, survey.Span{From: 12 * mm, To: 20 * mm})
	require.Equal(t, []length.Length{12 * mm, 13 * mm}, solverIn(&room).lines(), "in each of the spans")

	room.Course = []survey.Span{{From: 10*mm + 100, To: 10*mm + 500}}
	require.Equal(t, []length.Length{10*mm + 100}, solverIn(&room).lines(), "where no mark of the tape does, the lowest that does")

	low := chance.Sketch("1000x600 300x100+2 base=-50,-50")
	low.Course = []survey.Span{{From: 10*mm + 100, To: 10*mm + 500}}
	require.Equal(t, []length.Length{10*mm + 100}, solverIn(&low).lines(), "in the pitch over the lowest tile: from -50 to 52")
	low.Course = []survey.Span{{From: 60*mm + 100, To: 60*mm + 500}}
	require.Equal(t, []length.Length{-42*mm + 100}, solverIn(&low).lines(), "60 is a pitch over -42")

	room.Course = nil
	require.Len(t, solverIn(&room).lines(), 102)
}

// The line is looked for first where the lowest tile of the widest wall is.
func TestLinesBeginAtTheLowestTileOfTheWidestWall(t *testing.T) {
	require.Equal(t, 0*mm, solverOf("1000x600 300x100+2 | 800x600 base=-50,-50").Lowest())
	require.Equal(t, -50*mm, solverOf("700x600 300x100+2 | 800x600 base=-50,-50").Lowest())
}

// A half bond has one hand, and so has stack bond; a third stepped either way has two.
func TestHandsThatAreTried(t *testing.T) {
	for line, want := range map[string][]survey.Hand{
		"1000x600 300x100+2":     {survey.Left},
		"1000x600 300x100+2 1/2": {survey.Left},
		"1000x600 300x100+2 2/4": {survey.Left},
		"1000x600 300x100+2 1/3": {survey.Left, survey.Right},
	} {
		room := chance.Sketch(line)
		room.Bond.Hand = survey.Free
		require.Equal(t, want, hands(&room), line)
		room.Bond.Hand = survey.Right
		require.Equal(t, []survey.Hand{survey.Right}, hands(&room), "%s, as the job says", line)
	}
}

// Of columns in half bond every line over half a pitch is the same as one under it, begun in the next column: no line is
// tried twice, and each is or one that is the same. A wall whose start is pinned knows no other line to be the same.
func TestNoLineOfColumnsIsTriedTwice(t *testing.T) {
	s := solverOf("1000x600 300x100+2 1/2 columns | 800x600")
	require.Len(t, s.lines(), 102)
	require.Equal(t, s.lines()[:51], s.distinct())
	room := chance.Sketch("1000x600 300x100+2 1/2 columns | 800x600")
	room.Walls[1].Pin = &survey.StartPin{Is: survey.OnEdge}
	require.Equal(t, s.lines(), solverIn(&room).distinct())

	room = chance.Sketch("1000x600 300x100+2 1/2 | 800x600")
	room.Walls[1].Pin = &survey.StartPin{Is: survey.OnEdge}
	level := solverIn(&room)
	require.Equal(t, level.lines(), level.distinct(), "level courses on a line a course higher are others where a start is pinned")
}
