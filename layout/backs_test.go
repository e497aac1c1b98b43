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
func backOf(t *testing.T, p layout.Plan) map[string]int { return countOn(t, p, survey.BackFace) }

// countOn counts those of any face of the niche.
func countOn(t *testing.T, p layout.Plan, is survey.FaceName) map[string]int {
	t.Helper()
	face := p.Walls[0].Insides[0].Find(is)
	require.NotNil(t, face)
	out := map[string]int{}
	for _, q := range face.Pieces {
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
	assert.Equal(t, before["tile for the stripe"].Net+3+2, lines["tile for the stripe"].Net, "three on the back, and one is cut for each side")
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

// The sides follow the band as they follow the courses of the field. Worked by hand, common practice, no source: they are
// 3 1/2 deep less the tile that laps over them, a joint behind it and the soft joint at the back, 3 1/2 - 5/16 - 1/8 - 1/8 = 2 15/16. So
// wide stands one piece of each course; of a band in tile of 1 in two are whole from the front on, and the third is cut at
// the back to 2 15/16 - 2 × 1 1/8 = 11/16. Sill and top stay in the tile of the field.
func TestABandComesRoundToTheSidesOfANiche(t *testing.T) {
	small := acrossBack("1 1/4", "14 5/8", func(j *survey.Job) { j.Bands[0].Tile.Width = "1" })
	for name, c := range map[string]struct {
		job    survey.Job
		stripe int
	}{"one": {acrossBack("1 1/4", "14 5/8", func(*survey.Job) {}), 1}, "three": {small, 3}} {
		p, err := layout.Solve(context.Background(), c.job)
		require.NoError(t, err)
		text, err := p.File()
		require.NoError(t, err)
		course := map[length.Length]int{}
		for _, q := range p.Walls[0].Pieces {
			course[q.Tile.Bottom] = q.Course
		}
		for _, is := range []survey.FaceName{survey.LeftFace, survey.RightFace} {
			assert.Equal(t, map[string]int{`tile 4" at 1 3/8"`: 1, `stripe 2" at 5 1/2"`: c.stripe, `tile 4" at 7 5/8"`: 1, `tile 4" at 11 3/4"`: 1}, countOn(t, p, is), "%s, %s", name, is)
			side := p.Walls[0].Insides[0].Find(is)
			for _, q := range side.Pieces {
				assert.Equal(t, course[q.Tile.Bottom], q.Course, q.ID)
				box, region := q.Face.Bounds(), side.Shape.Region.Bounds()
				atBack := is == survey.LeftFace && box.Right == region.Right || is == survey.RightFace && box.Left == region.Left
				want := length.Inch
				if q.Laid == 0 || c.stripe == 1 {
					want = 2*length.Inch + length.Inch*15/16
				} else if atBack {
					want = length.Inch * 11 / 16
				}
				assert.Equal(t, want, q.Wide, q.ID)
				_, of, found := strings.Cut(string(text), `"id": "`+q.ID+`"`)
				require.True(t, found, q.ID)
				of, _, _ = strings.Cut(of, `"id": `)
				assert.Equal(t, q.Laid == 1, strings.Contains(of, `"band": "stripe"`), q.ID)
			}
		}
		for _, is := range []survey.FaceName{survey.SillFace, survey.TopFace} {
			for _, q := range p.Walls[0].Insides[0].Find(is).Pieces {
				assert.Zero(t, q.Laid, q.ID)
			}
		}
	}

	p, err := layout.Now(small)
	require.NoError(t, err)
	schedule, _ := bought(t, p)
	cut, set := 0, 0
	for _, g := range schedule.Groups {
		for _, id := range g.Pieces {
			if q, f := p.Walls[0].Find(id); f != nil && f.Is != survey.BackFace && q.Laid == 1 {
				assert.Equal(t, "tile for the stripe", g.Tile, id)
				cut++
			}
		}
	}
	assert.Equal(t, 2, cut, "one at the back of each side")
	for _, s := range stages.Order(stages.Input{Room: p.Room, Walls: p.Walls, Cuts: schedule}) {
		if s.On == nil || s.On.Is != survey.LeftFace && s.On.Is != survey.RightFace {
			continue
		}
		for _, q := range s.Pieces {
			if assert.Equal(t, s.Pieces[0].Laid, q.Laid, "a step is of one tile"); q.Laid == 1 {
				set++
			}
		}
	}
	assert.Equal(t, 6, set)
}

// A niche that is all inside a band of eight courses, from 5 1/2 to 8 × 2 + 7 × 1/8 = 16 7/8 over it, has sill and top in
// its tile too: 2 15/16 deep, a whole row of 2 in at the front and 2 15/16 - 2 1/8 = 13/16 behind it. One that is as high as the band, its edges a
// joint off it, meets the field under its sill and over its top, and has them in the field's tile; so has one whose sill or top alone is in the
// band. What is said of a face stays so.
func TestSillAndTopWithinABandAreInItsTile(t *testing.T) {
	wide := func(j *survey.Job) { j.Bands[0].Courses = 8 }
	within := map[string]int{`stripe 2"`: 3, `stripe 13/16"`: 3}
	for _, c := range []struct {
		bottom, high string
		stripes      bool
	}{{"6 3/4", "5 7/8", true}, {"5 3/8", "17 1/8", false}, {"6 3/4", "17 1/8", false}, {"3 1/4", "9 3/8", false}} {
		p, err := layout.Now(acrossBack(c.bottom, c.high, wide))
		require.NoError(t, err)
		for _, is := range []survey.FaceName{survey.SillFace, survey.TopFace} {
			got := map[string]int{}
			for _, q := range p.Walls[0].Insides[0].Find(is).Pieces {
				of := "tile "
				if q.Laid > 0 {
					of = "stripe "
				}
				got[of+q.High.Fine(length.Imperial)+``]++
			}
			if c.stripes {
				assert.Equal(t, within, got, "%s from %s", is, c.bottom)
			} else {
				assert.Equal(t, map[string]int{`tile 2 15/16"`: 3}, got, "%s from %s", is, c.bottom)
			}
		}
	}
	p, err := layout.Now(acrossBack("6 3/4", "5 7/8", func(j *survey.Job) {
		wide(j)
		j.Walls[0].Openings[0].Inside.Sill.Slab = "3/4"
		j.Walls[0].Openings[0].Inside.Top.Tile = &survey.Tile{Width: "1", Height: "1", Thickness: "5/16"}
		j.Walls[0].Openings[0].Inside.Left.Begin = "sill"
	}))
	require.NoError(t, err)
	for _, is := range []survey.FaceName{survey.LeftFace, survey.SillFace, survey.TopFace} {
		for _, q := range p.Walls[0].Insides[0].Find(is).Pieces {
			assert.Zero(t, q.Laid, q.ID)
		}
	}
	for _, q := range p.Walls[0].Insides[0].Find(survey.RightFace).Pieces {
		assert.Equal(t, 1, q.Laid, q.ID)
	}
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

// A pattern is cut to the edges of a band on back and sides as on the wall: what is laid in it lies between the band's
// edges, or a joint off them. No two pieces overlap (by a general geometry library, simplefeatures), each tile covers of its part of the face
// what a tile has of its module, and rows and courses are counted as those of the wall, on sides by themselves where the field is in a pattern.
func TestAPatternIsCutToTheBandWithin(t *testing.T) {
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
		for _, is := range []survey.FaceName{survey.BackFace, survey.LeftFace, survey.RightFace} {
			cutToBand(t, p, p.Walls[0].Insides[0].Find(is), name+", "+is.String())
		}
		back := p.Walls[0].Insides[0].Find(survey.BackFace)
		bottom := p.Setout.Bands[0].Bottom
		for _, q := range back.Pieces {
			over := func(r plane.Region) bool { return r.Bounds().Bottom > bottom }
			same := slices.ContainsFunc(p.Walls[0].Pieces, func(r piece.Piece) bool {
				return r.Laid == q.Laid && over(r.Face) == over(q.Face) && r.Course-r.Row == q.Course-q.Row
			})
			assert.True(t, same, "%s: %s is of row %d, course %d", name, q.ID, q.Row, q.Course)
		}
	}
}

// cutToBand holds a face to the heights of the one band of the room.
func cutToBand(t *testing.T, p layout.Plan, face *laid.Face, name string) {
	t.Helper()
	band, whole := p.Setout.Bands[0], face.Shape.Region.Bounds()
	if band.ToHead {
		band.Top = whole.Top
	}
	var area [2]length.Area
	courses := map[int]int{}
	for i, q := range face.Pieces {
		box := q.Face.Bounds()
		if q.Laid == 1 {
			assert.True(t, band.Bottom <= box.Bottom && box.Top <= band.Top, "%s, %s", name, q.ID)
		} else {
			assert.True(t, box.Top <= band.Bottom-p.Room.Joint || !band.ToHead && box.Bottom >= band.Top+p.Room.Joint, "%s, %s", name, q.ID)
		}
		area[q.Laid] += q.Face.Area2() / 2
		for _, r := range face.Pieces[i+1:] {
			both, err := geom.Intersection(outlined(q.Face), outlined(r.Face))
			require.NoError(t, err)
			assert.Less(t, both.Area(), 1e4, "%s: %s and %s", name, q.ID, r.ID)
		}
		if of, there := courses[q.Course]; there && face.Is != survey.BackFace {
			assert.Equal(t, of, q.Laid, "%s: course %d is of one tile", name, q.Course)
		}
		courses[q.Course] = q.Laid
	}
	high := [2]length.Length{whole.Height() - (band.Top - band.Bottom) - 2*p.Room.Joint, band.Top - band.Bottom}
	if band.ToHead {
		high[0] += p.Room.Joint
	}
	for n := range area {
		laid := p.Room.Laid(n)
		tile, joint := laid.Tile, laid.Joint
		share := float64(tile.Width.Times(tile.Height)) / float64((tile.Width + joint).Times(tile.Height+joint))
		assert.InDelta(t, share, float64(area[n])/float64(whole.Width().Times(high[n])), 0.1, "%s: how much of it tile %d covers", name, n)
	}
}

// A band on sheets goes on upon back and sides in sheets: its tiles there are each on one sheet of the band,
// which is bought with those of the wall.
func TestABandOnSheetsGoesOnWithin(t *testing.T) {
	p, err := layout.Now(acrossBack("1 1/4", "15 3/4", func(j *survey.Job) {
		j.Bands[0].Courses = 3
		j.Bands[0].Tile = survey.Tile{Width: "15/16", Height: "15/16", Thickness: "5/16", Sheet: &survey.Sheet{Across: 12, Up: 3}}
	}))
	require.NoError(t, err)
	in := p.Walls[0].Insides[0]
	schedule, lines := bought(t, p)
	on := map[string]int{}
	var all, within int
	for _, f := range schedule.Mosaic {
		require.Equal(t, "stripe", f.Band)
		all += len(f.Sheets)
		if f.Face != nil {
			within += len(f.Sheets)
			for _, s := range f.Sheets {
				for _, id := range s.Pieces {
					on[id]++
				}
			}
		}
	}
	for _, f := range in.Faces {
		for _, q := range f.Pieces {
			assert.Equal(t, q.Laid, on[q.ID], q.ID)
		}
	}
	assert.Greater(t, within, 2)
	assert.Greater(t, all, within)
	assert.Equal(t, "sheet", lines["tile for the stripe"].Unit)
	steps := 0
	for _, s := range stages.Order(stages.Input{Room: p.Room, Walls: p.Walls, Cuts: schedule}) {
		if s.Part == stages.Within && s.Sheet != nil {
			steps++
		}
	}
	assert.Equal(t, within, steps, "each is set in one go")
}

// Worked by hand, common practice, no source: the side is 3 1/2 deep. In front of its tile stands that of the wall and a joint of 1/8, at its
// back a soft joint of 1/8; so a piece of the band is 3 1/4 less its own thickness, one of the field 3 1/4 - 5/16 = 2 15/16 as ever. Thin tile is brought out
// flush with the field. Of 1/2 it stands 3/16 out of both sides, and takes that off the tiles of the band at both ends of the back: 4 - 3/16 = 3 13/16.
func TestABandOfAnotherThicknessHasItsOwnLap(t *testing.T) {
	const sixteenth = length.Inch / 16
	for thick, want := range map[string]struct{ begins, side, back length.Length }{
		"5/16": {7, 47, 64}, "1/2": {10, 44, 61}, "3/16": {5, 49, 64},
	} {
		p, err := layout.Now(acrossBack("1 1/4", "14 5/8", func(j *survey.Job) { j.Bands[0].Tile.Thickness = thick }))
		require.NoError(t, err)
		in := p.Walls[0].Insides[0]
		for _, f := range in.Faces[:3] {
			piecesMakeUp(t, &f.Wall)
			for _, q := range f.Pieces {
				box := q.Face.Bounds()
				front := map[survey.FaceName]length.Length{survey.LeftFace: box.Left, survey.RightFace: in.Depth - box.Right}[f.Is]
				switch {
				case f.Is == survey.BackFace && q.Laid == 1 && (box.Left < 2*sixteenth*16 || box.Right > 10*sixteenth*16):
					assert.Equal(t, want.back*sixteenth, q.Wide, "%s: %s", thick, q.ID)
				case f.Is == survey.BackFace:
					assert.True(t, q.Whole, "%s: %s", thick, q.ID)
				case q.Laid == 1:
					assert.Equal(t, [2]length.Length{want.begins * sixteenth, want.side * sixteenth}, [2]length.Length{front, q.Wide}, "%s: %s", thick, q.ID)
				default:
					assert.Equal(t, [2]length.Length{7 * sixteenth, 47 * sixteenth}, [2]length.Length{front, q.Wide}, "%s: %s", thick, q.ID)
				}
			}
			assert.Empty(t, f.Gaps, "%s: no bare wall on the %s", thick, f.Is)
		}
	}
}
