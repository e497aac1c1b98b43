package sheet

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
	"coursewright/web/shapes"
)

// five are the rooms whose sheets are looked at: the demo's alcove, a corner
// shower, large tile under a ceiling, long tile round a built niche, and an old
// house where nothing is level or plumb.
var five = []string{"jobs/alcove", "jobs/corner-shower", "cases/g-300x600", "cases/c2-4x16-fixed", "jobs/old-house"}

// roomOf solves a job of testdata by its path there.
func roomOf(t *testing.T, name string) layout.Plan {
	t.Helper()
	plan, known := rooms[name]
	if !known {
		plan = solved(t, filepath.Join("..", name))
		rooms[name] = plan
	}
	return plan
}

// rooms keeps what roomOf has solved; plans are never changed.
var rooms = map[string]layout.Plan{}

// leavesOf counts the leaves of a book by kind, but for one that cautions have to themselves.
func leavesOf(b *book) map[Kind]int {
	out := map[Kind]int{}
	for _, l := range b.leaves {
		if l.title == "Cautions" {
			continue
		}
		for _, k := range append([]Kind{l.kind}, l.also...) {
			out[k]++
		}
	}
	return out
}

// A setter carries eight to eleven pages into the shower.
func TestABathIsAtMostElevenPages(t *testing.T) {
	for _, name := range five {
		plan := roomOf(t, name)
		most := 11
		if name == "jobs/corner-shower" {
			most = 8
		}
		for _, paper := range Papers()[:2] {
			b := newBook(plan, Options{Paper: paper})
			assert.LessOrEqual(t, len(b.leaves), most, "%s on %s: %v", name, paper.Name, leavesOf(b))
			for _, k := range []Kind{SetOut, FirstCourse, StoryPole, TakeOff, Stages} {
				assert.Equal(t, 1, leavesOf(b)[k], "%s on %s: %s", name, paper.Name, k)
			}
			assert.Equal(t, len(plan.Walls), leavesOf(b)[Elevations], "%s on %s: one page a wall", name, paper.Name)
		}
	}
}

// Nor does a window with tiled returns make it more: its inside takes one leaf, with its list.
func TestABathWithATiledWindowIsAtMostElevenPages(t *testing.T) {
	for _, name := range []string{"alcove", "old-house"} {
		plan := solved(t, name, func(j *survey.Job) {
			j.Walls[1].Openings = []survey.Opening{{Kind: "window", Name: "north", Left: &survey.Mark{At: "20"}, Width: &survey.Mark{At: "24"},
				Bottom: &survey.Mark{At: "8"}, Height: &survey.Measure{Mark: &survey.Mark{At: "36"}}, Inside: &survey.Inside{Depth: "4"}}}
		})
		for _, paper := range Papers()[:2] {
			b := newBook(plan, Options{Paper: paper})
			assert.LessOrEqual(t, len(b.leaves), 11, "%s on %s: %v", name, paper.Name, leavesOf(b))
		}
	}
}

func TestTheAlcoveWithItsChoicesIsElevenPages(t *testing.T) {
	plan := roomOf(t, "jobs/alcove")
	choices := []Choice{{Name: "half bond", Chosen: true, Plan: plan}, {Name: "third bond", Plan: solved(t, "alcove", func(j *survey.Job) { j.Bond.Offset = "1/3" })}}
	b := newBook(plan, Options{Choices: choices})
	assert.LessOrEqual(t, len(b.leaves), 11)
	assert.Equal(t, 1, leavesOf(b)[Compare])
}

func TestTheScheduleOfABathIsShort(t *testing.T) {
	for name, most := range map[string]int{"jobs/alcove": 24, "jobs/old-house": 39} {
		assert.LessOrEqual(t, len(newBook(roomOf(t, name), Options{}).cuts.Groups), most, name)
	}
}

// texts are the labels of a leaf at their places.
func texts(l *leaf) []drawing.Label {
	var out []drawing.Label
	add := func(s drawing.Scene, at drawing.Point) {
		for _, e := range s.Elements {
			if t, ok := e.(drawing.Label); ok && t.Text != "" {
				t.At.X, t.At.Y = t.At.X+at.X, t.At.Y+at.Y
				out = append(out, t)
			}
		}
	}
	for _, p := range l.parts {
		add(p.scene, p.at)
	}
	add(l.own, drawing.Point{})
	return out
}

// No two texts of a leaf lie over each other, none leaves the paper, and no leaf
// has fewer than five lines of its own.
func laidOut(t *testing.T, name string, plan layout.Plan, o Options) {
	t.Helper()
	b := newBook(plan, o)
	for n, l := range b.leaves {
		all := texts(l)
		strips := l.kind == FullPole // few words on much pole
		assert.True(t, strips || len(all)-countOf(l, "check these bars") >= 8, "%s, leaf %d, %s: it is nearly empty", name, n+1, l.title)
		b.block(l, n+1)
		all = texts(l)
		for i, x := range all {
			from, to := x.Room()
			assert.True(t, from.X >= 0 && from.Y >= 0 && to.X <= l.size.X && to.Y <= l.size.Y, "%s, leaf %d, %s: %q is off the paper", name, n+1, l.title, x.Text)
			for _, y := range all[:i] {
				if lieOver(x, y) {
					t.Errorf("%s, leaf %d, %s: %q lies over %q", name, n+1, l.title, x.Text, y.Text)
				}
			}
		}
	}
}

// lieOver tells whether the rooms of two labels meet: along neither of them is there a gap between.
func lieOver(x, y drawing.Label) bool {
	for _, turn := range []drawing.Turn{x.Turn, y.Turn} {
		span := func(l drawing.Label) (lo, hi drawing.Point) {
			for i, p := range l.Corners() {
				if p = turn.On(p); i == 0 {
					lo, hi = p, p
				}
				lo.X, lo.Y, hi.X, hi.Y = min(lo.X, p.X), min(lo.Y, p.Y), max(hi.X, p.X), max(hi.Y, p.Y)
			}
			return lo, hi
		}
		from, to := span(x)
		a, z := span(y)
		if from.X >= z.X || a.X >= to.X || from.Y >= z.Y || a.Y >= to.Y {
			return false
		}
	}
	return true
}

func countOf(l *leaf, text string) (n int) {
	for _, x := range texts(l) {
		if x.Text == text {
			n++
		}
	}
	return n
}

func TestNoTextLiesOverAnother(t *testing.T) {
	every := Options{Kinds: Kinds()}
	for _, name := range five {
		plan := roomOf(t, name)
		for _, paper := range Papers()[:2] {
			every.Paper = paper
			laidOut(t, name+" on "+paper.Name, plan, every)
		}
	}
}

// The same for rooms by chance: other widths, rims, tiles and bonds.
func TestNoTextLiesOverAnotherInRoomsByChance(t *testing.T) {
	solvedRooms := 0
	for seed := range uint64(8) {
		r := rand.New(rand.NewPCG(seed, 7))
		job := jobOf(t, five[r.IntN(len(five))])
		job.Pins = survey.Pins{}
		tile := [][2]string{{"198 mm", "98 mm"}, {"298 mm", "598 mm"}, {"97 mm", "97 mm"}, {"398 mm", "198 mm"}, {"147 mm", "147 mm"}}[r.IntN(5)]
		job.Tile.Width, job.Tile.Height = tile[0], tile[1]
		job.Bond.Kind, job.Bond.Offset = "running", []string{"1/2", "1/3"}[r.IntN(2)]
		solvedRooms += laidOutByChance(t, seed, r, job)
	}
	assert.Greater(t, solvedRooms, 4, "most of the rooms can be built")
}

// And for those with trim and fixtures, niches tiled within, bands and patterns.
func TestNoTextLiesOverAnotherInNewerRoomsByChance(t *testing.T) {
	solvedRooms := 0
	for seed := range uint64(10) {
		r := rand.New(rand.NewPCG(seed, 11))
		job := jobOf(t, newer[int(seed)%len(newer)])
		solvedRooms += laidOutByChance(t, seed, r, job)
	}
	assert.Greater(t, solvedRooms, 6, "most of the rooms can be built")
}

// jobOf reads a job of testdata by its path there, or makes one of a shape.
func jobOf(t *testing.T, name string) survey.Job {
	t.Helper()
	if key, shaped := strings.CutPrefix(name, "shape/"); shaped {
		job, err := shapes.New(key, "in", "Room "+key)
		require.NoError(t, err)
		job.Guess = nil
		return job
	}
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", name+".json"))
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	return job
}

// laidOutByChance lowers the base of a job here and there, gives it a long title, and
// looks at its sheets; it tells how many rooms came of it.
func laidOutByChance(t *testing.T, seed uint64, r *rand.Rand, job survey.Job) int {
	t.Helper()
	job.Title = strings.Repeat("A room by chance ", 1+r.IntN(4))
	units := length.Imperial
	if job.Units == "mm" {
		units = length.Metric
	}
	for w := range job.Walls {
		for s := range job.Walls[w].Base {
			for k := range job.Walls[w].Base[s].Readings {
				drop := &job.Walls[w].Base[s].Readings[k].Drop
				was, err := length.Parse(*drop, units)
				require.NoError(t, err)
				*drop = (was + length.Length(r.IntN(9))*length.Inch/16).Plain(units, 0)
			}
		}
	}
	plan, err := layout.Now(job)
	if err != nil {
		t.Logf("seed %d gives no room: %v", seed, err)
		return 0
	}
	laidOut(t, fmt.Sprintf("seed %d", seed), plan, Options{Kinds: Kinds(), Paper: Papers()[r.IntN(2)]})
	return 1
}

func TestPagesShowWhatIsPrinted(t *testing.T) {
	plan := solved(t, "one-wall")
	pages, b := Pages(plan, Options{}), newBook(plan, Options{})
	require.Len(t, pages, len(b.leaves))
	for i, p := range pages {
		b.block(b.leaves[i], i+1)
		n := len(b.leaves[i].own.Elements)
		for _, x := range b.leaves[i].parts {
			n += len(x.scene.Elements)
		}
		assert.Len(t, p.Scene.Elements, n, p.Title)
		assert.Equal(t, b.leaves[i].kind, p.Kind)
		assert.NotEmpty(t, p.Scale)
	}
}
