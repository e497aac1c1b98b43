package layout_test

// The reader of terms 5, 6, 11 and 16 for rooms laid in patterns. It knows no lattice: it
// reads the uncut tiles of all pieces from the plan file and looks which of their edges lie
// on one line. A joint line is one of which edges that face one way make up a tenth or more,
// again and again; over a wall of a few repeats that is a tenth of its height, more or less,
// so lines between a fifteenth and a fifth of it are passed over.

import (
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"slices"
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// lineJudge is one wall of a plan in a pattern, as far as its joint lines go. Lengths are in
// units of 1/960 mm.
type lineJudge struct {
	tiles      []block    // uncut tiles with a piece on the wall
	long       [2]float64 // how long a line across (plumb) and up (level) is
	joint      float64
	first      block // the tile that is struck, if it has a piece
	struck     bool
	line, edge float64
}

// What a line may be.
const (
	noLine  = 0
	aLine   = 1
	perhaps = -1
)

// along is how much of a plumb line at x (of a level one at y) is made of edges that end
// tiles there, or begin them; nothing where none of them reaches it, or one beyond it.
func (j *lineJudge) along(way int, at float64, ends bool) (sum float64) {
	const give = 0.5 * perMM // what a pattern may lack to close
	farthest := math.Inf(-1)
	for _, b := range j.tiles {
		low, top := b.low, b.top
		for i, c := range b.corners {
			d := b.corners[(i+1)%len(b.corners)]
			u, v, from, to := c.x, d.x, c.y, d.y
			lowest, highest := low.x, top.x
			if way == wayUp {
				u, v, from, to = c.y, d.y, c.x, d.x
				lowest, highest = low.y, top.y
			}
			if u == v && (u == highest) == ends && (u == lowest) != ends && math.Abs(u-at) <= give {
				sum += math.Abs(from - to)
				beyond := u - at
				if !ends {
					beyond = -beyond
				}
				farthest = max(farthest, beyond)
			}
		}
	}
	if farthest != 0 {
		return 0
	}
	return sum
}

func (j *lineJudge) isLine(way int, at float64, ends bool) int {
	switch part := j.along(way, at, ends) / j.long[way]; {
	case part >= 1.0/5:
		return aLine
	case part <= 1.0/15:
		return noLine
	}
	return perhaps
}

// lined tells whether the pattern has lines at all that run this way.
func (j *lineJudge) lined(way int) int {
	best := noLine
	for _, b := range j.tiles {
		at := b.top.x
		if way == wayUp {
			at = b.top.y
		}
		switch j.isLine(way, at, true) {
		case aLine:
			return aLine
		case perhaps:
			best = perhaps
		}
	}
	return best
}

// cuts are the sizes that a line leaves of the tiles that it cuts, on one side, each size of
// each tile once, as parts of it.
func (j *lineJudge) cuts(way int, at float64, before bool) (out [][2]float64) {
	for _, b := range j.tiles {
		from, to := b.low.x, b.top.x
		if way == wayUp {
			from, to = b.low.y, b.top.y
		}
		if from < at && at < to {
			left := at - from
			if !before {
				left = to - at
			}
			out = append(out, [2]float64{left, to - from})
		}
	}
	slices.SortFunc(out, func(a, b [2]float64) int { return slices.Compare(a[:], b[:]) })
	return slices.Compact(out)
}

// centred tells whether a joint line, or the struck tile or the joint before it, stands on the
// middle of the tile field.
func (j *lineJudge) centred(middle float64) int {
	on := func(x float64) bool { return math.Abs(x-middle) <= 0.5 }
	for _, b := range j.tiles {
		if !j.struck || b.low.y != j.line || !sameShape(b, j.first) {
			continue
		}
		if on((b.low.x+b.top.x)/2) || on(b.low.x-j.joint/2) {
			return aLine
		}
	}
	best := noLine
	for _, b := range j.tiles {
		if on(b.low.x - j.joint/2) {
			switch j.isLine(wayAcross, b.low.x, false) {
			case aLine:
				return aLine
			case perhaps:
				best = perhaps
			}
		}
	}
	if best == noLine && !j.struck {
		return perhaps
	}
	return best
}

func sameShape(a, b block) bool {
	return slices.EqualFunc(a.corners, b.corners, func(p, q xy) bool { return p.x-a.low.x == q.x-b.low.x && p.y-a.low.y == q.y-b.low.y })
}

// linedWall reads a wall of a plan.
func linedWall(t require.TestingT, file []byte, wall int, joint float64) *lineJudge {
	var p struct {
		Course struct{ Line float64 }
		Walls  []struct {
			Starts []struct {
				Is   string
				Edge float64
			}
			Region shape
			Pieces []struct{ Outline [][2]float64 }
		}
	}
	require.NoError(t, json.Unmarshal(file, &p))
	w := p.Walls[wall]
	j := &lineJudge{joint: joint, line: units(p.Course.Line)}
	for _, s := range w.Starts {
		if s.Is == "best" {
			j.edge = units(s.Edge)
		}
	}
	for _, piece := range w.Pieces {
		var corners []xy
		for _, c := range piece.Outline {
			corners = append(corners, xy{units(c[0]), units(c[1])})
		}
		b := blockOf(corners)
		if j.tiles = append(j.tiles, b); b.low.x == j.edge && b.low.y == j.line {
			j.first, j.struck = b, true
		}
	}
	low, top := xy{math.Inf(1), math.Inf(1)}, xy{math.Inf(-1), math.Inf(-1)}
	for _, ring := range w.Region {
		for _, c := range ring {
			low, top = xy{min(low.x, units(c[0])), min(low.y, units(c[1]))}, xy{max(top.x, units(c[0])), max(top.y, units(c[1]))}
		}
	}
	j.long = [2]float64{top.y - low.y, top.x - low.x}
	return j
}

// linedRoom is a wall whose left end is exposed, with a built niche and one that is free,
// each pinned or measured at the places of at: the end, the edges of the built niche and
// those of the free one.
func linedRoom(kind object, tile object, start, line string, at [9]float64) object {
	mark := func(n float64) object { return object{"at": exactly(n)} }
	free := func(n float64) object { return object{"from": exactly(n - 2*perMM), "to": exactly(n + 2*perMM)} }
	return object{"format": "coursewright-job/1", "units": "mm", "tile": tile, "joint": "3", "bond": kind,
		"walls": []object{{"name": "a", "width": "2000", "left": object{"stops": mark(at[0]), "finish": "trim"}, "right": object{"meets": "corner", "gap": "3"},
			"base": []object{{"meets": "tub", "gap": "3", "readings": []object{{"at": "0", "drop": "1500"}, {"at": "2000", "drop": "1500"}}}},
			"head": object{"stops": object{"at": "400"}, "finish": "trim"},
			"openings": []object{
				{"kind": "niche", "name": "built", "left": mark(at[1]), "width": mark(at[2] - at[1]), "bottom": mark(at[3]), "height": mark(at[4] - at[3])},
				{"kind": "niche", "name": "free", "left": free(at[5]), "width": mark(at[6] - at[5]), "bottom": free(at[7]), "height": mark(at[8] - at[7])},
			}}},
		"pins": object{"course": object{"line": line}, "walls": object{"a": object{"edge": start,
			"marks": object{"niche free left": exactly(at[5]), "niche free bottom": exactly(at[7])}}}}}
}

// Terms 5, 6, 11 and 16 of rooms in every pattern are those read back from the tiles of
// their plan files, with ends and openings on the edges of tiles and off them.
func TestOracleReadsTheJointLinesOfPatterns(t *testing.T) {
	tile := func(w, h string) object { return object{"width": w, "height": h, "thickness": "8"} }
	sizes := func(all ...string) (out []object) {
		for i := 0; i < len(all); i += 2 {
			out = append(out, object{"width": all[i], "height": all[i+1]})
		}
		return out
	}
	patterns := map[string][2]object{
		"diagonal":            {object{"kind": "diagonal"}, tile("100", "100")},
		"herringbone on grid": {object{"kind": "herringbone"}, tile("153", "75")},
		"herringbone":         {object{"kind": "herringbone"}, tile("151", "76")},
		"double herringbone":  {object{"kind": "double herringbone"}, tile("250", "60")},
		"basket weave":        {object{"kind": "basket weave"}, tile("153", "75")},
		"basket with dot":     {object{"kind": "basket weave", "tiles": sizes("40", "40")}, tile("156", "70")},
		"hexagon":             {object{"kind": "hexagon"}, tile("120", "120")},
		"flat hexagon":        {object{"kind": "hexagon", "along": "plumb"}, tile("120", "120")},
		"picket":              {object{"kind": "picket"}, tile("75", "200")},
		"chevron":             {object{"kind": "chevron"}, tile("200", "60")},
		"mixed heights":       {object{"kind": "mixed heights", "offset": "1/2", "tiles": sizes("200", "40")}, tile("200", "90")},
		"pinwheel":            {object{"kind": "pinwheel", "tiles": sizes("97", "97")}, tile("147", "147")},
		"modular":             {object{"kind": "modular", "tiles": sizes("157", "77", "157", "157", "237", "157")}, tile("77", "77")},
	}
	read := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom(slices.Sorted(maps.Keys(patterns))).Draw(t, "pattern")
		p := patterns[name]
		number := func(what string, low, high int) float64 {
			return float64(rapid.IntRange(low*960, high*960).Draw(t, what))
		}
		start, line := exactly(number("start", 900, 1100)), exactly(number("line", -600, -400))
		if rapid.IntRange(0, 3).Draw(t, "on the middle") == 0 {
			start = "1001.5 mm" // the joint before it is on the middle of the field
		}
		at := [9]float64{perMM * 3, 500 * perMM, 800 * perMM, -900 * perMM, -700 * perMM, 1200 * perMM, 1500 * perMM, -300 * perMM, 100 * perMM}
		solved := func() (*lineJudge, meritDoc) {
			job, err := json.Marshal(linedRoom(p[0], p[1], start, line, at))
			require.NoError(t, err)
			read, err := survey.Read(job)
			require.NoError(t, err)
			_, file := planOf(t, read)
			var m struct{ Merit meritDoc }
			require.NoError(t, json.Unmarshal(file, &m))
			return linedWall(t, file, 0, 3*perMM), m.Merit
		}
		before, _ := solved()
		// Move ends and edges onto the edges of tiles, most times.
		for i := range at {
			from, to := at[i]-60*perMM, at[i]+60*perMM
			if i == 0 {
				from, to = 0, 120*perMM
			}
			var edges []float64
			for _, b := range before.tiles {
				x := [4]float64{b.low.x, b.top.x, b.low.y, b.top.y}
				way := 0
				if i > 0 && (i-1)%4 >= 2 {
					way = 2
				}
				begins := i == 0 || i%2 == 0 // an end at the left, and the high edges of openings
				e := x[way]
				if !begins {
					e = x[way+1]
				}
				if e >= from && e <= to {
					edges = append(edges, e)
				}
			}
			slices.Sort(edges)
			switch edges = slices.Compact(edges); {
			case len(edges) > 0 && rapid.IntRange(0, 3).Draw(t, "on an edge") > 0:
				at[i] = rapid.SampledFrom(edges).Draw(t, fmt.Sprintf("edge %d", i))
			case rapid.Bool().Draw(t, "moved"):
				at[i] = math.Round(from + (to-from)*rapid.Float64Range(0, 1).Draw(t, fmt.Sprintf("place %d", i)))
			}
		}
		j, m := solved()
		require.Equal(t, before.edge, j.edge, "the start is pinned")
		j.tiles = before.tiles // with the tiles that the openings took
		j.first, j.struck = before.first, before.struck
		holds := func(what string, got int, want ...int) {
			if least, most := counted(want); least == most {
				read[fmt.Sprintf("%s %d", what, most)]++
				require.Equal(t, most, got, "%s of %s at %v", what, name, at)
			}
		}
		off := func(line int) int {
			if line == perhaps {
				return perhaps
			}
			return 1 - line
		}
		lined := [2]int{j.lined(wayAcross), j.lined(wayUp)}
		if lined[wayAcross] == perhaps || lined[wayUp] == perhaps {
			return
		}
		exposed := 0
		var built []int
		if lined[wayAcross] == aLine {
			exposed = off(j.isLine(wayAcross, at[0], false))
			built = append(built, off(j.isLine(wayAcross, at[1], true)), off(j.isLine(wayAcross, at[2], false)))
		}
		if lined[wayUp] == aLine {
			built = append(built, off(j.isLine(wayUp, at[3], true)), off(j.isLine(wayUp, at[4], false)))
		}
		holds("exposed", m.Exposed, exposed)
		holds("built", m.Built, built...)
		var openings []int
		for way, e := range [...][2]float64{{at[5], at[6]}, {at[7], at[8]}} {
			if lined[way] == noLine {
				continue
			}
			low, high := j.isLine(way, e[0], true), j.isLine(way, e[1], false)
			a, b := j.cuts(way, e[0], true), j.cuts(way, e[1], false)
			switch {
			case low == aLine && high == aLine:
				openings = append(openings, 0)
			case low == perhaps || high == perhaps || slices.Equal(a, b) && !slices.ContainsFunc(a, func(c [2]float64) bool { return 2*c[0] < c[1] }):
				openings = append(openings, perhaps) // how many tiles are cut so is not read here
			default:
				openings = append(openings, 1)
			}
		}
		holds("openings", m.Openings, openings...)
		switch left, right := at[0], (2000-3)*perMM; {
		case j.centred((left+right)/2) == aLine:
			holds("find", m.Find, 0)
		case j.centred((left+right)/2) == perhaps, j.isLine(wayAcross, left, false) == perhaps, j.isLine(wayAcross, right, true) == perhaps:
		case j.isLine(wayAcross, left, false) == aLine || j.isLine(wayAcross, right, true) == aLine:
			holds("find", m.Find, 1)
		default:
			holds("find", m.Find, 2)
		}
	})
	if inFull() {
		t.Log(read)
	}
	for _, what := range []string{"exposed 0", "exposed 1", "built 0", "built 1", "openings 1", "openings 2", "find 0", "find 1", "find 2"} {
		require.Positive(t, read[what], what)
	}
}

// counted adds up counts of which some are not sure: the least and the most there may be.
func counted(counts []int) (least, most int) {
	for _, n := range counts {
		if n == perhaps {
			most++
			continue
		}
		least, most = least+n, most+n
	}
	return least, most
}
