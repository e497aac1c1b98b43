package finding

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/fixture"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

const inch = length.Inch

// quiet is a room in which only the rules speak that speak of every room: one
// wall 60 in wide over a floor, 8 by 4 in tile in stack bond, joint 1/8 in.
func quiet() Input {
	return Input{
		Room: survey.Room{
			Tile:  survey.TileSize{Width: 8 * inch, Height: 4 * inch, Vary: inch / 32},
			Joint: inch / 8, Sealant: inch / 4,
			Bond: survey.BondRule{Kind: "stack", Den: 1},
		},
		Walls: []plan.Wall{{
			Found: survey.WallFound{
				Name: "back", Letter: "B", Width: 60 * inch,
				Base: []survey.SegmentFound{{Meets: "floor", Gap: inch / 8, Readings: readings(0, -40, 60, -40)}},
			},
			Shape: survey.Shape{Sides: []survey.Boundary{{Name: "factory"}, {Name: "left", Part: survey.Part{Is: survey.LeftEnd}},
				{Name: "base", Part: survey.Part{Is: survey.BaseSegment}, Gap: inch / 8}}},
			Start: plan.Start{Placed: survey.Placed{Right: 60 * inch, Head: 40 * inch}},
			Pieces: []piece.Piece{
				tile("B-01-01", 1, 0, 0, 8, 4),
				tile("B-02-01", 2, 8, 4, 16, 8),
			},
		}},
	}
}

// readings takes pairs of place and height, in inches.
func readings(at ...length.Length) []survey.Reading {
	var all []survey.Reading
	for pair := range slices.Chunk(at, 2) {
		all = append(all, survey.Reading{At: pair[0] * inch, Value: pair[1] * inch})
	}
	return all
}

// tile is a whole tile with the given edges, in inches.
func tile(id string, course int, left, bottom, right, top length.Length) piece.Piece {
	r := plane.Rect{Left: left * inch, Bottom: bottom * inch, Right: right * inch, Top: top * inch}
	face := plane.Region{{
		{Point: plane.Point{X: r.Left, Y: r.Bottom}}, {Point: plane.Point{X: r.Right, Y: r.Bottom}},
		{Point: plane.Point{X: r.Right, Y: r.Top}}, {Point: plane.Point{X: r.Left, Y: r.Top}},
	}}
	return piece.Piece{ID: id, Course: course, Tile: r, Face: face, Visible: face, Whole: true, Share: piece.Share{Num: 1, Den: 1}}
}

// thin is a cut piece of that width at the left end, a sliver when said so.
func thin(id string, course int, wide length.Length, sliver bool) piece.Piece {
	p := tile(id, course, 0, 0, 8, 4)
	p.Whole, p.Wide, p.Least, p.Sliver, p.Cuts = false, wide, wide, sliver, []plane.Side{1}
	p.Share = piece.Share{Num: int64(wide), Den: int64(8 * inch)}
	return p
}

func opens(in *Input, o survey.OpeningFound, left, bottom, right, top length.Length) {
	w := &in.Walls[0]
	w.Found.Openings = append(w.Found.Openings, o)
	w.Start.Placed.Openings = append(w.Start.Placed.Openings, survey.Edges{Left: left * inch, Bottom: bottom * inch, Right: right * inch, Top: top * inch})
}

// evenRow lays a row of three tiles, 8 in each, in the place of the second piece.
func evenRow(in *Input) {
	in.Walls[0].Pieces = []piece.Piece{tile("B-02-01", 2, 0, 4, 8, 8), tile("B-02-02", 2, 8, 4, 16, 8), tile("B-02-03", 2, 16, 4, 24, 8)}
}

// ruleCase is a change of the quiet room and what one rule then says.
type ruleCase struct {
	name   string
	rule   Name
	change func(*Input)
	want   []string // the texts, in order; none: the rule is silent
}

func TestRules(t *testing.T) {
	niche := survey.OpeningFound{Kind: "niche", Name: "shelf"}
	placed := niche
	placed.Left = survey.Span{From: 0, To: 40 * inch}
	window := survey.OpeningFound{Kind: "window", Name: "light"}
	valve := survey.OpeningFound{Kind: "pipe", Name: "valve", At: 4 * inch, Up: 2 * inch, Diameter: inch}
	cases := []ruleCase{
		{"no bare wall", "bare wall", func(in *Input) {}, nil},
		{"bare wall at one place", "bare wall", func(in *Input) { in.Walls[0].Bare = []plane.Point{{X: inch}} }, []string{`On back a gap is wider than sealant may fill (1/4").`}},
		{"eight bare places", "bare wall", func(in *Input) { in.Walls[0].Bare = make([]plane.Point, 8) },
			[]string{`On back the gap is wider than sealant may fill (1/4") at 8 places.`}},
		{"a piece of 7/16 in", "unworkable piece", func(in *Input) { in.Walls[0].Pieces = append(in.Walls[0].Pieces, thin("B-01-02", 1, 7*inch/16, true)) },
			[]string{`B-01-02 at the left end of back is only 7/16" at its thinnest.`}},
		{"it is no sliver besides", "sliver", func(in *Input) { in.Walls[0].Pieces = append(in.Walls[0].Pieces, thin("B-01-02", 1, 7*inch/16, true)) }, nil},
		{"a piece of 1/2 in", "unworkable piece", func(in *Input) { in.Walls[0].Pieces = append(in.Walls[0].Pieces, thin("B-01-02", 1, inch/2, true)) }, nil},
		{"a piece of 1/2 in of tile 3/8 in thick", "unworkable piece", func(in *Input) {
			in.Room.Tile.Thickness = 3 * inch / 8
			in.Walls[0].Pieces = append(in.Walls[0].Pieces, thin("B-01-02", 1, inch/2, true))
		}, []string{`B-01-02 at the left end of back is only 1/2" at its thinnest.`}},
		{"a flat end of a long tile of a pattern", "unworkable piece", func(in *Input) {
			in.Room.Bond.Kind = survey.Herringbone
			in.Walls[0].Pieces = append(in.Walls[0].Pieces, thin("B-01-02", 1, inch/4, true))
		}, nil},
		{"half of a finger tile", "unworkable piece", func(in *Input) {
			in.Room.Tile.Width = inch / 2
			in.Walls[0].Pieces = append(in.Walls[0].Pieces, thin("B-01-02", 1, inch/4, true))
		}, nil},
		{"one sliver", "sliver", func(in *Input) { in.Walls[0].Pieces = append(in.Walls[0].Pieces, thin("B-01-02", 1, inch, true)) },
			[]string{`B-01-02 at the left end of back is only 1" at its thinnest.`}},
		{"a free niche at the end of the tile", "opening at the edge of the tile", func(in *Input) { opens(in, placed, 16, 5, 24, 7); evenRow(in) },
			[]string{"No tile is left to the right of niche shelf."}},
		{"one over which tile ends too", "opening at the edge of the tile", func(in *Input) {
			free := placed
			free.Bottom = placed.Left
			opens(in, free, 16, 5, 25, 8)
			evenRow(in)
		}, []string{"No tile is left to the right of and over niche shelf."}},
		{"a free niche with tile at all sides", "opening at the edge of the tile", func(in *Input) { opens(in, placed, 8, 5, 16, 7); evenRow(in) }, nil},
		{"a niche that was measured at the end of the tile", "opening at the edge of the tile", func(in *Input) { opens(in, niche, 16, 5, 24, 7); evenRow(in) }, nil},
		{"a niche that was measured at the end of the tile", "niche at the edge of the tile", func(in *Input) { opens(in, niche, 16, 5, 24, 7); evenRow(in) },
			[]string{"No tile is left to the right of niche shelf, which was measured there."}},
		{"a measured niche with tile at all sides", "niche at the edge of the tile", func(in *Input) { opens(in, niche, 8, 5, 16, 7); evenRow(in) }, nil},
		{"a free niche at the end of the tile is none that was measured there", "niche at the edge of the tile", func(in *Input) { opens(in, placed, 16, 5, 24, 7); evenRow(in) }, nil},
		{"a niche between two joint lines", "edge off the joint lines", func(in *Input) { opens(in, niche, 8, 4, 16, 8) }, nil},
		{"a niche off two lines", "edge off the joint lines", func(in *Input) { opens(in, niche, 7, 4, 16, 9) },
			[]string{"The left and top edges of niche shelf are on no joint line."}},
		{"a window that goes up past the tile, and down below it", "edge off the joint lines", func(in *Input) {
			opens(in, window, 7, -5, 16, 90)
			in.Walls[0].Shape.Region = plane.Region{plane.Rect{Right: 60 * inch, Top: 40 * inch}.Ring(0)}
		}, []string{"The left edge of window light is on no joint line."}},
		{"a niche placed where both cuts are equal, as merit wants it", "edge off the joint lines", func(in *Input) { opens(in, placed, 5, 4, 19, 8); evenRow(in) }, nil},
		{"a niche placed where cuts are equal and small", "edge off the joint lines", func(in *Input) { opens(in, placed, 3, 4, 21, 8); evenRow(in) },
			[]string{"The left and right edges of niche shelf are on no joint line."}},
		{"a niche placed where cuts differ", "edge off the joint lines", func(in *Input) { opens(in, placed, 5, 4, 18, 8); evenRow(in) },
			[]string{"The left and right edges of niche shelf are on no joint line."}},
		{"a niche that is measured, between equal cuts", "edge off the joint lines", func(in *Input) { opens(in, niche, 5, 4, 19, 8); evenRow(in) },
			[]string{"The left and right edges of niche shelf are on no joint line."}},
		{"a niche whose edges lie within joints", "edge off the joint lines", func(in *Input) {
			in.Room.Joint = inch
			opens(in, niche, 8, 4, 16, 8)
			in.Walls[0].Start.Placed.Openings[0].Left -= inch / 2
		}, nil},
		{"a niche off one line, called niche", "edge off the joint lines", func(in *Input) { opens(in, survey.OpeningFound{Kind: "niche", Name: "niche"}, 7, 4, 16, 8) },
			[]string{"The left edge of niche is on no joint line."}},
		{"a hole in the middle", "hole near an edge", func(in *Input) { opens(in, valve, 0, 0, 0, 0) }, nil},
		{"a hole 3/8 in from the edge", "hole near an edge", func(in *Input) { v := valve; v.At = inch; opens(in, v, 0, 0, 0, 0) },
			[]string{`The hole for valve leaves 3/8" of tile beside it in B-01-01.`}},
		{"a hole over the edge is a notch", "hole near an edge", func(in *Input) { v := valve; v.At = inch / 2; opens(in, v, 0, 0, 0, 0) }, nil},
		{"a hole near the edge in two tiles", "hole near an edge", func(in *Input) {
			v := valve
			v.At, v.Up = inch, 4*inch
			in.Walls[0].Pieces = []piece.Piece{tile("B-01-01", 1, 0, 2, 8, 6), tile("B-01-02", 1, 0, 2, 9, 6)}
			opens(in, v, 0, 0, 0, 0)
		}, []string{`The hole for valve leaves 3/8" of tile beside it in B-01-01, and hardly more in 1 other piece.`}},
		// Ø 4 1/2 takes 15.9 sq in, Ø 3 1/2 9.6: facts of a maker of porcelain. The hole is 1/4 in wider than what goes through.
		{"a hole of 4 1/2 in in one tile", "large hole in one tile", func(in *Input) { wide(in, 17*inch/4) },
			[]string{"The hole for valve takes 16 sq in out of B-01-01; more than 12 sq in may be more than porcelain stands."}},
		{"a hole of 3 1/2 in in one tile", "large hole in one tile", func(in *Input) { wide(in, 13*inch/4) }, nil},
		{"a hole of 4 1/2 in that a joint crosses", "large hole in one tile", func(in *Input) {
			wide(in, 17*inch/4)
			in.Walls[0].Found.Openings[0].At = 8 * inch
		}, nil},
		{"small ends in stack bond", "small end in every second course", func(in *Input) { in.Walls[0].Pieces = ends() }, nil},
		{"small ends in running bond", "small end in every second course", func(in *Input) { in.Walls[0].Pieces = ends(); half(in) },
			[]string{`At the left end of back every second course ends in 1 7/8", the others in 6".`}},
		{"small ends behind the tile of the next wall", "small end in every second course", func(in *Input) {
			in.Walls[0].Pieces = ends()
			in.Walls[0].Found.Left.Cover, in.Walls[0].Found.Left.Gap = inch/2, inch/8
			half(in)
		}, []string{`At the left end of back every second course ends in 1 7/8" as seen (2 1/4" as cut), the others in 6" as seen (6 3/8" as cut).`}},
		{"small ends in a third bond, where none is every second course", "small end in every second course", func(in *Input) {
			in.Walls[0].Pieces = ends()
			half(in)
			in.Room.Bond.Num, in.Room.Bond.Den = 1, 3
		}, nil},
		{"a quarter-centred half bond, as setters do it", "small end in every second course", func(in *Input) {
			in.Walls[0].Pieces = []piece.Piece{thin("B-01-01", 1, 6*inch, false), thin("B-02-01", 2, 2*inch, false)}
			half(in)
		}, nil},
		{"small ends at both ends", "small end in every second course", func(in *Input) {
			in.Walls[0].Pieces = ends()
			in.Walls[0].Shape.Sides[2].Part = survey.Part{Is: survey.RightEnd}
			for i := range in.Walls[0].Pieces {
				in.Walls[0].Pieces[i].Cuts = []plane.Side{1, 2}
			}
			half(in)
		}, []string{`At both ends of back every second course ends in 1 7/8", the others in 6".`}},
		{"a set-out that is not proven", "not proven best", func(in *Input) { in.Setout.Bound = "at best" }, []string{"at best"}},
		{"tiles that vary over ten courses, a niche at the fifth", "drift of the courses", func(in *Input) {
			in.Walls[0].Pieces[1].Row = 9
			opens(in, niche, 8, 20, 16, 28)
		}, []string{`From the course line the top course may drift by 5/16" (10 courses × 1/32"), the sill of niche shelf by 5/32".`}},
		{"tiles that do not vary", "drift of the courses", func(in *Input) { in.Room.Tile.Vary = 0 }, nil},

		{"a half bond of short tile", "offset of long tile", half, nil},
		{"a third bond of long tile", "offset of long tile", func(in *Input) { long(in); in.Room.Bond = survey.BondRule{Num: 2, Den: 3} }, nil},
		{"a half bond of long tile", "offset of long tile", func(in *Input) { long(in); half(in) },
			[]string{`The tile is 24" along the courses and each course shifts 1/2 of a tile; over 15" at most a third is allowed.`}},
		{"a half bond in columns of tile that is wide but not high", "offset of long tile", func(in *Input) { long(in); half(in); in.Room.Bond.Plumb = true }, nil},
		// ANSI A108.02 4.3.8, quoted in TileLetter: 1/16 in variation → 3/16 in joint.
		{"variation of 1/16 in with a joint of 3/16 in", "joint against variation", func(in *Input) { in.Room.Tile.Vary, in.Room.Joint = inch/16, 3*inch/16 }, nil},
		{"variation of 1/16 in with a joint of 1/8 in", "joint against variation", func(in *Input) { in.Room.Tile.Vary = inch / 16 },
			[]string{`The tiles vary by 1/16", so the joint should be at least three times that, 3/16"; it is 1/8".`}},
		{"a band at half the wall", "band at half the wall", func(in *Input) { laidBand(in, -2) }, []string{"The liner stands at half the height of back."}},
		{"a band higher up", "band at half the wall", func(in *Input) { laidBand(in, 10) }, nil},
		{"a thick band", "band stands proud", func(in *Input) { laidBand(in, 10); in.Room.Bands[0].Tile.Thickness = inch / 2 }, []string{`The tile of the liner is 1/2" thicker than the field.`}},
		{"a band as thick", "band stands proud", func(in *Input) { laidBand(in, 10) }, nil},
		{"a niche from inside a band", "band ends in an opening", func(in *Input) {
			laidBand(in, 10)
			opens(in, survey.OpeningFound{Kind: "niche", Name: "shelf"}, 8, 11, 16, 20)
		}, []string{"The liner runs into the side of niche shelf, whose edge lies inside it."}},
		{"a niche on a band", "band ends in an opening", func(in *Input) {
			laidBand(in, 10)
			opens(in, survey.OpeningFound{Kind: "niche", Name: "shelf"}, 8, 14, 16, 20)
		}, nil},
		{"a band with a narrow joint", "joint minimum", func(in *Input) { laidBand(in, 10); in.Room.Bands[0].Joint = inch / 32 }, []string{`In the liner: The joint is 1/32"; at least 1/16" is asked for.`}},
		{"a joint of 1/32 in", "joint minimum", func(in *Input) { in.Room.Joint = inch / 32 }, []string{`The joint is 1/32"; at least 1/16" is asked for.`}},
		{"a long tile with a joint of 1/16 in", "joint of long tile in an offset bond", func(in *Input) { long(in); half(in); in.Room.Joint = inch / 16 },
			[]string{`The joint is 1/16"; long tile in an offset bond needs 1/8" if rectified and 3/16" if calibrated, each plus the edge warpage.`}},
		{"a long tile with a joint of 3/16 in", "joint of long tile in an offset bond", func(in *Input) { long(in); half(in); in.Room.Joint = 3 * inch / 16 }, nil},
		{"inches do not ask a UK rule", "joint minimum, small tile (UK)", func(in *Input) { in.Room.Joint = inch / 16 }, nil},
		{"1 mm in a UK new home", "joint minimum, new homes (UK)", metric(1000), []string{"The joint is 1 mm; at least 1.5 mm is asked for."}},
		{"1.5 mm between small tiles", "joint minimum, small tile (UK)", metric(1500), []string{"The joint is 1.5 mm; at least 2 mm is asked for."}},
		{"1.5 mm between small tiles is no matter of large ones", "joint minimum, large tile (UK)", metric(1500), nil},
		{"2 mm between large tiles", "joint minimum, large tile (UK)", func(in *Input) {
			metric(2000)(in)
			in.Room.Tile.Width, in.Room.Tile.Height = 600*length.Millimetre, 300*length.Millimetre
		}, []string{"The joint is 2 mm; at least 3 mm is asked for."}},
		{"2 mm in Singapore", "joint minimum (Singapore)", metric(2000), []string{"The joint is 2 mm; at least 3 mm is asked for."}},

		{"a corner gap of 1/16 in", "sealant gap", func(in *Input) { meets(in, inch/16) }, []string{`The gap at the left corner of back is 1/16"; at least 1/8" is asked for.`}},
		{"a corner gap of 3/8 in", "sealant gap", func(in *Input) { meets(in, 3*inch/8) }, []string{`The gap at the left corner of back is 3/8"; sealant may fill 1/4".`}},
		// A message that contradicted itself: 1/8 in where 1/8 in was asked for.
		{"a corner gap of 7/64 in", "sealant gap", func(in *Input) { meets(in, 7*inch/64) }, []string{`The gap at the left corner of back is 7/64"; at least 1/8" is asked for.`}},
		{"a corner gap hardly under 1/8 in", "sealant gap", func(in *Input) { meets(in, inch/8-1) }, []string{`The gap at the left corner of back is 3047/24384"; at least 1/8" is asked for.`}},
		{"two gaps alike on two walls", "sealant gap", func(in *Input) {
			meets(in, inch/16)
			in.Walls = append(in.Walls, in.Walls[0])
			in.Walls[1].Found.Name = "right"
		}, []string{`The gap at the left corner of back and the left corner of right is 1/16"; at least 1/8" is asked for.`}},
		{"a corner gap of 1/8 in", "sealant gap", func(in *Input) { meets(in, inch/8) }, nil},
		{"a corner", "soft joints", func(in *Input) { meets(in, inch/8) }, []string{"Every corner and rim of this room takes sealant, not grout."}},
		{"no corner", "soft joints", func(in *Input) {}, nil},
		{"a rim 1 in out over 60 in", "rim out of level", base("tub", readings(0, -40, 60, -39)), nil}, // 0.95°
		{"a rim 2 in out over 60 in", "rim out of level", base("tub", readings(0, -40, 60, -38)),
			[]string{`The tub along back is out of level by 2" in 5'-0", more than one degree.`}},
		{"a floor may slope", "rim out of level", base("floor", readings(0, -40, 60, -38)), nil},
		{"a level rim", "rim nearly level", base("tub", readings(0, -40, 60, -40)), nil},
		{"a rim 1/8 in out", "rim nearly level", base("tub", []survey.Reading{{Value: -40 * inch}, {At: 60 * inch, Value: -40*inch + inch/8}}),
			[]string{`The rim is level within 1/8".`}},
		{"a rim 1/64 in out", "rim nearly level", base("tub", []survey.Reading{{Value: -40 * inch}, {At: 60 * inch, Value: -40*inch + inch/64}}), nil},
		{"a rim 1/8 in out has no rake", "rake at the base", base("tub", []survey.Reading{{}, {At: 60 * inch, Value: inch / 8}}), nil},
		{"a rim 3/8 in out", "rake at the base", base("tub", []survey.Reading{{}, {At: 60 * inch, Value: 3 * inch / 8}}),
			[]string{`The rim lies 3/8" lower at its low point than at its high point; the first course takes that up. That is 9 % of a course.`}},
		{"a curb 4 in over its level base", "rake at the base", curbed(0), nil},
		{"a curb 4 in over its level base is no rim out of level", "rim nearly level", curbed(0), nil},
		{"a curb over a base that is 3/8 in out", "rake at the base", curbed(3 * inch / 8),
			[]string{`The shower base lies 3/8" lower at its low point than at its high point; the first course takes that up. That is 9 % of a course.`}},
		{"a curb over a base that is 1/8 in out", "rim nearly level", curbed(inch / 8), []string{`The shower base is level within 1/8".`}},
		// 3/8 in over a 24 in tile is hard to see, over 5/8 in mosaic plain: TileLetter 2018-03 p. 86.
		{"3/8 in under tile of 24 in", "rake at the base", func(in *Input) {
			base("tub", []survey.Reading{{}, {At: 60 * inch, Value: 3 * inch / 8}})(in)
			in.Room.Tile.Height = 24 * inch
		}, []string{`The rim lies 3/8" lower at its low point than at its high point; the first course takes that up. That is 2 % of a course, hard to see.`}},
		{"3/8 in under mosaic of 5/8 in", "rake at the base", func(in *Input) {
			base("tub", []survey.Reading{{}, {At: 60 * inch, Value: 3 * inch / 8}})(in)
			in.Room.Tile.Height = 5 * inch / 8
		}, []string{`The rim lies 3/8" lower at its low point than at its high point; the first course takes that up. That is 60 % of a course, plain to see.`}},
		{"6 ft 8 in over the floor", "height of the wet wall", func(in *Input) {}, nil},
		{"a wainscot 5 ft over the floor", "height of the wet wall", func(in *Input) { in.Walls[0].Start.Placed.Head = 20 * inch }, nil},
		{"a wainscot beside a tub", "height of the wet wall", func(in *Input) {
			in.Walls = append(in.Walls, in.Walls[0])
			base("tub", readings(0, -40, 60, -40))(in)
			in.Walls[1].Start.Placed.Head, in.Walls[1].Found.Name = 20*inch, "panelled"
		}, nil},
		{"a valve on a wall beside the tub", "height of the wet wall", func(in *Input) {
			in.Walls = append(in.Walls, in.Walls[0])
			base("tub", readings(0, -40, 60, -40))(in)
			in.Walls[1].Start.Placed.Head, in.Walls[1].Found.Name = 20*inch, "valve"
			in.Walls[1].Found.Openings = []survey.OpeningFound{{Kind: survey.Pipe}}
		}, []string{`The tile on valve ends 5'-0" over the floor; 6'-0" is commonly asked for.`}},
		{"glass beside a tiled floor", "height of the wet wall", func(in *Input) {
			in.Walls[0].Start.Placed.Head = 20 * inch
			in.Walls[0].Fixtures = []fixture.Placed{{Found: survey.FixtureFound{Kind: survey.GlassLine, Name: "screen"}}}
		}, []string{`The tile on back ends 5'-0" over the floor; 6'-0" is commonly asked for.`}},
		{"5 ft over the floor", "height of the wet wall", func(in *Input) {
			in.Walls[0].Start.Placed.Head = 20 * inch
			in.Walls[0].Found.Openings = []survey.OpeningFound{{Kind: survey.Pipe}}
		},
			[]string{`The tile on back ends 5'-0" over the floor; 6'-0" is commonly asked for.`}},
		{"three walls of one height", "height of the wet wall", func(in *Input) {
			in.Walls[0].Start.Placed.Head = 20 * inch
			in.Walls = append(in.Walls, in.Walls[0], in.Walls[0])
			in.Walls[2].Found.Openings = []survey.OpeningFound{{Kind: survey.Pipe}}
			in.Walls[0].Found.Name, in.Walls[2].Found.Name = "left", "right"
		}, []string{`The tile on left, back and right ends 5'-0" over the floor; 6'-0" is commonly asked for.`}},
		{"69 in over a shower base, under a ceiling", "height of the wet wall", func(in *Input) {
			base("shower base", readings(0, -40, 60, -40))(in)
			in.Walls[0].Found.Head = survey.HeadFound{Meets: true, Gap: inch, Readings: readings(0, 30, 60, 31)}
		}, []string{`The tile on back ends 5'-9" over the shower base; 5'-10" is commonly asked for.`}},
		{"over a tub alone nothing can be said", "height of the wet wall", func(in *Input) {
			base("tub", readings(0, -40, 60, -40))(in)
			in.Walls[0].Start.Placed.Head = 0
		}, nil},
		{"tile that stops 1 in past the tub", "tile past the tub", func(in *Input) {
			base("tub", readings(1, -40, 60, -40))(in)
			in.Walls[0].Found.Right.Meets = true
		}, []string{`At the left end of back the tile runs 1" past the tub; at least 2" is better.`}},
		// Bullnose is tile: found on a tub whose tile ended 1/8 in past it, with 2 in of bullnose beyond.
		{"tile and bullnose that stop 3 1/8 in past the tub", "tile past the tub", func(in *Input) {
			base("tub", readings(1, -40, 60, -40))(in)
			in.Walls[0].Found.Right.Meets = true
			in.Walls[0].Found.Left.Trim = &survey.TrimFound{Kind: survey.Bullnose, Width: 2 * inch}
		}, nil},
		{"tile and a bar that stop 1 in past the tub", "tile past the tub", func(in *Input) {
			base("tub", readings(1, -40, 60, -40))(in)
			in.Walls[0].Found.Right.Meets = true
			in.Walls[0].Found.Left.Trim = &survey.TrimFound{Kind: survey.Profile, Width: 2 * inch}
		}, []string{`At the left end of back the tile runs 1" past the tub; at least 2" is better.`}},
		{"a wall of 21 ft", "movement joint in the field", func(in *Input) { in.Walls[0].Found.Width = 252 * inch }, []string{`back is 21'-0" wide.`}},

		{"a niche beside a window", "openings run into each other", func(in *Input) { opens(in, niche, 8, 4, 16, 8); opens(in, window, 16, 0, 30, 20) }, nil},
		{"a niche in a window", "openings run into each other", func(in *Input) { opens(in, niche, 8, 4, 16, 8); opens(in, window, 15, 0, 30, 20) },
			[]string{"Window light runs into niche shelf."}},
		// Tile 5/16 and bed 3/16 in a side leave 12 1/2 in clear of a bay that is lined to 13 1/2: a how-to page.
		{"a niche of 12 1/2 in", "niche wider than a stud bay", func(in *Input) {
			lined(in)
			opens(in, niche, 8, 4, 20, 8)
			in.Walls[0].Start.Placed.Openings[0].Right += inch / 2
		}, nil},
		{"a niche of 13 in", "niche wider than a stud bay", func(in *Input) { lined(in); opens(in, niche, 8, 4, 21, 8) },
			[]string{`Niche shelf is 13" wide between the tiles, about 15" with its tile and lining; a bay between studs at 16 in is 14 1/2" clear.`}},
		{"a window 50 in over the tub", "window glass", func(in *Input) { base("tub", readings(0, -40, 60, -40))(in); opens(in, window, 0, 10, 20, 30) },
			[]string{`Window light begins 4'-2" over the rim, under 5'-0", and is no further than 5'-0" from it; a window beside it counts like one that faces it.`}},
		{"a window on the wall beside the tub", "window glass", func(in *Input) { roundFrom(in, 40); opens(in, window, 50, 10, 60, 30) },
			[]string{`Window light begins 4'-2" over the rim, under 5'-0", and is no further than 5'-0" from it; a window beside it counts like one that faces it.`}},
		{"a window more than 60 in from the tub", "window glass", func(in *Input) { roundFrom(in, 40); opens(in, window, 61, 10, 70, 30) }, nil},
		{"a doorway beside the tub", "window glass", func(in *Input) {
			base("tub", readings(0, -40, 60, -40))(in)
			door := window
			door.Doorway = true
			opens(in, door, 0, -60, 20, 30)
		}, nil},
		{"a window 60 in over the tub", "window glass", func(in *Input) { base("tub", readings(0, -40, 60, -40))(in); opens(in, window, 0, 20, 20, 30) }, nil},
		{"a sill", "niche sill", func(in *Input) { opens(in, niche, 8, 4, 16, 8) }, []string{"The sill of niche shelf slopes at least 1/4 in per ft (21 mm per m) to the room."}},
		{"two sills", "niche sill", func(in *Input) {
			opens(in, niche, 8, 4, 16, 8)
			opens(in, survey.OpeningFound{Kind: "niche", Name: "soap"}, 28, 4, 36, 8)
		},
			[]string{"The sills of niche shelf and niche soap slope at least 1/4 in per ft (21 mm per m) to the room."}},
		{"a niche in the studs", "cut studs", func(in *Input) { opens(in, niche, 8, 4, 16, 8) }, []string{"Niche shelf is cut into the framing."}},
		{"a pipe", "gap round a pipe", func(in *Input) { opens(in, valve, 0, 0, 0, 0) }, []string{"Tile keeps clear of every pipe, under its escutcheon."}},

		{"small tile", "flat wall", func(in *Input) {}, []string{"The wall should be flat within 1/4 in in 10 ft and 1/16 in in 12 in (6 mm in 3 m, 1.6 mm in 300 mm) for this tile."}},
		{"long tile", "flat wall", long, []string{"The wall should be flat within 1/8 in in 10 ft and 1/16 in in 24 in (3 mm in 3 m, 1.6 mm in 600 mm) for this tile."}},
		{"a joint of 1/8 in", "lippage", func(in *Input) {}, []string{`With a joint of 1/8" two edges may differ by 1/32 in (0.8 mm) plus the actual warpage of the tile.`}},
		{"a joint of 1/4 in", "lippage", func(in *Input) { in.Room.Joint = inch / 4 }, []string{`With a joint of 1/4" two edges may differ by 1/16 in (1.6 mm) plus the actual warpage of the tile.`}},

		{"whole tiles only", "cutting dust", func(in *Input) {}, nil},
		{"a cut", "cutting dust", func(in *Input) { in.Walls[0].Pieces[0].Whole = false }, []string{"Cutting tile sets free fine silica dust."}},
		{"a cut at a wet saw", "wet saw and power", func(in *Input) { in.Walls[0].Pieces[0].Whole = false }, []string{"A wet saw brings water and mains power together."}},
		{"a tub", "tub deflects", base("tub", readings(0, -40, 60, -40)), []string{"The tub moves; the tile over it does not."}},
		{"no tub", "tub deflects", func(in *Input) {}, nil},
	}
	spoke := map[Name]bool{"mortar contact": true, "old walls": true, "backing and membrane": true, "first course must harden": true, "grab bars": true}
	for _, c := range slices.Concat(cases, setCases(), nicheCases(), trimCases(), legCases(), mosaicCases(), cornerCases(), topCases(), fixtureCases(), stripCases(), headCases()) {
		t.Run(string(c.rule)+"/"+c.name, func(t *testing.T) {
			in := quiet()
			c.change(&in)
			var texts []string
			for _, f := range Judge(in) {
				if f.Rule == c.rule {
					texts = append(texts, f.Text)
				}
			}
			assert.Equal(t, c.want, texts)
		})
		spoke[c.rule] = spoke[c.rule] || len(c.want) > 0
	}
	for _, r := range Rules() {
		assert.True(t, spoke[r.Name], "no case makes rule %q speak", r.Name)
	}
}

// laidBand lays a liner 4 in high with its bottom so many inches over the level line,
// on a wall from 40 in under it to 40 in over it.
func laidBand(in *Input, bottom length.Length) {
	in.Room.Bands = []survey.BandFound{{Name: "liner", Walls: []int{0}, Courses: 1, Bond: survey.BondRule{Kind: "stack", Den: 1},
		Tile: survey.TileSize{Width: 8 * inch, Height: 4 * inch}}}
	in.Setout.Bands = []plan.Band{{Name: "liner", Bottom: bottom * inch, Top: (bottom + 4) * inch, Walls: []int{0}, Edges: []length.Length{0}}}
	in.Walls[0].Shape.Region = plane.Region{plane.Rect{Right: 60 * inch, Bottom: -40 * inch, Top: 40 * inch}.Ring(0)}
}

func half(in *Input) { in.Room.Bond = survey.BondRule{Kind: "running", Num: 1, Den: 2} }
func long(in *Input) { in.Room.Tile.Width = 24 * inch }

func metric(joint length.Length) func(*Input) {
	return func(in *Input) {
		in.Room.Units, in.Room.Joint, in.Room.Tile.Vary = length.Metric, joint*length.Millimetre/1000, 0
	}
}

func meets(in *Input, gap length.Length) {
	in.Walls[0].Shape.Sides[1] = survey.Boundary{Name: "left", Part: survey.Part{Is: survey.LeftEnd}, Meets: true, Gap: gap}
}

func base(kind survey.Kind, r []survey.Reading) func(*Input) {
	return func(in *Input) {
		in.Walls[0].Found.Base = []survey.SegmentFound{{Meets: kind, Gap: inch / 8, Readings: r}}
	}
}

// curbed stands half of the wall on a shower base that is so much out of level, and half
// on a level curb 4 in over it.
func curbed(out length.Length) func(*Input) {
	return func(in *Input) {
		in.Walls[0].Found.Base = []survey.SegmentFound{
			{Meets: survey.ShowerBase, Gap: inch / 8, Readings: []survey.Reading{{Value: -40 * inch}, {At: 55 * inch, Value: -40*inch + out}}},
			{Meets: survey.Curb, Gap: inch / 8, Readings: readings(55, -36, 60, -36)}}
	}
}

// wide puts a pipe into the middle of a tile of 8 in.
func wide(in *Input, diameter length.Length) {
	in.Walls[0].Pieces = []piece.Piece{tile("B-01-01", 1, 0, 0, 8, 8), tile("B-01-02", 1, 8, 0, 16, 8)}
	opens(in, survey.OpeningFound{Kind: survey.Pipe, Name: "valve", At: 4 * inch, Up: 4 * inch, Diameter: diameter}, 0, 0, 0, 0)
}

// lined is tile 5/16 in thick in a bed of 3/16.
func lined(in *Input) { in.Room.Tile.Thickness, in.Room.Bed = 5*inch/16, 3*inch/16 }

// roundFrom puts a wall with a tub round the corner at the left of the only wall.
func roundFrom(in *Input, low length.Length) {
	tub := in.Walls[0]
	tub.Found.Name, tub.Found.Width = "left", 32*inch
	tub.Found.Base = []survey.SegmentFound{{Meets: survey.Tub, Readings: readings(0, -low, 32, -low)}}
	in.Walls[0].Found.Left.Meets, in.Walls[0].Found.Left.Beyond = true, 1
	in.Walls[0].Found.Width = 90 * inch
	in.Walls = append(in.Walls, tub)
}

func ends() []piece.Piece {
	return []piece.Piece{thin("B-01-01", 1, 6*inch, false), thin("B-02-01", 2, 15*inch/8, false)}
}

func TestSliversOfOneCauseAreOneSentence(t *testing.T) {
	in := quiet()
	w := &in.Walls[0]
	w.Found.Base = []survey.SegmentFound{
		{Meets: survey.Floor, Readings: readings(0, -15, 4, -15)}, {Meets: survey.Tub, Readings: readings(4, 2, 60, 2)}}
	for i := range 9 {
		w.Pieces = append(w.Pieces, thin(fmt.Sprintf("B-%02d-01", i+3), i+3, 3*inch/2-length.Length(i)*inch/16, true))
	}
	leg := thin("B-01-09", 1, inch, true)
	leg.Face = plane.Region{plane.Rect{Left: 0, Bottom: -10 * inch, Right: 3 * inch, Top: -8 * inch}.Ring(0)}
	w.Pieces = append(w.Pieces, leg)
	var found []Finding
	for _, f := range Judge(in) {
		if f.Rule == "sliver" {
			found = append(found, f)
		}
	}
	require.Len(t, found, 2)
	assert.Equal(t, "B-11-01", found[0].Piece, "the mark stands at the thinnest")
	assert.Equal(t, `9 pieces at the left end of back are slivers; the thinnest, B-11-01, is only 1".`, found[0].Text)
	assert.Equal(t, `B-01-09 of the leg on back is only 1" at its thinnest.`, found[1].Text)
	assert.NotContains(t, found[0].Do, "leg")
	assert.Contains(t, found[1].Do, "Lay the leg in single tiles")
	w.Found.Base[0].Leg = survey.SingleTiles
	assert.NotContains(t, legAdvice(in), "single tiles", "where it is")
	w.Found.Base[0].Leg = survey.InBond
	assert.Contains(t, legAdvice(in), "single tiles")
	w.Found.Base[0].Best = true
	assert.NotContains(t, legAdvice(in), "single tiles", "where the best of both was asked for")
	w.Found.Base[0].Best = false
	in.Room.Bands = []survey.BandFound{{}}
	assert.NotContains(t, legAdvice(in), "single tiles", "which a room with bands refuses")
}

// legAdvice is what to do about slivers of a leg.
func legAdvice(in Input) string {
	for _, f := range Judge(in) {
		if f.Rule == "sliver" && strings.Contains(f.Text, "of the leg") {
			return f.Do
		}
	}
	return ""
}

// A piece beside the step from a base up to a seat is at the seat's front.
func TestSliversAtASeatsFrontAreSaidToBeThere(t *testing.T) {
	in := quiet()
	w := &in.Walls[0]
	w.Shape.Sides = append(w.Shape.Sides, survey.Boundary{Name: "head"}, survey.Boundary{Name: "base", Kind: survey.Seat, Part: survey.Part{Is: survey.BaseSegment}})
	p := thin("B-01-09", 1, inch, true)
	p.Cuts, p.Across = []plane.Side{survey.SideBase}, []piece.Edge{piece.EdgeOf(survey.SideBase, piece.OnRight)}
	w.Pieces = append(w.Pieces, p)
	for _, f := range Judge(in) {
		if f.Rule == "sliver" {
			assert.Equal(t, `B-01-09 at the seat's front on back is only 1" at its thinnest.`, f.Text)
			return
		}
	}
	t.Fatal("no sliver")
}

func TestFindingsAreWhole(t *testing.T) {
	names := map[Name]bool{}
	rank := map[Grade]int{Fault: 0, Warning: 1, Advice: 2, Caution: 3}
	last := 0
	for _, r := range Rules() {
		assert.False(t, names[r.Name], "two rules are called %q", r.Name)
		names[r.Name] = true
		for _, part := range []string{string(r.Name), r.Why, r.Do, r.Source} {
			assert.NotEmpty(t, part, r.Name)
		}
		// Whether another start is better only a solved plan tells.
		for _, do := range []string{r.Do, r.Built, r.Strip, r.Leg} {
			assert.NotContains(t, do, "the best start", r.Name)
		}
		assert.GreaterOrEqual(t, rank[r.Grade], last, "%q is out of order", r.Name)
		last = rank[r.Grade]
	}
	assert.Equal(t, Judge(quiet()), Judge(quiet()))
	assert.NotPanics(t, func() { Judge(Input{}) })
}
