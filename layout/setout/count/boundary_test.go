package count

import (
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// edgeOf is an edge of the boundary of a sketch.
func edgeOf(t *testing.T, w *Wall, side int, f piece.Facing) feature {
	b := w.Bounds.boundary
	for _, list := range [][]feature{b.ends, b.beds} {
		for _, e := range list {
			if int(e.edge.Side()) == side && e.edge.Facing() == f {
				return e
			}
		}
	}
	t.Fatalf("no edge %d of %d", f, side)
	return feature{}
}

// Clean spans: of the left end 0 to 600, what no other edge comes nearer than a tile and a
// joint. An edge's own ends are edges that cross it; they stand at a point.
func TestCleanSpansOfAnEnd(t *testing.T) {
	for name, c := range map[string]struct {
		sketch string
		want   [][2]length.Length
	}{
		"a plain wall":                  {"1000x600 300x100+2", [][2]length.Length{{0, 600}}},
		"a window farther than a tile":  {"1000x600 300x100+2 window=310,200,200,100", [][2]length.Length{{0, 600}}},
		"a window nearer":               {"1000x600 300x100+2 window=290,200,200,100", [][2]length.Length{{0, 200}, {300, 600}}},
		"a niche that may come near":    {"1000x600 300x100+2 niche=290..400,200,200..250,100", [][2]length.Length{{0, 200}, {350, 600}}},
		"a pipe":                        {"1000x600 300x100+2 pipe=200,300,34", [][2]length.Length{{0, 280}, {320, 600}}},
		"the other end nearer":          {"290x600 300x100+2", nil},
		"two windows, one over another": {"1000x600 300x100+2 window=290,200,100,50 window=200,200,300,50", [][2]length.Length{{0, 100}, {150, 300}, {350, 600}}},
	} {
		f := edgeOf(t, drawWall(c.sketch), int(survey.SideLeft), piece.OnLeft)
		var got [][2]length.Length
		for _, s := range f.spans {
			got = append(got, [2]length.Length{s.from / mm, s.to / mm})
		}
		if name == "a pipe" { // its clearance is that of the room's
			r := drawWall(c.sketch).facts.boxOf(0, drawWall(c.sketch).Found.Openings[0], survey.Placed{})
			c.want = [][2]length.Length{{0, r.Bottom / mm}, {r.Top / mm, 600}}
		}
		require.Equal(t, c.want, got, name)
	}
}

// A wall's free end is no edge that stands, and what may stand there comes near its base.
func TestWhatMovesIsNoEdge(t *testing.T) {
	w := drawWall("1000x600 300x100+2 left=0..80 head=500..600")
	for _, list := range [][]feature{w.Bounds.boundary.ends, w.Bounds.boundary.beds} {
		for _, f := range list {
			require.NotEqual(t, survey.SideLeft, f.edge.Side())
			require.NotEqual(t, survey.SideHead, f.edge.Side())
		}
	}
	right := edgeOf(t, w, int(survey.SideRight), piece.OnRight)
	require.Equal(t, 500*mm, right.spans[0].to, "clear as far as the head may come down")
}

// In columns a base is an end of the rows, and the corners lie along them.
func TestInColumnsEndsAndBedsChangePlaces(t *testing.T) {
	level, columns := drawWall("1000x600 300x100+2 1/2"), drawWall("1000x600 300x100+2 1/2 columns")
	sides := func(list []feature) (out []int) {
		for _, f := range list {
			out = append(out, int(f.edge.Side()))
		}
		return out
	}
	require.ElementsMatch(t, sides(level.Bounds.boundary.ends), sides(columns.Bounds.boundary.beds))
	require.ElementsMatch(t, sides(level.Bounds.boundary.beds), sides(columns.Bounds.boundary.ends))
}

// A span between two places of a slanting edge, to the nearest unit.
func TestPlacesAlongASpan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string, low, high int) length.Length {
			return length.Length(rapid.IntRange(low, high).Draw(t, name))
		}
		s := span{from: n("from", -1000, 1000), v0: n("v0", -500, 500)}
		s.to, s.v1 = s.from+n("long", 1, 1000), s.v0+n("rise", -300, 300)
		require.Equal(t, s.v0, s.at(s.from))
		require.Equal(t, s.v1, s.at(s.to))
		u := s.from + n("u", 0, int(s.to-s.from))
		exact := float64(s.v0) + float64(s.v1-s.v0)*float64(u-s.from)/float64(s.to-s.from)
		require.InDelta(t, exact, float64(s.at(u)), 0.5001)
	})
}

// Crests: where an edge decides alone what is left of a tile, a run of it is never more
// than that, wherever rows and tiles stand.
func TestARunIsNoMoreThanIsLeftAtItsCrests(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s, _ := countedRoom(t)
		b := w.Bounds.boundary
		along, across := w.facts.frame.phases(s.Line, s.Edge)
		runs := w.Count(s).Runs
		claim := func(f *feature, at length.Length) {
			for _, c := range f.crests {
				tl := f.tiled(at)
				low := c.v - length.Mod(c.v-tl.first, tl.pitch())
				other, sure := c.cutWith(low, low+tl.deep)
				switch is, left, _ := tl.slot(c.v, c.v); {
				case is != kept || !sure:
				case other != nil:
					holdsRuns(t, runs, []Run{{Edges: []piece.Edge{min(f.edge, other.edge), max(f.edge, other.edge)}, Least: other.high - c.v + c.over}}, w.facts.frame.plumb)
				default:
					holdsRuns(t, runs, []Run{{Edges: []piece.Edge{f.edge}, Least: left + c.over}}, w.facts.frame.plumb)
				}
			}
		}
		if len(w.facts.shifts) == 1 {
			for i := range b.ends {
				claim(&b.ends[i], along)
			}
		}
		for i := range b.beds {
			claim(&b.beds[i], across)
		}
	})
}

func TestWhereCrestsAre(t *testing.T) {
	w := drawWall("1000x600 300x100+2")
	base := edgeOf(t, w, int(survey.SideBase), piece.Under)
	require.NotEmpty(t, base.crests)
	for _, c := range base.crests {
		require.Equal(t, crest{}, c, "level: the same at every place")
	}
	low := drawWall("1000x90 300x100+2") // base and ceiling may cut one tile everywhere
	for _, c := range edgeOf(t, low, int(survey.SideBase), piece.Under).crests {
		require.Equal(t, crest{beside: []parallel{{atHead, 90 * mm, 90 * mm, c.beside[0].opposite}}}, c)
	}
	raked := edgeOf(t, drawWall("1000x600 300x100+2 base=0,20"), int(survey.SideBase), piece.Under)
	highest := length.Length(0)
	for _, c := range raked.crests {
		highest = max(highest, c.v)
		require.Equal(t, 2*mm*20/1000+3, c.over, "as much as it rises over a joint, rounded up")
	}
	require.Greater(t, highest, 19*mm)
}

// In columns a leg beside a tub is cut at both sides of one tile, wherever its courses stand. One of 4 is only a strip for
// sealant, which fills 6: no piece is left, and no run is claimed of it.
func TestAStripForSealantBetweenTwoEdgesIsNoRun(t *testing.T) {
	for leg, claimed := range map[string]bool{"leg=40": true, "leg=4": false} {
		w := drawWall("1000x600 300x100+2 columns " + leg)
		beds, both := w.Bounds.boundary.beds, 0
		w.setOuts(func(line, edge length.Length) {
			_, across := w.facts.frame.phases(line, edge)
			runs := w.Count(Setting{Line: line, Edge: edge, Placed: w.Outer()}).Runs
			for i := range beds {
				e := sure{w: w.facts, meter: w.meter}
				e.bed(&beds[i], across, w.Bounds.boundary.obstacles)
				for _, c := range e.runs {
					if len(c.Edges) < 2 {
						continue
					}
					both++
					require.True(t, slices.ContainsFunc(runs, func(r Run) bool { return slices.Equal(r.Edges, c.Edges) && r.Least <= c.Least }), "%s claims %+v", leg, c)
				}
			}
		})
		require.Equal(t, claimed, both > 0, leg)
	}
}
