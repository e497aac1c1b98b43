package count

import (
	"fmt"
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// readAnew reads the terms of the order of merit that pieces give from the pieces alone, as
// merit.md words them, and shares nothing with what counts them but the tile and its bond.
func readAnew(w *Wall, s Setting) (m merit.Merit, left, right []length.Length) {
	_, pieces, bare := w.Cut(s)
	room, n := w.facts.room, int(max(1, w.facts.room.Bond.Den))
	type run struct {
		edges []piece.Edge
		class int
		least length.Length
	}
	runs := map[string]*run{}
	note := func(edges []piece.Edge, class int, size length.Length) {
		if len(edges) == 0 {
			return
		}
		edges = edges[:min(4, len(edges))]
		key := fmt.Sprint(edges, class)
		if r := runs[key]; r == nil {
			runs[key] = &run{edges, class, size}
		} else {
			r.least = min(r.least, size)
		}
	}
	sights := [2]*merit.Sight{&m.Sight, &m.OutOfSight}
	for i := range pieces {
		p := &pieces[i]
		if p.Whole {
			continue
		}
		m.Work += p.Effort()
		for k, sight := range sights {
			switch p.Grade(k == 1) {
			case piece.Hopeless:
				sight.Unworkable++
			case piece.Small:
				sight.Slivers++
			}
		}
		class := ((p.Row % n) + n) % n
		across, up := class, 0
		if room.Bond.Plumb {
			across, up = 0, class
		}
		note(p.Across, across, p.Wide)
		note(p.Up, up, p.High)
	}
	for _, g := range bare {
		sights[boolean(g.Low)].Bare += g.Length
	}
	sides := w.facts.rule.Sides
	ends := map[int][]length.Length{}
	for _, r := range runs {
		size, full, low := r.least/room.Tape*room.Tape, room.Tile.Height, false
		if r.edges[0].Across() {
			full = room.Tile.Width
		}
		base, head := true, true
		for _, e := range r.edges {
			low = low || e.Low(sides)
			base, head = base && e.IsBase(sides), head && e.Side() == survey.SideHead
		}
		sight := sights[boolean(low)]
		sight.Fifths += boolean(5*size < full)
		sight.Thirds += boolean(3*size < full)
		share := piece.Part(size, full)
		if 2*size < full {
			sight.Runs = append(sight.Runs, share)
		}
		switch {
		case low || r.edges[0].Across() || size >= full:
		case base:
			m.Rim = append(m.Rim, share)
		case head:
			m.Head = append(m.Head, share)
		}
		if len(r.edges) == 1 && r.edges[0].Across() {
			side := int(r.edges[0].Side())
			for len(ends[side]) < n {
				ends[side] = append(ends[side], room.Tile.Width)
			}
			ends[side][r.class] = min(ends[side][r.class], r.least)
		}
	}
	for _, list := range [][]piece.Share{m.Sight.Runs, m.OutOfSight.Runs, m.Rim, m.Head} {
		slices.SortFunc(list, func(a, b piece.Share) int { return int(max(-1, min(1, a.Num*b.Den-b.Num*a.Den))) })
	}
	if room.Bond.Plumb {
		n = 1
	}
	cuts := func(side int) []length.Length {
		out := ends[side]
		for len(out) < n {
			out = append(out, room.Tile.Width)
		}
		out = slices.Clone(out[:n])
		slices.Sort(out)
		return out
	}
	left, right = cuts(int(survey.SideLeft)), cuts(int(survey.SideRight))
	if w.Found.Left.Meets == w.Found.Right.Meets {
		for i := range left {
			m.Mirror += (left[i] - right[i]).Abs()
		}
		m.Mirror = m.Mirror / room.Tape * room.Tape
	}
	return m, left, right
}

// Law 1, read anew: what pieces give to the order of merit, term by term.
func TestTheCountIsWhatItsPiecesGive(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s := drawn(t)
		if w.Places.Overlap(s.Placed) || w.Found.SingleLegs() {
			t.Skip("openings overlap, or a leg whose foot alone counts")
		}
		got := w.Count(s)
		want, left, right := readAnew(w, s)
		require.Equal(t, left, got.LeftCuts)
		require.Equal(t, right, got.RightCuts)
		slack := float64(rounded(w))
		for k, pair := range [2][2]merit.Sight{{want.Sight, got.Merit.Sight}, {want.OutOfSight, got.Merit.OutOfSight}} {
			a, b := pair[0], pair[1]
			require.Equal(t, []int{a.Unworkable, a.Slivers, a.Fifths, a.Thirds}, []int{b.Unworkable, b.Slivers, b.Fifths, b.Thirds}, "sight %d", k)
			require.True(t, sameShares(a.Runs, b.Runs), "runs %v, not %v", b.Runs, a.Runs)
			require.InDelta(t, float64(a.Bare), float64(b.Bare), slack)
		}
		require.Equal(t, want.Work, got.Merit.Work)
		require.True(t, sameShares(want.Rim, got.Merit.Rim) && sameShares(want.Head, got.Merit.Head))
		require.Equal(t, want.Mirror, got.Merit.Mirror)
		small := func(cuts []length.Length, is bool) {
			if 3*cuts[0] < w.facts.room.Tile.Width {
				require.True(t, is, "a run at the end is under a third")
			}
		}
		small(got.LeftCuts, got.SmallLeft)
		small(got.RightCuts, got.SmallRight)
	})
}

// Terms 5, 6 and 11 read anew from where tiles of the bond begin and end, one by one.
func TestMarksAreReadFromTheTilesOfTheBond(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s := drawn(t)
		if w.Places.Overlap(s.Placed) {
			t.Skip("openings overlap")
		}
		got, room := w.Count(s).Merit, w.facts.room
		begins, ends := map[bool]map[length.Length]bool{true: {}, false: {}}, map[bool]map[length.Length]bool{true: {}, false: {}}
		b := w.facts.bond
		along, across := w.facts.frame.phases(s.Line, s.Edge)
		for _, row := range b.Rows(across, along, -4000*mm, 4000*mm) {
			begins[room.Bond.Plumb][row.Low], ends[room.Bond.Plumb][row.High] = true, true
			for x := row.First - 15*row.Pitch; x < 5000*mm; x += row.Pitch {
				begins[!room.Bond.Plumb][x], ends[!room.Bond.Plumb][x+row.Width] = true, true
			}
		}
		plumb, level := true, false // edges that stand and edges that lie
		exposed := 0
		if l, r := w.Found.Left, w.Found.Right; l.Meets != r.Meets {
			exposed = boolean(!l.Meets && !begins[plumb][s.Placed.Left] || !r.Meets && !ends[plumb][s.Placed.Right])
		}
		built := 0
		for i, o := range w.facts.typed.Openings {
			if o.Kind == survey.Pipe {
				continue
			}
			e := s.Placed.Openings[i]
			if !o.Left.Free() && !o.Width.Free() {
				built += boolean(!ends[plumb][e.Left]) + boolean(!begins[plumb][e.Right])
			}
			if !o.Bottom.Free() && !o.Height.Free() {
				built += boolean(!ends[level][e.Bottom]) + boolean(!begins[level][e.Top])
			}
		}
		require.Equal(t, exposed, got.Exposed)
		require.Equal(t, built, got.Built)
	})
}
