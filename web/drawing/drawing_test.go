package drawing

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/web/drawing/sample"
)

func TestTheSamePlanGivesTheSameScene(t *testing.T) {
	for range 3 {
		assert.Equal(t, Elevation(sample.Plan(), 1, Options{Handles: true}), Elevation(sample.Plan(), 1, Options{Handles: true}))
		assert.Equal(t, Wrap(sample.Plan(), Options{}), Wrap(sample.Plan(), Options{}))
	}
}

// drawn counts how often each piece of a scene is drawn.
func drawn(s Scene) map[string]int {
	count := map[string]int{}
	for _, e := range s.Elements {
		switch x := e.(type) {
		case Path:
			if slices.Contains([]Kind{CutHalf, CutThird, CutFifth, CutLeast, Set}, x.Kind) {
				count[x.Piece]++
			}
		case Tiles:
			for _, r := range x.Runs {
				for n := range r.Count {
					count[following(r.First, n)]++
				}
			}
		}
	}
	return count
}

// following is the id of the nth piece after one in its course.
func following(id string, n int) string {
	cut := strings.LastIndexByte(id, '-') + 1
	first, _ := strconv.Atoi(id[cut:])
	return fmt.Sprintf("%s%02d", id[:cut], first+n)
}

func TestEveryPieceIsDrawnOnce(t *testing.T) {
	for name, p := range map[string]layout.Plan{"sample": sample.Plan(), "alcove": alcove(t, strings.Clone)} {
		for _, plumb := range []bool{false, true} {
			p.Room.Bond.Plumb = plumb // runs go up; the pieces stay where they are
			count := drawn(Wrap(p, Options{}))
			for _, w := range p.Walls {
				for _, x := range w.Pieces {
					if plumb && x.Whole {
						continue // numbered along courses, not up columns
					}
					assert.Equal(t, 1, count[x.ID], "%s: %s", name, x.ID)
				}
			}
		}
	}
}

// A run's tiles are where the plan has them, less what keeps a joint visible.
func TestRunsLieWhereTheirTilesStand(t *testing.T) {
	p := alcove(t, strings.Clone)
	for i, w := range p.Walls {
		s := Elevation(p, i, Options{})
		at := map[string]plane.Rect{}
		for _, x := range w.Pieces {
			at[x.ID] = x.Tile
		}
		f := frame{scale: s.Scale, origin: s.Parts[0].Origin}
		for _, e := range s.Elements {
			tiles, ok := e.(Tiles)
			if !ok {
				continue
			}
			rings, k := tiles.Path().Rings, 0
			for _, r := range tiles.Runs {
				for n := range r.Count {
					want, got := f.rect(at[following(r.First, n)]), rings[k]
					assert.InDelta(t, int64(want[0].X), int64(got[0].X), thinJoint/2+1)
					assert.InDelta(t, int64(want[2].X), int64(got[2].X), thinJoint/2+1)
					assert.InDelta(t, int64(want[0].Y), int64(got[0].Y), thinJoint/2+1)
					k++
				}
			}
		}
	}
}

func TestNothingIsDrawnOffThePaper(t *testing.T) {
	p := sample.Plan()
	for name, s := range map[string]Scene{"left": Elevation(p, 0, Options{}), "back": Elevation(p, 1, Options{}), "wrap": Wrap(p, Options{}),
		"sheet": Elevation(p, 1, Options{Sheet: true, Scale: Scale{1, 10}}), "slide": Slide(p, 1, 0), "key": KeyPlan(p, 0)} {
		for _, e := range s.Elements {
			for _, q := range places(e) {
				assert.True(t, q.X >= 0 && q.Y >= 0 && q.X <= s.Width && q.Y <= s.Height, "%s: %+v", name, e)
			}
		}
	}
}

// places are the corners of an element, a label's from its estimated width.
func places(e Element) []Point {
	switch e := e.(type) {
	case Path:
		return slices.Concat(e.Rings...)
	case Tiles:
		return slices.Concat(e.Path().Rings...)
	case Disc:
		return []Point{{e.Centre.X - e.Radius, e.Centre.Y - e.Radius}, {e.Centre.X + e.Radius, e.Centre.Y + e.Radius}}
	case Label:
		w := e.width()
		from := []Micron{0, -w / 2, -w}[e.Anchor]
		if e.Up {
			return []Point{{e.At.X, e.At.Y - from}, {e.At.X, e.At.Y - from - w}}
		}
		return []Point{{e.At.X + from, e.At.Y}, {e.At.X + from + w, e.At.Y}}
	}
	return nil
}

func TestTheLevelLineIsTheOneRedThing(t *testing.T) {
	red := map[Kind]bool{}
	for _, e := range Elevation(sample.Plan(), 1, Options{}).Elements {
		if x, ok := e.(Path); ok && (x.Fill == Red || x.Line == Red) {
			red[x.Kind] = true
		}
	}
	assert.Equal(t, map[Kind]bool{LevelLine: true}, red)
}

func TestCutsAreSortedByTheirShare(t *testing.T) {
	for _, c := range []struct {
		num, den int64
		sliver   bool
		want     Kind
	}{
		{1, 2, false, CutHalf}, {499, 1000, false, CutThird}, {1, 3, false, CutThird}, {332, 1000, false, CutFifth},
		{1, 5, false, CutFifth}, {199, 1000, false, CutLeast}, {3, 4, true, CutLeast},
	} {
		assert.Equal(t, c.want, CutKind(piece.Piece{Share: piece.Share{Num: c.num, Den: c.den}, Sliver: c.sliver}), "%+v", c)
	}
	assert.Equal(t, Whole, CutKind(piece.Piece{Whole: true}))
}

func TestWholeTilesOfAWallAreOneElement(t *testing.T) {
	p := alcove(t, strings.Clone)
	n := map[int]int{}
	for _, e := range Wrap(p, Options{}).Elements {
		if x, ok := e.(Tiles); ok {
			n[x.Wall]++
		}
	}
	assert.Equal(t, map[int]int{0: 1, 1: 1, 2: 1}, n)
}

// Law 1: spread keeps the gap. Law 2: it leaves alone what is already apart.
// Law 3: it keeps the order and the number.
func TestSpread(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.SliceOfN(rapid.Int64Range(0, 10000), 1, 20).Draw(t, "places")
		slices.Sort(at)
		in := make([]Micron, len(at))
		for i, a := range at {
			in[i] = Micron(a)
		}
		out := spreadBy(in, slices.Repeat([]Micron{300}, len(in)))
		require.Len(t, out, len(in))
		apart := true
		for i := 1; i < len(in); i++ {
			apart = apart && in[i]-in[i-1] >= 300
			assert.GreaterOrEqual(t, out[i]-out[i-1], Micron(299), "rounding may take one micrometre")
		}
		if apart {
			assert.Equal(t, in, out)
		}
	})
}

func TestScaleRoundsToTheMicrometre(t *testing.T) {
	s := Scale{1, 10}
	assert.Equal(t, Micron(2540), s.On(length.Inch))
	assert.Equal(t, Micron(-2540), s.On(-length.Inch))
	assert.Equal(t, Micron(0), s.On(4))
}

func TestALabelStaysInsideItsPiece(t *testing.T) {
	ell := [][]Point{{{0, 0}, {20000, 0}, {20000, 5000}, {5000, 5000}, {5000, 20000}, {0, 20000}}}
	b := &board{Scene: Scene{Width: 30000, Height: 30000}}
	at, ok := b.room(Label{Size: 2500}, []string{`7 1/2"`}, ell)
	require.True(t, ok)
	assert.True(t, at.Y < 5000 || at.X < 5000, "in one of the arms: %v", at)
	_, ok = b.room(Label{Size: 2500}, []string{"far too long a label for this"}, ell)
	assert.False(t, ok)
}

func TestAWallThatIsNotThereGivesAnEmptyScene(t *testing.T) {
	p := sample.Plan()
	assert.Empty(t, Elevation(p, 7, Options{}).Elements)
	assert.Empty(t, Elevation(p, -1, Options{}).Elements)
	assert.Empty(t, Slide(p, 9, 0).Elements)
	p.Walls = nil
	assert.NotPanics(t, func() { KeyPlan(p, 0) })
	assert.Empty(t, Wrap(p, Options{}).Elements)
}

func TestARingBeginsAtOneCornerWhereverItIsGiven(t *testing.T) {
	f := frame{scale: Scale{1, 1}}
	r := plane.Rect{Left: 960, Bottom: 960, Right: 9600, Top: 4800}.Ring(0)
	want := f.rings(plane.Region{r})
	for i := range r {
		assert.Equal(t, want, f.rings(plane.Region{append(slices.Clone(r[i:]), r[:i]...)}))
	}
}

// What may be dragged can be taken hold of by itself: the course line lies clear
// of the readings at the corner.
func TestTheCourseLineIsHeldClearOfTheReadings(t *testing.T) {
	p := alcove(t, strings.Clone)
	for i := range p.Walls {
		s := Elevation(p, i, Options{Handles: true})
		at := slices.IndexFunc(s.Handles, func(h Handle) bool { return h.ID == "course" })
		for _, h := range s.Handles {
			if d := h.At.X - s.Handles[at].At.X; h.ID != "course" {
				assert.GreaterOrEqual(t, max(d, -d)+max(h.At.Y-s.Handles[at].At.Y, s.Handles[at].At.Y-h.At.Y), Micron(handlesApart), h.ID)
			}
		}
	}
}
