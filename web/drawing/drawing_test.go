package drawing

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

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

func TestEveryPieceIsDrawnOnce(t *testing.T) {
	p := sample.Plan()
	drawn := map[string]int{}
	for _, e := range Wrap(p, Options{}).Elements {
		if x, ok := e.(Path); ok && x.Piece != "" && slices.Contains([]Kind{Whole, CutHalf, CutThird, CutFifth, CutLeast}, x.Kind) {
			drawn[x.Piece]++
		}
	}
	for _, w := range p.Walls {
		for _, x := range w.Pieces {
			assert.Equal(t, 1, drawn[x.ID], x.ID)
		}
	}
}

func TestNothingIsDrawnOffThePaper(t *testing.T) {
	p := sample.Plan()
	for name, s := range map[string]Scene{"left": Elevation(p, 0, Options{}), "back": Elevation(p, 1, Options{}), "wrap": Wrap(p, Options{}),
		"sheet": Elevation(p, 1, Options{Sheet: true, Scale: Scale{1, 10}}), "slide": Slide(p, 1), "key": KeyPlan(p, 0)} {
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

func TestManyWholeTilesBecomeOnePath(t *testing.T) {
	p := sample.Plan()
	p.Walls = p.Walls[:1]
	for i := range manyWhole + 1 {
		x := length.Length(i)
		p.Walls[0].Pieces = append(p.Walls[0].Pieces, piece.Piece{ID: "x", Whole: true,
			Face: plane.Region{{{Point: plane.Point{X: x}}, {Point: plane.Point{X: x + 1}}, {Point: plane.Point{X: x, Y: 1}}}}})
	}
	n := 0
	for _, e := range Elevation(p, 0, Options{}).Elements {
		if x, ok := e.(Path); ok && x.Kind == Whole {
			n++
		}
	}
	assert.Equal(t, 1, n)
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
		out := spread(in, 300)
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
	at, ok := room(Label{Size: 2500}, []string{`7 1/2"`}, ell)
	require.True(t, ok)
	assert.True(t, at.Y < 5000 || at.X < 5000, "in one of the arms: %v", at)
	_, ok = room(Label{Size: 2500}, []string{"far too long a label for this"}, ell)
	assert.False(t, ok)
}

func TestAWallThatIsNotThereGivesAnEmptyScene(t *testing.T) {
	p := sample.Plan()
	assert.Empty(t, Elevation(p, 7, Options{}).Elements)
	assert.Empty(t, Elevation(p, -1, Options{}).Elements)
	assert.Empty(t, Slide(p, 9).Elements)
	p.Walls = nil
	assert.NotPanics(t, func() { Wrap(p, Options{}); KeyPlan(p, 0) })
}

func TestARingBeginsAtOneCornerWhereverItIsGiven(t *testing.T) {
	f := frame{scale: Scale{1, 1}}
	r := plane.Rect{Left: 960, Bottom: 960, Right: 9600, Top: 4800}.Ring(0)
	want := f.rings(plane.Region{r})
	for i := range r {
		assert.Equal(t, want, f.rings(plane.Region{append(slices.Clone(r[i:]), r[:i]...)}))
	}
}
