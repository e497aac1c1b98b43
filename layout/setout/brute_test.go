package setout

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// No set-out on the tape, counted piece by piece, beats the one found.
func TestBruteForceOnTheTapeNeverBeatsTheSolver(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := randomRoom(t)
		room.Tape = 3 * mm
		s := newSolver(&room, survey.Left)
		found := s.best(nil, mostWork)
		f := s.fields[0]
		placed := found.choices[0].placed
		require.Equal(t, found.merit, f.measureAll(found.line, found.choices[0].edge, placed))
		pitch := room.Tile.Height + room.Joint
		// The start is marked by the wall's middle, where it is easy to measure.
		marks := everyMark(s.startFrom(f), s.startPeriod(f), room.Tape, room.Joint.Half(), -room.Tile.Width.Half())
		from := f.shape.Solid.Bounds().Bottom.CeilTo(room.Tape)
		for range 30 {
			line := from + room.Tape*length.Length(rapid.IntRange(0, int(pitch/room.Tape)-1).Draw(t, "line"))
			edge := rapid.SampledFrom(marks).Draw(t, "edge")
			m := f.measureAll(line, edge, placed)
			require.False(t, m.Better(found.merit), "line %d edge %d: %v beats %v", line, edge, m, found.merit)
		}
	})
}

// On a toy pitch every whole unit of the period is tried and the best is the
// solver's.
func TestOnAToyPitchEveryPlaceIsTried(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := toy(t)
		s := newSolver(&room, survey.Left)
		found := s.over(s.lines(false), false, nil, whole, mostWork)
		f := s.fields[0]
		best := Merit{}
		first := true
		pitch, along := room.Tile.Height+room.Joint, room.Tile.Width+room.Joint
		from := f.shape.Solid.Bounds().Bottom
		for line := from; line < from+pitch; line++ {
			for edge := length.Length(0); edge < along; edge++ {
				if m := f.measureAll(line, edge, found.choices[0].placed); first || m.Better(best) {
					best, first = m, false
				}
			}
		}
		require.Equal(t, best, found.merit)
	})
}

// toy is a room a few dozen units wide, with tiles of a few units.
func toy(t *rapid.T) survey.Room {
	n := func(name string, low, high int) length.Length {
		return length.Length(rapid.IntRange(low, high).Draw(t, name))
	}
	r := survey.Room{Tape: 1, Joint: n("joint", 0, 2), Bed: 1, Sealant: 3, Sliver: n("sliver", 1, 6),
		Tile: survey.TileSize{Width: n("width", 4, 16), Height: n("height", 4, 12), Thickness: 1},
		Bond: survey.BondRule{Num: int64(rapid.IntRange(0, 1).Draw(t, "num")), Den: 2, Hand: survey.Left}}
	if r.Bond.Num == 0 {
		r.Bond.Den = 1
	}
	w := survey.WallFound{Name: "w", Width: n("wall", 20, 60),
		Left:  survey.EndFound{Meets: true, Gap: 1, Cover: 2},
		Right: survey.EndFound{Meets: true, Gap: 1, Behind: 2},
		Base:  []survey.SegmentFound{{Meets: "tub", Gap: 1, Readings: []survey.Reading{{At: 0, Value: 0}}}},
		Head:  survey.HeadFound{Meets: true, Gap: 1, Readings: []survey.Reading{{At: 0, Value: n("ceiling", 20, 60)}}}}
	if rapid.Bool().Draw(t, "niche") {
		w.Openings = []survey.OpeningFound{{Kind: "niche", Name: "n", Left: at(n("left", 5, 9)), Width: at(n("wide", 3, 8)), Bottom: at(n("bottom", 5, 9)), Height: at(n("tall", 3, 8))}}
	}
	r.Walls = []survey.WallFound{w}
	return r
}

// On a coarse tape every line and every pair of starts on two walls is tried
// without any bound, and the best is the solver's: walls share the line and the
// smallest cut, and one may give up some of its own for the other's balance.
func TestEveryLineAndEveryPairOfStartsIsTried(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := freeRoom(t)
		room.Walls = append(room.Walls, randomRoom(t).Walls...)
		room.Tape = 16 * mm
		s := newSolver(&room, survey.Left)
		found := s.best(nil, mostWork)
		require.False(t, s.short)
		best := found.merit
		for _, line := range s.lines(true) {
			var merits [2][]Merit
			for w, f := range s.fields {
				for _, e := range s.edges(w, line, true) {
					across, _ := f.frame(line, e)
					merits[w] = append(merits[w], f.weigh(line, e, s.compiled(w, across, line)).merit)
				}
			}
			for _, a := range merits[0] {
				for _, b := range merits[1] {
					if m := a.plus(b); m.Better(best) {
						t.Fatalf("line %d: %v beats %v", line, m, best)
					}
				}
			}
		}
	})
}
