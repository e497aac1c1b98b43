package layout_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"coursewright/layout"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// How a leg that is laid as is best comes out, and why, by hand. Tiles are 200 by 100 mm in half
// bond with a joint of 3: joints of neighbouring courses leave (200 - 3) / 2 = 98.5 mm clear.
func TestALegIsLaidAsIsBest(t *testing.T) {
	for _, c := range []struct {
		what  string
		leg   string // as wide as that, of which the gap of 3 mm is not tiled
		spoil func(*survey.Job)
		how   survey.Leg
		why   survey.LegReason
	}{
		{"wider than what is clear between joints: two pieces or one", "150", nil, survey.SingleTiles, survey.LegParted},
		{"as wide as a tile", "203", nil, survey.SingleTiles, survey.LegParted},
		{"clear of every joint where the outer tile is whole", "60", nil, survey.InBond, survey.LegAlike},
		{"clear of joints, but not where the start is pinned", "60", func(j *survey.Job) {
			j.Pins.Walls = map[string]survey.WallPin{"wall": {Edge: "30"}}
		}, survey.SingleTiles, survey.LegWorse},
		{"in stack bond the outer column comes down as it is", "150", stacked, survey.InBond, survey.LegAlike},
		{"narrower than can be cut (13 mm)", "14", nil, survey.NoLeg, survey.LegTooThin},
		{"a second tile of 40 mm beside a whole one is worse than what the bond can do", "246", stacked, survey.InBond, survey.LegBetter},
		{"no courses", "150", func(j *survey.Job) { j.Bond = survey.Bond{Kind: "diagonal"} }, survey.InBond, survey.LegOnly},
		{"bands", "150", func(j *survey.Job) {
			j.Bands = []survey.Band{{Name: "band", Tile: survey.Tile{Width: "200", Height: "50"}, Bond: survey.Bond{Kind: "stack"}, Courses: 1, Bottom: survey.Mark{At: "0"}}}
		}, survey.InBond, survey.LegOnly},
	} {
		job := oneLeg(c.leg, survey.BestLeg)
		if c.spoil != nil {
			c.spoil(&job)
		}
		p, err := layout.Now(job)
		require.NoError(t, err, c.what)
		leg := p.Room.Walls[0].Base[0]
		assert.Equal(t, c.how, leg.Leg, c.what)
		assert.Equal(t, c.why, leg.Why, c.what)
		by := job.Clone()
		by.Walls[0].Base[0].Leg = c.how.String()
		hand, err := layout.Now(by)
		require.NoError(t, err, c.what)
		assert.Equal(t, ids(hand.Walls[0].Pieces), ids(p.Walls[0].Pieces), c.what)
		if p.Room.Bond.Coursed() {
			assert.True(t, slices.ContainsFunc(p.Setout.Reasons, func(r string) bool { return strings.HasPrefix(r, "The leg at the left of wall is l") }), c.what)
		}
	}
}

func stacked(j *survey.Job) { j.Bond = survey.Bond{Kind: "stack"} }

// oneLeg is a wall with a leg so wide at its left, between it and a corner a tub.
func oneLeg(wide, leg string) survey.Job {
	job := legged(leg, "")
	w := &job.Walls[0]
	w.Base = w.Base[:2]
	w.Base[0].Readings[1].At, w.Base[1].Readings[0].At, w.Base[1].Readings[1].At = wide, wide, "1100"
	w.Right = survey.End{Meets: "corner", Gap: "3"}
	return job
}

// Laws: by the order of merit, down to the runs and with those of the legs, a leg laid as is best is no worse
// than in the bond or in single tiles; where the bond is as good, it is the bond; and what is
// kept of the plan gives it again. Legs narrower than can be cut are left out, others never.
func TestNoLegIsBetterThanTheBest(t *testing.T) {
	rooms := rapid.Custom(leggedRoom)
	for seed := range 8 {
		job := rooms.Example(seed)
		best, err := layout.Quick(t.Context(), job)
		require.NoError(t, err)
		thin := false
		for _, l := range best.Room.ChosenLegs() {
			w := best.Room.Walls[0]
			if w.Base[l.Segment].Leg == survey.NoLeg {
				thin = true
				require.Less(t, l.Beside.Width(w, best.Walls[0].Start.Placed), piece.UnworkableLimit(best.Room, best.Room.Tile.Width))
			}
		}
		for _, how := range []string{"bond", "single"} {
			other := job.Clone()
			for k := range other.Walls[0].Base {
				if other.Walls[0].IsLeg(k) {
					other.Walls[0].Base[k].Leg = how
				}
			}
			p, err := layout.Quick(t.Context(), other)
			require.NoError(t, err)
			if thin || !best.Setout.Proven || !p.Setout.Proven {
				continue
			}
			a, b := withLegRuns(best), withLegRuns(p)
			order, term := p.Setout.Order.Until(&a, &b, merit.Mirror)
			require.LessOrEqual(t, order, 0, "seed %d: %s is better in %v: %s", seed, how, term, mustWrite(job))
			if how == "bond" && order == 0 && len(best.Room.ChosenLegs()) == 1 && best.Setout.Joint == p.Setout.Joint && best.Setout.Line == p.Setout.Line {
				require.Equal(t, survey.InBond, best.Room.Walls[0].Base[0].Leg, "seed %d: the bond is as good: %s", seed, mustWrite(job))
			}
		}
	}
}

// leggedRoom draws a wall with a leg that is laid as is best, or with two.
func leggedRoom(t *rapid.T) survey.Job {
	mm := func(name string, low, high int) string { return strconv.Itoa(rapid.IntRange(low, high).Draw(t, name)) }
	job := legged(survey.BestLeg, "")
	job.Tile = survey.Tile{Width: mm("tile", 150, 400), Height: mm("high", 80, 200)}
	job.Bond = rapid.SampledFrom([]survey.Bond{{Kind: "stack"}, {Kind: "running", Offset: "1/2"}, {Kind: "running", Offset: "1/3"}, {Kind: "running", Offset: "2/5"}}).Draw(t, "bond")
	w := &job.Walls[0]
	front, rim, floor := mm("front", 5, 420), mm("rim", 300, 600), mm("floor", 620, 1000)
	w.Base = w.Base[:2]
	w.Base[0].Readings = []survey.Drop{{At: "0", Drop: floor}, {At: front, Drop: floor}}
	w.Base[1].Readings = []survey.Drop{{At: front, Drop: rim}, {At: "1100", Drop: rim}}
	switch rapid.IntRange(0, 3).Draw(t, "more") {
	case 0:
		w.Base[1].Readings[1].At = "950"
		w.Base = append(w.Base, survey.Segment{Meets: "floor", Gap: "3", Leg: survey.BestLeg, Readings: []survey.Drop{{At: "950", Drop: floor}, {At: "1100", Drop: floor}}})
		return job
	case 1:
		w.Left.Stops = &survey.Mark{From: "0", To: mm("to", 1, 60)}
	case 2:
		job.Joint = survey.Measure{Mark: &survey.Mark{From: "2", To: "3"}}
	}
	w.Right = survey.End{Meets: "corner", Gap: "3"}
	return job
}

// withLegRuns is what a plan states, but of the cuts at legs: pieces as wide as their leg are in no run, and of legs
// in single tiles that are wider than one all cuts count; read from the pieces of the plan.
func withLegRuns(p layout.Plan) merit.Merit {
	m := p.Setout.Merit
	w := p.Walls[0]
	for _, l := range w.Found.LegsBeside() {
		k, how := w.Found.LegOf(l)
		wide, front := l.Width(w.Found, w.Start.Placed), fmt.Sprintf("step %d", max(0, k-1))
		for _, r := range w.Runs {
			if !slices.Contains(r.Edges, front) || !r.Across || r.Low || how != survey.SingleTiles && r.Least != wide || how == survey.SingleTiles && wide <= p.Room.Tile.Width {
				continue
			}
			size := r.Least / p.Room.Tape * p.Room.Tape
			by := 1
			if how != survey.SingleTiles {
				by = -1
			}
			if 5*size < p.Room.Tile.Width {
				m.Fifths += by
			}
			if 3*size < p.Room.Tile.Width {
				m.Thirds += by
			}
			share := piece.Part(size, p.Room.Tile.Width)
			switch i := slices.Index(m.Runs, share); {
			case 2*size >= p.Room.Tile.Width:
			case by > 0:
				m = m.Plus(&merit.Merit{Sight: merit.Sight{Runs: []piece.Share{share}}})
			case i >= 0:
				m.Runs = slices.Delete(slices.Clone(m.Runs), i, i+1)
			}
		}
		for _, x := range w.Pieces {
			at := slices.ContainsFunc(x.Across, func(e piece.Edge) bool { return e.Name(w.Shape.Sides) == front })
			if how != survey.SingleTiles || wide <= p.Room.Tile.Width || !at {
				continue
			}
			if x.Unworkable {
				m.Unworkable++
			} else if x.Sliver {
				m.Slivers++
			}
		}
	}
	return m
}

// Where the tile of the wall ends at the front of the tub no tile is left for the leg: it was told to be a negative
// length wide.
func TestALegWithoutTileIsSaidToHaveNone(t *testing.T) {
	job := legged("best", "best")
	job.Walls[0].Left.Stops, job.Walls[0].Right.Stops = &survey.Mark{At: "128"}, &survey.Mark{At: "1100"}
	p, err := layout.Now(job)
	require.NoError(t, err)
	require.NotContains(t, strings.Join(p.Setout.Reasons, " "), "would, -")
	require.Contains(t, strings.Join(p.Setout.Reasons, " "), "No tile stands in the leg at the left of wall")
}
