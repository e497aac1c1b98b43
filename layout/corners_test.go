package layout_test

import (
	"context"
	"encoding/json"
	"math"
	"os"
	"strings"
	"testing"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/length"
	its "coursewright/layout/plan"
	"coursewright/layout/survey"
	"coursewright/layout/takeoff"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// notTurned is what an end meets to those who read jobs again: at an outside corner its
// tile ends at a mark of the plan, as where it stops. Where that is, is held by hand in
// layout/survey.
func notTurned(meets string) string {
	if meets == "outside corner" {
		return ""
	}
	return meets
}

// shippedJob reads a job that ships.
func shippedJob(t *testing.T, name string) survey.Job {
	data, err := os.ReadFile("../testdata/jobs/" + name)
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	return job
}

// A closed room of four walls: the last meets the first. By the setting order north runs into both its corners,
// east laps over north and runs into the other, west likewise, south laps over both; bed 5 and tile 8 are 13 mm
// behind a lap, and the gap is 3. Pieces, areas and overlaps are held by the geometry library.
func TestAClosedRoomOfFourWalls(t *testing.T) {
	data, err := os.ReadFile("../testdata/cases/closed-room.json")
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	solved, err := layout.Now(job)
	require.NoError(t, err)
	const mm = length.Millimetre
	for i, want := range []struct{ left, right, coverLeft, coverRight length.Length }{
		{3 * mm, 1242*mm - 3*mm, 13 * mm, 13 * mm},
		{16 * mm, 905*mm - 3*mm, 0, 13 * mm},
		{16 * mm, 1240*mm - 16*mm, 0, 0},
		{3 * mm, 902*mm - 16*mm, 13 * mm, 0},
	} {
		w := solved.Walls[i]
		assert.Equal(t, [2]int{(i + 3) % 4, (i + 1) % 4}, [2]int{w.Found.Left.Beyond, w.Found.Right.Beyond})
		assert.Equal(t, [2]length.Length{want.coverLeft, want.coverRight}, [2]length.Length{w.Found.Left.Cover, w.Found.Right.Cover}, w.Found.Name)
		box := w.Shape.Region.Bounds()
		assert.Equal(t, want.left, box.Left, w.Found.Name)
		if len(w.Found.Right.Lean) == 0 {
			assert.Equal(t, want.right, box.Right, w.Found.Name)
		}
	}
	p, _ := planOf(t, job)
	check(t, job, p)
	alike := 0
	for i := range solved.Walls { // the corner of the last wall and the first counts as the others do
		alike += courseWidthsAlike(solved.Walls[i], solved.Walls[(i+1)%4], solved.Room.Tile.Width+solved.Room.Joint)
	}
	assert.Equal(t, alike, int(solved.Setout.Merit.Alike))
	for wall, at := range map[string]int{"north": 700, "east": 333, "south": 21, "west": 610} { // pinned anywhere, the laws hold
		pinned := job
		pinEdge(&pinned, wall, length.Length(at)*mm)
		p, _ := planOf(t, pinned)
		check(t, pinned, p)
	}
}

// courseWidthsAlike counts the courses whose two visible widths at an inside corner are both under or both over
// half a pitch (merit.md, term 13).
func courseWidthsAlike(a, b layout.Wall, pitch length.Length) (n int) {
	right, left := map[int]length.Length{}, map[int]length.Length{}
	for _, p := range a.Pieces {
		if box := p.Visible.Bounds(); len(p.Visible) > 0 && box.Right > right[p.Row] { // the last of the course
			right[p.Row] = box.Right
		}
	}
	wide := func(w layout.Wall, end func(box [2]length.Length, row int) bool) map[int]length.Length {
		out := map[int]length.Length{}
		for _, p := range w.Pieces {
			if box := p.Visible.Bounds(); len(p.Visible) > 0 && end([2]length.Length{box.Left, box.Right}, p.Row) {
				out[p.Row] = p.Wide
			}
		}
		return out
	}
	for _, p := range b.Pieces {
		if box := p.Visible.Bounds(); len(p.Visible) > 0 {
			if x, seen := left[p.Row]; !seen || box.Left < x {
				left[p.Row] = box.Left
			}
		}
	}
	last := wide(a, func(box [2]length.Length, row int) bool { return box[1] == right[row] })
	first := wide(b, func(box [2]length.Length, row int) bool { return box[0] == left[row] })
	for row, x := range last {
		if y, both := first[row]; both && (2*x > pitch && 2*y > pitch || 2*x < pitch && 2*y < pitch) {
			n++
		}
	}
	return n
}

// What would help never moves the end at an outside corner, and all of it can be taken.
func TestNothingThatHelpsMovesAnOutsideCorner(t *testing.T) {
	job := shippedJob(t, "half-wall.json")
	job.Walls = job.Walls[2:]
	told := 0
	for _, width := range []string{"19 1/2", "21", "22 3/4"} {
		face := &job.Walls[0]
		face.Left, face.Width, face.Base[0].Readings[1].At = survey.End{Stops: &survey.Mark{At: "0"}}, width, width
		job.Pins.Walls = map[string]survey.WallPin{"half wall": {Edge: "1"}, "panel": {Edge: "1"}}
		now, err := layout.Now(job)
		require.NoError(t, err)
		help, err := layout.Remedies(context.Background(), job, now)
		require.NoError(t, err)
		all := help.Remedies
		told += len(all)
		for _, r := range all {
			checkRemedy(t, job, now, r)
			for _, u := range r.Use {
				assert.NotContains(t, u.Path, "walls[0].right", r.Text)
				assert.NotContains(t, u.Path, "walls[1].left", r.Text)
			}
		}
	}
	assert.Positive(t, told)
}

// Two pieces out of one tile leave room for the tilted cut: 145 and 150 with a kerf of 3 fill a tile of 298 mm to
// the millimetre. Where the 145 is mitred at its cut edge the cut takes 3 / cos 45° = 4.243 of the face, so that only two
// of 145 come out of one tile: 290 + 3 + 2 × 1.243.
func TestAMitredCutTakesMoreOfTheTile(t *testing.T) {
	for how, pairs := range map[string]int{"mitre": 9, "bullnose": 18} {
		job := shippedJob(t, "boxing.json")
		job.Walls, job.Bond = job.Walls[1:3], survey.Bond{Kind: "stack"}
		cheek, front := &job.Walls[0], &job.Walls[1]
		cheek.Left, cheek.Right.Corner = survey.End{Stops: &survey.Mark{At: "0"}}, how
		for w, width := range map[*survey.Wall]string{cheek: "134", front: "139"} {
			w.Width, w.Base[0].Readings[1].At, w.Head.Readings[1].At = width, width, width
		}
		front.Right = survey.End{Stops: &survey.Mark{At: "139"}}
		job.Pins.Walls = map[string]survey.WallPin{"cheek": {Edge: "0"}, "front": {Edge: "-11"}}
		if how == "bullnose" { // the front laps, 11 mm out; the cheek goes on to a joint from its back, 4 - 2
			cheek.Right.Laps = "right"
			cheek.Width, cheek.Base[0].Readings[1].At, cheek.Head.Readings[1].At = "143", "143", "143"
		}
		p, err := layout.Now(job)
		require.NoError(t, err)
		require.Equal(t, 145*length.Millimetre, p.Walls[0].Shape.Region.Bounds().Width(), how)
		require.Equal(t, 150*length.Millimetre, p.Walls[1].Shape.Region.Bounds().Width(), how)
		s := cuts.Of(cuts.Input{Room: p.Room, Walls: p.Walls}, cuts.Settings{Kerf: 3 * length.Millimetre, Turn: true})
		assert.Len(t, s.Offcuts.Pairs, pairs, how)
	}
}

// A profile stands at the corner once, for both walls: of the half wall, 33 1/4 in down and tiled to 3 7/8 under a trim that
// stands over it, one bar of 8 ft, cut to length; the room has no other edge with it.
func TestAProfileIsBoughtOnce(t *testing.T) {
	job := shippedJob(t, "half-wall.json")
	job.Trims = append(job.Trims, survey.TrimTile{Name: "brass", Kind: "profile", Width: "1/8"})
	job.Walls[2].Right = survey.End{Meets: "outside corner", Corner: "profile", Trim: "brass"}
	p, err := layout.Now(job)
	require.NoError(t, err)
	var long []length.Length
	for _, q := range p.Trim() {
		if q.Trim.Name == "brass" {
			long = append(long, q.Long)
		}
	}
	const in = length.Inch
	// From the shower base and its gap, 33 1/8 under the line, to the tile's end at 3 7/8 over it.
	assert.Equal(t, []length.Length{33*in + in/8 + 3*in + 7*in/8}, long)
	for _, l := range takeoff.Of(takeoff.Input{Room: p.Room, Walls: p.Walls}, takeoff.For(p.Room)).Lines {
		if l.Item == "profile brass" {
			assert.Equal(t, 1, l.Count)
			return
		}
	}
	assert.Fail(t, "no bar is bought")
}

func pinEdge(job *survey.Job, wall string, at length.Length) {
	job.Pins.Walls = map[string]survey.WallPin{wall: {Edge: at.MillimetreText() + " mm"}}
}

// A plan names the tile edge on the wall round the corner with which the bond goes round: pinned there, every
// course does, whatever the corner is made with, and the named edge stays the same.
func TestTheBondGoesRoundWhereTheEdgeNamedIsPinned(t *testing.T) {
	for _, name := range []string{"half-wall.json", "boxing.json"} {
		for _, how := range []string{"lap", "mitre", "bullnose", "profile"} {
			job := shippedJob(t, name)
			job.Trims = append(job.Trims, survey.TrimTile{Name: "bar", Kind: "profile", Width: "3 mm"})
			for i := range job.Walls {
				if e := &job.Walls[i].Right; e.Meets == "outside corner" {
					*e = survey.End{Meets: e.Meets, Corner: how}
					if how == "profile" {
						e.Trim = "bar"
					}
				}
			}
			if name == "half-wall.json" {
				job.Walls[3].Laid = "bond" // single tiles have no courses that go on
			}
			free, err := layout.Now(job)
			require.NoError(t, err)
			c := its.Corners(free.Room, free.Walls)
			require.Len(t, c, 1)
			require.Greater(t, c[0].Courses, 10)

			pinEdge(&job, free.Walls[c[0].Before].Found.Name, free.Walls[c[0].Before].Start.Edge)
			job.Pins.Walls[free.Walls[c[0].After].Found.Name] = survey.WallPin{Edge: c[0].Edge.MillimetreText() + " mm"}
			pinned, err := layout.Now(job)
			require.NoError(t, err)
			d := its.Corners(pinned.Room, pinned.Walls)
			assert.Equal(t, d[0].Courses, d[0].Round, "%s, %s", name, how)
			assert.Equal(t, c[0].Edge, d[0].Edge, "%s, %s", name, how)
		}
	}
}

// Two mitred edges, by trigonometry: at 45° the back of a tile of 7 mm is 7 mm shorter, at 22.5° 7 tan 22.5° =
// 2.899; a kerf of 3 mm takes 3 / cos of the face. Every piece beside the corner is named, and no other.
func TestMitres(t *testing.T) {
	for _, angle := range []struct {
		text, bevel string
		degrees     float64
	}{{"", "45°", 45}, {"135", "22.5°", 22.5}, {"60", "60°", 60}, {"91", "44.5°", 44.5}} {
		job := shippedJob(t, "boxing.json")
		job.Walls[1].Right.Angle = angle.text
		p, err := layout.Now(job)
		require.NoError(t, err)
		s := cuts.Of(cuts.Input{Room: p.Room, Walls: p.Walls}, cuts.Settings{Kerf: 3 * length.Millimetre})
		require.Len(t, s.Mitres, 2)
		for k, m := range s.Mitres {
			w := p.Walls[1+k]
			assert.Equal(t, w.Found.Letter, m.Wall)
			assert.Equal(t, []string{"right", "left"}[k], m.End)
			assert.Equal(t, angle.bevel, m.Bevel)
			radians := angle.degrees * math.Pi / 180
			assert.InDelta(t, 7*960*math.Tan(radians), float64(m.Back), 0.6)
			assert.InDelta(t, 3*960/math.Cos(radians), float64(m.Kerf), 0.6)
			var beside []string
			for _, q := range w.Pieces {
				if box := q.Face.Bounds(); k == 0 && box.Right == w.Start.Placed.Right || k == 1 && box.Left == w.Start.Placed.Left {
					beside = append(beside, q.ID)
				}
			}
			assert.Equal(t, beside, m.Pieces)
			assert.NotEmpty(t, beside)
		}
		var table strings.Builder
		require.NoError(t, s.CSV(&table, p.Room.Units))
		assert.Equal(t, len(s.Mitres[0].Pieces), strings.Count(table.String(), "mitre right, "+angle.bevel))
		assert.Equal(t, len(s.Mitres[1].Pieces), strings.Count(table.String(), "mitre left, "+angle.bevel))
	}
	p, err := layout.Now(shippedJob(t, "half-wall.json"))
	require.NoError(t, err)
	assert.Empty(t, cuts.Of(cuts.Input{Room: p.Room, Walls: p.Walls}, cuts.Usual(p.Room.Units)).Mitres)
}

// Under a mitred cap the head of the end of a half wall is mitred as that of its face, and listed.
// Found on a half wall tiled all round.
func TestTheEndUnderAMitredCapIsMitred(t *testing.T) {
	job := shippedJob(t, "half-wall.json")
	for i := range job.Walls[2:] {
		job.Walls[2+i].Head.Trim = ""
	}
	job.Walls[2].Top = &survey.Top{Kind: "cap", Depth: "5 7/8", Corner: "mitre"}
	p, err := layout.Now(job)
	require.NoError(t, err)
	s := cuts.Of(cuts.Input{Room: p.Room, Walls: p.Walls}, cuts.Usual(p.Room.Units))
	heads := map[string]int{}
	for _, m := range s.Mitres {
		if m.End == "head" {
			heads[m.Wall] = len(m.Pieces)
		}
	}
	for _, w := range p.Walls[2:] {
		high := 0
		for _, q := range w.Pieces {
			if q.Face.Bounds().Top == w.Start.Placed.Head {
				high++
			}
		}
		assert.Equal(t, high, heads[w.Found.Letter], w.Found.Name)
		assert.NotZero(t, high)
	}
}

// The plan file says what stands at an outside corner; one of a job without any has none of its fields.
func TestThePlanFileOfAnOutsideCorner(t *testing.T) {
	of := func(name string) (doc struct {
		Outside []struct {
			Before, After, Is, Laps string
			Angle                   int
			Past                    float64
		}
		Mitres []struct {
			Wall, End, Bevel string
			Back             float64
		}
		Takeoff []struct{ Item string }
	}) {
		p, err := layout.Now(shippedJob(t, name))
		require.NoError(t, err)
		file, err := p.File()
		require.NoError(t, err)
		require.NoError(t, json.Unmarshal(file, &doc))
		return doc
	}
	half := of("half-wall.json")
	require.Len(t, half.Outside, 1)
	assert.Equal(t, "half wall, panel, bullnose, half wall", half.Outside[0].Before+", "+half.Outside[0].After+", "+half.Outside[0].Is+", "+half.Outside[0].Laps)
	assert.Equal(t, 12.7, half.Outside[0].Past, "3/16 + 5/16 in")
	assert.Empty(t, half.Mitres)

	box := of("boxing.json")
	require.Len(t, box.Outside, 1)
	assert.Equal(t, 90, box.Outside[0].Angle)
	assert.Equal(t, 11.0, box.Outside[0].Past, "bed 4, tile 7")
	require.Len(t, box.Mitres, 2)
	assert.Equal(t, "cheek right 45°", box.Mitres[0].Wall+" "+box.Mitres[0].End+" "+box.Mitres[0].Bevel)
	assert.Equal(t, "front left 45°", box.Mitres[1].Wall+" "+box.Mitres[1].End+" "+box.Mitres[1].Bevel)
	assert.Equal(t, 7.0, box.Mitres[1].Back)
	without := of("alcove.json")
	assert.Empty(t, without.Outside)
	assert.Empty(t, without.Mitres)
}
