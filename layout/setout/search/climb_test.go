package search

import (
	"math"
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Every beginning of things that are spread lies evenly over them, and all come once.
func TestSpreadOverAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 200).Draw(t, "things")
		all := make([]int, n)
		for i := range all {
			all[i] = i
		}
		got := spread(all)
		require.ElementsMatch(t, all, got)
		first := slices.Clone(got[:(n+3)/4])
		slices.Sort(first)
		for i, k := range first {
			require.InDelta(t, 0, k-4*i, 4, "of a quarter of them the one after %d others", i)
		}
	})
}

// Far apart, and with work enough, every line is looked at once, and gives what it says that it gives.
func TestAScoutLooksAtEveryLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := coarse(t, 2)
		s := solverIn(&room)
		var lines []length.Length
		for _, c := range (&scout{s, math.MaxInt}).lines() {
			lines = append(lines, c.line)
			m := s.whole(c.walls)
			order, term := s.order.Compare(&m, &c.merit)
			require.Zero(t, order, "another merit in %s", term)
		}
		require.ElementsMatch(t, s.lines(), lines)
		require.LessOrEqual(t, len((&scout{s, 0}).lines()), 1, "and none is begun without work")
	})
}

// Starts that are looked at far apart are so many at most, and none lies much farther from the next
// than any other.
func TestStartsFarApart(t *testing.T) {
	s := solverOf("1000x600 300x100+2 1/2")
	all := s.walls[0].Starts.Tried()
	require.Equal(t, all, apart(all, len(all)))
	for _, most := range []int{1, 2, 7, 32} {
		got := apart(all, most)
		require.LessOrEqual(t, len(got), most)
		require.Greater(t, len(got), most/2)
		step := slices.Index(all, got[len(got)-1]) / max(1, len(got)-1)
		for i, edge := range got {
			require.Equal(t, i*step, slices.Index(all, edge))
		}
	}
}

// A trial with other starts, or that climbs, is no worse than what it began with, and gives what it says.
func TestClimbingOnlyBetters(t *testing.T) {
	moved := 0
	rapid.Check(t, func(t *rapid.T) {
		room := coarse(t, 2)
		s := solverIn(&room)
		var from []*trial
		for range 2 {
			s = rapid.SampledFrom(s.task.hands).Draw(t, "hand")
			line := rapid.SampledFrom(s.lines()).Draw(t, "line")
			var walls []count.Counted
			for _, w := range s.walls {
				walls = append(walls, *s.place(w, line, rapid.SampledFrom(w.Starts.Tried()).Draw(t, "start"), nil, nil, fewTries))
			}
			from = append(from, trialOf(s, line, walls))
		}
		effort := rapid.SampledFrom([]int{0, s.fresh}).Draw(t, "effort")
		s.fresh = effort
		for i, after := range []*trial{from[0].restarted(effort), climb(slices.Clone(from), effort), from[0].slid()} {
			require.False(t, s.order.Better(&from[0].merit, &after.merit))
			require.False(t, i == 1 && s.order.Better(&from[1].merit, &after.merit), "the other was the better one")
			m := s.whole(after.walls)
			order, term := s.order.Compare(&m, &after.merit)
			require.Zero(t, order, "another merit in %s", term)
			if s.order.Better(&after.merit, &from[0].merit) {
				moved++
			}
		}
	})
	require.Positive(t, moved, "nothing was bettered")
}

// With nothing free but the start, and work enough, no other start of the wall that was looked at last is better.
func TestRestartedAtTheBestStart(t *testing.T) {
	for _, line := range []string{"1000x600 300x100+2", "1000x600 300x100+2 1/2 window=300,200,250,150", "1130x640 300x100+2 1/3 base=0,-8", "1000x600 300x100+2 1/4 columns"} {
		s := solverOf(line)
		at := s.lines()[5]
		t0 := trialOf(s, at, []count.Counted{*s.place(s.walls[0], at, s.walls[0].Starts.Tried()[7], nil, nil, tries)})
		got := t0.restarted(math.MaxInt32)
		for _, edge := range s.walls[0].Starts.Tried() {
			m := s.whole([]count.Counted{*s.place(s.walls[0], at, edge, nil, nil, tries)})
			order, term := s.order.Until(&m, &got.merit, s.order.Shared())
			require.GreaterOrEqual(t, order, 0, "%s: begun at %v it is better in %s", line, edge, term)
		}
	}
}

// Where only the marks along the courses are placed, the head and the level edges of openings stay.
func TestPlacedAlongTheCourses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := coarse(t, 1)
		s := solverIn(&room)
		w, line := s.walls[0], rapid.SampledFrom(s.lines()).Draw(t, "line")
		before := anywhere(t, s.placer(w, line, w.Starts.Tried()[0], nil)).Placed
		got := s.placer(w, line, rapid.SampledFrom(w.Starts.Tried()).Draw(t, "start"), nil).along(before).Placed
		require.Equal(t, before.Head, got.Head)
		for _, i := range w.Free() {
			require.Equal(t, before.Openings[i].Bottom, got.Openings[i].Bottom)
			require.Equal(t, before.Openings[i].Top, got.Openings[i].Top)
		}
	})
}

// Of the starts that give most those near one that is taken are left out.
func TestStartsThatAreScattered(t *testing.T) {
	var all []count.Counted
	for _, at := range []length.Length{500, 501, 499, 510, 100, 509, 90, 300, 700, 800, 900} {
		all = append(all, count.Counted{Setting: count.Setting{Edge: at * mm}})
	}
	var got []length.Length
	for _, c := range scattered(all, func(c count.Counted) length.Length { return c.Edge }, 10*mm) {
		got = append(got, c.Edge/mm)
	}
	require.Equal(t, []length.Length{500, 510, 100, 90, 300, 700}, got)
}

// Starts that promise alike in sight come spread over the wall; one that promises more comes first all the same.
func TestStartsThatPromiseAlikeComeSpread(t *testing.T) {
	var starts []*count.Start
	for i := range 9 {
		s := &count.Start{Edge: length.Length(i)}
		if s.Merit.Find = i; i > 0 { // out of sight of all that is judged there
			s.Merit.Thirds = 1
		}
		starts = append(starts, s)
	}
	var got []length.Length
	for _, s := range spreadStarts(merit.OrderFor(survey.Prefer{}), starts) {
		got = append(got, s.Edge)
	}
	require.Equal(t, []length.Length{0, 1, 5, 3, 7, 2, 6, 4, 8}, got)
	require.Equal(t, length.Length(1), starts[1].Edge, "what all hunts read stays as it is")
}
