package merit_test

import (
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// full is the tile that random shares are parts of, in its two directions.
var full = [2]int64{12, 20}

// shares draws an ascending list of shares under a limit, each a part of one of
// the two directions.
func shares(t *rapid.T, name string, limit piece.Share, ways ...int) []piece.Share {
	list := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) piece.Share {
		den := full[rapid.SampledFrom(ways).Draw(t, "way")]
		return piece.Share{Num: rapid.Int64Range(1, (den*limit.Num-1)/limit.Den).Draw(t, "size"), Den: den}
	}), 0, 3).Draw(t, name)
	return ascending(list)
}

func ascending(list []piece.Share) []piece.Share {
	slices.SortFunc(list, func(a, b piece.Share) int { return int(a.Num*b.Den - b.Num*a.Den) })
	return list
}

// few draws a count that is often the same, so that later terms decide too.
func few(t *rapid.T, name string) int { return rapid.IntRange(0, 1).Draw(t, name) }

func mark(t *rapid.T, name string) length.Length {
	return length.Length(few(t, name)) * length.Millimetre
}

func sight(t *rapid.T, name string) merit.Sight {
	return merit.Sight{Bare: mark(t, name+" bare"), Unworkable: few(t, name+" unworkable"), Slivers: few(t, name+" slivers"),
		Fifths: few(t, name+" fifths"), Thirds: few(t, name+" thirds"), Runs: shares(t, name+" runs", piece.Half, 0, 1)}
}

// merits draws merits of all kinds, half of them with nothing in the terms that
// come first, so that the later ones decide.
var merits = rapid.Custom(func(t *rapid.T) merit.Merit {
	whole := piece.Share{Num: 1, Den: 1}
	m := merit.Merit{Rim: shares(t, "rim", whole, 1), Head: shares(t, "head", whole, 1), Built: few(t, "built"), Work: few(t, "work"),
		Corners: few(t, "corners"), Alike: few(t, "alike"), Facing: mark(t, "facing"), Near: mark(t, "near"), Find: few(t, "find"), Slack: mark(t, "slack")}
	if rapid.Bool().Draw(t, "only the later terms") {
		return m
	}
	m.Sight, m.OutOfSight = sight(t, "plain"), sight(t, "low")
	m.Exposed, m.Openings, m.Mirror = few(t, "exposed"), few(t, "openings"), mark(t, "mirror")
	return m
})

// orders are what a job may prefer.
func orders(shared ...bool) *rapid.Generator[merit.Order] {
	return rapid.Custom(func(t *rapid.T) merit.Order {
		return merit.OrderFor(survey.Prefer{LargeCuts: rapid.Bool().Draw(t, "large cuts"), Openings: rapid.Bool().Draw(t, "openings"),
			Shared: rapid.SampledFrom(shared).Draw(t, "shared"), FullHead: rapid.Bool().Draw(t, "full head")})
	})
}

func compare(o merit.Order, a, b merit.Merit) int { c, _ := o.Compare(&a, &b); return c }

// Law 1: Compare is a total order up to equality.
func TestCompareIsAntisymmetricAndTransitive(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := orders(false, true).Draw(t, "order")
		a, b, c := merits.Draw(t, "a"), merits.Draw(t, "b"), merits.Draw(t, "c")
		require.Zero(t, compare(o, a, a))
		require.Equal(t, compare(o, a, b), -compare(o, b, a))
		if compare(o, a, b) <= 0 && compare(o, b, c) <= 0 {
			require.LessOrEqual(t, compare(o, a, c), 0)
		}
		order, term := o.Compare(&a, &b)
		require.Equal(t, order == 0, term == merit.None, "a term decides where they are not equal")
		require.Equal(t, order < 0, o.Better(&a, &b))
		before, none := o.Until(&a, &b, term)
		require.Zero(t, before, "all terms before it are equal")
		require.Equal(t, merit.None, none)
	})
}

// Law 2: adding is monotone. Where rim and head are to be alike it is not: the
// least of a room's rims and of its heads may stand on two walls.
func TestAddingIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := orders(false).Draw(t, "order")
		a, b, c := merits.Draw(t, "a"), merits.Draw(t, "b"), merits.Draw(t, "c")
		require.Equal(t, compare(o, a, b), compare(o, a.Plus(&c), b.Plus(&c)))
	})
}

// Adding is what it says: in any order, and nothing added is nothing changed.
func TestPlusIsASum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := merits.Draw(t, "a"), merits.Draw(t, "b"), merits.Draw(t, "c")
		for p := range 16 {
			o := merit.OrderFor(survey.Prefer{LargeCuts: p&1 > 0, Openings: p&2 > 0, Shared: p&4 > 0, FullHead: p&8 > 0})
			ab, bc := a.Plus(&b), b.Plus(&c)
			require.Zero(t, compare(o, ab, b.Plus(&a)))
			require.Zero(t, compare(o, ab.Plus(&c), a.Plus(&bc)))
			require.Zero(t, compare(o, a, a.Plus(&merit.Merit{})))
		}
	})
}

// Law 3: what is counted from some of the pieces does not come after the whole.
// Nor does this hold where rim and head are to be alike: a part may lack the head.
func TestAPartDoesNotComeAfterTheWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := orders(false).Draw(t, "order")
		part, rest := merits.Draw(t, "part"), merits.Draw(t, "rest")
		part.Slack, rest.Slack = 0, 0 // slack is known of a whole set-out alone
		whole := part.Plus(&rest)
		for _, list := range []*[]piece.Share{&part.Runs, &part.Rim, &part.Head, &part.OutOfSight.Runs} {
			*list = slices.Clone(*list)
			for i := range *list {
				grown := (*list)[i].Num + rapid.Int64Range(0, 2).Draw(t, "greater by")
				(*list)[i].Num = min(grown, (*list)[i].Den)
			}
			*list = ascending(*list)
		}
		require.LessOrEqual(t, compare(o, part, whole), 0)
	})
}

// What each term, and each preference, puts first.
func TestTheOrder(t *testing.T) {
	third, quarter, tenth := piece.Share{Num: 20, Den: 60}, piece.Share{Num: 15, Den: 60}, piece.Share{Num: 6, Den: 60}
	rim := func(s ...piece.Share) merit.Merit { return merit.Merit{Rim: s} }
	seen := func(s merit.Sight) merit.Merit { return merit.Merit{Sight: s} }
	unseen := func(s merit.Sight) merit.Merit { return merit.Merit{OutOfSight: s} }
	for _, c := range []struct {
		name          string
		better, worse merit.Merit
		term          merit.Term
		prefer        survey.Prefer
	}{
		{"bare wall before all", seen(merit.Sight{Unworkable: 9}), seen(merit.Sight{Bare: 1}), merit.Bare, survey.Prefer{}},
		{"unworkable pieces before slivers", seen(merit.Sight{Slivers: 9}), seen(merit.Sight{Unworkable: 1}), merit.Unworkable, survey.Prefer{}},
		{"slivers before poor runs", seen(merit.Sight{Fifths: 9}), seen(merit.Sight{Slivers: 1}), merit.Slivers, survey.Prefer{}},
		{"poor runs before exposed ends", merit.Merit{Exposed: 2}, seen(merit.Sight{Fifths: 1}), merit.Fifths, survey.Prefer{}},
		{"exposed ends before free openings", merit.Merit{Openings: 9}, merit.Merit{Exposed: 1}, merit.Exposed, survey.Prefer{}},
		{"free openings before runs", seen(merit.Sight{Thirds: 9}), merit.Merit{Openings: 1}, merit.Openings, survey.Prefer{}},
		{"fewer runs under a third before the worst run", seen(merit.Sight{Thirds: 1, Runs: []piece.Share{tenth}}), seen(merit.Sight{Thirds: 2, Runs: []piece.Share{quarter, quarter}}), merit.Thirds, survey.Prefer{}},
		{"the worst run first", seen(merit.Sight{Runs: []piece.Share{quarter, quarter}}), seen(merit.Sight{Runs: []piece.Share{tenth}}), merit.Runs, survey.Prefer{}},
		{"then the next worst", seen(merit.Sight{Runs: []piece.Share{tenth, third}}), seen(merit.Sight{Runs: []piece.Share{tenth, quarter}}), merit.Runs, survey.Prefer{}},
		{"no run is better than one under a half", seen(merit.Sight{Runs: []piece.Share{tenth}}), seen(merit.Sight{Runs: []piece.Share{tenth, third}}), merit.Runs, survey.Prefer{}},
		{"runs before equal ends", merit.Merit{Mirror: 9}, seen(merit.Sight{Runs: []piece.Share{third}}), merit.Runs, survey.Prefer{}},
		{"equal ends before the rim", rim(tenth), merit.Merit{Mirror: 1}, merit.Mirror, survey.Prefer{}},
		{"a full tile at the rim before one at the head", merit.Merit{Head: []piece.Share{tenth}}, rim(third), merit.Rim, survey.Prefer{}},
		{"the head before what is out of sight", unseen(merit.Sight{Bare: 9}), merit.Merit{Head: []piece.Share{third}}, merit.Head, survey.Prefer{}},
		{"out of sight in the same order", unseen(merit.Sight{Unworkable: 9}), unseen(merit.Sight{Bare: 1}), merit.HiddenBare, survey.Prefer{}},
		{"out of sight before built openings", merit.Merit{Built: 9}, unseen(merit.Sight{Runs: []piece.Share{third}}), merit.HiddenRuns, survey.Prefer{}},
		{"built openings before work", merit.Merit{Work: 9}, merit.Merit{Built: 1}, merit.Built, survey.Prefer{}},
		{"work before corners", merit.Merit{Corners: 9}, merit.Merit{Work: 1}, merit.Work, survey.Prefer{}},
		{"small runs at corners before the bond round them", merit.Merit{Alike: 9}, merit.Merit{Corners: 1}, merit.Corners, survey.Prefer{}},
		{"the bond round corners before facing walls", merit.Merit{Facing: 9}, merit.Merit{Alike: 1}, merit.Alike, survey.Prefer{}},
		{"facing walls before a place wished for", merit.Merit{Near: 9}, merit.Merit{Facing: 1}, merit.Facing, survey.Prefer{}},
		{"a place wished for before a start to find", merit.Merit{Find: 2}, merit.Merit{Near: 1}, merit.Near, survey.Prefer{}},
		{"a start to find before slack", merit.Merit{}, merit.Merit{Find: 1, Slack: 9}, merit.Find, survey.Prefer{}},
		{"more slack", merit.Merit{Slack: 2}, merit.Merit{Slack: 1}, merit.Slack, survey.Prefer{}},

		{"large cuts: runs before exposed ends", merit.Merit{Exposed: 2}, seen(merit.Sight{Runs: []piece.Share{third}}), merit.Runs, survey.Prefer{LargeCuts: true}},
		{"large cuts: exposed ends before equal ends", merit.Merit{Mirror: 9}, merit.Merit{Exposed: 1}, merit.Exposed, survey.Prefer{LargeCuts: true}},
		{"openings: built ones before runs", seen(merit.Sight{Thirds: 9}), merit.Merit{Built: 1}, merit.Built, survey.Prefer{Openings: true}},
		{"openings: free ones before built ones", merit.Merit{Built: 9}, merit.Merit{Openings: 1}, merit.Openings, survey.Prefer{Openings: true}},
		{"full head: the head before the rim", rim(tenth), merit.Merit{Head: []piece.Share{third}}, merit.Head, survey.Prefer{FullHead: true}},
		{"shared: rim and head alike", merit.Merit{Rim: []piece.Share{third}, Head: []piece.Share{third}}, rim(piece.Share{Num: 30, Den: 60}), merit.Rim, survey.Prefer{Shared: true}},
		{"shared: the least of each", merit.Merit{Rim: []piece.Share{quarter, third}, Head: []piece.Share{quarter}}, merit.Merit{Rim: []piece.Share{quarter, third}, Head: []piece.Share{third}}, merit.Rim, survey.Prefer{Shared: true}},
		{"shared: of tiles of two sizes", merit.Merit{Rim: []piece.Share{{Num: 30, Den: 60}}, Head: []piece.Share{{Num: 10, Den: 20}}}, merit.Merit{Rim: []piece.Share{{Num: 30, Den: 60}}, Head: []piece.Share{{Num: 12, Den: 20}}}, merit.Rim, survey.Prefer{Shared: true}},
		{"shared, whatever full head says", merit.Merit{Rim: []piece.Share{third}, Head: []piece.Share{third}}, rim(piece.Share{Num: 30, Den: 60}), merit.Rim, survey.Prefer{Shared: true, FullHead: true}},
	} {
		t.Run(c.name, func(t *testing.T) {
			order, term := merit.OrderFor(c.prefer).Compare(&c.better, &c.worse)
			require.Equal(t, -1, order)
			require.Equal(t, c.term, term, "%s decides", term)
		})
	}
}

// A term has a name of its own.
func TestTermsAreNamed(t *testing.T) {
	seen := map[string]bool{}
	for term := merit.Bare; term <= merit.None; term++ {
		require.NotEmpty(t, term.String())
		require.False(t, seen[term.String()], "%s twice", term)
		seen[term.String()] = true
	}
}
