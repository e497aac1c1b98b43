package count

import (
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The classic starts of the trade, worked by hand: common practice, no source.
func TestClassicStarts(t *testing.T) {
	names := func(c []Classic) (out []string) {
		for _, k := range c {
			out = append(out, k.Name)
		}
		return out
	}
	edges := func(c []Classic) (out []length.Length) {
		for _, k := range c {
			out = append(out, k.Edge)
		}
		return out
	}
	stack := drawWall("1000x600 300x100+2")
	got := stack.Starts.Classics(stack.Outer())
	require.Equal(t, []string{"joint on centre", "tile on centre", "full tile at left", "full tile at right"}, names(got))
	require.Equal(t, []length.Length{501 * mm, 350 * mm, 0, 700 * mm}, edges(got))

	halves := drawWall("1000x600 300x100+2 1/2")
	got = halves.Starts.Classics(halves.Outer())
	require.Equal(t, "quarter on centre", got[2].Name, "in half bond a quarter of a tile stands beside the middle in every course")
	require.Equal(t, 501*mm-302*mm/4, got[2].Edge)

	columns := drawWall("1000x600 300x100+2 1/2 columns")
	require.NotContains(t, names(columns.Starts.Classics(columns.Outer())), "quarter on centre")

	gap := drawWall("1000x600 300x100+2 gap=3")
	require.Equal(t, []length.Length{501 * mm, 350 * mm, 3 * mm, 697 * mm}, edges(gap.Starts.Classics(gap.Outer())), "a full tile stands off the corner by the gap")

	free := drawWall("1000x600 300x100+2 left=0..80")
	p := free.Outer()
	p.Left = 80 * mm
	require.Equal(t, []length.Length{541 * mm, 390 * mm, 80 * mm, 700 * mm}, edges(free.Starts.Classics(p)), "the middle moves with a free end")

	right := drawWall("1000x600 300x100+2 right=920..1000")
	p = right.Outer()
	p.Right = 920 * mm
	require.Equal(t, []length.Length{461 * mm, 310 * mm, 0, 620 * mm}, edges(right.Starts.Classics(p)), "on either side")
	for _, edge := range []length.Length{461 * mm, 501 * mm, 620 * mm, 700 * mm} {
		require.True(t, right.Starts.Has(edge), "those with the end at either limit of its range are tried")
	}
}

// Every mark of the tape is tried over one period, and every classic start: in any course
// with level courses, in any column with columns.
func TestEveryMarkAndClassicStartIsTried(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, _ := drawn(t)
		f := w.facts
		if f.found.Pin != nil {
			t.Skip("pinned")
		}
		tried := w.Starts.Tried()
		require.True(t, slices.IsSorted(tried))
		pitch := f.room.Tile.Width + f.room.Joint
		period := pitch
		if f.frame.plumb {
			period *= length.Length(len(f.shifts))
		}
		require.Less(t, tried[len(tried)-1]-tried[0], period, "no start twice")
		first := tried[0].CeilTo(f.room.Tape)
		for x := first; x < first+period-f.room.Tape; x += f.room.Tape {
			_, found := slices.BinarySearch(tried, x)
			require.True(t, found, "the mark %v", x)
		}
		for _, c := range w.Starts.Classics(w.Outer()) {
			for _, shift := range f.shifts {
				is := func(x length.Length) bool { return length.Mod(x-c.Edge, pitch) == 0 }
				if !f.frame.plumb {
					is = func(x length.Length) bool { return length.Mod(x+shift-c.Edge, pitch) == 0 }
				}
				require.True(t, slices.ContainsFunc(tried, is), "%s, moved by %v", c.Name, shift)
			}
		}
	})
}

func TestAPinnedStartIsTriedAlone(t *testing.T) {
	room, found := sketch("1000x600 300x100+2")
	for is, edge := range map[survey.Struck]length.Length{survey.OnEdge: 123 * mm, survey.OnJoint: 124 * mm, survey.OnTile: -27 * mm} {
		found.Pin = &survey.StartPin{X: 123 * mm, Is: is}
		w := NewWall(&room, found, survey.Left)
		require.Equal(t, []length.Length{edge}, w.Starts.Tried(), is.String())
		require.Greater(t, len(w.Starts.All()), 300, "what else there is can still be asked for")
	}
}

// The groups of a line hold every start that is tried once, each the most promising first.
func TestGroupsHoldEveryStartOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s := drawn(t)
		var got []length.Length
		for _, g := range w.Starts.Groups(s.Line) {
			require.NotEmpty(t, g.Starts)
			for i, start := range g.Starts {
				got = append(got, start.Edge)
				if i > 0 {
					order, term := w.facts.order.Compare(&g.Starts[i-1].Merit, &start.Merit)
					require.LessOrEqual(t, order, 0, "start %d comes before the last one in %s", i, term)
				}
			}
		}
		slices.Sort(got)
		require.Equal(t, w.Starts.Tried(), got)
	})
}
