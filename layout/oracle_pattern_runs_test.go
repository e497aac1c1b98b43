package layout_test

import (
	"encoding/json"
	"math"
	"path/filepath"
	"slices"
	"testing"

	"coursewright/layout"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The oracle of the order of merit for tile in patterns, in fields and in bands beside courses. It reads the plan file
// alone and shares nothing with what lays and measures pieces: least widths are measured from the faces, runs are the
// least of the pieces that the same boundaries cut, and the terms of the runs are counted from these. Which boundaries cut
// a piece it takes in the plan's own words.

// patternPlan is what it reads.
type patternPlan struct {
	Merit struct {
		Fifths, Thirds int
		Runs           []float64
		OutOfSight     struct {
			Fifths, Thirds int
			Runs           []float64
		}
	}
	Walls []patternWall
}

type patternWall struct {
	Name   string
	Pieces []patternPiece
	Runs   []patternRun
}

type patternPiece struct {
	ID, Band string
	Whole    bool
	Face     shape
	Outline  [][2]float64
	Least    float64
	Wide     float64
	Cuts     []string
}

type patternRun struct {
	Edges            []string
	Way, Piece, Band string
	Class            int
	Share, Least     float64
	Sight            string
}

// leastWidth is the smallest distance between two parallel lines that hold some points: one of them runs along a side
// of what is stretched round them.
func leastWidth(points [][2]float64) float64 {
	least := math.Inf(1)
	for i, a := range points {
		for _, b := range points[i+1:] {
			x, y := b[0]-a[0], b[1]-a[1]
			long := math.Hypot(x, y)
			if long < 1e-9 {
				continue
			}
			low, high := 0.0, 0.0
			for _, p := range points {
				off := ((p[1]-a[1])*x - (p[0]-a[0])*y) / long
				low, high = min(low, off), max(high, off)
			}
			if low > -0.002 || high < 0.002 { // all on one side
				least = min(least, high-low)
			}
		}
	}
	return least
}

// seenOf is the ring without what the tile of the wall round the corner hides of it: the file says how wide the piece shows.
func (p *patternPiece) seenOf(ring [][2]float64) [][2]float64 {
	left, right := math.Inf(1), math.Inf(-1)
	for _, c := range ring {
		left, right = min(left, c[0]), max(right, c[0])
	}
	hidden := right - left - p.Wide
	if len(p.Face) > 1 || hidden < 3 {
		return ring
	}
	keep := func(c [2]float64) float64 { return right - hidden - c[0] }
	if slices.Contains(p.Cuts, "left") {
		keep = func(c [2]float64) float64 { return c[0] - left - hidden }
	}
	var out [][2]float64
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		from, to := keep(a), keep(b)
		if from >= 0 {
			out = append(out, a)
		}
		if from*to < 0 {
			at := from / (from - to)
			out = append(out, [2]float64{a[0] + at*(b[0]-a[0]), a[1] + at*(b[1]-a[1])})
		}
	}
	return out
}

// plain tells whether a piece is convex and all of it is seen: of others the pages leave open from where to where they
// are measured, where what is hidden leans, or corners that are cut into it are not square.
func (p *patternPiece) plain() bool {
	left, right := math.Inf(1), math.Inf(-1)
	for _, ring := range p.Face {
		for i, c := range ring {
			left, right = min(left, c[0]), max(right, c[0])
			before, after := ring[(i+len(ring)-1)%len(ring)], ring[(i+1)%len(ring)]
			if (c[0]-before[0])*(after[1]-c[1])-(c[1]-before[1])*(after[0]-c[0]) < -1e-3 {
				return false
			}
		}
	}
	return len(p.Face) == 1 && right-left-p.Wide < figured
}

// measured is the least width of what is seen of a piece: between two parallel lines that hold it, or at a corner that
// is cut into it, from there to a side that it faces.
func (p *patternPiece) measured() float64 {
	var all [][2]float64
	least := math.Inf(1)
	for _, ring := range p.Face {
		ring = p.seenOf(ring)
		all = append(all, ring...)
		for i, c := range ring {
			before, after := ring[(i+len(ring)-1)%len(ring)], ring[(i+1)%len(ring)]
			if (c[0]-before[0])*(after[1]-c[1])-(c[1]-before[1])*(after[0]-c[0]) < -1e-3 {
				least = min(least, fromCorner(ring, i))
			}
		}
	}
	return min(least, leastWidth(all))
}

// fromCorner is how near the sides of a ring are that a corner of it faces.
func fromCorner(ring [][2]float64, corner int) float64 {
	least, c := math.Inf(1), ring[corner]
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		x, y := b[0]-a[0], b[1]-a[1]
		long := math.Hypot(x, y)
		along := ((c[0]-a[0])*x + (c[1]-a[1])*y) / (long * long)
		off := ((c[1]-a[1])*x - (c[0]-a[0])*y) / long // inside is to the left
		if i != corner && (i+1)%len(ring) != corner && along >= 0 && along <= 1 && off > 0 {
			least = min(least, off)
		}
	}
	return least
}

// figured is what rounding to the unit and to the figures of the file may differ by, in mm.
const figured = 0.02

// checkPatternRuns reads the runs of tile in patterns back, and the terms that are counted from all runs. Of rooms
// other than those that ship it measures plain pieces alone. It gives how many it measured.
func checkPatternRuns(t require.TestingT, file []byte, tape float64, all bool) (measured int) {
	var p patternPlan
	require.NoError(t, json.Unmarshal(file, &p))
	var counted [2]struct {
		fifths, thirds int
		runs           []float64
	}
	for _, w := range p.Walls {
		pieces := map[string]*patternPiece{}
		for i := range w.Pieces {
			pieces[w.Pieces[i].ID] = &w.Pieces[i]
		}
		for _, r := range w.Runs {
			x := pieces[r.Piece]
			require.NotNil(t, x, "%s: the piece of a run is there", r.Piece)
			full := r.Least / r.Share
			if len(x.Outline) > 0 {
				full = leastWidth(x.Outline)
				if all || x.plain() {
					require.InDelta(t, x.measured(), r.Least, figured, "%s: least width", x.ID)
					measured++
				}
				require.InDelta(t, r.Least/full, r.Share, 1e-4, "%s: share", x.ID)
				leastOfRun(t, &w, &r, full)
			}
			low := 0
			if r.Sight != "plain" {
				low = 1
			}
			share := math.Floor((r.Least+0.001)/tape) * tape / full
			if share < 0.2-1e-5 {
				counted[low].fifths++
			}
			if share < 1.0/3-1e-5 {
				counted[low].thirds++
			}
			if share < 0.5-1e-5 {
				counted[low].runs = append(counted[low].runs, share)
			}
		}
	}
	o := &p.Merit.OutOfSight
	for low, said := range [...][2]int{{p.Merit.Fifths, p.Merit.Thirds}, {o.Fifths, o.Thirds}} {
		require.Equal(t, said, [2]int{counted[low].fifths, counted[low].thirds}, "runs under a fifth and a third")
		slices.Sort(counted[low].runs)
		require.InDeltaSlice(t, [][]float64{p.Merit.Runs, o.Runs}[low], counted[low].runs, 2e-5, "the runs")
	}
	return measured
}

// leastOfRun wants that no piece is narrower, as a part of its tile, that only the boundary of a run cuts. Which segment of
// a base, or which side of an opening, the word does not say.
func leastOfRun(t require.TestingT, w *patternWall, r *patternRun, full float64) {
	if len(r.Edges) != 1 || r.Edges[0] != "left" && r.Edges[0] != "right" && r.Edges[0] != "head" {
		return
	}
	for i := range w.Pieces {
		x := &w.Pieces[i]
		if !x.Whole && x.Band == r.Band && len(x.Outline) > 0 && slices.Equal(x.Cuts, r.Edges) && x.plain() {
			require.GreaterOrEqual(t, x.measured()/leastWidth(x.Outline), r.Least/full-1e-3, "%s is in the run of %v", x.ID, r.Edges)
		}
	}
}

// The plans of jobs that ship with tile in patterns state the runs of their pieces.
func TestPatternPlansStateTheRunsOfTheirPieces(t *testing.T) {
	files, err := filepath.Glob("../testdata/jobs/*.json")
	require.NoError(t, err)
	seen := 0
	for _, path := range files {
		job := shippedJob(t, filepath.Base(path))
		data, err := json.Marshal(job)
		require.NoError(t, err)
		if !laidInPattern(data) {
			continue
		}
		t.Run(filepath.Base(path), func(t *testing.T) { seen += readRuns(t, job, true) })
	}
	require.Greater(t, seen, 30)
}

func readRuns(t require.TestingT, job survey.Job, all bool) int {
	plan, err := layout.Now(job)
	require.NoError(t, err)
	file, err := plan.File()
	require.NoError(t, err)
	return checkPatternRuns(t, file, float64(plan.Room.Tape)/960, all)
}

// So do those of showers in patterns.
func TestShowersInPatternsStateTheRunsOfTheirPieces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		seed := rapid.IntRange(0, 199).Draw(t, "shower")
		if !rare(t, 8) {
			return
		}
		job, err := survey.Read(showerInPattern(t, seed))
		require.NoError(t, err)
		readRuns(t, job, false)
	})
}
