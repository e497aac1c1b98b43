package setout

import (
	"os"
	"testing"

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
