package takeoff_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/layout/takeoff"

	"github.com/stretchr/testify/require"
)

// onSheets is what to buy for a wall of squares on sheets of 6 by 6, measured so that
// so many tiles stand beside and over each other.
func onSheets(t *testing.T, wide, high int, change func(*survey.Job)) takeoff.Takeoff {
	pitch := 2 * length.Inch
	say := func(n int) string { return (length.Length(n)*pitch - length.Inch/8).Plain(length.Imperial, 0) }
	stop := func(at string) survey.End { return survey.End{Stops: &survey.Mark{At: at}} }
	job := survey.Job{Format: survey.Format, Title: "sheets", Units: "in", Joint: survey.Measure{Plain: "1/8"}, Bond: survey.Bond{Kind: "stack"},
		Tile: survey.Tile{Width: "1 7/8", Height: "1 7/8", Sheet: &survey.Sheet{Across: 6, Up: 6}},
		Walls: []survey.Wall{{Name: "a", Width: say(wide), Left: stop("0"), Right: stop(say(wide)),
			Base: []survey.Segment{{Meets: "floor", Gap: "0", Readings: []survey.Drop{{At: "0", Drop: "0"}}}},
			Head: survey.Head{Stops: &survey.Mark{At: say(high)}}}}}
	if change != nil {
		change(&job)
	}
	plan, err := layout.Now(job)
	require.NoError(t, err)
	s := cuts.Of(cuts.Input{Room: plan.Room, Walls: plan.Walls}, cuts.For(plan.Room))
	return takeoff.Of(takeoff.Input{Room: plan.Room, Walls: plan.Walls, Cuts: s.Offcuts, Others: s.Others}, takeoff.For(plan.Room))
}

func line(t *testing.T, all takeoff.Takeoff, unit string) takeoff.Line {
	for _, l := range all.Lines {
		if strings.HasPrefix(l.Unit, unit) {
			return l
		}
	}
	require.Fail(t, "no line", unit)
	return takeoff.Line{}
}

// 12 in sheets of six squares of 2 in: 24 by 36 of them are 4 by 6 sheets, whole. Sheets
// begin at the start, which is the middle here: of 27 columns one is left over at one end and
// two at the other, of 28 two at each.
func TestMosaicIsBoughtByTheSheet(t *testing.T) {
	l := line(t, onSheets(t, 24, 36, nil), "sheet")
	require.Equal(t, [3]int{24, 2, 26}, [3]int{l.Net, l.Spare, l.Count})
	require.Equal(t, 27, line(t, onSheets(t, 27, 36, nil), "sheet").Net)
	require.Equal(t, 28, line(t, onSheets(t, 28, 36, nil), "sheet").Net, "12 strips of two, three from a sheet")

	boxes := line(t, onSheets(t, 24, 36, func(j *survey.Job) { j.Tile.Box = &survey.Box{Count: 10, Price: "80"} }), "sheet")
	require.Equal(t, 3, boxes.Boxes, "boxes hold sheets")
	require.EqualValues(t, 3*8000, boxes.Cents)
}

// Squares of a basket weave of two tiles 7/8 in wide with a joint of 1/8 in are 2 in with their
// joint, so sheets of 6 by 6 squares cover what those of 2 in tiles do: 4 by 6 of them, of 72
// tiles each; the first begins at the level square at the start, so that some are halved. The tiles of a running bond shift by half, so every other row of the four
// sheets over each other ends in halves, which are cut on the sheet.
func TestPatternsAreBoughtByTheSheet(t *testing.T) {
	woven := onSheets(t, 24, 36, func(j *survey.Job) { j.Bond.Kind, j.Tile.Width = "basket weave", "7/8" })
	l := line(t, woven, "sheet")
	require.Equal(t, 24, l.Net)
	require.Contains(t, l.Because, "sheets of 6 × 6 groups of 2 tiles: 18 whole, 6 cut along their joints")
	require.Equal(t, 24*72, woven.Whole)

	running := line(t, onSheets(t, 24, 36, func(j *survey.Job) { j.Bond.Kind = "running" }), "sheet")
	require.Contains(t, running.Because, "sheets of 6 × 6 tiles: ")
	require.GreaterOrEqual(t, running.Net, 24)
	require.LessOrEqual(t, running.Net, 27)
}

// Within a sheet no spacers are set: 24 by 36 tiles on sheets of 6 by 6 have 3 plumb joints
// of 36 sides and 5 level ones of 24 between sheets.
func TestSpacersStandBetweenSheets(t *testing.T) {
	l := line(t, onSheets(t, 24, 36, nil), "bag of 100")
	require.Contains(t, l.Because, "228 joint sides")
}

// A strip of mosaic behind the valve, six tiles wide, is bought by the sheet like a wall.
func TestAStripOfMosaicIsBoughtByTheSheet(t *testing.T) {
	all := onSheets(t, 24, 36, func(j *survey.Job) {
		j.Tile = survey.Tile{Width: "5 7/8", Height: "5 7/8"}
		j.Walls[0].Strips = []survey.Strip{{Name: "mosaic", Columns: 6, Middle: survey.Mark{At: "24"},
			Tile: survey.Tile{Width: "7/8", Height: "7/8", Sheet: &survey.Sheet{Across: 12, Up: 12}}}}
	})
	l := line(t, all, "sheet")
	require.Contains(t, l.Because, "sheets of 12 × 12 tiles: 0 whole")
	require.InDelta(t, 3, l.Net, 1, "six columns over 72 in: six half sheets and a little, two from one")
	require.Equal(t, fmt.Sprintf("%d and %d sheets", all.Lines[0].Count, l.Count), takeoff.Tiles(all.Lines))
}

// Two bands of one mosaic are two lines, each with its own sheets.
func TestBandsOfMosaicAreBoughtEachByItself(t *testing.T) {
	all := onSheets(t, 24, 36, func(j *survey.Job) {
		j.Tile = survey.Tile{Width: "5 7/8", Height: "5 7/8"}
		mosaic := survey.Tile{Width: "7/8", Height: "7/8", Sheet: &survey.Sheet{Across: 12, Up: 12}}
		j.Bands = []survey.Band{{Name: "low", Tile: mosaic, Courses: 3, Bottom: survey.Mark{At: "24"}},
			{Name: "high", Tile: mosaic, Courses: 3, Bottom: survey.Mark{From: "48", To: "56"}}}
	})
	var nets []int
	for _, l := range all.Lines {
		if l.Unit == "sheet" && strings.Contains(l.Because, "sheets of 12") {
			nets = append(nets, l.Net)
		}
	}
	require.Equal(t, []int{1, 1}, nets, "four strips of 12 by 3 each, all from one sheet")
}

// The sheets of a niche's back are a line of their own.
func TestTheBackOfANicheIsBoughtByTheSheet(t *testing.T) {
	file, err := os.ReadFile("../../testdata/jobs/sheets.json")
	require.NoError(t, err)
	job, err := survey.Read(file)
	require.NoError(t, err)
	plan, err := layout.Now(job)
	require.NoError(t, err)
	s := cuts.Of(cuts.Input{Room: plan.Room, Walls: plan.Walls}, cuts.For(plan.Room))
	require.Empty(t, s.Offcuts.Pairs, "every tile is cut on its sheet")
	all := takeoff.Of(takeoff.Input{Room: plan.Room, Walls: plan.Walls, Cuts: s.Offcuts, Others: s.Others}, takeoff.For(plan.Room))
	var items []string
	for _, l := range all.Lines {
		if strings.Contains(l.Because, "sheets of") {
			items = append(items, l.Item+" "+l.Unit)
		}
	}
	require.Equal(t, []string{"mosaic, by the sheet sheet", "shell sheet"}, items)
}
