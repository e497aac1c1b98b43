package finding

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
	"coursewright/layout/trim"
)

// trimmed is the quiet room with pieces of one kind of trim, each so long.
func trimmed(t survey.TrimFound, long ...length.Length) func(*Input) {
	return func(in *Input) {
		in.Room.Trims = []survey.TrimFound{t}
		for _, l := range long {
			in.Walls[0].Trim = append(in.Walls[0].Trim, trim.Piece{ID: "T-B-01", Trim: t, Long: l, Whole: l == t.Length,
				Face: plane.Region{plane.Rect{Right: t.Width, Top: l}.Ring(0)}})
		}
	}
}

// trimCases are those of TestRules for trim in pieces.
func trimCases() []ruleCase {
	bullnose := survey.TrimFound{Name: "edge", Kind: survey.Bullnose, Width: 2 * inch, Length: 6 * inch}
	profile := survey.TrimFound{Name: "bar", Kind: survey.Profile, Width: inch / 8, Length: 96 * inch, Thickness: 10 * length.Millimetre}
	pencil := survey.TrimFound{Name: "pencil", Kind: survey.Pencil, Width: inch, Length: 8 * inch, Thickness: 17 * length.Millimetre}
	on := func(bed length.Length, f func(*Input)) func(*Input) { // tile of 8 mm
		return func(in *Input) {
			f(in)
			in.Room.Units, in.Room.Tile.Thickness, in.Room.Bed = length.Metric, 8*length.Millimetre, bed
		}
	}
	foot := func(cove *survey.TrimFound) func(*Input) {
		return func(in *Input) {
			in.Walls[0].Found.Base = []survey.SegmentFound{{Meets: survey.Tub, Gap: 35 * inch / 8, Rise: 34 * inch / 8, Cove: cove, Readings: readings(0, -40, 60, -40)}}
		}
	}
	return []ruleCase{
		{"a cove", CoveFoot, foot(&survey.TrimFound{Name: "foot", Kind: survey.Cove, Width: 33 * inch / 8, Length: 6 * inch}), []string{`The cove of back keeps 1/8" from the tub: a soft joint.`}},
		{"no cove", CoveFoot, foot(nil), nil},
		{"a stub of 1 in", SmallPieceOfTrim, trimmed(bullnose, 6*inch, inch), nil},
		{"two stubs under 1 in", SmallPieceOfTrim, trimmed(bullnose, 7*inch/8, 3*inch/4),
			[]string{`A piece of trim on back is 3/4" long (T-B-01); under 1" it is hard to cut, and so is 1 other piece.`}},
		{"whole pieces of mosaic trim", SmallPieceOfTrim, trimmed(survey.TrimFound{Name: "m", Length: inch / 2}, inch/2), nil},
		// A tile of 8 mm on a bed of 2 mm takes a profile marked 10 mm.
		{"a profile that takes tile and bed", ShallowProfile, on(2*length.Millimetre, trimmed(profile, 84*inch)), nil},
		{"a profile under tile and bed", ShallowProfile, on(3*length.Millimetre, trimmed(profile, 84*inch)),
			[]string{"The profile bar is marked 10 mm; tile and bed are 11 mm."}},
		{"trim that nothing uses", ShallowProfile, on(3*length.Millimetre, trimmed(profile)), nil},
		{"a raised pencil", ProudTrim, on(3*length.Millimetre, trimmed(pencil, 8*inch)),
			[]string{"Pencil is 17 mm thick and the tile 8 mm: on the same bed it stands 9 mm over the tile."}},
		{"bullnose of no known thickness", ProudTrim, trimmed(bullnose, 6*inch), nil},
		{"no mitre", MitredTrim, trimmed(bullnose, 6*inch), nil},
		{"a mitred pencil", MitredTrim, func(in *Input) { trimmed(pencil, 8*inch)(in); in.Walls[0].Trim[0].Mitres = 1 },
			[]string{"Pencil is mitred at its outer corners."}},
		{"a mitred bar of metal", MitredTrim, func(in *Input) { trimmed(profile, 84*inch)(in); in.Walls[0].Trim[0].Mitres = 1 }, nil},
	}
}
