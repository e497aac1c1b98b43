package piece_test

import (
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// layable is a pattern of any kind where it stands on a wall of any kind.
type layable struct {
	shape   survey.Shape
	pattern bond.Pattern
	rule    piece.Rule
	sets    []bond.Set
	origin  plane.Point
}

func drawLayable(t *rapid.T) layable {
	r := chance.Pattern(t, 90_000)
	_, w, placed := room(t)
	r.Sealant, r.Bond.Plumb = 6*mm, false
	l := layable{shape: w.Shape(r.Units, placed), pattern: bond.For(r, survey.Left)}
	l.rule = piece.RuleFor(r, w, l.shape.Sides)
	l.origin = plane.Point{X: length.Length(rapid.IntRange(0, 400_000).Draw(t, "u")), Y: length.Length(rapid.IntRange(0, 400_000).Draw(t, "v"))}
	l.sets = l.pattern.Over(l.origin, l.shape.Solid.Bounds())
	return l
}

// judged is what the order of merit reads of a piece.
type judged struct {
	at                       plane.Point
	place                    int
	kind                     piece.Kind
	least                    length.Length
	share                    piece.Share
	whole, unworkable, noSaw bool
	sliver, awkward          bool
	effort, leastEffort      int
	area, visible            length.Area
}

func judge(p *piece.Piece) judged {
	j := judged{at: p.Outline[0].Point, place: p.Place(), kind: p.Kind, least: p.Least, share: p.Share, whole: p.Whole, unworkable: p.Unworkable, noSaw: p.NoSaw(),
		sliver: p.Sliver, awkward: p.Awkward, effort: p.Effort(), leastEffort: p.LeastEffort(), area: p.Face.Area2(), visible: p.Visible.Area2()}
	if p.Kind&piece.Hole != 0 {
		j.area, j.visible = 0, 0 // one that is not kept comes without the outline round its holes
	}
	return j
}

// A piece that is handed over and not kept, as a search reads it, is judged as the one that is kept and drawn,
// and covers as much of the wall's boundary.
func TestPiecesThatAreNotKeptAreJudgedAlike(t *testing.T) {
	holes, cut := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		w := drawLayable(t)
		kept, bare := piece.Lay(w.shape, w.pattern, w.origin, w.rule)
		want := map[judged]int{}
		for i := range kept {
			want[judge(&kept[i])]++
		}
		layer := piece.NewLayer(w.shape, w.pattern, w.rule)
		handed := 0
		for _, set := range w.sets {
			set.Outline = nil // the tile's own
			layer.Cut(set, func(p *piece.Piece) {
				handed++
				got := judge(p)
				require.Positive(t, want[got], "%+v", got)
				want[got]--
				if p.Kind&piece.Hole != 0 {
					holes++
				}
				if !p.Whole {
					cut++
				}
				require.LessOrEqual(t, p.LeastEffort(), p.Effort())
			})
		}
		require.Len(t, kept, handed)
		require.Equal(t, bare, layer.Cover.Gaps())
	})
	require.Greater(t, holes, 10)
	require.Greater(t, cut, 100)
}

// What is covered can be carried over: the cover of some pieces, copied, and taken by the cover of the others, leaves
// bare what all pieces leave; a copy does not change with what it was copied from, and its room can be used again.
func TestACoverTakesWhatAnotherCovers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawLayable(t)
		pieces, bare := piece.Lay(w.shape, w.pattern, w.origin, w.rule)
		some, others := piece.NewCover(w.shape, w.rule), piece.NewCover(w.shape, w.rule)
		for i := range pieces {
			if rapid.Bool().Draw(t, "some") {
				some.Near(pieces[i].Solid())
			} else {
				others.Near(pieces[i].Solid())
			}
		}
		left := others.Gaps()
		copied := some.Copy(nil)
		some.Clear()
		require.Equal(t, piece.NewCover(w.shape, w.rule).Gaps(), some.Gaps(), "bare again")
		others.Take(nil)
		require.Equal(t, left, others.Gaps())
		others.Take(copied)
		require.Equal(t, bare, others.Gaps())
		some.Take(others.Copy(copied))
		require.Equal(t, bare, some.Gaps())
		copied = some.Copy(nil)
		some.Clear()
		again := piece.NewCover(w.shape, w.rule)
		again.Take(copied)
		require.Equal(t, bare, again.Gaps())
	})
}

// Boundary by boundary the sure gaps are those of the whole wall, each along its boundary.
func TestSureGapsBoundaryByBoundary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string, low, high int) length.Length {
			return length.Length(rapid.IntRange(low, high).Draw(t, name))
		}
		s := raked(n("left", -20_000, 20_000), n("right", -20_000, 20_000))
		c := covered(s, n("line", -100_000, 0), 8*mm)
		var each []piece.Gap
		for i, box := range c.Boxes() {
			for _, g := range c.SureOf(i) {
				require.True(t, box.Left <= g.From.X && g.From.X <= box.Right && box.Bottom <= g.From.Y && g.From.Y <= box.Top, "%v of %v", g, box)
				each = append(each, g)
			}
		}
		require.ElementsMatch(t, c.Sure(), each)
		c.ClearAtMost()
		require.Len(t, c.Boxes(), 1, "tile meets its base alone")
		require.Equal(t, bareOf(piece.NewCover(s, piece.Rule{Along: 300 * mm, Across: 100 * mm, Joint: 8 * mm, Sealant: 6 * mm, Sides: s.Sides}).Gaps()), bareOf(c.Gaps()), "all of it is bare")
	})
}

// By hand: a piece under a roof that runs out to a point can be cut where it is no less than 1/2 in to its other side and
// no sharper than one in six; a strip that is too narrow cannot, however long, nor what nobody sees.
func TestPointsThatASawCanCut(t *testing.T) {
	triangle := func(wide, high length.Length) plane.Region {
		at := func(x, y length.Length) plane.Corner { return plane.Corner{Point: plane.Point{X: x, Y: y}} }
		return plane.Region{{at(0, 0), at(wide, 0), at(0, high)}}
	}
	for name, c := range map[string]struct {
		p    piece.Piece
		none bool
	}{
		"no fault":               {piece.Piece{Least: 50 * mm, Visible: triangle(50*mm, 50*mm)}, false},
		"a strip of 5":           {piece.Piece{Unworkable: true, Least: 5 * mm, Visible: triangle(100*mm, 5*mm)}, true},
		"a point of 100 by 100":  {piece.Piece{Unworkable: true, Visible: triangle(100*mm, 100*mm)}, false},
		"1/2 in by six times it": {piece.Piece{Unworkable: true, Visible: triangle(length.Inch/2, 3*length.Inch)}, false},
		"a unit less":            {piece.Piece{Unworkable: true, Visible: triangle(length.Inch/2-1, 2*length.Inch)}, true},
		"sharper":                {piece.Piece{Unworkable: true, Visible: triangle(length.Inch/2, 3*length.Inch+1)}, true},
		"behind the next wall":   {piece.Piece{Unworkable: true}, true},
	} {
		require.Equal(t, c.none, c.p.NoSaw(), name)
	}
}

// By hand: a straight cut costs 1 less than a taper, and a taper over a tile of 300 that slants by two units may as well be
// one; one that slants by 3 mm may not.
func TestTheLeastEffortOfATaper(t *testing.T) {
	tile := plane.Rect{Right: 300 * mm, Top: 100 * mm}
	on := func(x, y length.Length, side plane.Side) plane.Corner {
		return plane.Corner{Point: plane.Point{X: x, Y: y}, On: side}
	}
	tapered := func(by length.Length, kind piece.Kind) piece.Piece {
		face := plane.Region{{on(0, 50*mm, survey.SideBase), on(300*mm, 50*mm+by, 0), on(300*mm, 100*mm, 0), on(0, 100*mm, 0)}}
		return piece.Piece{Tile: tile, Outline: tile.Ring(0), Face: face, Visible: face, Kind: kind}
	}
	straight := tapered(0, piece.Rip)
	require.Equal(t, straight.Effort(), straight.LeastEffort())
	for _, by := range []length.Length{1, 2, -2} {
		p := tapered(by, piece.Taper)
		require.Equal(t, p.Effort()-1, p.LeastEffort(), "by %d", by)
		both := tapered(by, piece.Taper|piece.Cross)
		require.Equal(t, both.Effort()-2, both.LeastEffort(), "by %d, with a cross cut", by)
	}
	steep := tapered(3*mm, piece.Taper)
	require.Equal(t, steep.Effort(), steep.LeastEffort())
}
