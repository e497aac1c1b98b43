package setout

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

const mm = length.Millimetre

// randomRoom is a wall with rakes, leans, a step, laps, a niche and a pipe.
func randomRoom(t *rapid.T) survey.Room {
	n := func(name string, low, high int) length.Length {
		return length.Length(rapid.IntRange(low*10, high*10).Draw(t, name)) * 96
	}
	r := survey.Room{Units: length.Metric, Tape: mm, Joint: n("joint", 0, 5), Bed: 5 * mm, Sealant: 6 * mm,
		Tile: survey.TileSize{Width: n("tile width", 50, 500), Height: n("tile height", 50, 300), Thickness: 8 * mm},
		Bond: survey.BondRule{Num: int64(rapid.IntRange(0, 1).Draw(t, "num")), Den: 2, Plumb: rapid.Bool().Draw(t, "plumb"), Hand: survey.Left}}
	if r.Bond.Num == 0 {
		r.Bond.Den = 1
	}
	w := survey.WallFound{Name: "w", Letter: "W", Width: n("width", 500, 1500)}
	lean := func() []survey.Reading {
		if rapid.Bool().Draw(t, "plumb end") {
			return nil
		}
		return []survey.Reading{{At: -600 * mm, Value: n("lean", -8, 8)}, {At: 600 * mm, Value: n("lean", -8, 8)}}
	}
	w.Left = survey.EndFound{Meets: true, Gap: 3 * mm, Behind: 13 * mm, Lean: lean()}
	w.Right = survey.EndFound{Meets: true, Gap: 3 * mm, Cover: 13 * mm, Lean: lean()}
	w.Base = []survey.SegmentFound{{Meets: "tub", Gap: 3 * mm, Readings: []survey.Reading{{At: 0, Value: -600 * mm}, {At: w.Width / 2, Value: -600*mm + n("tub", -8, 8)}, {At: w.Width, Value: -600*mm + n("tub", -8, 8)}}}}
	if rapid.Bool().Draw(t, "leg") {
		x := n("leg width", 30, 150)
		w.Base[0].Readings[0].At = x
		w.Base = append([]survey.SegmentFound{{Meets: "floor", Gap: 3 * mm, Readings: []survey.Reading{{At: 0, Value: -700 * mm}, {At: x, Value: -700 * mm}}}}, w.Base...)
	}
	w.Head = survey.HeadFound{Meets: true, Gap: 3 * mm, Readings: []survey.Reading{{At: 0, Value: 400 * mm}, {At: w.Width, Value: 400*mm + n("ceiling", -8, 8)}}}
	if rapid.Bool().Draw(t, "niche") {
		w.Openings = []survey.OpeningFound{{Kind: "niche", Name: "n", Left: at(n("left", 100, 300)), Width: at(n("wide", 50, 150)), Bottom: at(n("bottom", -100, 100)), Height: at(n("tall", 50, 200))}}
	}
	if rapid.Bool().Draw(t, "pipe") {
		w.Openings = append(w.Openings, survey.OpeningFound{Kind: "pipe", Name: "p", At: n("pipe", 20, 480), Up: n("pipe height", -500, 350), Diameter: n("diameter", 10, 150)})
	}
	r.Walls = []survey.WallFound{w}
	return r
}

func at(x length.Length) survey.Span { return survey.Span{From: x, To: x} }

// The arithmetic count of a set-out is the count of its cut pieces.
func TestCountingByArithmeticIsCountingThePieces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := randomRoom(t)
		s := newSolver(&room, survey.Left)
		f := s.fields[0]
		line := length.Length(rapid.IntRange(-600_000, 0).Draw(t, "line"))
		edge := length.Length(rapid.IntRange(0, 500_000).Draw(t, "edge"))
		if rapid.Bool().Draw(t, "at a turning point") {
			ls := s.lines(false)
			line = ls[rapid.IntRange(0, len(ls)-1).Draw(t, "which line")]
			es := s.edges(0, line, false)
			edge = es[rapid.IntRange(0, len(es)-1).Draw(t, "which edge")]
		}
		across, _ := f.frame(line, edge)
		got := f.weigh(line, edge, s.compiled(0, across, line))
		want := f.measureAll(line, edge, got.placed)
		// Where two strips meet in a corner one bare place may be counted as
		// two; whether there is any is never in doubt.
		require.Equal(t, want.Bare > 0, got.merit.Bare > 0)
		want.Bare = got.merit.Bare
		require.Equal(t, want, got.merit)
		b := f.lineAxis.bound(line)
		require.False(t, got.merit.Better(Merit{Slivers: b.Slivers, Smallest: b.Smallest, CutPieces: b.CutPieces}), "line bound %v", b)
		b = f.startAxis.bound(edge)
		require.False(t, got.merit.Better(Merit{Slivers: b.Slivers, Smallest: b.Smallest, CutPieces: b.CutPieces}), "start bound %v", b)
	})
}
