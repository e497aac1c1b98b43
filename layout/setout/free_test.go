package setout

import (
	"os"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// freeRoom is a wall whose niche, ends and head are free, the ranges now wide
// and now too narrow for a joint line, some of the marks pinned.
func freeRoom(t *rapid.T) survey.Room {
	room := randomRoom(t)
	w := &room.Walls[0]
	w.MarkPins = map[survey.MarkName]length.Length{}
	span := func(name string, low, wide int) survey.Span {
		from := length.Length(low) * mm
		return survey.Span{From: from, To: from + length.Length(rapid.IntRange(0, wide).Draw(t, name))*mm}
	}
	w.Openings = []survey.OpeningFound{{Kind: "niche", Name: "n",
		Left: span("left", 100, 150), Width: span("wide", 80, 100), Bottom: span("bottom", -100, 150), Height: span("tall", 100, 100)}}
	if rapid.Bool().Draw(t, "free head") {
		w.Head = survey.HeadFound{Stops: span("head", 300, 100)}
	}
	if rapid.Bool().Draw(t, "free right") {
		w.Right = survey.EndFound{Stops: survey.Span{From: w.Width - 90*mm, To: w.Width - 10*mm}}
	}
	if rapid.Bool().Draw(t, "pinned top") {
		o := w.Openings[0]
		w.MarkPins["niche n top"] = o.Bottom.From + o.Height.From + 20*mm
		if o.Height.To < o.Height.From+20*mm {
			delete(w.MarkPins, "niche n top")
		}
	}
	return room
}

// With free marks the solver's count is the count of the pieces, every mark is
// in its range, and a pinned one is where it was pinned.
func TestFreeMarksAreCountedAsCutAndKeepTheirRanges(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := freeRoom(t)
		room.Tape = 6 * mm // fewer marks, as good for counting
		found := newSolver(&room, survey.Left).best(nil, mostWork)
		f, c := found.solver.fields[0], found.choices[0]
		want := f.measureAll(found.line, c.edge, c.placed)
		require.Equal(t, want.Bare > 0, found.merit.Bare > 0)
		want.Bare = found.merit.Bare
		require.Equal(t, want, found.merit)
		w := room.Walls[0]
		o, e := w.Openings[0], c.placed.Openings[0]
		inside := func(s survey.Span, x length.Length) {
			require.True(t, s.From <= x && x <= s.To, "%v in %v", x, s)
		}
		inside(o.Left, e.Left)
		inside(o.Width, e.Right-e.Left)
		inside(o.Bottom, e.Bottom)
		inside(o.Height, e.Top-e.Bottom)
		if !w.Head.Meets {
			inside(w.Head.Stops, c.placed.Head)
		}
		if !w.Right.Meets {
			inside(w.Right.Stops, c.placed.Right)
		}
		if x, pinned := w.MarkPins["niche n top"]; pinned {
			require.Equal(t, x, e.Top)
		}
	})
}

// Found by placing a pipe where the free niche of a wall liked to stand.
func TestAFreeNicheStandsClearOfAPipe(t *testing.T) {
	file, err := os.ReadFile("../../testdata/jobs/alcove.json")
	require.NoError(t, err)
	job, err := survey.Read(file)
	require.NoError(t, err)
	room, faults := job.Resolve()
	require.Empty(t, faults)
	back := &room.Walls[1]
	niche := Solve(room).Walls[1].Placed.Openings[0]
	back.Openings = append(back.Openings, survey.OpeningFound{Kind: "pipe", Name: "p", At: niche.Left + 10*mm, Up: niche.Bottom + 10*mm, Diameter: 30 * mm})
	clear := Solve(room).Walls[1].Placed.Openings[0]
	require.NotEqual(t, niche, clear)
	pipe := box(survey.Edges{Left: niche.Left - 5*mm, Right: niche.Left + 25*mm, Bottom: niche.Bottom - 5*mm, Top: niche.Bottom + 25*mm})
	require.False(t, box(clear).Overlaps(pipe), "%v", clear)
}
