package finding

import "coursewright/layout/survey"

// legCases are those of TestRules for legs.
func legCases() []ruleCase {
	leg := func(how survey.Leg) func(*Input) {
		return func(in *Input) {
			in.Walls[0].Found.Base = []survey.SegmentFound{{Meets: survey.Tub, Gap: inch / 8, Readings: readings(0, -40, 54, -40)},
				{Meets: survey.Floor, Gap: inch / 8, Leg: how, Readings: readings(54, -58, 60, -58)}}
		}
	}
	return []ruleCase{
		{"a leg in the bond", LegLeftOut, leg(survey.InBond), nil},
		{"a leg in single tiles", LegLeftOut, leg(survey.SingleTiles), nil},
		{"no leg", LegLeftOut, leg(survey.NoLeg), []string{`At the right of back the leg is left out: over 5 7/8" beside the tub the tile ends at the rim.`}},
	}
}
