package layout_test

import (
	"context"
	"maps"
	"slices"
	"strconv"
	"strings"
	"testing"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/length"
	laid "coursewright/layout/plan"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
	"coursewright/layout/takeoff"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// nicheJob is a wall of 4 in tile with a niche between two studs 14 1/2 in apart.
func nicheJob(change func(*survey.Inside)) survey.Job {
	in := &survey.Inside{Studs: &survey.Studs{Left: "22", Right: "36 1/2"}, Depth: "3 1/2", DepthIs: "rough", Fall: "0"}
	change(in)
	return survey.Job{Format: survey.Format, Units: "in", Tile: survey.Tile{Width: "4", Height: "4", Thickness: "5/16"},
		Joint: survey.Measure{Plain: "1/8"}, Bed: "3/16", Bond: survey.Bond{Kind: "stack"},
		Walls: []survey.Wall{{Name: "back", Width: "60", Left: survey.End{Meets: "corner"}, Right: survey.End{Meets: "corner"},
			Base: []survey.Segment{{Meets: "tub", Readings: []survey.Drop{{At: "0", Drop: "40"}}}}, Head: survey.Head{Stops: &survey.Mark{At: "42"}},
			Openings: []survey.Opening{{Kind: "niche", Name: "shelf", Bottom: &survey.Mark{From: "0", To: "12"},
				Height: &survey.Measure{Mark: &survey.Mark{From: "12", To: "14"}}, Inside: in}}}}}
}

func bought(t *testing.T, p layout.Plan) (cuts.Schedule, map[string]takeoff.Line) {
	t.Helper()
	c := cuts.Of(cuts.Input{Room: p.Room, Walls: p.Walls}, cuts.For(p.Room))
	lines := map[string]takeoff.Line{}
	for _, l := range takeoff.Of(takeoff.Input{Room: p.Room, Walls: p.Walls, Cuts: c.Offcuts, Others: c.Others}, takeoff.For(p.Room)).Lines {
		lines[l.Item] = l
	}
	return c, lines
}

// Worked by hand, common practice, no source: three columns and three courses of
// 4 in tile between two studs 14 1/2 in apart; nine whole tiles on the back, three
// cut ones on each return.
func TestTheInsideOfANicheGoesAllTheWay(t *testing.T) {
	p, err := layout.Now(nicheJob(func(*survey.Inside) {}))
	require.NoError(t, err)
	without := nicheJob(func(*survey.Inside) {})
	o := &without.Walls[0].Openings[0]
	o.Inside, o.Left, o.Width = nil, &survey.Mark{At: "23"}, &survey.Mark{At: "12 1/2"}
	o.Bottom, o.Height = &survey.Mark{At: "1 1/4"}, &survey.Measure{Mark: &survey.Mark{At: "12 1/2"}}
	without.Pins.Walls = map[string]survey.WallPin{"back": {Edge: "23 1/8"}}
	without.Pins.Course.Line = "1 3/8"
	bare, err := layout.Now(without)
	require.NoError(t, err)
	require.Equal(t, bare.Walls[0].Start.Placed.Openings, p.Walls[0].Start.Placed.Openings, "on the joints on all four sides")

	schedule, lines := bought(t, p)
	_, before := bought(t, bare)
	assert.Equal(t, before["tile"].Net+9+4*3-saved(schedule)+savedIn(t, bare), lines["tile"].Net, "nine whole tiles and four times three that are cut")
	assert.NotContains(t, lines, "inside of the niche shelf")
	assert.Contains(t, before, "inside of the niche shelf")
	n := 0
	for _, c := range schedule.Cuts {
		if strings.HasPrefix(c.Piece, "B-N1-") {
			n++
			assert.NotEmpty(t, c.Group)
		}
	}
	assert.Equal(t, 12, n, "every cut piece is in the schedule")

	// Round the back 4 × 12 1/4, up each front corner of the sides twice 2 15/16.
	soft := func(p layout.Plan) string { _, l := bought(t, p); return l["sealant"].Because }
	assert.NotEqual(t, soft(bare), soft(p))

	pieces := 0
	for _, s := range stages.Of(stages.Input{Room: p.Room, Walls: p.Walls, Cuts: schedule}, stages.For(p.Room)) {
		if s.Name == "Inside of niche shelf" {
			pieces += s.Pieces
			assert.Equal(t, 9, s.Whole)
		}
	}
	assert.Equal(t, 21, pieces, "and set in a stage")
}

func saved(s cuts.Schedule) int { return s.Offcuts.TilesSaved }

func savedIn(t *testing.T, p layout.Plan) int {
	s, _ := bought(t, p)
	return saved(s)
}

// A mosaic on the back is set out by itself, bought by itself, and no off-cut of
// it is paired with one of the wall's tile.
func TestABackOfItsOwnTile(t *testing.T) {
	p, err := layout.Now(nicheJob(func(in *survey.Inside) {
		in.Back.Tile = &survey.Tile{Name: "penny blue", Width: "1", Height: "1", Thickness: "3/16", Box: &survey.Box{Count: 144, Price: "20"}}
		in.Back.Joint = "1/16"
		in.Sill = survey.InsideFace{Slab: "3/4"}
	}))
	require.NoError(t, err)
	in := p.Walls[0].Insides[0]
	back := in.Find(survey.BackFace)
	require.NotNil(t, back)
	for _, ends := range [2]func(p *laid.Face, i int) bool{
		func(f *laid.Face, i int) bool { return f.Pieces[i].Face.Bounds().Left == f.Shape.Region.Bounds().Left },
		func(f *laid.Face, i int) bool {
			return f.Pieces[i].Face.Bounds().Right == f.Shape.Region.Bounds().Right
		},
	} {
		for i := range back.Pieces {
			if ends(back, i) {
				assert.GreaterOrEqual(t, back.Pieces[i].Wide, length.Inch/2, "equal cuts, the larger way")
			}
		}
	}
	schedule, lines := bought(t, p)
	assert.Equal(t, len(back.Pieces), lines["penny blue"].Net+schedule.Others[0].TilesSaved)
	assert.Positive(t, lines["penny blue"].Boxes)
	assert.Contains(t, lines["slab for the sill of niche shelf"].Because, `13 1/4" × 3 1/2"`, "under the tile of the sides; the thin back leaves 3 5/8, less a soft joint")
	for _, pair := range schedule.Offcuts.Pairs {
		assert.Equal(t, strings.HasPrefix(pair[0], "B-N1-back"), strings.HasPrefix(pair[1], "B-N1-back"), pair)
	}
	for _, g := range schedule.Groups {
		for _, id := range g.Pieces {
			assert.Equal(t, strings.HasPrefix(id, "B-N1-back"), g.Tile == "penny blue", id)
		}
	}
}

// Found on the list of a mosaic back: the first piece of a column was cut under the fine
// step at its foot too, and the whole line was listed by its height.
func TestALineIsToldByTheCutThatIsMade(t *testing.T) {
	p, err := layout.Now(nicheJob(func(in *survey.Inside) {
		in.Fall = "1/4"
		in.Back.Tile, in.Back.Joint = &survey.Tile{Name: "mosaic", Width: "1", Height: "1", Thickness: "1/4"}, "1/16"
	}))
	require.NoError(t, err)
	schedule, _ := bought(t, p)
	seen := 0
	for _, g := range schedule.Groups {
		if g.Kind == "cross cut" || g.Kind == "rip" {
			size, name := g.Fence()
			assert.NotEqual(t, name == "wide", g.Size.Width > size, "%s: %s %v", g.ID, name, g.Cut)
			if g.Tile != "" && len(g.Pieces) > 10 && name == "wide" {
				seen++
			}
		}
	}
	assert.Positive(t, seen, "the columns at the sides of the back are told by their width")
}

// The plan file tells of the inside, and of nothing where the job does not.
func TestThePlanFileTellsOfTheInside(t *testing.T) {
	p, err := layout.Solve(context.Background(), nicheJob(func(*survey.Inside) {}))
	require.NoError(t, err)
	text, err := p.File()
	require.NoError(t, err)
	assert.Contains(t, string(text), `"insides": [`)
	assert.Contains(t, string(text), `"B-N1-sill-03"`)
}

// With a band under the niche the courses begin anew over it; the back goes on with
// those beside it.
func TestOverABandTheBackGoesOnWithTheCoursesBesideIt(t *testing.T) {
	job := nicheJob(func(*survey.Inside) {})
	job.Bands = []survey.Band{{Name: "stripe", Tile: survey.Tile{Width: "2", Height: "1 3/4", Thickness: "5/16"}, Bottom: survey.Mark{From: "-12", To: "-8"}}}
	p, err := layout.Now(job)
	require.NoError(t, err)
	w := p.Walls[0]
	tops := map[length.Length]bool{}
	for _, piece := range w.Pieces {
		if piece.Laid == 0 {
			tops[piece.Tile.Bottom] = true
		}
	}
	back := w.Insides[0].Find(survey.BackFace)
	require.NotEmpty(t, back.Pieces)
	for _, piece := range back.Pieces {
		assert.True(t, tops[piece.Tile.Bottom+back.Origin.Y], "%s stands in a course of the wall", piece.ID)
	}
}

// Wherever its studs stand and whatever the tile, lining and tile of a niche are
// between them, and it is as wide as was asked.
func TestANicheStaysBetweenItsStuds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string, low, high int) string {
			return strconv.Itoa(rapid.IntRange(low, high).Draw(t, name)) + " mm"
		}
		from := rapid.IntRange(150, 700).Draw(t, "left stud")
		job := nicheJob(func(in *survey.Inside) {
			in.Studs = &survey.Studs{Left: strconv.Itoa(from) + " mm", Right: strconv.Itoa(from+rapid.IntRange(200, 500).Draw(t, "bay")) + " mm"}
			in.Front = rapid.SampledFrom([]string{"", "lapped", "flush"}).Draw(t, "front")
		})
		job.Tile.Width, job.Tile.Height = n("wide", 40, 300), n("high", 60, 300)
		job.Bond = rapid.SampledFrom([]survey.Bond{{Kind: "stack"}, {Kind: "running", Offset: "1/2"}, {Kind: "running", Offset: "1/3"}, {Kind: "stack", Along: "plumb"}, {Kind: "herringbone"}}).Draw(t, "bond")
		job.Pins.Course.Line = "1 3/8" // the niche is what is looked at, not the search
		p, err := layout.Now(job)
		require.NoError(t, err)
		w := p.Walls[0]
		in, o := w.Found.Openings[0].Inside, w.Start.Placed.Openings[0]
		require.GreaterOrEqual(t, w.Insides[0].Rough.Left, in.Bay.From)
		require.LessOrEqual(t, w.Insides[0].Rough.Right, in.Bay.To)
		require.GreaterOrEqual(t, 3*(o.Right-o.Left)+3, 2*(in.Bay.To-in.Bay.From-in.Needs(0)), "two thirds of the bay at least")
	})
}

// A window lined 8 1/2 in deep from the boards, in tile of 3 7/8 in with joints of 1/8 in: with the tile of the wall and its bed, 1/2 in,
// it is 9 in deep to the frame. Behind the wall's lap of 5/16 in and a joint, and before the one at the frame, 8 7/16 in are left:
// two tiles with their joints, and 7/16 in. First and last are 2 5/32 in then, half of a tile and 7/16 in. Where the tile comes out to the face
// of the wall its first row is whole.
func TestAReturnDeeperThanATileHasNoSliverAtTheFrame(t *testing.T) {
	at := func(s string) *survey.Mark { return &survey.Mark{At: s} }
	meets := survey.End{Meets: "corner", Gap: "1/8"}
	job := survey.Job{Format: survey.Format, Title: "deep", Units: "in", Tile: survey.Tile{Width: "3 7/8", Height: "3 7/8", Thickness: "5/16"},
		Joint: survey.Measure{Plain: "1/8"}, Bed: "3/16", Bond: survey.Bond{Kind: "stack"},
		Walls: []survey.Wall{{Name: "w", Width: "60", Left: meets, Right: meets, Base: []survey.Segment{{Meets: "tub", Readings: []survey.Drop{{At: "0", Drop: "38"}, {At: "60", Drop: "38"}}}},
			Head: survey.Head{Stops: at("36")}, Openings: []survey.Opening{{Kind: "window", Name: "sash", Left: at("14"), Width: at("30"), Bottom: at("2"),
				Height: &survey.Measure{Mark: at("24")}, Inside: &survey.Inside{Sizes: "lined", Depth: "8 1/2"}}}}}}
	for front, want := range map[string][]string{"": {`2 5/32"`, `3 7/8"`, `2 5/32"`}, "flush": {`3 7/8"`, `3 7/8"`, `7/8"`}} {
		job.Walls[0].Openings[0].Inside.Front = front
		p, err := layout.Now(job)
		require.NoError(t, err)
		for _, f := range p.Walls[0].Insides[0].Faces {
			deep := map[length.Length]length.Length{}
			for _, x := range f.Pieces {
				if box := x.Face.Bounds(); f.Is == survey.LeftFace {
					deep[-box.Left] = box.Width()
				} else if f.Is == survey.SillFace {
					deep[box.Bottom] = box.Height()
				}
			}
			var got []string
			for _, y := range slices.Sorted(maps.Keys(deep)) {
				got = append(got, deep[y].Fine(length.Imperial))
			}
			if f.Is == survey.LeftFace {
				slices.Reverse(got)
			}
			if len(got) > 0 {
				require.Equal(t, want, got, "%s %s", f.Name(), front)
			}
		}
	}
}
