package layout_test

import (
	"fmt"
	"math/big"
	"slices"
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Published and customary figures, each solved as a job. The source and its
// grade stand beside each check, as in trade.md: A a standard, code or
// government text, B trade press or a maker, C a how-to page.

// bare is a job of one plain wall that tile fills from stop to stop.
func bare(units, width, height, tileWidth, tileHeight, joint string) survey.Job {
	return survey.Job{Format: survey.Format, Title: "values", Units: units,
		Tile: survey.Tile{Width: tileWidth, Height: tileHeight}, Joint: survey.Measure{Plain: joint}, Bond: survey.Bond{Kind: "stack"},
		Walls: []survey.Wall{plain("w", width, height)}}
}

func plain(name, width, height string) survey.Wall {
	return survey.Wall{Name: name, Width: width,
		Left: survey.End{Stops: &survey.Mark{At: "0"}}, Right: survey.End{Stops: &survey.Mark{At: width}},
		Base: level("0", "0"), Head: survey.Head{Stops: &survey.Mark{At: height}}}
}

func level(drop, gap string) []survey.Segment {
	return []survey.Segment{{Meets: "floor", Gap: gap, Readings: []survey.Drop{{At: "0", Drop: drop}}}}
}

func half(job survey.Job) survey.Job {
	job.Bond = survey.Bond{Kind: "running", Offset: "1/2"}
	return job
}

// cornered puts the first wall between two corners with a gap.
func cornered(job survey.Job, gap string) survey.Job {
	w := job.Walls[0]
	w.Left, w.Right = survey.End{Meets: "corner", Gap: gap}, survey.End{Meets: "corner", Gap: gap}
	job.Walls = []survey.Wall{w}
	return job
}

// lined pins the course line, started the start of the first wall.
func lined(job survey.Job, line string) survey.Job {
	job.Pins.Course.Line = line
	return job
}

func started(job survey.Job, joint, tile string) survey.Job {
	job.Pins.Walls = map[string]survey.WallPin{job.Walls[0].Name: {Joint: joint, Tile: tile}}
	return job
}

// course is the widths of one course of the first wall, in units of 1/960 mm.
func (p plan) course(k int) (wides []float64) {
	for _, piece := range p.Walls[0].Pieces {
		if piece.Course == k {
			wides = append(wides, units(piece.Wide))
		}
	}
	return wides
}

// cutPieces counts the pieces that are not whole tiles.
func (p plan) cutPieces() (n int) {
	for _, w := range p.Walls {
		for _, piece := range w.Pieces {
			if !piece.Whole {
				n++
			}
		}
	}
	return n
}

func inches(texts ...string) (out []float64) {
	for _, t := range texts {
		out = append(out, said(t, "in"))
	}
	return out
}

// trade.md, "Balanced ends", geometry: e = (L − 2g − n·t − (n+1)·j)/2; n odd is
// a tile on the centre, n even a joint.
func TestBalancedEnds(t *testing.T) {
	for _, c := range []struct {
		units, long, tile, joint, gap string
		n                             int
		end                           string
		otherN                        int
		other                         string
	}{
		{"in", "60", "4 1/4", "1/16", "1/8", 12, "3 31/32", 13, "1 13/16"},
		{"in", "60", "6", "1/8", "1/8", 8, "5 5/16", 9, "2 1/4"},
		{"in", "60", "12", "1/8", "1/8", 3, "11 5/8", 4, "5 9/16"},
		{"mm", "1500", "200", "2", "3", 6, "140", 7, "39"},
		{"mm", "1500", "298", "3", "3", 3, "294", 4, "143.5"},
	} {
		t.Run(c.long+" by "+c.tile, func(t *testing.T) {
			job := lined(cornered(bare(c.units, c.long, c.tile, c.tile, c.tile, c.joint), c.gap), "0")
			centre := new(big.Rat)
			centre.SetString(c.long)
			middle := centre.Quo(centre, big.NewRat(2, 1)).FloatString(1)
			ends := func(p plan, n int, end string) {
				got := p.course(1)
				require.Len(t, got, n+2)
				require.Equal(t, said(end, c.units), got[0])
				require.Equal(t, said(end, c.units), got[n+1])
			}
			best, _ := planOf(t, job)
			ends(best, c.n, c.end) // n whole tiles between equal ends: joint or tile on the centre, as n is even or odd
			require.Zero(t, best.Merit.Mirror)
			joint, tile := "", middle
			if c.otherN%2 == 0 {
				joint, tile = middle, ""
			}
			other, _ := planOf(t, started(job, joint, tile))
			ends(other, c.otherN, c.other)
		})
	}
}

// US Navy half-tile rule, NAVEDTRA 14044 (1994), p. 7-23, A: the end is
// (L − N·t + t)/2 with N the full tiles that fit, joints ignored.
func TestHalfTileRule(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tile := rapid.IntRange(60, 600).Draw(t, "tile")
		long := rapid.IntRange(2*tile, 2400).Filter(func(l int) bool { return l%tile != 0 }).Draw(t, "run")
		job := lined(bare("mm", fmt.Sprint(long), "100", fmt.Sprint(tile), "100", "0"), "0")
		p, _ := planOf(t, job)
		got := p.course(1)
		end := float64(long-long/tile*tile+tile) / 2 * perMM
		slack := 0.0
		if (long+tile)%2 != 0 {
			slack = perMM / 2 // the centre falls between two marks of the tape: half a step either way
		}
		require.InDelta(t, end, got[0], slack)
		require.InDelta(t, end, got[len(got)-1], slack)
	})
}

// CTEF example, B: tile 24 in, run 49 1/2 in, one full tile and 1 1/2 in left
// over a second → 12 3/4 + 24 + 12 3/4.
func TestLargeTileExample(t *testing.T) {
	p, _ := planOf(t, lined(bare("in", "49 1/2", "24", "24", "24", "0"), "0"))
	require.Equal(t, inches("12 3/4", "24", "12 3/4"), p.course(1))
	require.Equal(t, 2, p.cutPieces())
}

// UK brick sheet 9, B, unit 215 and joint 10: an opening has n+1 joints, a
// module n, a pier n−1. The last unit of a half count is (t − j)/2 = 102.5.
func TestCountingJoints(t *testing.T) {
	for _, c := range []struct {
		n                     int
		half                  bool
		opening, module, pier string
	}{
		{1, false, "235", "225", "215"},
		{2, false, "460", "450", "440"},
		{3, false, "685", "675", "665"},
		{4, true, "1022.5", "1012.5", "1002.5"},
		{34, false, "7660", "7650", "7640"},
		{67, true, "15197.5", "15187.5", "15177.5"},
	} {
		wall := func(width string, left, right bool) survey.Job {
			job := bare("mm", width, "65", "215", "65", "10")
			job.Limits.Sealant = "12"
			w, joint := &job.Walls[0], "-5"
			if left {
				w.Left, joint = survey.End{Meets: "corner", Gap: "10"}, "5"
			}
			if right {
				w.Right = survey.End{Meets: "corner", Gap: "10"}
			}
			return lined(started(job, joint, ""), "0")
		}
		for _, job := range []survey.Job{wall(c.pier, false, false), wall(c.module, true, false), wall(c.opening, true, true)} {
			t.Run(job.Walls[0].Width, func(t *testing.T) {
				p, _ := planOf(t, job)
				want := slices.Repeat([]float64{215 * perMM}, c.n)
				if c.half {
					want = append(want, 102.5*perMM)
				}
				require.Equal(t, want, p.course(1))
			})
		}
	}
}

// BIA Technical Note 10, B: three courses to 8 in: 18 → 4'-0", 36 → 8'-0", no
// drift. The table's five courses to 16 in, 25 → 6'-8", 50 → 13'-4", are a pitch
// of 3.2 in, which no reading of a tape is: with 2 13/16 in tile and 3/8 in joint
// 25 courses are 5/16 in short of the published height, and 50 are 5/8 in.
func TestStoryPole(t *testing.T) {
	for _, c := range []struct {
		tile    string
		courses int
		height  string
	}{
		{"2 7/24", 18, `4' 0"`}, {"2 7/24", 36, `8' 0"`},
		{"2 13/16", 25, `6' 7 11/16"`}, {"2 13/16", 50, `13' 3 3/8"`},
	} {
		t.Run(fmt.Sprintf("%d courses", c.courses), func(t *testing.T) {
			p, _ := planOf(t, lined(bare("in", "8", "170", "8", c.tile, "3/8"), "0"))
			for _, piece := range p.Walls[0].Pieces {
				if piece.Course == c.courses+1 {
					require.Equal(t, said(c.height, "in"), units(piece.Tile[1]))
					return
				}
			}
			t.Fatal("no such course")
		})
	}
}

// A how-to page, C: a 60 × 60 in wall on a module of 4 5/8 takes 13 × 13 = 169.
func TestCountOfASquareWall(t *testing.T) {
	p, _ := planOf(t, bare("in", "60", "60", "4 1/2", "4 1/2", "1/8"))
	require.Len(t, p.Walls[0].Pieces, 169)
	require.Zero(t, p.cutPieces(), "13 modules less one joint are 60 in")
}

// A how-to page, C: walls of 3, 6 and 3 ft by 10 ft in 4 × 8 in tile without
// joints take 30 × 18 = 540. That is the count by area. In geometry the 3 ft
// walls hold four and a half tiles each: 570 pieces, 60 of them halves, which
// are cut two from a tile, so 540 tiles all the same.
func TestCountOfThreeWalls(t *testing.T) {
	job := bare("in", "36", "120", "8", "4", "0")
	job.Walls = []survey.Wall{plain("left", "36", "120"), plain("back", "72", "120"), plain("right", "36", "120")}
	job.Pins.Walls = map[string]survey.WallPin{"left": {Joint: "0"}, "back": {Joint: "0"}, "right": {Joint: "0"}}
	p, _ := planOf(t, lined(job, "0"))
	pieces, tiles := 0, 0.0
	for _, w := range p.Walls {
		for _, piece := range w.Pieces {
			pieces++
			tiles += piece.Wide * piece.High / (8 * 25.4 * 4 * 25.4)
		}
	}
	require.Equal(t, 570, pieces)
	require.Equal(t, 60, p.cutPieces())
	require.InDelta(t, 540, tiles, 1e-6)
}

// Common practice, no source: tile 16 × 4 in, joint 1/16 in, half bond, a 59 in
// wall between boards, its centre at 29 1/2: either centring is free of slivers.
func TestEitherCentringOfAHalfBond(t *testing.T) {
	job := lined(half(cornered(bare("in", "59", "16 3/16", "16", "4", "1/16"), "1/8")), "0")
	for _, pin := range [][2]string{{"29 1/2", ""}, {"", "29 1/2"}} {
		p, _ := planOf(t, started(job, pin[0], pin[1]))
		require.Zero(t, p.Merit.Slivers)
		require.Zero(t, p.Merit.Bare)
		require.Zero(t, p.Merit.Mirror)
		// Geometry: (59 − 2/8 − 2·16 − 3/16)/2 and half a pitch less.
		require.Equal(t, []float64{said("13 9/32", "in"), said("5 1/4", "in")}, ends(p, pin[0] == ""))
	}
}

// ends are the end cuts of the course with two whole tiles, then of the other.
func ends(p plan, tileFirst bool) []float64 {
	a, b := p.course(1)[0], p.course(2)[0]
	if tileFirst {
		a, b = b, a
	}
	return []float64{a, b}
}

// Common practice, no source: an end wall with the stop 32 in from the corner:
// two 16 in tiles, or half–whole–half, with the centre at 16. Joints ignored.
func TestEndWallOfTwoTiles(t *testing.T) {
	job := lined(half(bare("in", "32", "8", "16", "4", "0")), "0")
	p, _ := planOf(t, job)
	require.Zero(t, p.Merit.Slivers)
	require.Equal(t, 0.5, p.Smallest.Share)
	courses := [][]float64{p.course(1), p.course(2)}
	require.ElementsMatch(t, [][]float64{inches("16", "16"), inches("8", "16", "8")}, courses)
}

// Common practice, no source: level line to rim 3 7/8, 3 7/8, 3 7/8, 3 3/4 and
// 3 1/2 in at successive corners: a full tile at 3 7/8, up to 3/8 in off elsewhere.
func TestFirstCourseOverARakedRim(t *testing.T) {
	job := bare("in", "30", "20", "4", "4", "1/8")
	drops := []string{"3 7/8", "3 7/8", "3 7/8", "3 3/4", "3 1/2"}
	job.Walls = nil
	for i := range 4 {
		w := plain(fmt.Sprint("wall ", i+1), "30", "20")
		w.Base = []survey.Segment{{Meets: "tub", Gap: "1/8", Readings: []survey.Drop{{At: "0", Drop: drops[i]}, {At: "30", Drop: drops[i+1]}}}}
		job.Walls = append(job.Walls, w)
	}
	p, _ := planOf(t, lined(job, "-3 3/4")) // the gap over the low rim
	require.Zero(t, p.Merit.Bare)
	for i, most := range []string{"0", "0", "1/8", "3/8"} {
		least := said("4", "in")
		for _, piece := range p.Walls[i].Pieces {
			if piece.Course == 1 {
				least = min(least, units(piece.High))
			}
		}
		require.InDelta(t, said("4", "in")-said(most, "in"), least, 1, "wall %d", i+1)
	}
}

// Common practice, no source: a niche with 4 in courses, five up to its sill and
// four high: 20 and 16 in without joints. With joints of 1/16 the sill is five
// tiles and four joints up, and the hole, from tile edge to tile edge, is four
// tiles and five joints high.
func TestNicheOfWholeCourses(t *testing.T) {
	for _, c := range []struct{ joint, sill, top string }{{"0", "20", "36"}, {"1/16", "20 1/4", "36 9/16"}} {
		t.Run("joint "+c.joint, func(t *testing.T) {
			job := lined(bare("in", "60", "48", "4", "4", c.joint), "0")
			job.Walls[0].Openings = []survey.Opening{{Kind: "niche", Name: "n", Left: &survey.Mark{From: "20", To: "26"}, Width: &survey.Mark{From: "11", To: "14 1/2"},
				Bottom: &survey.Mark{From: "18 1/2", To: "22"}, Height: &survey.Measure{Mark: &survey.Mark{From: "14 1/2", To: "18"}}}}
			p, _ := planOf(t, job)
			e := p.Walls[0].Marks.edges("niche n")
			require.Equal(t, inches(c.sill, c.top), []float64{e[1], e[3]})
			require.Zero(t, p.Merit.Openings)
		})
	}
}

// Geometry: in a half bond both centrings have the same two kinds of course. In
// a 67 in run of 16 in tile without joints one of them ends in 1 1/2 in; a quarter
// tile off the centre the least end is 5 1/2 in, and nothing does better.
func TestQuarterCentredHalfBond(t *testing.T) {
	job := lined(half(bare("in", "67", "16", "16", "4", "0")), "0")
	for _, pin := range [][2]string{{"33 1/2", ""}, {"", "33 1/2"}} {
		p, _ := planOf(t, started(job, pin[0], pin[1]))
		require.InDelta(t, 1.5/16, p.Smallest.Share, 1e-6)
		require.Equal(t, 4, p.Merit.Slivers)
	}
	p, _ := planOf(t, job)
	require.InDelta(t, 5.5/16, p.Smallest.Share, 1e-6)
	require.Zero(t, p.Merit.Slivers)
	require.Zero(t, p.Merit.Mirror)
	quarter := [][]float64{inches("5 1/2", "16", "16", "16", "13 1/2"), inches("13 1/2", "16", "16", "16", "5 1/2")}
	require.ElementsMatch(t, quarter, [][]float64{p.course(1), p.course(2)}, "a quarter of a tile off the centre")
}
