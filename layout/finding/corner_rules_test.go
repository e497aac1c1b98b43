package finding

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// turning is the quiet room with a second wall round an outside corner, 5 in wide:
// tile 3/8 in thick on a bed of 1/8, half bond. Wall back has a tile edge at from, of a piece
// that ends at the finished edge, 60 1/2; on the panel a piece goes from there to 60 1/2 + to.
func turning(how survey.Kind, from, to length.Length) func(*Input) {
	return func(in *Input) {
		in.Room.Tile.Thickness, in.Room.Bed = 3*inch/8, inch/8
		in.Room.Bond = survey.BondRule{Kind: "running", Num: 1, Den: 2}
		a := &in.Walls[0]
		o := survey.OutsideFound{Next: 1, How: how, Angle: 90, Laps: true, Past: inch / 2, Strip: &survey.TrimFound{Name: "bar", Kind: survey.Profile}}
		its := o
		its.Next, its.Laps = 0, false
		a.Found.Right = survey.EndFound{Outside: &o, Beyond: -1}
		a.Start = plan.Start{Edge: from, Placed: survey.Placed{Right: 60*inch + inch/2, Head: 40 * inch}}
		a.Pieces = []piece.Piece{block("B-01-01", from, 60*inch+inch/2)}
		panel := plan.Wall{Found: survey.WallFound{Name: "panel", Letter: "P", Width: 5 * inch, Base: a.Found.Base,
			Left: survey.EndFound{Outside: &its, Beyond: -1}}, Start: plan.Start{Placed: survey.Placed{Left: -inch / 2, Right: 5 * inch, Head: 40 * inch}}}
		panel.Pieces = []piece.Piece{block("P-01-01", -inch/2, to-inch/2)}
		in.Walls = append(in.Walls, panel)
	}
}

// block is a piece of one course from one place to another.
func block(id string, left, right length.Length) piece.Piece {
	p := tile(id, 1, 0, 0, 8, 4)
	p.Tile = plane.Rect{Left: left, Right: right, Top: 4 * inch}
	p.Face = plane.Region{p.Tile.Ring(0)}
	return p
}

// cornerCases are those of TestRules for outside corners.
func cornerCases() []ruleCase {
	silent := func(*Input) {}
	low := func(high length.Length) func(*Input) {
		return func(in *Input) {
			turning(survey.Lap, 55*inch, 3*inch)(in)
			in.Walls[0].Start.Placed.Head = high
			in.Walls[1].Start.Placed.Head = 90 * inch
		}
	}
	return []ruleCase{
		{"no corner", MitredEdges, silent, nil},
		{"a mitre", MitredEdges, turning(survey.Mitre, 0, 0), []string{"The outside corner of back and panel is mitred: both edges are cut at 45°."}},
		{"a lap is no mitre", MitredEdges, turning(survey.Lap, 0, 0), nil},
		{"a lap", EdgeInPlainSight, turning(survey.Lap, 0, 0), []string{`The outside corner of back and panel is lapped: the side of the tile on back is seen, 3/8" of it.`}},
		{"a bullnose covers its side", EdgeInPlainSight, turning(survey.Bullnose, 0, 0), nil},
		{"a profile", ProfileAtACorner, turning(survey.Profile, 0, 0), []string{`The outside corner of back and panel has the profile bar; tile and bed are 1/2" deep.`}},
		{"no profile", ProfileAtACorner, turning(survey.Mitre, 0, 0), nil},
		{"any corner", WaterRoundACorner, turning(survey.Profile, 0, 0), []string{"The outside corner of back and panel has two edges of board in it."}},
		{"no corner", WaterRoundACorner, silent, nil},

		// A tile of 8 in: 5 in before the corner and 3 after it (2 of 6 before and 4 after in the how-to page).
		{"a tile goes round", BondRoundACorner, turning(survey.Mitre, 55*inch+inch/2, 3*inch), nil},
		{"a joint of 1/8 off", BondRoundACorner, turning(survey.Mitre, 55*inch+inch/2, 3*inch+inch/8), nil},
		// 60 1/2 - 54 1/2 = 6 in before it: the tile would end 2 in after it, at 1 1/2, and the next begin at 1 5/8.
		{"a whole inch off", BondRoundACorner, turning(survey.Mitre, 54*inch+inch/2, 3*inch),
			[]string{`In 1 of 1 courses the bond does not seem to run round the outside corner of back and panel; with a tile edge at 1 5/8" on panel it would.`}},
		{"the end of a half wall, with no joint in it", BondRoundACorner, func(in *Input) {
			turning(survey.Mitre, 54*inch+inch/2, 3*inch)(in)
			above := in.Walls[1].Pieces[0]
			above.Course = 2
			in.Walls[1].Pieces = append(in.Walls[1].Pieces, above)
		}, nil},
		{"stack bond", BondRoundACorner, func(in *Input) {
			turning(survey.Mitre, 0, 3*inch)(in)
			in.Room.Bond = survey.BondRule{Kind: "stack", Den: 1}
		}, nil},
		{"columns", BondRoundACorner, func(in *Input) { turning(survey.Mitre, 0, 3*inch)(in); in.Room.Bond.Plumb = true }, nil},

		// The base is 40 in under the level line.
		{"a half wall of 60 in", FallOfATop, low(20 * inch), []string{`There is a top over back, 5'-0" over what back stands on.`}},
		{"higher is a wall", FallOfATop, low(20*inch + inch/16), nil},
		// The end of a half wall has no top of its own: found on a knee wall with a cap, whose end
		// was asked for the fall of another.
		{"the end of a half wall with a cap", FallOfATop, func(in *Input) {
			low(20 * inch)(in)
			in.Walls[0].Top, in.Walls[1].Start.Placed.Head = &plan.Top{Found: &survey.TopFound{}}, 19*inch
		}, nil},
		{"a half wall beside a bench", FallOfATop, func(in *Input) {
			low(-22 * inch)(in)
			in.Walls[0].Top, in.Walls[1].Start.Placed.Head = &plan.Top{Found: &survey.TopFound{}}, 0
		}, []string{`There is a top over panel, 40" over what panel stands on.`}},
		{"no outside corner", FallOfATop, func(in *Input) { in.Walls[0].Start.Placed.Head = 0 }, nil},
		{"a half wall is no wet wall that is too low", HeightOfTheWetWall, low(20 * inch), nil},
		{"a tub that ends in the corner", TilePastTheTub, func(in *Input) {
			turning(survey.Lap, 55*inch, 3*inch)(in)
			in.Walls[0].Found.Base = []survey.SegmentFound{{Meets: survey.Tub, Readings: readings(0, -40, 60, -40)}}
			in.Walls[0].Start.Placed.Left, in.Walls[1].Found.Base = -2*inch, nil
		}, nil},
	}
}
