package layout_test

import (
	"context"
	"slices"
	"strconv"
	"strings"
	"testing"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	laid "coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
	"coursewright/layout/takeoff"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// acrossBack is the niche of nicheJob, its lower and upper edge measured, with a course begun at 1 3/8 in and,
// from 5 1/2 in on, a band of tile 4 in wide and 2 in high across it.
func acrossBack(bottom, high string, change func(*survey.Job)) survey.Job {
	job := nicheJob(func(*survey.Inside) {})
	job.Pins.Course.Line = "1 3/8"
	job.Bands = []survey.Band{{Name: "stripe", Tile: survey.Tile{Width: "4", Height: "2", Thickness: "5/16"}, Bottom: survey.Mark{At: "5 1/2"}}}
	o := &job.Walls[0].Openings[0]
	o.Bottom, o.Height = &survey.Mark{At: bottom}, &survey.Measure{Mark: &survey.Mark{At: high}}
	change(&job)
	return job
}

// backOf counts the pieces of the back by the tile that they are of, how high they are and where they stand.
func backOf(t *testing.T, p layout.Plan) map[string]int {
	t.Helper()
	back := p.Walls[0].Insides[0].Find(survey.BackFace)
	require.NotNil(t, back)
	out := map[string]int{}
	for _, q := range back.Pieces {
		of := "tile"
		if q.Laid > 0 {
			of = p.Room.Bands[q.Laid-1].Name
		}
		out[of+" "+q.High.Fine(length.Imperial)+" at "+q.Face.Bounds().Bottom.Fine(length.Imperial)]++
	}
	return out
}

// Worked by hand, common practice, no source. Between studs 14 1/2 in apart a lining of 1/2 in at each side, and the tile of the sides on
// its bed, leave three columns of 4 in tile with joints of 1/8: 3 × 4 + 2 × 1/8 = 12 1/4. Of three courses of it one is under the
// band and two over it: 1 3/8 to 5 3/8, the band from 5 1/2 to 7 1/2, then from 7 5/8 and from 11 3/4 to 15 3/4. The niche leaves a joint round them:
// from 1 1/4, 14 5/8 high. The band's tile is as wide as the field's, so that its joints run on from those of the field:
// nine tiles and three of the band, all whole.
func TestABandGoesOnUponTheBackOfANiche(t *testing.T) {
	job := acrossBack("1 1/4", "14 5/8", func(*survey.Job) {})
	p, err := layout.Solve(context.Background(), job)
	require.NoError(t, err)
	assert.Equal(t, map[string]int{`tile 4" at 1 3/8"`: 3, `stripe 2" at 5 1/2"`: 3, `tile 4" at 7 5/8"`: 3, `tile 4" at 11 3/4"`: 3}, backOf(t, p))

	for _, q := range p.Walls[0].Insides[0].Find(survey.BackFace).Pieces {
		assert.True(t, q.Whole, q.ID)
	}

	bare := acrossBack("1 1/4", "14 5/8", func(job *survey.Job) {
		o := &job.Walls[0].Openings[0]
		o.Inside, o.Left, o.Width = nil, &survey.Mark{At: "23"}, &survey.Mark{At: "12 1/2"}
		job.Pins.Walls = map[string]survey.WallPin{"back": {Edge: "23 1/8"}}
	})
	without, err := layout.Now(bare)
	require.NoError(t, err)
	require.Equal(t, without.Walls[0].Start.Placed.Openings, p.Walls[0].Start.Placed.Openings)
	schedule, lines := bought(t, p)
	_, before := bought(t, without)
	assert.Equal(t, before["tile for the stripe"].Net+3, lines["tile for the stripe"].Net)
	assert.Equal(t, wholeOf(t, without)+9, wholeOf(t, p), "whole tiles of the room")

	whole := 0
	for _, s := range stages.Of(stages.Input{Room: p.Room, Walls: p.Walls, Cuts: schedule}, stages.For(p.Room)) {
		if s.Name == "Inside of niche shelf" {
			whole += s.Whole
		}
	}
	assert.Equal(t, 12, whole, "set in the stage of the niche")

	// The courses of the back bear the numbers of those beside them.
	course := map[length.Length]int{}
	for _, q := range p.Walls[0].Pieces {
		course[q.Tile.Bottom] = q.Course
	}
	for _, q := range p.Walls[0].Insides[0].Find(survey.BackFace).Pieces {
		assert.Equal(t, course[q.Tile.Bottom], q.Course, q.ID)
	}

	text, err := p.File()
	require.NoError(t, err)
	for n := 1; n <= 12; n++ {
		id := "B-N1-back-0" + strconv.Itoa(n)
		if n > 9 {
			id = "B-N1-back-" + strconv.Itoa(n)
		}
		_, of, found := strings.Cut(string(text), `"id": "`+id+`"`)
		require.True(t, found, id)
		of, _, _ = strings.Cut(of, `"id": `)
		assert.Equal(t, n >= 4 && n <= 6, strings.Contains(of, `"band": "stripe"`), id)
	}
}

func wholeOf(t *testing.T, p layout.Plan) int {
	t.Helper()
	c := cuts.Of(cuts.Input{Room: p.Room, Walls: p.Walls}, cuts.For(p.Room))
	return takeoff.Of(takeoff.Input{Room: p.Room, Walls: p.Walls, Cuts: c.Offcuts, Others: c.Others}, takeoff.For(p.Room)).Whole
}

// Where the niche's edges are off the joints what is on the back is cut as the wall is. One that
// begins at 3 1/4 has 5 3/8 - 3 3/8 = 2 in of its first course, and one that ends at 6 5/8 has 6 1/2 - 5 1/2 = 1 in of
// the band; courses of 4 in with their joints begin at 1 3/8 - 4 1/8 = -2 3/4 too. A fall of the sill
// is left out. Of a niche that is all inside a band of eight courses everything is the band's: from 7 1/2 on
// it is cut to 7 1/2 - 6 7/8 = 5/8, whole from 7 5/8 and from 9 3/4, and from 11 7/8 to 12 1/2 cut to 5/8.
func TestABandIsCutOnTheBackAsOnTheWall(t *testing.T) {
	p, err := layout.Now(acrossBack("3 1/4", "12 5/8", func(*survey.Job) {}))
	require.NoError(t, err)
	assert.Equal(t, map[string]int{`tile 2" at 3 3/8"`: 3, `stripe 2" at 5 1/2"`: 3, `tile 4" at 7 5/8"`: 3, `tile 4" at 11 3/4"`: 3}, backOf(t, p))

	p, err = layout.Now(acrossBack("-2 7/8", "9 1/2", func(*survey.Job) {}))
	require.NoError(t, err)
	assert.Equal(t, map[string]int{`tile 4" at -2 3/4"`: 3, `tile 4" at 1 3/8"`: 3, `stripe 1" at 5 1/2"`: 3}, backOf(t, p))
	schedule, _ := bought(t, p)
	cut := 0
	for _, g := range schedule.Groups {
		for _, id := range g.Pieces {
			if strings.HasPrefix(id, "B-N1-back") {
				assert.Equal(t, "tile for the stripe", g.Tile, id)
				cut++
			}
		}
	}
	assert.Equal(t, 3, cut)

	p, err = layout.Now(acrossBack("6 3/4", "5 7/8", func(job *survey.Job) { job.Bands[0].Courses = 8 }))
	require.NoError(t, err)
	assert.Equal(t, map[string]int{`stripe 5/8" at 6 7/8"`: 3, `stripe 2" at 7 5/8"`: 3, `stripe 2" at 9 3/4"`: 3, `stripe 5/8" at 11 7/8"`: 3}, backOf(t, p))
}

// A back that has a tile or a bond of its own, or is one slab, stays as it is said, and so does one that no band crosses.
func TestABackOfItsOwnKeepsWhatIsSaid(t *testing.T) {
	for name, change := range map[string]func(*survey.Job){
		"tile": func(j *survey.Job) {
			j.Walls[0].Openings[0].Inside.Back.Tile = &survey.Tile{Width: "1", Height: "1", Thickness: "5/16"}
		},
		"bond":  func(j *survey.Job) { j.Walls[0].Openings[0].Inside.Back.Bond = &survey.Bond{Kind: "hexagon"} },
		"slab":  func(j *survey.Job) { j.Walls[0].Openings[0].Inside.Back.Slab = "3/4" },
		"under": func(j *survey.Job) { j.Bands[0].Bottom.At = "-2 3/4" },
	} {
		p, err := layout.Now(acrossBack("1 1/4", "14 5/8", change))
		require.NoError(t, err, name)
		for _, q := range p.Walls[0].Insides[0].Find(survey.BackFace).Pieces {
			assert.Zero(t, q.Laid, name)
		}
	}
}

// Over the line from which a band goes up to the head the back goes on with the courses beside
// it, and a niche across that line has both tiles. The lines of the band are 2 1/8 in apart, from 5 1/2:
// on a back from 9 7/8 to 18 1/4 in stand 1 7/8 in of its course at 9 3/4, then those at 11 7/8, 14 and 16 1/8.
// Found: over the line the courses were counted from a course of the field.
func TestTheTileOverALineGoesOnUponTheBack(t *testing.T) {
	toHead := func(j *survey.Job) { j.Bands[0].ToHead = true }
	p, err := layout.Now(acrossBack("9 3/4", "8 5/8", toHead))
	require.NoError(t, err)
	back := p.Walls[0].Insides[0].Find(survey.BackFace)
	want := map[length.Length]int{}
	for _, q := range p.Walls[0].Pieces {
		want[q.Tile.Bottom] = q.Course
	}
	require.Len(t, back.Pieces, 3*4)
	for _, q := range back.Pieces {
		assert.Equal(t, want[q.Tile.Bottom], q.Course, "%s at %s", q.ID, q.Tile.Bottom.Fine(length.Imperial))
		assert.Equal(t, p.Room.Bands[0].Tile, laid.TileOf(p.Room, back, &q))
	}
	p, err = layout.Now(acrossBack("1 1/4", "8 1/2", toHead))
	require.NoError(t, err)
	assert.Equal(t, map[string]int{`tile 4" at 1 3/8"`: 3, `stripe 2" at 5 1/2"`: 3, `stripe 2" at 7 5/8"`: 3}, backOf(t, p))
}

// A pattern is cut to the edges of a band on the back as on the wall: what is laid in it lies between the band's
// edges, or a joint off them. No two pieces overlap (by a general geometry library, simplefeatures), each tile covers of its part of the back
// what a tile has of its module, and rows and courses are counted as those of the wall.
func TestAPatternIsCutToTheBandOnTheBack(t *testing.T) {
	weave := func(j *survey.Job) {
		j.Bands[0].Bond, j.Bands[0].Height, j.Bands[0].Tile = survey.Bond{Kind: "herringbone"}, "5", survey.Tile{Width: "3", Height: "1", Thickness: "5/16"}
	}
	field := func(j *survey.Job) {
		j.Bond, j.Pins = survey.Bond{Kind: "herringbone"}, survey.Pins{}
		j.Tile.Width, j.Tile.Height = "6", "2"
		o := &j.Walls[0].Openings[0]
		o.Left, o.Width, o.Inside.Studs = &survey.Mark{At: "23"}, &survey.Mark{At: "12 1/2"}, nil
	}
	for name, change := range map[string]func(*survey.Job){
		"band": weave, "field": field, "both": func(j *survey.Job) { field(j); weave(j) },
		"to the head": func(j *survey.Job) { field(j); j.Bands[0].ToHead = true },
	} {
		p, err := layout.Now(acrossBack("1 1/4", "14 5/8", change))
		require.NoError(t, err, name)
		w, band := p.Walls[0], p.Setout.Bands[0]
		back := w.Insides[0].Find(survey.BackFace)
		var area [2]length.Area
		for i, q := range back.Pieces {
			box := q.Face.Bounds()
			if band.ToHead {
				band.Top = box.Top
			}
			if q.Laid == 1 {
				assert.True(t, band.Bottom <= box.Bottom && box.Top <= band.Top, "%s, %s", name, q.ID)
			} else {
				assert.True(t, box.Top <= band.Bottom-p.Room.Joint || !band.ToHead && box.Bottom >= band.Top+p.Room.Joint, "%s, %s", name, q.ID)
			}
			area[q.Laid] += q.Face.Area2() / 2
			for _, r := range back.Pieces[i+1:] {
				both, err := geom.Intersection(outlined(q.Face), outlined(r.Face))
				require.NoError(t, err)
				assert.Less(t, both.Area(), 1e4, "%s: %s and %s", name, q.ID, r.ID)
			}
		}
		whole := back.Shape.Region.Bounds()
		if band.ToHead {
			band.Top = whole.Top
		}
		high := [2]length.Length{whole.Height() - (band.Top - band.Bottom) - 2*p.Room.Joint, band.Top - band.Bottom}
		if band.ToHead {
			high[0] += p.Room.Joint
		}
		for n := range area {
			laid := p.Room.Laid(n)
			tile, joint := laid.Tile, laid.Joint
			share := float64(tile.Width.Times(tile.Height)) / float64((tile.Width + joint).Times(tile.Height+joint))
			assert.InDelta(t, share, float64(area[n])/float64(whole.Width().Times(high[n])), 0.08, "%s: how much of the back tile %d covers", name, n)
		}
		for _, q := range back.Pieces {
			over := func(r plane.Region) bool { return r.Bounds().Bottom > band.Bottom }
			same := slices.ContainsFunc(w.Pieces, func(r piece.Piece) bool {
				return r.Laid == q.Laid && over(r.Face) == over(q.Face) && r.Course-r.Row == q.Course-q.Row
			})
			assert.True(t, same, "%s: %s is of row %d, course %d", name, q.ID, q.Row, q.Course)
		}
	}
}

// A band on sheets goes on upon the back in sheets: its tiles there are each on one sheet of the band,
// which is bought with those of the wall.
func TestABandOnSheetsGoesOnUponTheBack(t *testing.T) {
	p, err := layout.Now(acrossBack("1 1/4", "15 3/4", func(j *survey.Job) {
		j.Bands[0].Courses = 3
		j.Bands[0].Tile = survey.Tile{Width: "15/16", Height: "15/16", Thickness: "5/16", Sheet: &survey.Sheet{Across: 12, Up: 3}}
	}))
	require.NoError(t, err)
	back := p.Walls[0].Insides[0].Find(survey.BackFace)
	schedule, lines := bought(t, p)
	on := map[string]int{}
	var all, within int
	for _, f := range schedule.Mosaic {
		require.Equal(t, "stripe", f.Band)
		all += len(f.Sheets)
		if f.Face != nil {
			require.Same(t, back, f.Face)
			within += len(f.Sheets)
			for _, s := range f.Sheets {
				for _, id := range s.Pieces {
					on[id]++
				}
			}
		}
	}
	for _, q := range back.Pieces {
		assert.Equal(t, q.Laid, on[q.ID], q.ID)
	}
	assert.Positive(t, within)
	assert.Greater(t, all, within)
	assert.Equal(t, "sheet", lines["tile for the stripe"].Unit)
	steps := 0
	for _, s := range stages.Order(stages.Input{Room: p.Room, Walls: p.Walls, Cuts: schedule}) {
		if s.On == back && s.Sheet != nil {
			steps++
		}
	}
	assert.Equal(t, within, steps, "each is set in one go")
}
