package setout

import (
	"os"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

func benchRoom(b *testing.B, name string) survey.Room {
	b.Helper()
	file, err := os.ReadFile("../../testdata/jobs/" + name + ".json")
	require.NoError(b, err)
	job, err := survey.Read(file)
	require.NoError(b, err)
	room, faults := job.Resolve()
	require.Empty(b, faults)
	return room
}

// BenchmarkSetout is the search alone: line, starts and free marks, with the
// figures of the classic ones and the slide curves.
func BenchmarkSetout(b *testing.B) {
	for _, name := range []string{"one-wall", "alcove", "mosaic"} {
		room := benchRoom(b, name)
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Solve(room)
			}
		})
	}
}

// BenchmarkCut makes the pieces of every wall from a set-out. It is also what
// a brute force pays for each set-out it tries.
func BenchmarkCut(b *testing.B) {
	for _, name := range []string{"one-wall", "alcove", "mosaic"} {
		room := benchRoom(b, name)
		found := Solve(room)
		b.Run(name, func(b *testing.B) {
			pieces := 0
			b.ReportAllocs()
			for b.Loop() {
				pieces = 0
				for i, w := range room.Walls {
					s := found.Walls[i]
					_, cut, _ := Cut(room, w, found.Hand, found.Line, s.Edge, s.Placed)
					pieces += len(cut)
				}
			}
			b.ReportMetric(float64(pieces), "pieces")
		})
	}
}

// BenchmarkBruteForce cuts every piece at every mark of a tape of 1/16 in on one
// wall whose ends and head are measured. None may be better than what the solver
// finds, which is timed beside it.
func BenchmarkBruteForce(b *testing.B) {
	room := benchRoom(b, "one-wall")
	w := &room.Walls[0]
	placed := Solve(room).Walls[0].Placed
	w.Right.Stops = survey.Span{From: placed.Right, To: placed.Right}
	w.Head.Stops = survey.Span{From: placed.Head, To: placed.Head}
	var found plan.Setout
	b.Run("solver", func(b *testing.B) {
		for b.Loop() {
			found = Solve(room)
		}
	})
	b.Run("grid", func(b *testing.B) { everyPlace(b, room, found) })
}

func everyPlace(b *testing.B, room survey.Room, found plan.Setout) {
	f := newField(&room, room.Walls[0], found.Hand, new(int))
	from, step := found.Line, length.Inch/16
	tried := 0
	for b.Loop() {
		tried = 0
		for line := from; line < from+room.Tile.Height+room.Joint; line += step {
			for edge := length.Length(0); edge < room.Tile.Width+room.Joint; edge += step {
				m := f.measureAll(line, edge, found.Walls[0].Placed)
				if m.Better(Merit(found.Merit)) {
					b.Fatalf("line %d edge %d: %v beats %v", line, edge, m, found.Merit)
				}
				tried++
			}
		}
	}
	b.ReportMetric(float64(tried), "set-outs")
}
