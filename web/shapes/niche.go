package shapes

import "coursewright/layout/survey"

// withNiche puts a niche between two studs into the back wall of an alcove: a
// bay of 14 1/2 in (370 mm) near the middle, 3 1/2 in (90 mm) deep, its sill free up
// to 10 in (250 mm) over the level line. Common sizes, no source.
func (m maker) withNiche(walls []survey.Wall) []survey.Wall {
	walls[1].Openings = []survey.Opening{{
		Kind: "niche", Name: "niche",
		Bottom: &survey.Mark{From: m.say("0", "0"), To: m.say("10", "250")},
		Height: &survey.Measure{Mark: &survey.Mark{From: m.say("12", "300"), To: m.say("16", "400")}},
		Inside: &survey.Inside{
			Studs: &survey.Studs{Left: m.say("14 3/4", "365"), Right: m.say("29 1/4", "735")},
			Depth: m.say("3 1/2", "90"), DepthIs: "rough",
		},
	}}
	return walls
}
