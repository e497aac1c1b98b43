package layout_test

import (
	"context"
	"fmt"
	"os"
	"testing"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// BenchmarkSolve is a job from its fields to the whole plan: the room read,
// the set-out found, every piece cut, every rule applied.
func BenchmarkSolve(b *testing.B) {
	for _, name := range []string{"one-wall", "alcove", "mosaic", "corner-shower"} {
		file, err := os.ReadFile("../testdata/jobs/" + name + ".json")
		require.NoError(b, err)
		job, err := survey.Read(file)
		require.NoError(b, err)
		b.Run(name, func(b *testing.B) { benchSolve(b, job) })
	}
}

// BenchmarkOneWall is an edit of the last wall, which is a little wider each time, that leaves the other walls alone, with a keeper
// and without: a plan that nothing is told of.
func BenchmarkOneWall(b *testing.B) {
	for _, name := range []string{"alcove", "corner-shower"} {
		file, err := os.ReadFile("../testdata/jobs/" + name + ".json")
		require.NoError(b, err)
		job, err := survey.Read(file)
		require.NoError(b, err)
		room, faults := job.Resolve()
		require.Empty(b, faults)
		last := &job.Walls[len(job.Walls)-1]
		wide := room.Walls[len(room.Walls)-1].Width
		var keeper layout.Keeper
		for how, solve := range map[string]func(context.Context, survey.Job) (layout.Plan, error){"kept": keeper.Quick, "anew": layout.Quick} {
			b.Run(name+"/"+how, func(b *testing.B) {
				for i := 0; b.Loop(); i++ {
					last.Width = (wide + length.Length(i%16)*room.Units.Step()).Plain(room.Units, room.Units.FineStep())
					_, err := solve(b.Context(), job)
					require.NoError(b, err)
				}
			})
		}
	}
}

// BenchmarkGrowth is the same room with ever smaller tile.
func BenchmarkGrowth(b *testing.B) {
	for _, tile := range []string{"240", "75", "23", "6.8"} {
		job := growing(tile)
		plan, err := layout.Now(job)
		require.NoError(b, err)
		b.Run(fmt.Sprintf("pieces=%d", len(plan.Walls[0].Pieces)), func(b *testing.B) { benchSolve(b, job) })
	}
}

// growing is a square wall over a tub that falls 4 mm, in stack bond up to the ceiling.
func growing(tile string) survey.Job {
	gap := "3"
	return survey.Job{
		Format: survey.Format, Title: "growth", Units: "mm", Joint: survey.Measure{Plain: "1.5"},
		Tile: survey.Tile{Width: tile, Height: tile}, Bond: survey.Bond{Kind: "stack"},
		Walls: []survey.Wall{{
			Name: "wall", Width: "2600",
			Left:  survey.End{Meets: "corner", Gap: gap},
			Right: survey.End{Meets: "corner", Gap: gap},
			Base:  []survey.Segment{{Meets: "tub", Gap: gap, Readings: []survey.Drop{{At: "0", Drop: "1000"}, {At: "2600", Drop: "1004"}}}},
			Head:  survey.Head{Meets: "ceiling", Gap: gap, Readings: []survey.Rise{{At: "0", Rise: "1600"}, {At: "2600", Rise: "1600"}}},
		}},
	}
}

func benchSolve(b *testing.B, job survey.Job) {
	pieces, proven := 0, 0.0
	b.ReportAllocs()
	for b.Loop() {
		plan, err := layout.Now(job)
		require.NoError(b, err)
		pieces, proven = 0, 0
		for _, w := range plan.Walls {
			pieces += len(w.Pieces)
		}
		if plan.Setout.Proven {
			proven = 1
		}
	}
	b.ReportMetric(proven, "proven")
	b.ReportMetric(float64(pieces), "pieces")
}
