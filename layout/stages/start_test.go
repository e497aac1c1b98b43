package stages_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
)

// solved gives the plan of a job of testdata, with its course line pinned
// where one is given.
func solved(t *testing.T, name, line string) layout.Plan {
	t.Helper()
	job := jobOf(t, name)
	if line != "" {
		job.Pins.Course.Line = line
	}
	p, err := layout.Now(job)
	require.NoError(t, err)
	return p
}

func onBase(w layout.Wall, p piece.Piece) bool {
	for _, s := range p.Cuts {
		if w.Shape.Sides[s].Name == "base" {
			return true
		}
	}
	return false
}

func TestTheFirstFullCourseIsTheLowestThatNoBaseCuts(t *testing.T) { // laws 1 and 2 of FirstFull
	for _, c := range []struct{ job, line string }{{"toy", ""}, {"one-wall", ""}, {"alcove", ""}, {"alcove", "-40"}, {"alcove", "-38 1/4"}} {
		p := solved(t, c.job, c.line)
		full, found := stages.FirstFull(p.Room, p.Setout.Line, p.Walls)
		require.True(t, found, "%+v", c)
		cut := map[length.Length]bool{}
		for _, w := range p.Walls {
			for _, x := range w.Pieces {
				cut[x.Tile.Bottom] = cut[x.Tile.Bottom] || onBase(w, x)
			}
		}
		assert.False(t, cut[full.Bottom], "%+v", c)
		for y, is := range cut {
			if p.Setout.Line <= y && y < full.Bottom {
				assert.True(t, is, "%+v: course at %v", c, y)
			}
		}
	}
}

func TestTheStartTileIsWholeAndOnTheBatten(t *testing.T) { // law 1 of StartTile
	for _, c := range []struct{ job, line string }{{"toy", ""}, {"one-wall", ""}, {"alcove", ""}, {"alcove", "-40"}} {
		p := solved(t, c.job, c.line)
		full, _ := stages.FirstFull(p.Room, p.Setout.Line, p.Walls)
		for _, w := range p.Walls {
			start, ok := stages.StartTile(w, full)
			require.True(t, ok, "%+v, %s", c, w.Found.Name)
			assert.True(t, start.Whole)
			assert.Equal(t, full.Bottom, start.Tile.Bottom, "%+v, %s", c, w.Found.Name)
			assert.LessOrEqual(t, (start.Tile.Left - w.Start.Edge).Abs(), (p.Room.Tile.Width+p.Room.Joint)*2, "near the start")
		}
	}
}

func TestTheStartTileIsTheTileOfTheStartWhereThatIsWhole(t *testing.T) { // law 2 of StartTile
	p := solved(t, "toy", "")
	full, _ := stages.FirstFull(p.Room, p.Setout.Line, p.Walls)
	require.Equal(t, p.Setout.Line, full.Bottom)
	start, _ := stages.StartTile(p.Walls[0], full)
	assert.Equal(t, length.Length(0), length.Mod(start.Tile.Left-p.Walls[0].Start.Edge, p.Room.Tile.Width+p.Room.Joint))
	for _, x := range p.Walls[0].Pieces {
		if x.Whole && x.Tile.Left == p.Walls[0].Start.Edge && x.Tile.Bottom == full.Bottom {
			assert.Equal(t, x.ID, start.ID)
		}
	}
}

// A tile that laps round an outside corner begins before the wall, where nobody can strike a line.
func TestTheStartTileBeginsOnTheWallWhereOneDoes(t *testing.T) {
	p := solved(t, "boxing", "")
	full, _ := stages.FirstFull(p.Room, p.Setout.Line, p.Walls)
	w := p.Walls[slices.IndexFunc(p.Walls, func(w layout.Wall) bool { return w.Found.Name == "front" })]
	laps, ok := stages.StartTile(w, full)
	require.True(t, ok)
	require.Negative(t, laps.Tile.Left, "no whole tile begins on this wall")

	next := laps
	next.ID, next.Tile.Left, next.Tile.Right = "next", laps.Tile.Right+p.Room.Joint, laps.Tile.Right+p.Room.Joint+p.Room.Tile.Width
	w.Pieces, w.Start.Edge = append(slices.Clone(w.Pieces), next), laps.Tile.Left
	start, _ := stages.StartTile(w, full)
	assert.Equal(t, "next", start.ID)
	edge, _ := stages.Strike(w, full)
	assert.Equal(t, next.Tile.Left, edge)
}

func TestWhatIsStruckIsTheEdgeOfATile(t *testing.T) { // law of Strike
	for _, narrow := range []bool{false, true} {
		p := solved(t, "alcove", "")
		full, _ := stages.FirstFull(p.Room, p.Setout.Line, p.Walls)
		for _, w := range p.Walls {
			if narrow {
				w.Pieces = slices.DeleteFunc(slices.Clone(w.Pieces), func(x piece.Piece) bool { return x.Whole })
			}
			edge, ok := stages.Strike(w, full)
			require.True(t, ok)
			assert.True(t, slices.ContainsFunc(w.Pieces, func(x piece.Piece) bool {
				return x.Whole != narrow && x.Tile.Left == edge && x.Face.Bounds().Left == edge
			}), "%s, narrow %v", w.Found.Name, narrow)
		}
	}
}

func TestWhatStandsIsNoStart(t *testing.T) {
	p := solved(t, "toy", "")
	w := &p.Walls[0]
	w.Found.Set = &survey.Standing{Row: w.Pieces[0].Row}
	full, found := stages.FirstFull(p.Room, p.Setout.Line, p.Walls)
	require.True(t, found)
	assert.Greater(t, full.Row, w.Pieces[0].Row)
	start, ok := stages.StartTile(*w, full)
	require.True(t, ok)
	assert.False(t, w.Found.Stands(start.Row))
}

func TestAWallWithoutAWholeTileHasNoStart(t *testing.T) {
	p := solved(t, "toy", "")
	w := p.Walls[0]
	w.Pieces = []piece.Piece{{ID: "A-01-01", Tile: plane.Rect{Right: 10, Top: 10}}}
	_, ok := stages.StartTile(w, stages.FullCourse{})
	assert.False(t, ok)
	_, found := stages.FirstFull(p.Room, 0, nil)
	assert.False(t, found)
}

func TestAPlaceIsMeasuredFromTheCornerAsItStandsThere(t *testing.T) { // law of StruckFrom
	var w layout.Wall
	const mm = length.Millimetre
	assert.Equal(t, 500*mm, stages.StruckFrom(w, 500*mm, -900*mm))
	w.Found.Left = survey.EndFound{Meets: true, Lean: []survey.Reading{{At: -1000 * mm, Value: -8 * mm}, {At: 1000 * mm, Value: 8 * mm}}}
	assert.Equal(t, 508*mm, stages.StruckFrom(w, 500*mm, -1000*mm), "the corner stands further left there")
	assert.Equal(t, 500*mm, stages.StruckFrom(w, 500*mm, 0))
	w.Found.Left.Meets = false
	assert.Equal(t, 500*mm, stages.StruckFrom(w, 500*mm, -1000*mm))
}

// The front of a bench and the face of a curb end under the first full course of the room: each
// has a tile to start with all the same, on the lowest of its courses that no base cuts.
func TestALowWallHasAStartOfItsOwn(t *testing.T) {
	p := solved(t, "bench", "")
	full := stages.ToStrike(p.Room, p.Setout.Line, p.Walls).Full
	low := 0
	for _, w := range p.Walls {
		edge, ok := stages.Strike(w, full)
		require.True(t, ok, w.Found.Name)
		if w.Start.Placed.Head > full.Bottom {
			continue
		}
		low++
		assert.True(t, slices.ContainsFunc(w.Pieces, func(x piece.Piece) bool { return x.Tile.Left == edge && x.Face.Bounds().Left == edge }), w.Found.Name)
	}
	assert.Equal(t, 2, low, "the bench and the curb")
	start, ok := stages.StartTile(p.Walls[3], full)
	require.True(t, ok)
	for _, x := range p.Walls[3].Pieces {
		if x.Tile.Bottom == start.Tile.Bottom {
			assert.NotContains(t, x.Cuts, survey.SideBase, "%s stands in the course of the start", x.ID)
		}
	}
}

// The front of a bench is set from a batten of its own upwards: found on a shower whose bench and curb
// were to be set downwards from under a batten that was over them.
func TestALowWallIsSetUpwardsFromItsOwnLine(t *testing.T) { // laws of Lows and of Struck.On
	in, steps := ordered(t, "bench", "")
	full, found := stages.FirstFull(in.Room, in.Walls[0].Pieces[0].Tile.Bottom, in.Walls)
	require.True(t, found)
	struck := stages.ToStrike(in.Room, in.Walls[0].Pieces[0].Tile.Bottom, in.Walls)
	lows := stages.Lows(full, in.Walls)
	require.NotEmpty(t, lows)
	low := map[int]bool{}
	for _, l := range lows {
		assert.Less(t, l.Bottom, full.Bottom)
		for _, i := range l.Walls {
			low[i] = true
			w := in.Walls[i]
			at, found := struck.On(w)
			require.True(t, found)
			assert.Equal(t, l.Bottom, at)
			box := w.Shape.Region.Bounds()
			assert.True(t, box.Bottom <= at && at < box.Top, "%s: the line runs over the wall", w.Found.Name)
			for _, p := range w.Pieces {
				if p.Tile.Bottom == at {
					assert.False(t, onBase(w, p), p.ID)
				}
			}
		}
	}
	assert.Equal(t, map[int]bool{3: true, 4: true}, low, "the bench and the curb")

	reached := map[int]length.Length{} // the course that each has come to
	for _, s := range steps {
		if !low[s.Wall] || s.On != nil || s.Trim != nil {
			continue
		}
		p := s.Pieces[0]
		if s.Part == stages.Under {
			assert.True(t, onBase(in.Walls[s.Wall], p), "%s waits for the batten to go", p.ID)
			continue
		}
		if low, any := reached[s.Wall]; any {
			assert.GreaterOrEqual(t, p.Tile.Bottom, low, p.ID)
		}
		reached[s.Wall] = p.Tile.Bottom
	}
}

// Where the left corner leans by what a tape shows, an edge is told along the line struck and as all else along its wall is.
func TestAnEdgeBesideALeaningCornerIsToldBothWays(t *testing.T) {
	const mm = length.Millimetre
	s := stages.Struck{At: -1000 * mm, Full: stages.FullCourse{Bottom: -1000 * mm}}
	tape := func(l length.Length) string { return l.Tape(length.Metric) }
	var w layout.Wall
	assert.Empty(t, s.LeanText(w, 500*mm, tape))
	w.Found.Left = survey.EndFound{Meets: true, Lean: []survey.Reading{{At: -1000 * mm, Value: -8 * mm}, {At: 1000 * mm, Value: 8 * mm}}}
	assert.Equal(t, "Its left corner leans: START is 508 mm from it along the line struck, and 500 mm from the corner on the level line, from where all else along the wall is counted.",
		s.LeanText(w, 500*mm, tape))
	w.Found.Left.Lean[0].Value, w.Found.Left.Lean[1].Value = mm/4, -mm/4
	assert.Empty(t, s.LeanText(w, 500*mm, tape), "no tape shows that")
	w.Found.Left.Lean[0].Value, w.Found.Left.Lean[1].Value = 0, 8*mm
	assert.Empty(t, s.LeanText(w, 500*mm, tape), "the line struck runs where the lean was read from")
	s.At = 1000 * mm
	s.Full.Bottom = s.At
	assert.Contains(t, s.LeanText(w, 500*mm, tape), "492 mm from it along the line struck, and 500 mm from where its lean was read as 0")
}
