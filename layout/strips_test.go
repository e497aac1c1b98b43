package layout_test

import (
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"

	"coursewright/layout"
	"coursewright/layout/keep"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func demo(t *testing.T) survey.Job {
	t.Helper()
	data, err := os.ReadFile("../static/demo.json")
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	return job
}

// slate is a strip of three columns of two-inch tile.
func slate(middle survey.Mark) survey.Strip {
	return survey.Strip{Name: "slate", Columns: 3, Middle: middle,
		Tile: survey.Tile{Width: "1 7/8", Height: "1 7/8", Thickness: "1/4", Box: &survey.Box{Count: 60, Price: "12.50"}}}
}

// strippedPlan is a plan with strips, as its file says it.
type strippedPlan struct {
	Proven bool
	Course struct{ Line, Pitch float64 }
	Walls  []struct {
		Name   string
		Region [][][2]float64
		Anew   []struct{ From, X float64 }
		Pieces []strippedPiece
		Strips []struct {
			Name, Letter      string
			Left, Right, Line float64
			Region            [][][2]float64
			Pieces            []strippedPiece
		}
	}
	Takeoff []struct {
		Item       string
		Net, Boxes int
		Price      float64
	}
}

type strippedPiece struct {
	ID     string
	Course int
	Whole  bool
	Tile   [4]float64
	Face   [][][2]float64
	Cuts   []string
}

func stripped(t *testing.T, job survey.Job) strippedPlan {
	t.Helper()
	p, err := layout.Now(job)
	require.NoError(t, err)
	file, err := p.File()
	require.NoError(t, err)
	var out strippedPlan
	require.NoError(t, json.Unmarshal(file, &out))
	return out
}

// A strip from base to head has whole tile beside it on both sides: in running bond in
// one course of two, and its own columns are whole. Widths by hand: three tiles of
// 1 7/8 in with two joints of 1/8 in are 5 7/8 in.
func TestAStripPartsTheField(t *testing.T) {
	for name, middle := range map[string]survey.Mark{"measured": {At: "19 3/4"}, "free": {From: "16", To: "22"}} {
		job := demo(t)
		job.Walls[0].Strips = []survey.Strip{slate(middle)}
		p := stripped(t, job)
		w := p.Walls[0]
		require.Len(t, w.Strips, 1, name)
		s, joint := w.Strips[0], 25.4/8
		assert.InDelta(t, 5.875*25.4, s.Right-s.Left, 0.002)
		if name == "measured" {
			assert.InDelta(t, 19.75*25.4, (s.Left+s.Right)/2, 0.04, "its middle, to half a mark of 1/960 mm and the halves of joints")
		}
		left, right, all := map[int]bool{}, map[int]bool{}, map[int]bool{}
		for _, q := range w.Pieces {
			require.True(t, q.Tile[2] < s.Left || q.Tile[0] > s.Right || len(q.Cuts) > 0, "%s is cut where the strip stands", q.ID)
			if q.Tile[1] < -38*25.4 {
				continue // of the leg, where the rim ends the field on the other side
			}
			all[q.Course] = true
			left[q.Course] = left[q.Course] || at(q.Tile[2], s.Left-joint)
			right[q.Course] = right[q.Course] || at(q.Tile[0], s.Right+joint)
		}
		n := 0
		for c := range all {
			assert.Equal(t, left[c], right[c], "course %d has whole tile on both sides or on neither", c)
			if left[c] {
				n++
			}
		}
		assert.InDelta(t, len(all)/2, n, 1, "%s: one course of two has whole tile beside the strip", name)
		for _, q := range s.Pieces {
			assert.InDelta(t, 1.875*25.4, q.Tile[2]-q.Tile[0], 0.002)
			require.True(t, q.Tile[0] > s.Left-0.002 && q.Tile[2] < s.Right+0.002, q.ID)
		}
		assert.Equal(t, name == "measured", p.Proven, name)
	}
}

// A strip that may stand anywhere near the middle of a wall between two corners leaves both
// the same (merit.md, term 8: the ends of the wall are alike, though a strip parts it), and an
// end that stops keeps its full tiles, though the other end of the wall is beyond a strip (term 5).
func TestTheEndsOfAPartedWallAreThoseOfTheWall(t *testing.T) {
	job := demo(t)
	job.Bond = survey.Bond{Kind: "stack"}
	job.Walls[1].Openings = nil
	job.Walls[1].Strips = []survey.Strip{slate(survey.Mark{From: "25", To: "33"})}
	p, err := layout.Now(job)
	require.NoError(t, err)
	end := func(side plane.Side) (least length.Length) {
		for _, q := range p.Walls[1].Pieces {
			if slices.Contains(q.Cuts, side) && (least == 0 || q.Wide < least) {
				least = q.Wide
			}
		}
		return least
	}
	assert.Zero(t, p.Setout.Merit.Mirror)
	assert.InDelta(t, float64(end(survey.SideLeft)), float64(end(survey.SideRight)), float64(p.Room.Tape))

	job = demo(t)
	job.Walls[0].Left.Stops = &survey.Mark{At: "2"}
	job.Walls[0].Strips = []survey.Strip{slate(survey.Mark{From: "16", To: "24"})}
	p, err = layout.Now(job)
	require.NoError(t, err)
	assert.Zero(t, p.Setout.Merit.Exposed)
	assert.True(t, slices.ContainsFunc(p.Walls[0].Pieces, func(q piece.Piece) bool { return q.Whole && q.Tile.Left == 2*length.Inch }), "full tiles at the outer end")
}

// A strip that may have two to four columns takes as many as suit the wall, and no number of
// them that is measured is better. By hand: beside columns of 2 in with joints of 1/8 in, in stack bond
// of 6 in, a strip of 3 columns (6 1/4 in between joints) moves the joints by 1/4 in, one of two by 2 1/8 in.
func TestAStripTakesAsManyColumnsAsSuit(t *testing.T) {
	for name, change := range map[string]func(*survey.Strip){"parting": func(*survey.Strip) {}, "between heights": func(s *survey.Strip) {
		s.Bottom, s.Top = &survey.Mark{At: "-20"}, &survey.Mark{At: "5"}
	}} {
		job := demo(t)
		s := slate(survey.Mark{From: "16", To: "19"})
		change(&s)
		s.Columns, s.MostColumns = 2, 4
		job.Walls[0].Strips = []survey.Strip{s}
		free, err := layout.Now(job)
		require.NoError(t, err)
		took := free.Walls[0].Found.Openings[len(free.Walls[0].Found.Openings)-1].Strip.Columns
		require.True(t, took >= 2 && took <= 4, name)
		assert.Len(t, free.Walls[0].Strips, 1)
		for n := 2; n <= 4; n++ {
			job.Walls[0].Strips[0].Columns, job.Walls[0].Strips[0].MostColumns = n, 0
			p, err := layout.Now(job)
			require.NoError(t, err)
			order, term := free.Setout.Order.Compare(&p.Setout.Merit, &free.Setout.Merit)
			assert.GreaterOrEqual(t, order, 0, "%s: %d columns are better in %s", name, n, term)
			if n == took {
				assert.True(t, keep.Same(p.Walls, free.Walls), name)
			}
		}
		job.Walls[0].Strips[0].Columns, job.Walls[0].Strips[0].MostColumns = 2, 4
		held, err := layout.Now(keep.Hold(job, keep.Of("", job, free.Setout, free.Walls)))
		require.NoError(t, err, name)
		assert.True(t, keep.Same(held.Walls, free.Walls), name)
	}
}

// Pieces of field and strip and the joints between them make up the wall: areas and
// overlaps by a general geometry library (simplefeatures).
func TestStripsConserveTheWall(t *testing.T) {
	between := slate(survey.Mark{From: "15", To: "22"})
	between.Bottom, between.Top = &survey.Mark{At: "-20"}, &survey.Mark{From: "5", To: "12"}
	low := slate(survey.Mark{At: "12"})
	low.Top = &survey.Mark{At: "4"}
	high := slate(survey.Mark{At: "12"})
	high.Bottom = &survey.Mark{From: "-6", To: "2"}
	for name, strip := range map[string]survey.Strip{"whole": slate(survey.Mark{From: "16", To: "22"}), "between": between, "from the base": low, "to the head": high} {
		for _, leg := range []string{"", "single"} {
			for _, bond := range []survey.Bond{{Kind: "running", Offset: "1/2"}, {Kind: "stack"}, {Kind: "running", Offset: "1/2", Along: "plumb"}, {Kind: "running", Offset: "1/3"}} {
				if leg != "" && (name != "whole" || bond.Along != "") {
					continue
				}
				job := demo(t)
				job.Bond = bond
				job.Walls[0].Strips = []survey.Strip{strip}
				job.Walls[0].Base[0].Leg = leg
				p := stripped(t, job)
				w := p.Walls[0]
				require.Len(t, w.Strips, 1)
				region, own := geometry(t, w.Region), geometry(t, w.Strips[0].Region)
				both, err := geom.Intersection(region, own)
				require.NoError(t, err)
				assert.Less(t, both.Area(), 0.5, "%s: the field ends beside the strip", name)
				sum, ids := 0.0, map[string]bool{}
				for _, part := range []struct {
					pieces []strippedPiece
					of     geom.Geometry
				}{{w.Pieces, region}, {w.Strips[0].Pieces, own}} {
					var faces []geom.Geometry
					for _, q := range part.pieces {
						require.False(t, ids[q.ID], q.ID)
						ids[q.ID] = true
						face := geometry(t, q.Face)
						sum += face.Area()
						outside, err := geom.Difference(face, part.of)
						require.NoError(t, err)
						require.Less(t, outside.Area(), 0.5, "%s %v: %s leaves its place", name, bond, q.ID)
						for k, other := range faces {
							if mayMeet(face, other) {
								both, err := geom.Intersection(face, other)
								require.NoError(t, err)
								require.Less(t, both.Area(), 0.5, "%s %v: %s and %s", name, bond, q.ID, part.pieces[k].ID)
							}
						}
						faces = append(faces, face)
					}
				}
				left := 1 - sum/(region.Area()+own.Area())
				assert.True(t, left > 0.02 && left < 0.09, "%s %v: %.3f of the wall is joints", name, bond, left)
			}
		}
	}
}

// What a strip costs beside the same room without: the aim is a third more at most.
func BenchmarkStrip(b *testing.B) {
	data, err := os.ReadFile("../static/demo.json")
	require.NoError(b, err)
	job, err := survey.Read(data)
	require.NoError(b, err)
	between := slate(survey.Mark{At: "12"})
	between.Bottom, between.Top = &survey.Mark{At: "-20"}, &survey.Mark{At: "5"}
	columns := slate(survey.Mark{From: "16", To: "22"})
	columns.Columns, columns.MostColumns = 2, 4
	for _, c := range []struct {
		name   string
		strips []survey.Strip
	}{{"without", nil}, {"measured", []survey.Strip{slate(survey.Mark{At: "19 3/4"})}}, {"free", []survey.Strip{slate(survey.Mark{From: "16", To: "22"})}}, {"between", []survey.Strip{between}}, {"columns", []survey.Strip{columns}}} {
		job.Walls[0].Strips = c.strips
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				if _, err := layout.Now(job); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// What tile keeps clear of a pipe may reach past a strip where the pipe itself does not:
// found by rooms of many parts, where the tile beside the strip was cut without its bite.
func TestAPipeInAStripBitesTheTileBesideIt(t *testing.T) {
	job := demo(t)
	job.Walls[1].Openings = nil
	job.Walls[1].Strips = []survey.Strip{slate(survey.Mark{At: "32"})}
	p, err := layout.Now(job)
	require.NoError(t, err)
	edge := p.Walls[1].Start.Placed.Openings[0].Right // where the tile beside the strip begins
	const across = 2 * length.Inch
	for _, past := range []length.Length{-length.Inch / 16, length.Inch / 16} { // the pipe's own edge
		at := edge + past - across/2
		with := job
		with.Walls = slices.Clone(job.Walls)
		with.Walls[1].Openings = []survey.Opening{{Kind: "pipe", Name: "valve", At: at.MillimetreText() + " mm", Height: &survey.Measure{Plain: "10"}, Diameter: "2"}}
		p, err := layout.Now(with)
		require.NoError(t, err)
		piecesMakeUp(t, &p.Walls[1])
		piecesMakeUp(t, &p.Walls[1].Strips[0].Wall)
		bitten := slices.ContainsFunc(p.Walls[1].Pieces, func(q piece.Piece) bool {
			return q.Kind&piece.Hole != 0 && q.Face.Bounds().Right > edge
		})
		assert.True(t, bitten, "%v past the strip", past)
	}
}

// A head that meets a ceiling is not asked to be measured, where a free strip leaves a room unproven.
func TestAFreeStripAsksForAHeadOnlyWhereThatIsFree(t *testing.T) {
	for _, meets := range []bool{false, true} {
		job := demo(t)
		job.Walls[2].Strips = []survey.Strip{slate(survey.Mark{From: "14", To: "20"})}
		if meets {
			job.Walls[2].Head = survey.Head{Meets: "ceiling", Gap: "1/8", Readings: []survey.Rise{{At: "0", Rise: "38"}, {At: "34", Rise: "38"}}}
		}
		p, err := layout.Quick(t.Context(), job)
		require.NoError(t, err)
		require.Contains(t, p.Setout.Bound, "Measure the strip")
		require.Equal(t, !meets, strings.Contains(p.Setout.Bound, "the head of its wall"))
	}
}

// Of rooms with strips too the walls that an edit leaves alone are kept, and with each number of columns: it changes nothing.
func TestAKeeperOfRoomsWithStrips(t *testing.T) {
	var keeper layout.Keeper
	job := demo(t)
	columns := slate(survey.Mark{From: "16", To: "22"})
	columns.Columns, columns.MostColumns = 2, 3
	for _, strip := range []survey.Strip{slate(survey.Mark{At: "19 3/4"}), columns, slate(survey.Mark{From: "16", To: "22"}), columns} {
		job.Walls[0].Strips = []survey.Strip{strip}
		want, err := layout.Quick(t.Context(), job)
		require.NoError(t, err)
		got, err := keeper.Quick(t.Context(), job)
		require.NoError(t, err)
		a, err := want.File()
		require.NoError(t, err)
		b, err := got.File()
		require.NoError(t, err)
		require.Equal(t, string(a), string(b), strip)
	}
}
