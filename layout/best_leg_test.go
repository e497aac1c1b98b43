package layout_test

import (
	"fmt"
	"slices"
	"strconv"
	"testing"

	"coursewright/layout"
	"coursewright/layout/length"
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
		{"clear of every joint, but then the exposed end would have no tile edge", "60", nil, survey.SingleTiles, survey.LegWorse},
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
		assert.True(t, slices.ContainsFunc(p.Setout.Reasons, func(r string) bool { return len(r) > 12 && r[:12] == "The leg at t" }), c.what)
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
	met := map[survey.LegReason]int{}
	rapid.Check(t, func(t *rapid.T) {
		mm := func(name string, low, high int) string { return strconv.Itoa(rapid.IntRange(low, high).Draw(t, name)) }
		job := legged(survey.BestLeg, "")
		job.Tile = survey.Tile{Width: mm("tile", 100, 300), Height: mm("high", 50, 120)}
		job.Bond = rapid.SampledFrom([]survey.Bond{{Kind: "stack"}, {Kind: "running", Offset: "1/2"}, {Kind: "running", Offset: "1/3"}, {Kind: "running", Offset: "2/5"}}).Draw(t, "bond")
		w := &job.Walls[0]
		front, rim, floor := mm("front", 5, 320), mm("rim", 300, 600), mm("floor", 620, 1000)
		w.Base[0].Readings = []survey.Drop{{At: "0", Drop: floor}, {At: front, Drop: floor}}
		w.Base[1].Readings = []survey.Drop{{At: front, Drop: rim}, {At: "950", Drop: rim}}
		if w.Base = w.Base[:2]; rapid.Bool().Draw(t, "another leg") {
			w.Base = append(w.Base, survey.Segment{Meets: "floor", Gap: "3", Leg: survey.BestLeg, Readings: []survey.Drop{{At: "950", Drop: floor}, {At: "1100", Drop: floor}}})
		} else {
			w.Base[1].Readings[1].At = "1100"
			w.Right = survey.End{Meets: "corner", Gap: "3"}
		}
		if rapid.Bool().Draw(t, "free end") {
			w.Left.Stops = &survey.Mark{From: "0", To: mm("to", 1, 60)}
		}
		if rapid.Bool().Draw(t, "joints") {
			job.Joint = survey.Measure{Mark: &survey.Mark{From: "2", To: "4"}}
		}
		best, err := layout.Now(job)
		require.NoError(t, err)
		for _, l := range best.Room.ChosenLegs() {
			met[best.Room.Walls[0].Base[l.Segment].Why]++
			limit := piece.UnworkableLimit(best.Room, best.Room.Tile.Width)
			wide := l.Beside.Width(best.Room.Walls[0], best.Walls[0].Start.Placed)
			if how := best.Room.Walls[0].Base[l.Segment].Leg; how == survey.NoLeg {
				require.Less(t, wide, limit)
				return // nothing to compare it with
			}
		}
		for _, how := range []string{"bond", "single"} {
			other := job.Clone()
			for k := range other.Walls[0].Base {
				if other.Walls[0].IsLeg(k) {
					other.Walls[0].Base[k].Leg = how
				}
			}
			p, err := layout.Now(other)
			require.NoError(t, err)
			if !best.Setout.Proven || !p.Setout.Proven {
				continue
			}
			a, b := withLegRuns(best), withLegRuns(p)
			order, term := p.Setout.Order.Until(&a, &b, merit.Mirror)
			require.LessOrEqual(t, order, 0, "%s is better in %v: %s", how, term, mustWrite(job))
			if how == "bond" && order == 0 && len(best.Room.ChosenLegs()) == 1 && best.Setout.Joint == p.Setout.Joint && best.Setout.Line == p.Setout.Line {
				require.Equal(t, survey.InBond, best.Room.Walls[0].Base[0].Leg, "the bond is as good: %s", mustWrite(job))
			}
		}
	})
	fmt.Println(met)
}

// withLegRuns is what a plan states, with the runs of legs in single tiles, read from the runs of the plan.
func withLegRuns(p layout.Plan) merit.Merit {
	m := p.Setout.Merit
	for _, w := range p.Walls {
		for k, s := range w.Found.Base {
			if s.Leg != survey.SingleTiles {
				continue
			}
			for _, r := range w.Runs {
				if !slices.Contains(r.Edges, fmt.Sprintf("step %d", max(0, k-1))) {
					continue
				}
				full := p.Room.Tile.Width
				if !r.Across {
					full = p.Room.Tile.Height
				}
				in := &m.Sight
				if r.Low {
					in = &m.OutOfSight
				}
				one := merit.Merit{Part: true}
				size := r.Least / p.Room.Tape * p.Room.Tape
				for _, of := range []struct {
					n  length.Length
					is *int
				}{{5, &one.Fifths}, {3, &one.Thirds}} {
					if size*of.n < full {
						*of.is++
					}
				}
				if 2*size < full {
					one.Runs = []piece.Share{piece.Part(size, full)}
				}
				if in == &m.OutOfSight {
					one.Sight, one.OutOfSight = merit.Sight{}, one.Sight
				}
				m = m.Plus(&one)
			}
		}
	}
	return m
}
