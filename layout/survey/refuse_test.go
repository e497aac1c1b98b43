package survey_test

import (
	"fmt"
	"strings"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func mark(at string) *survey.Mark { return &survey.Mark{At: at} }

func free(from, to string) *survey.Mark { return &survey.Mark{From: from, To: to} }

func pipe(name, at, height, diameter string) survey.Opening {
	return survey.Opening{Kind: "pipe", Name: name, At: at, Height: &survey.Measure{Plain: height}, Diameter: diameter}
}

func drops(at ...string) (d []survey.Drop) {
	for _, x := range at {
		d = append(d, survey.Drop{At: x, Drop: "40"})
	}
	return d
}

// Each case spoils one thing in a sound job of three walls and names the one
// fault that must come of it.
func TestResolveRefuses(t *testing.T) {
	type job = survey.Job
	for _, c := range []struct {
		spoil func(j *job, w *survey.Wall) // w is walls[1]
		fault string
	}{
		{func(j *job, w *survey.Wall) { j.Format = "x" }, "format: found “x”; write coursewright-job/1"},
		{func(j *job, w *survey.Wall) { j.Title = "a\nb" }, "title: found “a?b” with control characters"},
		{func(j *job, w *survey.Wall) { j.Title = strings.Repeat("a", 201) }, "title: found “" + strings.Repeat("a", 80) + "…”; write at most 200 letters"},
		{func(j *job, w *survey.Wall) { j.Units = "yd" }, "units: found “yd”; write one of in, mm"},
		{func(j *job, w *survey.Wall) { j.Joint.Plain = "" }, "joint: found nothing; write a length from 0\" to 1\""},
		{func(j *job, w *survey.Wall) { j.Joint.Plain = "2 yd" }, "joint: found “2 yd”, which has no unit “yd”; write ft, in, m, cm or mm"},
		{func(j *job, w *survey.Wall) { j.Joint.Plain = "1/7" }, "joint: found “1/7”, which cannot be kept exactly; write the nearest reading, 9/64 in or 5/32 in"},
		{func(j *job, w *survey.Wall) { j.Joint.Plain = "-1/8" }, "joint: found “-1/8”; write a length from 0\" to 1\""},
		{func(j *job, w *survey.Wall) { j.Joint.Plain = "1 1/64" }, "joint: found “1 1/64”; write a length from 0\" to 1\""},
		{func(j *job, w *survey.Wall) { j.Bed = "thick" }, "bed: found “thick”, which has “thick” where a number is needed"},
		{func(j *job, w *survey.Wall) { j.Measured.Tape = "0" }, "measured.tape: found “0”"},
		{func(j *job, w *survey.Wall) { j.Measured.Tape = "1/960 mm" }, "measured.tape: found “1/960 mm”; write a length from 1/32\" to 1\""},
		{func(j *job, w *survey.Wall) { j.Measured.Doubt = "-1" }, "measured.doubt: found “-1”; write a length from 0\" to 2\""},
		// tile
		{func(j *job, w *survey.Wall) { j.Tile.Width = "4.9 mm" }, "tile.width: found “4.9 mm”; write a length from 7/32\" to 9'-10 3/32\""},
		{func(j *job, w *survey.Wall) { j.Limits.Sliver = "-1" }, "limits.sliver: found “-1”; write a length from 1/32\" to 9'-10 3/32\""},
		{func(j *job, w *survey.Wall) { j.Tile.Height = "3001 mm" }, "tile.height: found “3001 mm”; write a length from"},
		{func(j *job, w *survey.Wall) { j.Tile.Thickness = "3" }, "tile.thickness: found “3”"},
		{func(j *job, w *survey.Wall) { j.Tile.Vary = "-1/32" }, "tile.vary: found “-1/32”"},
		{func(j *job, w *survey.Wall) { j.Tile.Name = "a\tb" }, "tile.name: found “a?b” with control characters"},
		{func(j *job, w *survey.Wall) { j.Tile.Box = &survey.Box{} }, "tile.box.count: found 0; write a whole number from 1 to 100000"},
		{func(j *job, w *survey.Wall) { j.Tile.Box = &survey.Box{Count: 1, Price: "cheap"} }, "tile.box.price: found “cheap”; write a price such as 74.50"},
		{func(j *job, w *survey.Wall) { j.Tile.Box = &survey.Box{Count: 1, Price: "1.234"} }, "tile.box.price: found “1.234”"},
		{func(j *job, w *survey.Wall) { j.Tile.Sheet = &survey.Sheet{Across: 6} }, "tile.sheet.up: found 0; write how many tiles a sheet has that way, a whole number from 1 to 100"},
		{func(j *job, w *survey.Wall) { j.Tile.Sheet = &survey.Sheet{Across: 101, Up: 1} }, "tile.sheet.across: found 101"},
		{func(j *job, w *survey.Wall) { j.Tile.Sheet = &survey.Sheet{Across: 1, Up: 1} }, "tile.sheet: found a sheet of one tile; write more tiles on a sheet, or no sheet"},
		{func(j *job, w *survey.Wall) {
			j.Tile.Sheet, j.Bond = &survey.Sheet{Across: 5, Up: 6}, survey.Bond{Kind: "chevron"}
		}, "tile.sheet.across: found 5; write a multiple of 2: the chevron repeats after 2 that way, and sheets are alike"},
		{func(j *job, w *survey.Wall) {
			j.Tile.Sheet, j.Bond = &survey.Sheet{Across: 6, Up: 3}, survey.Bond{Kind: "mixed heights", Tiles: []survey.Tile{{Height: "2"}}}
		}, "tile.sheet.up: found 3; write a multiple of 2"},
		{func(j *job, w *survey.Wall) { j.Tile.Colour = "white" }, "tile.colour: found “white”; write a colour as # and six digits 0 to f, such as #f3efe4"},
		{func(j *job, w *survey.Wall) { j.Tile.Colour = "#fff" }, "tile.colour: found “#fff”; write a colour as"},
		{func(j *job, w *survey.Wall) { j.Tile.Colour = "ffffff" }, "tile.colour: found “ffffff”; write a colour as"},
		{func(j *job, w *survey.Wall) { j.Grout = "#12345g" }, "grout: found “#12345g”; write a colour as # and six digits 0 to f, such as #b5afa3"},
		{func(j *job, w *survey.Wall) { j.Grout = "#+12345" }, "grout: found “#+12345”; write a colour as"},
		// bond
		{func(j *job, w *survey.Wall) { j.Bond.Kind = "" }, "bond.kind: found nothing; write one of stack, running"},
		{func(j *job, w *survey.Wall) { j.Bond.Kind = "basket" }, "bond.kind: found “basket”; write one of stack, running"},
		{func(j *job, w *survey.Wall) { j.Bond.Offset = "1/2" }, "bond.offset: found “1/2”; write nothing here: courses of a stack bond do not shift"},
		{func(j *job, w *survey.Wall) { j.Bond = survey.Bond{Kind: "running", Offset: "0"} }, "bond.offset: found “0”; write a part of the pitch between 0 and 1"},
		{func(j *job, w *survey.Wall) { j.Bond = survey.Bond{Kind: "running", Offset: "half"} }, "bond.offset: found “half”, which has “half” where a number is needed"},
		{func(j *job, w *survey.Wall) { j.Bond = survey.Bond{Kind: "running", Hand: "up"} }, "bond.hand: found “up”; write one of left, right"},
		{func(j *job, w *survey.Wall) { j.Bond.Along = "askew" }, "bond.along: found “askew”; write one of level, plumb"},
		// limits
		{func(j *job, w *survey.Wall) { j.Limits.Sliver = "0" }, "limits.sliver: found “0”"},
		{func(j *job, w *survey.Wall) { j.Limits.Sealant = "2" }, "limits.sealant: found “2”; write a length from 0\" to 1\""},
		{func(j *job, w *survey.Wall) { w.Left.Gap = "5/16" }, "walls[1].left.gap: found “5/16”; write a length from 0\" to 1/4\""},
		{func(j *job, w *survey.Wall) { j.SetOrder = []string{"b", "bcak"} }, "setOrder[1]: found “bcak”; write the name of a wall: a, b, c"},
		{func(j *job, w *survey.Wall) { j.SetOrder = []string{"b", "b"} }, "setOrder[1]: found “b” a second time; write each wall once"},
		// walls
		{func(j *job, w *survey.Wall) { j.Walls = nil }, "walls: found no wall; write at least one wall"},
		{func(j *job, w *survey.Wall) { j.Walls = make([]survey.Wall, 65) }, "walls: found 65 walls; write at most 64"},
		{func(j *job, w *survey.Wall) { w.Name = "" }, "walls[1].name: found nothing; write a name"},
		{func(j *job, w *survey.Wall) { w.Name = "  " }, "walls[1].name: found “  ”; write a name"},
		{func(j *job, w *survey.Wall) { w.Name = "a" }, "walls[1].name: found “a” a second time; write a name of its own"},
		{func(j *job, w *survey.Wall) { w.Name = strings.Repeat("é", 81) }, "walls[1].name: found “" + strings.Repeat("é", 80) + "…”; write at most 80 letters"},
		{func(j *job, w *survey.Wall) { w.Name = "b\x00" }, "walls[1].name: found “b?” with control characters"},
		{func(j *job, w *survey.Wall) { w.Width = "0" }, "walls[1].width: found “0”"},
		{func(j *job, w *survey.Wall) { w.Width = "40.001 m" }, "walls[1].width: found “40.001 m”"},
		// ends
		{func(j *job, w *survey.Wall) { w.Left = survey.End{} }, `walls[1].left: found neither meets nor stops; write "meets": "corner", or "stops" with a mark`},
		{func(j *job, w *survey.Wall) { w.Left.Stops = mark("0") }, "walls[1].left: found meets and stops"},
		{func(j *job, w *survey.Wall) { w.Left.Meets = "post" }, "walls[1].left.meets: found “post”; write one of corner, wall, outside corner"},
		{func(j *job, w *survey.Wall) { w.Left.Finish = "trim" }, "walls[1].left.finish: found “trim”; write nothing here: a finish belongs to an end that stops"},
		{func(j *job, w *survey.Wall) { w.Left = survey.End{Stops: mark("0"), Gap: "1/8"} }, "walls[1].left.gap: found “1/8”; write nothing here"},
		{func(j *job, w *survey.Wall) { w.Left = survey.End{Stops: mark("0"), Finish: "gold"} }, "walls[1].left.finish: found “gold”; write one of trim, bullnose, casing"},
		{func(j *job, w *survey.Wall) { w.Left = survey.End{Stops: mark("0"), Lean: []survey.Lean{{}}} }, "walls[1].left.lean: found readings; write nothing here"},
		{func(j *job, w *survey.Wall) { w.Left = survey.End{Stops: &survey.Mark{}} }, "walls[1].left.stops.at: found nothing; write a length from 0"},
		{func(j *job, w *survey.Wall) { w.Left = survey.End{Stops: &survey.Mark{At: "1", To: "2"}} }, "walls[1].left.stops: found a place and a range"},
		{func(j *job, w *survey.Wall) { w.Left = survey.End{Stops: free("1", "")} }, "walls[1].left.stops.to: found nothing"},
		{func(j *job, w *survey.Wall) { w.Left = survey.End{Stops: free("2", "1")} }, "walls[1].left.stops.to: found “1”; write a length of at least 2"},
		{func(j *job, w *survey.Wall) { w.Left = survey.End{Stops: mark("-1")} }, "walls[1].left.stops.at: found “-1”; write a length from 0\" to 5'-0\""},
		{func(j *job, w *survey.Wall) { w.Right = survey.End{Stops: mark("61")} }, "walls[1].right.stops.at: found “61”"},
		{func(j *job, w *survey.Wall) {
			w.Left, w.Right = survey.End{Stops: free("0", "30")}, survey.End{Stops: free("30", "60")}
		}, "walls[1].right: found tile ending at 30 where it begins at 30"},
		{func(j *job, w *survey.Wall) { w.Width, w.Base[0].Readings = "1/2", drops("0") }, "walls[1].width: found “1/2”, on which its corners leave no tile; write a width over 1 1/4\""},
		{func(j *job, w *survey.Wall) { w.Right = survey.End{Stops: mark("5/8")} }, "walls[1].right: found tile ending at 5/8 where it begins at 5/8"},
		{func(j *job, w *survey.Wall) { w.Left.Lean = []survey.Lean{{"0", "0"}, {"0", "1"}} }, "walls[1].left.lean[1].height: found 0; write more than the 0 of the reading before it"},
		{func(j *job, w *survey.Wall) { w.Left.Lean = []survey.Lean{{"0", "16"}} }, "walls[1].left.lean[0].off: found “16”"},
		// base
		{func(j *job, w *survey.Wall) { w.Base = nil }, "walls[1].base: found no segment; write at least one segment"},
		{func(j *job, w *survey.Wall) { w.Base[0].Meets = "sink" }, "walls[1].base[0].meets: found “sink”; write one of tub, shower base, curb, seat, floor"},
		{func(j *job, w *survey.Wall) { w.Base[0].Gap = "-1/8" }, "walls[1].base[0].gap: found “-1/8”"},
		{func(j *job, w *survey.Wall) { w.Base[0].Readings = nil }, "walls[1].base[0].readings: found no reading; write at least one reading"},
		{func(j *job, w *survey.Wall) {
			w.Base[0].Readings = append(w.Base[0].Readings, survey.Drop{At: "60", Drop: "three"})
		}, "walls[1].base[0].readings[2].drop: found “three”"},
		{func(j *job, w *survey.Wall) { w.Base[0].Readings = drops("0", "30", "20") }, "walls[1].base[0].readings[2].at: found 20; write more than the 30 of the reading before it"},
		{func(j *job, w *survey.Wall) { w.Base[0].Readings = drops("0", "", "60") }, "walls[1].base[0].readings[1].at: found nothing; write a length from 0\" to 5'-0\", or empty both of its figures to leave the reading out"},
		{func(j *job, w *survey.Wall) { w.Base[0].Readings = drops("0", "0") }, "walls[1].base[0].readings[1].at: found 0; write more than the 0"},
		{func(j *job, w *survey.Wall) { w.Base[0].Readings = drops("61") }, "walls[1].base[0].readings[0].at: found “61”"},
		{func(j *job, w *survey.Wall) {
			w.Base = []survey.Segment{{Meets: "floor", Readings: drops("0", "4")}, {Meets: "tub", Readings: drops("5", "60")}}
		}, "walls[1].base[1].readings[0].at: found 5; write 4, where the segment before it ends"},
		{func(j *job, w *survey.Wall) {
			w.Base = []survey.Segment{{Meets: "floor", Readings: drops("0", "4")}, {Meets: "curb", Readings: drops("4", "4 1/4")}, {Meets: "tub", Readings: drops("4 1/4", "60")}}
		}, "walls[1].base[1].readings: found a segment with no width left between its steps"},
		// head
		{func(j *job, w *survey.Wall) { w.Head = survey.Head{} }, "walls[1].head: found neither meets nor stops"},
		{func(j *job, w *survey.Wall) { w.Head = survey.Head{Meets: "ceiling"} }, "walls[1].head.readings: found no reading"},
		{func(j *job, w *survey.Wall) { w.Head = survey.Head{Meets: "sky", Readings: []survey.Rise{{"0", "1"}}} }, "walls[1].head.meets: found “sky”; write one of ceiling"},
		{func(j *job, w *survey.Wall) { w.Head.Gap = "1/8" }, "walls[1].head.gap: found “1/8”; write nothing here"},
		{func(j *job, w *survey.Wall) { w.Head.Readings = []survey.Rise{{"0", "1"}} }, "walls[1].head.readings: found readings; write nothing here"},
		{func(j *job, w *survey.Wall) { w.Head.Stops = mark("-39 7/8") }, "walls[1].head.stops.at: found “-39 7/8”, where the base with its gap stands at -39 7/8; write a height above the base everywhere"},
		{func(j *job, w *survey.Wall) { w.Base[0].Readings[1].Drop = "-40" }, "walls[1].base[0].readings[1].drop: found “-40”, which stands over the head; write how far it is below the line, without a minus; perhaps “40” was meant"},
		{func(j *job, w *survey.Wall) {
			w.Head = survey.Head{Meets: "ceiling", Readings: []survey.Rise{{"0", "9"}, {"30", "-41"}, {"60", "9"}}}
		}, "walls[1].head.readings[1].rise: found “-41”, where the base with its gap stands at -39 7/8; write how far the ceiling is above the line, so that it is above the base; perhaps “41” was meant"},
		{func(j *job, w *survey.Wall) {
			w.Base[0].Readings = []survey.Drop{{At: "0", Drop: "40"}, {At: "30", Drop: "5"}, {At: "60", Drop: "40"}}
			w.Head = survey.Head{Meets: "ceiling", Readings: []survey.Rise{{"0", "-6"}, {"60", "-6"}}}
		}, "walls[1].head: found the head -6 1/8 at 30, where the base with its gap stands at -4 7/8; write a head above the base everywhere"},
		{func(j *job, w *survey.Wall) {
			w.Head = survey.Head{Meets: "ceiling", Readings: []survey.Rise{{"9", "9"}, {"9", "9"}}}
		}, "walls[1].head.readings[1].at: found 9"},
		// openings
		{func(j *job, w *survey.Wall) { w.Openings = []survey.Opening{{Kind: "door", Name: "d"}} }, "walls[1].openings[0].kind: found “door”; write one of niche, window, doorway, pipe"},
		{func(j *job, w *survey.Wall) { w.Openings = []survey.Opening{pipe("", "9", "0", "1")} }, "walls[1].openings[0].name: found nothing; write a name"},
		{func(j *job, w *survey.Wall) {
			w.Openings = []survey.Opening{pipe("p", "9", "0", "1"), pipe("p", "19", "0", "1")}
		}, "walls[1].openings[1].name: found “p” a second time"},
		{func(j *job, w *survey.Wall) { w.Openings = []survey.Opening{pipe("p", "", "0", "1")} }, "walls[1].openings[0].at: found nothing"},
		{func(j *job, w *survey.Wall) { w.Openings = []survey.Opening{pipe("p", "9", "0", "0")} }, "walls[1].openings[0].diameter: found “0”"},
		{func(j *job, w *survey.Wall) { w.Openings = []survey.Opening{pipe("p", "1/4", "0", "1")} }, "walls[1].openings[0].at: found “1/4”; write a length from 1/2\" to 4'-11 1/2\", so that the pipe is inside the wall"},
		{func(j *job, w *survey.Wall) {
			w.Openings = []survey.Opening{{Kind: "pipe", Name: "p", At: "9", Diameter: "1"}}
		}, "walls[1].openings[0].height: found nothing"},
		{func(j *job, w *survey.Wall) {
			w.Openings = []survey.Opening{{Kind: "pipe", Name: "p", At: "9", Diameter: "1", Height: &survey.Measure{Mark: mark("1")}}}
		}, "walls[1].openings[0].height: found a mark"},
		{func(j *job, w *survey.Wall) {
			w.Openings = []survey.Opening{pipe("p", "9", "0", "1")}
			w.Openings[0].Left = mark("1")
		}, "walls[1].openings[0].left: found a mark; write nothing here"},
		{func(j *job, w *survey.Wall) {
			w.Openings = []survey.Opening{niche("n", *mark("1"), *mark("2"))}
			w.Openings[0].Height = &survey.Measure{Plain: "9"}
		}, `walls[1].openings[0].height: found “9”; write a mark, {"at": "9"}`},
		{func(j *job, w *survey.Wall) {
			w.Openings = []survey.Opening{niche("n", *mark("1"), *mark("2"))}
			w.Openings[0].Bottom = nil
		}, "walls[1].openings[0].bottom: found nothing"},
		{func(j *job, w *survey.Wall) {
			w.Openings = []survey.Opening{niche("n", *mark("1"), *mark("2"))}
			w.Openings[0].Diameter = "1"
		}, "walls[1].openings[0].diameter: found “1”; write nothing here"},
		{func(j *job, w *survey.Wall) { w.Openings = []survey.Opening{niche("n", *mark("1"), *mark("0"))} }, "walls[1].openings[0].width.at: found “0”"},
		{func(j *job, w *survey.Wall) { w.Openings = []survey.Opening{niche("n", *mark("-1"), *mark("2"))} }, "walls[1].openings[0].left.at: found “-1”"},
		{func(j *job, w *survey.Wall) {
			w.Openings = []survey.Opening{niche("n", *free("50", "55"), *free("11", "12"))}
		}, "walls[1].openings[0].width: found a right edge at 61 or more"},
		// bounds of the job
		{func(j *job, w *survey.Wall) { j.Tile.Width, j.Tile.Height, j.Joint.Plain = "5 mm", "5 mm", "0" }, "walls: found about 325740 pieces; write at most 200000 pieces"},
		{func(j *job, w *survey.Wall) {
			w.Base[0].Readings = nil
			for i := range 500 {
				w.Base[0].Readings = append(w.Base[0].Readings, survey.Drop{At: fmt.Sprintf("%d/16", i), Drop: "40"})
			}
		}, "walls[1].base[0].readings: found more than 500 readings in the job; write at most 500"},
		{func(j *job, w *survey.Wall) {
			for i := range 201 {
				w.Openings = append(w.Openings, pipe(fmt.Sprint(i), fmt.Sprintf("%d/4", 4+i), "0", "1/4"))
			}
		}, "walls[1].openings: found more than 200 openings in the job; write at most 200"},
	} {
		job := sketch("in", "a", "b", "c")
		c.spoil(&job, wallOf(&job))
		_, faults := job.Resolve()
		if assert.NotEmpty(t, faults, c.fault) && !strings.HasPrefix(c.fault, "walls: found 65") {
			assert.Contains(t, faults[0].String(), c.fault)
			assert.Len(t, faults, 1, "%v", faults)
		}
	}
}

func wallOf(j *survey.Job) *survey.Wall { return &j.Walls[1] }

func TestPinsThatClash(t *testing.T) {
	for fault, pin := range map[string]survey.WallPin{
		"pins.walls.b.joint: found “x”": {Joint: "x"},
		`pins.walls.b.tile: found “33”, which clashes with the joint at “30” by 1/16"; write only one of pins.walls.b.joint and pins.walls.b.tile`:           {Joint: "30", Tile: "33"},
		`pins.walls.b.tile: found “30”, which clashes with the joint at “30” by 3 1/16"`:                                                                     {Joint: "30", Tile: "30"},
		`pins.walls.b.tile: found “-3”, which clashes with the joint at “30” by 11/16"`:                                                                      {Joint: "30", Tile: "-3"},
		"pins.walls.b.marks.end left: found a mark that the wall does not have; write one of head, niche n bottom, niche n left, niche n right, niche n top": {Marks: map[string]string{"end left": "1"}},
		`pins.walls.b.marks.niche n left: found “32”, which is 2" past where the survey lets it stand; write a length from 20" to 30"`:                       {Marks: map[string]string{"niche n left": "32"}},
		`pins.walls.b.marks.niche n left: found “19 1/2”, which is 1/2" past where the survey lets it stand`:                                                 {Marks: map[string]string{"niche n left": "19 1/2"}},
		`pins.walls.b.marks.head: found “31”, which is 1" past where the survey lets it stand; write a length of 30"`:                                        {Marks: map[string]string{"head": "31"}},
		`pins.walls.b.marks.niche n right: found 40", which clashes with “niche n left” at 22" by 4"; write two edges that are a length from 10" to 14" apart`: {
			Marks: map[string]string{"niche n left": "22", "niche n right": "40"}},
	} {
		job := sketch("in", "a", "b", "c")
		job.Walls[1].Openings = []survey.Opening{niche("n", *free("20", "30"), *free("10", "14"))}
		job.Pins.Walls = map[string]survey.WallPin{"b": pin}
		_, faults := job.Resolve()
		if assert.Len(t, faults, 1, "%v", faults) {
			assert.Contains(t, faults[0].String(), fault)
		}
	}
	job := sketch("in", "a", "b")
	job.Pins = survey.Pins{Course: survey.CoursePin{Line: "up"}, Walls: map[string]survey.WallPin{"c": {}, "a": {Tile: "-"}}}
	_, faults := job.Resolve()
	require.Len(t, faults, 3)
	assert.Equal(t, "pins.course.line", faults[0].Path)
	assert.Equal(t, "pins.walls.a.tile", faults[1].Path)
	assert.Equal(t, "pins.walls.c: found “c”; write the name of a wall: a, b", faults[2].String())
}

func TestAllFaultsComeAtOnce(t *testing.T) {
	job := sketch("in", "a", "b", "a")
	job.Joint.Plain = "wide"
	job.Tile.Width = "1 mm"
	job.Limits.Sealant = "much"
	job.Walls[0].Base[0].Readings[1].Drop = ""
	job.Walls[1].Head.Stops = mark("-50")
	job.Walls[1].Openings = []survey.Opening{{}}
	job.Walls[2].Left = survey.End{}
	job.Walls[2].Right = survey.End{Stops: mark("90")}
	job.Pins.Walls = map[string]survey.WallPin{"x": {}}
	_, faults := job.Resolve()
	var paths []string
	for _, f := range faults {
		paths = append(paths, f.Path)
	}
	assert.Equal(t, []string{
		"tile.width", "joint", "limits.sealant", "walls[0].base[0].readings[1].drop",
		"walls[1].openings[0].kind", "walls[1].openings[0].name",
		"walls[2].name", "walls[2].left", "walls[2].right.stops.at", "pins.walls.x",
	}, paths)
	assert.Len(t, strings.Split(faults.Error(), "\n"), len(faults))
}

func TestOverlap(t *testing.T) {
	for _, c := range []struct {
		a, b survey.Opening
		by   length.Length
	}{
		{niche("n", *mark("10"), *mark("12")), niche("m", *mark("21"), *mark("12")), in},
		{niche("n", *mark("10"), *mark("12")), niche("m", *mark("22"), *mark("12")), 0},
		{niche("n", *mark("10"), *mark("12")), pipe("p", "23", "5", "2 1/8"), in / 16},
		{niche("n", *mark("10"), *mark("12")), pipe("p", "9", "5", "2"), 0},
		{niche("n", *mark("10"), *mark("12")), pipe("p", "21", "5", "2"), 2 * in},
		{pipe("p", "50", "0", "4"), pipe("q", "53", "0", "2"), 0},
	} {
		job := sketch("in", "a")
		job.Walls[0].Openings = []survey.Opening{c.a, c.b}
		room, faults := job.Resolve()
		require.Empty(t, faults, "openings that overlap are asked about, not refused")
		a, b := room.Walls[0].Openings[0], room.Walls[0].Openings[1]
		assert.Equal(t, c.by, a.Overlap(b))
		assert.Equal(t, c.by, b.Overlap(a))
	}
}

func TestTheListOfFaultsIsBounded(t *testing.T) {
	job := sketch("in", "a")
	for range 400 {
		job.Walls[0].Openings = append(job.Walls[0].Openings, survey.Opening{})
	}
	_, faults := job.Resolve()
	require.Len(t, faults, 200)
}
