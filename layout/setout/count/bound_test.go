package count

import (
	"slices"
	"testing"

	"coursewright/layout/merit"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// countedRoom draws a set-out of any wall of a random room and counts it.
func countedRoom(t *rapid.T) (*Wall, Setting, merit.Merit) {
	w, s := drawn(t)
	if w.Places.Overlap(s.Placed) {
		t.Skip("openings overlap")
	}
	return w, s, w.Count(s).Merit
}

// claims holds a bound against the count: in no term does it ask for more before one
// in which it asks for less.
func claims(t *rapid.T, w *Wall, bound, got merit.Merit) {
	if bound.Bare > got.Bare && bound.Bare <= got.Bare+rounded(w) {
		bound.Bare = got.Bare // along a raked edge it is rounded
	}
	order, term := w.facts.order.Compare(&got, &bound)
	require.GreaterOrEqual(t, order, 0, "claims more in %s:\n%+v\n%+v", term, bound, got)
}

// claimsNoTerm wants more: each term of a bound that adds up pieces is no more than the count's, where the marks are
// those of the set-out.
func claimsNoTerm(t *rapid.T, bound, got merit.Merit) {
	for name, pair := range map[string][2]int{
		"unworkable": {bound.Unworkable, got.Unworkable}, "unworkable and slivers": {bound.Unworkable + bound.Slivers, got.Unworkable + got.Slivers},
		"fifths": {bound.Fifths, got.Fifths}, "thirds": {bound.Thirds, got.Thirds}, "work": {bound.Work, got.Work},
		"unworkable out of sight": {bound.OutOfSight.Unworkable, got.OutOfSight.Unworkable},
		"thirds out of sight":     {bound.OutOfSight.Thirds, got.OutOfSight.Thirds},
		"runs":                    {len(bound.Runs), len(got.Runs)}, "runs out of sight": {len(bound.OutOfSight.Runs), len(got.OutOfSight.Runs)},
		"rim": {len(bound.Rim), len(got.Rim)}, "head": {len(bound.Head), len(got.Head)},
	} {
		require.LessOrEqual(t, pair[0], pair[1], name)
	}
	require.LessOrEqual(t, bound.Mirror, got.Mirror, "mirror")
}

// Law 2, each bound alone.
func TestOfBothClaimsNoMoreThanTheCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s, got := countedRoom(t)
		claims(t, w, w.Bounds.OfBoth(s.Line, s.Edge), got)
	})
}

func TestGroupsClaimNoMoreThanTheCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s := drawn(t)
		groups := w.Starts.Groups(s.Line)
		g := groups[rapid.IntRange(0, len(groups)-1).Draw(t, "group")]
		start := g.Starts[rapid.IntRange(0, len(g.Starts)-1).Draw(t, "of it")]
		if s = placed(t, w, s.Line, start.Edge); w.Places.Overlap(s.Placed) {
			t.Skip("openings overlap")
		}
		claims(t, w, start.Merit.Plus(&g.Offset), w.Count(s).Merit)
	})
}

func TestPlainRowsClaimNoMoreThanTheCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s, got := countedRoom(t)
		bound := w.Bounds.Plainly(s.Line, s.Edge)
		claims(t, w, bound, got)
		if len(w.Free()) == 0 && w.FixedEnds() && !w.facts.moves(survey.SideHead) { // else the best place of a mark may give more in a later term
			claimsNoTerm(t, bound, got)
		}
	})
}

func TestRowsBeyondOpeningsClaimNoMoreThanTheCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s, got := countedRoom(t)
		bound := w.Bounds.Beyond(s)
		claims(t, w, bound, got)
		claimsNoTerm(t, bound, got)
		require.LessOrEqual(t, bound.Bare, got.Bare+rounded(w))
	})
}

// What a search adds up of a placing before it looks: edges that stand, each end, the head
// and each opening where it is placed.
func TestWhatAPlacingPromisesIsNoMoreThanTheCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s, got := countedRoom(t)
		bound := w.promise(s)
		claims(t, w, bound, got)
		claimsNoTerm(t, bound, got)
	})
}

// promise is what is sure of each mark alone where it is placed.
func (w *Wall) promise(s Setting) merit.Merit {
	add := func(sum, m merit.Merit) merit.Merit { return sum.Plus(&m) }
	marks := add(w.Bounds.AtEnd(false, s.Placed.Left, s.Line, s.Edge), w.Bounds.AtEnd(true, s.Placed.Right, s.Line, s.Edge))
	marks = add(marks, w.Bounds.AtHead(s.Placed.Head, s.Line, s.Edge))
	for _, i := range w.Free() {
		at := s.Placed.Openings[i]
		marks = add(marks, promised(w.Places.Level(i, s.Edge), Pair{at.Left, at.Right}))
		marks = add(marks, promised(w.Places.Upright(i, s.Line), Pair{at.Bottom, at.Top}))
	}
	return add(add(w.Bounds.Standing(s.Line, s.Edge), w.Marks.Fixed(s.Line, s.Edge)), marks)
}

func promised(options []Option, p Pair) merit.Merit {
	return options[slices.IndexFunc(options, func(o Option) bool { return o.Pair == p })].Merit
}

// Each edge of the boundary alone, and each of them with the crests: the runs it is sure
// of are among those of the wall, none of them smaller than claimed.
func TestEachEdgeAloneClaimsRunsThatAreThere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s, _ := countedRoom(t)
		b, runs := w.Bounds, w.Count(s).Runs
		along, across := w.facts.frame.phases(s.Line, s.Edge)
		rows := b.rows.at(across)
		for i := range b.boundary.ends {
			e := sure{w: b.w, meter: b.meter}
			rows = e.end(&b.boundary.ends[i], along, rows)
			holdsRuns(t, runs, e.runs, b.w.frame.plumb)
		}
		for i := range b.boundary.beds {
			e := sure{w: b.w, meter: b.meter}
			e.bed(&b.boundary.beds[i], across, b.boundary.obstacles)
			holdsRuns(t, runs, e.runs, b.w.frame.plumb)
		}
	})
}

// holdsRuns wants a run of the wall, or more than one with other edges, for each claimed.
func holdsRuns(t *rapid.T, runs, claimed []Run, plumb bool) {
	for _, c := range claimed {
		require.True(t, slices.ContainsFunc(runs, func(r Run) bool {
			return slices.Contains(r.Edges, c.Edges[0]) && r.Least <= c.Least && (r.Class == c.Class || len(r.Edges) > 1)
		}), "claims %+v\nof %+v", c, runs)
	}
}

// The best place of a free end is found though not every place is looked at.
func TestAFreeEndIsLookedAtWhereItMayBeBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s := drawn(t)
		b := w.Bounds
		along, across := w.facts.frame.phases(s.Line, s.Edge)
		_, bands := b.standingEnds(along, b.rows.at(across))
		for _, right := range [...]bool{false, true} {
			if !b.zones.zoned(right) {
				continue
			}
			var best *merit.Merit
			for _, at := range b.movablePlaces(right, along) {
				m := b.zones.at(right, at.place, along, bands, nil)
				if m.Exposed = at.exposed; best == nil || w.facts.order.Better(&m, best) {
					best = &m
				}
			}
			got := b.movable(right, along, bands, nil)
			order, _ := w.facts.order.Compare(best, &got)
			require.Zero(t, order)
		}
	})
}
