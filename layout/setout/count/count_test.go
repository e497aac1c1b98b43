package count

import (
	"os"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/chance"
	"coursewright/layout/steady"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestMain(m *testing.M) { os.Exit(steady.Run(m, "300")) }

// drawn draws a set-out of the first wall of a random room.
func drawn(t *rapid.T) (*Wall, Setting) {
	room := chance.Room(t, 2)
	w := NewWall(&room, room.Walls[0], survey.Left)
	starts := w.Starts.Tried()
	edge := starts[rapid.IntRange(0, len(starts)-1).Draw(t, "start")]
	line := length.Length(rapid.IntRange(-700, 0).Draw(t, "line")) * room.Tape
	if rapid.Bool().Draw(t, "off the tape") {
		line += length.Length(rapid.IntRange(0, 959).Draw(t, "units"))
		edge += length.Length(rapid.IntRange(0, 959).Draw(t, "units along"))
	}
	s := Setting{Line: line, Edge: edge, Placed: w.Outer()}
	s.Placed.Openings = append([]survey.Edges(nil), s.Placed.Openings...)
	pick := func(name string, n int) int { return rapid.IntRange(0, n-1).Draw(t, name) }
	if o := w.Places.Ends(edge, false); !w.Found.Left.Meets {
		s.Placed.Left = o[pick("left", len(o))]
	}
	if o := w.Places.Ends(edge, true); !w.Found.Right.Meets {
		s.Placed.Right = o[pick("right", len(o))]
	}
	if o := w.Places.Heads(line); !w.Found.Head.Meets {
		s.Placed.Head = o[pick("head", len(o))]
	}
	for _, i := range w.Free() {
		x, y := w.Places.LevelPairs(i, edge), w.Places.UprightPairs(i, line)
		a, b := x[pick("x", len(x))], y[pick("y", len(y))]
		s.Placed.Openings[i] = survey.Edges{Left: a.Low, Right: a.High, Bottom: b.Low, Top: b.High}
	}
	return w, s
}

// slowly counts a set-out with every row cut.
func (w *Wall) slowly(s Setting) Counted {
	shape, pieces, bare := w.Cut(s)
	t := w.cutter.tally()
	for i := range pieces {
		t.piece(&pieces[i])
	}
	t.bare(bare)
	return t.counted(s, shape.Region.Bounds())
}

// Law 1: plain rows by arithmetic give what cutting every row gives.
func TestPlainRowsGiveWhatCuttingGives(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s := drawn(t)
		if w.Places.Overlap(s.Placed) {
			t.Skip("openings overlap")
		}
		fast, slow := w.Count(s), w.slowly(s)
		require.ElementsMatch(t, slow.Runs, fast.Runs)
		// Where a raked edge stands in a joint, the end of what is bare is rounded.
		require.InDelta(t, float64(slow.Merit.Bare), float64(fast.Merit.Bare), 24)
		require.InDelta(t, float64(slow.Merit.OutOfSight.Bare), float64(fast.Merit.OutOfSight.Bare), 24)
		slow.Merit.Bare, slow.Merit.OutOfSight.Bare = fast.Merit.Bare, fast.Merit.OutOfSight.Bare
		require.Equal(t, slow.Merit, fast.Merit)
	})
}

// Law 2: no bound claims more than the count.
func TestNoBoundClaimsMoreThanTheCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s := drawn(t)
		if w.Places.Overlap(s.Placed) {
			t.Skip("openings overlap")
		}
		order := merit.OrderFor(survey.Prefer{})
		got := w.Count(s).Merit
		bounds := map[string]merit.Merit{"both": w.Bounds.OfBoth(s.Line, s.Edge)}
		for _, g := range w.Starts.Groups(s.Line) {
			for _, start := range g.Starts {
				if start.Edge == s.Edge {
					bounds["group"] = start.Merit.Plus(&g.Offset)
				}
			}
		}
		if w.FixedEnds() {
			beyond := w.Bounds.Beyond(s)
			bounds["beyond"] = beyond
			bounds["plainly"] = w.Bounds.Plainly(s.Line, s.Edge)
		}
		for name, bound := range bounds {
			better, term := order.Compare(&got, &bound)
			require.GreaterOrEqual(t, better, 0, "%s claims more in %s:\n%+v\n%+v", name, term, bound, got)
			if !w.FixedEnds() {
				continue // the best place of a free end may give more in a later term than another place
			}
			require.LessOrEqual(t, bound.Slivers+bound.Unworkable, got.Slivers+got.Unworkable, name)
			require.LessOrEqual(t, bound.Work, got.Work, name)
			require.LessOrEqual(t, bound.Mirror, got.Mirror, name)
		}
	})
}
