package count

import (
	"fmt"
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// over is a set-out of a wall seen from the lower line.
func (s Setting) over(w survey.WallFound, by length.Length) Setting {
	out := s
	out.Line += by
	out.Placed.Head += by
	out.Placed.Openings = slices.Clone(s.Placed.Openings)
	for i := range w.Openings {
		if e := &out.Placed.Openings[i]; w.Openings[i].Kind != survey.Pipe {
			e.Bottom, e.Top = e.Bottom+by, e.Top+by
		}
	}
	return out
}

// The level line may be struck at any mark: of the same wall, found from another, the same set-out has
// the same merit and the same bounds, whatever leans, rakes, and is free.
func TestTheLevelLineMayBeStruckAnywhere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := chance.House(t, 3)
		found := room.Walls[rapid.IntRange(0, len(room.Walls)-1).Draw(t, "wall")]
		by := length.Length(rapid.IntRange(-900, 900).Draw(t, "lower by")) * room.Tape
		high := chance.Raised(found, by)
		w, m := NewWall(&room, found, survey.Left), NewWall(&room, high, survey.Left)
		s := setting(t, w)
		if w.Places.Overlap(s.Placed) {
			t.Skip("openings overlap")
		}
		r := s.over(found, by)
		a, b := w.Count(s), m.Count(r)
		same(t, w, a.Merit, b.Merit)
		require.Equal(t, a.LeftCuts, b.LeftCuts)
		require.Equal(t, a.RightCuts, b.RightCuts)
		for name, bound := range map[string]func(*Wall, Setting) merit.Merit{
			"OfBoth":  func(w *Wall, s Setting) merit.Merit { return w.Bounds.OfBoth(s.Line, s.Edge) },
			"Plainly": func(w *Wall, s Setting) merit.Merit { return w.Bounds.Plainly(s.Line, s.Edge) },
			"Beyond":  func(w *Wall, s Setting) merit.Merit { return w.Bounds.Beyond(s) },
		} {
			x, y := bound(w, s), bound(m, r)
			order, term := w.facts.order.Compare(&x, &y)
			require.Zero(t, order, "%s differs in %s:\n%+v\n%+v", name, term, x, y)
		}
	})
}

// measuredAt is a wall on which every free mark was measured where it is placed.
func measuredAt(w survey.WallFound, p survey.Placed) survey.WallFound {
	at := func(x length.Length) survey.Span { return survey.Span{From: x, To: x} }
	out := w
	if !w.Left.Meets {
		out.Left.Stops = at(p.Left)
	}
	if !w.Right.Meets {
		out.Right.Stops = at(p.Right)
	}
	if !w.Head.Meets {
		out.Head.Stops = at(p.Head)
	}
	out.Openings = slices.Clone(w.Openings)
	for i, e := range p.Openings {
		if o := &out.Openings[i]; o.Kind != survey.Pipe {
			o.Left, o.Width, o.Bottom, o.Height = at(e.Left), at(e.Right-e.Left), at(e.Bottom), at(e.Top-e.Bottom)
		}
	}
	return out
}

// A mark that is placed stands as one that was measured there: the tiles round it are cut alike, in sight and out
// of it. What differs is how it is judged: the edges of a free opening come before those of a measured one.
func TestAPlacedMarkStandsAsAMeasuredOne(t *testing.T) {
	placed := 0
	rapid.Check(t, func(t *rapid.T) {
		room := chance.House(t, 3)
		found := room.Walls[rapid.IntRange(0, len(room.Walls)-1).Draw(t, "wall")]
		w := NewWall(&room, found, survey.Left)
		s := setting(t, w)
		if w.Places.Overlap(s.Placed) {
			t.Skip("openings overlap")
		}
		m := NewWall(&room, measuredAt(found, s.Placed), survey.Left)
		if len(w.Free()) > 0 {
			require.Empty(t, m.Free())
			placed++
		}
		a, b := w.Count(s), m.Count(s)
		near := func(t *rapid.T, x, y merit.Sight) {
			require.Equal(t, [4]int{x.Unworkable, x.Slivers, x.Fifths, x.Thirds}, [4]int{y.Unworkable, y.Slivers, y.Fifths, y.Thirds})
			require.LessOrEqual(t, (x.Bare - y.Bare).Abs(), rounded(w))
			require.Len(t, y.Runs, len(x.Runs))
		}
		near(t, a.Merit.Sight, b.Merit.Sight)
		near(t, a.Merit.OutOfSight, b.Merit.OutOfSight)
		require.Equal(t, a.Merit.Work, b.Merit.Work)
		require.Equal(t, a.LeftCuts, b.LeftCuts)
		require.Equal(t, a.RightCuts, b.RightCuts)
		sameRuns(t, w, a.Runs, b.Runs)
		require.Zero(t, b.Merit.Openings, "nothing is placed there")
	})
	require.Greater(t, placed, 20)
}

// A wall that is longer by whole tiles and their joints, or higher by as many courses as the bond has, is cut
// as before at its boundary: more tiles are whole, and no run is wider or narrower.
func TestAWallLongerByWholeTilesHasTheSameRuns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string, low, high int) int { return rapid.IntRange(low, high).Draw(t, name) }
		across, up, joint := n("tile width", 40, 300), n("tile height", 40, 300), n("joint", 1, 5)
		wide, high := n("wall width", 700, 1500), n("wall height", 700, 1500)
		bond := rapid.SampledFrom([]struct {
			words   string
			classes int
			plumb   bool
		}{{"", 1, false}, {"1/2", 2, false}, {"1/3", 3, false}, {"columns", 1, true}, {"1/2 columns", 2, true}}).Draw(t, "bond")
		more := rapid.SampledFrom([]string{"", "gap=3", "window=200,150,250,200", "pipe=220,300,60"}).Draw(t, "more")
		along, over := across+joint, up+joint // by which the wall grows
		if bond.plumb {
			along *= bond.classes
		} else {
			over *= bond.classes
		}
		draw := func(wide, high int) *Wall {
			return drawWall(fmt.Sprintf("%dx%d %dx%d+%d %s %s", wide, high, across, up, joint, bond.words, more))
		}
		s := Setting{Line: length.Length(n("line", -300, 0)) * mm, Edge: length.Length(n("edge", -300, 0)) * mm}
		counted := func(w *Wall) Counted {
			s.Placed = w.Outer()
			return w.Count(s)
		}
		a := counted(draw(wide, high))
		for name, b := range map[string]Counted{"longer": counted(draw(wide+along, high)), "higher": counted(draw(wide, high+over))} {
			require.ElementsMatch(t, leasts(a.Runs), leasts(b.Runs), name)
			require.Equal(t, a.LeftCuts, b.LeftCuts, name)
			require.Equal(t, a.RightCuts, b.RightCuts, name)
			require.Equal(t, a.Merit.Mirror, b.Merit.Mirror, name)
			require.Equal(t, [2]bool{a.SmallLeft, a.SmallRight}, [2]bool{b.SmallLeft, b.SmallRight}, name)
			require.Equal(t, a.Merit.Built, b.Merit.Built, name)
		}
	})
}

// leasts are the least widths of runs by what cuts them.
func leasts(runs []Run) (out []string) {
	for _, r := range runs {
		out = append(out, fmt.Sprint(r.Edges, r.Class, r.Least))
	}
	return out
}

// By hand: what no tile stands on changes nothing: a pipe over the head, one in a leg's corner under the tub's, a window
// beyond an end that stops.
func TestWhatIsOffTheTileChangesNothing(t *testing.T) {
	for _, c := range [][2]string{
		{"1000x900 300x100+2 1/2 head=600", "pipe=400,700,80"},
		{"1000x900 300x100+2 head=600", "window=300,200,650,100"},
		{"1000x600 300x100+2 leg=150", "pipe=400,-100,80"},
		{"1000x600 300x100+2 columns left=300", "pipe=150,300,100"},
		{"1000x600 300x100+2 right=700", "window=750,100,200,200"},
	} {
		without, with := drawWall(c[0]), drawWall(c[0]+" "+c[1])
		for _, at := range []length.Length{0, -37, -150, -299} {
			s := Setting{Line: at * mm / 3, Edge: at * mm, Placed: without.Outer()}
			a := without.Count(s)
			s.Placed = with.Outer()
			b := with.Count(s)
			require.ElementsMatch(t, a.Runs, b.Runs, c)
			require.Equal(t, a.Merit.Sight, b.Merit.Sight, c)
			require.Equal(t, a.Merit.OutOfSight, b.Merit.OutOfSight, c)
			require.Equal(t, a.Merit.Work, b.Merit.Work, c)
		}
	}
}

// A hole that is wholly inside a tile is cut into it: that tile is a piece more to work, and no other is touched.
func TestAHoleInATileIsThatTilesWork(t *testing.T) {
	without, with := drawWall("1000x600 300x100+2"), drawWall("1000x600 300x100+2 pipe=450,50,40")
	s := Setting{Placed: without.Outer()}
	a := without.Count(s)
	s.Placed = with.Outer()
	b := with.Count(s)
	require.Equal(t, a.Runs, b.Runs)
	require.Equal(t, a.Merit.Sight, b.Merit.Sight)
	_, plain, _ := without.Cut(s)
	_, holed, _ := with.Cut(s)
	require.Len(t, holed, len(plain))
	whole := func(list []piece.Piece) (n int) {
		for _, p := range list {
			if p.Whole {
				n++
			}
		}
		return n
	}
	require.Equal(t, whole(plain)-1, whole(holed))
	require.Greater(t, b.Merit.Work, a.Merit.Work)
}

// Two holes in one tile are two cuts of one piece; in two tiles they are two pieces.
func TestTwoHolesInOneTileAreOnePiece(t *testing.T) {
	cut := func(pipes string) (n int) {
		w := drawWall("1000x600 300x100+2 " + pipes)
		_, pieces, _ := w.Cut(Setting{Placed: w.Outer()})
		for _, p := range pieces {
			if p.Kind&piece.Hole != 0 {
				n++
			}
		}
		return n
	}
	require.Equal(t, 1, cut("pipe=400,50,40 pipe=500,50,40"))
	require.Equal(t, 2, cut("pipe=400,50,40 pipe=400,152,40"))
	require.Equal(t, 4, cut("pipe=301,101,40"), "over the corner of four")
}
