package piece_test

import (
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

const mm = length.Millimetre

// room is a random wall with everything that can happen to one: a raked base
// with a step, leaning corners with lap cover, a raked ceiling, openings and pipes.
func room(t *rapid.T) (survey.Room, survey.WallFound, survey.Placed) {
	n := func(name string, low, high int) length.Length {
		return length.Length(rapid.IntRange(low*96, high*96).Draw(t, name)) * 1
	}
	r := survey.Room{Units: length.Metric, Joint: n("joint", 0, 60), Bed: 5 * mm, Sealant: 6 * mm,
		Tile: survey.TileSize{Width: n("tile width", 500, 6000), Height: n("tile height", 500, 6000), Thickness: 8 * mm},
		Bond: survey.BondRule{Num: int64(rapid.IntRange(0, 2).Draw(t, "num")), Den: 3, Plumb: rapid.Bool().Draw(t, "plumb")}}
	w := survey.WallFound{Name: "w", Width: n("width", 5000, 20000)}
	w.Left = survey.EndFound{Meets: true, Gap: 3 * mm, Behind: 13 * mm,
		Lean: []survey.Reading{{At: -700 * mm, Value: n("lean", -100, 100)}, {At: 600 * mm, Value: n("lean", -100, 100)}}}
	w.Right = survey.EndFound{Meets: true, Gap: 3 * mm, Cover: 13 * mm, Lean: []survey.Reading{{At: 0, Value: 0}, {At: 500 * mm, Value: n("lean", -100, 100)}}}
	step := w.Width / 4
	w.Base = []survey.SegmentFound{
		{Meets: "floor", Gap: 3 * mm, Readings: []survey.Reading{{At: 0, Value: -900 * mm}, {At: step, Value: -900*mm + n("floor", -200, 200)}}},
		{Meets: "tub", Gap: 3 * mm, Readings: []survey.Reading{{At: step, Value: -600 * mm}, {At: w.Width, Value: -600*mm + n("tub", -300, 300)}}}}
	w.Head = survey.HeadFound{Meets: true, Gap: 3 * mm, Readings: []survey.Reading{{At: 0, Value: 900 * mm}, {At: w.Width, Value: 900*mm + n("ceiling", -300, 300)}}}
	left, bottom := n("niche left", 1500, 3000), n("niche bottom", -1000, 2000)
	w.Openings = []survey.OpeningFound{{Kind: "niche", Name: "n"}, {Kind: "pipe", Name: "p", At: n("pipe", 500, 4000), Up: n("pipe", -5000, 5000), Diameter: n("diameter", 100, 1500)}}
	p := survey.Placed{Openings: []survey.Edges{{Left: left, Bottom: bottom, Right: left + n("niche", 500, 4000), Top: bottom + n("niche", 500, 9000)}, {}}}
	return r, w, p
}

func cutRandom(t *rapid.T) (survey.Room, survey.Shape, []bond.Row, []piece.Piece) {
	r, w, p := room(t)
	s := w.Shape(r.Units, p)
	b := bond.Of(r, survey.Left)
	box := s.Solid.Bounds()
	line := length.Length(rapid.IntRange(0, 400_000).Draw(t, "line"))
	edge := length.Length(rapid.IntRange(0, 400_000).Draw(t, "edge"))
	if r.Bond.Plumb {
		box = box.Transposed()
		line, edge = edge, line
	}
	rows := b.Rows(line, edge, box.Bottom-b.Across(), box.Top+b.Across())
	pieces, _ := piece.Cut(s, rows, piece.RuleFor(r, w, s.Sides))
	return r, s, rows, pieces
}

// Law 1: cut by the tiles and by the joints, with no strip sealed away, nothing
// of the wall is lost or counted twice. The joints are cut as rows of their own.
func TestPiecesAndJointsMakeUpTheWall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, s, rows, _ := cutRandom(t)
		rule := piece.RuleFor(r, survey.WallFound{}, s.Sides)
		rule.Sealant = 0
		s.Visible, s.Region = s.Solid, s.Solid
		pieces, _ := piece.Cut(s, rows, rule)
		var sum length.Area
		for _, p := range pieces {
			sum += p.Face.Area2()
		}
		framed := piece.Frame(s, rows, rule.Plumb)
		joints := length.Area(0)
		whole := framed.Solid.Area2()
		for k, row := range rows {
			band := piece.Slice(framed, row.Low, row.High).Solid
			xs := lines(band, row)
			bent := band.BendX(xs)
			whole += bent.Area2() - band.Area2()
			for i := 1; i+1 < len(xs); i += 2 {
				joints += bent.KeepAll(plane.RightOf(xs[i]), plane.LeftOf(xs[i+1])).Area2()
			}
			if k > 0 {
				joints += piece.Slice(framed, rows[k-1].High, row.Low).Solid.Area2()
			}
		}
		require.Equal(t, whole, sum+joints)
	})
}

// lines are the tile edges of a row over the band, one tile beyond it each way.
func lines(band plane.Region, row bond.Row) []length.Length {
	box := band.Bounds()
	var xs []length.Length
	x := row.First - ((row.First-box.Left)/row.Pitch+2)*row.Pitch
	for ; x < box.Right+2*row.Pitch; x += row.Pitch {
		xs = append(xs, x, x+row.Width)
	}
	return xs
}

// Law 2 and 3, and the sizes agree with the outline.
func TestNoTwoPiecesOverlapAndNoneExceedsItsTile(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, _, _, pieces := cutRandom(t)
		boxes := make([]plane.Rect, len(pieces))
		for i, p := range pieces {
			boxes[i] = p.Face.Bounds()
		}
		for i := range pieces {
			p, box := &pieces[i], boxes[i]
			require.Positive(t, p.Face.Area2())
			require.True(t, box.Left >= p.Tile.Left && box.Right <= p.Tile.Right && box.Bottom >= p.Tile.Bottom && box.Top <= p.Tile.Top)
			require.LessOrEqual(t, p.Wide, p.Visible.Bounds().Width())
			require.LessOrEqual(t, p.High, p.Visible.Bounds().Height())
			for k := range i {
				if box.Overlaps(boxes[k]) && p.Tile != pieces[k].Tile {
					require.Fail(t, "two pieces overlap", "%v %v", p.Face, pieces[k].Face)
				}
			}
		}
	})
}

// Found by TestPiecesAndJointsMakeUpTheWall: the tip of a lean, thinner than a
// unit where it crosses a tile's edge, lay flat on the row's line and passed for
// a floor, so that a whole tile stood where the wall has next to nothing.
func TestATipThinnerThanAUnitIsNoWholeTile(t *testing.T) {
	tip := plane.Region{{
		{Point: plane.Point{X: 144000, Y: 480002}}, {Point: plane.Point{X: 861120, Y: 480002}},
		{Point: plane.Point{X: 861120, Y: 486722}}, {Point: plane.Point{X: 480000, Y: 486722}, On: 1},
	}}
	shape := survey.Shape{Region: tip, Solid: tip, Visible: tip, Sides: []survey.Boundary{{Name: "factory"}, {Name: "right"}}}
	row := bond.Row{Low: 480002, High: 528002, First: 1, Width: 48000, Pitch: 48000}
	pieces, _ := piece.Cut(shape, []bond.Row{row}, piece.Rule{Along: 48000, Across: 48000, Sides: shape.Sides})
	for _, p := range pieces {
		require.False(t, p.Whole, "%v", p.Face)
	}
}
