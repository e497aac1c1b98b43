package count

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// What is sure beside a free end where it stands is no more than the count with it there.
func TestBesideAFreeEndNoMoreIsClaimedThanTheCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s, got := countedRoom(t)
		z := w.Bounds.zones
		along, across := w.facts.frame.phases(s.Line, s.Edge)
		_, bands := w.Bounds.standingEnds(along, w.Bounds.rows.at(across))
		for _, right := range []bool{false, true} {
			if !z.zoned(right) {
				continue
			}
			at := w.freeEnd(s, right)
			bound := z.at(right, at, along, bands, nil)
			claims(t, w, bound, got)
			claimsNoTerm(t, bound, got)
			best := w.Bounds.movable(right, along, bands, nil)
			order, term := w.facts.order.Compare(&bound, &best)
			if !w.facts.frame.plumb {
				bound.Exposed = w.Marks.ExposedAt(s.Edge, at, right)
				order, term = w.facts.order.Compare(&bound, &best)
			}
			require.GreaterOrEqual(t, order, 0, "the best place of all gives no less than this one in %s", term)
		}
	})
}

// freeEnd is where a free end of the rows stands in a setting.
func (w *Wall) freeEnd(s Setting, right bool) length.Length {
	switch {
	case w.facts.frame.plumb:
		return s.Placed.Head
	case right:
		return s.Placed.Right
	}
	return s.Placed.Left
}

// By hand: 300 by 100 with joints of 2 from 0, the right end free between 700 and 800. At
// 720 each of the five plain courses loses its tile 604–904 to 116.
func TestAFreeEndByHand(t *testing.T) {
	w := drawWall("800x508 300x100+2 right=700..800")
	b := w.Bounds
	_, bands := b.standingEnds(0, b.rows.at(0))
	at := func(x length.Length) (work, slivers, runs int) {
		m := b.zones.at(true, x*mm, 0, bands, nil)
		return m.Work, m.Slivers + m.Unworkable, len(m.Runs)
	}
	work, slivers, runs := at(720)
	require.Equal(t, []int{5, 0, 1}, []int{work, slivers, runs}, "116 of 300 in five courses")
	work, slivers, runs = at(800)
	require.Equal(t, []int{5, 0, 0}, []int{work, slivers, runs}, "196 is more than half")
	thin := drawWall("800x508 300x100+2 right=610..800")
	_, bands = thin.Bounds.standingEnds(0, thin.Bounds.rows.at(0))
	m := thin.Bounds.zones.at(true, 610*mm, 0, bands, nil)
	require.Equal(t, 5, m.Unworkable, "6 of each")
}

// Beside a free end nothing is claimed of courses into which a free opening or a pipe may
// come within two tiles of it: of the five, those that are clear.
func TestWhatComesNearAFreeEnd(t *testing.T) {
	for name, c := range map[string]struct {
		beside  string
		courses int
	}{
		"nothing":                         {"", 5},
		"a niche that may move":           {" niche=300..320,200,110,80", 0}, // all of the band from base to ceiling
		"a niche far enough":              {" niche=20..40,40,110,80", 5},    // 700 - 604 = 96
		"a window is an edge that stands": {" window=300,200,110,80", 4},     // course 1 is none of the plain ones
		"a pipe":                          {" pipe=400,150,20", 0},
	} {
		w := drawWall("800x508 300x100+2 right=700..800" + c.beside)
		b := w.Bounds
		_, bands := b.standingEnds(0, b.rows.at(0))
		m := b.zones.at(true, 720*mm, 0, bands, nil)
		require.Equal(t, c.courses, m.Work, name)
	}
}

// Which side of the rows moves, and where it may stand.
func TestWhatTheRowsRunInto(t *testing.T) {
	for name, c := range map[string]struct {
		sketch      string
		left, right bool
	}{
		"corners":                   {"1000x600 300x100+2", false, false},
		"a free end at the left":    {"1000x600 300x100+2 left=0..80", true, false},
		"a free end at the right":   {"1000x600 300x100+2 right=900..1000", false, true},
		"a free head over courses":  {"1000x600 300x100+2 head=500..600", false, false},
		"a free head over columns":  {"1000x600 300x100+2 columns head=500..600", false, true},
		"a free end beside columns": {"1000x600 300x100+2 columns left=0..80", false, false},
		"a stop that was measured":  {"1000x600 300x100+2 left=80", false, false},
	} {
		z := drawWall(c.sketch).Bounds.zones
		require.Equal(t, []bool{c.left, c.right}, []bool{z.zoned(false), z.zoned(true)}, name)
	}
	z := drawWall("1000x600 300x100+2 columns head=500..600").Bounds.zones
	require.Equal(t, survey.Span{From: 500 * mm, To: 600 * mm}, z.stops(true))
}
