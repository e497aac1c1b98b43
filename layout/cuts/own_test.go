package cuts

import (
	"context"
	"os"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/setout"
	"coursewright/layout/survey"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// inPattern is one of the jobs that ship, solved.
func inPattern(t *testing.T, name string) Input {
	t.Helper()
	data, err := os.ReadFile("../../testdata/jobs/" + name + ".json")
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	room, faults := job.Resolve()
	require.Empty(t, faults)
	room, _, walls, err := setout.Solve(context.Background(), room)
	require.NoError(t, err)
	return Input{Room: room, Walls: walls}
}

func polygon(t *testing.T, r plane.Ring) geom.Geometry {
	t.Helper()
	var xy []float64
	for i := range len(r) + 1 {
		c := r[i%len(r)]
		xy = append(xy, float64(c.X), float64(c.Y))
	}
	return geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(xy, geom.DimXY))}).AsGeometry()
}

// Two pieces of a pattern that come out of one tile: by a general geometry library
// (simplefeatures) there is a way to lay the second in the tile of the first, turned so
// that the tile looks the same, with the kerf between. Square tiles may also be parted
// by the rule of straight cuts.
func TestPairsOfAPatternFitIntoOneTile(t *testing.T) {
	for _, name := range []string{"hexagon", "herringbone"} {
		in := inPattern(t, name)
		set := For(in.Room)
		cut, _ := inSettingOrder(in, set.Turn)
		of := map[string]work{}
		for _, w := range cut {
			of[w.piece.ID] = w
		}
		s := Of(in, set)
		require.NotEmpty(t, s.Offcuts.Pairs)
		for _, pair := range s.Offcuts.Pairs {
			a, b := of[pair[0]].laid(), of[pair[1]].laid()
			require.True(t, a.like(b))
			found := a.square()
			for _, x := range a.ways {
				for _, y := range b.ways {
					if found {
						break
					}
					far, ok := geom.Distance(polygon(t, x[0]), polygon(t, y[0]))
					found = ok && far >= float64(set.Kerf)-4
				}
			}
			assert.True(t, found, "%v", pair)
		}
	}
}

// A square of 100 on its point whose right corner loses 0.4 is set whole, since that is under the
// step of 0.5; one that loses 0.6 is cut.
func TestAnAngleCutUnderTheStepIsNone(t *testing.T) {
	const mm = length.Millimetre
	tile := plane.Ring{{Point: plane.Point{X: 0, Y: -100 * mm}}, {Point: plane.Point{X: 100 * mm, Y: 0}}, {Point: plane.Point{X: 0, Y: 100 * mm}}, {Point: plane.Point{X: -100 * mm, Y: 0}}}
	sides := []survey.Boundary{{Name: "factory"}, {Name: "left"}, {Name: "right", Part: survey.Part{Is: survey.RightEnd}}}
	for off, how := range map[length.Length]How{mm * 4 / 10: Uncut, mm * 6 / 10: Fence} {
		left := plane.Region{{tile[0], {Point: plane.Point{X: 100*mm - off, Y: -off}, On: survey.SideRight}, {Point: plane.Point{X: 100*mm - off, Y: off}}, tile[2], tile[3]}}
		p := piece.Piece{ID: "A-01-01", Outline: tile, Tile: plane.Region{tile}.Bounds(), Face: left, Visible: left, Cuts: []plane.Side{survey.SideRight}, Kind: piece.Angle}
		b := batcher{step: mm / 2, near: mm * 3 / 2}
		require.Equal(t, how, b.one(newWork(p, wallOf(sides), length.Metric, true)).group.How, "%v", off)
	}
}

// Marks by hand: a square of 100 on its point, cut plumb 30 right of its left corner, has
// its marks 30·√2 from that corner on both sides of it.
func TestMarksOfAnAngleCut(t *testing.T) {
	const mm = length.Millimetre
	tile := plane.Ring{{Point: plane.Point{X: 0, Y: -100 * mm}}, {Point: plane.Point{X: 100 * mm, Y: 0}}, {Point: plane.Point{X: 0, Y: 100 * mm}}, {Point: plane.Point{X: -100 * mm, Y: 0}}}
	left := plane.Region{{{Point: plane.Point{X: -100 * mm, Y: 0}}, {Point: plane.Point{X: -70 * mm, Y: -30 * mm}, On: survey.SideRight}, {Point: plane.Point{X: -70 * mm, Y: 30 * mm}}}}
	p := piece.Piece{ID: "A-01-01", Outline: tile, Tile: plane.Region{tile}.Bounds(), Face: left, Visible: left, Cuts: []plane.Side{survey.SideRight}, Kind: piece.Angle}
	sides := []survey.Boundary{{Name: "factory"}, {Name: "left"}, {Name: "right", Part: survey.Part{Is: survey.RightEnd}}}
	w := newWork(p, wallOf(sides), length.Metric, true)
	saws := w.saws(mm / 2)
	require.Len(t, saws, 1)
	for _, m := range []Mark{saws[0].Enters, saws[0].Leaves} {
		assert.InDelta(t, 42.4, float64(m.From)/float64(mm), 0.3) // 30·√2 = 42.43
	}
	assert.Equal(t, saws[0].Enters.Corner, saws[0].Leaves.Corner, "the corner that is kept")
}

// A tile that may be turned gives one line for pieces that are alike once they are.
func TestPiecesAlikeWhenTurnedAreOneLine(t *testing.T) {
	in := inPattern(t, "hexagon")
	for _, g := range Of(in, For(in.Room)).Groups {
		if g.Count > 3 && g.Kind == "cross cut" {
			assert.NotEmpty(t, g.Saws)
			return
		}
	}
	t.Error("no line of several cross cuts")
}

func wallOf(sides []survey.Boundary) *plan.Wall {
	return &plan.Wall{Shape: survey.Shape{Sides: sides}}
}

// Of a chevron's tile a cut parallel to its end is told by its marks: tip to tip is no size to set
// a fence to. Rectangles and hexagons have one.
func TestOnlyATileWithSlantedEndsIsSlanted(t *testing.T) {
	ring := func(at ...[2]length.Length) (r plane.Ring) {
		for _, p := range at {
			r = append(r, plane.Corner{Point: plane.Point{X: p[0] * 960, Y: p[1] * 960}})
		}
		return r
	}
	require.True(t, Group{Outline: ring([2]length.Length{0, 0}, [2]length.Length{100, 0}, [2]length.Length{120, 20}, [2]length.Length{20, 20})}.Slanted())
	require.False(t, Group{Outline: ring([2]length.Length{0, 0}, [2]length.Length{100, 0}, [2]length.Length{100, 20}, [2]length.Length{0, 20})}.Slanted())
	require.False(t, Group{Outline: ring([2]length.Length{0, 0}, [2]length.Length{50, 50}, [2]length.Length{0, 100}, [2]length.Length{-50, 50})}.Slanted(), "a square on its corner")
	require.False(t, Group{Outline: ring([2]length.Length{0, 0}, [2]length.Length{10, 5}, [2]length.Length{10, 15}, [2]length.Length{0, 20}, [2]length.Length{-10, 15}, [2]length.Length{-10, 5})}.Slanted())
	require.False(t, Group{}.Slanted())
}
