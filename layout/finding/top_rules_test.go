package finding

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// topped gives the quiet wall a seat that nothing objects to but that water stands on
// tops: 18 in over the floor, 16 in deep, mitred, with a fall of 1/4 in to the foot.
func topped(change func(*plan.Top)) func(*Input) {
	return func(in *Input) {
		in.Room.Tile.Thickness, in.Room.Bed = 3*inch/8, inch/8
		w := &in.Walls[0]
		w.Start.Placed.Head = -22 * inch
		found := &survey.TopFound{Kind: survey.SeatTop, Left: 16 * inch, Right: 16 * inch, Fall: survey.UsualFall(in.Room.Units), How: survey.Mitre,
			Face: survey.FaceFound{Tiled: true, Cover: inch / 2}}
		w.Top = &plan.Top{Found: found, Front: -22 * inch, Face: plan.Face{Is: survey.WallTop, Wall: plan.Wall{Found: survey.WallFound{Name: found.Of("back")}}}}
		change(w.Top)
		w.Found.Head.Top = found
	}
}

// nosed gives the quiet wall a curb so deep between two rows of bullnose of 2 in, of tile 6 by 3 in.
func nosed(deep length.Length) func(*Input) {
	return topped(func(t *plan.Top) {
		f := t.Found
		f.Kind, f.Left, f.Right, f.How, f.Laps = survey.CurbTop, deep, deep, survey.Bullnose, true
		f.Strip = &survey.TrimFound{Name: "nose", Kind: survey.Bullnose, Width: 2 * inch}
		t.Face.Found.Name = f.Of("back")
		t.Tile.Width, t.Tile.Height = 6*inch, 3*inch
	})
}

// topCases are what the rules for tops say.
func topCases() []ruleCase {
	sound := topped(func(*plan.Top) {})
	with := func(f func(*survey.TopFound)) func(*Input) { return topped(func(t *plan.Top) { f(t.Found) }) }
	made := func(how survey.Kind, laps bool) func(*Input) {
		return with(func(t *survey.TopFound) {
			t.How, t.Laps, t.Strip = how, laps, &survey.TrimFound{Name: "bar", Kind: survey.Profile}
		})
	}
	return []ruleCase{
		{"a fall of 1/4 in", LevelTop, sound, nil},
		{"a fall of 1/8 in", LevelTop, with(func(t *survey.TopFound) { t.Fall = inch / 8 }), []string{`The seat of back falls 1/8" per ft to the room, less than 1/4".`}},
		{"a level top in millimetres", LevelTop, func(in *Input) {
			in.Room.Units = length.Metric
			with(func(t *survey.TopFound) { t.Fall = 0 })(in)
		}, []string{"The seat of back falls 0 mm per m to the room, less than 21 mm."}},
		{"whole pieces", SmallPieceOnATop, sound, nil},
		{"a strip", SmallPieceOnATop, topped(func(t *plan.Top) { t.Pieces = []piece.Piece{{ID: "B-T-01", Least: inch / 2, Sliver: true}} }),
			[]string{`The seat of back has 1 small piece; the smallest, B-T-01, is 1/2".`}},
		{"5 in of curb between bullnose of 2 in", StripBetweenTrim, nosed(5 * inch), []string{`The curb of back keeps a strip of tile 3/4" wide between two rows of nose.`}},
		{"6 in of curb", StripBetweenTrim, nosed(6 * inch), nil},
		{"a strip that is a small piece besides", StripBetweenTrim, func(in *Input) {
			nosed(5 * inch)(in)
			in.Walls[0].Top.Pieces = []piece.Piece{{ID: "B-T-01", Least: inch / 2, Sliver: true}}
		}, nil},
		{"a seat has one row", StripBetweenTrim, func(in *Input) {
			nosed(5 * inch)(in)
			in.Walls[0].Top.Found.Kind = survey.SeatTop
		}, nil},
		{"joints of 1/8 in", SoftJointsOfATop, sound, nil},
		{"a gap of 1/16 in", SoftJointsOfATop, with(func(t *survey.TopFound) { gap := inch / 16; t.Gap = &gap }),
			[]string{`The soft joints of the seat of back are 1/16" wide, less than 1/8".`}},
		{"a cap that meets nothing", SoftJointsOfATop, with(func(t *survey.TopFound) { gap := inch / 16; t.Gap, t.Kind = &gap, survey.CapTop }), nil},
		{"18 in high and 16 deep", SizeOfASeat, sound, nil},
		{"20 in high and 12 deep", SizeOfASeat, topped(func(t *plan.Top) { t.Front, t.Found.Right = -20*inch, 12*inch }),
			[]string{`The seat of back is 20" over the floor; 17" to 19" is usual.`, `The seat of back is 12" deep; at least 15" is usual.`}},
		{"13 in deep in a corner", SizeOfASeat, with(func(t *survey.TopFound) { t.Corner = &survey.CornerTop{Peak: plane.Point{X: 13 * inch, Y: 13 * inch}} }),
			[]string{`The seat of back is 13" deep; at least 15" is usual.`}},
		{"a curb is no seat", SizeOfASeat, topped(func(t *plan.Top) { t.Front, t.Found.Kind = -36*inch, survey.CurbTop }), nil},
		{"no top", WaterproofingOfATop, func(*Input) {}, nil},
		{"a top", WaterproofingOfATop, sound, []string{"Waterproofing runs over the seat of back."}},
		{"a mitre", MitredEdges, sound, []string{"The edge of the seat of back is mitred: both edges are cut at 45°."}},
		{"a lap is no mitre", MitredEdges, made(survey.Lap, true), nil},
		{"a lap of the top", EdgeInPlainSight, made(survey.Lap, true), []string{`The edge of the seat of back is lapped: the side of the top is seen, 3/8" of it.`}},
		{"a lap of the front", EdgeInPlainSight, made(survey.Lap, false), []string{`The edge of the seat of back is lapped: the side of the front is seen, 3/8" of it.`}},
		{"a profile", ProfileAtACorner, made(survey.Profile, true), []string{`The edge of the seat of back has the profile bar; tile and bed are 1/2" deep.`}},
		{"a top that is surveyed", FallOfATop, sound, nil},
		{"a bench is no wet wall", HeightOfTheWetWall, sound, nil},
	}
}
