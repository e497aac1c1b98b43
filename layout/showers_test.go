package layout_test

import (
	"cmp"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"slices"
	"strconv"
	"testing"

	"coursewright/layout"
	"coursewright/layout/piece"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// showers draws rooms as people have them: a tub or a shower base between two or three
// walls, tile that is sold, ends, heads and niches free within what a person would say.
var showers = rapid.Custom(func(t *rapid.T) []byte {
	s := shower{t: t, metric: rapid.IntRange(0, 2).Draw(t, "units") == 0}
	doc := s.room()
	out, err := json.Marshal(doc)
	if err != nil {
		panic(err)
	}
	return out
})

type shower struct {
	t      *rapid.T
	metric bool
	drop   float64 // of the rim under the level line, in
}

// is draws whether something is so, one time in so many.
func (s *shower) is(what string, many int) bool { return rapid.IntRange(1, many).Draw(s.t, what) == 1 }

// between draws a length between two, in whole sixteenths of an inch.
func (s *shower) between(what string, from, to float64) float64 {
	return float64(rapid.IntRange(int(from*16), int(to*16)).Draw(s.t, what)) / 16
}

// says writes a length as a person would.
func (s *shower) says(inches float64) string {
	if s.metric {
		return strconv.Itoa(int(inches*25.4+0.5+1e5) - 1e5)
	}
	return fmt.Sprintf("%d/16", int(inches*16))
}

func (s *shower) from(at, to float64) object { return object{"from": s.says(at), "to": s.says(to)} }

func (s *shower) room() object {
	s.drop = s.between("drop", 36, 42)
	if s.is("floor only", 4) {
		s.drop = s.between("drop", 50, 60)
	}
	sizes := [][2]float64{{3, 6}, {6, 3}, {4.25, 4.25}, {4, 12}, {12, 4}, {16, 4}, {4, 16}, {8, 2}, {6, 6}, {8, 8}, {12, 24}, {24, 12}, {24, 6}, {10, 3}, {13, 13}, {12, 12}, {20, 2.5}}
	size := rapid.SampledFrom(sizes).Draw(s.t, "tile")
	under := s.between("under nominal", 0, 0.25)
	doc := object{"format": "coursewright-job/1", "title": "shower", "units": "in",
		"tile": object{"name": "white", "width": s.says(size[0] - under), "height": s.says(size[1] - under), "thickness": s.says(0.3125)}}
	if s.metric {
		doc["units"] = "mm"
		doc["joint"] = rapid.SampledFrom([]string{"1.5", "2", "3", "4", "5"}).Draw(s.t, "joint")
	} else {
		doc["joint"] = rapid.SampledFrom([]string{"1/16", "1/8", "1/8", "3/32", "3/16", "1/4"}).Draw(s.t, "joint")
	}
	bond := object{"kind": rapid.SampledFrom([]string{"stack", "running", "running"}).Draw(s.t, "bond")}
	if bond["kind"] == "running" {
		bond["offset"] = rapid.SampledFrom([]string{"1/2", "1/2", "1/2", "1/3", "1/4"}).Draw(s.t, "offset")
		if bond["offset"] != "1/2" {
			bond["hand"] = rapid.SampledFrom([]string{"left", "right"}).Draw(s.t, "hand")
		}
	}
	if s.is("columns", 6) {
		bond["along"] = "plumb"
	}
	doc["bond"] = bond
	doc["walls"] = s.walls()
	return doc
}

func (s *shower) walls() []object {
	head := s.head()
	back := object{"name": "back"}
	width := s.between("back", 48, 66)
	back["width"], back["base"], back["head"] = s.says(width), []object{s.rim(0, width)}, head
	back["left"], back["right"] = s.corner("back left"), s.corner("back right")
	s.openings(back, width)
	switch rapid.IntRange(0, 5).Draw(s.t, "walls") {
	case 0:
		back["left"], back["right"] = s.stops("only left", 0, 3), s.stops("only right", width-3, width)
		return []object{back}
	case 1:
		back["right"] = s.stops("back end", width-3, width)
		return []object{s.side("left", true, head), back}
	}
	return []object{s.side("left", true, head), back, s.side("right", false, head)}
}

func (s *shower) side(name string, left bool, head object) object {
	width := s.between(name, 29, 38)
	out := object{"name": name, "width": s.says(width), "head": head}
	leg := 0.0
	if s.is(name+" leg", 2) {
		leg = s.between(name+" leg width", 2, 6)
	}
	rim, foot := s.rim(0, width), s.foot(0, 0)
	if left {
		out["left"], out["right"] = s.stops(name+" end", 0, 2.5), s.corner(name+" corner")
		rim, foot = s.rim(leg, width), s.foot(0, leg)
		out["base"] = []object{foot, rim}
	} else {
		out["left"], out["right"] = s.corner(name+" corner"), s.stops(name+" end", width-2.5, width)
		rim, foot = s.rim(0, width-leg), s.foot(width-leg, width)
		out["base"] = []object{rim, foot}
	}
	if leg == 0 {
		out["base"] = []object{s.rim(0, width)}
	}
	if s.is(name+" pipes", 2) {
		out["openings"] = []object{
			{"kind": "pipe", "name": "spout", "at": s.says(width / 2), "height": s.says(-s.drop + 6), "diameter": s.says(1.25)},
			{"kind": "pipe", "name": "valve", "at": s.says(width / 2), "height": s.says(-s.drop + 28), "diameter": s.says(4.5)}}
	}
	return out
}

func (s *shower) head() object {
	switch rapid.IntRange(0, 3).Draw(s.t, "head") {
	case 0:
		return object{"meets": "ceiling", "gap": s.says(0.125), "readings": []object{{"at": "0", "rise": s.says(s.between("ceiling", 40, 58))}}}
	case 1:
		return object{"stops": object{"at": s.says(s.between("head at", 20, 45))}, "finish": "bullnose"}
	}
	at := s.between("head from", 18, 44)
	return object{"stops": s.from(at, at+s.between("head range", 2, 8)), "finish": "trim"}
}

func (s *shower) stops(what string, from, to float64) object {
	if s.is(what+" fixed", 2) {
		at := s.between(what, from, to)
		return object{"stops": object{"at": s.says(at)}, "finish": "casing"}
	}
	return object{"stops": s.from(from, to), "finish": "trim"}
}

func (s *shower) corner(what string) object {
	out := object{"meets": "corner", "gap": s.says(0.125)}
	if s.is(what+" leans", 4) {
		out["lean"] = []object{{"height": s.says(-s.drop), "off": s.says(s.between(what+" low", -0.25, 0.25))}, {"height": s.says(44), "off": s.says(s.between(what+" high", -0.375, 0.375))}}
	}
	return out
}

func (s *shower) rim(from, to float64) object {
	low, high := s.between("rim", -0.1875, 0.1875), s.between("rim", -0.1875, 0.1875)
	return object{"meets": "tub", "gap": s.says(0.125), "readings": []object{{"at": s.says(from), "drop": s.says(s.drop + low)}, {"at": s.says(to), "drop": s.says(s.drop + high)}}}
}

func (s *shower) foot(from, to float64) object {
	return object{"meets": "floor", "gap": s.says(0.125), "readings": []object{{"at": s.says(from), "drop": s.says(s.drop + 15)}, {"at": s.says(to), "drop": s.says(s.drop + 15.0625)}}}
}

func (s *shower) openings(wall object, width float64) {
	switch rapid.IntRange(0, 5).Draw(s.t, "opening") {
	case 0, 1, 2:
		at, up := s.between("niche from", 8, width-26), s.between("niche up", -6, 4)
		wide, high := s.between("niche wide", 10, 14), s.between("niche high", 10, 16)
		wall["openings"] = []object{{"kind": "niche", "name": "shelf", "left": s.from(at, at+s.between("niche range", 2, 10)), "width": s.from(wide, wide+3),
			"bottom": s.from(up, up+s.between("niche rise", 2, 8)), "height": s.from(high, high+s.between("niche taller", 0, 6))}}
	case 3:
		wall["openings"] = []object{{"kind": "niche", "name": "shelf", "left": object{"at": s.says(s.between("niche at", 10, width-26))}, "width": object{"at": s.says(14)},
			"bottom": object{"at": s.says(s.between("niche up", -6, 4))}, "height": object{"at": s.says(14)}}}
	case 4:
		wall["openings"] = []object{{"kind": "window", "name": "window", "left": object{"at": s.says(s.between("window at", 8, width-30))}, "width": object{"at": s.says(s.between("window wide", 16, 22))},
			"bottom": object{"at": s.says(s.between("window up", -8, 2))}, "height": object{"at": s.says(s.between("window high", 14, 20))}}}
	}
}

// Of showers as people have them most are proven best. These were not, until bounds knew
// what rows with corners in them and bare ends give.
func TestOrdinaryShowersAreProven(t *testing.T) {
	for _, seed := range []int{5, 6, 7, 9, 11, 22, 34, 40, 43, 47, 54, 56, 59} {
		job := showers.Example(seed)
		require.True(t, planned(t, job).Proven, "room %d: %s", seed, job)
	}
}

// With two free niches one start has more placings than are looked at once the work is spent. In other tile that is sold this room was
// given up after a thirtieth of the work.
func TestTwoFreeNichesAreProven(t *testing.T) {
	file, err := os.ReadFile("../testdata/cases/two-free-niches-side-by-side.json")
	require.NoError(t, err)
	for _, size := range [...][2]string{{"16", "4"}, {"4 1/4", "4 1/4"}} {
		job, err := survey.Read(file)
		require.NoError(t, err)
		job.Tile.Width, job.Tile.Height, job.Bond = size[0], size[1], survey.Bond{Kind: "stack"}
		plan, err := layout.Quick(t.Context(), job)
		require.NoError(t, err)
		require.True(t, plan.Setout.Proven, "%v", size)
	}
}

// Showers that are not proven best, with what they were found to have at worst since, from slivers on in the order
// of merit: pins or other ways to search beat each of them once, two by bare wall, six by unworkable pieces. Since all
// that settling looks at ends at twice the work, 384 is worse than it once was, by an opening off the joint lines; many others
// are better.
func TestShowersThatPinsBeatOnce(t *testing.T) {
	noWorseThan(t, showers, map[int]spoiled{
		82:  {thirds: 3},
		84:  {thirds: 2},
		131: {openings: 1, thirds: 4},
		145: {slivers: 8, fifths: 1, exposed: 1, thirds: 2},
		163: {fifths: 1, openings: 2, thirds: 2},
		185: {slivers: 6, fifths: 1, thirds: 4},
		209: {openings: 1, thirds: 1},
		241: {slivers: 1, thirds: 2},
		255: {thirds: 1},
		262: {slivers: 25, fifths: 3, exposed: 2, thirds: 8},
		308: {slivers: 1, thirds: 4},
		328: {slivers: 7, fifths: 1, exposed: 1, openings: 1, thirds: 1},
		384: {openings: 1, thirds: 4},
		407: {slivers: 6, fifths: 4, openings: 1, thirds: 11},
		483: {openings: 1},
		581: {fifths: 4, exposed: 1, openings: 1, thirds: 8},
		583: {},
		608: {fifths: 2, thirds: 3},
		632: {openings: 1, thirds: 8},
		666: {slivers: 4, fifths: 2, openings: 1, thirds: 6},
		729: {slivers: 2, fifths: 2, exposed: 1, thirds: 4},
		889: {slivers: 8, fifths: 1, openings: 1, thirds: 8},

		// By a run under a fifth, until the search settled at half its work.
		7014: {exposed: 1, openings: 1, thirds: 4},
	})
}

// A leg a quarter of an inch wide is left without tile by all starts but a few, and by those ever more of it the higher the line:
// the search came back to the line that leaves least, until other starts came first on lines far from it.
func TestAStartThatTilesANarrowLegIsFound(t *testing.T) {
	job, err := survey.Read(showers.Example(585))
	require.NoError(t, err)
	plan, err := layout.Quick(t.Context(), job)
	require.NoError(t, err)
	require.Zero(t, plan.Setout.Merit.Bare)
}

// Of a single wall with both ends free no bound tells the starts apart: on its own line 287 were better than the one that was
// found, as those that were looked at stood side by side. Its worst run had 24 % of a tile.
func TestStartsThatPromiseAlikeAreLookedAtAllOverTheWall(t *testing.T) {
	job, err := survey.Read(showers.Example(935))
	require.NoError(t, err)
	plan, err := layout.Quick(t.Context(), job)
	require.NoError(t, err)
	require.Equal(t, 2, plan.Setout.Merit.Thirds)
	require.False(t, plan.Setout.Merit.Runs[0].Less(piece.Part(28, 100)), "%v", plan.Setout.Merit.Runs)
}

// The same of houses: pins beat one of them by its runs, the others by an unworkable piece, 7014 until the search settled
// at half its work.
func TestHousesThatPinsBeatOnce(t *testing.T) {
	noWorseThan(t, houses, map[int]spoiled{230: {fifths: 1, openings: 1, thirds: 7}, 239: {fifths: 1, thirds: 1}, 7014: {slivers: 1, thirds: 5}})
}

// noWorseThan holds rooms of some kind, by their seeds, to what they were found to have at worst.
func noWorseThan(t *testing.T, rooms *rapid.Generator[[]byte], known map[int]spoiled) {
	for _, seed := range slices.Sorted(maps.Keys(known)) {
		most := known[seed]
		job, err := survey.Read(rooms.Example(seed))
		require.NoError(t, err)
		plan, err := layout.Quick(t.Context(), job)
		require.NoError(t, err)
		m := plan.Setout.Merit
		require.Zero(t, m.Bare, "room %d has bare wall", seed)
		require.Zero(t, m.Unworkable, "room %d has unworkable pieces", seed)
		got := spoiled{m.Slivers, m.Fifths, m.Exposed, m.Openings, m.Thirds}
		assert.LessOrEqual(t, got.compare(most), 0, "room %d: %+v, was %+v", seed, got, most)
	}
}

// spoiled counts what is less than good in a set-out.
type spoiled struct{ slivers, fifths, exposed, openings, thirds int }

func (s spoiled) compare(o spoiled) int {
	return cmp.Or(cmp.Compare(s.slivers, o.slivers), cmp.Compare(s.fifths, o.fifths), cmp.Compare(s.exposed, o.exposed),
		cmp.Compare(s.openings, o.openings), cmp.Compare(s.thirds, o.thirds))
}

// No pins beat the set-out of a shower that is proven best.
func TestNoPinsBeatAShowersSetOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := showers.Draw(t, "shower")
		if !rare(t, 5) || !accepted(job) {
			return
		}
		free := judged(t, job, planned(t, job))
		if !free.plan.Proven {
			return
		}
		for range 3 {
			free.noWorse(t, job, free.pins(t))
		}
	})
}
