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

const (
	in = length.Inch
	mm = length.Millimetre
)

// l reads a length in inches.
func l(t testing.TB, text string) length.Length {
	got, err := length.Parse(text, length.Imperial)
	require.NoError(t, err)
	return got
}

// resolve reads and resolves a job that has no faults.
func resolve(t testing.TB, data []byte) survey.Room {
	job, err := survey.Read(data)
	require.NoError(t, err)
	room, faults := job.Resolve()
	require.Empty(t, faults)
	return room
}

func TestEveryDemoJobResolves(t *testing.T) {
	for name, data := range jobFiles(t) {
		t.Run(name, func(t *testing.T) {
			room := resolve(t, data)
			require.NotEmpty(t, room.Walls)
			for _, w := range room.Walls {
				require.NotPanics(t, func() { w.Shape(room.Units, low(w)) })
				require.NotEmpty(t, w.Shape(room.Units, low(w)).Region, w.Name)
			}
		})
	}
}

// low places every free mark at the start of its range.
func low(w survey.WallFound) survey.Placed {
	p := survey.Placed{Left: w.Left.Stops.From, Right: w.Right.Stops.From, Head: w.Head.Stops.From}
	for _, o := range w.Openings {
		p.Openings = append(p.Openings, survey.Edges{Left: o.Left.From, Bottom: o.Bottom.From,
			Right: o.Left.From + o.Width.From, Top: o.Bottom.From + o.Height.From})
	}
	return p
}

func TestTheExampleOfTheContract(t *testing.T) {
	room := resolve(t, jobFiles(t)["bath.json"])
	line := -l(t, "38 5/8")
	assert.Equal(t, survey.Room{
		Title: "Upstairs bath", Units: length.Imperial, Tape: in / 16, Doubt: in / 8,
		Tile: survey.TileSize{Name: "sage glazed", Width: l(t, "7 15/16"), Height: l(t, "2 7/16"), Thickness: l(t, "5/16"),
			Vary: in / 32, Colour: survey.UsualTile, BoxCount: 60, BoxCents: 7450},
		Grout: survey.UsualGrout, Joint: l(t, "3/32"), Joints: []length.Length{l(t, "3/32")}, Bed: l(t, "3/16"), Sliver: l(t, "1 1/2"), Sealant: in / 4, Line: &line,
		Bond:  survey.BondRule{Kind: "running", Num: 1, Den: 2, Hand: survey.Left},
		Walls: room.Walls,
	}, room)
	gap, deep := in/8, in/2
	assert.Equal(t, []survey.WallFound{
		{
			Name: "left", Letter: "L", Width: l(t, "35 1/4"), Order: 1,
			Left:  survey.EndFound{Stops: survey.Span{From: 0, To: l(t, "3 1/2")}, Finish: "trim", Beyond: -1},
			Right: survey.EndFound{Meets: true, Gap: gap, Behind: deep, Beyond: 1},
			Base: []survey.SegmentFound{
				{Meets: "floor", Gap: gap, Sight: survey.Low, Readings: []survey.Reading{{Value: -l(t, "58 1/4")}, {At: 4 * in, Value: -l(t, "58 1/4")}}},
				{Meets: "tub", Gap: gap, Readings: []survey.Reading{{At: 4 * in, Value: -l(t, "38 5/8")}, {At: l(t, "35 1/4"), Value: -l(t, "38 1/2")}}},
			},
			Head:     survey.HeadFound{Stops: survey.Span{From: 42 * in, To: 48 * in}, Finish: "trim"},
			Openings: []survey.OpeningFound{{Kind: "pipe", Name: "valve", At: l(t, "19 1/2"), Up: -7 * in, Diameter: l(t, "4 1/2")}},
		},
		{
			Name: "back", Letter: "B", Width: l(t, "65 3/8"), Order: 0,
			Left: survey.EndFound{Meets: true, Gap: gap, Cover: deep, Beyond: 0,
				Lean: []survey.Reading{{At: -38 * in}, {At: 45 * in, Value: in / 4}}},
			Right: survey.EndFound{Meets: true, Gap: gap, Beyond: -1},
			Base: []survey.SegmentFound{{Meets: "tub", Gap: gap, Readings: []survey.Reading{
				{Value: -l(t, "38 1/2")}, {At: 32 * in, Value: -l(t, "38 9/16")}, {At: l(t, "65 3/8"), Value: -l(t, "38 13/16")}}}},
			Head: survey.HeadFound{Meets: true, Gap: gap, Readings: []survey.Reading{{Value: 57 * in}, {At: l(t, "65 3/8"), Value: l(t, "57 1/4")}}},
			Openings: []survey.OpeningFound{{Kind: "niche", Name: "shelf",
				Left: survey.Span{From: 34 * in, To: 50 * in}, Width: survey.Span{From: 11 * in, To: l(t, "14 1/2")},
				Bottom: survey.Span{From: 2 * in, To: 12 * in}, Height: survey.Span{From: 12 * in, To: 20 * in}}},
			Pin: &survey.StartPin{X: l(t, "32 11/16")},
		},
	}, room.Walls)
}

// sketch is a job of plain walls: 60 in wide, tub 40 in below the line, head
// 30 in above, meeting a corner at both ends.
func sketch(units string, names ...string) survey.Job {
	job := survey.Job{
		Format: survey.Format, Title: "sketch", Units: units, Joint: survey.Measure{Plain: "1/8 in"}, Bond: survey.Bond{Kind: "stack"},
		Tile: survey.Tile{Width: "6 in", Height: "3 in"},
	}
	for _, name := range names {
		job.Walls = append(job.Walls, survey.Wall{
			Name: name, Width: "60 in", Left: survey.End{Meets: "corner"}, Right: survey.End{Meets: "corner"},
			Base: []survey.Segment{{Meets: "tub", Readings: []survey.Drop{{At: "0", Drop: "40 in"}, {At: "60 in", Drop: "40 in"}}}},
			Head: survey.Head{Stops: &survey.Mark{At: "30 in"}},
		})
	}
	return job
}

func TestDefaultsOfBothSystems(t *testing.T) {
	room, faults := sketch("in", "a").Resolve()
	require.Empty(t, faults)
	assert.Equal(t, []length.Length{in / 16, in / 8, 5 * in / 16, 0, 3 * in / 16, in / 4, 0, in / 8},
		[]length.Length{room.Tape, room.Doubt, room.Tile.Thickness, room.Tile.Vary, room.Bed, room.Sealant, room.Sliver, room.Walls[0].Base[0].Gap})
	room, faults = sketch("mm", "a").Resolve()
	require.Empty(t, faults)
	assert.Equal(t, []length.Length{mm, 3 * mm, 8 * mm, 0, 5 * mm, 6 * mm, 0, 3 * mm},
		[]length.Length{room.Tape, room.Doubt, room.Tile.Thickness, room.Tile.Vary, room.Bed, room.Sealant, room.Sliver, room.Walls[0].Base[0].Gap})
}

func TestBonds(t *testing.T) {
	for name, c := range map[string]struct {
		bond survey.Bond
		want survey.BondRule
	}{
		"stack":                 {survey.Bond{Kind: "stack"}, survey.BondRule{Kind: "stack", Den: 1}},
		"stack in columns":      {survey.Bond{Kind: "stack", Along: "plumb"}, survey.BondRule{Kind: "stack", Den: 1, Plumb: true}},
		"half without offset":   {survey.Bond{Kind: "running"}, survey.BondRule{Kind: "running", Num: 1, Den: 2, Hand: survey.Left}},
		"half":                  {survey.Bond{Kind: "running", Offset: "50%"}, survey.BondRule{Kind: "running", Num: 1, Den: 2, Hand: survey.Left}},
		"third, hand left open": {survey.Bond{Kind: "running", Offset: "1/3"}, survey.BondRule{Kind: "running", Num: 1, Den: 3, Hand: survey.Free}},
		"quarter to the right":  {survey.Bond{Kind: "running", Offset: "0.25", Hand: "right"}, survey.BondRule{Kind: "running", Num: 1, Den: 4, Hand: survey.Right}},
	} {
		job := sketch("in", "a")
		job.Bond = c.bond
		room, faults := job.Resolve()
		require.Empty(t, faults, name)
		assert.Equal(t, c.want, room.Bond, name)
	}
}

func TestLetters(t *testing.T) {
	for names, want := range map[string]string{
		"left back right": "L B R", "left long right": "A B C", "back": "B", "1 2": "A B", "östlich back": "A B", "a b C": "A B C",
	} {
		room, faults := sketch("in", strings.Fields(names)...).Resolve()
		require.Empty(t, faults)
		var got []string
		for _, w := range room.Walls {
			got = append(got, w.Letter)
		}
		assert.Equal(t, want, strings.Join(got, " "), names)
	}
	var many []string
	for i := range 28 {
		many = append(many, fmt.Sprint("wall ", i))
	}
	room, faults := sketch("in", many...).Resolve()
	require.Empty(t, faults)
	assert.Equal(t, "Z AA AB", room.Walls[25].Letter+" "+room.Walls[26].Letter+" "+room.Walls[27].Letter)
}

func TestOrderOfSetting(t *testing.T) {
	for given, want := range map[string]string{
		"": "b a c", "c": "c b a", "a c": "a c b", "c b a": "c b a",
	} {
		job := sketch("in", "a", "b", "c")
		job.Walls[1].Width = "61 in"
		job.SetOrder = strings.Fields(given)
		room, faults := job.Resolve()
		require.Empty(t, faults)
		got := make([]string, 3)
		for _, w := range room.Walls {
			got[w.Order] = w.Name
		}
		assert.Equal(t, want, strings.Join(got, " "), given)
	}
}

func TestCornersAndLaps(t *testing.T) {
	beyond := func(job survey.Job) string {
		room, faults := job.Resolve()
		require.Empty(t, faults)
		var s []string
		for _, w := range room.Walls {
			require.False(t, w.Left.Cover > 0 && w.Left.Behind > 0)
			require.Equal(t, w.Left.Beyond >= 0, w.Left.Cover+w.Left.Behind == in/2)
			s = append(s, fmt.Sprint(w.Left.Beyond, w.Right.Beyond))
		}
		return strings.Join(s, ", ")
	}
	assert.Equal(t, "-1 -1", beyond(sketch("in", "a")))
	assert.Equal(t, "-1 1, 0 2, 1 -1", beyond(sketch("in", "a", "b", "c")), "three walls do not close")
	assert.Equal(t, "3 1, 0 2, 1 3, 2 0", beyond(sketch("in", "a", "b", "c", "d")), "four do")
	job := sketch("in", "a", "b", "c", "d")
	job.Walls[2].Left = survey.End{Stops: &survey.Mark{At: "0"}}
	assert.Equal(t, "3 1, 0 -1, -1 3, 2 0", beyond(job), "one end of a corner may stop")

	room, _ := sketch("in", "a", "b", "c").Resolve()
	assert.Equal(t, in/2, room.Walls[0].Right.Cover, "the first of equal walls is set first")
	assert.Equal(t, in/2, room.Walls[1].Left.Behind)
	assert.Equal(t, in/2, room.Walls[1].Right.Cover)
	assert.Equal(t, in/2, room.Walls[2].Left.Behind)
}

func TestSegmentsOfOneReadingAreLevel(t *testing.T) {
	base := func(at ...[]string) []survey.SegmentFound {
		job := sketch("in", "a")
		job.Walls[0].Base = nil
		for _, readings := range at {
			s := survey.Segment{Meets: "floor"}
			for _, x := range readings {
				s.Readings = append(s.Readings, survey.Drop{At: x, Drop: "50"})
			}
			job.Walls[0].Base = append(job.Walls[0].Base, s)
		}
		room, faults := job.Resolve()
		require.Empty(t, faults)
		return room.Walls[0].Base
	}
	spans := func(base []survey.SegmentFound) (s string) {
		for _, b := range base {
			s += "[" + b.Readings[0].At.Plain(length.Imperial, 0) + " " + b.Readings[len(b.Readings)-1].At.Plain(length.Imperial, 0) + "]"
		}
		return s
	}
	assert.Equal(t, "[7 7]", spans(base([]string{"7"})))
	assert.Equal(t, "[2 58]", spans(base([]string{"2", "58"})), "held level beyond its readings")
	assert.Equal(t, "[0 4][4 60]", spans(base([]string{"0"}, []string{"4", "60"})))
	assert.Equal(t, "[0 4][4 20][20 60]", spans(base([]string{"0", "4"}, []string{"11"}, []string{"20", "60"})))
	assert.Equal(t, "[0 4][4 4]", spans(base([]string{"0"}, []string{"4"})))
	assert.Equal(t, "[0 4][4 30]", spans(base([]string{"0", "4"}, []string{"30"})))
}

func TestPinsAreRead(t *testing.T) {
	job := sketch("in", "a")
	job.Walls[0].Left = survey.End{Stops: &survey.Mark{From: "0", To: "3"}}
	job.Walls[0].Openings = []survey.Opening{niche("n", survey.Mark{From: "20", To: "30"}, survey.Mark{From: "10", To: "14"})}
	job.Pins.Course.Line = "-40"
	job.Pins.Walls = map[string]survey.WallPin{"a": {Joint: "30", Tile: "33 1/16", Marks: map[string]string{
		"end left": "1", "niche n left": "22", "niche n right": "34", "niche n bottom": "0", "head": "30"}}}
	room, faults := job.Resolve()
	require.Empty(t, faults)
	assert.Equal(t, -40*in, *room.Line)
	assert.Equal(t, &survey.StartPin{X: 30 * in}, room.Walls[0].Pin, "a tile half a pitch from the joint says the same")
	assert.Equal(t, map[survey.MarkName]length.Length{"end left": in, "niche n left": 22 * in, "niche n right": 34 * in,
		"niche n bottom": 0, "head": 30 * in}, room.Walls[0].MarkPins)
	job.Pins.Walls["a"] = survey.WallPin{Tile: "20"}
	room, faults = job.Resolve()
	require.Empty(t, faults)
	assert.Equal(t, &survey.StartPin{X: 20 * in, Is: survey.OnTile}, room.Walls[0].Pin)
}

// niche is 10 in high on the level line.
func niche(name string, left, width survey.Mark) survey.Opening {
	return survey.Opening{Kind: "niche", Name: name, Left: &left, Width: &width,
		Bottom: &survey.Mark{At: "0"}, Height: &survey.Measure{Mark: &survey.Mark{At: "10"}}}
}
