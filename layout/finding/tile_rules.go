package finding

import (
	"fmt"

	"coursewright/layout/length"
)

// tileRules judge the tile, the joint and the bond, wherever the cuts fall.
func tileRules() []Rule {
	return append([]Rule{
		{
			Name: OffsetOfLongTile, Grade: Warning, judge: eachTile(longOffset),
			Why:    "Long tiles bow: at half offset the high middle of one stands beside the low ends of the next.",
			Do:     "Choose an offset of a third or less, unless the maker or an approved mock-up says otherwise.",
			Source: cited("ANSI A108.02 4.3 (offset patterns)", "CTEF"),
		},
		{
			Name: JointAgainstVariation, Grade: Warning, judge: eachTile(jointForVariation),
			Why:    "The joint takes up what the tiles differ in size; a narrower one cannot keep the lines straight.",
			Do:     "Widen the joint, or sort the tiles by size.",
			Source: cited("ANSI A108.02 4.3 (joint widths)", "TileLetter"),
		},
		{
			Name: JointMinimum, Grade: Warning, judge: eachTile(jointUnder(func(l Limits) length.Length { return l.LeastJoint })),
			Why:    "Grout does not fill a narrower joint, and nothing is left for the tiles' differences.",
			Do:     "Widen the joint.",
			Source: cited("ANSI A108.02 4.3 (joint widths)", "TileLetter"),
		},
		{
			Name: JointOfLongTileInAnOffsetBond, Grade: Warning, judge: eachTile(longJoint),
			Why:    "Offset long tiles show their bow as lippage; a wider joint softens the step.",
			Do:     "Widen the joint, and add the edge warpage of the real tile to it.",
			Source: cited("ANSI A108.02 4.3 (joints of offset patterns)", "CTEF"),
		},
		{
			Name: JointMinimumNewHomesUK, Grade: Advice, judge: metricJoint(1500, 0, 0),
			Why:    "A narrower joint is not accepted there.",
			Do:     "Widen the joint where this standard counts.",
			Source: "NHBC 9.1.7; look it up",
		},
		{
			Name: JointMinimumSmallTileUK, Grade: Advice, judge: metricJoint(2000, 0, 100_000),
			Why:    "Tile under 0.1 m² is asked to keep this joint there.",
			Do:     "Widen the joint where this standard counts.",
			Source: cited("BS 5385-1:2018", "the trade press"),
		},
		{
			Name: JointMinimumLargeTileUK, Grade: Advice, judge: metricJoint(3000, 100_000, 1_000_001),
			Why:    "Tile from 0.1 m² to 1 m² is asked to keep this joint there.",
			Do:     "Widen the joint where this standard counts.",
			Source: cited("BS 5385-1:2018", "the trade press"),
		},
		{
			Name: JointMinimumSingapore, Grade: Advice, judge: metricJoint(3000, 0, 0),
			Why:    "A narrower joint is not accepted there.",
			Do:     "Widen the joint where this rule counts.",
			Source: "practice in Singapore, as the trade press tells it; look it up",
		},
		{
			Name: TileMeasuredFarFromItsSize, Grade: Warning, judge: farMeasured,
			Why:    "Real tile is a little off the size on its box, never much: a joint or a tile too many in the row looks just so.",
			Do:     "Count the tiles and the joints of the row again, and look which side was measured.",
			Source: practice,
		},
	}, flatRules()...)
}

// flatRules say how true the wall and the set tiles must be.
func flatRules() []Rule {
	return []Rule{
		{
			Name: FlatWall, Grade: Advice, judge: flatWall,
			Why:    "Thin mortar does not straighten a wall; long tiles rock on every hump.",
			Do:     "Lay a straightedge on the wall in both directions and fill or plane before setting.",
			Source: cited("ANSI A108.02", "the trade bodies"),
		},
		{
			Name: Lippage, Grade: Advice, judge: lippage,
			Why:    "A step between two tiles shows in raking light and catches the hand.",
			Do:     "Measure the warpage of some real tiles; check each course with a straightedge.",
			Source: cited("ANSI A108.02 4.3 (lippage)", "TCNA"),
		},
		{
			Name: MortarContact, Grade: Advice,
			judge:  always("In wet areas mortar covers at least 95 % of the back of each tile, in a bed of at least 3/32 in (2 mm)."),
			Why:    "Hollows hold water and let tiles crack.",
			Do:     "Comb in one direction, press the tile across it, and lift one now and then to look.",
			Source: cited("ANSI A108.5 2.2", "the trade bodies"),
		},
	}
}

// longSide is the longer side of the tile.
func (in Input) longSide() length.Length { return max(in.Room.Tile.Width, in.Room.Tile.Height) }

// offsetSide is the side of the tile along which courses shift.
func (in Input) offsetSide() length.Length {
	if in.Room.Bond.Plumb {
		return in.Room.Tile.Height
	}
	return in.Room.Tile.Width
}

// longOffset takes "33 %" of the clause to allow a third bond.
func longOffset(in Input) []place {
	b := in.Room.Bond
	num := min(b.Num, b.Den-b.Num)
	if in.offsetSide() <= in.Limits.LongSide || 3*num <= b.Den {
		return nil
	}
	return room(fmt.Sprintf("The tile is %s along the courses and each course shifts %d/%d of a tile; over %s at most a third is allowed.",
		in.tape(in.offsetSide()), b.Num, b.Den, in.tape(in.Limits.LongSide)))
}

func jointForVariation(in Input) []place {
	vary, joint := in.Room.Tile.Vary, in.Room.Joint
	if joint >= 3*vary {
		return nil
	}
	return room(fmt.Sprintf("The tiles vary by %s, so the joint should be at least three times that, %s; it is %s.",
		in.close(vary), in.close(3*vary), in.close(joint)))
}

// jointUnder speaks when the joint is under a limit.
func jointUnder(least func(Limits) length.Length) func(Input) []place {
	return func(in Input) []place {
		if in.Room.Joint >= least(in.Limits) {
			return nil
		}
		return room(fmt.Sprintf("The joint is %s; at least %s is asked for.", in.close(in.Room.Joint), in.close(least(in.Limits))))
	}
}

// metricJoint is a least joint in micrometres, for tiles from an area up to,
// not including, another in mm²; no upper area means any tile. It speaks in
// metric jobs only: the rules of this kind come from metric countries.
func metricJoint(um length.Length, from, below length.Area) func(Input) []place {
	const mm2 = length.Area(length.Millimetre) * length.Area(length.Millimetre)
	least := um * length.Millimetre / 1000
	return func(in Input) []place {
		area := in.Room.Tile.Width.Times(in.Room.Tile.Height)
		if in.Room.Units != length.Metric || area < from*mm2 || below > 0 && area >= below*mm2 {
			return nil
		}
		return jointUnder(func(Limits) length.Length { return least })(in)
	}
}

func longJoint(in Input) []place {
	if in.Room.Bond.Num == 0 || in.longSide() <= in.Limits.LongSide || in.Room.Joint >= in.Limits.LongJoint2 {
		return nil
	}
	if in.Room.Joint >= in.Limits.LongJoint {
		return room(fmt.Sprintf("A joint of %s is enough for rectified tile only; calibrated tile needs %s, each plus the edge warpage.",
			in.close(in.Room.Joint), in.close(in.Limits.LongJoint2)))
	}
	return room(fmt.Sprintf("The joint is %s; long tile in an offset bond needs %s if rectified and %s if calibrated, each plus the edge warpage.",
		in.close(in.Room.Joint), in.close(in.Limits.LongJoint), in.close(in.Limits.LongJoint2)))
}

func flatWall(in Input) []place {
	text := "The wall should be flat within 1/4 in in 10 ft and 1/16 in in 12 in (6 mm in 3 m, 1.6 mm in 300 mm) for this tile."
	if in.longSide() >= in.Limits.LongSide {
		text = "The wall should be flat within 1/8 in in 10 ft and 1/16 in in 24 in (3 mm in 3 m, 1.6 mm in 600 mm) for this tile."
	}
	return room(text)
}

func lippage(in Input) []place {
	allowed := "1/32 in (0.8 mm)"
	if in.Room.Joint >= in.Limits.WideJoint {
		allowed = "1/16 in (1.6 mm)"
	}
	return room(fmt.Sprintf("With a joint of %s two edges may differ by %s plus the actual warpage of the tile.", in.close(in.Room.Joint), allowed))
}

// farMeasured speaks where a sample that is used makes a side more than a
// twentieth off the size typed: calibrated tile is within 3 % (ANSI A137.1).
func farMeasured(in Input) []place {
	var all []place
	t := in.Room.Tile
	for i, side := range [2]struct {
		name  string
		is    length.Length
		known bool
	}{{"wide", t.Width, t.Real.Width > 0}, {"high", t.Height, t.Real.Height > 0}} {
		sold := t.Real.Sold[i]
		if t.Real.Used && side.known && 20*(side.is-sold).Abs() > sold {
			all = append(all, room(fmt.Sprintf("As measured the tile is %s %s, as typed %s.", in.close(side.is), side.name, in.close(sold)))...)
		}
	}
	return all
}
